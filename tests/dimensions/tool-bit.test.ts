import { describe, expect, it, test } from 'vitest'
import {
  effectiveTaper,
  faceAngle,
  noseWidthAt,
  regrindOf,
  tableTilt,
  wheelHollow,
} from '../../src/dimensions/tool-bit.ts'
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

const hexagon = {
  units: 'mm',
  bore: { diameter: 19.4, tolerance: [0, 0.05], length: 20 },
  hub: { outside: 40, material: 'mild steel' },
  feature: { socket: { sides: 6, across: [19, 19.1], tip: 0.2 } },
  tooling: { bar: { machine: 'mill', behind: 40 } },
}

describe('bit of a design', () => {
  const job = { units: 'mm', bore: { diameter: 24, length: 30 }, feature: { keyway: {} }, tooling: { bar: {} } }

  it('keeps every size inside its limits and its heel narrower than its edge', () => {
    const { bit, bar } = withBar(job)
    for (const size of [bit.noseWidth, bit.widthAtHeel, bit.widthAtNeck, bit.neckUnder, bit.endSetBack, bit.faceDrop]) {
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
    const under = (by: number) => 2 * bit.noseLength * tan(taper(by))
    expect(bit.neckUnder.nominal).toBeCloseTo(under(0), 9)
    expect(bit.neckUnder.lower).toBeCloseTo(under(-0.5), 9)
    expect(bit.neckUnder.upper).toBeCloseTo(under(0.5), 9)
    // As far as the nose's own limits let it: the narrowest with the most taper, the widest with the least.
    expect(bit.widthAtNeck.upper).toBeCloseTo(bit.groundWidth.upper - under(-0.5), 9)
    expect(bit.widthAtNeck.lower).toBeCloseTo(bit.groundWidth.lower - under(0.5), 9)
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

  it('says how much narrower a V is at its neck than where it is widest, so that both can be met by one nose', () => {
    // Hexagon, V of 6.9 at the most, 6.6068 at the least, 3 long, tip 0.2. By hand: the V is w/2 · tan 30° − 0.2 · (1/cos 30° − 1) long,
    // 1.9609 and 1.8763; the sides behind it 1.0391 and 1.1237.
    const { bit } = withBar(hexagon)
    expect(bit.noseWidth.upper).toBeCloseTo(6.9, 9)
    expect(bit.noseWidth.lower).toBeCloseTo(6.6068, 4)
    expect(bit.noseLength).toBe(3)
    // tan 1° + tan 10° · tan 3° = 0.026696 on a side; half a degree less of each angle 0.016033, half a degree more 0.037522.
    expect(bit.neckUnder.nominal).toBeCloseTo(2 * 1.0391 * 0.026696, 4)
    // What the narrow nose loses at the least, and the wide one at the most: within these whichever is ground.
    expect(bit.neckUnder.lower).toBeCloseTo(2 * 1.1237 * 0.016033, 4)
    expect(bit.neckUnder.upper).toBeCloseTo(2 * 1.0391 * 0.037522, 4)
  })

  it('leaves the neck limits that a nose of any width can meet, whatever its form', () => {
    const jobs = [
      job,
      hexagon,
      {
        ...hexagon,
        bore: { ...hexagon.bore, diameter: 17.4 },
        feature: { socket: { sides: 4, across: [16, 16.1], tip: 0.2 } },
      },
      { ...job, feature: { groove: { radius: 1, depth: [0.8, 1] } } },
      { ...job, units: 'in', bore: { diameter: 1.25, length: 1.75 } },
    ]
    const forms = jobs.map((each) => {
      const { bit } = withBar(each)
      expect(bit.neckUnder.lower).toBeGreaterThan(0)
      expect(bit.neckUnder.upper).toBeGreaterThan(bit.neckUnder.lower)
      return bit.form
    })
    expect(new Set(forms)).toEqual(new Set([undefined, 'vee', 'round']))
  })

  it('shows a V of 120° at 119.24° on a face raked by 10°', () => {
    // tan 60° · cos 10° = 1.732051 · 0.984808 = 1.705737; atan of it 59.6186°, twice.
    const { bit } = withBar(hexagon)
    expect(bit.rake).toBe(10)
    expect(bit.faceAngle).toBeCloseTo(119.237, 3)
    expect(faceAngle(90, 0)).toBeCloseTo(90, 12)
  })

  it('counts only regrinds that width and length both have room for, and says no others', () => {
    // 14 JS9 in a bore of 50, on a blank of 14: 13.9785 to 13.99; 0.25 off the end takes 0.0133 off the width.
    const none = withBar({ ...job, bore: { diameter: 50, length: 55 }, hub: { outside: 95 } })
    expect(none.bit.noseWidth.upper - none.bit.noseWidth.lower).toBeLessThan(none.bit.widthPerRegrind)
    expect(none.bit.regrinds).toBe(0)
    expect(regrindOf(none.bit)).toBe('nothing')
    expect(none.basis['bit.noseLength']).toBe('the least that keeps the shoulder in the bore, and 0.5 mm to spare')
    // A slot of 8 to 8.4 lets 0.3 go, 22 times 0.0133: but after two the nose is as short as it may be, or after three where it was rounded up.
    const wide = withBar({
      ...job,
      bore: { diameter: 30, length: 30 },
      feature: { keyway: { width: [8, 8.4], across: [33.3, 33.5] } },
      tooling: { bar: { bit: { size: 10 }, behind: 30 } },
    })
    expect(wide.bit.lanes).toBe(1)
    const width = (wide.bit.noseWidth.upper - wide.bit.noseWidth.lower) / wide.bit.widthPerRegrind
    const length = (wide.bit.noseLength - wide.bit.noseLengthMin) / 0.25
    expect(width).toBeGreaterThan(4)
    expect(length).toBeLessThan(4)
    expect(wide.bit.regrinds).toBe(Math.floor(length))
    expect(wide.basis['bit.noseLength']).toMatch(/and two regrinds$/)
    // What is ground follows the form.
    expect(regrindOf(wide.bit)).toBe('end')
    expect(regrindOf(withBar(hexagon).bit)).toBe('flanks')
    expect(regrindOf(withBar({ ...job, feature: { groove: { radius: 1, depth: [0.8, 1] } } }).bit)).toBe('face')
  })

  it('is ground to limits, even where the slot leaves none, and no wider than its blank', () => {
    // A slot of 3/8 in and no less, cut with a blank of 3/8: .375 at the most, .001 less at the least.
    const { bit } = withBar({
      units: 'in',
      bore: { diameter: 1.275, tolerance: [-0.001, 0], length: 1.5 },
      hub: { outside: 3, material: 'mild steel' },
      feature: { spline: { standard: 'sae-j499', count: 6, size: '1-1/2 in', fit: 'B' } },
      tooling: { bar: { behind: 3 } },
    })
    expect(bit.noseWidth.upper - bit.noseWidth.lower).toBeCloseTo(0, 9)
    expect(bit.groundWidth.upper / 25.4).toBeCloseTo(0.375, 9)
    expect(bit.groundWidth.lower / 25.4).toBeCloseTo(0.374, 9)
  })
})
