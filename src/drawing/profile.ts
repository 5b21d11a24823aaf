import type { Outline } from '../solid/outline.ts'

/** A flat shape for cutting: closed contours at 1:1, mm, no text. The first contour is the outside (counter-clockwise), the rest are holes (clockwise). */
export interface Profile {
  readonly name: string
  readonly contours: readonly Outline[]
}
