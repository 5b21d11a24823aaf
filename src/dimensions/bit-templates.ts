import type { Size } from '../fits/size.ts'
import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundDown, roundUp } from './makeable.ts'
import { footBasis, offsetBasis, trustBasis, trustOf } from './printing.ts'
import type { ToolBit } from './types.ts'

/**
 * A plate with a notch for every angle of the tool bit, to grind to against the light. Notches stand along its upper edge, `pitch` apart, the first
 * `first` from its left end, their vertices `depth` down, each freed by a hole. In the order in which the bit is ground:
 *
 *      side      end      plan (or V, or round)   wedge     width
 *     ─┐   ┌──┐    ┌──┐    ┌──┐    ┌──┐   ┌─      y
 *      └┐ ┌┘  └┐  ┌┘  └┐  ┌┘  └┐  ┌┘  │   │       │
 *       └o┘    └o─┘    └o─┘    └o─┘   └───┘       └── x
 *
 * Angles in degrees, lengths in mm.
 */
export interface BitTemplates {
  /** Top of the blank to a side of the nose. */
  readonly side: number
  /** Top of the blank to the end, before the face is ground. */
  readonly end: number
  /** Of a flat nose: its edge to a side, on the face. */
  readonly plan?: number
  /** Of a V: between its flanks, seen along the stroke. */
  readonly vee?: number
  /** Of a round nose. */
  readonly radius?: number
  /** Face to end, when all is ground. */
  readonly wedge: number
  /** The nose must enter here. */
  readonly width: number
  /** As it is filed or printed and dressed: no narrower, or the nose would be ground under its size to go in. */
  readonly widthLimits: Size
  readonly widthDepth: number
  readonly depth: number
  readonly pitch: number
  readonly first: number
  /** Diameter of the hole at each vertex. */
  readonly room: number
  readonly length: number
  readonly height: number
  readonly thickness: number
  readonly foot: number
  /** Of a printed hole, per side, and of a printed outside. */
  readonly offset: number
  readonly outsideOffset: number
  readonly tolerance: number
  /** Raised under the notches, in their order. */
  readonly marking: readonly string[]
}

/** What the width notch is over the nose’s upper limit: it slides, and does not shake. Source: judgement. */
const slides = (spec: Spec): number => either(spec.units, 0.03, 0.001)

/** A round’s notch goes straight up from the half circle by so much of its radius. */
export const roundRises = 0.5

const round = (angle: number): number => Math.round(angle * 10) / 10

/** The template of a bit; its angles are those as ground. */
export const bitTemplatesOf = (spec: Spec, bit: ToolBit): Reasoned<BitTemplates> => {
  const whole = either(spec.units, 1, 1 / 16)
  const half = either(spec.units, 0.5, 1 / 32)
  const [side, end] = [90 - bit.sideRelief, 90 - bit.endRelief]
  const wedge = 90 - bit.rake - bit.endRelief
  const plan = bit.form === undefined ? round(90 - bit.backTaperEffective) : undefined
  const vee = bit.includedAngle
  const radius = bit.form === 'round' ? bit.tipRadius : undefined
  const width = roundUp(bit.noseWidth.upper + slides(spec), either(spec.units, 0.01, 0.0005))
  const angles = [side, end, wedge, ...(plan === undefined ? [] : [plan]), ...(vee === undefined ? [] : [vee])]
  const depth = roundUp(Math.max(0.7 * bit.size, bit.flankLength ?? 0, either(spec.units, 6, 0.25)) + half, half)
  const widest = Math.max(
    ...angles.map((angle) => 2 * depth * Math.tan((angle * Math.PI) / 360)),
    width,
    2 * (radius ?? 0),
  )
  const pitch = roundUp(widest + either(spec.units, 4, 0.15), whole)
  const first = roundUp(widest / 2 + either(spec.units, 4, 0.15), half)
  const letters = ['A', 'B', 'C', 'D', 'E'] as const
  return {
    sizes: {
      side,
      end,
      ...(plan !== undefined && { plan }),
      ...(vee !== undefined && { vee }),
      ...(radius !== undefined && { radius }),
      wedge,
      width,
      widthLimits: { nominal: width, lower: width, upper: width + either(spec.units, 0.05, 0.002) },
      widthDepth: Math.min(depth, roundDown(Math.max(bit.noseLength, half), half)),
      depth,
      pitch,
      first,
      room: either(spec.units, 1.5, 1 / 16),
      length: 2 * first + 4 * pitch,
      height: depth + either(spec.units, 9, 0.375),
      thickness: either(spec.units, 2, 1 / 16),
      foot: spec.shop.printer.foot,
      offset: spec.shop.printer.inside,
      outsideOffset: spec.shop.printer.outside,
      tolerance: trustOf(spec),
      marking: letters,
    },
    basis: {
      side: '90° less the side relief',
      end: '90° less the end relief, as ground',
      plan: '90° less the taper that the raked face shows, to a tenth',
      vee: 'the angle between two flats',
      radius: 'the nose’s own',
      wedge: '90° less rake and end relief, as ground: it does not alter however the bit leans',
      width: 'the nose’s upper limit, and 0.03 mm (.001 in) to slide in',
      widthLimits:
        'never under, or it stops a nose that is right; 0.05 mm (.002 in) over: judgement, what a file holds to a gauge block',
      widthDepth: 'the nose, short of its shoulder',
      depth: 'seven tenths of the blank, a V’s whole flank, 6 mm at the least',
      pitch: 'the widest notch and 4 mm',
      first: 'half the widest notch and 4 mm',
      room: 'common practice, no source: no vertex can be filed sharp',
      length: 'five notches',
      height: 'room for letters',
      thickness: 'judgement: thick enough to stand, thin enough to see light by',
      foot: footBasis,
      offset: offsetBasis(spec),
      outsideOffset: offsetBasis(spec),
      tolerance: trustBasis(spec),
      marking: 'in the order of grinding',
    },
  }
}
