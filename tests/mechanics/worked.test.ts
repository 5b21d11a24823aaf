import { describe, expect, it } from 'vitest'
import { wheelHollow } from '../../src/dimensions/tool-bit.ts'
import { petersonFactor, secondMoment } from '../../src/mechanics/bar.ts'
import { cuttingForce } from '../../src/mechanics/cutting.ts'
import { torqueShear, wallTorque } from '../../src/mechanics/key.ts'
import { leverCapacity } from '../../src/mechanics/press.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const group = (number: number) => kienzleGroup(number) as NonNullable<ReturnType<typeof kienzleGroup>>

describe('keys as textbooks work them', () => {
  // A key that lies on the shaft's circle, bearing over half its height there: the books' convention.
  const shear = (shaft: number, width: number, length: number, stress: number): number =>
    torqueShear(
      {
        shaft,
        width,
        height: width,
        shaftAcross: shaft,
        boreRadius: shaft / 2,
        floor: shaft / 2,
        length,
        chamfer: 0,
        edgeBreak: 0,
      },
      stress,
    )
  const crush = (shaft: number, height: number, length: number, stress: number): number =>
    wallTorque(stress, length, shaft / 2 - height / 4, shaft / 2 + height / 4)

  it.each([
    // Shaft, key, torque N mm, shear and crushing stress, lengths: public course notes and solved examples, recomputed.
    ['50 mm, 25 kW at 250 rpm, 40 and 80 N/mm²', 50, 16, 10, 954_930, 40, 80, 59.683, 95.493],
    ['25 mm, 15 kW at 720 rpm, 88.47 and 153.33 N/mm²', 25, 6, 6, 198_943.68, 88.473, 153.333, 29.983, 34.6],
    ['the same with 70 and 140 N/mm²', 25, 6, 6, 198_943.68, 70, 140, 37.894, 37.894],
    ['25 mm, 12 kW at 550 rpm, 80 and 160 N/mm²', 25, 7, 7, 208_348, 80, 160, 29.764, 29.764],
  ])('%s', (_name, shaft, width, height, torque, tau, sigma, byShear, byCrushing) => {
    expect(torque / shear(shaft, width, 1, tau)).toBeCloseTo(byShear, 2)
    expect(torque / crush(shaft, height, 1, sigma)).toBeCloseTo(byCrushing, 2)
  })

  it('40 mm shaft with a 10 wide key 75 long at 56 N/mm²: 840 N m against 335.1 of the shaft, 2.507 times (course notes)', () => {
    const shaft = (56 * Math.PI * 40 ** 3) / 16 / 2.1
    expect(shaft / 1000).toBeCloseTo(335.103, 2)
    expect(shear(40, 10, 75, 56) / 1000).toBeCloseTo(840, 6)
    expect(shear(40, 10, 75, 56) / shaft).toBeCloseTo(2.507, 3)
  })

  it('45 mm shaft of 400 N/mm², key 14 × 9 of 340, twofold: 103.95 mm, 104.58 with its torque rounded (course notes say 105)', () => {
    const torque = (Math.PI / 16) * 100 * 45 ** 3
    expect(torque / crush(45, 9, 1, 170)).toBeCloseTo(103.95, 1)
    expect(1.8e6 / crush(45, 9, 1, 170)).toBeCloseTo(104.58, 1)
  })

  it('50 mm at 42 and 70 N/mm²: 142 mm needs the books’ proportions, d/4 by d/6, not the key of the table (course notes)', () => {
    const torque = (Math.PI / 16) * 42 * 50 ** 3
    expect(torque / crush(50, 50 / 6, 1, 70)).toBeCloseTo(141.4, 0)
    expect(torque / crush(50, 8.3, 1, 70)).toBeCloseTo(141.9, 0)
    expect(torque / crush(50, 10, 1, 70)).toBeCloseTo(117.8, 0)
  })
})

describe('specific forces as the constants give them', () => {
  it.each([
    // VDI 3323 groups and a textbook's metals, recomputed: kc1.1, m, chip, kc.
    ['group 2', group(2).kc11, group(2).exponent, 0.05, 2899.5],
    ['group 1', group(1).kc11, group(1).exponent, 0.1, 2189.4],
    ['42CrMo4', 2500, 0.26, 0.1, 4549.3],
    ['GG-25', 1160, 0.26, 0.1, 2110.9],
    ['St 60', 2110, 0.17, 0.3, 2589.2],
  ])('%s', (_name, kc11, exponent, chip, wanted) => {
    const force = cuttingForce({ ...group(1), kc11, exponent, referenceRake: 0 }, 1, chip, 0, 'stoned') / 1.32
    expect(force / chip).toBeCloseTo(wanted, 0)
  })
})

describe('bars and levers', () => {
  it('16 mm bar, 60 out, 500 N at 207 kN/mm²: 3217 mm⁴, 0.0541 mm; a 6 mm hole makes 4.049 of the whole section (Peterson)', () => {
    expect(secondMoment(16)).toBeCloseTo(3217, 0)
    expect((500 * 60 ** 3) / (3 * 207_000 * secondMoment(16))).toBeCloseTo(0.0541, 4)
    expect(petersonFactor(0.375)).toBeCloseTo(4.049, 2)
  })

  it('500 N at 850 mm on a pinion of 24 mm pitch radius: 17 708 N, 1805.7 kgf (an open press calculation)', () => {
    const force = leverCapacity({ pull: 500, length: 850, pinion: 24, efficiency: 1 })
    expect(force).toBeCloseTo(17_708.33, 1)
    expect(force / 9.80665).toBeCloseTo(1805.7, 0)
  })
})

describe('the wheel’s hollow', () => {
  it('1/4 in on a 6 in wheel: 2.388015° more at the edge, .002605 in deep (derived)', () => {
    expect(wheelHollow(0.25, 3)).toBeCloseTo(2.388015, 6)
    expect(3 - Math.sqrt(3 ** 2 - 0.125 ** 2)).toBeCloseTo(0.002605, 6)
  })
})
