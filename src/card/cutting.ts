/** The machine leaf's second side: find the zero, cut, add what is missing, measure. */
import { isUpright } from '../plan/upright.ts'
import type { Design } from '../design.ts'
import { onPaper } from '../figures/figure.ts'
import { firstTouch } from '../figures/first-touch.ts'
import { longInfeed } from '../figures/long-infeed.ts'
import { aboveTheGates } from './cautions.ts'
import type { Block, Side, Tick } from './document.ts'
import { type Cover, firstThatFits, onceFor } from './fitting.ts'
import { addWhatIsMissing, behindTheDial, type GatesSet, gatesTable, runsSaid } from './gates.ts'
import { measureTheSlot } from './measure-slot.ts'
import { pictured } from './pictures.ts'
import { bold, capital, say, type Saying } from './saying.ts'
import { gatesOfSlots, slotsTable } from './slots.ts'

const touching = (design: Design, says: Saying): readonly Tick[] => {
  const { plan, section } = design
  if (!plan) return []
  const { centring } = plan
  const zero: Tick = {
    words: say`Back off past the slack, up to first touch again${section.key?.taper ? ', which is at the deep end' : ''}, ${bold('set the dial to 0')}`,
  }
  if (!centring)
    return [
      {
        words: section.socket
          ? 'Middle by the V: blue the bore, touch; one mark in the middle of the tip, square to the bore'
          : 'Middle by the round nose: blue the bore, touch, turn the spindle by hand; one mark at its middle',
        blank: true,
      },
      zero,
    ]
  const most = says.step(centring.differenceMost)
  const factor = Number(centring.factorOfReading.toFixed(2))
  const fine = centring.dialIsFineEnough ? '' : ' The dial is too coarse for it: read an indicator on the slide'
  return [
    { words: 'Blue the bore. Feed until one corner just marks; read the dial', blank: true },
    { words: 'Feed on until the other corner marks; read again', blank: true },
    {
      words: say`Difference at most ${bold(most)}? If not, ${isUpright(design.asked) ? 'raise or lower the bar' : 'move the bar'} toward the second mark by ${bold(`${factor} × the difference`)}, and begin again.${fine}`,
      blank: true,
    },
    ...overToTheFirstLane(design, says),
    zero,
  ]
}

/** The middle is found on the middle; the zero is the first lane’s. */
const overToTheFirstLane = ({ plan, section, bar, groundBar, asked }: Design, says: Saying): readonly Tick[] => {
  const lanes = plan?.lanes ?? []
  const over = Math.abs(lanes[0]?.offset ?? 0)
  if (over < 1e-9) return []
  const nose = (bar ?? groundBar)?.noseWidth ?? 0
  const side = Math.abs(over - (section.width - nose) / 2) < 1e-6
  return [
    {
      words: say`Now over to lane 1: ${isUpright(asked) ? say`the bar ${bold(says.read(over))} lower, by shims` : say`the bit ${bold(says.read(over))} to one side`}${side ? `, half of what ${says.read(section.width)} is wider than your nose` : ''}`,
      blank: true,
    },
  ]
}

const findTheZero = (design: Design, says: Saying, picture: readonly Block[]): readonly Block[] => {
  const blocks: readonly Block[] = [
    { block: 'heading', text: 'Find the zero' },
    { block: 'ticks', ticks: touching(design, says) },
  ]
  return picture.length > 0 ? [{ block: 'columns', columns: [{ width: 46, blocks: picture }, { blocks }] }] : blocks
}

/** In what steps, how far back for each return stroke, with what force and in what time. */
const inSteps = ({ plan, loads }: Design, says: Saying): { readonly beside: string; readonly under: string } => {
  const first = plan?.cuts[0]
  const steps = first ? runsSaid('touch', first.runs, says) : ''
  const taken = plan?.cuts.flatMap(({ passes }) => passes.flatMap(({ force }) => (force === undefined ? [] : [force])))
  const most = taken && taken.length > 0 ? Math.max(...taken) : loads?.cuttingForce
  const force = most === undefined ? '' : `${says.force(most)} at the most`
  const mark = plan ? plan.dial.mark / Math.min(...plan.cuts.flatMap(({ runs }) => runs.map(({ by }) => by))) : 1
  const parts =
    mark > 2 + 1e-6
      ? `steps of 1/${Number(mark.toFixed(2))} of a mark by eye and with care, or by an indicator on the slide`
      : ''
  const wheel =
    loads?.feedForceAtHandle === undefined ? '' : `, about ${says.force(loads.feedForceAtHandle)} at the wheel`
  const time = plan ? `about ${Math.max(5, Math.round(plan.time.whole / 5) * 5)} minutes, measuring and all` : ''
  return {
    beside: `${steps}. Withdraw ${plan ? says.size(plan.withdraw) : ''} for each return stroke`,
    under: [`${force}${wheel}`, time, parts].filter((part) => part !== '').join('; '),
  }
}

/** What may be left out or set closer where the side would run over. */
interface Set extends GatesSet {
  readonly rule: boolean
  readonly touch: boolean
  readonly pin: boolean
}

const whole: Set = { lanes: 'under', boxes: true, rule: true, touch: true, pin: true }

/** Whether the paper is wide enough for its lanes side by side. */
const abreast = (plan: Design['plan']): boolean => {
  const lanes = plan?.lanes.length ?? 1
  return lanes > 1 && lanes <= 3
}

/** From what one would have to what one can live with. */
const sets = ({ plan, section }: Design): readonly Set[] => {
  const lanes: Set = abreast(plan) ? { ...whole, lanes: 'beside' } : whole
  const several = section.at.length > 1
  const unruled: Set = { ...lanes, rule: false }
  return [
    whole,
    ...(lanes === whole ? [] : [lanes]),
    ...(several ? [{ ...lanes, boxes: false }] : []),
    { ...lanes, pin: false },
    unruled,
    ...(several
      ? [
          { ...unruled, boxes: false, pin: false },
          { ...unruled, boxes: false, pin: false, touch: false },
        ]
      : []),
    { ...unruled, pin: false, touch: false },
  ]
}

/** A gates table is never given for what is not sound. */
const notGiven: readonly Block[] = [
  {
    block: 'paragraph',
    size: 'large',
    words: 'No gates are given: a rule that must hold is broken. Mend the job first.',
  },
]

/** The strips of designs: one is asked for by the side that it stands on, and by what is left over. */
const strips = new WeakMap<Design, readonly Block[]>()

/** Force and depth of every pass, as a strip with the dial on one edge and across on the other. None of what is not sound. */
const stripOf = (design: Design): readonly Block[] => {
  const strip = strips.get(design) ?? (design.verdict === 'fail' ? [] : pictured(longInfeed(design, onPaper(186))))
  strips.set(design, strip)
  return strip
}

/** The strip, for elsewhere, where the sides at the machine were too full for it. */
export const stripLeftOver = (design: Design, sides: readonly Side[]): readonly Block[] => {
  const strip = stripOf(design)
  const titles = strip.flatMap((block) => (block.block === 'picture' ? [block.picture.title] : []))
  const isThere = sides.some(({ blocks }) =>
    blocks.some((block) => block.block === 'picture' && titles.includes(block.picture.title)),
  )
  return isThere || strip.length === 0 ? [] : [{ block: 'heading', text: 'Pass by pass' }, ...strip]
}

/** Find the zero, cut, measure: on one side, or, where that is not to be done, cut on one and measure on the next. */
export const cuttingSides = (design: Design, says: Saying, cover: Cover): readonly Side[] => {
  const { beside, under } = inSteps(design, says)
  const sound = design.verdict !== 'fail'
  const touch = pictured(firstTouch(design, onPaper(46, 38)))
  const rule = stripOf(design)
  const note: readonly Block[] = [{ block: 'paragraph', size: 'note', words: `${capital(under)}.` }]
  const merged = gatesOfSlots(design) !== undefined
  const missing = addWhatIsMissing(design, says)
  const zero = onceFor((touched: boolean) => findTheZero(design, says, touched ? touch : []))
  const slots = onceFor((boxes: boolean) => slotsTable(design, says, boxes))
  const gates = onceFor((lanes: Set['lanes']) =>
    onceFor((boxes: boolean) => gatesTable(design, says, { lanes, boxes })),
  )
  const measured = onceFor((pin: boolean) => onceFor((boxes: boolean) => measureTheSlot(design, says, { pin, boxes })))
  const cut = (set: Set): readonly Block[] => {
    const own = slots(set.boxes || !merged)
    return [
      ...zero(set.touch),
      { block: 'heading', text: 'Cut', ...(sound && { beside }) },
      ...(sound ? [...(set.rule ? rule : []), ...note] : []),
      aboveTheGates,
      ...(sound
        ? [
            ...(merged ? [...own, ...behindTheDial(design, says)] : [...gates(set.lanes)(set.boxes), ...own]),
            ...missing,
          ]
        : notGiven),
    ]
  }
  const one = firstThatFits(
    cover,
    sets(design).map((set) => () => ({
      title: 'cut and measure',
      blocks: [...cut(set), ...measured(set.pin)(set.boxes)],
    })),
  )
  if (one) return [one]
  const first = firstThatFits(
    cover,
    sets(design).map((set) => () => ({ title: 'cut', blocks: cut(set) })),
  )
  return [
    first ?? { title: 'cut', blocks: cut(abreast(design.plan) ? { ...whole, lanes: 'beside' } : whole) },
    { title: 'measure', blocks: measured(whole.pin)(whole.boxes) },
  ]
}
