/** Rules of the cutter bar, its bit and its screw. */
import { fitRules } from './bar-fit.ts'
import { holeRemedies, noseRemedies } from './bar-ways.ts'
import type { BarJob, Proposal, Rule } from './rule.ts'
import { leaveBarOpen, leaveOpen, length } from './ways.ts'

const path = 'tooling.bar'

const screwRemedies = (job: BarJob): readonly Proposal[] => [
  ...leaveOpen(job, 'screw'),
  ...leaveOpen(job, 'bit', 'screw'),
  ...leaveBarOpen(job),
  {
    say: `Take a screw from ${length(job, job.bar.screw.lengthMin)} to ${length(job, job.bar.screw.lengthMax)} long, or one size smaller.`,
  },
]

export const barRules: readonly Rule<BarJob>[] = [
  ...fitRules,
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
    measured: ({ bar }) =>
      bar.form === 'end screw' ? (bar.diameter.lower - bar.screw.major) / 2 : bar.holeToEnd - bar.screw.major / 2,
    limit: ({ bar }) => bar.screw.major / 2,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? `The thread is wider than the bar by ${measured.slice(1)} a side.`
        : `${measured} of wall stands round the thread; ${limit} is the least.`,
    remedies: (job) => [...leaveOpen(job, 'screw'), ...holeRemedies(job)],
  },
  {
    id: 'wall-takes-thread',
    states: 'a screw in the wall has four threads there',
    source: 'judgement: four threads',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ bar }) => bar.form !== 'end screw',
    measured: ({ bar }) => (bar.diameter.lower - bar.crossHole.upper) / 2,
    limit: ({ bar }) => 4 * bar.screw.pitch,
    reason: ({ measured, limit }, job) =>
      `The wall that the ${job.bar.screw.thread} screw goes through is ${measured} thick; four threads take ${limit}.`,
    remedies: (job) => [...leaveOpen(job, 'screw'), ...holeRemedies(job)],
  },
  {
    id: 'relief-left-when-rocked',
    states: 'the end keeps its relief when the bit rocks in its hole',
    source: 'geometry of bit and hole; judgement: 2°',
    binding: 'should',
    sense: 'at least',
    unit: 'degrees',
    applies: ({ bar }) => bar.rock !== undefined,
    measured: ({ bar, bit }) => (bit.leaning?.endRelief ?? bit.endRelief) - (bar.rock ?? 0),
    limit: () => 2,
    reason: ({ measured, limit }) =>
      `A screw in the wall lets the bit rock in its hole: ${measured} of end relief is left then; ${limit} still cuts. Seat it on the upper wall before you tighten.`,
    remedies: () => [{ say: 'Take the longest bit that the bar hides, or a tighter hole.' }],
  },
  {
    id: 'inclined-bit-is-pushed',
    states: 'a bit that leans forward is pushed',
    source: 'its rake looks to the bar’s end',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    applies: ({ bar }) => bar.form === 'inclined',
    measured: ({ asked }) => (asked.stroke === 'pull' ? 1 : 0),
    limit: () => 0,
    reason: (_said, _job, broken) =>
      broken
        ? 'The bit leans towards the bar’s end: it cannot cut on the pull stroke.'
        : 'The bit leans towards the bar’s end and is pushed.',
    remedies: () => [
      { say: 'Cut on the push stroke.', set: { [`${path}.stroke`]: 'push' } },
      { say: 'Or hold the bit upright.' },
    ],
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
      `The ${job.bar.screw.thread} screw is ${measured} long; ${limit} stays below ${job.bar.form === 'end screw' ? 'the end' : 'the bar’s surface'}.`,
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
