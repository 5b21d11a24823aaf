/** What the tool bit's sheet says in words: how to grind it, what can hurt, what a caliper must read. */
import type { Design } from '../src/design.ts'
import { tableTilt, wheelHollow } from '../src/dimensions/tool-bit.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import type { Size } from '../src/fits/size.ts'
import { edgeHeight } from './tool-bit-nose.ts'
import { edgeSize, noseSize } from './tool-bit-limits.ts'
import { bought, byCaliper, coarse, degrees, fine, plain, sized } from './wording.ts'

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
    : [['Stone to sharp. Measure the width at the edge. Cut a slot in scrap: it comes out wider.']]

const regrinding = (bit: ToolBit): Wording =>
  bit.lanes === 1 && bit.regrinds === 0
    ? ['No regrind left in the width: once blunt, a new bit.']
    : [
        'Regrind the end, not the face: ',
        plain(bit.regrindStep),
        ' off the end takes ',
        fine(bit.widthPerRegrind),
        ' off the width',
        bit.lanes > 1 ? '.' : `: ${bit.regrinds} regrind${bit.regrinds === 1 ? '' : 's'} in it.`,
      ]

export const bitNotes = (design: Design, bit: ToolBit): readonly Notes[] => {
  return [
    {
      heading: 'ORDER OF GRINDING',
      numbered: true,
      lines: [
        bit.shape === 'square'
          ? ['On the whole blank: square the end, mark its middle.']
          : [
              'On the whole blank: flat for the screw, ',
              plain(bit.flat ?? 0),
              ' deep; square the end, mark the middle.',
            ],
        [
          'Both sides alike: swing ',
          degrees(bit.backTaper),
          ', table tilt ',
          degrees(Math.round(tableTilt(bit.sideRelief, bit.backTaper) * 10) / 10),
          ', neck ',
          plain(bit.noseLength),
          ' back (',
          degrees(Math.round(bit.backTaperEffective * 10) / 10),
          ' each on the face).',
        ],
        bit.shape === 'square'
          ? [
              ...endWords(design, bit),
              '. Then the face: ',
              ...faceWords(bit),
              ...(edgeHeight(bit) < bit.size - 1e-9
                ? [', the edge ', coarse(bit.size - edgeHeight(bit)), ' under the top: clear of the broken corners.']
                : ['.']),
            ]
          : [
              ...endWords(design, bit),
              '. Then the face: edge ',
              coarse(edgeHeight(bit)),
              ' over the back, miked',
              ...(bit.rake > 0 ? [', ', degrees(bit.rake), ' down from there.'] : [', level from there.']),
            ],
        ...lastStep(design, bit),
        ['Cut to length last, with an abrasive disc.'],
      ],
    },
    {
      heading: 'CAUTION',
      caution: true,
      lines: [
        [
          'Eye protection, dust extraction, guard on, rest close. Stand aside as the wheel runs up; hold short bits in a holder. ' +
            'No aluminium on the wheel. Dip often; never quench a hot blank.',
        ],
        [...regrinding(bit), ' Then set and touch off again.'],
      ],
    },
  ]
}

/** Tilt for the end, and what the wheel's rim hollows out where that is more than a degree. */
const endWords = (design: Design, bit: ToolBit): Wording => {
  const hollow = wheelHollow(edgeHeight(bit), wheelRadius(design))
  return [
    'End: tilt ',
    degrees(bit.endRelief),
    ...(hollow > 1
      ? [
          ' (a wheel ',
          bought(2 * wheelRadius(design), { prefix: 'Ø' }),
          ' adds ',
          degrees(Math.round(hollow * 10) / 10),
          ')',
        ]
      : []),
  ]
}

const faceWords = ({ rake }: ToolBit): Wording =>
  rake > 0 ? [degrees(rake), ' down from the edge'] : ['level, no rake']

/** The sizes that a caliper reads, at the corners of the angle limits; the edge itself by micrometer. */
export const bitChecks = (design: Design, bit: ToolBit): readonly AsMadeRow[] => {
  const read = (what: string, { lower, upper }: Size): AsMadeRow => ({ what, limits: byCaliper(design, lower, upper) })
  return [
    { what: 'Width at the edge, miked', limits: [sized(noseSize(design, bit))] },
    read('Neck width, on the face', bit.widthAtNeck),
    ...(bit.shape === 'square'
      ? [read('Heel width, underneath', bit.widthAtHeel), read('End set back, underneath', bit.endSetBack)]
      : [{ what: 'Edge over the back, miked', limits: [sized(edgeSize(design, bit))] }]),
    ...(bit.rake > 0 ? [read('Face drop at the neck', bit.faceDrop)] : []),
  ]
}
