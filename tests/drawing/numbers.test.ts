import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asLimits, inline, inWords, type Manner, rounded, roughness, tolerance } from '../../src/drawing/numbers.ts'
import type { Saying, Worth } from '../../src/drawing/view.ts'

const iso: Manner = { convention: 'iso', units: 'mm' }
const inch: Manner = { convention: 'asme', units: 'in' }
const asmeMm: Manner = { convention: 'asme', units: 'mm' }
const worth = (value: number, saying: Saying, more: Partial<Worth> = {}): Worth => ({ value, saying, ...more })
const plain = { say: 'plain' } as const
const in25 = (inches: number): number => inches * 25.4

describe('numbers', () => {
  // Forms as ISO 129-1 and ASME Y14.5 write them, from memory; the rest is the house's own.
  it.each<[string, Manner, Worth]>([
    ['40', iso, worth(40, plain)],
    ['0.5', iso, worth(0.5, plain)],
    ['0,5', { ...iso, decimal: 'comma' }, worth(0.5, plain)],
    ['Ø36', iso, worth(36, plain, { prefix: 'Ø' })],
    ['8.1 ±0.025', iso, worth(8.1, { say: 'plusMinus', tolerance: 0.025 })],
    ['10.77 ±0.02', iso, worth(10.77, { say: 'plusMinus', tolerance: 0.02 })],
    ['Ø24 −0.013/−0.025', iso, worth(24, { say: 'limits', lower: 23.975, upper: 23.987 }, { prefix: 'Ø' })],
    ['Ø20 h7 0/−0.021', iso, worth(20, { say: 'limits', lower: 19.979, upper: 20, fit: 'h7' }, { prefix: 'Ø' })],
    ['Ø8.4 +0.05/0', iso, worth(8.4, { say: 'limits', lower: 8.4, upper: 8.45 }, { prefix: 'Ø' })],
    ['Ø23.975 / Ø23.987', asmeMm, worth(24, { say: 'limits', lower: 23.975, upper: 23.987 }, { prefix: 'Ø' })],
    [
      'Ø.8740 / Ø.8745',
      inch,
      worth(in25(0.875), { say: 'limits', lower: in25(0.874), upper: in25(0.8745) }, { prefix: 'Ø' }),
    ],
    ['.488 ±.001', inch, worth(in25(0.488), { say: 'plusMinus', tolerance: in25(0.001) })],
    ['.1915 ±.0010', inch, worth(in25(0.1915), { say: 'plusMinus', tolerance: in25(0.001) })],
    ['.250', inch, worth(in25(0.25), plain)],
    ['1.438', inch, worth(in25(1.4375), plain)],
    ['.06', inch, worth(in25(0.06), { say: 'plain', decimals: { mm: 2, in: 2 } })],
    ['.250 SQ', inch, worth(in25(0.25), plain, { prefix: '□' })],
    ['□6', iso, worth(6, plain, { prefix: '□' })],
    ['(46)', iso, worth(46, { say: 'reference' })],
    ['(1.688)', inch, worth(in25(1.6875), { say: 'reference' })],
    ['R0.5 max', iso, worth(0.5, { say: 'max' }, { prefix: 'R' })],
    ['R.02 MAX', inch, worth(in25(0.02), { say: 'max' }, { prefix: 'R' })],
    ['8°', iso, worth(8, plain, { angle: true })],
    ['1.5°', inch, worth(1.5, plain, { angle: true })],
    ['8° ±0.5°', iso, worth(8, { say: 'plusMinus', tolerance: 0.5 }, { angle: true })],
    ['3° BOTH', inch, worth(3, plain, { angle: true, suffix: 'both' })],
    ['1-3/8', inch, worth(in25(1.375), { say: 'fraction' })],
    ['3/4', inch, worth(in25(0.75), { say: 'fraction' })],
    ['.700', inch, worth(in25(0.7), { say: 'fraction' })],
    ['t 1.115 ±0.01', iso, worth(1.115, { say: 'plusMinus', tolerance: 0.01 }, { prefix: 't ' })],
  ])('%s', (said, manner, given) => expect(inline(given, manner)).toBe(said))

  it('rounds limits inwards, and an exact figure not at all', () => {
    expect(rounded(23.987, 3, 'down')).toBe(23.987)
    expect(rounded((0.874 * 25.4) / 25.4, 4, 'up')).toBe(0.874)
    expect(rounded(14.5501, 2, 'up')).toBe(14.56)
    expect(rounded(0.125, 2, 'even')).toBe(0.12)
    expect(rounded(0.375, 2, 'even')).toBe(0.38)
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.004, max: 1, noNaN: true }),
        (lower, band) => {
          const text = asLimits(worth(lower, { say: 'limits', lower, upper: lower + band }), iso)
          const [low, high] = text.split(' / ').map(Number) as [number, number]
          expect(low).toBeGreaterThanOrEqual(lower - 1e-9)
          expect(high).toBeLessThanOrEqual(lower + band + 1e-9)
          expect(high - low).toBeGreaterThanOrEqual(band * 0.9 - 1e-9)
        },
      ),
    )
  })

  it('deviations give limits within those that were asked', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 1000 }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        fc.double({ min: 0.005, max: 0.3, noNaN: true }),
        (tenths, from, band) => {
          const nominal = tenths / 10
          const text = inline(
            worth(nominal, { say: 'limits', lower: nominal + from, upper: nominal + from + band }),
            iso,
          )
          const [main = '', deviations = ''] = text.split(' ')
          const [upper, lower] = deviations.replaceAll('−', '-').split('/').map(Number) as [number, number]
          expect(Number(main)).toBe(nominal)
          expect(upper).toBeLessThanOrEqual(from + band + 1e-9)
          expect(lower).toBeGreaterThanOrEqual(from - 1e-9)
        },
      ),
    )
  })

  it('words are in capitals where the convention has them so, µ stays', () => {
    const line = [worth(in25(0.01), { say: 'plain', decimals: { mm: 2, in: 2 } }), ' × 45° both mouths, 125 µin']
    expect(inWords(line, inch, true)).toBe('.01 × 45° BOTH MOUTHS, 125 µIN')
    expect(inWords(line, inch)).toBe('.01 × 45° both mouths, 125 µin')
  })

  it('roughness in the unit of the sheet, paired values of ISO 1302 and ASME B46.1, from memory', () => {
    expect(roughness(0.8, iso)).toBe('Ra 0.8')
    expect([0.4, 0.8, 1.6, 3.2].map((ra) => roughness(ra, inch))).toEqual(['16', '32', '63', '125'])
  })

  it('a geometric tolerance is never widened', () => {
    expect(tolerance(0.05, iso)).toBe('0.05')
    expect(tolerance(in25(0.002), inch)).toBe('.002')
    fc.assert(
      fc.property(fc.double({ min: 0.005, max: 0.5, noNaN: true }), (value) => {
        expect(Number(tolerance(value, iso))).toBeLessThanOrEqual(value + 1e-9)
        expect(Number(tolerance(value, inch)) * 25.4).toBeLessThanOrEqual(value + 1e-6)
      }),
    )
  })
})
