/** What a measurement at the machine says, and what to do. All mm, N; readings are the dial's own. */
import type { Loads } from '../mechanics/loads.ts'
import { downTo } from './dial.ts'
import type { Centring, Expected, Gate, Measuring, Plan } from './types.ts'

/** Within this of what is expected nothing need be said; within the next, watch. Source: judgement. */
const near = 0.03
const drift = 0.08

export interface AtGate {
  readonly says: 'go on' | 'watch' | 'short' | 'deep' | 'too deep' | 'the bore itself'
  /** Measured less expected: negative is short. */
  readonly off: number
  /** The dial less measured: what bar and machine give, as it was found. */
  readonly behind: number
}

/**
 * Across (or between floors, with `gate.floorToFloor` and its own limits) as measured at a gate. `most`: upper limit in the end; `none`: the
 * size that is no slot yet, the bore. `before`: what the gate before was off by: from then on only the change of it counts.
 */
export const atGate = (
  gate: Expected,
  measured: number,
  { most, none, before }: { readonly most: number; readonly none: number; readonly before?: number },
): AtGate => {
  const expected = gate.expected ?? gate.byDial
  const off = measured - expected
  const behind = gate.byDial - measured
  if (measured > most + 1e-9) return { says: 'too deep', off, behind }
  if (measured <= none + 1e-9) return { says: 'the bore itself', off, behind }
  // The band within which it may lie; after the first gate it stands as far behind as it stood there.
  const [low, high] =
    before === undefined
      ? [gate.least + drift, Math.max(gate.least, gate.most - drift)]
      : [expected + before, expected + before]
  const out = measured < low ? measured - low : measured > high ? measured - high : 0
  const says =
    Math.abs(out) <= near + 1e-9 ? 'go on' : Math.abs(out) <= drift + 1e-9 ? 'watch' : out < 0 ? 'short' : 'deep'
  return { says, off, behind }
}

/**
 * Sideways stiffness of the machine that a slot standing `behind` the dial at a gate speaks for, N/mm: each newton of thrust that it gives
 * more than was taken. Undefined where no stiffness explains it, or the gate was not cut with the whole edge at the planned infeed.
 */
export const giveFound = (loads: Loads, gate: Gate, behind: number): number | undefined => {
  if (gate.kind !== 'part' || gate.expected === undefined) return undefined
  const share = (gate.byDial - gate.expected) / loads.lag.most
  if (!(share > 0.5)) return undefined
  const softness = 1 / loads.machineGive + (behind / share - loads.lag.most) / loads.thrust.most
  return softness > 0 ? 1 / softness : undefined
}

/** Reading that a measured across stands for: after a new setting of the projection the dial is set to it with the nose on the floor. */
export const readingOf = (plan: Plan, across: number): number => (across - plan.dial.acrossAtZero) * plan.dial.perInfeed

export interface Missing {
  readonly says: 'good' | 'add' | 'too deep' | 'the bore itself'
  /** Middle of the limits less measured. */
  readonly missing: number
  /** Where to set the dial, to its mark, toward shallow; the reading as it stands where nothing is to be added. */
  readonly reading: number
}

/**
 * What is left to add when the last gate has been measured, or any time after. `across`: limits of what the gates measure, between two floors
 * where they do; `bore`: the size that is no slot yet.
 */
export const toGo = (
  plan: Plan,
  across: Measuring['across'],
  bore: number,
  reading: number,
  measured: number,
): Missing => {
  const missing = across.middle - measured
  if (measured > across.most + 1e-9) return { says: 'too deep', missing, reading }
  if (measured <= bore + 1e-9) return { says: 'the bore itself', missing, reading }
  if (measured >= across.least - 1e-9) return { says: 'good', missing, reading }
  const wanted = downTo(reading + missing * plan.missingOnDial, plan.dial.mark)
  return { says: 'add', missing, reading: Math.max(reading, wanted) }
}

/** Readings of the dial at the first corner's mark and at the second's: how far to move the bit toward the second mark, or that it is good. */
export const centred = (
  centring: Centring,
  first: number,
  second: number,
): { readonly good: boolean; readonly difference: number; readonly move: number } => {
  const difference = Math.abs(second - first)
  return {
    good: difference <= centring.differenceMost + 1e-9,
    difference,
    move: difference * centring.factorOfReading,
  }
}
