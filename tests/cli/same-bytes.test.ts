import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { run } from './run.ts'

const specimens = join(import.meta.dirname, '../specimens')
const jobs = ['cider-mill-pulley', 'winch-drum-gear'] as const
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  for (const job of jobs) copyFileSync(join(specimens, `${job}.yaml`), join(folder, `${job}.yaml`))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const places: readonly Readonly<Record<string, string>>[] = [
  { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' },
  { TZ: 'Pacific/Chatham', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  { TZ: 'America/St_Johns', LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' },
  { TZ: 'Asia/Kathmandu', LANG: 'de_CH.UTF-8', LC_ALL: 'de_CH.UTF-8', LC_NUMERIC: 'fr_FR.UTF-8' },
]

describe('the same spec', () => {
  it('gives the same bytes and the same words in every time zone and locale', async () => {
    // Both jobs here, and elsewhere by turns the one or the other.
    const told: string[] = []
    for (const [at, place] of places.entries()) {
      const made = at === 0 ? jobs : jobs.filter((_, of) => of === at % jobs.length)
      for (const job of made) {
        const { status, out } = await run(folder, ['make', `${job}.yaml`, '--to', `made${at}`], place)
        expect({ job, place, status }).toEqual({ job, place, status: 0 })
        told.push(out.replaceAll(`made${at}`, 'made'))
        expect(told[jobs.indexOf(job)]).toBe(told.at(-1))
        for (const file of readdirSync(join(folder, 'made0', job)))
          expect(
            readFileSync(join(folder, `made${at}`, job, file)).equals(readFileSync(join(folder, 'made0', job, file))),
            `${job}/${file} in ${place['TZ']}`,
          ).toBe(true)
      }
    }
  })
})
