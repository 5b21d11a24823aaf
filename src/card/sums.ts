/** Sums laid out as boxes: one taking-away, one adding, no more is asked at the machine. */
import type { Sum } from './document.ts'
import { linesOf, wordsWidth } from './lines.ts'
import { type Mark, moved, type Slab } from './marks.ts'
import { setWords, type Stacked } from './stack.ts'
import { boxed, note, writeBox } from './type.ts'

const sumBox = { width: 20, height: 7.4 }
const sumDress = { size: 12, bold: true }

/** `27.40 − [ ] = [ ]` with its words below; in a narrow place its boxes are narrower, or the second stands under the first. */
function sum({ from, says }: Sum, width: number, share: number): Stacked {
  const numbers = from ? wordsWidth(`${from.number} ${from.sign}`, sumDress) + 2.5 : 0
  const equals = wordsWidth('=', sumDress) + 4
  const boxWidth = from
    ? Math.max(Math.min(sumBox.width, (width - numbers - equals) / 2), Math.min(writeBox.width, width - numbers))
    : Math.min(sumBox.width, width)
  const marks: Mark[] = []
  let [x, y, widest] = [0, 0, 0]
  const words = (text: string): void => {
    const [line] = linesOf(text, sumDress, Number.POSITIVE_INFINITY)
    marks.push(...(line?.marks ?? []).map((mark) => moved(mark, x, y + (sumBox.height - (line?.height ?? 0)) / 2)))
    x += line?.width ?? 0
  }
  const square = (): void => {
    const [wide, high] = [boxWidth - boxed, sumBox.height - boxed]
    marks.push({ mark: 'box', x: x + boxed / 2, y: y + boxed / 2, width: wide, height: high, line: boxed, is: 'write' })
    x += boxWidth
    widest = Math.max(widest, x)
  }
  if (from) {
    words(`${from.number} ${from.sign}`)
    x += 2.5
    square()
    if (x + equals + boxWidth > width + 1e-6) [x, y] = [numbers - equals, y + sumBox.height + 1.5]
    x += 2
    words('=')
    x += 2
  }
  square()
  const own = Math.min(width, Math.max(widest, share, 30), wordsWidth(says, { size: note }) + 1e-6)
  const under = setWords(says, { size: note }, own, 0, y + sumBox.height + 1.2)
  return {
    width: Math.max(widest, under.width),
    height: y + sumBox.height + 1.2 + under.height,
    marks: [...marks, ...under.marks],
  }
}

/** As many sums to a row as fit. */
export function sums(all: readonly Sum[], width: number, gap: number): readonly Slab[] {
  const apart = 6
  const laid = all.map((each) => sum(each, width, width / Math.max(1, all.length) - apart))
  const rows: (typeof laid)[] = []
  for (const each of laid) {
    const row = rows.at(-1)
    const used = row?.reduce((sum, { width: own }) => sum + own + apart, 0) ?? 0
    if (row && used + each.width <= width) row.push(each)
    else rows.push([each])
  }
  return rows.map((row, at) => {
    const used = row.reduce((sum, { width: own }) => sum + own, 0)
    const free = row.length > 1 ? (width - used) / (row.length - 1) : 0
    let x = 0
    const marks: Mark[] = []
    for (const each of row) {
      marks.push(...each.marks.map((mark) => moved(mark, x, 0)))
      x += each.width + free
    }
    return { height: Math.max(...row.map(({ height }) => height)), gap: at === 0 ? gap : 2, marks }
  })
}
