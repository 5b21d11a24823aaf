/** Paper, margins, and what is reserved on it. mm, origin at the lower left. Sizes: ISO 216, ANSI; margins as ISO 5457 has them, from memory. */
import type { Box } from './view.ts'

export interface Paper {
  readonly name: 'A4' | 'Letter'
  readonly width: number
  readonly height: number
  readonly frame: Box
}

const filing = 20
const margin = 10

export function paperOf(name: 'A4' | 'Letter', landscape: boolean): Paper {
  const [long, short] = name === 'A4' ? [297, 210] : [279.4, 215.9]
  const [width, height] = landscape ? [long, short] : [short, long]
  return { name, width, height, frame: { x1: filing, y1: margin, x2: width - margin, y2: height - margin } }
}

export const blockWidth = 180
export const blockHeight = 36
export const bandHeight = 9

/** The title block, lower right in the frame. */
export const titleBox = ({ frame }: Paper): Box => ({
  x1: frame.x2 - blockWidth,
  y1: frame.y1,
  x2: frame.x2,
  y2: frame.y1 + blockHeight,
})

/** Where the table of sizes as made stands: left of the title block where there is room, above it otherwise. `height` its own. */
export function tableBox(paper: Paper, height: number): Box {
  const { frame } = paper
  const beside = frame.x2 - blockWidth - frame.x1
  return beside >= 60
    ? { x1: frame.x1, y1: frame.y1, x2: frame.x1 + beside - 3, y2: frame.y1 + height }
    : { x1: frame.x1, y1: frame.y1 + blockHeight + 3, x2: frame.x1 + 84, y2: frame.y1 + blockHeight + 3 + height }
}
