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
const noteWidths = [64, 80, 100, 125, 150]

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

/** The front and what is in projection with it: one axis shared, slid apart until clear. Which side is the projection's matter. */
export function inProjection(front: Block, others: readonly Block[], projection: 'first' | 'third'): PutBlock[] {
  const puts: PutBlock[] = [{ block: front, x: 0, y: 0 }]
  for (const block of others) {
    const { place } = block.view
    const from = place.is === 'seen' || place.is === 'section' ? place.from : 'left'
    const sign = projection === 'first' ? -1 : 1
    const put: PutBlock = { block, x: 0, y: 0 }
    const [sx, sy] =
      from === 'above' ? [0, sign] : from === 'below' ? [0, -sign] : from === 'left' ? [-sign, 0] : [sign, 0]
    if (sx !== 0) put.x = sx > 0 ? front.right + apart - block.left : front.left - apart - block.right
    if (sy !== 0) put.y = sy > 0 ? front.high + apart - block.low : front.low - apart - block.high
    while (puts.some((other) => meet(boxOf(put), boxOf(other), apart - 1))) {
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
  style: Style,
  manner: Manner,
): Packed | undefined {
  const { frame } = paper
  const inner: Box = { x1: frame.x1 + inset, y1: frame.y1 + inset, x2: frame.x2 - inset, y2: top - inset }
  const within = (box: Box): boolean =>
    box.x1 >= inner.x1 - 1e-6 && box.y1 >= inner.y1 - 1e-6 && box.x2 <= inner.x2 + 1e-6 && box.y2 <= inner.y2 + 1e-6
  const blocks: PutBlock[] = clusters.map((put) => ({ ...put }))
  const free = (box: Box, gap: number, others: readonly Box[]): boolean =>
    within(box) &&
    reserved.every((other) => !meet(box, other, inset)) &&
    others.every((other) => !meet(box, other, gap))
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
    const tops = [inner.y2, ...taken.map((box) => box.y1 - apart), ...taken.map((box) => box.y2)].sort((a, b) => b - a)
    const lefts = [inner.x1, ...taken.map((box) => box.x2 + apart), ...taken.map((box) => box.x1)].sort((a, b) => a - b)
    let found: PutBlock | undefined
    search: for (const y of tops)
      for (const x of lefts)
        if (free({ x1: x, y1: y - height, x2: x + width, y2: y }, apart, taken)) {
          found = { block, x: x - block.left, y: y - block.high }
          break search
        }
    if (!found) return undefined
    blocks.push(found)
  }
  const columns = columnsOf(notes, blocks.map(boxOf), inner, free, style, manner)
  if (!columns) return undefined
  settle(blocks, columns, inner, reserved)
  return { blocks, columns }
}

/** All notes in columns: one width for all first, then the first that fits for each. */
function columnsOf(
  notes: readonly Notes[],
  taken: readonly Box[],
  inner: Box,
  free: (box: Box, gap: number, others: readonly Box[]) => boolean,
  style: Style,
  manner: Manner,
): PutColumn[] | undefined {
  const set = new Map<string, Column>()
  const columnAt = (index: number, width: number): Column => {
    const key = `${index} ${width}`
    const known = set.get(key)
    if (known) return known
    const column = setNotes(notes[index]!, width, style, manner)
    set.set(key, column)
    return column
  }
  const spot = (column: Column, others: readonly Box[]): PutColumn | undefined => {
    const all = [...taken, ...others]
    const tops = [inner.y2, ...all.map((box) => box.y1 - noteGap), ...others.map((box) => box.y2)].sort((a, b) => b - a)
    const lefts = [
      inner.x2 - column.width,
      ...all.map((box) => box.x1 - noteGap - column.width),
      ...all.map((box) => box.x2 + noteGap),
      ...others.map((box) => box.x1),
      inner.x1,
    ].sort((a, b) => b - a)
    for (const y of tops)
      for (const x of lefts)
        if (free({ x1: x, y1: y - column.height, x2: x + column.width, y2: y }, noteGap, all)) return { column, x, y }
    return undefined
  }
  const all = (widthOf: (index: number, others: readonly Box[]) => readonly number[]): PutColumn[] | undefined => {
    const puts: PutColumn[] = []
    for (const index of notes.keys()) {
      let found: PutColumn | undefined
      const others = puts.map(columnBox)
      for (const width of widthOf(index, others)) {
        found = spot(columnAt(index, width), others)
        if (found) break
      }
      if (!found) return undefined
      puts.push(found)
    }
    return puts
  }
  for (const width of noteWidths) {
    const puts = all(() => [width])
    if (puts) return puts
  }
  return all(() => noteWidths)
}

/** Shares the white space that is left: everything moves down and right by half of it, in whole millimetres. */
function settle(blocks: PutBlock[], columns: PutColumn[], inner: Box, reserved: readonly Box[]): void {
  const boxes = [...blocks.map(boxOf), ...columns.map(columnBox)]
  if (boxes.length === 0) return
  let down = Infinity
  for (const box of boxes) {
    down = Math.min(down, box.y1 - inner.y1)
    for (const other of reserved)
      if (box.x1 < other.x2 && box.x2 > other.x1 && other.y2 <= box.y1) down = Math.min(down, box.y1 - other.y2 - inset)
  }
  const whole = unite(boxes)
  const dx = Math.floor((inner.x2 - whole.x2) / 2)
  const dy = Math.floor(Math.max(0, Math.min(down / 2, 20)))
  for (const put of [...blocks, ...columns]) {
    put.x += dx
    put.y -= dy
  }
}
