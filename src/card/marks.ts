/** What the print of a card is made of: marks in mm, x to the right, y down, from the upper left of what they belong to. */
import type { Picture } from './document.ts'
import type { Face } from './letters.ts'

export type Mark =
  | {
      readonly mark: 'words'
      readonly x: number
      /** The baseline. */
      readonly y: number
      /** Points, of the card's own face. */
      readonly size: number
      readonly bold: boolean
      readonly face: Face
      readonly text: string
      /** As measured, mm. */
      readonly width: number
    }
  | {
      readonly mark: 'line'
      readonly from: readonly [x: number, y: number]
      readonly to: readonly [x: number, y: number]
      readonly width: number
    }
  /** A box drawn with a line `line` wide, on the middle of that line. */
  | {
      readonly mark: 'box'
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
      readonly line: number
      /** What it is there for: tests tell boxes to tick and to write in from rims by it. */
      readonly is: 'tick' | 'write' | 'rim'
    }
  | { readonly mark: 'bar'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  | { readonly mark: 'picture'; readonly x: number; readonly y: number; readonly picture: Picture }

/** A strip across the matter that is never torn apart. */
export interface Slab {
  /** mm. */
  readonly height: number
  /** Free above it when it does not stand first on a side. */
  readonly gap: number
  readonly marks: readonly Mark[]
  /** Must not be parted from the slab after it. */
  readonly keep?: true
  /** Stands once more at the head of the side when this slab is the first there: the heads of a table. */
  readonly again?: Slab
}

/** A mark moved by (x, y). */
export function moved(mark: Mark, x: number, y: number): Mark {
  if (mark.mark === 'line')
    return { ...mark, from: [mark.from[0] + x, mark.from[1] + y], to: [mark.to[0] + x, mark.to[1] + y] }
  return { ...mark, x: mark.x + x, y: mark.y + y }
}
