/** Where bar, nose and slot stand at a moment of the cut, in the section's plane with the slot that is cut on +x. mm. */
import type { Design } from '../design.ts'
import type { BarSpec } from '../spec/spec.ts'
import type { BarInBore, CutterBar } from '../dimensions/types.ts'
import { mouthX } from '../dimensions/bore.ts'
import type { Point } from '../solid/outline.ts'
import { type Nose, noseOfBit, noseOfHead } from './bit.ts'
import type { Cut } from './contour.ts'
import { lagAt, noseAt, zeroOf } from './cut.ts'

/** A moment of the cut: drawn back from first touch, all done, or the dial at an infeed. */
export type Where =
  | 'withdrawn'
  | 'floor'
  | {
      /** By the dial from its nought, which is the first lane's first touch; mm. */
      readonly infeed: number
      readonly lane?: number
      readonly stage?: number
      /** Which of several features is being cut. */
      readonly keyway?: number
      /** How far the slot stands behind the dial; left out: as the loads tell. */
      readonly lag?: number
    }

export interface Gap {
  readonly length: number
  /** On the bar, then on the metal. */
  readonly span: readonly [Point, Point]
}

export interface Standing {
  readonly bar: BarInBore
  /** What carries the edge: bit or head. */
  readonly bit: Nose
  /** A bar with its bit; absent where both are one piece. */
  readonly cutter?: CutterBar
  readonly asked: BarSpec
  readonly keyway: number
  readonly lane: number
  readonly projection: number
  /** Nose flat, and where the dial says that it is. */
  readonly nose: number
  readonly dial: number
  /** By the dial from its nought. */
  readonly infeed: number
  readonly axis: Point
  /** Lanes of the slot as far as they are cut. */
  readonly cuts: readonly Cut[]
  readonly back: Gap
  /** Absent while the bar's middle lies behind the bore's. */
  readonly front?: Gap & { readonly at: 'mouth corner' | 'bore' | 'crown or floor' }
}

/** Behind the bar: along the line of centres where it leans back, else straight back. */
const behind = (radius: number, rho: number, [x, y]: Point): Gap => {
  const away = Math.hypot(x, y)
  if (x < 0 && away > 1e-9) {
    const [ux, uy] = [x / away, y / away]
    return {
      length: radius - rho - away,
      span: [
        [x + ux * rho, y + uy * rho],
        [ux * radius, uy * radius],
      ],
    }
  }
  const wall = -mouthX(radius, Math.abs(y))
  return {
    length: x - rho - wall,
    span: [
      [x - rho, y],
      [wall, y],
    ],
  }
}

/** Before the bar: the mouth's corner, the bore beside it, or what the nose stands against, whichever is nearest. */
const before = (
  radius: number,
  rho: number,
  [x, y]: Point,
  noseWidth: number,
  ahead: number,
): NonNullable<Standing['front']> | undefined => {
  if (x < 0) return undefined
  const side = y < 0 ? -1 : 1
  const halfOfSlot = Math.abs(y) + noseWidth / 2
  const corner: Point = [mouthX(radius, halfOfSlot), -side * halfOfSlot]
  const lower: Point = Math.abs(y) < 1e-9 ? corner : [corner[0], side * halfOfSlot]
  const towardsMouth = x * halfOfSlot >= Math.abs(y) * corner[0]
  const away = Math.hypot(x, y)
  const metal: Point = towardsMouth ? lower : [(x / away) * radius, (y / away) * radius]
  const reach = Math.hypot(metal[0] - x, metal[1] - y)
  const [ux, uy] = [(metal[0] - x) / reach, (metal[1] - y) / reach]
  const beside = {
    length: towardsMouth ? reach - rho : radius - rho - away,
    span: [[x + ux * rho, y + uy * rho], metal] as const,
    at: towardsMouth ? ('mouth corner' as const) : ('bore' as const),
  }
  const straight = Math.max(ahead, y === 0 ? radius : -Infinity) - x - rho
  return straight < beside.length
    ? {
        length: straight,
        span: [
          [x + rho, y],
          [x + rho + straight, y],
        ],
        at: 'crown or floor',
      }
    : beside
}

/** The bar of a job and what carries its edge, whichever way it is made. */
export const edgeOf = ({ bar, bit, groundBar }: Design): Pick<Standing, 'bar' | 'bit' | 'cutter'> | undefined => {
  if (bar && bit) return { bar, bit: noseOfBit(bar, bit), cutter: bar }
  return groundBar && { bar: groundBar, bit: noseOfHead(groundBar) }
}

/** Undefined for a job without a bar. */
export const standingOf = (design: Design, at: Where): Standing | undefined => {
  const { asked, section } = design
  const made = edgeOf(design)
  if (!made || !asked) return undefined
  const { bar, bit, cutter } = made
  const said = typeof at === 'object' ? at : undefined
  const last = bar.lanes.length - 1
  const lane = Math.min(Math.max(0, said?.lane ?? (at === 'floor' ? last : 0)), last)
  const { touchOff, offset } = bar.lanes[lane] ?? { touchOff: section.touchOff, offset: 0 }
  const zero = zeroOf(design)
  const dial = at === 'withdrawn' ? touchOff - asked.clearance.withdrawn : said ? zero + said.infeed : section.floor
  const infeed = dial - zero
  const lag = said ? (said.lag ?? lagAt(design, lane, infeed)) : 0
  const nose = dial - lag
  const stage =
    bar.stages[said?.stage ?? bar.stages.findIndex(({ to }) => dial <= to + 1e-6)] ??
    (infeed > 0 ? bar.stages.at(-1) : bar.stages[0])
  const projection = stage?.projection ?? bar.projection
  const rho = bar.diameter.nominal / 2
  const axis: Point = [nose - projection - rho, offset]
  const done = bar.lanes.slice(0, lane).map((_, index) => noseAt(bar, index, section.floor))
  const cuts = nose > touchOff + 1e-6 ? [...done, noseAt(bar, lane, nose)] : done
  const front = before(section.boreRadius, rho, axis, bar.noseWidth, nose)
  return {
    bar,
    bit,
    ...(cutter && { cutter }),
    asked,
    keyway: said?.keyway ?? 0,
    lane,
    projection,
    nose,
    dial,
    infeed,
    axis,
    cuts,
    back: behind(section.boreRadius, rho, axis),
    ...(front && { front }),
  }
}
