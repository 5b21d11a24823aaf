/** Press, hub and shims of a push broach. N, mm, N/mm². */

/** A hand press: pull on the lever, its length, pitch radius of the pinion, share that is not lost. */
export interface Lever {
  readonly pull: number
  readonly length: number
  readonly pinion: number
  readonly efficiency: number
}

/** Share of a rating that is counted on. Source: Machinery’s Handbook. */
const ratingShare = 0.7

/** What a press rated for a force gives. */
export const ratedCapacity = (rating: number): number => ratingShare * rating

/** What a lever gives, whatever the press is called: used to the full. */
export const leverCapacity = ({ pull, length, pinion, efficiency }: Lever): number =>
  (pull * length * efficiency) / pinion

/** Stress in the wall over the slot while the broach is pushed through and spreads the hub. Source: a plate built in at its sides, judgement. */
export const spreadingStress = (slot: {
  /** Along the ram. */
  readonly force: number
  /** Thrust over cutting force, upper end. */
  readonly thrust: number
  readonly width: number
  readonly hub: number
  /** Least metal over the slot's corner. */
  readonly wall: number
}): number =>
  slot.wall > 0 ? (6 * ((slot.thrust * slot.force * slot.width) / 8)) / (slot.hub * slot.wall ** 2) : Infinity

/** Longest hub that a press can push a broach through, mm: so many full teeth at a time. 0 where it pushes not even one. */
export const longestHub = (capacity: number, tooth: number, pitch: number): number =>
  tooth > 0 ? Math.floor(capacity / tooth + 1e-9) * pitch : Infinity

/** What a chip asks of a gullet: it fills five times its own metal. Source: judgement. */
export const gulletNeeded = (bite: number, hub: number): number => 5 * bite * hub

/** How far the size over bushing, shims and tooth may be wrong: all against it, and as chances go. */
export const overError = (readings: readonly number[]): { readonly worst: number; readonly likely: number } => ({
  worst: readings.reduce((sum, reading) => sum + reading, 0),
  likely: Math.hypot(...readings),
})
