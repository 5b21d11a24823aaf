/**
 * Printed go plug for the finished bore and keyway, with a handle.
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
import type { Design } from '../src/design.ts'
import type { PlugGauge } from '../src/dimensions/types.ts'
import type { AsMadeRow, Callout, Drawing, Mark, Notes, View, Wording } from '../src/drawing/view.ts'
import { type Corner, mirrored, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { bore, cut, extrude, hull, join, letters, type Point3, revolve, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { turned, turnedEdge } from './turned.ts'
import { byCaliper, coarse, degrees, fine, jobLine, most, plain, round, small } from './wording.ts'

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

/** Section as finished, or with the printer's offset taken off all round. */
export const plugSection = ({ plug, section }: Design, offset = 0): PlugSection => ({
  diameter: plug.diameter - 2 * offset,
  keyWidth: plug.keyWidth - 2 * offset,
  across: plug.across - 2 * offset,
  keyCorner: Math.min(Math.max(section.cornerLimits?.upper ?? section.cornerRadius, 0.3), plug.keyWidth / 5),
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
const entering = ({ foot, lead }: PlugGauge): readonly { readonly z: number; readonly less: number }[] => {
  const drop = lead * Math.tan((leadAngle * Math.PI) / 180)
  return [
    { z: 0, less: drop + foot },
    { z: foot, less: drop },
    { z: foot + lead, less: 0 },
  ]
}

/** The handle's half section in (radius, z) from the axis round to the axis; it grows from the plug at 45° where it is the larger. */
const handle = (gauge: PlugGauge, diameter: number): Outline => {
  const radius = gauge.handleDiameter / 2
  const neck = Math.min(radius, diameter / 2)
  const end = gauge.length + gauge.handleLength
  return polygon([
    [0, gauge.length],
    [neck, gauge.length],
    ...(radius > neck ? [[radius, gauge.length + radius - neck] as const] : []),
    [radius, end],
    [0, end],
  ])
}

/** How far the letters stand up, mm. */
const proud = 0.6

/** Capitals that fit the handle's end, one line under the other. */
const marking = ({ marking: lines, handleDiameter, length, handleLength }: PlugGauge): readonly Solid[] => {
  const longest = Math.max(1, ...lines.map((line) => line.length))
  const room = 0.8 * handleDiameter
  const height = Math.min(room / (1.6 * lines.length), room / longest)
  const from = length + handleLength
  return lines.map((text, index) =>
    letters(text, {
      height,
      stroke: Math.max(0.16 * height, 0.4),
      at: [0, ((lines.length - 1) / 2 - index) * 1.5 * height],
      from: from - 0.2,
      to: from + proud,
    }),
  )
}

const solid = (design: Design): Solid => {
  const { plug } = design
  const section = plugSection(design, plug.offset)
  const radius = section.diameter / 2
  const { half, foot, top, freed } = block(section)
  const steps = entering(plug)
  const straight = plug.foot + plug.lead
  // Foot and lead go a little into the straight part, narrower there, so that the two are one body.
  const inside = Math.min(0.5, half / 2, (plug.length - straight) / 2)
  const all = [...steps, { z: straight + inside, less: inside }]
  const cone = revolve(
    polygon([[0, 0], ...all.map(({ z, less }): Point => [radius - less, z]), [0, straight + inside]]),
  )
  const key = hull(
    all.flatMap(({ z, less }) =>
      [1, -1].flatMap((side): Point3[] => [
        [0, side * (half - less), z],
        [top - section.keyCorner - less, side * (half - less), z],
        [top - less, side * (half - section.keyCorner - less / 2), z],
      ]),
    ),
  )
  const free = [1, -1].map((side) => bore('z', [foot, side * half, -1], 2 * freed, straight + inside + 1.5))
  const grip = handle(plug, section.diameter)
  const neck = Math.min(plug.handleDiameter, section.diameter) / 2
  const root = revolve(
    polygon([
      [0, plug.length - 1],
      [neck / 2, plug.length - 1],
      [neck / 2, plug.length + 1],
      [0, plug.length + 1],
    ]),
  )
  return join(
    cut(join(cone, key), ...free),
    extrude(contour(section), straight, plug.length),
    root,
    revolve(grip),
    ...marking(plug),
  )
}

/** Axis level, entering end left, key block up: view (x, y) = (z, x). */
const front = (design: Design): View => {
  const { plug } = design
  const section = plugSection(design)
  const radius = plug.diameter / 2
  const { top, foot } = block(section)
  const steps = entering(plug)
  const grip = handle(plug, plug.diameter)
  const end = plug.length + plug.handleLength
  const outline: Outline = polygon([
    ...steps.map(({ z, less }): Point => [z, less - radius]),
    [plug.length, -radius],
    [plug.length, top],
    ...steps.toReversed().map(({ z, less }): Point => [z, top - less]),
  ])
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline },
    { mark: 'outline', kind: 'visible', outline: turned(grip) },
    ...steps
      .slice(1)
      .map(({ z, less }): Mark => ({ mark: 'line', kind: 'visible', from: [z, less - radius], to: [z, top - less] })),
    { mark: 'line', kind: 'visible', from: [plug.foot + plug.lead, foot], to: [plug.length, foot] },
    ...(plug.handleDiameter > plug.diameter
      ? turnedEdge(plug.length + (plug.handleDiameter - plug.diameter) / 2, plug.handleDiameter / 2)
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
      { x1: plug.length, y1: -plug.handleDiameter / 2, x2: end, y2: plug.handleDiameter / 2 },
    ],
    callouts: [
      along('length', 0, plug.length, last - radius, -Math.max(radius, 0), plug.length),
      along(
        'handleLength',
        plug.length,
        end,
        -Math.max(radius, Math.min(radius, plug.handleDiameter / 2)),
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
      {
        callout: 'leader',
        of: 'lead',
        tips: [
          { at: [plug.foot + plug.lead / 2, top - (steps[1]?.less ?? 0) / 2], out: [-0.3, 1] },
          { at: [plug.foot + plug.lead / 2, (steps[1]?.less ?? 0) / 2 - radius], out: [-0.3, -1] },
        ],
        lines: [[small(plug.lead), ' × ', degrees(leadAngle)], ['lead']],
      },
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
const section = (design: Design): View => {
  const { plug } = design
  const finished = plugSection(design)
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

const offsetWords = ({ spec, plug }: Design): Notes['lines'][number] =>
  Math.abs(plug.offset) < 1e-9
    ? [
        spec.shop.printer.measured
          ? 'This printer prints outsides to size: the model is the size drawn.'
          : 'No printer was measured: the model is the size drawn. Put the offset of the first print in the shop file.',
      ]
    : [
        'The model is ',
        fine(Math.abs(plug.offset)),
        plug.offset > 0 ? ' smaller' : ' larger',
        ' all round than drawn, for this printer.',
      ]

const notes = (design: Design): readonly Notes[] => [
  {
    heading:
      'GO-CHECK ±' +
      (design.spec.units === 'mm' ? `${design.plug.tolerance}` : figureOf(design.plug.tolerance)) +
      ', NOT FOR ACCEPTANCE',
    caution: true,
    lines: [
      ['If it does not enter, the slot is too small or out of line. If it enters, measure. Not for class fits.'],
      ...(design.section.at.length > 1
        ? [['One key: try it in each slot; it says nothing of the angle between them.']]
        : []),
      ['Never drive it in, never turn a machine with it in the bore.'],
    ],
  },
  {
    heading: 'ORDER OF WORK',
    numbered: true,
    lines: [
      ['Print it standing on the entering end, nothing under it.'],
      ['Let it cool. Measure at both ends.'],
      ['Over size: file. Under: correct the offset, print again.'],
      ['Try it first in a bore that is known.'],
    ],
  },
  {
    heading: 'FOR THE PRINTER',
    lines: [
      offsetWords(design),
      [`On the handle: ${design.plug.marking.join(', ')}. The letters stand `, plain(proud), ' proud.'],
    ],
  },
]

const figureOf = (mm: number): string => (mm / 25.4).toFixed(3).replace(/^0/, '')

const asMade = (design: Design): readonly AsMadeRow[] => {
  const { plug } = design
  const limits = (size: number): Wording => byCaliper(design, size - plug.tolerance, size + plug.tolerance)
  return [
    { what: 'Plug Ø, printed / filed', limits: limits(plug.diameter) },
    { what: 'Key width, printed / filed', limits: limits(plug.keyWidth) },
    { what: 'Across, printed / filed', limits: limits(plug.across) },
  ]
}

const drawing = (design: Design): Drawing => {
  const { units } = design.spec
  const { tolerance } = design.plug
  return {
    part: 'plug-gauge',
    title: 'Plug gauge',
    number: '40',
    views: [front(design), section(design)],
    notes: notes(design),
    asMade: { heading: 'AS PRINTED, AS FILED: write both down', rows: asMade(design) },
    block: {
      material: 'printed plastic',
      stock: ['from the model file, 1:1 in mm'],
      heat: 'none',
      finish: 'as printed, filed to size',
      limits: units === 'mm' ? `±${tolerance}` : `±${figureOf(tolerance)}`,
      surface: 'as printed',
      edges: 'as drawn',
      job: jobLine(design),
    },
  }
}

export const plugGauge: Part = {
  name: 'plug-gauge',
  title: 'Plug gauge',
  belongs: () => true,
  solid,
  drawing,
}
