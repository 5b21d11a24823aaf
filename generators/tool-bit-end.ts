/** The tool bit from its nose: view (x, y) = (-y, z). */
import type { ToolBit } from '../src/dimensions/types.ts'
import type { Callout, Mark, View } from '../src/drawing/view.ts'
import { type Point, polygon } from '../src/solid/outline.ts'
import { tan } from './tool-bit-contour.ts'
import { blankSection, edgeHeight, halfWidthAt, nosePoints, top } from './tool-bit-nose.ts'
import { degrees, plain, sized } from './wording.ts'

/** Half of the edge as it is seen from the nose, from the middle to where it is widest: (y, z). */
const edgeSeen = (bit: ToolBit): readonly Point[] => {
  const height = edgeHeight(bit)
  if (bit.form === undefined)
    return [
      [0, height],
      [bit.noseWidth.nominal / 2, height],
    ]
  const seen = nosePoints(bit)
    .face.filter(([, y]) => y >= 0)
    .map(([, y, z]): Point => [y, z])
  const widest = bit.form === 'round' ? seen.filter(([y], index) => y >= (seen[index - 1]?.[0] ?? 0)) : seen
  return widest
}

export const fromNose = (bit: ToolBit): View => {
  const edge = edgeSeen(bit)
  const [half, height] = edge.at(-1) ?? [0, 0]
  const foot = footOf(bit)
  const round = bit.shape === 'round'
  const down = round ? lowestOnRound(bit, [half, height], foot) : 0
  const footAt: Point = [half + (foot - half) * ((height - down) / height), down]
  const outline = (sign: 1 | -1): Mark => ({
    mark: 'outline',
    kind: 'visible',
    outline: polygon(edge.map(([y, z]): Point => [sign * y, z])),
    closed: false,
  })
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
      // Level with the blank's top it is drawn there already.
      ...(height < top(bit) - 1e-9 ? [outline(1), outline(-1)] : []),
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
      ...(bit.edgeLimits
        ? [
            {
              callout: 'linear',
              of: 'edgeHeight',
              worth: sized(bit.edgeLimits),
              axis: 'y',
              a: 0,
              b: edgeHeight(bit),
              fromA: 0,
              fromB: bit.form === undefined ? -half : 0,
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

/** Half the nose's width at the bottom, where the side comes nearest to the end. */
const footOf = (bit: ToolBit): number =>
  bit.form === undefined
    ? halfWidthAt(bit, edgeHeight(bit) * tan(bit.endRelief), 0)
    : Math.max(...nosePoints(bit).bottom.map(([, y]) => y))

/** Where a side of the nose, from its upper corner to its foot, leaves a round blank, z over the bottom. */
const lowestOnRound = (bit: ToolBit, [half, height]: Point, foot: number): number => {
  let [inside, outside] = [height, 0]
  for (let step = 0; step < 60; step += 1) {
    const z = (inside + outside) / 2
    const y = half + (foot - half) * ((height - z) / height)
    if (Math.hypot(y, z - bit.size / 2) < bit.size / 2) inside = z
    else outside = z
  }
  return inside
}
