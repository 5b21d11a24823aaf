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

/** Lengths of a set screw on hand: those that the shop file gives, else those it is sold in. */
const lengthsOnHand = (spec: Spec, name: string): readonly number[] =>
  spec.shop.screws?.find(({ thread }) => thread === name)?.lengths ?? setScrewFor(name)?.lengths ?? []

/** Its tap drill, or the nearest on hand: a hair under, or so far over that two thirds of the thread are left. Undefined where there is none. */
const tapDrillOnHand = (spec: Spec, thread: Thread): Screw['tapDrill'] | undefined => {
  const wanted = thread.tapDrill.diameter
  const near = spec.shop.drills.filter(
    ({ diameter }) => diameter > wanted - 0.03 * thread.pitch && diameter < wanted + 0.15 * thread.pitch,
  )
  return near.toSorted((a, b) => Math.abs(a.diameter - wanted) - Math.abs(b.diameter - wanted))[0]
}

const described = (
  spec: Spec,
  thread: Thread,
  sizes: Pick<Screw, 'length' | 'lengthMin' | 'lengthMax' | 'engaged'>,
): Screw => ({
  thread: thread.name,
  major: thread.major,
  pitch: thread.pitch,
  callout: thread.callout,
  cupPoint: setScrewFor(thread.name)?.cupPoint ?? 0.5 * thread.major,
  ...sizes,
  tapDrill: tapDrillOnHand(spec, thread) ?? thread.tapDrill,
})

/** Screw from the bar's end: the end grows until a screw on hand fits. */
const fromEnd = (spec: Spec, thread: Thread, { bit, hole, rise, bar }: Seated): Holding | undefined => {
  const step = stepsOf(spec.units).small
  const recess = recessOf(bar.nominal)
  const height = bit.size - bit.flat
  const wanted = roundUp(holeToEndFor(hole.nominal, thread.major, recess), step)
  const open = hole.most / 2 + seatRise(bit.shape, bit.size, bit.cornerBreak, hole.most) - height
  const least = leastEngaged(thread.major, thread.pitch) + open
  const asWanted = endSizes(hole.nominal, rise, height, thread, wanted, recess)
  const held = lengthsOnHand(spec, thread.name).filter((length) => length >= least - 1e-9)
  const fitting = held.findLast((length) => length <= asWanted.screwMost + 1e-9)
  const length = fitting ?? held[0]
  if (length === undefined) return undefined
  // No screw on hand in the window: the end grows until the shortest that holds fits.
  const holeToEnd = fitting ? wanted : roundUp(wanted + length - asWanted.screwMost, step)
  const end = endSizes(hole.nominal, rise, height, thread, holeToEnd, recess)
  return {
    holeToEnd,
    screw: described(spec, thread, { length, lengthMin: least, lengthMax: end.screwMost, engaged: length - open }),
  }
}

/** Metal that is left between a cross hole and the bar's end: a third of the blank, 1.2 mm at the least. Source: judgement. */
const wallAtEndFor = (spec: Spec, size: number): number =>
  roundUp(Math.max(size / 3, 1.2), spec.units === 'mm' ? 0.5 : 25.4 / 64)

/**
 * Screw through the wall beside the hole, on the hole's axis and across it: four threads in the wall, and its head not above the bar. A
 * screw that is too long is ground to length.
 */
const throughWall = (spec: Spec, thread: Thread, { bit, hole, bar }: Seated, incline: number): Holding | undefined => {
  const half = bit.size / 2 - bit.flat
  const open = hole.most / 2 - half
  const lengthMin = 4 * thread.pitch + open
  const lengthMax = bar.least / 2 - half
  const held = lengthsOnHand(spec, thread.name)
  const fitting = held.findLast((length) => length >= lengthMin - 1e-9 && length <= lengthMax + 1e-9)
  const longer = held.find((length) => length > lengthMax)
  const ground = longer === undefined ? undefined : roundDown(lengthMax, stepsOf(spec.units).small)
  const length = fitting ?? ground
  if (length === undefined) return undefined
  const wallAtEnd = wallAtEndFor(spec, bit.size)
  return {
    holeToEnd: wallAtEnd + (bar.nominal / 2) * tan(incline) + hole.nominal / 2 / cos(incline),
    wallAtEnd,
    screw: described(spec, thread, { length, lengthMin, lengthMax, engaged: length - open }),
  }
}

/** Threads on hand for this form, the strongest first; one that nobody knows the torque of, or that no drill is on hand for, only where there is no other. */
const threadsFor = (spec: Spec, form: Form, { bit, hole, bar }: Seated): readonly Thread[] => {
  const wall = (bar.least - hole.most) / 2
  const fitting = spec.shop.threads
    .flatMap((name) => threadNamed(name) ?? [])
    .filter(
      ({ major, pitch }) =>
        major <= 0.9 * bit.size + 1e-9 &&
        (form === 'end screw' ? 2 * major <= bar.least + 1e-9 : 4 * pitch <= wall + 1e-9 && major >= 0.25 * bit.size),
    )
    .toReversed()
  const known = fitting.filter(
    (thread) => setScrewFor(thread.name)?.seatingTorque !== undefined && tapDrillOnHand(spec, thread),
  )
  return known.length > 0 ? known : fitting
}

/** The screw that holds this bit in this form, and where the hole lies for it; the one asked for where it is fixed. */
export const holdingFor = (
  spec: Spec,
  form: Form,
  seated: Seated,
  incline: number,
  fixed?: string,
): Holding | undefined => {
  const asked = fixed === undefined ? undefined : threadNamed(fixed)
  for (const thread of asked ? [asked] : threadsFor(spec, form, seated)) {
    const holding = form === 'end screw' ? fromEnd(spec, thread, seated) : throughWall(spec, thread, seated, incline)
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
