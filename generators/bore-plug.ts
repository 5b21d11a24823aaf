/**
 * Printed go plug for all splines, or all corners of a socket, at once, on a handle. Sizes and why: src/dimensions/bore-plug.ts.
 *
 * Datum: axis, the first key on +x; z = 0 at the entering end, which stands on the bed.
 */
import type { Design } from '../src/design.ts'
import type { BorePlug } from '../src/dimensions/bore-plug.ts'
import { type Bored, boredContour } from '../src/dimensions/contour.ts'
import type { AsMadeRow, Callout, Drawing, Mark, Notes, View } from '../src/drawing/view.ts'
import { boundsOf, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { extrude, join, revolve, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { asPrinted, goCheck, offsetWords, printedBlock, printingOrder, raised } from './printed.ts'
import { turned } from './turned.ts'
import { coarse, degrees, most, plain, round, small } from './wording.ts'

const plugOf = (design: Design): BorePlug => {
  if (!design.borePlug) throw new Error('this design has no bore plug')
  return design.borePlug
}

/** Its section, the first key on +x, smaller all round by `less`. */
const bored = (design: Design, less = 0): Bored => {
  const { section } = design
  const { diameter, keyWidth = 0, overKeys, across, keyCorner = 0, room = 0, acrossFlats } = plugOf(design)
  const radius = diameter / 2 - less
  const first = section.at[0] ?? 0
  const at = section.at.map((angle) => angle - first)
  if (acrossFlats !== undefined)
    return {
      radius,
      at,
      notch: { is: 'vee', sides: section.at.length, flat: acrossFlats / 2 - less, tip: section.cornerRadius },
    }
  const top = overKeys !== undefined ? overKeys / 2 : (across ?? 0) - diameter / 2
  return {
    radius,
    at,
    notch: {
      is: 'slot',
      half: keyWidth / 2 - less,
      floor: top - less,
      corner: { is: 'broken', by: keyCorner },
      mouthRoom: room,
    },
  }
}

/** The plug's contour, counter-clockwise; `less` taken off all round. */
export const contour = (design: Design, less = 0): Outline => boredContour(bored(design, less))

/** The handle's half section, begun `inside` the plug; a larger one grows at 45°. */
const handle = (plug: BorePlug, inside = 0): Outline => {
  const [radius, end] = [plug.handleDiameter / 2, plug.length + plug.handleLength]
  const neck = Math.min(radius, 0.47 * plug.diameter)
  return polygon([
    [0, plug.length - inside],
    [neck, plug.length - inside],
    ...(radius > neck ? [[radius, plug.length + radius - neck] as const] : []),
    [radius, end],
    [0, end],
  ])
}

const solid = (design: Design): Solid => {
  const plug = plugOf(design)
  const { pilot, length, offset, marking, handleDiameter } = plug
  const longest = Math.max(...marking.map((line) => line.length))
  const room = 0.8 * handleDiameter
  const height = Math.min(room / (1.6 * marking.length), room / longest)
  return join(
    extrude(contour(design, offset + pilot.less), 0, pilot.length + 0.5),
    extrude(contour(design, offset), pilot.length, length),
    revolve(handle(plug, 1)),
    ...marking.map((text, index) =>
      raised(
        text,
        [0, ((marking.length - 1) / 2 - index) * 1.5 * height],
        Infinity,
        height,
        length + plug.handleLength,
      ),
    ),
  )
}

/** Axis level, entering end left: view (x, y) = (z, x). */
const front = (design: Design): View => {
  const plug = plugOf(design)
  const { pilot, length, handleDiameter, handleLength } = plug
  const [low, high] = [contour(design), contour(design, pilot.less)].map((outline) => boundsOf(outline)) as [
    ReturnType<typeof boundsOf>,
    ReturnType<typeof boundsOf>,
  ]
  const [bottom, top] = [low.min[0], low.max[0]]
  const end = length + handleLength
  const marks: Mark[] = [
    {
      mark: 'outline',
      kind: 'visible',
      outline: polygon([
        [0, high.min[0]],
        [pilot.length, high.min[0]],
        [pilot.length, bottom],
        [length, bottom],
        [length, top],
        [pilot.length, top],
        [pilot.length, high.max[0]],
        [0, high.max[0]],
      ]),
    },
    { mark: 'outline', kind: 'visible', outline: turned(handle(plug)) },
    { mark: 'line', kind: 'centre', from: [0, 0], to: [end, 0] },
  ]
  const along = (of: string, a: number, b: number, fromA: number, fromB: number): Callout => ({
    callout: 'linear',
    of,
    worth: plain(b - a),
    axis: 'x',
    a,
    b,
    fromA,
    fromB,
    side: 'bottom',
    ...(of === 'handleLength' ? { chain: 'length' } : {}),
  })
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: [
      { x1: 0, y1: bottom, x2: length, y2: top },
      { x1: length, y1: -handleDiameter / 2, x2: end, y2: handleDiameter / 2 },
    ],
    callouts: [
      along('length', 0, length, high.min[0], bottom),
      along('handleLength', length, end, bottom, -handleDiameter / 2),
      {
        callout: 'leader',
        of: 'pilot.length',
        also: ['pilot.less'],
        tips: [
          { at: [pilot.length / 2, high.max[0]], out: [-0.4, 1] },
          { at: [pilot.length / 2, high.min[0]], out: [-0.4, -1] },
        ],
        lines: [[plain(pilot.length), ' long, ', small(pilot.less)], ['smaller all round']],
      },
      {
        callout: 'linear',
        of: 'handleDiameter',
        worth: round(handleDiameter),
        axis: 'y',
        a: -handleDiameter / 2,
        b: handleDiameter / 2,
        fromA: end,
        fromB: end,
        side: 'right',
      },
    ],
  }
}

/** Seen from the entering end, the first key up: view (x, y) = (y, x). */
const end = (design: Design): View => {
  const plug = plugOf(design)
  const { notch, radius, at } = bored(design)
  const outline: Outline = contour(design).map(({ at: [x, y], bulge = 0 }) => ({ at: [y, x], bulge: -bulge }))
  const between = 180 / at.length
  const bare = at.flatMap((angle) => [-0.2, 0, 0.2].map((part) => angle + between * (1 + part)))
  const around = (r: number, angles: readonly number[]) =>
    angles.map((angle) => {
      const out: Point = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)]
      return { at: [r * out[0], r * out[1]] as const, out }
    })
  const reach = Math.max(...outline.map((corner) => Math.hypot(...corner.at)))
  const callouts: Callout[] = [
    {
      callout: 'leader',
      of: 'diameter',
      tips: around(radius, bare),
      lines: [[coarse(plug.diameter, { prefix: 'Ø' })]],
    },
  ]
  if (notch.is === 'slot') {
    const { half, floor: top, corner } = notch
    const foot = Math.sqrt(radius ** 2 - half ** 2)
    const over = plug.overKeys !== undefined
    callouts.push(
      {
        callout: 'linear',
        of: 'keyWidth',
        worth: coarse(2 * half),
        axis: 'x',
        a: -half,
        b: half,
        fromA: top - corner.by,
        fromB: top - corner.by,
        side: 'top',
      },
      {
        callout: 'linear',
        of: over ? 'overKeys' : 'across',
        worth: coarse(plug.overKeys ?? plug.across ?? 0),
        axis: 'y',
        a: over ? -top : -radius,
        b: top,
        fromA: over ? half - corner.by : 0,
        fromB: half - corner.by,
        side: 'right',
      },
      {
        callout: 'leader',
        of: 'keyCorner',
        tips: [1, -1].map((side) => ({
          at: [side * (half - corner.by / 2), top - corner.by / 2] as const,
          out: [side, 1] as const,
        })),
        lines: [[small(corner.by), ' × ', degrees(45), ' all']],
        small: true,
      },
      {
        callout: 'leader',
        of: 'room',
        tips: [1, -1].map((side) => ({
          at: [side * (half + (plug.room ?? 0)), foot] as const,
          out: [side, 0.6] as const,
        })),
        lines: [[most(plug.room ?? 0, { prefix: 'R', suffix: 'all' })]],
        small: true,
      },
    )
  }
  if (notch.is === 'vee' && plug.acrossFlats !== undefined) {
    const share = Math.PI / notch.sides
    const along = notch.flat * Math.tan(share) * 0.8
    callouts.push({
      callout: 'leader',
      of: 'acrossFlats',
      tips: [1, -1].map((side) => {
        const [nx, ny] = [Math.sin(share) * side, Math.cos(share)]
        return {
          at: [notch.flat * nx - along * ny * side, notch.flat * ny + along * nx * side] as const,
          out: [nx, ny] as const,
        }
      }),
      lines: [[coarse(plug.acrossFlats), ' across flats']],
    })
  }
  return {
    name: 'entering end',
    place: { is: 'seen', from: 'left' },
    marks: [
      { mark: 'outline', kind: 'visible', outline },
      { mark: 'centreMark', centre: [0, 0], radius },
    ],
    metal: [{ x1: -reach, y1: -reach, x2: reach, y2: reach }],
    callouts,
  }
}

const notes = (design: Design): readonly Notes[] => {
  const plug = plugOf(design)
  return [
    {
      heading: goCheck(design, plug.tolerance),
      caution: true,
      lines: [
        ['It tries all of them at once, their angles too. If it does not enter: turn it on by one and try again.'],
        [
          'Stops everywhere: too small. Stops in one place: out of place there. If it enters, measure. Not for class fits.',
        ],
        ['Never drive it in, never turn a machine with it in the bore.'],
      ],
    },
    printingOrder('Print it standing on the entering end, nothing under it.', [
      ['Try it first in a bore that is known.'],
    ]),
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, plug.offset)] },
  ]
}

const asMade = (design: Design): readonly AsMadeRow[] => {
  const { diameter, keyWidth, overKeys, across, acrossFlats, tolerance } = plugOf(design)
  const row = (what: string, size: number | undefined): readonly AsMadeRow[] =>
    size === undefined ? [] : [{ what, limits: asPrinted(design, size, tolerance) }]
  return [
    ...row('Plug Ø', diameter),
    ...row('Key width', keyWidth),
    ...row('Over keys', overKeys),
    ...row('Across', across),
    ...row('Across flats', acrossFlats),
  ]
}

const drawing = (design: Design): Drawing => ({
  part: 'bore-plug',
  title: 'Bore plug',
  number: '45',
  views: [front(design), end(design)],
  notes: notes(design),
  asMade: { heading: 'AS PRINTED, AS FILED: write both down', rows: asMade(design) },
  block: printedBlock(design, plugOf(design).tolerance),
})

export const borePlug: Part = {
  name: 'bore-plug',
  title: 'Bore plug',
  of: 'job',
  belongs: (design) => design.borePlug !== undefined,
  solid,
  prints: (design) => [{ name: 'bore-plug', solid: solid(design) }],
  drawing,
}
