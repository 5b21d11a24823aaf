import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judge, tightestFirst, verdictOf, weigh } from '../../src/checks/judge.ts'
import type { Finding, Rule, RuleUnit, Verdict } from '../../src/checks/rule.ts'
import type { Sized } from '../../src/design.ts'
import { sizedOf } from './jobs.ts'
import { printed } from './reading.ts'

const jobIn = (units: 'mm' | 'in'): Sized =>
  sizedOf({
    units,
    bore: { diameter: '25 mm', length: '40 mm' },
    feature: { keyway: { width: '8 mm', across: '28.3 mm' } },
  })
const [metric, inches] = [jobIn('mm'), jobIn('in')]

const ruleOf = (
  measured: number | undefined,
  limit: number | undefined,
  how: Partial<Pick<Rule<Sized>, 'binding' | 'sense' | 'unit' | 'untold'>> = {},
): Rule<Sized> => ({
  id: 'made-up',
  states: 'it holds',
  source: 'made up for this test',
  binding: 'must',
  sense: 'at least',
  unit: 'mm',
  measured: () => measured,
  limit: () => limit,
  reason: (said) => `${said.measured} stands against ${said.limit}.`,
  remedies: () => [{ say: 'Mend it.' }],
  ...how,
})

const units = ['mm', 'mm2', 'degrees', 'ratio', 'N', 'N mm', 'N/mm2', 'HRC'] as const satisfies readonly RuleUnit[]

describe('judging', () => {
  it('holds on the line, and breaks past it', () => {
    for (const sense of ['at least', 'at most'] as const) {
      const away = sense === 'at least' ? -1 : 1
      expect(weigh(ruleOf(4, 4, { sense }), metric)).toMatchObject({ verdict: 'pass', margin: 0 })
      // What arithmetic leaves over is no breach.
      expect(weigh(ruleOf(4 + away * 1e-12, 4, { sense }), metric)).toMatchObject({ verdict: 'pass', margin: 0 })
      expect(weigh(ruleOf(4 + away * 1e-6, 4, { sense }), metric).verdict).toBe('fail')
      expect(weigh(ruleOf(4 + away * 1e-6, 4, { sense, binding: 'should' }), metric).verdict).toBe('caution')
      expect(weigh(ruleOf(4 - away, 4, { sense }), metric).margin).toBe(1)
    }
  })

  it('cannot tell without a number, whatever the number is missing', () => {
    for (const [measured, limit] of [
      [undefined, 1],
      [1, undefined],
    ] as const) {
      const finding = judge(ruleOf(measured, limit, { untold: 'Not told: measure it.' }), metric)
      expect(finding).toMatchObject({ verdict: 'unknown', reason: 'Not told: measure it.', remedies: [] })
      expect(finding).not.toHaveProperty('margin')
      expect(finding.proposals()).toEqual([])
    }
    expect(judge(ruleOf(undefined, 1), metric).reason).toBe('Whether it holds cannot be told from this spec.')
  })

  it('breaks a rule on sizes that make no sense together, for what is not a number is no room', () => {
    for (const [measured, limit] of [
      [Number.NaN, 1],
      [1, Number.NaN],
    ] as const) {
      const finding = judge(ruleOf(measured, limit), metric)
      expect(finding.verdict).toBe('fail')
      expect(finding.reason).toMatch(/^The sizes given make no sense together/)
      expect(finding).not.toHaveProperty('margin')
      expect(judge(ruleOf(measured, limit, { binding: 'should' }), metric).verdict).toBe('caution')
    }
  })

  it('is not confused by what has no end', () => {
    expect(weigh(ruleOf(5, Infinity), metric)).toMatchObject({ verdict: 'fail', margin: -Infinity })
    expect(weigh(ruleOf(Infinity, Infinity), metric)).toMatchObject({ verdict: 'pass', margin: 0 })
    expect(weigh(ruleOf(5, -Infinity, { sense: 'at most' }), metric)).toMatchObject({ verdict: 'fail' })
  })

  it('says what has no end, and what is less than anything', () => {
    expect(judge(ruleOf(Infinity, 5), metric).reason).toBe('without end stands against 5 mm.')
    expect(judge(ruleOf(-Infinity, 5), metric).reason).toBe('nothing stands against 5 mm.')
  })

  it('shows a breach of a hair, and never one that is not there', () => {
    expect(judge(ruleOf(3.99996, 4), metric).reason).toBe('3.999 mm stands against 4 mm.')
    expect(judge(ruleOf(4.00004, 4), metric).reason).toBe('4 mm stands against 4 mm.')
    expect(judge(ruleOf(4.0004, 4.0002), metric).reason).toBe('4 mm stands against 4 mm.')
    expect(judge(ruleOf(4.0002, 4.0004), metric).reason).toBe('4 mm stands against 4.001 mm.')
    expect(judge(ruleOf(0.70004, 0.7, { sense: 'at most', unit: 'ratio' }), metric).reason).toBe(
      '0.701 stands against 0.700.',
    )
    expect(judge(ruleOf(25.4 * 0.12504, 25.4 * 0.125, { sense: 'at most' }), inches).reason).toBe(
      '0.1251 in stands against 0.1250 in.',
    )
  })

  it('writes a number in its unit, rounded to the nearest where it holds', () => {
    const says = (unit: RuleUnit, measured: number, limit: number, job = metric) =>
      judge(ruleOf(measured, limit, { unit }), job).reason
    expect(says('degrees', 4.26, 4)).toBe('4.3° stands against 4.0°.')
    expect(says('HRC', 35, 20)).toBe('35.0 HRC stands against 20.0 HRC.')
    expect(says('mm2', 20.126, 20)).toBe('20.13 mm² stands against 20.00 mm².')
    expect(says('ratio', 1.2346, 1)).toBe('1.235 stands against 1.000.')
    expect(says('count', 3, 2)).toBe('3 stands against 2.')
    expect(says('N', 2.6, 2.4)).toBe('3 N stands against 2 N.')
    expect(says('N/mm2', 250.6, 100)).toBe('251 N/mm² stands against 100 N/mm².')
    expect(says('N mm', 4260, 1000)).toBe('4.3 N m stands against 1.0 N m.')
    // 1 lbf is 4.4482216 N, and 25.4 mm of it 112.98483 N mm (NIST SP 811).
    expect(says('N', 44.482216, 4.4482216, inches)).toBe('10 lbf stands against 1 lbf.')
    expect(says('N mm', 1129.8483, 112.98483, inches)).toBe('10 lbf in stands against 1 lbf in.')
    // 1 ksi is 6.894757 N/mm², and 1 in² 645.16 mm² (NIST SP 811).
    expect(says('N/mm2', 250.6, 100, inches)).toBe('36.3 ksi stands against 14.5 ksi.')
    expect(says('mm2', 20.126, 20, inches)).toBe('0.0312 in² stands against 0.0310 in².')
  })

  it('prints no two numbers that contradict the verdict, in any unit of either kind of job', () => {
    const near = fc.double({ min: -2, max: 2, noNaN: true }).map((share) => share ** 5 / 32)
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 300, noNaN: true }),
        near,
        fc.constantFrom(...units),
        fc.constantFrom('at least', 'at most'),
        fc.boolean(),
        (limit, apart, unit, sense, metricJob) => {
          const finding = judge(ruleOf(limit + apart, limit, { unit, sense }), metricJob ? metric : inches)
          const [measured, bound] = printed(finding) ?? [Number.NaN, Number.NaN]
          const room = sense === 'at least' ? measured - bound : bound - measured
          // Nearer than a hundred-thousandth no figure that is read tells two sizes apart.
          if (finding.verdict === 'pass') expect(room).toBeGreaterThanOrEqual(0)
          else if (Math.abs(apart) > 1e-5) expect(room).toBeLessThan(0)
          else expect(room).toBeLessThanOrEqual(0)
        },
      ),
      { numRuns: 2000, seed: 9 },
    )
  })
})

describe('the order of findings', () => {
  const finding = (rule: string, verdict: Verdict, margin?: number, limit = 1): Finding => ({
    rule,
    verdict,
    binding: 'must',
    unit: 'mm',
    reason: '',
    remedies: [],
    ...(margin !== undefined && { measured: limit + margin, limit, margin }),
  })

  it('is broken, untold, cautioned, held; the tightest share of its limit first; by name where alike', () => {
    const sorted = tightestFirst([
      finding('d', 'pass', 1),
      finding('c', 'pass', 2, 10),
      finding('b', 'caution', -0.1),
      finding('a', 'caution', -0.5),
      finding('f', 'unknown'),
      finding('e', 'unknown'),
      finding('h', 'fail', -0.1),
      finding('g', 'fail', -Infinity),
    ])
    expect(sorted.map(({ rule }) => rule)).toEqual(['g', 'h', 'e', 'f', 'a', 'b', 'c', 'd'])
  })

  it('has no say in the verdict: a broken must, an untold must, a caution, else a pass', () => {
    const should = (verdict: Verdict): Finding => ({ ...finding('s', verdict), binding: 'should' })
    const must = (verdict: Verdict): Finding => finding('m', verdict)
    expect(verdictOf([must('pass'), should('caution'), must('unknown'), must('fail')])).toBe('fail')
    expect(verdictOf([must('pass'), should('caution'), must('unknown')])).toBe('unknown')
    expect(verdictOf([must('pass'), should('caution'), should('unknown')])).toBe('caution')
    expect(verdictOf([must('pass'), should('unknown')])).toBe('pass')
    expect(verdictOf([])).toBe('pass')
  })
})
