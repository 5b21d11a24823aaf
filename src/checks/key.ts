/** Rules of the key in its hub: what it carries, and how it fits. */
import type { LoadedKey } from './loaded.ts'
import type { Rule } from './rule.ts'
import { length } from './ways.ts'

const weak = { shear: 'the key shears first', hub: 'the hub’s wall gives first', shaft: 'the shaft’s wall gives first' }

const found = ({ spec }: LoadedKey) => (spec.feature.kind === 'keyway' ? spec.feature.found : undefined)

export const keyRules: readonly Rule<LoadedKey>[] = [
  {
    id: 'key-carries-load',
    states: 'the key carries the load',
    source:
      'shear and bearing with true lever arms, the softer of the two that touch; key and shaft of 335 N/mm² yield where nobody says otherwise, twofold; grey iron a third of its tensile strength',
    binding: 'must',
    sense: 'at least',
    unit: 'N mm',
    applies: ({ spec }) => spec.load !== undefined,
    measured: ({ keyLoads }) => keyLoads.torque,
    limit: ({ spec }) => (spec.load?.torque ?? 0) * (spec.load?.service ?? 1),
    reason: ({ measured, limit }, { keyLoads }) =>
      `The key carries ${measured} (${weak[keyLoads.weakest]}); the load with its service factor is ${limit}.`,
    remedies: () => [
      { say: 'Take a longer hub, a harder key and shaft, a second key, or a spline, with whoever designed the joint.' },
    ],
  },
  {
    id: 'hub-long-for-key',
    states: 'the hub is long enough not to rock on its shaft',
    source: 'judgement: 1.2 to 1.5 shafts',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ spec }) => spec.load !== undefined,
    measured: ({ spec }) => spec.bore.length,
    limit: ({ spec }) => 1.2 * spec.bore.diameter.nominal,
    reason: ({ measured, limit }) => `The hub is ${measured} long; ${limit} keeps it from rocking on the shaft.`,
    remedies: () => [{ say: 'Take a longer hub, or a tight fit on the shaft, with whoever designed the joint.' }],
  },
  {
    id: 'key-bears-length',
    states: 'the key bears over some length',
    source: 'geometry: hub and key, less round ends',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ keyLoads }) => keyLoads.length,
    limit: ({ section }) => section.width / 2,
    reason: ({ measured, limit }) => `The key bears over ${measured}; ${limit}, half its width, is the least.`,
    remedies: () => [
      { say: 'Take a key with square ends.', set: { 'feature.keyway.key.ends': 'square' } },
      { say: 'Or take a longer key.' },
    ],
  },
  {
    id: 'key-clear-hub-down',
    states: 'the key is clear of the floor with the hub down on it',
    source: 'worst corner of across, shaft, key, bore and shaft diameter',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ keyLoads }) => keyLoads.topClearances !== undefined,
    measured: ({ keyLoads }) => keyLoads.topClearances?.hubDown.lower,
    limit: () => 0,
    reason: ({ measured }, _job, broken) =>
      broken
        ? `With the hub down on it the key may stand ${measured.replace('-', '')} proud of its room: the hub then rides on the key, not on the shaft.`
        : `With the hub down on it the key is still ${measured} clear of the floor.`,
    remedies: (job) => [
      { say: 'Let across follow the standard.', set: { 'feature.keyway.across': null, 'feature.keyway.depth': null } },
      { say: `Or lower the key by ${length(job, Math.abs(job.keyLoads.topClearances?.hubDown.lower ?? 0))}.` },
    ],
  },
  {
    id: 'keyway-in-middle',
    states: 'the keyway lies in the middle of the bore',
    source: 'ASME B17.1: no more than .010 in of parallel offset',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: (job) => found(job)?.offset !== undefined,
    measured: (job) => found(job)?.offset,
    limit: ({ keyLoads }) => keyLoads.offsetMost,
    reason: ({ measured, limit }) => `The keyway was found ${measured} out of the middle; ${limit} is the most.`,
    remedies: () => [{ say: 'Cut a new keyway a quarter turn on, centred by its two corners, or bush the bore.' }],
  },
  {
    id: 'keyway-runs-true',
    states: 'the keyway runs along the bore',
    source: 'ASME B17.1: .002 in up to 4 in long, .0005 in an inch to 10 in, .005 in beyond',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: (job) => found(job)?.lead !== undefined,
    measured: (job) => found(job)?.lead,
    limit: ({ keyLoads }) => keyLoads.leadMost,
    reason: ({ measured, limit }) =>
      `The keyway was found ${measured} out of line over the bore; ${limit} is the most.`,
    remedies: () => [{ say: 'Set bore and stroke true and take the walls again for the next wider key.' }],
  },
  {
    id: 'key-goes-in-as-found',
    states: 'the key’s play takes up offset and lead',
    source: 'the hub turned as well as it can be; lead counts whole; play at mid-tolerance',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    applies: ({ keyLoads }) => keyLoads.lostAsFound !== undefined,
    measured: ({ keyLoads }) => keyLoads.lostAsFound,
    limit: ({ keyLoads }) => keyLoads.play,
    reason: ({ measured, limit }) => `Offset and lead take ${measured} of the key’s width; its play is ${limit}.`,
    untold: 'The key’s own width is not told, so its play cannot be: try the key by hand.',
    remedies: () => [{ say: 'Fit the key by hand: file its sides until it goes in and does not rock.' }],
  },
]
