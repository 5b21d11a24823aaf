/** What the guide bushing's sheet says in words: order of work, why the back wall matters, what to measure. */
import type { Design } from '../src/design.ts'
import { either } from '../src/dimensions/makeable.ts'
import type { GuideBushing } from '../src/dimensions/types.ts'
import type { AsMadeRow, Notes, Wording } from '../src/drawing/view.ts'
import { pressing } from './cautions.ts'
import { bought, fine, plain, sized, type Sum, sumOf } from './wording.ts'

/** Back wall + shims + last tooth = floor to opposite wall, in figures that close as printed. */
const backWallSum = (design: Design, bushing: GuideBushing): Sum =>
  sumOf(design, design.section.across, [
    bushing.backWall.nominal,
    bushing.shims.reduce((sum, shim) => sum + shim, 0),
    lastTooth(design),
  ])

const lastTooth = ({ spec }: Design): number => spec.tooling.press?.broach?.lastTooth ?? 0

const passLines = (bushing: GuideBushing): readonly Wording[] =>
  bushing.passes.map(({ shims, over }, index) => [
    `Pass ${index + 1}, `,
    shims === 0 ? 'no shim' : shims === 1 ? '1 shim' : `${shims} shims`,
    ': ',
    fine(over),
  ])

/** How it goes in, and the pusher that follows a broach with a short tail through the slot; no word of one where the ram reaches. */
const inUse = ({ pusher }: Design): Notes => ({
  heading: 'IN USE',
  lines: [
    ['Slides in by hand, oiled; no burr.'],
    ...(pusher
      ? [
          [
            'Last, a pusher in the slot: ',
            plain(pusher.width),
            ' x ',
            plain(pusher.height),
            ' at most, ',
            plain(pusher.length),
            ' long or more.',
          ],
        ]
      : []),
  ],
})

export const bushingNotes = (design: Design, bushing: GuideBushing): readonly Notes[] => {
  const { units } = design.spec
  const { bore } = design.section
  const { outside } = bushing
  const sum = backWallSum(design, bushing)
  const whole = bushing.length + bushing.collarThickness
  return [
    {
      heading: 'ORDER OF WORK',
      numbered: true,
      lines: [
        [
          'Measure the hub bore first: the outside is its least size less ',
          fine(bore.lower - outside.upper),
          ' to ',
          fine(bore.lower - outside.lower),
          '.',
        ],
        [
          'Chuck ',
          bought(bushing.stock.diameter, { prefix: 'Ø' }),
          '; ',
          bought(bushing.stock.length - whole),
          ' of it is grip and parting. In one chucking turn collar, outside over ',
          plain(bushing.length),
          ', lead, undercut B.',
        ],
        [
          'Part off at ',
          plain(whole + either(units, 0.5, 0.02)),
          ', face the collar to ',
          plain(bushing.collarThickness),
          ', chamfer it.',
        ],
        [
          `Mill the slot ${bushing.locating ? 'on a dividing head' : 'lying in a vee'}, full length, through the collar. Depth from the top of the outside `,
          fine(bushing.plungeDepth),
          ': go ',
          plain(either(units, 0.2, 0.008)),
          ' short, measure, finish.',
        ],
        ['Measure the back wall over a pin or ball at both ends. The shims are ground to it.'],
        ...(bushing.locating ? [secondSlotLine(bushing.locating)] : []),
      ],
    },
    {
      heading: 'WHY THE BACK WALL MATTERS',
      lines: [
        ['Back wall + shims + last tooth = floor to opposite wall.'],
        [
          ...sum.terms.flatMap((term, index) => (index === 0 ? [term] : [' + ', term])),
          ' = ',
          sum.total,
          ' (limits ',
          fine(design.section.acrossLimits.lower),
          ' to ',
          fine(design.section.acrossLimits.upper),
          ').',
        ],
        [
          'A wall ',
          plain(either(units, 0.05, 0.002)),
          ' thick or thin is put right in the last shim; a wall that tapers is not: both ends alike within ',
          plain(either(units, 0.02, 0.001)),
          '.',
        ],
      ],
    },
    {
      heading: 'MICROMETER BEFORE EACH PASS',
      lines: [
        ['Over bushing back, shims and last tooth it reads the depth across that the pass will leave.'],
        ...passLines(bushing),
      ],
    },
    inUse(design),
    pressing,
  ]
}

/** How the slots for the locating key are made, and what goes in them. */
const secondSlotLine = ({ width, key, at }: NonNullable<GuideBushing['locating']>): Wording => [
  `In the same setting turn it on and mill the ${at.length > 1 ? 'slots' : 'slot'} for the locating key, through the collar too. The key: steel `,
  plain(width.nominal),
  ' x ',
  plain(key.height),
  ' x ',
  plain(key.length),
  ', fitted to the first keyway without shake.',
]

export const bushingAsMade = (design: Design, bushing: GuideBushing): readonly AsMadeRow[] => [
  { what: 'Outside Ø, both ends', limits: [sized(bushing.outside)] },
  { what: 'Slot width', limits: [sized(bushing.slotWidth)] },
  { what: 'Back wall, collar end', limits: [sized(bushing.backWall)] },
  { what: 'Back wall, far end', limits: [sized(bushing.backWall)] },
  {
    what: 'Hub bore it goes in',
    limits:
      design.spec.bore.measured === undefined
        ? [sized(design.section.bore)]
        : [fine(design.spec.bore.measured), ' measured'],
  },
]
