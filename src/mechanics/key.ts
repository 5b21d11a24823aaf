/** What a key carries. N, mm, N mm. */

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

const bearing = (pressure: number, length: number, from: number, to: number): number =>
  to > from ? (pressure * length * (to ** 2 - from ** 2)) / 2 : 0

/** Torque by uniform pressure on the hub's wall, arms from the axis. */
export const torqueBearingHub = (joint: KeyedJoint, pressure: number): number => {
  const mouth = Math.sqrt(joint.boreRadius ** 2 - (joint.width / 2) ** 2)
  const top = joint.shaftAcross - joint.shaft / 2 + joint.height
  return bearing(pressure, joint.length, mouth + joint.edgeBreak, Math.min(top - joint.chamfer, joint.floor))
}

/** Torque by uniform pressure on the shaft's wall. */
export const torqueBearingShaft = (joint: KeyedJoint, pressure: number): number => {
  const bottom = joint.shaftAcross - joint.shaft / 2
  const mouth = Math.sqrt(joint.shaft ** 2 - joint.width ** 2) / 2
  return bearing(pressure, joint.length, bottom + joint.chamfer, mouth - joint.edgeBreak)
}
