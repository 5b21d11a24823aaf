/** A job that is pushed: two sides at the press, one for bushing and shims. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { pressLengthwise } from '../figures/press-lengthwise.ts'
import { pressSection } from '../figures/press-section.ts'
import { byEye } from '../plan/indexing.ts'
import { atEachPass, atThePress, turningByHand } from './cautions.ts'
import type { Block, Leaf, Row, Run, Side, Tick, Words } from './document.ts'
import { type Cover, asFits } from './fitting.ts'
import { measureTheBore } from './measure-bore.ts'
import { measureTheSlot } from './measure-slot.ts'
import { sentenceOf } from './naming.ts'
import { pictured } from './pictures.ts'
import { bold, bought, capital, counted, degrees, say, type Saying } from './saying.ts'
import { reasonsIn, sizesTable } from './tooling.ts'

type Bushing = NonNullable<Design['bushing']>

const asMeasured = ({ broach, bushing }: Design, says: Saying): readonly Block[] => {
  if (!broach || !bushing) return []
  const row = (name: string, mm: number): Row => ({ cells: [name, says.cell(says.fine(mm), mm), { write: 'box' }] })
  return [
    { block: 'heading', text: 'The broach', beside: 'as it was measured; yours may be another' },
    {
      block: 'table',
      title: 'The broach as measured',
      named: true,
      columns: [{ head: '' }, { head: 'worked for', align: 'decimal' }, { head: 'yours', width: 22, grows: true }],
      rows: [
        row('teeth, width', broach.toothWidth),
        row('body, width', broach.bodyWidth),
        row('back to first tooth', broach.firstTooth),
        row('back to last tooth', broach.lastTooth),
        row('bushing, back wall', bushing.backWall.nominal),
      ],
    },
    {
      block: 'paragraph',
      size: 'note',
      words: 'Another last tooth or back wall: the over column is not yours. Back to the desk with what you measured.',
    },
  ]
}

/** `0.240 wide and 0.425 high at most, 1.312 long at least` */
const pusherSaid = ({ width, height, length }: NonNullable<Design['pusher']>, says: Saying): readonly Run[] => [
  { bold: says.size(width) },
  ' wide and ',
  { bold: says.size(height) },
  ' high at most, ',
  { bold: says.size(length) },
  ' long at least',
]

export const inTheStack = ({ bushing, pusher, spec }: Design, says: Saying): readonly Tick[] => {
  if (!bushing) return []
  const { press } = spec.tooling
  const { raised } = bushing
  const onSpacer = raised > 0 ? `, the spacer of ${says.size(raised)} counted` : ''
  const has = (mm: number | undefined): string => (mm === undefined ? '' : ` (this press has ${says.size(mm)})`)
  return [
    {
      words: say`Daylight, table to ram: ${bold(says.size(bushing.tableToRam))}${onSpacer}${has(press?.daylight)}`,
      blank: true,
    },
    {
      words: say`Under the part ${bold(says.size(bushing.below))} clear for the teeth to pass, ${bold(says.size(bushing.fallsFree))} for the broach to fall free; with less, the hub is lifted off it${press?.below === undefined ? '' : ` (${raised > 0 ? 'press and spacer have' : 'this press has'} ${says.size(press.below + raised)})`}`,
      blank: true,
    },
    { words: say`Stroke ${bold(says.size(bushing.stroke))}${has(press?.stroke)}`, blank: true },
    {
      words: say`Hole in the plate at least ${bold(says.size(bushing.plateHoleRadius))} from the bore’s axis on the slot’s side`,
    },
    {
      words:
        'Bushing in to its collar, its slot where the keyway goes; broach back against the slot’s floor, teeth outward',
    },
    ...(pusher
      ? [
          {
            words: say`Pusher at hand, ${pusherSaid(pusher, says)}: ram up, pusher on the broach’s end, before the ram comes down to ${bushing.shims.length > 0 ? 'collar or shim' : 'the collar'}`,
          },
        ]
      : []),
  ]
}

/** Heights that the two pictures may have, mm: as large as can be, and smaller. */
const heights = [
  { section: 86, stack: 96 },
  { section: 70, stack: 84 },
  { section: 58, stack: 64 },
] as const

const setUp = (design: Design, says: Saying, cover: Cover): Side => {
  const measured = [...measureTheBore(design, says, 'press'), ...asMeasured(design, says)]
  const ways = heights.map(
    ({ section, stack }) =>
      (): Side => ({
        title: 'set up',
        blocks: [
          { block: 'job', name: design.spec.name, says: sentenceOf(design, says, 'press') },
          ...atThePress(design),
          {
            block: 'columns',
            columns: [
              { width: 108, blocks: pictured(pressSection(design, onPaper(108, section))) },
              { blocks: measured },
            ],
          },
          { block: 'heading', text: 'The stack' },
          {
            block: 'columns',
            columns: [
              { width: 84, blocks: pictured(pressLengthwise(design, onPaper(84, stack))) },
              { blocks: [{ block: 'ticks', ticks: inTheStack(design, says) }] },
            ],
          },
        ],
      }),
  )
  return asFits(cover, ways)
}

/** `none`, `1 × 1.055`, `1.055 + 0.800` */
const shimsSaid = (bushing: Bushing, count: number, says: Saying): string => {
  const used = bushing.shims.slice(0, count)
  const [first] = used
  if (first === undefined) return 'none'
  return used.every((shim) => Math.abs(shim - first) < 1e-6)
    ? `${count} × ${says.fine(first)}`
    : used.map((shim) => says.fine(shim)).join(' + ')
}

/** How near the size over all must be before it is pressed, mm. */
const passesTable = (design: Design, says: Saying): readonly Block[] => {
  const { bushing, pressLoads, measuring } = design
  if (!bushing) return []
  const last = bushing.passes.at(-1)
  // A micrometer reads tenths of a thousandth.
  const miked = says.metric ? says.read : (mm: number): string => says.fine(mm)
  const within = pressLoads?.overError.worst
  const rows = bushing.passes.map(({ shims, over }, at): Row => {
    const dress = at === bushing.passes.length - 1 ? 'bold' : undefined
    const force = pressLoads?.passes[at]
    return {
      cells: [
        String(at + 1),
        shimsSaid(bushing, shims, says),
        { write: 'box' },
        says.cell(miked(over), over, dress),
        { write: 'box' },
        force === undefined ? '' : says.force(force),
        ...(measuring.toBore ? [says.cell(miked(over), over, dress), { write: 'box' as const }] : []),
        { tick: '' },
      ],
    }
  })
  return [
    {
      block: 'paragraph',
      size: 'large',
      words: say`The over is the across. If it does not mike ${miked(last?.over ?? 0)} do not press.`,
    },
    {
      block: 'table',
      title: 'Passes',
      named: true,
      columns: [
        { head: 'pass' },
        { head: 'shims' },
        { head: 'shims measured', width: 17 },
        { head: 'over bushing back, shims and last tooth', align: 'decimal', width: 22 },
        { head: 'measured over', width: 19 },
        { head: 'force up to', align: 'right', width: 14 },
        // Where a slot takes away the wall opposite, the over is all that tells the depth.
        ...(measuring.toBore
          ? [
              { head: 'after it, across', align: 'decimal' as const, width: 14 },
              { head: 'measured', width: 19 },
            ]
          : []),
        { head: '' },
      ],
      rows,
    },
    ...(within === undefined
      ? []
      : [
          {
            block: 'paragraph' as const,
            size: 'note' as const,
            words: `Go on if the over is within ${says.limit(within, 'down')} of its figure, either way; the last one must lie within ${says.between(measuring.across.least, measuring.across.most)}.`,
          },
        ]),
  ]
}

const pressing = (design: Design, says: Saying): Side => {
  const { section, pressLoads } = design
  const capacity = pressLoads?.capacity
  const slots = section.at.length
  const sound = design.verdict !== 'fail'
  const force: Words =
    pressLoads === undefined
      ? 'The force is not known for this metal: feel for it, and stop when it jumps.'
      : say`Up to ${bold(says.force(pressLoads.force))}${capacity === undefined ? '' : `; the press gives ${says.force(capacity)}`}${pressLoads.pull === undefined ? '' : `, ${says.force(pressLoads.pull)} at the lever’s end`}.`
  return {
    title: 'press and measure',
    blocks: [
      { block: 'heading', text: 'Mike it before you press it' },
      ...(sound
        ? passesTable(design, says)
        : [
            {
              block: 'paragraph' as const,
              size: 'large' as const,
              words: 'No passes are given: a rule that must hold is broken. Mend the job first.',
            },
          ]),
      { block: 'heading', text: 'At each pass' },
      atEachPass,
      { block: 'paragraph', words: force },
      {
        block: 'ticks',
        ticks: [
          { words: 'Broach brushed clean, every gullet; oil on every tooth and on its back' },
          { words: 'Shim flat, no chip under it, its head against the collar' },
          { words: 'Ram square on the broach’s end; broach upright after the first tooth bites' },
          ...(slots > 1
            ? [
                { words: say`${capital(counted(slots))} keyways: every pass in one of them before the next` },
                { words: toTheNext(design, says) },
              ]
            : []),
        ],
      },
      ...measureTheSlot(design, says, { pin: true, boxes: true }),
    ],
  }
}

/** What sets the next keyway. */
export const toTheNext = ({ bushing, section }: Design, says: Saying): Words =>
  bushing?.locating
    ? say`Then the locating key (${says.size(section.width)} × ${says.size(bushing.locating.key.height)} × ${says.size(bushing.locating.key.length)}), stuck with grease in the keyway just cut, and the bushing’s second slot over it: the broach’s slot stands at the next`
    : say`Then the slot’s middle on a line that was scribed on the hub’s face before, by dividing head or square: good to ${says.size(byEye)} at best`

/** The largest end mill that is told of and goes into the slot, or that none does. */
const withEndMill = ({ spec, bushing }: Design, says: Saying): string => {
  const { endMills } = spec.shop
  if (!endMills || !bushing) return ''
  const largest = endMills.findLast((size) => size <= bushing.slotWidth.lower - 1e-9)
  return largest === undefined
    ? ', with a narrower end mill than there is on hand,'
    : `, with the ${bought(largest, says)} end mill,`
}

const bushingRows = (bushing: Bushing, design: Design, says: Saying): readonly (readonly [string, Words, string])[] => {
  const why = reasonsIn(design)
  const size = says.size
  return [
    [
      'outside',
      say`Ø${bold(says.between(bushing.outside.lower, bushing.outside.upper))}${says.other(bushing.outside.nominal)}`,
      why('bushing.outside'),
    ],
    ['length under the collar', say`${bold(size(bushing.length))}`, why('bushing.length')],
    [
      'collar',
      say`Ø${bold(size(bushing.collarDiameter))}, ${size(bushing.collarThickness)} thick`,
      why('bushing.collarDiameter'),
    ],
    [
      'undercut',
      say`${size(bushing.undercut.width)} wide, ${size(bushing.undercut.depth)} deep`,
      why('bushing.undercut'),
    ],
    [
      'slot, open end to end',
      say`${bold(says.between(bushing.slotWidth.lower, bushing.slotWidth.upper))} wide`,
      why('bushing.slotWidth'),
    ],
    [
      'back wall',
      say`${bold(says.between(bushing.backWall.lower, bushing.backWall.upper))}: mike it`,
      why('bushing.backWall'),
    ],
    [
      'slot, from the top',
      say`${bold(says.metric ? size(bushing.plungeDepth) : says.fine(bushing.plungeDepth))} deep`,
      why('bushing.plungeDepth'),
    ],
    ['lead', say`${size(bushing.lead.length)} long, ${degrees(bushing.lead.angle)}`, why('bushing.lead')],
    ...secondSlotRows(bushing, says, why('bushing.locating')),
  ]
}

const secondSlotRows = (
  { locating }: Bushing,
  says: Saying,
  why: string,
): readonly (readonly [string, Words, string])[] =>
  locating
    ? [
        [
          locating.at.length > 1 ? 'second slots' : 'second slot',
          say`${bold(says.size(locating.width.nominal))} wide, ${bold(says.size(locating.overBack))} over the back, ${locating.round.map((angle) => degrees(angle)).join(', ')} round from the first as on the drawing`,
          why,
        ],
        [
          'locating key',
          say`key steel ${bold(says.size(locating.width.nominal))} × ${bold(says.size(locating.key.height))} × ${bold(says.size(locating.key.length))}, fitted without shake in slot and keyway`,
          '',
        ],
      ]
    : []

const shimsTable = (bushing: Bushing, says: Saying): readonly Block[] =>
  bushing.shims.length === 0
    ? []
    : [
        {
          block: 'heading',
          text: 'Shims',
          beside: `${says.size(bushing.shim.width)} wide, ${says.size(bushing.shim.length)} long, head ${says.size(bushing.shim.headWidth)} × ${says.size(bushing.shim.headLength)}`,
        },
        {
          block: 'table',
          title: 'Shims',
          named: true,
          columns: [
            { head: 'shim' },
            { head: 'thick', align: 'decimal' },
            { head: 'of stock', grows: true },
            { head: 'measured', width: 22 },
            { head: 'all so far', width: 22 },
          ],
          rows: bushing.shims.map((shim, at): Row => {
            const pack = bushing.packs[at]
            const short =
              pack && Math.abs(pack.short) > 5e-4
                ? `, ${says.fine(Math.abs(pack.short))} ${pack.short > 0 ? 'short' : 'over'}`
                : ''
            return {
              cells: [
                String(at + 1),
                says.cell(says.fine(shim), shim, 'bold'),
                pack && pack.leaves.length > 0
                  ? `${pack.leaves.map((leaf) => says.fine(leaf)).join(' + ')}${short}`
                  : 'ground or lapped',
                { write: 'box' },
                { write: 'box' },
              ],
            }
          }),
        },
        {
          block: 'paragraph',
          size: 'note',
          words:
            'Write the thickness as measured and add it up: what the shims are together stands in the over column, not what they were bought as.',
        },
      ]

const pusherTable = (design: Design, says: Saying): readonly Block[] => {
  const { pusher } = design
  if (!pusher) return []
  const why = reasonsIn(design)
  return [
    {
      block: 'heading',
      text: 'Pusher',
      beside: 'soft steel, ends square: it follows the broach through the bushing’s slot',
    },
    sizesTable('Sizes of the pusher', [
      ['width', say`${bold(says.size(pusher.width))} at most`, why('pusher.width')],
      ['height', say`${bold(says.size(pusher.height))} at most`, why('pusher.height')],
      ['length', say`${bold(says.size(pusher.length))} at least`, why('pusher.length')],
    ]),
  ]
}

export const pressLeaves = (design: Design, says: Saying, cover: Cover): readonly Leaf[] => {
  const { bushing } = design
  if (!bushing) return []
  return [
    { leaf: 'machine', title: 'Machine leaf', sides: [setUp(design, says, cover), pressing(design, says)] },
    {
      leaf: 'tooling',
      title: 'Tooling leaf',
      sides: [
        {
          title: 'bushing and shims',
          blocks: [
            {
              block: 'heading',
              text: 'Guide bushing',
              beside: `its drawing has every size; ${bushing.stock.material}`,
            },
            sizesTable('Sizes of the bushing', bushingRows(bushing, design, says)),
            { block: 'heading', text: 'In this order' },
            turningByHand,
            {
              block: 'list',
              numbered: true,
              entries: [
                say`saw round Ø${says.size(bushing.stock.diameter)} × ${bold(says.size(bushing.stock.length))}`,
                'collar, outside and undercut in one chucking; lead last',
                'face to length under the collar',
                say`mill the slot from the middle${withEndMill(design, says)}, its floor last, in light cuts; open end to end`,
                'mike the back wall at both ends and in the middle',
                'break every edge but the slot’s floor',
              ],
            },
            ...shimsTable(bushing, says),
            ...pusherTable(design, says),
          ],
        },
      ],
    },
  ]
}
