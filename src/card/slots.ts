/** Several slots: where the work is turned to, and a box to tick for each slot at each gate. */
import type { Design } from '../design.ts'
import type { IndexSlot } from '../plan/types.ts'
import type { Block, Cell, Column, Row } from './document.ts'
import { say, bold, type Saying, degrees } from './saying.ts'

/** What is ticked at every slot: gates where one lane at one setting is cut, else the lanes. */
const stepsOf = ({ plan }: Design, says: Saying): readonly string[] => {
  if (!plan) return []
  const [first, ...more] = plan.cuts
  if (first && more.length === 0) return first.gates.map(({ reading }) => says.dial(reading))
  return plan.cuts.map(({ lane, to }) =>
    plan.lanes.length > 1 ? `lane ${lane + 1} to ${says.dial(to)}` : `to ${says.dial(to)}`,
  )
}

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
            { head: 'turns of the head', align: 'right' as const, width: 12 },
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

export const slotsTable = (design: Design, says: Saying): readonly Block[] => {
  const { indexing, measuring, section } = design
  if (!indexing || section.at.length < 2) return []
  const steps = stepsOf(design, says)
  const { columns, of } = turning(design)
  const pairs = measuring.floorToFloor?.pairs ?? []
  const what = pairs.length > 0 ? 'floor to floor with its opposite' : 'measured at the end'
  const last = section.at.length
  const rows = indexing.slots.map((slot): Row => {
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
  })
  const error = indexing.error
  const oddities = [
    ...(error > 0.05 ? [`Off the true angle by up to ${Math.ceil(error)}′ (minutes of arc).`] : []),
    ...(indexing.otherCircles.length > 0 && indexing.by === 'dividing head'
      ? [`Circles of ${indexing.otherCircles.slice(0, 4).join(', ')} do it as well.`]
      : []),
  ].join(' ')
  return [
    { block: 'heading', text: 'From slot to slot', beside: 'every slot to a gate before any goes deeper' },
    {
      block: 'paragraph',
      size: 'note',
      words: say`${bold('Turn one way only,')} past and back up never; lock before every cut. Paint slot 1. File each mouth before the next slot, or its burr takes the bar on the way out. ${bold('Do not move the bit between slots.')} ${oddities}`,
    },
    {
      block: 'table',
      title: 'Slots',
      named: true,
      columns: [
        { head: 'slot' },
        ...columns,
        ...steps.map((step): Column => ({ head: step })),
        { head: what, grows: true },
      ],
      rows,
    },
  ]
}
