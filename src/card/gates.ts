/** Where to stop and measure: a row a gate, a block a lane, a bold row where the projection is set anew. */
import { isUpright } from '../plan/upright.ts'
import type { Design } from '../design.ts'
import { expectedOf, measuredAs } from '../plan/at-gate.ts'
import type { Expected, Gate, LaneCut, Plan, Run as Strokes } from '../plan/types.ts'
import type { Block, Cell, Column, Row, Words } from './document.ts'
import { bold, counted, say, type Saying } from './saying.ts'

/** `13 + 24`, `10, then 4 spring` */
export const passesSaid = ({ runs, springPasses }: Gate): string => {
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
      const step = `${at === 0 ? `from ${from} ` : ''}to ${says.stop(to)} by ${says.step(by)}`
      return at === 0 ? `${step}, ${passes} ${passes === 1 ? 'pass' : 'passes'}` : step
    })
    .join('; ')

/** How the gates are set: lanes one under another or side by side; with or without boxes to write in. */
export interface GatesSet {
  readonly lanes: 'under' | 'beside'
  readonly boxes: boolean
}

interface Gated {
  readonly plan: Plan
  readonly says: Saying
  readonly measured: string | undefined
  /** The lanes lie one over another. */
  readonly upright: boolean
  /** Gates are counted through. */
  readonly count: { gates: number; told: boolean }
}

/** A band’s end to the decimals of a reading, inwards. */
const roundedIn = (mm: number, says: Saying, lean: 'up' | 'down'): number => {
  const step = says.metric ? 0.01 : 0.001 * 25.4
  return (lean === 'up' ? Math.ceil(mm / step - 1e-6) : Math.floor(mm / step + 1e-6)) * step
}

const bandSaid = (expected: readonly Expected[], says: Saying): string => {
  const least = Math.max(...expected.map((each) => each.least))
  const most = Math.min(...expected.map((each) => each.most))
  return says.between(roundedIn(least, says, 'up'), roundedIn(most, says, 'down'))
}

/** What to expect at a gate, and from where to where to go on. */
export const gateBand = (
  plan: Plan,
  gate: Gate,
  says: Saying,
): { readonly expect: string; readonly from: string; readonly to: string } | undefined => {
  if (measuredAs[plan.gateBy] === undefined) return undefined
  const { expected, byDial, least, most } = expectedOf(gate, plan.gateBy)
  return {
    expect: says.read(expected ?? byDial),
    from: says.read(roundedIn(least, says, 'up')),
    to: says.read(roundedIn(most, says, 'down')),
  }
}

const expectedCell = ({ expected }: Expected, says: Saying): Cell =>
  expected === undefined ? '' : says.cell(says.read(expected), expected, 'bold')

/** Said once, at the first gate that is measured. */
const remark = ({ plan, says, count }: Gated, gate: Gate): string => {
  const full = count.told || gate.kind !== 'part' || plan.dial.crown <= 0 ? undefined : says.dial(plan.dial.crown)
  if (full !== undefined) count.told = true
  return doneAt(gate, full)
}

const underColumns = ({ measured }: Gated, boxes: boolean): readonly Column[] => [
  { head: 'gate' },
  { head: 'dial to', align: 'decimal' },
  { head: 'passes' },
  ...(measured === undefined
    ? []
    : [
        { head: `${measured} by the dial`, align: 'decimal' as const, width: 16 },
        { head: 'expect', align: 'decimal' as const },
        ...(boxes ? [{ head: `measured ${measured}`, width: 20 }] : []),
        { head: 'go on if between', align: 'right' as const },
      ]),
  { head: '', grows: true },
]

const underRow = (gated: Gated, gate: Gate, boxes: boolean): Row => {
  const { plan, says, measured, count } = gated
  const expected = expectedOf(gate, plan.gateBy)
  count.gates += 1
  return {
    cells: [
      String(count.gates),
      { number: says.dial(gate.reading), dial: true },
      passesSaid(gate),
      ...(measured === undefined
        ? []
        : [
            says.cell(says.read(expected.byDial), expected.byDial),
            expectedCell(expected, says),
            ...(boxes ? [{ write: 'box' as const }] : []),
            bandSaid([expected], says),
          ]),
      boxes ? { tick: remark(gated, gate) } : remark(gated, gate),
    ],
  }
}

const ordinal = (lane: number): string => ['first', 'second', 'third', 'fourth', 'fifth'][lane] ?? 'next'

/** `on the middle`, `1.50 to one side of it`; on a lathe, where the nose looks across the bed, `1.50 below the middle`. */
const laneSaid = (offset: number, { plan, says, upright }: Gated): Words => {
  const first = plan.lanes[0]?.offset ?? 0
  if (Math.abs(offset) < 1e-9) return say`on the middle of the slot`
  if (upright) return say`${bold(says.read(Math.abs(offset)))} ${offset * first >= 0 ? 'below' : 'above'} the middle`
  return say`${bold(says.read(Math.abs(offset)))} from the middle, to ${offset * first >= 0 ? 'one' : 'the other'} side`
}

const runsOf = (words: Words) => (typeof words === 'string' ? [words] : words)

const laneRow = (gated: Gated, cut: LaneCut): Row => {
  const { plan, says } = gated
  const lanes = plan.lanes.length
  const again = cut.lane === 0 ? '' : `. Do not set the dial to 0 again for the ${ordinal(cut.lane)} lane`
  const touch = plan.lanes[cut.lane]?.touchReading ?? 0
  const touched = cut.setting > 0 ? '' : cut.lane === 0 ? ', first touch is 0' : `, first touch at ${says.dial(touch)}`
  const runs = cut.lane === 0 && cut.setting === 0 ? '' : `; ${runsSaid(says.dial(cut.from), cut.runs, says)}`
  return {
    across: [`Lane ${cut.lane + 1} of ${lanes}, `, ...runsOf(laneSaid(cut.offset, gated)), `${touched}${again}${runs}`],
    is: 'lane',
  }
}

/** All lanes of a setting in one row. */
const lanesRow = (gated: Gated, cuts: readonly LaneCut[]): Row => {
  const { plan, says } = gated
  const lanes = cuts.flatMap((cut) => {
    const touch =
      cut.setting > 0 || cut.lane === 0 ? '' : `, touches at ${says.dial(plan.lanes[cut.lane]?.touchReading ?? 0)}`
    // The first lane's steps stand at the head of the cut.
    const runs = cut.setting === 0 && cut.lane === 0 ? '' : `, ${runsSaid(says.dial(cut.from), cut.runs, says)}`
    return [`Lane ${cut.lane + 1}: `, ...runsOf(laneSaid(cut.offset, gated)), `${touch}${runs}. `]
  })
  const others = cuts.filter(({ lane }) => lane > 0).map(({ lane }) => ordinal(lane))
  const again = others.length === 0 ? '' : `Do not set the dial to 0 again for the ${others.join(' or the ')} lane.`
  return { across: [...lanes, 'One lane all the way down, then the next. ', again], is: 'lane' }
}

const besideColumns = ({ plan, measured }: Gated, boxes: boolean): readonly Column[] => [
  { head: 'gate' },
  { head: 'dial to', align: 'decimal' },
  ...plan.lanes.flatMap((_, lane): readonly Column[] =>
    measured === undefined
      ? [{ head: `lane ${lane + 1}` }]
      : [
          { head: `lane ${lane + 1}, expect`, align: 'decimal', width: 13 },
          ...(boxes ? [{ head: `measured ${measured}`, width: 18 }] : []),
        ],
  ),
  ...(measured === undefined ? [] : [{ head: 'go on if between', align: 'right' as const }]),
  { head: '', grows: true },
]

/** Lanes of one setting side by side, a row a reading. */
const besideRows = (gated: Gated, cuts: readonly LaneCut[], boxes: boolean): readonly Row[] => {
  const { plan, says, measured, count } = gated
  const readings = [...new Set(cuts.flatMap(({ gates }) => gates.map(({ reading }) => reading)))].toSorted(
    (a, b) => a - b,
  )
  return readings.map((reading): Row => {
    const gates = plan.lanes.map((_, lane) =>
      cuts.find((cut) => cut.lane === lane)?.gates.find((gate) => gate.reading === reading),
    )
    const there = gates.filter((gate) => gate !== undefined)
    const [one] = there
    count.gates += 1
    const spring = one && one.springPasses > 0 ? `${one.springPasses} spring passes` : ''
    const does = [one ? remark(gated, one) : '', spring].filter((part) => part !== '').join('; ')
    return {
      cells: [
        String(count.gates),
        { number: says.dial(reading), dial: true },
        ...gates.flatMap((gate): readonly Cell[] =>
          measured === undefined
            ? [gate ? { tick: '' } : '']
            : [
                gate ? expectedCell(expectedOf(gate, plan.gateBy), says) : '',
                ...(boxes ? [gate ? { write: 'box' as const } : ''] : []),
              ],
        ),
        ...(measured === undefined
          ? []
          : [
              bandSaid(
                there.map((gate) => expectedOf(gate, plan.gateBy)),
                says,
              ),
            ]),
        measured === undefined ? does : { tick: does },
      ],
    }
  })
}

const stageRow = ({ plan, says }: Gated, setting: number): Row => {
  const next = plan.settings[setting]
  const { acrossAtZero, perInfeed } = plan.dial
  const sum =
    plan.gateBy === 'across' && Math.abs(perInfeed - 1) < 1e-9
      ? `what you measured across less ${says.fine(acrossAtZero)}`
      : `the ${whatIsMeasured(plan)} you measured`
  return {
    across: `Here: bar out, bit out to ${says.read(next?.projection ?? 0)}, over bar and nose ${says.read(next?.overBarAndNose ?? 0)}, bar back in with the nose in the slot. Touch the floor and set the dial to ${sum}: ${says.dial(next?.from ?? 0)} if it was as the dial said.`,
    is: 'stage',
  }
}

const whatIsMeasured = (plan: Plan): string => measuredAs[plan.gateBy] ?? 'depth'

/** Every gate in the order that it comes. */
export const gatesTable = (design: Design, says: Saying, set: GatesSet): readonly Block[] => {
  const { plan } = design
  if (!plan) return []
  const measured = measuredAs[plan.gateBy]
  const state: Gated = {
    plan,
    says,
    measured,
    upright: isUpright(design.asked),
    count: { gates: 0, told: false },
  }
  const several = plan.lanes.length > 1
  const beside = several && set.lanes === 'beside'
  const rows = plan.settings.flatMap((_, setting): readonly Row[] => {
    const cuts = plan.cuts.filter((cut) => cut.setting === setting)
    const stage = setting > 0 && cuts.length > 0 ? [stageRow(state, setting)] : []
    if (beside) return [...stage, lanesRow(state, cuts), ...besideRows(state, cuts, set.boxes)]
    return [
      ...stage,
      ...cuts.flatMap((cut) => [
        ...(several ? [laneRow(state, cut)] : []),
        ...cut.gates.map((gate) => underRow(state, gate, set.boxes)),
      ]),
    ]
  })
  return [
    ...(design.section.key?.taper
      ? [
          {
            block: 'paragraph' as const,
            size: 'note' as const,
            words: 'Across is that of the deep end: measure there.',
          },
        ]
      : []),
    {
      block: 'table',
      title: 'Gates',
      named: true,
      columns: beside ? besideColumns(state, set.boxes) : underColumns(state, set.boxes),
      rows,
    },
    ...behindTheDial(design, says),
  ]
}

/** How far the slot stands behind the dial, and what a web asks. */
export const behindTheDial = ({ loads, section, plan }: Design, says: Saying): readonly Block[] => {
  const measured = plan && measuredAs[plan.gateBy]
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
  if (!plan) return []
  // A socket gives nothing to measure on the way, but two flats at its end.
  const flats = section.socket && section.at.length % 2 === 0 ? section.socket.acrossFlats : undefined
  const measured = flats ? 'across flats' : measuredAs[plan.gateBy]
  if (measured === undefined) return []
  const last = says.dial(plan.bores.reading)
  const wanted = flats
    ? (flats.lower + flats.upper) / 2
    : plan.gateBy === 'floor to floor'
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
  const step = plan.cuts.at(-1)?.runs.at(-1)?.by
  const steps = step === undefined ? '' : `, in passes of ${says.step(step)}`
  return [
    { block: 'heading', text: 'Add what is missing' },
    {
      block: 'sums',
      sums: [
        {
          from: { number: says.read(wanted), sign: '−' },
          says: `wanted, less measured: what is missing`,
        },
        { from: { number: last, sign: '+' }, says: `the dial, and ${share}: the new dial${steps}${lanes}` },
        { says: `${measured}, ${after}` },
      ],
    },
  ]
}
