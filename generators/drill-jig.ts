/**
 * Block that holds a slim bar while its cross hole is drilled. Form and names: src/dimensions/drill-jig.ts.
 *
 * View x runs from the front face, where the bar goes in; y is up, 0 on the bar's axis. The solid stands on its closed end, z up, the bush on
 * +y, so that the bar's hole is printed round.
 */
import type { Design } from '../src/design.ts'
import type { DrillJig } from '../src/dimensions/drill-jig.ts'
import type { Callout, Drawing, Mark, Notes, View } from '../src/drawing/view.ts'
import { type Outline, polygon, rectangle } from '../src/solid/outline.ts'
import { bore, cut, extrude, type Solid } from '../src/solid/solid.ts'
import type { Part } from './part.ts'
import { offsetWords, printedBlock } from './printed.ts'
import { bought, coarse, drill, plain, plusMinus, round, sized } from './wording.ts'

const jigOf = (design: Design): { readonly jig: DrillJig; readonly bar: NonNullable<Design['bar']> } => {
  const { drillJig, bar } = design
  if (!drillJig || !bar) throw new Error('this design has no drill jig')
  return { jig: drillJig, bar }
}

const solid = (design: Design): Solid => {
  const { jig } = jigOf(design)
  const { length, width, height, barHole, barDepth, holeToStop, bush, chipHole, clamp, offset } = jig
  const stop = length - barDepth
  const [half, clears] = [height / 2, { clears: true }]
  const grown = (diameter: number): number => diameter - 2 * offset
  return cut(
    extrude(rectangle([-width / 2, -half], [width / 2, half]), 0, length),
    bore('z', [0, 0, stop], grown(barHole), barDepth + 1, clears),
    bore('-y', [0, half + 1, stop + holeToStop], grown(bush.outside), half + 1, clears),
    bore('-y', [0, 0, stop + holeToStop], grown(chipHole), half + 1, clears),
    bore('-y', [0, half + 1, length - clamp.toFront], grown(clamp.tapDrill), half + 1, clears),
  )
}

/** Through the axis: what is cut, and the edges behind it. */
const section = (design: Design): View => {
  const { jig, bar } = jigOf(design)
  const { length, height, barHole, barDepth, holeToStop, bush, chipHole, clamp } = jig
  const [top, wall] = [height / 2, barHole / 2]
  const hole = barDepth - holeToStop
  const over = [clamp.toFront - clamp.tapDrill / 2, clamp.toFront + clamp.tapDrill / 2] as const
  const led = [hole - bush.outside / 2, hole + bush.outside / 2] as const
  const below = [hole - chipHole / 2, hole + chipHole / 2] as const
  const metal: readonly Outline[] = [
    rectangle([0, wall], [over[0], top]),
    rectangle([over[1], wall], [led[0], top]),
    polygon([
      [led[1], wall],
      [barDepth, wall],
      [barDepth, -wall],
      [below[1], -wall],
      [below[1], -top],
      [length, -top],
      [length, top],
      [led[1], top],
    ]),
    rectangle([0, -top], [below[0], -wall]),
  ]
  const edge = (x1: number, x2: number, y: number): Mark => ({
    mark: 'line',
    kind: 'visible',
    from: [x1, y],
    to: [x2, y],
  })
  const along = (
    of: string,
    a: number,
    b: number,
    side: 'top' | 'bottom',
    y: number,
    worth = plain(b - a),
  ): Callout => ({
    callout: 'linear',
    of,
    worth,
    axis: 'x',
    a,
    b,
    fromA: y,
    fromB: y,
    side,
  })
  return {
    name: 'section',
    place: { is: 'front' },
    marks: [
      ...metal.map((outline): Mark => ({ mark: 'outline', kind: 'visible', outline })),
      { mark: 'hatch', outlines: metal },
      edge(over[0], over[1], top),
      edge(led[0], led[1], top),
      edge(below[0], below[1], -top),
      { mark: 'line', kind: 'visible', from: [0, -wall], to: [0, wall] },
      { mark: 'line', kind: 'centre', from: [0, 0], to: [length, 0] },
      { mark: 'line', kind: 'centre', from: [hole, -top], to: [hole, top] },
      { mark: 'line', kind: 'centre', from: [clamp.toFront, 0], to: [clamp.toFront, top] },
    ],
    metal: [{ x1: 0, y1: -top, x2: length, y2: top }],
    callouts: [
      along('length', 0, length, 'bottom', -top),
      along('barDepth', 0, barDepth, 'bottom', -top),
      along('clamp.toFront', 0, clamp.toFront, 'bottom', -top),
      along('holeToStop', hole, barDepth, 'top', top, plusMinus(holeToStop, jig.tolerance)),
      {
        callout: 'leader',
        of: 'bush.outside',
        also: ['chipHole'],
        tips: [1, -1].map((side) => ({
          at: [hole + (side * bush.outside) / 2, top] as const,
          out: [side, 1] as const,
        })),
        lines: [
          [round(bush.outside), ' for the bush'],
          [round(chipHole), ' below'],
        ],
      },
      {
        callout: 'leader',
        of: 'clamp.thread',
        tips: [1, -1].map((side) => ({
          at: [clamp.toFront + (side * clamp.tapDrill) / 2, top] as const,
          out: [side, 1] as const,
        })),
        lines: [[bar.screw.callout], ['drill ', ...drill(bar.screw.tapDrill.name, bar.screw.tapDrill.diameter)]],
      },
    ],
  }
}

/** Where the bar goes in: view (x, y) = (width, height). */
const front = (design: Design): View => {
  const { width, height, barHole } = jigOf(design).jig
  const [side, top] = [width / 2, height / 2]
  return {
    name: 'front end',
    place: { is: 'seen', from: 'left' },
    marks: [
      { mark: 'outline', kind: 'visible', outline: rectangle([-side, -top], [side, top]) },
      { mark: 'arc', kind: 'visible', centre: [0, 0], radius: barHole / 2, from: 0, to: 360 },
      { mark: 'centreMark', centre: [0, 0], radius: barHole / 2 },
    ],
    metal: [{ x1: -side, y1: -top, x2: side, y2: top }],
    callouts: [
      {
        callout: 'linear',
        of: 'width',
        worth: plain(width),
        axis: 'x',
        a: -side,
        b: side,
        fromA: -top,
        fromB: -top,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'height',
        worth: plain(height),
        axis: 'y',
        a: -top,
        b: top,
        fromA: side,
        fromB: side,
        side: 'right',
      },
      {
        callout: 'leader',
        of: 'barHole',
        tips: [45, 135, 225, 315].map((angle) => {
          const out = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)] as const
          return { at: [(barHole / 2) * out[0], (barHole / 2) * out[1]] as const, out }
        }),
        lines: [[coarse(barHole, { prefix: 'Ø' })]],
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const { jig, bar } = jigOf(design)
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Block squared, or printed standing on its closed end.'],
        ['Bar hole to its depth, flat at the bottom: the bar stands on it.'],
        ['Bush hole square to it, then the chip hole. Tap for the clamp screw.'],
        [
          'Bush of drill rod, pressed in flush above, ',
          plain(jig.bush.length),
          ' long. Drill it through when it is in.',
        ],
      ],
    },
    {
      heading: 'IN USE',
      numbered: true,
      lines: [
        ['Bar in until it stands on the stop, no chip before it. Clamp.'],
        ['Drill ', ...drill(bar.crossHoleDrill, bar.crossHole.nominal), ' right through, peck, clear the chips.'],
        ['Do not turn the bar until the hole has been tried with the blank.'],
      ],
    },
    { heading: 'FOR THE PRINTER', lines: [offsetWords(design, jig.offset, 'The model’s holes are')] },
  ]
}

const drawing = (design: Design): Drawing => {
  const { jig, bar } = jigOf(design)
  return {
    part: 'drill-jig',
    title: 'Drill jig',
    number: '22',
    views: [section(design), front(design)],
    notes: notes(design),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        { what: 'Hole to stop', limits: [plusMinus(jig.holeToStop, jig.tolerance)] },
        { what: 'Bar slides in', limits: [sized(bar.diameter, { prefix: 'Ø' }), ', by hand'] },
      ],
    },
    block: {
      ...printedBlock(design, jig.tolerance),
      material: 'aluminium, or printed',
      stock: [bought(jig.width), ' × ', bought(jig.height), ' × ', bought(jig.length)],
      finish: 'as machined or as printed',
      surface: 'as machined or as printed',
      edges: 'broken',
    },
  }
}

export const drillJig: Part = {
  name: 'drill-jig',
  title: 'Drill jig',
  of: 'bar',
  belongs: (design) => design.drillJig !== undefined,
  solid,
  prints: (design) => [{ name: 'drill-jig', solid: solid(design) }],
  drawing,
}
