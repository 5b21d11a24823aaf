/** A row of a table for reading: a name, a number with its limits, and a remark. */
export interface Row {
  readonly name: string
  /** As printed: `24`, `M5`. Numbers stand with their decimal points under one another. */
  readonly value: string
  readonly limits?: readonly [string, string]
  readonly remark?: string
}

const whole = (text: string): number => (text.includes('.') ? text.indexOf('.') : text.length)
const isNumber = (text: string): boolean => /^[-+]?\d*\.?\d+$/.test(text)

/** Pads texts so that their decimal points stand under one another; words start where the numbers start. */
export const onPoint = (texts: readonly string[]): string[] => {
  const numbers = texts.filter(isNumber)
  const before = Math.max(0, ...numbers.map(whole))
  const padded = texts.map((text) => (isNumber(text) ? ' '.repeat(before - whole(text)) + text : text))
  const width = Math.max(0, ...padded.map((text) => text.length))
  return padded.map((text) => text.padEnd(width))
}

/** A table as lines, indented by two. */
export const table = (rows: readonly Row[]): string[] => {
  const names = Math.max(0, ...rows.map((row) => row.name.length))
  const values = onPoint(rows.map((row) => row.value))
  const lower = onPoint(rows.map((row) => row.limits?.[0] ?? ''))
  const upper = onPoint(rows.map((row) => row.limits?.[1] ?? ''))
  const limited = rows.some((row) => row.limits)
  return rows.map((row, at) => {
    const limits = !limited
      ? ''
      : row.limits
        ? `  ${lower[at]} to ${upper[at]}`
        : `  ${' '.repeat((lower[at] ?? '').length)}    ${' '.repeat((upper[at] ?? '').length)}`
    return `  ${row.name.padEnd(names)}  ${values[at]}${limits}  ${row.remark ?? ''}`.trimEnd()
  })
}

/** Breaks a sentence into lines of at most `width` characters; the first starts with `first`, the others with blanks of its length. */
export const wrap = (text: string, width: number, first = ''): string => {
  const blank = ' '.repeat(first.length)
  const lines: string[] = []
  let line = first
  for (const word of text.split(' ')) {
    if (line.trim() !== '' && line !== first && line.length + 1 + word.length > width) {
      lines.push(line)
      line = blank + word
    } else line += line === first || line === blank ? word : ` ${word}`
  }
  return [...lines, line].join('\n')
}

/** `1 file`, `2 files`. */
export const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`
