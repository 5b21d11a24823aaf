import { describe, expect, it } from 'vitest'
import { designed } from './designed.ts'

const job = (more: object = {}) => ({
  name: 'plug',
  units: 'mm',
  bore: { diameter: 24, length: 38 },
  hub: { outside: 62 },
  feature: { keyway: { standard: 'iso-773' } },
  ...more,
})

describe('the printed go plug', () => {
  it('stands under every least size by what a print is trusted to: 24 H7 and 8 JS9, worked by hand', () => {
    const { plug, section } = designed(job())
    expect(plug.tolerance).toBe(0.1)
    // 24.000 − 0.15, 7.982 − 0.1, 27.3 − 0.1, down to 0.01.
    expect(plug.diameter).toBeCloseTo(23.85, 9)
    expect(plug.keyWidth).toBeCloseTo(7.88, 9)
    expect(plug.across).toBeCloseTo(27.2, 9)
    expect(plug.diameter).toBeLessThan(section.bore.lower)
    // Three quarters of 38 and of 23.85, up to whole millimetres.
    expect(plug).toMatchObject({ length: 29, handleDiameter: 18, handleLength: 30, lead: 1.5 })
  })

  it('is nearer once the printer has been measured, and the model takes the printer’s offset', () => {
    const { plug } = designed(job({ shop: { printer: { outside: -0.06, inside: -0.12, foot: 0.4 } } }))
    expect(plug.tolerance).toBe(0.05)
    expect(plug.diameter).toBeCloseTo(23.92, 9)
    expect(plug.offset).toBeCloseTo(-0.06, 9)
  })

  it('is marked with what it is for', () => {
    expect(designed(job()).plug.marking).toEqual(['GO', '8 x 7', '24'])
    const byHand = job({ feature: { keyway: { width: 4, height: 4, across: 26 } } })
    expect(designed(byHand).plug.marking).toEqual(['GO', '4 wide', '24'])
  })
})
