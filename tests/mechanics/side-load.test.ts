import { describe, expect, it } from 'vitest'
import { cuttingForce, thrustRatio } from '../../src/mechanics/cutting.ts'
import { sidewaysBend, slipShift, stripOffset, twistRadians, worstStripTorque } from '../../src/mechanics/side-load.ts'
import { chuckHolds, jawsHoldUpright, tippingMoment, viseHolds } from '../../src/mechanics/work-holding.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const inch = 25.4
const pound = 4.4482216152605
const mild = kienzleGroup(1) as NonNullable<ReturnType<typeof kienzleGroup>>

describe('a cut beside the middle of the nose', () => {
  it('25/8, 6 nose, strip of 2, infeed .02, Ø16 × 60: bends .0010 + .0013 mm sideways: worked scenario, derived', () => {
    const cutting = cuttingForce(mild, 2, 0.02, 10, 'worn')
    const held = { diameter: 16, overhang: 60, projection: 4.5, machine: 5000, stroke: 'push' } as const
    const off = stripOffset(6, 2)
    expect(off).toBe(2)
    const bar = sidewaysBend({ ...held, machine: Infinity }, cutting, off)
    expect(bar).toBeCloseTo(0.001, 4)
    expect(sidewaysBend(held, cutting, off) - bar).toBeCloseTo(0.0013, 4)
  })

  it('side infeed at full depth: 22.003015 lbf in = 2.486007 N m, and .000319 rad of twist: worked scenario, derived', () => {
    // Edge .130 in of the 94.555285 lbf on a quarter inch; thrust as great as the cut.
    const force = (94.555285 * 0.13) / 0.25
    expect(force).toBeCloseTo(49.168748, 5)
    const torque = force * (0.5125 - 0.13 / 2)
    expect(torque).toBeCloseTo(22.003015, 5)
    const newtons = torque * pound * inch
    expect(newtons / 1000).toBeCloseTo(2.486007, 5)
    expect(twistRadians(0.625 * inch, 2.5 * inch, newtons)).toBeCloseTo(0.000319, 6)
  })

  it('a slip of the spindle by .25, .5 and 1° shifts the nose .002236, .004472 and .008944 in: worked scenario, derived', () => {
    const shifts = [0.25, 0.5, 1].map((angle) => slipShift(0.3125 + 0.2, angle))
    expect(shifts[0]).toBeCloseTo(0.002236, 6)
    expect(shifts[1]).toBeCloseTo(0.004472, 5)
    expect(shifts[2]).toBeCloseTo(0.008944, 5)
  })

  it('the worst strip of all is half the nose, by trying every strip', () => {
    const width = 6
    const thrust = (strip: number) => thrustRatio(10).most * cuttingForce(mild, strip, 0.02, 10, 'dull')
    let worst = 0
    for (let strip = 0; strip <= width; strip += 0.001)
      worst = Math.max(worst, thrust(strip) * stripOffset(width, strip))
    expect(worstStripTorque(width, thrust(width))).toBeCloseTo(worst, 6)
  })
})

describe('work holding', () => {
  it('two jaws, three jaws, friction 0.12 on each: judgement', () => {
    expect(viseHolds(10_000)).toBeCloseTo(2400, 9)
    expect(chuckHolds(10_000)).toBeCloseTo(3600, 9)
  })

  it('a support that ends short of the line of cut lets it tip, one under it does not', () => {
    expect(tippingMoment(900, 15.8, 13)).toBeCloseTo(2520, 9)
    expect(tippingMoment(900, 15.8, 15.8)).toBe(0)
    expect(tippingMoment(900, 15.8, 30)).toBe(0)
  })
})

describe('jaws against tipping', () => {
  it('friction 0.12 on each face, at its own distance from the axis that the work tips about, whichever way that lies', () => {
    // Three jaws on work 60 across: each holds 0.12 of 5000 N, at its distance from a middle line turned degree by degree.
    const held = Array.from({ length: 360 }, (_, turn) =>
      [0, 120, 240].reduce(
        (sum, jaw) => sum + 0.12 * 5000 * 30 * Math.abs(Math.sin(((jaw + turn) * Math.PI) / 180)),
        0,
      ),
    )
    expect(jawsHoldUpright(5000, 60, 'chuck')).toBeCloseTo(Math.min(...held), 6)
    // Two faces 60 apart.
    expect(jawsHoldUpright(5000, 60, 'vise')).toBeCloseTo(2 * 0.12 * 5000 * 30, 9)
  })
})
