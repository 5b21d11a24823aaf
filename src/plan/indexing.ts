/** Turning the work on from slot to slot. Angles in degrees, errors in minutes of arc where they say so, mm. */
import type { Reasoned } from '../dimensions/basis.ts'
import { fromFirst } from '../dimensions/locating.ts'
import type { GuideBushing, Section } from '../dimensions/types.ts'
import { limitsOf } from '../fits/iso-286.ts'
import { middle } from '../fits/size.ts'
import type { Dividing } from '../spec/shop.ts'
import type { IndexSpec, Spec } from '../spec/spec.ts'
import { isoSplineNamed, isoSplineShaft } from '../standards/iso-14.ts'
import { usualDividingRatio, usualHoleCircles } from '../standards/dividing.ts'
import { engagement } from '../mechanics/key-play.ts'
import { playNeeded } from './index-play.ts'
import type { Indexing, IndexSlot } from './types.ts'

/** Error of a crank that is set to the nearest hole, degrees. */
const errorOn = (circle: number, ratio: number, angle: number): number => {
  const holes = (angle * ratio * circle) / 360
  return ((Math.round(holes) - holes) / circle) * (360 / ratio)
}

/** What counts as no error, degrees. */
const none = 1e-9

export interface CircleChoice {
  readonly circle: number
  /** Others that do it exactly. */
  readonly others: readonly number[]
}

/**
 * The circle on which every angle comes out with the least error, and of those that are exact the largest that is no more than a third
 * larger than the smallest: plates go by such steps, and a larger circle sets finer.
 */
export const circleFor = (angles: readonly number[], { ratio, circles }: Dividing): CircleChoice => {
  const worst = (circle: number) => Math.max(0, ...angles.map((angle) => Math.abs(errorOn(circle, ratio, angle))))
  const exact = circles.filter((circle) => worst(circle) < none)
  const [smallest] = exact
  if (smallest !== undefined) {
    const circle = Math.max(...exact.filter((each) => each <= (4 / 3) * smallest))
    return { circle, others: exact.filter((each) => each !== circle) }
  }
  const circle = circles.reduce((best, each) => (worst(each) < worst(best) - none ? each : best), circles[0] ?? 1)
  return { circle, others: [] }
}

/** Turns of the crank from the first slot to an angle: whole turns, holes on this circle, and what that is off by, degrees. */
export const crankTo = (
  angle: number,
  circle: number,
  ratio: number,
): { readonly turns: number; readonly holes: number; readonly error: number } => {
  const holes = Math.round((angle * ratio * circle) / 360)
  return { turns: Math.floor(holes / circle), holes: holes % circle, error: errorOn(circle, ratio, angle) }
}

/** Teeth of a gear from the first slot to an angle, to the nearest, and its error, degrees. */
const toothAt = (angle: number, teeth: number): { readonly tooth: number; readonly error: number } => {
  const tooth = Math.round((angle * teeth) / 360)
  return { tooth, error: (tooth * 360) / teeth - angle }
}

/** The gear asked for, else the smallest on hand that every slot falls on. */
const gearFor = (angles: readonly number[], asked: number | undefined, onHand: readonly number[]): number | undefined =>
  asked ?? onHand.find((teeth) => angles.every((angle) => Math.abs(toothAt(angle, teeth).error) < none))

/** Holes of an own index plate at this radius; a hole off its place by `off` turns the work by off/radius. */
export const plateOf = (angles: readonly number[], radius: number, off: number): NonNullable<Indexing['plate']> => ({
  radius,
  holes: angles.map((angle) => {
    const turned = (angle * Math.PI) / 180
    return { x: radius * Math.cos(turned), y: radius * Math.sin(turned) }
  }),
  error: (off / radius) * (180 / Math.PI),
})

/** Play of slot and key or tooth, both at mid-tolerance, where their sizes are known; of ISO 14 the tightest of its fits. */
const playOf = (spec: Spec, section: Section): number | undefined => {
  const { feature } = spec
  const told = spec.tooling.index?.play
  if (told !== undefined) return told
  if (section.key?.width) return middle(section.widthLimits) - middle(section.key.width)
  const row = feature.kind === 'spline' && feature.standard === 'iso-14' && isoSplineNamed(feature.size ?? '')
  const tooth = row && limitsOf(row.width, isoSplineShaft('fixed').width)
  return row && tooth ? middle(section.widthLimits) - row.width - (tooth.lower + tooth.upper) / 2 : undefined
}

const byOf = (asked: IndexSpec | undefined): Indexing['by'] =>
  asked?.by ?? (asked?.plate ? 'plate' : asked?.gear === undefined ? 'dividing head' : 'gear')

/** A bushing's slot laid by eye on a line scribed on the hub's face, mm. Source: judgement. */
export const byEye = 0.1

/** Errors of the slots, degrees, by what the work is turned with. A plate's holes may lie either way: worst where neighbours differ. */
const errorsOf = (
  by: Indexing['by'],
  angles: readonly number[],
  on: {
    readonly circle: number
    readonly ratio: number
    readonly gear?: number
    readonly plate?: number
    readonly step: number
  },
): readonly number[] =>
  angles.map((angle, n) => {
    // From each keyway to the next: what one is off by, all after it are.
    if (by === 'locating key') return n * on.step
    if (by === 'scribed line') return n === 0 ? 0 : (n % 2 === 0 ? -1 : 1) * on.step
    if (by === 'plate') return (n % 2 === 0 ? 1 : -1) * (on.plate ?? 0)
    if (by === 'gear' && on.gear !== undefined) return toothAt(angle, on.gear).error
    return errorOn(on.circle, on.ratio, angle)
  })

/** How far all keyways alike were found off the middle. */
const foundOff = ({ feature }: Spec): number => (feature.kind === 'keyway' ? (feature.found?.offset ?? 0) : 0)

/** How to turn the work on, for a section with more than one slot; undefined for one. */
export const indexingOf = (
  spec: Spec,
  section: Section,
  locating?: GuideBushing['locating'],
): Reasoned<Indexing> | undefined => {
  if (section.at.length < 2) return undefined
  const pressed = spec.tooling.press?.broach !== undefined && spec.tooling.bar === undefined
  const asked = pressed ? undefined : spec.tooling.index
  const by = pressed ? (locating ? 'locating key' : 'scribed line') : byOf(asked)
  const told = asked?.circles !== undefined || asked?.ratio !== undefined || spec.shop.dividing !== undefined
  const head: Dividing = {
    ratio: asked?.ratio ?? spec.shop.dividing?.ratio ?? usualDividingRatio,
    circles: asked?.circles ?? spec.shop.dividing?.circles ?? usualHoleCircles,
  }
  const angles = fromFirst(section.at)
  const { circle, others } = circleFor(angles, head)
  const teeth = gearFor(angles, asked?.gear, spec.shop.gears ?? [])
  const plate = asked?.plate && plateOf(angles, asked.plate.radius, asked.plate.hole)
  const errors = errorsOf(by, angles, {
    circle,
    ratio: head.ratio,
    ...(teeth !== undefined && { gear: teeth }),
    ...(plate && { plate: plate.error }),
    step: ((locating?.stepError ?? byEye) / section.boreRadius) * (180 / Math.PI),
  })
  const slots = [...angles, 360].map(
    (angle, n): IndexSlot => ({
      slot: n + 1,
      angle,
      turns: crankTo(angle, circle, head.ratio).turns,
      holes: crankTo(angle, circle, head.ratio).holes,
      error: 60 * (errors[n] ?? 0),
      ...(teeth !== undefined && { tooth: toothAt(angle, teeth).tooth }),
    }),
  )
  const { from, to } = engagement(section)
  const play = playOf(spec, section)
  return {
    sizes: {
      by,
      ratio: head.ratio,
      circle,
      otherCircles: others,
      slots,
      ...(teeth !== undefined && { gear: { teeth, step: toothAt(angles[1] ?? 0, teeth).tooth } }),
      ...(plate && { plate }),
      error: 60 * Math.max(...errors.map((error) => Math.abs(error))),
      spread: 60 * (Math.max(...errors) - Math.min(...errors)),
      playNeeded: playNeeded({
        at: angles,
        errors,
        radii: [from, to],
        eccentric: asked?.eccentric ?? 0,
        offset: foundOff(spec),
      }),
      ...(play !== undefined && { play }),
      ...(asked?.eccentric !== undefined && { acrossVaries: asked.eccentric }),
    },
    basis: {
      by: pressed
        ? locating
          ? 'a loose key between the bushing’s second slot and the keyway cut last'
          : 'a second slot would leave its key no hold, or take away the back of the bushing, which the depth is miked over: a line scribed on the hub’s face'
        : asked
          ? 'given in the spec'
          : told
            ? 'the shop’s dividing head'
            : 'nobody has said: a dividing head taken',
      ratio: told ? 'as told' : 'the usual head: 40 turns of the crank for one of the work',
      circle: told
        ? 'of the circles told of, the one with the least error'
        : 'of the usual plates’ circles, the one with the least error',
      otherCircles: 'as exact',
      slots: 'counted from slot 1, so that errors do not add up; the last row is back at slot 1',
      gear: 'a gear on the spindle and a pin: teeth counted from slot 1',
      plate: 'holes of an own plate; one that is off its place turns the work by that over the radius',
      error: pressed
        ? 'judgement: a key fitted without shake and a minute of arc, or 0.1 mm by eye'
        : 'the nearest hole or tooth less the true angle; of a plate, its holes’ own',
      spread: 'between the two slots that are farthest out of step',
      playNeeded:
        'exact for a shaft free to turn and shift: the worst pair of slots, at the bore and at the tip of the tooth or key; with the offset found, where one was',
      acrossVaries: 'the bore off the axis, as told',
      play: 'as told; else slot less key, or the tooth of the tightest fit of ISO 14, at mid-tolerance',
    },
  }
}
