/** Rules of the joint and the bore that hold whatever the feature is. */
import type { Rule } from './rule.ts'

export const jointRules: readonly Rule[] = [
  {
    id: 'flanks-carry-load',
    states: 'splines or socket carry the load',
    source:
      'pressure on the flanks: SAE J499’s 1000 psi sliding under load, shop practice else; a socket by the softer metal, twofold; three quarters bear',
    binding: 'must',
    sense: 'at least',
    unit: 'N mm',
    applies: ({ spec, jointLoads }) => spec.load !== undefined && jointLoads !== undefined,
    measured: ({ jointLoads }) => jointLoads?.torque,
    limit: ({ spec }) => (spec.load?.torque ?? 0) * (spec.load?.service ?? 1),
    reason: ({ measured, limit }) => `The flanks carry ${measured}; the load with its service factor is ${limit}.`,
    remedies: () => [{ say: 'Take a longer hub, hardened flanks or a larger size, with whoever designed the joint.' }],
  },
  {
    id: 'bore-not-chromed',
    states: 'the bore is not plated with chromium',
    source: 'judgement: plating is far harder than the edge, and chips off beside the cut',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    applies: ({ spec }) => spec.stated.includes('bore.chromed'),
    measured: ({ spec }) => (spec.bore.chromed ? 1 : 0),
    limit: () => 0,
    reason: (_said, _job, broken) =>
      broken
        ? 'The bore is plated with chromium: no edge of high-speed steel cuts it, and it chips off beside the cut.'
        : 'The bore is not plated.',
    remedies: () => [{ say: 'Have the plating ground out or stripped first, or have the keyway spark-eroded.' }],
  },
]
