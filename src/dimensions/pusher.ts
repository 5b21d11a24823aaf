import type { Broach, Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { mouthX } from './bore.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import type { GuideBushing, Section } from './types.ts'

/** A bar that goes through the bushing’s slot after the broach, where the broach’s tail is too short for the ram to reach it. */
export interface Pusher {
  /** Least. */
  readonly length: number
  /** Greatest. */
  readonly width: number
  /** Greatest, from the back that slides in the slot. */
  readonly height: number
}

/** What stands of the broach over its last tooth, mm. */
export const tailOf = (broach: Broach): number => broach.overall - broach.pilotLength - broach.toothedLength

/** What the ram meets first, from the hub’s lower face: the collar, or the head of a shim that hangs on it, mm. */
const topOfStack = (spec: Spec, { collarThickness, shims, shim }: GuideBushing): number =>
  spec.bore.length + collarThickness + (shims.length > 0 ? shim.headLength : 0)

/**
 * Undefined where the tail still stands over collar and shim, by 1 mm (1/32 in) or more, when the last tooth leaves the hub: then the ram
 * pushes the broach right through.
 */
export const pusherOf = (
  spec: Spec,
  broach: Broach,
  bushing: GuideBushing,
  section: Section,
): Reasoned<Pusher> | undefined => {
  const short = topOfStack(spec, bushing) - tailOf(broach)
  if (short + either(spec.units, 1, 1 / 32) <= 1e-9) return undefined
  const clear = either(spec.units, 0.25, 0.01)
  const step = either(spec.units, 0.1, 0.005)
  const width = roundDown(bushing.slotWidth.lower - clear, step)
  const smallest = section.bore.lower / 2
  const shimmed = bushing.shims.reduce((sum, shim) => sum + shim, 0)
  const height = mouthX(smallest, width / 2) - (bushing.backWall.upper - smallest + shimmed) - clear
  return {
    sizes: {
      length: roundUp(short + either(spec.units, 6, 0.25), either(spec.units, 1, 1 / 8)),
      width,
      height: roundDown(height, step),
    },
    basis: {
      length:
        'hub, collar and head of the shims less the broach’s tail: so much of the ram’s way is left when it meets them; and 6 mm (1/4 in), judgement',
      width: 'the slot at its narrowest less 0.25 mm (.010 in)',
      height: 'what passes the smallest bore on the last shim, less 0.25 mm (.010 in)',
    },
  }
}
