/** Where the dial is to end, and what the slot stands behind it on the way. N, mm. */
import { targetOf as floorOf } from '../dimensions/engaged.ts'
import type { Section } from '../dimensions/types.ts'
import type { Loads } from '../mechanics/loads.ts'
import { workMaterial } from '../standards/materials.ts'
import { type Dial, downTo, readingAt } from './dial.ts'
import type { Target } from './types.ts'

/** How the nose gives way: mm for each N of cutting force, and the force of a width and chip. */
export interface Yielding {
  readonly least: number
  readonly most: number
  readonly force: (engaged: number, chip: number) => number
  /** Left after spring passes. */
  readonly residual: { readonly least: number; readonly most: number }
  readonly springPasses: number
}

/** A light pass hardens what it rubs: austenitic stainless takes full cuts to size. Source: common practice, no source. */
export const hardensUnderLightCuts = (material: string): boolean => workMaterial(material)?.kienzle.group === 14

/** `wholeEdge` and `planned`: length of edge and infeed at which the loads were worked out. Undefined where the material's force is not known. */
export const yieldingOf = (
  loads: Loads | undefined,
  material: string,
  wholeEdge: number,
  planned: number,
): Yielding | undefined => {
  const exponent = workMaterial(material)?.kienzle.exponent
  if (!loads || exponent === undefined || !(loads.cuttingForce > 0)) return undefined
  return {
    least: loads.lag.least / loads.cuttingForce,
    most: loads.lag.most / loads.cuttingForce,
    force: (engaged, chip) =>
      loads.cuttingForce * (engaged / wholeEdge) * (Math.max(0, chip) / planned) ** (1 - exponent),
    residual: loads.residual,
    springPasses: loads.springPasses,
  }
}

/** Three to five spring passes are worth their time. Source: judgement. */
const springPassesPlanned = (worked: number): number => Math.min(5, Math.max(3, worked))

/**
 * One rule. Where the bar always gives way, spring passes run to no chip and the dial goes on by the least that they leave; where the cut
 * may draw the bar in, or spring passes would only harden the floor, the dial goes by what a full cut gives at its lower end.
 */
export const targetOf = (
  section: Section,
  dial: Dial,
  yielding: Yielding | undefined,
  material: string,
  full: { readonly force: number },
): Target => {
  // A slit runs out into air: there is no floor to spring down to.
  const springs =
    yielding !== undefined && yielding.least > 0 && !hardensUnderLightCuts(material) && section.kind !== 'slit'
  const lower = yielding === undefined || section.kind === 'slit' ? 0 : yielding.least * full.force
  const allowance = springs ? yielding.residual.least : lower
  const x = floorOf(section) + allowance
  return {
    rule: springs ? 'spring passes to no chip' : 'full cuts to size',
    x,
    infeed: x - dial.zero,
    allowance,
    reading: downTo(readingAt(dial, x), dial.mark),
    springPasses: springs ? springPassesPlanned(yielding.springPasses) : 0,
  }
}
