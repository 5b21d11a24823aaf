import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundTo, roundUp } from './makeable.ts'
import { footBasis, offsetBasis, printStep, raisedFigure, trustBasis, trustOf } from './printing.ts'
import type { Section } from './types.ts'

/**
 * Flat go and no-go for the width of a slot, a long go blade on one end of a grip, a short no-go head on a waist on the other. Lengths from
 * the grip's shoulder on the go side. Sizes are those of the finished gauge; the printed model differs by `offset` all round.
 *
 *                      ┌──────────────────┐
 *      ┌───────────────┤                  ├──┐ ┌─────┐
 *      │ go            │ grip             │  └─┘     │ no go
 *      │               │                  │  ┌─┐     │
 *      └───────────────┤                  ├──┘ └─────┘
 *                      └──────────────────┘
 */
export interface WidthGauge {
  readonly go: number
  readonly noGo: number
  readonly goLength: number
  readonly gripLength: number
  readonly gripWidth: number
  /** Waist between grip and no-go head: how it is told apart. */
  readonly waistLength: number
  readonly waistWidth: number
  readonly noGoLength: number
  readonly thickness: number
  /** At the corners of the go end, × 45°. */
  readonly lead: number
  /** Along the edges that go down to the floor, × 45°: clear of its corner radius and of the printer's foot. */
  readonly edge: number
  /** Along the grip’s edge at the bed. */
  readonly foot: number
  readonly offset: number
  readonly tolerance: number
  /** Raised on the grip, go side and no-go side. */
  readonly marking: readonly [go: string, noGo: string]
}

/** Least slot that a gauge can be made for, mm: a thinner waist breaks. Source: judgement. */
const leastWidth = 1.5

/** Go and no-go blades for slots with straight sides; undefined for others, and for slots too narrow to print a gauge for. */
export const widthGaugeOf = (spec: Spec, section: Section): Reasoned<WidthGauge> | undefined => {
  if (section.kind === 'socket' || section.kind === 'groove') return undefined
  const { widthLimits, cornerLimits, cornerRadius } = section
  if (widthLimits.lower < leastWidth) return undefined
  const trust = trustOf(spec)
  const step = printStep(spec)
  const go = roundDown(widthLimits.lower - trust, step)
  const noGo = roundUp(widthLimits.upper + trust, step)
  const small = either(spec.units, 0.1, 0.01)
  const whole = either(spec.units, 1, 1 / 16)
  const thickness = roundTo(Math.min(Math.max(0.75 * go, 3), 6), either(spec.units, 0.5, 1 / 32))
  return {
    sizes: {
      go,
      noGo,
      goLength: roundUp(Math.min(Math.max(0.75 * spec.bore.length, 15), 30), whole),
      gripLength: either(spec.units, 44, 1.75),
      gripWidth: roundUp(Math.max(noGo + either(spec.units, 6, 0.25), either(spec.units, 16, 0.625)), whole),
      waistLength: either(spec.units, 3, 0.125),
      waistWidth: roundDown(0.7 * noGo, small),
      noGoLength: either(spec.units, 8, 0.3125),
      thickness,
      lead: roundDown(Math.min(1, go / 4), small),
      edge: Math.min(
        roundUp(Math.max(spec.shop.printer.foot, cornerLimits?.upper ?? cornerRadius, 0.3), small),
        roundDown(Math.min(thickness / 4, go / 5), small / 2),
      ),
      foot: spec.shop.printer.foot,
      offset: spec.shop.printer.outside,
      tolerance: trust,
      marking: [`GO ${raisedFigure(spec, go)}`, `NO GO ${raisedFigure(spec, noGo)}`],
    },
    basis: {
      go: 'least slot width less what the print is trusted to: it must enter',
      noGo: 'largest slot width and what the print is trusted to: it must not enter',
      goLength: 'enough to feel alignment, no longer than the bore needs',
      gripLength: 'judgement: room for both sizes raised on it',
      gripWidth: 'wider than the slot, so that it stops at the hub’s face',
      waistLength: 'judgement: seen and felt',
      waistWidth: 'seven tenths of the no-go head',
      noGoLength: 'judgement: short, so that it is not taken for the go end',
      thickness: 'three quarters of the width, 3 to 6 mm: it may stand out of the slot into the bore',
      lead: 'judgement',
      edge: 'clear of the floor’s corner radius and of the printer’s foot',
      foot: footBasis,
      offset: offsetBasis(spec),
      tolerance: trustBasis(spec),
      marking: 'raised on the grip beside each end',
    },
  }
}
