import { describe, expect, it } from 'vitest'
import { withBar, withBushing } from './designed.ts'

/** What anyone in the trade would expect to see. Each: common practice, no source. */
describe('facts of the trade', () => {
  const inchJob = (bar: object) =>
    withBar({
      units: 'in',
      bore: { diameter: 0.5, length: 0.75 },
      feature: { keyway: {} },
      tooling: { bar: { machine: 'lathe', ...bar } },
    })

  it('a 1/8 in keyway takes less than a hundred passes at a thousandth, but not many less', () => {
    // Common practice, no source: depth of about .06 in, a thousandth a stroke.
    const { plan, bar } = inchJob({ infeed: 0.001 })
    const passes = plan.passes / bar.lanes.length
    expect(passes).toBeGreaterThan(60)
    expect(passes).toBeLessThan(110)
  })

  it('.002 on a dial that reads diameters is .001 of depth', () => {
    // Common practice, no source.
    const travel = inchJob({ dial: { mark: 0.001, reads: 'travel' } }).plan.dial
    const diameter = inchJob({ dial: { mark: 0.002, reads: 'diameter' } }).plan.dial
    expect(diameter.target).toBeCloseTo(2 * travel.target, 12)
    expect(diameter.marks).toBeCloseTo(travel.marks, 9)
  })

  it('a bushing is at least as long as its bore, its slot a few thousandths over the broach', () => {
    // Common practice, no source.
    const { bushing, spec, broach } = withBushing({
      units: 'in',
      bore: { diameter: 0.75, length: 1 },
      feature: { keyway: {} },
      tooling: {
        press: {
          broach: {
            toothWidth: 0.1885,
            bodyWidth: 0.187,
            firstTooth: 0.375,
            lastTooth: 0.44,
            teeth: 21,
            toothedLength: 5,
            overall: 6.75,
            pilot: 0.36,
            pilotLength: 0.9,
          },
        },
      },
    })
    expect(bushing.length).toBeGreaterThanOrEqual(spec.bore.length)
    const over = (bushing.slotWidth.nominal - Math.max(broach?.bodyWidth ?? 0, broach?.toothWidth ?? 0)) / 25.4
    expect(over).toBeGreaterThan(0.001)
    expect(over).toBeLessThan(0.006)
    expect(bushing.outside.upper).toBeLessThan(spec.bore.diameter.lower)
  })

  it('a bar is a good deal thinner than its bore and a good deal thicker than its hole', () => {
    // Common practice, no source: half to nine tenths of the bore.
    for (const diameter of [12, 20, 30, 50]) {
      const { bar } = withBar({ units: 'mm', bore: { diameter, length: diameter }, feature: { keyway: {} } })
      expect(bar.diameter.nominal / diameter).toBeGreaterThan(0.5)
      expect(bar.diameter.nominal / diameter).toBeLessThan(0.9)
      expect(bar.crossHole.upper).toBeLessThan(bar.diameter.lower)
    }
  })
})
