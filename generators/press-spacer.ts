/**
 * Turned ring that the hub stands on, open under bore and feature. Sizes and why: src/dimensions/press-spacer.ts.
 *
 * Datum: axis; z = 0 the face that lies on table or press. Drawn cut through the axis, axis level.
 */
import type { Design } from '../src/design.ts'
import type { PressSpacer } from '../src/dimensions/press-spacer.ts'
import type { Drawing, Notes, View } from '../src/drawing/view.ts'
import { circle, rectangle } from '../src/solid/outline.ts'
import { extrude, type Solid } from '../src/solid/solid.ts'
import { pressing, stroking } from './cautions.ts'
import type { Part } from './part.ts'
import { bought, coarse, fine, jobLine, plain, round } from './wording.ts'

const spacerOf = (design: Design): PressSpacer => {
  if (!design.pressSpacer) throw new Error('this design has no spacer')
  return design.pressSpacer
}

const solid = (design: Design): Solid => {
  const { outside, opening, height } = spacerOf(design)
  return extrude(circle(outside), 0, height, [circle(opening)])
}

const view = ({ outside, opening, height }: PressSpacer): View => {
  const [out, hole] = [outside / 2, opening / 2]
  const walls = [rectangle([0, hole], [height, out]), rectangle([0, -out], [height, -hole])]
  return {
    name: 'section',
    place: { is: 'front' },
    marks: [
      ...walls.map((outline) => ({ mark: 'outline', kind: 'visible', outline }) as const),
      { mark: 'hatch', outlines: walls },
      { mark: 'line', kind: 'visible', from: [0, -hole], to: [0, hole] },
      { mark: 'line', kind: 'visible', from: [height, -hole], to: [height, hole] },
      { mark: 'line', kind: 'centre', from: [0, 0], to: [height, 0] },
      { mark: 'texture', at: [height, (out + hole) / 2], out: [1, 0], ra: 1.6 },
    ],
    metal: [{ x1: 0, y1: -out, x2: height, y2: out }],
    callouts: [
      {
        callout: 'linear',
        of: 'height',
        worth: plain(height),
        axis: 'x',
        a: 0,
        b: height,
        fromA: -out,
        fromB: -out,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'outside',
        worth: round(outside),
        axis: 'y',
        a: -out,
        b: out,
        fromA: 0,
        fromB: 0,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'opening',
        worth: round(opening),
        axis: 'y',
        a: -hole,
        b: hole,
        fromA: height,
        fromB: height,
        side: 'right',
      },
    ],
  }
}

const notes = (design: Design): readonly Notes[] => {
  const { under, free, height, parallel } = spacerOf(design)
  const fallsFree = design.bushing?.fallsFree
  const rest = free - height
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Face, bore and turn in one chucking. Part off.'],
        ['Turn it round, face to height. Both faces parallel within ', fine(parallel), ', no burr.'],
      ],
    },
    {
      heading: 'IN USE',
      lines: [
        ['Wipe everything. Ring under the hub, bore over its opening, hub flat on it all round.'],
        under === 'broach'
          ? [
              'Leave ',
              coarse(free),
              ' free below the hub for the teeth to pass',
              ...(fallsFree === undefined ? [] : ['; with ', coarse(fallsFree), ' the broach falls free']),
              '.',
            ]
          : ['Leave ', coarse(free), ' free below the hub: the bar’s end comes out, and its chips.'],
        ...(rest > 1e-9
          ? [['Stand the ring over an opening that gives the other ', coarse(rest), ', or on equal blocks.']]
          : []),
        ...(under === 'broach'
          ? [['Something soft below, for the broach to drop on.']]
          : [['Clamp the hub, not the ring.']]),
      ],
    },
    under === 'broach' ? pressing : stroking(design),
  ]
}

const drawing = (design: Design): Drawing => {
  const { stock, parallel, height } = spacerOf(design)
  return {
    part: 'press-spacer',
    title: 'Spacer',
    number: '12',
    views: [view(spacerOf(design))],
    notes: notes(design),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        { what: 'Height, at four places', limits: [plain(height)] },
        { what: 'Greatest less least', limits: [fine(parallel), ' at most'] },
      ],
    },
    block: {
      material: 'Mild steel, tube or bar',
      stock: [bought(stock.diameter, { prefix: 'Ø' }), ', ', bought(stock.length), ' long'],
      heat: 'none',
      finish: 'as turned, oiled',
      job: jobLine(design),
    },
  }
}

export const pressSpacer: Part = {
  name: 'press-spacer',
  title: 'Spacer',
  of: 'press',
  belongs: (design) => design.pressSpacer !== undefined,
  solid,
  drawing,
}
