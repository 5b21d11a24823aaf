import { sameSize, type Table, worked } from './table.ts'

/** A straight-sided spline that centres on its minor diameter, hub and shaft alike. All mm. */
export interface IsoSpline {
  readonly series: 'light' | 'medium'
  readonly count: number
  /** Over the lands between the slots: the bore. */
  readonly minor: number
  /** Over the floors of the slots. */
  readonly major: number
  /** Of slot and tooth. */
  readonly width: number
  /** Tooth or slot against the axis of the bore: IT7 of the width. */
  readonly symmetryTolerance: number
  readonly source: string
}

const lightSource =
  'ISO 14:1982: reference table of BS 5686:1986, identical to it; Lingaiah, Machine Design Databook, Table 17-8'
const mediumSource = 'ISO 14:1982: reference table of BS 5686:1986, identical to it'
const misprinted =
  'ISO 14:1982: reference table of BS 5686:1986, identical to it; its column of major diameters has 65, its designation 8x56x66: 65 taken, as from memory of ISO 14'

/** Printed as IT7 by widths: 3; 3.5 to 6; 7 to 10; 12 to 18. */
const symmetry = (width: number): number => (width <= 3 ? 0.01 : width <= 6 ? 0.012 : width <= 10 ? 0.015 : 0.018)

type Sizes = readonly [count: number, minor: number, major: number, width: number]
const row = (series: IsoSpline['series'], source: string, [count, minor, major, width]: Sizes): IsoSpline => ({
  series,
  count,
  minor,
  major,
  width,
  symmetryTolerance: symmetry(width),
  source,
})
const light = (...sizes: Sizes) => row('light', lightSource, sizes)
const medium = (...sizes: Sizes) => row('medium', mediumSource, sizes)

/** Columns: slots, minor diameter, major diameter, width. */
export const isoSplines: Table<IsoSpline> = worked(
  {
    source: 'ISO 14:1982 straight-sided splines for cylindrical shafts with internal centring, light and medium series',
    scope: 'light series, minor diameters 23 to 112 mm; medium series, 11 to 112 mm',
  },
  () => [
    light(6, 23, 26, 6),
    light(6, 26, 30, 6),
    light(6, 28, 32, 7),
    light(8, 32, 36, 6),
    light(8, 36, 40, 7),
    light(8, 42, 46, 8),
    light(8, 46, 50, 9),
    light(8, 52, 58, 10),
    light(8, 56, 62, 10),
    light(8, 62, 68, 12),
    light(10, 72, 78, 12),
    light(10, 82, 88, 12),
    light(10, 92, 98, 14),
    light(10, 102, 108, 16),
    light(10, 112, 120, 18),
    medium(6, 11, 14, 3),
    medium(6, 13, 16, 3.5),
    medium(6, 16, 20, 4),
    medium(6, 18, 22, 5),
    medium(6, 21, 25, 5),
    medium(6, 23, 28, 6),
    medium(6, 26, 32, 6),
    medium(6, 28, 34, 7),
    medium(8, 32, 38, 6),
    medium(8, 36, 42, 7),
    medium(8, 42, 48, 8),
    medium(8, 46, 54, 9),
    medium(8, 52, 60, 10),
    row('medium', misprinted, [8, 56, 65, 10]),
    medium(8, 62, 72, 12),
    medium(10, 72, 82, 12),
    medium(10, 82, 92, 12),
    medium(10, 92, 102, 14),
    medium(10, 102, 112, 16),
    medium(10, 112, 125, 18),
  ],
)

/** Designations as the standard writes them, light series first: `6x23x26`. */
export const isoSplineNames = (): readonly string[] =>
  isoSplines.rows.map(({ count, minor, major }) => `${count}x${minor}x${major}`)

/** The spline of a designation: slots x minor x major, with `x` or `×`, spaces allowed. `undefined` if the standard has none. */
export const isoSplineNamed = (name: string): IsoSpline | undefined => {
  const parts = name.split(/[x×]/i).map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  if (parts.length !== 3) return undefined
  return isoSplines.rows.find((spline) =>
    [spline.count, spline.minor, spline.major].every(
      (size, n) => Math.abs((parts[n] ?? Number.NaN) - size) <= sameSize,
    ),
  )
}

/** ISO 286 classes of the three sizes. */
export interface IsoSplineClasses {
  readonly width: string
  readonly major: string
  readonly minor: string
}

const hubs = {
  untreated: { width: 'H9', major: 'H10', minor: 'H7' },
  hardened: { width: 'H11', major: 'H10', minor: 'H7' },
} as const

/** Classes of a hub: left as cut, or hardened after its slots are cut. ISO 14:1982 (table of BS 5686:1986, identical to it). */
export const isoSplineHub = (state: 'untreated' | 'hardened'): IsoSplineClasses => hubs[state]

/** How a splined shaft sits in its hub. */
export type IsoSplineFit = 'sliding' | 'close sliding' | 'fixed'

const shafts = {
  sliding: { width: 'd10', major: 'a11', minor: 'f7' },
  'close sliding': { width: 'f9', major: 'a11', minor: 'g7' },
  fixed: { width: 'h10', major: 'a11', minor: 'h7' },
} as const

/** Classes of a shaft by fit. ISO 14:1982 (table of BS 5686:1986, identical to it). */
export const isoSplineShaft = (fit: IsoSplineFit): IsoSplineClasses => shafts[fit]
