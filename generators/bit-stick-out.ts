/**
 * The bit as it is set in its bar: how far it stands out, what a caliper reads over bar and nose, where it lies from the bar's end. The view's x is z
 * and its y is -y, as in the bar's section A-A: the nose is below.
 *
 *      (───────┌ ─ ┐──┐.
 *      (       │   │  │ over bar and nose
 *      (       │   │  │
 *      (───────└───┘──┘'  ┬
 *              └──/       ┴ projection
 *
 * The solid is the bar's end without its holes and the bit in it, as one: printed, it is tried in the slice of the uncut hub before metal is cut.
 */
import type { Design } from '../src/design.ts'
import type { CutterBar, ToolBit } from '../src/dimensions/types.ts'
import type { Callout, Drawing, Mark, Notes, View } from '../src/drawing/view.ts'
import { circle, type Point, polygon } from '../src/solid/outline.ts'
import { extrude, join, place, type Solid } from '../src/solid/solid.ts'
import { stroking } from './cautions.ts'
import { tornAt } from './cutter-bar-section.ts'
import type { Part } from './part.ts'
import { bitSolid, top } from './tool-bit-nose.ts'
import { bought, coarse, degrees, jobLine, plain, plusMinus } from './wording.ts'

const heldIn = (design: Design): { readonly bar: CutterBar; readonly bit: ToolBit } => {
  const { bar, bit } = design
  if (!bar || !bit) throw new Error('this design has no bit in a bar')
  return { bar, bit }
}

const rad = (angle: number): number => (angle * Math.PI) / 180

/** Where the edge is when the bit is set: its distance from the axis, and z. */
const edgeOf = ({ bar, bit }: ReturnType<typeof heldIn>): { readonly out: number; readonly z: number } => ({
  out: bar.diameter.nominal / 2 + bar.projection,
  // Its leading face is `bitToEnd` from the end there, and the edge as far behind that face as it was ground.
  z: -bar.bitToEnd - (top(bit) - bit.edgeHeight) / Math.cos(rad(bar.incline)),
})

const solid = (design: Design): Solid => {
  const held = heldIn(design)
  const { bar, bit } = held
  const { out, z } = edgeOf(held)
  return join(
    extrude(circle(bar.diameter.nominal), tornAt(bar), 0),
    place(place(place(bitSolid(bit), { move: [0, 0, -bit.edgeHeight] }), { turn: [0, 0, -90] }), {
      turn: [bar.incline, 0, 0],
      move: [0, out, z],
    }),
  )
}

/** The bit's outline in the view: seen where it stands out, hidden in the bar. */
const bitMarks = (held: ReturnType<typeof heldIn>): readonly Mark[] => {
  const { bar, bit } = held
  const { out, z } = edgeOf(held)
  const body = bar.diameter.nominal / 2
  const [sin, cos] = [Math.sin(rad(bar.incline)), Math.cos(rad(bar.incline))]
  const at = (back: number, up: number): Point => {
    const over = up - bit.edgeHeight
    return [z - back * sin + over * cos, -(out - back * cos - over * sin)]
  }
  const { noseLength, length, edgeHeight, rake, endRelief } = bit
  const outline: readonly Point[] = [
    at(0, edgeHeight),
    at(edgeHeight * Math.tan(rad(endRelief)), 0),
    at(length, 0),
    at(length, top(bit)),
    at(noseLength, top(bit)),
    at(noseLength, edgeHeight - noseLength * Math.tan(rad(rake))),
  ]
  const line = (from: Point, to: Point): readonly Mark[] =>
    Math.hypot(to[0] - from[0], to[1] - from[1]) < 1e-9
      ? []
      : [{ mark: 'line', kind: (from[1] + to[1]) / 2 < -body ? 'visible' : 'hidden', from, to }]
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from
    if ((from[1] + body) * (to[1] + body) >= 0) return line(from, to)
    const part = (-body - from[1]) / (to[1] - from[1])
    const meets: Point = [from[0] + part * (to[0] - from[0]), -body]
    return [...line(from, meets), ...line(meets, to)]
  })
}

const view = (design: Design): View => {
  const held = heldIn(design)
  const { bar, bit } = held
  const { out, z } = edgeOf(held)
  const body = bar.diameter.nominal / 2
  const torn = tornAt(bar)
  const { endChamfer } = bar
  const upright: readonly Callout[] =
    bar.incline !== 0
      ? []
      : [
          {
            callout: 'linear',
            of: 'bitToEnd',
            worth: coarse(bar.bitToEnd),
            axis: 'x',
            a: -bar.bitToEnd,
            b: 0,
            fromA: body - 0.1 * body,
            fromB: body - endChamfer,
            side: 'top',
          },
          {
            callout: 'linear',
            of: 'bitLength',
            worth: plain(bar.bitLength),
            axis: 'y',
            a: -out,
            b: bar.bitLength - out,
            fromA: z,
            fromB: z - bit.size,
            side: 'left',
          },
        ]
  return {
    name: 'front',
    place: { is: 'front' },
    marks: [
      {
        mark: 'outline',
        kind: 'visible',
        outline: polygon([
          [torn, -body],
          [-endChamfer, -body],
          [0, endChamfer - body],
          [0, body - endChamfer],
          [-endChamfer, body],
          [torn, body],
        ]),
        closed: false,
      },
      { mark: 'line', kind: 'break', from: [torn, -body], to: [torn, body] },
      { mark: 'line', kind: 'visible', from: [-endChamfer, -body], to: [-endChamfer, body] },
      { mark: 'line', kind: 'centre', from: [torn, 0], to: [0, 0] },
      ...bitMarks(held),
    ],
    metal: [
      { x1: torn, y1: -body, x2: 0, y2: body },
      { x1: z - bit.size, y1: -out, x2: z, y2: -body },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'projection',
        worth: plusMinus(bar.projection, bar.setting),
        axis: 'y',
        a: -out,
        b: -body,
        fromA: z,
        fromB: -endChamfer,
        side: 'right',
      },
      {
        callout: 'linear',
        of: 'overBarAndNose',
        worth: coarse(bar.overBarAndNose),
        axis: 'y',
        a: -out,
        b: body,
        fromA: z,
        fromB: torn,
        side: 'left',
      },
      ...upright,
      {
        callout: 'leader',
        of: 'noseLength',
        tips: [0.3, 0.6].map((part) => ({ at: [z, part * bar.projection - out] as const, out: [1, -0.6] as const })),
        lines: [['nose ', plain(bit.noseLength), ' long']],
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const { bar, bit } = heldIn(design)
  const staged = bar.stages.length > 1
  return [
    {
      heading: 'SETTING THE BIT',
      numbered: true,
      lines: [
        ['Wipe bar and hole. Bit in, nose on the dotted side, its face to the end of the bar.'],
        ['Screw just snug. Straightedge across the nose: square to the bar.'],
        [
          'Push the bit out to ',
          coarse(bar.projection),
          ': over bar and nose the bar as miked + ',
          coarse(bar.projection),
          ...(staged ? [', the last setting.'] : ['.']),
        ],
        [
          bar.form === 'end screw'
            ? 'Screw tight. Measure again: it must not have moved.'
            : "Hold the bit against its hole on the holder's side, screw tight. Measure again.",
        ],
        ['Touch off anew after every setting.'],
      ],
    },
    {
      heading: 'BEFORE METAL IS CUT',
      lines: [
        ['The model is the end of the bar with the bit set.'],
        ...(staged
          ? [['It is the last setting: it enters the bore only where the slot is cut to the one before.']]
          : design.hubRing?.uncutBore === undefined
            ? []
            : [['Printed, it must pass the uncut slice of the hub.']]),
        ...(bit.leaning
          ? [['The bit leans ', degrees(bar.incline), ': measure straight out, not along the bit.']]
          : []),
      ],
    },
    stroking(design),
  ]
}

const drawing = (design: Design): Drawing => {
  const { bar, bit } = heldIn(design)
  return {
    part: 'bit-stick-out',
    title: 'Bit set in its bar',
    number: '32',
    views: [view(design)],
    notes: notes(design),
    asMade: {
      heading: 'AS SET: over bar and nose, write down',
      rows: bar.stages.slice(0, 5).map(({ projection }, index) => ({
        what: bar.stages.length > 1 ? `Setting ${index + 1}` : 'Over bar and nose',
        limits: [plusMinus(bar.diameter.nominal + projection, bar.setting)],
      })),
    },
    block: {
      material: 'the bar and its bit',
      stock: [
        'none: ',
        bought(bit.size, { prefix: bit.shape === 'round' ? 'Ø' : '□' }),
        ` bit, screw ${bar.screw.thread}`,
      ],
      heat: 'none',
      finish: 'wiped clean',
      limits: 'as the parts’ own sheets say',
      surface: 'as the parts’ own sheets say',
      edges: 'as the parts’ own sheets say',
      job: jobLine(design),
    },
  }
}

export const bitStickOut: Part = {
  name: 'bit-stick-out',
  title: 'Bit set in its bar',
  of: 'bar',
  // Pulled, the bit is turned over, and the bar's own sheet says so.
  belongs: ({ bar, bit, asked }) => bar !== undefined && bit !== undefined && asked?.stroke !== 'pull',
  solid,
  drawing,
}
