import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { lengthOf } from '../../src/drawing/letters.ts'
import type { Sheet } from '../../src/drawing/sheet.ts'
import { onCircle, stretches, sweep } from '../../src/writers/marks.ts'
import type { Fonts } from '../../src/writers/fonts.ts'
import { pdf } from '../../src/writers/pdf.ts'
import { hostile, sheet, sheetSaying, strokes } from './hand-made-sheet.ts'
import { type Document, type Matrix, open, type Path, paths } from './read-pdf.ts'

const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(import.meta.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))))
const fonts: Fonts = { regular: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') }
const mm = 25.4 / 72

const letter: Sheet = {
  ...sheet,
  number: 'boat-winch-drum-30',
  title: 'Tool bit',
  part: 'tool bit',
  paper: { name: 'Letter', width: 279.4, height: 215.9 },
}

const near = (a: readonly number[] | undefined, b: readonly number[]): boolean =>
  a !== undefined && Math.hypot((a[0] ?? 0) - (b[0] ?? 0), (a[1] ?? 0) - (b[1] ?? 0)) < 0.001

describe('sheets as PDF', () => {
  let bytes: Uint8Array
  let document: Document
  let drawn: readonly Path[]
  beforeAll(async () => {
    bytes = await pdf([sheet, sheet, letter], fonts)
    document = await open(bytes)
    drawn = await paths(document, 1)
  })

  it('has a page a sheet, each the size of its paper, and asks not to be scaled', async () => {
    const sizes = await Promise.all(
      [1, 2, 3].map(async (page) => (await document.getPage(page)).view.map((side) => side * mm)),
    )
    expect(sizes.map((size) => size.map((side) => Number(side.toFixed(3))))).toEqual([
      [0, 0, 297, 210],
      [0, 0, 297, 210],
      [0, 0, 279.4, 215.9],
    ])
    expect(await document.getViewerPreferences()).toMatchObject({ PrintScaling: 'None' })
  })

  it('lists its sheets by part', async () => {
    const outline = await document.getOutline()
    expect(outline.map((entry) => [entry.title, entry.items.map((each: { title: string }) => each.title)])).toEqual([
      ['cider-mill-pulley-10 Guide bushing', ['cider-mill-pulley-10 Guide bushing, sheet 2']],
      ['boat-winch-drum-30 Tool bit', []],
    ])
  })

  it('draws each line, arc and fill once, in order, as wide as the stroke', () => {
    const lines = strokes.filter((stroke) => stroke.stroke !== 'text')
    expect(drawn.map(({ painted }) => painted)).toEqual(
      lines.map((stroke) => (stroke.stroke === 'fill' ? 'fill' : 'stroke')),
    )
    drawn.forEach((path, index) => {
      const stroke = lines[index]
      if (!stroke || stroke.stroke === 'fill') return
      expect(path.width).toBeCloseTo(stroke.width, 4)
      expect(path.cap).toBe('dashes' in stroke ? 0 : 1)
    })
  })

  it('puts every stroke where it is on the sheet, to a thousandth of a millimetre', () => {
    const lines = strokes.filter((stroke) => stroke.stroke !== 'text')
    lines.forEach((stroke, index) => {
      const runs = drawn[index]?.runs ?? []
      const [first, last] = [runs[0]?.[0], runs.at(-1)?.at(-1)]
      switch (stroke.stroke) {
        case 'line':
          expect([index, near(first, stroke.from), near(last, stroke.to)]).toEqual([index, true, true])
          break
        case 'arc': {
          expect(near(first, onCircle(stroke.centre, stroke.radius, stroke.from))).toBe(true)
          expect(near(last, onCircle(stroke.centre, stroke.radius, stroke.to))).toBe(true)
          for (const [x, y] of runs.flat())
            expect(Math.hypot(x - stroke.centre[0], y - stroke.centre[1])).toBeCloseTo(stroke.radius, 3)
          break
        }
        case 'fill':
          expect(runs.length).toBe(1)
          stroke.points.forEach((corner, at) => expect(near(runs[0]?.[at], corner)).toBe(true))
      }
    })
  })

  it('draws the check line 100.00 mm long', () => {
    const check = drawn.find((path) => near(path.runs[0]?.[0], [12, 55]))
    const [from, to] = check?.runs[0] ?? []
    expect(Math.hypot((to?.[0] ?? 0) - (from?.[0] ?? 0), (to?.[1] ?? 0) - (from?.[1] ?? 0)).toFixed(2)).toBe('100.00')
  })

  it('breaks lines into the very dashes of the stroke', () => {
    const path = drawn.find((each) => near(each.runs[0]?.[0], [60, 40]))
    expect(path?.runs.map((run) => run.map(([x]) => Number(x.toFixed(2))))).toEqual([
      [60, 63.05],
      [63.8, 66.85],
      [67.6, 70.65],
    ])
  })

  it('writes each text at its baseline, at its height, over its measured length', async () => {
    const { items } = await (await document.getPage(1)).getTextContent()
    const texts = items.flatMap((item) => ('str' in item && item.str !== '' ? [item] : []))
    const said = strokes.flatMap((stroke) => (stroke.stroke === 'text' ? [stroke] : []))
    expect(texts.map((item) => item.str)).toEqual(said.map((stroke) => stroke.text))
    texts.forEach((item, index) => {
      const stroke = said[index]
      if (!stroke) throw new Error('a text too many')
      const [a, b, , , x, y] = item.transform as unknown as Matrix
      expect(near([x * mm, y * mm], stroke.at)).toBe(true)
      expect(Math.atan2(b, a)).toBeCloseTo((stroke.turn * Math.PI) / 180, 6)
      // Capitals of DejaVu Sans Condensed stand 1493/2048 em high (the font's own OS/2 table).
      expect(item.height * mm * (1493 / 2048)).toBeCloseTo(stroke.height, 2)
      // Unkerned advances of the embedded font against the table of letters: within 0.05 mm.
      expect(Math.abs(item.width * mm - stroke.length)).toBeLessThan(0.05)
    })
  })

  it('sets pairs at their bare advances and joins no letters', async () => {
    const words = 'AVAVAV fi fl ffi To Ty'
    const spread: Sheet = { ...sheetSaying([words]), paper: sheet.paper }
    const stroke = { ...spread.strokes[0], length: lengthOf(words, 2.5) } as Sheet['strokes'][number]
    const file = await pdf([{ ...spread, strokes: [stroke] }], fonts)
    // No stretching was called for, and the whole text is one piece.
    const source = new TextDecoder('latin1').decode(file)
    expect(source).not.toMatch(/ Tz/)
    expect(source.match(/\[<[0-9a-f]+> 0\] TJ/g)?.length).toBe(1)
    expect([...(/\[<([0-9a-f]+)> 0\] TJ/.exec(source)?.[1] ?? '')].length).toBe(4 * words.length)
  })

  it('stretches a text onto a measured length that differs', async () => {
    const file = await open(await pdf([sheetSaying(['squeezed or spread'])], fonts))
    const { items } = await (await file.getPage(1)).getTextContent()
    const [item] = items.flatMap((each) => ('str' in each && each.str !== '' ? [each] : []))
    const [a] = (item?.transform ?? []) as number[]
    const natural = lengthOf('squeezed or spread', 2.5)
    expect(((a ?? 0) * natural) / (item?.height ?? 1)).toBeCloseTo(60, 1)
  })

  it('keeps whatever is written in a text inside that text', async () => {
    const file = await open(await pdf([sheetSaying(hostile)], fonts))
    const page = await file.getPage(1)
    const { items } = await page.getTextContent()
    const heights = items.flatMap((item) => ('str' in item && item.str !== '' ? [item.transform[5] as number] : []))
    expect([...new Set(heights)].map((height) => Math.round(height * mm))).toEqual([180, 170, 160, 150, 140, 130, 120])
    expect(await page.getAnnotations()).toEqual([])
  })

  it('is the same bytes each time, without a clock', async () => {
    const again = await pdf(structuredClone([sheet, sheet, letter]), fonts)
    expect(Buffer.compare(again, bytes)).toBe(0)
    expect((await document.getMetadata()).info).toMatchObject({
      CreationDate: 'D:20000101000000Z',
      Producer: 'borewright',
    })
  })

  it('refuses a document without a sheet', async () => {
    await expect(pdf([], fonts)).rejects.toThrow(RangeError)
  })
})

describe('dashes and sweeps', () => {
  it('cuts a line where its pattern says, and repeats a short pattern', () => {
    expect(stretches(10)).toEqual([[0, 10]])
    expect(stretches(10, [3, 1])).toEqual([
      [0, 3],
      [4, 7],
      [8, 10],
    ])
    expect(stretches(6.5, [2, 1, 0.5, 1, 2])).toEqual([
      [0, 2],
      [3, 3.5],
      [4.5, 6.5],
    ])
  })

  it('sweeps counter-clockwise, nothing between equal angles, up to a whole turn', () => {
    expect([sweep(0, 360), sweep(300, 60), sweep(300, 420), sweep(10, 10), sweep(-30, 30)]).toEqual([
      360, 120, 120, 0, 60,
    ])
  })
})
