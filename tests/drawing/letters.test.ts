import { describe, expect, it } from 'vitest'
import { advances, unitsPerEm } from '../../src/drawing/advances.ts'
import { legible, lengthOf, shortened, wrap } from '../../src/drawing/letters.ts'
import { advancesOf } from './ttf.ts'

describe('letters', () => {
  it('the table is the font', () => {
    const regular = advancesOf('DejaVuSansCondensed.ttf')
    const bold = advancesOf('DejaVuSansCondensed-Bold.ttf')
    expect(unitsPerEm).toBe(regular.unitsPerEm)
    expect(bold.unitsPerEm).toBe(regular.unitsPerEm)
    expect(advances.length).toBeGreaterThan(220)
    for (const [code, plain, heavy] of advances)
      expect([code, plain, heavy]).toEqual([code, regular.advance(code), bold.advance(code)])
  })

  it('a length is the sum of advances at the font size that makes capitals so high', () => {
    // Ø 1417 (advance of the font), digits 1172 of 2048; capitals 0.729 em.
    const size = 3.5 / 0.729
    const own = advancesOf('DejaVuSansCondensed.ttf')
    const units = [...'Ø23.987'].reduce(
      (sum, letter) => sum + (own.advance(letter.codePointAt(0) ?? 0) ?? Number.NaN),
      0,
    )
    expect(lengthOf('Ø23.987', 3.5)).toBeCloseTo((units / 2048) * size, 9)
    expect(lengthOf('Ø23.987', 7)).toBeCloseTo(2 * lengthOf('Ø23.987', 3.5), 9)
    expect(lengthOf('Mill', 3.5, true)).toBeGreaterThan(lengthOf('Mill', 3.5))
  })

  it('a letter that the table lacks is our own bug; a user’s becomes a question mark', () => {
    expect(() => lengthOf('keyway 刀', 2.5)).toThrow(/刀/)
    expect(legible('keyway 刀')).toBe('keyway ?')
    expect(legible('Über-Öse')).toBe('Über-Öse')
  })

  it('wraps at blanks and loses no word', () => {
    const text = 'Mill the slot lying in a vee, full length, through the collar.'
    const lines = wrap(text, 2.5, 40)
    expect(lines.join(' ')).toBe(text)
    expect(lines.length).toBeGreaterThan(1)
    for (const line of lines) expect(lengthOf(line, 2.5)).toBeLessThanOrEqual(40)
    expect(wrap('unbreakable', 2.5, 3)).toEqual(['unbreakable'])
  })

  it('shortens at a word', () => {
    expect(shortened('free-cutting mild steel', 2.5, 100)).toBe('free-cutting mild steel')
    const said = shortened('free-cutting mild steel, or leaded bronze', 2.5, 40)
    expect(said.endsWith(' …')).toBe(true)
    expect(lengthOf(said, 2.5)).toBeLessThanOrEqual(40)
  })
})
