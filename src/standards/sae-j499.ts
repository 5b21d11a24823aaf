import { saeSplinePressure } from './allowable-stress.ts'
import { inch } from './inch.ts'
import { type Deviations, sameSize, type Table } from './table.ts'

/** A permanent; B sliding when not under load; C sliding under load. */
export type SaeSplineFit = 'A' | 'B' | 'C'
export type SaeSplineCount = 4 | 6 | 10 | 16

/** Sizes of a spline as parts of its major diameter. */
export interface SaeProportions {
  readonly count: SaeSplineCount
  readonly fit: SaeSplineFit
  readonly width: number
  /** Of the teeth: half of major less minor. */
  readonly height: number
  readonly minor: number
  readonly source: string
}

const remembered =
  "from memory (SAE J499a Table 1; Machinery's Handbook); the height is half of major less minor, the torques come out"
const seen = `${remembered}; at 1 in as the summary table of SAE J499-2014`
const row = (
  count: SaeSplineCount,
  fit: SaeSplineFit,
  width: number,
  height: number,
  minor: number,
): SaeProportions => ({ count, fit, width, height, minor, source: count === 6 ? seen : remembered })

/** Columns: splines, fit, width, height and minor diameter over the major diameter. Four splines have no fit C. */
export const saeProportions: Table<SaeProportions> = {
  source: 'SAE J499 (J499a and 2014) parallel-side splines, soft broached holes; obsolete for new design',
  scope: 'major diameters 3/4 to 3 in (4 and 6 splines), 3/4 to 6 in (10), 2 to 6 in (16); the ranges from memory',
  rows: [
    row(4, 'A', 0.241, 0.075, 0.85),
    row(4, 'B', 0.241, 0.125, 0.75),
    row(6, 'A', 0.25, 0.05, 0.9),
    row(6, 'B', 0.25, 0.075, 0.85),
    row(6, 'C', 0.25, 0.1, 0.8),
    row(10, 'A', 0.156, 0.045, 0.91),
    row(10, 'B', 0.156, 0.07, 0.86),
    row(10, 'C', 0.156, 0.095, 0.81),
    row(16, 'A', 0.098, 0.045, 0.91),
    row(16, 'B', 0.098, 0.07, 0.86),
    row(16, 'C', 0.098, 0.095, 0.81),
  ],
}

/** Major diameters in inches, [least, most]. From memory. */
const majors: Readonly<Record<SaeSplineCount, readonly [least: number, most: number]>> = {
  4: [0.75, 3],
  6: [0.75, 3],
  10: [0.75, 6],
  16: [2, 6],
}

/** Deviations of the hub's three sizes, mm; the sizes themselves are the largest. */
export interface SaeSplineTolerances {
  readonly major: Deviations
  readonly minor: Deviations
  readonly width: Deviations
  readonly source: string
}

const under = (thousandths: number): Deviations => ({ lower: (-thousandths * inch) / 1000, upper: 0 })

/** The one size whose limits are known: six splines, 1 in. The standard has them for others; they are not kept here. */
const sixAtOneInch: SaeSplineTolerances = {
  major: under(1),
  minor: under(1),
  width: under(2),
  source: 'SAE J499-2014, summary table: six splines, 1 in, fits A, B and C',
}

/** A spline of SAE J499: nominal sizes are the largest. All mm; N mm per mm. */
export interface SaeSpline {
  readonly count: SaeSplineCount
  readonly fit: SaeSplineFit
  readonly major: number
  readonly minor: number
  readonly width: number
  readonly height: number
  /** Torque per length at 1000 psi on all flanks, N mm per mm (N). */
  readonly torquePerLength: number
  /** Absent where no row shows them: all but six splines at 1 in. */
  readonly tolerances?: SaeSplineTolerances
  /** Largest radius in the slot's corners. */
  readonly cornerMost: number
  readonly source: string
}

/** Corners of the splines, at most; SAE J499a, scope: .015 in. */
const cornerMost = 0.015 * inch

/** Splines parallel with the axis over a length (mm), mm. Source: SAE J499a, scope: .006 in a foot. */
export const saeSplineLeadLimit = (length: number): number => (0.006 / 12) * length

/**
 * The spline of this count, fit and major diameter (mm). `undefined` where the standard has none: other counts, four splines in fit C,
 * and major diameters outside the table's scope.
 */
export const saeSpline = (asked: {
  readonly count: number
  readonly fit: SaeSplineFit
  readonly major: number
}): SaeSpline | undefined => {
  const parts = saeProportions.rows.find((each) => each.count === asked.count && each.fit === asked.fit)
  if (!parts) return undefined
  const { count, fit, source } = parts
  const { major } = asked
  const [least, most] = majors[count]
  if (!(major >= least * inch - sameSize && major <= most * inch + sameSize)) return undefined
  const [minor, height] = [parts.minor * major, parts.height * major]
  return {
    count,
    fit,
    major,
    minor,
    width: parts.width * major,
    height,
    torquePerLength: (saeSplinePressure * count * height * (major + minor)) / 4,
    ...(count === 6 && Math.abs(major - inch) <= sameSize && { tolerances: sixAtOneInch }),
    cornerMost,
    source,
  }
}
