/** Rules that a lighter cut may heal, and the ways out of force that they share. */
import { either, roundTo } from '../dimensions/makeable.ts'
import { groundLoadsOf, type Loads, loadsOf } from '../mechanics/loads.ts'
import { inFull } from '../spec/figures.ts'
import type { CutJob } from './loaded.ts'
import type { Proposal, Rule } from './rule.ts'
import { leaveBarOpen, leaveOpen, written } from './ways.ts'

type Ruling<Job extends CutJob> = Omit<Rule<Job>, 'remedies'>

/** No edge cuts a thinner chip, mm. Source: judgement. */
const thinnest = 0.005

/** The same bar with another infeed. */
const loadsAt = ({ spec, asked, bar, bit, groundBar }: CutJob, infeed: number): Loads | undefined =>
  bar && bit
    ? loadsOf(spec, { ...asked, infeed }, bar, bit)?.sizes
    : groundBar && groundLoadsOf(spec, { ...asked, infeed }, groundBar)?.sizes

/** Smaller infeeds that heal a rule as far as bar and bit stay the same, the two largest of them. */
const lighterCut = <Job extends CutJob>(job: Job, { measured, limit, sense }: Ruling<Job>): readonly Proposal[] => {
  const { spec, infeed: now } = job
  if (now === undefined) return []
  const heals = (infeed: number): boolean => {
    const loads = infeed >= thinnest ? loadsAt(job, infeed) : undefined
    const lighter = loads && { ...job, loads, infeed }
    const [found, bound] = lighter ? [measured(lighter), limit(lighter)] : []
    return found !== undefined && bound !== undefined && (sense === 'at least' ? found >= bound : found <= bound)
  }
  const healing: number[] = []
  for (const part of [0.75, 0.5, 0.35, 0.25]) {
    const infeed = roundTo(now * part, either(spec.units, 0.0025, 0.0001))
    if (healing.length < 2 && heals(infeed)) healing.push(infeed)
  }
  return healing.map((infeed) => ({
    say: `Take ${inFull(infeed, spec.units)} ${spec.units} a pass.`,
    set: { 'tooling.bar.infeed': written(job, infeed) },
    kind: 'lighter',
  }))
}

/** A rule that a lighter cut may heal, before all else. */
export const eased = <Job extends CutJob>(
  ruling: Ruling<Job>,
  ...others: readonly ((job: Job) => readonly Proposal[])[]
): Rule<Job> => ({
  ...ruling,
  remedies: (job) => [...lighterCut(job, ruling), ...others.flatMap((other) => other(job))],
})

export const also = (say: string) => (): readonly Proposal[] => [{ say }]

export const anotherBar = (job: CutJob): readonly Proposal[] => [
  ...leaveOpen(job, 'screw'),
  ...leaveOpen(job, 'infeed'),
  ...leaveBarOpen(job),
]
