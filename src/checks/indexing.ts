import { figure } from '../spec/figures.ts'
import { barInstead } from './ways.ts'
import type { Proposal, Rule } from './rule.ts'

/** So much is fitted by hand where key or tooth has less play, mm. */
const fittedByHand = 0.01

const shown = (mm: number, units: 'mm' | 'in'): string => figure(mm, units, { fit: true })

/** Rules of several slots: do they stand where shaft and keys want them. */
export const indexRules: readonly Rule[] = [
  {
    id: 'index-fits',
    states: 'the slots stand where the shaft wants them, within its play',
    source: 'exact for a shaft free to turn and shift; judgement: 0.01 mm is fitted by hand',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: ({ indexing }) => indexing !== undefined && (indexing.play !== undefined || indexing.playNeeded > 1e-6),
    measured: ({ indexing }) => indexing?.playNeeded,
    limit: ({ indexing }) => (indexing?.play === undefined ? undefined : Math.max(indexing.play, fittedByHand)),
    reason: ({ measured, limit }, { indexing }, broken) =>
      broken
        ? `The slots stand so far out of step that the shaft needs ${measured} of play; it has ${limit}. The worst slot is ${Math.ceil((indexing?.error ?? 0) * 10) / 10} minutes of arc out.`
        : `Out of step, the slots take ${measured} of the shaft’s play of ${limit}.`,
    untold: 'Nobody has said what play the shaft has in the slots: give tooling.index.play.',
    remedies: (job): readonly Proposal[] => {
      const { spec, indexing } = job
      const asked = spec.tooling.index
      const { by, gear } = indexing ?? {}
      if (by === 'locating key' || by === 'scribed line')
        return [
          ...barInstead(job),
          { say: 'Or fit the keys by hand, and tell what play they then have (tooling.index.play).' },
        ]
      return [
        ...(asked?.eccentric
          ? [
              {
                say: `Set the bore true to the axis that it is turned about, nearer than ${shown(asked.eccentric, spec.units)}.`,
                set: { 'tooling.index.eccentric': 0 },
              },
            ]
          : []),
        ...(by === 'dividing head' && gear
          ? [
              {
                say: `Turn by the gear of ${gear.teeth} teeth.`,
                set: { 'tooling.index.by': 'gear', 'tooling.index.gear': gear.teeth },
              },
            ]
          : []),
        ...(by !== 'dividing head' && asked?.by
          ? [{ say: 'Turn by a dividing head.', set: { 'tooling.index.by': 'dividing head' } }]
          : []),
        {
          say: 'Turn by a circle or a gear that every slot falls on, or by a larger index plate; set the bore true first.',
        },
      ]
    },
  },
]
