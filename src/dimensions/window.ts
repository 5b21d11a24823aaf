/**
 * The window of projections: how far the nose may stand out of the bar so that the bar clears the bore when it is withdrawn, and
 * still reaches the floor at full depth. Bar axis at x = X − p − ρ, X the x of the nose flat.
 */
import { mouthX, touchOffX } from './bore.ts'

export interface Clearances {
  readonly back: number
  readonly front: number
  readonly withdrawn: number
}

/** One setting of the tool in one bore, at one corner of the tolerances. All mm. */
export interface Setting {
  readonly radius: number
  readonly floor: number
  /** Half of the slot that this lane leaves open on either side of the nose's middle: half the nose. */
  readonly noseWidth: number
  readonly cornerRadius: number
  /** Sideways position of the nose's middle. */
  readonly offset: number
  /** Radius of a nose's convex end; left out: flat. */
  readonly endRadius?: number | undefined
  readonly clearances: Clearances
  /** Least room before the bar for the chip. */
  readonly chipRoom: number
  /** What is open before the bar at full depth, where that is no slot as wide as the nose. */
  readonly opening?: Opening | undefined
  /** By so much the bore of a hub that is tilted for a taper key comes towards the nose over its length; left out, 0. */
  readonly tilted?: number
}

/** The mouth of a V or of a round groove at full depth, half of it across; and of a V the flats that its flanks lie on, half across flats. */
export interface Opening {
  readonly half: number
  readonly flank?: { readonly sides: number; readonly flat: number }
}

/** x of the nose at first touch. */
export const touchOf = ({
  radius,
  noseWidth,
  cornerRadius,
  offset,
  endRadius,
}: Omit<Setting, 'clearances' | 'chipRoom'>): number => touchOffX(radius, noseWidth, cornerRadius, offset, endRadius)

/** Half of what is open before the bar, on either side of the nose's middle. */
export const openHalf = ({ opening, noseWidth }: Setting): number => opening?.half ?? noseWidth / 2

/** Whether a bar with its axis at `axis` has a V's flank nearest, not its mouth corner; and how far the flank is from the axis. */
export const flankBefore = ({ opening, radius }: Setting, axis: number): number | undefined => {
  const flank = opening?.flank
  if (!flank) return undefined
  const share = Math.PI / flank.sides
  if (axis * Math.sin(share) < Math.sqrt(Math.max(0, radius ** 2 - flank.flat ** 2))) return undefined
  return flank.flat - axis * Math.cos(share)
}

/** Room that a coil of chip needs before the bar: chip `thickness` × `length` wound three times looser than solid. */
export const chipCoil = (thickness: number, length: number): number => Math.sqrt((12 * thickness * length) / Math.PI)

/** Least projection whatever the geometry: front clearance and chip room. */
export const projectionFloor = (setting: Setting): number => Math.max(setting.clearances.front, setting.chipRoom)

/**
 * Greatest projection with which a bar of `diameter` still clears the far wall when withdrawn from first touch, or from the floor of a slot
 * that runs right through already, at x = `cut`; −∞ if there is no lane.
 */
export const projectionMost = (setting: Setting, diameter: number, cut = -Infinity): number => {
  const { radius, offset, clearances, tilted = 0 } = setting
  const free = radius - diameter / 2 - clearances.back
  if (Math.abs(offset) >= free && offset !== 0) return -Infinity
  const touch = Math.max(cut, touchOf(setting))
  return (
    touch - clearances.withdrawn - tilted - diameter / 2 + (offset === 0 ? free : Math.sqrt(free ** 2 - offset ** 2))
  )
}

/**
 * Greatest x of the bar axis at which the bar still clears the metal in front by the front clearance, once the slot is open:
 * the mouth corner governs, or a V's flank, or the bore's arc where the bar stands beside the slot; ∞ where the bar can enter the slot.
 */
export const barAxisMost = (setting: Setting, diameter: number): number => {
  const { radius, offset, clearances, opening } = setting
  const reach = diameter / 2 + clearances.front
  const half = openHalf(setting)
  if (opening?.flank) {
    const axis = (opening.flank.flat - reach) / Math.cos(Math.PI / opening.flank.sides)
    if (flankBefore(setting, axis) !== undefined) return axis
  }
  const side = Math.abs(offset)
  const corner = mouthX(radius, side + half)
  const byCorner = reach > half ? corner - Math.sqrt(reach ** 2 - half ** 2) : Infinity
  if (byCorner * (side + half) >= side * corner) return byCorner
  const free = radius - reach
  return free > side ? Math.sqrt(free ** 2 - side ** 2) : -Infinity
}

/** Least projection with which the nose reaches the floor before a bar of `diameter` comes too near the metal; ∞ if never. */
export const projectionLeast = (setting: Setting, diameter: number): number =>
  Math.max(setting.floor - diameter / 2 - barAxisMost(setting, diameter), projectionFloor(setting))

/**
 * Largest bar for which the window is not empty. For a centred nose as wide as the slot this is the closed form
 *     K = R + X_t + x_c − f − c_b − c_r;  min( (K − c_f) + h²/(K + c_f), R + X_t − c_b − c_r − floor ).
 */
export const largestBar = (setting: Setting): number => {
  const { radius, floor, noseWidth, offset, clearances, opening, tilted = 0 } = setting
  if (offset === 0 && !opening) {
    const half = noseWidth / 2
    const touch = touchOf(setting)
    const behind = radius + touch - clearances.back - clearances.withdrawn - tilted
    const k = behind + mouthX(radius, half) - floor
    const byMouth = k - clearances.front + half ** 2 / (k + clearances.front)
    // Under 2h the bar can enter the slot: the mouth no longer binds.
    const entering = 2 * (half - clearances.front)
    return Math.max(0, Math.min(byMouth > entering ? byMouth : entering, behind - projectionFloor(setting)))
  }
  let [fits, tooBig] = [0, 2 * radius]
  for (let step = 0; step < 60; step++) {
    const diameter = (fits + tooBig) / 2
    if (projectionLeast(setting, diameter) <= projectionMost(setting, diameter)) fits = diameter
    else tooBig = diameter
  }
  return fits
}

/** Sideways positions of a nose that cuts a wider slot, left to right; one centred lane where the nose is as wide as the slot. */
export const laneOffsets = (slotWidth: number, noseWidth: number, overlap: number): readonly number[] => {
  const spare = slotWidth - noseWidth
  if (spare <= 1e-9) return [0]
  const count = Math.ceil(spare / (noseWidth - overlap) - 1e-9) + 1
  return Array.from({ length: count }, (_, lane) => -spare / 2 + (spare * lane) / (count - 1))
}

/** Shoulder corners of a shank wider than its nose stay `back` clear inside the bore: least nose length; ∞ if the shank cannot. */
export const noseLengthLeast = (setting: Setting, shankWidth: number): number => {
  const room = (setting.radius - setting.clearances.back) ** 2 - (Math.abs(setting.offset) + shankWidth / 2) ** 2
  return room > 0 ? setting.floor - Math.sqrt(room) : Infinity
}

/** Bit length, edge to tail: long enough for the screw's cup, short enough that its tail corners stay under the bar's surface by `under`. */
export const bitLengthWindow = (
  projection: number,
  diameter: number,
  bitWidth: number,
  cupPoint: number,
  under: number,
  pastScrew = 0.75,
): { readonly least: number; readonly most: number } => ({
  least: projection + diameter / 2 + cupPoint / 2 + pastScrew,
  most: projection + diameter / 2 + Math.sqrt(Math.max(0, (diameter / 2 - under) ** 2 - (bitWidth / 2) ** 2)),
})
