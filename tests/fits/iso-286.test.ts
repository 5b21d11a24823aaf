import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isoClasses, isToleranceClass, limitsOf } from '../../src/fits/iso-286.ts'
import { isoGrades, isoGradeTable } from '../../src/standards/iso-286.ts'
import { classesInUse, limitsInUse } from './iso-286-limits.ts'

// Nominal, class, limits in micrometres, and where they are printed.
const points = [
  [25, 'H7', 0, 21, 'published H7 list'],
  [29, 'h7', -21, 0, 'documentation of a public fits library'],
  [29, 'h8', -33, 0, 'documentation of a public fits library'],
  [18, 'H7', 0, 18, 'published H7 list'],
  [50, 'H7', 0, 25, 'published H7 list'],
  [50, 'h6', -16, 0, 'from memory (ISO 286-2)'],
  [20, 'h9', -52, 0, 'from memory (ISO 286-2)'],
  [30, 'k6', 2, 15, 'from memory (ISO 286-2)'],
  [12, 'n6', 12, 23, 'from memory (ISO 286-2)'],
  [63, 'g6', -29, -10, 'from memory (ISO 286-2)'],
  [8, 'N9', -36, 0, 'JIS B 1301-1996 excerpt'],
  [8, 'D10', 40, 98, 'JIS B 1301-1996 excerpt'],
  [5, 'P9', -42, -12, 'JIS B 1301-1996 excerpt'],
  [25, 'N7', -28, -7, 'from memory (ISO 286-2)'],
  [25, 'K7', -15, 6, 'from memory (ISO 286-2)'],
  [25, 'K8', -23, 10, 'from memory (ISO 286-2)'],
  [25, 'M7', -21, 0, 'from memory (ISO 286-2)'],
  [25, 'M8', -29, 4, 'from memory (ISO 286-2)'],
  [25, 'e8', -73, -40, 'from memory (ISO 286-2)'],
  [25, 'd9', -117, -65, 'from memory (ISO 286-2)'],
  [300, 'M6', -41, -9, 'from memory (ISO 286-2): the exception'],
] as const

describe('limits, ISO 286', () => {
  it.each(points)('%s %s is %s to %s micrometres (%s)', (nominal, name, lower, upper) => {
    expect(limitsOf(nominal, name)).toEqual({ lower: lower / 1000, upper: upper / 1000 })
  })

  it('every band of the classes in use, at its end and just above its beginning', () => {
    for (const { over, upTo, limits } of limitsInUse) {
      expect(limits).toHaveLength(classesInUse.length)
      classesInUse.forEach((name, i) => {
        const [lower, upper] = limits[i] ?? [Number.NaN, Number.NaN]
        for (const nominal of [over + 0.01, upTo])
          expect([nominal, name, limitsOf(nominal, name)]).toEqual([
            nominal,
            name,
            { lower: expect.closeTo(lower / 1000, 9), upper: expect.closeTo(upper / 1000, 9) },
          ])
      })
    }
  })

  it('grades widen with the size and with the number; the bands touch', () => {
    isoGradeTable.rows.forEach((row, i) => {
      const before = isoGradeTable.rows[i - 1]
      expect(row.over).toBe(before?.upTo ?? 0)
      isoGrades.forEach((grade, g) => {
        if (before) expect(row.widths[grade]).toBeGreaterThan(before.widths[grade] - 1e-9)
        const finer = isoGrades[g - 1]
        if (finer) expect(row.widths[grade]).toBeGreaterThan(row.widths[finer])
      })
    })
  })

  it('IT7 lies near 16 i, i = 0.45 ∛D + 0.001 D (IS 919 annex), within a micrometre', () => {
    for (const row of isoGradeTable.rows) {
      if (row.over < 3) continue
      const middle = Math.sqrt(row.over * row.upTo)
      expect(Math.abs(row.widths[7] - 16 * (0.45 * Math.cbrt(middle) + 0.001 * middle))).toBeLessThan(1)
    }
  })

  it('a hole-basis fit and the shaft-basis fit of the same letters play alike: H7/k6 K7/h6, H7/n6 N7/h6, H7/p6 P7/h6', () => {
    const size = fc.integer({ min: 4, max: 315 })
    fc.assert(
      fc.property(size, fc.constantFrom('k', 'm', 'n', 'p'), (nominal, letter) => {
        const [H, shaft] = [limitsOf(nominal, 'H7'), limitsOf(nominal, `${letter}6`)]
        const [hole, h] = [limitsOf(nominal, `${letter.toUpperCase()}7`), limitsOf(nominal, 'h6')]
        if (!H || !shaft || !hole || !h) return false
        return (
          Math.abs(H.lower - shaft.upper - (hole.lower - h.upper)) < 1e-9 &&
          Math.abs(H.upper - shaft.lower - (hole.upper - h.lower)) < 1e-9
        )
      }),
    )
  })

  it('holes D to H mirror their shafts; js straddles; every class has the width of its grade', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 315, noNaN: true }), fc.constantFrom(...isoClasses()), (nominal, name) => {
        const limits = limitsOf(nominal, name)
        if (!limits) return /^[KMNP]\d|^[KMNP]5$/.test(name)
        const grade = Number(name.replace(/\D+/, ''))
        const width = isoGradeTable.rows.find((row) => nominal <= row.upTo + 1e-6)?.widths[grade as 7]
        if (Math.abs((limits.upper - limits.lower) * 1000 - (width ?? Number.NaN)) > 1e-6) return false
        if (!/^[D-H]\d/.test(name)) return true
        const shaft = limitsOf(nominal, name.toLowerCase())
        return shaft !== undefined && shaft.upper === 0 - limits.lower && shaft.lower === 0 - limits.upper
      }),
    )
  })

  it('outside the tables there is no answer', () => {
    for (const [nominal, name] of [
      [0, 'H7'],
      [-5, 'H7'],
      [315.1, 'H7'],
      [25, 'H4'],
      [25, 'H12'],
      [25, 'H'],
      [25, '7'],
      [25, 'H 7'],
      [25, 's6'],
      [25, 'Js9'],
      [25, 'jS9'],
      [25, 'K9'],
      [25, 'K5'],
      [25, ''],
    ] as const)
      expect([name, limitsOf(nominal, name)]).toEqual([name, undefined])
  })

  it('knows its classes by name', () => {
    expect(['H7', 'JS9', 'js6', 'P9', 'g6', 'd10'].map(isToleranceClass)).toEqual([true, true, true, true, true, true])
    expect(['K9', 'x7', 'H7 ', 'H70', 'h12'].map(isToleranceClass)).toEqual([false, false, false, false, false])
    for (const name of classesInUse) expect(isoClasses()).toContain(name)
    for (const name of isoClasses()) expect([name, limitsOf(20, name) === undefined]).toEqual([name, false])
  })
})
