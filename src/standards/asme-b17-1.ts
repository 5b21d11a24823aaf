import { fromInchName, inch } from './inch.ts'
import { type Band, bandHolding, sameSize, type Table, worked } from './table.ts'

export { asmeFit, asmeFits } from './asme-b17-1-fits.ts'

/** One key for shafts over `over` up to and including `upTo`. Sizes in mm, names as printed in inches. */
export interface AsmeKey extends Band {
  readonly width: number
  readonly widthName: string
  readonly heightSquare?: number
  readonly heightSquareName?: string
  readonly heightRectangular?: number
  readonly heightRectangularName?: string
  readonly source: string
}

const seen =
  "ASME B17.1-1967 Table 1: table of key size by shaft diameter after Machinery's Handbook in Shop Reference for Students and Apprentices, 2nd ed.; up to 3-1/4 in also Shigley 9th ed. Table 7-6"
const remembered =
  'ASME B17.1-1967 Table 1, from memory; checked only that the ranges meet and that the width is about a quarter of the shaft'

const key = (
  over: string,
  upTo: string,
  widthName: string,
  square: string | undefined,
  rectangular: string | undefined,
  source: string,
): AsmeKey => ({
  over: fromInchName(over),
  upTo: fromInchName(upTo),
  width: fromInchName(widthName),
  widthName,
  ...(square && { heightSquare: fromInchName(square), heightSquareName: square }),
  ...(rectangular && { heightRectangular: fromInchName(rectangular), heightRectangularName: rectangular }),
  source,
})

/** Square and rectangular parallel keys; square is preferred up to shafts of 6-1/2 in, rectangular above. */
export const asmeKeys: Table<AsmeKey> = worked(
  {
    source: 'ASME B17.1-1967 (R2013) Keys and Keyseats, Table 1',
    scope: 'shafts over 5/16 in, up to 30 in',
  },
  () => [
    key('5/16', '7/16', '3/32', '3/32', undefined, seen),
    key('7/16', '9/16', '1/8', '1/8', '3/32', seen),
    key('9/16', '7/8', '3/16', '3/16', '1/8', seen),
    key('7/8', '1-1/4', '1/4', '1/4', '3/16', seen),
    key('1-1/4', '1-3/8', '5/16', '5/16', '1/4', seen),
    key('1-3/8', '1-3/4', '3/8', '3/8', '1/4', seen),
    key('1-3/4', '2-1/4', '1/2', '1/2', '3/8', seen),
    key('2-1/4', '2-3/4', '5/8', '5/8', '7/16', seen),
    key('2-3/4', '3-1/4', '3/4', '3/4', '1/2', seen),
    key('3-1/4', '3-3/4', '7/8', '7/8', '5/8', seen),
    key('3-3/4', '4-1/2', '1', '1', '3/4', seen),
    key('4-1/2', '5-1/2', '1-1/4', '1-1/4', '7/8', seen),
    key('5-1/2', '6-1/2', '1-1/2', '1-1/2', '1', seen),
    key('6-1/2', '7-1/2', '1-3/4', '1-3/4', '1-1/2', seen),
    key('7-1/2', '9', '2', '2', '1-1/2', remembered),
    key('9', '11', '2-1/2', '2-1/2', '1-3/4', remembered),
    key('11', '13', '3', '3', '2', remembered),
    key('13', '15', '3-1/2', '3-1/2', '2-1/2', remembered),
    key('15', '18', '4', undefined, '3', remembered),
    key('18', '22', '5', undefined, '3-1/2', remembered),
    key('22', '26', '6', undefined, '4', remembered),
    key('26', '30', '7', undefined, '5', remembered),
  ],
)

/** The key for a shaft of this diameter (mm). `undefined` at 5/16 in and below, and over 30 in: the table stops there. */
export const asmeKeyFor = (shaft: number): AsmeKey | undefined => bandHolding(asmeKeys.rows, shaft)

/** The key of this nominal width (mm); `undefined` if the standard has none. */
export const asmeKeyOfWidth = (width: number): AsmeKey | undefined =>
  asmeKeys.rows.find((row) => Math.abs(row.width - width) <= sameSize)

/**
 * Clearance over a parallel key, mm: T = D − Y + H/2 + clearance, Y the height of the arc over the width.
 * ASME B17.1, proved by 189 printed depth-control values.
 */
export const asmeParallelClearance = 0.005 * inch

/** The same for a taper key, at the deeper end, mm: negative, for it is driven in with interference. ASME B17.1. */
export const asmeTaperAllowance = -0.02 * inch

/** Most offset of a keyseat's middle from the middle of shaft or bore, mm. ASME B17.1 in Machinery's Handbook, 31st ed., p. 2552. */
export const asmeOffsetLimit = 0.01 * inch

/** Most lead of a keyseat over its length (mm), mm: .002 in to 4 in, .0005 in an inch to 10 in, .005 in above. Machinery's Handbook, 31st ed., p. 2552. */
export const asmeLeadLimit = (length: number): number =>
  length <= 4 * inch ? 0.002 * inch : length <= 10 * inch ? 0.0005 * length : 0.005 * inch

/** Suggested fillet in the keyseat and 45° chamfer on the key, by keyseat depth H/2 (over, up to). All mm. */
export interface AsmeFillet extends Band {
  readonly fillet: number
  readonly keyChamfer: number
}
const fillet = (over: string, upTo: string, radius: string, chamfer: string): AsmeFillet => ({
  over: fromInchName(over),
  upTo: fromInchName(upTo),
  fillet: fromInchName(radius),
  keyChamfer: fromInchName(chamfer),
})
export const asmeFillets: Table<AsmeFillet> = worked(
  {
    source:
      'ASME B17.1 table of suggested keyseat fillets and key chamfers, from memory; every chamfer clears its fillet',
    scope: 'keyseat depths over 1/8 in, up to 2-1/2 in',
  },
  () => [
    fillet('1/8', '1/4', '1/32', '3/64'),
    fillet('1/4', '1/2', '1/16', '5/64'),
    fillet('1/2', '7/8', '1/8', '5/32'),
    fillet('7/8', '1-1/4', '3/16', '7/32'),
    fillet('1-1/4', '1-3/4', '1/4', '9/32'),
    fillet('1-3/4', '2-1/2', '3/8', '13/32'),
  ],
)

/** Suggested fillet and chamfer for a keyseat of this depth H/2 (mm); `undefined` outside the table, where sharp corners are usual. */
export const asmeFilletFor = (depth: number): AsmeFillet | undefined => bandHolding(asmeFillets.rows, depth)

/** Size of set screw over a key, by shaft diameter (mm). */
export const asmeScrewsOverKeys: Table<Band & { readonly size: string }> = worked(
  {
    source: 'ASME B17.1 appendix table of set screws for use over keys, from memory',
    scope: 'shafts over 5/16 in, up to 3-1/4 in',
  },
  () =>
    (
      [
        ['5/16', '7/16', '#10'],
        ['7/16', '9/16', '#10'],
        ['9/16', '7/8', '1/4'],
        ['7/8', '1-1/4', '5/16'],
        ['1-1/4', '1-3/8', '3/8'],
        ['1-3/8', '1-3/4', '3/8'],
        ['1-3/4', '2-1/4', '1/2'],
        ['2-1/4', '2-3/4', '1/2'],
        ['2-3/4', '3-1/4', '5/8'],
      ] as const
    ).map(([over, upTo, size]) => ({ over: fromInchName(over), upTo: fromInchName(upTo), size })),
)
