/** Words broken into lines of a width, measured in the face that is printed. */
import type { Run, Words } from './document.ts'
import { capHeight, pointsPerMm, stretchesOf, widthOf } from './letters.ts'
import type { Mark } from './marks.ts'
import { blankLine, boxed, dial, large, note, small, tickBox, writeBox } from './type.ts'

/** How plain words are set, points. */
export interface Dress {
  readonly size: number
  readonly bold?: boolean
}

/** What cannot be parted within a line: letters of one dress, or a thing to write on. */
type Piece =
  | {
      readonly piece: 'letters'
      readonly text: string
      readonly size: number
      readonly bold: boolean
      readonly width: number
    }
  | { readonly piece: 'tick' | 'blank' | 'box'; readonly width: number }

/** A run of pieces without a place to break, and the blank before it. */
interface Cluster {
  readonly pieces: readonly Piece[]
  readonly width: number
  readonly before: Piece | undefined
}

export interface Line {
  /** From the line's upper left corner. */
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
}

/** Height of a line of text at `size` points, mm. */
export const lineHeight = (size: number): number => (size / pointsPerMm) * 1.29

/** Free after a box to tick, besides the blank, mm; and before one within a line. */
const afterTick = 0.6
const beforeTick = 1.6
// A blank beside one of these, or after a tick box, is no place to break: `8 × 7`, `± 0.04`.
const clinging = /[×±−=–]$/
const clingingStart = /^[×±−=–]/

function dressOf(
  run: Run,
  plain: Dress,
): { readonly text: string; readonly size: number; readonly bold: boolean } | undefined {
  const bold = plain.bold ?? false
  if (typeof run === 'string') return { text: run, size: plain.size, bold }
  if ('bold' in run) return { text: run.bold, size: plain.size, bold: true }
  if ('large' in run) return { text: run.large, size: Math.max(large, plain.size), bold: true }
  if ('dial' in run) return { text: run.dial, size: Math.max(dial, plain.size), bold: true }
  if ('small' in run) return { text: run.small, size: Math.min(note, plain.size), bold: false }
  if ('dual' in run) return { text: run.dual, size: small, bold: false }
  return undefined
}

/** Words as pieces: letters parted at their blanks, blanks pieces of their own. */
function piecesOf(words: Words, plain: Dress): readonly Piece[] {
  const runs: readonly Run[] = typeof words === 'string' ? [words] : words
  return runs.flatMap((run, at): Piece[] => {
    const dress = dressOf(run, plain)
    if (dress)
      return dress.text
        .split(/([ \n\t\r]+)/)
        .filter((text) => text !== '')
        .map((found) => {
          const text = found.trim() === '' && found !== '\u00a0' ? ' ' : found
          return {
            piece: 'letters',
            text,
            size: dress.size,
            bold: dress.bold,
            width: widthOf(text, dress.size, dress.bold),
          }
        })
    if (typeof run === 'string') return []
    if ('tick' in run) return [{ piece: 'tick', width: tickBox + afterTick + (at > 0 ? beforeTick : 0) }]
    if ('blank' in run) return [{ piece: 'blank', width: run.blank === true ? blankLine : run.blank }]
    if ('box' in run) return [{ piece: 'box', width: run.box === true ? writeBox.width : run.box }]
    return []
  })
}

const isBlank = (piece: Piece | undefined): boolean => piece?.piece === 'letters' && piece.text === ' '

function clustersOf(pieces: readonly Piece[]): readonly Cluster[] {
  const clusters: { pieces: Piece[]; width: number; before: Piece | undefined }[] = []
  let before: Piece | undefined
  let open = false
  pieces.forEach((piece, at) => {
    const [last, next] = [pieces[at - 1], pieces[at + 1]]
    if (isBlank(piece) && !clings(last, next)) {
      if (before === undefined) before = piece
      open = false
      return
    }
    const cluster = clusters.at(-1)
    if (open && cluster) {
      cluster.pieces.push(piece)
      cluster.width += piece.width
    } else clusters.push({ pieces: [piece], width: piece.width, before: clusters.length > 0 ? before : undefined })
    before = undefined
    open = true
  })
  return clusters
}

function clings(last: Piece | undefined, next: Piece | undefined): boolean {
  if (last?.piece === 'tick') return true
  if (last?.piece === 'letters' && clinging.test(last.text)) return true
  return next?.piece === 'letters' && clingingStart.test(next.text) && last !== undefined
}

/** Breaks what is longer than a line between letters. */
function torn(cluster: Cluster, width: number): readonly Cluster[] {
  if (cluster.width <= width + 1e-9) return [cluster]
  const parts: { pieces: Piece[]; width: number; before: Piece | undefined }[] = [
    { pieces: [], width: 0, before: cluster.before },
  ]
  for (const piece of cluster.pieces) {
    const units: readonly Piece[] =
      piece.piece === 'letters'
        ? [...piece.text].map((text) => ({ ...piece, text, width: widthOf(text, piece.size, piece.bold) }))
        : [{ ...piece, width: Math.min(piece.width, width) }]
    for (const unit of units) {
      const last = parts.at(-1)
      if (last && (last.pieces.length === 0 || last.width + unit.width <= width + 1e-9)) {
        last.pieces.push(unit)
        last.width += unit.width
      } else parts.push({ pieces: [unit], width: unit.width, before: undefined })
    }
  }
  return parts
}

/**
 * Words in lines no wider than `width` mm. What is longer than a line is broken between letters; a line or box to write on is shortened. No
 * words: no lines.
 */
export function linesOf(words: Words, plain: Dress, width: number): readonly Line[] {
  const lines: Piece[][] = []
  let used = 0
  for (const whole of clustersOf(piecesOf(words, plain)))
    for (const cluster of torn(whole, width)) {
      const line = lines.at(-1)
      const blank = cluster.before?.width ?? 0
      if (
        line &&
        used + blank + cluster.width <= width + 1e-9 &&
        !(cluster.before === undefined && cluster !== whole)
      ) {
        line.push(...(cluster.before ? [cluster.before] : []), ...cluster.pieces)
        used += blank + cluster.width
      } else {
        lines.push([...cluster.pieces])
        used = cluster.width
      }
    }
  return lines.map((line) => setLine(line, plain))
}

/** The width that words take on one line, mm. */
export const wordsWidth = (words: Words, plain: Dress): number =>
  piecesOf(words, plain).reduce((sum, piece) => sum + piece.width, 0)

interface Measured {
  /** On one line, mm. */
  readonly whole: number
  /** Its widest stretch that does not break at a blank. */
  readonly cluster: number
  /** The least that the widest thing in it needs: boxes and lines to write on are shortened, but not under their usual length. */
  readonly thing: number
}

/** The widths that words take, mm. */
export function measured(words: Words, plain: Dress): Measured {
  const pieces = piecesOf(words, plain)
  return {
    whole: pieces.reduce((sum, piece) => sum + piece.width, 0),
    cluster: clustersOf(pieces).reduce((most, { width }) => Math.max(most, width), 0),
    thing: pieces.reduce(
      (most, { piece, width }) => (piece === 'letters' ? most : Math.max(most, Math.min(width, writeBox.width))),
      0,
    ),
  }
}

function setLine(pieces: readonly Piece[], plain: Dress): Line {
  const size = pieces.reduce(
    (most, piece) => (piece.piece === 'letters' ? Math.max(most, piece.size) : most),
    plain.size,
  )
  const tallest = pieces.reduce(
    (most, piece) =>
      Math.max(most, piece.piece === 'tick' ? tickBox + 1 : piece.piece === 'box' ? writeBox.height + 1 : 0),
    lineHeight(size),
  )
  const middle = tallest / 2
  const baseline = middle + ((size / pointsPerMm) * capHeight) / 2
  const marks: Mark[] = []
  let x = 0
  let at = 0
  while (at < pieces.length) {
    const piece = pieces[at]
    if (!piece) break
    if (piece.piece === 'letters') {
      // Neighbours of one dress are one stretch of text.
      let text = piece.text
      while (true) {
        const next = pieces[at + 1]
        if (next?.piece !== 'letters' || next.size !== piece.size || next.bold !== piece.bold) break
        text += next.text
        at++
      }
      for (const stretch of stretchesOf(text.replaceAll('\u00a0', ' '), piece.size, piece.bold)) {
        marks.push({ mark: 'words', x, y: baseline, size: piece.size, bold: piece.bold, ...stretch })
        x += stretch.width
      }
    } else {
      // Nothing is left free before a box that begins a line.
      const own = piece.piece === 'tick' && at === 0 ? tickBox + afterTick : piece.width
      if (piece.piece === 'tick')
        marks.push({
          mark: 'box',
          x: x + own - tickBox - afterTick,
          y: middle - tickBox / 2,
          width: tickBox,
          height: tickBox,
          line: boxed,
          is: 'tick',
        })
      else if (piece.piece === 'box')
        marks.push({
          mark: 'box',
          x,
          y: middle - writeBox.height / 2,
          width: piece.width,
          height: writeBox.height,
          line: boxed,
          is: 'write',
        })
      else marks.push({ mark: 'line', from: [x, baseline + 0.7], to: [x + piece.width, baseline + 0.7], width: boxed })
      x += own
    }
    at++
  }
  return { marks, width: x, height: tallest }
}
