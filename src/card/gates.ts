/** Where to stop and measure: a row a gate, a block a lane, a bold row where the projection is set anew. */
import type { Design } from '../design.ts'
import type { Expected, Gate, LaneCut, Plan, Run as Strokes } from '../plan/types.ts'
import type { Block, Cell, Column, Row, Words } from './document.ts'
import { bold, counted, say, type Saying } from './saying.ts'

/** What is measured at a gate, in a column's head; nothing where nothing can be. */
const measuredAs: Readonly<Record<Plan['gateBy'], string | undefined>> = {
  across: 'across',
  'floor to floor': 'floor to floor',
  'plug and blocks': 'blocks over plug',
  nothing: undefined,
}

export const gateNamed = ({ plan }: Design): string | undefined => plan && measuredAs[plan.gateBy]

const expectedOf = (gate: Gate, by: Plan['gateBy']): Expected =>
  (by === 'floor to floor' ? gate.floorToFloor : by === 'plug and blocks' ? gate.overPlug : undefined) ?? gate

/** `13 + 24`, `10, then 4 spring` */
const passesSaid = ({ runs, springPasses }: Gate): string => {
  const strokes = runs.map(({ passes }) => passes).join(' + ')
  return springPasses > 0 ? `${strokes}, then ${springPasses} spring` : strokes
}

/** What is to be done at a gate, in few words. */
const doneAt = (gate: Gate, fullFrom: string | undefined): string => {
  switch (gate.kind) {
    case 'edge':
      return 'now stone the edge'
    case 'web':
      return 'half infeed from here'
    case 'setting':
      return 'now set the bit out'
    case 'last':
    case 'part':
      return fullFrom === undefined ? '' : `full load from ${fullFrom} on`
  }
}

/** `from touch to 0.52 by 0.04, 13 passes; to 3.90 by 0.02; to 4.00 by 0.01` */
export const runsSaid = (from: string, runs: readonly Strokes[], says: Saying): string =>
  runs
    .map(({ to, by, passes }, at) => {
      const step = `${at === 0 ? `from ${from} ` : ''}to ${says.dial(to)} by ${says.step(by)}`
      return at === 0 ? `${step}, ${passes} ${passes === 1 ? 'pass' : 'passes'}` : step
    })
    .join('; ')

const columnsOf = (measured: string | undefined, several: boolean): readonly Column[] => [
  { head: 'gate' },
  { head: 'dial to', align: 'decimal' },
  { head: 'passes' },
  ...(measured === undefined
    ? []
    : [
        { head: `${measured} by the dial`, align: 'decimal' as const, width: 16 },
        { head: 'expect', align: 'decimal' as const },
        { head: `measured ${measured}`, width: several ? 18 : 20 },
        { head: 'go on if between', align: 'right' as const },
      ]),
  { head: '', grows: true },
]

const rowOf = (
  gate: Gate,
  at: number,
  {
    measured,
    by,
    says,
    fullFrom,
  }: {
    readonly measured: string | undefined
    readonly by: Plan['gateBy']
    readonly says: Saying
    readonly fullFrom: string | undefined
  },
): Row => {
  const { byDial, expected, least, most } = expectedOf(gate, by)
  const cells: readonly Cell[] =
    measured === undefined
      ? []
      : [
          says.cell(says.read(byDial), byDial),
          expected === undefined ? '' : says.cell(says.read(expected), expected, 'bold'),
          { write: 'box' },
          says.between(roundedIn(least, says, 'up'), roundedIn(most, says, 'down')),
        ]
  return {
    cells: [
      String(at + 1),
      { number: says.dial(gate.reading), dial: true },
      passesSaid(gate),
      ...cells,
      { tick: doneAt(gate, fullFrom) },
    ],
  }
}

/** A band’s end to the decimals of a reading, inwards. */
const roundedIn = (mm: number, says: Saying, lean: 'up' | 'down'): number => {
  const step = says.metric ? 0.01 : 0.001 * 25.4
  return (lean === 'up' ? Math.ceil(mm / step - 1e-6) : Math.floor(mm / step + 1e-6)) * step
}

/** `on the middle`, `1.5 to one side` */
const laneSaid = (offset: number, says: Saying): Words => {
  if (Math.abs(offset) < 1e-9) return say`on the middle of the slot`
  const side = offset < 0 ? 'low' : 'high'
  return say`${bold(says.read(Math.abs(offset)))} from the middle, to its ${side} side`
}

const laneRow = (cut: LaneCut, design: Design, says: Saying, lanes: number): Row => {
  const again =
    cut.lane === 0
      ? ''
      : `. Do not set the dial to 0 again for the ${['second', 'third', 'fourth', 'fifth'][cut.lane - 1] ?? 'next'} lane`
  const touch = design.plan?.lanes[cut.lane]?.touchReading ?? 0
  const first = cut.setting > 0 ? '' : cut.lane === 0 ? ', first touch is 0' : `, first touch at ${says.dial(touch)}`
  const runs = cut.lane === 0 && cut.setting === 0 ? '' : `; ${runsSaid(says.dial(cut.from), cut.runs, says)}`
  return {
    across: [`Lane ${cut.lane + 1} of ${lanes}, `, ...runsOf(laneSaid(cut.offset, says)), `${first}${again}${runs}`],
    is: 'lane',
  }
}

const runsOf = (words: Words) => (typeof words === 'string' ? [words] : words)

const stageRow = (plan: Plan, setting: number, says: Saying): Row => {
  const next = plan.settings[setting]
  return {
    across: `Here: bar out, bit out to ${says.read(next?.projection ?? 0)}, over bar and nose ${says.read(next?.overBarAndNose ?? 0)}, bar back in with the nose in the slot. Touch the floor and set the dial by the across you measured: ${says.dial(next?.from ?? 0)} if it was as the dial said.`,
    is: 'stage',
  }
}

/** Every gate in the order that it comes. */
export const gatesTable = (design: Design, says: Saying): readonly Block[] => {
  const { plan, section } = design
  if (!plan) return []
  const measured = measuredAs[plan.gateBy]
  const lanes = plan.lanes.length
  const crown = plan.dial.crown
  let number = 0
  let setting = 0
  let told = crown <= 0
  const rows = plan.cuts.flatMap((cut): readonly Row[] => {
    const staged = cut.setting > setting
    setting = cut.setting
    const gates = cut.gates.map((gate): Row => {
      const full = told || gate.kind !== 'part' ? undefined : says.dial(crown)
      if (full !== undefined) told = true
      return rowOf(gate, number++, { measured, by: plan.gateBy, says, fullFrom: full })
    })
    return [
      ...(staged ? [stageRow(plan, cut.setting, says)] : []),
      ...(lanes > 1 ? [laneRow(cut, design, says, lanes)] : []),
      ...gates,
    ]
  })
  return [
    {
      block: 'table',
      title: 'Gates',
      named: true,
      columns: columnsOf(measured, section.at.length > 1),
      rows,
    },
    ...behindTheDial(design, says, measured),
  ]
}

/** How far the slot stands behind the dial, and what a web asks. */
const behindTheDial = (
  { loads, section, plan }: Design,
  says: Saying,
  measured: string | undefined,
): readonly Block[] => {
  const note = (words: Words): Block => ({ block: 'paragraph', size: 'note', words })
  const lag = loads?.lag.most
  if (section.slit)
    return [
      note(
        say`The wall is ${bold(says.read(section.slit.wall))}; where the corners come out a web of ${bold(says.read(section.slit.web))} is left. Last passes at half infeed: the web snaps sideways. Leave one bridge until it is hardened.`,
      ),
    ]
  if (measured === undefined || lag === undefined || !(lag > 0)) return []
  const draws = (loads?.lag.least ?? 0) < 0 ? ' or the cut draws the nose in a little' : ''
  const steady = `Steady is right; growing means the bit creeps: stop.`
  return [
    note(
      `The slot stands up to ${says.read(lag)} behind the dial: bar and machine give${draws}. ${steady}${plan && plan.target.springPasses === 0 ? ' No spring passes here: they only harden the floor.' : ''}`,
    ),
  ]
}

/** The end of it: what is still missing is added by what is measured, never by the dial. */
export const addWhatIsMissing = ({ plan, measuring, section }: Design, says: Saying): readonly Block[] => {
  if (!plan || measuredAs[plan.gateBy] === undefined) return []
  const last = says.dial(plan.bores.reading)
  const wanted =
    plan.gateBy === 'floor to floor'
      ? measuring.floorToFloor?.middle
      : plan.gateBy === 'plug and blocks'
        ? section.crownDepth
        : measuring.across.middle
  if (wanted === undefined) return []
  const times = plan.missingOnDial
  const share =
    Math.abs(times - 1) < 1e-9
      ? 'what is missing'
      : Math.abs(times - 0.5) < 1e-9
        ? 'half of what is missing'
        : Math.abs(times - 2) < 1e-9
          ? 'twice what is missing'
          : `${Number(times.toFixed(3))} × what is missing`
  const after = plan.target.springPasses > 0 ? `after ${plan.target.springPasses} spring` : 'after the last full cut'
  const lanes =
    plan.lanes.length > 1 ? `, in ${plan.lanes.length === 2 ? 'both' : `all ${counted(plan.lanes.length)}`} lanes` : ''
  return [
    { block: 'heading', text: 'Add what is missing' },
    {
      block: 'sums',
      sums: [
        {
          from: { number: says.read(wanted), sign: '−' },
          says: `wanted, less measured ${measuredAs[plan.gateBy]}: what is missing`,
        },
        { from: { number: last, sign: '+' }, says: `the dial, and ${share}: the new dial${lanes}` },
        { says: `${measuredAs[plan.gateBy]}, ${after}` },
      ],
    },
  ]
}
