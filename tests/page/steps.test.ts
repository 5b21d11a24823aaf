import { describe, expect, it } from 'vitest'
import { stepsOf } from '../../src/page/steps.ts'
import { drawn, passRuns } from '../../src/page/workers/drawn.ts'
import { designed } from '../dimensions/designed.ts'

const splines = designed({
  units: 'mm',
  bore: { diameter: 23, length: 32 },
  hub: { outside: 55 },
  feature: { spline: { standard: 'iso-14', size: '6x23x26' } },
  tooling: { bar: { behind: 40 } },
})
const keyway = designed({
  units: 'mm',
  bore: { diameter: 24, length: 38 },
  hub: { outside: 62, material: 'grey iron' },
  feature: { keyway: {} },
  tooling: { bar: { behind: 40 } },
})

describe('the steps at the machine', () => {
  it('measure floor to floor where a slot stands opposite, and say what the gates and the end of it are', () => {
    const steps = stepsOf(splines, 'mm')
    const gates = steps.filter(({ gate }) => gate)
    const { floorToFloor } = splines.measuring
    expect(gates.length).toBeGreaterThan(1)
    for (const { does } of gates) expect(does).not.toMatch(/across/i)
    expect(gates.at(-1)?.does).toContain('Floor to floor: expect 2')
    // ISO 14, 6 × 23 × 26: 26 H10.
    expect([floorToFloor?.least, floorToFloor?.most].map((mm) => mm?.toFixed(6))).toEqual(['26.000000', '26.084000'])
    expect(steps.at(-1)?.aside).toBe('26 to 26.08')
    expect(steps.some(({ does }) => does.startsWith('All 6 to a gate before any goes deeper'))).toBe(true)
    expect(
      stepsOf(keyway, 'mm')
        .filter(({ gate }) => gate)
        .at(-1)?.does,
    ).toContain('Across: expect 27.')
  })

  it('what is expected at a gate is what the picture and the line under it say', () => {
    for (const [design, name] of [
      [keyway, 'across'],
      [splines, 'floor to floor'],
    ] as const) {
      const runs = passRuns(design)
      const at = runs.flatMap(({ gate }, place) => (gate === undefined ? [] : [place + 1]))
      expect(at.length).toBeGreaterThan(1)
      for (const passes of at) {
        const { spoken, dial } = drawn(design, { passes, width: 400, pictures: [] })
        const expected = new RegExp(`measure ${name}, expect (\\d+(?:\\.\\d+)?)`).exec(spoken)?.[1]
        expect(expected).toBeDefined()
        expect(dial).toContain(`${name} ${expected} mm`)
      }
    }
  })
})
