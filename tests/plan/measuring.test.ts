import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measuringOf, pinError } from '../../src/plan/measuring.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import { specOf } from '../dimensions/designed.ts'

const inch = 25.4
const measured = (document: object) => {
  const spec = specOf(document)
  const section = sectionOf(spec).sizes
  return { section, ...measuringOf(spec, section).sizes }
}
const plain = { units: 'mm', bore: { diameter: 25, length: 40 }, hub: { outside: 60 } } as const
const standard = { ...plain, feature: { keyway: { standard: 'iso-773' } } }

/**
 * Largest plug between a pin in the slot and the wall opposite, by a grid: the pin anywhere in the slot on its floor side, the plug's radius the
 * most for which a circle within the bore touches neither pin nor wall. Shares nothing with the closed form.
 */
const largestPlug = (radius: number, width: number, floor: number, pin: number): number => {
  const spare = (width - pin) / 2
  let best = 0
  for (let n = 0; n <= 400; n++) {
    const [px, py] = [floor - pin / 2, (n / 400) * spare]
    // Plug touching the bore and the pin: centre on the line through the bore's axis away from the pin; diameter R − pin/2 + distance.
    for (let turn = 0; turn <= 200; turn++) {
      const angle = Math.atan2(py, px) + ((turn - 100) / 100) * 0.05
      let [small, large] = [0, radius]
      for (let halving = 0; halving < 50; halving++) {
        const r = (small + large) / 2
        const [cx, cy] = [-(radius - r) * Math.cos(angle), -(radius - r) * Math.sin(angle)]
        if (Math.hypot(px - cx, py - cy) >= r + pin / 2) small = r
        else large = r
      }
      best = Math.max(best, 2 * small)
    }
  }
  return best
}

describe('pin and plug', () => {
  // Derived: 25 mm bore, 8 wide, across 28.3: a narrower pin rolls aside and lets a larger plug in.
  it.each([
    [7, 0.010158],
    [6, 0.039003],
    [7.9, 0.000105],
  ])('a pin of %f in a slot of 8 finds %f too much', (pin, error) => {
    expect(pinError(15.8, 8, pin)).toBeCloseTo(error, 6)
  })

  it('a grid search finds the same largest plugs: 22.3389 and 21.3100', () => {
    expect(largestPlug(12.5, 8, 15.8, 6)).toBeCloseTo(28.3 - 6 + pinError(15.8, 8, 6), 4)
    expect(28.3 - 6 + pinError(15.8, 8, 6)).toBeCloseTo(22.339, 4)
    expect(largestPlug(12.5, 8, 15.8, 7)).toBeCloseTo(28.3 - 7 + pinError(15.8, 8, 7), 4)
    expect(28.3 - 7 + pinError(15.8, 8, 7)).toBeCloseTo(21.31016, 4)
  })

  it('is near (w − q)²/(8 (f − q/2)), and never less than nought', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.double({ min: 0.7, max: 1, noNaN: true }),
        (floor, share) => {
          const width = floor / 2
          const pin = width * share
          const error = pinError(floor, width, pin)
          expect(error).toBeGreaterThanOrEqual(0)
          expect(error).toBeCloseTo((width - pin) ** 2 / (8 * (floor - pin / 2)), 2)
        },
      ),
    )
  })

  it('plugs are across less the pin, at both limits: 1.114123 with a pin of .246 is .868123', () => {
    const { ways } = measured({
      units: 'in',
      bore: { diameter: 1, tolerance: [0, 0], length: 1 },
      hub: { outside: 3 },
      feature: { keyway: { width: 0.25, across: [1.114123, 1.124123] } },
      shop: { units: 'in', pins: [0.24, 0.246] },
    })
    const way = ways[0]
    if (way?.by !== 'pin and plug') throw new Error('no pin')
    expect(way.pin / inch).toBeCloseTo(0.246, 9)
    expect(way.plug.go / inch).toBeCloseTo(0.868123, 9)
    expect(way.plug.noGo / inch).toBeCloseTo(0.878123, 9)
    expect([way.pinOnHand, way.plugsOnHand]).toEqual([true, false])
  })

  it('a pin on hand that is too narrow is passed over for one to be turned', () => {
    const [way] = measured({ ...standard, shop: { pins: [5, 6] } }).ways
    if (way?.by !== 'pin and plug') throw new Error('no pin')
    expect(way.pin).toBe(7.9)
    expect(way.pinOnHand).toBe(false)
    expect(way.error).toBeLessThan(0.02)
  })

  it('takes plugs on hand that keep half of the limits, within them', () => {
    const { ways, across } = measured({ ...standard, shop: { pins: [7.9], plugs: [20.3, 20.41, 20.42, 20.59, 20.7] } })
    const [way] = ways
    if (way?.by !== 'pin and plug') throw new Error('no pin')
    expect([across.least, across.most]).toEqual([28.3, 28.5])
    expect(way.plug).toEqual({ go: 20.41, noGo: 20.59 })
    expect(way.plugsOnHand).toBe(true)
    // Too near one another: turned after all.
    const [turned] = measured({ ...standard, shop: { pins: [7.9], plugs: [20.41, 20.42] } }).ways
    if (turned?.by !== 'pin and plug') throw new Error('no pin')
    expect(turned.plugsOnHand).toBe(false)
    expect(turned.plug.go).toBeCloseTo(20.4, 9)
  })

  it('one plug cannot be go and no-go at once, even where across has no limits: 28.3 less a pin of 7.9', () => {
    const document = { ...plain, feature: { keyway: { width: 8, across: 28.3 } }, shop: { pins: [7.9], plugs: [20.4] } }
    const [way] = measured(document).ways
    if (way?.by !== 'pin and plug') throw new Error('no pin')
    expect(way.plugsOnHand).toBe(false)
  })

  it('over the standard bores: the pin shows over the crown and goes in, its error a tenth of the limits at most', () => {
    for (let diameter = 7; diameter <= 100; diameter++) {
      const { ways, across, section } = measured({ ...standard, bore: { diameter, length: 20 }, hub: { outside: 300 } })
      const pin = ways.find((way) => way.by === 'pin and plug')
      if (!pin) throw new Error(`no pin for ${diameter}`)
      expect(pin.pin).toBeGreaterThan(section.crownDepthLimits.upper)
      expect(pin.pin).toBeLessThan(section.widthLimits.lower)
      expect(pin.error).toBeLessThanOrEqual(Math.max((across.most - across.least) / 10, 0.002))
      expect(pin.plug.go).toBeLessThan(diameter)
      expect(pin.plug.go).toBeLessThan(pin.plug.noGo)
    }
  })
})

describe('a block and an inside reading', () => {
  it('stands out of the mouth; across less block: 1.114123 over .25 is .864123', () => {
    const { ways, section } = measured({
      units: 'in',
      bore: { diameter: 1, tolerance: [0, 0], length: 1 },
      hub: { outside: 3 },
      feature: { keyway: { width: 0.25, across: [1.114123, 1.124123] } },
    })
    const way = ways.find((each) => each.by === 'block and inside reading')
    if (!way) throw new Error('no block')
    expect(way.block).toBeGreaterThan(section.sideDepthLimits.upper)
    expect((way.inside.go + way.block) / inch).toBeCloseTo(1.114123, 9)
    expect((way.inside.noGo + way.block) / inch).toBeCloseTo(1.124123, 9)
  })
})

describe('where across cannot be measured to the bore', () => {
  it('two keyways right opposite: floor to floor, and blocks over a plug', () => {
    const { toBore, floorToFloor, ways, instead, section } = measured({
      ...plain,
      feature: { keyway: { standard: 'iso-773', at: [0, 180] } },
    })
    expect(toBore).toBe(false)
    expect(floorToFloor?.pairs).toEqual([[1, 2]])
    expect(floorToFloor?.middle).toBeCloseTo(2 * section.floor, 9)
    expect(instead).toContain('floor to floor')
    expect(ways.map(({ by }) => by)).toEqual(['plug and blocks'])
  })

  it('pairs count round from the first slot that is named, in whatever order they are', () => {
    const pairs = (at: readonly number[]) =>
      measured({ ...plain, feature: { keyway: { standard: 'iso-773', at } } }).floorToFloor?.pairs
    expect(pairs([0, 90, 180])).toEqual([[1, 3]])
    expect(pairs([30, 120, 210])).toEqual([[1, 3]])
    // From 210 on: 30 is the second, 120 the third.
    expect(pairs([210, 30, 120])).toEqual([[1, 2]])
    expect(pairs([300, 30, 120, 210])).toEqual([
      [1, 3],
      [2, 4],
    ])
  })

  it('a slot that takes part of the wall: blocks over a plug that fills the bore', () => {
    const { toBore, floorToFloor, ways, section } = measured({
      ...plain,
      feature: { keyway: { standard: 'iso-773', at: [0, 170] } },
    })
    expect([toBore, floorToFloor]).toEqual([false, undefined])
    expect(ways).toEqual([
      {
        by: 'plug and blocks',
        plug: 25,
        blocks: { go: section.crownDepthLimits.lower, noGo: section.crownDepthLimits.upper },
      },
    ])
  })

  it('six splines: three pairs, 26 H10 over the floors (6 × 23 × 26 × 6)', () => {
    const { floorToFloor, sideToSide } = measured({
      ...plain,
      bore: { diameter: 23, length: 30 },
      feature: { spline: { standard: 'iso-14', size: '6x23x26' } },
    })
    expect(floorToFloor?.pairs).toEqual([
      [1, 4],
      [2, 5],
      [3, 6],
    ])
    // ISO 286: H10 of 26 is 0.084.
    expect([floorToFloor?.least, floorToFloor?.middle, floorToFloor?.most]).toEqual(
      [26, 26.042, 26.084].map((size) => expect.closeTo(size, 9)),
    )
    // ISO 14: symmetry of a slot 6 wide, IT7.
    expect(sideToSide).toBe(0.012)
  })

  it('a quarter turn leaves the wall whole', () => {
    const { toBore, ways } = measured({ ...plain, feature: { keyway: { standard: 'iso-773', at: [0, 90] } } })
    expect(toBore).toBe(true)
    expect(ways.map(({ by }) => by)).toEqual(['pin and plug', 'block and inside reading'])
  })

  it('a slit has no floor, a socket is measured across its flats', () => {
    const slit = measured({ ...plain, feature: { slit: { width: 1, count: 3, outside: 30 } } })
    expect([slit.toBore, slit.ways]).toEqual([false, []])
    expect(slit.instead).toMatch(/^A slit has no floor/)
    const socket = measured({
      ...plain,
      bore: { diameter: 12.5, length: 20 },
      feature: { socket: { sides: 4, across: [12, 12.1] } },
    })
    expect(socket.width).toEqual({ go: 12, noGo: 12.1 })
    expect(socket.ways).toEqual([])
  })
})

describe('width and sides', () => {
  it('width goes by the limits of the slot, sides by what the key’s play allows', () => {
    const { width, sideToSide, lead, key } = measured(standard)
    // JS9 of 8: ±0.018 (ISO 286).
    expect(width).toEqual({ go: 7.982, noGo: 8.018 })
    // Derived for a bore without tolerance: .067286; here at the middle of H7.
    // The other half of its play is left for the lead: .018 mm of play, half of it.
    expect(sideToSide).toBeCloseTo(0.0673 / 2, 3)
    expect(lead).toBeCloseTo(0.009, 6)
    expect(key).toBe(true)
  })
})

describe('oil grooves', () => {
  const grooves = (at: readonly number[]) =>
    measured({
      ...plain,
      bore: { diameter: 30, length: 45 },
      feature: { groove: { radius: 1.5, depth: [1, 1.2], at } },
    })

  it('one is measured to the wall opposite', () => {
    const { toBore, floorToFloor } = grooves([0])
    expect(toBore).toBe(true)
    expect(floorToFloor).toBeUndefined()
  })

  it('two that stand opposite each other are measured from one to the other', () => {
    const { toBore, floorToFloor, instead } = grooves([0, 180])
    expect(toBore).toBe(false)
    expect(floorToFloor?.pairs).toEqual([[1, 2]])
    expect(instead).toContain('the groove opposite')
  })
})
