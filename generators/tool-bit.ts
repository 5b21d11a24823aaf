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
import { polygon } from '../src/solid/outline.ts'
import type { Part } from './part.ts'
import { fromAbove } from './tool-bit-above.ts'
import { tan } from './tool-bit-contour.ts'
import { fromNose } from './tool-bit-end.ts'
import { lengthSize } from './tool-bit-limits.ts'
import { bitSolid, edgeHeight, nosePoints, top } from './tool-bit-nose.ts'
import { bitChecks, bitNotes } from './tool-bit-notes.ts'
import { bought, degrees, jobLine, sized } from './wording.ts'

const bitOf = (design: Design): ToolBit => {
  if (!design.bit) throw new Error('this design has no tool bit')
  return design.bit
}

/** Where the flanks of a V meet the nose's sides: an edge from the face to the bottom. */
const shoulder = (bit: ToolBit): readonly Mark[] => {
  if (bit.form !== 'vee') return []
  const { face, bottom } = nosePoints(bit)
  const [up, down] = [face.at(-1), bottom.at(-1)]
  return up && down ? [{ mark: 'line', kind: 'visible', from: [up[0], up[2]], to: [down[0], down[2]] }] : []
}

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
        ...(top(bit) - neck > 1e-9 ? [[noseLength, neck] as const] : []),
      ]),
    },
    { mark: 'line', kind: 'visible', from: [noseLength, 0], to: [noseLength, neck] },
    ...shoulder(bit),
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
    rake > 0
      ? {
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
        }
      : {
          callout: 'leader',
          of: 'rake',
          tips: [0.3, 0.5, 0.7].map((part) => ({
            at: [part * noseLength, height - part * noseLength * tan(rake)] as const,
            out: [-0.5, 1] as const,
          })),
          lines: [[degrees(rake), rake < 0 ? ' rake as ground: the face climbs' : ' rake: the face is level']],
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

const drawing = (design: Design): Drawing => {
  const bit = bitOf(design)
  const { units } = design.spec
  return {
    part: 'tool-bit',
    title: 'Tool bit',
    number: '30',
    views: [side(design, bit), ...fromAbove(design, bit), fromNose(bit)],
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
  of: 'bar',
  belongs: ({ bit }) => bit !== undefined,
  solid: (design) => bitSolid(bitOf(design)),
  drawing,
}
