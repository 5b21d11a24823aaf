import { describe, expect, it } from 'vitest'
import { design } from '../../src/design.ts'
import { boreAs } from '../../src/page/workers/bore-as.ts'
import { parse } from '../../src/spec/parse.ts'
import { patchDocument, readSpec } from '../../src/spec/read.ts'

const job = (bore: number, length: number): unknown => {
  const read = parse(`name: gate-wheel
units: mm
bore: { diameter: ${bore}, tolerance: H7, length: ${length} }
hub: { outside: 60 }
feature: { keyway: {} }
tooling: { bar: { behind: 30 } }
`)
  return 'document' in read ? read.document : undefined
}
const all = (mm: number) => ({ least: mm, most: mm, mean: `${mm} mm`, way: 'bar' as const })
const worked = (document: unknown) => {
  const read = readSpec(document)
  if (!('spec' in read)) throw new Error('the job cannot be read')
  return design(read.spec)
}

describe('a bore as it was measured', () => {
  // H7 of 25 is 25.000 to 25.021 (ISO 286-2); what is refused stands more than 0.1 beyond (the rule bore-not-another).
  it('what the rules refuse is refused, however far off the diameter; what they bear is not', () => {
    for (const mm of [20, 23.7, 24.6, 24.899, 25.122, 30])
      expect([mm, boreAs(job(25, 40), undefined, all(mm)).refused]).toEqual([
        mm,
        expect.stringMatching(/neither shaft/),
      ])
    for (const mm of [24.901, 25.01, 25.12])
      expect([mm, boreAs(job(25, 40), undefined, all(mm)).refused]).toEqual([mm, undefined])
  })

  it('one place alone that is too far off is enough', () => {
    const found = boreAs(job(25, 40), undefined, { least: 25.01, most: 25.2, mean: '25.06 mm', way: 'bar' })
    expect(found.refused).toMatch(/neither shaft/)
    expect(found.set).toBe(undefined)
  })

  it('worked for it, the bar stays the one that is made', () => {
    const stands = worked(job(18, 18))
    const { set } = boreAs(job(18, 18), undefined, all(18.09))
    const left = worked(patchDocument(job(18, 18), { 'bore.measured': '18.09 mm' }))
    // Left free, another bar would be chosen: else there were nothing to hold.
    expect(left.bar?.diameter.nominal).not.toBe(stands.bar?.diameter.nominal)
    const held = worked(patchDocument(job(18, 18), set ?? {}))
    expect(held.verdict).not.toBe('fail')
    expect(held.spec.bore.measured).toBe(18.09)
    for (const of of ['diameter', 'shank'] as const)
      expect([of, held.bar?.[of].nominal]).toEqual([of, stands.bar?.[of].nominal])
    expect([held.bar?.bit, held.bar?.noseWidth, held.bar?.screw.thread]).toEqual([
      stands.bar?.bit,
      stands.bar?.noseWidth,
      stands.bar?.screw.thread,
    ])
  })
})
