/** The table that measured sizes are written into: what, limits, an empty cell for the pen. */
import { lengthOf, wrap } from './letters.ts'
import { asLimits, type Manner } from './numbers.ts'
import { ruler } from './ruler.ts'
import type { Stroke } from './sheet.ts'
import type { AsMadeRow, Box, Drawing } from './view.ts'

const row = 6
const text = 2.5
const pad = 1.2
/** Least room for the pen. */
const pen = 15

export interface SetTable {
  readonly height: number
  draw(box: Box): Stroke[]
}

/** Limits of a row as one text. */
function limitsOf(entry: AsMadeRow, manner: Manner): string {
  const parts = entry.limits.map((part) => (typeof part === 'string' ? part : asLimits(part, manner)))
  const [low = '', slash, high = ''] = parts
  if (parts.length !== 3 || slash?.trim() !== '/') return parts.join('')
  // Two limits one after the other take the same decimals.
  const decimals = (text: string): number => /[.,](\d+)$/.exec(text)?.[1]?.length ?? 0
  const most = Math.max(decimals(low), decimals(high))
  const filled = (text: string): string =>
    decimals(text) === most || !/\d$/.test(text)
      ? text
      : text +
        (decimals(text) === 0 ? (manner.decimal === 'comma' ? ',' : '.') : '') +
        '0'.repeat(most - decimals(text))
  return filled(low) + slash + filled(high)
}

/** Measures the table for a width of `width` mm: long names take two lines. */
export function setTable({ heading, rows }: Drawing['asMade'], width: number, manner: Manner): SetTable {
  const limits = rows.map((entry) => limitsOf(entry, manner))
  const wanted = Math.max(0, ...limits.map((words) => lengthOf(words, text))) + 2 * pad
  const second = Math.min(Math.max(wanted, 20), width * 0.5)
  const first = Math.min(Math.max(...rows.map(({ what }) => lengthOf(what, text) + 2 * pad), 30), width - second - pen)
  const entries = rows.map(({ what }, index) => ({
    what: wrap(what, text, first - 2 * pad),
    limits: wrap(limits[index] ?? '', text, second - 2 * pad),
  }))
  const heights = entries.map((entry) => Math.max(row, 2 + 4 * Math.max(entry.what.length, entry.limits.length)))
  const height = row + heights.reduce((sum, high) => sum + high, 0)
  return {
    height,
    draw(box) {
      const { line, words, strokes } = ruler()
      const top = box.y1 + height
      line(box.x1, top, box.x2, top, 0.35)
      line(box.x2, box.y1, box.x2, top, 0.35)
      line(box.x1, box.y1, box.x1, top, 0.35)
      line(box.x1, box.y1, box.x2, box.y1, 0.35)
      words(heading, box.x1 + pad, top - row / 2 - text / 2, text)
      let y = top - row
      for (const column of [first, first + second]) line(box.x1 + column, box.y1, box.x1 + column, y, 0.25)
      for (const [index, entry] of entries.entries()) {
        line(box.x1, y, box.x2, y, 0.25)
        const high = heights[index]!
        for (const [lines, x] of [
          [entry.what, box.x1 + pad],
          [entry.limits, box.x1 + first + pad],
        ] as const) {
          const middle = y - high / 2 + ((lines.length - 1) * 4) / 2
          for (const [n, said] of lines.entries()) words(said, x, middle - n * 4 - text / 2, text)
        }
        y -= high
      }
      return strokes
    },
  }
}
