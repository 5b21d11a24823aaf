/** A label: texts laid out from the left end of a baseline, level. Deviations and limits stand over each other. */
import { hangOf, lengthOf } from './letters.ts'
import { inWords, type Manner, said } from './numbers.ts'
import type { Wording, Worth } from './view.ts'

export interface Run {
  readonly text: string
  readonly dx: number
  readonly dy: number
  readonly length: number
}

export interface Label {
  readonly runs: readonly Run[]
  readonly height: number
  readonly width: number
  /** Reach above and below the baseline. */
  readonly up: number
  readonly down: number
  /** The same in one line. */
  readonly words: string
}

/** Room between the two texts of a stack. */
const stackGap = 0.9

/** A label of words and sizes, `height` mm high. */
export function labelOf(wording: Wording, manner: Manner, height: number): Label {
  const runs: Run[] = []
  let x = 0
  let up = height
  let down = 0
  let pending = ''
  const put = (text: string, dx: number, dy: number): number => {
    const length = lengthOf(text, height)
    runs.push({ text, dx, dy, length })
    if (dy === 0) down = Math.max(down, hangOf(text, height))
    return length
  }
  const flush = (): void => {
    if (pending === '') return
    x += put(pending, x, 0)
    pending = ''
  }
  for (const part of wording) {
    if (typeof part === 'string') {
      pending += inWords([part], manner, manner.convention === 'asme')
      continue
    }
    const { main, upper, lower, after } = said(part, manner)
    pending += main
    if (upper === undefined || lower === undefined) {
      pending += after
      continue
    }
    const stacked = pending !== ''
    flush()
    const at = stacked ? x + 0.2 * height : x
    const sign = Math.max(
      ...[upper, lower].map((text) => (/^[+\u2212]/.test(text) ? lengthOf(text[0] ?? '', height) : 0)),
    )
    const indent = (text: string): number => (stacked && !/^[+\u2212]/.test(text) ? sign : 0)
    const wide = Math.max(
      indent(lower) + put(lower, at + indent(lower), 0),
      indent(upper) + put(upper, at + indent(upper), height + stackGap),
    )
    x = at + wide
    up = 2 * height + stackGap
    pending = after
  }
  flush()
  return { runs, height, width: x, up, down, words: inWords(wording, manner, manner.convention === 'asme') }
}

export const labelOfWorth = (worth: Worth, manner: Manner, height: number): Label => labelOf([worth], manner, height)
