import { describe, expect, it } from 'vitest'
import {
  gulletNeeded,
  leverCapacity,
  longestHub,
  overError,
  ratedCapacity,
  spreadingStress,
} from '../../src/mechanics/press.ts'

const inch = 25.4
const pound = 4.4482216152605
const psi = pound / inch ** 2

describe('what a press gives', () => {
  it('75 lbf on 16 in over a pinion of .75 in at 0.8: 1280 lbf: worked scenario, derived', () => {
    expect(leverCapacity({ pull: 75, length: 16, pinion: 0.75, efficiency: 0.8 })).toBeCloseTo(1280, 9)
  })

  it('500 N at 0.85 m over 24 mm without loss: 17 708 N, a published rack press calculation', () => {
    expect(leverCapacity({ pull: 500, length: 850, pinion: 24, efficiency: 1 })).toBeCloseTo(17708.33, 2)
  })

  it('17 571 N asks a press rated for 25.1 kN: 70 % of a rating, Machinery’s Handbook', () => {
    expect(17571.1 / ratedCapacity(1) / 1000).toBeCloseTo(25.1, 1)
  })
})

describe('what a hub stands', () => {
  it('3/16 in a 3/4 bore, outside 1.5 in, 1438.9 lbf: wall .278739 in, 2604 psi = 18.0 N/mm²: worked scenario, derived', () => {
    const wall = 0.278739
    expect(0.75 - Math.hypot(0.461842, 0.1875 / 2)).toBeCloseTo(wall, 5)
    const stress = spreadingStress({ force: 1438.9, thrust: 1, width: 0.1875, hub: 1, wall })
    expect(stress).toBeCloseTo(2604, 0)
    expect(stress * psi).toBeCloseTo(18, 1)
  })

  it('is without end where the slot comes out through the hub', () => {
    expect(spreadingStress({ force: 1, thrust: 1, width: 1, hub: 1, wall: -0.1 })).toBe(Infinity)
  })

  it('1/8 broach: 1280 lbf pushes 6.58 teeth, so a hub of 1.2 in: worked scenario, derived', () => {
    const tooth = 1557.3 / 8
    expect(1280 / tooth).toBeCloseTo(6.58, 2)
    expect(longestHub(1280, tooth, 3.6 / 18)).toBeCloseTo(1.2, 9)
    expect(longestHub(0.5 * tooth, tooth, 0.2)).toBe(0)
  })
})

describe('chips and sizes', () => {
  it('a bite of .00325 in over 1 in asks .01625 in²; .012 in² holds .738 in: worked scenario, derived', () => {
    expect(gulletNeeded(0.00325, 1)).toBeCloseTo(0.01625, 9)
    expect(0.012 / gulletNeeded(0.00325, 1)).toBeCloseTo(0.738, 3)
  })

  it('three readings of ±.0005 and a seating of ±.0002 in: .0017 at worst, .000889 likely: worked scenario, derived', () => {
    const { worst, likely } = overError([0.0005, 0.0005, 0.0005, 0.0002])
    expect(worst).toBeCloseTo(0.0017, 9)
    expect(likely).toBeCloseTo(0.000889, 6)
  })
})
