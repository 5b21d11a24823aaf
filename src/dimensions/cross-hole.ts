/** The hole across the bar for the bit, and the screw that comes from the bar's end to hold it. All mm. */

/** Hole that a square blank with 45° broken corners `cornerBreak` passes, or a round one, with the usual play. */
export const holeFor = (shape: 'square' | 'round', size: number, cornerBreak: number): number =>
  shape === 'round' ? size + 0.05 : 2 * Math.hypot(size / 2, size / 2 - cornerBreak) + 0.08

/**
 * How high the bit's top flat stands above the hole's centre when the screw has pushed it up: the square rides until its corner breaks
 * meet the hole; a round bit lies on the hole's top.
 */
export const seatRise = (shape: 'square' | 'round', size: number, cornerBreak: number, hole: number): number => {
  const radius = hole / 2
  if (shape === 'round') return radius
  const onFlats = cornerBreak + Math.sqrt(Math.max(0, radius ** 2 - (size / 2) ** 2))
  const onCorners = Math.sqrt(Math.max(0, radius ** 2 - (size / 2 - cornerBreak) ** 2))
  return Math.min(onFlats, onCorners)
}

/** Least bar that may carry such a hole in two pieces: hole not over 0.7 of it, and 1.2 mm of wall beside it. */
export const leastBar = (hole: number): number => Math.max(hole / 0.7, hole + 2.4)

/** Least engaged length of a set screw: 0.8 of its diameter, and four threads. */
export const leastEngaged = (major: number, pitch: number): number => Math.max(0.8 * major, 4 * pitch)

export interface EndSizes {
  /** Hole centre to bar end. */
  readonly holeToEnd: number
  /** The bit's lower face to bar end. */
  readonly bitToEnd: number
  /** Open part of the cross hole that the screw spans. */
  readonly open: number
  readonly screwLeast: number
  readonly screwMost: number
}

/**
 * Lengths at the tapped end. `height` is the bit's height under the screw (a round bit less its flat), `recess` both the screw's
 * recess and the chamfer allowance, `holeToEnd` the distance from hole centre to the bar's end.
 */
export const endSizes = (
  hole: number,
  rise: number,
  height: number,
  screw: { readonly major: number; readonly pitch: number },
  holeToEnd: number,
  recess: number,
): EndSizes => {
  const open = hole / 2 + rise - height
  const bitToEnd = holeToEnd + rise - height
  return {
    holeToEnd,
    bitToEnd,
    open,
    screwLeast: leastEngaged(screw.major, screw.pitch) + open,
    screwMost: bitToEnd - recess,
  }
}

/** Hole centre to end for a wanted engaged length of one diameter, a recess and a chamfer. */
export const holeToEndFor = (hole: number, major: number, recess: number): number => hole / 2 + major + 2 * recess
