/** Rules that a lighter cut may heal, and the ways out of force that they share. */
import { either, roundTo } from '../dimensions/makeable.ts'
import { loadsOf } from '../mechanics/loads.ts'
import type { LoadedBar } from './loaded.ts'
import type { Proposal, Rule } from './rule.ts'
import { leaveBarOpen, leaveOpen, written } from './ways.ts'

export type Ruling = Omit<Rule<LoadedBar>, 'remedies'>

/** No edge cuts a thinner chip, mm. Source: judgement. */
const thinnest = 0.005

/** Smaller infeeds that heal a rule as far as bar and bit stay the same, the two largest of them. */
const lighterCut = (job: LoadedBar, { measured, limit, sense }: Ruling): readonly Proposal[] => {
  const { spec, asked, bar, bit, plan } = job
  if (!plan) return []
  const now = plan.infeedPerPass
  return [0.75, 0.5, 0.35, 0.25]
    .map((part) => roundTo(now * part, either(spec.units, 0.0025, 0.0001)))
    .filter((infeed) => {
      const loads = infeed >= thinnest ? loadsOf(spec, { ...asked, infeed }, bar, bit)?.sizes : undefined
      const lighter = loads && { ...job, loads, plan: { ...plan, infeedPerPass: infeed } }
      const [found, bound] = lighter ? [measured(lighter), limit(lighter)] : []
      return found !== undefined && bound !== undefined && (sense === 'at least' ? found >= bound : found <= bound)
    })
    .slice(0, 2)
    .map((infeed) => ({
      say: `Take ${spec.units === 'mm' ? `${infeed} mm` : `${(infeed / 25.4).toFixed(5).replace(/0+$/, '')} in`} a pass.`,
      set: { 'tooling.bar.infeed': written(job, infeed) },
      kind: 'lighter',
    }))
}

/** A rule that a lighter cut may heal, before all else. */
export const eased = (
  ruling: Ruling,
  ...others: readonly ((job: LoadedBar) => readonly Proposal[])[]
): Rule<LoadedBar> => ({
  ...ruling,
  remedies: (job) => [...lighterCut(job, ruling), ...others.flatMap((other) => other(job))],
})

export const also = (say: string) => (): readonly Proposal[] => [{ say }]

export const anotherBar = (job: LoadedBar): readonly Proposal[] => [
  ...leaveOpen(job, 'screw'),
  ...leaveOpen(job, 'infeed'),
  ...leaveBarOpen(job),
]
