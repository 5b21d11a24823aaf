import { describe, expect, it, test } from 'vitest'
import { effectiveTaper, noseWidthAt, tableTilt, wheelHollow } from '../../src/dimensions/tool-bit.ts'
import { withBar } from './designed.ts'

const usual = { backTaper: 1, rake: 10, sideRelief: 3 }

describe('nose as ground', () => {
  // Worked scenario, derived.
  test.each([
    [1, 10, 3, 1.529203],
    [0, 10, 3, 0.52945],
    [1, 0, 3, 1],
    [1, 10, 0, 1],
  ])('swing %d, rake %d, side relief %d: %d on the raked face', (swing, rake, relief, taper) => {
    expect(effectiveTaper(swing, rake, relief)).toBeCloseTo(taper, 6)
  })

  it('narrows to heel and neck', () => {
    // Worked scenario, derived: 1/4 nose on a 1/4 blank.
    expect(noseWidthAt(0.25, { ...usual, sideRelief: 2 }, 0, 0.25)).toBeCloseTo(0.23254, 6)
    expect(noseWidthAt(0.25, usual, 0, 0.25)).toBeCloseTo(0.223796, 6)
    expect(noseWidthAt(0.25, usual, 0, 0)).toBe(0.25)
    expect(noseWidthAt(0.25, usual, 0.2, 0)).toBeCloseTo(0.25 - 0.4 * Math.tan((1.529203 * Math.PI) / 180), 8)
  })

  it('loses width by every grind, more off the top than off the end', () => {
    // Worked scenario, derived: .010 off.
    const end = 0.25 - noseWidthAt(0.25, usual, 0.01, 0)
    const top = 0.25 - noseWidthAt(0.25, usual, 0, 0.01)
    expect(end).toBeCloseTo(0.000534, 6)
    expect(top).toBeCloseTo(0.001048, 6)
    expect(0.0015 / end).toBeCloseTo(2.8, 1)
    expect(0.0015 / top).toBeCloseTo(1.4, 1)
    // 8 JS9: from three quarters up to the least width, 0.25 mm at a time.
    expect(0.027 / (8 - noseWidthAt(8, usual, 0.25, 0))).toBeCloseTo(2.02, 2)
  })

  it('is set at the grinder by swing and tilt', () => {
    // Worked scenario, derived.
    expect(tableTilt(3, 1)).toBeCloseTo(2.999544, 6)
    expect(tableTilt(5, 5)).toBeCloseTo(4.981069, 6)
    // A 1/4 blank on a 6 in wheel, a 6 mm one on a 150 mm wheel.
    expect(wheelHollow(0.25, 3)).toBeCloseTo(2.388015, 6)
    expect(wheelHollow(6, 75)).toBeCloseTo(2.292443, 6)
  })

  it('agrees with planes in space', () => {
    // Rake plane z = −x tan α; flank y = w/2 + x tan β + z tan γ, x forward, z up; where they meet, y falls by tan β_eff.
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180)
    for (const [swing, rake, relief] of [
      [1, 10, 3],
      [2, 15, 1.5],
      [0.5, 5, 6],
    ] as const) {
      const back = 0.3
      const drop = back * tan(rake)
      const half = 0.125 - back * tan(swing) - drop * tan(relief)
      expect(noseWidthAt(0.25, { backTaper: swing, rake, sideRelief: relief }, back, 0)).toBeCloseTo(2 * half, 10)
    }
  })
})

describe('bit of a design', () => {
  const job = { units: 'mm', bore: { diameter: 24, length: 30 }, feature: { keyway: {} }, tooling: { bar: {} } }

  it('keeps every size inside its limits and its heel narrower than its edge', () => {
    const { bit, bar } = withBar(job)
    for (const size of [bit.noseWidth, bit.widthAtHeel, bit.widthAtNeck, bit.endSetBack, bit.faceDrop]) {
      expect(size.lower).toBeLessThanOrEqual(size.nominal)
      expect(size.upper).toBeGreaterThanOrEqual(size.nominal)
    }
    expect(bit.widthAtHeel.upper).toBeLessThan(bit.noseWidth.lower)
    expect(bit.widthAtNeck.upper).toBeLessThan(bit.noseWidth.lower)
    expect(bit.noseLength).toBeGreaterThanOrEqual(bar.noseLengthMin)
    expect(bit.length).toBeGreaterThanOrEqual(bit.lengthMin)
    expect(bit.length).toBeLessThanOrEqual(bit.lengthMax)
  })

  it('8 JS9 starts at 8.009 and is done at the least width, on a blank that has it', () => {
    // Worked scenario, derived: w_min + 3/4 of the band. Two end regrinds of 0.25 mm.
    const { bit } = withBar({
      ...job,
      bore: { diameter: 25, length: 30 },
      tooling: { bar: { bit: { size: 10 }, diameter: 18 } },
    })
    expect(bit.noseWidth.upper).toBeCloseTo(8.009, 9)
    expect(bit.noseWidth.lower).toBeCloseTo(7.982, 9)
    expect(bit.regrindStep).toBe(0.25)
    expect(bit.backTaperEffective).toBeCloseTo(1.529203, 6)
    expect(bit.regrinds).toBe(2)
  })

  it('narrows as the design says: twice the end set-back is twice the blank', () => {
    const { bit } = withBar(job)
    expect(bit.endSetBack.nominal).toBeCloseTo(bit.size * Math.tan((bit.endRelief * Math.PI) / 180), 9)
    expect(bit.faceDrop.nominal).toBeCloseTo(bit.noseLength * Math.tan((bit.rake * Math.PI) / 180), 9)
  })

  it('has limits half a degree to either side, a neck radius by its length, and a nose with two regrinds in it', () => {
    const { bit, bar } = withBar(job)
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180)
    expect(bit.angleTolerance).toBe(0.5)
    expect(bit.endSetBack.lower).toBeCloseTo(bit.size * tan(bit.endRelief - 0.5), 9)
    expect(bit.endSetBack.upper).toBeCloseTo(bit.size * tan(bit.endRelief + 0.5), 9)
    expect(bit.faceDrop.lower).toBeCloseTo(bit.noseLength * tan(bit.rake - 0.5), 9)
    expect(bit.faceDrop.upper).toBeCloseTo(bit.noseLength * tan(bit.rake + 0.5), 9)
    // The neck is widest with the least taper and narrowest with the most; so is the heel with the side relief.
    const taper = (by: number) => effectiveTaper(1 + by, bit.rake + by, bit.sideRelief + by)
    const neck = (by: number) => bit.noseWidth.nominal - 2 * bit.noseLength * tan(taper(by))
    expect(bit.widthAtNeck.upper).toBeCloseTo(neck(-0.5), 9)
    expect(bit.widthAtNeck.lower).toBeCloseTo(neck(0.5), 9)
    expect(bit.widthPerRegrind).toBeCloseTo(0.5 * tan(taper(0)), 9)
    // A quarter of a millimetre twice, up to the half.
    expect(bit.noseLength).toBeCloseTo(Math.ceil(2 * (Math.max(bar.noseLengthMin, 0.5) + 0.5)) / 2, 9)
    expect(bit.neckRadius).toBe(bit.noseLength < 3 ? 0.2 : 0.5)
    const longer = withBar({ ...job, bore: { diameter: 60, length: 60 } }).bit
    expect([longer.noseLength >= 3, longer.neckRadius]).toEqual([true, 0.5])
    const inch = withBar({ ...job, units: 'in', bore: { diameter: 1.5, length: 2 } }).bit
    expect(inch.neckRadius / 25.4).toBeCloseTo(inch.noseLength < 3 ? 0.01 : 0.02, 9)
    expect(inch.regrindStep / 25.4).toBeCloseTo(0.01, 9)
  })
})
