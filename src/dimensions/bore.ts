/**
 * Closed forms of a bore with a flat-floored slot on +x. Lengths in any one unit (all mm here), angles in degrees.
 * Each is tested against brute force and against printed values.
 */

/** x of the slot's mouth on its walls, for a slot of half width `half` in a bore of `radius`; 0 where the slot is as wide as the bore or wider. */
export const mouthX = (radius: number, half: number): number =>
  Math.sqrt(Math.max(0, (radius - half) * (radius + half)))

/** Height of the bore's arc over the slot's mouth; written so that nothing cancels when the slot is narrow. */
export const sagitta = (radius: number, half: number): number => (half * half) / (radius + mouthX(radius, half))

/** Half of the angle that the mouth spans at the axis, degrees. */
export const mouthHalfAngle = (radius: number, half: number): number =>
  (Math.asin(Math.min(1, half / radius)) * 180) / Math.PI

/**
 * x of the nose flat when the nose first touches the bore: at its corners, moved by their radius `corner`, the nose's middle
 * `offset` sideways. Needs |offset| + noseWidth/2 <= radius and 0 <= corner <= noseWidth/2. Of a nose whose end is convex, to a radius `end`
 * of at least the bore's, x is that of its middle, which stands before its corners.
 */
export const touchOffX = (radius: number, noseWidth: number, corner = 0, offset = 0, end = Infinity): number => {
  const across = Math.abs(offset) + noseWidth / 2 - corner
  return corner + Math.sqrt(Math.max(0, (radius - corner) ** 2 - across ** 2)) + middleAhead(noseWidth, corner, end)
}

/** How far the middle of a convex end stands before a flat one with the same corners: E − r − √((E − r)² − (h − r)²). */
export const middleAhead = (noseWidth: number, corner: number, end: number): number =>
  Number.isFinite(end) ? end - corner - Math.sqrt(Math.max(0, (end - corner) ** 2 - (noseWidth / 2 - corner) ** 2)) : 0

/** Farthest point of the slot from the bore axis, its floor corners rounded by `corner`. */
export const cornerReach = (floor: number, half: number, corner = 0): number =>
  corner + Math.hypot(floor - corner, half - corner)

/** Metal that the slot takes out of the hub's section, mm². */
export const slotArea = (radius: number, half: number, floor: number): number =>
  2 * half * floor - (half * mouthX(radius, half) + radius * radius * Math.asin(Math.min(1, half / radius)))

/**
 * Width that cuts when the nose flat stands at `x`: two corner strips before the crown is reached, the whole nose after. Sharp, centred nose.
 */
export const engagedWidth = (radius: number, noseWidth: number, x: number): number =>
  x >= radius ? noseWidth : Math.max(0, noseWidth - 2 * Math.sqrt(radius * radius - x * x))

/** Across (floor to opposite wall) from a depth along the side wall. */
export const acrossFromSide = (diameter: number, width: number, sideDepth: number): number =>
  diameter / 2 + mouthX(diameter / 2, width / 2) + sideDepth

/** Depth along the side wall from across. */
export const sideFromAcross = (diameter: number, width: number, across: number): number =>
  across - diameter / 2 - mouthX(diameter / 2, width / 2)

/**
 * Across of an ASME parallel keyway: (D + H + √(D² − W²))/2 + clearance. Source: ASME B17.1, formula for T.
 */
export const asmeAcross = (shaft: number, width: number, height: number, clearance: number): number =>
  (shaft + height + Math.sqrt((shaft - width) * (shaft + width))) / 2 + clearance

/** Shaft keyseat floor to the opposite side of the shaft: (D − H + √(D² − W²))/2. Source: ASME B17.1, formula for S. */
export const asmeShaftAcross = (shaft: number, width: number, height: number): number =>
  (shaft - height + Math.sqrt((shaft - width) * (shaft + width))) / 2

/**
 * Least straight 45° chamfer of a key that clears a floor corner of radius `corner`, with `top` clearance over the key and `side`
 * clearance beside it: both ends of the chamfer must clear the fillet.
 */
export const chamferNeeded = (corner: number, top: number, side: number): number => {
  if (top >= corner || side >= corner) return 0
  const fillet = (gap: number) => Math.sqrt(corner ** 2 - (corner - gap) ** 2)
  return Math.max(corner - top - fillet(side), corner - side - fillet(top), 0)
}
