import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { passesFor } from '../../src/plan/schedule.ts'
import { readSpec } from '../../src/spec/read.ts'

const planOf = (document: object) => {
  const read = readSpec(document)
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  const { plan } = design(read.spec)
  if (!plan) throw new Error('no plan')
  return plan
}

const inch = 25.4
const job = {
  name: 'plain',
  units: 'in',
  bore: { diameter: 1, tolerance: [0, 0], length: 1 },
  hub: { outside: 3, material: 'mild steel' },
  feature: { keyway: { width: 0.25, across: 1.114123 } },
  tooling: {
    bar: {
      machine: 'mill',
      behind: 2,
      diameter: 0.625,
      projection: 0.2,
      bit: { shape: 'square', size: 0.25 },
      nose: { width: 0.25 },
      infeed: 0.001,
    },
  },
} // prettier-ignore

describe('passes', () => {
  it('130 passes of .001 and 9.75 minutes for 1/4 in a 1 in bore: worked scenario, derived', () => {
    const plan = planOf(job)
    expect(plan.passes).toBe(130)
    expect(plan.minutes).toBeCloseTo(9.75, 9)
  })

  it('stages at the quarters: across .984123 to 1.114123 by .0325, worked scenario, derived; whole passes between', () => {
    const { checks } = planOf(job)
    expect(checks.map(({ after }) => after)).toEqual([33, 65, 98, 130])
    const wanted = [0.984123 + 0.033, 0.984123 + 0.065, 0.984123 + 0.098, 1.114123]
    checks.forEach(({ across }, i) => expect(across / inch).toBeCloseTo(wanted[i] ?? 0, 5))
  })

  it('a dial that reads diameter goes twice as far: .130 is .260, 130 marks of .002 (worked scenario, derived)', () => {
    const { dial } = planOf({
      ...job,
      tooling: { bar: { ...job.tooling.bar, machine: 'lathe', dial: { mark: 0.002, reads: 'diameter' } } },
    })
    expect(dial.target / inch).toBeCloseTo(0.26, 5)
    expect(dial.marks).toBeCloseTo(130, 3)
  })

  it('counts a rest as a pass, and none for a hair', () => {
    expect(passesFor(0.13, 0.001)).toBe(130)
    expect(passesFor(0.1301, 0.001)).toBe(131)
    expect(passesFor(0, 0.001)).toBe(0)
  })
})
