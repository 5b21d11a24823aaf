import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/fits/iso-286.ts'
import { gradeWidth } from '../../src/standards/iso-286.ts'
import { isoSplineHub, isoSplineNamed, isoSplineNames, isoSplines, isoSplineShaft } from '../../src/standards/iso-14.ts'

// DIN ISO 14 designations N x d x D x B, typed from memory apart from the program's table.
const designations = `
  6x23x26x6 6x26x30x6 6x28x32x7 8x32x36x6 8x36x40x7 8x42x46x8 8x46x50x9 8x52x58x10 8x56x62x10 8x62x68x12
  10x72x78x12 10x82x88x12 10x92x98x14 10x102x108x16 10x112x120x18
  6x11x14x3 6x13x16x3.5 6x16x20x4 6x18x22x5 6x21x25x5 6x23x28x6 6x26x32x6 6x28x34x7 8x32x38x6 8x36x42x7
  8x42x48x8 8x46x54x9 8x52x60x10 8x56x65x10 8x62x72x12 10x72x82x12 10x82x92x12 10x92x102x14 10x102x112x16 10x112x125x18`

// Arc between two slots on the minor diameter, worked apart from this program, mm, by minor diameter.
const arcs = [
  [11, 2.72],
  [13, 3.26],
  [16, 4.33],
  [18, 4.36],
  [21, 5.95],
  [23, 5.97],
  [26, 7.56],
  [28, 7.59],
  [32, 6.53],
  [36, 7.09],
  [42, 8.44],
  [46, 9.01],
  [52, 10.36],
  [56, 11.94],
  [62, 12.27],
  [72, 10.56],
  [82, 13.72],
  [92, 14.85],
  [102, 15.98],
  [112, 17.11],
] as const

describe('straight-sided splines, ISO 14', () => {
  it('each series ascends, and both have the same slots on the same bore', () => {
    for (const series of ['light', 'medium'] as const) {
      const rows = isoSplines.rows.filter((row) => row.series === series)
      rows.slice(1).forEach((row, n) => {
        const before = rows[n]
        expect(row.minor).toBeGreaterThan(before?.minor ?? Infinity)
        expect(row.major).toBeGreaterThan(before?.major ?? Infinity)
        expect(row.count).toBeGreaterThanOrEqual(before?.count ?? Infinity)
      })
    }
    const medium = new Map(isoSplines.rows.filter((row) => row.series === 'medium').map((row) => [row.minor, row]))
    for (const row of isoSplines.rows.filter((each) => each.series === 'light')) {
      expect(medium.get(row.minor)).toMatchObject({ count: row.count, width: row.width })
      expect(medium.get(row.minor)?.major).toBeGreaterThan(row.major)
    }
  })

  it('rows agree with the designations of DIN ISO 14', () => {
    const ours = isoSplines.rows.map((row) => `${row.count}x${row.minor}x${row.major}x${row.width}`)
    expect(ours).toEqual(designations.trim().split(/\s+/))
  })

  it('symmetry is IT7 of the width', () => {
    for (const row of isoSplines.rows) expect(row.symmetryTolerance).toBe(gradeWidth(row.width, 7))
  })

  it('metal stands between the slots, as much as was worked out apart', () => {
    const known = new Map<number, number>(arcs)
    for (const { count, minor, width } of isoSplines.rows) {
      const arc = minor * (Math.PI / count - Math.asin(width / minor))
      expect([minor, arc]).toEqual([minor, expect.closeTo(known.get(minor) ?? 0, 1)])
      expect(Math.abs(arc - (known.get(minor) ?? 0))).toBeLessThan(0.006)
      expect(arc / width).toBeGreaterThan(0.85)
    }
  })

  it('names as a machinist writes them, and no others', () => {
    expect(isoSplineNamed('6x23x26')).toMatchObject({
      series: 'light',
      count: 6,
      minor: 23,
      major: 26,
      width: 6,
      symmetryTolerance: 0.012,
    })
    expect(isoSplineNamed(' 8 × 32 X 38 ')).toMatchObject({ series: 'medium', width: 6 })
    isoSplineNames().forEach((name, n) => expect(isoSplineNamed(name)).toBe(isoSplines.rows[n]))
    expect(new Set(isoSplineNames()).size).toBe(35)
    expect(['6x23', '6x23x27', '8x56x66', '6x23x26x6', '', 'xx', '6xx26'].map(isoSplineNamed)).toEqual(
      Array(7).fill(undefined),
    )
  })

  it('a hub left as cut is closer in the slots than one that is hardened; the bore is H7 in both', () => {
    expect(isoSplineHub('untreated')).toEqual({ width: 'H9', major: 'H10', minor: 'H7' })
    expect(isoSplineHub('hardened')).toEqual({ width: 'H11', major: 'H10', minor: 'H7' })
    // 6x23x26 as ISO 286 has them: 6 H9 +0.030, 6 H11 +0.075, 26 H10 +0.084, 23 H7 +0.021.
    expect(limitsOf(6, isoSplineHub('untreated').width)).toEqual({ lower: 0, upper: 0.03 })
    expect(limitsOf(6, isoSplineHub('hardened').width)).toEqual({ lower: 0, upper: 0.075 })
    expect(limitsOf(26, isoSplineHub('hardened').major)).toEqual({ lower: 0, upper: 0.084 })
    expect(limitsOf(23, isoSplineHub('hardened').minor)).toEqual({ lower: 0, upper: 0.021 })
  })

  it('the three fits run from loose to none, in the bore and in the slots, and every shaft enters', () => {
    const least = (size: 'width' | 'minor', nominal: number) =>
      (['sliding', 'close sliding', 'fixed'] as const).map((fit) => {
        const shaft = limitsOf(nominal, isoSplineShaft(fit)[size])
        const hub = limitsOf(nominal, isoSplineHub('untreated')[size])
        return shaft && hub ? hub.lower - shaft.upper : Number.NaN
      })
    for (const { width, minor } of isoSplines.rows)
      for (const [loose, close, none] of [least('width', width), least('minor', minor)]) {
        expect(loose).toBeGreaterThan(close ?? Infinity)
        expect(close).toBeGreaterThan(none ?? Infinity)
        expect(none).toBe(0)
      }
    expect(isoSplineShaft('fixed').major).toBe('a11')
  })
})
