import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figure, fraction, rounded, withFraction } from '../../src/spec/figures.ts'
import { readLength } from '../../src/spec/length.ts'

describe('figures for people', () => {
  it.each([
    [4.1, 'mm', {}, '4.1 mm'],
    [24, 'mm', {}, '24 mm'],
    [100, 'mm', {}, '100 mm'],
    [24.0115, 'mm', { fit: true }, '24.012 mm'],
    [0.004, 'mm', {}, '0 mm'],
    [-0.004, 'mm', {}, '0 mm'],
    [-0.021, 'mm', { fit: true, unit: false }, '-0.021'],
    [15.875, 'in', {}, '0.625 in'],
    [15.875, 'in', { fit: true }, '0.6250 in'],
    [25.4, 'in', { unit: false }, '1.000'],
    [4.101, 'mm', { lean: 'up' }, '4.11 mm'],
    [4.109, 'mm', { lean: 'down' }, '4.1 mm'],
    [-4.101, 'mm', { lean: 'up' }, '-4.1 mm'],
    [-4.101, 'mm', { lean: 'down' }, '-4.11 mm'],
    [0.3 - 0.1, 'mm', { lean: 'down' }, '0.2 mm'],
    [0.1 + 0.2, 'mm', { lean: 'up' }, '0.3 mm'],
  ] as const)('%d in %s, %j: %s', (mm, units, style, text) => {
    expect(figure(mm, units, style)).toBe(text)
  })

  it('a leaning figure never crosses its value, and none is a step away', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (value, decimals) => {
          const step = 10 ** -decimals
          const [up, down, near] = [
            rounded(value, decimals, 'up'),
            rounded(value, decimals, 'down'),
            rounded(value, decimals),
          ]
          expect(Number(up)).toBeGreaterThan(value - 1e-6 * step)
          expect(Number(down)).toBeLessThan(value + 1e-6 * step)
          for (const text of [up, down]) expect(Math.abs(Number(text) - value)).toBeLessThan(step)
          expect(Math.abs(Number(near) - value)).toBeLessThan(step * 0.500001)
          expect(near).toMatch(/^(-(?!0*\.?0*$))?\d+(\.\d+)?$/)
        },
      ),
    )
  })

  it('the fraction read again is the length', () => {
    for (let parts = 1; parts <= 512; parts += 1) {
      const mm = (parts * 25.4) / 64
      expect(readLength(fraction(mm), 'in')).toBeCloseTo(mm, 12)
    }
    expect(fraction(15.875)).toBe('5/8')
    expect(fraction(34.925)).toBe('1-3/8')
    expect(fraction(50.8)).toBe('2')
    expect(fraction(8.4)).toBeUndefined()
    expect(fraction(0)).toBeUndefined()
    expect(fraction(-25.4)).toBeUndefined()
  })

  it('fractions stand behind inches alone', () => {
    expect(withFraction(15.875, 'in')).toBe('0.625 in (5/8)')
    expect(withFraction(25.4, 'in')).toBe('1.000 in')
    expect(withFraction(8.4, 'in')).toBe('0.331 in')
    expect(withFraction(15.875, 'mm')).toBe('15.88 mm')
  })

  it('lets a half go to the even figure, as the drawings do', () => {
    // ASTM E29: 1.2025 and 1.2035 lie half way; the even last figure is kept. Both are exact in binary to within the guard.
    expect([figure(1.2025 * 25.4, 'in'), figure(1.2035 * 25.4, 'in')]).toEqual(['1.202 in', '1.204 in'])
    expect([figure(-0.125, 'mm'), figure(0.135, 'mm')]).toEqual(['-0.12 mm', '0.14 mm'])
    expect(figure(0.1251, 'mm')).toBe('0.13 mm')
  })
})
