import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { footBasis, offsetBasis, printStep, trustBasis, trustOf } from './printing.ts'
import type { PlugGauge, Section } from './types.ts'

/** Whether one plug with one flat-topped key goes into this: a V, a round groove and a slit that is open outwards are none of its slots. */
export const takesPlug = ({ kind }: Section): boolean => kind === 'keyway' || kind === 'spline'

/** The printed go plug for the finished bore and keyway: under every least size by what a print can be trusted to. */
export const plugGaugeOf = (spec: Spec, section: Section): Reasoned<PlugGauge> => {
  const { printer } = spec.shop
  const step = printStep(spec)
  const trust = trustOf(spec)
  const diameter = roundDown(section.bore.lower - 1.5 * trust, step)
  // Its key has no taper: it goes by the end at which a tapered keyway is shallow.
  const tapered = section.key?.taper !== undefined
  const across = roundDown((section.key?.taper?.acrossShallow ?? section.acrossLimits).lower - trust, step)
  const length = roundUp(Math.min(Math.max(spec.bore.length * 0.75, 15), 30), either(spec.units, 1, 1 / 16))
  return {
    sizes: {
      diameter,
      keyWidth: roundDown(section.widthLimits.lower - trust, step),
      across,
      length,
      handleDiameter: roundUp(Math.max(0.75 * diameter, either(spec.units, 12, 0.5)), either(spec.units, 1, 1 / 16)),
      handleLength: either(spec.units, 30, 1.1875),
      lead: Math.min(1.5, diameter / 8),
      foot: printer.foot,
      offset: printer.outside,
      marking: [
        'GO',
        keyMark(spec, section),
        spec.units === 'mm' ? `${Math.round(section.bore.nominal * 1000) / 1000}` : inchMark(section.bore.nominal),
      ],
      tolerance: trust,
    },
    basis: {
      diameter: 'smallest bore less one and a half times what the print is trusted to',
      keyWidth: 'least slot width less what the print is trusted to',
      across: `least across${tapered ? ' at the shallow end' : ''} less what the print is trusted to`,
      length: 'enough to feel alignment, no longer than the bore needs',
      handleDiameter: 'judgement',
      handleLength: 'judgement',
      lead: 'judgement',
      foot: footBasis,
      offset: offsetBasis(spec),
      marking: 'raised on its face',
      tolerance: trustBasis(spec),
    },
  }
}

/** The key's name; one given by hand is called by its width. */
const keyMark = (spec: Spec, section: Section): string => {
  const { designation, nominalWidth, source } = section.key ?? {
    designation: section.kind,
    nominalWidth: section.width,
    source: 'the spec',
  }
  if (source !== 'the spec') return designation.replaceAll('×', 'x')
  return `${spec.units === 'mm' ? Math.round(nominalWidth * 1000) / 1000 : inchMark(nominalWidth)} wide`
}

const inchMark = (mm: number): string => `${Math.round((mm / 25.4) * 1e4 + 1e-6) / 1e4}`
