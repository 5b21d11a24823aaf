/** What hand and machine bring to the nose: N and mm. */
import type { KienzleRow } from '../standards/kienzle.ts'
import { secondMoment, steelModulus } from './bar.ts'
import { cuttingForce, type Edge } from './cutting.ts'

/**
 * Sideways stiffness of the machine alone, N/mm, from a pull on the nose with a spring balance, which reads bar and machine together
 * (`pull`, N/mm): 1/machine = 1/pull − L³/(3EI). `undefined` for a pull as stiff as the bar alone or stiffer: a bad reading.
 */
export const machineFromPull = (pull: number, diameter: number, overhang: number): number | undefined => {
  const bar = (3 * steelModulus * secondMoment(diameter)) / overhang ** 3
  return pull > 0 && pull < bar * (1 - 1e-9) ? 1 / (1 / pull - 1 / bar) : undefined
}

/** A handle or handwheel that drives quill or carriage through a rack. */
export interface Drive {
  /** Of the hand on the handle, mm. */
  readonly radius: number
  /** Of quill or carriage for one turn, mm. */
  readonly travel: number
  /** Share of the pull that arrives. */
  readonly efficiency: number
}

/** Newtons along the stroke for each newton at the handle: 2π·radius·efficiency over the travel of a turn. */
export const handGain = ({ radius, travel, efficiency }: Drive): number => (2 * Math.PI * radius * efficiency) / travel

/** A rack's tooth: N/mm², mm. `form` is Lewis's form factor. */
export interface RackTooth {
  readonly stress: number
  readonly width: number
  readonly module: number
  readonly form: number
}

/** What a rack's tooth bears, N: stress × face width × module × form factor. Source: Lewis's formula, textbooks. */
export const toothBears = ({ stress, width, module, form }: RackTooth): number => stress * width * module * form

/** Infeed at which an edge of `width` asks just this force, mm: the cutting force turned round. */
export const infeedForForce = (
  material: KienzleRow,
  width: number,
  force: number,
  { rake, edge }: { readonly rake: number; readonly edge: Edge },
): number => (force / cuttingForce(material, width, 1, rake, edge)) ** (1 / (1 - material.exponent))

/** Least bar that a sideways thrust bends by no more than `give` over its overhang, mm; bar alone. */
export const diameterForStiffness = (thrust: number, overhang: number, give: number): number =>
  ((64 * thrust * overhang ** 3) / (3 * Math.PI * steelModulus * give)) ** 0.25
