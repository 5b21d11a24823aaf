import { type Band, bandHolding, type Table } from './table.ts'

/** Standard tolerance grades that are kept here. */
export const isoGrades = [5, 6, 7, 8, 9, 10, 11] as const
export type IsoGrade = (typeof isoGrades)[number]

/** Widths of the tolerance grades for one band of nominal sizes, micrometres. */
export interface GradeRow extends Band {
  readonly widths: Readonly<Record<IsoGrade, number>>
}

/** Fundamental deviations of shafts for one band of nominal sizes, micrometres: upper ones for d to h, lower ones for k to p. */
export interface DeviationRow extends Band {
  readonly d: number
  readonly e: number
  readonly f: number
  readonly g: number
  /** Grades 4 to 7 only; in coarser grades the lower deviation of k is 0. */
  readonly k: number
  readonly m: number
  readonly n: number
  readonly p: number
}

const grades = (
  over: number,
  upTo: number,
  ...w: readonly [number, number, number, number, number, number, number]
) => ({
  over,
  upTo,
  widths: { 5: w[0], 6: w[1], 7: w[2], 8: w[3], 9: w[4], 10: w[5], 11: w[6] },
})

/** ISO 286-1 standard tolerance grades. The table, never the formula behind it: that misses by up to 6 micrometres. */
export const isoGradeTable: Table<GradeRow> = {
  source:
    'ISO 286-1:2010 Table 1: two published tables of the grades and an independent tabulation of PN-EN ISO 286-1:2011',
  scope: 'nominal sizes to 315 mm, IT5 to IT11',
  rows: [
    grades(0, 3, 4, 6, 10, 14, 25, 40, 60),
    grades(3, 6, 5, 8, 12, 18, 30, 48, 75),
    grades(6, 10, 6, 9, 15, 22, 36, 58, 90),
    grades(10, 18, 8, 11, 18, 27, 43, 70, 110),
    grades(18, 30, 9, 13, 21, 33, 52, 84, 130),
    grades(30, 50, 11, 16, 25, 39, 62, 100, 160),
    grades(50, 80, 13, 19, 30, 46, 74, 120, 190),
    grades(80, 120, 15, 22, 35, 54, 87, 140, 220),
    grades(120, 180, 18, 25, 40, 63, 100, 160, 250),
    grades(180, 250, 20, 29, 46, 72, 115, 185, 290),
    grades(250, 315, 23, 32, 52, 81, 130, 210, 320),
  ],
}

const deviations = (
  over: number,
  upTo: number,
  ...v: readonly [number, number, number, number, number, number, number, number]
): DeviationRow => ({ over, upTo, d: v[0], e: v[1], f: v[2], g: v[3], k: v[4], m: v[5], n: v[6], p: v[7] })

/** ISO 286-1 fundamental deviations of shafts; those of holes follow from them (fits/iso-286.ts). */
export const isoDeviationTable: Table<DeviationRow> = {
  source:
    'ISO 286-1:2010 Tables 4 and 5: tabulation of PN-EN ISO 286-1:2011; d, f, g, n derived again from the formulas of the standard',
  scope: 'nominal sizes to 315 mm; d e f g h js k m n p',
  rows: [
    deviations(0, 3, -20, -14, -6, -2, 0, 2, 4, 6),
    deviations(3, 6, -30, -20, -10, -4, 1, 4, 8, 12),
    deviations(6, 10, -40, -25, -13, -5, 1, 6, 10, 15),
    deviations(10, 18, -50, -32, -16, -6, 1, 7, 12, 18),
    deviations(18, 30, -65, -40, -20, -7, 2, 8, 15, 22),
    deviations(30, 50, -80, -50, -25, -9, 2, 9, 17, 26),
    deviations(50, 80, -100, -60, -30, -10, 2, 11, 20, 32),
    deviations(80, 120, -120, -72, -36, -12, 3, 13, 23, 37),
    deviations(120, 180, -145, -85, -43, -14, 3, 15, 27, 43),
    deviations(180, 250, -170, -100, -50, -15, 4, 17, 31, 50),
    deviations(250, 315, -190, -110, -56, -17, 4, 20, 34, 56),
  ],
}

/** Width of a tolerance grade at a nominal size (mm), in mm; `undefined` outside the table. */
export const gradeWidth = (nominal: number, grade: IsoGrade): number | undefined => {
  const row = bandHolding(isoGradeTable.rows, nominal)
  return row && row.widths[grade] / 1000
}
