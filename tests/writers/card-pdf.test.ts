import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { widthOf } from '../../src/card/letters.ts'
import { type CardFonts, cardPdf, packet } from '../../src/writers/card-pdf.ts'
import { card } from '../card/hand-made-card.ts'
import { bare, missing, saidBy } from '../card/said.ts'
import { sheet } from './hand-made-sheet.ts'
import { type Document, type Matrix, open, type Path, paths } from './read-pdf.ts'

const root = join(import.meta.dirname, '../..')
const bytesOf = (path: string): Uint8Array => new Uint8Array(readFileSync(join(root, path)))
const fonts: CardFonts = {
  regular: bytesOf('src/writers/faces/AtkinsonHyperlegibleNext-Regular.ttf'),
  bold: bytesOf('src/writers/faces/AtkinsonHyperlegibleNext-Bold.ttf'),
  sheet: {
    regular: bytesOf('node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
    bold: bytesOf('node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  },
}
const mm = 25.4 / 72

const itemsOf = async (document: Document, page: number) =>
  (await (await document.getPage(page)).getTextContent()).items.flatMap((item) => ('str' in item ? [item] : []))
const textOf = async (document: Document, page: number): Promise<string> =>
  (await itemsOf(document, page)).map(({ str }) => str).join('')
const pagesOf = async (document: Document): Promise<readonly string[]> =>
  await Promise.all(Array.from({ length: document.numPages }, async (_, at) => await textOf(document, at + 1)))
const sizesOf = async (document: Document): Promise<readonly (readonly number[])[]> =>
  await Promise.all(
    Array.from({ length: document.numPages }, async (_, at) =>
      (await document.getPage(at + 1)).view.slice(2).map((side) => Number((side * mm).toFixed(2))),
    ),
  )
/** Lengths of level single lines of a width, mm. */
const levels = (drawn: readonly Path[], width: number): readonly number[] =>
  drawn.flatMap(({ runs, width: own }) => {
    const [from, to] = runs[0] ?? []
    return from &&
      to &&
      runs.length === 1 &&
      runs[0]?.length === 2 &&
      Math.abs(own - width) < 0.001 &&
      from[1] === to[1]
      ? [Math.abs(to[0] - from[0])]
      : []
  })

describe('a job card as PDF', () => {
  let bytes: Uint8Array
  let a4: Document
  let letter: Document
  beforeAll(async () => {
    bytes = await cardPdf(card, 'A4', fonts)
    a4 = await open(bytes)
    letter = await open(await cardPdf(card, 'Letter', fonts))
  })

  it('has a page a side, of the size of its paper, and asks not to be scaled', async () => {
    expect(await sizesOf(a4)).toEqual(Array.from({ length: 4 }, () => [210, 297]))
    expect(await sizesOf(letter)).toEqual(Array.from({ length: 4 }, () => [215.9, 279.4]))
    expect(await a4.getViewerPreferences()).toMatchObject({ PrintScaling: 'None' })
    expect((await a4.getMetadata()).info).toMatchObject({ Title: 'cider-mill-pulley: job card' })
  })

  it('reads back as the model says it, nothing more between', async () => {
    const pages = await pagesOf(a4)
    const said = saidBy(card)
    expect(said.map((pieces, at) => missing(pieces, pages[at] ?? ''))).toEqual(said.map(() => undefined))
    said.forEach((pieces, at) => {
      // Between the head of a side and its notes and foot stands the model and nothing else; numbers of lists are the print's own.
      const page = bare(pages[at] ?? '')
      const own = pieces.slice(1).map(bare).join('')
      const matter = page.slice(page.indexOf(bare(pieces[1] ?? '')), page.lastIndexOf('Notes'))
      expect(matter.replaceAll(/([1234])\.(?=saw125|face|centre|crosshole)/g, '')).toBe(own)
    })
  })

  it('reads the same on both papers', async () => {
    const matter = (pages: readonly string[]) => pages.map((page) => page.replace(/Notes/, ''))
    expect(matter(await pagesOf(letter))).toEqual(matter(await pagesOf(a4)))
  })

  it('has a check line of 50.00 mm in the foot of every side', async () => {
    for (const document of [a4, letter])
      for (let page = 1; page <= document.numPages; page++) {
        // The only lines 0.25 mm wide on a side are the check line and its two ends.
        const lengths = levels(await paths(document, page), 0.25)
        expect(lengths.map((length) => length.toFixed(2))).toEqual(['50.00'])
      }
  })

  it('sets letters at the advances they were measured with', async () => {
    for (const item of await itemsOf(a4, 1)) {
      const text = item.str
      if (text.trim() === '' || !/^[A-Za-z0-9 .,:;]+$/.test(text)) continue
      const [size] = item.transform as unknown as Matrix
      const widths = [false, true].map((bold) => widthOf(text, size, bold))
      const off = Math.min(...widths.map((width) => Math.abs(width - item.width * mm)))
      // Lettering of pictures fills the length that it was measured at in the drawings' face.
      if (!['bore', 'bar'].includes(text)) expect([text, off < 0.02]).toEqual([text, true])
    }
  })

  it('is set in the face of the card, in two weights, and in the drawings’ face for what that lacks', () => {
    const source = new TextDecoder('latin1').decode(bytes)
    const names = [...source.matchAll(/\/BaseFont \/[A-Z]+\+([A-Za-z-]+)/g)].map(([, name]) => name)
    expect([...new Set(names)].toSorted()).toEqual([
      'AtkinsonHyperlegibleNext-Bold',
      'AtkinsonHyperlegibleNext-Regular',
      'DejaVuSansCondensed',
    ])
  })

  it('lists its leaves, and their sides under them', async () => {
    const outline = await a4.getOutline()
    expect(outline.map(({ title, items }) => [title, items.map((each: { title: string }) => each.title)])).toEqual([
      ['Machine leaf', ['Machine leaf, side 1: set up', 'Machine leaf, side 2: cut and measure']],
      ['Tooling leaf', ['Tooling leaf: the bar']],
      ['Reasons leaf', ['Reasons leaf: why']],
    ])
  })

  it('marks every side of a job that is not sound', async () => {
    const broken = await open(await cardPdf({ ...card, notSound: ['bar-passes-bore'] }, 'A4', fonts))
    for (const page of await pagesOf(broken)) expect(page).toContain('NOT SOUND')
  })

  it('is the same bytes each time', async () => {
    expect(Buffer.compare(await cardPdf(structuredClone(card), 'A4', fonts), bytes)).toBe(0)
  })
})

describe('a packet', () => {
  it('lists the card’s sides and the drawings, each at its own paper, numbered through', async () => {
    const document = await open(await packet(card, [sheet, sheet], 'Letter', fonts))
    const pages = await pagesOf(document)
    expect(await sizesOf(document)).toEqual([
      ...Array.from({ length: 5 }, () => [215.9, 279.4]),
      [297, 210],
      [297, 210],
    ])
    pages.forEach((page, at) => expect(page).toContain(`page ${at + 1} of 7`))
    expect(
      missing(
        [
          'page',
          'what',
          'paper',
          '2',
          'Job card, machine leaf, side 1: set up',
          'Letter',
          '3',
          'Job card, machine leaf, side 2: cut and measure',
          'Letter',
          '4',
          'Job card, tooling leaf: the bar',
          'Letter',
          '5',
          'Job card, reasons leaf: why',
          'Letter',
          '6',
          `Drawing ${sheet.number}, ${sheet.title}`,
          'A4',
          '7',
          `Drawing ${sheet.number}, ${sheet.title}`,
          'A4',
        ],
        pages[0] ?? '',
      ),
    ).toBeUndefined() // prettier-ignore
    expect((await document.getOutline()).map(({ title }) => title)).toEqual([
      'Packet',
      'Machine leaf',
      'Tooling leaf',
      'Reasons leaf',
      'Drawings',
    ])
  })

  it('takes more drawings than one page can list', async () => {
    const many = Array.from({ length: 60 }, () => sheet)
    const document = await open(await packet(card, many, 'A4', fonts))
    expect(document.numPages).toBe(2 + 4 + 60)
    expect(await textOf(document, 2)).toContain('continued')
    expect(missing(['3', 'Job card, machine leaf, side 1: set up'], await textOf(document, 1))).toBeUndefined()
    expect(await textOf(document, 3)).toContain('page 3 of 66')
  })

  it('is a card alone where there is no drawing', async () => {
    const document = await open(await packet(card, [], 'A4', fonts))
    expect(document.numPages).toBe(5)
  })
})
