/** Play over and beside a key, and what a slot out of the middle costs of it. mm. */
import type { Section } from '../dimensions/types.ts'
import { band, middle, type Size } from '../fits/size.ts'

/** What stands over one another at a key: hub across, shaft across, key height, bore and shaft, each with its limits. */
export interface Stack {
  readonly across: Size
  readonly shaftAcross: Size
  readonly height: Size
  readonly bore: Size
  readonly shaft: Size
}

/** Top clearance of a parallel key with the shaft in the middle of the bore, with the hub pushed down on the key, and pushed the other way. */
export interface TopClearances {
  readonly concentric: Size
  readonly hubDown: Size
  readonly otherWay: Size
}

const at = (stack: Stack, share: number): Size => {
  const { across, shaftAcross, height, bore, shaft } = stack
  const over = (T: number, S: number, H: number, D: number, d: number) => T - S - H - share * (D - d)
  return {
    nominal: over(middle(across), middle(shaftAcross), middle(height), middle(bore), middle(shaft)),
    lower: over(across.lower, shaftAcross.upper, height.upper, bore.upper, shaft.lower),
    upper: over(across.upper, shaftAcross.lower, height.lower, bore.lower, shaft.upper),
  }
}

/** The three of them over the corners of the limits, each size by itself. Shaft and bore are used up one against another, so what fits never goes below no play. */
export const topClearances = (stack: Stack): TopClearances => ({
  concentric: at(stack, 0.5),
  hubDown: at(stack, 1),
  otherWay: at(stack, 0),
})

/** Where key and wall touch: x from the axis. */
export interface Engaged {
  readonly from: number
  readonly to: number
}

/** Of a section: mouth to the top of the key, bore to the tip of the tooth, or to the floor where nothing is known of what goes in. */
export const engagement = ({ key, mouth, floor, spline, bore, boreRadius }: Section): Engaged => {
  if (spline) return { from: boreRadius, to: spline.toothReach }
  const top = key?.shaft && key.height ? key.shaft.across.nominal - bore.nominal / 2 + key.height.nominal : floor
  return { from: mouth, to: Math.max(mouth, Math.min(top, floor)) }
}

const slope = ({ from, to }: Engaged): number => (to - from) / ((from + to) / 2)

/** Width clearance that a slot `offset` sideways of its fellow uses up, the hub turned as well as can be. */
export const lostToOffset = (engaged: Engaged, offset: number): number => Math.abs(offset) * slope(engaged)

/** Sideways offset that uses up all of a play. */
export const offsetWithin = (engaged: Engaged, play: number): number => Math.max(0, play) / slope(engaged)

/** Play of a key in its slot at mid-tolerance, 0 where it is tight: it is fitted by hand then. */
export const playOf = (slot: Size, key: Size): number => Math.max(0, middle(slot) - middle(key))

/** Least and most play. */
export const playLimits = (slot: Size, key: Size): readonly [number, number] => [
  middle(slot) - middle(key) - (band(slot) + band(key)) / 2,
  middle(slot) - middle(key) + (band(slot) + band(key)) / 2,
]
