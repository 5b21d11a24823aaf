/**
 * Template for the angles of the tool bit, cut from sheet or printed. Form and names: src/dimensions/bit-templates.ts.
 *
 * Datum: lower left corner, x along, y up to the edge with the notches. Thickness along z; it is printed lying down, letters up. Drawing and
 * profile have finished sizes; the solid is the model.
 */
import type { Design } from '../src/design.ts'
import { type BitTemplates, roundRises } from '../src/dimensions/bit-templates.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Notes, View } from '../src/drawing/view.ts'
import type { Corner, Outline, Point } from '../src/solid/outline.ts'
import { extrude, join, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { offsetWords, printedBlock, raised } from './printed.ts'
import { byCaliper, coarse, degrees, fine, jobLine, plain, round, sized } from './wording.ts'

const templatesOf = (design: Design): BitTemplates => {
  if (!design.bitTemplates) throw new Error('this design has no bit to make templates for')
  return design.bitTemplates
}

const rad = (angle: number): number => (angle * Math.PI) / 180

/** A notch by what it is, its middle at x. */
interface Notch {
  readonly is: 'side' | 'end' | 'plan' | 'vee' | 'radius' | 'wedge' | 'width'
  readonly says: string
  readonly letter: string
  readonly at: number
}

const notchesOf = (templates: BitTemplates): readonly Notch[] => {
  const { first, pitch, marking, vee, radius } = templates
  const third: Pick<Notch, 'is' | 'says'> =
    vee !== undefined
      ? { is: 'vee', says: 'V' }
      : radius !== undefined
        ? { is: 'radius', says: 'round' }
        : { is: 'plan', says: 'plan' }
  const all: readonly Pick<Notch, 'is' | 'says'>[] = [
    { is: 'side', says: 'side' },
    { is: 'end', says: 'end' },
    third,
    { is: 'wedge', says: 'wedge' },
    { is: 'width', says: 'width' },
  ]
  return all.map((notch, index) => ({ ...notch, letter: marking[index] ?? '', at: first + index * pitch }))
}

/** A notch from its right end on the upper edge to its left: down one leg, round the hole at the vertex, up the other. */
const angled = (x: number, top: number, depth: number, angle: number, room: number): Outline => {
  const half = rad(angle / 2)
  const [across, up] = [depth * Math.tan(half), top - depth]
  const [sin, cos] = [(Math.sin(half) * room) / 2, (Math.cos(half) * room) / 2]
  return [
    { at: [x + across, top] },
    { at: [x + sin, up + cos], bulge: -Math.tan((2 * Math.PI - rad(angle)) / 4) },
    { at: [x - sin, up + cos] },
    { at: [x - across, top] },
  ]
}

const notch = (templates: BitTemplates, { is, at }: Notch, grown: number): Outline => {
  const { height, depth, room, radius = 0, width, widthDepth } = templates
  if (is === 'width') {
    const half = width / 2 + grown
    return [
      { at: [at + half, height] },
      { at: [at + half, height - widthDepth] },
      { at: [at - half, height - widthDepth] },
      { at: [at - half, height] },
    ]
  }
  if (is === 'radius') {
    const [own, centre] = [radius + grown, height - roundRises * radius]
    return [
      { at: [at + own, height] },
      { at: [at + own, centre], bulge: -1 },
      { at: [at - own, centre] },
      { at: [at - own, height] },
    ]
  }
  return angled(at, height, depth, templates[is] ?? 90, room)
}

/** The flat contour, counter-clockwise; `grown`: what notches for a width are wider by on either side. */
export const contour = (templates: BitTemplates, grown = 0): Outline => {
  const { length, height } = templates
  const plate: readonly Corner[] = [{ at: [0, 0] }, { at: [length, 0] }, { at: [length, height] }]
  const notches = notchesOf(templates)
    .toReversed()
    .flatMap((each) => notch(templates, each, grown))
  return [...plate, ...notches, { at: [0, height] }]
}

const solid = (design: Design): Solid => {
  const templates = templatesOf(design)
  const { height, depth, thickness, pitch, offset } = templates
  const room = height - depth - 2.5
  return join(
    extrude(contour(templates, -offset), 0, thickness),
    ...notchesOf(templates).map(({ letter, at }) =>
      raised(letter, [at, (height - depth) / 2 - 0.5], pitch / 2, room, thickness),
    ),
  )
}

const plan = (templates: BitTemplates): View => {
  const { length, height, depth, first, pitch, thickness, room, radius, width, widthLimits, widthDepth } = templates
  const notches = notchesOf(templates)
  const angle = ({ is, says, letter, at }: Notch): Callout[] => {
    const worth = is === 'width' || is === 'radius' ? undefined : templates[is]
    if (worth === undefined) return []
    const reach = depth / Math.cos(rad(worth / 2))
    const arm = (turn: number): Point => [
      at + reach * Math.cos(rad(turn)),
      height - depth + reach * Math.sin(rad(turn)),
    ]
    const [a1, a2] = [90 - worth / 2, 90 + worth / 2]
    return [
      {
        callout: 'angle',
        of: is,
        worth: degrees(worth, { suffix: `${says} (${letter})` }),
        vertex: [at, height - depth],
        a1,
        a2,
        starts: [arm(a1), arm(a2)],
      },
    ]
  }
  const shaped = notches.find(({ is }) => is === 'radius')
  const slot = notches.find(({ is }) => is === 'width')
  const vertices = notches.filter(({ is }) => is !== 'width' && is !== 'radius')
  const floors = notches.flatMap(({ is, at }) =>
    is === 'width' ? [{ x1: at - width / 2, x2: at + width / 2, low: height - widthDepth }] : [],
  )
  return {
    name: 'plan',
    place: { is: 'front' },
    marks: [{ mark: 'outline', kind: 'visible', outline: contour(templates) }],
    metal: [
      { x1: 0, y1: 0, x2: length, y2: height - depth },
      { x1: 0, y1: height - depth, x2: first / 4, y2: height },
      ...floors.map(({ x1, x2, low }) => ({ x1, y1: height - depth, x2, y2: low })),
    ],
    callouts: [
      ...vertices.flatMap(angle),
      ...(shaped && radius !== undefined
        ? [
            {
              callout: 'leader',
              of: 'radius',
              tips: [200, 225, 315, 340].map((turn) => ({
                at: [
                  shaped.at + radius * Math.cos(rad(turn)),
                  height - roundRises * radius + radius * Math.sin(rad(turn)),
                ] as const,
                out: [-Math.cos(rad(turn)), 2] as const,
              })),
              lines: [[fine(radius, { prefix: 'R' }), ` round (${shaped.letter})`]],
            } satisfies Callout,
          ]
        : []),
      ...(slot
        ? [
            {
              callout: 'leader',
              of: 'width',
              also: ['widthDepth'],
              tips: [1, -1].map((way) => ({
                at: [slot.at + (way * width) / 2, height - widthDepth / 2] as const,
                out: [-way, 2.5] as const,
              })),
              lines: [
                [sized(widthLimits), ` wide (${slot.letter})`],
                [plain(widthDepth), ' deep'],
              ],
            } satisfies Callout,
          ]
        : []),
      {
        callout: 'linear',
        of: 'length',
        worth: plain(length),
        axis: 'x',
        a: 0,
        b: length,
        fromA: 0,
        fromB: 0,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'first',
        worth: plain(first),
        axis: 'x',
        a: 0,
        b: first,
        fromA: 0,
        fromB: height - depth - room / 2,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'pitch',
        worth: plain(pitch),
        axis: 'x',
        a: first,
        b: first + pitch,
        fromA: height - depth - room / 2,
        fromB: height - depth - room / 2,
        side: 'bottom',
        chain: 'first',
      },
      {
        callout: 'linear',
        of: 'height',
        worth: plain(height),
        axis: 'y',
        a: 0,
        b: height,
        fromA: 0,
        fromB: 0,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'depth',
        worth: plain(depth),
        axis: 'y',
        a: height - depth,
        b: height,
        fromA: first,
        fromB: 0,
        side: 'left',
      },
      {
        callout: 'leader',
        of: 'room',
        tips: vertices.flatMap(({ at }) =>
          [-1, 1].map((way) => ({
            at: [at + way * room * 0.35, height - depth - room * 0.35] as const,
            out: [way, -1] as const,
          })),
        ),
        lines: [[`${vertices.length} × `, round(room)]],
        small: true,
      },
      {
        callout: 'leader',
        of: 'thickness',
        tips: [0.3, 0.6].map((part) => ({ at: [length, part * height] as const, out: [1, 0.3] as const })),
        lines: [[plain(thickness, { prefix: 't ' })]],
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const templates = templatesOf(design)
  const { bit } = design
  const shape = templates.vee !== undefined ? 'vee' : templates.radius !== undefined ? 'round' : 'plan'
  const third = {
    vee: 'C, the V: from above, looking along the cut, the face away from you. Both flanks dark together, tip in the hole.',
    round: 'C, the round: from above, on the face. Dark all round.',
    plan: 'C, plan: on the face, edge and one side. Then the other side.',
  }[shape]
  return [
    {
      heading: 'HOLDING IT TO THE BIT',
      lines: [
        ['Plate square to the edge, against the light: no light, no more to grind.'],
        ["A, side: blank's top and one side of the nose. Then the other side."],
        ["B, end: blank's top and the end, before the face is ground."],
        [third],
        ['D, wedge: face and end, when all is ground.'],
        ['E, width: the nose goes in to its shoulder. Then mike it.'],
        ...(bit?.leaning
          ? [['Angles are as ground on the blank, not as the bit leans; only the V is as it cuts.']]
          : []),
      ],
    },
    {
      heading: 'TO CUT IT FROM SHEET',
      numbered: true,
      lines: [
        ['Scribe the profile, which is full size. Drill the holes first.'],
        ['Saw clear of the lines, file to a protractor.'],
        ['File E to ', sized(templates.widthLimits), ' with a gauge block or drill shank in it. Stamp the letters.'],
      ],
    },
    {
      heading: 'OR TO PRINT IT',
      numbered: true,
      lines: [
        ['Lying down, letters up, nothing under it. Let it cool.'],
        ['Scrape the burr off the edge that lay on the bed.'],
        ['Try every notch with a protractor; file E to size.'],
      ],
    },
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, templates.offset, 'Notch E is')] },
  ]
}

const drawing = (design: Design): Drawing => {
  const templates = templatesOf(design)
  const { length, height, thickness, widthLimits } = templates
  const angled = notchesOf(templates).flatMap(({ is, letter, says }) => {
    const worth = is === 'width' || is === 'radius' ? undefined : templates[is]
    return worth === undefined ? [] : [{ what: `${letter}, ${says}`, worth }]
  })
  return {
    part: 'bit-templates',
    title: 'Bit template',
    number: '31',
    views: [plan(templates)],
    notes: notes(design),
    asMade: {
      heading: 'AS MADE: by protractor, write down',
      rows: [
        ...angled.map(({ what, worth }) => ({
          what,
          limits: [degrees(worth - 0.3), ' / ', degrees(worth + 0.3)],
        })),
        ...(templates.radius === undefined
          ? []
          : [{ what: 'C, round', limits: [fine(2 * templates.radius, { prefix: 'Ø' }), ' pin'] }]),
        { what: 'E, width', limits: byCaliper(design, widthLimits.lower, widthLimits.upper) },
      ],
    },
    block: {
      ...printedBlock(design, templates.tolerance),
      material: 'steel or brass sheet, or printed',
      stock: ['sheet ', plain(length), ' × ', coarse(height), ' × ', plain(thickness)],
      finish: 'notches square and sharp',
      limits: design.spec.units === 'mm' ? 'ISO 2768 - m, angles ±0.3°' : '.XX ±.01  .XXX ±.005  ANGLES ±.3°',
      surface: 'as filed or as printed',
      edges: 'notches sharp, the rest broken',
      job: jobLine(design),
    },
  }
}

const profile = (design: Design): Profile => ({ name: 'bit-templates', contours: [contour(templatesOf(design))] })

export const bitTemplates: Part = {
  name: 'bit-templates',
  title: 'Bit template',
  of: 'bar',
  belongs: (design) => design.bitTemplates !== undefined,
  solid,
  prints: (design) => [{ name: 'bit-templates', solid: solid(design) }],
  drawing,
  profile,
}
