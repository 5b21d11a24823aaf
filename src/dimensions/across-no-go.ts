import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { footBasis, offsetBasis, printStep, raisedFigure, trustBasis, trustOf } from './printing.ts'
import type { PlugGauge, Section } from './types.ts'

/**
 * Printed no-go for across: as the go plug, but short, on a waist, and slack in bore and width, so that nothing but across can stop it.
 * Sizes are those of the finished print.
 */
export interface AcrossNoGo extends PlugGauge {
  readonly waistDiameter: number
  readonly waistLength: number
}

/** The no-go for floor to opposite wall; undefined where there is no flat floor, or no whole wall opposite it. */
export const acrossNoGoOf = (spec: Spec, section: Section): Reasoned<AcrossNoGo> | undefined => {
  if (section.kind !== 'keyway' && section.kind !== 'spline') return undefined
  if ((section.measurable?.[0]?.to ?? 'bore') !== 'bore') return undefined
  const trust = trustOf(spec)
  const step = printStep(spec)
  const small = either(spec.units, 0.1, 0.005)
  const whole = either(spec.units, 1, 1 / 16)
  const keyWidth = roundDown(Math.max(section.widthLimits.lower - 4 * trust, 0.75 * section.widthLimits.lower), step)
  // Wider than its key, or the key would stand on nothing.
  const diameter = roundDown(Math.max(0.8 * section.bore.lower, 1.3 * keyWidth), small)
  const across = roundUp(section.acrossLimits.upper + trust, step)
  const handleDiameter = roundUp(Math.max(0.6 * section.bore.lower, either(spec.units, 12, 0.5)), whole)
  return {
    sizes: {
      diameter,
      keyWidth,
      across,
      length: either(spec.units, 8, 0.3125),
      waistDiameter: roundDown(Math.min(0.6 * diameter, 0.75 * handleDiameter), small),
      waistLength: either(spec.units, 4, 0.1875),
      handleDiameter,
      handleLength: either(spec.units, 26, 1),
      lead: 0,
      foot: spec.shop.printer.foot,
      offset: spec.shop.printer.outside,
      marking: ['NO GO', raisedFigure(spec, across)],
      tolerance: trust,
    },
    basis: {
      diameter: 'four fifths of the bore: slack, so that nothing but across stops it',
      keyWidth: 'under the least slot width by four times what the print is trusted to, at least three quarters of it',
      across: 'largest across and what the print is trusted to: it must not enter',
      length: 'judgement: short, so that it is not taken for the go plug',
      waistDiameter: 'three fifths of the plug, three quarters of the handle at most: seen and felt',
      waistLength: 'judgement',
      handleDiameter: 'judgement',
      handleLength: 'judgement',
      lead: 'none: it must not be led in',
      foot: footBasis,
      offset: offsetBasis(spec),
      marking: 'raised on its face',
      tolerance: trustBasis(spec),
    },
  }
}
