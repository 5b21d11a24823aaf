/** Putting marks together: lines under one another, slabs into one. */
import type { Words } from './document.ts'
import { type Dress, type Line, linesOf } from './lines.ts'
import { type Mark, moved, type Slab } from './marks.ts'

export interface Stacked {
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
}

/** Lines under one another, their left ends at (x, y). */
export function stacked(lines: readonly Line[], x: number, y: number): Stacked {
  const marks: Mark[] = []
  let [down, width] = [0, 0]
  for (const line of lines) {
    marks.push(...line.marks.map((mark) => moved(mark, x, y + down)))
    down += line.height
    width = Math.max(width, line.width)
  }
  return { marks, width, height: down }
}

/** Words set into `width` mm, their upper left corner at (x, y). */
export const setWords = (words: Words, dress: Dress, width: number, x: number, y: number): Stacked =>
  stacked(linesOf(words, dress, width), x, y)

/** Slabs under one another as one; the gap over the first falls away. */
export function joined(slabs: readonly Slab[]): Stacked {
  const marks: Mark[] = []
  let down = 0
  slabs.forEach((slab, at) => {
    if (at > 0) down += slab.gap
    marks.push(...slab.marks.map((mark) => moved(mark, 0, down)))
    down += slab.height
  })
  return { marks, width: 0, height: down }
}
