/** Marks that look for their own place round a view: ends of cutting planes, surface ticks, letters of details. */
import { hangOf, lengthOf } from './letters.ts'
import { type Manner, roughness } from './numbers.ts'
import type { OntoPaper } from './onto-paper.ts'
import { costOf, is, Piece } from './piece.ts'
import { radians } from './plane.ts'
import type { Style } from './style.ts'
import type { Box, Mark } from './view.ts'

type Of<K extends Mark['mark']> = Extract<Mark, { mark: K }>

export interface PlaneDrawn {
  readonly piece: Piece
  /** Thick ends: x1, y1, x2, y2 in turn. */
  readonly thick: readonly number[]
  /** The chain line between them, absent where an axis lies there already. */
  readonly chain?: readonly [number, number, number, number]
}

/** Stand-off of a cutting plane's end from the outline, its length, and its arrow's. */
const away = 3.7
const end = 5
const shaft = 7

function letterInto(piece: Piece, letter: string, cx: number, cy: number, style: Style): void {
  const length = lengthOf(letter, style.text)
  piece.text(cx - length / 2, cy - style.text / 2, 0, style.text, length, letter)
  piece.box(cx - length / 2, cy - style.text / 2, cx + length / 2, cy + style.text / 2, 0.8)
}

/** A cutting plane: upright or level, its ends set off the outline where it meets it, `farther` where dimensions need the room between. */
export function drawPlane(
  mark: Of<'plane'>,
  paper: OntoPaper,
  field: Piece,
  style: Style,
  farther: number,
): PlaneDrawn {
  const [ax, ay] = paper.at(mark.from)
  const [bx, by] = paper.at(mark.to)
  const upright = Math.abs(ax - bx) < Math.abs(ay - by)
  const at = upright ? (ax + bx) / 2 : (ay + by) / 2
  // How far the outline reaches along the plane, and whether a centre line lies on it.
  let [low, high] = [Infinity, -Infinity]
  let past = farther
  let onAxis = false
  const { segments } = field
  for (let i = 0; i < segments.length; i += 5) {
    const [p1, q1, p2, q2] = upright
      ? [segments[i + 1]!, segments[i + 2]!, segments[i + 3]!, segments[i + 4]!]
      : [segments[i + 2]!, segments[i + 1]!, segments[i + 4]!, segments[i + 3]!]
    if (segments[i] === is.centre) {
      if (Math.abs(p1 - at) < 0.01 && Math.abs(p2 - at) < 0.01 && Math.abs(q2 - q1) > 8) onAxis = true
      continue
    }
    if (Math.min(p1, p2) > at + 0.01 || Math.max(p1, p2) < at - 0.01) continue
    const share = Math.abs(p2 - p1) < 1e-9 ? [q1, q2] : [q1 + ((q2 - q1) * (at - p1)) / (p2 - p1)]
    for (const q of share) {
      low = Math.min(low, q)
      high = Math.max(high, q)
    }
  }
  if (onAxis) past += 1.6
  if (!(high > low)) [low, high] = upright ? [Math.min(ay, by), Math.max(ay, by)] : [Math.min(ax, bx), Math.max(ax, bx)]
  const piece = new Piece()
  const thick: number[] = []
  const put = (kind: 0 | 2 | 5, p1: number, q1: number, p2: number, q2: number): void =>
    upright ? piece.segment(kind, p1, q1, p2, q2) : piece.segment(kind, q1, p1, q2, p2)
  for (const side of [-1, 1] as const) {
    const near = (side < 0 ? low : high) + side * (away + past)
    const far = near + side * end
    put(is.edge, at, near, at, far)
    thick.push(...(upright ? [at, near, at, far] : [near, at, far, at]))
    const sense = mark.looks === 'right' || mark.looks === 'up' ? 1 : -1
    const onto = style.planeArrow === 'onto'
    const tip = onto ? at : at + sense * shaft
    const tail = onto ? at - sense * shaft : at
    const base = upright ? far : (near + far) / 2
    if (upright) {
      piece.segment(is.dimension, tail, base, tip, base)
      piece.arrow(tip, base, sense, 0)
      letterInto(piece, mark.letter, (onto ? tail : tip) + (onto ? -sense : sense) * 2.6, base, style)
    } else {
      piece.segment(is.dimension, base, tail, base, tip)
      piece.arrow(base, tip, 0, sense)
      letterInto(
        piece,
        mark.letter,
        base + side * 2.8,
        onto ? tail + sense * style.text * 0.5 : tip - sense * style.text * 0.5,
        style,
      )
    }
  }
  if (!onAxis) put(is.centre, at, low - away - past, at, high + away + past)
  const chain: [number, number, number, number] = upright
    ? [at, low - away - past, at, high + away + past]
    : [low - away - past, at, high + away + past, at]
  return { piece, thick, ...(!onAxis && { chain }) }
}

/** Draws a surface tick standing upright on (x, y), material to be removed. */
function tick(piece: Piece, x: number, y: number, words: string, style: Style): void {
  const h = style.small
  const short = 1.4 * h
  const long = 3 * h
  const lean = Math.tan(radians(30))
  const length = lengthOf(words, h)
  piece.segment(is.symbol, x, y, x - short * lean, y + short)
  piece.segment(is.symbol, x - short * lean, y + short, x + short * lean, y + short)
  piece.segment(is.symbol, x, y, x + long * lean, y + long)
  piece.segment(is.symbol, x + long * lean, y + long, x + long * lean + length + 1.6, y + long)
  const left = x + long * lean + 0.9
  piece.text(left, y + long - h - 0.9, 0, h, length, words)
  piece.box(left, y + long - h - 0.9, left + length, y + long - 0.9, 0.7)
}

/** The surface tick on its edge, slid along it until it is clear; on a leader of its own where the edge does not face up. */
export function drawTexture(
  mark: Of<'texture'>,
  paper: OntoPaper,
  placed: readonly Piece[],
  metal: readonly Box[],
  style: Style,
  manner: Manner,
): Piece {
  const [x, y] = paper.at(mark.at)
  const words = roughness(mark.ra, manner)
  const field = placed[0]!
  let [from, to] = [x, x]
  for (let i = 0; i < field.segments.length; i += 5) {
    const [kind, x1, y1, x2, y2] = field.segments.slice(i, i + 5) as [number, number, number, number, number]
    if (kind !== is.edge || Math.abs(y1 - y) > 0.01 || Math.abs(y2 - y) > 0.01) continue
    if (Math.min(x1, x2) > x + 0.01 || Math.max(x1, x2) < x - 0.01) continue
    from = Math.min(x1, x2) + 1
    to = Math.max(x1, x2) - 1
  }
  const length = Math.hypot(mark.out[0], mark.out[1])
  const [ux, uy] = [mark.out[0] / length, mark.out[1] / length]
  let best: Piece | undefined
  let least = Infinity
  const tried = (piece: Piece, cost: number): void => {
    if (cost >= least) return
    for (const box of metal)
      for (let i = 0; i < piece.boxes.length; i += 5)
        if (
          piece.boxes[i]! < box.x2 &&
          piece.boxes[i + 2]! > box.x1 &&
          piece.boxes[i + 1]! < box.y2 &&
          piece.boxes[i + 3]! > box.y1
        )
          return
    const sum = placed.reduce((total, other) => total + costOf(piece, other), cost)
    if (sum >= least) return
    least = sum
    best = piece
  }
  if (uy > 0.7)
    for (let step = 0; step <= 60; step++)
      for (const way of step === 0 ? [1] : [1, -1]) {
        const at = x + way * step
        if (at < from - 1e-6 && step > 0) continue
        if (at > to + 1e-6 && step > 0) continue
        const piece = new Piece()
        tick(piece, at, y, words, style)
        tried(piece, step * 0.2)
      }
  if (!best)
    for (const reach of [8, 12, 17, 24, 32, 45])
      for (const turn of [0, 30, -30, 45, -45, 60, -60]) {
        const c = Math.cos(radians(turn))
        const s = Math.sin(radians(turn))
        const [vx, vy] = [ux * c - uy * s, ux * s + uy * c]
        const piece = new Piece()
        const [ex, ey] = [x + vx * reach, y + vy * reach]
        const run = vx < -0.01 ? -1 : 1
        piece.arrow(x, y, -vx, -vy)
        piece.segment(is.leader, x, y, ex, ey)
        piece.segment(is.shelf, ex, ey, ex + run * 6, ey)
        tick(piece, ex + run * 3.5, ey, words, style)
        tried(piece, reach + Math.abs(turn) * 0.1)
      }
  if (best) return best
  const piece = new Piece()
  tick(piece, x, y, words, style)
  return piece
}

/** The letter of a detail, beside its circle where it is clear. */
export function drawDetailLetter(
  letter: string,
  x: number,
  y: number,
  radius: number,
  placed: readonly Piece[],
  metal: readonly Box[],
  style: Style,
): Piece {
  const wide = lengthOf(letter, style.text)
  for (const overMetal of [false, true])
    for (const apart of [1.2, 2.5, 4, 6, 9, 13])
      for (const angle of [-45, 45, -135, 135, 0, 180, -90, 90, -20, 20, -70, 70, -110, 110, -160, 160]) {
        const c = Math.cos(radians(angle))
        const s = Math.sin(radians(angle))
        const reach = radius + apart + Math.abs(c) * (wide / 2) + Math.abs(s) * (style.text / 2)
        const piece = new Piece()
        letterInto(piece, letter, x + c * reach, y + s * reach, style)
        const [x1, y1, x2, y2] = piece.boxes as [number, number, number, number]
        if (!overMetal && metal.some((box) => x1 < box.x2 && x2 > box.x1 && y1 < box.y2 && y2 > box.y1)) continue
        if (placed.every((other) => costOf(piece, other) < Infinity)) return piece
      }
  const piece = new Piece()
  letterInto(piece, letter, x + radius + 3, y - radius - 3, style)
  return piece
}

/** An arrow in the view with words along it, moved sideways until it is clear of outline and marks; 10 to 16 mm long on paper. */
export function drawWayArrow(
  mark: Of<'arrow'>,
  paper: OntoPaper,
  placed: readonly Piece[],
  metal: readonly Box[],
  style: Style,
): Piece {
  const from = paper.at(mark.from)
  const to = paper.at(mark.to)
  const given = Math.hypot(to[0] - from[0], to[1] - from[1])
  const upright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0])
  const sense = (upright ? to[1] - from[1] : to[0] - from[0]) < 0 ? -1 : 1
  const half = Math.min(Math.max(given, 10), 16) / 2
  const words = style.capitals ? mark.text.toUpperCase() : mark.text
  const wide = lengthOf(words, style.small)
  const hang = hangOf(words, style.small)
  const drawn = (cx: number, cy: number, before: boolean): Piece => {
    const piece = new Piece()
    if (upright) {
      piece.segment(is.dimension, cx, cy - half, cx, cy + half)
      piece.arrow(cx, cy + sense * half, 0, sense)
      const x = before ? cx - hang - 1 : cx + 1 + style.small
      piece.text(x, cy - wide / 2, 90, style.small, wide, words)
      piece.box(x - style.small, cy - wide / 2, x + hang, cy + wide / 2, 0.8)
    } else {
      piece.segment(is.dimension, cx - half, cy, cx + half, cy)
      piece.arrow(cx + sense * half, cy, sense, 0)
      const y = before ? cy + hang + 1 : cy - 1 - style.small
      piece.text(cx - wide / 2, y, 0, style.small, wide, words)
      piece.box(cx - wide / 2, y - hang, cx + wide / 2, y + style.small, 0.8)
    }
    return piece
  }
  const [cx, cy] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const field = placed[0]!
  const outward = upright ? (cx < (field.left + field.right) / 2 ? -1 : 1) : cy < (field.low + field.high) / 2 ? -1 : 1
  for (let step = 0; step <= 60; step += 1)
    for (const before of [true, false]) {
      const off = outward * step
      const piece = upright ? drawn(cx + off, cy, before) : drawn(cx, cy + off, before)
      const [x1, y1, x2, y2] = piece.boxes as [number, number, number, number]
      if (metal.some((box) => x1 < box.x2 + 1 && x2 > box.x1 - 1 && y1 < box.y2 + 1 && y2 > box.y1 - 1)) continue
      if (placed.every((other) => costOf(piece, other) === 0)) return piece
    }
  return drawn(cx, cy, true)
}
