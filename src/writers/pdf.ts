import PDFDocument from 'pdfkit'
import { capHeight } from '../drawing/letters.ts'
import type { Sheet, Stroke } from '../drawing/sheet.ts'
import type { Point } from '../solid/outline.ts'
import { oneLine, onCircle, stretches, sweep } from './marks.ts'

/** PDF points for one millimetre. */
const point = 72 / 25.4
/** Text whose width differs by more than this from its measured length, mm, is stretched onto it. */
const slack = 0.05
// Letters stand at their bare advances, as they were measured: no pair is moved, none is joined.
const unjoined = { kern: false, liga: false, clig: false, calt: false, ccmp: false, mark: false, mkmk: false }
/** No clock: every file of ours says the same day. */
const day = new Date(Date.UTC(2000, 0, 1))

export interface Fonts {
  /** DejaVu Sans Condensed as a TrueType file, upright and bold; the letters used are embedded. */
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

/**
 * Sheets as one PDF, a sheet a page, true to scale: viewers are asked not to fit it to the paper. One outline entry a part, its further
 * sheets under it. Nothing is
 * compressed, since every release of a compressor packs differently and the same sheets shall give the same bytes everywhere.
 */
export async function pdf(sheets: readonly Sheet[], fonts: Fonts): Promise<Uint8Array> {
  const [first] = sheets
  if (!first) throw new RangeError('a document without a sheet')
  const document = new PDFDocument({
    pdfVersion: '1.7',
    autoFirstPage: false,
    compress: false,
    // An empty name keeps the library from opening a font of its own (a data file that a bundle does not have).
    font: '',
    lang: 'en',
    info: {
      Title: oneLine(`${first.number} ${first.title}`),
      Producer: 'borewright',
      Creator: 'borewright',
      CreationDate: day,
    },
  })
  const bytes = gathered(document)
  // Not ended by us: the root ends what it holds.
  const root = document as unknown as { readonly _root: { readonly data: Record<string, unknown> } }
  root._root.data.ViewerPreferences = document.ref({ PrintScaling: 'None' })
  document.registerFont('upright', sourceOf(fonts.regular))
  document.registerFont('bold', sourceOf(fonts.bold))
  let part: { readonly name: string; readonly entry: PDFKit.PDFOutline } | undefined
  let sheetOfPart = 0
  for (const sheet of sheets) {
    document.addPage({ size: [sheet.paper.width * point, sheet.paper.height * point], margin: 0 })
    const title = oneLine(`${sheet.number} ${sheet.title}`)
    if (part?.name === sheet.part) part.entry.addItem(`${title}, sheet ${++sheetOfPart}`)
    else {
      part = { name: sheet.part, entry: document.outline.addItem(title) }
      sheetOfPart = 1
    }
    const pen: Pen = { width: 0, cap: undefined }
    for (const stroke of sheet.strokes) draw(document, stroke, sheet.paper.height, pen)
  }
  document.end()
  return bytes
}

/** The library takes any view of bytes; its types know only Node's. */
const sourceOf = (bytes: Uint8Array): ArrayBuffer => bytes.slice().buffer as ArrayBuffer

function gathered(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('error', reject)
    document.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
      let at = 0
      for (const chunk of chunks) {
        whole.set(chunk, at)
        at += chunk.length
      }
      resolve(whole)
    })
  })
}

// The library measures in points from the upper left corner.
const placed = ([x, y]: Point, height: number): [number, number] => [round(x * point), round((height - y) * point)]
const round = (value: number): number => Math.round(value * 1e4) / 1e4

/** What the page's pen is set to; black from the start. */
interface Pen {
  width: number
  cap: 'butt' | 'round' | undefined
}

function draw(document: PDFKit.PDFDocument, stroke: Stroke, height: number, pen: Pen): void {
  switch (stroke.stroke) {
    case 'line': {
      const [[x1, y1], [x2, y2]] = [stroke.from, stroke.to]
      const length = Math.hypot(x2 - x1, y2 - y1)
      for (const [from, to] of stretches(length, stroke.dashes)) {
        const along = (distance: number): Point =>
          length === 0 ? stroke.from : [x1 + ((x2 - x1) * distance) / length, y1 + ((y2 - y1) * distance) / length]
        document.moveTo(...placed(along(from), height)).lineTo(...placed(along(to), height))
      }
      return ink(document, stroke, pen)
    }
    case 'arc': {
      const turn = sweep(stroke.from, stroke.to)
      const length = (turn * Math.PI * stroke.radius) / 180
      for (const [from, to] of stretches(length, stroke.dashes)) {
        const angle = (distance: number): number => stroke.from + (length === 0 ? 0 : (turn * distance) / length)
        bend(document, stroke.centre, stroke.radius, angle(from), angle(to), height)
      }
      if (turn === 360 && !stroke.dashes?.length) document.closePath()
      return ink(document, stroke, pen)
    }
    case 'text':
      return write(document, stroke, height)
    case 'fill':
      stroke.points.forEach((corner, index) => {
        if (index === 0) document.moveTo(...placed(corner, height))
        else document.lineTo(...placed(corner, height))
      })
      document.closePath().fill()
  }
}

function ink(document: PDFKit.PDFDocument, stroke: Extract<Stroke, { stroke: 'line' | 'arc' }>, pen: Pen): void {
  const [width, cap] = [round(stroke.width * point), stroke.dashes?.length ? ('butt' as const) : ('round' as const)]
  if (width !== pen.width) document.lineWidth(width)
  if (cap !== pen.cap) document.lineCap(cap)
  Object.assign(pen, { width, cap })
  document.stroke()
}

/** An arc as cubic curves of at most 45 degrees each: within 5e-6 of the radius. */
function bend(document: PDFKit.PDFDocument, centre: Point, radius: number, from: number, to: number, height: number) {
  const pieces = Math.max(1, Math.ceil((to - from) / 45 - 1e-9))
  const step = (to - from) / pieces
  const reach = (4 / 3) * Math.tan((step * Math.PI) / 720)
  document.moveTo(...placed(onCircle(centre, radius, from), height))
  for (let piece = 0; piece < pieces; piece++) {
    const [start, end] = [from + piece * step, from + (piece + 1) * step]
    const [a, b] = [onCircle(centre, radius, start), onCircle(centre, radius, end)]
    const p: Point = [a[0] - (a[1] - centre[1]) * reach, a[1] + (a[0] - centre[0]) * reach]
    const q: Point = [b[0] + (b[1] - centre[1]) * reach, b[1] - (b[0] - centre[0]) * reach]
    document.bezierCurveTo(...placed(p, height), ...placed(q, height), ...placed(b, height))
  }
}

function write(document: PDFKit.PDFDocument, stroke: Extract<Stroke, { stroke: 'text' }>, height: number): void {
  const text = oneLine(stroke.text)
  if (text.trim() === '') return
  document.font(stroke.bold ? 'bold' : 'upright').fontSize(round((stroke.height / capHeight) * point))
  // The library's types list features by name; the shaper behind it also takes them switched off one by one.
  const features = unjoined as unknown as PDFKit.Mixins.OpenTypeFeatures[]
  const wanted = stroke.length * point
  const natural = document.widthOfString(text, { features })
  const fitted = Math.abs(natural - wanted) > slack * point && natural > 0 && wanted > 0
  const [x, y] = placed(stroke.at, height)
  document.save()
  if (stroke.turn === 90) document.rotate(-90, { origin: [x, y] })
  document.text(text, x, y, {
    lineBreak: false,
    baseline: 'alphabetic',
    features,
    ...(fitted ? { horizontalScaling: Math.round((1e6 * wanted) / natural) / 1e4 } : {}),
  })
  document.restore()
}
