/** How long a text is: one font for every sheet, DejaVu Sans Condensed, whatever fonts the reader's machine has. No kerning. */
import { advances, unitsPerEm } from './advances.ts'

/** Height of a capital in em (DejaVu Sans Condensed, OS/2 capHeight 1493 of 2048). Font size = height / capHeight. */
export const capHeight = 0.729

/** Advances of a face by code point, 0 where there is none. Every letter of such a table lies in the basic plane. */
export function byCodePoint(
  rows: readonly (readonly [code: number, regular: number, bold: number])[],
): readonly [regular: Uint16Array, bold: Uint16Array] {
  const longest = rows.reduce((most, [code]) => Math.max(most, code), 0)
  const [regular, bold] = [new Uint16Array(longest + 1), new Uint16Array(longest + 1)]
  for (const [code, upright, heavy] of rows) {
    regular[code] = upright
    bold[code] = heavy
  }
  return [regular, bold]
}
const [regularAdvances, boldAdvances] = byCodePoint(advances)
const hanging = /[gjpqyQ,;()|/[\]{}@$_§µçÇ]/

/**
 * Length in mm of a text whose capitals are `height` mm high.
 * @throws Error on a character that the table lacks: our own words hold none, and a user's go through `legible`.
 */
export function lengthOf(text: string, height: number, bold = false): number {
  const table = bold ? boldAdvances : regularAdvances
  let sum = 0
  for (let i = 0; i < text.length; i++) {
    const advance = table[text.charCodeAt(i)]
    if (!advance) throw new Error(`no advance for the letter ${JSON.stringify(text[i])}`)
    sum += advance
  }
  return (sum / unitsPerEm) * (height / capHeight)
}

/** How far letters hang under the baseline, mm: nothing for capitals and digits alone. */
export const hangOf = (text: string, height: number): number => (hanging.test(text) ? 0.28 * height : 0)

/** A user's words with single blanks, and every letter that the font table lacks turned into `?`. */
export function legible(text: string): string {
  let plain = ''
  for (const letter of text) plain += regularAdvances[letter.codePointAt(0) ?? 0] ? letter : '?'
  return plain.replace(/ {2,}/g, ' ')
}

/**
 * Breaks a text at its blanks into lines no longer than `width` mm; a single longer word stands alone on its line.
 */
export function wrap(text: string, height: number, width: number): string[] {
  const lines: string[] = []
  const blank = lengthOf(' ', height)
  let line = ''
  let length = 0
  for (const word of text.split(' ')) {
    const more = lengthOf(word, height)
    if (line !== '' && length + blank + more > width) {
      lines.push(line)
      line = word
      length = more
    } else {
      length += line === '' ? more : blank + more
      line = line === '' ? word : `${line} ${word}`
    }
  }
  lines.push(line)
  return lines
}

/** A text shortened at a word with `…` so that it fits; the whole text when it fits anyway. */
export function shortened(text: string, height: number, width: number): string {
  if (lengthOf(text, height) <= width) return text
  const words = text.split(' ')
  while (words.length > 1) {
    words.pop()
    const tried = `${words.join(' ')} …`
    if (lengthOf(tried, height) <= width) return tried
  }
  let letters = [...text]
  while (letters.length > 0 && lengthOf(`${letters.join('')}…`, height) > width) letters = letters.slice(0, -1)
  return `${letters.join('')}…`
}
