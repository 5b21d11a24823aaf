import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { run as runIn } from './run.ts'

const specimens = join(import.meta.dirname, '../specimens')
let folder = ''
const names = ['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7']

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  const text = readFileSync(join(specimens, 'cider-mill-pulley.yaml'), 'utf8')
  for (const name of names) writeFileSync(join(folder, `${name}.yaml`), text.replace(/^name: .*/m, `name: ${name}`))
  writeFileSync(join(folder, 'bad.yaml'), 'name: bad\n')
  copyFileSync(join(specimens, 'press-slide.yaml'), join(folder, 'press-slide.yaml'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const run = (...words: string[]) => runIn(folder, words)
const specs = names.map((name) => `${name}.yaml`)
const made = (to: string): string[] => readdirSync(join(folder, to)).toSorted()

describe('many specs at once', () => {
  it('come out the same on one thread and on three, byte for byte, told in the same order', async () => {
    // More than there are threads, so that one of them takes another.
    const [some, theirs] = [specs.slice(0, 4), names.slice(0, 4)]
    const one = await run('make', ...some, '--to', 'one', '--workers', '1', '--formats', 'svg,3mf')
    const three = await run('make', ...some, '--to', 'three', '--workers', '3', '--formats', 'svg,3mf')
    expect([one.status, three.status]).toEqual([0, 0])
    expect(three.out.replaceAll('three', 'one')).toBe(one.out)
    expect(made('three')).toEqual(theirs)
    for (const name of theirs)
      for (const file of readdirSync(join(folder, 'one', name)))
        expect(
          readFileSync(join(folder, 'three', name, file)).equals(readFileSync(join(folder, 'one', name, file))),
        ).toBe(true)
  })

  it('go on past one that cannot be read and one that is broken, and say which', async () => {
    const five = ['a1.yaml', 'bad.yaml', 'press-slide.yaml', 'nowhere.yaml', 'a2.yaml']
    const { status, err } = await run('make', ...five, '--to', 'mixed', '--formats', 'svg', '--workers', '2')
    expect(status).toBe(2)
    expect(made('mixed')).toEqual(['a1', 'a2'])
    expect(err).toMatch(/^bad\.yaml: /m)
    expect(err).toContain('press-slide cannot be made as written')
    expect(err).toContain('nowhere.yaml: there is no such file.')
    expect(err).toContain('2 of 5 specs made')
  })

  it('fall into shards that make every spec once', async () => {
    const shards = [1, 2, 3].map((at) =>
      run('make', ...specs, '--to', `shard${at}`, '--shard', `${at}/3`, '--formats', 'svg'),
    )
    expect((await Promise.all(shards)).map(({ status }) => status)).toEqual([0, 0, 0])
    expect([1, 2, 3].map((at) => made(`shard${at}`))).toEqual([
      ['a1', 'a4', 'a7'],
      ['a2', 'a5'],
      ['a3', 'a6'],
    ])
  })

  it('never write two of one name over one another, not even from two shards', async () => {
    copyFileSync(join(folder, 'a1.yaml'), join(folder, 'again.yaml'))
    const { status, err } = await run('make', 'a1.yaml', 'again.yaml', '--to', 'twins', '--shard', '2/2')
    expect(status).toBe(2)
    expect(err).toContain('again.yaml: its name, a1, is also that of a1.yaml')
  })

  it('refuse a shard or a count of threads that is none', async () => {
    for (const words of [
      ['--shard', '0/3'],
      ['--shard', '4/3'],
      ['--shard', 'half'],
      ['--workers', '0'],
      ['--workers', 'many'],
    ]) {
      const { status, out, err } = await run('make', 'a1.yaml', '--to', 'never', ...words)
      expect({ words, status, out }).toEqual({ words, status: 2, out: '' })
      expect(err).toContain(`${words[0]} wants`)
    }
  })
})
