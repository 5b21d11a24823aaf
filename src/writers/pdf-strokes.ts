/** Strokes on a page of a PDF. */
import { capHeight } from '../drawing/letters.ts'
import type { Stroke } from '../drawing/sheet.ts'
import type { Point } from '../solid/outline.ts'
import { oneLine, onCircle, stretches, sweep } from './marks.ts'
import { point, round, writeText } from './pdf-document.ts'

/** Text whose width differs by more than this from its measured length, mm, is stretched onto it. */
const slack = 0.05

// The library measures in points from the upper left corner.
const right = (at: Point, origin: Origin): number => round((origin.left + at[0]) * point)
const down = (at: Point, origin: Origin): number => round((origin.bottom - at[1]) * point)
const moveTo = (document: PDFKit.PDFDocument, at: Point, origin: Origin): unknown =>
  document.moveTo(right(at, origin), down(at, origin))
const lineTo = (document: PDFKit.PDFDocument, at: Point, origin: Origin): unknown =>
  document.lineTo(right(at, origin), down(at, origin))

/** Where the strokes' own origin lies on the page: mm from its left, mm from its top. */
export interface Origin {
  readonly left: number
  readonly bottom: number
}

/** What the page's pen is set to; black from the start. */
export interface Pen {
  width: number
  cap: 'butt' | 'round' | undefined
}

/** The name of the face that a text is set in, of the same size whichever it is. */
export type FaceOf = (text: string, bold: boolean) => string
const sheetFace: FaceOf = (_, bold) => (bold ? 'bold' : 'upright')

/** Draws a stroke; `pen` knows what the page's pen was last set to. Text fills its measured length whatever its face. */
export function draw(
  document: PDFKit.PDFDocument,
  stroke: Stroke,
  origin: Origin,
  pen: Pen,
  faceOf: FaceOf = sheetFace,
): void {
  switch (stroke.stroke) {
    case 'line': {
      for (const [from, to] of stroke.dashes?.length ? dashesOf(stroke) : [[stroke.from, stroke.to] as const]) {
        moveTo(document, from, origin)
        lineTo(document, to, origin)
      }
      return ink(document, stroke, pen)
    }
    case 'arc': {
      const turn = sweep(stroke.from, stroke.to)
      const length = (turn * Math.PI * stroke.radius) / 180
      for (const [from, to] of stretches(length, stroke.dashes)) {
        const angle = (distance: number): number => stroke.from + (length === 0 ? 0 : (turn * distance) / length)
        bend(document, stroke.centre, stroke.radius, angle(from), angle(to), origin)
      }
      if (turn === 360 && !stroke.dashes?.length) document.closePath()
      return ink(document, stroke, pen)
    }
    case 'text':
      return write(document, stroke, origin, faceOf)
    case 'fill':
      stroke.points.forEach((corner, index) => {
        if (index === 0) moveTo(document, corner, origin)
        else lineTo(document, corner, origin)
      })
      document.closePath().fill()
  }
}

/** The ends of a line's dashes. */
const dashesOf = ({ from, to, dashes }: Extract<Stroke, { stroke: 'line' }>): (readonly [Point, Point])[] => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy)
  const along = (distance: number): Point =>
    length === 0 ? from : [from[0] + (dx * distance) / length, from[1] + (dy * distance) / length]
  return stretches(length, dashes).map(([start, end]) => [along(start), along(end)] as const)
}

function ink(document: PDFKit.PDFDocument, stroke: Extract<Stroke, { stroke: 'line' | 'arc' }>, pen: Pen): void {
  const width = round(stroke.width * point)
  const cap = stroke.dashes?.length ? 'butt' : 'round'
  if (width !== pen.width) document.lineWidth(width)
  if (cap !== pen.cap) document.lineCap(cap)
  pen.width = width
  pen.cap = cap
  document.stroke()
}

/** An arc as cubic curves of at most 45 degrees each: within 5e-6 of the radius. */
function bend(document: PDFKit.PDFDocument, centre: Point, radius: number, from: number, to: number, origin: Origin) {
  const pieces = Math.max(1, Math.ceil((to - from) / 45 - 1e-9))
  const step = (to - from) / pieces
  const reach = (4 / 3) * Math.tan((step * Math.PI) / 720)
  moveTo(document, onCircle(centre, radius, from), origin)
  for (let piece = 0; piece < pieces; piece++) {
    const [start, end] = [from + piece * step, from + (piece + 1) * step]
    const [a, b] = [onCircle(centre, radius, start), onCircle(centre, radius, end)]
    const p: Point = [a[0] - (a[1] - centre[1]) * reach, a[1] + (a[0] - centre[0]) * reach]
    const q: Point = [b[0] + (b[1] - centre[1]) * reach, b[1] - (b[0] - centre[0]) * reach]
    const [px, py, qx, qy] = [right(p, origin), down(p, origin), right(q, origin), down(q, origin)]
    document.bezierCurveTo(px, py, qx, qy, right(b, origin), down(b, origin))
  }
}

function write(
  document: PDFKit.PDFDocument,
  stroke: Extract<Stroke, { stroke: 'text' }>,
  origin: Origin,
  faceOf: FaceOf,
): void {
  const text = oneLine(stroke.text)
  if (text.trim() === '') return
  document.font(faceOf(text, stroke.bold ?? false)).fontSize(round((stroke.height / capHeight) * point))
  const wanted = stroke.length * point
  const natural = document.widthOfString(text)
  const fitted = Math.abs(natural - wanted) > slack * point && natural > 0 && wanted > 0
  const [x, y] = [right(stroke.at, origin), down(stroke.at, origin)]
  document.save()
  if (stroke.turn === 90) document.rotate(-90, { origin: [x, y] })
  writeText(document, text, x, y, fitted ? Math.round((1e6 * wanted) / natural) / 1e4 : 100)
  document.restore()
}
