/** What was measured, told to whoever makes the table. */
export const told = (what: string, ms: number): void => console.log(`measured ${JSON.stringify({ what, ms })}`)

/** The middle one of some values, the larger of two. */
export const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN
