import type { Reasoned } from '../dimensions/basis.ts'
import type { Section } from '../dimensions/types.ts'
import type { Feature, Spec } from '../spec/spec.ts'
import { keyLengthLimit, type SplineUse, splinePressure, splineShare } from '../standards/allowable-stress.ts'
import { workMaterial } from '../standards/materials.ts'
import { allowed } from './key.ts'
import { socketTorque, splineTorque } from './splined.ts'

/** What splines or a socket carry. N mm, mm, N/mm². */
export interface JointLoads {
  readonly torque: number
  /** Allowed on the flanks. */
  readonly pressure: number
  /** Length that bears. */
  readonly length: number
}

/** Yield of a shaft that is not told, N/mm², and the safety on it. Source: E335, a table of EN materials; judgement. */
const usualShaft = { yield: 335 }
const safety = 2

/** What a fit is for: A permanent, B sliding idle, C sliding under load (SAE J499); others slide idle. */
const useOf = (feature: Feature): SplineUse =>
  feature.kind === 'spline' && feature.fit === 'A'
    ? 'fixed'
    : feature.kind === 'spline' && feature.fit === 'C'
      ? 'sliding under load'
      : 'sliding idle'

/** Chamfers of tooth and hub that bear nothing: half a millimetre in all, no more than a fifth of the height. Source: judgement. */
const chamfers = (height: number): number => Math.min(0.5, height / 5)

/** Splines by pressure on their flanks; a socket by half of each flat. `undefined` for other features. */
export const jointLoadsOf = (spec: Spec, section: Section): Reasoned<JointLoads> | undefined => {
  const { boreRadius, spline, socket } = section
  const length = Math.min(spec.bore.length, keyLengthLimit.value * spec.bore.diameter.nominal)
  if (spline) {
    const use = useOf(spec.feature)
    const row = splinePressure(use)
    if (!row) return undefined
    const height = spline.toothReach - boreRadius
    const torque = splineTorque(
      {
        count: spline.count,
        boreRadius,
        majorRadius: spline.toothReach,
        chamfers: chamfers(height),
        length,
        sharing: splineShare.value,
      },
      row.least,
    )
    return {
      sizes: { torque, pressure: row.least, length },
      basis: {
        torque: 'pressure on the flanks less their chamfers, three quarters of the splines bearing',
        pressure: `${use}, flanks not hardened, the careful end (${row.source})`,
        length: 'the hub’s length, no more than one and a half shafts',
      },
    }
  }
  if (!socket) return undefined
  const hub = workMaterial(spec.hub.material)?.strength
  const [hubBears, shaftBears] = [hub ?? {}, spec.shaft?.metal ?? usualShaft].map((metal) => allowed(metal, safety))
  if (hubBears === undefined || shaftBears === undefined) return undefined
  const pressure = Math.min(hubBears, shaftBears)
  const joint = {
    sides: socket.sides,
    across: socket.acrossFlats.nominal,
    boreRadius,
    relief: socket.matingRelief,
    length,
    sharing: splineShare.value,
  }
  return {
    sizes: { torque: socketTorque(joint, pressure), pressure, length },
    basis: {
      torque: 'half of each flat bears, from bore to corner less its relief; three quarters of the flats',
      pressure: `the softer of hub (${spec.hub.material}) and shaft (${spec.shaft?.metal?.name ?? 'E335 class, not told'}), twofold`,
      length: 'the hub’s length, no more than one and a half times the bore',
    },
  }
}
