import { readFileSync } from 'node:fs'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { parts } from '../../generators/set.ts'
import { design } from '../../src/design.ts'
import { laySet } from '../../src/drawing/set.ts'
import type { Sheet } from '../../src/drawing/sheet.ts'
import { readSpec } from '../../src/spec/read.ts'
import { dxf, plainText } from '../../src/writers/dxf.ts'
import { liveDxf } from '../../src/writers/dxf-live.ts'
import { pdf } from '../../src/writers/pdf.ts'
import { svg } from '../../src/writers/svg.ts'
import { readDxf } from './read-dxf.ts'
import { tagsOf, textOf, tree } from './xml.ts'

const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(import.meta.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))))

const sheetsOf = (specimen: string, convention: 'iso' | 'asme'): readonly Sheet[] => {
  const read = readSpec(parse(readFileSync(new URL(`../specimens/${specimen}.yaml`, import.meta.url), 'utf8')))
  if ('complaints' in read) throw new Error(`${specimen} is refused`)
  const made = design(read.spec)
  const [paper, projection] = convention === 'iso' ? (['A4', 'first'] as const) : (['Letter', 'third'] as const)
  return laySet(
    parts.filter((part) => part.belongs(made)).map((part) => part.drawing(made)),
    { convention, paper, projection, units: read.spec.units, job: specimen, checksum: '01234567', verdict: 'sound' },
  )
}

const sorted = (words: readonly string[]): readonly string[] => words.toSorted()
const textsOf = (sheet: Sheet): readonly string[] =>
  sheet.strokes.flatMap((stroke) => (stroke.stroke === 'text' && stroke.text.trim() !== '' ? [stroke.text] : []))

describe.each([
  ['cider-mill-pulley', 'iso'],
  ['winch-drum-gear', 'asme'],
] as const)('the sheets of %s', (specimen, convention) => {
  let sheets: readonly Sheet[]
  let pages: readonly (readonly {
    readonly str: string
    readonly width: number
    readonly x: number
    readonly y: number
  }[])[]
  beforeAll(async () => {
    sheets = sheetsOf(specimen, convention)
    const bytes = await pdf(sheets, { regular: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') })
    const document = await getDocument({ data: bytes, verbosity: 0 }).promise
    pages = await Promise.all(
      sheets.map(async (_, index) => {
        const { items } = await (await document.getPage(index + 1)).getTextContent()
        return items.flatMap((item) =>
          'str' in item && item.str.trim() !== ''
            ? [{ str: item.str, width: item.width, x: item.transform[4] as number, y: item.transform[5] as number }]
            : [],
        )
      }),
    )
  })

  it('hold the same words in every format', () => {
    sheets.forEach((sheet, index) => {
      const words = textsOf(sheet)
      expect(
        sorted(
          tagsOf(tree(svg(sheet)))
            .filter((tag) => tag.name === 'text')
            .map(textOf),
        ),
      ).toEqual(sorted(words))
      // A reader of PDF parts and joins texts by their gaps, and knows one mu alone: letters are compared.
      const letters = (all: readonly string[]) =>
        sorted([...all.join('').normalize('NFKC').replaceAll(/\s/g, '')]).join('')
      expect(letters(pages[index]?.map(({ str }) => str) ?? [])).toBe(letters(words))
      const inDxf = readDxf(dxf(sheet)).entities.flatMap((entity) =>
        'text' in entity ? [String(entity.text).trim()] : [],
      )
      expect(sorted(inDxf.filter((text) => !text.startsWith('SHEET IN PAPER')))).toEqual(
        sorted(words.map((text) => plainText(text).trim())),
      )
    })
  })

  it('have each text that the reader of the PDF keeps whole stand where its stroke stands, as long as measured', () => {
    const mm = 25.4 / 72
    sheets.forEach((sheet, index) => {
      const items = pages[index] ?? []
      const texts = sheet.strokes.flatMap((stroke) => (stroke.stroke === 'text' ? [stroke] : []))
      const once = texts.filter(
        ({ text }) =>
          texts.filter((other) => other.text === text).length === 1 &&
          items.filter(({ str }) => str === text).length === 1,
      )
      // The rest are said twice on the sheet, or joined by the reader to what stands beside them.
      expect(once.length).toBeGreaterThan(texts.length / 2)
      for (const { text, at, length } of once) {
        const item = items.find(({ str }) => str === text)
        expect([text, (item?.x ?? 0) * mm, (item?.y ?? 0) * mm]).toEqual([
          text,
          expect.closeTo(at[0], 2),
          expect.closeTo(at[1], 2),
        ])
        expect(Math.abs((item?.width ?? 0) * mm - length)).toBeLessThan(0.06)
      }
    })
  })

  it('hold the same lines, arcs and fills in SVG and DXF, and as many dimensions as live', () => {
    for (const sheet of sheets) {
      const count = (kind: string) => sheet.strokes.filter((stroke) => stroke.stroke === kind).length
      const tags = tagsOf(tree(svg(sheet))).map((tag) => tag.name)
      const inSvg = (...names: string[]) => tags.filter((name) => names.includes(name)).length
      const entities = readDxf(dxf(sheet)).entities.map((entity) => entity.type)
      const inDxf = (...names: string[]) => entities.filter((name) => names.includes(name)).length
      expect([inSvg('line'), inSvg('path', 'circle'), inSvg('polygon')]).toEqual([
        count('line'),
        count('arc'),
        count('fill'),
      ])
      expect([inDxf('LINE'), inDxf('ARC', 'CIRCLE'), inDxf('SOLID')]).toEqual([
        count('line'),
        count('arc'),
        count('fill'),
      ])
      const live = readDxf(liveDxf(sheet))
      expect(live.entities.filter((entity) => entity.type === 'DIMENSION').length).toBe(sheet.dimensions.length)
    }
  })

  it('keep every stroke on the paper', () => {
    for (const sheet of sheets) {
      const { width, height } = sheet.paper
      for (const entity of readDxf(dxf(sheet)).entities)
        if ('vertices' in entity)
          for (const { x, y } of entity.vertices as { x: number; y: number }[])
            expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true)
    }
  })
})
