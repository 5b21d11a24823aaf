import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { svg } from '../../src/writers/svg.ts'
import { hostile, sheet, sheetSaying, strokes } from './hand-made-sheet.ts'
import { children, textOf, type Tag, tagsOf, tree } from './xml.ts'

const drawn = tagsOf(tree(svg(sheet)))
const number = (tag: Tag, name: string): number => Number(tag.attributes[name])
const down = (y: number): number => 210 - y
/** The group that a tag stands in, by class. */
const groups = children(tree(svg(sheet))).filter((tag) => tag.name === 'g')
const inClass = (name: string): readonly Tag[] =>
  groups.filter((group) => group.attributes.class === name).flatMap((group) => tagsOf(group))

describe('a sheet as SVG', () => {
  it('states its size in millimetres, one unit a millimetre', () => {
    const root = tree(svg(sheet))
    expect(root.name).toBe('svg')
    expect(root.attributes).toMatchObject({ width: '297mm', height: '210mm', viewBox: '0 0 297 210', color: '#000' })
  })

  it('names itself for those who do not see it', () => {
    const [title, desc] = children(tree(svg(sheet)))
    expect([title?.name, desc?.name]).toEqual(['title', 'desc'])
    expect(title && textOf(title)).toBe('cider-mill-pulley-10 Guide bushing')
    expect(desc && textOf(desc)).toContain('297 x 210 mm')
  })

  it('holds every stroke once, in the group of its class', () => {
    const kinds = { line: ['line'], arc: ['circle', 'path'], text: ['text'], fill: ['polygon'] }
    for (const name of new Set(strokes.map((stroke) => stroke.class)))
      for (const [stroke, names] of Object.entries(kinds))
        expect([name, stroke, inClass(name).filter((tag) => names.includes(tag.name)).length]).toEqual([
          name,
          stroke,
          strokes.filter((each) => each.class === name && each.stroke === stroke).length,
        ])
  })

  it('puts lines where the strokes are, upside down', () => {
    const ends = drawn
      .filter((tag) => tag.name === 'line')
      .map((tag) => ['x1', 'y1', 'x2', 'y2'].map((name) => number(tag, name)))
    for (const stroke of strokes)
      if (stroke.stroke === 'line')
        expect(ends).toContainEqual([stroke.from[0], down(stroke.from[1]), stroke.to[0], down(stroke.to[1])])
  })

  it('bends arcs round their own centre', () => {
    // The middle of each arc, from its two ends, radius and flags alone, must be a point of the stroke.
    for (const stroke of strokes) {
      if (stroke.stroke !== 'arc' || (stroke.to - stroke.from) % 360 === 0) continue
      const path = drawn.find((tag) => tag.name === 'path' && tag.attributes.d?.includes(`A${stroke.radius} `))
      const [x1, y1, r, , , large, flag, x2, y2] = ((path?.attributes.d ?? '').match(/-?[\d.]+/g) ?? []).map(Number)
      expect([r, flag]).toEqual([stroke.radius, 0])
      const chord = Math.hypot((x2 ?? 0) - (x1 ?? 0), (y2 ?? 0) - (y1 ?? 0))
      const off = Math.sqrt(Math.max(0, (r ?? 0) ** 2 - (chord / 2) ** 2)) * (large ? -1 : 1)
      // Against the clock as seen, y down: the centre lies to the left of the way for the smaller arc.
      const centre = [
        ((x1 ?? 0) + (x2 ?? 0)) / 2 + (((y2 ?? 0) - (y1 ?? 0)) / chord) * off,
        ((y1 ?? 0) + (y2 ?? 0)) / 2 - (((x2 ?? 0) - (x1 ?? 0)) / chord) * off,
      ]
      expect(centre[0]).toBeCloseTo(stroke.centre[0], 2)
      expect(centre[1]).toBeCloseTo(down(stroke.centre[1]), 2)
    }
    expect(
      drawn
        .filter((tag) => tag.name === 'circle')
        .map((tag) => [number(tag, 'cx'), number(tag, 'cy'), number(tag, 'r')]),
    ).toEqual([[100, 110, 30]])
  })

  it('gives every text its place, its words and its measured length', () => {
    const texts = drawn.filter((tag) => tag.name === 'text')
    for (const stroke of strokes) {
      if (stroke.stroke !== 'text') continue
      const tag = texts.find((each) => textOf(each) === stroke.text)
      expect([tag && number(tag, 'x'), tag && number(tag, 'y')]).toEqual([stroke.at[0], down(stroke.at[1])])
      expect(tag && number(tag, 'textLength')).toBeCloseTo(stroke.length, 3)
      expect(tag?.attributes.lengthAdjust).toBe('spacingAndGlyphs')
      expect(tag?.attributes.transform).toBe(
        stroke.turn === 90 ? `rotate(-90 ${stroke.at[0]} ${down(stroke.at[1])})` : undefined,
      )
      // Capitals of DejaVu Sans Condensed stand 1493/2048 em high (the font's own OS/2 table).
      expect(tag && number(tag, 'font-size') * (1493 / 2048)).toBeCloseTo(stroke.height, 2)
    }
  })

  it('gathers a callout in a group that names its dimension', () => {
    const of = (name: string) => drawn.filter((tag) => tag.attributes['data-of'] === name).flatMap(children)
    for (const name of ['outside', 'length', 'rake'])
      expect(of(name).length).toBe(strokes.filter((stroke) => stroke.of === name).length)
  })

  it('states the usual width of a class once, and another width on the stroke', () => {
    expect(groups.find((tag) => tag.attributes.class === 'sheet')?.attributes['stroke-width']).toBe('0.7')
    expect(inClass('sheet').filter((tag) => tag.attributes['stroke-width'] === '0.35').length).toBe(1)
    expect(groups.find((tag) => tag.attributes.class === 'hatch')?.attributes['stroke-width']).toBe('0.18')
  })

  it('keeps the dashes of the stroke', () => {
    expect(inClass('hidden').find((tag) => tag.name === 'line')?.attributes).toMatchObject({
      'stroke-dasharray': '3.05 0.75 3.05 0.75 3.05',
      'stroke-linecap': 'butt',
    })
  })

  it('uses presentation attributes alone: no style, no script, no foreign name', () => {
    const allowed = /^(svg|title|desc|rect|g|line|circle|path|text|polygon)$/
    for (const words of [sheet, sheetSaying(hostile)])
      for (const tag of tagsOf(tree(svg(words)))) {
        expect(tag.name).toMatch(allowed)
        expect(Object.keys(tag.attributes).filter((name) => /^(style|on|href)/.test(name))).toEqual([])
      }
  })

  it('keeps whatever is written in a text inside that text', () => {
    const texts = tagsOf(tree(svg(sheetSaying(hostile)))).filter((tag) => tag.name === 'text')
    expect(texts.length).toBe(hostile.length)
    expect(texts.map(textOf)).toContain('</text><script>four</script>')
    expect(svg(sheetSaying(hostile))).not.toMatch(/[^\P{Cc}\n]|\p{Surrogate}/u)
    const title = { ...sheet, title: '</title><g onload="x">', part: '&amp;' }
    expect(tagsOf(tree(svg(title))).length).toBe(drawn.length)
  })

  it('is well formed whatever is written, and says it unchanged where it can', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (word) => {
        const texts = tagsOf(tree(svg({ ...sheetSaying([word]), title: word, part: word }))).filter(
          (tag) => tag.name === 'text',
        )
        expect(texts.map(textOf)).toEqual([word])
      }),
    )
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (word) => {
        const tags = tagsOf(tree(svg({ ...sheetSaying([word]), title: word, part: word })))
        expect(tags.map((tag) => tag.name)).toEqual(['svg', 'title', 'desc', 'rect', 'g', 'text'])
      }),
    )
  })

  it('is the same text each time', () => {
    expect(svg(sheet)).toBe(svg(structuredClone(sheet)))
  })

  it('refuses what is not a number', () => {
    const broken = {
      ...sheet,
      strokes: [{ stroke: 'line', class: 'edge', width: 0.5, from: [0, Number.NaN], to: [1, 1] }],
    } as const
    expect(() => svg(broken)).toThrow('not a number that can be drawn')
  })
})
