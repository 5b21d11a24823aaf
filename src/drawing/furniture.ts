/** The sheet round the views: frame, title block, projection symbol, check line, trace, band. */
import { legible, lengthOf, shortened, wrap } from './letters.ts'
import { inWords, type Manner } from './numbers.ts'
import { bandHeight, blockWidth, type Paper, titleBox } from './paper.ts'
import { ruler } from './ruler.ts'
import type { Stroke } from './sheet.ts'
import type { Style } from './style.ts'
import type { Drawing } from './view.ts'

export interface TitleWords {
  readonly drawing: Drawing
  readonly number: string
  readonly sheet: string
  readonly scale: string
  readonly projection: 'first' | 'third'
  readonly units: 'mm' | 'in'
  readonly trace: string
}

const label = 1.8
const value = 2.5
/** A long drawing number takes this height before it is shortened. */
const least = 1.8
const columns = [0, 58, 116, 154, 180]
const row = 9

type Cell = readonly [label: string, words: string, x: number, row: number, width: number]

/** The cells of the block: label, value, left edge, row from the top, width. */
function cells(words: TitleWords, style: Style, manner: Manner): Cell[] {
  const { block } = words.drawing
  const { units } = manner
  return [
    ['MATERIAL', block.material, 0, 0, 58],
    ['STOCK TO SAW', inWords(block.stock, manner), 0, 1, 58],
    ['HEAT TREATMENT', block.heat, 0, 2, 58],
    ['FINISH', block.finish, 0, 3, 58],
    ['LIMITS WHERE NONE STATED', block.limits ?? style.limits[units], 58, 0, 58],
    ['SURFACE WHERE NONE STATED', block.surface ?? style.surface[units], 58, 1, 58],
    ['EDGES WHERE NONE STATED', block.edges ?? style.edges[units], 58, 2, 58],
    ['PROJECTION', `${words.projection} angle`, 58, 3, 36],
    ['SIZES IN', units === 'mm' ? 'mm' : 'inches', 95, 3, 21],
    ['DRAWING', words.number, 116, 2, 38],
    ['SHEET', words.sheet, 154, 2, 26],
    ['SCALE', words.scale, 116, 3, 14],
    ['CHECKED BY, DATE', '', 154, 3, 26],
  ]
}

/** Values that do not fit their cell, to be given whole in the notes: label and value. */
export const tooLong = (words: TitleWords, style: Style, manner: Manner): (readonly [string, string])[] =>
  cells(words, style, manner)
    .filter(([name, said, , , width]) => lengthOf(legible(said), name === 'DRAWING' ? least : value) > width - 2.4)
    .map(([name, said]) => [name, legible(said)] as const)

/** Frustum and circles of ISO 5456-2; narrow end left, circles right of it for first angle. */
function projectionSymbol(
  pen: ReturnType<typeof ruler>,
  x: number,
  y: number,
  way: 'first' | 'third',
  style: Style,
): void {
  const h = 2.4
  const thin = style.widths.thin
  const cone = way === 'first' ? x : x + 2.9 * h
  const circle = way === 'first' ? x + 3.4 * h : x + h
  pen.line(cone, y - h / 2, cone, y + h / 2, 0.35)
  pen.line(cone + 2 * h, y - h, cone + 2 * h, y + h, 0.35)
  pen.line(cone, y + h / 2, cone + 2 * h, y + h, 0.35)
  pen.line(cone, y - h / 2, cone + 2 * h, y - h, 0.35)
  pen.circle(circle, y, h, 0.35)
  pen.circle(circle, y, h / 2, 0.35)
  pen.line(cone - 0.8, y, cone + 2 * h + 0.8, y, thin)
  pen.line(circle - h - 0.8, y, circle + h + 0.8, y, thin)
  pen.line(circle, y - h - 0.8, circle, y + h + 0.8, thin)
}

/** Title block with its words. */
export function drawTitleBlock(paper: Paper, words: TitleWords, style: Style, manner: Manner): Stroke[] {
  const pen = ruler()
  const { x1: x, y1: y, y2: top } = titleBox(paper)
  pen.line(x, y, x, top, 0.35)
  pen.line(x, top, x + blockWidth, top, 0.35)
  pen.line(x + columns[1]!, y, x + columns[1]!, top, 0.35)
  pen.line(x + columns[2]!, y, x + columns[2]!, top, 0.35)
  pen.line(x + columns[3]!, y, x + columns[3]!, y + 2 * row, 0.25)
  for (let n = 1; n < 4; n++) pen.line(x, y + n * row, x + (n === 3 ? columns[2]! : blockWidth), y + n * row, 0.25)
  for (const [name, said, left, down, width] of cells(words, style, manner)) {
    const cellTop = top - down * row
    pen.words(name, x + left + 1.2, cellTop - 2.7, label)
    const height = name === 'DRAWING' && lengthOf(legible(said), value) > width - 2.4 ? least : value
    pen.words(legible(said), x + left + 1.2, cellTop - row + 1.7, height, { within: width - 2.4 })
  }
  const right = x + columns[2]! + 2
  const room = columns[4]! - columns[2]! - 4
  const title = legible(words.drawing.title)
  const height = [5, 4, 3.5].find((size) => lengthOf(title, size, true) <= room) ?? 3.5
  pen.words(height === 3.5 ? shortened(title, 3.5 * 1.1, room) : title, right, top - 8, height, { bold: true })
  const job = wrap(legible(words.drawing.block.job), value, room + 0.8)
  const [upper = '', ...rest] = job
  if (rest.length === 0) pen.words(upper, right, top - 15.4, value)
  else {
    pen.words(upper, right, top - 12.4, value)
    pen.words(rest.join(' '), right, top - 16.2, value, { within: room + 0.8 })
  }
  projectionSymbol(pen, x + columns[2]! + 17, y + row / 2, words.projection, style)
  return pen.strokes
}

/** Frame, centring marks, check line and the trace under the frame. */
export function drawFrameOf(paper: Paper, trace: string): Stroke[] {
  const pen = ruler()
  const { x1, y1, x2, y2 } = paper.frame
  pen.line(x1, y1, x2, y1, 0.7)
  pen.line(x2, y1, x2, y2, 0.7)
  pen.line(x2, y2, x1, y2, 0.7)
  pen.line(x1, y2, x1, y1, 0.7)
  const middle = paper.width / 2
  pen.line(middle, y2, middle, paper.height - 5, 0.25)
  pen.line(middle, y1, middle, 5, 0.25)
  pen.line(x2, paper.height / 2, paper.width - 5, paper.height / 2, 0.25)
  const said = shortened(legible(`${trace} · this block is 180 mm wide at 100 %`), label, x2 - middle - 3)
  pen.words(said, x2 - lengthOf(said, label), y1 - 3.4, label)

  const length = paper.name === 'A4' ? 100 : 101.6
  const low = (paper.height - length) / 2
  const x = 12
  pen.line(x, low, x, low + length, 0.25)
  pen.line(x - 2, low, x + 2, low, 0.25)
  pen.line(x - 2, low + length, x + 2, low + length, 0.25)
  const words = `CHECK LINE ${paper.name === 'A4' ? '100 mm' : '4 in'} when printed at 100 %`
  pen.words(words, x - 1.2, paper.height / 2 - lengthOf(words, label) / 2, label, { turn: 90 })
  return pen.strokes
}

/** A warning across the sheet, under the frame's top. */
export function drawBand(paper: Paper, band: string): Stroke[] {
  const pen = ruler('stop')
  const { x1, x2, y2 } = paper.frame
  const text = legible(band)
  const room = x2 - x1 - 8
  const height = [5, 4, 3.5, 3].find((size) => lengthOf(text, size, true) <= room) ?? 3
  const said = lengthOf(text, height, true) <= room ? text : shortened(text, height * 1.12, room)
  pen.line(x1, y2 - bandHeight, x2, y2 - bandHeight, 0.5)
  pen.words(said, x1 + (x2 - x1 - lengthOf(said, height, true)) / 2, y2 - bandHeight / 2 - height / 2, height, {
    bold: true,
  })
  return pen.strokes
}
