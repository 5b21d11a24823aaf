/** What a job card says, as plain values: leaves of sides of blocks. Nothing here knows paper or screen; src/writers makes both of it. */
import type { Stroke } from '../drawing/sheet.ts'

/** A piece of a line: plain words, or one thing said in its own way. */
export type Run =
  | string
  | { readonly bold: string }
  /** Bold and larger: signal words, a sum's own number. */
  | { readonly large: string }
  /** A dial reading: 13 pt bold. */
  | { readonly dial: string }
  /** A note within a line: 8.8 pt. */
  | { readonly small: string }
  /** The same length in the other unit, small. */
  | { readonly dual: string }
  /** A box to tick by hand. */
  | { readonly tick: true }
  /** A line to write on, mm long; `true`: 17 mm. */
  | { readonly blank: number | true }
  /** A box to write in, mm wide; `true`: 17 mm. */
  | { readonly box: number | true }

export type Words = string | readonly Run[]

/** A box to tick, what is to be seen to, and where it asks for a value a line to write it on. */
export interface Tick {
  readonly words: Words
  readonly blank?: true
}

/** A picture true to its own scale. */
export interface Picture {
  /** mm on paper. */
  readonly width: number
  readonly height: number
  readonly title: string
  /** What it shows, for those who cannot see it. */
  readonly says: string
  /** Black on paper: mm, y up, origin at the picture's lower left corner. Writers draw what they need of them. */
  readonly strokes: readonly Stroke[]
}

export interface Column {
  readonly head: Words
  /** Stands small behind the head. */
  readonly unit?: string
  /** `decimal`: numbers stand with their decimal marks under one another. Left out: `left`. */
  readonly align?: 'left' | 'right' | 'decimal'
  /** Least width, mm. */
  readonly width?: number
  /** Takes a share of the width that is left over. Left out in all columns: they share alike. */
  readonly grows?: true
}

/** A cell is words, a number, a box or a line to write in, a box to tick, or nothing. */
export type Cell =
  | Words
  | {
      readonly number: string
      readonly bold?: true
      readonly dial?: true
      /** The same in the other unit, small. */
      readonly dual?: string
    }
  /** The whole cell is a box to write in. */
  | { readonly write: 'box' }
  /** A line in the cell to write on. */
  | { readonly write: 'line' }
  /** A box to tick, with a word after it if need be. */
  | { readonly tick: Words }
  | undefined

export type Row =
  /** One cell a column; cells left out at the end are empty. The last may span the rest (`spans`: how many columns it takes). */
  | { readonly cells: readonly Cell[]; readonly spans?: number }
  /** A row right across: the name of a lane, or what is to be done before the next row. */
  | { readonly across: Words; readonly is: 'lane' | 'stage' }

export interface Table {
  readonly block: 'table'
  /** What the table lists, for those who cannot see it; not printed. */
  readonly title: string
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** Whether the first cell of a row names the row. */
  readonly named?: true
}

export interface Sum {
  /** Left out: a lone box. */
  readonly from?: { readonly number: string; readonly sign: '−' | '+' }
  /** Stands small below. */
  readonly says: Words
}

export type Block =
  /** The head of the job: its name large, one sentence, lines for a name and a date. */
  | { readonly block: 'job'; readonly name: string; readonly says: Words }
  /** A slotted heading; `beside` stands small after it. */
  | { readonly block: 'heading'; readonly text: string; readonly beside?: Words }
  | { readonly block: 'paragraph'; readonly words: Words; readonly size?: 'note' | 'large' }
  | {
      readonly block: 'caution'
      readonly says: readonly { readonly signal: string; readonly words: Words }[]
      /** Boxes to tick, in a row. */
      readonly ticks?: readonly Words[]
    }
  /** A list of boxes to tick, one a line; `inRow`: one after another, larger. */
  | { readonly block: 'ticks'; readonly ticks: readonly Tick[]; readonly inRow?: true }
  | { readonly block: 'list'; readonly entries: readonly Words[]; readonly numbered?: true }
  | Table
  | { readonly block: 'picture'; readonly picture: Picture }
  /** Sums laid out as boxes, side by side. */
  | { readonly block: 'sums'; readonly sums: readonly Sum[] }
  /** Blocks side by side; `width` in mm, what is left is shared alike by those that name none. */
  | {
      readonly block: 'columns'
      readonly columns: readonly { readonly width?: number; readonly blocks: readonly Block[] }[]
    }

/** One side of a sheet, when it fits; what does not goes on to the next. */
export interface Side {
  /** `set up`, `cut and measure` */
  readonly title: string
  readonly blocks: readonly Block[]
}

/** What is wanted at one place: starts a fresh sheet and stands alone. */
export interface Leaf {
  readonly leaf: 'machine' | 'tooling' | 'reasons'
  /** `Machine leaf` */
  readonly title: string
  readonly sides: readonly Side[]
}

/** A job card: leaves of paper with their sides, from which HTML and PDF are written alike. */
export interface Card {
  /** `cider-mill-pulley` */
  readonly name: string
  /** What it is, short: `8 × 7 in 24 H7 × 38`. Stands beside the name at the head of every side. */
  readonly about: string
  readonly units: 'millimetres' | 'inches'
  /** Names of the broken rules of a job that was made anyway. */
  readonly notSound?: readonly string[]
  /** The foot of every side. */
  readonly deferral: string
  readonly leaves: readonly Leaf[]
}

/** Whether a cell is words. */
export const isWords = (cell: Cell): cell is Words => typeof cell === 'string' || Array.isArray(cell)

/** Words without their dress: what is read aloud. Boxes and lines say nothing. */
export const plain = (words: Words): string =>
  typeof words === 'string' ? words : words.map((run) => saidBy(run)).join('')

/** What a run says; nothing for a box or a line. */
export function saidBy(run: Run): string {
  if (typeof run === 'string') return run
  if ('bold' in run) return run.bold
  if ('large' in run) return run.large
  if ('dial' in run) return run.dial
  if ('small' in run) return run.small
  if ('dual' in run) return run.dual
  return ''
}
