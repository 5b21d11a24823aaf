/**
 * Plate with a hole for each feature, to divide by a pin. Sizes and why: src/dimensions/index-plate.ts.
 *
 * Datum: the mandrel's hole; hole 1 on +x, the rim notched beside it. Thickness along z. Drawn with hole 1 up.
 */
import type { Design } from '../src/design.ts'
import type { IndexPlate } from '../src/dimensions/index-plate.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Callout, Drawing, Notes, View, Wording } from '../src/drawing/view.ts'
import { circle, type Outline, type Point, polygon, reversed } from '../src/solid/outline.ts'
import { cut, extrude, join, place, revolve, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { printedBlock, printingOrder, raised } from './printed.ts'
import { bought, fine, jobLine, plain, plusMinus, round } from './wording.ts'

const plateOf = (design: Design): IndexPlate => {
  if (!design.indexPlate) throw new Error('this design has no index plate')
  return design.indexPlate
}

const at = (radius: number, angle: number): Point => [
  radius * Math.cos((angle * Math.PI) / 180),
  radius * Math.sin((angle * Math.PI) / 180),
]

/** The rim with its notch at `angle`, counter-clockwise. */
const rim = ({ outside, notch }: IndexPlate, angle: number): Outline => {
  const radius = outside / 2
  const half = (Math.asin(notch / outside) * 180) / Math.PI
  const bulge = Math.tan(((180 - half) * Math.PI) / 180 / 4)
  const depth = radius * Math.cos((half * Math.PI) / 180) - notch / 2
  return [
    { at: at(depth, angle) },
    { at: at(radius, angle + half), bulge },
    { at: at(radius, angle + 180), bulge },
    { at: at(radius, angle - half) },
  ]
}

/** Rim, mandrel hole and pin holes, the first hole at `first` degrees. */
export const contours = (plate: IndexPlate, first: number, offset = 0): readonly [Outline, ...Outline[]] => [
  rim(plate, first),
  reversed(circle(plate.mandrel - 2 * offset)),
  ...plate.at.map((angle) => reversed(circle(plate.hole - 2 * offset, at(plate.pitchRadius, angle + first)))),
]

const solid = (design: Design): Solid => {
  const plate = plateOf(design)
  const { thickness, foot, offset, pitchRadius, hole } = plate
  const [outside, ...holes] = contours(plate, 0, offset)
  const sunk = (diameter: number): Solid =>
    revolve(
      polygon([
        [0, -1],
        [diameter / 2 + foot + 1, -1],
        [diameter / 2 - 0.5, foot + 0.5],
        [0, foot + 0.5],
      ]),
    )
  const small = sunk(hole - 2 * offset)
  return join(
    cut(
      extrude(outside, 0, thickness, holes),
      ...(foot > 0
        ? [
            sunk(plate.mandrel - 2 * offset),
            ...plate.at.map((angle) => place(small, { move: [...at(pitchRadius, angle), 0] })),
          ]
        : []),
    ),
    ...plate.at.map((angle, index) =>
      raised(`${index + 1}`, at(pitchRadius - 1.6 * hole, angle), 1.5 * hole, 0.8 * hole, thickness),
    ),
  )
}

const face = (plate: IndexPlate): View => {
  const { outside, pitchRadius, hole, mandrel, thickness, notch, count } = plate
  const [out, first] = [outside / 2, 90]
  const holes = plate.at.map((angle) => angle + first)
  const between = holes.map((angle, index) => (angle + (holes[index + 1] ?? (holes[0] ?? 0) + 360)) / 2)
  const spots = (radius: number, angles: readonly number[]) =>
    angles.map((angle) => ({ at: at(radius, angle), out: at(1, angle) }))
  const leader = (of: string, tips: readonly { at: Point; out: Point }[], ...lines: Wording[]): Callout => ({
    callout: 'leader',
    of,
    tips,
    lines,
  })
  return {
    name: 'face',
    place: { is: 'front' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: rim(plate, first) },
      { mark: 'arc', kind: 'centre', centre: [0, 0], radius: pitchRadius, from: 0, to: 360 },
      { mark: 'arc', kind: 'visible', centre: [0, 0], radius: mandrel / 2, from: 0, to: 360 },
      { mark: 'centreMark', centre: [0, 0], radius: mandrel / 2 },
      ...holes.flatMap((angle) => [
        {
          mark: 'arc',
          kind: 'visible',
          centre: at(pitchRadius, angle),
          radius: hole / 2,
          from: 0,
          to: 360,
        } as const,
      ]),
    ],
    metal: [{ x1: -out, y1: -out, x2: out, y2: out }],
    callouts: [
      {
        callout: 'linear',
        of: 'outside',
        worth: round(outside),
        axis: 'x',
        a: -out,
        b: out,
        fromA: 0,
        fromB: 0,
        side: 'bottom',
      },
      leader(
        'hole',
        holes.flatMap((angle) => spots(pitchRadius + hole / 2, [angle])),
        [`${count} × `, round(hole), ' to the pin'],
      ),
      leader('pitchDiameter', spots(pitchRadius, between), [round(2 * pitchRadius), ' pitch circle']),
      leader('mandrel', spots(mandrel / 2, [30, 60, 120, 150, 210, 240, 300, 330]), [
        round(mandrel),
        ' to the mandrel',
      ]),
      leader('thickness', spots(out, [200, 340, 215, 325, 160, 20]), [plain(thickness, { prefix: 't ' })]),
      leader(
        'notch',
        [1, -1].map((side) => ({ at: [(side * notch) / 4, out - notch / 4] as const, out: [side, 1] as const })),
        [plain(notch), ' wide, at hole 1'],
      ),
    ],
  }
}

/** Holes by their places from the middle, hole 1 up. */
const holeTable = (plate: IndexPlate): Notes => {
  const say = (angle: number, index: number): Wording => {
    const [x, y] = at(plate.pitchRadius, angle + 90)
    return [`${index + 1}:  x `, fine(Math.abs(x) < 1e-9 ? 0 : x), ',  y ', fine(Math.abs(y) < 1e-9 ? 0 : y)]
  }
  const each = plate.at.map(say)
  return {
    heading: 'HOLES, from the middle, hole 1 up',
    lines:
      each.length <= 8
        ? each
        : each.slice(0, Math.ceil(each.length / 2)).map((one, index) => {
            const other = each[index + Math.ceil(each.length / 2)]
            return other ? [...one, ';   ', ...other] : one
          }),
  }
}

const notes = (design: Design): readonly Notes[] => {
  const plate = plateOf(design)
  return [
    holeTable(plate),
    {
      heading: 'WHAT THE HOLES COST',
      lines: [
        [
          'A hole ',
          fine(plate.within),
          ' off its place turns the work by ',
          fine(plate.errorAtFloor),
          ' at the floor. Between two holes, both off: ',
          fine(plate.errorBetween),
          '.',
        ],
      ],
    },
    {
      heading: 'IN USE',
      lines: [
        ['Always turn the same way. Overshot: go round again. Pin in, lock, then cut.'],
        ['After the last, go on to hole 1: the pin must drop in.'],
      ],
    },
    printingOrder(
      'Print it lying down, numbers up; or drill and ream it by the table in one setting.',
      [],
      'Holes small: ream. Large: correct the offset, print again.',
    ),
  ]
}

const drawing = (design: Design): Drawing => {
  const plate = plateOf(design)
  return {
    part: 'index-plate',
    title: 'Index plate',
    number: '50',
    views: [face(plate)],
    notes: notes(design),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        { what: 'Middle to each hole', limits: [plusMinus(plate.pitchRadius, plate.within)] },
        { what: 'Pin in each hole', limits: ['slides, no shake'] },
      ],
    },
    block: {
      ...printedBlock(design, plate.within),
      material: 'aluminium, mild steel, or printed',
      stock: [bought(plate.outside, { prefix: 'Ø' }), ' × ', bought(plate.thickness)],
      finish: 'as machined or as printed',
      limits: design.spec.units === 'mm' ? 'ISO 2768 - m' : '.XX ±.01  .XXX ±.005',
      surface: 'as machined or as printed',
      edges: 'holes broken both sides',
      job: jobLine(design),
    },
  }
}

const profile = (design: Design): Profile => ({ name: 'index-plate', contours: contours(plateOf(design), 90) })

export const indexPlate: Part = {
  name: 'index-plate',
  title: 'Index plate',
  of: 'job',
  belongs: (design) => design.indexPlate !== undefined,
  solid,
  prints: (design) => [{ name: 'index-plate', solid: solid(design) }],
  drawing,
  profile,
}
