import { describe, expect, it } from 'vitest'
import { bestCandidate, bestCandidates, type Candidate, worth } from '../../src/dimensions/candidates.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import type { BarSpec } from '../../src/spec/spec.ts'
import { specOf } from './designed.ts'

const job = (document: object) => {
  const spec = specOf({ hub: { outside: 90 }, ...document })
  const { bar } = spec.tooling
  if (!bar) throw new Error('no bar is asked for')
  return { spec, bar, section: sectionOf(spec).sizes }
}

const isSound = ({ broken, cautions }: Candidate): boolean => broken.length === 0 && cautions === 0

/** Everything of a candidate, what is reckoned when it is asked for too. */
const told = (one: Candidate | undefined) => one && { ...one, diameterMax: one.diameterMax() }

const bores = [
  ...[9, 12, 13, 17.5, 19.5, 24, 30, 50].map((diameter) => ({
    units: 'mm',
    bore: { diameter, length: 1.4 * diameter },
  })),
  ...[0.5, 0.875, 1.25].map((diameter) => ({ units: 'in', bore: { diameter, length: 1.4 * diameter } })),
]
/** By the standard; and wider than any standard's, for which lanes and round blanks are weighed against thicker bars. */
const featuresIn = ({ bore: { diameter } }: (typeof bores)[number]) => [
  { keyway: null },
  ...[0.35, 0.45].map((share) => ({ keyway: { width: share * diameter, across: 1.12 * diameter } })),
]

describe('the search for a bar', () => {
  it.each(bores)(
    '$bore.diameter $units: no bar and bit on hand, each looked at by itself, are sound and worth more',
    (of) => {
      for (const feature of featuresIn(of)) {
        const { spec, bar, section } = job({
          ...of,
          feature,
          tooling: { bar: { form: 'end screw', stages: 1, behind: '60 mm' } },
        })
        const free = bestCandidate(spec, bar, section)
        if (!free) throw new Error('nothing is on hand')
        const singly = spec.shop.bits
          .filter((bit) => bit.size <= Math.max(1.6 * section.width, 2.1))
          .flatMap((bit) => spec.shop.bars.map((diameter) => bestCandidate(spec, { ...bar, bit, diameter }, section)))
          .filter((one) => one !== undefined)
        const sound = singly.filter(isSound)
        const most = Math.max(...sound.map(worth))
        if (sound.length > 0) expect([isSound(free), worth(free)]).toEqual([true, most])
        // Where none is sound, none is nearer to it.
        const short = ({ broken }: Candidate) => broken.reduce((sum, by) => sum + by, 0)
        expect(short(free)).toBeLessThanOrEqual(Math.min(...singly.map(short)))
      }
    },
  )

  const asked: readonly Partial<BarSpec>[] = [undefined, 0, 3, 8, 15, -5].flatMap((rake) =>
    [undefined, 0.01, 0.02, 0.08].map((infeed) => ({
      ...(rake !== undefined && { rake }),
      ...(infeed !== undefined && { infeed }),
    })),
  )
  it.each([
    ['in an open bore', { bore: { diameter: 24, length: 38 }, tooling: { bar: {} } }],
    ['in a blind one', { bore: { diameter: 30, length: 30, blind: { beyond: 14 } }, tooling: { bar: {} } }],
    [
      'with a bit that leans',
      { bore: { diameter: 30, length: 30, blind: { beyond: 9 } }, tooling: { bar: { form: 'inclined', incline: 20 } } },
    ],
    ['of long chips', { bore: { diameter: 20, length: 90 }, tooling: { bar: {} } }],
  ])('for many infeeds and rakes gives what it gives for each: %s', (_, document) => {
    const { spec, bar, section } = job({ units: 'mm', feature: { keyway: null }, ...document })
    const many = bestCandidates(spec, section)
    for (const more of asked) {
      const one = { ...bar, ...more }
      expect([more, told(many(one))]).toEqual([more, told(bestCandidate(spec, one, section))])
    }
  })
})
