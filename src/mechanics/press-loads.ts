import type { Basis, Reasoned } from '../dimensions/basis.ts'
import type { GuideBushing, Section } from '../dimensions/types.ts'
import type { Broach, Spec } from '../spec/spec.ts'
import { workMaterial } from '../standards/materials.ts'
import { columnMargin, forceAlong, guideFriction } from './broaching.ts'
import { cuttingForce, thrustRatio } from './cutting.ts'
import { leverCapacity, longestHub, overError, ratedCapacity, spreadingStress } from './press.ts'

/** The press: force along the stroke, what the press gives, the broach as a column, the hub spread by it. N, mm, N/mm². */
export interface PressLoads {
  readonly force: number
  readonly teethInCut: number
  readonly capacity?: number
  readonly pull?: number
  readonly columnMargin?: number
  /** Force of each pass, N. */
  readonly passes: readonly number[]
  /** Of one tooth that takes its whole bite. */
  readonly tooth: number
  /** Longest hub that this press pushes the broach through; absent where it is not told what it gives. */
  readonly hubMost?: number
  /** What the broach spreads the hub with, upper end. */
  readonly spread: number
  /** Stress in the wall over the slot; absent where the hub's outside is not told. */
  readonly hubStress?: number
  readonly hubStressMost?: number
  /** How far the size over bushing, shims and last tooth may be wrong. */
  readonly overError: { readonly worst: number; readonly likely: number }
}

/** Face angle of a bought keyway broach where none is measured. Source: broach design tables, steel 10 to 18°. */
const usualFace = 10

/** Bushing wall, shims and tooth each read to half a thousandth of an inch, and seated to a fifth of one. Source: judgement. */
const readings = [0.0127, 0.0127, 0.0127, 0.00508]

/** A broach held at both ends by nothing but the work is pinned; with a ram that wobbles its upper end is free. Source: Euler’s cases. */
const endFactor = { guided: 1, loose: 2 } as const

export const pressLoadsOf = (
  spec: Spec,
  broach: Broach,
  bushing: GuideBushing,
  section: Section,
): Reasoned<PressLoads> | undefined => {
  const material = workMaterial(spec.hub.material)
  if (!material) return undefined
  const face = broach.faceAngle ?? usualFace
  const tooth = (width: number, bite: number) => cuttingForce(material.kienzle, width, bite, face, 'worn')
  const before = (pass: number) => bushing.shims.slice(0, pass).reduce((sum, shim) => sum + shim, 0)
  const strokes = bushing.passes.map(({ shims }) => ({
    broach,
    hub: spec.bore.length,
    radius: section.boreRadius,
    tipX: (height: number) => bushing.floorFromBore + height + before(shims),
    floorBefore: shims === 0 ? 0 : bushing.floorFromBore + broach.lastTooth + before(shims - 1),
    tooth,
  }))
  const along = strokes.map((stroke) => forceAlong(stroke))
  const passes = along.map((points) => Math.max(0, ...points.map(({ force }) => force)))
  const force = Math.max(0, ...passes)
  const { press } = spec.tooling
  const lever = press?.lever
  const ram = press?.ram ?? 'guided'
  const capacity = lever ? leverCapacity(lever) : press?.force === undefined ? undefined : ratedCapacity(press.force)
  const columns = strokes.map((stroke) => columnMargin(stroke, bushing.collarThickness, endFactor[ram]))
  const column = columns.every((margin) => margin !== undefined) ? Math.min(...columns) : undefined
  const one = guideFriction * tooth(broach.toothWidth, bushing.bite)
  const thrust = thrustRatio(face).most
  const { outside } = spec.hub
  const { strength } = material
  const most = strength?.yield !== undefined ? strength.yield / 1.5 : strength?.tensile && strength.tensile / 3
  return {
    sizes: {
      force,
      teethInCut: Math.max(0, ...along.flat().map(({ teeth }) => teeth)),
      ...(capacity !== undefined && { capacity, hubMost: longestHub(capacity, one, bushing.toothPitch) }),
      ...(lever && { pull: (lever.pull * force) / (capacity ?? force) }),
      ...(column !== undefined && { columnMargin: column }),
      passes,
      tooth: one,
      spread: thrust * force,
      ...(outside !== undefined && {
        hubStress: spreadingStress({
          force,
          thrust,
          width: section.width,
          hub: spec.bore.length,
          wall: outside / 2 - section.cornerReachMost,
        }),
      }),
      ...(most !== undefined && { hubStressMost: most }),
      overError: overError(readings),
    },
    get basis(): Basis<PressLoads> {
      return {
        force: `tooth by tooth${broach.heights ? ' as measured' : ''}, ${material.kienzle.material}, face angle ${face}°${broach.faceAngle === undefined ? ', not measured' : ''}, worn, 15 % for the guide`,
        teethInCut: 'most teeth in the bore at once',
        capacity: lever
          ? 'pull × lever over the pinion’s pitch radius × efficiency, used to the full'
          : '70 % of what the press is rated (Machinery’s Handbook)',
        pull: 'hand pull that the greatest force asks of this lever',
        columnMargin: `least buckling load over force along the stroke; ${ram === 'loose' ? 'upper end free, for the ram wobbles' : 'ends pinned'}, Euler or Johnson`,
        passes: 'greatest force of each pass',
        tooth: 'one full tooth at its whole bite',
        hubMost: 'as many full teeth as the press pushes, less their fraction, times the pitch',
        spread: 'thrust of the teeth against the floor, upper end of its band',
        hubStress:
          'a plate built in at its sides, as thin as over the slot’s corner: 6·(spread × width/8)/(length × wall²)',
        hubStressMost: strength?.yield === undefined ? 'a third of the tensile strength' : 'yield over 1.5',
        overError:
          'three readings of ±0.0127 mm (.0005 in) and seating ±0.005 mm (.0002 in): all one way, and as chances go',
      }
    },
  }
}
