import { describe, expect, it } from 'vitest'
import type { Remedy } from '../../src/checks/rule.ts'
import { sizesOf } from '../../src/cli/sizes.ts'
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

describe('sizes as they are told', () => {
  const read = readSpec({
    name: 'k',
    units: 'in',
    bore: { diameter: '1-1/4', length: 5 },
    feature: { keyway: { standard: 'asme-b17.1' } },
    tooling: { bar: { machine: 'lathe', behind: 2 } },
  })
  if (!('spec' in read)) throw new Error('it does not read')
  const worked = design(read.spec)
  const rows = sizesOf(worked).flatMap((table) => table.rows)

  it('what is taken in a pass, in the last figure that it has', () => {
    const runs = worked.plan?.cuts[0]?.runs ?? []
    expect(runs.length).toBeGreaterThan(1)
    const said = rows.find(({ name }) => name === 'infeed a pass')?.remark ?? ''
    const taken = [...said.matchAll(/([\d.]+) to/g)].map(([, infeed]) => Number(infeed) * 25.4)
    expect(taken.length).toBe(runs.length)
    for (const [at, { by }] of runs.entries()) expect(taken[at]).toBeCloseTo(by, 6)
    expect(Math.min(...taken)).toBeCloseTo(0.0005 * 25.4, 9)
  })

  it('what is bought by its fraction', () => {
    expect(worked.bar?.bit.size).toBeCloseTo((5 / 16) * 25.4, 9)
    expect(rows.find(({ name }) => name === 'cross hole')?.remark).toContain('for square 5/16')
    expect(rows.find(({ name }) => name === 'set screw')?.remark).toMatch(/^5\/16 long/)
  })
})
