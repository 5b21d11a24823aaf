/** Leaders: an arrow, a line, and words on a shelf (or beside a shoulder). */
import type { Label } from './label.ts'
import { is, type Piece } from './piece.ts'
import { radians } from './plane.ts'
import type { Style } from './style.ts'
import { drawFrame, type Frame, write } from './writing.ts'

export interface PreparedLeader {
  readonly labels: readonly Label[]
  readonly width: number
  readonly under: readonly Frame[]
  readonly tips: readonly { readonly x: number; readonly y: number; readonly angle: number }[]
}

export const lengths = [7, 9, 12, 15, 19, 24, 30, 37, 45, 55, 66, 80] as const

/** Turns from the free direction and lengths, the cheapest first. */
export const reaches: readonly { readonly turn: number; readonly length: number; readonly cost: number }[] = [
  0, 15, -15, 30, -30, 45, -45, 60, -60, 75, -75, 90, -90, 105, -105, 120, -120, 135, -135, 150, -150, 165, -165, 180,
]
  .flatMap((turn) => lengths.map((length) => ({ turn, length, cost: 0.12 * Math.abs(turn) + 0.5 * length })))
  .toSorted((a, b) => a.cost - b.cost)

/** What the direction itself costs, degrees: 30, 45 and 60 read best. Infinity within 8° of level or upright. */
export function leaning(angle: number): number {
  const turned = ((angle % 90) + 90) % 90
  if (turned < 8 || turned > 82) return Infinity
  return 0.05 * Math.min(Math.abs(turned - 30), Math.abs(turned - 45), Math.abs(turned - 60))
}

/** Draws the leader from a tip in direction `angle`, `length` long, its words towards +x (`run` 1) or -x. */
export function drawLeader(
  piece: Piece,
  prepared: PreparedLeader,
  style: Style,
  x: number,
  y: number,
  angle: number,
  length: number,
  run: 1 | -1,
): void {
  const ux = Math.cos(radians(angle))
  const uy = Math.sin(radians(angle))
  const ex = x + length * ux
  const ey = y + length * uy
  piece.arrow(x, y, -ux, -uy)
  piece.segment(is.leader, x, y, ex, ey)
  const shelf = style.leader === 'shelf'
  const start = shelf ? 0.8 : 4
  const long = shelf ? prepared.width + 1.2 : 3
  piece.segment(is.shelf, ex, ey, ex + run * long, ey)
  const left = (label: Label): number => (run > 0 ? ex + start : ex - start - (shelf ? prepared.width : label.width))
  let base = ey
  for (const [index, label] of prepared.labels.entries()) {
    if (index === 0)
      base = shelf ? ey + (label.down > 0 ? label.down + 0.6 : style.underText) : ey - (label.up - label.down) / 2
    else if (index === 1 && shelf) base = ey - 1 - label.up
    else base -= label.up + (prepared.labels[index - 1]?.down ?? 0) + 1
    write(piece, label, left(label), base, 0, 1.1)
  }
  let top = prepared.labels.length === 1 && shelf ? ey - 1.5 : base - (prepared.labels.at(-1)?.down ?? 0) - 1.2
  for (const frame of prepared.under) {
    drawFrame(piece, frame, run > 0 ? ex + start : ex - start - frame.width, top - frame.height)
    top -= frame.height + 1.2
  }
}
