import type { Card } from '../card/document.ts'
import { flow, onPaper, type Page, type Paper, papers, type PrintedSide } from '../card/flow.ts'
import { otherFaceSize, stretchesOf } from '../card/letters.ts'
import type { Mark } from '../card/marks.ts'
import type { Sheet } from '../drawing/sheet.ts'
import { oneLine } from './marks.ts'
import type { Fonts } from './fonts.ts'
import { drawSheets } from './pdf.ts'
import { opened, point, round, writeText } from './pdf-document.ts'
import { draw, type FaceOf, type Pen } from './pdf-strokes.ts'

export interface CardFonts {
  /** Atkinson Hyperlegible Next as TrueType files of one weight each, 400 and 700: src/writers/faces. */
  readonly regular: Uint8Array
  readonly bold: Uint8Array
  /** The drawings' faces, for signs that the card's face lacks. */
  readonly sheet: Fonts
}

/**
 * A job card as a PDF, a side a page, true to scale, on A4 or Letter. One outline entry a leaf, its sides under it. The same card gives the
 * same bytes.
 */
export async function cardPdf(card: Card, paper: Paper['name'], fonts: CardFonts): Promise<Uint8Array> {
  const { document, bytes } = opened(`${card.name}: job card`, faces(fonts))
  drawSides(
    document,
    document.outline,
    flow(card).map((side) => onPaper(side, papers[paper])),
  )
  document.end()
  return bytes
}

/**
 * Everything on paper in one file: a page that lists what is in it, the card's sides, the drawing sheets, each at its own paper size and
 * numbered through.
 */
export async function packet(
  card: Card,
  sheets: readonly Sheet[],
  paper: Paper['name'],
  fonts: CardFonts,
): Promise<Uint8Array> {
  const sides = flow(card)
  const listed = (first: number): readonly PrintedSide[] =>
    flow(listOf(card, sides, sheets, paper, first)).map((side) => ({ ...side, ends: false }))
  const pagesOfList = listed(2).length
  const list = listed(pagesOfList + 1)
  const of = pagesOfList + sides.length + sheets.length
  const numbered = (some: readonly PrintedSide[], before: number): readonly Page[] =>
    some.map((side, at) => onPaper(side, papers[paper], `page ${before + at + 1} of ${of}`))

  const { document, bytes } = opened(`${card.name}: card and drawings`, faces(fonts))
  drawSides(document, document.outline, numbered(list, 0))
  drawSides(document, document.outline, numbered(sides, pagesOfList))
  const drawings = sheets.length > 0 ? document.outline.addItem('Drawings') : document.outline
  drawSheets(document, drawings, sheets, (sheet, at) => {
    const text = `page ${pagesOfList + sides.length + at + 1} of ${of}`
    document.font('card').fontSize(sheetCount.size)
    const width = document.widthOfString(text)
    const right = (sheet.paper.width - sheetCount.fromRight) * point - width
    const y = (sheet.paper.height - sheetCount.fromBottom) * point
    writeText(document, text, round(right), round(y))
  })
  document.end()
  return bytes
}

/** Where a sheet's place in the packet stands, in the margin under its frame: points, mm, mm. */
const sheetCount = { size: 8, fromRight: 10, fromBottom: 3 }

const faces = ({ regular, bold, sheet }: CardFonts): Readonly<Record<string, Uint8Array>> => ({
  card: regular,
  'card-bold': bold,
  upright: sheet.regular,
  bold: sheet.bold,
})

/** The list at the head of a packet, laid as a card of its own. */
function listOf(
  card: Card,
  sides: readonly PrintedSide[],
  sheets: readonly Sheet[],
  paper: Paper['name'],
  first: number,
): Card {
  const rows = [
    ...sides.map((side) => [`Job card, ${lowered(side.title)}`, paper]),
    ...sheets.map((sheet) => [`Drawing ${sheet.number}, ${sheet.title}`, sheet.paper.name]),
  ]
  return {
    ...card,
    leaves: [
      {
        leaf: 'reasons',
        title: 'Packet',
        sides: [
          {
            title: 'what is in it',
            blocks: [
              {
                block: 'table',
                title: 'Pages',
                columns: [{ head: 'page', align: 'decimal' }, { head: 'what', grows: true }, { head: 'paper' }],
                rows: rows.map(([what, size], at) => ({ cells: [{ number: String(first + at) }, what, size] })),
              },
            ],
          },
        ],
      },
    ],
  }
}

const lowered = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`

/** Draws sides on pages of their own; outline entries by leaf. */
function drawSides(document: PDFKit.PDFDocument, under: PDFKit.PDFOutline, pages: readonly Page[]): void {
  let leaf: { readonly title: string; readonly entry: PDFKit.PDFOutline } | undefined
  for (const { side, paper, marks } of pages) {
    document.addPage({ size: [paper.width * point, paper.height * point], margin: 0 })
    if (leaf?.title !== side.leaf.title)
      leaf = { title: side.leaf.title, entry: under.addItem(oneLine(side.leaf.title)) }
    leaf.entry.addItem(oneLine(side.title))
    for (const mark of marks) drawMark(document, mark)
  }
}

/** Pictures are lettered in the card's face too, but for words with a sign that it lacks. */
const pictureFace: FaceOf = (text, bold) => {
  const own = stretchesOf(text, 10).every(({ face }) => face === 'card')
  return own ? (bold ? 'card-bold' : 'card') : bold ? 'bold' : 'upright'
}

const at = (mm: number): number => round(mm * point)

function drawMark(document: PDFKit.PDFDocument, mark: Mark): void {
  switch (mark.mark) {
    case 'words': {
      const text = oneLine(mark.text)
      if (text.trim() === '') return
      const card = mark.face === 'card'
      document.font(card ? (mark.bold ? 'card-bold' : 'card') : mark.bold ? 'bold' : 'upright')
      document.fontSize(round(mark.size * (card ? 1 : otherFaceSize)))
      writeText(document, text, at(mark.x), at(mark.y))
      return
    }
    case 'line':
      document.lineCap('butt').lineWidth(at(mark.width))
      document.moveTo(at(mark.from[0]), at(mark.from[1])).lineTo(at(mark.to[0]), at(mark.to[1])).stroke()
      return
    case 'box':
      document.lineCap('butt').lineWidth(at(mark.line))
      document.rect(at(mark.x), at(mark.y), at(mark.width), at(mark.height)).stroke()
      return
    case 'bar':
      document.rect(at(mark.x), at(mark.y), at(mark.width), at(mark.height)).fill()
      return
    case 'picture': {
      // A fresh pen: the marks around it set their own.
      const pen: Pen = { width: 0, cap: undefined }
      const origin = { left: mark.x, bottom: mark.y + mark.picture.height }
      for (const stroke of mark.picture.strokes) draw(document, stroke, origin, pen, pictureFace)
    }
  }
}
