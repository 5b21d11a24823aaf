/**
 * Tool bit: a blank of high-speed steel with a nose ground on it, rake face up, nose to the left.
 *
 *      edge ┌─rake──┐──────────────────────┐ ─┬─
 *            \      │                      │  │ size        x back from the edge, z up from the bottom
 *    end relief\    │                      │  │
 *               └───┴──────────────────────┘ ─┴─
 *           ├───────┤ nose length, to the neck
 *           ├──────────── length ──────────┤
 *
 * Datum: the cutting edge; the blank's own bottom and middle plane. The nose's planes and corners are worked out in tool-bit-nose.ts;
 * views and solid both stand on them.
 */
import type { Design } from '../src/design.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import type { Callout, Drawing, Mark, View } from '../src/drawing/view.ts'
import { type Corner, mirrored, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import type { Part } from './part.ts'
import { bitSolid, blankSection, edgeHeight, halfWidthAt, tan } from './tool-bit-nose.ts'
import { edgeSize, lengthSize, noseSize } from './tool-bit-limits.ts'
import { bitChecks, bitNotes } from './tool-bit-notes.ts'
import { bought, degrees, jobLine, most, plain, plusMinus, sized } from './wording.ts'
import { either } from '../src/dimensions/makeable.ts'

const bitOf = (design: Design): ToolBit => {
  if (!design.bit) throw new Error('this design has no tool bit')
  return design.bit
}

/** The blank's top: the flat of a round one. */
const top = (bit: ToolBit): number => bit.size - (bit.flat ?? 0)

/** The side, rake face up: view (x, y) = (x, z). */
const side = (design: Design, bit: ToolBit): View => {
  const { length, noseLength, rake, endRelief } = bit
  const height = edgeHeight(bit)
  const setBack = height * tan(endRelief)
  const neck = height - noseLength * tan(rake)
  const marks: Mark[] = [
    {
      mark: 'outline',
      kind: 'visible',
      outline: polygon([
        [0, height],
        [setBack, 0],
        [length, 0],
        [length, top(bit)],
        [noseLength, top(bit)],
        [noseLength, neck],
      ]),
    },
    { mark: 'line', kind: 'visible', from: [noseLength, 0], to: [noseLength, neck] },
    {
      mark: 'arrow',
      from: [-0.7 * bit.size, 0],
      to: [-0.7 * bit.size, 0.4 * height],
      text: 'cut this way',
    },
    { mark: 'texture', at: [0.65 * noseLength, height - 0.65 * noseLength * tan(rake)], out: [0, 1], ra: 0.8 },
  ]
  const callouts: Callout[] = [
    {
      callout: 'linear',
      of: 'length',
      worth: sized(lengthSize(design, bit)),
      axis: 'x',
      a: 0,
      b: length,
      fromA: height,
      fromB: top(bit),
      side: 'top',
    },
    {
      callout: 'angle',
      of: 'rake',
      worth: degrees(rake, { suffix: 'rake' }),
      vertex: [0, height],
      a1: 180 - rake,
      a2: 180,
      starts: [
        [0, height],
        [0, height],
      ],
    },
    {
      callout: 'angle',
      of: 'endRelief',
      worth: degrees(endRelief, { suffix: 'end relief' }),
      vertex: [0, height],
      a1: 270,
      a2: 270 + endRelief,
      starts: [
        [0, height],
        [setBack, 0],
      ],
    },
  ]
  return {
    name: 'front',
    place: { is: 'front' },
    marks,
    metal: [
      { x1: 0, y1: 0, x2: noseLength, y2: height },
      { x1: noseLength, y1: 0, x2: length, y2: top(bit) },
    ],
    callouts,
  }
}

/**
 * One side of the nose on the raked face, from above, y positive: from the middle of the edge to the shoulder. The neck's radius is drawn as
 * large as it may be, where the shoulder is high enough for it.
 */
export const faceEdge = (bit: ToolBit): readonly Corner[] => {
  const { noseLength, cornerRadius, neckRadius } = bit
  const taper = bit.backTaperEffective
  const slope = tan(taper)
  const half = (x: number): number => bit.noseWidth.nominal / 2 - x * slope
  const [sin, cos] = [Math.sin((taper * Math.PI) / 180), Math.cos((taper * Math.PI) / 180)]
  const corner: readonly Corner[] =
    cornerRadius > 0
      ? [
          { at: [0, half(cornerRadius) - cornerRadius / cos], bulge: -Math.tan(((90 + taper) * Math.PI) / 720) },
          {
            at: [cornerRadius + cornerRadius * sin, half(cornerRadius) - cornerRadius / cos + cornerRadius * cos],
          },
        ]
      : [{ at: [0, half(0)] }]
  const middle = neckEnds(bit)
  const neck: readonly Corner[] = hasNeck(bit)
    ? [
        {
          at: [noseLength - neckRadius - neckRadius * sin, middle - neckRadius * cos],
          bulge: Math.tan(((90 + taper) * Math.PI) / 720),
        },
        { at: [noseLength, middle] },
      ]
    : [{ at: [noseLength, half(noseLength)] }]
  return [...corner, ...neck]
}

/** y at which the neck's radius would end on the shoulder. */
const neckEnds = ({ noseWidth, noseLength, neckRadius, backTaperEffective }: ToolBit): number =>
  noseWidth.nominal / 2 -
  (noseLength - neckRadius) * tan(backTaperEffective) +
  neckRadius / Math.cos((backTaperEffective * Math.PI) / 180)

/** Whether the shoulder beside the nose is higher than the neck's radius, so that there is a corner for it. */
export const hasNeck = (bit: ToolBit): boolean => neckEnds(bit) < shoulderHalf(bit)

/** Half the width of the blank where the nose leaves it, seen from above. */
const shoulderHalf = (bit: ToolBit): number => bit.size / 2

/** From above: view (x, y) = (x, y). */
const above = (design: Design, bit: ToolBit): View => {
  const { noseLength, length, cornerRadius, neckRadius } = bit
  const half = bit.noseWidth.nominal / 2
  const shoulder = shoulderHalf(bit)
  const edge = faceEdge(bit)
  const upper: readonly Corner[] = [...edge, { at: [noseLength, shoulder] }, { at: [length, shoulder] }]
  const outline: Outline = mirroredAlong(upper)
  const tips = (at: Point, out: Point) =>
    [1, -1].map((sign) => ({ at: [at[0], sign * at[1]] as const, out: [out[0], sign * out[1]] as const }))
  const neckAt = edge.at(-1)?.at ?? [noseLength, half]
  const inner = cornerRadius * (1 - Math.SQRT1_2)
  return {
    name: 'from above',
    place: { is: 'seen', from: 'above' },
    marks: [
      { mark: 'outline', kind: 'visible', outline },
      { mark: 'line', kind: 'visible', from: [noseLength, neckAt[1]], to: [noseLength, -neckAt[1]] },
      ...(bit.shape === 'round'
        ? [1, -1].map((sign): Mark => {
            const y = sign * Math.sqrt(Math.max((bit.size / 2) ** 2 - (top(bit) - bit.size / 2) ** 2, 0))
            return { mark: 'line', kind: 'visible', from: [noseLength, y], to: [length, y] }
          })
        : []),
      { mark: 'line', kind: 'centre', from: [0, 0], to: [length, 0] },
    ],
    metal: [
      { x1: 0, y1: -half, x2: noseLength, y2: half },
      { x1: noseLength, y1: -shoulder, x2: length, y2: shoulder },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'noseWidth',
        worth: sized(noseSize(design, bit)),
        axis: 'y',
        a: -half,
        b: half,
        fromA: cornerRadius,
        fromB: cornerRadius,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'noseLength',
        worth: plusMinus(noseLength, either(design.spec.units, 0.2, 0.01)),
        axis: 'x',
        a: 0,
        b: noseLength,
        fromA: cornerRadius - half,
        fromB: -shoulder,
        side: 'bottom',
      },
      {
        callout: 'leader',
        of: 'backTaper',
        tips: [0.35, 0.5, 0.65].flatMap((part) =>
          tips([part * noseLength, half - part * noseLength * tan(bit.backTaperEffective)], [0.3, 1]),
        ),
        lines: [[degrees(bit.backTaper), ' back taper, both sides']],
      },
      ...(cornerRadius > 0
        ? [
            {
              callout: 'leader',
              of: 'cornerRadius',
              tips: tips([inner, half - inner], [-1, 1]),
              lines: [[plain(cornerRadius, { prefix: 'R' }), ' both corners']],
            } satisfies Callout,
          ]
        : []),
      ...(hasNeck(bit)
        ? [
            {
              callout: 'leader',
              of: 'neckRadius',
              tips: tips([noseLength - 0.29 * neckRadius, neckAt[1] - 0.71 * neckRadius], [-0.3, 1]),
              lines: [[most(neckRadius, { prefix: 'R' })]],
            } satisfies Callout,
          ]
        : []),
    ],
  }
}

/** A contour from its upper half, left to right, and the mirror image below. */
const mirroredAlong = (upper: readonly Corner[]): Outline => {
  const below = mirrored(upper, 'y = 0')
  // `mirrored` turns the run round: right to left below joins left to right above.
  return [...below, ...upper]
}

/** From the nose: view (x, y) = (-y, z). */
const fromNose = (design: Design, bit: ToolBit): View => {
  const height = edgeHeight(bit)
  const half = bit.noseWidth.nominal / 2
  const setBack = height * tan(bit.endRelief)
  const foot = halfWidthAt(bit, setBack, 0)
  const round = bit.shape === 'round'
  const down = round ? lowestOnRound(bit) : 0
  const footAt: Point = [half + (foot - half) * ((height - down) / height), down]
  return {
    name: 'from the nose',
    place: { is: 'seen', from: 'left' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: blankSection(bit) },
      ...[1, -1].map(
        (sign): Mark => ({
          mark: 'line',
          kind: 'visible',
          from: [sign * half, height],
          to: [sign * footAt[0], footAt[1]],
        }),
      ),
      ...(height < top(bit) - 1e-9
        ? [{ mark: 'line', kind: 'visible', from: [-half, height], to: [half, height] } satisfies Mark]
        : []),
      { mark: 'line', kind: 'centre', from: [0, 0], to: [0, bit.size] },
      ...(round
        ? [
            {
              mark: 'line',
              kind: 'centre',
              from: [-bit.size / 2, bit.size / 2],
              to: [bit.size / 2, bit.size / 2],
            } satisfies Mark,
          ]
        : []),
    ],
    metal: [{ x1: -bit.size / 2, y1: 0, x2: bit.size / 2, y2: bit.size }],
    callouts: [
      round
        ? {
            callout: 'linear',
            of: 'size',
            worth: plain(bit.size, { prefix: 'Ø' }),
            axis: 'x',
            a: -bit.size / 2,
            b: bit.size / 2,
            fromA: bit.size / 2,
            fromB: bit.size / 2,
            side: 'top',
          }
        : {
            callout: 'linear',
            of: 'size',
            worth: plain(bit.size, { prefix: '□' }),
            axis: 'y',
            a: 0,
            b: bit.size,
            fromA: -bit.size / 2,
            fromB: -bit.size / 2,
            side: 'left',
          },
      ...(round
        ? [
            {
              callout: 'linear',
              of: 'edgeHeight',
              worth: sized(edgeSize(design, bit)),
              axis: 'y',
              a: 0,
              b: height,
              fromA: 0,
              fromB: -half,
              side: 'left',
            } satisfies Callout,
          ]
        : []),
      ...(bit.flat === undefined
        ? []
        : [
            {
              callout: 'leader',
              of: 'flat',
              tips: [0.5, 0.7, -0.5, -0.7].map((part) => ({
                at: [part * Math.sqrt((bit.size / 2) ** 2 - (top(bit) - bit.size / 2) ** 2), top(bit)] as const,
                out: [part, 1] as const,
              })),
              lines: [['flat for the screw, ', plain(bit.flat), ' deep']],
              small: true,
            } satisfies Callout,
          ]),
      {
        callout: 'angle',
        of: 'sideRelief',
        worth: degrees(bit.sideRelief, { suffix: 'side relief, both' }),
        vertex: [half, height],
        a1: 270 - bit.sideRelief,
        a2: 270,
        starts: [
          [half - height * tan(bit.sideRelief), 0],
          [half, 0],
        ],
      },
    ],
  }
}

/** Where a side of the nose leaves a round blank, z over the bottom. */
const lowestOnRound = (bit: ToolBit): number => {
  const height = edgeHeight(bit)
  const half = bit.noseWidth.nominal / 2
  const foot = halfWidthAt(bit, height * tan(bit.endRelief), 0)
  let [inside, outside] = [height, 0]
  for (let step = 0; step < 60; step += 1) {
    const z = (inside + outside) / 2
    const y = half + (foot - half) * ((height - z) / height)
    if (Math.hypot(y, z - bit.size / 2) < bit.size / 2) inside = z
    else outside = z
  }
  return inside
}

const drawing = (design: Design): Drawing => {
  const bit = bitOf(design)
  const { units } = design.spec
  return {
    part: 'tool-bit',
    title: 'Tool bit',
    number: '30',
    views: [side(design, bit), above(design, bit), fromNose(design, bit)],
    notes: bitNotes(design, bit),
    asMade: { heading: 'CHECK with calipers, write down', rows: bitChecks(design, bit) },
    block: {
      material: `HSS ${bit.shape} blank, hardened`,
      stock: [
        bought(bit.size, { prefix: bit.shape === 'round' ? 'Ø' : '□' }),
        ', cut to ',
        bought(bit.length),
        ' last',
      ],
      heat: 'none: keep it cool',
      finish: 'stone face, end and sides',
      limits: units === 'mm' ? 'ISO 2768 - m, angles ±0.5°' : '.XX ±.01  .XXX ±.005  ANGLES ±.5°',
      surface: units === 'mm' ? 'Ra 0.8 where ground' : '32 µin where ground',
      edges: 'blank corners as bought',
      job: jobLine(design),
    },
  }
}

export const toolBit: Part = {
  name: 'tool-bit',
  title: 'Tool bit',
  // A V and a round nose are not drawn here.
  // Of a bit that leans, and of a round one with its flat at the side, there is no sheet.
  belongs: ({ bit, bar }) =>
    bit !== undefined &&
    (bit.form ?? 'flat') === 'flat' &&
    bit.leaning === undefined &&
    (bar?.form !== 'side screw' || bit.shape === 'square'),
  solid: (design) => bitSolid(bitOf(design)),
  drawing,
}
