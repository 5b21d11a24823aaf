/** What the tool bit's sheet says in words: how to grind it, what can hurt, what a caliper must read. */
import type { Design } from '../src/design.ts'
import { middleAhead } from '../src/dimensions/bore.ts'
import { regrindOf, tableTilt, wheelHollow } from '../src/dimensions/tool-bit.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { ToolBit } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import type { Size } from '../src/fits/size.ts'
import { edgeHeight } from './tool-bit-nose.ts'
import { bought, byCaliper, coarse, degrees, fine, plain, sized } from './wording.ts'

/** Radius of the wheel that the note on its hollow speaks of: a 150 mm (6 in) bench grinder. */
const wheelRadius = (design: Design): number => either(design.spec.units, 75, 3)

/** Width that all lanes together leave, mm: what the sideways step is reckoned from. */
const aimedWidth = (design: Design, bit: ToolBit): number => {
  const farthest = Math.max(0, ...(design.bar?.lanes ?? []).map(({ offset }) => Math.abs(offset)))
  return bit.noseWidth.nominal + 2 * farthest
}

const lastStep = (design: Design, bit: ToolBit): readonly Wording[] => {
  if (bit.form === 'vee')
    return [
      [
        'Stone to sharp, the tip to ',
        fine(bit.tipRadius ?? 0, { prefix: 'R' }),
        '. Against the light in the template, looking along the cut. Cut one corner in scrap and try it.',
      ],
    ]
  if (bit.form === 'round')
    return [['Stone to sharp. Against the light in the template, then mike the width. Cut a groove in scrap.']]
  return bit.lanes > 1
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
}

const regrinding = (bit: ToolBit): Wording => {
  switch (regrindOf(bit)) {
    case 'flanks':
      return [
        'Regrind both flanks alike, not the face: ',
        plain(bit.regrindStep),
        ` off the tip, ${bit.regrinds} times. Stone the tip's radius again.`,
      ]
    case 'face':
      return ['Blunt, stone the face alone. Under its least width, grind a new nose.']
    case 'nothing':
      return ['No regrind left in the width: once blunt, a new bit.']
    case 'end':
      return [
        'Regrind the end, not the face: ',
        plain(bit.regrindStep),
        ' off the end takes ',
        fine(bit.widthPerRegrind),
        ' off the width',
        bit.lanes > 1 ? '.' : `: ${bit.regrinds} regrind${bit.regrinds === 1 ? '' : 's'} in it.`,
      ]
  }
}

/** What the leaning bar makes of the angles. */
const leaningWords = ({ bar }: Design, { leaning }: ToolBit): readonly Wording[] =>
  leaning && bar
    ? [
        [
          'The bit leans ',
          degrees(bar.incline),
          ' in its bar: there it cuts with ',
          degrees(leaning.rake),
          ' rake and ',
          degrees(leaning.endRelief),
          ' relief.',
        ],
      ]
    : []

const convexWords = (bit: ToolBit): readonly Wording[] =>
  bit.noseEndRadius === undefined
    ? []
    : [
        [
          'Its corners touch first, while its middle stands ',
          fine(middleAhead(bit.noseWidth.nominal, bit.cornerRadius, bit.noseEndRadius)),
          ' before them: the infeed told is reckoned with that. Go by the measured floor.',
        ],
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
          degrees(tenth(tableTilt(bit.sideRelief, bit.backTaper))),
          ', neck ',
          plain(bit.noseLength),
          ' back (',
          degrees(tenth(bit.backTaperEffective)),
          ' each on the face).',
        ],
        endWords(design, bit),
        faceWords(bit),
        ...lastStep(design, bit),
        ['Cut to length last, with an abrasive disc.'],
      ],
    },
    ...(bit.leaning || bit.noseEndRadius !== undefined
      ? [{ heading: 'AS IT CUTS', lines: [...leaningWords(design, bit), ...convexWords(bit)] }]
      : []),
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

const tenth = (angle: number): number => Math.round(angle * 10) / 10

/** The end by its form, and what the wheel's rim hollows out where that is more than a degree. */
const endWords = (design: Design, bit: ToolBit): Wording => {
  const hollow = wheelHollow(edgeHeight(bit), wheelRadius(design))
  const rim: Wording =
    hollow > 1
      ? [' (a wheel ', bought(2 * wheelRadius(design), { prefix: 'Ø' }), ' adds ', degrees(tenth(hollow)), ')']
      : []
  if (bit.form === 'vee')
    return [
      'Both flanks alike, to meet in the middle: ',
      degrees(tenth(bit.flankSwing ?? 0)),
      ' from the middle line, tilt ',
      degrees(tenth(bit.flankTilt ?? 0)),
      ...rim,
      '. Along the cut that is ',
      degrees(bit.includedAngle ?? 0),
      '.',
    ]
  if (bit.form === 'round')
    return [
      'End: swing it round to ',
      fine(bit.tipRadius ?? 0, { prefix: 'R' }),
      ', tilt ',
      degrees(bit.endRelief),
      ...rim,
      ' in front, less towards the sides.',
    ]
  if (bit.noseEndRadius === undefined) return ['End: tilt ', degrees(bit.endRelief), ...rim, '.']
  const behind = bit.noseEndRadius - Math.sqrt(bit.noseEndRadius ** 2 - (bit.noseWidth.nominal / 2) ** 2)
  return [
    'End: tilt ',
    degrees(bit.endRelief),
    ...rim,
    ', convex to ',
    fine(bit.noseEndRadius, { prefix: 'R' }),
    ': both corners ',
    fine(behind),
    ' behind the middle.',
  ]
}

const faceWords = (bit: ToolBit): Wording => {
  const { rake, shape, size } = bit
  const under = size - edgeHeight(bit)
  if (shape === 'round')
    return [
      'Face: edge ',
      coarse(edgeHeight(bit)),
      ' over the back, miked',
      ...(rake > 0
        ? [', ', degrees(rake), ' down from there.']
        : rake < 0
          ? [', ', degrees(-rake), ' up from there to the neck.']
          : [', level from there.']),
    ]
  if (rake < 0) return ['Face: edge ', coarse(under), ' under the top, ', degrees(-rake), ' up from there to the neck.']
  return [
    'Face: ',
    ...(rake > 0 ? [degrees(rake), ' down from the edge'] : ['level, no rake']),
    ...(under > 1e-9 ? [', the edge ', coarse(under), ' under the top: clear of the broken corners.'] : ['.']),
  ]
}

/** The sizes that a caliper reads, at the corners of the angle limits; the edge itself by micrometer. Five at the most. */
export const bitChecks = (design: Design, bit: ToolBit): readonly AsMadeRow[] => {
  const read = (what: string, { lower, upper }: Size): AsMadeRow => ({ what, limits: byCaliper(design, lower, upper) })
  const shaped = bit.form !== undefined
  return [
    {
      what: shaped ? 'Width where widest, miked' : 'Width at the edge, miked',
      limits: [sized(bit.groundWidth)],
    },
    ...(shaped
      ? [{ what: bit.form === 'vee' ? 'V in the template' : 'Round in the template', limits: ['no light'] }]
      : []),
    read('Neck narrower by', bit.neckUnder),
    ...(bit.edgeLimits === undefined
      ? [
          ...(shaped ? [] : [read('Heel width, underneath', bit.widthAtHeel)]),
          read('End set back, underneath', bit.endSetBack),
        ]
      : [{ what: 'Edge over the back, miked', limits: [sized(bit.edgeLimits)] }]),
    ...(bit.rake > 0 ? [read('Face drop at the neck', bit.faceDrop)] : []),
    ...(bit.rake < 0 && bit.shape === 'square'
      ? [
          read('Edge under the top', {
            nominal: bit.size - edgeHeight(bit),
            lower: bit.size - edgeHeight(bit) - careful(design),
            upper: bit.size - edgeHeight(bit) + careful(design),
          }),
        ]
      : []),
  ]
}

/** How near an edge's height is ground by a careful hand, mm. Source: judgement. */
const careful = (design: Design): number => either(design.spec.units, 0.05, 0.002)
