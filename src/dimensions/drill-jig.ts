import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { offsetBasis, printStep, trustBasis, trustOf } from './printing.ts'
import type { CutterBar } from './types.ts'

/**
 * A block that holds a slim bar while its cross hole is drilled. The bar goes in from the front until it stands on the stop; a bush over the
 * axis leads the drill, a screw from above keeps the bar.
 *
 *           screw      bush
 *         ┌──┬─┬───────┬──┬────┐
 *         │  │ │       │  │    │
 *      ───┼──┘ └───────┘  └┐   │  bar
 *         │     z = 0 -->  │stop
 *      ───┼────────────────┘   │
 *         │            │  │    │
 *         └────────────┴──┴────┘
 *         front                  length
 */
export interface DrillJig {
  /** Where the bar goes. */
  readonly barHole: number
  readonly barDepth: number
  /** From the stop to the bush: hole centre to the bar’s end. */
  readonly holeToStop: number
  readonly bush: { readonly outside: number; readonly bore: number; readonly length: number }
  /** Drill and chips go through below the bar. */
  readonly chipHole: number
  readonly clamp: { readonly thread: string; readonly tapDrill: number; readonly toFront: number }
  readonly length: number
  readonly width: number
  readonly height: number
  readonly offset: number
  readonly tolerance: number
}

/** The largest bar that is worth a jig: thicker ones lie steadily in a vee block. Source: judgement. */
const largestBar = (spec: Spec): number => either(spec.units, 12, 0.5)

/** A jig for slim bars whose cross hole stands square; undefined for others. */
export const drillJigOf = (spec: Spec, bar: CutterBar): Reasoned<DrillJig> | undefined => {
  if (bar.diameter.nominal > largestBar(spec) + 1e-9 || bar.incline !== 0) return undefined
  const trust = trustOf(spec)
  const step = printStep(spec)
  const small = either(spec.units, 0.5, 1 / 32)
  const whole = either(spec.units, 1, 1 / 16)
  // It stays short of the stop.
  const bushOutside = Math.min(
    roundUp(Math.max(1.5 * bar.crossHole.nominal, bar.crossHole.nominal + 3), small),
    roundDown(2 * bar.holeToEnd - 0.5, small),
  )
  const barHole = roundUp(bar.diameter.upper + trust, step)
  const clampAt = roundUp(1.5 * bar.screw.major, whole)
  const behind = roundUp(bar.holeToEnd + bushOutside / 2, whole)
  const barDepth = roundUp(behind + Math.max(bar.diameter.nominal, 8) + bar.screw.major / 2 + clampAt, whole)
  const height = roundUp(bar.diameter.nominal + either(spec.units, 16, 0.625), whole)
  return {
    sizes: {
      barHole,
      barDepth,
      holeToStop: bar.holeToEnd,
      bush: {
        outside: bushOutside,
        bore: bar.crossHole.nominal,
        // Its lower end stands a little off the bar, for chips.
        length: roundDown((height - barHole) / 2 - bar.crossHole.nominal / 8, small),
      },
      chipHole: roundUp(bar.crossHole.nominal + 1, small),
      clamp: { thread: bar.screw.thread, tapDrill: bar.screw.tapDrill.diameter, toFront: clampAt },
      length: barDepth + either(spec.units, 6, 0.25),
      width: roundUp(Math.max(2 * bar.diameter.nominal, bushOutside + 8), whole),
      height,
      offset: spec.shop.printer.inside,
      tolerance: trust,
    },
    basis: {
      barHole: 'the bar and what the print is trusted to',
      barDepth: 'the bar held over a diameter or 8 mm beyond bush and screw',
      holeToStop: 'the bar’s own hole centre to end',
      bush: 'the cross hole’s drill; a wall of a quarter of it, 1.5 mm at least',
      chipHole: 'clear of the drill',
      clamp: 'the bar’s own set screw: its tap is on hand',
      length: 'bar and a stop of 6 mm (1/4 in)',
      width: 'two bar diameters, or the bush and 8 mm',
      height: 'bar and 16 mm (5/8 in), the axis in the middle',
      offset: offsetBasis(spec),
      tolerance: trustBasis(spec),
    },
  }
}
