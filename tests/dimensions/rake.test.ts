import { describe, expect, it } from 'vitest'
import { lighterInfeeds } from '../../src/dimensions/settings.ts'
import { designed, specOf } from './designed.ts'

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

  it('is the material’s own on a bar under three diameters long, and 10° on a slim one', () => {
    // Aluminium likes 20°; a hub of 20 and what the bar needs beyond it is under three times 26, and over three times 9.
    const at = (diameter: number, bit: number) => designed(job({ diameter, bit: { size: bit }, give: '50000 N/mm' }))
    const [fat, slim] = [at(26, 10), at(9, 4)]
    expect((fat.bar?.overhang ?? NaN) / 26).toBeLessThan(3)
    expect((slim.bar?.overhang ?? NaN) / 9).toBeGreaterThan(3)
    expect([fat.bit?.rake, slim.bit?.rake]).toEqual([20, 10])
  })

  it('is as given where it is given, and hooks if it must', () => {
    const made = designed(job({ rake: 20 }))
    expect(made.bit?.rake).toBe(20)
    expect(made.basis['bit.rake']).toBe('given in the spec')
    expect(made.loads?.digIn).toBeGreaterThan(0.7)
    expect(made.findings.find(({ rule }) => rule === 'bar-does-not-hook')?.verdict).toBe('fail')
  })
})

describe('lighter infeeds', () => {
  it.each([
    ['mm', 0.02, [0.015, 0.01, 0.0075, 0.005], 1],
    ['in', 0.002, [0.0015, 0.001, 0.0007, 0.0005], 25.4],
    // Under 0.005 mm no edge cuts.
    ['in', 0.0004, [0.0003, 0.0002], 25.4],
  ] as const)(
    'in %s: three quarters, a half, a third and a quarter of %d, by 0.0025 mm or .0001 in',
    (units, infeed, wanted, unit) => {
      const spec = specOf({
        units,
        bore: units === 'mm' ? { diameter: 25, length: 40 } : { diameter: 1, length: 1.5 },
        feature: { keyway: {} },
        tooling: { bar: { infeed } },
      })
      const { bar } = spec.tooling
      if (!bar) throw new Error('no bar')
      expect(lighterInfeeds(spec, bar).map((each) => Math.round((each / unit) * 1e7) / 1e7)).toEqual(wanted)
    },
  )
})
