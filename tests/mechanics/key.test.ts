import { describe, expect, it } from 'vitest'
import { torqueBearingHub, torqueBearingShaft, torqueShear } from '../../src/mechanics/key.ts'
import { noseStress } from '../../src/mechanics/nose.ts'

const psi = 0.006894757293168361
const inch = 25.4
const poundInch = 112.98482902761

describe('the key', () => {
  it('1 in shaft, 1/4 square, 1 in long, yield 370 N/mm² over 2.5: worked scenario, derived, lbf in', () => {
    const joint = {
      shaft: inch,
      width: 0.25 * inch,
      height: 0.25 * inch,
      shaftAcross: 0.859123 * inch,
      boreRadius: 0.5 * inch,
      floor: 0.614123 * inch,
      length: inch,
      chamfer: 0.01 * inch,
      edgeBreak: 0.01 * inch,
    } // prettier-ignore
    const pressure = 370 / 2.5
    expect(torqueShear(joint, 0.577 * pressure) / poundInch).toBeCloseTo(1548.2, 0)
    expect(torqueBearingHub(joint, pressure) / poundInch).toBeCloseTo(1232, 0)
    expect(torqueBearingShaft(joint, pressure) / poundInch).toBeCloseTo(950.3, 0)
  })

  it('25 mm shaft, 8 × 7 × 30, yield 335 N/mm² over 2: worked scenario, derived, N m', () => {
    const joint = {
      shaft: 25,
      width: 8,
      height: 7,
      shaftAcross: 21,
      boreRadius: 12.5,
      floor: 15.8,
      length: 30,
      chamfer: 0.3,
      edgeBreak: 0.2,
    } // prettier-ignore
    expect(torqueShear(joint, 0.577 * (335 / 2)) / 1000).toBeCloseTo(289.9, 1)
    expect(torqueBearingHub(joint, 335 / 2) / 1000).toBeCloseTo(216.1, 1)
    expect(torqueBearingShaft(joint, 335 / 2) / 1000).toBeCloseTo(146, 1)
    expect(torqueBearingHub(joint, 250 / 3) / 1000).toBeCloseTo(107.5, 1)
  })
})

describe('the nose', () => {
  it.each([
    [0.25, 0.17, [8838, 1745, 2810]],
    [0.125, 0.12, [6353, 2876, 2907]],
    [0.0394, 0.12, [13030, 25191, 4651]],
  ])('%s in wide: worked scenario, derived, psi', (width, length, wanted) => {
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180)
    const taper = tan(1) + tan(10) * tan(3)
    const top = width - 2 * length * taper
    const height = 0.25 - length * tan(10)
    const bottom = top - 2 * height * tan(3)
    const root = { top: top * inch, bottom: bottom * inch, height: height * inch, length: length * inch }
    const stress = noseStress(root, 378.221 * width * 4.4482216)
    for (const [i, name] of (['down', 'sideways', 'shear'] as const).entries())
      expect(stress[name] / psi / (wanted[i] ?? 0)).toBeCloseTo(1, 2)
  })
})
