/**
 * A piece is one callout (or one mark) as it would stand on paper: segments, boxes of text, arrows. It is the only thing that the rules of
 * placing look at. Numbers lie flat in arrays because thousands of candidates are tried.
 */
import { cross, enters } from './plane.ts'

/** What a segment is: the rules differ. `chord` stands for an arc in the test and is not drawn. */
export const is = {
  edge: 0,
  hidden: 1,
  centre: 2,
  thin: 3,
  extension: 4,
  dimension: 5,
  chord: 6,
  leader: 7,
  shelf: 8,
  symbol: 9,
} as const
export type SegmentKind = (typeof is)[keyof typeof is]

export interface Text {
  readonly x: number
  readonly y: number
  readonly turn: 0 | 90
  readonly height: number
  readonly length: number
  readonly text: string
  readonly bold?: boolean
}

/** Numbers of `segments` that eight of them take. */
const stretch = 40

export class Piece {
  /** kind, x1, y1, x2, y2 in turn. Of a piece that is tried only the first `segmentsEnd` numbers count; so with boxes and arrows. */
  readonly segments: number[] = []
  /** x1, y1, x2, y2, pad */
  readonly boxes: number[] = []
  /** tip x, y, then the unit direction from tail to tip */
  readonly arrows: number[] = []
  /** centre x, y, radius, from, to */
  readonly arcs: number[] = []
  /** triangles: three points */
  readonly fills: number[] = []
  readonly texts: Text[] = []
  segmentsEnd = 0
  boxesEnd = 0
  arrowsEnd = 0
  /** x1, y1, x2, y2 round every eight segments, of so many numbers of `segments`. */
  private readonly stretches: number[] = []
  private stretchesOf = 0
  /** A piece that is only tried is cleared and drawn again and again; it keeps no texts, arcs and fills. */
  readonly tried: boolean
  left = Infinity
  low = Infinity
  right = -Infinity
  high = -Infinity

  constructor(tried = false) {
    this.tried = tried
  }

  /** Empties a tried piece; its arrays stay as long as they were. */
  clear(): void {
    this.segmentsEnd = 0
    this.boxesEnd = 0
    this.arrowsEnd = 0
    this.left = this.low = Infinity
    this.right = this.high = -Infinity
  }

  /** The end of the stretch of eight segments that begins at `from`. */
  stretchEnd(from: number): number {
    return Math.min(from + stretch, this.segmentsEnd)
  }

  /**
   * Whether any of the eight segments from `from` on may reach into a box, or touch it. Asked of a piece that stands; of one that is tried, with few
   * segments and soon gone, it is not looked into.
   */
  reachesInto(from: number, x1: number, y1: number, x2: number, y2: number): boolean {
    if (this.tried) return true
    if (this.stretchesOf !== this.segmentsEnd) this.bound()
    const at = (from / stretch) * 4
    const { stretches } = this
    return stretches[at]! <= x2 && stretches[at + 2]! >= x1 && stretches[at + 1]! <= y2 && stretches[at + 3]! >= y1
  }

  /** Boxes round every eight segments. */
  private bound(): void {
    const { segments, stretches } = this
    stretches.length = 0
    for (let from = 0; from < this.segmentsEnd; from += stretch) {
      let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity]
      for (let i = from; i < this.stretchEnd(from); i += 5) {
        left = Math.min(left, segments[i + 1]!, segments[i + 3]!)
        low = Math.min(low, segments[i + 2]!, segments[i + 4]!)
        right = Math.max(right, segments[i + 1]!, segments[i + 3]!)
        high = Math.max(high, segments[i + 2]!, segments[i + 4]!)
      }
      stretches.push(left, low, right, high)
    }
    this.stretchesOf = this.segmentsEnd
  }

  private reach(x: number, y: number): void {
    if (x < this.left) this.left = x
    if (x > this.right) this.right = x
    if (y < this.low) this.low = y
    if (y > this.high) this.high = y
  }

  segment(kind: SegmentKind, x1: number, y1: number, x2: number, y2: number): void {
    const { segments } = this
    let end = this.segmentsEnd
    segments[end++] = kind
    segments[end++] = x1
    segments[end++] = y1
    segments[end++] = x2
    segments[end++] = y2
    this.segmentsEnd = end
    this.reach(x1, y1)
    this.reach(x2, y2)
  }

  box(x1: number, y1: number, x2: number, y2: number, pad: number): void {
    const { boxes } = this
    let end = this.boxesEnd
    boxes[end++] = x1
    boxes[end++] = y1
    boxes[end++] = x2
    boxes[end++] = y2
    boxes[end++] = pad
    this.boxesEnd = end
    this.reach(x1, y1)
    this.reach(x2, y2)
  }

  arrow(x: number, y: number, ux: number, uy: number): void {
    const { arrows } = this
    let end = this.arrowsEnd
    arrows[end++] = x
    arrows[end++] = y
    arrows[end++] = ux
    arrows[end++] = uy
    this.arrowsEnd = end
    this.reach(x, y)
    this.reach(x - 3 * ux, y - 3 * uy)
  }

  text(x: number, y: number, turn: 0 | 90, height: number, length: number, text: string): void {
    if (!this.tried) this.texts.push({ x, y, turn, height, length, text })
  }

  arc(x: number, y: number, radius: number, from: number, to: number): void {
    if (!this.tried) this.arcs.push(x, y, radius, from, to)
  }

  fill(x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): void {
    if (!this.tried) this.fills.push(x1, y1, x2, y2, x3, y3)
  }
}

const arrowLength = 3
const padByArrow = 1.05
/** How near a line may come to a text that it does not belong to: centre and extension lines nearer than others. */
const padByLine = (kind: number, pad: number): number =>
  kind === is.centre || kind === is.extension || kind === is.hidden ? Math.min(pad, 0.6) : pad

function boxesMeet(a: Piece, b: Piece): boolean {
  for (let i = 0; i < a.boxesEnd; i += 5)
    for (let j = 0; j < b.boxesEnd; j += 5) {
      const pad = Math.max(a.boxes[i + 4]!, b.boxes[j + 4]!)
      if (
        a.boxes[i]! - pad < b.boxes[j + 2]! &&
        a.boxes[i + 2]! + pad > b.boxes[j]! &&
        a.boxes[i + 1]! - pad < b.boxes[j + 3]! &&
        a.boxes[i + 3]! + pad > b.boxes[j + 1]!
      )
        return true
    }
  return false
}

function linesEnterBoxes(a: Piece, b: Piece): boolean {
  for (let j = 0; j < b.boxesEnd; j += 5) {
    const x1 = b.boxes[j]!
    const y1 = b.boxes[j + 1]!
    const x2 = b.boxes[j + 2]!
    const y2 = b.boxes[j + 3]!
    if (a.left > x2 + 1.2 || a.right < x1 - 1.2 || a.low > y2 + 1.2 || a.high < y1 - 1.2) continue
    const most = b.boxes[j + 4]!
    for (let from = 0; from < a.segmentsEnd; from += stretch) {
      if (!a.reachesInto(from, x1 - most, y1 - most, x2 + most, y2 + most)) continue
      for (let i = from; i < a.stretchEnd(from); i += 5) {
        const pad = padByLine(a.segments[i]!, most)
        if (
          enters(
            a.segments[i + 1]!,
            a.segments[i + 2]!,
            a.segments[i + 3]!,
            a.segments[i + 4]!,
            x1 - pad,
            y1 - pad,
            x2 + pad,
            y2 + pad,
          )
        )
          return true
      }
    }
    for (let i = 0; i < a.arrowsEnd; i += 4) {
      const x = a.arrows[i]!
      const y = a.arrows[i + 1]!
      const tailX = x - arrowLength * a.arrows[i + 2]!
      const tailY = y - arrowLength * a.arrows[i + 3]!
      if (enters(x, y, tailX, tailY, x1 - padByArrow, y1 - padByArrow, x2 + padByArrow, y2 + padByArrow)) return true
    }
  }
  return false
}

/** Lines of `b` through the bodies of `a`'s arrows, from just behind the tip to the tail, as wide as the arrow is there. */
function linesCrossArrows(a: Piece, b: Piece): boolean {
  for (let i = 0; i < a.arrowsEnd; i += 4) {
    const ux = a.arrows[i + 2]!
    const uy = a.arrows[i + 3]!
    const x1 = a.arrows[i]! - 0.6 * ux
    const y1 = a.arrows[i + 1]! - 0.6 * uy
    const x2 = a.arrows[i]! - arrowLength * ux
    const y2 = a.arrows[i + 1]! - arrowLength * uy
    if (b.left > Math.max(x1, x2) + 1 || b.right < Math.min(x1, x2) - 1) continue
    if (b.low > Math.max(y1, y2) + 1 || b.high < Math.min(y1, y2) - 1) continue
    const wide = 0.6
    const left = Math.min(x1, x2) - wide
    const right = Math.max(x1, x2) + wide
    const low = Math.min(y1, y2) - wide
    const high = Math.max(y1, y2) + wide
    for (let from = 0; from < b.segmentsEnd; from += stretch) {
      if (!b.reachesInto(from, left, low, right, high)) continue
      for (let j = from; j < b.stretchEnd(from); j += 5) {
        const sx1 = b.segments[j + 1]!
        const sy1 = b.segments[j + 2]!
        const sx2 = b.segments[j + 3]!
        const sy2 = b.segments[j + 4]!
        if (cross(x1, y1, x2, y2, sx1, sy1, sx2, sy2)) return true
        if (cross(x1, y1, x2 - uy * wide, y2 + ux * wide, sx1, sy1, sx2, sy2)) return true
        if (cross(x1, y1, x2 + uy * wide, y2 - ux * wide, sx1, sy1, sx2, sy2)) return true
      }
    }
    for (let j = 0; j < b.arrowsEnd; j += 4) {
      const bx = b.arrows[j]!
      const by = b.arrows[j + 1]!
      const tailX = bx - arrowLength * b.arrows[j + 2]!
      const tailY = by - arrowLength * b.arrows[j + 3]!
      if (cross(x1 - uy * wide, y1 + ux * wide, x2 - uy * wide, y2 + ux * wide, bx, by, tailX, tailY)) return true
      if (cross(x1 + uy * wide, y1 - ux * wide, x2 + uy * wide, y2 - ux * wide, bx, by, tailX, tailY)) return true
    }
  }
  return false
}

/** What two crossing segments cost; Infinity where they may not cross. */
function price(a: number, b: number): number {
  if (a > b) return price(b, a)
  // a <= b from here
  if (b === is.leader) {
    if (a === is.leader || a === is.dimension || a === is.chord) return Infinity
    return a === is.edge ? 0 : a <= is.thin ? 0.3 : 3
  }
  if (b === is.shelf)
    return a === is.edge
      ? 2
      : a === is.centre || a === is.hidden
        ? 1
        : a === is.thin
          ? 2
          : a === is.extension
            ? 3
            : Infinity
  if (b === is.symbol) return a === is.extension ? 2 : Infinity
  if (b === is.chord) return a === is.extension ? 1 : a === is.dimension ? Infinity : a === is.edge ? 4 : 0.3
  if (b === is.dimension) return a === is.extension ? 1 : a === is.dimension ? Infinity : a === is.edge ? 2 : 0.3
  if (b === is.extension) return a === is.extension ? 0.3 : a === is.edge ? 1.5 : 0.3
  return 0
}

/** What the crossings of two pieces cost. */
function crossings(a: Piece, b: Piece): number {
  let sum = 0
  for (let i = 0; i < a.segmentsEnd; i += 5) {
    const x1 = a.segments[i + 1]!
    const y1 = a.segments[i + 2]!
    const x2 = a.segments[i + 3]!
    const y2 = a.segments[i + 4]!
    const left = Math.min(x1, x2)
    const right = Math.max(x1, x2)
    const low = Math.min(y1, y2)
    const high = Math.max(y1, y2)
    if (right < b.left || left > b.right || high < b.low || low > b.high) continue
    for (let from = 0; from < b.segmentsEnd; from += stretch) {
      if (!b.reachesInto(from, left, low, right, high)) continue
      for (let j = from; j < b.stretchEnd(from); j += 5)
        if (cross(x1, y1, x2, y2, b.segments[j + 1]!, b.segments[j + 2]!, b.segments[j + 3]!, b.segments[j + 4]!)) {
          sum += price(a.segments[i]!, b.segments[j]!)
          if (sum === Infinity) return sum
        }
    }
  }
  return sum
}

/**
 * What it costs to have the two pieces beside each other: 0 when they are clear, something for crossings that are allowed, Infinity when
 * text, arrow and line would meet.
 */
export function costOf(a: Piece, b: Piece): number {
  const margin = 4
  if (a.left > b.right + margin || a.right < b.left - margin || a.low > b.high + margin || a.high < b.low - margin)
    return 0
  if (boxesMeet(a, b) || linesEnterBoxes(a, b) || linesEnterBoxes(b, a)) return Infinity
  if (linesCrossArrows(a, b) || linesCrossArrows(b, a)) return Infinity
  return crossings(a, b)
}

/** Whether no text of a piece meets a text, a line or an arrow of its own. */
export function clearOfItself(a: Piece): boolean {
  for (let i = 0; i < a.boxesEnd; i += 5)
    for (let j = i + 5; j < a.boxesEnd; j += 5)
      if (
        a.boxes[i]! - 0.7 < a.boxes[j + 2]! &&
        a.boxes[i + 2]! + 0.7 > a.boxes[j]! &&
        a.boxes[i + 1]! - 0.7 < a.boxes[j + 3]! &&
        a.boxes[i + 3]! + 0.7 > a.boxes[j + 1]!
      )
        return false
  for (let j = 0; j < a.boxesEnd; j += 5) {
    // A datum's triangle (no pad) stands on a line of its own.
    const own = a.boxes[j + 4] === 0 ? -0.05 : 0.5
    const x1 = a.boxes[j]! - own
    const y1 = a.boxes[j + 1]! - own
    const x2 = a.boxes[j + 2]! + own
    const y2 = a.boxes[j + 3]! + own
    for (let i = 0; i < a.segmentsEnd; i += 5)
      if (
        a.segments[i] !== is.symbol &&
        enters(a.segments[i + 1]!, a.segments[i + 2]!, a.segments[i + 3]!, a.segments[i + 4]!, x1, y1, x2, y2)
      )
        return false
    for (let i = 0; i < a.arrowsEnd; i += 4) {
      const tailX = a.arrows[i]! - arrowLength * a.arrows[i + 2]!
      const tailY = a.arrows[i + 1]! - arrowLength * a.arrows[i + 3]!
      if (enters(a.arrows[i]!, a.arrows[i + 1]!, tailX, tailY, x1 - own, y1 - own, x2 + own, y2 + own)) return false
    }
  }
  return true
}
