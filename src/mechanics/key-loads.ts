import type { Basis, Reasoned } from '../dimensions/basis.ts'
import { classed } from '../dimensions/section.ts'
import type { Section } from '../dimensions/types.ts'
import { middle, type Size } from '../fits/size.ts'
import type { Metal, Spec } from '../spec/spec.ts'
import { shaftLeftByKeyway, shearYield, twoKeysShare } from '../standards/allowable-stress.ts'
import { asmeLeadLimit, asmeOffsetLimit } from '../standards/asme-b17-1.ts'
import { workMaterial } from '../standards/materials.ts'
import { allowed, bearingLength, torqueBearingHub, torqueBearingShaft, torqueShear } from './key.ts'
import {
  engagement,
  lostToOffset,
  offsetWithin,
  playLimits,
  playOf,
  type TopClearances,
  topClearances,
} from './key-play.ts'

/** What the key carries at its allowed stresses, and the play that it has. N mm; mm. */
export interface KeyLoads {
  readonly torqueShear: number
  readonly torqueBearingHub: number
  readonly torqueBearingShaft: number
  /** The least of the three, of all keys together. */
  readonly torque: number
  /** Of the three, the one that counts. */
  readonly weakest: 'shear' | 'hub' | 'shaft'
  /** Length that bears. */
  readonly length: number
  readonly hubWall?: number
  /** Parallel keys. */
  readonly topClearances?: TopClearances
  /** Play of the key in the hub's slot, at mid-tolerance and over its limits; absent where the key's width is not told. */
  readonly play?: number
  readonly playLimits?: readonly [least: number, most: number]
  /** Sideways offset of the slot that uses up all the play. */
  readonly offsetWithin?: number
  /** What each tenth of a millimetre of offset takes of it. */
  readonly lostToTenth: number
  /** Play that the offset and lead found have used up; absent where none was measured. */
  readonly lostAsFound?: number
  readonly offsetMost: number
  readonly leadMost: number
  /** Share of the shaft's strength in twist that its keyseat leaves. */
  readonly shaftLeft: number
}

/** Yield of key and shaft where nobody has said, N/mm², and the safety used. Source: E335, a table of EN materials; judgement. */
const usual: Metal = { name: 'E335', yield: 335 }
const safety = 2

/** Key chamfer and edge break where nobody has said, mm. Source: judgement. */
const usualChamfer = 0.3
const usualBreak = 0.2

const said = (metal: Metal | undefined): string =>
  metal === undefined ? 'E335 class, not told' : (metal.name ?? `yield ${Math.round(metal.yield ?? 0)} N/mm²`)

/** The shaft as told, else h7 of the bore. */
const shaftOf = (spec: Spec): Size => {
  const told = spec.shaft?.diameter
  if (told) return { nominal: (told[0] + told[1]) / 2, lower: told[0], upper: told[1] }
  return classed(spec.bore.diameter.nominal, 'h7')
}

export const keyLoadsOf = (spec: Spec, section: Section): Reasoned<KeyLoads> | undefined => {
  const { key } = section
  if (!key?.shaft || !key.height || spec.feature.kind !== 'keyway') return undefined
  const { key: told, found } = spec.feature
  const keyMetal = told?.metal ?? usual
  const shaftMetal = spec.shaft?.metal ?? usual
  const hubMetal = workMaterial(spec.hub.material)?.strength
  const [keyBears, shaftBears, hubBears] = [keyMetal, shaftMetal, hubMetal ?? {}].map((metal) => allowed(metal, safety))
  if (keyBears === undefined || shaftBears === undefined || hubBears === undefined) return undefined
  const shaft = spec.bore.diameter.nominal
  const joint = {
    shaft,
    width: key.nominalWidth,
    height: key.height.nominal,
    shaftAcross: key.shaft.across.nominal,
    boreRadius: section.boreRadius,
    floor: section.floor,
    length: bearingLength({
      hub: spec.bore.length,
      width: key.nominalWidth,
      ends: told?.ends ?? 'square',
      shaft,
      ...(told?.length !== undefined && { key: told.length }),
    }),
    chamfer: key.chamfer?.upper ?? usualChamfer,
    edgeBreak: spec.shaft?.edgeBreak ?? usualBreak,
  }
  const torques = {
    shear: torqueShear(joint, shearYield.distortionEnergy.value * keyBears),
    hub: torqueBearingHub({ ...joint, edgeBreak: usualBreak }, Math.min(keyBears, hubBears)),
    shaft: torqueBearingShaft(joint, Math.min(keyBears, shaftBears)),
  }
  const least = Math.min(torques.shear, torques.hub, torques.shaft)
  const weakest = (['shear', 'hub', 'shaft'] as const).find((each) => torques[each] === least) ?? 'shaft'
  const keys = section.at.length
  const engaged = engagement(section)
  const stack = {
    across: section.acrossLimits,
    shaftAcross: key.shaft.across,
    height: key.height,
    bore: section.bore,
    shaft: shaftOf(spec),
  }
  const play = key.width && playOf(section.widthLimits, key.width)
  const lead = found?.lead ?? 0
  return {
    sizes: {
      torqueShear: torques.shear,
      torqueBearingHub: torques.hub,
      torqueBearingShaft: torques.shaft,
      torque: least * (keys > 1 ? keys * twoKeysShare.value : 1),
      weakest,
      length: joint.length,
      ...(spec.hub.outside !== undefined && { hubWall: spec.hub.outside / 2 - section.cornerReach }),
      ...(!key.taper && { topClearances: topClearances(stack) }),
      ...(play !== undefined &&
        key.width && {
          play,
          playLimits: playLimits(section.widthLimits, key.width),
          offsetWithin: offsetWithin(engaged, play),
        }),
      lostToTenth: lostToOffset(engaged, 0.1),
      ...(found && { lostAsFound: lostToOffset(engaged, found.offset ?? 0) + lead }),
      offsetMost: asmeOffsetLimit,
      leadMost: asmeLeadLimit(spec.bore.length),
      shaftLeft: shaftLeftByKeyway(shaft, middle(key.shaft.width), key.shaft.depth),
    },
    get basis(): Basis<KeyLoads> {
      return {
        torqueShear: `key of ${said(told?.metal)}, ${safety}-fold, ${told?.ends ?? 'square'} ends, over ${Math.round(joint.length * 10) / 10} mm`,
        torqueBearingHub: `the softer of key and hub (${spec.hub.material}), true lever arms`,
        torqueBearingShaft: `the softer of key and shaft (${said(spec.shaft?.metal)}), true lever arms`,
        torque: keys > 1 ? `the least of them, three quarters of each of ${keys} keys` : 'the least of them',
        weakest: 'the least of them',
        length: 'hub or key, the shorter, less round ends, no more than one and a half shafts',
        hubWall: 'half the hub’s outside less the slot’s farthest corner',
        topClearances: `shaft in the middle, hub pushed down on the key, and the other way; shaft ${spec.shaft?.diameter ? 'as told' : 'h7, not told'}`,
        play: 'middle of the slot’s width less middle of the key’s',
        playLimits: 'worst corners of slot and key',
        offsetWithin: 'the play over the slope of the walls that touch: the hub turns as well as it can',
        lostToTenth: 'offset × (top − mouth) over their middle',
        lostAsFound: 'what the offset takes, and the lead whole',
        offsetMost: 'ASME B17.1: .010 in',
        leadMost: 'ASME B17.1: .002 in up to 4 in, .0005 an inch to 10 in',
        shaftLeft: 'Moore: 1 − 0.2·width − 1.1·depth, over the shaft',
      }
    },
  }
}
