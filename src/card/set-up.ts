/** The machine leaf's first side: set up, for a bar on lathe or mill. */
import type { Design } from '../design.ts'
import { roomForBar } from '../dimensions/press-spacer.ts'
import { type Figure, onPaper } from '../figures/figure.ts'
import { fourLengths } from '../figures/lengths.ts'
import { lengthwise } from '../figures/lengthwise.ts'
import { sectionFigure } from '../figures/section.ts'
import { atTheMachine } from './cautions.ts'
import type { Block, Side, Tick } from './document.ts'
import { type Cover, asFits, onceFor } from './fitting.ts'
import { measureTheBore } from './measure-bore.ts'
import { sentenceOf } from './naming.ts'
import { pairedUnder, pictured, scaleSaid } from './pictures.ts'
import { bold, degrees, say, type Saying } from './saying.ts'

/** Places of the section, mm: as large as can be, and smaller. */
const sectionWidth = 108
const sectionHeights = [79, 64] as const

const sectionAndLengths = (design: Design, height: number): readonly Block[] => {
  const place = onPaper(sectionWidth, height)
  return pairedUnder(sectionFigure(design, 'floor', place), fourLengths(design, place))
}

export const openBehind = (design: Design, says: Saying): readonly Tick[] => {
  const { bore } = design.spec
  const limit = (rule: string) => design.findings.find((finding) => finding.rule === rule)?.limit
  if (bore.blind) {
    const beyond = limit('blind-bore-deep-enough')
    const wide = bore.blind.relief
    return [
      ...(beyond === undefined
        ? []
        : [{ words: say`Bore goes on past the slot by at least ${bold(says.size(beyond))}`, blank: true as const }]),
      wide
        ? {
            words: say`Relief groove at the bottom, Ø${bold(says.size(wide.diameter))}, ${says.size(wide.length)} long; no chip left in it`,
          }
        : { words: 'Bottom clear of chips before every stroke' },
    ]
  }
  const bar = design.bar ?? design.groundBar
  // Where nobody has told how much is open, it is asked all the more.
  const open = limit('room-behind-hub') ?? (bar && roomForBar(bar))
  return open === undefined
    ? []
    : [{ words: say`Behind the hub open at least ${bold(says.size(open))}${says.other(open)}`, blank: true }]
}

/** Where the edge lies beside the bore: a mill's bore stands upright and has no centre height. */
const onCentre = ({ asked }: Design): string =>
  asked?.machine === 'mill' ? 'on the bore’s centre line' : 'on centre height'

export const ofTheBit = (design: Design, says: Saying): readonly Tick[] => {
  const { bar, bit, groundBar, loads } = design
  if (groundBar) {
    const { backToNose, noseTolerance } = groundBar
    return [
      { words: `Nose ${onCentre(design)} and square to the bore` },
      { words: say`Nose width, ${says.between(noseTolerance.lower, noseTolerance.upper)}`, blank: true },
      { words: say`Over back and nose ${bold(says.between(backToNose.lower, backToNose.upper))}`, blank: true },
    ]
  }
  if (!bar || !bit) return []
  const { screw } = bar
  const nose = bit.groundWidth
  const first = design.plan?.settings[0]?.overBarAndNose ?? bar.overBarAndNose
  const width: Tick =
    bit.form === 'vee'
      ? { words: say`V by its gauge, ${bold(`${Number((bit.includedAngle ?? 0).toFixed(2))}°`)}; both flanks bear` }
      : bit.form === 'round'
        ? { words: say`Round nose by its gauge, radius ${bold(says.size(bit.tipRadius ?? bit.cornerRadius))}` }
        : { words: say`Nose width, ${says.between(nose.lower, nose.upper)}`, blank: true }
  const square =
    bit.form === 'vee'
      ? `Bit ${onCentre(design)}, the V’s middle square to the bore`
      : `Bit ${onCentre(design)}; nose square to the bore`
  const torque = loads?.screwTorque === undefined ? '' : `, ${says.torque(loads.screwTorque)}`
  return [
    { words: square },
    width,
    {
      words: say`Over bar and nose ${bold(says.read(first))} ± ${says.size(bar.setting)}${says.other(first)}`,
      blank: true,
    },
    { words: `${screw.thread} screw tight${torque}; bit cannot be pushed back` },
  ]
}

/** `onScreen`: for a view in which a tick has one box and no other. */
export const ofTheMachine = (design: Design, says: Saying, onScreen = false): readonly Tick[] => {
  const { asked, plan, spec, section } = design
  if (!asked || !plan) return []
  const lathe = asked.machine === 'lathe'
  const long = says.size(spec.bore.length)
  const taper = section.key?.taper
  const { before, past, length } = plan.stroke
  const pulls = asked.stroke === 'pull'
  // On the pull the edge starts behind the hub and ends before it.
  const [clear, gone] = pulls ? [past, before] : [before, past]
  const strap =
    design.findings.find(({ rule }) => rule === 'pulled-work-stopped')?.limit ??
    2 * (design.loads?.cuttingForceMost ?? 0)
  return [
    {
      words: lathe
        ? 'Hub in the chuck, face square, bore running true'
        : `Hub held, strapped against the ${pulls ? 'pull' : 'push'}; bore square to the table and under the spindle`,
    },
    ...(pulls
      ? [
          {
            words: say`${bold('A stop or a strap before the hub:')} the cut draws it out of ${lathe ? 'its jaws' : 'the vise'}, and it takes ${says.force(strap)}`,
          },
        ]
      : []),
    ...(taper
      ? [
          {
            words: say`Hub tilted ${bold(degrees(taper.tilt, 3))}, so that the floor falls ${taper.rate}, ${bold(says.read(taper.windowLoss))} over the hub; the deep end is where the key goes in`,
            blank: true as const,
          },
        ]
      : []),
    ...(plan.dial.slide === undefined
      ? []
      : [
          {
            words: say`Slide set over ${bold(degrees(plan.dial.slide, 3))} from the bed’s axis, by the indicator`,
            blank: true as const,
          },
        ]),
    {
      words: say`Bar along the bore by the indicator, ${long} long: within ${bold(says.limit(plan.tram, 'down'))}${taper ? ', the tilt taken off' : ''}`,
      blank: true,
    },
    {
      words: say`${lathe ? 'Carriage stop' : 'Quill stop'}: edge ${bold(says.size(clear))} clear ${pulls ? 'behind the hub ' : ''}at the start, ${bold(says.size(gone))} past ${pulls ? 'its front ' : ''}at the end. Stroke ${says.size(length)}${says.other(length)}${pulls ? '. It cuts on the pull' : ''}`,
      blank: true,
    },
    pointing(design, lathe, onScreen),
  ]
}

/** Which way the nose points and the dial goes; on a screen, which has no second box, as it is taken where nobody has told. */
const pointing = ({ spec, asked, plan }: Design, lathe: boolean, onScreen: boolean): Tick => {
  const slack = 'Take up the slack that way, always'
  if (!lathe) return { words: `Table locked but for the slide that feeds. ${slack}` }
  if (onScreen && !spec.stated.includes('tooling.bar.points'))
    return {
      words: say`Nose points to the ${bold('back')}: the dial goes ${bold('in')}. To the front it goes out: then tell the desk so first. ${slack}`,
    }
  if (!spec.stated.includes('tooling.bar.points'))
    return {
      words: [
        'Nose points to the ',
        { tick: true },
        ' back: dial goes in ',
        { tick: true },
        ` front: dial goes out. ${slack}`,
      ],
    }
  return {
    words: say`Nose points to the ${bold(asked?.points ?? 'back')}: the dial goes ${bold(plan?.dial.runs ?? 'in')}. ${slack}`,
  }
}

/** Along the bore: full size where that fits, so that the bar can be laid on it. */
const alongWays = (design: Design): readonly { readonly width: number; readonly figure: Figure | undefined }[] => {
  const at = (width: number, height?: number) => ({ width, figure: lengthwise(design, onPaper(width, height)) })
  const isFull = ({ figure }: { readonly figure: Figure | undefined }): boolean => figure?.scale === 1
  const full = [at(122), at(132)].filter((way) => isFull(way))
  return [...full.slice(0, 1), at(112, 62), at(84, 46), at(84, 38)]
}

/** Bar, bore and machine set up, on one side of paper where that is to be done at all. */
export const setUpSide = (design: Design, says: Saying, cover: Cover): Side => {
  const { spec } = design
  const along = alongWays(design).map(({ width, figure }) => ({ width, figure, blocks: pictured(figure) }))
  const full = along.filter(({ figure }) => figure?.scale === 1)
  const section = onceFor((height: number) => sectionAndLengths(design, height))
  const job: Block = { block: 'job', name: spec.name, says: sentenceOf(design, says, 'bar') }
  const caution = atTheMachine(design, says)
  const bore = measureTheBore(design, says, 'bar')
  const behind: Block = { block: 'ticks', ticks: [...openBehind(design, says), ...ofTheBit(design, says)] }
  const machine: Block = { block: 'ticks', ticks: ofTheMachine(design, says) }
  const ways = [
    ...sectionHeights.flatMap((height) => full.map((way) => ({ height, ...way }))),
    ...sectionHeights.flatMap((height) => along.slice(full.length).map((way) => ({ height, ...way }))),
  ].map(({ height, width, figure, blocks }) => (): Side => {
    const beside = figure && (figure.scale === 1 ? 'full size: lay the bar on it' : scaleSaid(figure))
    return {
      title: 'set up',
      blocks: [
        job,
        ...caution,
        { block: 'columns', columns: [{ width: sectionWidth, blocks: section(height) }, { blocks: bore }] },
        { block: 'heading', text: 'Set up', ...(beside !== undefined && { beside }) },
        { block: 'columns', columns: [{ width, blocks }, { blocks: [behind] }] },
        machine,
      ],
    }
  })
  return asFits(cover, ways)
}
