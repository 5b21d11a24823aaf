/** Rules of force, stiffness and strength. Every force here is good to about a third either way. */
import type { KeyLoads, Loads, PressLoads } from '../mechanics/loads.ts'
import type { BarJob, PressJob, Remedy, Rule, Worked } from './rule.ts'

export interface LoadedBar extends BarJob {
  readonly loads: Loads
}

export interface LoadedPress extends PressJob {
  readonly pressLoads: PressLoads
}

export interface LoadedKey extends Worked {
  readonly keyLoads: KeyLoads
}

const path = 'tooling.bar'

const lighterCut = (job: LoadedBar): readonly Remedy[] => {
  const now = job.plan?.infeedPerPass ?? 0.02
  return [0.75, 0.5, 0.35, 0.25].map((part) => {
    const infeed = Math.round(now * part * 1e4) / 1e4
    const said = job.spec.units === 'mm' ? `${infeed} mm` : `${(infeed / 25.4).toFixed(5).replace(/0+$/, '')} in`
    return { say: `Take ${said} a pass.`, set: { [`${path}.infeed`]: `${infeed} mm` } }
  })
}

const lessRake = (job: LoadedBar): readonly Remedy[] =>
  [10, 8, 5, 3, 0]
    .filter((rake) => rake < job.bit.rake)
    .map((rake) => ({ say: `Grind ${rake}° of rake.`, set: { [`${path}.rake`]: rake } }))

const pull: Remedy = { say: 'Cut on the pull stroke.', set: { [`${path}.stroke`]: 'pull' } }

const screwUnknown =
  'No source gives this screw’s torque, so what it holds cannot be told: try the bit by hand before each pass.'

export const forceRules: readonly Rule<LoadedBar>[] = [
  {
    id: 'bar-does-not-hook',
    states: 'the cut does not draw the nose in',
    source: 'stability of bar and machine; judgement: 0.7 of what hooks',
    binding: 'must',
    sense: 'at most',
    unit: 'ratio',
    measured: ({ loads }) => loads.digIn,
    limit: () => 0.7,
    reason: ({ measured, limit }) => `The cut draws itself in at ${measured} of what hooks; ${limit} is the most.`,
    remedies: (job) => [...lessRake(job), pull],
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
    reason: ({ measured, limit }) => `The cut draws itself in at ${measured} of what hooks; over ${limit}, go gently.`,
    remedies: (job) => [...lessRake(job), pull],
  },
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
    remedies: (job) => [...lighterCut(job), { say: 'Take a smaller bit or a stiffer bar, or a push broach.' }],
  },
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
    remedies: (job) => [...lighterCut(job), { say: 'Take a smaller bit or a stiffer bar, or a push broach.' }],
  },
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
    remedies: (job) => lighterCut(job),
  },
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
    remedies: (job) => [...lighterCut(job), { say: 'Put a stop screw behind the bit’s tail.' }],
  },
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
    remedies: (job) => [
      ...lighterCut(job),
      { say: 'Put a stop screw behind the bit’s tail, and check the projection often.' },
    ],
  },
  {
    id: 'bit-does-not-rock',
    states: 'the screw keeps the bit from rocking',
    source: 'moments about the bar’s axis, dull edge',
    binding: 'must',
    sense: 'at least',
    unit: 'N',
    measured: ({ loads }) => loads.screwForce,
    limit: ({ loads }) => loads.screwForceLeast,
    reason: ({ measured, limit }) => `The screw presses with ${measured}; ${limit} keeps the bit from rocking.`,
    untold: screwUnknown,
    remedies: (job) => [...lighterCut(job), { say: 'Take the longest bit that the bar hides.' }],
  },
  {
    id: 'lag-in-limits',
    states: 'the slot does not lag the dial by more than a third of its depth limits',
    source: 'bar and machine give, upper end of the band; judgement: a third',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    measured: ({ loads }) => loads.lag.most,
    limit: ({ section }) => Math.max((section.acrossLimits.upper - section.acrossLimits.lower) / 3, 0.01),
    reason: ({ measured, limit }) =>
      `The slot may stand ${measured} behind the dial; a third of its limits is ${limit}. Measure, and add what is missing.`,
    remedies: (job) => [...lighterCut(job), { say: 'Go by what you measure, not by the dial; take spring passes.' }],
  },
  {
    id: 'withdrawn-over-lag',
    states: 'the return stroke clears the slot’s floor',
    source: 'lag and two chips: at the end of the cut the bar springs forward',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    measured: ({ asked }) => asked.clearance.withdrawn,
    limit: ({ loads, plan }) => loads.lag.most + 2 * (plan?.infeedPerPass ?? 0),
    reason: ({ measured, limit }) => `The bar is drawn back ${measured} for the return; ${limit} clears the edge.`,
    remedies: (job) => {
      const enough = Math.ceil((job.loads.lag.most + 2 * (job.plan?.infeedPerPass ?? 0)) * 20) / 20
      return [
        { say: 'Draw back farther for the return.', set: { [`${path}.clearance.withdrawn`]: `${enough} mm` } },
        ...lighterCut(job),
      ]
    },
  },
]

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
    reason: ({ measured, limit }) => `The broach asks ${measured}; the press gives ${limit}.`,
    untold: 'What the press gives is not told: give tooling.press.force, or its lever.',
    remedies: () => [
      { say: 'Take a stronger press, or broach a shorter hub.' },
      { say: 'Cut it with the bar instead.', set: { 'tooling.press': null, 'tooling.bar.machine': 'mill' } },
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
    remedies: () => [{ say: 'A longer lever, a geared press, or the bar.' }],
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
    remedies: () => [{ say: 'A longer lever, or a pause between teeth is not possible: have help at hand.' }],
  },
  {
    id: 'broach-does-not-buckle',
    states: 'the broach does not buckle',
    source: 'Euler or Johnson, ends pinned, along the stroke',
    binding: 'must',
    sense: 'at least',
    unit: 'ratio',
    measured: ({ pressLoads }) => pressLoads.columnMargin,
    limit: () => 1,
    reason: ({ measured, limit }) =>
      `The broach bears ${measured} times the force before it buckles; ${limit} is the least.`,
    untold:
      'Whether the broach buckles cannot be told: give its root height and yield (tooling.press.broach.rootHeight, yield).',
    remedies: () => [
      { say: 'A shorter broach, a guided ram, or a shorter hub.' },
      { say: 'Cut it with the bar instead.', set: { 'tooling.press': null, 'tooling.bar.machine': 'mill' } },
    ],
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
    remedies: () => [{ say: 'A guided ram, or a shorter broach.' }],
  },
]

const carries = ({ keyLoads }: LoadedKey): number =>
  Math.min(keyLoads.torqueShear, keyLoads.torqueBearingHub, keyLoads.torqueBearingShaft) / 1000

export const keyRules: readonly Rule<LoadedKey>[] = [
  {
    id: 'key-carries-load',
    states: 'the key carries the load',
    source:
      'shear and bearing with true lever arms; key and shaft of 335 N/mm² yield, twofold, where nobody says otherwise',
    binding: 'should',
    sense: 'at least',
    unit: 'N m',
    applies: ({ spec }) => spec.load !== undefined,
    measured: carries,
    limit: ({ spec }) => ((spec.load?.torque ?? 0) * (spec.load?.service ?? 1)) / 1000,
    reason: ({ measured, limit }) => `The key carries ${measured}; the load with its service factor is ${limit}.`,
    remedies: () => [{ say: 'A longer hub, a second key, or a spline.' }],
  },
]
