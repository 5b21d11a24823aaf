import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { toGo } from '../../src/plan/answers.ts'
import { boreFound, wantedOf, within } from '../../src/plan/found.ts'
import { expectedOf, readingBefore, standing, stretchesOf } from '../../src/plan/standing.ts'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'
import { designed } from '../dimensions/designed.ts'

const folder = join(import.meta.dirname, '../specimens')
const jobs = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .flatMap((name) => {
    const read = parse(readFileSync(join(folder, name), 'utf8'))
    const outcome = 'document' in read ? readSpec(read.document) : undefined
    if (!outcome || !('spec' in outcome)) return []
    const made = design(outcome.spec)
    return made.plan ? [[name, { ...made, plan: made.plan }] as const] : []
  })
const named = (name: string) => {
  const found = jobs.find(([file]) => file === `${name}.yaml`)
  if (!found) throw new Error(`no specimen ${name}`)
  return found[1]
}

describe('stroke by stroke', () => {
  it('there are enough jobs to go by', () => expect(jobs.length).toBeGreaterThan(10))

  for (const [name, { plan }] of jobs)
    it(`${name}: every stroke is counted once, each stretch ends at its gate, and what is left comes to nothing`, () => {
      const stretches = stretchesOf(plan)
      const strokes = stretches.reduce((sum, { passes, springPasses }) => sum + passes.length + springPasses, 0)
      const planned = plan.cuts
        .flatMap(({ gates }) => gates)
        .reduce((sum, { passes, springPasses }) => sum + passes + springPasses, 0)
      expect(strokes).toBe(planned * plan.keyways)
      let count = 0
      for (const at of stretches) {
        expect(at.passes.at(-1)?.reading ?? at.to).toBeCloseTo(at.to, 9)
        let reading = at.from
        for (let now = standing(plan, at, reading); now.next; now = standing(plan, at, reading)) {
          expect(now.left).toBeCloseTo(Math.max(0, plan.bores.reading - reading), 9)
          expect(now.strokesLeft).toBe(strokes - count)
          expect(now.by).toBeGreaterThan(0)
          const before = reading
          reading = now.next.reading
          expect(readingBefore(at, reading)).toBeCloseTo(before, 9)
          count += 1
        }
        expect(reading).toBeCloseTo(at.to, 9)
        for (let springs = 0; standing(plan, at, reading, springs).springsLeft > 0; springs++) count += 1
        expect(standing(plan, at, reading, at.springPasses).toGate).toBe(0)
      }
      expect(count).toBe(strokes)
    })

  it('goes by what the dial reads, whatever was counted', () => {
    const { plan } = named('cider-mill-pulley')
    const [at] = stretchesOf(plan)
    if (!at) throw new Error('nothing to cut')
    const third = at.passes[2]?.reading ?? 0
    expect(standing(plan, at, third + 0.005).next?.reading).toBe(at.passes[3]?.reading)
    expect(standing(plan, at, at.to + 0.3)).toMatchObject({ toGate: 0, by: 0 })
    expect(standing(plan, at, at.to + 0.3).beyond).toBeCloseTo(0.3, 9)
    expect(readingBefore(at, at.to + 0.3)).toBe(at.to)
    expect(readingBefore(at, at.from)).toBe(at.from)
  })

  it('slot by slot to one gate, before any goes deeper', () => {
    const spline = jobs.find(([, { plan }]) => plan.keyways > 3)?.[1].plan
    if (!spline) throw new Error('no spline')
    const order = stretchesOf(spline).map(({ gate, slot }) => [gate, slot])
    expect(order.slice(0, spline.keyways)).toEqual(Array.from({ length: spline.keyways }, (_, slot) => [0, slot]))
    expect(order[spline.keyways]).toEqual([1, 0])
  })
})

describe('what is found', () => {
  for (const [name, { spec, section, plan, bar, groundBar }] of jobs)
    it(`${name}: every row of the card's bores comes out as the card has it`, () => {
      for (const row of plan.bores.rows) {
        const found = boreFound({ spec, section, plan, bar: bar ?? groundBar }, [row.bore, row.bore])
        expect(found?.infeed).toBeCloseTo(row.infeed, 6)
        expect(found?.leftOnDial).toBeCloseTo(row.leftOnDial, 6)
      }
    })

  it('a bore outside its limits, by how much, whichever of the four says so', () => {
    const job = named('cider-mill-pulley')
    expect(boreFound(job, [])).toBe(undefined)
    expect(boreFound(job, [24.01, 24.01, 24.012, 24.012])).toMatchObject({ says: 'within', off: 0 })
    expect(boreFound(job, [24.01, 24.034])?.says).toBe('large')
    // H7 at 24: 0 to +21 µm (ISO 286-2).
    expect(boreFound(job, [24.01, 24.034])?.off).toBeCloseTo(0.013, 9)
    expect(boreFound(job, [24.01, 23.99])?.off).toBeCloseTo(-0.01, 9)
  })

  it('within its limits or not, and how far off', () => {
    expect(within(22.11, { least: 22.06, most: 22.14 })).toMatchObject({ good: true })
    expect(within(22.15, { least: 22.06, most: 22.14 }).good).toBe(false)
    expect(within(22.15, { least: 22.06, most: 22.14 }).off).toBeCloseTo(0.05, 9)
  })

  it('what a gate measures is what its limits are of', () => {
    for (const [, { plan, measuring, section }] of jobs) {
      const wanted = wantedOf(plan, measuring, section)
      expect(wanted === undefined).toBe(plan.gateBy === 'nothing')
      const last = plan.cuts.at(-1)?.gates.at(-1)
      if (!wanted || !last) continue
      expect(wanted.least).toBeLessThanOrEqual(wanted.middle)
      // At the last gate next to nothing is missing, measured as it is.
      expect(Math.abs(expectedOf(last, plan.gateBy).byDial - wanted.middle)).toBeLessThan(0.35)
    }
  })

  it('between two floors the limits are twice those of a floor, whether the spline names them or not', () => {
    const job = { units: 'mm', bore: { diameter: 25, tolerance: [0, 0], length: 40 }, hub: { outside: 60 } }
    const { plan, measuring, section } = designed({
      ...job,
      feature: { keyway: { width: 8, across: [28.2, 28.6], at: [0, 180] } },
    })
    if (!plan) throw new Error('no plan')
    const { floorToFloor, ...without } = measuring
    // 2 × (28.2 − 12.5) to 2 × (28.6 − 12.5).
    const wanted = { by: 'floor to floor', least: 31.4, middle: 31.8, most: 32.2, none: 25 }
    for (const told of [wantedOf(plan, measuring, section), wantedOf(plan, without, section)])
      expect(told).toEqual({
        ...wanted,
        least: expect.closeTo(31.4, 9),
        middle: expect.closeTo(31.8, 9),
        most: expect.closeTo(32.2, 9),
      })
    expect(floorToFloor?.pairs).toEqual([[1, 2]])
  })

  it('between two floors each slot goes on by half of what is missing', () => {
    const spline = jobs.find(([, { plan }]) => plan.gateBy === 'floor to floor')?.[1]
    if (!spline?.measuring.floorToFloor) throw new Error('nothing is measured from floor to floor')
    const { plan, measuring } = spline
    const limits = spline.measuring.floorToFloor
    const measured = limits.least - 0.2
    const { reading, missing } = toGo(plan, limits, 0, 1, measured)
    expect(missing).toBeCloseTo(limits.middle - measured, 9)
    expect(reading - 1).toBeGreaterThan((plan.dial.perInfeed * missing) / 2 - plan.dial.mark - 1e-9)
    expect(reading - 1).toBeLessThanOrEqual((plan.dial.perInfeed * missing) / 2 + 1e-9)
    expect(measuring.toBore).toBe(false)
  })
})
