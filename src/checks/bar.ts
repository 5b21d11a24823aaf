/** Rules of the cutter bar, its bit and its screw. */
import { either, roundTo } from '../dimensions/makeable.ts'
import { leastOverlap } from '../dimensions/settings.ts'
import { widerBores } from './features.ts'
import type { BarJob, Proposal, Rule } from './rule.ts'
import { closerClearances, leaveBarOpen, leaveOpen, length, opened, stock, upTo, written } from './ways.ts'

const path = 'tooling.bar'

/** The middle of the window of projections, where it is wide enough to be set in. */
const openProjection = (job: BarJob): readonly Proposal[] => {
  const { projectionMin, projectionMax, setting } = job.bar
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

const smallerBars = (job: BarJob): readonly Proposal[] =>
  job.spec.shop.bars
    .filter((size) => size < job.bar.diameter.nominal && size <= job.bar.diameterMax)
    .slice(-4)
    .toReversed()
    .map((size) => ({
      say: `Take a smaller bar, Ø${stock(job, size)}, and let the projection follow.`,
      told: ({ bar }) =>
        `Take a smaller bar, Ø${stock(job, size)}, with the nose standing out ${length(job, bar?.projection ?? 0)}.`,
      set: { ...opened(job, 'projection', 'bit', 'screw', 'nose.width'), [`${path}.diameter`]: written(job, size) },
    }))

/** The next smaller blank of each shape, and a round one of the same size: less hole in the bar. */
const otherBits = (job: BarJob): readonly Proposal[] => {
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

const elsewhere: Proposal = {
  say: 'Otherwise a push broach with its bushing, a one-piece bar ground from the round, or wire or spark erosion by others.',
}

const fitRemedies = (job: BarJob): readonly Proposal[] => [
  ...openProjection(job),
  ...leaveBarOpen(job),
  ...smallerBars(job),
  ...closerClearances(job),
  elsewhere,
]

const holeRemedies = (job: BarJob): readonly Proposal[] => [
  ...leaveOpen(job, 'bit', 'screw'),
  ...leaveBarOpen(job),
  ...otherBits(job),
  ...closerClearances(job),
  elsewhere,
]

/** A groove that both the floor's corners and the chip find room in. */
const reliefRemedies = (job: BarJob): readonly Proposal[] => {
  const relief = job.spec.bore.blind?.relief
  const diameter = Math.max(relief?.diameter ?? 0, upTo(job, 2 * job.section.cornerReach + 0.4, 0.1, 0.005))
  const long = Math.max(relief?.length ?? 0, upTo(job, job.bar.overtravel + 1, 0.5, 0.01))
  return [
    {
      say: `Turn a relief groove of Ø${length(job, diameter)}, ${length(job, long)} long.`,
      set: { 'bore.blind.relief.diameter': written(job, diameter), 'bore.blind.relief.length': written(job, long) },
    },
    { say: 'Or let the keyway run right through.' },
  ]
}

const screwRemedies = (job: BarJob): readonly Proposal[] => [
  ...leaveOpen(job, 'screw'),
  ...leaveOpen(job, 'bit', 'screw'),
  ...leaveBarOpen(job),
  {
    say: `Take a screw from ${length(job, job.bar.screw.lengthMin)} to ${length(job, job.bar.screw.lengthMax)} long, or one size smaller.`,
  },
]

const noseRemedies = (job: BarJob): readonly Proposal[] => [
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

export const barRules: readonly Rule<BarJob>[] = [
  {
    id: 'bar-passes-bore',
    states: 'the bar is no larger than the largest that has any window of projections',
    source: 'geometry of bar, nose and bore at the worst corner of the limits',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.diameter.upper,
    limit: ({ bar }) => bar.diameterMax,
    reason: ({ measured, limit }, { bar }) =>
      bar.diameterMax > 0
        ? `The bar is Ø${measured}; the largest with which the nose both enters and reaches is Ø${limit}.`
        : `The bar is Ø${measured}; with these clearances no bar at all lets the nose both enter and reach.`,
    remedies: fitRemedies,
  },
  {
    id: 'projection-reaches',
    states: 'the nose reaches the floor before the bar comes too near the metal in front',
    source:
      'geometry: mouth corner, bore arc, or the chip’s room; worst corner of the limits, less the setting tolerance',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bar }) => bar.projection - bar.setting,
    limit: ({ bar }) => bar.projectionMin,
    reason: ({ measured, limit }, { bar }) =>
      Number.isFinite(bar.projectionMin)
        ? `The nose stands out ${measured} at the least; ${limit} is needed to reach the floor with the clearance asked.`
        : 'No projection lets this bar reach the floor: moved sideways to its lane it meets the bore.',
    remedies: fitRemedies,
  },
  {
    id: 'projection-enters',
    states: 'bar and nose pass the uncut bore when withdrawn',
    source: 'geometry: far wall, withdrawn from first touch; worst corner of the limits, with the setting tolerance',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.projection + bar.setting,
    limit: ({ bar }) => bar.projectionMax,
    reason: ({ measured, limit }, { bar }) =>
      bar.projectionMax > 0
        ? `The nose stands out ${measured} at the most; ${limit} is all that the uncut bore lets pass.`
        : `The nose stands out ${measured}; in the uncut bore there is no room for any nose beside this bar.`,
    remedies: fitRemedies,
  },
  {
    id: 'hole-in-bar',
    states: 'the cross hole leaves the bar enough metal',
    source: 'judgement: 0.7 of the bar',
    binding: 'must',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ bar }) => bar.crossHole.upper / bar.diameter.lower,
    limit: () => 0.7,
    reason: ({ measured, limit }) =>
      `The cross hole is ${measured} of the bar; ${limit} is the most for a bar of two pieces.`,
    remedies: holeRemedies,
  },
  {
    id: 'hole-in-bar-easy',
    states: 'the cross hole leaves the bar plenty of metal',
    source: 'judgement: 0.6 of the bar',
    binding: 'should',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ bar }) => bar.crossHole.upper / bar.diameter.lower,
    limit: () => 0.6,
    reason: ({ measured, limit }) => `The cross hole is ${measured} of the bar; over ${limit}, take light passes.`,
    remedies: holeRemedies,
  },
  {
    id: 'wall-beside-hole',
    states: 'wall stands beside the cross hole',
    source: 'judgement: 1.2 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bar }) => (bar.diameter.lower - bar.crossHole.upper) / 2,
    limit: () => 1.2,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? `The cross hole is wider than the bar by ${measured.slice(1)} a side.`
        : `${measured} of wall stands beside the cross hole; ${limit} is the least.`,
    remedies: holeRemedies,
  },
  {
    id: 'wall-round-tap',
    states: 'half the screw’s diameter of wall stands round its thread',
    source: 'judgement',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bar }) => (bar.diameter.lower - bar.screw.major) / 2,
    limit: ({ bar }) => bar.screw.major / 2,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? `The thread is wider than the bar by ${measured.slice(1)} a side.`
        : `${measured} of wall stands round the thread; ${limit} is the least.`,
    remedies: (job) => [...leaveOpen(job, 'screw'), ...holeRemedies(job)],
  },
  {
    id: 'screw-under-bit',
    states: 'the screw bears on the bit’s face, not on its edges',
    source: 'judgement: 0.9 of the blank',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.screw.major,
    limit: ({ bar }) => 0.9 * bar.bit.size,
    reason: ({ measured, limit }, job) =>
      `The ${job.bar.screw.thread} screw is ${measured}; ${limit} is the most under this blank.`,
    remedies: screwRemedies,
  },
  {
    id: 'screw-long-enough',
    states: 'enough thread is engaged when the screw has seated the bit',
    source: 'judgement: 0.8 of its diameter and four threads',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bar }) => bar.screw.length,
    limit: ({ bar }) => bar.screw.lengthMin,
    reason: ({ measured, limit }, job) => `The ${job.bar.screw.thread} screw is ${measured} long; ${limit} holds.`,
    remedies: screwRemedies,
  },
  {
    id: 'screw-below-end',
    states: 'the screw ends below the bar’s end',
    source: 'judgement: the recess',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.screw.length,
    limit: ({ bar }) => bar.screw.lengthMax,
    reason: ({ measured, limit }, job) =>
      `The ${job.bar.screw.thread} screw is ${measured} long; ${limit} stays below the end.`,
    remedies: screwRemedies,
  },
  {
    id: 'bit-long-enough',
    states: 'the bit’s tail lies under the whole cup of the screw',
    source: 'geometry, and 0.75 mm past the cup',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bar }) => bar.bitLength,
    limit: ({ bar }) => bar.bitLengthMin,
    reason: ({ measured, limit }) => `The bit is ${measured} long; ${limit} is the least under the screw.`,
    remedies: holeRemedies,
  },
  {
    id: 'bit-tail-inside',
    states: 'the bit’s tail stays under the bar’s surface',
    source: 'geometry: tail corners under the smallest bar by the back clearance',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.bitLength,
    limit: ({ bar }) => bar.bitLengthMax,
    reason: ({ measured, limit }) => `The bit is ${measured} long; at ${limit} its tail would come out of the bar.`,
    remedies: holeRemedies,
  },
  {
    id: 'nose-long-enough',
    states: 'the blank’s shoulder stays inside the bore at full depth',
    source: 'geometry: shoulder corners clear the bore by the back clearance',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bit }) => bit.noseLength,
    limit: ({ bar }) => bar.noseLengthMin,
    reason: ({ measured, limit }, { bar }) =>
      Number.isFinite(bar.noseLengthMin)
        ? `The nose is ${measured} long; ${limit} keeps the shoulder clear of the bore.`
        : `The nose is ${measured} long; no length keeps a shoulder as wide as this blank inside the bore.`,
    remedies: holeRemedies,
  },
  {
    id: 'nose-not-over-width',
    states: 'the nose is no wider than the slot may be',
    source: 'the slot’s width limits',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    // A V may be wider than its mouth, and a round nose is wider than a shallow groove's.
    applies: ({ section }) => section.socket === undefined && section.groove === undefined,
    measured: ({ bar }) => bar.noseWidth,
    limit: ({ section }) => section.widthLimits.upper,
    reason: ({ measured, limit }) => `The nose is ${measured} wide; the slot may be ${limit}.`,
    remedies: noseRemedies,
  },
  {
    id: 'nose-from-blank',
    states: 'the nose can be ground on its blank',
    source: 'geometry',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bar }) => bar.noseWidth,
    limit: ({ bar }) => bar.bit.size,
    reason: ({ measured, limit }) => `The nose is ${measured} wide on a blank of ${limit}.`,
    remedies: noseRemedies,
  },
  {
    id: 'nose-room-to-grind',
    states: 'grinding the sides leaves the nose its width',
    source: 'judgement: 0.01 mm off a square blank, a tenth off a round one',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    // The sides of a V do not cut: the blank's own serve.
    applies: ({ section }) => section.socket === undefined,
    measured: ({ bar }) => bar.noseWidth,
    limit: ({ bar }) => (bar.bit.shape === 'round' ? 0.9 * bar.bit.size : bar.bit.size - 0.01),
    reason: ({ measured, limit }) =>
      `The nose is ${measured} wide; this blank gives ${limit} once its sides are ground.`,
    remedies: noseRemedies,
  },
  {
    id: 'lanes-overlap',
    states: 'neighbouring lanes overlap, so that no ridge stands between them',
    source: 'a tenth of the nose (judgement), and twice its corner radius (geometry)',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ bar }) => bar.lanes.length > 1,
    measured: ({ bar }) => bar.noseWidth - Math.abs((bar.lanes[1]?.offset ?? 0) - (bar.lanes[0]?.offset ?? 0)),
    limit: ({ bar }) => leastOverlap(bar.noseWidth, bar.cornerRadius),
    reason: ({ measured, limit }) => `The lanes overlap by ${measured}; ${limit} leaves no ridge.`,
    remedies: noseRemedies,
  },
  {
    id: 'rake-on-slim-bar',
    states: 'a slim bar carries no more than 10° of rake',
    source: 'judgement: over three diameters long or under 8 mm, more rake draws the nose in',
    binding: 'should',
    sense: 'at most',
    unit: 'degrees',
    applies: ({ bar }) => bar.overhang / bar.diameter.nominal > 3 || bar.diameter.nominal < 8,
    measured: ({ bit }) => bit.rake,
    limit: () => 10,
    reason: ({ measured, limit }) => `The rake is ${measured} on a slim bar; ${limit} is the most it bears.`,
    remedies: () => [{ say: 'Grind 10° of rake.', set: { [`${path}.rake`]: 10 } }],
  },
  {
    id: 'bar-not-too-long',
    states: 'the bar is no more than five diameters long',
    source: 'judgement: longer, it gives more than a dial can tell',
    binding: 'should',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ bar }) => bar.overhang / bar.diameter.nominal,
    limit: () => 5,
    reason: ({ measured, limit }) =>
      `The bar stands out ${measured} diameters; over ${limit} measure often and expect it to give.`,
    remedies: (job) => [...leaveBarOpen(job), { say: 'Guide the bar at both ends, or use a push broach.' }],
  },
  {
    id: 'room-behind-hub',
    states: 'the bar’s end runs out free behind the hub',
    source: 'geometry: overtravel, the end below the bit, and 0.5 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.blind === undefined,
    measured: ({ asked }) => asked.behind,
    limit: ({ bar }) => bar.tipBeyond + 0.5,
    reason: ({ measured, limit }) => `${measured} is open behind the hub; the bar needs ${limit}.`,
    untold: 'How much is open behind the hub is not told: give tooling.bar.behind.',
    remedies: (job) => [
      {
        say: `Set the hub out so that ${length(job, upTo(job, job.bar.tipBeyond + 0.5, 1, 1 / 16))} is open behind it.`,
        set: { [`${path}.behind`]: written(job, upTo(job, job.bar.tipBeyond + 0.5, 1, 1 / 16)) },
      },
      { say: 'Or raise the hub on parallels, or bore the fixture out behind it.' },
    ],
  },
  {
    id: 'blind-bore-deep-enough',
    states: 'the bore goes deep enough beyond the keyway for the bar’s end',
    source: 'geometry: overtravel, the end below the bit, and 0.5 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.blind !== undefined,
    measured: ({ spec }) => spec.bore.blind?.beyond,
    limit: ({ bar }) => bar.tipBeyond + 0.5,
    reason: ({ measured, limit }) => `The bore goes ${measured} beyond the keyway; the bar’s end needs ${limit}.`,
    remedies: (job) => [
      {
        say: `Bore it ${length(job, upTo(job, job.bar.tipBeyond + 0.5, 0.5, 1 / 32))} deeper than the keyway.`,
        set: { 'bore.blind.beyond': written(job, upTo(job, job.bar.tipBeyond + 0.5, 0.5, 1 / 32)) },
      },
      { say: 'Or end the keyway sooner.' },
    ],
  },
  {
    id: 'blind-relief-wide-enough',
    states: 'a relief groove at the bottom lets the chip part',
    source: 'geometry: past the floor’s corners by 0.2 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.blind !== undefined,
    measured: ({ spec }) => (spec.bore.blind?.relief?.diameter ?? spec.bore.diameter.nominal) / 2,
    limit: ({ section }) => section.cornerReachMost + 0.2,
    reason: ({ measured, limit }) => `The relief groove’s radius is ${measured}; ${limit} clears the floor’s corners.`,
    remedies: reliefRemedies,
  },
  {
    id: 'blind-relief-long-enough',
    states: 'the relief groove takes overtravel and chip',
    source: 'geometry, and 1 mm of chip (judgement)',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.blind !== undefined,
    measured: ({ spec }) => spec.bore.blind?.relief?.length ?? 0,
    // Pulled, the cut begins in the groove: the whole bit must stand in it.
    limit: ({ bar, asked }) => (asked.stroke === 'push' ? bar.overtravel + 1 : bar.bit.size + 1),
    reason: ({ measured, limit }) => `The relief groove is ${measured} long; ${limit} takes overtravel and chip.`,
    remedies: reliefRemedies,
  },
  {
    id: 'hub-wall-over-relief',
    states: 'the relief groove leaves the hub its wall',
    source: 'judgement: 2.5 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.blind?.relief !== undefined && spec.hub.outside !== undefined,
    measured: ({ spec }) => ((spec.hub.outside ?? 0) - (spec.bore.blind?.relief?.diameter ?? 0)) / 2,
    limit: () => 2.5,
    reason: ({ measured, limit }) => `${measured} of hub is left over the relief groove; ${limit} is the least.`,
    remedies: () => [{ say: 'Take a larger hub, a flatter key, or bore it through.' }],
  },
  {
    id: 'pulled-bit-is-square',
    states: 'a bit that is pulled can be turned over',
    source: 'a round bit’s flat for the screw lies on its rake side',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    applies: ({ asked }) => asked.stroke === 'pull',
    measured: ({ bar }) => (bar.bit.shape === 'round' ? 1 : 0),
    limit: () => 0,
    reason: (_said, _job, broken) =>
      broken
        ? 'On the pull stroke the rake looks away from the screw, and this round bit has its flat on the rake’s side.'
        : 'The square bit is turned over for the pull stroke: rake towards the holder.',
    remedies: (job) => [
      { say: 'Cut on the push stroke.', set: { 'tooling.bar.stroke': 'push' } },
      ...leaveBarOpen(job),
      { say: 'Or take a square bit.' },
    ],
  },
]
