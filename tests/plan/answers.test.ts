import { describe, expect, it } from 'vitest'
import { atGate, giveFound, readingOf, toGo } from '../../src/plan/answers.ts'
import { designed } from '../dimensions/designed.ts'

const { plan, measuring, loads, section } = ((made) => {
  if (!made.plan || !made.loads) throw new Error('no plan')
  return { ...made, plan: made.plan, loads: made.loads }
})(
  designed({
    units: 'mm',
    bore: { diameter: 24, length: 38 },
    hub: { outside: 62, material: 'grey iron' },
    feature: { keyway: { standard: 'iso-773' } },
    tooling: { bar: { diameter: 18, bit: { size: 8 }, nose: { width: 7.99 }, infeed: 0.02 } },
  }),
)
// The second: the first stands too near the bore for all of these.
const gate = plan.cuts[0]?.gates[1]
if (!gate || gate.expected === undefined) throw new Error('no gate')
const { expected } = gate
const limits = { most: measuring.across.most, none: section.bore.upper }

describe('at a gate', () => {
  it('as expected: go on; within the band of the lag too', () => {
    expect(atGate(gate, expected, limits)).toMatchObject({ says: 'go on', off: 0 })
    expect(atGate(gate, gate.byDial - loads.lag.least, limits).says).toBe('go on')
    expect(atGate(gate, expected - 0.03, limits).says).toBe('go on')
  })

  it('a little off: watch; more: stop, short or deep', () => {
    expect(atGate(gate, expected - 0.05, limits).says).toBe('watch')
    expect(atGate(gate, expected - 0.081, limits).says).toBe('short')
    expect(atGate(gate, gate.most + 0.001, limits).says).toBe('deep')
    expect(atGate(gate, gate.most - 0.001, limits).says).toBe('watch')
    expect(atGate(gate, gate.least - 0.001, limits).says).toBe('short')
  })

  it('from the second gate on only what has changed counts: a steady lag is right, a growing one is not', () => {
    const before = -0.12
    expect(atGate(gate, expected + before, { ...limits, before }).says).toBe('go on')
    expect(atGate(gate, expected + before - 0.06, { ...limits, before }).says).toBe('watch')
    expect(atGate(gate, expected + before - 0.1, { ...limits, before }).says).toBe('short')
    expect(atGate(gate, expected + before + 0.1, { ...limits, before }).says).toBe('deep')
  })

  it('past the upper limit, or no more than the bore', () => {
    expect(atGate(gate, measuring.across.most + 0.03, limits).says).toBe('too deep')
    expect(atGate(gate, 24, limits).says).toBe('the bore itself')
  })

  it('between floors as across', () => {
    const floors = { byDial: 30, expected: 29.8, least: 29.64, most: 30.1 }
    expect(atGate(floors, 29.8, { most: 32, none: 0 }).says).toBe('go on')
    expect(atGate(floors, 29.5, { most: 32, none: 0 }).says).toBe('short')
  })

  it('a machine that gives more than was taken: its stiffness, found again from the lag that it would make', () => {
    // The lag at its upper end is thrust × (bar + 1/machine) and less what tips in: linear in 1/machine.
    const softer = 2100
    const behind = loads.lag.most + loads.thrust.most * (1 / softer - 1 / loads.machineGive)
    const share = (gate.byDial - expected) / loads.lag.most
    expect(giveFound(loads, gate, behind * share)).toBeCloseTo(softer, 6)
    expect(giveFound(loads, gate, loads.lag.most * share)).toBeCloseTo(loads.machineGive, 6)
    // Stiffer than anything: no machine.
    expect(giveFound(loads, gate, -1)).toBeUndefined()
    // At the edge or at the end passes are halved, or spring: that says nothing of the machine.
    for (const kind of ['edge', 'last', 'setting'] as const)
      expect(giveFound(loads, { ...gate, kind }, loads.lag.most * share)).toBeUndefined()
    const { expected: _, ...untold } = gate
    expect(giveFound(loads, untold, loads.lag.most * share)).toBeUndefined()
  })
})

describe('what is missing', () => {
  const { across } = measuring
  it('is added to the dial, on its mark, toward shallow', () => {
    const { says, missing, reading } = toGo(plan, across, 24, 4, across.least - 0.05)
    expect(says).toBe('add')
    expect(missing).toBeCloseTo(0.15, 9)
    expect(reading).toBeCloseTo(4.14, 9)
  })

  it('nothing within limits; too deep and the bore are said', () => {
    expect(toGo(plan, across, 24, 4, across.middle)).toMatchObject({ says: 'good', reading: 4 })
    expect(toGo(plan, across, 24, 4, across.least).says).toBe('good')
    expect(toGo(plan, across, 24, 4, across.most + 0.01).says).toBe('too deep')
    expect(toGo(plan, across, 24, 4, 24).says).toBe('the bore itself')
  })

  it('ends: add what is missing again and again, the bar giving a third of it, and it comes into limits', () => {
    let [reading, slot] = [plan.bores.reading, across.least - 0.3]
    for (let round = 0; round < 12 && toGo(plan, across, 24, reading, slot).says === 'add'; round++) {
      const next = toGo(plan, across, 24, reading, slot).reading
      slot += (2 / 3) * (next - reading)
      reading = next
    }
    expect(slot).toBeGreaterThanOrEqual(across.least - 1e-9)
    expect(slot).toBeLessThanOrEqual(across.most)
  })

  it('a new setting: the dial is set to what was measured', () => {
    expect(readingOf(plan, gate.byDial)).toBeCloseTo(gate.reading, 9)
  })
})
