/** A card laid onto sides of paper: 186 × 252 mm of matter, so that A4 and Letter break alike. */
import { slabsOf } from './blocks.ts'
import type { Block, Card, Leaf, Side, Words } from './document.ts'
import { fitting, widthOf } from './letters.ts'
import { lineHeight, linesOf } from './lines.ts'
import { type Mark, moved, type Slab } from './marks.ts'
import { setWords } from './stack.ts'
import { body, boxed, heavy, matter, note, small, thin } from './type.ts'

/** A side of paper before the paper is known: marks from the matter's upper left corner. */
export interface PrintedSide {
  readonly leaf: Leaf
  /** `Machine leaf, side 1: set up` */
  readonly title: string
  /** Counted from 1 through the whole card. */
  readonly number: number
  readonly of: number
  readonly marks: readonly Mark[]
  /** How loosely it is set: 1 is loose, 0.45 close. */
  readonly air: number
  /** Where its matter ends, mm from the top. */
  readonly used: number
  readonly deferral: string
  /** Whether lines for notes may stand in what is left. */
  readonly ends: boolean
}

/** Paper upright, mm. */
export interface Paper {
  readonly name: 'A4' | 'Letter'
  readonly width: number
  readonly height: number
}

export const papers = {
  A4: { name: 'A4', width: 210, height: 297 },
  Letter: { name: 'Letter', width: 215.9, height: 279.4 },
} as const satisfies Record<Paper['name'], Paper>

/** mm: free over the matter, and from the foot's line to its end; both papers have this much. */
const margins = { top: 12, bottom: 8 }
const footHeight = 7.4
/** From loose to close: the loosest that needs the fewest sides is taken. */
const airs = [1, 0.8, 0.6, 0.45]

/**
 * The sides of a card. Each leaf starts on a fresh sheet, each side of it on a fresh side; what does not fit a side goes on to the next.
 * @throws RangeError when a picture is wider than its place or a single block is taller than a side.
 */
export function flow(card: Card): readonly PrintedSide[] {
  const sides = card.leaves.flatMap((leaf) => leaf.sides.flatMap((side, at) => printed(card, leaf, side, at)))
  return sides.map((side, at) => ({ ...side, number: at + 1, of: sides.length }))
}

interface Setting {
  readonly air: number
  readonly pages: readonly (readonly Slab[])[]
  readonly titleOf: (page: number) => string
  /** Of the first page, and of those that go on. */
  readonly heads: readonly ReturnType<typeof headOf>[]
}

/** A side of a leaf dealt out to pages. */
function dealt(card: Omit<Card, 'leaves'>, leaf: Leaf, side: Side, at: number): Setting {
  const signed = side.blocks.some(({ block }: Block) => block === 'job')
  const counted = leaf.sides.length > 1 ? `, side ${at + 1}` : ''
  const titleOf = (page: number): string => `${leaf.title}${counted}${page > 0 ? ', continued' : ''}: ${side.title}`
  const heads = [0, 1].map((page) => headOf(card, titleOf(page), signed && page === 0))
  const room = matter.height - Math.max(...heads.map(({ height }) => height))
  return { ...setTo(room, side), titleOf, heads }
}

function printed(card: Card, leaf: Leaf, side: Side, at: number): readonly Omit<PrintedSide, 'number' | 'of'>[] {
  const { air, pages, titleOf, heads } = dealt(card, leaf, side, at)
  return pages.map((slabs, page) => {
    const head = heads[Math.min(page, 1)]
    const marks: Mark[] = [...(head?.marks ?? [])]
    let down = head?.height ?? 0
    for (const slab of slabs) {
      down += slab.gap
      marks.push(...slab.marks.map((mark) => moved(mark, 0, down)))
      down += slab.height
    }
    return {
      leaf,
      title: titleOf(page),
      marks,
      air,
      used: down,
      deferral: card.deferral,
      ends: page === pages.length - 1,
    }
  })
}

type Set = Pick<Setting, 'air' | 'pages'>
/** What was set of a side, by the room on its pages: it is asked for when a side is chosen, and by every writer. */
const known = new WeakMap<Side, Map<number, Set>>()

/** A side as loosely as it may be on as few pages as it can. */
function setTo(room: number, side: Side): Set {
  const byRoom = known.get(side) ?? new Map<number, Set>()
  known.set(side, byRoom)
  let best = byRoom.get(room)
  if (best) return best
  for (const air of airs) {
    const pages = paged(slabsOf(side.blocks, matter.width, air), room)
    if (!best || pages.length < best.pages.length) best = { air, pages }
    if (pages.length === 1) break
  }
  best ??= { air: 1, pages: [] }
  byRoom.set(room, best)
  return best
}

/** On how many sides of paper a side of a leaf comes out. */
export const sidesTaken = (card: Omit<Card, 'leaves'>, leaf: Leaf, side: Side): number =>
  dealt(card, leaf, side, 0).pages.length

/** How loosely each side of a card is set, in order: for writers that lay it themselves and want it to break alike. */
export const airsOf = (card: Card): readonly number[] =>
  card.leaves.flatMap((leaf) => leaf.sides.map((side, at) => dealt(card, leaf, side, at).air))

/** Slabs that hang together. */
function groupsOf(slabs: readonly Slab[]): readonly (readonly Slab[])[] {
  const groups: Slab[][] = []
  let open = false
  for (const slab of slabs) {
    const group = groups.at(-1)
    if (open && group) group.push(slab)
    else groups.push([slab])
    open = slab.keep ?? false
  }
  return groups
}

/** Slabs dealt out to pages `room` mm high; a group that is taller than a page is parted after all. */
function paged(slabs: readonly Slab[], room: number): readonly (readonly Slab[])[] {
  const pages: Slab[][] = [[]]
  let used = 0
  const heightOf = (group: readonly Slab[], first: boolean): number =>
    group.reduce((sum, slab, at) => sum + slab.height + (first && at === 0 ? 0 : slab.gap), 0)
  const put = (group: readonly Slab[]): void => {
    const page = pages.at(-1)
    for (const slab of group) {
      const first = page?.length === 0
      const placed = first ? { ...slab, gap: 0 } : slab
      page?.push(placed)
      used += placed.height + placed.gap
    }
  }
  for (const group of groupsOf(slabs)) {
    if (used + heightOf(group, used === 0) <= room + 1e-9) put(group)
    else if (heightOf(withHead(group), true) <= room + 1e-9) {
      pages.push([])
      used = 0
      put(withHead(group))
    } else
      for (const slab of group) {
        if (slab.height > room + 1e-9)
          throw new RangeError(`taller than a side of the card: ${slab.height} over ${room}`)
        if (used + slab.height + slab.gap > room + 1e-9) {
          pages.push([])
          used = 0
          put(withHead([slab]))
        } else put([slab])
      }
  }
  return pages
}

const withHead = (group: readonly Slab[]): readonly Slab[] => {
  const again = group[0]?.again
  return again ? [again, ...group] : group
}

/** What stands at the right of a side's head, `room` mm wide: the units always, the name and what it is as far as they fit. */
function rightOf(card: Omit<Card, 'leaves'>, signed: boolean, room: number): Words {
  const units = `, ${card.units}`
  if (signed) return `borewright${units}`
  const free = room - widthOf(units, note)
  const name = fitting(card.name, note, free, true)
  const rest = free - widthOf(name, note, true)
  const about = rest > 15 ? fitting(`, ${card.about}`, note, rest) : ''
  return [{ bold: name }, about + units]
}

/** The line at the head of a side, and the heavy box of a job that is not sound. */
function headOf(
  card: Omit<Card, 'leaves'>,
  title: string,
  signed: boolean,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const left = setWords(
    [{ bold: 'Job card' }, `, ${title.charAt(0).toLowerCase()}${title.slice(1)}`],
    { size: note },
    130,
    0,
    0,
  )
  const [set] = linesOf(rightOf(card, signed, matter.width - left.width - 6), { size: note }, matter.width)
  const rule = left.height + 0.6
  const marks: Mark[] = [
    ...left.marks,
    ...(set?.marks ?? []).map((mark) => moved(mark, matter.width - (set?.width ?? 0), 0)),
    { mark: 'line', from: [0, rule], to: [matter.width, rule], width: boxed },
  ]
  let height = rule + 1.6
  if (card.notSound?.length) {
    const words = setWords(
      [{ large: 'NOT SOUND' }, ' Made although this is broken: ', { bold: card.notSound.join(', ') }],
      { size: body },
      matter.width - 8,
      4,
      height + 1.6,
    )
    const tall = words.height + 3.2
    marks.push(
      {
        mark: 'box',
        x: heavy,
        y: height + heavy,
        width: matter.width - 2 * heavy,
        height: tall - 2 * heavy,
        line: 2 * heavy,
        is: 'rim',
      },
      ...words.marks,
    )
    height += tall + 2
  }
  return { marks, height }
}

/** What stands on the paper itself: marks from its upper left corner. */
export interface Page {
  readonly side: PrintedSide
  readonly paper: Paper
  readonly marks: readonly Mark[]
}

/**
 * A side on its paper: matter, lines for notes in what is left, and the foot.
 * @param count `side 1 of 5` when left out; a packet counts its own pages.
 */
export function onPaper(side: PrintedSide, paper: Paper, count?: string): Page {
  const left = (paper.width - matter.width) / 2
  const foot = paper.height - margins.bottom - footHeight
  const marks = side.marks.map((mark) => moved(mark, left, margins.top))
  return {
    side,
    paper,
    marks: [
      ...marks,
      ...(side.ends ? notes(margins.top + side.used, foot).map((mark) => moved(mark, left, 0)) : []),
      ...footOf(side, count ?? `side ${side.number} of ${side.of}`).map((mark) => moved(mark, left, foot)),
    ],
  }
}

/** Lines to write on, at most four, where at least one has room. */
function notes(from: number, to: number): readonly Mark[] {
  const top = from + 3
  const first = top + lineHeight(note)
  const apart = 7
  const count = Math.min(4, Math.floor((to - 3 - first) / apart + 1e-9))
  if (count < 1) return []
  const marks: Mark[] = [...setWords('Notes', { size: note }, 30, 0, top).marks]
  for (let at = 1; at <= count; at++) {
    const y = first + at * apart - 2
    marks.push({ mark: 'line', from: [0, y], to: [matter.width, y], width: thin })
  }
  return marks
}

/** The deferral, the count, and a line of 50 mm. */
function footOf(side: PrintedSide, count: string): readonly Mark[] {
  const line = 50
  const from = matter.width - line
  const deferral = setWords(side.deferral, { size: small }, 112, 0, 0.8)
  const own = widthOf(count, note)
  const label = '50 mm if printed true'
  const y = 5.6
  return [
    { mark: 'line', from: [0, 0], to: [matter.width, 0], width: thin },
    ...deferral.marks,
    ...setWords(count, { size: note }, own + 1, from - own - 5, 1.9).marks,
    ...setWords(label, { size: small }, line, from + (line - widthOf(label, small)) / 2, 1.4).marks,
    { mark: 'line', from: [from, y], to: [from + line, y], width: 0.25 },
    { mark: 'line', from: [from, y - 1.1], to: [from, y + 1.1], width: 0.25 },
    { mark: 'line', from: [from + line, y - 1.1], to: [from + line, y + 1.1], width: 0.25 },
  ]
}
