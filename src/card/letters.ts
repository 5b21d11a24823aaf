/**
 * How long the card's words are: Atkinson Hyperlegible Next, and DejaVu Sans Condensed for the few signs that it lacks (`≤ ≥ → α`), set so that
 * capitals are alike. No kerning, figures all of one width.
 */
import { byCodePoint, lengthOf, legible, capHeight as sheetCapHeight } from '../drawing/letters.ts'
import { advances } from './advances.ts'

/** PDF and CSS points in a millimetre. */
export const pointsPerMm = 72 / 25.4
/** Height of a capital in em (OS/2 capHeight 668 of 1000). */
export const capHeight = 0.668
/** What the signs of the other face are set at, for a size of 1. */
export const otherFaceSize = capHeight / sheetCapHeight

/** In thousandths of the size. */
const [regularAdvances, boldAdvances] = byCodePoint(advances)

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
    const own = ownWidth(letter.codePointAt(0) ?? 0, size, bold)
    const set = own === 0 ? lacking(letter, size, bold) : { face: 'card' as const, text: letter, width: own }
    const last = found.at(-1)
    if (last?.face === set.face) {
      last.text += set.text
      last.width += set.width
    } else found.push({ ...set })
  }
  return found
}

/** Width of a letter in mm, nothing where the card's face lacks it. */
const ownWidth = (code: number, size: number, bold: boolean): number =>
  (((bold ? boldAdvances : regularAdvances)[code] ?? 0) / 1000) * (size / pointsPerMm)

/** A letter that the card's face lacks. */
function lacking(letter: string, size: number, bold: boolean): Stretch {
  const text = legible(letter)
  if (text === '?') return { face: 'card', text, width: ownWidth(0x3f, size, bold) }
  return { face: 'sheet', text, width: lengthOf(text, (capHeight * size) / pointsPerMm, bold) }
}

/** Length in mm of a text set at `size` points: of its stretches, without making them, since it is asked for thousands of times a card. */
export function widthOf(text: string, size: number, bold = false): number {
  let before = 0
  let stretch = 0
  let face: Face = 'card'
  for (let at = 0; at < text.length; at++) {
    const code = text.codePointAt(at) ?? 0
    if (code > 0xffff) at++
    const own = ownWidth(code, size, bold)
    const set = own === 0 ? lacking(String.fromCodePoint(code), size, bold) : undefined
    if ((set?.face ?? 'card') !== face) {
      before += stretch
      stretch = 0
      face = face === 'card' ? 'sheet' : 'card'
    }
    stretch += set?.width ?? own
  }
  return before + stretch
}

/** A text shortened with `…` so that it fits `width` mm; the whole text when it fits anyway. */
export function fitting(text: string, size: number, width: number, bold = false): string {
  if (widthOf(text, size, bold) <= width) return text
  const letters = [...text]
  while (letters.length > 0 && widthOf(`${letters.join('').trimEnd()}…`, size, bold) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
