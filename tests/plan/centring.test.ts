import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sectionOf } from '../../src/dimensions/section.ts'
import { engagement, lostToOffset } from '../../src/mechanics/key-play.ts'
import { centred } from '../../src/plan/answers.ts'
import { centringOf, differenceAt, offsetBudget, turnedSpindle } from '../../src/plan/centring.ts'
import { specOf } from '../dimensions/designed.ts'

const sectionFor = (bore: object, feature: object) =>
  sectionOf(specOf({ units: 'mm', bore, hub: { outside: 80 }, feature })).sizes
/** 25 mm bore without tolerance, key 8 × 7. */
const keyed = sectionFor({ diameter: 25, tolerance: [0, 0], length: 40 }, { keyway: { standard: 'iso-773' } })

/** First x at which a sharp corner of a nose off the middle meets the bore, by bisection on the two corners. */
const touches = (radius: number, width: number, offset: number): readonly [number, number] => {
  const meet = (y: number) => {
    let [low, high] = [0, radius]
    for (let n = 0; n < 80; n++) {
      const x = (low + high) / 2
      if (x * x + y * y < radius * radius) low = x
      else high = x
    }
    return low
  }
  return [meet(offset + width / 2), meet(offset - width / 2)]
}

describe('the two corners', () => {
  // Derived: 1 in bore, 1/4 nose off by .002 in; 25 mm, 8 wide, off by 0.05.
  it.each([
    [0.5, 0.25, 0.002, 0.001033],
    [12.5, 8, 0.05, 0.033776],
  ])(
    'in a bore of radius %f a nose of %f off by %f marks with a difference of %f',
    (radius, width, off, difference) => {
      expect(differenceAt(radius, width, off)).toBeCloseTo(difference, 6)
      const [first, second] = touches(radius, width, off)
      expect(Math.abs(second - first)).toBeCloseTo(difference, 6)
    },
  )

  // Corners of .1 to .5 mm: where each touches, by bisection on the arc's own points.
  it.each([
    [12, 7, 0.5, 0.03],
    [12.5, 8, 0.2, 0.05],
    [4.7625, 3.175, 0.38, 0.02],
  ])(
    'in a bore of radius %f a nose of %f with corners of %f, off by %f, is found again',
    (radius, width, corner, off) => {
      const reach = (side: 1 | -1): number => {
        const middle = side * (width / 2 - corner) + off
        let [low, high] = [0, radius]
        for (let n = 0; n < 80; n++) {
          const flat = (low + high) / 2
          // Farthest of the corner's points from the axis, a point each 0.01°.
          let far = 0
          for (let at = 0; at <= 9000; at++) {
            const angle = (at / 100) * (Math.PI / 180)
            far = Math.max(
              far,
              Math.hypot(flat - corner + corner * Math.cos(angle), middle + side * corner * Math.sin(angle)),
            )
          }
          if (far < radius) low = flat
          else high = flat
        }
        return low
      }
      const difference = Math.abs(reach(1) - reach(-1))
      expect(differenceAt(radius, width, off, corner)).toBeCloseTo(difference, 6)
      const touch = corner + Math.sqrt((radius - corner) ** 2 - (width / 2 - corner) ** 2)
      const { factor } = centringOf(keyed, width, touch, { mark: 0.02, perInfeed: 1 }, 'mm', corner)
      expect(factor * difference).toBeCloseTo(off, 4)
      // As if they were sharp it would be found too small.
      expect((touch / width) * difference).toBeLessThan(off * 0.99)
    },
  )

  it('a difference of .001 in on 1/4 in a 1 in bore is .001936 (derived)', () => {
    const { factor, factorOfReading } = centringOf(keyed, 0.25, 0.484123, { mark: 0.001, perInfeed: 1 }, 'mm')
    expect(factor * 0.001).toBeCloseTo(0.001936, 6)
    expect(factorOfReading).toBe(factor)
    // Steps of .0005 in: ±.0010.
    expect(0.0005 * factor).toBeCloseTo(0.001, 4)
  })

  it('turns back into the offset, in any bore', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 50, noNaN: true }),
        fc.double({ min: 0.15, max: 0.7, noNaN: true }),
        fc.double({ min: 0.0005, max: 0.005, noNaN: true }),
        (radius, share, off) => {
          const width = 2 * radius * share
          const y0 = off * radius
          const touch = Math.sqrt(radius ** 2 - (width / 2) ** 2)
          const estimate = (differenceAt(radius, width, y0) * touch) / width
          expect(Math.abs(estimate / y0 - 1)).toBeLessThan(0.002)
        },
      ),
    )
  })

  it('a nose out of square reads as off: .1, .25 and .5° look like .0008, .0021 and .0042 in (derived)', () => {
    const { perDegree } = centringOf(keyed, 0.25, 0.484123, { mark: 0.001, perInfeed: 1 }, 'mm')
    expect(0.1 * perDegree).toBeCloseTo(0.000845, 6)
    expect(0.25 * perDegree).toBeCloseTo(0.0021, 4)
    expect(0.5 * perDegree).toBeCloseTo(0.0042, 4)
  })

  it('may be out of square by as much as looks like the offset allowed: .016822 at 11.842719 is 0.081386°', () => {
    const { squareWithin, table, uncertainty } = centringOf(keyed, 8, 11.842719, { mark: 0.02, perInfeed: 1 }, 'mm')
    expect(squareWithin).toBeCloseTo(0.081386, 4)
    // Half a mark, and marks one by one: 11.842719/8 sideways for each.
    expect(uncertainty).toBeCloseTo(0.0148034, 6)
    expect(table.map(({ difference }) => Math.round(difference * 1e6) / 1e6)).toEqual([
      0.02, 0.04, 0.06, 0.08, 0.1, 0.2,
    ])
    expect(table.map(({ move }) => Math.round(move * 1e4) / 1e4)).toEqual([
      0.0296, 0.0592, 0.0888, 0.1184, 0.148, 0.2961,
    ])
    // A finer dial is tabled by 0.02 mm, or by .001 in.
    const finer = (units: 'mm' | 'in') => centringOf(keyed, 8, 11.842719, { mark: 0.005, perInfeed: 1 }, units).table[0]
    expect([finer('mm')?.difference, finer('in')?.difference]).toEqual([0.02, 0.0254])
  })

  it('a dial that reads diameter shows twice the difference for the same offset', () => {
    const travel = centringOf(keyed, 8, 11.842719, { mark: 0.02, perInfeed: 1 }, 'mm')
    const diameter = centringOf(keyed, 8, 11.842719, { mark: 0.04, perInfeed: 2 }, 'mm')
    expect(diameter.factorOfReading).toBeCloseTo(travel.factorOfReading / 2, 12)
    expect(diameter.differenceMost).toBeCloseTo(2 * travel.differenceMost, 12)
  })
})

describe('how far off is far', () => {
  it('.1 mm off takes .026751 of the play; JS9 on h9 stands .067286, and a quarter is the gate: .016822 (derived)', () => {
    expect(lostToOffset(engagement(keyed), 0.1)).toBeCloseTo(0.026751, 6)
    expect(offsetBudget(keyed)).toBeCloseTo(0.067286, 5)
    const centring = centringOf(keyed, 8, keyed.touchOff, { mark: 0.02, perInfeed: 1 }, 'mm')
    expect(centring.offsetMost).toBeCloseTo(0.016822, 5)
    expect(centring.offsetFrom).toBe('fit')
    // Half a mark is 0.01, which is 0.0148 sideways: good enough, a whole mark is not.
    expect([centring.differenceMost, centring.dialIsFineEnough]).toEqual([0.01, true])
  })

  it('says so where the dial cannot tell', () => {
    const centring = centringOf(keyed, 8, keyed.touchOff, { mark: 0.1, perInfeed: 1 }, 'mm')
    expect([centring.differenceMost, centring.dialIsFineEnough]).toEqual([0.05, false])
  })

  it('a key that is not known: a quarter of .010 in (ASME B17.1: offset)', () => {
    const bare = sectionFor({ diameter: 25, length: 40 }, { keyway: { width: 8, across: 28.3 } })
    const { offsetMost, offsetFrom } = centringOf(bare, 8, 11.8, { mark: 0.02, perInfeed: 1 }, 'mm')
    expect([offsetMost, offsetFrom]).toEqual([0.254 / 4, 'judgement'])
  })
})

describe('at the machine', () => {
  const centring = centringOf(keyed, 8, 11.842719, { mark: 0.02, perInfeed: 1 }, 'mm')

  it('tells what to move by, or that it is good', () => {
    expect(centred(centring, 1.2, 1.21)).toMatchObject({ good: true })
    const off = centred(centring, 1.2, 1.22)
    expect(off.good).toBe(false)
    expect(off.move).toBeCloseTo((0.02 * 11.842719) / 8, 9)
  })

  it('touched again with the spindle turned, parts the bar off the bore from the nose off the bar', () => {
    // The bar 0.03 off the bore, the nose 0.05 off the bar: in the bar's frame first 0.08, then 0.02.
    expect(turnedSpindle(0.08, 0.02).barOffBore).toBeCloseTo(0.03, 12)
    expect(turnedSpindle(0.08, 0.02).noseOffBar).toBeCloseTo(0.05, 12)
  })
})
