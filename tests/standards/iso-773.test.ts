import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  isoHeightClass,
  isoHeightDeviations,
  isoKeyFor,
  isoKeyLengths,
  isoKeyOfWidth,
  isoKeys,
  isoKeyWidths,
  isoWidthClass,
  isoWidthDeviations,
} from '../../src/standards/iso-773.ts'
import { limitsOf } from '../../src/fits/iso-286.ts'

// DIN 6885-1, typed from memory apart from the program's table: [shaft, b, h, t1, t2].
const dinRows = [
  [7, 2, 2, 1.2, 1],
  [10, 3, 3, 1.8, 1.4],
  [12, 4, 4, 2.5, 1.8],
  [17, 5, 5, 3, 2.3],
  [20, 6, 6, 3.5, 2.8],
  [25, 8, 7, 4, 3.3],
  [38, 10, 8, 5, 3.3],
  [44, 12, 8, 5, 3.3],
  [50, 14, 9, 5.5, 3.8],
  [58, 16, 10, 6, 4.3],
  [60, 18, 11, 7, 4.4],
  [75, 20, 12, 7.5, 4.9],
  [85, 22, 14, 9, 5.4],
  [95, 25, 14, 9, 5.4],
  [100, 28, 16, 10, 6.4],
] as const

describe('parallel keys, ISO/R 773', () => {
  it('bands touch: every shaft over 6 up to 500 has one key, none below or above', () => {
    isoKeys.rows.forEach((row, i) => expect(row.over).toBe(i === 0 ? 6 : isoKeys.rows[i - 1]?.upTo))
    expect(isoKeyFor(6)).toBeUndefined()
    expect(isoKeyFor(500)?.width).toBe(100)
    expect(isoKeyFor(500.1)).toBeUndefined()
    fc.assert(
      fc.property(fc.double({ min: 6.001, max: 500, noNaN: true }), (shaft) => {
        const row = isoKeyFor(shaft)
        return row !== undefined && shaft > row.over && shaft <= row.upTo
      }),
    )
  })

  it('the end of a band belongs to it', () => {
    expect([22, 22.001, 30, 30.001].map((shaft) => isoKeyFor(shaft)?.width)).toEqual([6, 8, 8, 10])
  })

  it('rows agree with DIN 6885-1', () => {
    for (const [shaft, b, h, t1, t2] of dinRows)
      expect(isoKeyFor(shaft)).toMatchObject({ width: b, height: h, shaftDepth: t1, hubDepth: t2 })
  })

  it.each(isoKeys.rows)(
    '$width × $height: the two depths hold the key with a little air, and its edges pass the corner',
    (row) => {
      const air = row.shaftDepth + row.hubDepth - row.height
      expect(air).toBeGreaterThan(0.199)
      expect(air).toBeLessThan(0.501)
      expect(row.keyChamfer[0]).toBeGreaterThanOrEqual(row.corner[1])
      expect(row.corner[0]).toBeLessThan(row.corner[1])
      expect(row.keyChamfer[0]).toBeLessThan(row.keyChamfer[1])
      // The key stands more in the shaft than in the hub, and is a quarter of the shaft wide, roughly.
      expect(row.shaftDepth).toBeGreaterThan(row.hubDepth)
      expect(row.width / row.upTo).toBeGreaterThan(0.19)
      expect(row.width / row.over).toBeLessThan(0.42)
      expect(isoKeyLengths).toContain(row.lengths[0])
      expect(isoKeyLengths).toContain(row.lengths[1])
      expect(isoKeyOfWidth(row.width)).toBe(row)
    },
  )

  it('widths that the standard has not are no keys', () => {
    expect([0, 7, 9, 101].map(isoKeyOfWidth)).toEqual([undefined, undefined, undefined, undefined])
    expect(isoWidthDeviations(7, 'hub', 'normal')).toBeUndefined()
  })

  it('the printed width tolerances are those of ISO 286, for every key', () => {
    for (const { width } of isoKeys.rows)
      for (const where of ['hub', 'shaft', 'key'] as const)
        for (const fit of ['normal', 'tight', 'sliding'] as const)
          expect(isoWidthDeviations(width, where, fit)).toEqual(limitsOf(width, isoWidthClass(where, fit)))
  })

  it('every line of the width table serves a key', () => {
    for (const row of isoKeyWidths.rows)
      expect([isoKeyOfWidth(row.from)?.width, isoKeyOfWidth(row.to)?.width]).toEqual([row.from, row.to])
  })

  it('classes by fit, and 8 mm as JIS B 1301-1996 prints it', () => {
    expect(isoWidthClass('hub', 'normal')).toBe('JS9')
    expect(isoWidthClass('shaft', 'normal')).toBe('N9')
    expect(isoWidthDeviations(8, 'hub', 'normal')).toEqual({ lower: -0.018, upper: 0.018 })
    expect(isoWidthDeviations(8, 'hub', 'tight')).toEqual({ lower: -0.051, upper: -0.015 })
    expect(isoWidthDeviations(8, 'hub', 'sliding')).toEqual({ lower: 0.04, upper: 0.098 })
    expect(isoWidthDeviations(8, 'shaft', 'normal')).toEqual({ lower: -0.036, upper: 0 })
    expect(isoWidthDeviations(3, 'shaft', 'normal')).toEqual({ lower: -0.029, upper: -0.004 })
  })

  it('heights: h9 while square, h11 above', () => {
    expect(isoKeys.rows.map((row) => isoHeightClass(row.width, row.height)).indexOf('h11')).toBe(5)
    expect(isoHeightDeviations(6, 6)).toEqual({ lower: -0.03, upper: 0 })
    expect(isoHeightDeviations(8, 7)).toEqual({ lower: -0.09, upper: 0 })
    for (const row of isoKeys.rows)
      expect(isoHeightDeviations(row.width, row.height)).toEqual(
        limitsOf(row.height, isoHeightClass(row.width, row.height)),
      )
  })
})
