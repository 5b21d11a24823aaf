import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/fits/iso-286.ts'
import { leastPlay, mostPlay } from '../../src/fits/play.ts'
import { band, exact, middle, withDeviations } from '../../src/fits/size.ts'

const sized = (nominal: number, name: string) => {
  const limits = limitsOf(nominal, name)
  if (!limits) throw new Error(name)
  return withDeviations(nominal, limits.lower, limits.upper)
}

describe('sizes and their play', () => {
  it('middle and band of 25 g6', () => {
    expect(middle(sized(25, 'g6'))).toBeCloseTo(24.9865, 9)
    expect(band(sized(25, 'g6'))).toBeCloseTo(0.013, 9)
    expect(band(exact(25))).toBe(0)
  })

  it('25 H7/g6 plays 7 to 41 micrometres (ISO 286-2)', () => {
    expect(leastPlay(sized(25, 'H7'), sized(25, 'g6'))).toBeCloseTo(0.007, 9)
    expect(mostPlay(sized(25, 'H7'), sized(25, 'g6'))).toBeCloseTo(0.041, 9)
  })

  it('29 H7/h8 plays 0 to 54 micrometres (documentation of a public fits library)', () => {
    expect(leastPlay(sized(29, 'H7'), sized(29, 'h8'))).toBeCloseTo(0, 9)
    expect(mostPlay(sized(29, 'H7'), sized(29, 'h8'))).toBeCloseTo(0.054, 9)
  })

  it('an interference is negative play: 50 H7/p6', () => {
    expect(leastPlay(sized(50, 'H7'), sized(50, 'p6'))).toBeCloseTo(-0.042, 9)
    expect(mostPlay(sized(50, 'H7'), sized(50, 'p6'))).toBeCloseTo(-0.001, 9)
  })
})
