import { describe, expect, it } from 'vitest'
import { inch, poundForce, poundForceInch } from '../../src/standards/inch.ts'
import { saeProportions, saeSpline, saeSplineLeadLimit, type SaeSplineFit } from '../../src/standards/sae-j499.ts'

// [splines, fit, major in, width in, minor in, lbf in per in at 1000 psi], each the largest.
const published: readonly (readonly [number, SaeSplineFit, number, number, number, number])[] = [
  // SAE J499-2014, summary table.
  [6, 'A', 1, 0.25, 0.9, 143],
  [6, 'B', 1, 0.25, 0.85, 208],
  [6, 'C', 1, 0.25, 0.8, 270],
  // Handbook torque columns, from memory.
  [4, 'A', 1, 0.241, 0.85, 139],
  [4, 'B', 1, 0.241, 0.75, 219],
  [10, 'A', 1, 0.156, 0.91, 215],
  [10, 'B', 1, 0.156, 0.86, 326],
  [10, 'C', 1, 0.156, 0.81, 430],
  [16, 'A', 2, 0.196, 1.82, 1375],
  [16, 'B', 2, 0.196, 1.72, 2083],
  [16, 'C', 2, 0.196, 1.62, 2751],
]

describe('parallel-side splines, SAE J499', () => {
  it('every proportion of the table is published once, and four splines have no fit C', () => {
    const names = saeProportions.rows.map((row) => `${row.count}${row.fit}`)
    expect(names.toSorted()).toEqual(published.map(([count, fit]) => `${count}${fit}`).toSorted())
    expect(saeSpline({ count: 4, fit: 'C', major: inch })).toBeUndefined()
    expect(saeSpline({ count: 8, fit: 'A', major: inch })).toBeUndefined()
  })

  it.each(published)('%i%s at %f in: sizes and torque as published', (count, fit, major, width, minor, torque) => {
    const spline = saeSpline({ count, fit, major: major * inch })
    expect((spline?.width ?? 0) / inch).toBeCloseTo(width, 9)
    expect((spline?.minor ?? 0) / inch).toBeCloseTo(minor, 9)
    expect((spline?.major ?? 0) / inch).toBe(major)
    // Halves are rounded up, so 1374.5 to 1375.499 is 1375.
    expect(Math.floor((spline?.torquePerLength ?? 0) / poundForce + 0.5 + 1e-9)).toBe(torque)
  })

  it('torque is pressure × flanks × arm: 1000 psi on six flanks of .075 at .4625 in for one inch', () => {
    const perLength = saeSpline({ count: 6, fit: 'B', major: inch })?.torquePerLength ?? 0
    expect((perLength * inch) / poundForceInch).toBeCloseTo(1000 * 6 * 0.075 * 0.4625, 9)
    const doubled = saeSpline({ count: 6, fit: 'B', major: 2 * inch })?.torquePerLength ?? 0
    expect(doubled / perLength).toBeCloseTo(4, 12)
  })

  it.each(saeProportions.rows)(
    '$count$fit: height is half of major less minor, and metal stands between the slots',
    (row) => {
      expect(row.height).toBeCloseTo((1 - row.minor) / 2, 12)
      expect(row.count * 2 * Math.asin(row.width / row.minor)).toBeLessThan(2 * Math.PI)
      // Slot and land share the circle about evenly at the mean diameter.
      expect((row.count * row.width) / (Math.PI * (1 - row.height))).toBeGreaterThan(0.3)
      expect((row.count * row.width) / (Math.PI * (1 - row.height))).toBeLessThan(0.6)
    },
  )

  it('deeper from A to C', () => {
    for (const count of [4, 6, 10, 16]) {
      const heights = saeProportions.rows.filter((row) => row.count === count).map((row) => row.height)
      expect(heights).toEqual(heights.toSorted((a, b) => a - b))
      expect(new Set(heights).size).toBe(heights.length)
    }
  })

  it('limits only where a row shows them: six splines at 1 in, .999/1.000, .248/.250, .849/.850', () => {
    const spline = saeSpline({ count: 6, fit: 'B', major: inch })
    const limits = (['major', 'width', 'minor'] as const).map((size) =>
      [spline?.tolerances?.[size].lower ?? 9, spline?.tolerances?.[size].upper ?? 9].map(
        (deviation) => Math.round((((spline?.[size] ?? 0) + deviation) / inch) * 1e4) / 1e4,
      ),
    )
    expect(limits).toEqual([
      [0.999, 1],
      [0.248, 0.25],
      [0.849, 0.85],
    ])
    expect(saeSpline({ count: 6, fit: 'B', major: 1.5 * inch })).toMatchObject({ count: 6 })
    expect(saeSpline({ count: 6, fit: 'B', major: 1.5 * inch })).not.toHaveProperty('tolerances')
    expect(saeSpline({ count: 10, fit: 'B', major: inch })).not.toHaveProperty('tolerances')
  })

  it('no spline beyond the sizes of the table', () => {
    const made = (count: number, inches: number) => saeSpline({ count, fit: 'A', major: inches * inch })?.count
    expect([made(6, 0.75), made(6, 3), made(10, 6), made(16, 2)]).toEqual([6, 6, 10, 16])
    expect([made(6, 0.74), made(6, 3.01), made(10, 6.1), made(16, 1.9), made(6, Number.NaN)]).toEqual(
      Array(5).fill(undefined),
    )
  })

  it('corner and lead: .015 in at most, .006 in a foot', () => {
    expect(saeSpline({ count: 6, fit: 'A', major: inch })?.cornerMost).toBeCloseTo(0.381, 12)
    expect(saeSplineLeadLimit(12 * inch)).toBeCloseTo(0.1524, 12)
  })
})
