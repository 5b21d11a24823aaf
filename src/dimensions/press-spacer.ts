import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundUp } from './makeable.ts'
import type { BarInBore, GuideBushing, Section } from './types.ts'

/** A turned ring that the hub stands on, open under bore and feature. */
export interface PressSpacer {
  /** What runs out below: the broach, or the end of a bar. */
  readonly under: 'broach' | 'bar'
  readonly opening: number
  readonly height: number
  /** What must be free below the hub; the ring is this high, or stands over a hole in table or press that makes it up. */
  readonly free: number
  readonly outside: number
  /** Faces parallel within this. */
  readonly parallel: number
  readonly stock: { readonly diameter: number; readonly length: number }
}

/** Room that a bar’s end runs out into behind the hub, mm: the end below its edge, the overtravel, and 0.5 mm. */
export const roomForBar = ({ tipBeyond }: Pick<BarInBore, 'tipBeyond'>): number => tipBeyond + 0.5

/** Higher rings are made up with blocks or stand over the opening of the press. Source: judgement. */
const highest = (spec: Spec): number => either(spec.units, 60, 2.5)

/** Height of the ring for so much room below the hub, mm: chips lie in it, too. */
export const spacerHeight = (spec: Spec, free: number): number =>
  roundUp(Math.min(free + either(spec.units, 2, 0.0625), highest(spec)), either(spec.units, 1, 1 / 16))

/**
 * For a push broach that the table gives no room, or for a bar that runs out below a hub on a table (mill), the ring that does. Undefined
 * where neither does.
 */
export const pressSpacerOf = (
  spec: Spec,
  section: Section,
  bushing: GuideBushing | undefined,
  bar: BarInBore | undefined,
): Reasoned<PressSpacer> | undefined => {
  const onTable = bar && spec.tooling.bar?.machine === 'mill' && !spec.bore.blind
  const pushed = bushing && bushing.raised > 0 ? bushing : undefined
  if (!pushed && !onTable) return undefined
  const whole = either(spec.units, 1, 1 / 16)
  const free = pushed ? pushed.below : bar ? roomForBar(bar) : 0
  const height = pushed ? pushed.raised : spacerHeight(spec, bar?.tipBeyond ?? 0)
  const opening = roundUp(
    2 * (pushed?.plateHoleRadius ?? section.cornerReachMost + 0.2),
    either(spec.units, 0.5, 1 / 32),
  )
  const wall = Math.max(either(spec.units, 6, 0.25), 0.15 * section.bore.nominal)
  const outside = roundUp(opening + 2 * wall, whole)
  return {
    sizes: {
      under: pushed ? 'broach' : 'bar',
      opening,
      height,
      free,
      outside,
      parallel: either(spec.units, 0.02, 0.001),
      stock: {
        diameter: spec.shop.rounds.find((size) => size >= outside + 1 - 1e-9) ?? roundUp(outside + 2, whole),
        length: roundUp(height + either(spec.units, 3, 0.125), whole),
      },
    },
    basis: {
      under: pushed ? 'a push broach runs right through' : 'the bar runs out below a hub that stands on a table',
      opening: 'the feature’s farthest corner and 0.2 mm, all round: the ring may lie any way round',
      height: pushed
        ? 'pilot and toothed length of the broach and 2 mm, or 60 mm (2-1/2 in) with the rest in the press’s own opening'
        : 'how far the bar’s end runs out, and 2 mm for chips',
      free: pushed ? 'pilot and toothed length' : 'overtravel and the end below the edge, and 0.5 mm',
      outside: 'a wall of 6 mm (1/4 in), more under a large bore',
      parallel: 'judgement: the slot leans by what the faces do',
      stock: 'the next round on hand; 3 mm (1/8 in) to face',
    },
  }
}
