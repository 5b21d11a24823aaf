import { measure } from './measure.ts'
import type { Finding, Judged, Rule, RuleUnit, Say, Verdict, Weighed, Worked } from './rule.ts'

/** On the line holds: what arithmetic leaves over is no breach. */
const enough = 1e-9

/** A number for people, rounded away from the limit where that would hide a breach. */
const sayFor =
  (unit: RuleUnit, job: Worked): Say =>
  (value, lean) =>
    measure(value, unit, job.spec.units, lean)

/** What a rule comes to, without its words. Never throws for a job that was worked out; never looks at another rule. */
export const weigh = <Job extends Worked>(rule: Rule<Job>, job: Job): Weighed => {
  const { id, binding, unit, sense } = rule
  const measured = rule.measured(job)
  const limit = measured === undefined ? undefined : rule.limit(job)
  if (measured === undefined || limit === undefined) return { rule: id, binding, unit, verdict: 'unknown' }
  const broken: Verdict = binding === 'must' ? 'fail' : 'caution'
  // Sizes that make no sense together give no number: that is a breach, not something untold.
  if (Number.isNaN(measured) || Number.isNaN(limit)) return { rule: id, binding, unit, verdict: broken }
  const room = measured === limit ? 0 : sense === 'at least' ? measured - limit : limit - measured
  const margin = Math.abs(room) < enough ? 0 : room
  return { rule: id, binding, unit, verdict: room >= -enough ? 'pass' : broken, measured, limit, margin }
}

const reasonOf = <Job extends Worked>(rule: Rule<Job>, job: Job, { verdict, measured, limit }: Weighed): string => {
  if (measured === undefined || limit === undefined)
    return verdict === 'unknown'
      ? (rule.untold ?? `Whether ${rule.states} cannot be told from this spec.`)
      : `The sizes given make no sense together: ${rule.states} must hold, and there is no such size here.`
  const say = sayFor(rule.unit, job)
  // Two sizes rounded alike keep their order, so a pass reads as one; where it is broken the two lean apart, or a breach of a hair would not show.
  const [low, high] = rule.sense === 'at least' ? (['down', 'up'] as const) : (['up', 'down'] as const)
  return verdict === 'pass'
    ? rule.reason({ measured: say(measured), limit: say(limit) }, job, false)
    : rule.reason({ measured: say(measured, low), limit: say(limit, high) }, job, true)
}

/** Judge one rule on one job, in words; its ways out are proposed when they are asked for. */
export const judge = <Job extends Worked>(rule: Rule<Job>, job: Job): Judged => {
  const weighed = weigh(rule, job)
  const { verdict } = weighed
  return finding(weighed, {
    reason: reasonOf(rule, job, weighed),
    remedies: [],
    // What cannot be told is healed by telling it: the reason says how.
    proposals: () => (verdict === 'fail' || verdict === 'caution' ? (rule.remedies?.(job) ?? []) : []),
  })
}

/** What was weighed with what is said of it, every key by its name: copying with `...` took most of the time of judging. */
export const finding = <Said extends object>(
  { rule, binding, unit, verdict, measured, limit, margin }: Weighed,
  said: Said,
): Weighed & Said =>
  measured === undefined || limit === undefined || margin === undefined
    ? Object.assign({ rule, binding, unit, verdict }, said)
    : Object.assign({ rule, binding, unit, verdict, measured, limit, margin }, said)

const rank: Record<Verdict, number> = { fail: 0, unknown: 1, caution: 2, pass: 3 }

/** Share of the limit that is room: what tells a tight margin from a wide one across units. */
const tightness = ({ margin, limit }: Finding): number =>
  margin === undefined ? 0 : Number.isFinite(margin) ? margin / Math.max(Math.abs(limit ?? 1), 0.1) : margin

/** Broken first, then what cannot be told, cautions and passes; tightest first in each. Ties by name. */
export const tightestFirst = <Each extends Finding>(findings: readonly Each[]): readonly Each[] =>
  findings.toSorted(
    (a, b) =>
      rank[a.verdict] - rank[b.verdict] ||
      tightness(a) - tightness(b) ||
      (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
  )

/** The whole job: fail if any must fails, else unknown if any must cannot be told, else caution, else pass. */
export const verdictOf = (findings: readonly Weighed[]): Verdict => {
  if (findings.some(({ verdict }) => verdict === 'fail')) return 'fail'
  if (findings.some(({ verdict, binding }) => verdict === 'unknown' && binding === 'must')) return 'unknown'
  return findings.some(({ verdict }) => verdict === 'caution') ? 'caution' : 'pass'
}
