import { execFileSync, spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import { run as runIn } from './run.ts'
import { thorough } from '../thorough.ts'

const specimens = join(import.meta.dirname, '../specimens')
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  copyFileSync(join(specimens, 'cider-mill-pulley.yaml'), join(folder, 'cider-mill-pulley.yaml'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const run = (...words: string[]) => runIn(folder, words)
const order = ['make', 'cider-mill-pulley.yaml', '--formats', 'svg,dxf,profile', '--to']
/** By hand, `THOROUGH=1`: a hundred. */
const kills = thorough ? 100 : 14
const sha256 = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex')
/** Every file of a folder with its digest. */
const standing = (path: string): Record<string, string> =>
  Object.fromEntries(readdirSync(path).map((name) => [name, sha256(join(path, name))]))

/** Runs and kills it after so many ms; whether it was still running. */
const killed = (words: readonly string[], after: number): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [inject('program'), ...words], { cwd: folder, stdio: 'ignore' })
    const timer = setTimeout(() => child.kill('SIGKILL'), after)
    child.on('error', reject)
    child.on('close', (_status, signal) => {
      clearTimeout(timer)
      resolve(signal === 'SIGKILL')
    })
  })

describe('a run that is killed', () => {
  it('time and again, at any moment, leaves no half file under a name of its own and the next run puts all right', async () => {
    expect((await run(...order, 'whole')).status).toBe(0)
    const whole = standing(join(folder, 'whole', 'cider-mill-pulley'))
    const began = Date.now()
    await run(...order, 'timing')
    const lasts = Date.now() - began
    mkdirSync(join(folder, 'cut', 'cider-mill-pulley'), { recursive: true })
    writeFileSync(join(folder, 'cut', 'cider-mill-pulley', 'notes.txt'), 'mine')
    let hit = 0
    for (let round = 0; round < kills; round++) {
      // Spread over the whole run, most of them while it writes, at its end.
      const share = round % 2 === 0 ? (round * 0.618) % 1 : 0.7 + 0.35 * ((round * 0.618) % 1)
      if (await killed([...order, 'cut'], share * lasts)) hit += 1
      const path = join(folder, 'cut', 'cider-mill-pulley')
      for (const [name, digest] of Object.entries(standing(path)))
        if (!name.startsWith('.') && name !== 'notes.txt' && name !== 'manifest.json')
          expect({ round, name, digest }).toEqual({ round, name, digest: whole[name] })
      if (existsSync(join(path, 'manifest.json'))) JSON.parse(readFileSync(join(path, 'manifest.json'), 'utf8'))
      if (round % 7 === 6) rmSync(join(path, 'cutter-bar.svg'), { force: true })
    }
    expect(hit).toBeGreaterThan(0.35 * kills)
    const { status, err } = await run(...order, 'cut')
    expect({ status, err }).toEqual({ status: 0, err: '' })
    const { 'notes.txt': _, ...left } = standing(join(folder, 'cut', 'cider-mill-pulley'))
    expect(left).toEqual(whole)
    expect(readFileSync(join(folder, 'cut', 'cider-mill-pulley', 'notes.txt'), 'utf8')).toBe('mine')
  }, 120_000)
})

describe('two runs at once into one folder', () => {
  it('take turns: what stands there at the end is whole, and the manifest lists it', async () => {
    for (let round = 0; round < (thorough ? 4 : 1); round++) {
      const ran = await Promise.all([
        run(...order, 'both'),
        run('make', 'cider-mill-pulley.yaml', '--formats', 'svg', '--to', 'both'),
        run(...order, 'both'),
      ])
      expect(ran.map(({ status }) => status)).toEqual([0, 0, 0])
      const path = join(folder, 'both', 'cider-mill-pulley')
      const manifest = JSON.parse(readFileSync(join(path, 'manifest.json'), 'utf8'))
      const { 'manifest.json': _, ...files } = standing(path)
      expect(
        Object.fromEntries(manifest.files.map((file: { name: string; sha256: string }) => [file.name, file.sha256])),
      ).toEqual(files)
    }
  })
})

/** Whether a small disk of our own can be had here: it takes root, Linux and a container that allows it. */
const mountable = ((): boolean => {
  const at = mkdtempSync(join(tmpdir(), 'borewright-disk-'))
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=16k', 'tmpfs', at], { stdio: 'ignore' })
    execFileSync('umount', [at], { stdio: 'ignore' })
    return true
  } catch {
    return false
  } finally {
    rmSync(at, { recursive: true, force: true })
  }
})()

describe('a folder that takes no more', () => {
  const mounted = async (size: string, work: (at: string) => Promise<void>): Promise<void> => {
    const at = mkdtempSync(join(tmpdir(), 'borewright-disk-'))
    execFileSync('mount', ['-t', 'tmpfs', '-o', size, 'tmpfs', at])
    try {
      await work(at)
    } finally {
      execFileSync('umount', [at])
      rmSync(at, { recursive: true, force: true })
    }
  }

  it.runIf(mountable)(
    'because the disk is full: a clear complaint, no half file, what stood there stands',
    async () => {
      await mounted('size=400k', async (at) => {
        expect((await run('make', 'cider-mill-pulley.yaml', '--formats', 'profile', '--to', at)).status).toBe(0)
        const before = standing(join(at, 'cider-mill-pulley'))
        const { status, err } = await run('make', 'cider-mill-pulley.yaml', '--to', at)
        expect(status).toBe(2)
        expect(err).toMatch(/cannot be written: .*no space/i)
        expect(err).not.toContain('at ')
        const after = standing(join(at, 'cider-mill-pulley'))
        expect(Object.keys(after).filter((name) => name.endsWith('.part'))).toEqual([])
        for (const [name, digest] of Object.entries(before))
          if (name !== 'manifest.json') expect(after[name]).toBe(digest)
        // With room again, the next run makes it whole.
        execFileSync('mount', ['-o', 'remount,size=40m', at])
        expect((await run('make', 'cider-mill-pulley.yaml', '--to', at)).status).toBe(0)
      })
    },
  )

  it.runIf(mountable)('because it may only be read: a clear complaint', async () => {
    await mounted('size=4m', async (at) => {
      execFileSync('mount', ['-o', 'remount,ro', at])
      const { status, out, err } = await run('make', 'cider-mill-pulley.yaml', '--to', at)
      expect(status).toBe(2)
      expect(out).not.toContain('files in')
      expect(err).toMatch(/cannot be written: .*read-only/i)
    })
  })

  it.skipIf(mountable)('SKIPPED: a full disk and a read-only one want root on Linux', () => undefined)
})
