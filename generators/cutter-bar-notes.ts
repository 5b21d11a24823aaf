/** What the cutter bar's sheet says in words: order of work, what goes with it, what to measure. */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { CutterBar } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import { endTolerance } from './cutter-bar-section.ts'
import { stroking } from './cautions.ts'
import { atLeast, bought, coarse, drill, most, plain, plusMinus, sized } from './wording.ts'

/** `□6 blank`, `1/4 SQ blank`. */
const blank = (bar: CutterBar): Wording => [
  bought(bar.bit.size, { prefix: bar.bit.shape === 'round' ? 'Ø' : '□' }),
  ' blank',
]

const screwName = (bar: CutterBar): Wording => [`${bar.screw.thread} x `, bought(bar.screw.length)]

/** The screw's outer end under the bar's end when it has seated, mm. */
export const screwBelow = (bar: CutterBar): number => bar.bitToEnd - bar.screw.length

/** The drill before the last: the largest on hand that leaves a chip worth cutting. Source of the allowance: judgement. */
const underDrill = ({ spec }: Design, bar: CutterBar) =>
  spec.shop.drills.findLast(({ diameter }) => diameter <= bar.crossHole.nominal - either(spec.units, 0.4, 0.015))

/** Whether the bar is of a steel that can still be hardened by whoever makes it. */
export const canBeHardened = ({ stock }: CutterBar): boolean => stock.material.startsWith('drill rod')

/** How the outside is turned, by what stands over what. */
const turning = (bar: CutterBar): Wording => {
  if (bar.shouldered) return ['Turn the body, not the shank.']
  return bar.shank.nominal < bar.diameter.nominal - 1e-9
    ? ['Turn the shank, not the body.']
    : ['Chamfer both ends; leave the skin.']
}

export const barNotes = (design: Design, bar: CutterBar): readonly Notes[] => {
  const under = underDrill(design, bar)
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        ['Saw, face, centre the shank.'],
        turning(bar),
        [
          'Cross hole first, or it wanders: vee block, ',
          ...(under ? ['drill ', ...drill(under.name, under.diameter), ', then '] : ['drill ']),
          ...drill(bar.crossHoleDrill, bar.crossHole.nominal),
          '.',
        ],
        ['Tap drill into the cross hole, not its far wall. Countersink. Plug tap last.'],
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
          ' below the end.',
        ],
        ['Projection ', coarse(bar.projection), ': caliper reads bar as miked + ', coarse(bar.projection), '.'],
        ...(bar.shouldered ? [] : [['Chuck it with ', plain(bar.bodyLength), ' standing out.']]),
        ...(design.spec.tooling.bar?.stroke === 'pull'
          ? [['Pull stroke: bit turned over, rake towards the holder; the work needs a stop against being drawn out.']]
          : []),
      ],
    },
    stroking(design),
  ]
}

export const barAsMade = (design: Design, bar: CutterBar): readonly AsMadeRow[] => {
  const tolerance = endTolerance(design)
  return [
    { what: bar.shouldered ? 'Body Ø, whole length' : 'Ø, whole length', limits: [sized(bar.diameter)] },
    { what: 'Cross hole Ø', limits: [sized(bar.crossHole)] },
    {
      what: 'Hole centre to end face',
      limits: [plusMinus(bar.holeToEnd, tolerance)],
    },
    { what: 'Blank slides through', limits: ['by hand'] },
    { what: 'Screw below the end', limits: [atLeast(bar.bitToEnd - bar.screw.lengthMax)] },
  ]
}
