/** What the tool bit's sheet says in words: how to grind it, what can hurt, what a caliper must read. */
import type { Design } from '../src/design.ts'
import { tableTilt, wheelHollow } from '../src/dimensions/tool-bit.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import { edgeHeight } from './tool-bit-nose.ts'
import { between, bought, degrees, fine, plain, sized, window } from './wording.ts'

/** Radius of the wheel that the note on its hollow speaks of: a 150 mm (6 in) bench grinder. */
const wheelRadius = (design: Design): number => either(design.spec.units, 75, 3)

/** Width that all lanes together leave, mm: what the sideways step is reckoned from. */
const aimedWidth = (design: Design, bit: ToolBit): number => {
  const farthest = Math.max(0, ...(design.bar?.lanes ?? []).map(({ offset }) => Math.abs(offset)))
  return bit.noseWidth.nominal + 2 * farthest
}

const lastStep = (design: Design, bit: ToolBit): readonly Wording[] =>
  bit.lanes > 1
    ? [
        [
          'Stone to sharp. Measure the width at the edge: sideways step = (',
          fine(aimedWidth(design, bit)),
          ' - width) / 2, at the nominal ',
          fine((aimedWidth(design, bit) - bit.noseWidth.nominal) / 2),
          '.',
        ],
      ]
    : [['Stone to sharp. Measure the width at the edge. A slot comes out a little wider: cut one in scrap.']]

export const bitNotes = (design: Design, bit: ToolBit): readonly Notes[] => {
  const hollow = wheelHollow(edgeHeight(bit), wheelRadius(design))
  return [
    {
      heading: 'ORDER OF GRINDING',
      numbered: true,
      lines: [
        bit.shape === 'square'
          ? ['Square the end. Mark the middle.']
          : ['Grind the flat for the screw, ', plain(bit.flat ?? 0), ' deep. Square the end. Mark the middle.'],
        [
          'Both sides alike: swing ',
          degrees(bit.backTaper),
          ', table tilt ',
          degrees(Math.round(tableTilt(bit.sideRelief, bit.backTaper) * 10) / 10),
          ', neck ',
          plain(bit.noseLength),
          ' back.',
        ],
        ['End: tilt ', degrees(bit.endRelief), '.'],
        bit.shape === 'square'
          ? [
              ...faceWords(bit),
              ...(edgeHeight(bit) < bit.size - 1e-9
                ? [', the edge ', fine(bit.size - edgeHeight(bit)), ' under the top: clear of the broken corners.']
                : ['.']),
            ]
          : [
              'Face last: the edge ',
              fine(bit.size - edgeHeight(bit)),
              ' under the top of the round, ',
              ...(bit.rake > 0 ? [degrees(bit.rake), ' down from there'] : ['level from there']),
              '; no more than ',
              fine(Math.sqrt(Math.max(bit.size ** 2 - bit.noseWidth.nominal ** 2, 0)) / 2),
              ' from the middle, or the round is narrower than the nose.',
            ],
        ...lastStep(design, bit),
        ['Length ', ...window(bit.lengthMin, bit.lengthMax), '.'],
      ],
    },
    {
      heading: 'CAUTION',
      caution: true,
      lines: [
        ['Eye protection and dust extraction. Guard on, rest close. No aluminium on this wheel.'],
        ['Dip often. Never quench a hot blank: it cracks.'],
        [
          'Regrind the end, not the face: ',
          plain(bit.regrindStep),
          ' off the end takes ',
          fine(bit.widthPerRegrind),
          ' off the width',
          ...(bit.lanes > 1
            ? ['.']
            : bit.regrinds > 0
              ? [`: ${bit.regrinds} regrind${bit.regrinds === 1 ? '' : 's'} before it is too narrow.`]
              : [': none before it is too narrow.']),
          ' Then set the projection again and touch off again.',
        ],
      ],
    },
    {
      heading: 'AT THE GRINDER',
      lines: [
        ['Along the face the sides read ', degrees(Math.round(bit.backTaperEffective * 10) / 10), ' each.'],
        ...(hollow > 1
          ? [
              [
                'A wheel ',
                bought(2 * wheelRadius(design), { prefix: 'Ø' }),
                ' hollows the end: at the edge ',
                degrees(Math.round(hollow * 10) / 10),
                ' more than set.',
              ] satisfies Wording,
            ]
          : []),
      ],
    },
  ]
}

const faceWords = ({ rake }: ToolBit): Wording =>
  rake > 0 ? ['Face last: ', degrees(rake), ' down from the edge'] : ['Face last: level, no rake']

/** The sizes that a caliper reads, at the corners of the angle limits. */
export const bitChecks = (bit: ToolBit): readonly AsMadeRow[] => [
  {
    what: 'Width at the edge',
    limits: [sized(bit.noseWidth)],
  },
  { what: 'Neck width, on the face', limits: between(bit.widthAtNeck.lower, bit.widthAtNeck.upper) },
  ...(bit.shape === 'square'
    ? [
        { what: 'Heel width, underneath', limits: between(bit.widthAtHeel.lower, bit.widthAtHeel.upper) },
        { what: 'End set back, underneath', limits: between(bit.endSetBack.lower, bit.endSetBack.upper) },
      ]
    : [{ what: 'Edge under the top of the round', limits: [fine(bit.size - edgeHeight(bit))] }]),
  ...(bit.rake > 0 ? [{ what: 'Face drop at the neck', limits: between(bit.faceDrop.lower, bit.faceDrop.upper) }] : []),
]
