/**
 * How long the card's words are: Atkinson Hyperlegible Next, and DejaVu Sans Condensed for the few signs that it lacks (`≤ ≥ → α`), set so that
 * capitals are alike. No kerning, figures all of one width.
 */
import { lengthOf, legible, capHeight as sheetCapHeight } from '../drawing/letters.ts'
import { advances } from './advances.ts'

/** PDF and CSS points in a millimetre. */
export const pointsPerMm = 72 / 25.4
/** Height of a capital in em (OS/2 capHeight 668 of 1000). */
export const capHeight = 0.668
/** What the signs of the other face are set at, for a size of 1. */
export const otherFaceSize = capHeight / sheetCapHeight

const known = new Map(advances.map(([code, ...both]) => [code, both] as const))

export type Face = 'card' | 'sheet'

/** A stretch of a text that stands in one face. */
export interface Stretch {
  readonly face: Face
  readonly text: string
  /** mm. */
  readonly width: number
}

/** A text cut where the face changes, each stretch measured; `size` in points. A letter that neither face has becomes `?`. */
export function stretchesOf(text: string, size: number, bold = false): readonly Stretch[] {
  const found: { face: Face; text: string; width: number }[] = []
  for (const letter of text) {
    const own = known.get(letter.codePointAt(0) ?? 0)
    const said = own ? letter : legible(letter)
    const face: Face = own || said === '?' ? 'card' : 'sheet'
    const width = face === 'card' ? ownWidth(said, size, bold) : lengthOf(said, (capHeight * size) / pointsPerMm, bold)
    const last = found.at(-1)
    if (last?.face === face) {
      last.text += said
      last.width += width
    } else found.push({ face, text: said, width })
  }
  return found
}

const ownWidth = (letter: string, size: number, bold: boolean): number =>
  ((known.get(letter.codePointAt(0) ?? 0)?.[bold ? 1 : 0] ?? 0) / 1000) * (size / pointsPerMm)

/** Length in mm of a text set at `size` points. */
export const widthOf = (text: string, size: number, bold = false): number =>
  stretchesOf(text, size, bold).reduce((sum, { width }) => sum + width, 0)

/** A text shortened with `…` so that it fits `width` mm; the whole text when it fits anyway. */
export function fitting(text: string, size: number, width: number, bold = false): string {
  if (widthOf(text, size, bold) <= width) return text
  const letters = [...text]
  while (letters.length > 0 && widthOf(`${letters.join('').trimEnd()}…`, size, bold) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
