/** What drives the bar: what the machine may push, and what the hand must pull. N, mm. */
import type { Basis, Reasoned } from '../dimensions/basis.ts'
import type { BarInBore } from '../dimensions/types.ts'
import type { BarSpec } from '../spec/spec.ts'
import type { WorkMaterial } from '../standards/materials.ts'
import { handGain, infeedForForce, machineFromPull, toothBears } from './machine.ts'

export interface Driven {
  /** The most that the machine may push along the bore. */
  readonly pushMost: number
  /** Infeed that asks just that of it, dull edge. */
  readonly infeedMost: number
  /** Pull on the handle that the cut asks, worn edge; absent where no handle is told. */
  readonly feedForceAtHandle?: number
}

/** Sideways stiffness of a machine that nobody has measured, N/mm. Source: judgement. */
const usualMachine = 5000

/** Thrust of the largest drill that a bench machine is sold to push; a knee mill’s is 2000. Source: judgement. */
const benchMachine = 1100

/** Lewis’s factor and stress of a rack tooth of unknown make. Source: textbooks; judgement. */
const rackTooth = { form: 0.3, stress: 150 }

/** Share of the pull that arrives. Source: judgement. */
const efficiency = 0.8

/** Sideways stiffness as given, or from a pull at the nose; the usual one where neither is told or the pull makes no sense. */
export const machineStiffness = (
  { give, pull }: BarSpec,
  bar: BarInBore,
): { readonly machine: number; readonly known: boolean } => {
  if (give !== undefined) return { machine: give, known: true }
  if (pull === undefined) return { machine: usualMachine, known: true }
  const machine = machineFromPull(pull, bar.diameter.nominal, bar.overhang)
  return { machine: machine ?? usualMachine, known: machine !== undefined }
}

export const drivenBy = (
  { thrust, rack, handle }: BarSpec,
  material: WorkMaterial,
  engaged: NonNullable<BarInBore['engaged']>,
  rake: number,
  cutting: number,
): Reasoned<Driven> => {
  const tooth = rack ? toothBears({ ...rack, ...rackTooth }) : Infinity
  const pushMost = Math.min(thrust ?? benchMachine, tooth)
  return {
    sizes: {
      pushMost,
      infeedMost: infeedForForce(material.kienzle, engaged.edge, pushMost, { rake, edge: 'dull' }) / engaged.chip,
      ...(handle && { feedForceAtHandle: cutting / handGain({ ...handle, efficiency }) }),
    },
    get basis(): Basis<Driven> {
      return {
        pushMost:
          tooth < (thrust ?? benchMachine)
            ? 'what a tooth of the rack bears: Lewis, 150 N/mm², form 0.3'
            : thrust === undefined
              ? 'not told: 1100 N, the thrust of the largest drill of a bench machine, judgement'
              : 'given for the machine',
        infeedMost: 'the cutting force turned round, dull edge, whole nose',
        feedForceAtHandle: 'cutting force, worn edge, over 2π·radius·0.8 a stroke of one turn',
      }
    },
  }
}
