import { describe, expect, it } from 'vitest'
import { allowed, bearingLength, torqueShear, wallTorque } from '../../src/mechanics/key.ts'
import { socketTorque, splineTorque } from '../../src/mechanics/splined.ts'
import { designed } from '../dimensions/designed.ts'
import { shaftLeftByKeyway, splinePressure } from '../../src/standards/allowable-stress.ts'

const psi = 0.006894757293168361

describe('splines and sockets', () => {
  it('6 × 23 × 26 at 20 N/mm²: 1.653750 N m a millimetre, 2.205 with full sharing: ISO 14 sizes; worked scenario, derived', () => {
    const joint = { count: 6, boreRadius: 11.5, majorRadius: 13, chamfers: 0, length: 1, sharing: 0.75 }
    expect(splineTorque(joint, 20) / 1000).toBeCloseTo(1.65375, 9)
    expect(splineTorque({ ...joint, sharing: 1 }, 20) / 1000).toBeCloseTo(2.205, 9)
  })

  it.each([
    ['A', 0.9, 142.5],
    ['B', 0.85, 208.125],
    ['C', 0.8, 270],
  ])('SAE J499-2014, six splines, 1 in, fit %s: minor %s, %s lbf in an inch', (_fit, minor, torque) => {
    const joint = { count: 6, boreRadius: minor / 2, majorRadius: 0.5, chamfers: 0, length: 1, sharing: 1 }
    expect(splineTorque(joint, 1000)).toBeCloseTo(torque, 9)
    // The same in N and mm.
    const metric = { ...joint, boreRadius: minor * 12.7, majorRadius: 12.7, length: 25.4 }
    expect(splineTorque(metric, 1000 * psi) / 112.9848290276167).toBeCloseTo(torque, 6)
  })

  it('12 square in 12.5, 20 long, 100 N/mm²: 98.8125 N m: worked scenario, derived', () => {
    const joint = { sides: 4, across: 12, boreRadius: 6.25, relief: 0, length: 20, sharing: 0.75 }
    expect(socketTorque(joint, 100) / 1000).toBeCloseTo(98.8125, 9)
  })
})

describe('the joint of a design', () => {
  const of = (length: number, fit?: 'A' | 'B' | 'C') => {
    const { jointLoads } = designed({
      units: 'in',
      bore: { diameter: fit === undefined ? 1 : { A: 0.9, B: 0.85, C: 0.8 }[fit], length },
      hub: { outside: 3 },
      feature:
        fit === undefined
          ? { socket: { sides: 4, across: 0.95 } }
          : { spline: { standard: 'sae-j499', count: 6, size: 1, fit } },
    })
    if (!jointLoads) throw new Error('no joint')
    return jointLoads
  }

  it('bears over the hub, no more than one and a half bores', () => {
    expect(of(1.2).length / 25.4).toBeCloseTo(1.2, 9)
    expect(of(2).length / 25.4).toBeCloseTo(1.5, 9)
  })

  it('bears less the more it slides: SAE J499 has A fixed, B sliding idle, C sliding under load', () => {
    const uses = [of(1, 'A'), of(1, 'B'), of(1, 'C')].map(({ pressure }) => pressure)
    expect(uses).toEqual(
      (['fixed', 'sliding idle', 'sliding under load'] as const).map((use) => splinePressure(use)?.least),
    )
    expect(new Set(uses).size).toBe(3)
  })
})

describe('keys as textbooks work them', () => {
  // Their convention: half the height bears at the shaft's radius.
  const crushing = (shaft: number, height: number, pressure: number, torque: number) =>
    torque / wallTorque(pressure, 1, shaft / 2 - height / 4, shaft / 2 + height / 4)
  const shearing = (shaft: number, width: number, stress: number, torque: number) =>
    torque /
    torqueShear(
      { shaft, width, height: 0, shaftAcross: 0, boreRadius: 0, floor: 0, length: 1, chamfer: 0, edgeBreak: 0 },
      stress,
    ) // prettier-ignore

  it('50 mm shaft, 25 kW at 250/min, key 16 × 10, 40 and 80 N/mm²: 59.7 and 95.5 mm (solved examples, 13.1)', () => {
    const torque = (25e6 * 60) / (2 * Math.PI * 250)
    expect(torque / 1000).toBeCloseTo(954.93, 2)
    expect(shearing(50, 16, 40, torque)).toBeCloseTo(59.683, 2)
    expect(crushing(50, 10, 80, torque)).toBeCloseTo(95.493, 2)
  })

  it('25 mm shaft, 15 kW at 720/min, 6 × 6, yield 460 threefold: 29.98 and 34.60 mm (Bhandari, from memory)', () => {
    const torque = (15e6 * 60) / (2 * Math.PI * 720)
    expect(torque).toBeCloseTo(198_943.68, 1)
    const pressure = allowed({ yield: 460 }, 3) ?? Number.NaN
    expect(shearing(25, 6, 0.577 * pressure, torque)).toBeCloseTo(29.983, 2)
    expect(crushing(25, 6, pressure, torque)).toBeCloseTo(34.6, 2)
  })

  it('25 mm shaft, 12 kW at 550/min, 7 × 7, yields alike: shear and crushing ask the same 29.764 mm (Scilab companion, ex. 7.8)', () => {
    const torque = (12e6 * 60) / (2 * Math.PI * 550)
    expect(torque / 1000).toBeCloseTo(208.348, 3)
    // Greatest shear: half the yield; 400 N/mm² over 2.5.
    expect(shearing(25, 7, 0.5 * 160, torque)).toBeCloseTo(29.764, 2)
    expect(crushing(25, 7, 160, torque)).toBeCloseTo(29.764, 2)
  })

  it('45 mm shaft of 400, key 14 × 9 of 340, twofold, greatest shear: 66.8 and 103.95 mm (tutorial; its answer 105 is rounded up)', () => {
    const torque = (Math.PI / 16) * 100 * 45 ** 3
    expect(torque / 1e6).toBeCloseTo(1.78924, 4)
    expect(shearing(45, 14, 85, torque)).toBeCloseTo(66.8, 1)
    expect(crushing(45, 9, 170, torque)).toBeCloseTo(103.95, 1)
  })

  it('40 mm shaft, key 10 × 75 at 56: 840 N m in shear (key design tutorial, 2023)', () => {
    expect(75 / shearing(40, 10, 56, 1)).toBeCloseTo(840_000, 6)
  })

  it('50 mm shaft, keyseat 16 wide and 5 deep keeps 0.826 of its strength: Moore, machine design notes', () => {
    expect(shaftLeftByKeyway(50, 16, 5)).toBeCloseTo(0.826, 9)
  })
})

describe('the length that bears', () => {
  const sizes = { hub: 40, width: 8, shaft: 40, ends: 'square' } as const
  it('is the shorter of key and hub, less round ends that are inside, and no more than 1.5 shafts (Shigley, 9th ed., p. 391)', () => {
    expect(bearingLength(sizes)).toBe(40)
    expect(bearingLength({ ...sizes, key: 30 })).toBe(30)
    expect(bearingLength({ ...sizes, key: 30, ends: 'round' })).toBe(22)
    expect(bearingLength({ ...sizes, key: 44, ends: 'round' })).toBe(36)
    expect(bearingLength({ ...sizes, key: 60, ends: 'round' })).toBe(40)
    expect(bearingLength({ ...sizes, shaft: 20 })).toBe(30)
    expect(bearingLength({ ...sizes, key: 6, ends: 'round' })).toBe(0)
  })

  it('grey iron has no yield: a third of its tensile strength, 83 N/mm² of 250', () => {
    expect(allowed({ tensile: 250 }, 2)).toBeCloseTo(83.333, 3)
    expect(allowed({}, 2)).toBeUndefined()
  })
})
