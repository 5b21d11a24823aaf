import { barRules } from './checks/bar.ts'
import { fitRules } from './checks/bar-fit.ts'
import { broachRule, bushingRules, noBarRule } from './checks/bushing.ts'
import { type Ways, waysOf } from './checks/compare.ts'
import { cutRules, forceRules, keyRules, pressForceRules } from './checks/forces.ts'
import { groundForceRules, groundRules } from './checks/ground.ts'
import { indexRules } from './checks/indexing.ts'
import { finding, judge, tightestFirst, verdictOf, weigh } from './checks/judge.ts'
import type { Finding, Judged, Remedy, Rule, Verdict, Weighed, Worked } from './checks/rule.ts'
import { sectionRules } from './checks/section.ts'
import { allOf, hasBar, hasBushing, hasGround, hasLoads, type Job, jobBeside, jobOf, type Sized } from './sizes.ts'
import { patchDocument, readSpec } from './spec/read.ts'
import type { Spec } from './spec/spec.ts'

export { type Sized, sizesOf } from './sizes.ts'

/** Everything that follows from one spec: plain, readonly, pure. */
export interface Design extends Sized {
  /** Broken first, tightest first. */
  readonly findings: readonly Finding[]
  readonly verdict: Verdict
  /** The two ways side by side; absent where only one is open. */
  readonly ways?: Ways
}

/** Asks something of every rule that applies, each on a job of its kind. */
const ofEachRule = <Answer>(
  job: Job,
  ask: <Own extends Worked>(rule: Rule<Own>, job: Own) => Answer,
): readonly Answer[] => {
  const answers: Answer[] = []
  const over = <Own extends Worked>(rules: readonly Rule<Own>[], own: Own): void => {
    for (const rule of rules) if (rule.applies?.(own) ?? true) answers.push(ask(rule, own))
  }
  over(sectionRules, job)
  over(indexRules, job)
  if (job.asked && !job.bar && !job.groundBar) over([noBarRule], job)
  if (hasGround(job)) {
    over(fitRules, job)
    over(groundRules, job)
    if (hasLoads(job)) {
      over(cutRules, job)
      over(groundForceRules, job)
    }
  }
  if (hasBar(job)) over(barRules, job)
  // Asked for by name, a press without a broach cannot be told; where both ways are merely open it is left out.
  if (job.spec.stated.includes('tooling.press') && !job.broach) over([broachRule], job)
  if (hasBushing(job)) over(bushingRules, job)
  if (hasBar(job) && hasLoads(job)) over(forceRules, job)
  if (hasBushing(job) && job.pressLoads) over(pressForceRules, { ...job, pressLoads: job.pressLoads })
  if (job.keyLoads) over(keyRules, { ...job, keyLoads: job.keyLoads })
  return answers
}

/** Judges what was worked out; ways out are proposed, and none is offered before it has been tried. */
export const findingsOf = (sized: Sized): readonly Judged[] => judgedOf({ ...sized, reasons: [] })

const judgedOf = (job: Job): readonly Judged[] => tightestFirst(ofEachRule(job, judge))

interface Outcome {
  readonly worked: Worked
  readonly findings: readonly Weighed[]
}

const ofShop = (set: NonNullable<Remedy['set']>): boolean => Object.keys(set).some((path) => path.startsWith('shop.'))

/** The spec as written with a patch in it; what is said of a shop file is patched in that. */
const patchedSpec = (spec: Spec, set: NonNullable<Remedy['set']>): ReturnType<typeof readSpec> => {
  const { document, shop } = spec.written
  if (shop === undefined || !ofShop(set))
    return readSpec(patchDocument(document, set), set['shop'] === null ? undefined : shop)
  const inShop = Object.fromEntries(Object.entries(set).map(([path, value]) => [path.replace(/^shop\./, ''), value]))
  return readSpec(document, patchDocument(shop, inShop))
}

/** What comes of a patch of the spec as written; undefined where the reader refuses it. Each patch is worked out once. */
const trials = (job: Job): ((set: NonNullable<Remedy['set']>) => Outcome | undefined) => {
  const known = new Map<string, Outcome | undefined>()
  return (set) => {
    const key = JSON.stringify(set)
    if (!known.has(key)) {
      const read = patchedSpec(job.spec, set)
      const worked = 'spec' in read ? jobBeside(read.spec, job, Object.keys(set)) : undefined
      known.set(key, worked && { worked, findings: ofEachRule(worked, weigh) })
    }
    return known.get(key)
  }
}

const heals = (rule: string, failing: ReadonlySet<string>, { findings }: Outcome): boolean =>
  (findings.find((finding) => finding.rule === rule)?.verdict ?? 'pass') === 'pass' &&
  findings.every((finding) => finding.verdict !== 'fail' || failing.has(finding.rule))

/** Ways out that can be taken over into the spec: three of what refuses it are plenty, one of a caution. */
const enough: Readonly<Record<Verdict, number>> = { pass: 0, caution: 1, unknown: 0, fail: 3 }

/** A sentence that goes on from another, where there is no other: `Or bore it through.` */
const alone = (say: string): string => say.replace(/^(?:Or|Otherwise) (.)/, (_, first: string) => first.toUpperCase())

/** A remedy is offered only when, tried on the spec as written, it heals its rule and breaks none that held. */
const withTriedRemedies = (job: Job, findings: readonly Judged[]): readonly Finding[] => {
  const trial = trials(job)
  const failing = new Set(findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule))
  const offered = ({ rule, verdict, proposals }: Judged): readonly Remedy[] => {
    const kept: Remedy[] = []
    const taken = new Set<string>()
    const kinds = new Set<string>()
    for (const { say, set, told, kind } of proposals()) {
      if (!set) {
        kept.push({ say })
        continue
      }
      if (taken.size >= enough[verdict] || taken.has(JSON.stringify(set)) || kinds.has(kind ?? '')) continue
      const outcome = trial(set)
      if (!outcome || !heals(rule, failing, outcome)) continue
      taken.add(JSON.stringify(set))
      if (kind) kinds.add(kind)
      const said = told?.(outcome.worked) ?? say
      // A shop file of its own is not the spec's to change.
      kept.push(job.spec.written.shop !== undefined && ofShop(set) ? { say: said } : { say: said, set })
    }
    return kept.map((remedy, place) => (place === 0 ? { ...remedy, say: alone(remedy.say) } : remedy))
  }
  return findings.map((judged) => finding(judged, { reason: judged.reason, remedies: offered(judged) }))
}

/** The core's front door: everything that follows from one spec. Pure; never throws for a spec that the reader let pass. */
export const design = (spec: Spec): Design => {
  const job = jobOf(spec)
  const findings = withTriedRemedies(job, judgedOf(job))
  const sized = allOf(job)
  const ways = waysOf(sized, findings)
  return { ...sized, findings, verdict: verdictOf(findings), ...(ways && { ways }) }
}
