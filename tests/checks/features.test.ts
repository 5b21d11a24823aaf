import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { patchDocument, readSpec } from '../../src/spec/read.ts'
import { featureDocuments } from './feature-documents.ts'
import { printed } from './reading.ts'
import { everyRule } from './jobs.ts'

const senseOf = new Map(everyRule.map(({ id, sense }) => [id, sense]))
const designOf = (document: unknown) => {
  const read = readSpec(document)
  return 'spec' in read ? design(read.spec) : undefined
}

/** Jobs of every kind, the same each time. */
const made = fc.sample(featureDocuments, { seed: 31, numRuns: 48 }).flatMap((document) => {
  const worked = designOf(document)
  return worked ? [{ document, worked }] : []
})

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(finite)

describe('jobs of splines, sockets, slits and grooves', () => {
  it('come out, of every kind, sound and broken', () => {
    const kinds = new Set(made.map(({ worked }) => worked.section.kind))
    expect([...kinds].toSorted()).toEqual(['groove', 'slit', 'socket', 'spline'])
    expect(made.some(({ worked }) => worked.verdict === 'fail')).toBe(true)
    expect(made.some(({ worked }) => worked.verdict !== 'fail')).toBe(true)
  })

  it('have a section that is all numbers, and words that hold no number that is none', () => {
    for (const { document, worked } of made) {
      expect(finite(worked.section), JSON.stringify(document)).toBe(true)
      for (const { reason, remedies, measured, limit } of worked.findings) {
        expect([measured, limit]).not.toContain(Number.NaN)
        const words = [reason, ...remedies.map(({ say }) => say)].join(' ')
        expect(words, JSON.stringify(document)).not.toMatch(/NaN|undefined|null|Infinity|\[object|-0(?![.\d])|e-\d/)
      }
    }
  })

  it('print no two numbers that contradict their verdict', () => {
    for (const { document, worked } of made)
      for (const finding of worked.findings) {
        const numbers = printed(finding)
        if (!numbers) continue
        const [measured, limit] = numbers
        const room = senseOf.get(finding.rule) === 'at least' ? measured - limit : limit - measured
        const agrees = finding.verdict === 'pass' ? room >= 0 : room < 0
        expect([finding.reason, agrees], JSON.stringify(document)).toEqual([finding.reason, true])
      }
  })

  it('have a way out of every broken must, and what can be taken over heals', () => {
    let taken = 0
    for (const { document, worked } of made.slice(0, 16)) {
      const failing = new Set(worked.findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule))
      for (const { rule, verdict, remedies } of worked.findings) {
        if (verdict === 'fail') expect([rule, remedies.length > 0]).toEqual([rule, true])
        for (const { set, say } of remedies) {
          if (!set) continue
          const after = designOf(patchDocument(document, set))
          expect([say, after?.findings.find((each) => each.rule === rule)?.verdict ?? 'pass']).toEqual([say, 'pass'])
          const fresh = after?.findings.filter((each) => each.verdict === 'fail' && !failing.has(each.rule))
          expect([say, fresh]).toEqual([say, []])
          taken += 1
        }
      }
    }
    expect(taken).toBeGreaterThan(4)
  })
})
