/**
 * Slotted guide bushing with a collar: it fills the bore and carries a push broach in its slot.
 *
 *            -z ◄──  seat z = 0  ──► +z
 *      ┌────┐
 *      │    │undercut                lead           y
 *      │    └┐╭──────────────────────┐.           ,-+-.
 *      ├─────────────────────────────┤          /  |┌──┐ slot, opens to +x
 *    ──│─ ─ ─ ─ ─ ─ slot ─ ─ ─ ─ ─ ─ ┼──       │   ││  ├── x
 *      ├─────────────────────────────┤          \  |└──┘
 *      │    ┌┘╰──────────────────────┘'           `-+-'
 *      │    │                                   ├───┤ back wall
 *      └────┘
 *
 * Datum A: axis of the outside. Lengths from the seat, the underside of the collar. Drawn and carved at nominal sizes.
 * The half section that is turned and the slot that is milled are the ones that are drawn.
 */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { GuideBushing } from '../src/dimensions/types.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Mark, View } from '../src/drawing/view.ts'
import { type Outline, type Point, rectangle } from '../src/solid/outline.ts'
import { cut, extrude, revolve, type Solid } from '../src/solid/solid.ts'
import { bushingAsMade, bushingNotes } from './guide-bushing-notes.ts'
import type { Part } from './part.ts'
import { roundedInside, turned, turnedEdge } from './turned.ts'
import { bought, small, central, degrees, jobLine, plain, round, sized } from './wording.ts'

const bushingOf = (design: Design): GuideBushing => {
  if (!design.bushing) throw new Error('this design has no guide bushing')
  return design.bushing
}

const tangent = (angle: number): number => Math.tan((angle * Math.PI) / 180)

/** What the lead takes off the radius at the far end. */
const leadDrop = ({ lead }: GuideBushing): number => lead.length * tangent(lead.angle)

/** Half section in (radius, z), counter-clockwise. */
export const halfSection = (bushing: GuideBushing): Outline => {
  const { undercut, length, collarThickness, lead } = bushing
  const [outside, collar] = [bushing.outside.nominal / 2, bushing.collarDiameter / 2]
  const root = outside - undercut.depth
  return [
    { at: [0, -collarThickness] },
    { at: [collar, -collarThickness] },
    { at: [collar, 0] },
    ...roundedInside([root, 0], undercut.radius),
    { at: [root, undercut.width - undercut.depth] },
    { at: [outside, undercut.width] },
    { at: [outside, length - lead.length] },
    { at: [outside - leadDrop(bushing), length] },
    { at: [0, length] },
  ]
}

/** The slot in the cross-section: its floor and its half width. The floor lies by the back wall, from the back of the outside. */
export const slot = (bushing: GuideBushing): { readonly floor: number; readonly half: number } => ({
  floor: bushing.backWall.nominal - bushing.outside.nominal / 2,
  half: bushing.slotWidth.nominal / 2,
})

/** Every slot: the broach's, and those of the locating key. `at`: radians from the broach's, counter-clockwise seen from the collar. */
const slots = (
  bushing: GuideBushing,
): readonly { readonly at: number; readonly floor: number; readonly half: number }[] => {
  const { locating } = bushing
  const second = locating?.at.map((at) => ({
    at: (at * Math.PI) / 180,
    floor: locating.floor,
    half: locating.width.nominal / 2,
  }))
  return [{ at: 0, ...slot(bushing) }, ...(second ?? []).toSorted((a, b) => a.at - b.at)]
}

const rotated = ([x, y]: Point, by: number): Point =>
  by === 0 ? [x, y] : [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by)]

/** Cross-section of the body with its slots as it is seen from the collar, in (x, y), counter-clockwise; the arc is met at the tangent point of the back. */
export const crossSection = (bushing: GuideBushing): Outline => {
  const radius = bushing.outside.nominal / 2
  const all = slots(bushing)
  const corners = all.flatMap(({ at, floor, half }, n): Outline => {
    const mouth = Math.sqrt(radius ** 2 - half ** 2)
    const next = all[n + 1] ?? { at: 2 * Math.PI, half: slot(bushing).half }
    const [from, to] = [at + Math.asin(half / radius), next.at - Math.asin(next.half / radius)]
    const arc = (start: number, end: number): number => Math.tan((end - start) / 4)
    const back = from < Math.PI && to > Math.PI
    return [
      { at: rotated([mouth, -half], at) },
      { at: rotated([floor, -half], at) },
      { at: rotated([floor, half], at) },
      { at: rotated([mouth, half], at), bulge: arc(from, back ? Math.PI : to) },
      ...(back ? [{ at: [-radius, 0] as const, bulge: arc(Math.PI, to) }] : []),
    ]
  })
  // It begins where the broach's slot ends.
  return [...corners.slice(3), ...corners.slice(0, 3)]
}

const solid = (design: Design): Solid => {
  const bushing = bushingOf(design)
  const beyond = 1
  // Seen from the collar z points away and y down: what is drawn counter-clockwise lies clockwise round z.
  const openings = slots(bushing).map(({ at, floor, half }) =>
    rectangle([floor, -half], [bushing.collarDiameter / 2 + beyond, half]).map((corner) => ({
      at: rotated(corner.at, -at),
    })),
  )
  return cut(
    revolve(halfSection(bushing)),
    ...openings.map((opening) => extrude(opening, -bushing.collarThickness - beyond, bushing.length + beyond)),
  )
}

/** Axis level, collar left, the slot towards the viewer: view x is z, view y is y. */
const front = (bushing: GuideBushing): View => {
  const { length, collarThickness, undercut, lead } = bushing
  const [outside, collar] = [bushing.outside.nominal / 2, bushing.collarDiameter / 2]
  const { half } = slot(bushing)
  const end = outside - leadDrop(bushing)
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline: turned(halfSection(bushing)) },
    // The groove's other edge lies too near to be drawn: detail B has it.
    ...[
      [0, outside - undercut.depth],
      [undercut.width, outside],
      [length - lead.length, outside],
    ].flatMap(([at = 0, radius = 0]) => turnedEdge(at, radius, half)),
    ...[half, -half].map(
      (y): Mark => ({ mark: 'line', kind: 'visible', from: [-collarThickness, y], to: [length, y] }),
    ),
    { mark: 'line', kind: 'centre', from: [-collarThickness, 0], to: [length, 0] },
    { mark: 'plane', letter: 'A', from: [length / 2, -outside], to: [length / 2, outside], looks: 'right' },
    { mark: 'detail', letter: 'B', ...undercutCircle(bushing) },
    { mark: 'texture', at: [length / 4, outside], out: [0, 1], ra: 0.8 },
  ]
  const callouts: Callout[] = [
    {
      callout: 'linear',
      of: 'outside',
      worth: sized(bushing.outside, { prefix: 'Ø' }),
      axis: 'y',
      a: -outside,
      b: outside,
      fromA: length - lead.length,
      fromB: length - lead.length,
      side: 'right',
      hangs: [{ hang: 'datum', letter: 'A' }],
    },
    {
      callout: 'linear',
      of: 'collarDiameter',
      worth: round(bushing.collarDiameter),
      axis: 'y',
      a: -collar,
      b: collar,
      fromA: -collarThickness,
      fromB: -collarThickness,
      side: 'left',
    },
    {
      callout: 'linear',
      of: 'collarThickness',
      worth: plain(collarThickness),
      axis: 'x',
      a: -collarThickness,
      b: 0,
      fromA: -collar,
      fromB: -collar,
      side: 'bottom',
      chain: 'length',
    },
    {
      callout: 'linear',
      of: 'length',
      worth: plain(length),
      axis: 'x',
      a: 0,
      b: length,
      fromA: -collar,
      fromB: -end,
      side: 'bottom',
    },
    {
      callout: 'leader',
      of: 'lead',
      tips: [1, -1].map((side) => ({ at: [length - lead.length / 2, (side * (outside + end)) / 2], out: [1, side] })),
      lines: [[small(lead.length), ' × ', degrees(lead.angle)]],
    },
  ]
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: [
      { x1: -collarThickness, y1: -collar, x2: 0, y2: collar },
      { x1: 0, y1: -outside, x2: length, y2: outside },
    ],
    callouts,
  }
}

/** Cut at mid-length, seen from the collar: view x is x, so the slot opens to the right. */
const acrossSlot = (design: Design, bushing: GuideBushing): View => {
  const { units } = design.spec
  const radius = bushing.outside.nominal / 2
  const { floor, half } = slot(bushing)
  const outline = crossSection(bushing)
  const mouth = outline[0]?.at[0] ?? 0
  return {
    name: 'A-A',
    title: 'A – A',
    place: { is: 'section', from: 'left', aligned: true },
    marks: [
      { mark: 'outline', kind: 'visible', outline },
      { mark: 'hatch', outlines: [outline] },
      { mark: 'centreMark', centre: [0, 0], radius },
    ],
    metal: [
      { x1: -radius, y1: -radius, x2: floor, y2: radius },
      { x1: floor, y1: half, x2: radius, y2: radius },
      { x1: floor, y1: -radius, x2: radius, y2: -half },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'slotWidth',
        worth: sized(bushing.slotWidth),
        axis: 'y',
        a: -half,
        b: half,
        fromA: mouth,
        fromB: mouth,
        side: 'right',
        hangs: [central(design, 'slotCentral', either(units, 0.05, 0.002))],
      },
      {
        callout: 'linear',
        of: 'backWall',
        worth: sized(bushing.backWall),
        axis: 'x',
        a: -radius,
        b: floor,
        fromA: 0,
        fromB: -half,
        side: 'bottom',
        hangs: [
          {
            hang: 'frame',
            of: 'floorParallel',
            feature: 'parallelism',
            value: either(units, 0.02, 0.001),
            datum: 'A',
            at: 'b',
          },
        ],
      },
      ...secondSlots(bushing),
    ],
  }
}

/** Where the locating key's slots stand, and how deep they are. */
const secondSlots = ({ locating, outside }: GuideBushing): readonly Callout[] => {
  if (!locating) return []
  const radius = outside.nominal / 2
  const half = locating.width.nominal / 2
  return locating.at.flatMap((at, n): readonly Callout[] => {
    const [middle, wall] = [
      rotated([radius, 0], (at * Math.PI) / 180),
      rotated([(locating.floor + radius) / 2, half], (at * Math.PI) / 180),
    ]
    // The shorter way round from the broach's slot.
    const [a1, a2] = at > 180 ? [at - 360, 0] : [0, at]
    return [
      {
        callout: 'angle',
        of: 'locating.round',
        worth: degrees(a2 - a1),
        vertex: [0, 0],
        a1,
        a2,
        starts: at > 180 ? [middle, [radius, 0]] : [[radius, 0], middle],
      },
      ...(n > 0
        ? []
        : [
            {
              callout: 'leader',
              of: 'locating.width',
              also: ['locating.overBack'],
              tips: [{ at: wall, out: rotated([1, 0.6], (at * Math.PI) / 180) }],
              lines: [
                [sized(locating.width), ' wide, for the locating key'],
                [plain(locating.overBack), ' over the back'],
              ],
            } as const,
          ]),
    ]
  })
}

/** Middle and radius of the circle that detail B shows, on the lower silhouette. */
const undercutCircle = ({ undercut, outside }: GuideBushing): { readonly centre: Point; readonly radius: number } => ({
  centre: [undercut.width / 2, undercut.depth / 2 - outside.nominal / 2],
  radius: 1.4 * undercut.width,
})

/** The undercut, enlarged: the lower silhouette at the seat, clipped by the circle. */
const detailUndercut = (bushing: GuideBushing): View => {
  const { undercut, length } = bushing
  const { centre, radius } = undercutCircle(bushing)
  const outside = bushing.outside.nominal / 2
  const root = outside - undercut.depth
  const inner = Math.SQRT1_2 * undercut.radius
  const arc: Point = [undercut.radius - inner, inner - undercut.radius - root]
  return {
    name: 'B',
    title: 'B',
    place: {
      is: 'detail',
      least: Math.min(undercut.depth, undercut.radius, undercut.width),
      clip: { centre, radius },
    },
    marks: [
      { mark: 'outline', kind: 'visible', outline: turned(halfSection(bushing)) },
      ...turnedEdge(0, root, 0),
      ...turnedEdge(undercut.width, outside, 0),
    ],
    metal: [
      { x1: centre[0] - radius, y1: centre[1] - radius, x2: 0, y2: centre[1] + radius },
      { x1: 0, y1: -outside, x2: Math.min(length, centre[0] + radius), y2: centre[1] + radius },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'undercut.width',
        worth: plain(undercut.width),
        axis: 'x',
        a: 0,
        b: undercut.width,
        fromA: centre[1] - Math.sqrt(radius ** 2 - centre[0] ** 2),
        fromB: -outside,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'undercut.depth',
        worth: plain(undercut.depth),
        axis: 'y',
        a: -outside,
        b: -root,
        fromA: centre[0] + Math.sqrt(radius ** 2 - (outside + centre[1]) ** 2),
        fromB: undercut.width - undercut.depth,
        side: 'right',
      },
      {
        callout: 'leader',
        of: 'undercut.radius',
        tips: [{ at: arc, out: [1, -1] }],
        lines: [[plain(undercut.radius, { prefix: 'R' })]],
      },
    ],
  }
}

const drawing = (design: Design): Drawing => {
  const bushing = bushingOf(design)
  return {
    part: 'guide-bushing',
    title: 'Guide bushing',
    number: '10',
    views: [front(bushing), acrossSlot(design, bushing), detailUndercut(bushing)],
    notes: bushingNotes(design, bushing),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: bushingAsMade(design, bushing),
    },
    block: {
      material: 'Free-cutting mild steel, or bronze',
      stock: [bought(bushing.stock.diameter, { prefix: 'Ø' }), ' bar, ', bought(bushing.stock.length), ' long'],
      heat: 'none',
      finish: 'polish the outside lightly, oil',
      job: jobLine(design),
    },
  }
}

/** The bushing's end, to scribe or to check the slot against, and a profile for whoever erodes it. */
const profile = (design: Design): Profile => ({ name: 'guide-bushing', contours: [crossSection(bushingOf(design))] })

export const guideBushing: Part = {
  name: 'guide-bushing',
  title: 'Guide bushing',
  of: 'press',
  belongs: (design) => design.bushing !== undefined,
  solid,
  drawing,
  profile,
}
