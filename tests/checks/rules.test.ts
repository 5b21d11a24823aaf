import { describe, expect, it } from 'vitest'
import { type Between, cases, type Three } from './cases.ts'
import { everyRule, judged, type Trial } from './jobs.ts'

const isBetween = (each: Three | Between): each is Between => 'at' in each

const trials = (each: Three | Between): Omit<Three, 'line'> =>
  isBetween(each) ? { holds: { document: each.at(each.holds) }, breaks: { document: each.at(each.breaks) } } : each

/** Halves between a value that holds and one that breaks until no number lies between. */
const lineOf = ({ holds, breaks, at }: Between, passes: (trial: Trial) => boolean): readonly [Trial, Trial] => {
  let [inside, outside] = [holds, breaks]
  for (let halving = 0; halving < 50; halving++) {
    const middle = (inside + outside) / 2
    if (middle === inside || middle === outside) break
    if (passes({ document: at(middle) })) inside = middle
    else outside = middle
  }
  return [{ document: at(inside) }, { document: at(outside) }]
}

describe('every rule', () => {
  it('has its three cases, and no case is without its rule', () => {
    expect(Object.keys(cases).toSorted()).toEqual(everyRule.map(({ id }) => id).toSorted())
  })

  it('has a name of its own, a source, and states what must hold', () => {
    const ids = everyRule.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const { id, source, states } of everyRule) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)+$/)
      expect(source.length).toBeGreaterThan(3)
      expect(states).toMatch(/^[a-z].*[a-z0-9]$/)
    }
  })
})

describe.each(everyRule.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  const each = cases[id]
  if (!each) return
  const { holds, breaks, broken } = trials(each) as Three

  it('holds where there is room', () => {
    const finding = judged(rule, holds)
    expect(finding.verdict).toBe('pass')
    expect(finding.margin).toBeGreaterThanOrEqual(0)
    expect(finding.proposals()).toEqual([])
  })

  it('breaks where there is none', () => {
    const finding = judged(rule, breaks)
    expect(finding.verdict).toBe(broken ?? (rule.binding === 'must' ? 'fail' : 'caution'))
    expect(finding.margin === undefined ? -1 : finding.margin).toBeLessThan(0)
    // What cannot be told is healed by telling it: the reason says how.
    if (broken === 'unknown') expect(finding.reason).toContain('give ')
    else expect(finding.proposals().length).toBeGreaterThan(0)
    // Whatever the trial of the others finds, something is left to be said.
    if (finding.verdict === 'fail') expect(finding.proposals().filter(({ set }) => !set)).not.toEqual([])
  })

  it('holds on the line', () => {
    if (!isBetween(each)) {
      expect(judged(rule, each.line)).toMatchObject({ verdict: 'pass', margin: 0 })
      return
    }
    const [inside, outside] = lineOf(each, (trial) => judged(rule, trial).verdict === 'pass')
    const [held, past] = [judged(rule, inside), judged(rule, outside)]
    expect(held.verdict).toBe('pass')
    expect(past.verdict).not.toBe('pass')
    // No jump: what lies on either side of the line lies at the limit itself.
    const near = 1e-6 * Math.max(1, Math.abs(held.limit ?? 0))
    expect(Math.abs(held.margin ?? Infinity)).toBeLessThan(near)
    expect(Math.abs(past.margin ?? Infinity)).toBeLessThan(near)
  })
})
