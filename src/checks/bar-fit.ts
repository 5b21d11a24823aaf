/** Rules of any bar in its bore, whichever way it holds its edge. */
import { roomForBar } from '../dimensions/press-spacer.ts'
import { leastOverlap } from '../dimensions/settings.ts'
import { leastGain } from '../dimensions/stages.ts'
import type { Stage } from '../dimensions/types.ts'
import { blindForms, elsewhere, fitRemedies, noseRemedies, reliefLength, reliefRemedies } from './bar-ways.ts'
import { type FitJob, inBore, type Rule } from './rule.ts'
import { leaveBarOpen, length, upTo, written } from './ways.ts'

const path = 'tooling.bar'

const tightest = (job: FitJob, room: (stage: Stage) => number): Stage =>
  inBore(job).stages.reduce((least, stage) => (room(stage) < room(least) ? stage : least))

/** The stage whose nose stands out least over what it must, and the one that stands out nearest to what it may. */
const shortest = (job: FitJob): Stage => tightest(job, ({ projection, projectionMin }) => projection - projectionMin)
const longest = (job: FitJob): Stage => tightest(job, ({ projection, projectionMax }) => projectionMax - projection)

/** The beginning of a sentence about one stage; its next letters are `he nose`. */
const inStage = (job: FitJob, stage: Stage): string => {
  const { stages } = inBore(job)
  return stages.length > 1 ? `In stage ${stages.indexOf(stage) + 1} of ${stages.length} t` : 'T'
}

/** How far from the axis the nose's corners come behind the hub; of a slit its whole nose. */
const openingLeast = ({ section }: FitJob): number => Math.max(section.cornerReachMost, section.slit?.target ?? 0) + 0.2

export const fitRules: readonly Rule<FitJob>[] = [
  {
    id: 'bore-takes-a-bar',
    states: 'the bore is large enough for a bar at all',
    source: 'judgement: under 5 mm no bar is left beside its nose that bears a cut',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ section }) => section.bore.lower,
    limit: () => 5,
    reason: ({ measured, limit }, _job, broken) =>
      broken
        ? `The bore is ${measured}; under ${limit} no bar is left beside its nose that bears a cut.`
        : `The bore is ${measured}; a bar wants ${limit} at the least.`,
    remedies: (job) => [elsewhere(job)],
  },
  {
    id: 'stages-gain',
    states: 'each stage takes the slot deeper',
    source: 'geometry: room behind and before the bar; judgement: 0.1 mm, less than that is no stage',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: (job) => inBore(job).stages.length > 1,
    measured: (job) => Math.min(...inBore(job).stages.map(({ from, to }) => to - from)),
    limit: () => leastGain,
    reason: ({ measured }, job, broken) =>
      broken
        ? 'A new setting of the projection takes the slot no deeper: this bar never reaches the floor.'
        : `The projection is set ${inBore(job).stages.length} times; each takes the slot ${measured} deeper at the least.`,
    remedies: fitRemedies,
  },
  {
    id: 'bar-passes-bore',
    states: 'the bar is no larger than the largest that has any window of projections',
    source: 'geometry of bar, nose and bore at the worst corner of the limits',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: (job) => inBore(job).diameter.upper,
    limit: (job) => inBore(job).diameterMax,
    reason: ({ measured, limit }, job) =>
      inBore(job).diameterMax > 0
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
    measured: (job) => shortest(job).projection - inBore(job).setting,
    limit: (job) => shortest(job).projectionMin,
    reason: ({ measured, limit }, job) =>
      Number.isFinite(shortest(job).projectionMin)
        ? `${inStage(job, shortest(job))}he nose stands out ${measured} at the least; ${limit} is needed to reach the floor with the clearance asked.`
        : inBore(job).lanes.length > 1
          ? 'No projection lets this bar reach the floor: moved sideways to its lane it meets the bore.'
          : 'No projection lets this bar reach the floor: with its clearances it is thicker than the bore.',
    remedies: fitRemedies,
  },
  {
    id: 'projection-enters',
    states: 'bar and nose pass the uncut bore when withdrawn',
    source: 'geometry: far wall, withdrawn from first touch; worst corner of the limits, with the setting tolerance',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: (job) => longest(job).projection + inBore(job).setting,
    limit: (job) => longest(job).projectionMax,
    reason: ({ measured, limit }, job) =>
      longest(job).projectionMax > 0
        ? `${inStage(job, longest(job))}he nose stands out ${measured} at the most; ${limit} is all that the uncut bore lets pass.`
        : `The nose stands out ${measured}; in the uncut bore there is no room for any nose beside this bar.`,
    remedies: fitRemedies,
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
    measured: (job) => inBore(job).noseWidth,
    limit: ({ section }) => section.widthLimits.upper,
    reason: ({ measured, limit }) => `The nose is ${measured} wide; the slot may be ${limit}.`,
    remedies: noseRemedies,
  },
  {
    id: 'lanes-overlap',
    states: 'neighbouring lanes overlap, so that no ridge stands between them',
    source: 'a tenth of the nose (judgement), and twice its corner radius (geometry)',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: (job) => inBore(job).lanes.length > 1,
    measured: (job) => {
      const { lanes, noseWidth } = inBore(job)
      return noseWidth - Math.abs((lanes[1]?.offset ?? 0) - (lanes[0]?.offset ?? 0))
    },
    limit: (job) => leastOverlap(inBore(job).noseWidth, inBore(job).cornerRadius),
    reason: ({ measured, limit }) => `The lanes overlap by ${measured}; ${limit} leaves no ridge.`,
    remedies: noseRemedies,
  },
  {
    id: 'bar-not-too-long',
    states: 'the bar is no more than five diameters long',
    source: 'judgement: longer, it gives more than a dial can tell',
    binding: 'should',
    sense: 'at most',
    unit: 'ratio',
    measured: (job) => inBore(job).overhang / inBore(job).diameter.nominal,
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
    limit: (job) => roomForBar(inBore(job)),
    reason: ({ measured, limit }) => `${measured} is open behind the hub; the bar needs ${limit}.`,
    untold: 'How much is open behind the hub is not told: give tooling.bar.behind.',
    remedies: (job) => [
      {
        say: `Set the hub out so that ${length(job, upTo(job, roomForBar(inBore(job)), 1, 1 / 16))} is open behind it.`,
        set: { [`${path}.behind`]: written(job, upTo(job, roomForBar(inBore(job)), 1, 1 / 16)) },
      },
      { say: 'Or raise the hub on parallels, or bore the fixture out behind it.' },
    ],
  },
  {
    id: 'opening-clears-nose',
    states: 'the hole behind the hub clears the nose',
    source: 'geometry: the slot’s farthest corner and 0.2 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec, asked }) => spec.bore.blind === undefined && asked.opening !== undefined,
    measured: ({ asked }) => asked.opening && asked.opening / 2,
    limit: openingLeast,
    reason: ({ measured, limit }) =>
      `Half the hole behind the hub is ${measured}; the nose’s corners run out to ${limit} under the cut.`,
    remedies: (job) => [
      {
        say: `Bore the hole out to Ø${length(job, upTo(job, 2 * openingLeast(job), 1, 1 / 16))}.`,
        set: { [`${path}.opening`]: written(job, upTo(job, 2 * openingLeast(job), 1, 1 / 16)) },
      },
      { say: 'Or set the hub out on parallels, clear of the nose.' },
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
    limit: (job) => inBore(job).tipBeyond + 0.5,
    reason: ({ measured, limit }) => `The bore goes ${measured} beyond the keyway; the bar’s end needs ${limit}.`,
    remedies: (job) => [
      ...blindForms(job),
      {
        say: `Bore it ${length(job, upTo(job, inBore(job).tipBeyond + 0.5, 0.5, 1 / 32))} deeper than the keyway.`,
        set: { 'bore.blind.beyond': written(job, upTo(job, inBore(job).tipBeyond + 0.5, 0.5, 1 / 32)) },
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
    limit: reliefLength,
    reason: ({ measured, limit }, { spec }) =>
      spec.bore.blind?.relief
        ? `The relief groove is ${measured} long; ${limit} takes overtravel and chip.`
        : `There is no relief groove; one ${limit} long takes overtravel and chip.`,
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
]
