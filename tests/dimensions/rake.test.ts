import { describe, expect, it } from 'vitest'
import { designed } from './designed.ts'

/** A fat bar far out in a short hub of aluminium, which likes 20° of rake: on a machine that gives, it would draw itself in. */
const job = (bar: object = {}) => ({
  name: 'rake',
  units: 'mm',
  bore: { diameter: 40, length: 20 },
  hub: { outside: 90, material: 'aluminium' },
  feature: { keyway: { standard: 'iso-773' } },
  tooling: { bar: { machine: 'mill', behind: 60, give: '700 N/mm', ...bar } },
})

describe('the rake of the bit', () => {
  it('is less than usual where the cut would hook in, and says that nobody asked for it', () => {
    const made = designed(job())
    expect(made.bit?.rake).toBeLessThan(20)
    expect(made.basis['bit.rake']).toMatch(/^less than the usual 20°/)
    expect(made.loads?.digIn).toBeLessThanOrEqual(0.7)
  })

  it('is as given where it is given, and hooks if it must', () => {
    const made = designed(job({ rake: 20 }))
    expect(made.bit?.rake).toBe(20)
    expect(made.basis['bit.rake']).toBe('given in the spec')
    expect(made.loads?.digIn).toBeGreaterThan(0.7)
    expect(made.findings.find(({ rule }) => rule === 'bar-does-not-hook')?.verdict).toBe('fail')
  })
})
