// What the ways out set, worked from the job; that each heals is tried in design.test.ts.
import { describe, expect, it } from 'vitest'
import type { Proposal } from '../../src/checks/rule.ts'
import { everyRule, judged, sizedOf } from './jobs.ts'

const proposed = (id: string, document: Readonly<Record<string, unknown>>): readonly Proposal[] => {
  const rule = everyRule.find((rule) => rule.id === id)
  if (!rule) throw new Error(`no such rule: ${id}`)
  return judged(rule, { document }).proposals()
}
const setBy = (ways: readonly Proposal[], says: string) => ways.find(({ say }) => say.startsWith(says))?.set

const job = (bore: object, tooling: object) => ({
  units: 'mm',
  bore: { diameter: 25, tolerance: [0, 0], length: 40, ...bore },
  hub: { outside: 60 },
  feature: { keyway: { width: 8, height: 7, across: [28.3, 28.9] } },
  tooling,
})
/** The floor's corner at the most: 16.4 from the axis, 4 to the side. Twice that and 0.4, up to 0.1. */
const reach = Math.hypot(28.9 - 12.5, 4)
const relief = `${Math.ceil((2 * reach + 0.4) * 10) / 10} mm`

/** Everything of a bar fixed: in a blind bore another form would be chosen. */
const upright = { diameter: 16, projection: 5, bit: { shape: 'square', size: 6 }, form: 'end screw', screw: 'M5' }

describe('ways out of a blind bore', () => {
  it('a relief groove clears the corner of the deepest floor, and is as long as overtravel and chip', () => {
    expect(relief).toBe('34.2 mm')
    const blind = { blind: { beyond: 30, relief: { diameter: 26, length: 1.5 } } }
    const ways = proposed('blind-relief-wide-enough', job(blind, { bar: {} }))
    expect(ways[0]?.set).toEqual({ 'bore.blind.relief.diameter': relief, 'bore.blind.relief.length': '2 mm' })
  })

  it('cut on the pull stroke, the groove takes the whole edge and 1 mm', () => {
    const document = job({ blind: { beyond: 1 } }, { bar: upright })
    expect(setBy(proposed('blind-bore-deep-enough', document), 'Cut on the pull stroke')).toEqual({
      'tooling.bar.stroke': 'pull',
      'bore.blind.relief.length': '7 mm',
      'bore.blind.relief.diameter': relief,
    })
    // A groove that is there keeps its diameter, and its length where that is more.
    const grooved = job({ blind: { beyond: 1, relief: { diameter: 40, length: 9 } } }, { bar: upright })
    expect(setBy(proposed('blind-bore-deep-enough', grooved), 'Cut on the pull stroke')).toEqual({
      'tooling.bar.stroke': 'pull',
      'bore.blind.relief.length': '9 mm',
    })
  })

  it('the bar in place of the broach: 1.6 slot widths and 6 beyond, and the groove', () => {
    const broach = {
      toothWidth: 8,
      bodyWidth: 8,
      firstTooth: 12,
      lastTooth: 14,
      pilot: 11.8,
      teeth: 21,
      toothedLength: 200,
      overall: 260,
      pilotLength: 30,
    } // prettier-ignore
    const set = setBy(
      proposed('broach-runs-through', job({ blind: { beyond: 5 } }, { press: { broach } })),
      'Cut it with the bar',
    )
    expect(set).toMatchObject({
      'bore.blind.beyond': '19 mm',
      'bore.blind.relief.diameter': relief,
      'bore.blind.relief.length': '2 mm',
      'tooling.press': null,
    })
  })
})

describe('ways out of a bar', () => {
  it('one lane more, of a nose that overlaps, where one or two were cut; the bar is chosen again', () => {
    const document = job(
      {},
      { bar: { diameter: 16, projection: 5, nose: { width: 5, cornerRadius: 0 }, bit: { size: 6 }, give: '100 N/mm' } },
    )
    const set = setBy(proposed('lag-in-limits', document), 'Grind the nose')
    expect(set).toMatchObject({ 'tooling.bar.diameter': null, 'tooling.bar.projection': null, 'tooling.bar.bit': null })
    // Three lanes of w over 8: 3 w less two overlaps of a tenth of it, to a round figure up.
    const width = Number.parseFloat(`${set?.['tooling.bar.nose.width']}`)
    expect(width).toBeGreaterThanOrEqual(8 / 2.8 - 0.05)
    expect(width).toBeLessThan(4)
  })

  it('less rake, by the next smaller of 10, 8, 5, 3 and 0', () => {
    const document = job({}, { bar: { diameter: 10, projection: 6, rake: 25, give: '100 N/mm' } })
    const rakes = proposed('bar-does-not-hook', document).flatMap(({ set }) => set?.['tooling.bar.rake'] ?? [])
    expect(rakes).toEqual([10, 8, 5, 3, 0])
  })
})

describe('fewer of them', () => {
  const land = (feature: object, diameter = 28) =>
    proposed('land-between-keyways', { ...job({ diameter }, { bar: {} }), feature })

  it('splines by their count, as many as the bore has room for', () => {
    const ways = land({ spline: { count: 16, width: 6, major: 32 } })
    expect(ways.flatMap(({ set }) => set?.['feature.spline.count'] ?? [])).toEqual([13])
  })

  it('keyways by their angles: one', () => {
    expect(land({ keyway: { width: 8, across: 31.3, at: [0, 30] } }).map(({ set }) => set)).toContainEqual({
      'feature.keyway.at': 0,
    })
  })

  it('one keyway has none opposite: there is nothing to be judged', () => {
    const rule = everyRule.find(({ id }) => id === 'across-can-be-measured')
    const at = (angles: readonly number[]) =>
      rule?.applies?.(sizedOf({ ...job({}, { bar: {} }), feature: { keyway: { width: 8, across: 28.3, at: angles } } }))
    expect([at([0]), at([0, 90])]).toEqual([false, true])
  })
})

describe('a press that opens too little', () => {
  const broach = {
    toothWidth: 8,
    bodyWidth: 8,
    firstTooth: 12,
    lastTooth: 14,
    pilot: 11.8,
    teeth: 21,
    toothedLength: 200,
    overall: 260,
    pilotLength: 30,
  }
  const opens = everyRule.find(({ id }) => id === 'press-opens-far-enough')
  const found = (press: object) => {
    if (!opens) throw new Error('no such rule')
    return judged(opens, { document: job({}, { press: { broach, ...press } }) })
  }
  const ways = (press: object) =>
    found(press)
      .proposals()
      .map(({ say }) => say)

  // Hub 40, broach 260 less its pilot of 30: 270. The spacer is 60 high at the most.
  it('the spacer counts where the hub stands on one', () => {
    expect(found({ daylight: 329 })).toMatchObject({ verdict: 'fail', limit: 330 })
    expect(found({ daylight: 330 })).toMatchObject({ verdict: 'pass', limit: 330 })
    expect(found({ daylight: 329 }).reason).toContain('spacer, hub and broach take 330 mm')
    // Pilot and teeth, 230, are clear under the table itself.
    expect(found({ daylight: 270, below: 230 })).toMatchObject({ verdict: 'pass', limit: 270 })
    expect(found({ daylight: 270, below: 230 }).reason).toContain('; hub and broach take 270 mm')
  })

  it('where the spacer alone is too much, the hub stands on the table', () => {
    const without = expect.stringMatching(/on the table itself, without the spacer, over a hole with 230 mm clear/)
    expect(ways({ daylight: 270 })).toContainEqual(without)
    expect(ways({ daylight: 269 })).not.toContainEqual(without)
    expect(ways({ daylight: 269 })).toContain('Or take a taller press, or lower its table.')
  })
})
