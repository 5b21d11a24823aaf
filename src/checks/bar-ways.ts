/** Ways out that the rules of bars share. */
import { either, roundTo } from '../dimensions/makeable.ts'
import { noseForLanes } from '../dimensions/settings.ts'
import { inFull } from '../spec/figures.ts'
import { buying } from './buying.ts'
import { widerBores } from './features.ts'
import { type FitJob, inBore, type Proposal, type Worked } from './rule.ts'
import { barOf, closerClearances, leaveBarOpen, leaveOpen, length, opened, stock, upTo, written } from './ways.ts'

const path = 'tooling.bar'

/** The middle of the window of projections, where it is wide enough to be set in. */
const openProjection = (job: FitJob): readonly Proposal[] => {
  const { projectionMin, projectionMax, setting } = inBore(job)
  if (!(projectionMax - projectionMin >= 2 * setting)) return []
  const middle = roundTo((projectionMin + projectionMax) / 2, either(job.spec.units, 0.01, 0.001))
  return job.spec.stated.includes(`${path}.projection`)
    ? [
        {
          say: `Set the projection to ${length(job, middle)}, the middle of its window.`,
          set: { [`${path}.projection`]: written(job, middle) },
        },
      ]
    : []
}

const smallerBars = (job: FitJob): readonly Proposal[] =>
  job.spec.shop.bars
    .filter((size) => size < inBore(job).diameter.nominal && size <= inBore(job).diameterMax)
    .slice(-4)
    .toReversed()
    .map((size) => ({
      say: `Take a smaller bar, Ø${stock(job, size)}, and let the projection follow.`,
      told: ({ bar }) =>
        `Take a smaller bar, Ø${stock(job, size)}, with the nose standing out ${length(job, bar?.projection ?? 0)}${(bar?.stages.length ?? 1) > 1 ? ` at last, in ${bar?.stages.length} stages` : ''}.`,
      set: { ...opened(job, 'projection', 'bit', 'screw', 'nose.width'), [`${path}.diameter`]: written(job, size) },
    }))

/** The next smaller blank of each shape, and a round one of the same size: less hole in the bar. */
const otherBits = (job: FitJob): readonly Proposal[] => {
  if (!job.bar) return []
  const { size, shape } = job.bar.bit
  const round = job.spec.shop.bits.filter((bit) => bit.shape === 'round' && bit.size <= size && shape === 'square')
  const smaller = job.spec.shop.bits.filter((bit) => bit.size < size)
  return [...round.slice(-2), ...smaller.slice(-4)].toReversed().map((bit) => ({
    say: `Take a ${bit.shape} bit of ${stock(job, bit.size)}.`,
    told: ({ bar }) =>
      `Take a ${bit.shape} bit of ${stock(job, bit.size)}${(bar?.lanes.length ?? 1) > 1 ? `, its nose ${length(job, bar?.noseWidth ?? 0)} wide, in ${bar?.lanes.length} lanes` : ''}.`,
    set: {
      ...opened(job, 'screw', 'nose.width'),
      [`${path}.bit`]: null,
      [`${path}.bit.shape`]: bit.shape,
      [`${path}.bit.size`]: written(job, bit.size),
    },
  }))
}

/** The bar's other forms, and more settings of its projection, each with all else chosen anew. */
export const otherForms = (job: FitJob): readonly Proposal[] => {
  const { form, stages } = job.asked
  const how = {
    'end screw': 'Hold the bit by a screw from the bar’s end',
    'side screw': 'Hold the bit by a screw through the wall beside it',
    'one piece': 'Grind neck and nose of one piece from the round',
  } as const
  const forms = (Object.keys(how) as readonly (keyof typeof how)[])
    .filter((other) => other !== (job.bar?.form ?? 'one piece') && other !== form)
    .map((other) => ({
      say: `${how[other]}.`,
      told: (healed: Worked) => `${how[other]}: that gives ${barOf(healed)}.`,
      set: { ...opened(job), [`${path}.form`]: other },
      kind: 'form',
    }))
  const staged = {
    say: 'Set the projection farther out in stages, as the slot gets deeper.',
    told: (healed: Worked) =>
      `Set the projection farther out in stages, as the slot gets deeper: that gives ${barOf(healed)}.`,
    set: { ...opened(job, 'projection'), [`${path}.stages`]: null },
    kind: 'stages',
  }
  return [...(stages === undefined && job.asked.projection === undefined ? [] : [staged]), ...forms]
}

/** One lane more: a narrower nose asks less of bar and machine, and takes as many more passes. */
export const narrowerNose = (job: FitJob): readonly Proposal[] => {
  const { spec, section } = job
  const { lanes, noseWidth } = inBore(job)
  if (section.socket || section.groove || lanes.length > 2) return []
  const width = noseForLanes(spec, section.width, section.cornerRadius, lanes.length + 1)
  if (width >= noseWidth - 1e-9) return []
  const narrow = `Grind the nose ${length(job, width)} wide and cut in ${lanes.length + 1} lanes`
  return [
    {
      say: `${narrow}.`,
      told: (healed: Worked) => `${narrow}: that gives ${barOf(healed)}.`,
      set: { ...opened(job), [`${path}.nose.width`]: written(job, width) },
      kind: 'narrow',
    },
  ]
}

/** Less in a pass, where it is the chip's room that keeps the nose out. */
const thinnerChips = (job: FitJob): readonly Proposal[] => {
  const { projectionFloor } = inBore(job)
  const { infeed: now } = job
  if (projectionFloor <= job.asked.clearance.front + 1e-9 || now === undefined) return []
  return [0.5, 0.25]
    .map((part) => roundTo(now * part, either(job.spec.units, 0.0025, 0.0001)))
    .filter((infeed) => infeed >= 0.005 - 1e-9)
    .map((infeed) => ({
      say: `Take ${inFull(infeed, job.spec.units)} ${job.spec.units} a pass: its chip needs less room before the bar.`,
      set: { [`${path}.infeed`]: written(job, infeed) },
      kind: 'chips',
    }))
}

/** In a blind bore: an edge nearer the bar's end, or a cut that begins at the bottom. */
export const blindForms = (job: FitJob): readonly Proposal[] => {
  const { form, stroke } = job.asked
  const leaning = 'Lean the bit forward, its screw in the wall'
  const wide = reliefLength({ ...job, asked: { ...job.asked, stroke: 'pull' } })
  return [
    ...(form !== undefined && form !== 'inclined' && stroke === 'push'
      ? [
          {
            say: `${leaning}.`,
            told: (healed: Worked) => `${leaning}: that gives ${barOf(healed)}.`,
            set: { ...opened(job), [`${path}.form`]: 'inclined' },
            kind: 'form',
          },
        ]
      : []),
    ...otherForms(job),
    ...(stroke === 'push'
      ? [
          {
            say: 'Cut on the pull stroke, from the relief groove.',
            set: {
              [`${path}.stroke`]: 'pull',
              'bore.blind.relief.length': written(
                job,
                Math.max(job.spec.bore.blind?.relief?.length ?? 0, upTo(job, wide, 0.5, 0.01)),
              ),
              ...(job.spec.bore.blind?.relief === undefined && {
                'bore.blind.relief.diameter': written(
                  job,
                  upTo(job, 2 * job.section.cornerReachMost + 0.4, 0.1, 0.005),
                ),
              }),
            },
          },
        ]
      : []),
  ]
}

/** Where nothing else goes. */
export const elsewhere = ({ section }: FitJob): Proposal => ({
  say: `Otherwise a push broach${section.kind === 'keyway' || section.kind === 'spline' ? ' with its bushing' : ' of that form'}, or wire or spark erosion by others${section.kind === 'keyway' ? '; or a pin, a D-bore or adhesive in place of the key' : ''}.`,
})

export const fitRemedies = (job: FitJob): readonly Proposal[] => [
  ...openProjection(job),
  ...leaveBarOpen(job),
  ...smallerBars(job),
  ...thinnerChips(job),
  ...buying(job),
  ...otherForms(job),
  ...closerClearances(job),
  elsewhere(job),
]

export const holeRemedies = (job: FitJob): readonly Proposal[] => [
  ...leaveOpen(job, 'bit', 'screw'),
  ...leaveBarOpen(job),
  ...otherBits(job),
  ...buying(job),
  ...otherForms(job),
  ...closerClearances(job),
  elsewhere(job),
]

/** What the groove must take: overtravel and chip; pulled, the cut begins in it, and the whole edge must stand there. */
export const reliefLength = (job: FitJob): number =>
  job.asked.stroke === 'push' ? inBore(job).overtravel + 1 : (job.bar?.bit.size ?? job.groundBar?.headLength ?? 0) + 1

/** A groove that both the floor's corners and the chip find room in. */
export const reliefRemedies = (job: FitJob): readonly Proposal[] => {
  const relief = job.spec.bore.blind?.relief
  const diameter = Math.max(relief?.diameter ?? 0, upTo(job, 2 * job.section.cornerReachMost + 0.4, 0.1, 0.005))
  const long = Math.max(relief?.length ?? 0, upTo(job, reliefLength(job), 0.5, 0.01))
  return [
    {
      say: `Turn a relief groove of Ø${length(job, diameter)}, ${length(job, long)} long.`,
      set: { 'bore.blind.relief.diameter': written(job, diameter), 'bore.blind.relief.length': written(job, long) },
    },
    { say: 'Or let the keyway run right through.' },
  ]
}

export const noseRemedies = (job: FitJob): readonly Proposal[] => [
  ...leaveOpen(job, 'nose.width'),
  ...leaveOpen(job, 'bit', 'nose.width'),
  ...leaveBarOpen(job),
  ...widerBores(job),
  {
    say: job.section.socket
      ? 'Or take a larger blank; a socket is never cut in lanes.'
      : job.section.groove
        ? 'Take a larger blank, or a groove of smaller radius.'
        : 'Grind the nose narrower, and cut the slot in lanes; or take a larger blank.',
  },
]
