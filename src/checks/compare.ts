/** The two ways of cutting one slot, side by side. */
import { figure, rounded } from '../spec/figures.ts'
import { about } from './families.ts'
import { verdictOf } from './judge.ts'
import { measure } from './measure.ts'
import type { Budget, Errors } from '../plan/errors.ts'
import type { Plan } from '../plan/types.ts'
import type { Finding, Verdict, Worked } from './rule.ts'

export interface Way {
  readonly by: 'bar' | 'press'
  readonly verdict: Verdict
  /** What stands against it: the first broken rule, else the first that cannot be told. */
  readonly why?: string
  /** The most that is asked, N, and what there is to give it. */
  readonly force?: number
  readonly capacity?: number
  readonly passes?: number
  readonly minutes?: number
  /** What has to be made first. */
  readonly make: readonly string[]
  /** ± as chances go. */
  readonly depth?: number
  readonly position?: number
}

export interface Ways {
  readonly ways: readonly Way[]
  readonly recommended?: Way['by']
  /** One sentence: which, and why. */
  readonly says: string
}

/** Each stroke of the press: brush, oil, shim, push. Source: judgement. */
const minutesPerPush = 3

const rank: Readonly<Record<Verdict, number>> = { pass: 0, caution: 1, unknown: 2, fail: 3 }

const likely = (budgets: readonly Budget[] | undefined, of: Budget['of']): number | undefined =>
  budgets?.find((budget) => budget.of === of)?.likely

const judged = (by: Way['by'], findings: readonly Finding[]) => {
  const own = findings.filter(({ rule }) => about(rule) === by)
  const verdict = verdictOf(own)
  const against = own.find((finding) => finding.verdict === 'fail' || finding.verdict === 'unknown')
  return { verdict, ...(against && (verdict === 'fail' || verdict === 'unknown') && { why: against.reason }) }
}

/** What the two are compared by. */
interface Planned extends Worked {
  readonly plan?: Plan
  readonly errors: Errors
}

const barWay = (job: Planned, findings: readonly Finding[]): Way => {
  const { bar, groundBar, loads, plan, errors } = job
  const depth = likely(errors.bar, 'depth')
  const position = likely(errors.bar, 'position')
  return {
    by: 'bar',
    ...judged('bar', findings),
    ...(loads && { force: loads.cuttingForce }),
    ...(plan && {
      passes: plan.keyways * plan.cuts.reduce((sum, cut) => sum + cut.passes.length, 0),
      minutes: plan.time.whole,
    }),
    make: bar ? ['cutter bar', 'tool bit'] : groundBar ? ['ground bar'] : [],
    ...(depth !== undefined && { depth }),
    ...(position !== undefined && { position }),
  }
}

const pressWay = (job: Planned, findings: readonly Finding[]): Way => {
  const { bushing, pressLoads, errors, section } = job
  if (!bushing)
    return {
      by: 'press',
      verdict: 'unknown',
      why: 'No broach is told: measure one (widths, heights, lengths, teeth) and the press is worked out too.',
      make: ['guide bushing', 'shims'],
    }
  const pushes = bushing.passes.length * section.at.length
  const depth = likely(errors.press, 'depth')
  const position = likely(errors.press, 'position')
  return {
    by: 'press',
    ...judged('press', findings),
    ...(pressLoads && { force: pressLoads.force }),
    ...(pressLoads?.capacity !== undefined && { capacity: pressLoads.capacity }),
    passes: pushes,
    minutes: minutesPerPush * pushes,
    make: [
      'guide bushing',
      ...(bushing.shims.length > 0 ? ['shims'] : []),
      ...(bushing.locating ? ['locating key'] : []),
    ],
    ...(depth !== undefined && { depth }),
    ...(position !== undefined && { position }),
  }
}

/** Compares the two where both are open; undefined where the spec asks for one. */
export const waysOf = (job: Planned, findings: readonly Finding[]): Ways | undefined => {
  const { bar, press } = job.spec.tooling
  if (!bar || !press || job.section.kind === 'socket' || job.section.kind === 'slit' || job.section.kind === 'groove')
    return undefined
  const ways = [barWay(job, findings), pressWay(job, findings)] as const
  const [best, other] = ways.toSorted(
    (a, b) => rank[a.verdict] - rank[b.verdict] || (a.minutes ?? Infinity) - (b.minutes ?? Infinity),
  )
  if (!best || !other) return undefined
  return best.verdict === 'fail'
    ? {
        ways,
        says: `Neither way goes as it stands. ${[best, other].map((way) => `${nameOf(way)}: ${way.why}`).join(' ')}`,
      }
    : { ways, recommended: best.by, says: sentence(job, best, other) }
}

const nameOf = (way: Way): string => (way.by === 'bar' ? 'With the bar' : 'With the broach')

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

const forceOf = (job: Worked, newtons: number, lean: 'up' | 'down'): string =>
  job.spec.units === 'mm' ? `${rounded(newtons / 1000, 1, lean)} kN` : measure(newtons, 'N', 'in', lean)

const takes = (job: Worked, way: Way): string =>
  [
    way.by === 'bar' ? count(way.passes ?? 0, 'pass', 'passes') : count(way.passes ?? 0, 'push', 'pushes'),
    ...(way.minutes === undefined ? [] : [`about ${count(Math.ceil(way.minutes), 'minute', 'minutes')}`]),
    ...(way.by === 'press' && way.force !== undefined
      ? [
          way.capacity === undefined
            ? `up to ${forceOf(job, way.force, 'up')}`
            : `up to ${forceOf(job, way.force, 'up')} of the ${forceOf(job, way.capacity, 'down')} there is`,
        ]
      : []),
  ].join(', ')

const good = (job: Worked, way: Way): string =>
  way.depth === undefined ? '' : `±${figure(way.depth, job.spec.units, { unit: true, lean: 'up' })}`

const sentence = (job: Worked, best: Way, other: Way): string => {
  const asked = best.by === 'bar' ? 'Cut it with the bar' : 'Broach it'
  // A broach that nobody has measured has no pushes yet.
  const first = best.passes === undefined ? `${asked}. ${best.why ?? ''}`.trim() : `${asked}: ${takes(job, best)}.`
  if (other.verdict === 'fail') return `${first} ${nameOf(other)} it does not go: ${other.why ?? 'a rule is broken.'}`
  if (other.passes === undefined) return `${first} ${other.why ?? ''}`.trim()
  const against = `${nameOf(other)} it takes ${takes(job, other)}.`
  const depth =
    best.depth === undefined || other.depth === undefined
      ? ''
      : ` Depth is good to ${good(job, best)} this way, to ${good(job, other)} the other.`
  const doubt = other.verdict === 'unknown' && other.why ? ` ${other.why}` : ''
  return `${first} ${against}${depth}${doubt}`
}
