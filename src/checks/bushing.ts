/** Rules of the push broach, its bushing and its shims. */
import { mouthX } from '../dimensions/bore.ts'
import { middle } from '../fits/size.ts'
import { gulletNeeded } from '../mechanics/press.ts'
import { buying } from './buying.ts'
import type { PressJob, Proposal, Rule } from './rule.ts'
import { barInstead, leaveBarOpen, length } from './ways.ts'

const otherBroach = (job: PressJob): readonly Proposal[] => [
  ...barInstead(job),
  { say: 'Or take another broach, measure it and enter it.' },
]

/** x of a height over the broach's back, once `shimmed`, in the smallest bore: the thrust holds the bushing against its back. */
const heightX = ({ bushing, section }: PressJob, height: number, shimmed = 0): number =>
  bushing.backWall.upper - section.bore.lower / 2 + height + shimmed

const allShims = ({ bushing }: PressJob): number => bushing.shims.reduce((sum, shim) => sum + shim, 0)

export const bushingRules: readonly Rule<PressJob>[] = [
  {
    id: 'bushing-wall',
    states: 'wall stands behind the bushing’s slot, at its corners',
    source: 'judgement: 1.5 mm; geometry at the slot’s corner',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ bushing }) =>
      Math.min(
        ...[bushing.backWall.lower, bushing.backWall.upper].map(
          (wall) =>
            bushing.outside.lower / 2 - Math.hypot(wall - bushing.outside.lower / 2, bushing.slotWidth.upper / 2),
        ),
      ),
    limit: () => 1.5,
    reason: ({ measured, limit }) => `${measured} of wall stands behind the slot’s corners; ${limit} is the least.`,
    remedies: otherBroach,
  },
  {
    id: 'bushing-slots-apart',
    states: 'metal stands between the broach’s slot and that of the locating key',
    source: 'geometry; judgement: 1.5 mm',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ bushing }) => bushing.locating !== undefined,
    measured: ({ bushing }) => bushing.locating?.web,
    limit: () => 1.5,
    reason: ({ measured, limit }) =>
      `${measured} of metal stands between the broach’s slot and the one for the locating key; ${limit} is the least.`,
    remedies: (job) => [...barInstead(job), { say: 'Or set the keyways farther apart.' }],
  },
  {
    id: 'bushing-fills-bore',
    states: 'the bushing fills the bore, so that the slot comes out in the middle',
    source: 'judgement: 0.1 mm of play puts the slot 0.05 mm off, with the slot’s own play',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    measured: ({ bushing, section }) => section.bore.upper - bushing.outside.lower,
    limit: () => 0.1,
    reason: ({ measured, limit }) =>
      `The bushing may have ${measured} of play in the bore; ${limit} keeps the slot in the middle.`,
    remedies: () => [{ say: 'Measure the bore, give bore.measured, and turn the bushing to it.' }],
  },
  {
    id: 'broach-keeps-middle',
    states: 'what bushing and slot let the broach stand aside is within the key’s play',
    source: 'half the play of bushing and slot, against the offset that uses up the key’s play; all at mid-tolerance',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    // A key with no play is fitted by hand.
    applies: ({ keyLoads }) => (keyLoads?.offsetWithin ?? 0) > 0,
    measured: ({ bushing, section, broach }) =>
      (middle(section.bore) -
        middle(bushing.outside) +
        middle(bushing.slotWidth) -
        Math.max(broach.bodyWidth, broach.toothWidth)) /
      2,
    limit: ({ keyLoads }) => keyLoads?.offsetWithin,
    reason: ({ measured, limit }) =>
      `The broach may stand ${measured} out of the middle; ${limit} uses up the key’s play.`,
    remedies: ({ spec }) => [
      {
        say:
          spec.bore.measured === undefined
            ? 'Measure the bore, give bore.measured, and turn the bushing to it; or fit the key by hand.'
            : 'Mill the bushing’s slot closer to the broach; or fit the key by hand.',
      },
    ],
  },
  {
    id: 'first-tooth-enters',
    states: 'the first tooth passes the uncut bore',
    source: 'geometry at the tooth’s corners, smallest bore',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: (job) => heightX(job, job.broach.firstTooth),
    limit: ({ section, broach }) => mouthX(section.bore.lower / 2, broach.toothWidth / 2),
    reason: ({ measured, limit }) =>
      `The first tooth stands at ${measured} from the axis; the uncut bore passes ${limit}.`,
    remedies: otherBroach,
  },
  {
    id: 'pilot-enters',
    states: 'the pilot passes the uncut bore',
    source: 'geometry at the body’s corners, smallest bore',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: (job) => heightX(job, job.broach.pilot),
    limit: ({ section, broach }) =>
      mouthX(
        section.bore.lower / 2,
        Math.min(section.bore.lower / 2, Math.max(broach.bodyWidth, broach.toothWidth) / 2),
      ),
    reason: ({ measured, limit }) => `The pilot stands at ${measured} from the axis; the uncut bore passes ${limit}.`,
    remedies: otherBroach,
  },
  {
    id: 'body-clears-bore',
    states: 'the broach’s wide body clears the bore on the last shim',
    source: 'geometry at the body’s corners: shoulder and pilot never meet the bore',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: ({ broach }) => broach.bodyWidth > broach.toothWidth + 1e-9,
    measured: (job) =>
      job.broach.shoulder === undefined
        ? undefined
        : heightX(job, Math.max(job.broach.shoulder, job.broach.pilot), allShims(job)),
    limit: ({ section, broach }) => mouthX(section.bore.lower / 2, broach.bodyWidth / 2),
    reason: ({ measured, limit }) =>
      `On the last shim the wide body stands at ${measured} from the axis; the bore passes ${limit}.`,
    untold: 'The body is wider than the teeth, and its height (shoulder) is not told: measure it.',
    remedies: otherBroach,
  },
  {
    id: 'broach-cuts-width',
    states: 'the broach cuts the slot no wider than it may be',
    source: 'the slot’s width limits',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    measured: ({ broach }) => broach.toothWidth,
    limit: ({ section }) => section.widthLimits.upper,
    reason: ({ measured, limit }) => `The teeth are ${measured} wide; the slot may be ${limit}.`,
    remedies: otherBroach,
  },
  {
    id: 'broach-not-narrow',
    states: 'the broach cuts the slot wide enough',
    source: 'the slot’s width limits',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    measured: ({ broach }) => broach.toothWidth,
    limit: ({ section }) => section.widthLimits.lower,
    reason: ({ measured, limit }) => `The teeth are ${measured} wide; the slot must be ${limit}.`,
    remedies: otherBroach,
  },
  {
    id: 'broach-is-not-for-a-wider-key',
    states: 'the broach is for this key, not a wider one',
    source: 'judgement: 0.03 mm (.0012 in) over the widest slot',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ broach }) => broach.toothWidth,
    limit: ({ section }) => section.widthLimits.upper + 0.03,
    reason: ({ measured, limit }) => `The teeth are ${measured} wide; over ${limit} the key has no hold in the slot.`,
    remedies: otherBroach,
  },
  {
    id: 'broach-is-not-for-a-narrower-key',
    states: 'the broach is for this key, not a narrower one',
    source: 'judgement: 0.03 mm (.0012 in) under the narrowest slot',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ broach }) => broach.toothWidth,
    limit: ({ section }) => section.widthLimits.lower - 0.03,
    reason: ({ measured, limit }) => `The teeth are ${measured} wide; under ${limit} no key goes in.`,
    remedies: otherBroach,
  },
  {
    id: 'teeth-in-cut',
    states: 'two teeth are always in the cut',
    source: 'handbook practice: with fewer the broach dives',
    binding: 'must',
    sense: 'at least',
    unit: 'count',
    measured: ({ bushing }) => bushing.teethInCut.least,
    limit: () => 2,
    reason: ({ measured, limit }, job) =>
      `${measured === '0' ? 'At times no tooth is' : measured === '1' ? 'At times only 1 tooth is' : `At the least ${measured} teeth are`} in the cut in a bore ${length(job, job.spec.bore.length)} long; ${limit} keep the broach level.`,
    remedies: (job) => [
      {
        say: `Stack ${Math.ceil((2 * job.bushing.toothPitch) / job.spec.bore.length - 1e-9)} like hubs, or a ring of the same bore, clamp and broach them together.`,
      },
      ...otherBroach(job),
    ],
  },
  {
    id: 'chip-fits-gullet',
    states: 'the chip of the whole bore fits in a gullet',
    source: 'judgement: a chip fills five times its own metal',
    binding: 'must',
    sense: 'at most',
    unit: 'mm2',
    measured: ({ bushing, spec }) => gulletNeeded(bushing.bite, spec.bore.length),
    limit: ({ broach }) => broach.gulletArea,
    reason: ({ measured, limit }) =>
      `The chip wants ${measured}; a gullet holds ${limit}. A packed gullet bursts the broach.`,
    untold:
      'The gullet’s area is not told: a packed gullet bursts the broach. Measure it: give tooling.press.broach.gulletArea.',
    remedies: (job) => [
      ...(job.broach.gulletArea === undefined
        ? []
        : [
            {
              say: `A bore up to ${length(job, job.broach.gulletArea / gulletNeeded(job.bushing.bite, 1))} long is what this broach clears.`,
            },
          ]),
      ...otherBroach(job),
    ],
  },
  {
    id: 'broach-runs-through',
    states: 'the broach can run right through',
    source: 'a push broach falls out at the far end',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    measured: ({ spec }) => (spec.bore.blind ? 1 : 0),
    limit: () => 0,
    reason: (_said, _job, broken) =>
      broken
        ? 'The bore is blind: a push broach cannot run through it.'
        : 'The bore runs through, and so can the broach.',
    remedies: (job) => [...barInstead(job), { say: 'Or bore the hub right through.' }],
  },
]

/** Where a press is asked for and no broach has been measured. */
export const broachRule: Rule = {
  id: 'broach-measured',
  states: 'the broach has been measured',
  source: 'the bushing and shims are made to one broach',
  binding: 'must',
  sense: 'at least',
  unit: 'count',
  measured: ({ spec }) => (spec.tooling.press?.broach ? 1 : undefined),
  limit: () => 1,
  reason: () => 'The broach has been measured.',
  untold:
    'No broach has been measured, so bushing and shims cannot be worked out: measure it over its back with a micrometer and give tooling.press.broach.',
}

/** Where a bar is asked for and nothing on hand makes one. */
export const noBarRule: Rule = {
  id: 'bar-on-hand',
  states: 'a bar can be made from what is on hand',
  source: 'the shop’s lists',
  binding: 'must',
  sense: 'at least',
  unit: 'count',
  measured: ({ bar }) => (bar ? 1 : 0),
  limit: () => 1,
  reason: (_said, _job, broken) =>
    broken ? 'No blank, screw and bar on hand go together for this bore.' : 'Blank, screw and bar are on hand.',
  remedies: (job) => [
    ...leaveBarOpen(job),
    ...(job.spec.tooling.bar ? buying({ ...job, asked: job.spec.tooling.bar }) : []),
    { say: 'Use the usual lists instead of the shop file.', set: { shop: null } },
    { say: 'Buy a smaller blank and set screw, or use a push broach, or have it spark-eroded.' },
  ],
}
