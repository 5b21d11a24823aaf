import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import { run } from './run.ts'
import { thorough } from '../thorough.ts'

const specimens = join(import.meta.dirname, '../specimens')
const jobs = ['cider-mill-pulley', 'winch-drum-gear'] as const
let folder = ''
/** What the run at home said of each job. */
const said = new Map<string, string>()
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  for (const job of jobs) {
    copyFileSync(join(specimens, `${job}.yaml`), join(folder, `${job}.yaml`))
    const { status, out } = await run(folder, ['make', `${job}.yaml`, '--to', 'made'], home)
    expect({ job, status }).toEqual({ job, status: 0 })
    said.set(job, out)
  }
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const home = { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' }
const places: readonly Readonly<Record<string, string>>[] = [
  { TZ: 'Pacific/Chatham', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  { TZ: 'America/St_Johns', LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' },
  { TZ: 'Asia/Kathmandu', LANG: 'de_CH.UTF-8', LC_ALL: 'de_CH.UTF-8', LC_NUMERIC: 'fr_FR.UTF-8' },
]

/** Every file of a folder with its SHA-256. */
const digests = (path: string): readonly string[] =>
  readdirSync(path)
    .toSorted()
    .map(
      (name) =>
        `${name} ${createHash('sha256')
          .update(readFileSync(join(path, name)))
          .digest('hex')}`,
    )

describe('the same spec', () => {
  it('gives the same bytes and the same words in every time zone and locale, solids in a thread of their own or not', async () => {
    // By turns the one job or the other; the first in one thread alone.
    for (const [at, place] of (thorough ? places : places.slice(0, 2)).entries()) {
      const job = jobs[at % jobs.length] ?? 'cider-mill-pulley'
      const alone = at === 0 ? ['--workers', '1'] : []
      const { status, out } = await run(folder, ['make', `${job}.yaml`, '--to', `made${at}`, ...alone], place)
      expect({ place, status }).toEqual({ place, status: 0 })
      expect(out.replaceAll(`made${at}`, 'made')).toBe(said.get(job))
      expect(digests(join(folder, `made${at}`, job)), place['TZ'] ?? '').toEqual(digests(join(folder, 'made', job)))
    }
  })

  // `OTHER_NODES=/path/to/node:/path/to/another`: the programs of other versions of Node.
  const others = (process.env['OTHER_NODES'] ?? '').split(delimiter).filter((path) => path !== '')
  it.skipIf(others.length > 0)('SKIPPED on other versions of Node: name their programs in OTHER_NODES', () => undefined)
  it.each(others)('gives the same bytes with %s', async (node) => {
    expect(execFileSync(node, ['--version'], { encoding: 'utf8' })).not.toBe(`${process.version}\n`)
    for (const job of thorough ? jobs : jobs.slice(0, 1)) {
      const words = [inject('program'), 'make', `${job}.yaml`, '--to', 'other']
      execFileSync(node, words, { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] })
      expect(digests(join(folder, 'other', job))).toEqual(digests(join(folder, 'made', job)))
    }
  })
})
