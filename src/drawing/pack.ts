/** Packs solved views and columns of notes on one sheet. */
import type { Block } from './block.ts'
import { type Column, setNotes } from './notes.ts'
import type { Manner } from './numbers.ts'
import type { Paper } from './paper.ts'
import type { Style } from './style.ts'
import type { Box, Notes } from './view.ts'

/** Something put at an offset: its strokes move by (x, y). */
export interface PutBlock {
  readonly block: Block
  x: number
  y: number
}
export interface PutColumn {
  readonly column: Column
  x: number
  y: number
}

export interface Packed {
  readonly blocks: PutBlock[]
  readonly columns: PutColumn[]
}

const apart = 9
const inset = 4
const noteGap = 7
const noteWidths = [64, 80, 56, 100, 125, 150]

const boxOf = (put: PutBlock): Box => ({
  x1: put.x + put.block.left,
  y1: put.y + put.block.low,
  x2: put.x + put.block.right,
  y2: put.y + put.block.high,
})
const columnBox = (put: PutColumn): Box => ({
  x1: put.x,
  y1: put.y - put.column.height,
  x2: put.x + put.column.width,
  y2: put.y,
})
const meet = (a: Box, b: Box, gap: number): boolean =>
  a.x1 < b.x2 + gap - 1e-6 && a.x2 > b.x1 - gap + 1e-6 && a.y1 < b.y2 + gap - 1e-6 && a.y2 > b.y1 - gap + 1e-6

/** Whether two views come too near: outlines to outlines, and every callout of the one to everything of the other. */
function near(a: PutBlock, b: PutBlock): boolean {
  if (!meet(boxOf(a), boxOf(b), apart)) return false
  return a.block.parts.some((one, i) => {
    const here = { x1: one.x1 + a.x, y1: one.y1 + a.y, x2: one.x2 + a.x, y2: one.y2 + a.y }
    return b.block.parts.some((other, j) =>
      meet(
        here,
        { x1: other.x1 + b.x, y1: other.y1 + b.y, x2: other.x2 + b.x, y2: other.y2 + b.y },
        i * j === 0 ? apart : 5,
      ),
    )
  })
}

/** The front and what is in projection with it: one axis shared, slid apart until clear of one another. Which side is the projection's matter. */
export function inProjection(front: Block, others: readonly Block[], projection: 'first' | 'third'): PutBlock[] {
  const puts: PutBlock[] = [{ block: front, x: 0, y: 0 }]
  for (const block of others) {
    const { place } = block.view
    const from = place.is === 'seen' || place.is === 'section' ? place.from : 'left'
    const sign = projection === 'first' ? -1 : 1
    const put: PutBlock = { block, x: 0, y: 0 }
    const [sx, sy] =
      from === 'above' ? [0, sign] : from === 'below' ? [0, -sign] : from === 'left' ? [-sign, 0] : [sign, 0]
    const bare = block.parts[0]!
    const main = front.parts[0]!
    if (sx !== 0) put.x = Math.round(sx > 0 ? main.x2 + apart - bare.x1 : main.x1 - apart - bare.x2)
    if (sy !== 0) put.y = Math.round(sy > 0 ? main.y2 + apart - bare.y1 : main.y1 - apart - bare.y2)
    while (puts.some((other) => near(put, other))) {
      put.x += sx
      put.y += sy
    }
    puts.push(put)
  }
  return puts
}

const unite = (boxes: readonly Box[]): Box => ({
  x1: Math.min(...boxes.map((box) => box.x1)),
  y1: Math.min(...boxes.map((box) => box.y1)),
  x2: Math.max(...boxes.map((box) => box.x2)),
  y2: Math.max(...boxes.map((box) => box.y2)),
})

/**
 * Packs views in projection (`rows`), views that stand anywhere (`loose`) and notes into the frame, off what is `reserved`. `undefined` when
 * they do not fit.
 */
export function pack(
  clusters: readonly PutBlock[],
  loose: readonly Block[],
  notes: readonly Notes[],
  paper: Paper,
  reserved: readonly Box[],
  top: number,
  set: Columns,
): Packed | undefined {
  const { frame } = paper
  const inner: Box = { x1: frame.x1 + inset, y1: frame.y1 + inset, x2: frame.x2 - inset, y2: top - inset }
  const within = (box: Box): boolean =>
    box.x1 >= inner.x1 - 1e-6 && box.y1 >= inner.y1 - 1e-6 && box.x2 <= inner.x2 + 1e-6 && box.y2 <= inner.y2 + 1e-6
  const blocks: PutBlock[] = clusters.map((put) => ({ ...put }))
  const free: Free = (box, gap, others) => {
    if (!within(box)) return false
    for (const other of reserved) if (meet(box, other, inset)) return false
    for (const other of others) if (meet(box, other, gap)) return false
    return true
  }
  if (blocks.length > 0) {
    const whole = unite(blocks.map(boxOf))
    const dx = Math.ceil(inner.x1 - whole.x1)
    const dy = Math.floor(inner.y2 - whole.y2)
    for (const put of blocks) {
      put.x += dx
      put.y += dy
      if (!free(boxOf(put), 0, [])) return undefined
    }
  }
  for (const block of loose) {
    const taken = blocks.map(boxOf)
    const width = block.right - block.left
    const height = block.high - block.low
    const tops = [inner.y2, ...taken.map((box) => box.y1 - apart), ...taken.map((box) => box.y2)].toSorted(
      (a, b) => b - a,
    )
    const lefts = [inner.x1, ...taken.map((box) => box.x2 + apart), ...taken.map((box) => box.x1)].toSorted(
      (a, b) => a - b,
    )
    const found = firstFree(tops, lefts, width, height, inner, (box) => free(box, apart, taken))
    if (!found) return undefined
    blocks.push({ block, x: found.x1 - block.left, y: found.y2 - block.high })
  }
  const columns = columnsOf(notes, blocks.map(boxOf), inner, reserved, free, set)
  if (!columns) return undefined
  settle(blocks, columns, inner, reserved)
  return { blocks, columns }
}

/** Whether a box lies on the sheet, off what is reserved, and `gap` off others. */
type Free = (box: Box, gap: number, others: readonly Box[]) => boolean

/** The first place that is free for a box of this size, by its upper edge and then by its left one. */
function firstFree(
  tops: readonly number[],
  lefts: readonly number[],
  width: number,
  height: number,
  inner: Box,
  free: (box: Box) => boolean,
): Box | undefined {
  const across = lefts.filter((x) => x >= inner.x1 - 1e-6 && x + width <= inner.x2 + 1e-6)
  for (const y of tops) {
    if (y > inner.y2 + 1e-6 || y - height < inner.y1 - 1e-6) continue
    for (const x of across) {
      const box = { x1: x, y1: y - height, x2: x + width, y2: y }
      if (free(box)) return box
    }
  }
  return undefined
}

/** Notes set to widths, kept while one part is laid out. */
export class Columns {
  private readonly set = new Map<Notes, Map<number, Column>>()
  private readonly style: Style
  private readonly manner: Manner

  constructor(style: Style, manner: Manner) {
    this.style = style
    this.manner = manner
  }

  at(notes: Notes, width: number): Column {
    const widths = this.set.get(notes) ?? new Map<number, Column>()
    this.set.set(notes, widths)
    const column = widths.get(width) ?? setNotes(notes, width, this.style, this.manner)
    widths.set(width, column)
    return column
  }
}

/** Least share of the free area that is lost between columns. */
const lost = 1.05

/** All notes in columns: one width for all first, then the first that fits for each; in their own order, then the longest first. */
function columnsOf(
  notes: readonly Notes[],
  taken: readonly Box[],
  inner: Box,
  reserved: readonly Box[],
  free: Free,
  columns: Columns,
): PutColumn[] | undefined {
  const size = ({ x1, y1, x2, y2 }: Box): number => (x2 - x1) * (y2 - y1)
  const room = size(inner) - [...taken, ...reserved].reduce((sum, box) => sum + size(box), 0)
  const wanted = notes.reduce((sum, block) => {
    const { width, height } = columns.at(block, 80)
    return sum + width * height
  }, 0)
  if (wanted * lost > room) return undefined

  const spot = (column: Column, others: readonly Box[], way: 1 | -1): PutColumn | undefined => {
    const all = [...taken, ...others]
    const tops = [inner.y2, ...all.map((box) => box.y1 - noteGap), ...others.map((box) => box.y2)].toSorted(
      (a, b) => b - a,
    )
    const lefts = [
      inner.x2 - column.width,
      ...all.map((box) => box.x1 - noteGap - column.width),
      ...all.map((box) => box.x2 + noteGap),
      ...others.map((box) => box.x1),
      inner.x1,
    ].toSorted((a, b) => way * (b - a))
    const found = firstFree(tops, lefts, column.width, column.height, inner, (box) => free(box, noteGap, all))
    return found && { column, x: found.x1, y: found.y2 }
  }
  const all = (order: readonly Notes[], widths: readonly number[], way: 1 | -1): PutColumn[] | undefined => {
    const puts = new Map<Notes, PutColumn>()
    for (const block of order) {
      let found: PutColumn | undefined
      const others = [...puts.values()].map(columnBox)
      for (const width of widths) {
        found = spot(columns.at(block, width), others, way)
        if (found) break
      }
      if (!found) return undefined
      puts.set(block, found)
    }
    return notes.map((block) => puts.get(block)!)
  }
  const tallest = notes.toSorted((a, b) => columns.at(b, 80).height - columns.at(a, 80).height)
  for (const order of [notes, tallest])
    for (const widths of [...noteWidths.map((width) => [width]), noteWidths])
      for (const way of widths.length > 1 ? ([1, -1] as const) : ([1] as const)) {
        const puts = all(order, widths, way)
        if (puts) return inReadingOrder(puts, (put, others) => free(columnBox(put), noteGap, [...taken, ...others]))
      }
  return undefined
}

/** Columns side by side are put so that they read from left to right, where that leaves all of them free. */
function inReadingOrder(puts: PutColumn[], free: (put: PutColumn, others: readonly Box[]) => boolean): PutColumn[] {
  const moved = levelled(puts, free)
  for (const top of new Set(puts.map((put) => put.y))) {
    const row = moved.filter((put) => put.y === top)
    const places = row.map((put) => put.x).toSorted((a, b) => a - b)
    for (const [index, put] of row.entries()) put.x = places[index]!
  }
  const whole = moved.every((put, index) => {
    const others = moved.filter((_, other) => other !== index).map(columnBox)
    return free(put, others)
  })
  return whole ? moved : levelled(puts, free)
}

/** Heads of columns beside each other brought to the lowest of them, what stands under a head along with it, where all stay free. */
function levelled(puts: readonly PutColumn[], free: (put: PutColumn, others: readonly Box[]) => boolean): PutColumn[] {
  const moved = puts.map((put) => ({ ...put }))
  const over = (a: PutColumn, b: PutColumn): boolean =>
    a.y > b.y && a.x < b.x + b.column.width && a.x + a.column.width > b.x
  const heads = moved.filter((put) => !moved.some((other) => over(other, put)))
  const lowest = Math.min(...heads.map((put) => put.y))
  const level = heads.filter((put) => put.y - lowest < 30)
  for (const head of level) {
    const down = head.y - lowest
    for (const put of moved) if (put !== head && over(head, put)) put.y -= down
    head.y = lowest
  }
  const all = moved.every((put) => free(put, moved.filter((other) => other !== put).map(columnBox)))
  return all ? moved : puts.map((put) => ({ ...put }))
}

/** Moves a group by half of the room that is left in a region, down no farther than is free below it. */
function centre(boxes: readonly Box[], region: Box, move: (dx: number, dy: number) => void): void {
  if (boxes.length === 0) return
  const whole = unite(boxes)
  const dx = Math.floor((region.x2 - whole.x2 - (whole.x1 - region.x1)) / 2)
  const dy = Math.floor((region.y2 - whole.y2 - (whole.y1 - region.y1)) / 2)
  move(dx, dy)
}

/** Shares the white space that is left, in whole millimetres: views and notes each in the middle of their own part of the sheet. */
function settle(blocks: PutBlock[], columns: PutColumn[], inner: Box, reserved: readonly Box[]): void {
  const floor = Math.max(inner.y1, ...reserved.map((box) => box.y2 + inset))
  const views = blocks.map(boxOf)
  const words = columns.map(columnBox)
  const whole = unite([...views, ...words])
  if (views.length + words.length === 0 || whole.y1 < floor - 1e-6) return
  const shift = (puts: readonly { x: number; y: number }[]) => (dx: number, dy: number) => {
    for (const put of puts) {
      put.x += dx
      put.y += dy
    }
  }
  if (views.length > 0 && words.length > 0) {
    const view = unite(views)
    const word = unite(words)
    if (word.y2 <= view.y1 - 1) {
      // Notes below the views: the spare height in three parts.
      const spare = Math.floor(Math.min(word.y1 - floor, 60) / 3)
      centre(views, { ...inner, y1: view.y1 - spare, y2: view.y2 - spare }, shift(blocks))
      centre(words, { ...inner, y1: word.y1 - 2 * spare, y2: word.y2 - 2 * spare }, shift(columns))
      return
    }
    if (word.x1 >= view.x2 + 1) {
      // Notes right of the views: they keep the head of the sheet.
      centre(views, { x1: inner.x1, x2: word.x1 - noteGap, y1: floor, y2: inner.y2 }, shift(blocks))
      shift(columns)(0, -Math.floor(Math.min(8, (word.y1 - floor) / 2)))
      return
    }
  }
  centre([...views, ...words], { ...inner, y1: floor }, shift([...blocks, ...columns]))
}
