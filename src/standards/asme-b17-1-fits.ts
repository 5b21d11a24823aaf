import { fromInchName, inch } from './inch.ts'
import { type Band, bandHolding, type Deviations, type Table, worked } from './table.ts'

export type AsmeForm = 'square' | 'rectangular' | 'taper'

/** Tolerances of one fit class for key widths over `over` up to and including `upTo`. All mm. */
export interface AsmeFit extends Band {
  readonly class: 1 | 2
  readonly form: AsmeForm
  readonly keyWidth: Deviations
  /** Width of the keyseat, in the hub and in the shaft alike. */
  readonly hubWidth: Deviations
  readonly keyHeight: Deviations
  /** Of the shaft's depth control S: floor to the opposite side of the shaft. */
  readonly shaftDepth: Deviations
  /** Of the hub's depth control T: floor to the opposite side of the bore. */
  readonly hubDepth: Deviations
  readonly source: string
}

const seen =
  "ASME B17.1 standard fits: reference table 'Standard Design Fits for Parallel and Taper Keys per ANSI B17.1'"
const cutOff =
  'ASME B17.1 standard fits, from memory (the row is cut off in the printing seen); arithmetic of the printed fit checked'
const remembered =
  'ASME B17.1 Table 4, from memory; the printed range of side fit was derived again from the two tolerances and agrees'

/** Printed in thousandths of an inch, turned to mm here. */
const thousandths = (lower: number, upper: number): Deviations => ({
  lower: (lower * inch) / 1000,
  upper: (upper * inch) / 1000,
})
const shaftDepth = thousandths(-15, 0)
const hubDepth = thousandths(0, 10)

/** Columns: class, form, width over, up to, key width, keyseat width, key height, each [lower, upper] in thousandths of an inch. */
type Pair = readonly [lower: number, upper: number]
const fit = (
  fitClass: 1 | 2,
  form: AsmeForm,
  over: string,
  upTo: string,
  keyWidth: Pair,
  hubWidth: Pair,
  keyHeight: Pair,
  source: string,
): AsmeFit => ({
  class: fitClass,
  form,
  over: fromInchName(over),
  upTo: fromInchName(upTo),
  keyWidth: thousandths(...keyWidth),
  hubWidth: thousandths(...hubWidth),
  keyHeight: thousandths(...keyHeight),
  shaftDepth,
  hubDepth,
  source,
})

/** Class 1: clearance, bar-stock keys. Class 2: close, key-stock keys; interference is possible. */
export const asmeFits: Table<AsmeFit> = worked(
  {
    source: 'ASME B17.1-1967 (R2013) Keys and Keyseats, standard fits for parallel and taper keys',
    scope:
      'class 1: square to 3-1/2 in, rectangular to 7 in wide; class 2: square to 3-1/2 in, rectangular to 7 in, taper to 1-1/4 in wide',
  },
  () => [
    fit(1, 'square', '0', '1/2', [-2, 0], [0, 2], [-2, 0], seen),
    fit(1, 'square', '1/2', '3/4', [-2, 0], [0, 3], [-2, 0], seen),
    fit(1, 'square', '3/4', '1', [-3, 0], [0, 3], [-3, 0], seen),
    fit(1, 'square', '1', '1-1/2', [-3, 0], [0, 4], [-3, 0], seen),
    fit(1, 'square', '1-1/2', '2-1/2', [-4, 0], [0, 4], [-4, 0], seen),
    fit(1, 'square', '2-1/2', '3-1/2', [-6, 0], [0, 4], [-6, 0], seen),
    fit(1, 'rectangular', '0', '1/2', [-3, 0], [0, 2], [-3, 0], seen),
    fit(1, 'rectangular', '1/2', '3/4', [-3, 0], [0, 3], [-3, 0], seen),
    fit(1, 'rectangular', '3/4', '1', [-4, 0], [0, 3], [-4, 0], seen),
    fit(1, 'rectangular', '1', '1-1/2', [-4, 0], [0, 4], [-4, 0], seen),
    fit(1, 'rectangular', '1-1/2', '3', [-5, 0], [0, 4], [-5, 0], seen),
    fit(1, 'rectangular', '3', '4', [-6, 0], [0, 4], [-6, 0], seen),
    fit(1, 'rectangular', '4', '6', [-8, 0], [0, 4], [-8, 0], seen),
    fit(1, 'rectangular', '6', '7', [-13, 0], [0, 4], [-13, 0], cutOff),
    fit(2, 'square', '0', '1-1/4', [0, 1], [0, 2], [0, 1], remembered),
    fit(2, 'square', '1-1/4', '3', [0, 2], [0, 2], [0, 2], remembered),
    fit(2, 'square', '3', '3-1/2', [0, 3], [0, 2], [0, 3], remembered),
    fit(2, 'rectangular', '0', '1-1/4', [0, 1], [0, 2], [-5, 5], remembered),
    fit(2, 'rectangular', '1-1/4', '3', [0, 2], [0, 2], [-5, 5], remembered),
    fit(2, 'rectangular', '3', '7', [0, 3], [0, 2], [-5, 5], remembered),
    fit(2, 'taper', '0', '1-1/4', [0, 1], [0, 2], [0, 5], remembered),
  ],
)

/** Tolerances for a key of this form, class and nominal width (mm); `undefined` where the standard has none, as for taper keys of class 1. */
export const asmeFit = (asked: {
  readonly form: AsmeForm
  readonly class: 1 | 2
  readonly width: number
}): AsmeFit | undefined =>
  bandHolding(
    asmeFits.rows.filter((row) => row.form === asked.form && row.class === asked.class),
    asked.width,
  )
