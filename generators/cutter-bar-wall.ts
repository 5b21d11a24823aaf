/**
 * The end of a cutter bar whose screw is in the wall beside the cross hole; the hole square to the bar, or leaning with its nose side nearer the
 * end. Datum and axes: cutter-bar.ts; the screw comes from -x, across hole and bar.
 *
 *     A-A, view x is z, view y is -y        B-B from the end, view x is -y, view y is x
 *
 *      (─────┐   ┌────┐                          .─────────.
 *      )/////│   │////│                         ////////////\
 *      ( ─ ─ ─ o ─ ─ ─ ─                    ───────────────────   cross hole
 *      )/////│   │////│                     ──────────┬ ┬──────
 *      (─────┘   └────┘                         \/////│ │/////    screw
 *                  nose side                      `───┴ ┴──'
 */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { Callout, Mark, View } from '../src/drawing/view.ts'
import { type Corner, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { bore, place, type Solid } from '../src/solid/solid.ts'
import { countersunk, curve, endTolerance, sizeToShow, spread, tornAt } from './cutter-bar-section.ts'
import { central, degrees, drill, plusMinus, sized, small } from './wording.ts'

const rad = (angle: number): number => (angle * Math.PI) / 180

/** Radii of body, hole, tap drill, thread and countersink; the lean's functions; where the hole's middle lies. */
const sizesOf = (bar: CutterBar) => ({
  body: bar.diameter.nominal / 2,
  hole: bar.crossHole.nominal / 2,
  minor: bar.screw.tapDrill.diameter / 2,
  major: bar.screw.major / 2,
  sink: bar.countersink / 2,
  sin: Math.sin(rad(bar.incline)),
  cos: Math.cos(rad(bar.incline)),
  tan: Math.tan(rad(bar.incline)),
  at: -bar.holeToEnd,
})

/** Cross hole, tapped hole and its countersink, to be cut away. The mouths of a hole that leans are broken by hand. */
export const wallHoles = (bar: CutterBar): readonly Solid[] => {
  const { body, hole, minor, cos, tan, at } = sizesOf(bar)
  const reach = body / cos + 2 * hole * tan + 1
  const mouth = countersunk(2 * (hole + bar.mouthChamfer), 2 * hole)
  return [
    place(bore('y', [0, -reach, 0], 2 * hole, 2 * reach, { clears: true }), {
      turn: [bar.incline, 0, 0],
      move: [0, 0, at],
    }),
    bore('x', [-body - 1, 0, at], 2 * minor, body + 1),
    place(countersunk(bar.countersink, 2 * minor), { turn: [0, -90, 0], move: [-body, 0, at] }),
    ...(bar.incline === 0
      ? [
          place(mouth, { turn: [-90, 0, 0], move: [0, body, at] }),
          place(mouth, { turn: [90, 0, 0], move: [0, -body, at] }),
        ]
      : []),
  ]
}

/** A mouth of the hole on the body: points (x, y, z), `turn` round the hole; `side` 1 is the nose's. */
const mouthAt = (bar: CutterBar, side: 1 | -1, turn: number) => {
  const { body, hole, cos, sin, tan, at } = sizesOf(bar)
  const x = hole * Math.cos(turn)
  const across = hole * Math.sin(turn)
  const y = side * Math.sqrt(Math.max(0, body ** 2 - x ** 2))
  return { x, y, z: at + across * cos + (y + across * sin) * tan }
}

/** The nose side's mouth from in front: view (x, y) = (z, x). */
export const mouthInFront = (bar: CutterBar): readonly Mark[] => [
  {
    mark: 'outline',
    kind: 'visible',
    outline: polygon(
      spread(0, 2 * Math.PI, 72)
        .slice(0, -1)
        .map((turn): Point => {
          const { x, z } = mouthAt(bar, 1, turn)
          return [z, x]
        }),
    ),
  },
  // The screw's axis, from below.
  { mark: 'line', kind: 'centre', from: [-bar.holeToEnd, -bar.diameter.nominal / 2], to: [-bar.holeToEnd, 0] },
]

/** Through the axes of bar and hole, seen from the side away from the screw. */
export const alongHole = (design: Design, bar: CutterBar): View => {
  const { body, hole, minor, major, cos, tan, at } = sizesOf(bar)
  const torn = Math.min(tornAt(bar), at - hole / cos - body * tan - body / 2)
  // The hole's walls at view y: they lean to the end on the nose's side, which is down.
  const wall = (y: number, end: 1 | -1): Point => [at - y * tan + (end * hole) / cos, y]
  const chamfer = bar.endChamfer
  const left = polygon([[torn, -body], wall(-body, -1), wall(body, -1), [torn, body]])
  const right = polygon([
    wall(-body, 1),
    [-chamfer, -body],
    [0, chamfer - body],
    [0, body - chamfer],
    [-chamfer, body],
    wall(body, 1),
  ])
  const behind = ([1, -1] as const).map((side) =>
    curve(
      spread(Math.PI / 2, (3 * Math.PI) / 2).map((turn): Point => {
        const { y, z } = mouthAt(bar, side, turn)
        return [z, -y]
      }),
    ),
  )
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline: left, closed: false },
    { mark: 'line', kind: 'break', from: [torn, -body], to: [torn, body] },
    { mark: 'outline', kind: 'visible', outline: right },
    { mark: 'hatch', outlines: [left, right] },
    ...behind,
    { mark: 'arc', kind: 'visible', centre: [at, 0], radius: minor, from: 0, to: 360 },
    ...(major < hole
      ? [{ mark: 'arc', kind: 'thin', centre: [at, 0], radius: major, from: 90, to: 360 } as const]
      : []),
    { mark: 'line', kind: 'centre', from: [torn, 0], to: [0, 0] },
    { mark: 'line', kind: 'centre', from: [at + body * tan, -body], to: [at - body * tan, body] },
  ]
  const leaning: readonly Callout[] =
    bar.incline === 0
      ? []
      : [
          {
            callout: 'angle',
            of: 'incline',
            worth: degrees(bar.incline, { suffix: 'nose leading' }),
            vertex: [at, 0],
            a1: 270,
            a2: 270 + bar.incline,
            starts: [
              [at, -body],
              [at + body * tan, -body],
            ],
          },
        ]
  return {
    name: 'A-A',
    title: 'A – A',
    place: { is: 'section', from: 'above', least: sizeToShow(bar), aligned: false },
    marks,
    metal: [{ x1: torn, y1: -body, x2: 0, y2: body }],
    callouts: [
      {
        callout: 'linear',
        of: 'holeToEnd',
        worth: plusMinus(bar.holeToEnd, endTolerance(design)),
        axis: 'x',
        a: at,
        b: 0,
        fromA: bar.incline === 0 ? body : 0,
        fromB: body - chamfer,
        side: 'top',
      },
      ...leaning,
      {
        callout: 'leader',
        of: 'mouthChamfer',
        tips: ([1, -1] as const).flatMap((end) =>
          ([1, -1] as const).map((side) => ({ at: wall(side * body, end), out: [-end, side] as const })),
        ),
        lines: [[small(bar.mouthChamfer), ' × ', degrees(45), ' both mouths']],
        small: true,
      },
    ],
  }
}

/** Half of the hole in the section across the bar, `y` from the axis: a band that narrows where the hole leans. */
const halfHole = (bar: CutterBar, y: number): number => {
  const { hole, sin } = sizesOf(bar)
  return Math.sqrt(Math.max(0, hole ** 2 - (y * sin) ** 2))
}

/** Where the screw's countersink meets the round of the body: half its width there. */
const sunkHalf = (bar: CutterBar): number => {
  const { body, minor, sink } = sizesOf(bar)
  let [inside, outside] = [minor, sink]
  for (let step = 0; step < 50; step += 1) {
    const half = (inside + outside) / 2
    if (sink - half > body - Math.sqrt(body ** 2 - half ** 2)) inside = half
    else outside = half
  }
  return inside
}

/** Metal in the section across the bar through the hole's middle. */
export const acrossMetal = (bar: CutterBar): readonly Outline[] => {
  const { body, hole, minor, sink, sin, cos } = sizesOf(bar)
  const onBody = (angle: number): Point => [body * Math.cos(angle), body * Math.sin(angle)]
  const rim = sunkHalf(bar)
  const rimTurn = Math.asin(rim / body)
  // From the hole down the screw's right wall to where its countersink begins.
  const down: readonly Point[] = [
    [minor, -halfHole(bar, minor)],
    [minor, -(body - (sink - minor))],
  ]
  const arc = (from: number, to: number): Corner => ({ at: onBody(from), bulge: Math.tan((to - from) / 4) })
  const start = rimTurn - Math.PI / 2
  if (hole <= body * sin + 1e-9) {
    // The hole does not reach the outside in this plane: one piece of metal all round it.
    const all = 2 * Math.PI - 2 * rimTurn
    const reach = hole / sin
    const first = Math.asin(minor / reach)
    const round = spread(-first, first - 2 * Math.PI, 72).map(
      (turn): Point => [
        -reach * Math.sin(turn),
        -halfHole(bar, reach * Math.sin(turn)) * Math.sign(Math.cos(turn) || 1),
      ],
    )
    return [
      [
        ...polygon(down),
        arc(start, start + all / 2),
        arc(start + all / 2, start + all),
        { at: onBody(start + all) },
        ...polygon(down.toReversed().map(([x, y]): Point => [-x, y])),
        ...polygon(round.toReversed().slice(1, -1)),
      ],
    ]
  }
  const ends = Math.sqrt(body ** 2 - hole ** 2) / cos
  const turn = Math.acos(Math.min(1, ends / body))
  const edge = (from: number, to: number, side: 1 | -1): readonly Corner[] =>
    polygon(spread(from, to, sin === 0 ? 1 : 24).map((y): Point => [y, side * halfHole(bar, y)]))
  const right: Outline = [...polygon(down), arc(start, -turn), ...edge(ends, minor, -1).slice(0, -1)]
  const left: Outline = [
    ...edge(-minor, -ends, -1).slice(0, -1),
    arc(Math.PI + turn, 2 * Math.PI - rimTurn - Math.PI / 2),
    { at: onBody(-rimTurn - Math.PI / 2) },
    { at: [-minor, -(body - (sink - minor))] },
  ]
  const top: Outline = [arc(turn, Math.PI - turn), ...edge(-ends, ends, 1).slice(0, -1)]
  return [top, left, right]
}

/** Across the bar through the hole's middle, seen from its end. */
export const acrossHole = (design: Design, bar: CutterBar): View => {
  const { body, hole, minor, major, sink } = sizesOf(bar)
  const metal = acrossMetal(bar)
  const { screw } = bar
  const through = design.spec.drafting.convention === 'asme' ? 'thru' : 'through'
  const rim = sunkHalf(bar)
  const threadFrom = -halfHole(bar, major)
  const threadTo = -(body - Math.max(0, sink - major))
  const middle = (threadFrom + threadTo) / 2
  return {
    name: 'B-B',
    title: 'B – B',
    place: { is: 'section', from: 'right', least: sizeToShow(bar), aligned: false },
    marks: [
      ...metal.map((outline): Mark => ({ mark: 'outline', kind: 'visible', outline })),
      { mark: 'hatch', outlines: metal },
      // What closes hole and screw behind the cut.
      ...(metal.length > 1
        ? [-1, 1].map((side): Mark => {
            const turn = Math.acos(Math.min(1, Math.sqrt(body ** 2 - hole ** 2) / Math.cos(rad(bar.incline)) / body))
            return {
              mark: 'arc',
              kind: 'visible',
              centre: [0, 0],
              radius: body,
              from: ((side === 1 ? -turn : Math.PI - turn) * 180) / Math.PI,
              to: ((side === 1 ? turn : Math.PI + turn) * 180) / Math.PI,
            }
          })
        : []),
      {
        mark: 'line',
        kind: 'visible',
        from: [-rim, -Math.sqrt(body ** 2 - rim ** 2)],
        to: [rim, -Math.sqrt(body ** 2 - rim ** 2)],
      },
      {
        mark: 'line',
        kind: 'visible',
        from: [-minor, -(body - (sink - minor))],
        to: [minor, -(body - (sink - minor))],
      },
      ...[1, -1].map(
        (side): Mark => ({
          mark: 'line',
          kind: 'thin',
          from: [side * major, threadFrom],
          to: [side * major, threadTo],
        }),
      ),
      { mark: 'line', kind: 'centre', from: [-body, 0], to: [body, 0] },
      { mark: 'line', kind: 'centre', from: [0, -body], to: [0, body] },
    ],
    metal: [{ x1: -body, y1: -body, x2: body, y2: body }],
    callouts: [
      {
        callout: 'linear',
        of: 'crossHole',
        worth: sized(bar.crossHole, { prefix: 'Ø' }),
        axis: 'y',
        a: -hole,
        b: hole,
        fromA: bar.incline === 0 ? body * 0.99 : 0,
        fromB: bar.incline === 0 ? body * 0.99 : 0,
        side: 'right',
        hangs: [central(design, 'crossHoleCentral', either(design.spec.units, 0.1, 0.004))],
      },
      {
        callout: 'leader',
        of: 'screw',
        also: ['screw.tapDrill'],
        tips: [1, -1].map((side) => ({ at: [side * minor, middle], out: [side, -1] })),
        lines: [
          [`${screw.callout} ${through} the wall`],
          ['drill ', ...drill(screw.tapDrill.name, screw.tapDrill.diameter)],
        ],
      },
      {
        callout: 'leader',
        of: 'countersink',
        tips: [1, -1].map((side) => ({
          at: [side * rim, -Math.sqrt(body ** 2 - rim ** 2)] as const,
          out: [side, -1] as const,
        })),
        lines: [[small(bar.countersink, { prefix: 'Ø' }), ' × ', degrees(90)]],
      },
    ],
  }
}

/** The plane of B-B, in the front view. */
export const acrossPlane = (bar: CutterBar): Mark => ({
  mark: 'plane',
  letter: 'B',
  from: [-bar.holeToEnd, -bar.diameter.nominal / 2],
  to: [-bar.holeToEnd, bar.diameter.nominal / 2],
  looks: 'left',
})
