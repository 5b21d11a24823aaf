/**
 * Printed slices of the hub, one finished and one uncut, to try bar, key and shaft in. Sizes and why: src/dimensions/hub-ring.ts.
 *
 * Datum: the bore's axis, the first feature on +x; it lies on the bed, letters up. The drawing has finished sizes, the first feature up.
 */
import type { Design } from '../src/design.ts'
import { type Bored, boredContour } from '../src/dimensions/contour.ts'
import type { HubRing } from '../src/dimensions/hub-ring.ts'
import type { AsMadeRow, Callout, Drawing, Notes, View } from '../src/drawing/view.ts'
import { circle, type Outline, type Point } from '../src/solid/outline.ts'
import { cut, extrude, join, type Solid } from '../src/solid/solid.ts'
import { type Part, type Print, sideBySide } from './part.ts'
import { asPrinted, goCheck, offsetWords, printedBlock, printingOrder, raisedRound } from './printed.ts'
import { coarse, plain, round, small } from './wording.ts'

const ringOf = (design: Design): HubRing => {
  if (!design.hubRing) throw new Error('this design has no hub ring')
  return design.hubRing
}

/** The finished ring's void; finished, or with the printer's offset of a hole taken off all round. */
export const voidOf = (design: Design, offset = 0): Bored => {
  const { section } = design
  const { finishedBore, slotWidth = 0, across, overFloors, floor, acrossFlats, room } = ringOf(design)
  const radius = finishedBore / 2 - offset
  const { at, socket } = section
  if (socket && acrossFlats !== undefined)
    return {
      radius,
      at,
      notch: { is: 'vee', sides: socket.sides, flat: acrossFlats / 2 - offset, tip: section.cornerRadius },
    }
  const out =
    across !== undefined ? across - finishedBore / 2 : overFloors !== undefined ? overFloors / 2 : (floor ?? 0)
  return {
    radius,
    at,
    notch: { is: 'slot', half: slotWidth / 2 - offset, floor: out - offset, corner: { is: 'freed', by: room } },
  }
}

/** The same void, wider by `by` all round. */
const wider = ({ radius, at, notch }: Bored, by: number): Bored => ({
  radius: radius + by,
  at,
  notch:
    notch.is === 'slot'
      ? { ...notch, half: notch.half + by, floor: notch.floor + by }
      : notch.is === 'vee'
        ? { ...notch, flat: notch.flat + by }
        : { ...notch, radius: notch.radius + by, floor: notch.floor + by },
})

const outlineOf = (bored: Bored): Outline => (bored.at.length === 0 ? circle(2 * bored.radius) : boredContour(bored))

/** One slice; outside and void step back at the bed, where the first layers spread. */
const slice = (design: Design, bored: Bored, text: string): Solid => {
  const ring = ringOf(design)
  const { thickness, foot } = ring
  const outside = ring.outside - 2 * ring.outsideOffset
  const reach = design.section.cornerReachMost
  const middle = (reach + ring.outside / 2) / 2
  return join(
    cut(
      extrude(circle(outside), 0, thickness, [outlineOf(bored)]),
      ...(foot > 0
        ? [
            extrude(circle(outside + 10), -1, foot, [circle(outside - 2 * foot)]),
            extrude(outlineOf(wider(bored, foot)), -1, foot),
          ]
        : []),
    ),
    ...raisedRound(text, middle, 0.5 * (ring.outside / 2 - reach), 180 + (bored.at[0] ?? 0), thickness),
  )
}

const prints = (design: Design): readonly Print[] => {
  const ring = ringOf(design)
  const finished = voidOf(design, ring.offset)
  const plain = ring.uncutBore
  return [
    { name: 'hub-ring-finished', solid: slice(design, finished, ring.marking[0]) },
    ...(plain === undefined
      ? []
      : [
          {
            name: 'hub-ring-uncut',
            solid: slice(design, { radius: plain / 2 - ring.offset, at: [], notch: finished.notch }, ring.marking[1]),
            move: [0, -(ring.outside + 5), 0] as const,
          },
        ]),
  ]
}

/** Quarter turn, the first feature from its own angle to the top. */
const up = (outline: Outline, first: number): Outline => {
  const [c, s] = [Math.cos(((90 - first) * Math.PI) / 180), Math.sin(((90 - first) * Math.PI) / 180)]
  return outline.map((corner) => ({
    ...corner,
    at: [corner.at[0] * c - corner.at[1] * s, corner.at[0] * s + corner.at[1] * c],
  }))
}

const spots = (radius: number, angles: readonly number[], inwards = false) =>
  angles.map((angle) => {
    const out: Point = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
    return { at: [radius * out[0], radius * out[1]] as const, out: inwards ? ([-out[0], -out[1]] as const) : out }
  })

/** Angles on the drawing where the bore's wall stands, clear of every feature. */
const bareWall = ({ section: { at } }: Design): readonly number[] => {
  const first = at[0] ?? 0
  const sorted = at.map((angle) => (((angle - first + 90) % 360) + 360) % 360).toSorted((a, b) => a - b)
  const gaps = sorted.map((angle, index) => [angle, sorted[index + 1] ?? (sorted[0] ?? 0) + 360] as const)
  return gaps.flatMap(([from, to]) => [0.3, 0.4, 0.6, 0.7].map((part) => from + part * (to - from)))
}

const finishedView = (design: Design): View => {
  const ring = ringOf(design)
  const bored = voidOf(design)
  const { notch, radius } = bored
  const out = ring.outside / 2
  const { across, overFloors, floor } = ring
  const slot = notch.is === 'slot' ? notch : undefined
  const upright = (of: string, value: number, from: number): Callout => ({
    callout: 'linear',
    of,
    worth: coarse(value),
    axis: 'y',
    a: from,
    b: from + value,
    fromA: 0,
    fromB: slot?.half ?? 0,
    side: 'right',
  })
  return {
    name: 'finished',
    place: { is: 'front' },
    title: 'FINISHED',
    marks: [
      { mark: 'outline', kind: 'visible', outline: circle(ring.outside) },
      { mark: 'outline', kind: 'visible', outline: up(boredContour(bored), bored.at[0] ?? 0) },
      { mark: 'centreMark', centre: [0, 0], radius },
    ],
    metal: [{ x1: -out, y1: -out, x2: out, y2: out }],
    callouts: [
      ...(slot
        ? [
            {
              callout: 'linear',
              of: 'slotWidth',
              worth: coarse(2 * slot.half),
              axis: 'x',
              a: -slot.half,
              b: slot.half,
              fromA: slot.floor - ring.room,
              fromB: slot.floor - ring.room,
              side: 'top',
            } satisfies Callout,
            across !== undefined
              ? upright('across', across, -radius)
              : overFloors !== undefined
                ? upright('overFloors', overFloors, -overFloors / 2)
                : upright('floor', floor ?? slot.floor, 0),
            {
              callout: 'leader',
              of: 'room',
              tips: [1, -1].map((side) => ({
                at: [side * (slot.half + ring.room * Math.SQRT1_2), slot.floor + ring.room * Math.SQRT1_2] as const,
                out: [side, 1] as const,
              })),
              lines: [[small(ring.room, { prefix: 'R' }), ' room in the corners']],
              small: true,
            } satisfies Callout,
          ]
        : []),
      ...(notch.is === 'vee' && ring.acrossFlats !== undefined
        ? [
            {
              callout: 'leader',
              of: 'acrossFlats',
              tips: [1, -1].map((side) => {
                const share = Math.PI / notch.sides
                const along = notch.flat * Math.tan(share) * 0.8
                // A point of the flat beside the upper corner.
                const [nx, ny] = [Math.sin(share) * side, Math.cos(share)]
                return {
                  at: [notch.flat * nx - along * ny * side, notch.flat * ny + along * nx * side] as const,
                  out: [nx, ny] as const,
                }
              }),
              lines: [[coarse(ring.acrossFlats), ' across flats']],
            } satisfies Callout,
          ]
        : []),
      {
        callout: 'leader',
        of: 'finishedBore',
        tips: spots(radius, bareWall(design)),
        lines: [[coarse(ring.finishedBore, { prefix: 'Ø' })]],
      },
      {
        callout: 'leader',
        of: 'outside',
        tips: spots(out, [20, 160, 200, 340, 225, 315]),
        lines: [[round(ring.outside), ' both']],
      },
      {
        callout: 'leader',
        of: 'thickness',
        tips: spots(out, [215, 325, 230, 310]),
        lines: [[plain(ring.thickness, { prefix: 't ' }), ' both']],
      },
      {
        callout: 'leader',
        of: 'foot',
        tips: spots(out, [150, 30, 130, 50]),
        lines: [[small(ring.foot), ' × ', small(ring.foot)], ['at the bed, inside and out']],
        small: true,
      },
    ],
  }
}

const uncutView = (ring: HubRing, bore: number): View => {
  const out = ring.outside / 2
  return {
    name: 'uncut',
    title: 'UNCUT',
    place: { is: 'free' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: circle(ring.outside) },
      { mark: 'outline', kind: 'visible', outline: circle(bore) },
      { mark: 'centreMark', centre: [0, 0], radius: bore / 2 },
    ],
    metal: [{ x1: -out, y1: -out, x2: out, y2: out }],
    callouts: [
      {
        callout: 'leader',
        of: 'uncutBore',
        tips: spots(bore / 2, [30, 45, 60, 120, 135, 150, 210, 225, 240, 300, 315, 330]),
        lines: [[coarse(bore, { prefix: 'Ø' })]],
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const ring = ringOf(design)
  const bar = ring.uncutBore !== undefined
  const mates = design.section.kind === 'keyway' ? 'A shaft with its key' : 'A shaft'
  return [
    {
      heading: goCheck(design, ring.tolerance),
      caution: true,
      lines: [
        [`Finished: larger all round than any hub. ${mates} that will not go in here will go into no hub.`],
        ...(bar ? [['Uncut: smaller than any hub. A bar that passes here passes the hub.']] : []),
        ['By hand only: never turn a machine with one on it.'],
      ],
    },
    {
      heading: 'TRY IN THEM',
      numbered: true,
      lines: [
        ...(bar
          ? [
              ['Bit set, bar through the uncut one: it must pass freely.'],
              ['Nose on the floor of the finished one: the bar must stand clear of the bore and of the mouth.'],
            ]
          : []),
        [`${mates} in the finished one: see that it goes, and which way round.`],
      ],
    },
    printingOrder(
      'Print them lying down, letters up, nothing under them.',
      [],
      'Small: file. Large: correct the offset, print again.',
    ),
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, ring.offset, 'The model’s holes are')] },
  ]
}

const asMade = (design: Design): readonly AsMadeRow[] => {
  const { finishedBore, slotWidth, across, overFloors, acrossFlats, uncutBore, tolerance } = ringOf(design)
  const row = (what: string, size: number | undefined): readonly AsMadeRow[] =>
    size === undefined ? [] : [{ what, limits: asPrinted(design, size, tolerance) }]
  return [
    ...row('Finished bore', finishedBore),
    ...row('Slot width', slotWidth),
    ...row('Across', across),
    ...row('Over floors', overFloors),
    ...row('Across flats', acrossFlats),
    ...row('Uncut bore', uncutBore),
  ]
}

const drawing = (design: Design): Drawing => {
  const ring = ringOf(design)
  return {
    part: 'hub-ring',
    title: 'Hub slices',
    number: '43',
    views: [finishedView(design), ...(ring.uncutBore === undefined ? [] : [uncutView(ring, ring.uncutBore)])],
    notes: notes(design),
    asMade: { heading: 'AS PRINTED, AS FILED: write both down', rows: asMade(design) },
    block: printedBlock(design, ring.tolerance),
  }
}

export const hubRing: Part = {
  name: 'hub-ring',
  title: 'Hub slices',
  of: 'job',
  belongs: (design) => design.hubRing !== undefined,
  solid: (design) => sideBySide(prints(design)),
  prints,
  drawing,
}
