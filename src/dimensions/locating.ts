/** Where a push broach is to cut a second slot: a loose key in the one before it turns bushing and broach to the next. mm, degrees. */
import { middle, type Size } from '../fits/size.ts'
import type { Spec } from '../spec/spec.ts'
import { mouthX } from './bore.ts'
import { either, roundDown } from './makeable.ts'
import type { GuideBushing, Locating, Section } from './types.ts'

type Slotted = Pick<GuideBushing, 'outside' | 'slotWidth' | 'floorFromAxis'>

/** Angles from the first slot on, ascending, the first at 0. */
export const fromFirst = (at: readonly number[]): readonly number[] =>
  at.map((angle) => (((angle - (at[0] ?? 0)) % 360) + 360) % 360).toSorted((a, b) => a - b)

/** From each slot to the next, each angle once. */
const stepsBetween = (at: readonly number[]): readonly number[] => {
  const angles = fromFirst(at)
  const steps = angles.slice(1).map((angle, n) => angle - (angles[n] ?? 0))
  return steps.filter((step, n) => steps.findIndex((other) => Math.abs(other - step) < 1e-6) === n)
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Half the anvil of a micrometer, which must find the back of the bushing whole. Source: judgement. */
const halfAnvil = 3.25

/** Whether a slot that stands so far from the broach's leaves the back of the bushing whole, which the depth is miked over. */
const leavesBack = (angle: number, radius: number, half: number): boolean => {
  const off = Math.abs((((angle % 360) + 540) % 360) - 180)
  return radians(180 - off) > Math.asin(Math.min(1, half / radius)) + Math.asin(Math.min(1, halfAnvil / radius))
}

/**
 * Least distance of a second slot from the broach's, which is open to +x: both are convex, so it is that of a corner of either from the other;
 * 0 where they run into one another.
 */
const webOf = (angle: number, half: number, floor: number, radius: number, broach: Opening): number => {
  const [cos, sin] = [Math.cos(radians(angle)), Math.sin(radians(angle))]
  const second = { floor, half }
  const from = (opening: Opening, x: number, y: number): number =>
    Math.hypot(Math.max(0, opening.floor - x), Math.max(0, Math.abs(y) - opening.half))
  const corners = ({ floor: x, half: y }: Opening): readonly (readonly [number, number])[] =>
    [y, -y].flatMap((side) => [x, mouthX(radius, side)].map((along) => [along, side] as const))
  return Math.min(
    ...corners(second).map(([x, y]) => from(broach, x * cos - y * sin, x * sin + y * cos)),
    ...corners(broach).map(([x, y]) => from(second, x * cos + y * sin, y * cos - x * sin)),
  )
}

/** A slot by itself: its floor from the axis, and half its width. */
interface Opening {
  readonly floor: number
  readonly half: number
}

/**
 * The second slots of a bushing and the key that goes with them; undefined for one keyway, and where a second slot would take away the back
 * that the depth is miked over, or the key has nothing to hold on to.
 */
export const locatingOf = (spec: Spec, section: Section, bushing: Slotted): Locating | undefined => {
  if (section.at.length < 2) return undefined
  const radius = bushing.outside.lower / 2
  const half = section.widthLimits.upper / 2
  if (half >= radius) return undefined
  const at = stepsBetween(section.at).map((step) => 360 - step)
  if (!at.every((angle) => leavesBack(angle, radius, half))) return undefined
  const fine = either(spec.units, 0.1, 0.005)
  const floor = roundDown(mouthX(radius, half) - Math.max(either(spec.units, 1.5, 0.06), 0.25 * section.width), fine)
  const roof = section.acrossLimits.lower - section.bore.upper / 2 - either(spec.units, 0.3, 0.012)
  const height = roundDown(roof - floor, fine)
  if (floor + height - section.bore.upper / 2 < 0.3 || floor <= 0) return undefined
  const width: Size = { ...section.widthLimits, nominal: section.width }
  const web = Math.min(
    ...at.map((angle) =>
      webOf(angle, half, floor, radius, { floor: bushing.floorFromAxis, half: bushing.slotWidth.upper / 2 }),
    ),
  )
  return {
    at,
    round: at.map((angle) => Math.min(angle, 360 - angle)),
    width,
    floor,
    overBack: middle(bushing.outside) / 2 + floor,
    key: { height, length: roundDown(spec.bore.length - either(spec.units, 2, 1 / 16), either(spec.units, 1, 1 / 16)) },
    web,
    // Its key fitted without shake in both slots, and both slots of the bushing milled in one setting of a dividing head.
    stepError: 0.01 + radius * radians(1 / 60),
  }
}
