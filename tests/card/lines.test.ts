import { describe, expect, it } from 'vitest'
import { widthOf } from '../../src/card/letters.ts'
import { type Line, linesOf, wordsWidth } from '../../src/card/lines.ts'

const dress = { size: 10 }
const said = (lines: readonly Line[]): readonly string[] =>
  lines.map(({ marks }) => marks.map((mark) => (mark.mark === 'words' ? mark.text : `[${mark.mark}]`)).join(''))

describe('words in lines', () => {
  it('break at blanks, none wider than they may be', () => {
    const words = 'Blue the bore. Feed until one corner just marks; read the dial'
    const lines = linesOf(words, dress, 40)
    expect(lines.length).toBeGreaterThan(2)
    expect(said(lines).join(' ')).toBe(words)
    for (const line of lines) expect(line.width).toBeLessThanOrEqual(40)
  })

  it('are one line where they fit exactly', () => {
    const words = ['Over bar and nose ', { bold: '22.10' }, ' ± 0.04'] as const
    expect(linesOf(words, dress, wordsWidth(words, dress)).length).toBe(1)
  })

  it('hold a sign to its numbers, a stop to its word, a box to what it asks', () => {
    for (const width of [12, 15, 20, 25, 30]) {
      const lines = said(linesOf(['key 8 × 7 within ', { bold: '0.05' }, '. ', { tick: true }, ' good'], dress, width))
      for (const line of lines) {
        expect(line).not.toMatch(/^[×.]|[×]$/)
        expect(line).not.toMatch(/\[box\]$/)
      }
    }
  })

  it('break a word that is longer than a line between its letters', () => {
    const word = 'Maschinenwerkzeugschleifscheibe'
    const lines = linesOf(word, dress, 20)
    expect(said(lines).join('')).toBe(word)
    for (const line of lines) expect(line.width).toBeLessThanOrEqual(20 + 1e-9)
  })

  it('stand on one baseline, whatever their sizes', () => {
    const [line] = linesOf(['dial to ', { dial: '3.90' }, { small: ' mm' }], dress, 100)
    const words = line?.marks.flatMap((mark) => (mark.mark === 'words' ? [mark] : [])) ?? []
    expect(words.map(({ size, bold }) => [size, bold])).toEqual([
      [10, false],
      [13, true],
      [8.8, false],
    ])
    expect(new Set(words.map(({ y }) => y)).size).toBe(1)
    expect(words[1]?.x).toBeCloseTo(widthOf('dial to ', 10), 9)
  })

  it('leave boxes 4.2 mm and lines 17 mm, unless they say how long', () => {
    const marks = linesOf(
      [{ tick: true }, ' by ', { blank: true }, ' ', { blank: 30 }, ' ', { box: true }],
      dress,
      150,
    )[0]?.marks
    const boxes = marks?.flatMap((mark) => (mark.mark === 'box' ? [[mark.is, mark.width]] : []))
    const lines = marks?.flatMap((mark) => (mark.mark === 'line' ? [mark.to[0] - mark.from[0]] : [])) ?? []
    expect(boxes).toEqual([
      ['tick', 4.2],
      ['write', 17],
    ])
    expect(lines.map((length) => Number(length.toFixed(6)))).toEqual([17, 30])
  })

  it('are no lines where there are no words', () => {
    expect(linesOf('', dress, 50)).toEqual([])
    expect(linesOf([], dress, 50)).toEqual([])
  })
})
