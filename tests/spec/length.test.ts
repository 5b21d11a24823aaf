import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  readAngle,
  readArea,
  readForce,
  readLength,
  readStiffness,
  readStress,
  readTorque,
} from '../../src/spec/length.ts'

describe('a length as written', () => {
  it.each([
    [24, 'mm', 24],
    ['24', 'mm', 24],
    ['24 mm', 'in', 24],
    ['24mm', 'in', 24],
    ['2.4 cm', 'mm', 24],
    ['12,5 mm', 'in', 12.5],
    ['24,012', 'mm', 24.012],
    ['.5', 'mm', 0.5],
    [1.375, 'in', 34.925],
    ['15/16', 'in', 23.8125],
    ['15/16 in', 'mm', 23.8125],
    ['0.9375 in', 'mm', 23.8125],
    ['1-3/8 in', 'mm', 34.925],
    ['1 3/8', 'in', 34.925],
    ['1-3/8"', 'mm', 34.925],
    ['1 3/8 inches', 'mm', 34.925],
    ['1⅜ in.', 'mm', 34.925],
    ['1½″', 'mm', 38.1],
    ['5 thou', 'mm', 0.127],
    ['20 µm', 'mm', 0.02],
  ] as const)('%j in %s is %d mm', (written, units, mm) => {
    expect(readLength(written, units)).toBeCloseTo(mm, 12)
  })

  it('reads a sign only where one is meant', () => {
    expect(readLength('-0.021', 'mm', { signed: true })).toBe(-0.021)
    expect(readLength('−0.021', 'mm', { signed: true })).toBe(-0.021)
    expect(readLength('+0.0005', 'in', { signed: true })).toBeCloseTo(0.0127, 15)
    expect(readLength('-1/64', 'in', { signed: true })).toBe(-25.4 / 64)
    expect(readLength('-0.021', 'mm')).toBeUndefined()
    expect(readLength(-1, 'mm')).toBeUndefined()
    expect(Object.is(readLength('-0', 'mm'), 0)).toBe(true)
  })

  it.each<unknown>([
    '',
    ' ',
    '1,000.5',
    '1.000,5',
    '1,2,3',
    '0x18',
    '1e400',
    '1e3',
    'NaN',
    'Infinity',
    '24 furlongs',
    '1/0',
    '0/0',
    '1-9/8',
    '1/2/3',
    '15-16',
    "24'",
    '24 mm mm',
    'mm',
    'twenty',
    '--1',
    '1 000',
    '24 constructor',
    '__proto__',
    Number.NaN,
    Number.POSITIVE_INFINITY,
    null,
    undefined,
    true,
    [24],
    { mm: 24 },
    '9'.repeat(400),
  ])('refuses %j', (written) => {
    expect(readLength(written, 'mm')).toBeUndefined()
    expect(readLength(written, 'in')).toBeUndefined()
  })

  // ASME B94.11M: #7 is .2010 in, letter F .257 in; both stand in any drill chart.
  it('reads drills by number and letter, a bare letter only where a drill is meant', () => {
    expect(readLength('#7', 'mm')).toBeCloseTo(0.201 * 25.4, 12)
    expect(readLength('letter F', 'mm')).toBeCloseTo(0.257 * 25.4, 12)
    expect(readLength('f', 'in', { drill: true })).toBeCloseTo(0.257 * 25.4, 12)
    expect(readLength('F', 'in')).toBeUndefined()
    expect(readLength('#0', 'in')).toBeUndefined()
    expect(readLength('#81', 'in')).toBeUndefined()
    expect(readLength('#7 mm', 'in')).toBeUndefined()
  })

  it('is exact for every 64th up to 16 in, in every spelling', () => {
    for (let parts = 1; parts <= 1024; parts += 1) {
      const exact = (parts * 254) / 640
      const [whole, over] = [Math.floor(parts / 64), parts % 64]
      expect(readLength(`${parts}/64 in`, 'mm')).toBe(exact)
      if (over > 0 && whole > 0) expect(readLength(`${whole}-${over}/64`, 'in')).toBe(exact)
      expect(readLength(`${parts / 64}`, 'in')).toBeCloseTo(exact, 11)
    }
  })

  it('a text with its unit says the same whatever the job is in', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 500, noNaN: true }), fc.constantFrom('mm', 'in'), (size, unit) => {
        const written = `${size.toFixed(6)} ${unit}`
        expect(readLength(written, 'mm')).toBe(readLength(written, 'in'))
        expect(readLength(written, unit)).toBe(readLength(Number(size.toFixed(6)), unit))
      }),
    )
  })

  it('reads any text without throwing', () => {
    fc.assert(
      fc.property(fc.anything(), fc.string({ unit: 'grapheme' }), (junk, text) => {
        for (const written of [junk, text]) {
          const mm = readLength(written, 'in', { signed: true })
          expect(mm === undefined || Number.isFinite(mm)).toBe(true)
        }
      }),
    )
  })
})

describe('other quantities', () => {
  // 1 lbf = 4.4482216152605 N, 1 lbf in = 0.1129848290276167 N m, 1 psi = 6894.757293168 Pa: NIST SP 811, Appendix B.
  it.each(['90 N m', '90 Nm', '90 N·m', '90 N-m', '90000 N mm', '0.09 kN m'])('%s is 90 N m', (written) => {
    expect(readTorque(written, 'in')).toBeCloseTo(90_000, 8)
  })
  it.each(['1000 lbf in', '1000 in-lb', '1000 lb-in', '1000 in lbf', '1000 lbf·in'])('%s is 112.98 N m', (written) => {
    expect(readTorque(written, 'mm')).toBeCloseTo(112_984.8290276167, 6)
  })
  it('feet are twelve inches', () => {
    expect(readTorque('10 lbf ft', 'mm')).toBeCloseTo(readTorque('120 lbf in', 'mm') ?? 0, 9)
    expect(readTorque('10 ft-lbs', 'mm')).toBeCloseTo(readTorque(120, 'in') ?? 0, 9)
  })
  it('bare numbers are in the unit of the job', () => {
    expect(readTorque(90, 'mm')).toBe(90_000)
    expect(readForce(100, 'mm')).toBe(100)
    expect(readForce(100, 'in')).toBeCloseTo(444.82216152605, 9)
    expect(readStress(1000, 'in')).toBeCloseTo(6.894757293168, 9)
    expect(readStress(250, 'mm')).toBe(250)
    expect(readArea(0.012, 'in')).toBeCloseTo(0.012 * 645.16, 12)
    expect(readStiffness(5000, 'mm')).toBe(5000)
    // core default: 5000 N/mm is 28.6 lbf per thousandth
    expect(readStiffness(28_550, 'in')).toBeCloseTo(5000, -1)
  })
  it('units of force, area, stress, stiffness and angle', () => {
    expect(readForce('20 kN', 'in')).toBe(20_000)
    expect(readForce('2 ton', 'mm')).toBeCloseTo(readForce('4000 lbf', 'mm') ?? 0, 9)
    expect(readArea('0.012 in2', 'mm')).toBeCloseTo(7.74192, 10)
    expect(readArea('8 mm²', 'in')).toBe(8)
    expect(readStress('1 N/mm2', 'in')).toBe(1)
    expect(readStress('30 ksi', 'mm')).toBeCloseTo(206.84271879504, 8)
    expect(readStiffness('5 kN/mm', 'in')).toBe(5000)
    expect(readAngle('90°')).toBe(90)
    expect(readAngle('-12,5 deg')).toBe(-12.5)
  })
  it('refuses what may be a thousand, what is negative, and another quantity', () => {
    expect(readTorque('1,500 lbf in', 'in')).toBeUndefined()
    expect(readTorque('0,125 N m', 'mm')).toBe(125)
    expect(readForce(-1, 'mm')).toBeUndefined()
    expect(readForce('20 mm', 'mm')).toBeUndefined()
    expect(readStress('20 kN', 'mm')).toBeUndefined()
  })
})
