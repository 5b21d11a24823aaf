/** What a set screw holds its bit with, and what it must. N, mm; torque N mm. */

/** Steel on steel, dry. Source: judgement. */
const friction = 0.12

/** Axial force of a screw seated with a torque. Source: textbook, a fifth of the diameter as lever. */
export const screwPress = (torque: number, major: number): number => torque / (0.2 * major)

/** What friction holds a bit with against the thrust: two faces of a bit that lies flat or round. */
export const heldFlat = (press: number): number => 2 * friction * press

/** The same for a square that the screw seats on two corners in a round hole: `rise` of its top flat over the hole's middle. */
export const heldOnCorners = (press: number, hole: number, rise: number): number =>
  (1 + hole / 2 / rise) * friction * press

/** Where the bit stands in its bar: radius of the bar, nose beyond it, tail beyond the bar's axis. */
interface Seat {
  readonly radius: number
  readonly projection: number
  readonly tail: number
}

/** Least that the screw must press with so that the bit does not rock: pushed, about the bar's axis; pulled, the nose is dragged off the wall and the tail reacts. */
export const pressLeast = (cutting: number, { radius, projection, tail }: Seat, stroke: 'push' | 'pull'): number =>
  stroke === 'push' ? (cutting * projection) / radius : cutting * (1 + (radius + projection) / Math.max(tail, 0.1))
