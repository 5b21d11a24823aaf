/** How a bar holds its bit: by a screw from its end, by one through the wall beside the hole, or leaning with the screw in the wall. All mm. */
import type { Spec } from '../spec/spec.ts'
import { setScrewFor } from '../standards/set-screws.ts'
import { type Thread, threadNamed } from '../standards/threads.ts'
import { endSizes, holeToEndFor, leastEngaged, seatRise } from './cross-hole.ts'
import { roundDown, roundUp, stepsOf } from './makeable.ts'
import type { CutterBar, Screw } from './types.ts'

export type Form = CutterBar['form']

/** A blank as it lies in its hole. */
export interface Seated {
  readonly bit: CutterBar['bit']
  readonly hole: { readonly nominal: number; readonly most: number }
  /** The bit's top flat above the hole's centre. */
  readonly rise: number
  readonly bar: { readonly nominal: number; readonly least: number }
}

export interface Holding {
  readonly screw: Screw
  /** Hole centre, on the bar's axis, to the bar's end. */
  readonly holeToEnd: number
  /** Metal between hole and end, on the axis, where the screw is in the wall. */
  readonly wallAtEnd?: number
}

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180)

/** Recess of an end screw, and the chamfer that is allowed for. */
export const recessOf = (bar: number): number => (bar < 6 ? 0.3 : 0.5)

/** A thread that can be tapped and screwed, as far as the shop goes. */
export interface OnHand {
  readonly thread: Thread
  /** Lengths of set screws: those that the shop file gives, else those they are sold in. Ascending. */
  readonly lengths: readonly number[]
  readonly cupPoint: number
  /** Its tap drill, or the nearest on hand. */
  readonly tapDrill: Screw['tapDrill']
  /** Whether a source gives its torque, and a drill for it is on hand. */
  readonly known: boolean
}

const onHand = (spec: Spec, thread: Thread): OnHand => {
  const stock = setScrewFor(thread.name)
  const wanted = thread.tapDrill.diameter
  // A hair under, or so far over that two thirds of the thread are left.
  const [under, over] = [wanted - 0.03 * thread.pitch, wanted + 0.15 * thread.pitch]
  let tapDrill: Screw['tapDrill'] | undefined
  for (const drill of spec.shop.drills)
    if (drill.diameter > under && drill.diameter < over)
      if (!tapDrill || Math.abs(drill.diameter - wanted) < Math.abs(tapDrill.diameter - wanted)) tapDrill = drill
  return {
    thread,
    lengths: spec.shop.screws?.find((screw) => screw.thread === thread.name)?.lengths ?? stock?.lengths ?? [],
    cupPoint: stock?.cupPoint ?? 0.5 * thread.major,
    tapDrill: tapDrill ?? thread.tapDrill,
    known: stock?.seatingTorque !== undefined && tapDrill !== undefined,
  }
}

/** The threads that may hold the bit, ascending: the one asked for where it is fixed, else all on hand. */
export const threadsOnHand = (spec: Spec, fixed?: string): readonly OnHand[] =>
  (fixed === undefined ? spec.shop.threads : [fixed])
    .flatMap((name) => threadNamed(name) ?? [])
    .map((thread) => onHand(spec, thread))

const described = (
  { thread, cupPoint, tapDrill }: OnHand,
  { length, lengthMin, lengthMax, engaged }: Pick<Screw, 'length' | 'lengthMin' | 'lengthMax' | 'engaged'>,
): Screw => ({
  thread: thread.name,
  major: thread.major,
  pitch: thread.pitch,
  callout: thread.callout,
  cupPoint,
  length,
  lengthMin,
  lengthMax,
  engaged,
  tapDrill,
})

/** Screw from the bar's end: the end grows until a screw on hand fits. */
const fromEnd = (spec: Spec, held: OnHand, { bit, hole, rise, bar }: Seated): Holding | undefined => {
  const { thread } = held
  const step = stepsOf(spec.units).small
  const recess = recessOf(bar.nominal)
  const height = bit.size - bit.flat
  const wanted = roundUp(holeToEndFor(hole.nominal, thread.major, recess), step)
  const open = hole.most / 2 + seatRise(bit.shape, bit.size, bit.cornerBreak, hole.most) - height
  const least = leastEngaged(thread.major, thread.pitch) + open
  const asWanted = endSizes(hole.nominal, rise, height, thread, wanted, recess)
  const enough = held.lengths.filter((length) => length >= least - 1e-9)
  const fitting = enough.findLast((length) => length <= asWanted.screwMost + 1e-9)
  const length = fitting ?? enough[0]
  if (length === undefined) return undefined
  // No screw on hand in the window: the end grows until the shortest that holds fits.
  const holeToEnd = fitting ? wanted : roundUp(wanted + length - asWanted.screwMost, step)
  const end = endSizes(hole.nominal, rise, height, thread, holeToEnd, recess)
  return {
    holeToEnd,
    screw: described(held, { length, lengthMin: least, lengthMax: end.screwMost, engaged: length - open }),
  }
}

/** Metal that is left between a cross hole and the bar's end: a third of the blank, 1.2 mm at the least. Source: judgement. */
const wallAtEndFor = (spec: Spec, size: number): number =>
  roundUp(Math.max(size / 3, 1.2), spec.units === 'mm' ? 0.5 : 25.4 / 64)

/**
 * Screw through the wall beside the hole, on the hole's axis and across it: four threads in the wall, and its head not above the bar. A
 * screw that is too long is ground to length.
 */
const throughWall = (spec: Spec, held: OnHand, { bit, hole, bar }: Seated, incline: number): Holding | undefined => {
  const { thread, lengths } = held
  const half = bit.size / 2 - bit.flat
  const open = hole.most / 2 - half
  const lengthMin = 4 * thread.pitch + open
  const lengthMax = bar.least / 2 - half
  const fitting = lengths.findLast((length) => length >= lengthMin - 1e-9 && length <= lengthMax + 1e-9)
  const longer = lengths.find((length) => length > lengthMax)
  const ground = longer === undefined ? undefined : roundDown(lengthMax, stepsOf(spec.units).small)
  const length = fitting ?? ground
  if (length === undefined) return undefined
  const wallAtEnd = wallAtEndFor(spec, bit.size)
  return {
    holeToEnd: wallAtEnd + (bar.nominal / 2) * tan(incline) + hole.nominal / 2 / cos(incline),
    wallAtEnd,
    screw: described(held, { length, lengthMin, lengthMax, engaged: length - open }),
  }
}

/** The same with its hole at a round figure from the end, where it leans; the wall takes what that adds. */
export const inRoundFigures = (spec: Spec, holding: Holding, incline: number): Holding => {
  if (incline === 0 || holding.wallAtEnd === undefined) return holding
  const holeToEnd = roundUp(holding.holeToEnd, stepsOf(spec.units).small)
  return { ...holding, holeToEnd, wallAtEnd: holding.wallAtEnd + holeToEnd - holding.holeToEnd }
}

/** Whether this form has room for a thread. */
const takes = (form: Form, { bit, hole, bar }: Seated, { major, pitch }: Thread): boolean =>
  major <= 0.9 * bit.size + 1e-9 &&
  (form === 'end screw'
    ? 2 * major <= bar.least + 1e-9
    : 8 * pitch <= bar.least - hole.most + 1e-9 && major >= 0.25 * bit.size)

/**
 * The screw that holds this bit in this form, and where the hole lies for it: the strongest of `threads` that fits; one that nobody knows the
 * torque of, or that no drill is on hand for, only where there is no other. The one that is asked for where it is `fixed`.
 */
export const holdingFor = (
  spec: Spec,
  form: Form,
  seated: Seated,
  incline: number,
  threads: readonly OnHand[],
  fixed = false,
): Holding | undefined => {
  const fitting = fixed ? threads : threads.filter(({ thread }) => takes(form, seated, thread))
  const known = fitting.filter((thread) => thread.known)
  for (const held of (known.length > 0 ? known : fitting).toReversed()) {
    const holding = form === 'end screw' ? fromEnd(spec, held, seated) : throughWall(spec, held, seated, incline)
    if (holding) return holding
  }
  return undefined
}

/**
 * The face of the bit that looks to the bar's end, to that end, at the edge: below the bit with an end screw or one in the wall; a bit that
 * leans reaches `projection` · tan farther down.
 *     a = w − p tan θ + ((d_h − b)/2 + u_b − b/2)/cos θ
 */
export const bitToEndOf = (
  form: Form,
  { bit, hole, rise }: Seated,
  { holeToEnd, wallAtEnd = 0 }: Holding,
  incline: number,
  projection: number,
): number => {
  if (form === 'end screw') return holeToEnd + rise - (bit.size - bit.flat)
  return wallAtEnd - projection * tan(incline) + (hole.nominal / 2 + rise - bit.size) / cos(incline)
}

/** The farthest that a bit with its screw in the wall may rock from the face it was seated on, degrees: 2 (u_b − b/2) over its length in the bar. */
export const rockOf = ({ bit, rise, bar }: Seated, tail: number): number =>
  (Math.atan((2 * (rise - bit.size / 2)) / (bar.nominal / 2 + tail)) * 180) / Math.PI

/**
 * Length of a bit that leans, along its leading face, from its edge: past the screw's cup, and its tail under the bar's surface.
 *     (p + ρ + (b/2) sin θ)/cos θ + d_pt/2 + m  to  (p + ρ + √((ρ − ε)² − b²/4))/cos θ
 */
export const leaningLength = (
  projection: number,
  diameter: number,
  bitWidth: number,
  cupPoint: number,
  under: number,
  incline: number,
  pastScrew = 0.75,
): { readonly least: number; readonly most: number } => {
  const radius = diameter / 2
  const sine = Math.sin((incline * Math.PI) / 180)
  return {
    least: (projection + radius + (bitWidth / 2) * sine) / cos(incline) + cupPoint / 2 + pastScrew,
    most: (projection + radius + Math.sqrt(Math.max(0, (radius - under) ** 2 - (bitWidth / 2) ** 2))) / cos(incline),
  }
}

/** Nose length of a bit that leans, whose shoulder's far edge stands `size` · sin farther out than its near one. */
export const leaningNose = (upright: number, size: number, incline: number): number =>
  (upright + size * Math.sin((incline * Math.PI) / 180)) / cos(incline)
