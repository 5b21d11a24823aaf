import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { otherwise, statedShown, workedShown } from '../../src/page/rows/shown.ts'
import { type InUnits, taken } from '../../src/page/rows/typed.ts'
import { readLength } from '../../src/spec/length.ts'

const mm: InUnits = { job: 'mm', shown: 'mm' }
const inch: InUnits = { job: 'in', shown: 'in' }
const mmShownInInch: InUnits = { job: 'mm', shown: 'in' }
const length = { is: 'length' } as const

const value = (typed: string, kind: Parameters<typeof taken>[1], units: InUnits): unknown => {
  const read = taken(typed, kind, units)
  return 'value' in read ? read.value : `refused: ${read.accepted.slice(0, 20)}`
}

describe('what is typed', () => {
  it('a length in every spelling comes to the same mm', () => {
    for (const [typed, units, expected] of [
      ['24', mm, 24],
      ['24.0', mm, 24],
      ['24,5', mm, 24.5],
      [' 24 mm ', mm, 24],
      ['15/16 in', mm, 23.8125],
      ['1-3/8', inch, 34.925],
      ['1 3/8"', inch, 34.925],
      ['⅞', inch, 22.225],
      ['.875', inch, 22.225],
      ['22.225 mm', inch, 22.225],
      ['#7', inch, 0.201 * 25.4],
      ['1.5', mmShownInInch, 38.1],
      ['1-1/2', mmShownInInch, 38.1],
      ['38 mm', mmShownInInch, 38],
    ] as const)
      expect([typed, readLength(value(typed, length, units), units.job)]).toEqual([typed, expected])
  })

  it('a number stays a number and a fraction what it was', () => {
    expect(value('24', length, mm)).toBe(24)
    expect(value('24.0 mm', length, mm)).toBe('24.0 mm')
    expect(value('7/8', length, inch)).toBe('7/8')
    expect(value('1.5', length, mmShownInInch)).toBe('1.5 in')
    expect(value('', length, mm)).toBe(null)
  })

  it('what is no length is refused, with what is accepted', () => {
    for (const typed of ['3 8', '1,0,0', '24 furlongs', 'x', '0', '-3', '1/0', '--', '5 in 3'])
      expect([typed, value(typed, length, mm)]).toEqual([typed, 'refused: one length above 0: '])
    expect(value('0', { is: 'length', zero: true }, mm)).toBe(0)
  })

  it('limits, deviations, angles, counts and lists', () => {
    expect(value('8', { is: 'limits' }, mm)).toBe(8)
    expect(value('7,98 to 8,02', { is: 'limits' }, mm)).toEqual(['7,98', '8,02'])
    expect(value('[7.98, 8.02]', { is: 'limits' }, mm)).toEqual([7.98, 8.02])
    expect(value('1 to 2 to 3', { is: 'limits' }, mm)).toMatch(/^refused/)
    expect(value('H7', { is: 'tolerance' }, mm)).toBe('H7')
    expect(value('0, +0.021', { is: 'tolerance' }, mm)).toEqual([0, 0.021])
    expect(value('-0.01 to 0.01', { is: 'tolerance' }, mm)).toEqual([-0.01, 0.01])
    expect(value('0, 90', { is: 'angles' }, mm)).toEqual([0, 90])
    expect(value('0 120 240', { is: 'angles' }, mm)).toEqual([0, 120, 240])
    expect(value('90 N m', { is: 'torque' }, mm)).toBe('90 N m')
    expect(value('90', { is: 'torque' }, mmShownInInch)).toBe('90 lbf in')
    expect(value('20 furlongs', { is: 'force' }, mm)).toMatch(/^refused/)
    expect(value('6', { is: 'number', whole: true }, mm)).toBe(6)
    expect(value('6.5', { is: 'number', whole: true }, mm)).toMatch(/^refused/)
    expect(value('12, 16, 5/8 in', { is: 'list', of: 'lengths' }, mm)).toEqual([12, 16, '5/8 in'])
    expect(value('M5, M6', { is: 'list', of: 'texts' }, mm)).toEqual(['M5', 'M6'])
    expect(value('8, 6 round', { is: 'list', of: 'bits' }, mm)).toEqual([8, { shape: 'round', size: 6 }])
    expect(value('15, 18', { is: 'list', of: 'counts' }, mm)).toEqual([15, 18])
  })

  it('never throws, and what it shows of what it took it takes again to the same', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.float({ min: Math.fround(0.001), max: 400, noNaN: true }).map((number) => number.toFixed(3)),
        ),
        fc.constantFrom(mm, inch),
        (typed, units) => {
          const read = taken(typed, length, units)
          if (!('value' in read) || read.value === null) return
          const again = taken(statedShown(read.value, length, units), length, units)
          expect('value' in again && readLength(again.value, units.job)).toBe(readLength(read.value, units.job))
        },
      ),
    )
  })
})

describe('what is shown', () => {
  it('a worked length to 0.01 mm or 0.001 in, a fine one a figure more', () => {
    expect(workedShown(4.1234, length, 'mm')).toBe('4.12')
    expect(workedShown(4.1234, { is: 'length', fit: true }, 'mm')).toBe('4.123')
    expect(workedShown(22.225, length, 'in')).toBe('0.875')
    expect(workedShown(90_000, { is: 'torque' }, 'mm')).toBe('90')
    expect(workedShown(undefined, length, 'mm')).toBe('')
  })

  it('a bare number of the job in the units shown; words as they were typed, with the other unit beside them', () => {
    expect(statedShown(24, length, mmShownInInch)).toBe('0.9449')
    expect(statedShown('15/16 in', length, mm)).toBe('15/16 in')
    expect(otherwise('15/16 in', length, mm)).toBe('Typed in inches: 23.8125 mm.')
    expect(otherwise('24 mm', length, inch)).toBe('Typed in millimetres: 0.9449 in.')
    expect(otherwise(24, length, mmShownInInch)).toBe('Kept as 24 mm, as it was told.')
    expect(otherwise(24, length, mm)).toBe(undefined)
    expect(statedShown([7.98, 8.02], { is: 'limits' }, mm)).toBe('7.98 to 8.02')
  })
})
