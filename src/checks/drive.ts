/** Rules of what drives the bar and what holds spindle and work. */
import { diameterForStiffness } from '../mechanics/machine.ts'
import { chuckHolds, jawsHoldUpright, tippingMoment, viseHolds } from '../mechanics/work-holding.ts'
import { also, anotherBar, eased } from './eased.ts'
import type { CutJob } from './loaded.ts'
import { inBore, type Rule } from './rule.ts'
import { length } from './ways.ts'

const path = 'tooling.bar'

/** Stroke that the bar must have: the bore, and the overtravel at either end. */
const strokeOf = (job: CutJob): number => job.spec.bore.length + 2 * inBore(job).overtravel

const held = { gear: 'a gear', lock: 'a lock or bolt', belt: 'a belt', hand: 'a hand' } as const

/** What the jaws hold along the bore; undefined where no jaws are told of. */
const grip = ({ asked }: CutJob): number | undefined => {
  const { held: by, jaws } = asked.work ?? {}
  return jaws === undefined ? undefined : by === 'chuck' ? chuckHolds(jaws) : viseHolds(jaws)
}

/** The clamp at the edge away from the cut, about the edge of the support, N mm. */
const clampMoment = ({ asked, spec }: CutJob): number =>
  (asked.work?.clamp ?? 0) * ((asked.work?.support ?? 0) + (spec.hub.outside ?? spec.bore.diameter.nominal) / 2)

/** What the jaws hold the work upright with, N mm; undefined where they are not told of. */
const upright = ({ asked, spec }: CutJob): number | undefined => {
  const { held: by, jaws } = asked.work ?? {}
  const across = spec.hub.outside ?? spec.bore.diameter.nominal
  return jaws === undefined || by === undefined || by === 'strap' ? undefined : jawsHoldUpright(jaws, across, by)
}

/** Least bar that the thrust bends by no more than a third of the depth limits. */
const stiffEnough = (job: CutJob): number => {
  const { loads, section } = job
  return diameterForStiffness(
    loads.thrust.most,
    inBore(job).overhang,
    Math.max((section.acrossLimits.upper - section.acrossLimits.lower) / 3, 0.01),
  )
}

export const driveRules: readonly Rule<CutJob>[] = [
  eased(
    {
      id: 'machine-bears-push',
      states: 'the machine may push as hard as the cut asks',
      source:
        'judgement: the largest drill that a bench machine is sold to push asks 1100 N, a knee mill 2000; a rack tooth by Lewis’s formula; dull edge',
      binding: 'must',
      sense: 'at most',
      unit: 'N',
      measured: ({ loads }) => loads.cuttingForceMost,
      limit: ({ loads }) => loads.pushMost,
      reason: ({ measured, limit }, { asked }) =>
        `With a dull edge the cut asks ${measured}; ${asked.thrust === undefined && !asked.rack ? `${limit} is the most of a bench machine` : `the machine gives ${limit}`}.`,
    },
    anotherBar,
    also('Grind the nose narrower and cut in lanes, or tell what the machine may push (tooling.bar.thrust).'),
  ),
  eased(
    {
      id: 'handle-pull-easy',
      states: 'an arm can keep pulling the handle',
      source: 'from memory: 250 N sustained; four fifths of the pull arrive, judgement',
      binding: 'should',
      sense: 'at most',
      unit: 'N',
      applies: ({ asked }) => asked.handle !== undefined,
      measured: ({ loads }) => loads.feedForceAtHandle,
      limit: () => 250,
      reason: ({ measured, limit }) => `The handle is pulled with ${measured}; ${limit} can be kept up.`,
    },
    also('Take a longer handle, or a narrower nose.'),
  ),
  {
    id: 'machine-strokes-far-enough',
    states: 'the machine strokes as far as the cut is long',
    source: 'geometry: the bore, and the overtravel at either end',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ asked }) => asked.travel !== undefined,
    measured: ({ asked }) => asked.travel,
    limit: strokeOf,
    reason: ({ measured, limit }) => `The machine strokes ${measured}; the cut takes ${limit}.`,
    remedies: () => [{ say: 'Take a machine that strokes farther, the lathe’s carriage for one, or a push broach.' }],
  },
  {
    id: 'pull-at-nose-makes-sense',
    states: 'the pull at the nose tells how the machine gives',
    source: 'springs in a row: bar and machine together give more than the bar alone',
    binding: 'must',
    sense: 'at least',
    unit: 'count',
    applies: ({ asked }) => asked.pull !== undefined,
    measured: ({ loads }) => (loads.machineGiveKnown ? 1 : undefined),
    limit: () => 1,
    reason: () => 'The pull at the nose gives the machine’s own stiffness.',
    untold:
      'The pull at the nose is stiffer than the bar alone can be, so how the machine gives cannot be told: pull again with the bar as it is held, and give tooling.bar.pull anew.',
  },
  {
    id: 'spindle-held',
    states: 'the spindle holds twice the twist of the cut',
    source: 'judgement: a gear or a lock does, a belt or a hand does not; a strip of half the nose, dull edge',
    binding: 'must',
    sense: 'at least',
    unit: 'N mm',
    measured: ({ asked }) => (asked.hold === 'belt' || asked.hold === 'hand' ? 0 : Infinity),
    limit: ({ loads }) => 2 * loads.twist,
    reason: ({ limit }, job, broken) => {
      const { asked, loads } = job
      return broken
        ? `In a side lane the cut may twist the bar: ${limit} is twice that, and ${held[asked.hold ?? 'lock']} does not hold it. A slip of half a degree sets the nose ${length(job, loads.slip)} off.`
        : loads.twist > 0
          ? `In a side lane the cut may twist the bar: ${limit} is twice that, and ${held[asked.hold ?? 'lock']} holds it.`
          : 'The nose cuts both corners at once: nothing twists the bar.'
    },
    remedies: () => [
      { say: 'Lock the spindle, or bolt it, before each pass.', set: { [`${path}.hold`]: 'lock' } },
      { say: 'Or put it into its lowest gear and wedge the pulley.' },
    ],
  },
  eased(
    {
      id: 'jaws-hold-work',
      states: 'the jaws alone hold twice the cut',
      source: 'friction 0.12 on each jaw, dull edge: judgement',
      binding: 'must',
      sense: 'at least',
      unit: 'N',
      // Work that stands on something is not held by its jaws against a push.
      applies: (job) =>
        grip(job) !== undefined && (job.asked.stroke === 'pull' || job.asked.work?.support === undefined),
      measured: grip,
      limit: ({ loads }) => 2 * loads.cuttingForceMost,
      reason: ({ measured, limit }) => `The jaws hold ${measured} along the bore; twice the cut is ${limit}.`,
    },
    also('Stand the work on parallels or a ring so that the push goes into the table, or put a stop behind it.'),
  ),
  eased(
    {
      id: 'pulled-work-stopped',
      states: 'a stop or strap takes twice the pull',
      source: 'judgement: twice the cut of a dull edge; a pull cut draws the work out of its jaws',
      binding: 'must',
      sense: 'at least',
      unit: 'N',
      applies: ({ asked }) => asked.stroke === 'pull',
      measured: ({ asked }) => asked.work?.stop,
      limit: ({ loads }) => 2 * loads.cuttingForceMost,
      reason: ({ measured, limit }) => `The stop takes ${measured}; twice the cut is ${limit}.`,
      untold:
        'What keeps the work from being drawn out is not told: a pull cut wants a stop or a strap good for twice the cut; give tooling.bar.work.stop.',
    },
    also('Put a stronger stop or strap before the work.'),
  ),
  {
    id: 'work-does-not-tip',
    states: 'the work does not tip off what it stands on',
    source: 'moments about the support’s edge; twice over: judgement',
    binding: 'must',
    sense: 'at least',
    unit: 'N mm',
    applies: ({ asked }) => asked.stroke === 'push' && asked.work?.support !== undefined,
    measured: clampMoment,
    limit: ({ loads, section, asked }) =>
      2 * tippingMoment(loads.cuttingForceMost, section.floor, asked.work?.support ?? 0),
    reason: ({ measured, limit }, job) => {
      const { asked, section } = job
      return (asked.work?.support ?? 0) >= section.floor
        ? 'The support reaches under the line of cut: nothing tips the work.'
        : `The support ends ${length(job, section.floor - (asked.work?.support ?? 0))} short of the line of cut; the clamp holds ${measured}, and twice what tips it is ${limit}.`
    },
    remedies: (job) => [
      {
        say: `Stand the work on a ring that reaches ${length(job, job.section.floor)} from the axis under the keyway.`,
      },
    ],
  },
  eased(
    {
      id: 'thrust-does-not-tip-work',
      states: 'the thrust does not tip the work out of its jaws',
      source: 'moments: thrust of a dull edge at the top of the work, friction 0.12 on the jaws; twice over: judgement',
      binding: 'must',
      sense: 'at least',
      unit: 'N mm',
      applies: (job) => job.asked.work?.above !== undefined && upright(job) !== undefined,
      measured: upright,
      limit: ({ loads, asked }) => 2 * loads.thrustMost * (asked.work?.above ?? 0),
      reason: ({ measured, limit }, job) =>
        `The thrust pushes ${length(job, job.asked.work?.above ?? 0)} above the jaws: they hold ${measured} upright, and twice what tips the work is ${limit}.`,
    },
    also('Take the work deeper into the jaws, or put a strap over it.'),
  ),
  {
    id: 'bar-stiff-enough',
    states: 'the bar is thick enough for its length',
    source: 'cantilever: the thrust bends it by a third of the depth limits or less; judgement: a third',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    measured: (job) => inBore(job).diameter.nominal,
    limit: stiffEnough,
    reason: ({ measured, limit }, job, broken) =>
      `The bar is ${measured} thick; ${limit} keeps the depth without measuring.${
        broken
          ? stiffEnough(job) > inBore(job).diameterMax
            ? ' No bar that passes this bore is as stiff.'
            : ' A thicker one passes this bore.'
          : ''
      }`,
    remedies: (job) => [
      ...anotherBar(job),
      {
        say: 'Grind the nose narrower, take less in a pass, guide the bar at its far end, or use a push broach; or go by what you measure.',
      },
    ],
  },
]
