import { describe, expect, it } from 'vitest'
import { withBar } from './designed.ts'

const job = (bar: object) => ({
  name: 'stroke',
  units: 'mm',
  bore: { diameter: 25, tolerance: [0, 0], length: 40 },
  hub: { outside: 70 },
  feature: { keyway: { width: 8, height: 7, across: 28.3 } },
  tooling: {
    bar: { machine: 'lathe', behind: 40, diameter: 16, bit: { shape: 'square', size: 6 }, nose: { width: 5 }, ...bar },
  },
}) // prettier-ignore

describe('the bar beyond the hub', () => {
  it('pushed, runs out by overtravel and the end below the bit’s face on the screw’s side', () => {
    const { bar } = withBar(job({ stroke: 'push' }))
    // Hole centre to end, the bit risen to the upper wall, its own height back: worked by hand from the drawing of the end.
    expect(bar.tipBeyond).toBeCloseTo(bar.overtravel + bar.holeToEnd + bar.seatRise - 6, 9)
    expect(bar.bodyLength - bar.overhang).toBeCloseTo(bar.tipBeyond - bar.overtravel, 9)
  })

  it('pulled, runs out by the whole end under the edge that looks to the holder: the bit is turned over', () => {
    const pushed = withBar(job({ stroke: 'push' })).bar
    const { bar } = withBar(job({ stroke: 'pull' }))
    expect(bar.tipBeyond).toBeCloseTo(bar.overtravel + bar.holeToEnd + bar.seatRise, 9)
    expect(bar.tipBeyond - pushed.tipBeyond).toBeCloseTo(6, 9)
    expect(bar.bodyLength).toBeGreaterThan(pushed.bodyLength + 5)
  })

  it('leaves the holder its gap when it is right in', () => {
    for (const stroke of ['push', 'pull']) {
      const { bar } = withBar(job({ stroke }))
      expect(bar.holderGap).toBeCloseTo(bar.overhang - 40 - bar.overtravel, 9)
      expect(bar.holderGap).toBeGreaterThanOrEqual(12.7 - 1e-9)
    }
  })

  it('is pulled with square bits only, whatever is on hand', () => {
    const { bar } = withBar({
      ...job({}),
      bore: { diameter: 12, length: 14 },
      feature: { keyway: { standard: 'iso-773' } },
      tooling: { bar: { machine: 'mill', behind: 40, stroke: 'pull' } },
    })
    expect(bar.bit.shape).toBe('square')
  })

  it('says what a caliper reads over it, and stock that it comes out of', () => {
    const { bar } = withBar(job({}))
    expect(bar.overBarAndNose).toBeCloseTo(16 + bar.projection, 9)
    expect(bar.stock.diameter).toBeGreaterThanOrEqual(bar.shank.nominal)
    expect(bar.stock.length).toBeGreaterThanOrEqual(bar.overall + 3 - 1e-9)
  })
})
