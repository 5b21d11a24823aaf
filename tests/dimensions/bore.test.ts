import { describe, expect, it, test } from 'vitest'
import {
  acrossFromSide,
  asmeAcross,
  asmeShaftAcross,
  chamferNeeded,
  cornerReach,
  engagedWidth,
  mouthHalfAngle,
  mouthX,
  sagitta,
  sideFromAcross,
  slotArea,
  touchOffX,
} from '../../src/dimensions/bore.ts'
import { isoKeys } from '../../src/standards/iso-773.ts'
import { asmeKeys } from '../../src/standards/asme-b17-1.ts'

/** [bore diameter, slot width, across] in any one unit. */
const inchSlot = [1, 0.25, 1.114123] as const
const metricSlot = [25, 8, 28.3] as const

describe('depths of a keyway', () => {
  // Worked scenario, derived: closed forms by hand, 1 in bore with 1/4 square key and 25 mm bore with 8 × 7 key.
  test.each([
    [...inchSlot, 0.484123, 0.015877, 0.614123, 0.114123, 0.13, 14.477512],
    [...metricSlot, 11.842719, 0.657281, 15.8, 3.3, 3.957281, 18.662925],
  ])('bore %d, slot %d, across %d', (bore, width, across, mouth, arc, floor, crown, side, angle) => {
    const [radius, half] = [bore / 2, width / 2]
    expect(mouthX(radius, half)).toBeCloseTo(mouth, 6)
    expect(sagitta(radius, half)).toBeCloseTo(arc, 6)
    expect(across - radius).toBeCloseTo(floor, 6)
    expect(across - bore).toBeCloseTo(crown, 6)
    expect(sideFromAcross(bore, width, across)).toBeCloseTo(side, 6)
    expect(mouthHalfAngle(radius, half)).toBeCloseTo(angle, 6)
    expect(acrossFromSide(bore, width, side)).toBeCloseTo(across, 6)
  })

  it('takes the slot area less the segment of the bore', () => {
    // Worked scenario, derived.
    expect(slotArea(0.5, 0.125, 0.614123)).toBeCloseTo(0.029845, 6)
    expect(slotArea(12.5, 4, 15.8)).toBeCloseTo(28.13389, 5)
  })

  // Published: ASME B17.1 in Machinery's Handbook 31, p. 2552, Table 2 (depth control values), [shaft, width, key height, S, T].
  test.each([
    [0.5, 0.125, 0.125, 0.43, 0.56],
    [1, 0.25, 0.25, 0.859, 1.114],
    [2, 0.5, 0.5, 1.718, 2.223],
    [2, 0.5, 0.375, 1.781, 2.161],
    [2.5, 0.625, 0.625, 2.148, 2.778],
  ])('shaft %d in, key %d: S and T as printed, within their last digit', (shaft, width, height, s, t) => {
    expect(Math.abs(asmeShaftAcross(shaft, width, height) - s)).toBeLessThan(0.0006)
    expect(Math.abs(asmeAcross(shaft, width, height, 0.005) - t)).toBeLessThan(0.0006)
  })

  it('gives S and T to six figures', () => {
    // Worked scenario, derived from the ASME B17.1 formulas.
    expect(asmeShaftAcross(1, 0.25, 0.25)).toBeCloseTo(0.859123, 6)
    expect(asmeAcross(1, 0.25, 0.25, 0.005)).toBeCloseTo(1.114123, 6)
    expect(asmeAcross(1, 0.25, 0.25, -0.02)).toBeCloseTo(1.089123, 6) // taper key at the deep end; printed 1.089
    expect(asmeAcross(0.5, 0.125, 0.125, 0.005)).toBeCloseTo(0.559561, 6)
    expect(asmeAcross(1.125, 0.25, 0.25, 0.005)).toBeCloseTo(1.240935, 6)
  })

  // From ISO/R 773 depths, sagittas by hand: [bore, width, hub across, sagitta, hub side depth, shaft side depth, t1].
  test.each([
    [25, 8, 28.3, 0.6573, 3.957, 3.343, 4],
    [40, 12, 43.3, 0.9212, 4.221, 4.079, 5],
    [60, 18, 64.4, 1.3818, 5.782, 5.618, 7],
    [12, 4, 13.8, 0.3431, 2.143, 2.157, 2.5],
  ])('bore %d, key %d: walls of hub and shaft', (bore, width, across, arc, hub, shaft, shaftDepth) => {
    expect(sagitta(bore / 2, width / 2)).toBeCloseTo(arc, 4)
    expect(sideFromAcross(bore, width, across)).toBeCloseTo(hub, 3)
    expect(shaftDepth - sagitta(bore / 2, width / 2)).toBeCloseTo(shaft, 3)
  })

  it('has the chord height of the handbooks', () => {
    // Circle segment table, unit radius, 60 degrees: from memory, 0.1340; chord 1.
    expect(sagitta(1, 0.5)).toBeCloseTo(0.133975, 6)
    expect(sagitta(1, 0.25)).toBeCloseTo(0.031754, 6)
    expect(sagitta(1, 0.25)).toBeCloseTo(2 * sagitta(0.5, 0.125), 12)
  })

  it('spans this share of the bore over the ranges of both standards', () => {
    // Worked scenario, derived: 1.588 % for a key of a quarter of the bore; 1.59 to 4.55 % for ISO to 110 mm, 1.01 to 2.86 % for ASME.
    expect(sagitta(0.5, 0.125)).toBeCloseTo(0.01588, 5)
    const shares = (rows: readonly { over: number; upTo: number; width: number }[], most: number) =>
      rows
        .filter(({ upTo }) => upTo <= most)
        .flatMap(({ over, upTo, width }) => [over, upTo].map((bore) => sagitta(bore / 2, width / 2) / bore))
    const iso = shares(isoKeys.rows, 110)
    expect(Math.min(...iso)).toBeCloseTo(0.0159, 4)
    expect(Math.max(...iso)).toBeCloseTo(0.0455, 4)
    const asme = shares(asmeKeys.rows, 6.5 * 25.4)
    expect(Math.min(...asme)).toBeCloseTo(0.0101, 4)
    expect(Math.max(...asme)).toBeCloseTo(0.0286, 4)
  })
})

describe('touch-off', () => {
  // Worked scenario, derived: by how much too deep the slot comes when the corner radius is left out of the sum.
  test.each([
    [0.5, 0.25, 0.005, 0.001111],
    [0.5, 0.25, 0.01, 0.002191],
    [0.5, 0.25, 0.015, 0.003238],
    [12.5, 8, 0.1, 0.028007],
    [12.5, 8, 0.2, 0.055571],
    [5, 4, 0.2, 0.067143],
  ])('bore radius %d, nose %d, corner %d: %d', (radius, nose, corner, tooDeep) => {
    expect(touchOffX(radius, nose, corner) - touchOffX(radius, nose)).toBeCloseTo(tooDeep, 6)
  })

  it('falls to the sharp corner as the radius goes', () => {
    for (const corner of [1e-3, 1e-6, 1e-9])
      expect(Math.abs(touchOffX(12.5, 8, corner) - mouthX(12.5, 4))).toBeLessThan(corner)
    expect(touchOffX(12.5, 8, 0, 0)).toBe(mouthX(12.5, 4))
  })

  it('is the same on either side, and earlier farther out', () => {
    expect(touchOffX(12.5, 6, 0.2, -1)).toBe(touchOffX(12.5, 6, 0.2, 1))
    expect(touchOffX(12.5, 6, 0.2, 1)).toBeLessThan(touchOffX(12.5, 6, 0.2, 0.5))
  })

  it('tells by two marks how far off the middle a nose stands', () => {
    // Worked scenario, derived. The estimate is difference × touch-off / width.
    const between = (radius: number, width: number, off: number) =>
      mouthX(radius, width / 2 - off) - mouthX(radius, width / 2 + off)
    const difference = between(0.5, 0.25, 0.002)
    expect(difference).toBeCloseTo(0.001033, 6)
    expect((difference * touchOffX(0.5, 0.25)) / 0.25).toBeCloseTo(0.002, 6)
    expect(between(12.5, 8, 0.05)).toBeCloseTo(0.033776, 6)
    expect((0.001 * touchOffX(0.5, 0.25)) / 0.25).toBeCloseTo(0.001936, 6)
  })

  // Worked scenario, derived: 1 in bore, 1/4 nose.
  test.each([
    [0.4845, 0.002939],
    [0.488, 0.032229],
    [0.492, 0.071832],
    [0.496, 0.123762],
    [0.5, 0.25],
  ])('at x %d of a 1 in bore %d in of the nose cuts', (x, width) => {
    expect(engagedWidth(0.5, 0.25, x)).toBeCloseTo(width, 6)
  })

  it('cuts nothing before touch-off, everything past the crown', () => {
    expect(engagedWidth(0.5, 0.25, 0.484)).toBe(0)
    expect(engagedWidth(0.5, 0.25, 0.6)).toBe(0.25)
  })
})

describe('corner radius', () => {
  // Worked scenario, derived: [corner radius, gap over the key, gap beside it, chamfer].
  test.each([
    [0.25, 0, 0, 0.25],
    [0.25, 0.1, 0, 0.15],
    [0.015, 0.005, 0.0005, 0.006159],
    [0.25, 0.3, 0, 0],
    [0.25, 0, 0.25, 0],
  ])('corner %d with gaps %d and %d needs a chamfer of %d', (corner, top, side, chamfer) => {
    expect(chamferNeeded(corner, top, side)).toBeCloseTo(chamfer, 6)
  })

  it('reaches this far from the axis', () => {
    // Worked scenario, derived: hub of 32 over a 25 mm bore, 8 × 7: 0.2 by the floor, nothing left at the corner.
    expect(16 - 15.8).toBeCloseTo(0.2, 6)
    expect(16 - cornerReach(15.8, 4, 0.2)).toBeCloseTo(-0.256151, 6)
    expect(16 - cornerReach(15.8, 4)).toBeCloseTo(-0.298466, 6)
    expect(2 * (cornerReach(15.8, 4, 0.2) + 4)).toBeCloseTo(40.512303, 6)
    expect(2 * (cornerReach(15.8, 4) + 4)).toBeCloseTo(40.596932, 6)
    // Relief groove past the corners by 0.2 mm, and the hole of the press plate.
    expect(2 * (cornerReach(15.8, 4) + 0.2)).toBeCloseTo(32.996932, 6)
    expect(2 * (cornerReach(15.8, 4, 0.2) + 0.2)).toBeCloseTo(32.912303, 6)
    expect(cornerReach(15.8, 4) + 0.2).toBeCloseTo(16.498466, 6)
    expect(2 * (cornerReach(12.8, 3) + 0.2)).toBeCloseTo(26.693725, 6)
  })
})

describe('what depth along the wall follows from', () => {
  const slope = (ask: (by: number) => number) => (ask(1e-4) - ask(-1e-4)) / 2e-4

  it('25 mm bore, 8 × 7', () => {
    // Worked scenario, derived: sensitivities to across, bore and width.
    expect(slope((by) => sideFromAcross(25, 8, 28.3 + by))).toBeCloseTo(1, 6)
    expect(slope((by) => sideFromAcross(25 + by, 8, 28.3))).toBeCloseTo(-1.02775, 6)
    expect(slope((by) => sideFromAcross(25, 8 + by, 28.3))).toBeCloseTo(0.16888, 6)
    // A bore 0.1 oversize makes a right infeed 0.103 wrong in across.
    expect(sideFromAcross(25, 8, 28.3) - sideFromAcross(25.1, 8, 28.3)).toBeCloseTo(0.103, 3)
  })

  it('1 in bore, 1/4 in key', () => {
    // Worked scenario, derived.
    const slopeIn = (ask: (by: number) => number) => (ask(1e-5) - ask(-1e-5)) / 2e-5
    expect(slopeIn((by) => sideFromAcross(1 + by, 0.25, 1.114123))).toBeCloseTo(-1.016398, 5)
    expect(slopeIn((by) => sideFromAcross(1, 0.25 + by, 1.114123))).toBeCloseTo(0.129099, 5)
  })
})

describe('scale', () => {
  it('knows no unit: 25.4 times the lengths, 25.4 times the depths', () => {
    const k = 25.4
    expect(touchOffX(k * 0.5, k * 0.25, k * 0.01, k * 0.02)).toBeCloseTo(k * touchOffX(0.5, 0.25, 0.01, 0.02), 10)
    expect(sagitta(k * 0.5, k * 0.125)).toBeCloseTo(k * sagitta(0.5, 0.125), 12)
    expect(cornerReach(k * 0.6, k * 0.125, k * 0.01)).toBeCloseTo(k * cornerReach(0.6, 0.125, 0.01), 12)
    expect(slotArea(k * 0.5, k * 0.125, k * 0.6)).toBeCloseTo(k * k * slotArea(0.5, 0.125, 0.6), 9)
    expect(chamferNeeded(k * 0.015, k * 0.005, k * 0.0005)).toBeCloseTo(k * chamferNeeded(0.015, 0.005, 0.0005), 12)
    expect(engagedWidth(k * 0.5, k * 0.25, k * 0.49)).toBeCloseTo(k * engagedWidth(0.5, 0.25, 0.49), 10)
  })

  it('a wider slot has a higher arc over its mouth; a slot of no width has none', () => {
    let before = 0
    for (let half = 0.01; half < 12; half += 0.25) {
      expect(sagitta(12.5, half)).toBeGreaterThan(before)
      before = sagitta(12.5, half)
    }
    expect(sagitta(12.5, 1e-9)).toBeLessThan(1e-18)
  })
})
