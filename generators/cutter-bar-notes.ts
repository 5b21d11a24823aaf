/** What the cutter bar's sheet says in words: order of work, what goes with it, what to measure. */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import { endTolerance } from './cutter-bar-section.ts'
import { bought, drill, fine, most, plain, sized, small, plusMinus } from './wording.ts'

/** `6 mm square blank`, `1/4 square blank`. */
const blank = (bar: CutterBar): Wording => [
  bar.bit.shape === 'round' ? 'Round blank ' : 'Square blank ',
  bought(bar.bit.size, { prefix: bar.bit.shape === 'round' ? 'Ø' : '□' }),
]

const screwName = (bar: CutterBar): Wording => [`${bar.screw.thread} x `, bought(bar.screw.length)]

/** The screw's outer end under the bar's end when it has seated, mm. */
export const screwBelow = (bar: CutterBar): number => bar.bitToEnd - bar.screw.length

/** The drill before the last: the largest on hand that leaves a chip worth cutting. Source of the allowance: judgement. */
const underDrill = ({ spec }: Design, bar: CutterBar) =>
  spec.shop.drills.findLast(({ diameter }) => diameter <= bar.crossHole.nominal - either(spec.units, 0.4, 0.015))

export const barNotes = (design: Design, bar: CutterBar): readonly Notes[] => {
  const under = underDrill(design, bar)
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        [
          'Saw ',
          bought(bar.stock.length),
          '. Face to ',
          plain(bar.overall),
          '. Centre the shank end; the centre may stay.',
        ],
        bar.shouldered
          ? [
              'Turn the body from the tapped end, ',
              small(bar.fillet, { prefix: 'R' }),
              ' at the shoulder, both chamfers. Ground bar keeps its skin: leave the shank.',
            ]
          : ['The bar keeps its skin: chamfer both ends. Chuck it so that ', plain(bar.bodyLength), ' stands out.'],
        [
          'Cross hole first, in solid metal (tapped first, the end gives the drill a void on one side, and it wanders): find the axis, ',
          ...(under ? ['drill ', ...drill(under.name, under.diameter), ', then '] : ['drill ']),
          ...drill(bar.crossHoleDrill, bar.crossHole.nominal),
          '.',
        ],
        [
          'From the end drill ',
          ...drill(bar.screw.tapDrill.name, bar.screw.tapDrill.diameter),
          ' until it breaks into the cross hole; leave the far wall alone. Countersink. ' +
            `Tap ${bar.screw.thread}, plug tap last.`,
        ],
        ['If it is hardened, 1 to 4 come first; temper to 40 to 45 HRC.'],
        ['Pass the same drill through the cross hole again by hand to lift the thread burr. Break both mouths.'],
        ['Punch one dot in the end face on the side of the nose.'],
      ],
    },
    {
      heading: 'GOES WITH',
      lines: [
        [
          ...blank(bar),
          ...(bar.bit.shape === 'square' ? [', corners broken ', plain(bar.bit.cornerBreak), ' or more'] : []),
          '.',
        ],
        [
          'Set screw ',
          ...screwName(bar),
          ' (',
          most(bar.screw.lengthMax),
          '): ',
          plain(screwBelow(bar)),
          ' below the end when tight.',
        ],
        ['Bar back to nose, by caliper: ', fine(bar.overBarAndNose), ' (projection ', fine(bar.projection), ').'],
      ],
    },
  ]
}

export const barAsMade = (design: Design, bar: CutterBar): readonly AsMadeRow[] => {
  const tolerance = endTolerance(design)
  return [
    { what: 'Body Ø, whole length', limits: [sized(bar.diameter)] },
    { what: 'Cross hole Ø', limits: [sized(bar.crossHole)] },
    {
      what: 'Hole centre to end face',
      limits: [plusMinus(bar.holeToEnd, tolerance)],
    },
    { what: 'Blank slides through', limits: ['by hand'] },
    { what: 'Screw below the end', limits: [plain(bar.bitToEnd - bar.screw.lengthMax), ' or more'] },
  ]
}
