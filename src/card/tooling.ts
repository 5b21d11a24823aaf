/** The tooling leaf: the bar at saw and lathe, the bit at the grinder. Read days before the cut. */
import { barViewOf, inTheBore } from './tooling-pictures.ts'
import type { CutterBar, GroundBar, ToolBit } from '../dimensions/types.ts'
import type { Design } from '../design.ts'
import { beforeTheWheel, crossHoleFirst, crossHoleThenWall, hardening } from './cautions.ts'
import type { Block, Leaf, Row, Side, Words } from './document.ts'
import { canBeHardened, turnedParts } from '../dimensions/cutter-bar.ts'
import { regrindOf } from '../dimensions/tool-bit.ts'
import { inch, poundForce } from '../standards/inch.ts'
import { asFits, type Cover, firstThatFits } from './fitting.ts'
import { bold, bought, degrees, say, type Saying } from './saying.ts'

/** A N/mm² in psi. Source: exact pound-force over the square of the exact inch. */
const psi = inch ** 2 / poundForce

type Why = (path: string) => string

/** Reasons as the design gives them, those that only point at another told in full; what it has none for is left empty. */
export const reasonsIn =
  ({ basis }: Design): Why =>
  (path) => {
    const why = basis[path] ?? ''
    const elsewhere = /^see ([a-z]+\.[A-Za-z]+)$/.exec(why)?.[1]
    return elsewhere === undefined ? why : (basis[elsewhere] ?? '')
  }

export const sizesTable = (title: string, rows: readonly (readonly [string, Words, string])[]): Block => ({
  block: 'table',
  title,
  named: true,
  columns: [
    { head: 'size', width: 30 },
    { head: '', width: 56 },
    { head: 'measured', width: 20 },
    { head: 'why', grows: true },
  ],
  rows: rows.map(([name, value, why]): Row => ({ cells: [name, value, { write: 'line' }, why] })),
})

/** `4.2 to 4.42`; where the window is shut, nothing passes. */
const passing = ({ projectionMin, projectionMax }: CutterBar | GroundBar, says: Saying): string =>
  projectionMin <= projectionMax ? `${says.size(projectionMin)} to ${says.size(projectionMax)}` : 'none'

/** In N/mm², in inch jobs in ksi as in the findings, to two figures: it is known no better. */
const stress = (newtons: number, says: Saying): string =>
  says.metric ? `${Math.round(newtons)} N/mm²` : `${Number(((newtons * psi) / 1000).toPrecision(2))} ksi`

const barRows = (bar: CutterBar, design: Design, says: Saying): readonly (readonly [string, Words, string])[] => {
  const why = reasonsIn(design)
  const { loads, findings } = design
  const size = says.size
  const hole = bar.crossHole
  const limit = (rule: string): string => {
    const at = findings.find((finding) => finding.rule === rule)?.limit
    return at === undefined ? '' : `, ${size(at)} is the least`
  }
  const end = bar.form === 'end screw'
  const held =
    loads?.bitHeld === undefined
      ? ''
      : `; holds ${says.force(loads.bitHeld)}, the thrust is ${says.force(loads.thrustMost)}`
  const steel =
    loads?.holeStressExpected === undefined || !Number.isFinite(loads.holeStressExpected)
      ? ''
      : `; ${stress(loads.holeStressExpected, says)} at the hole’s mouth`
  return [
    [
      'body',
      say`Ø${bold(says.between(bar.diameter.lower, bar.diameter.upper))}${says.other(bar.diameter.nominal)}, ${size(bar.bodyLength)} from holder to end`,
      `${why('bar.diameter')}; ${size(bar.diameterMax)} is the largest that passes`,
    ],
    ...(bar.shouldered
      ? [
          [
            'shank',
            say`Ø${bold(says.between(bar.shank.lower, bar.shank.upper))}, fillet ${size(bar.fillet)}`,
            why('bar.shank'),
          ] as const,
        ]
      : []),
    ['over all', say`${bold(size(bar.overall))}${says.other(bar.overall)}`, why('bar.overall')],
    [
      'cross hole',
      say`Ø${bold(says.between(hole.lower, hole.upper))}, ${bar.incline > 0 ? `leaning ${degrees(bar.incline)}, nose leading` : 'square to the bar'}, ${bold(size(bar.holeToEnd))} from the end to its middle; drill ${bar.crossHoleDrill}`,
      `for ${bar.bit.shape} ${bought(bar.bit.size, says)}; ${Number(bar.holeRatio.toFixed(3))} of the bar`,
    ],
    ['wall beside it', say`${bold(size(bar.wallBesideHole))}${limit('wall-beside-hole')}`, why('bar.wallBesideHole')],
    [
      end ? 'end' : 'wall',
      end
        ? say`drill ${bar.screw.tapDrill.name} into the hole; tap ${bold(bar.screw.callout)}, ${size(bar.tapDepth)} deep, right through into the hole; countersink ${size(bar.countersink)}`
        : say`drill ${bar.screw.tapDrill.name} through the wall beside the hole; tap ${bold(bar.screw.callout)}; countersink ${size(bar.countersink)}`,
      `screw engages ${size(bar.screw.engaged)}`,
    ],
    [
      'set screw',
      say`${bold(bar.screw.thread)} × ${bought(bar.screw.length, says)}, cup point (${size(bar.screw.lengthMin)} to ${size(bar.screw.lengthMax)} serves)`,
      `${why('bar.screw')}${held}`,
    ],
    [
      'runs out behind',
      say`${bold(size(bar.tipBeyond))} at the end of the stroke, the edge ${size(bar.overtravel)} past the hub`,
      why('bar.tipBeyond'),
    ],
    ['metal', bar.stock.material, `${why('loads.barSteel')}${steel}`],
  ]
}

/** How the outside is turned, by what the stock stands over. */
const turning: Readonly<Record<ReturnType<typeof turnedParts>, readonly Words[]>> = {
  body: ['turn the body, not the shank'],
  shank: ['turn the shank, not the body'],
  both: ['turn the body, then the shank, between centres'],
  all: ['turn it to size from end to end, between centres'],
  neither: ['leave the skin'],
}

const barOrder = (bar: CutterBar, says: Saying): readonly Words[] => [
  say`saw round Ø${bought(bar.stock.diameter, says)} × ${bold(bought(bar.stock.length, says))}, face both ends to ${says.size(bar.overall)}, centre the shank`,
  ...turning[turnedParts(bar)],
  say`chamfer the ends ${says.size(bar.endChamfer)}`,
  bar.incline > 0
    ? say`cross hole, drilled under size in a vise tilted ${degrees(bar.incline)}, then drilled, reamed or bored to size`
    : say`cross hole in a vee block, drilled under size, then drilled, reamed or bored to size`,
  bar.form === 'end screw'
    ? say`drill and tap the end, on the axis`
    : say`drill and tap the wall, square to the cross hole and into its middle`,
  say`lift the burr out of the hole; mouths broken ${says.size(bar.mouthChamfer)}`,
  say`a punch dot on the end, on the nose’s side`,
  ...(canBeHardened(bar)
    ? [
        'harden now or never, 40 to 45 HRC: quench in the open, a lid at hand, draw it before it is cold; then only polish by hand',
      ]
    : []),
]

const sawList = (bar: CutterBar, bit: ToolBit, says: Saying): Block => ({
  block: 'list',
  entries: [
    say`round Ø${bold(bought(bar.stock.diameter, says))} × ${bold(bought(bar.stock.length, says))}, one: ${bar.stock.material}`,
    say`high-speed steel ${bold(`${bought(bit.size, says)} ${bit.shape}`)} × ${bold(bought(bit.length, says))} (${says.size(bit.lengthMin)} to ${says.size(bit.lengthMax)} serves), one`,
    say`set screw ${bold(bar.screw.thread)} × ${bought(bar.screw.length, says)}, cup point, one`,
  ],
})

/** What the picture along the bore may take, mm high: the tallest that leaves its side whole. */
const lengthwiseHeights = [70, 60, 50, 42] as const

const barSide = (bar: CutterBar, bit: ToolBit, design: Design, says: Saying, cover: Cover): Side => {
  const below: readonly Block[] = [
    sizesTable('Sizes of the bar', barRows(bar, design, says)),
    bar.form === 'end screw' ? crossHoleFirst : crossHoleThenWall,
    {
      block: 'columns',
      columns: [
        {
          blocks: [
            { block: 'heading', text: 'In this order' },
            { block: 'list', numbered: true, entries: barOrder(bar, says) },
          ],
        },
        { width: 62, blocks: [{ block: 'heading', text: 'To saw' }, sawList(bar, bit, says)] },
      ],
    },
  ]
  return asFits(
    cover,
    lengthwiseHeights.map(
      (height) => (): Side => ({
        title: 'the bar',
        blocks: [
          { block: 'heading', text: 'Cutter bar', beside: 'its drawing has every size' },
          ...barViewOf(design, height),
          ...below,
        ],
      }),
    ),
  )
}

/** What is checked with a caliper is said as it reads, rounded inwards; as on the bit’s drawing. */
const byCaliper = ({ lower, upper }: { readonly lower: number; readonly upper: number }, says: Saying): string => {
  const step = says.metric ? 0.01 : 0.001 * 25.4
  const [from, to] = [Math.ceil(lower / step - 1e-6), Math.floor(upper / step + 1e-6)]
  return from < to ? `${says.read(from * step)} to ${says.read(to * step)}` : says.between(lower, upper)
}

const bitRows = (
  bar: CutterBar,
  bit: ToolBit,
  design: Design,
  says: Saying,
): readonly (readonly [string, Words, string])[] => {
  const why = reasonsIn(design)
  const size = says.size
  const limited = (limits: { readonly lower: number; readonly upper: number }): Words =>
    say`${bold(byCaliper(limits, says))}`
  const form: readonly (readonly [string, Words, string])[] =
    bit.form === 'vee'
      ? [
          [
            'V, between its flanks',
            say`${bold(degrees(bit.includedAngle ?? 0, 2))} seen along the cut, alike to the middle; ${degrees(bit.faceAngle ?? 0)} on the face`,
            why('bit.includedAngle'),
          ],
          ['tip', say`rounded ${bold(size(bit.tipRadius ?? bit.cornerRadius))}`, why('bit.tipRadius')],
        ]
      : bit.form === 'round'
        ? [
            [
              'round nose',
              say`radius ${bold(size(bit.tipRadius ?? bit.cornerRadius))}, whole and even`,
              why('bit.tipRadius'),
            ],
          ]
        : [['corners', say`stoned to ${bold(size(bit.cornerRadius))}`, why('bit.cornerRadius')]]
  const leaning = bit.leaning ? `, which is ${degrees(bit.leaning.rake)} as it leans` : ''
  const shaped = bit.form !== undefined
  const square = bit.edgeLimits === undefined
  const width = bit.groundWidth
  return [
    [
      shaped ? 'nose width where widest' : 'nose width at the edge',
      say`${bold(says.between(width.lower, width.upper))}${says.other(bit.noseWidth.nominal)}, after stoning`,
      why('bit.noseWidth'),
    ],
    [
      'neck narrower by',
      say`${bold(byCaliper(bit.neckUnder, says))} than the ${shaped ? 'widest' : 'edge'} as miked`,
      `back taper ${degrees(bit.backTaper)} a side, as set; ${degrees(bit.backTaperEffective)} on the face`,
    ],
    ...(square && !shaped
      ? [['width at the heel', limited(bit.widthAtHeel), `side relief ${degrees(bit.sideRelief)} a side`] as const]
      : []),
    [
      'nose length',
      say`${bold(size(bit.noseLength))} (${size(bit.noseLengthMin)} is the least)`,
      why('bit.noseLength'),
    ],
    ...form,
    bit.edgeLimits === undefined
      ? [
          bit.form === 'vee' ? 'tip set back, underneath' : 'end set back, underneath',
          limited(bit.endSetBack),
          `end relief ${degrees(bit.endRelief)}`,
        ]
      : [
          'edge over the back',
          limited(bit.edgeLimits),
          `side relief ${degrees(bit.sideRelief)} a side, end relief ${degrees(bit.endRelief)}`,
        ],
    bit.rake > 0
      ? ['face drop at the neck', limited(bit.faceDrop), `rake ${degrees(bit.rake)}${leaning}`]
      : [
          'face',
          bit.rake < 0 ? say`climbs by ${bold(degrees(-bit.rake))} from the edge` : 'level',
          `rake ${degrees(bit.rake)}${leaning}`,
        ],
    [
      'length',
      say`${bold(size(bit.length))} (${size(bit.lengthMin)} to ${size(bit.lengthMax)} serves)`,
      why('bit.length'),
    ],
    ...(bit.flat === undefined
      ? []
      : [['flat for the screw', say`${bold(size(bit.flat))} deep`, why('bit.flat')] as const]),
    [
      'sticks out of the bar',
      say`${bold(size(bar.projection))} ± ${size(bar.setting)} (${passing(bar, says)} passes)`,
      why('bar.projection'),
    ],
  ]
}

/** As on the bit’s drawing. */
const regrind = (bit: ToolBit, says: Saying): Words => {
  const after = 'Then set the projection again and find the zero again.'
  const step = says.size(bit.regrindStep)
  const times = (count: number): string => `${count} ${count === 1 ? 'time' : 'times'}`
  switch (regrindOf(bit)) {
    case 'flanks':
      return say`Regrind both ${bold('flanks')} alike, not the face: ${step} off the tip, ${times(bit.regrinds)}. Stone the tip’s radius again. ${after}`
    case 'face':
      return say`Stone the ${bold('face')} alone. Under its least width, grind a new nose. ${after}`
    case 'nothing':
      return say`No regrind is left in the width: once blunt, ${bold('a new bit')}. ${after}`
    case 'end':
      return bit.lanes > 1
        ? say`Regrind the ${bold('end')}, not the face; each ${step} takes ${says.fine(bit.widthPerRegrind)} off the width: measure the nose again and set the lanes by it. ${after}`
        : say`Regrind the ${bold('end')}, not the face: ${step} at a time, ${times(bit.regrinds)}; each takes ${says.fine(bit.widthPerRegrind)} off the width. ${after}`
  }
}

/** Steps at the wheel, as on the bit’s drawing. */
const grinding = (bit: ToolBit, says: Saying): readonly Words[] => {
  const end: Words =
    bit.form === 'vee'
      ? 'both flanks alike, to meet in the middle; try the gauge'
      : bit.form === 'round'
        ? say`end, swung round to R ${says.size(bit.tipRadius ?? bit.cornerRadius)}; try the gauge`
        : bit.noseEndRadius === undefined
          ? 'end, with its relief'
          : say`end, with its relief, convex to R ${says.fine(bit.noseEndRadius)}`
  const last =
    bit.form === 'vee'
      ? say`stone to sharp, the tip to R ${says.size(bit.tipRadius ?? bit.cornerRadius)}; measure`
      : bit.form === 'round'
        ? 'stone to sharp; measure'
        : 'stone face, end, corners; measure the width at the edge'
  return [
    bit.flat === undefined
      ? 'whole blank: end square, its middle marked'
      : say`whole blank: flat for the screw, ${says.size(bit.flat)} deep; end square, its middle marked`,
    say`sides alike, from the middle, neck ${says.size(bit.noseLength)} back`,
    end,
    'face',
    last,
    'cut to length last',
  ]
}

/** What the picture in the bore may take, mm high: the tallest that leaves its side whole. */
const heights = [120, 105, 92, 80, 70, 62] as const

const bitSide = (bar: CutterBar, bit: ToolBit, design: Design, says: Saying, cover: Cover): Side => {
  const order: readonly Block[] = [
    { block: 'heading', text: 'In this order' },
    {
      block: 'list',
      numbered: true,
      entries: grinding(bit, says),
    },
    { block: 'heading', text: 'When it is dull' },
    { block: 'paragraph', words: regrind(bit, says) },
  ]
  const sizes = sizesTable('Sizes of the bit', bitRows(bar, bit, design, says))
  return asFits(
    cover,
    heights.map(
      (height) => (): Side => ({
        title: 'the bit',
        blocks: [
          beforeTheWheel,
          {
            block: 'heading',
            text: 'Tool bit',
            beside: `high-speed steel, ${bought(bit.size, says)} ${bit.shape}; its drawing has three views`,
          },
          sizes,
          {
            block: 'columns',
            columns: [
              { width: 54, blocks: order },
              { width: 124, blocks: inTheBore(design, 124, height) },
            ],
          },
        ],
      }),
    ),
  )
}

const groundRows = (bar: GroundBar, design: Design, says: Saying): readonly (readonly [string, Words, string])[] => {
  const why = reasonsIn(design)
  const size = says.size
  const limited = (limits: { readonly lower: number; readonly upper: number }): Words =>
    say`${bold(says.between(limits.lower, limits.upper))}`
  return [
    ['blank', say`Ø${bold(says.between(bar.blank.lower, bar.blank.upper))}`, why('bar.blank')],
    ['over all', say`${bold(size(bar.overall))}`, why('bar.overall')],
    [
      'neck',
      say`Ø${bold(says.between(bar.diameter.lower, bar.diameter.upper))}, ${size(bar.neckLength)} long, fillet ${size(bar.fillet)}`,
      why('bar.diameter'),
    ],
    [
      'neck off the blank’s axis',
      say`${bold(says.limit(bar.eccentricity, 'down'))}, away from the nose`,
      why('bar.eccentricity'),
    ],
    ['head', say`${bold(size(bar.headLength))} long`, why('bar.headLength')],
    ['back to nose', limited(bar.backToNose), why('bar.backToNose')],
    ['nose width', limited(bar.noseTolerance), why('bar.noseWidth')],
    ['width at the heel', say`${bold(size(bar.widthAtHeel))}`, `side relief ${degrees(bar.sideRelief)} a side`],
    ['corners', bar.cornerRadius < 0.01 ? 'sharp' : say`${bold(size(bar.cornerRadius))}`, why('bar.cornerRadius')],
    ['end set back at the heel', say`${bold(size(bar.endSetBack))}`, `end relief ${degrees(bar.endRelief)}`],
    ['face', say`rake ${bold(degrees(bar.rake))}`, why('bar.rake')],
    ['metal', bar.stock.material, why('loads.barSteel')],
  ]
}

const groundSides = (bar: GroundBar, design: Design, says: Saying, cover: Cover): readonly Side[] => {
  const blocks: readonly Block[] = [
    beforeTheWheel,
    { block: 'heading', text: 'Bar of one piece', beside: 'its drawing has every size' },
    ...barViewOf(design),
    sizesTable('Sizes of the bar', groundRows(bar, design, says)),
    { block: 'heading', text: 'In this order' },
    hardening,
    {
      block: 'list',
      numbered: true,
      entries: [
        say`saw round Ø${bought(bar.stock.diameter, says)} × ${bold(bought(bar.stock.length, says))}, face both ends`,
        say`shank and blank turned in one chucking`,
        say`neck, turned eccentric by ${says.limit(bar.eccentricity, 'down')}: its back in one line with the blank’s; the dial on the blank reads twice that`,
        'head filed or milled to its strip, from the middle, with room to grind',
        'harden head and neck, draw them to straw',
        'grind sides, end, face; stone face, end, corners',
        'measure',
      ],
    },
  ]
  const ways = heights.map(
    (height) => (): Side => ({
      title: 'the bar',
      blocks: [...blocks, ...inTheBore(design, 186, height)],
    }),
  )
  const one = firstThatFits(cover, ways)
  return one
    ? [one]
    : [
        { title: 'the bar', blocks },
        { title: 'in the bore', blocks: inTheBore(design, 186, heights[0]) },
      ]
}

export const toolingLeaf = (design: Design, says: Saying, cover: Cover): Leaf => {
  const { bar, bit, groundBar } = design
  return {
    leaf: 'tooling',
    title: 'Tooling leaf',
    sides:
      bar && bit
        ? [barSide(bar, bit, design, says, cover), bitSide(bar, bit, design, says, cover)]
        : groundBar
          ? groundSides(groundBar, design, says, cover)
          : [],
  }
}
