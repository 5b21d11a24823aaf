import { describe, expect, it } from 'vitest'
import { sectionOf } from '../../src/dimensions/section.ts'
import { hubWeightOf } from '../../src/dimensions/hub-weight.ts'
import { design } from '../../src/design.ts'
import { specimen, specOf } from '../spec/specimens.ts'

const planned = (name: string) => {
  const made = design(specOf(specimen(`${name}.yaml`)))
  if (!made.plan) throw new Error(`${name} has no plan`)
  return { ...made, plan: made.plan }
}

describe('what the bench reads off the plan', () => {
  it('a dial that reads diameter reads twice the infeed, and goes on by twice what is missing', () => {
    const { plan } = planned('butter-churn-gear')
    for (const { infeed, left, onDial, leftOnDial } of plan.bores.rows) {
      expect(onDial).toBeCloseTo(2 * infeed, 9)
      expect(leftOnDial).toBeCloseTo(2 * left, 9)
    }
    expect(plan.missingOnDial).toBe(2)
  })

  it('between two floors each slot is short by half of what is missing', () => {
    expect(planned('chaff-cutter-clutch').plan.missingOnDial).toBe(0.5)
  })

  it('a nose without its corners touches sooner', () => {
    // Sharp corners at ±2.5 touch at √(12.00525² − 2.5²) = 11.742; rounded ones later, but before the crown.
    const { section, plan } = planned('cider-mill-pulley')
    const sharp = Math.sqrt(section.boreRadius ** 2 - 2.5 ** 2)
    expect(plan.sharpNose).toBeGreaterThan(0)
    expect(plan.sharpNose).toBeLessThan(section.boreRadius - sharp)
  })

  it('where part of the wall opposite is gone the gates are read over a plug', () => {
    const spec = specOf({
      name: 'three',
      units: 'mm',
      bore: { diameter: 40, length: 40 },
      hub: { outside: 100 },
      feature: { keyway: { width: 6, height: 6, across: 42.8, at: [0, 170] } },
      tooling: { bar: { behind: 60 } },
    })
    const made = design(spec)
    expect(made.plan?.gateBy).toBe('plug and blocks')
    for (const gate of made.plan?.cuts[0]?.gates ?? [])
      expect(gate.overPlug?.byDial).toBeCloseTo(gate.x - sectionOf(spec).sizes.bore.lower / 2, 9)
  })

  it('a hub weighs its ring, where its outside is told', () => {
    // π/4 · (180² − 100²) · 160 at 7.9 kg/dm³ (iron, upper end, from memory): 22.24 kg.
    expect(hubWeightOf(specOf(specimen('stone-crusher-sheave.yaml')))).toBeCloseTo(22.24, 1)
    expect(
      hubWeightOf(specOf({ name: 'a', units: 'mm', bore: { diameter: 24, length: 38 }, feature: { keyway: {} } })),
    ).toBeUndefined()
  })
})
