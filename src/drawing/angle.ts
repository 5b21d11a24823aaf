/** Angles: an arc between two arms, arrows inside where it is long enough, outside where it is short, and for less a leader. */
import type { Label } from './label.ts'
import { is, type Piece } from './piece.ts'
import { radians } from './plane.ts'
import type { Style } from './style.ts'

export interface PreparedAngle {
  readonly label: Label
  readonly vertex: readonly [number, number]
  readonly a1: number
  readonly a2: number
  /** How far from the vertex each arm may begin to be drawn. */
  readonly starts: readonly [number, number]
}

const chordStep = 6

/** Arc as an arc to be drawn and as chords for the test. */
function arc(piece: Piece, cx: number, cy: number, radius: number, from: number, to: number): void {
  piece.arc(cx, cy, radius, from, to)
  const count = Math.max(1, Math.ceil((to - from) / chordStep))
  for (let i = 0; i < count; i++) {
    const a = radians(from + ((to - from) * i) / count)
    const b = radians(from + ((to - from) * (i + 1)) / count)
    piece.segment(
      is.chord,
      cx + radius * Math.cos(a),
      cy + radius * Math.sin(a),
      cx + radius * Math.cos(b),
      cy + radius * Math.sin(b),
    )
  }
}

/** Text whose box stands beyond (x, y) in the direction (ux, uy), level. `slide` -1, 0, 1 moves it along its longer free side. */
function beyond(piece: Piece, label: Label, x: number, y: number, ux: number, uy: number, slide: number): void {
  const width = label.width
  const high = label.up + label.down
  let cx: number
  let cy: number
  if (Math.abs(ux) > Math.abs(uy)) {
    cx = x + Math.sign(ux) * (1.2 + width / 2)
    cy = y + slide * (high / 2) + Math.sign(uy) * 0.5
  } else {
    cx = x + slide * (width / 2 + 0.2)
    cy = y + Math.sign(uy) * (1.2 + high / 2)
  }
  const left = cx - width / 2
  const base = cy - high / 2 + label.down
  for (const run of label.runs) piece.text(left + run.dx, base + run.dy, 0, label.height, run.length, run.text)
  piece.box(left, cy - high / 2, left + width, cy + high / 2, 0.8)
}

/** Ways of drawing at one radius: 0..2 arrows in (text outside the arc's middle), 0..5 arrows out (end × slide). */
export const waysOfAngle = 6

/** Draws an angle at `radius` in way `way`; false where it does not go. */
export function drawAngle(piece: Piece, prepared: PreparedAngle, style: Style, radius: number, way: number): boolean {
  const { a1, a2, starts, label } = prepared
  const [cx, cy] = prepared.vertex
  const sweep = a2 - a1
  const gap = radius * radians(sweep)
  if (gap < 0.9) return false
  const inside = gap >= 2 * style.arrow + 1.5
  const at = (angle: number, r: number): [number, number] => [
    cx + r * Math.cos(radians(angle)),
    cy + r * Math.sin(radians(angle)),
  ]
  const lean = ((style.arrow / radius) * 90) / Math.PI // the arrow is a chord: turned by half its own angle
  const arrowOn = (angle: number, way: 1 | -1): void => {
    const [x, y] = at(angle, radius)
    // way 1: points counter-clockwise, its tail behind it
    const along = radians(angle + 90 - way * lean)
    piece.arrow(x, y, way * Math.cos(along), way * Math.sin(along))
  }
  for (const [index, angle] of [a1, a2].entries()) {
    const start = (starts[index] ?? 0) + style.gap
    if (radius + style.past - start > 0.2) {
      const from = at(angle, start)
      const to = at(angle, radius + style.past)
      piece.segment(is.extension, from[0], from[1], to[0], to[1])
    }
  }
  if (inside) {
    if (way > 2) return false
    arrowOn(a1, -1)
    arrowOn(a2, 1)
    arc(piece, cx, cy, radius, a1, a2)
    const middle = way === 0 ? (a1 + a2) / 2 : way === 1 ? a1 + sweep * 0.3 : a1 + sweep * 0.7
    const [x, y] = at(middle, radius)
    const ux = Math.cos(radians(middle))
    const uy = Math.sin(radians(middle))
    const halfWidth = label.width / 2
    const halfHigh = (label.up + label.down) / 2
    // The box is pushed out until its corner nearest to the arc is clear of it.
    const reach = Math.abs(ux) * halfWidth + Math.abs(uy) * halfHigh + 1.2
    const left = x + ux * reach - halfWidth
    const low = y + uy * reach - halfHigh
    for (const run of label.runs)
      piece.text(left + run.dx, low + label.down + run.dy, 0, label.height, run.length, run.text)
    piece.box(left, low, left + label.width, low + 2 * halfHigh, 0.8)
    return true
  }
  const run = radians(1) > 0 ? (8 / radius) * (180 / Math.PI) : 0
  arrowOn(a1, 1)
  arrowOn(a2, -1)
  arc(piece, cx, cy, radius, a1 - run, a1)
  arc(piece, cx, cy, radius, a2, a2 + run)
  const end = way < 3 ? 1 : -1
  const slide = [0, 1, -1][way % 3] ?? 0
  const angle = end > 0 ? a2 + run : a1 - run
  const [x, y] = at(angle, radius)
  const tangent = radians(angle + 90)
  beyond(piece, label, x, y, end * Math.cos(tangent), end * Math.sin(tangent), slide)
  return true
}
