/** What writers replay: strokes in mm on paper, x to the right, y up, origin at the paper's lower left. */
import type { Point } from '../solid/outline.ts'

/** One stroke class a meaning; the table of widths, layers and line types stands in style.ts. */
export type StrokeClass = 'edge' | 'hidden' | 'axis' | 'ghost' | 'size' | 'hatch' | 'torn' | 'note' | 'sheet' | 'stop'

interface Drawn {
  readonly class: StrokeClass
  /** mm on paper. */
  readonly width: number
  /** Name of the dimension that this stroke says, if it says one. */
  readonly of?: string
}

export type Stroke =
  /** Dashes are already fitted to the length: `dashes` in mm, on and off in turn, first and last on, their sum the whole length; absent = continuous. */
  | (Drawn & { readonly stroke: 'line'; readonly from: Point; readonly to: Point; readonly dashes?: readonly number[] })
  /** Counter-clockwise, degrees. */
  | (Drawn & {
      readonly stroke: 'arc'
      readonly centre: Point
      readonly radius: number
      readonly from: number
      readonly to: number
      readonly dashes?: readonly number[]
    })
  /**
   * `at` is the left end of the baseline (before turning); `height` of a capital; `length` as measured by letters.ts; `turn` 0 or 90.
   */
  | (Drawn & {
      readonly stroke: 'text'
      readonly at: Point
      readonly height: number
      readonly length: number
      readonly turn: 0 | 90
      readonly text: string
      readonly bold?: boolean
    })
  | (Drawn & { readonly stroke: 'fill'; readonly points: readonly Point[] })

/** What a live DXF dimension needs; all points on paper. */
export interface SheetDimension {
  readonly of: string
  readonly is: 'linear' | 'angle'
  /** 0: horizontal, 90: vertical. */
  readonly turn: 0 | 90
  /** Linear: the two points that are measured. Angle: the vertex, then a point on each arm, counter-clockwise. */
  readonly points: readonly Point[]
  /** A point of the dimension line (or arc). */
  readonly line: Point
  readonly text: string
  readonly textAt: Point
  /** Paper mm for one mm of the part. */
  readonly scale: number
  /** Indices into the sheet's strokes that draw it. */
  readonly strokes: readonly number[]
}

export interface Sheet {
  /** `cider-mill-pulley-20` */
  readonly number: string
  readonly title: string
  readonly part: string
  readonly paper: { readonly name: 'A4' | 'Letter'; readonly width: number; readonly height: number }
  readonly strokes: readonly Stroke[]
  readonly dimensions: readonly SheetDimension[]
}
