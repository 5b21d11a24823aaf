/**
 * Cutter bar: a round bar with a hole across it for the bit, and a set screw from its end. A screw in the wall, and a hole that leans: cutter-bar-wall.ts.
 *
 *        shank                        body            cross hole, along y
 *      ┌──────────┐ fillet                                   │
 *      │          └──────────────────────────────────┬──┬─────┐
 *    ──│─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─ ─│  ╞═════╡── z
 *      │          ┌──────────────────────────────────┴──┴─────┘
 *      └──────────┘                                   │       z = 0, tapped end
 *                                                     nose side, +y
 *
 * Datum A: axis of the body. Lengths from the finished tapped end, into the metal: -z. Drawn and carved at nominal sizes; the thread
 * is carved as its tap drill.
 */
import type { Design } from '../src/design.ts'
import { canBeHardened } from '../src/dimensions/cutter-bar.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { Callout, Drawing, Mark, View } from '../src/drawing/view.ts'
import type { Corner, Outline } from '../src/solid/outline.ts'
import { bore, cut, place, revolve, type Solid } from '../src/solid/solid.ts'
import { barSection, countersunk } from './cutter-bar-section.ts'
import { acrossHole, acrossPlane, alongHole, mouthInFront, wallHoles } from './cutter-bar-wall.ts'
import { barAsMade, barNotes } from './cutter-bar-notes.ts'
import type { Part } from './part.ts'
import { roundedInside, turned, turnedEdge } from './turned.ts'
import { bought, degrees, jobLine, plain, sized, small } from './wording.ts'

const barOf = (design: Design): CutterBar => {
  if (!design.bar) throw new Error('this design has no cutter bar')
  return design.bar
}

/** Whether shank and body are two diameters; a shank under the body is a step without a fillet. */
const isStepped = (bar: CutterBar): boolean => Math.abs(bar.shank.nominal - bar.diameter.nominal) > 1e-9

/** Half section in (radius, z), counter-clockwise. */
export const halfSection = (bar: CutterBar): Outline => {
  const { overall, bodyLength, endChamfer, fillet } = bar
  const [shank, body] = [bar.shank.nominal / 2, bar.diameter.nominal / 2]
  const step: readonly Corner[] = !isStepped(bar)
    ? []
    : [
        { at: [shank, -bodyLength] },
        ...(shank > body && fillet > 0
          ? roundedInside([body, -bodyLength], fillet)
          : [{ at: [body, -bodyLength] as const }]),
      ]
  return [
    { at: [0, -overall] },
    { at: [shank - endChamfer, -overall] },
    { at: [shank, endChamfer - overall] },
    ...step,
    { at: [body, -endChamfer] },
    { at: [body - endChamfer, 0] },
    { at: [0, 0] },
  ]
}

const solid = (design: Design): Solid => {
  const bar = barOf(design)
  const { holeToEnd, screw, mouthChamfer } = bar
  const body = bar.diameter.nominal / 2
  const hole = bar.crossHole.nominal
  const beyond = 1
  if (bar.form !== 'end screw') return cut(revolve(halfSection(bar)), ...wallHoles(bar))
  // The mouths lie on a cylinder: a countersink breaks their high points, the low ones are stoned by hand.
  const mouth = countersunk(hole + 2 * mouthChamfer, hole)
  return cut(
    revolve(halfSection(bar)),
    bore('y', [0, -body - beyond, -holeToEnd], hole, 2 * (body + beyond), { clears: true }),
    bore('-z', [0, 0, beyond], screw.tapDrill.diameter, bar.tapDepth + beyond, { point: 118 }),
    countersunk(bar.countersink, screw.tapDrill.diameter),
    place(mouth, { turn: [-90, 0, 0], move: [0, body, -holeToEnd] }),
    place(mouth, { turn: [90, 0, 0], move: [0, -body, -holeToEnd] }),
  )
}

/** Plain stretches longer than four diameters, clear of whatever stands at their ends. */
const plainStretches = (bar: CutterBar): readonly { readonly from: number; readonly to: number }[] => {
  const { overall, bodyLength, endChamfer, fillet, holeToEnd } = bar
  const [shank, body] = [bar.shank.nominal, bar.diameter.nominal]
  const leaning = (bar.diameter.nominal / 2) * Math.tan((bar.incline * Math.PI) / 180)
  const beforeHole = -holeToEnd - bar.crossHole.nominal / 2 - body / 4 - leaning
  const stretches = isStepped(bar)
    ? [
        { from: -overall + endChamfer + shank / 4, to: -bodyLength - shank / 4, diameter: shank },
        { from: -bodyLength + fillet + body / 4, to: beforeHole, diameter: body },
      ]
    : [{ from: -overall + endChamfer + body / 4, to: beforeHole, diameter: body }]
  return stretches.filter(({ from, to, diameter }) => to - from > 4 * diameter).map(({ from, to }) => ({ from, to }))
}

const front = (bar: CutterBar): View => {
  const { overall, bodyLength, endChamfer, fillet, holeToEnd } = bar
  const [shank, body] = [bar.shank.nominal / 2, bar.diameter.nominal / 2]
  const largest = Math.max(shank, body)
  const stepped = isStepped(bar)
  const marks: Mark[] = [
    { mark: 'outline', kind: 'visible', outline: turned(halfSection(bar)) },
    ...turnedEdge(endChamfer - overall, shank),
    ...(stepped ? turnedEdge(-bodyLength, largest) : []),
    ...turnedEdge(-endChamfer, body),
    { mark: 'line', kind: 'centre', from: [-overall, 0], to: [0, 0] },
    ...(bar.form === 'end screw'
      ? [
          {
            mark: 'arc',
            kind: 'visible',
            centre: [-holeToEnd, 0],
            radius: bar.crossHole.nominal / 2,
            from: 0,
            to: 360,
          } as const,
          { mark: 'centreMark', centre: [-holeToEnd, 0], radius: bar.crossHole.nominal / 2 } as const,
        ]
      : [...mouthInFront(bar), acrossPlane(bar)]),
    { mark: 'plane', letter: 'A', from: [-overall, 0], to: [0, 0], looks: 'down' },
    { mark: 'texture', at: [-bodyLength / 2, body], out: [0, 1], ra: 1.6 },
  ]
  const along = (of: string, length: number): Callout => ({
    callout: 'linear',
    of,
    worth: plain(length),
    axis: 'x',
    a: -length,
    b: 0,
    fromA: of === 'overall' ? endChamfer - shank : -largest,
    fromB: endChamfer - body,
    side: 'bottom',
  })
  const across = (of: 'shank' | 'diameter', radius: number, at: number, side: 'left' | 'right'): Callout => ({
    callout: 'linear',
    of,
    worth: sized(bar[of], { prefix: 'Ø' }, 'h'),
    axis: 'y',
    a: -radius,
    b: radius,
    fromA: at,
    fromB: at,
    side,
    ...(of === 'diameter' ? { hangs: [{ hang: 'datum', letter: 'A' }] } : {}),
  })
  const callouts: Callout[] = [
    along('overall', overall),
    across('diameter', body, -endChamfer, 'right'),
    ...(stepped ? [along('bodyLength', bodyLength), across('shank', shank, endChamfer - overall, 'left')] : []),
    ...(stepped && shank > body && fillet > 0
      ? [
          {
            callout: 'leader',
            of: 'fillet',
            tips: [1, -1].map((side) => ({
              at: [fillet * (1 - Math.SQRT1_2) - bodyLength, side * (body + fillet * (1 - Math.SQRT1_2))],
              out: [1, side],
            })),
            lines: [[small(fillet, { prefix: 'R' })]],
          } satisfies Callout,
        ]
      : []),
    {
      callout: 'leader',
      of: 'endChamfer',
      tips: [1, -1].flatMap((side) => [
        { at: [-endChamfer / 2, side * (body - endChamfer / 2)] as const, out: [1, side] as const },
        { at: [endChamfer / 2 - overall, side * (shank - endChamfer / 2)] as const, out: [-1, side] as const },
      ]),
      lines: [[small(endChamfer), ' × ', degrees(45), ' both ends']],
    },
  ]
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: stepped
      ? [
          { x1: -overall, y1: -shank, x2: -bodyLength, y2: shank },
          { x1: -bodyLength, y1: -body, x2: 0, y2: body },
        ]
      : [{ x1: -overall, y1: -body, x2: 0, y2: body }],
    callouts,
    breaks: plainStretches(bar),
  }
}

const drawing = (design: Design): Drawing => {
  const bar = barOf(design)
  return {
    part: 'cutter-bar',
    title: 'Cutter bar',
    number: '20',
    views:
      bar.form === 'end screw'
        ? [front(bar), barSection(design, bar)]
        : [front(bar), alongHole(design, bar), acrossHole(design, bar)],
    notes: barNotes(design, bar),
    asMade: { heading: 'AS MADE: measure and write down', rows: barAsMade(design, bar) },
    block: {
      material: capital(bar.stock.material),
      stock: [bought(bar.stock.diameter, { prefix: 'Ø' }), ' bar, ', bought(bar.stock.length), ' long'],
      heat: canBeHardened(bar) ? 'none, or as the last note says' : 'none: as bought',
      finish: 'as machined, oiled',
      job: jobLine(design),
    },
  }
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

export const cutterBar: Part = {
  name: 'cutter-bar',
  title: 'Cutter bar',
  of: 'bar',
  belongs: ({ bar }) => bar !== undefined,
  solid,
  drawing,
}
