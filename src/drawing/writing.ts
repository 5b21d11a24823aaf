/** Labels, frames and datums put into a piece. */
import type { Label } from './label.ts'
import { lengthOf } from './letters.ts'
import type { Manner } from './numbers.ts'
import { tolerance } from './numbers.ts'
import { is, type Piece } from './piece.ts'
import type { Hung } from './view.ts'

/** Writes a label from (x, y), the left end of its baseline as it is read, and claims its box. */
export function write(piece: Piece, label: Label, x: number, y: number, turn: 0 | 90, pad: number): void {
  for (const run of label.runs)
    piece.text(
      turn === 0 ? x + run.dx : x - run.dy,
      turn === 0 ? y + run.dy : y + run.dx,
      turn,
      label.height,
      run.length,
      run.text,
    )
  if (turn === 0) piece.box(x, y - label.down, x + label.width, y + label.up, pad)
  else piece.box(x - label.up, y, x + label.down, y + label.width, pad)
}

export interface Frame {
  readonly hung: Extract<Hung, { hang: 'frame' }>
  readonly value: string
  readonly width: number
  readonly height: number
  readonly cells: readonly number[]
  readonly letters: number
}

/** A geometry frame measured: symbol, value, datum; twice the letters' height, no cell narrower than that. */
export function frameOf(hung: Extract<Hung, { hang: 'frame' }>, manner: Manner, letters: number): Frame {
  const value = tolerance(hung.value, manner)
  const height = 2 * letters
  const cell = (text: string): number => Math.max(height, lengthOf(text, letters) + 2)
  const cells = [height, cell(value), cell(hung.datum)]
  return { hung, value, height, width: cells.reduce((sum, wide) => sum + wide, 0), cells, letters }
}

function symbol(piece: Piece, feature: Frame['hung']['feature'], x: number, y: number, size: number): void {
  const line = (x1: number, y1: number, x2: number, y2: number): void =>
    piece.segment(is.symbol, x + x1 * size, y + y1 * size, x + x2 * size, y + y2 * size)
  if (feature === 'symmetry') {
    line(-0.2, 0.16, 0.2, 0.16)
    line(-0.36, 0, 0.36, 0)
    line(-0.2, -0.16, 0.2, -0.16)
  } else if (feature === 'parallelism') {
    line(-0.32, -0.32, 0.08, 0.32)
    line(-0.08, -0.32, 0.32, 0.32)
  } else {
    piece.arc(x, y, 0.24 * size, 0, 360)
    line(-0.38, 0, 0.38, 0)
    line(0, -0.38, 0, 0.38)
  }
}

/** Draws a frame with its lower left corner at (x, y). */
export function drawFrame(piece: Piece, frame: Frame, x: number, y: number): void {
  const { height, letters } = frame
  piece.segment(is.symbol, x, y, x + frame.width, y)
  piece.segment(is.symbol, x, y + height, x + frame.width, y + height)
  let at = x
  frame.cells.forEach((wide, index) => {
    piece.segment(is.symbol, at, y, at, y + height)
    if (index === 0) symbol(piece, frame.hung.feature, at + wide / 2, y + height / 2, height)
    else {
      const text = index === 1 ? frame.value : frame.hung.datum
      const length = lengthOf(text, letters)
      piece.text(at + (wide - length) / 2, y + letters / 2, 0, letters, length, text)
    }
    at += wide
  })
  piece.segment(is.symbol, at, y, at, y + height)
  piece.box(x, y, x + frame.width, y + height, 0.8)
}

/** Half the foot of a datum triangle, its height, the stem to the box. */
const foot = 1.25
const rise = 2.1
const stem = 3

/** Draws a datum symbol that stands on (x, y) and points away along the unit direction (ux, uy), which is level or upright. */
export function drawDatum(
  piece: Piece,
  letter: string,
  x: number,
  y: number,
  ux: number,
  uy: number,
  letters: number,
): void {
  piece.fill(x - uy * foot, y + ux * foot, x + uy * foot, y - ux * foot, x + ux * rise, y + uy * rise)
  const size = 2 * letters
  const far = rise + stem
  piece.segment(is.symbol, x + ux * rise, y + uy * rise, x + ux * far, y + uy * far)
  piece.box(
    Math.min(x - Math.abs(uy) * foot, x + ux * rise),
    Math.min(y - Math.abs(ux) * foot, y + uy * rise),
    Math.max(x + Math.abs(uy) * foot, x + ux * rise),
    Math.max(y + Math.abs(ux) * foot, y + uy * rise),
    0,
  )
  const cx = x + ux * (far + size / 2)
  const cy = y + uy * (far + size / 2)
  const half = size / 2
  piece.segment(is.symbol, cx - half, cy - half, cx + half, cy - half)
  piece.segment(is.symbol, cx + half, cy - half, cx + half, cy + half)
  piece.segment(is.symbol, cx + half, cy + half, cx - half, cy + half)
  piece.segment(is.symbol, cx - half, cy + half, cx - half, cy - half)
  const length = lengthOf(letter, letters)
  piece.text(cx - length / 2, cy - letters / 2, 0, letters, length, letter)
  piece.box(cx - half, cy - half, cx + half, cy + half, 0.8)
}
