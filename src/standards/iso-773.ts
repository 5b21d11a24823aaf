import { gradeWidth } from './iso-286.ts'
import { type Band, bandHolding, type Deviations, fromMicrometres, sameSize, type Table } from './table.ts'

/** Fits of a parallel key sideways, by the words of ISO/R 773; JIS B 1301 uses the same. */
export type IsoKeyFit = 'normal' | 'tight' | 'sliding'

/** One parallel key with its keyways, for shafts over `over` up to and including `upTo`. All mm. */
export interface IsoKey extends Band {
  readonly width: number
  readonly height: number
  /** t1, from the crown of the shaft; +tolerance / 0. */
  readonly shaftDepth: number
  readonly shaftDepthTolerance: number
  /** t2, from the crown of the bore; +tolerance / 0. */
  readonly hubDepth: number
  readonly hubDepthTolerance: number
  /** Radius in the corners of the keyway floor, [least, most]. */
  readonly corner: readonly [least: number, most: number]
  /** Chamfer of the key, [least, most]. */
  readonly keyChamfer: readonly [least: number, most: number]
  /** Stock lengths of the key, [shortest, longest]. */
  readonly lengths: readonly [shortest: number, longest: number]
  readonly source: string
}

const twoExcerptsAndDin =
  'ISO/R 773:1969: GB/T 1095-1979 and 1096 (identical to it); two excerpts of JIS B 1301-1996; summary table of DIN 6885-1'
const twoExcerpts = 'ISO/R 773:1969: GB/T 1095-1979 and 1096 (identical to it); two excerpts of JIS B 1301-1996'
const oneExcerpt = 'ISO/R 773:1969: GB/T 1095-1979 and 1096 (identical to it); an excerpt of JIS B 1301-1996'
const chinese = 'ISO/R 773:1969: GB/T 1095-1979 and 1096 (identical to it)'

type Printed = readonly [
  over: number,
  upTo: number,
  b: number,
  h: number,
  t1: number,
  t1Tolerance: number,
  t2: number,
  t2Tolerance: number,
  cornerLeast: number,
  cornerMost: number,
  chamferLeast: number,
  chamferMost: number,
  shortest: number,
  longest: number,
]
const key = (p: Printed, source: string): IsoKey => ({
  over: p[0],
  upTo: p[1],
  width: p[2],
  height: p[3],
  shaftDepth: p[4],
  shaftDepthTolerance: p[5],
  hubDepth: p[6],
  hubDepthTolerance: p[7],
  corner: [p[8], p[9]],
  keyChamfer: [p[10], p[11]],
  lengths: [p[12], p[13]],
  source,
})

/** Parallel keys and keyways, ISO/R 773:1969 = DIN 6885-1 = BS 4235-1. */
export const isoKeys: Table<IsoKey> = {
  source: 'ISO/R 773:1969, as printed in GB/T 1095-1979, GB/T 1096-1979 and JIS B 1301-1996',
  scope: 'shafts over 6 mm, up to 500 mm',
  rows: [
    key([6, 8, 2, 2, 1.2, 0.1, 1, 0.1, 0.08, 0.16, 0.16, 0.25, 6, 20], twoExcerptsAndDin),
    key([8, 10, 3, 3, 1.8, 0.1, 1.4, 0.1, 0.08, 0.16, 0.16, 0.25, 6, 36], twoExcerptsAndDin),
    key([10, 12, 4, 4, 2.5, 0.1, 1.8, 0.1, 0.08, 0.16, 0.16, 0.25, 8, 45], twoExcerptsAndDin),
    key([12, 17, 5, 5, 3, 0.1, 2.3, 0.1, 0.16, 0.25, 0.25, 0.4, 10, 56], twoExcerptsAndDin),
    key([17, 22, 6, 6, 3.5, 0.1, 2.8, 0.1, 0.16, 0.25, 0.25, 0.4, 14, 70], twoExcerptsAndDin),
    key([22, 30, 8, 7, 4, 0.2, 3.3, 0.2, 0.16, 0.25, 0.25, 0.4, 18, 90], twoExcerptsAndDin),
    key([30, 38, 10, 8, 5, 0.2, 3.3, 0.2, 0.25, 0.4, 0.4, 0.6, 22, 110], twoExcerptsAndDin),
    key([38, 44, 12, 8, 5, 0.2, 3.3, 0.2, 0.25, 0.4, 0.4, 0.6, 28, 140], twoExcerptsAndDin),
    key([44, 50, 14, 9, 5.5, 0.2, 3.8, 0.2, 0.25, 0.4, 0.4, 0.6, 36, 160], twoExcerptsAndDin),
    key([50, 58, 16, 10, 6, 0.2, 4.3, 0.2, 0.25, 0.4, 0.4, 0.6, 45, 180], twoExcerptsAndDin),
    key([58, 65, 18, 11, 7, 0.2, 4.4, 0.2, 0.25, 0.4, 0.4, 0.6, 50, 200], twoExcerpts),
    key([65, 75, 20, 12, 7.5, 0.2, 4.9, 0.2, 0.4, 0.6, 0.6, 0.8, 56, 220], twoExcerpts),
    key([75, 85, 22, 14, 9, 0.2, 5.4, 0.2, 0.4, 0.6, 0.6, 0.8, 63, 250], twoExcerpts),
    key([85, 95, 25, 14, 9, 0.2, 5.4, 0.2, 0.4, 0.6, 0.6, 0.8, 70, 280], twoExcerpts),
    key([95, 110, 28, 16, 10, 0.2, 6.4, 0.2, 0.4, 0.6, 0.6, 0.8, 80, 320], twoExcerpts),
    key([110, 130, 32, 18, 11, 0.2, 7.4, 0.2, 0.4, 0.6, 0.6, 0.8, 90, 360], twoExcerpts),
    key([130, 150, 36, 20, 12, 0.3, 8.4, 0.3, 0.7, 1, 1, 1.2, 100, 400], oneExcerpt),
    key([150, 170, 40, 22, 13, 0.3, 9.4, 0.3, 0.7, 1, 1, 1.2, 100, 400], oneExcerpt),
    key([170, 200, 45, 25, 15, 0.3, 10.4, 0.3, 0.7, 1, 1, 1.2, 110, 450], oneExcerpt),
    key([200, 230, 50, 28, 17, 0.3, 11.4, 0.3, 0.7, 1, 1, 1.2, 125, 500], oneExcerpt),
    key([230, 260, 56, 32, 20, 0.3, 12.4, 0.3, 1.2, 1.6, 1.6, 2, 140, 500], oneExcerpt),
    key([260, 290, 63, 32, 20, 0.3, 12.4, 0.3, 1.2, 1.6, 1.6, 2, 160, 500], oneExcerpt),
    key([290, 330, 70, 36, 22, 0.3, 14.4, 0.3, 1.2, 1.6, 1.6, 2, 180, 500], chinese),
    key([330, 380, 80, 40, 25, 0.3, 15.4, 0.3, 2, 2.5, 2.5, 3, 200, 500], chinese),
    key([380, 440, 90, 45, 28, 0.3, 17.4, 0.3, 2, 2.5, 2.5, 3, 220, 500], chinese),
    key([440, 500, 100, 50, 31, 0.3, 19.5, 0.3, 2, 2.5, 2.5, 3, 250, 500], chinese),
  ],
}

/** The key for a shaft of this diameter (mm). `undefined` at 6 mm and below, and over 500 mm: the table stops there. */
export const isoKeyFor = (shaft: number): IsoKey | undefined => bandHolding(isoKeys.rows, shaft)

/** The key of this nominal width (mm); `undefined` if the standard has none. */
export const isoKeyOfWidth = (width: number): IsoKey | undefined =>
  isoKeys.rows.find((row) => Math.abs(row.width - width) <= sameSize)

/** Limits of key and keyway widths for key widths from `from` to `to` (mm), micrometres [lower, upper]. */
export interface WidthRow {
  readonly from: number
  readonly to: number
  readonly H9: readonly [number, number]
  readonly D10: readonly [number, number]
  readonly N9: readonly [number, number]
  readonly JS9: readonly [number, number]
  readonly P9: readonly [number, number]
  readonly h9: readonly [number, number]
}

/** Keyway width tolerances as the key standard prints them. */
export const isoKeyWidths: Table<WidthRow> = {
  source:
    'ISO/R 773:1969: GB/T 1095-1979 table and an excerpt of JIS B 1301-1996; generated again from ISO 286 and identical (JS9 for 90 to 100 from ISO 286 alone: one printing has ±0.0135 there)',
  scope: 'key widths 2 to 100 mm',
  rows: [
    { from: 2, to: 3, H9: [0, 25], D10: [20, 60], N9: [-29, -4], JS9: [-12.5, 12.5], P9: [-31, -6], h9: [-25, 0] },
    { from: 4, to: 6, H9: [0, 30], D10: [30, 78], N9: [-30, 0], JS9: [-15, 15], P9: [-42, -12], h9: [-30, 0] },
    { from: 8, to: 10, H9: [0, 36], D10: [40, 98], N9: [-36, 0], JS9: [-18, 18], P9: [-51, -15], h9: [-36, 0] },
    { from: 12, to: 18, H9: [0, 43], D10: [50, 120], N9: [-43, 0], JS9: [-21.5, 21.5], P9: [-61, -18], h9: [-43, 0] },
    { from: 20, to: 28, H9: [0, 52], D10: [65, 149], N9: [-52, 0], JS9: [-26, 26], P9: [-74, -22], h9: [-52, 0] },
    { from: 32, to: 50, H9: [0, 62], D10: [80, 180], N9: [-62, 0], JS9: [-31, 31], P9: [-88, -26], h9: [-62, 0] },
    { from: 56, to: 80, H9: [0, 74], D10: [100, 220], N9: [-74, 0], JS9: [-37, 37], P9: [-106, -32], h9: [-74, 0] },
    {
      from: 90,
      to: 100,
      H9: [0, 87],
      D10: [120, 260],
      N9: [-87, 0],
      JS9: [-43.5, 43.5],
      P9: [-124, -37],
      h9: [-87, 0],
    },
  ],
}

const classes = {
  hub: { normal: 'JS9', tight: 'P9', sliding: 'D10' },
  shaft: { normal: 'N9', tight: 'P9', sliding: 'H9' },
  key: { normal: 'h9', tight: 'h9', sliding: 'h9' },
} as const

/** The tolerance class of a width: of the keyway in the hub or the shaft, or of the key. ISO/R 773:1969. */
export const isoWidthClass = (
  where: 'hub' | 'shaft' | 'key',
  fit: IsoKeyFit,
): 'JS9' | 'P9' | 'D10' | 'N9' | 'H9' | 'h9' => classes[where][fit]

/** Deviations of a width (mm) of key or keyway, mm. `undefined` for a width that no key of the standard has room for (2 to 100 mm). */
export const isoWidthDeviations = (
  width: number,
  where: 'hub' | 'shaft' | 'key',
  fit: IsoKeyFit,
): Deviations | undefined => {
  const row =
    isoKeyOfWidth(width) && isoKeyWidths.rows.find((r) => width >= r.from - sameSize && width <= r.to + sameSize)
  return row && fromMicrometres(...row[isoWidthClass(where, fit)])
}

/** Tolerance class of a key's height (key sizes in mm): h9 for the square keys up to 6 × 6, h11 above. GB/T 1096-1979 excerpt; JIS B 1301-1996. */
export const isoHeightClass = (width: number, height: number): 'h9' | 'h11' =>
  width === height && height <= 6 ? 'h9' : 'h11'

/** Deviations of the height of a key (sizes in mm), mm; `undefined` for heights outside ISO 286's table. */
export const isoHeightDeviations = (width: number, height: number): Deviations | undefined => {
  const zone = gradeWidth(height, isoHeightClass(width, height) === 'h9' ? 9 : 11)
  return zone === undefined ? undefined : { lower: -zone, upper: 0 }
}

/** Lengths in which keys are made, mm; the length tolerance is h14. GB/T 1096-1979 excerpts (450 in one printing only). */
export const isoKeyLengths: readonly number[] = [
  6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90, 100, 110, 125, 140, 160, 180, 200,
  220, 250, 280, 320, 360, 400, 450, 500,
]
