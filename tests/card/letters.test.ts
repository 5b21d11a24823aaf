import { describe, expect, it } from 'vitest'
import { advances } from '../../src/card/advances.ts'
import { capHeight, fitting, pointsPerMm, stretchesOf, widthOf } from '../../src/card/letters.ts'
import { lengthOf } from '../../src/drawing/letters.ts'
import { advancesOf } from '../drawing/ttf.ts'

const face = (name: string) => advancesOf(`../../../src/writers/faces/AtkinsonHyperlegibleNext-${name}.ttf`)

describe('lengths of the card’s words', () => {
  it('are those of the faces that are printed', () => {
    const [regular, bold] = [face('Regular'), face('Bold')]
    expect(regular.unitsPerEm).toBe(1000)
    for (const [code, upright, heavy] of advances)
      expect([code, upright, heavy]).toEqual([code, regular.advance(code), bold.advance(code)])
    expect(advances.length).toBeGreaterThan(200)
  })

  it('give every figure one width, in both weights', () => {
    const figures = advances.filter(([code]) => code >= 0x30 && code <= 0x39)
    expect(new Set(figures.flatMap(([, regular, bold]) => [regular, bold])).size).toBe(1)
  })

  it('grow with the size, and add up', () => {
    // 1000/1000 em at 72 points is 25.4 mm; figures are 0.632 em.
    expect(widthOf('27', 72)).toBeCloseTo(2 * 0.632 * 25.4, 9)
    expect(widthOf('bore 24', 10)).toBeCloseTo(widthOf('bore', 10) + widthOf(' ', 10) + widthOf('24', 10), 9)
  })

  it('take signs that the face lacks from the drawings’ face, capitals alike', () => {
    const stretches = stretchesOf('at ≤ 3 → α', 10)
    expect(stretches.map(({ face: own, text }) => [own, text])).toEqual([
      ['card', 'at '],
      ['sheet', '≤'],
      ['card', ' 3 '],
      ['sheet', '→'],
      ['card', ' '],
      ['sheet', 'α'],
    ])
    expect(stretches[1]?.width).toBeCloseTo(lengthOf('≤', (capHeight * 10) / pointsPerMm), 9)
  })

  it('put a question mark where neither face has the letter', () => {
    expect(stretchesOf('歯車', 10)).toEqual([{ face: 'card', text: '??', width: widthOf('??', 10) }])
  })

  it('shorten what does not fit, and nothing else', () => {
    const whole = 'cider-mill-pulley'
    expect(fitting(whole, 10, widthOf(whole, 10))).toBe(whole)
    const short = fitting(whole, 10, widthOf(whole, 10) - 0.1)
    expect(short.endsWith('…')).toBe(true)
    expect(widthOf(short, 10)).toBeLessThan(widthOf(whole, 10))
  })
})
