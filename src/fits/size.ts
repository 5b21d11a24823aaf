/** A size with its limits, all in mm. `lower <= nominal` need not hold (g6 lies under its nominal), `lower <= upper` does. */
export interface Size {
  readonly nominal: number
  readonly lower: number
  readonly upper: number
}

/** A size given exactly: both limits are the size itself. */
export const exact = (nominal: number): Size => ({ nominal, lower: nominal, upper: nominal })

/** A size from its deviations (mm), `lowerDeviation <= upperDeviation`. */
export const withDeviations = (nominal: number, lowerDeviation: number, upperDeviation: number): Size => ({
  nominal,
  lower: nominal + lowerDeviation,
  upper: nominal + upperDeviation,
})

/** Middle of the limits, mm. */
export const middle = (size: Size): number => (size.lower + size.upper) / 2

/** Width of the tolerance zone, mm. */
export const band = (size: Size): number => size.upper - size.lower
