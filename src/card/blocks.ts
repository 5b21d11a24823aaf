/** Blocks of a card as slabs of print, a width and an air given. */
import type { Block, Tick, Words } from './document.ts'
import { lineHeight, linesOf, wordsWidth } from './lines.ts'
import { type Mark, moved, type Slab } from './marks.ts'
import { joined, setWords, stacked } from './stack.ts'
import { sums } from './sums.ts'
import { tableSlabs } from './table.ts'
import { blankLine, body, boxed, heavy, large, matter, nameSize, note, slotted, thin, tickBox } from './type.ts'

/** Free between columns that stand side by side, mm. */
const between = 7

/** Blocks under one another in `width` mm; `air` of 1 is loose, 0.5 close. */
export const slabsOf = (blocks: readonly Block[], width: number, air: number): readonly Slab[] =>
  blocks.flatMap((block, at) => slabs(block, width, air, blocks[at - 1]))

/** What was set of a block, by its place: a side is tried in several ways, which have most of their blocks in common. */
const known = new WeakMap<Block, Map<string, readonly Slab[]>>()

function slabs(block: Block, width: number, air: number, before: Block | undefined): readonly Slab[] {
  const byPlace = known.get(block) ?? new Map<string, readonly Slab[]>()
  known.set(block, byPlace)
  const place = `${width} ${air} ${before?.block === 'heading'}`
  const set = byPlace.get(place) ?? setAnew(block, width, air, before)
  byPlace.set(place, set)
  return set
}

function setAnew(block: Block, width: number, air: number, before: Block | undefined): readonly Slab[] {
  const gap = (before?.block === 'heading' ? 1.2 : 3.2) * air
  switch (block.block) {
    case 'job':
      return [job(block.name, block.says, width, gap)]
    case 'heading':
      return [heading(block.text, block.beside, width, 3.6 * air)]
    case 'paragraph':
      return paragraph(block.words, block.size, width, before?.block === 'heading' ? 0.6 : 2.4 * air)
    case 'caution':
      return [caution(block, width, gap, air)]
    case 'ticks':
      return block.inRow
        ? inRow(block.ticks.map(tickWords), { size: 11, width, gap })
        : block.ticks.map((tick, at) => tickSlab(tick, width, at === 0 ? 0.6 * gap : 0, air))
    case 'list':
      return block.entries.map((entry, at) =>
        entrySlab(entry, block.numbered ? `${at + 1}.` : '·', width, at === 0 ? gap : 0.6 * air),
      )
    case 'table':
      return tableSlabs(block, width, before?.block === 'heading' ? 0.5 : 2.6 * air, air)
    case 'picture': {
      const { picture } = block
      if (picture.width > width + 1e-6)
        throw new RangeError(`the picture '${picture.title}' is wider than its place: ${picture.width} over ${width}`)
      return [{ height: picture.height, gap, marks: [{ mark: 'picture', x: 0, y: 0, picture }] }]
    }
    case 'sums':
      return sums(block.sums, width, gap)
    case 'columns':
      return columns(block.columns, width, gap, air)
  }
}

function job(name: string, says: Words, width: number, gap: number): Slab {
  const signed = width > 150
  const left = signed ? 121 : width
  const top = setWords(name, { size: nameSize, bold: true }, width, 0, 0)
  const sentence = setWords(says, { size: 10.5 }, left, 0, top.height)
  const marks: Mark[] = [...top.marks, ...sentence.marks]
  let height = top.height + sentence.height
  if (signed) {
    const y = height - lineHeight(note) - 0.6
    const asked = (word: string, from: number, length: number): void => {
      marks.push(...setWords(word, { size: note }, 20, from, y).marks)
      const left = from + wordsWidth(word, { size: note }) + 3
      marks.push({ mark: 'line', from: [left, y + 3.8], to: [left + length, y + 3.8], width: boxed })
    }
    const [by, date] = [22, 18]
    const dated = width - date - 3 - wordsWidth('date', { size: note })
    asked('by', dated - 4 - by - 3 - wordsWidth('by', { size: note }), by)
    asked('date', dated, date)
  } else {
    const row = setWords(['by ', { blank: 20 }, ' date ', { blank: 18 }], { size: note }, width, 0, height + 1.5)
    marks.push(...row.marks)
    height += row.height + 1.5
  }
  return { height, gap, keep: true, marks }
}

/** A line with a slot let into it, and the words under it. */
function heading(text: string, beside: Words | undefined, width: number, gap: number): Slab {
  const [from, to, deep, top] = [4, 9.2, 2.6, 0.3]
  const line = (x1: number, y1: number, x2: number, y2: number): Mark => ({
    mark: 'line',
    from: [x1, y1],
    to: [x2, y2],
    width: slotted,
  })
  const title = linesOf([{ bold: text }], { size: 12.5 }, width)
  const set = stacked(title, 0, 2.9)
  const marks: Mark[] = [
    line(0, top, from, top),
    line(from, top, from, top + deep),
    line(from, top + deep, to, top + deep),
    line(to, top + deep, to, top),
    line(to, top, width, top),
    ...set.marks,
  ]
  let height = 2.9 + set.height
  if (beside !== undefined) {
    const own = wordsWidth(beside, { size: note })
    const last = title.at(-1)
    if (title.length === 1 && last && last.width + 4 + own <= width) {
      const [word] = last.marks
      const [line] = linesOf(beside, { size: note }, width)
      const [first] = line?.marks.filter((mark) => mark.mark === 'words') ?? []
      const down = word?.mark === 'words' && first?.mark === 'words' ? 2.9 + word.y - first.y : 2.9
      marks.push(...(line?.marks ?? []).map((mark) => moved(mark, last.width + 4, down)))
      height = Math.max(height, down + (line?.height ?? 0))
    } else {
      const under = setWords(beside, { size: note }, width, 0, height)
      marks.push(...under.marks)
      height += under.height
    }
  }
  return { height, gap, keep: true, marks }
}

function paragraph(words: Words, size: 'note' | 'large' | undefined, width: number, gap: number): readonly Slab[] {
  const dress = { size: size === 'note' ? note : size === 'large' ? large : body, bold: size === 'large' }
  const lines = linesOf(words, dress, width)
  return lines.map((line, at) => ({
    height: line.height,
    gap: at === 0 ? gap : 0,
    marks: line.marks,
    // Neither the first nor the last line stands alone.
    ...((at === 0 || at === lines.length - 2) && at < lines.length - 1 && { keep: true as const }),
  }))
}

type Caution = Extract<Block, { readonly block: 'caution' }>

/** A heavy rim, a black bar at its left, signal words bold and larger. */
function caution({ says, ticks = [] }: Caution, width: number, gap: number, air: number): Slab {
  const [bar, left, right] = [3, 6, 2.5]
  const inside = width - left - right
  const pad = 1 + 0.8 * air
  const marks: Mark[] = []
  let y = pad + heavy / 2
  for (const { signal, words } of says) {
    const runs = typeof words === 'string' ? [words] : words
    const set = setWords([{ large: signal }, ' ', ...runs], { size: body }, inside, left, y)
    marks.push(...set.marks)
    y += set.height
  }
  if (ticks.length > 0) {
    const rows = joined(inRow(ticks.map(boxBefore), { size: 9.5, width: inside, gap: 0, bold: true }))
    marks.push(...rows.marks.map((mark) => moved(mark, left, y + 0.4 * air)))
    y += rows.height + 0.4 * air
  }
  const height = y + pad + heavy / 2
  return {
    height,
    gap,
    keep: true,
    marks: [
      { mark: 'box', x: heavy / 2, y: heavy / 2, width: width - heavy, height: height - heavy, line: heavy, is: 'rim' },
      { mark: 'bar', x: 0, y: 0, width: bar, height },
      ...marks,
    ],
  }
}

const boxBefore = (words: Words): Words => [{ tick: true }, ' ', ...(typeof words === 'string' ? [words] : words)]
const tickWords = ({ words, blank }: Tick): Words => [
  ...(boxBefore(words) as Exclude<Words, string>),
  ...(blank ? ([' ', { blank: true }] as const) : []),
]

/** Things one after another, as many to a row as fit; none is parted unless it is longer than a row. */
function inRow(
  all: readonly Words[],
  { size, width, gap, bold = false }: { size: number; width: number; gap: number; bold?: boolean },
): readonly Slab[] {
  const apart = 3.9
  const rows: { words: Words; width: number }[][] = []
  let used = 0
  for (const words of all) {
    const own = Math.min(width, wordsWidth(words, { size, bold }))
    const row = rows.at(-1)
    if (row && used + apart + own <= width) {
      row.push({ words, width: own })
      used += apart + own
    } else {
      rows.push([{ words, width: own }])
      used = own
    }
  }
  return rows.map((row, at) => {
    let x = 0
    let height = 0
    const marks: Mark[] = []
    for (const each of row) {
      // A hair more than its own width: sums of widths differ in the last digit.
      const set = setWords(each.words, { size, bold }, each.width + 1e-6, x, 0)
      marks.push(...set.marks)
      height = Math.max(height, set.height)
      x += each.width + apart
    }
    return { height: height + 0.4, gap: at === 0 ? gap : 0.6, marks }
  })
}

/** A box, what is to be seen to, a line to write on at the right. */
function tickSlab({ words, blank }: Tick, width: number, gap: number, air: number): Slab {
  const left = tickBox + 2.6
  const right = blank ? blankLine + 3 : 0
  const above = 0.5 + 0.8 * air
  const set = setWords(words, { size: body }, width - left - right, left, above)
  const height = Math.max(set.height, tickBox + 0.6) + 2 * above
  const down = (height - set.height) / 2 - above
  const low = height - above - 0.4
  return {
    height,
    gap,
    marks: [
      {
        mark: 'box',
        x: boxed / 2,
        y: (height - tickBox) / 2,
        width: tickBox,
        height: tickBox,
        line: boxed,
        is: 'tick',
      },
      ...set.marks.map((mark) => moved(mark, 0, down)),
      ...(blank ? [{ mark: 'line', from: [width - blankLine, low], to: [width, low], width: boxed } as const] : []),
      { mark: 'line', from: [0, height], to: [width, height], width: thin },
    ],
  }
}

function entrySlab(words: Words, sign: string, width: number, gap: number): Slab {
  const left = sign === '·' ? 3.5 : 6
  const set = setWords(words, { size: body }, width - left, left, 0)
  const own = setWords(sign, { size: body }, left, 0, 0)
  return { height: set.height, gap, marks: [...own.marks, ...set.marks] }
}

type Columns = Extract<Block, { readonly block: 'columns' }>['columns']

/** Side by side where they fit a side of the sheet, else under one another. */
function columns(all: Columns, width: number, gap: number, air: number): readonly Slab[] {
  const fixed = all.reduce((sum, column) => sum + (column.width ?? 0), 0)
  const sharing = all.filter((column) => column.width === undefined).length
  const share = (width - fixed - between * (all.length - 1)) / Math.max(1, sharing)
  let x = 0
  const laid = all.map((column) => {
    const own = column.width ?? share
    const set = joined(slabsOf(column.blocks, own, air))
    const at = x
    x += own + between
    return { at, set }
  })
  const height = Math.max(0, ...laid.map(({ set }) => set.height))
  if (x - between > width + 1e-6 || height > matter.height - 30)
    return all.flatMap((column, at) =>
      slabsOf(column.blocks, width, air).map((slab, index) => (at > 0 && index === 0 ? { ...slab, gap } : slab)),
    )
  return [{ height, gap, marks: laid.flatMap(({ at, set }) => set.marks.map((mark) => moved(mark, at, 0))) }]
}
