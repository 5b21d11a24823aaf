/**
 * Form of the printed plugs, go and no-go: a plug with one key block, on a handle; drawings of it and the solid.
 *
 *        entering end, on the bed               across              x
 *         .─────────────────┐                 ┌────┬──             |
 *        /  key block       │ ─┬─           ┌─┴─ ─┤ key width     ─┴─
 *       ┌───────────────────┼──┴──────┐    /   |   \            y ──┼──
 *     ──│─ ─ ─ ─ ─ ─ ─ ─ ─ ─│─ ─ ─ ─ ─│── (─ ─ ┼ ─ ─) z            |
 *        \                  ├─────────┘    \       /
 *         `─────────────────┘  handle       `─────'
 *       z = 0
 *
 * Datum: axis of the plug, the key block on +x. It stands on its entering end to be printed, so that the profile lies in the bed plane and
 * the letters on top of the handle. The drawing says finished sizes; the solid is the model, which differs by what the printer adds.
 */
import type { PlugGauge } from '../src/dimensions/types.ts'
import type { Callout, Mark, View } from '../src/drawing/view.ts'
import { type Corner, mirrored, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { extrude, hull, join, type Point3, revolve, type Solid } from '../src/solid/solid.ts'
import { raised } from './printed.ts'
import { turned, turnedEdge } from './turned.ts'
import { coarse, degrees, most, plain, round, small } from './wording.ts'

/** A plug; the no-go's stands on a waist. */
export type Plug = PlugGauge & { readonly waistDiameter?: number; readonly waistLength?: number }

/** Radius that frees the sharp inner corners beside the key block, mm: a nozzle's width; less beside a slim block. Source: common practice, no source. */
export const relief = 0.4

/** Slope of the lead, degrees from the axis. Source: judgement; a print stands it. */
export const leadAngle = 15

/** Sizes that the plug's section follows from; finished, or those of the model. */
export interface PlugSection {
  readonly diameter: number
  readonly keyWidth: number
  readonly across: number
  /** Broken corners of the key block, clear of the slot's own corner radius. */
  readonly keyCorner: number
}

/** Section as finished, or with the printer's offset taken off all round; `corner` is the most that the slot's own corners are rounded. */
export const sectionOf = (plug: Plug, corner: number, offset = 0): PlugSection => ({
  diameter: plug.diameter - 2 * offset,
  keyWidth: plug.keyWidth - 2 * offset,
  across: plug.across - 2 * offset,
  keyCorner: Math.min(Math.max(corner, 0.3), plug.keyWidth / 5),
})

/** Where the key block's side meets the plug, the block's top, x from the axis; and the radius that frees the corner between them. */
const block = (
  section: PlugSection,
): { readonly half: number; readonly foot: number; readonly top: number; readonly freed: number } => {
  const { diameter, keyWidth, across, keyCorner } = section
  const half = keyWidth / 2
  const foot = Math.sqrt((diameter / 2) ** 2 - half ** 2)
  const top = across - diameter / 2
  return { half, foot, top, freed: Math.min(relief, keyWidth / 8, (top - foot - keyCorner) / 2) }
}

/** Plug and key block in one, in (x, y), counter-clockwise, both inner corners freed. */
export const contour = (section: PlugSection): Outline => {
  const radius = section.diameter / 2
  const { half, foot, top, freed } = block(section)
  const corner = section.keyCorner
  // The relief's circle meets the plug at this angle beyond the block's foot.
  const footAngle = Math.asin(half / radius)
  const leaves = footAngle + 2 * Math.asin(freed / (2 * radius))
  const on: Point = [radius * Math.cos(leaves), radius * Math.sin(leaves)]
  const towards = Math.atan2(on[1] - half, on[0] - foot)
  const back = Math.tan((Math.PI - leaves) / 4)
  const upper: readonly Corner[] = [
    { at: [top, half - corner] },
    { at: [top - corner, half] },
    { at: [foot + freed, half], bulge: -Math.tan((2 * Math.PI - towards) / 4) },
    { at: on },
  ]
  return [
    ...upper.slice(0, -1),
    { at: on, bulge: back },
    { at: [-radius, 0], bulge: back },
    ...mirrored(upper, 'y = 0'),
  ]
}

/** What foot and lead take off all round at the bed, and where each ends. */
const entering = ({ foot, lead }: Plug): readonly { readonly z: number; readonly less: number }[] => {
  const drop = lead * Math.tan((leadAngle * Math.PI) / 180)
  return [
    { z: 0, less: drop + foot },
    ...(foot > 0 ? [{ z: foot, less: drop }] : []),
    ...(lead > 0 ? [{ z: foot + lead, less: 0 }] : []),
  ]
}

/** Where the handle begins and ends, and what of it meets the plug. */
const grip = (plug: Plug, diameter: number) => {
  const from = plug.length + (plug.waistLength ?? 0)
  // A larger handle grows from a neck just under the plug, which stands proud all round.
  const neck = (plug.waistDiameter ?? Math.min(plug.handleDiameter, 0.94 * diameter)) / 2
  return { from, neck, radius: plug.handleDiameter / 2, end: from + plug.handleLength }
}

/** Waist and handle as a half section in (radius, z) from the axis round to the axis, begun `inside` the plug; it grows at 45° where it is the larger. */
const handle = (plug: Plug, diameter: number, inside = 0): Outline => {
  const { from, neck, radius, end } = grip(plug, diameter)
  return polygon([
    [0, plug.length - inside],
    [neck, plug.length - inside],
    ...(from > plug.length ? [[neck, from] as const] : []),
    ...(radius > neck ? [[radius, from + radius - neck] as const] : []),
    [radius, end],
    [0, end],
  ])
}

/** Capitals that fit the handle's end, one line under the other. */
const marking = (plug: Plug, top: number): readonly Solid[] => {
  const { marking: lines, handleDiameter } = plug
  const longest = Math.max(1, ...lines.map((line) => line.length))
  const room = 0.8 * handleDiameter
  const height = Math.min(room / (1.6 * lines.length), room / longest)
  return lines.map((text, index) =>
    raised(text, [0, ((lines.length - 1) / 2 - index) * 1.5 * height], Infinity, height, top),
  )
}

/** A hair by which edges are kept from meeting, mm: where they do, the mesh is left with slivers. */
const hair = 0.02

/** The model of a plug, its section already less the printer's offset: the contour drawn out, on a cone and a wedge that foot and lead narrow. */
export const plugSolid = (plug: Plug, section: PlugSection): Solid => {
  const radius = section.diameter / 2
  const { half, top } = block(section)
  const steps = entering(plug)
  const straight = steps.at(-1)?.z ?? 0
  // Both go a little into the straight part, narrower there than the room in its inner corners.
  const inside = Math.min(0.5, half / 2, (plug.length - straight) / 2)
  const levels = (off: number): readonly { readonly z: number; readonly less: number }[] => [
    ...steps.slice(0, -1).map(({ z, less }, index) => (index === 0 ? { z, less } : { z: z + off, less })),
    { z: straight + hair + off, less: hair },
    { z: straight + inside + off, less: inside },
  ]
  const round = levels(0)
  const high = round.at(-1)?.z ?? 0
  const key = hull(
    levels(hair / 2).flatMap(({ z, less }) =>
      [1, -1].flatMap((side): Point3[] => [
        [-radius / 7, side * (half - less), z],
        [top - section.keyCorner - less, side * (half - less), z],
        [top - less, side * (half - section.keyCorner - less / 2), z],
      ]),
    ),
  )
  return join(
    ...(steps.length > 1
      ? [revolve(polygon([[0, 0], ...round.map(({ z, less }): Point => [radius - less, z]), [0, high]])), key]
      : []),
    extrude(contour(section), straight, plug.length),
    revolve(handle(plug, section.diameter, 1)),
    ...marking(plug, grip(plug, section.diameter).end),
  )
}

/** Axis level, entering end left, key block up: view (x, y) = (z, x). */
export const plugFront = (plug: Plug, section: PlugSection): View => {
  const radius = plug.diameter / 2
  const { top, foot } = block(section)
  const steps = entering(plug)
  const { from, neck, end } = grip(plug, plug.diameter)
  const outline: Outline = polygon([
    ...steps.map(({ z, less }): Point => [z, less - radius]),
    [plug.length, -radius],
    [plug.length, top],
    ...steps.toReversed().map(({ z, less }): Point => [z, top - less]),
  ])
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline },
    { mark: 'outline', kind: 'visible', outline: turned(handle(plug, plug.diameter)) },
    ...steps
      .slice(1)
      .map(({ z, less }): Mark => ({ mark: 'line', kind: 'visible', from: [z, less - radius], to: [z, top - less] })),
    { mark: 'line', kind: 'visible', from: [plug.foot + plug.lead, foot], to: [plug.length, foot] },
    ...(from > plug.length ? turnedEdge(from, neck) : []),
    ...(plug.handleDiameter > 2 * neck
      ? turnedEdge(from + plug.handleDiameter / 2 - neck, plug.handleDiameter / 2)
      : []),
    { mark: 'line', kind: 'centre', from: [0, 0], to: [end, 0] },
  ]
  const along = (
    of: string,
    a: number,
    b: number,
    fromA: number,
    fromB: number,
    value: number,
    chain?: string,
  ): Callout => ({
    callout: 'linear',
    of,
    worth: plain(value),
    axis: 'x',
    a,
    b,
    fromA,
    fromB,
    side: 'bottom',
    ...(chain ? { chain } : {}),
  })
  const last = steps[0]?.less ?? 0
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: [
      { x1: 0, y1: -radius, x2: plug.length, y2: top },
      ...(from > plug.length ? [{ x1: plug.length, y1: -neck, x2: from, y2: neck }] : []),
      { x1: from, y1: -plug.handleDiameter / 2, x2: end, y2: plug.handleDiameter / 2 },
    ],
    callouts: [
      along('length', 0, plug.length, last - radius, -radius, plug.length),
      ...(plug.waistLength && plug.waistDiameter
        ? [
            along('waistLength', plug.length, from, -radius, -neck, plug.waistLength, 'length'),
            {
              callout: 'leader',
              of: 'waistDiameter',
              tips: [1, -1].map((side) => ({ at: [(plug.length + from) / 2, side * neck], out: [0.4, side] })),
              lines: [[round(plug.waistDiameter), ' waist']],
            } satisfies Callout,
          ]
        : []),
      along(
        'handleLength',
        from,
        end,
        from > plug.length ? -neck : -radius,
        -plug.handleDiameter / 2,
        plug.handleLength,
        'length',
      ),
      {
        callout: 'linear',
        of: 'handleDiameter',
        worth: round(plug.handleDiameter),
        axis: 'y',
        a: -plug.handleDiameter / 2,
        b: plug.handleDiameter / 2,
        fromA: end,
        fromB: end,
        side: 'right',
      },
      ...(plug.lead > 0
        ? [
            {
              callout: 'leader',
              of: 'lead',
              tips: [
                { at: [plug.foot + plug.lead / 2, top - (steps[1]?.less ?? 0) / 2], out: [-0.3, 1] },
                { at: [plug.foot + plug.lead / 2, (steps[1]?.less ?? 0) / 2 - radius], out: [-0.3, -1] },
              ],
              lines: [[small(plug.lead), ' × ', degrees(leadAngle)], ['lead']],
            } satisfies Callout,
          ]
        : []),
      {
        callout: 'leader',
        of: 'foot',
        tips: [
          { at: [plug.foot / 2, top - (last + (steps[1]?.less ?? 0)) / 2], out: [-1, 1] },
          { at: [plug.foot / 2, (last + (steps[1]?.less ?? 0)) / 2 - radius], out: [-1, -1] },
        ],
        lines: [[small(plug.foot), ' × ', degrees(45)], ['at the bed']],
      },
    ],
  }
}

/** Seen from the entering end, key block up: view (x, y) = (y, x). The edges that foot and lead break are left to the front view. */
export const plugEnd = (plug: Plug, finished: PlugSection): View => {
  const radius = plug.diameter / 2
  const { half, foot, top, freed } = block(finished)
  const outline: Outline = contour(finished).map(({ at: [x, y], bulge = 0 }) => ({ at: [y, x], bulge: -bulge }))
  const corner = finished.keyCorner
  return {
    name: 'entering end',
    place: { is: 'seen', from: 'left' },
    marks: [
      { mark: 'outline', kind: 'visible', outline },
      { mark: 'centreMark', centre: [0, 0], radius },
    ],
    metal: [
      { x1: -radius, y1: -radius, x2: radius, y2: foot },
      { x1: -half, y1: foot, x2: half, y2: top },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'keyWidth',
        worth: coarse(plug.keyWidth),
        axis: 'x',
        a: -half,
        b: half,
        fromA: top - corner,
        fromB: top - corner,
        side: 'top',
      },
      {
        callout: 'linear',
        of: 'across',
        worth: coarse(plug.across),
        axis: 'y',
        a: -radius,
        b: top,
        fromA: 0,
        fromB: half - corner,
        side: 'right',
      },
      {
        callout: 'leader',
        of: 'diameter',
        tips: [205, 225, 245, 295, 315, 335].map((angle) => {
          const out: Point = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
          return { at: [radius * out[0], radius * out[1]], out }
        }),
        lines: [[coarse(plug.diameter, { prefix: 'Ø' })]],
      },
      {
        callout: 'leader',
        of: 'relief',
        tips: [1, -1].map((side) => ({ at: [side * (half + freed), foot], out: [side, 1] })),
        lines: [[most(freed, { prefix: 'R', suffix: 'both' })]],
        small: true,
      },
      {
        callout: 'leader',
        of: 'keyCorner',
        tips: [1, -1].map((side) => ({ at: [side * (half - corner / 2), top - corner / 2], out: [side, 1] })),
        lines: [[small(corner), ' × ', degrees(45), ' both']],
        small: true,
      },
    ],
  }
}
