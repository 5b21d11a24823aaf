/** What a key carries. N, mm, N mm. */
import { keyLengthLimit } from '../standards/allowable-stress.ts'

export interface KeyedJoint {
  readonly shaft: number
  readonly width: number
  readonly height: number
  /** Shaft keyseat floor to the opposite side of the shaft. */
  readonly shaftAcross: number
  readonly boreRadius: number
  /** x of the hub slot's floor. */
  readonly floor: number
  /** Length that bears. */
  readonly length: number
  readonly chamfer: number
  readonly edgeBreak: number
}

/** Torque at which the key shears, N mm. `stress` allowed in shear. */
export const torqueShear = (joint: KeyedJoint, stress: number): number =>
  stress * joint.width * joint.length * (joint.shaft / 2)

/** Torque of a uniform pressure on a wall that reaches from one distance of the axis to another: arms exact, N mm. */
export const wallTorque = (pressure: number, length: number, from: number, to: number): number =>
  to > from ? (pressure * length * (to ** 2 - from ** 2)) / 2 : 0

/** Torque by uniform pressure on the hub's wall, arms from the axis. */
export const torqueBearingHub = (joint: KeyedJoint, pressure: number): number => {
  const mouth = Math.sqrt(joint.boreRadius ** 2 - (joint.width / 2) ** 2)
  const top = joint.shaftAcross - joint.shaft / 2 + joint.height
  return wallTorque(pressure, joint.length, mouth + joint.edgeBreak, Math.min(top - joint.chamfer, joint.floor))
}

/** Torque by uniform pressure on the shaft's wall. */
export const torqueBearingShaft = (joint: KeyedJoint, pressure: number): number => {
  const bottom = joint.shaftAcross - joint.shaft / 2
  const mouth = Math.sqrt(joint.shaft ** 2 - joint.width ** 2) / 2
  return wallTorque(pressure, joint.length, bottom + joint.chamfer, mouth - joint.edgeBreak)
}

/** Length of a key that bears on its sides: its own or the hub's, the shorter, less its round ends, no more than so many shafts. Source: Shigley, for the longest. */
export const bearingLength = (sizes: {
  readonly hub: number
  readonly key?: number
  readonly width: number
  readonly ends: 'square' | 'round'
  readonly shaft: number
}): number => {
  const within = Math.min(sizes.hub, sizes.key ?? sizes.hub)
  // A key longer than its hub has its round ends outside.
  const beyond = Math.max(0, (sizes.key ?? sizes.hub) - sizes.hub)
  const flat = sizes.ends === 'round' ? within - Math.max(0, sizes.width - beyond) : within
  return Math.max(0, Math.min(flat, keyLengthLimit.value * sizes.shaft))
}

/** Yield over safety; a metal without yield, as grey iron, a third of its tensile strength. Source: textbooks; judgement. N/mm². */
export const allowed = (
  metal: { readonly yield?: number; readonly tensile?: number },
  safety: number,
): number | undefined =>
  metal.yield !== undefined ? metal.yield / safety : metal.tensile === undefined ? undefined : metal.tensile / 3
