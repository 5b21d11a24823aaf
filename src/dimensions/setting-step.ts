import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundTo, roundUp } from './makeable.ts'
import { printStep, raisedFigure, trustBasis, trustOf } from './printing.ts'
import type { CutterBar } from './types.ts'

/**
 * A block with a step that sets the projection: its foot lies along the bar over the nose side, the bit is pushed out until it touches the step.
 *
 *      ┌───────────────────────┐  ─┬─
 *      │                       │   │ over
 *      │             ┌─────────┘  ─┴─┬─
 *      │  foot       │   step        │ steps[i]
 *      └─────────────┘              ─┴─   y = 0, on the bar
 *                    x = 0
 *
 * One block a stage; they differ in the step alone.
 */
export interface SettingStep {
  /** Projection of each stage, as it is to be set. */
  readonly steps: readonly number[]
  readonly footLength: number
  readonly stepLength: number
  /** Metal over the step. */
  readonly over: number
  readonly thickness: number
  /** Radius of the room in the inner corner. */
  readonly room: number
  /** Along the edge that lies on the bed. */
  readonly foot: number
  /** How near the step must come: the setting’s own tolerance, or what a print is trusted to if that is nearer. */
  readonly within: number
  /** What a print is trusted to. */
  readonly tolerance: number
  /** Printed higher by this, to be filed off the foot; 0 where the print is good enough as it is. */
  readonly allowance: number
  readonly marking: readonly string[]
}

export const settingStepOf = (spec: Spec, bar: CutterBar): Reasoned<SettingStep> => {
  const trust = trustOf(spec)
  const whole = either(spec.units, 1, 1 / 16)
  const within = Math.min(bar.setting, trust)
  const steps = bar.stages.map(({ projection }) => projection)
  return {
    sizes: {
      steps,
      footLength: roundUp(Math.max(2 * bar.diameter.nominal, either(spec.units, 25, 1)), whole),
      stepLength: roundUp(bar.holeToEnd + bar.crossHole.nominal / 2, whole),
      over: either(spec.units, 10, 0.375),
      thickness: roundUp(Math.min(Math.max(0.7 * bar.diameter.nominal, 6), 14), whole),
      room: either(spec.units, 0.6, 0.025),
      foot: spec.shop.printer.foot,
      within,
      tolerance: trust,
      allowance: trust > within + 1e-9 ? roundTo(trust, printStep(spec)) : 0,
      marking: steps.map((step, index) =>
        steps.length > 1 ? `${index + 1}: ${raisedFigure(spec, step)}` : raisedFigure(spec, step),
      ),
    },
    basis: {
      steps: 'the projection of each stage; both faces look the same way, so the printer’s offset does not alter it',
      footLength: 'two bar diameters: it lies steadily along the bar',
      stepLength: 'over the bit and as far as the bar’s end',
      over: 'judgement',
      thickness: 'seven tenths of the bar, 6 to 14 mm',
      room: 'judgement: the nose’s heel and a file’s corner',
      foot: 'the printer’s foot, from the shop file or a default',
      within: 'how near the projection must be set, or what a print is trusted to',
      tolerance: trustBasis(spec),
      allowance:
        'printed higher by what a print is trusted to, where that is coarser than the setting: the foot is filed to size',
      marking: 'raised on its side',
    },
  }
}
