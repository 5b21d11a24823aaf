import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { budgetOf, spreadOf } from '../../src/plan/errors.ts'
import { designed } from '../dimensions/designed.ts'
import { eightBroach } from '../dimensions/broaches.ts'

const by = (...sizes: number[]) => sizes.map((size, n) => ({ of: `${n}`, by: size, source: 'a test' }))

describe('an error budget', () => {
  it('adds up all against it, and as the root of the squares', () => {
    // Three readings of ±.0005 in and seating of ±.0002 in: worst .0017, likely .000889; derived.
    const budget = budgetOf('depth', by(0.0005, 0.0005, 0.0002, 0.0005), 0.005)
    expect(budget.worst).toBeCloseTo(0.0017, 12)
    expect(budget.likely).toBeCloseTo(0.000889, 6)
    expect(budget.contributions.map((one) => one.by)).toEqual([0.0005, 0.0005, 0.0005, 0.0002])
  })

  it('of one contribution alone, 95 of 100 come out within 0.95 of it', () => {
    expect(spreadOf(budgetOf('width', by(1), 1))).toBeCloseTo(0.95, 2)
  })

  it('of two alike is the triangle’s: 1 − (1 − x/2)² = 0.95', () => {
    // Sum of two even chances on ±1: P(|s| ≤ x) = 1 − (1 − x/2)²; x = 2 − 2√0.05.
    expect(spreadOf(budgetOf('width', by(1, 1), 1))).toBeCloseTo(2 - 2 * Math.sqrt(0.05), 1)
  })

  it('of many alike comes near the bell: 1.96 times the spread of a single one, √3 under its range', () => {
    expect(spreadOf(budgetOf('width', by(...Array.from({ length: 12 }, () => 1)), 1)) / (1.96 * 2)).toBeCloseTo(1, 1)
  })

  it('lies between the largest contribution’s own and the worst, and is the same each time', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 }), (sizes) => {
        const budget = budgetOf('depth', by(...sizes), 1)
        const spread = spreadOf(budget, 2000)
        expect(spread).toBe(spreadOf(budget, 2000))
        expect(spread).toBeLessThanOrEqual(budget.worst)
        expect(spread).toBeGreaterThan(0.85 * Math.max(...sizes))
        expect(budget.likely).toBeLessThanOrEqual(budget.worst + 1e-12)
        expect(budget.likely).toBeGreaterThanOrEqual(Math.max(...sizes) - 1e-12)
      }),
      { numRuns: 100 },
    )
  })
})

const pulley = {
  units: 'mm',
  bore: { diameter: 24, length: 38 },
  hub: { outside: 62, material: 'grey iron' },
  feature: { keyway: {} },
}
const of = (budgets: ReturnType<typeof designed>['errors'], way: 'bar' | 'press', what: string) =>
  budgets?.[way]?.find((budget) => budget.of === what)

describe('the errors of a job', () => {
  it('follow the instruments that the shop tells of', () => {
    const loose = designed({ ...pulley, tooling: { bar: {} } })
    const fine = designed({ ...pulley, tooling: { bar: {} }, shop: { measuring: { boreGauge: 0.004, caliper: 0.03 } } })
    const measuring = (job: typeof loose) =>
      of(job.errors, 'bar', 'depth')?.contributions.find((one) => one.of === 'measuring across')
    expect(measuring(loose)).toEqual({ of: 'measuring across', by: 0.02, source: 'judgement' })
    expect(measuring(fine)).toEqual({ of: 'measuring across', by: 0.004, source: 'the shop file' })
  })

  it('the indicator that the bar is set by, blocks where they measure, a depth micrometer in the bushing', () => {
    const measuring = { indicator: 0.005, blocks: 0.002, depthMicrometer: 0.003, boreGauge: 0.004 }
    const by = (job: ReturnType<typeof designed>, way: 'bar' | 'press', what: string) =>
      of(job.errors, way, 'depth')?.contributions.find((one) => one.of === what)?.by ?? NaN
    const [bare, told] = [{}, { shop: { measuring } }].map((more) =>
      designed({ ...pulley, tooling: { bar: {} }, ...more }),
    )
    if (!bare || !told) throw new Error('no job')
    expect(by(told, 'bar', 'bar not along the bore') - by(bare, 'bar', 'bar not along the bore')).toBeCloseTo(0.005, 12)
    // A slot that takes away part of the wall opposite: a plug in the bore, and blocks over it.
    const two = designed({
      ...pulley,
      feature: { keyway: { at: [0, 170] } },
      tooling: { bar: {} },
      shop: { measuring },
    })
    expect(two.plan?.gateBy).toBe('plug and blocks')
    expect([by(told, 'bar', 'measuring across'), by(two, 'bar', 'measuring across')]).toEqual([0.004, 0.002])
    const pressed = designed({ ...pulley, tooling: { press: { broach: eightBroach } }, shop: { measuring } })
    expect(by(pressed, 'press', 'measuring bushing back to slot floor')).toBe(0.003)
  })

  it('of the press are those of its readings and of the play between bore, bushing and broach', () => {
    const job = designed({
      units: 'mm',
      bore: { diameter: 25, length: 40 },
      feature: { keyway: {} },
      tooling: { press: { broach: eightBroach } },
    })
    expect(of(job.errors, 'press', 'depth')?.worst).toBeCloseTo(3 * 0.0127 + 0.00508, 9)
    const play = of(job.errors, 'press', 'position')
    expect(play?.worst).toBeCloseTo(
      (job.section.bore.upper - (job.bushing?.outside.lower ?? 0)) / 2 +
        ((job.bushing?.slotWidth.upper ?? 0) - 8.018) / 2,
      9,
    )
  })

  it('grow where the work is turned on to other slots', () => {
    const one = designed({ ...pulley, tooling: { bar: {} } })
    const two = designed({ ...pulley, feature: { keyway: { at: [0, 100.3] } }, tooling: { bar: {} } })
    expect(of(two.errors, 'bar', 'position')?.worst ?? 0).toBeGreaterThan(of(one.errors, 'bar', 'position')?.worst ?? 0)
    // Minutes of arc at the bore's wall.
    const turning = (job: typeof one) =>
      of(job.errors, 'bar', 'position')?.contributions.find((each) => each.of === 'turning the work on')?.by
    expect(two.indexing?.spread).toBeGreaterThan(0)
    expect(turning(two)).toBeCloseTo(12.005 * Math.tan(((two.indexing?.spread ?? NaN) / 60) * (Math.PI / 180)), 4)
    expect(turning(one)).toBeUndefined()
  })

  it('are told of a bar of one piece too: its nose is ground to limits like a bit’s', () => {
    const job = designed({
      units: 'mm',
      bore: { diameter: 6, length: 10 },
      hub: { outside: 16, material: 'brass' },
      feature: { keyway: { width: [1.988, 2.012], height: 2, across: [7, 7.1] } },
      tooling: { bar: {} },
    })
    expect(job.groundBar).toBeDefined()
    expect(job.errors?.bar?.map((budget) => budget.of)).toEqual(['depth', 'width', 'position'])
    const nose = of(job.errors, 'bar', 'width')?.contributions.find((each) => each.of === 'the nose’s width')?.by
    const { lower, upper } = job.groundBar?.noseTolerance ?? { lower: NaN, upper: NaN }
    expect(nose).toBeCloseTo((upper - lower) / 2, 12)
  })
})
