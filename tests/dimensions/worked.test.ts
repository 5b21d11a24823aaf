import { describe, expect, it } from 'vitest'
import {
  acrossFromSide,
  asmeAcross,
  asmeShaftAcross,
  mouthHalfAngle,
  mouthX,
  sagitta,
  touchOffX,
} from '../../src/dimensions/bore.ts'
import { mouthHalfOfV, setBackOf, vertexOf } from '../../src/dimensions/v-nose.ts'
import { largestBar, projectionLeast, type Setting } from '../../src/dimensions/window.ts'
import { limitsOf } from '../../src/fits/iso-286.ts'
import { designed } from './designed.ts'

/** Sharp full nose, no tolerance, one clearance all round, in any one unit. */
const setting = (bore: number, width: number, across: number, clearance = 0): Setting => ({
  radius: bore / 2,
  floor: across - bore / 2,
  noseWidth: width,
  cornerRadius: 0,
  offset: 0,
  clearances: { back: clearance, front: clearance, withdrawn: clearance },
  chipRoom: 0,
})

describe('the rule of thumb, bar and crown depth in the bore', () => {
  // Derived; bore, key, across, arc over the mouth, largest bar, and what the rule of thumb has too much. The first three in inches.
  it.each([
    [0.75, 0.1875, 0.836842, 0.011908, 0.653089, 0.010069],
    [1, 0.25, 1.114123, 0.015877, 0.872417, 0.013461],
    [6, 2, 7, 0.171573, 4.871591, 0.128409],
    [10, 4, 11.8, 0.417424, 7.90825, 0.29175],
    [12, 4, 13.8, 0.343146, 9.934154, 0.265846],
    [20, 6, 22.8, 0.460608, 16.831651, 0.368349],
    [25, 8, 28.3, 0.657281, 21.170313, 0.529687],
    [50, 14, 53.8, 1, 45.308597, 0.891403],
  ])('bore %s, key %s, across %s', (bore, width, across, arc, most, over) => {
    expect(sagitta(bore / 2, width / 2)).toBeCloseTo(arc, 5)
    const exact = largestBar(setting(bore, width, across))
    expect(exact).toBeCloseTo(most, 5)
    expect(2 * bore - across - exact).toBeCloseTo(over, 5)
  })

  it('1 in, 1/4, with .010 in: .855877 by the rule of thumb, .842633 in truth (derived)', () => {
    expect(largestBar(setting(1, 0.25, 1.114123, 0.01))).toBeCloseTo(0.842633, 6)
    expect(2 - 1.114123 - 3 * 0.01).toBeCloseTo(0.855877, 6)
  })

  it('in lanes the crown depth is too little: 1.5 in, 3/8, nose 3/16, bar 3/4, .015 asked (derived)', () => {
    const side = { ...setting(1.5, 0.1875, 1.668684, 0.015), offset: 0.09375 }
    const crown = 1.668684 - 1.5
    expect(crown).toBeCloseTo(0.168684, 6)
    expect(crown + 0.015).toBeCloseTo(0.183684, 6)
    const least = projectionLeast(side, 0.75)
    expect(least).toBeCloseTo(0.196106, 5)
    // To the mouth's corner, or past it to the bore's arc: .002993 left of .015, and .011517 in the metal with nothing added.
    const left = (projection: number) => {
      const axis = side.floor - projection - 0.375
      const corner = Math.hypot(mouthX(0.75, 0.1875) - axis, 0.09375)
      const towardsMouth = 0.09375 / axis < 0.1875 / mouthX(0.75, 0.1875)
      return (towardsMouth ? corner : 0.75 - Math.hypot(axis, 0.09375)) - 0.375
    }
    expect(left(crown + 0.015)).toBeCloseTo(0.002993, 5)
    expect(left(crown)).toBeCloseTo(-0.011517, 5)
    expect(left(least)).toBeCloseTo(0.015, 6)
  })

  it('10 mm, 4 wide, bar 8, nose out 1.9: hard against the back wall it lies in 0.27986 mm² of metal (derived)', () => {
    // The nose's end at the right of the bore's arc, strip by strip.
    const end = -5 + 8 + 1.9
    const strips = 200_000
    const area = Array.from({ length: strips }, (_, n) => {
      const y = (2 * (n + 0.5)) / strips
      return Math.max(0, end - mouthX(5, y)) * (2 / strips)
    }).reduce((sum, strip) => sum + 2 * strip, 0)
    expect(area).toBeCloseTo(0.27986, 4)
    expect(touchOffX(5, 4)).toBeLessThan(end)
  })
})

describe('mouth and corners', () => {
  it('6 splines in 23: half a mouth is 15.121665° (derived)', () => {
    expect(mouthHalfAngle(11.5, 3)).toBeCloseTo(15.121665, 6)
  })

  it('a square 10 across in 10.4: its mouth is 5.051167 wide (derived)', () => {
    expect(2 * mouthHalfOfV(4, 5, 5.2)).toBeCloseTo(5.051167, 6)
  })

  it('a tip of 0.2 in a square 12 across stops at 8.402439, 2.152439 from touch, and not 2.235281 (derived)', () => {
    expect(setBackOf(4, 1)).toBeCloseTo(0.414214, 6)
    expect(vertexOf(4, 6) - setBackOf(4, 0.2)).toBeCloseTo(8.402439, 6)
    expect(vertexOf(4, 6) - setBackOf(4, 0.2) - 6.25).toBeCloseTo(2.152439, 6)
    expect((2.235281 - 2.152439) * Math.cos(Math.PI / 4)).toBeCloseTo(0.058579, 5)
  })
})

describe('inch keyseats as the handbook prints them', () => {
  // ASME B17.1 by Machinery's Handbook 31, page 2552: shaft, width, height, S and T; printed to .001.
  it.each([
    [0.5, 0.125, 0.125, 0.42956, 0.55956],
    [1, 0.25, 0.25, 0.85912, 1.11412],
    [2, 0.5, 0.5, 1.71825, 2.22325],
    [2, 0.5, 0.375, 1.78075, 2.16075],
    [2.5, 0.625, 0.625, 2.14781, 2.77781],
  ])('shaft %s, key %s × %s: S %s, T %s', (shaft, width, height, seat, way) => {
    expect(asmeShaftAcross(shaft, width, height)).toBeCloseTo(seat, 4)
    expect(asmeAcross(shaft, width, height, 0.005)).toBeCloseTo(way, 4)
  })

  it('half of the arc over a 1/8 key in a 1/2 in shaft is Y, .007938 (same page, derived)', () => {
    expect(sagitta(0.25, 0.0625)).toBeCloseTo(0.0079385, 6)
  })

  it('a side depth makes the same across', () => {
    expect(acrossFromSide(1, 0.25, 0.13)).toBeCloseTo(1.114123, 6)
  })
})

describe('fits', () => {
  it('29 H7/h8 and 29 h7: 28.979 to 29, 29 to 29.021 (a library of PN-EN ISO 286)', () => {
    const of = (name: string) => {
      const by = limitsOf(29, name)
      return [29 + (by?.lower ?? Number.NaN), 29 + (by?.upper ?? Number.NaN)].map((size) => Number(size.toFixed(3)))
    }
    expect(of('h7')).toEqual([28.979, 29])
    expect(of('H7')).toEqual([29, 29.021])
  })

  it('IT7 of 18 to 30 mm is 16 × 1.3074 µm, and in the table 21 (ISO 919 annex, formula)', () => {
    const mean = Math.sqrt(18 * 30)
    expect(mean).toBeCloseTo(23.238, 3)
    const unit = 0.45 * Math.cbrt(mean) + 0.001 * mean
    expect(unit).toBeCloseTo(1.3074, 4)
    expect(Math.round(16 * unit)).toBe(Math.round(1000 * (limitsOf(25, 'H7')?.upper ?? 0)))
  })
})

describe('whole jobs as worked', () => {
  it('1-1/4 in, 1/4, hub 4 in, bar 3/4: drawn back .009 it is short of lag and two chips, and said so', () => {
    const inch = 25.4
    const { findings, loads, verdict } = designed({
      units: 'in',
      bore: { diameter: 1.25, tolerance: [0, 0], length: 4 },
      hub: { outside: 3 },
      feature: { keyway: { width: 0.25, across: 1.364697 } },
      tooling: {
        bar: {
          diameter: 0.75,
          projection: 0.25,
          infeed: 0.0005,
          behind: 3,
          setting: 0.001,
          bit: { size: 0.25 },
          nose: { width: 0.25, cornerRadius: 0 },
          clearance: { back: 0.015, front: 0.01, withdrawn: 0.009 },
        },
      },
    })
    // With 4.8 in of overhang it is .009327 and .001 (derived); this bar stands out less.
    const drawn = findings.find(({ rule }) => rule === 'withdrawn-over-lag')
    expect(drawn?.limit).toBeCloseTo((loads?.lag.most ?? 0) + 2 * 0.0005 * inch, 9)
    expect(drawn?.verdict).toBe('caution')
    expect(findings.find(({ rule }) => rule === 'bar-not-too-long')?.verdict).toBe('caution')
    expect(verdict).not.toBe('pass')
  })
})
