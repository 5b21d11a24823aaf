/** The tool bit from above, on its raked face: view (x, y) = (x, y), nose to the left. */
import type { Design } from '../src/design.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { Callout, Mark, View } from '../src/drawing/view.ts'
import { type Corner, mirrored, type Outline, type Point } from '../src/solid/outline.ts'
import { cos, endOnFace, planHalfAngle, sideOnFace, sin, tan, widestAt } from './tool-bit-contour.ts'
import { top } from './tool-bit-nose.ts'
import { degrees, fine, most, plain, plusMinus, sized } from './wording.ts'

/**
 * One side of the nose on the raked face, from above, y positive: from the middle of its end to the shoulder. The neck's radius is drawn as
 * large as it may be, where the shoulder is high enough for it and the side long enough.
 */
export const faceEdge = (bit: ToolBit): readonly Corner[] => {
  const { noseLength, neckRadius, backTaperEffective: taper } = bit
  const neck: readonly Corner[] = hasNeck(bit)
    ? [
        {
          at: [noseLength - neckRadius - neckRadius * sin(taper), neckEnds(bit) - neckRadius * cos(taper)],
          bulge: tan((90 + taper) / 4),
        },
        { at: [noseLength, neckEnds(bit)] },
      ]
    : [{ at: [noseLength, sideOnFace(bit, noseLength)] }]
  return [...endOnFace(bit), ...neck]
}

/** y at which the neck's radius would end on the shoulder. */
const neckEnds = (bit: ToolBit): number =>
  sideOnFace(bit, bit.noseLength - bit.neckRadius) + bit.neckRadius / cos(bit.backTaperEffective)

/** Whether there is a corner for the neck's radius: the shoulder beside the nose higher, and the side longer, than it is. */
export const hasNeck = (bit: ToolBit): boolean =>
  neckEnds(bit) < bit.size / 2 && (endOnFace(bit).at(-1)?.at[0] ?? 0) < bit.noseLength - 1.1 * bit.neckRadius

/** A contour from its upper half, left to right, and the mirror image below. */
const mirroredAlong = (upper: readonly Corner[]): Outline => {
  // `mirrored` turns the run round: right to left below joins left to right above.
  const below = mirrored(upper, 'y = 0')
  return upper[0]?.at[1] === 0 ? [...below.slice(0, -1), ...upper] : [...below, ...upper]
}

const bothSides = ([x, y]: Point, [outX, outY]: Point) =>
  [1, -1].map((sign) => ({ at: [x, sign * y] as const, out: [outX, sign * outY] as const }))

/** What the end is: corners and convex end of a flat one, angle and tip of a V, the radius of a round one. */
const endCallouts = (bit: ToolBit): readonly Callout[] => {
  const { cornerRadius, noseEndRadius, includedAngle, tipRadius } = bit
  const [first, second] = endOnFace(bit)
  if (bit.form === 'round')
    return [
      {
        callout: 'leader',
        of: 'tipRadius',
        tips: [30, 45, 60].flatMap((turn) =>
          bothSides([(tipRadius ?? 0) * (1 - cos(turn)), (tipRadius ?? 0) * sin(turn)], [-cos(turn), sin(turn)]),
        ),
        lines: [[fine(tipRadius ?? 0, { prefix: 'R' }), ' all round the end']],
      },
    ]
  if (bit.form === 'vee') {
    const half = planHalfAngle(bit)
    const [tip, shoulder] = [endOnFace(bit).at(-2)?.at ?? [0, 0], endOnFace(bit).at(-1)?.at ?? [0, 0]]
    const setBack = (tipRadius ?? 0) > 0 ? tip[1] / tan(half) - tip[0] : 0
    const meet: Point = [-setBack, 0]
    const along = (part: number): Point => [
      tip[0] + part * (shoulder[0] - tip[0]),
      tip[1] + part * (shoulder[1] - tip[1]),
    ]
    const leaning = bit.leaning !== undefined
    return [
      leaning
        ? {
            callout: 'leader',
            of: 'includedAngle',
            tips: [0.4, 0.55, 0.7].flatMap((part) => bothSides(along(part), [-sin(half), cos(half)])),
            lines: [[degrees(includedAngle ?? 0), ' between the flanks'], ['as it leans, along the stroke']],
          }
        : {
            callout: 'angle',
            of: 'includedAngle',
            worth: degrees(includedAngle ?? 0),
            vertex: meet,
            a1: 180 - half,
            a2: 180 + half,
            starts: [meet, meet],
          },
      ...((tipRadius ?? 0) > 0
        ? [
            {
              callout: 'leader',
              of: 'tipRadius',
              tips: bothSides([tip[0] / 2, tip[1] / 2], [-1, 0.6]),
              lines: [[fine(tipRadius ?? 0, { prefix: 'R' }), ' tip']],
            } satisfies Callout,
          ]
        : []),
    ]
  }
  const inner = cornerRadius * (1 - Math.SQRT1_2)
  const corner = noseEndRadius === undefined ? first : second
  return [
    ...(cornerRadius > 0
      ? [
          {
            callout: 'leader',
            of: 'cornerRadius',
            tips: bothSides([(corner?.at[0] ?? 0) + inner, bit.noseWidth.nominal / 2 - inner], [-1, 1]),
            lines: [[plain(cornerRadius, { prefix: 'R' }), ' both corners']],
          } satisfies Callout,
        ]
      : []),
    ...(noseEndRadius === undefined
      ? []
      : [
          {
            callout: 'leader',
            of: 'noseEndRadius',
            tips: [0.05, 0.12, 0.2].flatMap((part) => {
              const y = part * bit.noseWidth.nominal
              return bothSides([noseEndRadius - Math.sqrt(noseEndRadius ** 2 - y ** 2), y], [-1, 0.3])
            }),
            lines: [['end convex, ', fine(noseEndRadius, { prefix: 'R' })]],
          } satisfies Callout,
        ]),
  ]
}

/** A shaped nose on a long blank is too small to read: it is drawn again by itself, larger. */
const isSmall = (bit: ToolBit): boolean => bit.form !== undefined && bit.length > 4 * bit.size

const noseCircle = ({ noseLength, noseWidth }: ToolBit) => ({
  centre: [noseLength / 2, 0] as Point,
  radius: Math.hypot(noseLength, noseWidth.nominal) / 2 + 0.15 * noseLength,
})

const outlineOf = (bit: ToolBit): readonly Mark[] => {
  const { noseLength, length } = bit
  const shoulder = bit.size / 2
  const edge = faceEdge(bit)
  const [, neckAt = 0] = edge.at(-1)?.at ?? [0, 0]
  return [
    {
      mark: 'outline',
      kind: 'visible',
      outline: mirroredAlong([...edge, { at: [noseLength, shoulder] }, { at: [length, shoulder] }]),
    },
    { mark: 'line', kind: 'visible', from: [noseLength, neckAt], to: [noseLength, -neckAt] },
    { mark: 'line', kind: 'centre', from: [0, 0], to: [length, 0] },
  ]
}

/** Everything that is said of the nose's shape: width, taper, end and neck. */
const noseCallouts = (bit: ToolBit): readonly Callout[] => {
  const { noseLength, neckRadius } = bit
  const half = bit.noseWidth.nominal / 2
  const [, neckAt = 0] = faceEdge(bit).at(-1)?.at ?? [0, 0]
  const begins = endOnFace(bit).at(-1)?.at[0] ?? 0
  const ends = hasNeck(bit) ? noseLength - neckRadius : noseLength
  const widest = bit.form === undefined ? bit.cornerRadius : widestAt(bit)
  return [
    {
      callout: 'linear',
      of: 'noseWidth',
      worth: sized(bit.groundWidth),
      axis: 'y',
      a: -half,
      b: half,
      fromA: widest,
      fromB: widest,
      side: 'left',
    },
    {
      callout: 'leader',
      of: 'backTaper',
      tips: [0.35, 0.5, 0.65].flatMap((part) => {
        const x = begins + part * (ends - begins)
        return bothSides([x, sideOnFace(bit, x)], [0.3, 1])
      }),
      lines: [[degrees(bit.backTaper), ' back taper, both sides']],
    },
    ...endCallouts(bit),
    ...(hasNeck(bit)
      ? [
          {
            callout: 'leader',
            of: 'neckRadius',
            tips: bothSides([noseLength - 0.29 * neckRadius, neckAt - 0.71 * neckRadius], [-0.3, 1]),
            lines: [[most(neckRadius, { prefix: 'R' })]],
          } satisfies Callout,
        ]
      : []),
  ]
}

/** The whole bit; and its nose by itself where that would be too small to read. */
export const fromAbove = (design: Design, bit: ToolBit): readonly View[] => {
  const { noseLength, length } = bit
  const half = bit.noseWidth.nominal / 2
  const shoulder = bit.size / 2
  const metal = [
    { x1: 0, y1: -half, x2: noseLength, y2: half },
    { x1: noseLength, y1: -shoulder, x2: length, y2: shoulder },
  ]
  const small = isSmall(bit)
  const whole: View = {
    name: 'from above',
    place: { is: 'seen', from: 'above' },
    marks: [
      ...outlineOf(bit),
      ...(bit.shape === 'round'
        ? [1, -1].map((sign): Mark => {
            const y = sign * Math.sqrt(Math.max((bit.size / 2) ** 2 - (top(bit) - bit.size / 2) ** 2, 0))
            return { mark: 'line', kind: 'visible', from: [noseLength, y], to: [length, y] }
          })
        : []),
      ...(small ? [{ mark: 'detail', letter: 'A', ...noseCircle(bit) } as const] : []),
    ],
    metal,
    callouts: [
      {
        callout: 'linear',
        of: 'noseLength',
        worth: plusMinus(noseLength, either(design.spec.units, 0.2, 0.01)),
        axis: 'x',
        a: 0,
        b: noseLength,
        fromA: bit.form === undefined ? bit.cornerRadius - half : 0,
        fromB: -shoulder,
        side: 'bottom',
      },
      ...(small ? [] : noseCallouts(bit)),
    ],
  }
  if (!small) return [whole]
  return [
    whole,
    {
      name: 'A',
      title: 'A',
      place: { is: 'detail', least: bit.noseWidth.nominal / 6, clip: noseCircle(bit) },
      marks: outlineOf(bit),
      metal,
      callouts: noseCallouts(bit),
    },
  ]
}
