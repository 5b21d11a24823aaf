import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { finishedBore } from './contour.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { offsetBasis, printStep, raisedFigure, trustBasis, trustOf } from './printing.ts'
import type { Section } from './types.ts'

/**
 * Printed go plug for a bore with splines or a socket, all of its keys or corners at once: it tries their angles too. It enters with a pilot that is
 * smaller all round, which stands on the printer's bed. Sizes are those of the finished print.
 */
export interface BorePlug {
  readonly diameter: number
  /** Splines: width of the keys, and their size over opposite keys (even counts), or from a key's top to the wall opposite. */
  readonly keyWidth?: number
  readonly overKeys?: number
  readonly across?: number
  /** Broken corners of the keys, and room at their feet, radius. */
  readonly keyCorner?: number
  readonly room?: number
  /** Sockets. */
  readonly acrossFlats?: number
  readonly length: number
  readonly pilot: { readonly length: number; readonly less: number }
  readonly handleDiameter: number
  readonly handleLength: number
  readonly offset: number
  readonly tolerance: number
  readonly marking: readonly string[]
}

/** For splines and sockets; undefined for the others. */
export const borePlugOf = (spec: Spec, section: Section): Reasoned<BorePlug> | undefined => {
  if (section.kind !== 'spline' && section.kind !== 'socket') return undefined
  const trust = trustOf(spec)
  const step = printStep(spec)
  const whole = either(spec.units, 1, 1 / 16)
  const { radius, notch, at } = finishedBore(section, 'least', {
    radius: -0.75 * trust,
    half: -0.75 * trust,
    floor: -0.75 * trust,
  })
  const diameter = roundDown(2 * radius, step)
  const keyWidth = notch.is === 'slot' ? roundDown(2 * notch.half, step) : 0
  const top = notch.is === 'slot' ? notch.floor : 0
  const corner = Math.max(section.cornerLimits?.upper ?? section.cornerRadius, 0.3)
  // `6x23x26`; what has spaces is too long for a handle.
  const named = section.spline?.designation ?? ''
  const designation = section.socket
    ? `${at.length} SIDES`
    : named.includes(' ')
      ? `${at.length} KEYS`
      : named.toUpperCase()
  return {
    sizes: {
      diameter,
      ...(notch.is === 'slot'
        ? {
            keyWidth,
            ...(at.length % 2 === 0
              ? { overKeys: roundDown(2 * top, step) }
              : { across: roundDown(diameter / 2 + top, step) }),
            keyCorner: Math.min(corner, keyWidth / 5),
            room: Math.min(0.4, keyWidth / 8, Math.max(0.1, (top - diameter / 2) / 3)),
          }
        : {}),
      ...(notch.is === 'vee' && { acrossFlats: roundDown(2 * notch.flat, step) }),
      length: roundUp(Math.min(Math.max(spec.bore.length * 0.75, 15), 30), whole),
      pilot: { length: either(spec.units, 3, 0.125), less: Math.max(0.5, spec.shop.printer.foot + 0.1) },
      handleDiameter: roundUp(Math.max(0.75 * diameter, either(spec.units, 12, 0.5)), whole),
      handleLength: either(spec.units, 30, 1.1875),
      offset: spec.shop.printer.outside,
      tolerance: trust,
      marking: ['GO', designation, raisedFigure(spec, section.bore.nominal)],
    },
    basis: {
      diameter: 'smallest bore less one and a half times what the print is trusted to',
      keyWidth: 'least slot width less one and a half times what the print is trusted to: all go in at once',
      overKeys: 'least size over the floors less one and a half times what the print is trusted to',
      across: 'least floor and bore less what the print is trusted to',
      keyCorner: 'clear of the slot’s corner radius',
      room: 'a nozzle’s width, less beside a slim or low key',
      acrossFlats: 'least across flats less one and a half times what the print is trusted to',
      length: 'enough to feel alignment, no longer than the bore needs',
      pilot: 'judgement: smaller all round by the printer’s foot and a little, half a millimetre at least',
      handleDiameter: 'judgement',
      handleLength: 'judgement',
      offset: offsetBasis(spec),
      tolerance: trustBasis(spec),
      marking: 'raised on its face',
    },
  }
}
