import { describe, expect, it } from 'vitest'
import type { Remedy } from '../../src/checks/rule.ts'
import { findingsOf } from '../../src/cli/telling.ts'
import { design } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'

const plainly = (text: string): string => text
const paint = { strong: plainly, good: plainly, careful: plainly, bad: plainly, quiet: plainly }

describe('a remedy as it is told', () => {
  it('names the lines that it puts in, and those of the spec that it takes out', () => {
    // The depth put in for across: 3.3 where 28.3 is meant.
    const document = {
      name: 'k',
      units: 'mm',
      bore: { diameter: 25, length: 40 },
      feature: { keyway: { width: 8, height: 7, across: 3.3 } },
    }
    const read = readSpec(document)
    if (!('spec' in read)) throw new Error('it does not read')
    const told = findingsOf(design(read.spec), 1000, paint).join('\n')
    expect(told).toContain(
      '[feature.keyway.standard: iso-773; without feature.keyway.width, feature.keyway.height, feature.keyway.across]',
    )
    // What does not stand in the spec is not said to be taken out.
    expect(told).not.toContain('feature.keyway.depth')
    // Typed in as it is told, the job is no longer broken by it.
    const healed = readSpec({ ...document, feature: { keyway: { standard: 'iso-773' } } })
    expect('spec' in healed && design(healed.spec).verdict).not.toBe('fail')
  })

  it('that only says is told as it is', () => {
    const remedy: Remedy = { say: 'Measure again.' }
    const read = readSpec({ name: 'k', units: 'mm', bore: { diameter: 25, length: 40 }, feature: { keyway: {} } })
    if (!('spec' in read)) throw new Error('it does not read')
    const worked = design(read.spec)
    const finding = { ...worked.findings[0]!, verdict: 'caution' as const, remedies: [remedy] }
    expect(findingsOf({ findings: [finding], spec: read.spec }, 1000, paint).join('\n')).toMatch(/- Measure again\.$/m)
  })
})
