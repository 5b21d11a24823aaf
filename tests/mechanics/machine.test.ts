import { describe, expect, it } from 'vitest'
import { secondMoment } from '../../src/mechanics/bar.ts'
import { cuttingForce } from '../../src/mechanics/cutting.ts'
import {
  diameterForStiffness,
  handGain,
  infeedForForce,
  machineFromPull,
  toothBears,
} from '../../src/mechanics/machine.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const inch = 25.4
const pound = 4.4482216152605

describe('a pull at the nose', () => {
  it('reads bar and machine together: .75 × 4.8 in, bar alone 2215 N/mm, machine 5000: worked scenario, derived', () => {
    expect(machineFromPull(1535, 0.75 * inch, 4.8 * inch)).toBeCloseTo(5000, -2)
    const exact = 1 / (1 / 5000 + 1 / 2215)
    expect(exact).toBeCloseTo(1535, 0)
  })

  it('gives the machine back whatever it is, by springs in a row', () => {
    for (const machine of [300, 5000, 80_000])
      for (const [d, L] of [
        [8, 60],
        [16, 40],
        [25, 150],
      ] as const) {
        const bar = (3 * 207_000 * secondMoment(d)) / L ** 3
        // one newton stretches each of the two springs
        expect(machineFromPull(1 / (1 / bar + 1 / machine), d, L)).toBeCloseTo(machine, 3)
      }
  })

  it('is a bad reading where it is as stiff as the bar alone, or is nothing', () => {
    const bar = (3 * 207_000 * secondMoment(16)) / 60 ** 3
    expect(machineFromPull(bar, 16, 60)).toBeUndefined()
    expect(machineFromPull(2 * bar, 16, 60)).toBeUndefined()
    expect(machineFromPull(0, 16, 60)).toBeUndefined()
  })
})

describe('the hand', () => {
  it('8 in handle, 4 in a turn, 0.8: ×10.05; 94.555 lbf asks 9.4, 163.5 asks 16.3: worked scenario, derived', () => {
    const gain = handGain({ radius: 8, travel: 4, efficiency: 0.8 })
    expect(gain).toBeCloseTo(10.05, 2)
    expect(94.555285 / gain).toBeCloseTo(9.4, 1)
    expect(163.5 / gain).toBeCloseTo(16.3, 1)
  })

  it('puts in the work that comes out: over one turn the hand does what the cut takes and what is lost', () => {
    const drive = { radius: 75, travel: 18, efficiency: 0.65 }
    const atHandle = 900 / handGain(drive)
    expect(atHandle * 2 * Math.PI * drive.radius * drive.efficiency).toBeCloseTo(900 * drive.travel, 6)
  })

  it('a rack tooth of module 1.5, 12 wide, form 0.3, at 150 N/mm² bears 810 N: Lewis; worked scenario, derived', () => {
    expect(toothBears({ module: 1.5, width: 12, form: 0.3, stress: 150 })).toBeCloseTo(810, 9)
  })
})

describe('from a force to a size', () => {
  const mild = kienzleGroup(1) as NonNullable<ReturnType<typeof kienzleGroup>>

  it('150 lbf on a 1/4 in nose in mild steel: .022776 mm = .000897 in: worked scenario, derived', () => {
    const infeed = infeedForForce(mild, 0.25 * inch, 150 * pound, { rake: 10, edge: 'worn' })
    expect(infeed).toBeCloseTo(0.022776, 5)
    expect(infeed / inch).toBeCloseTo(0.000897, 6)
    expect(cuttingForce(mild, 0.25 * inch, infeed, 10, 'worn')).toBeCloseTo(150 * pound, 6)
  })

  it('a bar 4.8 in long that 94.555285 lbf bends by .001 in: 1.240129 in: worked scenario, derived', () => {
    const d = diameterForStiffness(94.555285 * pound, 4.8 * inch, 0.001 * inch)
    // 30e6 psi and 207 GPa differ by 0.02 %; the scenario is worked with 207 GPa.
    expect(d / inch).toBeCloseTo(1.240129, 4)
    expect((94.555285 * pound * (4.8 * inch) ** 3) / (3 * 207_000 * secondMoment(d))).toBeCloseTo(0.001 * inch, 9)
  })
})
