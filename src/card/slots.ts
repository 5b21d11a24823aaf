/** Several slots: where the work is turned to, and a box to tick for each slot at each gate. */
import type { Design } from '../design.ts'
import type { IndexSlot, LaneCut } from '../plan/types.ts'
import type { Block, Cell, Column, Row, Words } from './document.ts'
import { gateBand, passesSaid } from './gates.ts'
import { say, bold, type Saying, degrees } from './saying.ts'

/** Whether every slot goes through the same gates in one lane at one setting: gates and slots are then one table. */
export const gatesOfSlots = ({ plan, section }: Design): LaneCut | undefined =>
  section.at.length > 1 && plan?.cuts.length === 1 ? plan.cuts[0] : undefined

interface Step {
  readonly head: Words
  /** Over the ticks: passes, what to expect, from, to, what then. */
  readonly over: readonly string[]
}

/** What is ticked at every slot: gates, or where there are several lanes or settings those. */
const stepsOf = (design: Design, says: Saying): readonly Step[] => {
  const { plan } = design
  if (!plan) return []
  const cut = gatesOfSlots(design)
  if (!cut)
    return plan.cuts.map(({ lane, to }) => ({
      head: plan.lanes.length > 1 ? `lane ${lane + 1} to ${says.dial(to)}` : `to ${says.dial(to)}`,
      over: [],
    }))
  return cut.gates.map((gate) => {
    const band = gateBand(plan, gate, says)
    return {
      head: [{ dial: says.dial(gate.reading) }],
      over: [passesSaid(gate), ...(band ? [band.expect, band.from, band.to] : [])],
    }
  })
}

/** What is to be expected, in the word for how it is measured. */
const expecting = ({ plan }: Design): string =>
  plan?.gateBy === 'floor to floor'
    ? 'floor to floor'
    : plan?.gateBy === 'plug and blocks'
      ? 'blocks over plug'
      : 'expect across'

/** Rows over the slots, as far as any gate has something to say in them. */
const rowsOver = (steps: readonly Step[], name: string, blank: number): readonly Row[] =>
  ['passes', name, 'go on from', 'to'].flatMap((row, at): readonly Row[] =>
    steps.some(({ over }) => over[at] !== undefined)
      ? [
          {
            cells: [
              row,
              ...Array.from({ length: blank }, (): Cell => ''),
              ...steps.map(({ over }): Cell => (at === 1 ? [bold(over[at] ?? '')] : (over[at] ?? ''))),
            ],
          },
        ]
      : [],
  )

const turning = (
  design: Design,
): { readonly columns: readonly Column[]; readonly of: (slot: IndexSlot) => readonly Cell[] } => {
  const indexing = design.indexing
  const crank = indexing?.by === 'dividing head'
  const gear = indexing?.gear
  return {
    columns: [
      { head: 'angle', align: 'decimal' },
      ...(crank
        ? [
            { head: 'turns', align: 'right' as const, width: 12 },
            { head: `holes on ${indexing.circle}`, align: 'right' as const, width: 12 },
          ]
        : []),
      ...(gear ? [{ head: `bull gear, ${gear.teeth}`, align: 'right' as const, width: 12 }] : []),
    ],
    of: ({ angle, turns, holes, tooth }) => [
      { number: degrees(angle, 2) },
      ...(crank ? [String(turns), String(holes)] : []),
      ...(gear ? [tooth === undefined ? '' : String(tooth)] : []),
    ],
  }
}

/** Steps that one table has room for beside each other. Source: measured on the narrowest columns they take. */
const mostAbreast = 6

const inTables = (steps: readonly Step[]): readonly (readonly Step[])[] => {
  const tables = Math.max(1, Math.ceil(steps.length / mostAbreast))
  const each = Math.ceil(steps.length / tables)
  return Array.from({ length: tables }, (_, table) => steps.slice(table * each, (table + 1) * each))
}

/** `headed`: under a heading of its own. */
export const slotsTable = (design: Design, says: Saying, headed: boolean): readonly Block[] => {
  const { indexing, measuring, section } = design
  if (!indexing || section.at.length < 2) return []
  const tables = inTables(stepsOf(design, says))
  const { columns, of } = turning(design)
  const pairs = measuring.floorToFloor?.pairs ?? []
  const what = pairs.length > 0 ? 'floor to floor with its opposite' : 'measured at the end'
  const last = section.at.length
  const rowsOf =
    (steps: readonly Step[]) =>
    (slot: IndexSlot): Row => {
      const pair = pairs.find(([one]) => one === slot.slot)
      const measured: Cell =
        pairs.length > 0 ? (pair ? [`${pair[0]} and ${pair[1]} `, { blank: true }] : '') : { write: 'line' }
      if (slot.slot > last)
        return {
          cells: ['back to 1', ...of(slot), ['closing error: ', { blank: true }, ' (a missed hole shows here)']],
          spans: steps.length + 1,
        }
      return {
        cells: [
          slot.slot === 1 ? [bold('1, marked')] : String(slot.slot),
          ...of(slot),
          ...steps.map((): Cell => ({ tick: '' })),
          measured,
        ],
      }
    }
  const error = indexing.error
  const oddities = [
    ...(indexing.by === 'dividing head'
      ? [
          `Turned on a dividing head of ${indexing.ratio} to 1${indexing.plate ? ', or by the index plate of the drawings, hole by hole' : ''}.`,
        ]
      : []),
    ...(error > 0.05 ? [`Off the true angle by up to ${Math.ceil(error)}′ (minutes of arc).`] : []),
    ...(indexing.otherCircles.length > 0 && indexing.by === 'dividing head'
      ? [`Circles of ${indexing.otherCircles.slice(0, 4).join(', ')} do it as well.`]
      : []),
  ].join(' ')
  return [
    ...(headed
      ? [
          {
            block: 'heading' as const,
            text: 'From slot to slot',
            beside: 'every slot to a gate before any goes deeper',
          },
        ]
      : []),
    {
      block: 'paragraph',
      size: 'note',
      words: say`${headed ? '' : 'Every slot to a gate before any goes deeper. '}${bold('Turn one way only,')} past and back up never; lock before every cut. Paint slot 1. File each mouth before the next slot, or its burr takes the bar on the way out. ${bold('Do not move the bit between slots.')} ${oddities}`,
    },
    ...tables.map(
      (steps): Block => ({
        block: 'table',
        title: 'Slots',
        named: true,
        columns: [
          { head: 'slot', width: 25 },
          ...columns,
          ...steps.map(({ head }): Column => ({ head })),
          { head: what, width: 36, grows: true },
        ],
        rows: [...rowsOver(steps, expecting(design), columns.length), ...indexing.slots.map(rowsOf(steps))],
      }),
    ),
  ]
}
