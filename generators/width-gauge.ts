/**
 * Flat go and no-go for the width of a slot, printed or cut from flat stock. Forms and names: src/dimensions/width-gauge.ts.
 *
 * Datum: middle line, and the grip's shoulder on the go side. Thickness along z; it is printed lying down, so that the widths lie in the bed plane.
 * The drawing and the profile have finished sizes; the solid is the model, which differs by what the printer adds.
 */
import type { Design } from '../src/design.ts'
import type { WidthGauge } from '../src/dimensions/width-gauge.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Notes, View } from '../src/drawing/view.ts'
import { mirrored, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { join, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { asPrinted, goCheck, offsetWords, printedBlock, printingOrder, raised, standing } from './printed.ts'
import { coarse, degrees, plain, small } from './wording.ts'

const gaugeOf = (design: Design): WidthGauge => {
  if (!design.widthGauge) throw new Error('this design has no width gauge')
  return design.widthGauge
}

/** The flat contour, counter-clockwise. */
export const contour = (gauge: WidthGauge): Outline => {
  const { go, noGo, goLength, gripLength, gripWidth, waistLength, waistWidth, noGoLength, lead } = gauge
  const end = gripLength + waistLength
  const below: readonly Point[] = [
    [-goLength, lead - go / 2],
    [lead - goLength, -go / 2],
    [0, -go / 2],
    [0, -gripWidth / 2],
    [gripLength, -gripWidth / 2],
    [gripLength, -waistWidth / 2],
    [end, -waistWidth / 2],
    [end, -noGo / 2],
    [end + noGoLength, -noGo / 2],
  ]
  return [...polygon(below), ...mirrored(polygon(below), 'y = 0')]
}

const rectangleOf = (x1: number, x2: number, width: number): readonly Point[] => [
  [x1, -width / 2],
  [x2, -width / 2],
  [x2, width / 2],
  [x1, width / 2],
]

const solid = (design: Design): Solid => {
  const gauge = gaugeOf(design)
  const { goLength, gripLength, gripWidth, waistLength, noGoLength, thickness, lead, edge, offset, marking } = gauge
  const [go, noGo, waist] = [gauge.go, gauge.noGo, gauge.waistWidth].map((width) => width - 2 * offset) as [
    number,
    number,
    number,
  ]
  const end = gripLength + waistLength
  const blade: readonly Point[] = [
    [-goLength, lead - go / 2],
    [lead - goLength, -go / 2],
    [1, -go / 2],
    [1, go / 2],
    [lead - goLength, go / 2],
    [-goLength, go / 2 - lead],
  ]
  const room = gripLength / 2 - 3
  return join(
    standing(blade, thickness, edge, edge),
    standing(rectangleOf(0, gripLength, gripWidth), thickness, gauge.foot),
    standing(rectangleOf(gripLength - 1, end + 1, waist), thickness, edge, edge),
    standing(rectangleOf(end, end + noGoLength, noGo), thickness, edge, edge),
    // Name over size, each on its own side.
    ...marking.flatMap((text, side) => {
      const cutAt = text.lastIndexOf(' ')
      const middle = gripLength * (side === 0 ? 0.25 : 0.75)
      return [text.slice(0, cutAt), text.slice(cutAt + 1)].map((line, row) =>
        raised(line, [middle, (row === 0 ? 1 : -1) * 0.22 * gripWidth], room, 0.3 * gripWidth, thickness),
      )
    }),
  )
}

const plan = (design: Design): View => {
  const gauge = gaugeOf(design)
  const { go, noGo, goLength, gripLength, gripWidth, waistLength, waistWidth, noGoLength, thickness, lead, edge } =
    gauge
  const waistEnd = gripLength + waistLength
  const end = waistEnd + noGoLength
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
    ...(of === 'goLength' ? {} : { chain: 'goLength' }),
  })
  const across = (of: string, width: number, at: number, side: 'left' | 'right'): Callout => ({
    callout: 'linear',
    of,
    worth: coarse(width),
    axis: 'y',
    a: -width / 2,
    b: width / 2,
    fromA: at,
    fromB: at,
    side,
  })
  return {
    name: 'plan',
    place: { is: 'front' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: contour(gauge) },
      { mark: 'line', kind: 'centre', from: [-goLength, 0], to: [end, 0] },
    ],
    metal: [
      { x1: -goLength, y1: -go / 2, x2: 0, y2: go / 2 },
      { x1: 0, y1: -gripWidth / 2, x2: gripLength, y2: gripWidth / 2 },
      { x1: gripLength, y1: -waistWidth / 2, x2: waistEnd, y2: waistWidth / 2 },
      { x1: waistEnd, y1: -noGo / 2, x2: end, y2: noGo / 2 },
    ],
    callouts: [
      across('go', go, lead - goLength, 'left'),
      across('noGo', noGo, end, 'right'),
      along('goLength', -goLength, 0, lead - go / 2, -gripWidth / 2),
      along('gripLength', 0, gripLength, -gripWidth / 2, -gripWidth / 2),
      along('waistLength', gripLength, waistEnd, -gripWidth / 2, -noGo / 2),
      along('noGoLength', waistEnd, end, -noGo / 2, -noGo / 2),
      {
        callout: 'leader',
        of: 'gripWidth',
        also: ['thickness'],
        tips: [0.3, 0.5, 0.7].flatMap((part) =>
          [1, -1].map((side) => ({
            at: [part * gripLength, (side * gripWidth) / 2] as const,
            out: [0.4, side] as const,
          })),
        ),
        lines: [
          ['grip ', plain(gripWidth), ' wide'],
          [plain(thickness, { prefix: 't ' }), ' all over'],
        ],
      },
      {
        callout: 'leader',
        of: 'waistWidth',
        tips: [1, -1].map((side) => ({
          at: [gripLength + waistLength / 2, (side * waistWidth) / 2] as const,
          out: [0.3, side] as const,
        })),
        lines: [['waist ', plain(waistWidth), ' wide']],
      },
      {
        callout: 'leader',
        of: 'lead',
        tips: [1, -1].map((side) => ({
          at: [lead / 2 - goLength, side * (go / 2 - lead / 2)] as const,
          out: [-1, side] as const,
        })),
        lines: [[small(lead), ' × ', degrees(45)]],
        small: true,
      },
      {
        callout: 'leader',
        of: 'edge',
        tips: [0.4, 0.6, 0.8].flatMap((part) =>
          [1, -1].map((side) => ({ at: [-part * goLength, (side * go) / 2] as const, out: [-0.3, side] as const })),
        ),
        lines: [[small(edge), ' × ', degrees(45), ' long edges']],
        small: true,
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const gauge = gaugeOf(design)
  return [
    {
      heading: goCheck(design, gauge.tolerance),
      caution: true,
      lines: [
        ['The long end must go in, the short head on its waist must not. Try both ends of the slot.'],
        [
          'If the long end does not go: too narrow, or not straight. If the head goes: too wide. Then measure. Not for class fits.',
        ],
      ],
    },
    printingOrder('Print it lying down, letters up, nothing under it.', [
      ['Or cut it from flat stock by the profile, file and mike it, stamp both ends.'],
    ]),
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, gauge.offset)] },
  ]
}

const drawing = (design: Design): Drawing => {
  const { go, noGo, thickness, tolerance } = gaugeOf(design)
  return {
    part: 'width-gauge',
    title: 'Width gauge',
    number: '42',
    views: [plan(design)],
    notes: notes(design),
    asMade: {
      heading: 'AS PRINTED, AS FILED: write both down',
      rows: [
        { what: 'Go', limits: asPrinted(design, go, tolerance) },
        { what: 'No go', limits: asPrinted(design, noGo, tolerance) },
      ],
    },
    block: {
      ...printedBlock(design, tolerance),
      material: 'printed plastic, or flat stock',
      stock: ['model file, or flat ', plain(thickness), ' thick'],
    },
  }
}

const profile = (design: Design): Profile => ({ name: 'width-gauge', contours: [contour(gaugeOf(design))] })

export const widthGauge: Part = {
  name: 'width-gauge',
  title: 'Width gauge',
  of: 'job',
  belongs: (design) => design.widthGauge !== undefined,
  solid,
  prints: (design) => [{ name: 'width-gauge', solid: solid(design) }],
  drawing,
  profile,
}
