/** Closed forms of a socket's corner, cut along its diagonal with a V whose flanks are the flats. Lengths in mm, angles in degrees. */

const half = (sides: number): number => Math.PI / sides

/** Where two flats meet, from the axis; `flat` is half the size across flats. */
export const vertexOf = (sides: number, flat: number): number => flat / Math.cos(half(sides))

/** Between the V's flanks: 90 for a square, 120 for a hexagon. */
export const includedAngle = (sides: number): number => 180 - 360 / sides

/** What a bore leaves of half a flat, from its end at the bore to the vertex; all of it where the bore is no larger than the flats. */
export const halfFlat = (sides: number, flat: number, radius: number): number =>
  flat * Math.tan(half(sides)) - Math.sqrt(Math.max(0, radius ** 2 - flat ** 2))

/** Half of the V's mouth as an angle at the axis; 0 where the bore reaches the vertex. */
export const mouthHalfAngleOfV = (sides: number, flat: number, radius: number): number =>
  (Math.max(0, half(sides) - Math.acos(Math.min(1, flat / radius))) * 180) / Math.PI

/** Half of the V's mouth, across. */
export const mouthHalfOfV = (sides: number, flat: number, radius: number): number =>
  radius * Math.sin((mouthHalfAngleOfV(sides, flat, radius) * Math.PI) / 180)

/** How far behind the vertex a tip of radius `tip` lies whose flanks are the flats: tip · (1/cos(π/N) − 1). */
export const setBackOf = (sides: number, tip: number): number => tip * (1 / Math.cos(half(sides)) - 1)

/** Relief that a flat on the mating corner needs against a tip: tip · tan(π/N) · sin(π/N). */
export const matingReliefOf = (sides: number, tip: number): number =>
  tip * Math.tan(half(sides)) * Math.sin(half(sides))

/** Bore that leaves `share` of each flat: A √(1 + ((1 − q) tan π/N)²). */
export const pilotBoreOf = (sides: number, flat: number, share: number): number =>
  2 * flat * Math.hypot(1, (1 - share) * Math.tan(half(sides)))

/** Length of the V, tip to where it is `width` wide. */
export const heightOfV = (sides: number, width: number, tip: number): number =>
  (width / 2) * Math.tan(half(sides)) - setBackOf(sides, tip)

/**
 * Sideways shift and largest bar for a flat nose in side-shifted lanes: no way to make a socket, and this says why. Bar to bore: `back`.
 */
export const laneOfSocket = (sides: number, flat: number, radius: number, nose: number, back: number) => {
  const offset = flat * Math.tan(half(sides)) - nose / 2
  return { offset, barMost: Math.max(0, 2 * (radius - back - offset)) }
}
