import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Card } from '../../src/card/document.ts'
import { flow, onPaper, papers } from '../../src/card/flow.ts'
import type { Mark } from '../../src/card/marks.ts'
import { pointsPerMm } from '../../src/card/letters.ts'
import { both, faults } from './faults.ts'
import { card, pictureOf } from './hand-made-card.ts'
import { runs } from './runs.ts'
import { missing, saidBy } from './said.ts'
import { someCard } from './some-cards.ts'

const textOf = (marks: readonly Mark[]): string =>
  marks
    .flatMap((mark) => {
      if (mark.mark === 'words') return [mark.text]
      if (mark.mark !== 'picture') return []
      return mark.picture.strokes.flatMap((stroke) => (stroke.stroke === 'text' ? [stroke.text] : []))
    })
    .join('')

describe('a card on paper', () => {
  it('is laid without words over words, words over lines, or anything off the paper', () => {
    expect(both(flow(card)).flatMap(faults)).toEqual([])
    fc.assert(
      fc.property(someCard, (some) => {
        expect(both(flow(some)).flatMap(faults)).toEqual([])
      }),
      { numRuns: runs(60, 200), seed: 186252 },
    )
  }, 120_000)

  it('says all that the model says, in order', () => {
    const sideOf = (text: string): string => text.replace(', continued', '')
    fc.assert(
      fc.property(someCard, (some) => {
        const sides = flow(some)
        const said = saidBy(some)
        // Sides that went on are read together.
        const groups: string[] = []
        for (const side of sides) {
          const text = textOf(side.marks)
          if (sideOf(side.title) === side.title) groups.push(text)
          else groups.push(`${groups.pop() ?? ''}${text}`)
        }
        expect(groups.length).toBe(said.length)
        expect(said.map((pieces, at) => missing(pieces, groups[at] ?? ''))).toEqual(said.map(() => undefined))
      }),
      { numRuns: runs(30, 100), seed: 40 },
    )
  }, 120_000)

  it('breaks at the same places on both papers, and numbers its sides through', () => {
    const sides = flow(card)
    expect(sides.map(({ title, number, of }) => [title, number, of])).toEqual([
      ['Machine leaf, side 1: set up', 1, 4],
      ['Machine leaf, side 2: cut and measure', 2, 4],
      ['Tooling leaf: the bar', 3, 4],
      ['Reasons leaf: why', 4, 4],
    ])
    for (const side of sides) expect(side.used).toBeLessThanOrEqual(252)
  })

  it('stands further from the edge on Letter: 12 mm on A4, 14.95 on Letter', () => {
    const [side] = flow(card)
    if (!side) throw new Error('a card without a side')
    const lefts = [papers.A4, papers.Letter].map((paper) =>
      Math.min(...onPaper(side, paper).marks.flatMap((mark) => (mark.mark === 'words' ? [mark.x] : []))),
    )
    expect(lefts[0]).toBeCloseTo(12, 6)
    expect(lefts[1]).toBeCloseTo(14.95, 6)
  })

  it('gives a job that was made although a rule is broken a heavy box at the head of every side', () => {
    for (const side of flow({ ...card, notSound: ['bar-passes-bore'] })) {
      expect(textOf(side.marks)).toContain('NOT SOUND Made although this is broken: bar-passes-bore')
      const rim = side.marks.find((mark) => mark.mark === 'box' && mark.is === 'rim')
      expect(rim).toMatchObject({ line: 1.2 })
      expect(rim?.mark === 'box' && rim.y).toBeLessThan(8)
    }
    expect(
      flow(card)
        .map(({ marks }) => textOf(marks))
        .join(''),
    ).not.toContain('NOT SOUND')
  })

  it('states its units at the head of every side, however long its name is', () => {
    const long =
      'a name that goes on for longer than any line at the head of a side has room for, and then on and on and on'
    for (const side of flow({ ...card, name: long, about: long })) expect(textOf(side.marks)).toContain(', millimetres')
    expect(textOf(flow(card)[1]?.marks ?? [])).toContain('cider-mill-pulley, 8 × 7 in 24 H7 × 38, millimetres')
  })

  it('never ends a side with a heading, and repeats the heads of a table that goes on', () => {
    const long: Card = {
      ...card,
      leaves: [
        {
          leaf: 'machine',
          title: 'Machine leaf',
          sides: [
            {
              title: 'cut',
              blocks: Array.from({ length: 4 }, () => [
                { block: 'heading' as const, text: 'Passes' },
                {
                  block: 'table' as const,
                  title: 'Passes',
                  columns: [{ head: 'dial to', align: 'decimal' as const }, { head: 'measured across' }],
                  rows: Array.from({ length: 21 }, (_, at) => ({
                    cells: [{ number: `${at}.5` }, { write: 'box' as const }],
                  })),
                },
              ]).flat(),
            },
          ],
        },
      ],
    }
    const sides = flow(long)
    expect(sides.length).toBeGreaterThan(2)
    expect(sides.map(({ title }) => title.includes('continued'))).toEqual(sides.map((_, at) => at > 0))
    for (const { marks } of sides) {
      const texts = marks.flatMap((mark) => (mark.mark === 'words' ? [mark.text] : []))
      expect(texts.at(-1)).not.toBe('Passes')
      expect(texts).toContain('dial to')
    }
  })

  it('puts decimal marks under one another, whatever stands before and behind them', () => {
    const numbers = ['24.000', '4.5', '121', '.945']
    const [side] = flow({
      ...card,
      leaves: [
        {
          leaf: 'machine',
          title: 'Machine leaf',
          sides: [
            {
              title: 'x',
              blocks: [
                {
                  block: 'table',
                  title: 'Numbers',
                  columns: [{ head: 'bore', align: 'decimal' }],
                  rows: numbers.map((number, at) => ({
                    cells: [{ number, ...(at === 1 && { bold: true as const }) }],
                  })),
                },
              ],
            },
          ],
        },
      ],
    })
    // Figures are 0.632 em wide in both weights (hmtx of the faces).
    const figure = (0.632 * 9.5) / pointsPerMm
    const marks = (side?.marks ?? []).flatMap((mark) =>
      mark.mark === 'words' && numbers.includes(mark.text) ? [mark] : [],
    )
    const points = marks.map(
      (mark) => mark.x + figure * (mark.text.includes('.') ? mark.text.indexOf('.') : mark.text.length),
    )
    expect(points.length).toBe(4)
    for (const point of points) expect(point).toBeCloseTo(points[0] ?? Number.NaN, 6)
  })

  it('sets a side closer before it lets it go on to another', () => {
    const ticks = (count: number): Card => ({
      ...card,
      leaves: [
        {
          leaf: 'machine',
          title: 'Machine leaf',
          sides: [
            {
              title: 'set up',
              blocks: [{ block: 'ticks', ticks: Array.from({ length: count }, () => ({ words: 'Hub in the chuck' })) }],
            },
          ],
        },
      ],
    })
    const [few, many] = [flow(ticks(12)), flow(ticks(36))]
    expect([few.length, few[0]?.air]).toEqual([1, 1])
    expect(many.length).toBe(1)
    expect(many[0]?.air).toBeLessThan(1)
    expect(flow(ticks(60)).length).toBe(2)
  })

  it('refuses a picture that is wider than its place', () => {
    const wide: Card = {
      ...card,
      leaves: [
        {
          leaf: 'machine',
          title: 'Machine leaf',
          sides: [{ title: 'set up', blocks: [{ block: 'picture', picture: pictureOf(187, 20) }] }],
        },
      ],
    }
    expect(() => flow(wide)).toThrow(RangeError)
  })
})
