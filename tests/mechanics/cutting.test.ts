import { describe, expect, it } from 'vitest'
import { cuttingForce, thrustRatio } from '../../src/mechanics/cutting.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const group = (number: number) => {
  const row = kienzleGroup(number)
  if (!row) throw new Error(`no group ${number}`)
  return row
}

describe('cutting force', () => {
  it('follows the VDI 3323 constants: worked scenario, derived, mild steel, a worn edge at 10° of rake', () => {
    const chips = [0.0127, 0.0254, 0.0508]
    expect(chips.map((chip) => cuttingForce(group(1), 1, chip, 10, 'worn').toFixed(3))).toEqual([
      '66.237',
      '114.528',
      '198.028',
    ])
    expect(chips.map((chip) => cuttingForce(group(18), 1, chip, 5, 'worn').toFixed(3))).toEqual([
      '94.910',
      '156.335',
      '257.511',
    ])
  })

  it('is near the handbook’s broaching pressure for medium steel at .002 in: 2551 N/mm² (Machinery’s Handbook, from memory), 13 % higher', () => {
    const sharp = cuttingForce(group(2), 1, 0.0508, 0, 'stoned') / 1.32
    expect(sharp / 0.0508).toBeCloseTo(2889, -1)
    expect(sharp / 0.0508 / 2551).toBeGreaterThan(1.05)
    expect(sharp / 0.0508 / 2551).toBeLessThan(1.2)
  })

  it('reproduces a published constant’s own example: group 2, 8 wide, 0.05 thick: 1159.8 N before corrections', () => {
    expect(cuttingForce(group(2), 8, 0.05, 0, 'stoned') / 1.32).toBeCloseTo(1159.8, 1)
  })

  it('halving the chip only drops the force by 2^(1 − m)', () => {
    expect(cuttingForce(group(1), 6, 0.02, 10, 'worn') / cuttingForce(group(1), 6, 0.01, 10, 'worn')).toBeCloseTo(
      2 ** 0.79,
      9,
    )
  })
})

describe('thrust', () => {
  it('is a band that falls with rake: worked scenario, derived', () => {
    expect([0, 10, 20].map((rake) => thrustRatio(rake).least.toFixed(3))).toEqual(['0.700', '0.466', '0.268'])
    expect(thrustRatio(10).most).toBe(1)
    expect(thrustRatio(40).least).toBe(0)
  })
})
