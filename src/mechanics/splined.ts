/** Torque of splines and sockets by pressure on their flanks. N mm, mm, N/mm². */
import { wallTorque } from './key.ts'

export interface SplinedJoint {
  readonly count: number
  readonly boreRadius: number
  readonly majorRadius: number
  /** Chamfers that bear nothing, top and root together. */
  readonly chamfers: number
  readonly length: number
  /** Share of the splines that carry alike. */
  readonly sharing: number
}

/** Pressure × count × bearing height × mean radius × length × sharing. Source: SAE J499, with 1000 psi and full sharing. */
export const splineTorque = (joint: SplinedJoint, pressure: number): number =>
  pressure *
  joint.count *
  Math.max(0, joint.majorRadius - joint.boreRadius - joint.chamfers) *
  ((joint.majorRadius + joint.boreRadius) / 2) *
  joint.length *
  joint.sharing

export interface SocketJoint {
  readonly sides: number
  /** Across flats. */
  readonly across: number
  readonly boreRadius: number
  /** Taken off the mating corner, along the flat. */
  readonly relief: number
  readonly length: number
  readonly sharing: number
}

/** One half of each flat bears, from where the bore leaves it to its corner. */
export const socketTorque = (joint: SocketJoint, pressure: number): number => {
  const half = joint.across / 2
  const from = Math.sqrt(Math.max(0, joint.boreRadius ** 2 - half ** 2))
  const to = half * Math.tan(Math.PI / joint.sides) - joint.relief
  return joint.sharing * joint.sides * wallTorque(pressure, joint.length, from, to)
}
