import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { footBasis, offsetBasis, printStep, raisedFigure, trustBasis, trustOf } from './printing.ts'
import type { BarInBore, Section } from './types.ts'

/**
 * Printed slices of the hub, to try things in before the hub is cut. The finished one is larger all round than any hub may be: shaft and key that
 * do not go into it go into no hub. The uncut one is smaller: a bar that passes it passes every hub. Sizes are those of the finished print.
 */
export interface HubRing {
  readonly finishedBore: number
  /** Of slots. */
  readonly slotWidth?: number
  /** Floor to opposite wall, where that is whole. */
  readonly across?: number
  /** Floor to opposite floor. */
  readonly overFloors?: number
  /** Axis to floor, where neither can be measured. */
  readonly floor?: number
  /** Sockets only. */
  readonly acrossFlats?: number
  /** Where a bar is to be tried. */
  readonly uncutBore?: number
  readonly outside: number
  readonly thickness: number
  /** Room in the corners for a key’s, radius. */
  readonly room: number
  readonly foot: number
  /** Of a printed hole, per side, and of a printed outside. */
  readonly offset: number
  readonly outsideOffset: number
  readonly tolerance: number
  /** Raised round the face of the finished one, and of the uncut one. */
  readonly marking: readonly [finished: string, uncut: string]
}

/** Least land between neighbouring features that a print keeps, mm. Source: judgement. */
const leastLand = 1

/** Slices for any feature with a floor; undefined for slits, which would cut a slice in pieces, and where a print would lose its lands. */
export const hubRingOf = (spec: Spec, section: Section, bar: BarInBore | undefined): Reasoned<HubRing> | undefined => {
  if (section.kind === 'slit' || section.kind === 'groove') return undefined
  if (section.land !== undefined && section.kind !== 'socket' && section.land < leastLand) return undefined
  const trust = trustOf(spec)
  const step = printStep(spec)
  const whole = either(spec.units, 1, 1 / 16)
  const finishedBore = roundUp(section.bore.upper + 1.5 * trust, step)
  const slotWidth = roundUp(section.widthLimits.upper + trust, step)
  const to = section.measurable?.[0]?.to ?? 'bore'
  const floorMost = section.floorLimits?.upper ?? section.acrossLimits.upper - section.bore.upper / 2
  const uncutBore = roundDown(section.bore.lower - trust, step)
  const wall = Math.max(either(spec.units, 8, 0.3125), 0.12 * section.bore.nominal)
  const nominal = raisedFigure(spec, section.bore.nominal)
  return {
    sizes: {
      finishedBore,
      ...(section.socket
        ? { acrossFlats: roundUp(section.socket.acrossFlats.upper + trust, step) }
        : {
            slotWidth,
            ...(to === 'bore'
              ? { across: roundUp(section.acrossLimits.upper + trust, step) }
              : to === 'floor'
                ? { overFloors: roundUp(2 * floorMost + trust, step) }
                : { floor: roundUp(floorMost + trust / 2, step) }),
          }),
      ...(bar && { uncutBore }),
      outside: roundUp(2 * (section.cornerReachMost + wall), whole),
      thickness: either(spec.units, 12, 0.5),
      room: Math.min(0.4, slotWidth / 8),
      foot: spec.shop.printer.foot,
      offset: spec.shop.printer.inside,
      outsideOffset: spec.shop.printer.outside,
      tolerance: trust,
      marking: [`FINISHED ${nominal}`, `UNCUT ${nominal}`],
    },
    basis: {
      finishedBore: 'largest bore and one and a half times what the print is trusted to',
      slotWidth: 'largest slot width and what the print is trusted to',
      across: 'largest across and what the print is trusted to',
      overFloors: 'largest size over the floors and what the print is trusted to',
      floor: 'largest floor and half of what the print is trusted to',
      acrossFlats: 'largest across flats and what the print is trusted to',
      uncutBore: 'smallest bore less what the print is trusted to: a bar that passes it passes the hub',
      outside: 'the slot’s farthest corner and a wall of 8 mm (5/16 in), an eighth of a large bore',
      thickness: 'judgement: a bar’s nose and a hand’s hold',
      room: 'a nozzle’s width, less in a narrow slot',
      foot: footBasis,
      offset: offsetBasis(spec),
      outsideOffset: offsetBasis(spec),
      tolerance: trustBasis(spec),
      marking: 'raised round its face',
    },
  }
}
