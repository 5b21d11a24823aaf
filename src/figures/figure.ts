/**
 * A figure: a picture that is looked at, on the page or on the job card, as plain values. All lengths in the target's own unit (px on the
 * page, mm on paper), x to the right, y down, origin at the upper left corner.
 */
import type { Corner, Outline, Point } from '../solid/outline.ts'

/** What an area is of. Bodies are hatched each in its own way; the others are plain. */
export type Body =
  | 'hub'
  | 'bar'
  | 'bit'
  | 'broach'
  | 'bushing'
  | 'plug'
  | 'no-room'
  | 'broken'
  | 'void'
  | 'still-to-cut'
  | 'force'
  | 'force-done'
  | 'cone'
  | 'rule'
  | 'go'
  | 'flag'
  | 'ball'
  | 'ink'
  | 'diamond'

export type LineKind =
  | 'edge'
  | 'slot'
  | 'hidden'
  | 'crown'
  | 'still'
  | 'centre'
  | 'ghost'
  | 'torn'
  | 'thin'
  | 'leader'
  | 'tick'
  | 'dots'
  | 'limit'
  | 'dial'
  | 'mark'
  | 'margin'
  | 'ring'
  | 'open'

/** How words are said. `figure` and `name` are bold, `mark` is marking blue, `flag` stands on it. */
export type Role = 'figure' | 'name' | 'word' | 'note' | 'mark' | 'flag' | 'ball' | 'broken'

export interface Run {
  readonly role: Role
  readonly text: string
}

export type Mark =
  /** Closed outlines, filled by even-odd; whatever was marked before lies under it. Its edges are lines of their own. */
  | { readonly mark: 'area'; readonly body: Body; readonly outlines: readonly Outline[]; readonly of?: string }
  /** A chain of corners; the last corner's bulge means nothing unless the line is closed. */
  | {
      readonly mark: 'line'
      readonly line: LineKind
      readonly path: readonly Corner[]
      readonly closed?: true
      readonly of?: string
    }
  /** `at` is the anchor on the baseline; `turn` 90 reads from below. */
  | {
      readonly mark: 'text'
      readonly at: Point
      readonly anchor: 'start' | 'middle' | 'end'
      readonly size: number
      readonly turn: 0 | 90
      readonly runs: readonly Run[]
      readonly of?: string
    }

/** One size that the picture says: the row of its table, and where it is spanned if it is. */
export interface Said {
  /** The dimension: `bar.projection`. */
  readonly of: string
  readonly name: string
  /** With its unit. */
  readonly said: string
  /** The length that is spanned, mm. */
  readonly mm: number
  /** Ends of the span in the picture; absent where the size is only led to. */
  readonly span?: readonly [Point, Point]
}

export interface Figure {
  readonly name: string
  readonly width: number
  readonly height: number
  /** Lettering, in the target's unit; every stroke and hatch goes by it. */
  readonly em: number
  /** The target's units for one mm of the part; absent where the picture has no one scale. */
  readonly scale?: number
  readonly marks: readonly Mark[]
  readonly title: string
  /** One sentence with the numbers: the text alternative. */
  readonly says: string
  readonly sizes: readonly Said[]
}

/** Where a figure is to stand. */
export interface Target {
  readonly width: number
  readonly em: number
  /** The most height it may take. */
  readonly height?: number
  /** Round scales to choose from, largest first; absent: whatever fills the width. */
  readonly scales?: readonly number[]
}

/** A figure on the page, `width` px wide, lettered at 14 px. */
export const onPage = (width: number): Target => ({ width, em: 14 })

/** A figure on paper, mm, lettered at 9.6 pt, to a round scale. */
export const onPaper = (width: number, height?: number): Target => ({
  width,
  em: 3.4,
  scales: [20, 15, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1, 0.5, 0.25, 0.2, 0.1],
  ...(height !== undefined && { height }),
})

/** Under thirty letters words give way to numbered balls. */
export const isNarrow = ({ width, em }: Target): boolean => width < 30 * em

/** The largest scale that fits, a round one where the target asks for it. */
export const scaleFor = (target: Target, fits: number, most = Infinity): number => {
  const free = Math.min(fits, most)
  return target.scales?.find((scale) => scale <= free + 1e-9) ?? free
}
