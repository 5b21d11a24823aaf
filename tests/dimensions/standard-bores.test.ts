import { describe, expect, it } from 'vitest'
import { findingsOf, sizesOf } from '../../src/design.ts'
import { fromInchName } from '../../src/standards/inch.ts'
import { asmeKeys } from '../../src/standards/asme-b17-1.ts'
import { isoKeys } from '../../src/standards/iso-773.ts'
import { designed, specOf } from './designed.ts'

/** Sixteenths of an inch as they are written. */
const named = (sixteenths: number): string => {
  const whole = Math.floor(sixteenths / 16)
  const rest = sixteenths % 16
  const by = [8, 4, 2, 1].find((each) => rest % each === 0) ?? 1
  const part = rest === 0 ? '' : `${rest / by}/${16 / by}`
  return [whole > 0 ? `${whole}` : '', part].filter((text) => text !== '').join('-')
}

interface Job {
  readonly name: string
  readonly document: object
}

const job = (units: 'mm' | 'in', diameter: number | string, size: number, hub: number, keyway: object): Job => ({
  name: `${diameter} ${units}, hub ${hub} bores, ${JSON.stringify(keyway)}`,
  document: {
    units,
    bore: { diameter, length: hub * size },
    hub: { outside: 3 * size },
    feature: { keyway },
    tooling: { bar: { behind: '100 mm' } },
  },
})

/** Every row of the table, at both ends and in the middle, and every whole bore to 40 mm. */
const metric = [1, 1.5].flatMap((hub) => {
  const ends = isoKeys.rows.flatMap(({ over, upTo }) => [over + 1, Math.round((over + upTo) / 2), upTo])
  const whole = Array.from({ length: 34 }, (_, n) => 7 + n)
  const bores = [...new Set([...ends, ...whole])].filter((bore) => bore <= 100).toSorted((a, b) => a - b)
  return bores.map((bore) => ({ bore, ...job('mm', bore, bore, hub, {}) }))
})

const inches = [1, 1.5].flatMap((hub) => {
  const sixteenths = asmeKeys.rows.flatMap(({ over, upTo }) =>
    [over / 25.4 + 1 / 16, upTo / 25.4].map((bore) => Math.round(bore * 16)),
  )
  const bores = [...new Set([...sixteenths, ...Array.from({ length: 12 }, (_, n) => 5 * n + 6), 64])]
  return bores
    .filter((bore) => bore > 5 && bore <= 64)
    .toSorted((a, b) => a - b)
    .flatMap((bore) =>
      (bore > 7 ? ['square', 'rectangular'] : ['square']).map((form) => ({
        bore: fromInchName(named(bore)),
        ...job('in', named(bore), bore / 16, hub, { form }),
      })),
    )
})

/** Musts of the bar that are broken, each with what it measures. */
const brokenIn = (document: object): readonly string[] =>
  findingsOf(sizesOf(specOf(document)))
    .filter(({ binding, verdict }) => binding === 'must' && (verdict === 'fail' || verdict === 'unknown'))
    .map(({ rule, measured, limit }) => `${rule} ${measured} ${limit}`)

describe('every standard keyway from the usual shop', () => {
  it('from 7 mm up there is a bar whose musts all hold', { timeout: 60_000 }, () => {
    expect(metric.length).toBeGreaterThan(90)
    for (const { name, document } of metric) expect(brokenIn(document), name).toEqual([])
  })

  it('from 3/8 in up there is a bar whose musts all hold', { timeout: 60_000 }, () => {
    expect(inches.length).toBeGreaterThan(80)
    for (const { name, document } of inches) expect(brokenIn(document), name).toEqual([])
  })

  it('whatever the hub is made of, in the sizes most met with', () => {
    for (const material of ['grey iron', 'aluminium', 'brass', 'medium carbon steel', 'stainless steel'])
      for (const diameter of [10, 14, 19, 25, 38, 55, 80]) {
        const { document } = job('mm', diameter, diameter, 1.2, {})
        const made = { ...document, hub: { outside: 3 * diameter, material } }
        expect(brokenIn(made), `${material}, ${diameter}`).toEqual([])
      }
  })

  // The table of keys starts over 6 mm and over 5/16 in: smaller ones by hand.
  const small = [
    job('mm', 6, 6, 1, { width: [1.988, 2.012], height: 2, across: [7, 7.1] }),
    job('mm', 6, 6, 1.5, { width: [1.988, 2.012], height: 2, across: [7, 7.1] }),
    job('mm', 6.5, 6.5, 1.2, {}),
    job('in', '1/4', 0.25, 1, { width: [0.0625, 0.0645], height: 0.0625, across: [0.285, 0.29] }),
    job('in', '5/16', 0.3125, 1, { width: [0.0625, 0.0645], height: 0.0625, across: [0.3475, 0.3525] }),
    job('in', '3/8', 0.375, 1, { form: 'square' }),
  ]
  it('the smallest bores hold too, or are refused with a way out that can be taken', () => {
    for (const { name, document } of small) {
      const { findings } = designed(document)
      for (const { rule, verdict, remedies } of findings)
        if (verdict === 'fail') expect(remedies.filter(({ set }) => set).length, `${name}: ${rule}`).toBeGreaterThan(0)
    }
  })
})
