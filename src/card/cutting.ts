/** The machine leaf's second side: find the zero, cut, add what is missing, measure. */
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { firstTouch } from '../figures/first-touch.ts'
import { longInfeed } from '../figures/long-infeed.ts'
import { aboveTheGates } from './cautions.ts'
import type { Block, Side, Tick, Words } from './document.ts'
import { addWhatIsMissing, gatesTable, runsSaid } from './gates.ts'
import { measureTheSlot } from './measure-slot.ts'
import { pictured } from './pictures.ts'
import { bold, say, type Saying } from './saying.ts'
import { slotsTable } from './slots.ts'

const touching = (design: Design, says: Saying): readonly Tick[] => {
  const { plan, section } = design
  if (!plan) return []
  const { centring } = plan
  if (!centring)
    return [
      {
        words: section.socket
          ? 'Middle by the V: blue the bore, touch; one mark in the middle of the tip, square to the bore'
          : 'Middle by the round nose: blue the bore, touch, turn the spindle by hand; one mark at its middle',
        blank: true,
      },
      { words: say`Back off past the slack, up to first touch again, ${bold('set the dial to 0')}` },
    ]
  const most = says.step(centring.differenceMost)
  const factor = Number(centring.factorOfReading.toFixed(2))
  const fine = centring.dialIsFineEnough ? '' : ' The dial is too coarse for it: read an indicator on the slide'
  return [
    { words: 'Blue the bore. Feed until one corner just marks; read the dial', blank: true },
    { words: 'Feed on until the other corner marks; read again', blank: true },
    {
      words: say`Difference at most ${bold(most)}? If not, move the bit toward the second mark by ${bold(`${factor} × the difference`)}, and begin again.${fine}`,
      blank: true,
    },
    { words: say`Back off past the slack, up to first touch again, ${bold('set the dial to 0')}` },
  ]
}

const findTheZero = (design: Design, says: Saying): readonly Block[] => {
  const picture = pictured(firstTouch(design, onPaper(46, 38)))
  const blocks: readonly Block[] = [
    { block: 'heading', text: 'Find the zero' },
    { block: 'ticks', ticks: touching(design, says) },
  ]
  return picture.length > 0 ? [{ block: 'columns', columns: [{ width: 46, blocks: picture }, { blocks }] }] : blocks
}

/** In what steps, how far back for each return stroke, with what force and in what time. */
const inSteps = ({ plan, loads }: Design, says: Saying): { readonly beside: Words; readonly under: string } => {
  const first = plan?.cuts[0]
  const steps = first ? runsSaid('touch', first.runs, says) : ''
  const force = loads ? `${says.force(loads.cuttingForce)} at full width` : ''
  const wheel =
    loads?.feedForceAtHandle === undefined ? '' : `, about ${says.force(loads.feedForceAtHandle)} at the wheel`
  const time = plan ? `about ${Math.max(5, Math.round(plan.time.whole / 5) * 5)} minutes, measuring and all` : ''
  return {
    beside: `${steps}. Withdraw ${plan ? says.size(plan.withdraw) : ''} for each return stroke`,
    under: [`${force}${wheel}`, time].filter((part) => part !== '').join('; '),
  }
}

/** A gates table is never given for what is not sound. */
export const cuttingSide = (design: Design, says: Saying): Side => {
  const { beside, under } = inSteps(design, says)
  const sound = design.verdict !== 'fail'
  return {
    title: 'cut and measure',
    blocks: [
      ...findTheZero(design, says),
      { block: 'heading', text: 'Cut', ...(sound && { beside }) },
      ...(sound
        ? [
            ...pictured(longInfeed(design, onPaper(186))),
            { block: 'paragraph' as const, size: 'note' as const, words: `Steps: ${under}.` },
          ]
        : []),
      aboveTheGates,
      ...(sound
        ? [...gatesTable(design, says), ...slotsTable(design, says), ...addWhatIsMissing(design, says)]
        : [
            {
              block: 'paragraph' as const,
              size: 'large' as const,
              words: 'No gates are given: a rule that must hold is broken. Mend the job first.',
            },
          ]),
      ...measureTheSlot(design, says),
    ],
  }
}
