import { describe, expect, it } from 'vitest'
import { cuttingForce, thrustRatio } from '../../src/mechanics/cutting.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'
import { workMaterial } from '../../src/standards/materials.ts'

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

  it.each([
    // VDI 3323 group, rake, N per mm of nose at .0127, .0254 and .0508 mm, worn: worked table, derived.
    ['mild steel', 1, 10, [66.237, 114.528, 198.028]],
    ['medium carbon steel', 2, 10, [76.881, 132.014, 226.686]],
    ['alloy steel', 6, 6, [103.689, 175.597, 297.372]],
    ['stainless steel', 14, 10, [100.981, 175.819, 306.118]],
    ['grey iron', 17, 5, [75.549, 127.058, 213.685]],
    ['hard grey iron', 18, 5, [94.91, 156.335, 257.511]],
    ['ductile iron', 16, 8, [91.913, 151.398, 249.38]],
    ['aluminium', 21, 20, [36.354, 61.141, 102.826]],
    ['aluminium, heat-treated', 22, 20, [41.548, 69.875, 117.515]],
    ['brass', 27, 0, [49.59, 82.252, 136.426]],
    ['bronze', 28, 0, [49.59, 82.252, 136.426]],
  ])('%s', (name, number, rake, forces) => {
    const metal = workMaterial(name)
    expect(metal?.kienzle.group).toBe(number)
    expect(metal?.rake[2]).toBe(rake)
    for (const [n, chip] of [0.0127, 0.0254, 0.0508].entries())
      expect(cuttingForce(group(number), 1, chip, rake, 'worn')).toBeCloseTo(forces[n] ?? Number.NaN, 2)
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
