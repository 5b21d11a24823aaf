/** The bore in hand: four boxes, and what another bore than the one worked for asks of the dial. */
import type { Design } from '../design.ts'
import type { Block, Row } from './document.ts'
import { bold, say, type Saying } from './saying.ts'

const boxes = (design: Design): Block => ({
  block: 'table',
  title: 'The bore as measured',
  columns: [
    { head: '', width: 18 },
    { head: 'near end', grows: true },
    { head: design.spec.bore.blind ? 'deep end' : 'far end', grows: true },
  ],
  rows: [
    { cells: ['one way', { write: 'box' }, { write: 'box' }] },
    { cells: ['square to it', { write: 'box' }, { write: 'box' }] },
  ],
})

const limitsSaid = ({ spec, section }: Design, says: Saying, rows: boolean): string => {
  const { diameter, measured } = spec.bore
  if (measured !== undefined)
    return `Worked for ${says.fine(measured)}, as it was measured. If yours reads otherwise: back to the desk.`
  const worked = `The card is worked for ${says.fine(2 * section.boreRadius)}.`
  const exact = says.fine(diameter.lower) === says.fine(diameter.upper)
  if (exact) return `${says.fine(diameter.lower)}. If yours reads otherwise: back to the desk.`
  return `${says.fine(diameter.lower)} to ${says.fine(diameter.upper)}. Outside that: back to the desk. ${worked}${rows ? ' Ring the row nearest yours:' : ''}`
}

/** Bore, infeed, what is left of it at the last gate; readings of a dial that reads something else stand beside the infeed. */
const infeeds = (design: Design, says: Saying): readonly Block[] => {
  const { plan } = design
  if (!plan) return []
  const { reading } = plan.bores
  // Two that are written alike are one.
  const rows = plan.bores.rows.filter(
    (row, at, all) => at === 0 || says.fine(row.bore) !== says.fine(all[at - 1]?.bore ?? 0),
  )
  const apart = Math.abs(plan.dial.perInfeed - 1) > 1e-9
  return [
    {
      block: 'table',
      title: 'Infeed for each bore',
      columns: [
        { head: 'bore', align: 'decimal' },
        { head: 'infeed', align: 'decimal' },
        ...(apart ? [{ head: 'on the dial', align: 'decimal' as const }] : []),
        { head: `left at ${says.dial(reading)}`, align: 'decimal' },
      ],
      rows: rows.map(
        ({ bore, infeed, onDial, leftOnDial }): Row => ({
          cells: [
            says.cell(says.fine(bore), bore, 'bold'),
            says.cell(says.fine(infeed), infeed, apart ? undefined : 'bold'),
            ...(apart ? [{ number: says.fine(onDial), bold: true as const }] : []),
            { number: says.fine(leftOnDial) },
          ],
        }),
      ),
    },
  ]
}

/** What the nose's end is worth in infeed. */
const aboutTheNose = ({ plan, section, bit, asked }: Design, says: Saying): readonly Block[] => {
  if (!plan || !asked) return []
  const note = (words: Extract<Block, { block: 'paragraph' }>['words']): Block => ({
    block: 'paragraph',
    size: 'note',
    words,
  })
  const slide =
    plan.dial.reads === 'diameter'
      ? ' The dial reads diameter: twice the infeed.'
      : plan.dial.slide === undefined
        ? ''
        : ` The slide is set over: the dial runs ${Number(plan.dial.perInfeed.toFixed(3))} for 1 of infeed.`
  if (section.socket && bit?.includedAngle !== undefined)
    return [
      note(
        say`V of ${bold(`${Number(bit.includedAngle.toFixed(2))}°`)} between its flanks, tip rounded ${says.size(section.cornerRadius)}. The infeed is corrected for that tip: a sharp one would go ${says.size(section.socket.setBack)} farther.${slide}`,
      ),
    ]
  if (section.groove)
    return [
      note(
        `Round nose, radius ${says.size(section.groove.radius)}. Its depth is from the crown: there is no other.${slide}`,
      ),
    ]
  const sharp = plan.sharpNose ?? 0
  return [
    note(
      sharp < 0.005
        ? `Nose corners ${section.cornerRadius < 0.01 ? 'sharp' : says.read(section.cornerRadius)}.${slide}`
        : `Nose corners ${says.read(section.cornerRadius)}. A sharp nose would need ${says.read(sharp)} more infeed: look at the corners before you trust this.${slide}`,
    ),
  ]
}

/** Whether another bore asks another infeed: a groove’s is the same, since it counts from the crown. */
const differs = ({ plan }: Design, says: Saying): boolean =>
  new Set(plan?.bores.rows.map(({ infeed }) => says.fine(infeed))).size > 1

export const measureTheBore = (design: Design, says: Saying, by: 'bar' | 'press'): readonly Block[] => {
  const told = by === 'bar' && design.plan !== undefined && (design.plan?.bores.rows.length ?? 0) > 0
  const rows = told && (differs(design, says) || design.plan?.bores.rows.length === 1)
  const one = design.plan?.bores.rows[0]
  return [
    { block: 'heading', text: 'Measure the bore first' },
    boxes(design),
    { block: 'paragraph', size: 'note', words: limitsSaid(design, says, rows) },
    ...(rows ? infeeds(design, says) : []),
    ...(told && !rows && one
      ? [
          {
            block: 'paragraph' as const,
            words: say`Infeed ${bold(says.fine(one.infeed))} whatever the bore: it counts from the crown.`,
          },
        ]
      : []),
    ...(told ? aboutTheNose(design, says) : []),
  ]
}
