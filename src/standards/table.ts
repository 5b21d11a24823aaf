/** What every table of a printed standard shares. Lengths are mm unless a name says inch. */

/** Rows as printed, where they come from, and what they may be asked for. Beyond its scope a table answers `undefined`. */
export interface Table<Row> {
  /** Standard, edition and table, and the printing it was typed from; or 'from memory' with the check that was made. */
  readonly source: string
  /** The range that the rows cover, in words. */
  readonly scope: string
  readonly rows: readonly Row[]
}

/** What is worked out once, when it is first asked for: most jobs look into few of the tables. */
export const once = <Answer>(work: () => Answer): (() => Answer) => {
  let known: { readonly answer: Answer } | undefined
  return () => {
    known ??= { answer: work() }
    return known.answer
  }
}

/** A table whose rows are worked out when they are first looked at. */
export const worked = <Row>(told: Omit<Table<Row>, 'rows'>, work: () => readonly Row[]): Table<Row> => {
  const rows = once(work)
  return {
    ...told,
    get rows() {
      return rows()
    },
  }
}

/** A range of sizes: over `over`, up to and including `upTo`, mm. */
export interface Band {
  readonly over: number
  readonly upTo: number
}

/** Deviations from a nominal size, mm, `lower <= upper`. */
export interface Deviations {
  readonly lower: number
  readonly upper: number
}

/** Far below anything a shop can measure, far above what arithmetic loses: sizes nearer than this are one size. mm. */
export const sameSize = 1e-6

/** The row whose band holds the size (over, up to and including), or `undefined` outside them all. */
export const bandHolding = <Row extends Band>(rows: readonly Row[], size: number): Row | undefined =>
  rows.find((row) => size > row.over + sameSize && size <= row.upTo + sameSize)

/** Deviations printed in micrometres, as mm. */
export const fromMicrometres = (lower: number, upper: number): Deviations => ({
  lower: lower / 1000,
  upper: upper / 1000,
})
