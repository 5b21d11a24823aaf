/** Notes set into a column: a heading, numbered or plain lines, broken at blanks. */
import { lengthOf, wrap } from './letters.ts'
import { inWords, type Manner } from './numbers.ts'
import { kept } from './plane.ts'
import type { Stroke } from './sheet.ts'
import type { Style } from './style.ts'
import type { Notes } from './view.ts'

/** Set notes: strokes with the upper left corner at the origin, y downwards negative. */
export interface Column {
  readonly strokes: readonly Stroke[]
  readonly width: number
  readonly height: number
}

const leading = 1.7
const apart = 0.28
const boxPad = 2

/** Sets notes to a width, mm; longer only where a word or the heading is. */
export function setNotes(notes: Notes, width: number, style: Style, manner: Manner): Column {
  const height = style.small
  const pad = notes.caution ? boxPad : 0
  const strokes: Stroke[] = []
  let longest = 0
  let y = -pad - height
  const put = (text: string, x: number, bold = false): void => {
    const length = lengthOf(text, height, bold)
    longest = Math.max(longest, x + length)
    strokes.push({
      stroke: 'text',
      class: 'note',
      width: style.widths.thin,
      at: [kept(x), kept(y)],
      height,
      length: kept(length),
      turn: 0,
      text,
      ...(bold && { bold: true }),
    })
  }
  put(notes.heading, pad, true)
  y -= height * (leading + apart)
  const indent = notes.numbered ? lengthOf(`${notes.lines.length} `, height) + 1.4 : 0
  for (const [index, wording] of notes.lines.entries()) {
    if (notes.numbered) put(`${index + 1}`, pad)
    for (const line of wrap(inWords(wording, manner), height, width - 2 * pad - indent)) {
      put(line, pad + indent)
      y -= height * leading
    }
    y -= height * apart
  }
  const bottom = -(y + height * (leading + apart)) + 0.28 * height + pad
  const wide = Math.max(longest + pad, width)
  if (notes.caution) {
    const corners = [
      [0, 0],
      [wide, 0],
      [wide, -bottom],
      [0, -bottom],
    ] as const
    for (const [index, from] of corners.entries())
      strokes.push({
        stroke: 'line',
        class: 'note',
        width: 0.7,
        from: [kept(from[0]), kept(from[1])],
        to: [kept(corners[(index + 1) % 4]![0]), kept(corners[(index + 1) % 4]![1])],
      })
  }
  return { strokes, width: wide, height: bottom }
}
