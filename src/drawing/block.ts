/** A view solved: a rigid block of strokes round the view's own origin, in paper mm. */
import { drawMarks } from './marks.ts'
import { hatch } from './hatch.ts'
import { lengthOf } from './letters.ts'
import type { Manner } from './numbers.ts'
import { OntoPaper } from './onto-paper.ts'
import { costOf, is, Piece } from './piece.ts'
import { chords } from './plane.ts'
import type { SheetDimension, Stroke } from './sheet.ts'
import { place } from './solve.ts'
import { drawDetailLetter, drawPlane, drawTexture, drawWayArrow } from './stand-offs.ts'
import { arcStroke, Extensions, lineStroke, point, strokesOf } from './strokes.ts'
import type { Style } from './style.ts'
import type { Box, View } from './view.ts'

export interface Block {
  readonly view: View
  readonly scale: number
  /** What it is drawn by: worked out when it is asked for, since most blocks are only tried. */
  readonly ink: () => Ink
  readonly left: number
  readonly right: number
  readonly low: number
  readonly high: number
  /** What it consists of, box by box: outline and marks, each callout, the title. */
  readonly parts: readonly Box[]
  /** False where a callout had to be forced. */
  readonly solved: boolean
}

interface Ink {
  readonly strokes: readonly Stroke[]
  /** `strokes` of each count from the block's own first stroke. */
  readonly dimensions: readonly SheetDimension[]
}

/** `2 : 1`, `1 : 2` */
export const scaleWords = (scale: number): string =>
  scale >= 1 ? `${trimmed(scale)} : 1` : `1 : ${trimmed(1 / scale)}`
const trimmed = (value: number): string => `${Math.round(value * 100) / 100}`

const titleGap = 3.5

export interface Ask {
  readonly scale: number
  /** The title names the scale. */
  readonly named: boolean
  readonly broken: boolean
  readonly letters?: ReadonlyMap<string, string>
  /** Draw it even where something has no room. */
  readonly forced?: boolean
}

/** How far the ends of cutting planes are moved out when they shut a dimension's way. */
const roomForStrips = [0, 14, 22, 32]

/** Solves a view at a scale. */
export function solve(view: View, ask: Ask, style: Style, manner: Manner): Block {
  let last: Block | undefined
  for (const farther of view.marks.some((mark) => mark.mark === 'plane') && !ask.forced ? roomForStrips : [0]) {
    const { block, blocked } = attempt(view, ask, style, manner, farther)
    if (!blocked) return block
    last ??= block
  }
  return last!
}

function attempt(
  view: View,
  ask: Ask,
  style: Style,
  manner: Manner,
  farther: number,
): { readonly block: Block; readonly blocked: boolean } {
  const paper = new OntoPaper(ask.scale, ask.broken ? view.breaks : [])
  const drawn = drawMarks(view, paper, style)
  const metal = view.metal.map((box) => ({
    x1: paper.x(box.x1),
    y1: paper.y(box.y1),
    x2: paper.x(box.x2),
    y2: paper.y(box.y2),
  }))
  /** What is to be drawn of marks, in the order in which it is put. */
  const marked: ((strokes: Stroke[], extensions: Extensions) => void)[] = []
  const pieceOf = (piece: Piece, only?: number): void => {
    marked.push((strokes, extensions) => strokes.push(...strokesOf(piece, style, undefined, extensions, 'size', only)))
  }
  const standing: Piece[] = []
  const circles: { letter: string; x: number; y: number; radius: number }[] = []
  for (const mark of view.marks) {
    if (mark.mark === 'plane') {
      let plane = drawPlane(mark, paper, drawn.field, style, farther)
      for (let out = 2; out <= 40 && costOf(plane.piece, drawn.field) === Infinity; out += 2)
        plane = drawPlane(mark, paper, drawn.field, style, farther + out)
      const { piece, thick, chain } = plane
      marked.push((strokes) => {
        for (let i = 0; i < thick.length; i += 4)
          strokes.push(lineStroke('cut', thick[i]!, thick[i + 1]!, thick[i + 2]!, thick[i + 3]!, style))
        if (chain) strokes.push(lineStroke('centre', ...chain, style))
      })
      pieceOf(piece, is.dimension)
      standing.push(piece)
    } else if (mark.mark === 'detail') {
      const [x, y] = paper.at(mark.centre)
      const radius = Math.max(mark.radius * ask.scale, 3)
      marked.push((strokes) => strokes.push(arcStroke('thin', [x, y], radius, 0, 360, style)))
      const circle = new Piece()
      const points = chords({ centre: [x, y], radius, from: 0, to: 360 }, 0.1)
      for (let i = 0; i + 1 < points.length; i++)
        circle.segment(is.thin, points[i]![0], points[i]![1], points[i + 1]![0], points[i + 1]![1])
      standing.push(circle)
      circles.push({ letter: mark.letter, x, y, radius })
    }
  }
  for (const mark of view.marks) {
    if (mark.mark !== 'texture') continue
    const piece = drawTexture(mark, paper, [drawn.field, ...standing], metal, style, manner)
    pieceOf(piece)
    standing.push(piece)
  }
  const { placed, solved, blocked } = place({
    view,
    paper,
    drawn,
    standing,
    metal,
    style,
    manner,
    ...(ask.letters && { letters: ask.letters }),
    ...(ask.forced && { forced: true }),
  })
  const pieces = [drawn.field, ...standing, ...placed.map(({ piece }) => piece)]
  for (const mark of view.marks) {
    if (mark.mark !== 'arrow') continue
    const piece = drawWayArrow(mark, paper, pieces, metal, style)
    pieceOf(piece)
    pieces.push(piece)
  }
  for (const { letter, x, y, radius } of circles) {
    const piece = drawDetailLetter(letter, x, y, radius, pieces, metal, style)
    pieceOf(piece)
    pieces.push(piece)
  }
  let [left, right, low, high] = [drawn.left, drawn.right, drawn.low, drawn.high]
  const parts: Box[] = [{ x1: left, y1: low, x2: right, y2: high }]
  for (const piece of pieces) {
    if (piece.right >= piece.left) parts.push({ x1: piece.left, y1: piece.low, x2: piece.right, y2: piece.high })
    left = Math.min(left, piece.left)
    right = Math.max(right, piece.right)
    low = Math.min(low, piece.low)
    high = Math.max(high, piece.high)
  }
  let title: Stroke | undefined
  if (view.title !== undefined) {
    const words = view.title + (ask.named ? ` (${scaleWords(ask.scale)})` : '')
    const length = lengthOf(words, style.text)
    const middle = (drawn.left + drawn.right) / 2
    // Over what stands under it, not over a shelf far to the side.
    let top = drawn.high
    for (const piece of pieces)
      if (piece.left < middle + length / 2 + 2 && piece.right > middle - length / 2 - 2) top = Math.max(top, piece.high)
    const y = top + titleGap
    title = {
      stroke: 'text',
      class: 'size',
      width: style.widths.thin,
      at: point(middle - length / 2, y),
      height: style.text,
      length: Math.round(length * 1000) / 1000,
      turn: 0,
      text: words,
    }
    parts.push({ x1: middle - length / 2, y1: y, x2: middle + length / 2, y2: y + style.text })
    left = Math.min(left, middle - length / 2)
    right = Math.max(right, middle + length / 2)
    high = Math.max(high, y + style.text)
  }
  const ink = (): Ink => {
    const strokes: Stroke[] = [...drawn.strokes]
    const extensions = new Extensions()
    for (const draw of marked) draw(strokes, extensions)
    const dimensions: SheetDimension[] = []
    for (const { callout, piece, words, line, points } of placed) {
      const first = strokes.length
      strokes.push(...strokesOf(piece, style, callout.of, extensions))
      if (!line || !points || callout.callout === 'leader') continue
      const [x1, y1, x2, y2] = piece.boxes as [number, number, number, number]
      dimensions.push({
        of: callout.of,
        is: callout.callout,
        turn: callout.callout === 'linear' && callout.axis === 'y' ? 90 : 0,
        points: points.map(([x, y]) => point(x, y)),
        line: point(line[0], line[1]),
        text: words,
        textAt: point((x1 + x2) / 2, (y1 + y2) / 2),
        scale: ask.scale,
        strokes: Array.from({ length: strokes.length - first }, (_, index) => first + index),
      })
    }
    const boxes = pieces.flatMap((piece) => piece.boxes)
    for (const { polygons, angle } of drawn.hatches) strokes.push(...hatch(polygons, angle, boxes, style, drawn.clip))
    if (title) strokes.push(title)
    return { strokes, dimensions }
  }
  return { block: { view, scale: ask.scale, ink, left, right, low, high, parts, solved }, blocked }
}
