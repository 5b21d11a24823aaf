/** Rules of force, stiffness and strength. Every force here is good to about a third either way. */
import { poundForce } from '../standards/inch.ts'
import { roomBehind } from '../plan/behind.ts'
import { narrowerNose } from './bar-ways.ts'
import { driveRules } from './drive.ts'
import { also, anotherBar, eased } from './eased.ts'
import type { CutJob, LoadedBar, LoadedPress } from './loaded.ts'
import { pressRoomRules } from './press-room.ts'
import type { Proposal, Rule, Worked } from './rule.ts'
import { barInstead, length, upTo, written } from './ways.ts'

export { keyRules } from './key.ts'

const path = 'tooling.bar'

const lessRake = (job: CutJob): readonly Proposal[] =>
  [10, 8, 5, 3, 0]
    .filter((rake) => rake < (job.bit?.rake ?? job.groundBar?.rake ?? 0))
    .map((rake) => ({ say: `Grind ${rake}° of rake.`, set: { [`${path}.rake`]: rake }, kind: 'rake' }))

const pull: Proposal = { say: 'Cut on the pull stroke.', set: { [`${path}.stroke`]: 'pull' } }

const roomFor = ({ section, spec, infeed }: CutJob): number => roomBehind(section, spec.units, infeed ?? 0)

const screwUnknown =
  'No source gives this screw’s torque, so what it holds cannot be told: try the bit by hand before each pass.'

/** Of any bar, whichever way it holds its edge. */
export const cutRules: readonly Rule<CutJob>[] = [
  {
    id: 'bar-does-not-hook',
    states: 'the cut does not draw the nose in',
    source: 'stability of bar and machine; judgement: 0.7 of what hooks',
    binding: 'must',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ loads }) => loads.digIn,
    limit: () => 0.7,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? 'The cut pushes the nose off the work: it cannot hook.'
        : `The cut draws itself in at ${measured} of what hooks; ${limit} is the most.`,
    remedies: (job) => [...lessRake(job), pull, { say: 'Or take a stiffer bar, or let the nose stand out less.' }],
  },
  {
    id: 'bar-does-not-draw-in',
    states: 'the cut draws the nose in very little',
    source: 'stability of bar and machine; judgement: 0.3 of what hooks',
    binding: 'should',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ loads }) => loads.digIn,
    limit: () => 0.3,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? 'The cut pushes the nose off the work: it does not draw itself in.'
        : `The cut draws itself in at ${measured} of what hooks; over ${limit}, go gently.`,
    remedies: (job) => [...lessRake(job), pull],
  },
  eased(
    {
      id: 'bar-bears-at-holder',
      states: 'the bar bears the stress at the holder',
      source: 'bending over the band of thrust, dull edge; two thirds of the yield of the steel chosen',
      binding: 'must',
      sense: 'at most',
      unit: 'N/mm2',
      measured: ({ loads }) => loads.rootStress,
      limit: ({ loads }) => loads.barYield / 1.5,
      reason: ({ measured, limit }) => `The bar bears ${measured} at the holder; ${limit} is the most.`,
    },
    anotherBar,
    also('Take a smaller bit or a stiffer bar, or a push broach.'),
  ),
  eased(
    {
      id: 'nose-bears',
      states: 'the nose bears the cut at its root',
      source: 'judgement: 800 N/mm² for high-speed steel with its notch (rupture 3500 to 4500, from memory)',
      binding: 'must',
      sense: 'at most',
      unit: 'N/mm2',
      measured: ({ loads }) => loads.noseStress,
      limit: () => 800,
      reason: ({ measured, limit }) => `The nose’s root bears ${measured}; ${limit} is the most.`,
    },
    anotherBar,
    also('Grind the nose shorter or wider, or take a smaller infeed.'),
  ),
  eased(
    {
      id: 'lag-in-limits',
      states: 'the slot does not lag the dial by more than a third of its depth limits',
      source: 'bar and machine give, upper end of the band; judgement: a third',
      binding: 'should',
      sense: 'at most',
      unit: 'mm',
      // A slit has no depth to hold: the nose goes on until it is through.
      applies: ({ section }) => section.slit === undefined,
      measured: ({ loads }) => loads.lag.most,
      // A third of nothing cannot be held: exact sizes are given a hundredth.
      limit: ({ section }) => {
        const { lower, upper } = section.floorLimits ?? section.acrossLimits
        return Math.max((upper - lower) / 3, 0.01)
      },
      reason: ({ measured, limit }, _job, broken) =>
        `The slot may stand ${measured} behind the dial; its depth limits leave ${limit} for that.${broken ? ' Measure, and add what is missing.' : ''}`,
    },
    anotherBar,
    narrowerNose,
    also('Go by what you measure, not by the dial; take spring passes.'),
  ),
  {
    id: 'lag-is-not-the-depth',
    states: 'the bar cuts more than it gives way',
    source: 'judgement: half of the infeed; a bar that gives more only rubs',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: ({ section }) => section.infeed > 0,
    measured: ({ loads }) => loads.lag.most,
    limit: ({ section }) => section.infeed / 2,
    reason: ({ measured, limit }) =>
      `The slot may stand ${measured} behind the dial; over ${limit}, half of the whole infeed, the bar bends instead of cutting.`,
    remedies: (job) => [
      ...anotherBar(job),
      { say: 'Or guide the bar at both ends, cut from both sides, or use a push broach.' },
    ],
  },
  eased(
    {
      id: 'withdrawn-over-lag',
      states: 'the return stroke clears the slot’s floor',
      source: 'lag and two chips: at the end of the cut the bar springs forward',
      binding: 'should',
      sense: 'at least',
      unit: 'mm',
      measured: ({ asked }) => asked.clearance.withdrawn,
      limit: ({ loads, infeed }) => loads.lag.most + 2 * (infeed ?? 0),
      reason: ({ measured, limit }) => `The bar is drawn back ${measured} for the return; ${limit} clears the edge.`,
    },
    (job) => {
      const enough = upTo(job, job.loads.lag.most + 2 * (job.infeed ?? 0), 0.05, 0.002)
      return [
        {
          say: `Draw back ${length(job, enough)} for the return.`,
          set: { [`${path}.clearance.withdrawn`]: written(job, enough) },
        },
      ]
    },
  ),
  eased(
    {
      id: 'room-behind-bar',
      states: 'chips and a bar a little out of line find room behind the bar',
      source: 'what the bar may lie out of line, and six chips: judgement',
      binding: 'should',
      sense: 'at least',
      unit: 'mm',
      measured: ({ asked }) => asked.clearance.back,
      limit: (job) => roomFor(job),
      reason: ({ measured, limit }) =>
        `Behind the bar ${measured} is kept clear; ${limit} takes its chips and what it may lie out of line.`,
    },
    (job) => {
      const enough = upTo(job, roomFor(job), 0.05, 0.002)
      return [
        {
          say: `Keep ${length(job, enough)} clear behind the bar.`,
          set: { [`${path}.clearance.back`]: written(job, enough) },
        },
      ]
    },
    also('Brush the chips out between passes.'),
  ),
  ...driveRules,
]

/** Of a bar that holds a bit. */
export const forceRules: readonly Rule<LoadedBar>[] = [
  ...cutRules,
  eased(
    {
      id: 'bar-bears-at-hole',
      states: 'the bar bears the stress at its cross hole',
      source: 'three times nominal on the net section, dull edge; yield of the steel chosen, from memory',
      binding: 'must',
      sense: 'at most',
      unit: 'N/mm2',
      measured: ({ loads }) => loads.holeStress,
      limit: ({ loads }) => loads.barYield,
      reason: ({ measured, limit }, job) =>
        `The cross hole’s mouth bears ${measured}; ${job.loads.barSteel} yields at ${limit}.`,
    },
    anotherBar,
    also('Take a smaller bit or a stiffer bar, or a push broach.'),
  ),
  eased(
    {
      id: 'bit-not-pushed-in',
      states: 'the screw holds the bit against the thrust',
      source: 'friction 0.12 on the screw’s force; thrust of a dull edge',
      binding: 'must',
      sense: 'at least',
      unit: 'N',
      measured: ({ loads }) => loads.bitHeld,
      limit: ({ loads }) => loads.thrustMost,
      reason: ({ measured, limit }) => `The screw holds the bit with ${measured}; the thrust may reach ${limit}.`,
      untold: screwUnknown,
    },
    anotherBar,
    also('Put a stop screw behind the bit’s tail.'),
  ),
  eased(
    {
      id: 'bit-well-held',
      states: 'the screw holds the bit twice over',
      source: 'judgement: twice the thrust of a dull edge',
      binding: 'should',
      sense: 'at least',
      unit: 'N',
      measured: ({ loads }) => loads.bitHeld,
      limit: ({ loads }) => 2 * loads.thrustMost,
      reason: ({ measured, limit }) => `The screw holds the bit with ${measured}; twice the thrust is ${limit}.`,
      untold: screwUnknown,
    },
    anotherBar,
    also('Put a stop screw behind the bit’s tail, and check the projection often.'),
  ),
  eased<LoadedBar>(
    {
      id: 'bit-does-not-rock',
      states: 'the screw keeps the bit from rocking',
      source: 'moments about the bar’s axis, dull edge',
      binding: 'must',
      sense: 'at least',
      unit: 'N',
      // Pushed, the bit lies on the wall of its hole; a screw in the wall leaves it the hole’s play, which the rake has been given.
      applies: ({ bar, asked }) => bar.form === 'end screw' || asked.stroke === 'pull',
      measured: ({ bar, loads }) => (bar.form === 'end screw' ? loads.screwForce : loads.bitHeld),
      limit: ({ loads }) => loads.screwForceLeast,
      reason: ({ measured, limit }) => `The screw holds with ${measured}; ${limit} keeps the bit from rocking.`,
      untold: screwUnknown,
    },
    anotherBar,
    also('Take the longest bit that the bar hides.'),
  ),
]

/** A force up to two figures, as presses are rated. */
const strength = (job: Worked, newtons: number): string => {
  const [value, unit] = job.spec.units === 'mm' ? [newtons / 1000, 'kN'] : [newtons / poundForce, 'lbf']
  const step = 10 ** (Math.floor(Math.log10(value)) - 1)
  return `${Math.round(Math.ceil(value / step - 1e-9) * step * 100) / 100} ${unit}`
}

export const pressForceRules: readonly Rule<LoadedPress>[] = [
  {
    id: 'press-strong-enough',
    states: 'the press gives the force',
    source: '70 % of a rating (Machinery’s Handbook); a lever by its own arithmetic',
    binding: 'must',
    sense: 'at most',
    unit: 'N',
    measured: ({ pressLoads }) => pressLoads.force,
    limit: ({ pressLoads }) => pressLoads.capacity,
    reason: ({ measured, limit }, { spec }) =>
      `The broach asks ${measured}; the press gives ${limit}${spec.tooling.press?.force === undefined ? '' : ', 70 % of what it is rated for'}.`,
    untold: 'What the press gives is not told: give tooling.press.force, or its lever.',
    remedies: (job) => [
      ...barInstead(job),
      ...(job.pressLoads.force > 0
        ? [
            {
              say: job.pressLoads.capacity
                ? `Or take a press rated for ${strength(job, job.pressLoads.force / 0.7)}${
                    job.pressLoads.hubMost
                      ? `, or cut it as hubs of up to ${length(job, job.pressLoads.hubMost)}, one by one`
                      : ''
                  }.`
                : `Take a press rated for ${strength(job, job.pressLoads.force / 0.7)}, and enter what it gives.`,
            },
          ]
        : []),
    ],
  },
  {
    id: 'pull-possible',
    states: 'an arm can pull the lever',
    source: 'from memory: 500 N is a short peak',
    binding: 'must',
    sense: 'at most',
    unit: 'N',
    applies: ({ spec }) => spec.tooling.press?.lever !== undefined,
    measured: ({ pressLoads }) => pressLoads.pull,
    limit: () => 500,
    reason: ({ measured, limit }) => `The lever is pulled with ${measured}; ${limit} is the most.`,
    remedies: (job) => [...barInstead(job), { say: 'Or take a longer lever, or a geared press.' }],
  },
  {
    id: 'pull-easy',
    states: 'an arm can keep pulling the lever',
    source: 'from memory: 250 N sustained',
    binding: 'should',
    sense: 'at most',
    unit: 'N',
    applies: ({ spec }) => spec.tooling.press?.lever !== undefined,
    measured: ({ pressLoads }) => pressLoads.pull,
    limit: () => 250,
    reason: ({ measured, limit }) => `The lever is pulled with ${measured}; ${limit} can be kept up.`,
    remedies: () => [{ say: 'Take a longer lever, or have help at hand: there is no resting between teeth.' }],
  },
  {
    id: 'broach-does-not-buckle',
    states: 'the broach does not buckle',
    source: 'Euler or Johnson along the stroke, ends pinned; twice the length where the ram wobbles',
    binding: 'must',
    sense: 'at least',
    unit: 'ratio',
    measured: ({ pressLoads }) => pressLoads.columnMargin,
    limit: () => 1,
    reason: ({ measured, limit }) =>
      `The broach bears ${measured} times the force before it buckles; ${limit} is the least.`,
    untold:
      'Whether the broach buckles cannot be told: give its root height and yield (tooling.press.broach.rootHeight, yield).',
    remedies: (job) => [...barInstead(job), { say: 'Or a shorter broach, a guided ram, or a shorter hub.' }],
  },
  {
    id: 'broach-stands-well',
    states: 'the broach stands the push twice over',
    source: 'judgement: twice',
    binding: 'should',
    sense: 'at least',
    unit: 'ratio',
    applies: ({ pressLoads }) => pressLoads.columnMargin !== undefined,
    measured: ({ pressLoads }) => pressLoads.columnMargin,
    limit: () => 2,
    reason: ({ measured, limit }) =>
      `The broach bears ${measured} times the force before it buckles; under ${limit}, keep it dead square and stand clear.`,
    remedies: () => [{ say: 'Guide the ram, or take a shorter broach.' }],
  },
  ...pressRoomRules,
]
