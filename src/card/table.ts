/** A table as slabs: numbers with their decimal marks under one another, cells to write in, heads that come again on the next side. */
import { type Cell, type Column, isWords, type Row, type Table, type Words } from './document.ts'
import { widthOf } from './letters.ts'
import { type Dress, lineHeight, linesOf, measured } from './lines.ts'
import { type Mark, moved, type Slab } from './marks.ts'
import { type Stacked, stacked } from './stack.ts'
import { boxed, dial, heavy, inTable, slotted, small, thin, tickBox, writeBox } from './type.ts'

/** Free at the left and right of a cell, mm; nothing at the table's own edges. */
const pad = 1.4
/** Sizes that a table is tried at, points: smaller only when its words do not fit otherwise. */
const sizes = [inTable, 8.8, 8]

type NumberCell = Extract<Cell, { readonly number: string }>
const isNumber = (cell: Cell): cell is NumberCell => typeof cell === 'object' && 'number' in cell
const isWrite = (cell: Cell): cell is Extract<Cell, { readonly write: unknown }> =>
  typeof cell === 'object' && 'write' in cell
const isTick = (cell: Cell): cell is Extract<Cell, { readonly tick: Words }> =>
  typeof cell === 'object' && 'tick' in cell
const wordsOf = (cell: Cell): Words | undefined => (isWords(cell) ? cell : undefined)

/** A number's parts: before the decimal mark, from it on, and the other unit. */
const partsOf = ({ number }: NumberCell): readonly [string, string] => {
  const mark = number.search(/[.,]/)
  return mark < 0 ? [number, ''] : [number.slice(0, mark), number.slice(mark)]
}

interface Widths {
  readonly whole: number
  readonly fraction: number
  readonly dual: number
}

const dressOf = (cell: NumberCell, size: number): Dress => ({
  size: cell.dial ? dial : size,
  bold: cell.bold ?? cell.dial ?? false,
})

function numberWidths(cells: readonly Cell[], size: number): Widths {
  const most = { whole: 0, fraction: 0, dual: 0 }
  for (const cell of cells) {
    if (!isNumber(cell)) continue
    const [whole, fraction] = partsOf(cell)
    const dress = dressOf(cell, size)
    most.whole = Math.max(most.whole, widthOf(whole, dress.size, dress.bold))
    most.fraction = Math.max(most.fraction, widthOf(fraction, dress.size, dress.bold))
    if (cell.dual) most.dual = Math.max(most.dual, widthOf(cell.dual, small) + 1.2)
  }
  return most
}

/** Few letters, `dial to`, `no go`, stay on one line. */
export const unbroken = (head: Words): Words =>
  typeof head === 'string' && head.length <= 12 ? head.replaceAll(' ', '\u00a0') : head

/** Whether any column has a head to print. */
export const hasHeads = (table: Table): boolean =>
  table.columns.some(({ head, unit }) => head.length > 0 || unit !== undefined)

const headOf = (column: Column): Words =>
  column.unit === undefined
    ? unbroken(column.head)
    : [...(typeof column.head === 'string' ? [{ bold: column.head }] : column.head), { small: ` ${column.unit}` }]

const tickWords = (cell: Extract<Cell, { readonly tick: Words }>): Words =>
  cell.tick.length === 0
    ? [{ tick: true }]
    : [{ tick: true }, ' ', ...(typeof cell.tick === 'string' ? [cell.tick] : cell.tick)]

/** Cells that a column's width must hold: words that run over several columns have room enough. */
const alone = (rows: readonly Row[], column: number): readonly Cell[] =>
  rows.flatMap((row) => {
    if (!('cells' in row)) return []
    const runsOver = (row.spans ?? 1) > 1 && column >= row.cells.length - 1
    return runsOver && !isNumber(row.cells[column]) ? [] : [row.cells[column]]
  })

/** Widths that a column's matter takes, mm: what cannot be broken; no word broken; every cell on one line. */
interface Wanted {
  readonly hard: number
  readonly least: number
  readonly most: number
}

/** The least width that takes a head in two lines, to the millimetre; `whole` on one, `cluster` where it does not break. */
function inTwo(head: Words, dress: Dress, { whole, cluster }: ReturnType<typeof measured>): number {
  let width = Math.max(whole / 2, cluster)
  while (width < whole && linesOf(head, dress, width).length > 2) width += 1
  return Math.min(width, whole)
}

function wanted(column: Column, cells: readonly Cell[], size: number, names: boolean): Wanted {
  const together = (some: readonly Cell[]): number => {
    const { whole, fraction, dual: other } = numberWidths(some, size)
    return whole + fraction + other
  }
  let hard = column.align === 'decimal' ? together(cells) : Math.max(0, ...cells.map((cell) => together([cell])))
  const head = headOf(column)
  const headDress = { size, bold: true }
  const headWidths = measured(head, headDress)
  let least = Math.max(column.width ?? 0, hard, headWidths.cluster)
  let most = Math.max(least, inTwo(head, headDress, headWidths))
  for (const cell of cells) {
    const words = isTick(cell) ? tickWords(cell) : wordsOf(cell)
    if (words !== undefined) {
      const { thing, cluster, whole } = measured(words, { size, bold: names && typeof cell === 'string' })
      hard = Math.max(hard, thing)
      least = Math.max(least, cluster)
      most = Math.max(most, whole)
    } else if (isWrite(cell)) hard = Math.max(hard, writeBox.width)
  }
  least = Math.max(hard, least)
  return { hard, least, most: Math.max(least, most) }
}

interface Laid {
  readonly size: number
  /** Left edge and width of each column's matter, mm. */
  readonly columns: readonly { readonly x: number; readonly width: number }[]
}

/** @throws RangeError when what cannot be broken is wider than the table's place. */
function laidColumns(table: Table, width: number): Laid {
  const room = width - 2 * pad * (table.columns.length - 1)
  const asked = (size: number): readonly Wanted[] =>
    table.columns.map((column, at) => wanted(column, alone(table.rows, at), size, at === 0 && (table.named ?? false)))
  const sum = (all: readonly Wanted[], of: keyof Wanted): number => all.reduce((total, each) => total + each[of], 0)
  let size = 0
  let all: readonly Wanted[] = []
  for (const tried of sizes) {
    size = tried
    all = asked(tried)
    if (sum(all, 'least') <= room) break
  }
  const [hard, least, most] = [sum(all, 'hard'), sum(all, 'least'), sum(all, 'most')]
  if (hard > room + 1e-6)
    throw new RangeError(`the table '${table.title}' is wider than its place: ${hard} over ${room}`)
  /** Each column's width on the way from one of its widths to the other. */
  const between = (from: 'hard' | 'least', to: 'least' | 'most', share: number): readonly number[] =>
    all.map((each) => each[from] + (each[to] - each[from]) * share)
  let widths: readonly number[]
  if (least > room) widths = between('hard', 'least', (room - hard) / (least - hard))
  else if (most > room) widths = between('least', 'most', (room - least) / (most - least))
  else {
    const grows = table.columns.some((column) => column.grows)
    const growing = table.columns.filter((column) => !grows || column.grows).length
    widths = all.map((each, at) => each.most + (!grows || table.columns[at]?.grows ? (room - most) / growing : 0))
  }
  let x = 0
  return {
    size,
    columns: widths.map((each) => {
      const column = { x, width: each }
      x += each + 2 * pad
      return column
    }),
  }
}

/** Words in a cell, from its upper left corner. */
function setCell(words: Words, dress: Dress, width: number, right: boolean): Stacked {
  const lines = linesOf(words, dress, width).map((line) =>
    right ? { ...line, marks: line.marks.map((mark) => moved(mark, Math.max(0, width - line.width), 0)), width } : line,
  )
  return stacked(lines, 0, 0)
}

function setNumber(cell: NumberCell, column: Column, widths: Widths, size: number, width: number): Stacked {
  const dress = dressOf(cell, size)
  const [whole, fraction] = partsOf(cell)
  const number = column.align === 'decimal' ? widths : numberWidths([cell], size)
  const end =
    column.align === undefined || column.align === 'left' ? number.whole + number.fraction + number.dual : width
  const mark = end - number.dual - number.fraction
  const own = widthOf(whole, dress.size, dress.bold)
  const main = stacked(linesOf(whole + fraction, dress, Number.POSITIVE_INFINITY), mark - own, 0)
  if (!cell.dual) return main
  const beside = stacked(
    linesOf(cell.dual, { size: small }, Number.POSITIVE_INFINITY),
    mark + widthOf(fraction, dress.size, dress.bold) + 1.2,
    0,
  )
  return { ...main, marks: [...main.marks, ...beside.marks.map((each) => onBaselineOf(each, main.marks))] }
}

function onBaselineOf(mark: Mark, others: readonly Mark[]): Mark {
  const [first] = others
  return mark.mark === 'words' && first?.mark === 'words' ? { ...mark, y: first.y } : mark
}

/** What is set of a table at one width, however loosely its rows stand. */
interface SetTable {
  readonly size: number
  readonly columns: Laid['columns']
  readonly heads: readonly Stacked[]
  readonly rows: readonly (Stacked | readonly (SetCell | undefined)[])[]
}

interface SetCell {
  readonly cell: Cell
  readonly from: Laid['columns'][number]
  readonly room: number
  /** Undefined for a cell to write in, which is as high as its row. */
  readonly set?: Stacked
}

/** What was set of a table, by its width: it is asked for at every looseness that its side is tried at. */
const known = new WeakMap<Table, Map<number, SetTable>>()

function setTable(table: Table, width: number): SetTable {
  const byWidth = known.get(table) ?? new Map<number, SetTable>()
  known.set(table, byWidth)
  const set = byWidth.get(width) ?? setAnew(table, width)
  byWidth.set(width, set)
  return set
}

const toTheRight = ({ align }: Column): boolean => align === 'right' || align === 'decimal'
const isAcross = (set: SetTable['rows'][number]): set is Stacked => 'marks' in set

function setAnew(table: Table, width: number): SetTable {
  const { size, columns } = laidColumns(table, width)
  const numbers = table.columns.map((_, at) => numberWidths(alone(table.rows, at), size))
  const heads = table.columns.map((column, at) =>
    setCell(headOf(column), { size, bold: true }, columns[at]?.width ?? 0, toTheRight(column)),
  )
  const rows = table.rows.map((row) => {
    if ('across' in row) return setCell(row.across, { size, bold: true }, width - 2, false)
    return row.cells.slice(0, columns.length).map((cell, at): SetCell | undefined => {
      const column = table.columns[at]
      const from = columns[at]
      if (!column || !from) return undefined
      const spans = at === row.cells.length - 1 ? (row.spans ?? 1) : 1
      const to = columns[Math.min(columns.length, at + spans) - 1] ?? from
      const room = to.x + to.width - from.x
      if (isWrite(cell)) return { cell, from, room }
      if (isNumber(cell)) {
        const widths = numbers[at] ?? numberWidths([cell], size)
        return { cell, from, room, set: setNumber(cell, spans > 1 ? { head: '' } : column, widths, size, room) }
      }
      const words = isTick(cell) ? tickWords(cell) : wordsOf(cell)
      if (words === undefined) return undefined
      const dress = { size, bold: at === 0 && (table.named ?? false) && typeof cell === 'string' }
      return { cell, from, room, set: setCell(words, dress, room, spans === 1 && toTheRight(column)) }
    })
  })
  return { size, columns, heads, rows }
}

/** A table `width` mm wide; `air` of 1 is loose, 0.5 close. */
export function tableSlabs(table: Table, width: number, gap: number, air: number): readonly Slab[] {
  const { size, columns, heads, rows } = setTable(table, width)
  const above = 0.1 + 0.45 * air
  const line = (y: number, weight: number): Mark => ({ mark: 'line', from: [0, y], to: [width, y], width: weight })

  const headed = hasHeads(table)
  const headHeight = headed ? Math.max(...heads.map(({ height }) => height)) + 0.8 : 0
  const head: Slab = {
    height: headHeight,
    gap,
    keep: true,
    marks: [
      ...heads.flatMap((set, at) =>
        set.marks.map((mark) => moved(mark, columns[at]?.x ?? 0, headHeight - 0.8 - set.height)),
      ),
      line(headHeight, headed ? slotted : thin),
    ],
  }
  const again: Slab = { ...head, gap: 0 }

  const slabs = rows.map((sets, index): Slab => {
    const last = index === rows.length - 1
    const common = { gap: 0, ...(headed && { again }) }
    const row = table.rows[index]
    if (isAcross(sets)) {
      const height = sets.height + 2 * above
      const stage = row && 'is' in row && row.is === 'stage'
      return {
        ...common,
        height,
        ...(!last && { keep: true as const }),
        marks: [
          ...sets.marks.map((mark) => moved(mark, 1, above)),
          ...(stage ? [line(0, heavy), line(height, heavy)] : [line(height, slotted)]),
        ],
      }
    }
    const heightOf = (each: SetCell | undefined): number =>
      each ? (each.set?.height ?? writeBox.height - 2 * above) : 0
    const tall = Math.max(lineHeight(size), ...sets.map(heightOf))
    const ticks = sets.some((each) => each && isTick(each.cell)) ? tickBox + 1 : 0
    const height = Math.max(tall + 2 * above, ticks)
    const marks: Mark[] = []
    for (const each of sets) {
      if (!each) continue
      const { cell, from, room, set } = each
      if (set) marks.push(...set.marks.map((mark) => moved(mark, from.x, (height - set.height) / 2)))
      else if (isWrite(cell)) {
        const left = from.x === 0 ? 0 : from.x - pad
        const right = Math.min(width, from.x + room + pad)
        marks.push(
          cell.write === 'box'
            ? { mark: 'box', x: left, y: 0, width: right - left, height, line: boxed, is: 'write' }
            : { mark: 'line', from: [from.x, height - 1.6], to: [from.x + room, height - 1.6], width: boxed },
        )
      }
    }
    marks.push(line(height, thin))
    return {
      ...common,
      height,
      marks,
      ...((index === 0 || index === rows.length - 2) && !last && { keep: true as const }),
    }
  })
  return [head, ...slabs]
}
