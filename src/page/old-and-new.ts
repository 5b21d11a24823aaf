import { computed, effect, signal } from '@preact/signals'
import about from '../../package.json' with { type: 'json' }
import type { Design } from '../design.ts'
import { isMapping } from '../spec/place.ts'
import { outcome, settled } from './answers.ts'
import { keep, kept } from './keeping.ts'
import { chosen } from './rows/chosen.ts'
import type { Kind, Worked } from './rows/row.ts'
import { workedShown } from './rows/shown.ts'
import { shownUnits } from './shown-in.ts'

/** One number that may come out otherwise with another version. */
interface Figure {
  readonly word: string
  readonly kind: Kind
  readonly of: (design: Design) => Worked
}

const length: Kind = { is: 'length', fit: true }

/** What is ground, set, dialled or measured: if one of these moves, what was printed is no longer so. */
const figures: readonly Figure[] = [
  { word: 'Across', kind: length, of: ({ section }) => section.across },
  { word: 'Width', kind: length, of: ({ section }) => section.width },
  ...chosen.flatMap(({ word, kind, worked }) => (worked ? [{ word, kind, of: worked }] : [])),
  { word: 'Over bar and nose', kind: length, of: ({ bar, groundBar }) => (bar ?? groundBar)?.overBarAndNose },
  { word: 'Dial at the end', kind: length, of: ({ plan }) => plan?.cuts.at(-1)?.gates.at(-1)?.reading },
  { word: 'Passes', kind: { is: 'number' }, of: ({ plan }) => plan?.passes },
  { word: 'Bushing', kind: length, of: ({ bushing }) => bushing?.outside.nominal },
]

/** What was kept beside a job: by which version it was worked out, and what came out. */
interface Before {
  readonly version: string
  readonly link: string
  readonly numbers: Readonly<Record<string, Worked>>
}

const numbersOf = (design: Design): Before['numbers'] =>
  Object.fromEntries(figures.map(({ word, of }) => [word, of(design)]))

const read = (text: string | undefined): Before | undefined => {
  try {
    const found: unknown = JSON.parse(text ?? '')
    return isMapping(found) &&
      typeof found['version'] === 'string' &&
      typeof found['link'] === 'string' &&
      isMapping(found['numbers'])
      ? (found as unknown as Before)
      : undefined
  } catch {
    return undefined
  }
}

const before = signal<Before | undefined>(undefined)

/** Numbers that another version gave otherwise; undefined where nothing is to be said. */
export const otherwiseNow = computed(() => {
  const design = settled.value?.design
  if (!before.value || !design || outcome.value?.link !== before.value.link) return undefined
  const { version, numbers } = before.value
  const units = shownUnits.value
  const moved = figures.flatMap(({ word, kind, of }) => {
    const [now, was] = [of(design), numbers[word]].map((each) => workedShown(each, kind, units))
    return now === was ? [] : [{ word, now: now || 'nothing', was: was || 'nothing' }]
  })
  return moved.length === 0 ? undefined : { version, here: about.version, moved }
})

/** The new numbers stand. */
export const takeNew = (): void => {
  before.value = undefined
  keepNumbers()
}

const keepNumbers = (): void => {
  const { design, link } = outcome.value ?? {}
  if (!design || link === undefined) return
  keep('numbers', JSON.stringify({ version: about.version, link, numbers: numbersOf(design) } satisfies Before))
}

/** Keeps the numbers beside the job, with the version that they are of; what another version left is looked at first. */
export const followNumbers = (): void => {
  const found = read(kept('numbers'))
  if (found && found.version !== about.version) before.value = found
  effect(() => {
    const link = outcome.value?.link
    if (link === undefined || !outcome.value?.design) return
    // As long as it is the old job, its old numbers stay.
    if (before.value?.link === link) return
    keepNumbers()
  })
}
