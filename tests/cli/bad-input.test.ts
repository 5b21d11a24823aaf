import { spawn } from 'node:child_process'
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import { run } from './run.ts'
import { thorough } from '../thorough.ts'

/** Specs at once. */
const [few, many] = thorough ? [20, 200] : [10, 40]
const corpus = join(import.meta.dirname, '../fuzz/corpus')
const files = readdirSync(corpus)
let folder = ''
let work = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-bad-'))
  work = join(folder, 'deep', 'work')
  mkdirSync(work, { recursive: true })
  for (const name of files) copyFileSync(join(corpus, name), join(work, name))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Everything that stands in the scratch folder outside of the one that files may be put into. */
const outside = (): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => !path.startsWith(join('deep', 'work', 'out')))
    .toSorted()

/** No trace of a bug, and nothing that could turn a terminal upside down. */
const clear = (text: string): void => {
  expect(text).not.toMatch(/\n\s+at |has a bug|node:|TypeError|RangeError|\[object |undefined/)
  // oxlint-disable-next-line no-control-regex
  expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/)
}

describe('whatever is written', () => {
  it.each(thorough ? files : files.filter((_, at) => at % 2 === 0))(
    '%s: ends in a clear answer, and writes nowhere else',
    async (name) => {
      const before = outside()
      const { status, out, err } = await run(work, [
        'make',
        name,
        '--to',
        'out',
        '--formats',
        'svg,dxf,html',
        '--anyway',
      ])
      clear(out + err)
      expect(out).not.toContain('NaN')
      if (name.startsWith('complained-')) {
        expect(status).toBe(2)
        expect(out).toBe('')
        for (const line of err.trim().split('\n')) expect(line.length).toBeLessThan(1200)
      } else {
        expect([0, 1, 2]).toContain(status)
        const asked = await run(work, ['check', name])
        clear(asked.out + asked.err)
        expect(asked.out).not.toContain('NaN')
        expect(status).toBe(asked.status)
      }
      expect(outside()).toEqual(before)
    },
  )

  it('of fifty megabytes, or a hole of two gigabytes: refused without being read', async () => {
    writeFileSync(join(work, 'large.yaml'), 'name: a\n'.padEnd(50_000_000, '# x\n'))
    writeFileSync(join(work, 'hole.yaml'), 'name: a\n')
    truncateSync(join(work, 'hole.yaml'), 2_000_000_000)
    writeFileSync(
      join(work, 'large-shop.yaml'),
      readFileSync(join(corpus, 'complained-shop-folder.yaml'), 'utf8').replace('shop: .', 'shop: large.yaml'),
    )
    for (const name of ['large.yaml', 'hole.yaml', 'large-shop.yaml']) {
      const { status, err } = await run(work, ['check', name])
      expect([name, status]).toEqual([name, 2])
      expect(err).toContain('far too large')
    }
  })

  it('on the command line itself: a clear answer', async () => {
    const verbs = ['check', 'make', 'key']
    const words = [
      '',
      ' ',
      '..',
      '/',
      '-',
      '--',
      '--to',
      '__proto__',
      '\u202e',
      'a'.repeat(5000),
      '🔧',
      'x\ny.yaml',
      '--formats=__proto__',
      '--workers=1e9',
    ]
    // Each word to one of the verbs by turns; by hand, `THOROUGH=1`, to every one.
    for (const [at, word] of words.entries())
      for (const verb of thorough ? verbs : [verbs[at % verbs.length] ?? 'make']) {
        const { status, out, err } = await run(work, [verb, word])
        expect([verb, word, status]).not.toEqual([verb, word, 70])
        expect([0, 1, 2]).toContain(status)
        expect(out + err).not.toMatch(/\n\s+at |has a bug/)
      }
  })
})

describe(`${many} specs on two threads`, () => {
  it.runIf(thorough)(`take no more memory than ${few}`, { timeout: 240_000 }, async () => {
    const text = readFileSync(join(import.meta.dirname, '../specimens/cider-mill-pulley.yaml'), 'utf8')
    const names = Array.from({ length: many }, (_, n) => `m${n}.yaml`)
    for (const name of names) writeFileSync(join(work, name), text.replace(/^name: .*/m, `name: ${name.slice(0, -5)}`))
    /** Peak resident memory of a run, MB, as the system counts it. */
    const peak = (count: number): Promise<number> =>
      new Promise((resolve, reject) => {
        const words = [
          'make',
          ...names.slice(0, count),
          '--to',
          'out',
          '--workers',
          '2',
          '--formats',
          'svg,profile',
          '--parts',
          'cutter-bar',
        ]
        const child = spawn(process.execPath, [inject('program'), ...words], { cwd: work, stdio: 'ignore' })
        let most = 0
        const watch = setInterval(() => {
          try {
            const [, kB] = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8')) ?? []
            most = Math.max(most, Number(kB ?? 0) / 1024)
          } catch {
            // It has just ended.
          }
        }, 100)
        child.on('error', reject)
        child.on('close', (status) => {
          clearInterval(watch)
          if (status === 0) resolve(most)
          else reject(new Error(`status ${status}`))
        })
      })
    if (process.platform !== 'linux') return
    const [least, all] = [await peak(few), await peak(many)]
    expect(all).toBeLessThan(1.5 * least + 150)
    expect(all).toBeLessThan(1000)
  })
})
