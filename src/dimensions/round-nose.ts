/** Closed forms of a groove that a round nose cuts in the wall of a bore. mm. */

/** Angle round a circle of radius `nose`, its foremost point at `x`, from there to where it meets the bore; 0 before it does, π/2 at the most. Radians. */
export const angleInMetal = (radius: number, nose: number, x: number): number => {
  if (x <= radius || nose <= 0) return 0
  const centre = x - nose
  if (centre <= 0) return Math.PI / 2
  const cosine = (radius ** 2 - centre ** 2 - nose ** 2) / (2 * nose * centre)
  return Math.acos(Math.min(1, Math.max(0, cosine)))
}

/** Half of the groove's mouth at `depth` from the crown: on the nose's round, or where it is in to its full width the nose's radius. */
export const grooveHalf = (radius: number, nose: number, depth: number): number =>
  nose * Math.sin(angleInMetal(radius, nose, radius + depth))

/** Depth at which the nose is in to its full width. */
export const changeDepth = (radius: number, nose: number): number =>
  Math.sqrt((radius - nose) * (radius + nose)) + nose - radius

/** Metal that the groove takes out of the hub's section, mm²: segment of the nose, straight sides, less the bore's segment. */
export const grooveArea = (radius: number, nose: number, depth: number): number => {
  const half = grooveHalf(radius, nose, depth)
  const mouth = Math.sqrt(radius ** 2 - half ** 2)
  const boreSegment = radius ** 2 * Math.asin(half / radius) - half * mouth
  const centre = radius + depth - nose
  if (centre >= mouth) return (Math.PI * nose ** 2) / 2 + 2 * nose * (centre - mouth) - boreSegment
  const angle = angleInMetal(radius, nose, radius + depth)
  return nose ** 2 * (angle - Math.sin(angle) * Math.cos(angle)) - boreSegment
}
