import { describe, expect, it } from 'vitest'
import { bucklingLoad } from '../../src/mechanics/broaching.ts'
import { cuttingForce, rakeFactor } from '../../src/mechanics/cutting.ts'
import type { Broach } from '../../src/spec/spec.ts'
import { broachPressure } from '../../src/standards/broach-pressure.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const group = (number: number) => kienzleGroup(number) as NonNullable<ReturnType<typeof kienzleGroup>>
/** Without the factors of hand speed and slotting. */
const plain = (number: number, width: number, chip: number): number =>
  cuttingForce(group(number), width, chip, 0, 'stoned') / 1.32

describe('cutting force as others print it', () => {
  it.each([
    // VDI 3323 constants, worked by hand.
    [2, 8, 0.05, 1159.8],
    [1, 6, 0.1, 1313.7],
  ])('group %s, %s wide, %s thick: %s N', (number, width, chip, force) => {
    expect(plain(number, width, chip)).toBeCloseTo(force, 0)
  })

  it.each([
    // Constants of a textbook set, worked by hand: 42CrMo4, GG-25, St 60.
    ['42CrMo4', 2500, 0.26, 5, 0.1, 2274.6],
    ['GG-25', 1160, 0.26, 10, 0.1, 2110.9],
    ['St 60', 2110, 0.17, 3, 0.3, 2330.3],
  ])('%s, kc1.1 %s, m %s, %s wide, %s thick: %s N', (_name, kc11, exponent, width, chip, force) => {
    expect(
      cuttingForce({ ...group(1), kc11, exponent, referenceRake: 0 }, width, chip, 0, 'stoned') / 1.32,
    ).toBeCloseTo(force, 0)
  })

  it('12° of rake against 6 takes 0.94, 0° takes 1.06: Dietrich/Tschaetsch, 1 % a degree', () => {
    expect(rakeFactor(12, 6)).toBeCloseTo(0.94, 9)
    expect(rakeFactor(0, 6)).toBeCloseTo(1.06, 9)
  })

  it('8 wide, hub 30, pitch 8, bite .05, medium carbon steel: 4639 N sharp, 6031 N worn (derived)', () => {
    const teeth = Math.ceil(30 / 8)
    expect(teeth * plain(2, 8, 0.05)).toBeCloseTo(4639, 0)
    expect(teeth * 1.3 * plain(2, 8, 0.05)).toBeCloseTo(6031, 0)
  })

  it.each([
    // Handbook pressure (from memory), VDI 3323 over it.
    ['steel medium tensile', 2, 0.001, 3351, 3365],
    ['steel medium tensile', 2, 0.002, 2551, 2889],
    ['steel medium tensile', 2, 0.004, 2179, 2481],
    ['steel high tensile', 8, 0.001, 4302, 4165],
    ['steel high tensile', 8, 0.002, 3447, 3527],
  ])('%s, group %s, chip %s in: handbook %s, here %s N/mm²', (metal, number, inches, pressure, here) => {
    const chip = inches * 25.4
    expect(broachPressure(metal, chip)).toBeCloseTo(pressure, -1)
    const found = plain(number, 1, chip) / chip
    expect(found / here).toBeCloseTo(1, 2)
    expect(found / pressure).toBeGreaterThan(0.96)
    expect(found / pressure).toBeLessThan(1.15)
  })
})

describe('a broach as a column', () => {
  /** A square that bends like a round of this diameter. */
  const square = (diameter: number): Broach => {
    const side = ((12 * Math.PI * diameter ** 4) / 64) ** 0.25
    return { bodyWidth: side, rootHeight: side, yield: 830 } as Broach
  }

  it('½ in round, 12 in long between pinned ends: 2033 lbf with 29e6 psi (Euler); a quarter of the handbook’s 8131', () => {
    const load = bucklingLoad(square(12.7), 12 * 25.4) ?? Number.NaN
    const pounds = load / 4.4482216152605
    // 207 GPa here, 29e6 psi there.
    const softer = (29e6 * 0.006894757293168361) / 207_000
    // Safety of 3 and so on belong to the handbook’s rule: 5.6e7 d⁴/(S L²) with S 1 is 24306, fixed at both ends.
    expect(pounds * softer).toBeCloseTo(((Math.PI ** 2 * 29e6 * Math.PI) / 64) * (0.5 ** 4 / 144), 0)
    expect((pounds * softer) / 3).toBeCloseTo(2033, 0)
    expect((4 * pounds * softer) / (5.6e7 * (0.5 ** 4 / 144))).toBeCloseTo(1.0036, 3)
  })

  it('squashes at its yield when short, and Euler and Johnson meet where they turn', () => {
    const broach = square(12.7)
    const side = broach.rootHeight ?? 0
    expect(bucklingLoad(broach, 0)).toBeCloseTo(side * side * 830, 6)
    // What is all in the bushing has no length left to buckle over.
    expect(bucklingLoad(broach, -60)).toBeCloseTo(side * side * 830, 6)
    const turning = (Math.sqrt((2 * Math.PI ** 2 * 207_000) / 830) * side) / Math.sqrt(12)
    const [under, over] = [bucklingLoad(broach, turning * (1 - 1e-9)), bucklingLoad(broach, turning * (1 + 1e-9))]
    expect((under ?? 0) / (over ?? 1)).toBeCloseTo(1, 6)
  })

  it('with its upper end free bears a quarter of what it bears between pins', () => {
    expect((bucklingLoad(square(12.7), 600) ?? 0) / (bucklingLoad(square(12.7), 1200) ?? 1)).toBeCloseTo(4, 9)
  })

  it('cannot be told without root height and yield', () => {
    expect(bucklingLoad({ bodyWidth: 5 } as Broach, 100)).toBeUndefined()
  })
})
