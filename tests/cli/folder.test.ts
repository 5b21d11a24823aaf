import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { obstacle, put, Unwritable } from '../../src/cli/folder.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const file = (name: string, text: string) => ({ name, bytes: bytes(text) })

describe('a made folder', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8')

  it('holds what was put, a manifest and nothing else', async () => {
    await put(folder, 'pulley', [file('a.svg', 'one'), file('b.svg', 'two')])
    expect(readdirSync(folder).toSorted()).toEqual(['a.svg', 'b.svg', 'manifest.json'])
    const manifest = JSON.parse(read('manifest.json'))
    // FIPS 180-4 digest of "one", worked out with sha256sum(1).
    expect(manifest.files[0]).toEqual({
      name: 'a.svg',
      size: 3,
      sha256: '7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed',
    })
  })

  it('what an earlier run made and this one does not is removed; the rest of the folder is let be', async () => {
    await put(folder, 'pulley', [file('a.svg', 'one'), file('b.svg', 'two')])
    writeFileSync(join(folder, 'notes.txt'), 'mine')
    const { removed } = await put(folder, 'pulley', [file('a.svg', 'three')])
    expect(removed).toEqual(['b.svg'])
    expect(readdirSync(folder).toSorted()).toEqual(['a.svg', 'manifest.json', 'notes.txt'])
    expect([read('a.svg'), read('notes.txt')]).toEqual(['three', 'mine'])
  })

  it('a file that somebody has changed since is kept when it is no longer made', async () => {
    await put(folder, 'pulley', [file('a.svg', 'one'), file('b.svg', 'two')])
    writeFileSync(join(folder, 'b.svg'), 'two, and my marks on it')
    const { removed, kept } = await put(folder, 'pulley', [file('a.svg', 'one')])
    expect({ removed, kept }).toEqual({ removed: [], kept: ['b.svg'] })
    expect(read('b.svg')).toBe('two, and my marks on it')
  })

  it('a file of somebody else under a name of ours stops the run before anything is written', async () => {
    writeFileSync(join(folder, 'b.svg'), 'mine')
    await expect(put(folder, 'pulley', [file('a.svg', 'one'), file('b.svg', 'two')])).rejects.toThrow(Unwritable)
    expect(readdirSync(folder)).toEqual(['b.svg'])
    expect(read('b.svg')).toBe('mine')
  })

  it('a manifest of somebody else is not written over', async () => {
    writeFileSync(join(folder, 'manifest.json'), '{"name":"an app"}')
    await expect(put(folder, 'pulley', [file('a.svg', 'one')])).rejects.toThrow('not made by borewright')
    expect(readdirSync(folder)).toEqual(['manifest.json'])
  })

  it('a manifest cannot have files outside the folder removed', async () => {
    const outside = join(folder, 'outside.txt')
    writeFileSync(outside, '')
    const inner = join(folder, 'inner')
    await put(inner, 'pulley', [file('a.svg', 'one')])
    const manifest = JSON.parse(readFileSync(join(inner, 'manifest.json'), 'utf8'))
    // FIPS 180-4 digest of nothing.
    const empty = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'
    manifest.files.push({ name: '../outside.txt', size: 0, sha256: empty })
    writeFileSync(join(inner, 'manifest.json'), JSON.stringify(manifest))
    await put(inner, 'pulley', [file('a.svg', 'one')])
    expect(readFileSync(outside, 'utf8')).toBe('')
  })

  it('a file where the folder should be is said before any work', async () => {
    writeFileSync(join(folder, 'pulley'), '')
    expect(await obstacle(join(folder, 'pulley'))).toContain('is a file')
    expect(await obstacle(folder)).toBe(undefined)
    expect(await obstacle(join(folder, 'new'))).toBe(undefined)
  })

  it('a folder that cannot be made is the person’s to mend', async () => {
    writeFileSync(join(folder, 'pulley'), '')
    await expect(put(join(folder, 'pulley', 'deeper'), 'x', [file('a.svg', 'one')])).rejects.toThrow(Unwritable)
  })
})
