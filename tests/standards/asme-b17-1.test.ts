import { describe, expect, it } from 'vitest'
import {
  asmeFilletFor,
  asmeFillets,
  asmeFit,
  asmeFits,
  asmeKeyFor,
  asmeKeyOfWidth,
  asmeKeys,
  asmeLeadLimit,
  asmeOffsetLimit,
  asmeParallelClearance,
  asmeScrewsOverKeys,
  asmeTaperAllowance,
} from '../../src/standards/asme-b17-1.ts'
import { fromInchName, inch, inchesNamed } from '../../src/standards/inch.ts'
import { setScrewFor } from '../../src/standards/set-screws.ts'
import { threadNames, threadNamed } from '../../src/standards/threads.ts'
import { depthControls } from './asme-depth-control.ts'

// Shigley, 9th ed., Table 7-6: [over, up to, w, h of the rectangular key], inches.
const shigley = [
  ['5/16', '7/16', '3/32', undefined],
  ['7/16', '9/16', '1/8', '3/32'],
  ['9/16', '7/8', '3/16', '1/8'],
  ['7/8', '1-1/4', '1/4', '3/16'],
  ['1-1/4', '1-3/8', '5/16', '1/4'],
  ['1-3/8', '1-3/4', '3/8', '1/4'],
  ['1-3/4', '2-1/4', '1/2', '3/8'],
  ['2-1/4', '2-3/4', '5/8', '7/16'],
  ['2-3/4', '3-1/4', '3/4', '1/2'],
] as const

// The fits as the table prints them in words: [form, class, width, tightest and loosest side fit], thousandths, + clearance.
// ASME B17.1 standard fits as printed on an engineering reference page; class 2 from memory.
const sideFits = [
  ['square', 1, '1/2', 0, 4],
  ['square', 1, '3/4', 0, 5],
  ['square', 1, '1', 0, 6],
  ['square', 1, '1-1/2', 0, 7],
  ['square', 1, '2-1/2', 0, 8],
  ['square', 1, '3-1/2', 0, 10],
  ['rectangular', 1, '1/2', 0, 5],
  ['rectangular', 1, '3/4', 0, 6],
  ['rectangular', 1, '1', 0, 7],
  ['rectangular', 1, '1-1/2', 0, 8],
  ['rectangular', 1, '3', 0, 9],
  ['rectangular', 1, '4', 0, 10],
  ['rectangular', 1, '6', 0, 12],
  ['rectangular', 1, '7', 0, 17],
  ['square', 2, '1-1/4', -1, 2],
  ['square', 2, '3', -2, 2],
  ['square', 2, '3-1/2', -3, 2],
  ['rectangular', 2, '1-1/4', -1, 2],
  ['rectangular', 2, '3', -2, 2],
  ['rectangular', 2, '7', -3, 2],
  ['taper', 2, '1-1/4', -1, 2],
] as const

const thou = inch / 1000

describe('keys, ASME B17.1', () => {
  it('bands touch from 5/16 to 30 in', () => {
    asmeKeys.rows.forEach((row, i) =>
      expect(row.over).toBe(i === 0 ? fromInchName('5/16') : asmeKeys.rows[i - 1]?.upTo),
    )
    expect(asmeKeyFor(fromInchName('5/16'))).toBeUndefined()
    expect(asmeKeyFor(30 * inch)?.widthName).toBe('7')
    expect(asmeKeyFor(30.001 * inch)).toBeUndefined()
    expect(asmeKeyFor(0.875 * inch)?.widthName).toBe('3/16')
    expect(asmeKeyFor(0.8751 * inch)?.widthName).toBe('1/4')
  })

  it('rows agree with Shigley Table 7-6', () => {
    for (const [over, upTo, width, height] of shigley) {
      const row = asmeKeyFor(fromInchName(upTo))
      expect(row).toMatchObject({ over: fromInchName(over), widthName: width, heightSquareName: width })
      expect(row?.heightRectangularName).toBe(height)
    }
  })

  it.each(asmeKeys.rows)(
    '$widthName: a quarter of the shaft wide, the rectangular key lower than the square',
    (row) => {
      expect(asmeKeyOfWidth(row.width)).toBe(row)
      expect(row.width).toBe(inchesNamed(row.widthName) * 25.4)
      if (row.heightSquare !== undefined) expect(row.heightSquare).toBe(row.width)
      if (row.heightRectangular !== undefined) {
        expect(row.heightRectangular).toBeLessThan(row.width)
        expect(row.heightRectangular).toBeGreaterThan(row.width / 2)
      }
      expect(row.width / row.upTo).toBeGreaterThan(0.199)
      expect(row.width / row.over).toBeLessThan(0.34)
    },
  )

  it('S and T by their closed forms are those printed in Table 2', () => {
    for (const row of depthControls) {
      const [shaft, width] = [inchesNamed(row.shaft), inchesNamed(row.width)]
      expect(asmeKeyFor(shaft * inch)).toMatchObject({
        widthName: row.width,
        heightSquareName: row.square,
        heightRectangularName: row.rectangular,
      })
      const chord = Math.sqrt(shaft ** 2 - width ** 2)
      for (const [name, controls] of [
        [row.square, row.squareControls],
        [row.rectangular, row.rectangularControls],
      ] as const) {
        const height = inchesNamed(name)
        const [s, t] = [(shaft - height + chord) / 2, (shaft + height + chord) / 2]
        const found = [s, t + asmeParallelClearance / inch, t + asmeTaperAllowance / inch]
        found.forEach((value, i) => expect(Math.abs(value - (controls[i] ?? 0))).toBeLessThan(0.00055))
      }
    }
    expect(depthControls.filter((row) => row.printed)).toHaveLength(23)
  })
})

describe('fits of keys, ASME B17.1', () => {
  it('bands of each form and class touch, from nothing up', () => {
    for (const form of ['square', 'rectangular', 'taper'] as const)
      for (const fitClass of [1, 2] as const) {
        const rows = asmeFits.rows.filter((row) => row.form === form && row.class === fitClass)
        rows.forEach((row, i) => expect(row.over).toBe(i === 0 ? 0 : rows[i - 1]?.upTo))
      }
    expect(asmeFit({ form: 'taper', class: 1, width: 6.35 })).toBeUndefined()
    expect(asmeFit({ form: 'square', class: 1, width: 3.6 * inch })).toBeUndefined()
  })

  it('key and keyseat widths give the printed side fits, every row', () => {
    expect(sideFits).toHaveLength(asmeFits.rows.length)
    for (const [form, fitClass, width, tightest, loosest] of sideFits) {
      const fit = asmeFit({ form, class: fitClass, width: fromInchName(width) })
      expect(fit?.upTo).toBe(fromInchName(width))
      if (!fit) continue
      expect(fit.hubWidth.lower - fit.keyWidth.upper).toBeCloseTo(tightest * thou, 9)
      expect(fit.hubWidth.upper - fit.keyWidth.lower).toBeCloseTo(loosest * thou, 9)
    }
  })

  it('over the top there is at least the printed clearance: .005 class 1, 0 class 2 rectangular', () => {
    const least = (fit: (typeof asmeFits.rows)[number]) =>
      asmeParallelClearance + fit.hubDepth.lower - fit.shaftDepth.upper - fit.keyHeight.upper
    for (const fit of asmeFits.rows) {
      if (fit.class === 1) expect(least(fit)).toBeCloseTo(5 * thou, 9)
      if (fit.class === 2 && fit.form === 'rectangular') expect(least(fit)).toBeCloseTo(0, 9)
      if (fit.class === 2 && fit.form === 'square') expect(least(fit)).toBeGreaterThan(1.9 * thou)
    }
    // 1/4 square, class 1: .005 to .032 in printed.
    const quarter = asmeFit({ form: 'square', class: 1, width: 6.35 })
    const most =
      quarter && asmeParallelClearance + quarter.hubDepth.upper - quarter.shaftDepth.lower - quarter.keyHeight.lower
    expect(most).toBeCloseTo(32 * thou, 9)
  })
})

describe('the rest of ASME B17.1', () => {
  it('every chamfer clears its fillet, and the bands touch', () => {
    asmeFillets.rows.forEach((row, i) => {
      expect(row.keyChamfer).toBeGreaterThan(row.fillet)
      expect(row.fillet).toBeLessThan(row.over / 2)
      if (i > 0) expect(row.over).toBe(asmeFillets.rows[i - 1]?.upTo)
    })
    expect(asmeFilletFor(0.1 * inch)).toBeUndefined()
    expect(asmeFilletFor(0.25 * inch)?.fillet).toBe(inch / 32)
    expect(asmeFilletFor(2.6 * inch)).toBeUndefined()
  })

  it('lead: .002 in to 4 in, then .0005 in an inch, .005 in over 10 in; offset .010 in', () => {
    expect([1, 4, 6, 10, 20].map((length) => asmeLeadLimit(length * inch) / inch)).toEqual([
      expect.closeTo(0.002, 12),
      expect.closeTo(0.002, 12),
      expect.closeTo(0.003, 12),
      expect.closeTo(0.005, 12),
      expect.closeTo(0.005, 12),
    ])
    expect(asmeOffsetLimit).toBeCloseTo(0.254, 12)
  })

  it('set screws over keys grow with the shaft, in bands of the key table', () => {
    let before = 0
    asmeScrewsOverKeys.rows.forEach((row, i) => {
      expect([row.over, row.upTo]).toEqual([asmeKeys.rows[i]?.over, asmeKeys.rows[i]?.upTo])
      const thread = threadNames()
        .map(threadNamed)
        .find((found) => found?.size === row.size)
      if (row.size === '5/8') return // beyond the threads kept here
      expect(setScrewFor(thread?.name ?? '')?.size).toBe(row.size)
      expect(thread?.major).toBeGreaterThanOrEqual(before)
      before = thread?.major ?? 0
    })
  })
})
