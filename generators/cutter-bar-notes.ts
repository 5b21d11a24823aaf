/** What the cutter bar's sheet says in words: order of work, what goes with it, what to measure. */
import type { Design } from '../src/design.ts'
import { canBeHardened, turnedParts } from '../src/dimensions/cutter-bar.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import { endTolerance } from './cutter-bar-section.ts'
import { stroking } from './cautions.ts'
import { atLeast, bought, coarse, degrees, drill, most, plain, plusMinus, sized } from './wording.ts'

/** `□6 blank`, `1/4 SQ blank`. */
const blank = (bar: CutterBar): Wording => [
  bought(bar.bit.size, { prefix: bar.bit.shape === 'round' ? 'Ø' : '□' }),
  ' blank',
]

const screwName = (bar: CutterBar): Wording => [`${bar.screw.thread} x `, bought(bar.screw.length)]

/** The screw's outer end under the bar's end, or under its skin, when it has seated, mm; the latter of the smallest bar. */
const screwBelow = (bar: CutterBar): number =>
  bar.form === 'end screw' ? bar.bitToEnd - bar.screw.length : bar.screw.lengthMax - bar.screw.length

/** The cross hole: from one side to the other, or leaning. */
const crossHole = (design: Design, bar: CutterBar): Wording => {
  const under = underDrill(design, bar)
  const drills: Wording = [
    ...(under ? ['drill ', ...drill(under.name, under.diameter), ', then '] : ['drill ']),
    ...drill(bar.crossHoleDrill, bar.crossHole.nominal),
    '.',
  ]
  if (bar.incline === 0) return ['Cross hole first, or it wanders: vee block, ', ...drills]
  return [
    'Cross hole first: set the bar ',
    degrees(bar.incline),
    ' out of level, its end high; the upper mouth is the nose side. Start with an end mill, or the drill wanders; ',
    ...drills,
  ]
}

/** The thread for the screw. */
const tapping = (bar: CutterBar): readonly Wording[] =>
  bar.form === 'end screw'
    ? [['Tap drill into the cross hole, not its far wall. Countersink. Plug tap last.']]
    : [
        [
          "Turn the bar a quarter. Tap drill through one wall, square to the hole and across the bar's axis; not the far wall. " +
            'Countersink. Plug tap last.',
        ],
      ]

/** How the bit is held while a screw in the wall is tightened. */
const holding = (design: Design, bar: CutterBar): readonly Wording[] => {
  if (bar.form === 'end screw') return []
  const side = design.spec.tooling.bar?.stroke === 'pull' ? "the end's side" : "the holder's side"
  return [
    [
      `Hold the bit against its hole on ${side} as the screw goes in`,
      ...(bar.rock === undefined ? ['.'] : [': loose, it rocks ', degrees(Math.ceil(bar.rock * 10 - 1e-9) / 10), '.']),
    ],
  ]
}

/** What each setting reads; for one setting a line of what goes with the bar. */
const settings = ({ section }: Design, bar: CutterBar): readonly Notes[] =>
  bar.stages.length < 2
    ? []
    : [
        {
          heading: 'SETTINGS, over bar and nose',
          lines: [
            ...bar.stages.map(
              ({ projection, to }, index): Wording => [
                `${index + 1}: projection `,
                coarse(projection),
                ', reads ',
                coarse(bar.diameter.nominal + projection),
                ', cut to ',
                coarse(section.boreRadius + to),
                ' across.',
              ],
            ),
            [
              'Readings for a bar of ',
              coarse(bar.diameter.nominal, { prefix: 'Ø' }),
              '; on another, add the projection to the bar as miked.',
            ],
            ['Cut every slot to one setting before the next. Then touch the last floor: a new zero.'],
          ],
        },
      ]

/** The drill before the last: the largest on hand that leaves a chip worth cutting. Source of the allowance: judgement. */
const underDrill = ({ spec }: Design, bar: CutterBar) =>
  spec.shop.drills.findLast(({ diameter }) => diameter <= bar.crossHole.nominal - either(spec.units, 0.4, 0.015))

/** How the outside is turned, by what the stock stands over. */
const turning: Readonly<Record<ReturnType<typeof turnedParts>, Wording>> = {
  body: ['Turn the body, not the shank.'],
  shank: ['Turn the shank, not the body.'],
  both: ['Turn the body, then the shank, between centres.'],
  all: ['Turn it to size from end to end, between centres.'],
  neither: ['Chamfer both ends; leave the skin.'],
}

export const barNotes = (design: Design, bar: CutterBar): readonly Notes[] => {
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Saw, face, centre the shank.'],
        turning[turnedParts(bar)],
        crossHole(design, bar),
        ...tapping(bar),
        ["Lift the burr with the hole's drill, by hand. Break both mouths. Dot the end, nose side."],
        ...(canBeHardened(bar) ? [['Harden now or never, 40 to 45 HRC; then only polish by hand.']] : []),
      ],
    },
    {
      heading: 'GOES WITH',
      lines: [
        [
          ...blank(bar),
          ...(bar.bit.shape === 'square' ? [', corners broken ', plain(bar.bit.cornerBreak), ' at least'] : []),
          '.',
        ],
        [
          'Set screw ',
          ...screwName(bar),
          ' (',
          most(bar.screw.lengthMax),
          '), ',
          coarse(screwBelow(bar)),
          bar.form === 'end screw' ? ' below the end.' : ' below the surface.',
        ],
        ...holding(design, bar),
        ...(bar.stages.length > 1
          ? []
          : [
              [
                'Projection ',
                coarse(bar.projection),
                ': caliper reads bar as miked + ',
                coarse(bar.projection),
                ' (',
                coarse(bar.overBarAndNose),
                ' at ',
                coarse(bar.diameter.nominal, { prefix: 'Ø' }),
                ').',
              ] satisfies Wording,
            ]),
        ...(bar.shouldered ? [] : [['Hold it with ', plain(bar.bodyLength), ' standing out.']]),
        ...(design.spec.tooling.bar?.stroke === 'pull'
          ? [['Pull stroke: bit turned over, rake towards the holder; the work needs a stop against being drawn out.']]
          : []),
      ],
    },
    ...settings(design, bar),
    stroking(design),
  ]
}

export const barAsMade = (design: Design, bar: CutterBar): readonly AsMadeRow[] => {
  const tolerance = endTolerance(design)
  return [
    { what: bar.shouldered ? 'Body Ø, whole length' : 'Ø, whole length', limits: [sized(bar.diameter)] },
    { what: 'Cross hole Ø', limits: [sized(bar.crossHole)] },
    {
      what: bar.incline === 0 ? 'Hole centre to end face' : 'Hole to end, on the axis',
      limits: [plusMinus(bar.holeToEnd, tolerance)],
    },
    ...(bar.incline === 0
      ? []
      : [{ what: 'Hole leans', limits: [degrees(bar.incline - 0.5), ' / ', degrees(bar.incline + 0.5)] }]),
    { what: 'Blank slides through', limits: ['by hand'] },
    ...(bar.form === 'end screw'
      ? [{ what: 'Screw below the end', limits: [atLeast(bar.bitToEnd - bar.screw.lengthMax)] }]
      : bar.incline === 0
        ? [{ what: 'Screw in the surface', limits: ['flush or below'] }]
        : []),
  ]
}
