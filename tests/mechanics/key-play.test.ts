import { describe, expect, it } from 'vitest'
import { exact, type Size, withDeviations } from '../../src/fits/size.ts'
import { lostToOffset, offsetWithin, playLimits, playOf, topClearances } from '../../src/mechanics/key-play.ts'
import { acrossAt, taperRates, tiltOf, windowLoss } from '../../src/dimensions/taper-key.ts'
import { asmeAcross, asmeShaftAcross } from '../../src/dimensions/bore.ts'

const stack = {
  across: withDeviations(28.3, 0, 0.2),
  shaftAcross: withDeviations(21, -0.2, 0),
  height: withDeviations(7, -0.09, 0),
  bore: withDeviations(25, 0, 0.021),
  shaft: withDeviations(25, -0.021, 0),
}

describe('the play over a key', () => {
  it('25 H7/h7, 8 × 7: .279 to .790 in the middle, .258 hub down, .300 the other way: worked scenario, derived', () => {
    const { concentric, hubDown, otherWay } = topClearances(stack)
    const limits = ({ lower, upper }: Size) => [Number(lower.toFixed(4)), Number(upper.toFixed(4))]
    expect(limits(concentric)).toEqual([0.279, 0.79])
    expect(limits(hubDown)).toEqual([0.258, 0.79])
    expect(limits(otherWay)).toEqual([0.3, 0.79])
  })

  it('is the least and the most over all 32 corners of the five sizes', () => {
    for (const [name, share] of [
      ['concentric', 0.5],
      ['hubDown', 1],
      ['otherWay', 0],
    ] as const) {
      const found: number[] = []
      for (let corner = 0; corner < 32; corner++) {
        const at = (size: Size, bit: number) => ((corner >> bit) & 1 ? size.upper : size.lower)
        const [T, S, H] = [at(stack.across, 0), at(stack.shaftAcross, 1), at(stack.height, 2)]
        found.push(T - S - H - share * (at(stack.bore, 3) - at(stack.shaft, 4)))
      }
      const { lower, upper } = topClearances(stack)[name]
      expect(lower).toBeCloseTo(Math.min(...found), 12)
      expect(upper).toBeCloseTo(Math.max(...found), 12)
    }
  })
})

describe('a slot out of the middle', () => {
  // Where key and hub touch: mouth to the key's top.
  const metric = { from: Math.sqrt(12.5 ** 2 - 16), to: 21 - 12.5 + 7 }
  const inches = { from: Math.sqrt(0.25 - 0.125 ** 2), to: 0.859123 - 0.5 + 0.25 }

  it('0.1 on 25/8 costs .026751 of width; .010 on 1 in/¼ costs .002287: worked scenario, derived', () => {
    expect(lostToOffset(metric, 0.1)).toBeCloseTo(0.026751, 6)
    expect(lostToOffset(metric, -0.1)).toBeCloseTo(0.026751, 6)
    expect(lostToOffset(inches, 0.01)).toBeCloseTo(0.002287, 6)
  })

  it('25/8 JS9 hub and h9 key: play .018 allows .067286 of offset: ISO/R 773 widths; worked scenario, derived', () => {
    const [slot, key] = [withDeviations(8, -0.018, 0.018), withDeviations(8, -0.036, 0)]
    const play = playOf(slot, key)
    expect(play).toBeCloseTo(0.018, 9)
    expect(offsetWithin(metric, play)).toBeCloseTo(0.067286, 5)
    expect(lostToOffset(metric, offsetWithin(metric, play))).toBeCloseTo(play, 12)
    const [least, most] = playLimits(slot, key)
    expect([least, most].map((limit) => Number(limit.toFixed(3)))).toEqual([-0.018, 0.054])
    expect(playOf(exact(8), exact(8.01))).toBe(0)
  })

  it('turned as well as can be: a search over the angle finds the same loss', () => {
    // Slot walls at offset ± half, the key's walls radial in the shaft's frame: what is lost is the spread of sideways gaps.
    const offset = 0.1
    let least = Infinity
    for (let angle = -0.02; angle <= 0.02; angle += 0.000001) {
      const gaps = [metric.from, metric.to].map((x) => Math.abs(offset - angle * x))
      least = Math.min(least, 2 * Math.max(...gaps))
    }
    expect(lostToOffset(metric, offset)).toBeCloseTo(least, 4)
  })
})

describe('a taper key', () => {
  it('1:100 and 1:96 tilt the hub .572939 and .596809°: worked scenario, derived; the rates from memory', () => {
    expect(tiltOf(taperRates['1:100'])).toBeCloseTo(0.572939, 6)
    expect(tiltOf(taperRates['1:96'])).toBeCloseTo(0.596809, 6)
  })

  it('1:100 in a hub of 40: across 28.300 falls to 27.900, and the window loses .400: worked scenario, derived', () => {
    expect(acrossAt(28.3, taperRates['1:100'], 40)).toBeCloseTo(27.9, 9)
    expect(acrossAt(28.3, taperRates['1:100'], 0)).toBe(28.3)
    expect(windowLoss(taperRates['1:100'], 40)).toBeCloseTo(0.4, 9)
  })

  it('ASME B17.1, ½ in shaft, ⅛ square and 1 in, ¼: T of a taper key .535 and 1.089 (Machinery’s Handbook 31, p. 2552)', () => {
    expect(asmeAcross(0.5, 0.125, 0.125, -0.02)).toBeCloseTo(0.53456, 5)
    expect(asmeAcross(1, 0.25, 0.25, -0.02)).toBeCloseTo(1.08912, 5)
    expect(asmeShaftAcross(0.5, 0.125, 0.125)).toBeCloseTo(0.42956, 5)
  })
})
