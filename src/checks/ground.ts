/** Rules of a bar of one piece. */
import type { CutJob } from './loaded.ts'
import { also, anotherBar, eased } from './eased.ts'
import { elsewhere, fitRemedies } from './bar-ways.ts'
import type { FitJob, Rule } from './rule.ts'

export interface GroundJob extends FitJob {
  readonly groundBar: NonNullable<FitJob['groundBar']>
}

export const groundRules: readonly Rule<GroundJob>[] = [
  {
    id: 'nose-on-round',
    states: 'the nose can be ground from its round',
    source: 'geometry: the nose’s corners on the smallest blank, R + √(R² − w²/4)',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    measured: ({ groundBar }) => groundBar.backToNose.upper,
    limit: ({ groundBar }) => groundBar.backToNoseMost,
    reason: ({ measured, limit }) =>
      `Neck and nose measure ${measured} over both at the most; the round that passes the bore gives ${limit}.`,
    remedies: (job) => [...fitRemedies(job), elsewhere(job)],
  },
]

export const groundForceRules: readonly Rule<GroundJob & CutJob>[] = [
  eased<GroundJob & CutJob>(
    {
      id: 'neck-bears',
      states: 'the neck bears the stress where the head joins it',
      source: 'twice the nominal at the fillet, dull edge: judgement; hardened drill rod, from memory',
      binding: 'must',
      sense: 'at most',
      unit: 'N/mm2',
      measured: ({ loads }) => loads.neckStress,
      limit: ({ loads }) => loads.barYield,
      reason: ({ measured, limit }) => `The neck bears ${measured} at the head; ${limit} is the most.`,
    },
    anotherBar,
    also('Take less in a pass, or have it cut by wire or spark erosion.'),
  ),
]
