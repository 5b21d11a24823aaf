/**
 * Ground bar: neck and nose of one piece, for bores too small to hold a bit in any bar.
 *
 *        shank                      neck                 head
 *      ┌──────────┐                                     ┌─────┐ nose
 *      │          └─────────────────────────────────────┘     │
 *    ──│─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─│── z, axis of the shank
 *      │          ┌───────────────────────────────────────────┤
 *      └──────────┘                                   z = 0, the end
 *
 * Datum A: axis of shank and blank; +y towards the nose. The neck's axis lies `eccentricity` behind it, so that its back is the blank's.
 * Lengths from the end, into the metal: -z. The head's section is the neck's circle and a strip out to the nose. Pushed, the edge is at
 * the end; pulled, at the head's other face. Drawn and carved at nominal sizes.
 */
import type { Design } from '../src/design.ts'
import type { GroundBar } from '../src/dimensions/types.ts'
import type { AsMadeRow, Callout, Drawing, Mark, Notes, View } from '../src/drawing/view.ts'
import { circle, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { extrude, hull, join, type Solid } from '../src/solid/solid.ts'
import { either } from '../src/dimensions/makeable.ts'
import { grinding, stroking } from './cautions.ts'
import type { Part } from './part.ts'
import { bought, byCaliper, coarse, degrees, fine, jobLine, most, plain, sized } from './wording.ts'

const barOf = (design: Design): GroundBar => {
  if (!design.groundBar) throw new Error('this design has no bar of one piece')
  return design.groundBar
}

const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180)

/** Heights and places that the head is made of. */
const headOf = (design: Design) => {
  const bar = barOf(design)
  const axis = -bar.eccentricity
  const neck = bar.diameter.nominal / 2
  const pushed = design.asked?.stroke !== 'pull'
  // From the edge along the cut's heel: into the metal when pushed, towards the end when pulled.
  const [edge, along] = pushed ? [0, -1] : [-bar.headLength, 1]
  return {
    bar,
    axis,
    neck,
    pushed,
    edge,
    along,
    back: axis - neck,
    front: axis + neck,
    flat: axis + neck + bar.projection,
    /** The raked face meets the neck so far along. */
    drop: bar.projection * tan(bar.rake),
  }
}

const solid = (design: Design): Solid => {
  const { bar, axis, neck, edge, along, flat, front } = headOf(design)
  const { headLength, neckLength, overall, shank, noseWidth, widthAtHeel, endSetBack, rake } = bar
  const body = headLength + neckLength
  const heel = edge + along * headLength
  const low = axis
  const face = (y: number) => edge + along * (flat - y) * tan(rake)
  const half = (z: number) => (noseWidth - ((noseWidth - widthAtHeel) * Math.abs(z - edge)) / headLength) / 2
  const strip = [
    ...[1, -1].map((side) => [side * half(edge), flat, edge] as const),
    ...[1, -1].map((side) => [side * half(face(front)), front, face(front)] as const),
    ...[1, -1].map((side) => [side * half(face(low)), low, face(low)] as const),
    ...[1, -1].map((side) => [(side * widthAtHeel) / 2, flat - endSetBack, heel] as const),
    ...[1, -1].map((side) => [(side * widthAtHeel) / 2, low, heel] as const),
  ]
  return join(
    extrude(circle(shank.nominal), -overall, -body),
    extrude(circle(2 * neck, [0, axis]), -body - 0.01, 0),
    hull(strip),
  )
}

/** From the side, the end to the right. */
const front = (design: Design): View => {
  const { bar, axis, neck, edge, along, flat, back, front, drop } = headOf(design)
  const { headLength, neckLength, overall, endSetBack, rake, endRelief, sideRelief, fillet } = bar
  const shank = bar.shank.nominal / 2
  const body = headLength + neckLength
  const heel = edge + along * headLength
  const nose: readonly Point[] = [
    [edge + along * drop, front],
    [edge, flat],
    [heel, flat - endSetBack],
    [heel, front],
  ]
  // Round the metal: shank, the back's one line, the end, the nose, the neck.
  const outside: readonly Point[] =
    along < 0
      ? [
          [-overall, -shank],
          [-body, -shank],
          [-body, back],
          [0, back],
          [0, front],
          ...nose,
          [-body, front],
          [-body, shank],
          [-overall, shank],
        ]
      : [
          [-overall, -shank],
          [-body, -shank],
          [-body, back],
          [0, back],
          [0, flat - endSetBack],
          [edge, flat],
          [edge + drop, front],
          [-body, front],
          [-body, shank],
          [-overall, shank],
        ]
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline: polygon(outside) },
    { mark: 'line', kind: 'visible', from: [-body, back], to: [-body, front] },
    { mark: 'line', kind: 'centre', from: [-overall, 0], to: [-body, 0] },
    { mark: 'line', kind: 'centre', from: [-body, axis], to: [0, axis] },
    { mark: 'plane', letter: 'A', from: [-headLength / 2, back], to: [-headLength / 2, flat], looks: 'left' },
    { mark: 'texture', at: [-headLength - neckLength / 2, back], out: [0, -1], ra: 0.8 },
  ]
  const along_ = (of: string, from: number, to: number, starts: readonly [number, number], worth: number): Callout => ({
    callout: 'linear',
    of,
    worth: plain(worth),
    axis: 'x',
    a: from,
    b: to,
    fromA: starts[0],
    fromB: starts[1],
    side: 'bottom',
  })
  const callouts: Callout[] = [
    along_('overall', -overall, 0, [-shank, back], overall),
    along_('neckLength', -body, -headLength, [-shank, back], neckLength),
    {
      callout: 'linear',
      of: 'headLength',
      worth: plain(headLength),
      axis: 'x',
      a: -headLength,
      b: 0,
      fromA: along < 0 ? flat - endSetBack : flat,
      fromB: along < 0 ? flat : flat - endSetBack,
      side: 'top',
    },
    {
      callout: 'linear',
      of: 'shank',
      worth: sized(bar.shank, { prefix: 'Ø' }, 'h'),
      axis: 'y',
      a: -shank,
      b: shank,
      fromA: -overall,
      fromB: -overall,
      side: 'left',
      hangs: [{ hang: 'datum', letter: 'A' }],
    },
    {
      callout: 'leader',
      of: 'fillet',
      tips: [{ at: [-body, front], out: [1, 1] }],
      lines: [[most(fillet, { prefix: 'R' }), ' all round']],
    },
    {
      callout: 'leader',
      of: 'rake',
      also: ['endRelief', 'sideRelief'],
      tips: [{ at: [edge, flat], out: [-along, 1] }],
      lines: [
        [degrees(rake), ' rake'],
        [degrees(endRelief), ' end relief'],
        [degrees(sideRelief), ' side relief, both'],
      ],
    },
  ]
  const spare = neck
  const [from, to] = [-body + fillet + spare, -headLength - spare]
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: [
      { x1: -overall, y1: -shank, x2: -body, y2: shank },
      { x1: -body, y1: back, x2: 0, y2: front },
      { x1: -headLength, y1: front, x2: 0, y2: flat },
    ],
    callouts,
    ...(to - from > 8 * neck && { breaks: [{ from, to }] }),
  }
}

/** Across the head, larger: neck's circle, nose, and the blank that both are ground from. Seen from the end. */
const across = (design: Design): View => {
  const { bar, axis, neck, flat, back, front } = headOf(design)
  const blank = bar.blank.nominal / 2
  const half = bar.noseWidth / 2
  // Where the strip's sides run into the neck's circle; from there the circle goes round behind.
  const meets = axis + Math.sqrt(Math.max(0, neck ** 2 - half ** 2))
  const round = 2 * Math.PI - 2 * Math.asin(Math.min(1, half / neck))
  const metal: Outline = [
    { at: [-half, flat] },
    // Counter-clockwise, left side down, round the back, right side up.
    { at: [-half, meets], bulge: Math.tan(round / 4) },
    { at: [half, meets] },
    { at: [half, flat] },
  ]
  const marks: Mark[] = [
    { mark: 'arc', kind: 'phantom', centre: [0, 0], radius: blank, from: 0, to: 360 },
    { mark: 'outline', kind: 'visible', outline: metal },
    { mark: 'hatch', outlines: [metal] },
    { mark: 'line', kind: 'centre', from: [0, back], to: [0, flat] },
    { mark: 'line', kind: 'centre', from: [-neck, axis], to: [neck, axis] },
    { mark: 'line', kind: 'centre', from: [-blank, 0], to: [blank, 0] },
  ]
  return {
    name: 'across',
    title: 'A – A',
    place: { is: 'section', from: 'right', least: 2 * neck, aligned: false },
    marks,
    metal: [
      { x1: -neck, y1: back, x2: neck, y2: front },
      { x1: -half, y1: front, x2: half, y2: flat },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'backToNose',
        worth: sized(bar.backToNose),
        axis: 'y',
        a: back,
        b: flat,
        fromA: 0,
        fromB: half,
        side: 'right',
      },
      {
        callout: 'linear',
        of: 'noseWidth',
        worth: sized(bar.noseTolerance),
        axis: 'x',
        a: -half,
        b: half,
        fromA: flat,
        fromB: flat,
        side: 'top',
      },
      {
        callout: 'linear',
        of: 'diameter',
        worth: sized(bar.diameter, { prefix: 'Ø' }),
        axis: 'x',
        a: -neck,
        b: neck,
        fromA: axis,
        fromB: axis,
        side: 'bottom',
      },
      {
        callout: 'leader',
        of: 'blank',
        also: ['eccentricity'],
        tips: [45, 135, 20, 160].map((turn) => ({
          at: [blank * Math.cos((turn * Math.PI) / 180), blank * Math.sin((turn * Math.PI) / 180)] as const,
          out: [turn < 90 ? 1 : -1, 0.6] as const,
        })),
        lines: [
          ['blank ', sized(bar.blank, { prefix: 'Ø' })],
          ['its axis ', fine(bar.eccentricity)],
          ['before the neck’s'],
        ],
      },
      ...(bar.cornerRadius > 0
        ? [
            {
              callout: 'leader',
              of: 'cornerRadius',
              tips: [-1, 1].map((side) => ({ at: [side * half, flat] as const, out: [side, 1] as const })),
              lines: [[fine(bar.cornerRadius, { prefix: 'R' }), ' both corners']],
            } satisfies Callout,
          ]
        : []),
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const { bar, pushed } = headOf(design)
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Saw, face. Turn shank and blank in one chucking: one axis.'],
        [
          'Set the work over by ',
          fine(bar.eccentricity),
          ' in four jaws: a dial on the blank reads twice that. Turn the neck up to the head.',
        ],
        [
          'File or mill the head to the nose: leave ',
          coarse(either(design.spec.units, 0.3, 0.01)),
          ' a side to grind.',
        ],
        ['Harden the head and neck, draw to straw; mind the fillet.'],
        [
          'Grind the sides, ',
          degrees(bar.sideRelief),
          ' relief each; then the nose to ',
          fine(bar.backToNose.nominal),
          ' over back and nose; then the face, ',
          ...(bar.rake > 0 ? [degrees(bar.rake), ' back from the edge.'] : ['square.']),
        ],
        ['Mark the nose side on the shank.'],
      ],
    },
    {
      heading: 'IN USE',
      lines: [
        ['Nothing is set: the nose stands out ', fine(bar.projection), ' as ground, and every regrind takes off it.'],
        [
          pushed
            ? 'Pushed: the face looks to the end.'
            : 'Pulled: the face looks to the holder; the work needs a stop against being drawn out.',
        ],
      ],
    },
    grinding,
    stroking(design),
  ]
}

const asMade = (design: Design): readonly AsMadeRow[] => {
  const bar = barOf(design)
  return [
    { what: 'Neck Ø, whole length', limits: [sized(bar.diameter)] },
    { what: 'Over back and nose', limits: [sized(bar.backToNose)] },
    { what: 'Nose width', limits: byCaliper(design, bar.noseTolerance.lower, bar.noseTolerance.upper) },
    { what: 'Nose passes the bore', limits: ['by hand'] },
  ]
}

const drawing = (design: Design): Drawing => {
  const bar = barOf(design)
  return {
    part: 'ground-bar',
    title: 'One-piece bar',
    number: '25',
    views: [front(design), across(design)],
    notes: notes(design),
    asMade: { heading: 'AS MADE: measure and write down', rows: asMade(design) },
    block: {
      material: 'Drill rod (silver steel)',
      stock: [bought(bar.stock.diameter, { prefix: 'Ø' }), ' bar, ', bought(bar.stock.length), ' long'],
      heat: 'hardened, drawn to straw',
      finish: 'ground, oiled',
      job: jobLine(design),
    },
  }
}

export const groundBar: Part = {
  name: 'ground-bar',
  title: 'One-piece bar',
  of: 'bar',
  belongs: ({ groundBar: bar }) => bar !== undefined,
  solid,
  drawing,
}
