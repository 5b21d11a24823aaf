import { describe, expect, it } from 'vitest'
import { onPoint, table, wrap } from '../../src/cli/lines.ts'

describe('lines for reading', () => {
  it('numbers stand with their decimal points under one another', () => {
    expect(onPoint(['24', '7.982', '0.5', 'M5'])).toEqual(['24    ', ' 7.982', ' 0.5  ', 'M5    '])
  })

  it('numbers without a whole part keep their place', () => {
    expect(onPoint(['.25', '1.5'])).toEqual([' .25', '1.5 '].map((text) => text.padEnd(4)))
  })

  it('a table keeps its columns', () => {
    expect(
      table([
        { name: 'bore', value: '24', limits: ['24', '24.021'], remark: 'H7' },
        { name: 'infeed', value: '4.08', remark: 'what the dial does' },
      ]),
    ).toEqual(['  bore    24     24 to 24.021  H7', '  infeed   4.08                what the dial does'])
  })

  it('no line is longer than asked, and no word is lost', () => {
    const text = 'the nose must reach the floor before the bar meets the far wall of the bore'
    const wrapped = wrap(text, 30, '  - ')
    expect(Math.max(...wrapped.split('\n').map((line) => line.length))).toBeLessThanOrEqual(30)
    expect(wrapped.replace('  - ', '').replaceAll(/\n {4}/g, ' ')).toBe(text)
  })
})
