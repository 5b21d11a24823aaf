/** Lays the views and notes of a part on sheets: the largest scale that goes on one sheet, then more sheets, and last of all letters. */
import { type Ask, type Block, scaleWords, solve } from './block.ts'
import { drawBand, drawFrameOf, drawTitleBlock, tooLong } from './furniture.ts'
import { legible } from './letters.ts'
import { inWords, type Manner } from './numbers.ts'
import { Columns, inProjection, pack, type Packed } from './pack.ts'
import { bandHeight, type Paper, paperOf, tableBox, titleBox } from './paper.ts'
import { chords, edgesOf } from './plane.ts'
import type { Sheet, SheetDimension, Stroke } from './sheet.ts'
import { moved } from './strokes.ts'
import { type Style, styles } from './style.ts'
import { type SetTable, setTable } from './table.ts'
import type { Drawing, Notes, View, Worth } from './view.ts'

/** How sheets are drawn, and what stands on every one of them. */
export interface Drafting {
  readonly convention: 'iso' | 'asme'
  readonly units: 'mm' | 'in'
  readonly paper: 'A4' | 'Letter'
  readonly projection: 'first' | 'third'
  readonly decimal?: 'point' | 'comma'
  /** Before the drawing number's tail: `cider-mill-pulley`. */
  readonly job: string
  /** First digits of the spec's checksum. */
  readonly checksum: string
  /** `sound, 1 caution` */
  readonly verdict: string
  /** Across the head of every sheet: `DO NOT MAKE: …` */
  readonly band?: string
}

/** Number of the first sheet, and of all sheets of the set. */
export interface Numbering {
  readonly first: number
  readonly of: number
}

/** A sheet's body: what is laid out before sheets are counted. */
interface Body {
  readonly paper: Paper
  readonly packed: Packed
  readonly scale: string
  readonly table: boolean
}

export interface Bodies {
  readonly drawing: Drawing
  readonly bodies: readonly Body[]
  readonly lettered: boolean
}

const program = 'borewright'

/** Views not larger than this, mm, so that a small plain part does not become a poster. */
const largest = 150

interface Reach {
  readonly width: number
  readonly height: number
}

/** Width and height of the bare view, full size. */
function reachOf(view: View): Reach {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
  const reach = (x: number, y: number): void => {
    left = Math.min(left, x)
    right = Math.max(right, x)
    low = Math.min(low, y)
    high = Math.max(high, y)
  }
  for (const mark of view.marks) {
    if (mark.mark === 'line') for (const at of [mark.from, mark.to]) reach(at[0], at[1])
    else if (mark.mark === 'arc') for (const at of chords(mark, mark.radius * 0.02)) reach(at[0], at[1])
    else if (mark.mark === 'outline')
      for (const edge of edgesOf(mark.outline, mark.closed !== false))
        for (const at of edge.straight ? [edge.a, edge.b] : chords(edge, edge.radius * 0.02)) reach(at[0], at[1])
  }
  return right >= left ? { width: right - left, height: high - low } : { width: 0, height: 0 }
}

/** A part's views, told apart by how they are placed. */
function sorted(drawing: Drawing): { front?: View; aligned: View[]; loose: View[] } {
  const front = drawing.views.find((view) => view.place.is === 'front')
  const aligned: View[] = []
  const loose: View[] = []
  for (const view of drawing.views) {
    if (view === front) continue
    const together = view.place.is === 'seen' || (view.place.is === 'section' && view.place.aligned)
    if (together && front) aligned.push(view)
    else loose.push(view)
  }
  return { ...(front && { front }), aligned, loose }
}

/** The scale of a view that has its own: details and sections of an end. `down` steps below what its rule asks for. */
function ownScale(view: View, main: number, down: number, style: Style): number {
  const { place } = view
  if (place.is === 'detail') {
    const larger = style.detailScales.filter((scale) => scale > main).toReversed()
    const fits = larger.filter((scale) => !place.clip || 2 * place.clip.radius * scale <= 45)
    const wanted = fits.findIndex((scale) => place.least * scale >= 3 - 1e-9)
    const index = wanted < 0 ? fits.length - 1 : wanted
    const smaller = fits[index - down]
    return (smaller !== undefined && place.least * smaller >= 2 ? smaller : fits[index]) ?? main
  }
  if (place.is === 'section' && !place.aligned && place.least !== undefined) {
    const { least } = place
    const steps = style.scales
      .filter((scale) => scale >= main)
      .toReversed()
      .slice(0, 3)
    const index = steps.findIndex((scale) => least * scale >= 25 - 1e-9)
    return steps[Math.max(0, (index < 0 ? steps.length - 1 : index) - down)] ?? main
  }
  return main
}

class Layout {
  private readonly solvedViews = new Map<string, Block>()
  private readonly reaches = new Map<View, Reach>()
  private readonly columns: Columns
  private readonly tables = new Map<number, SetTable>()
  readonly style: Style
  readonly manner: Manner
  readonly drawing: Drawing
  readonly drafting: Drafting
  letters: ReadonlyMap<string, string> | undefined

  constructor(drawing: Drawing, drafting: Drafting) {
    this.drawing = drawing
    this.drafting = drafting
    this.style = styles[drafting.convention]
    this.manner = drafting
    this.columns = new Columns(this.style, this.manner)
  }

  reach(view: View): Reach {
    const known = this.reaches.get(view) ?? reachOf(view)
    this.reaches.set(view, known)
    return known
  }

  block(view: View, scale: number, main: number, broken: boolean, forced = false): Block {
    const key = `${this.drawing.views.indexOf(view)} ${scale} ${scale !== main} ${broken} ${this.letters !== undefined} ${forced}`
    const known = this.solvedViews.get(key)
    if (known) return known
    const ask: Ask = { scale, named: scale !== main, broken, forced, ...(this.letters && { letters: this.letters }) }
    const block = solve(view, ask, this.style, this.manner)
    this.solvedViews.set(key, block)
    return block
  }

  /** The table of sizes as made, set for this paper. */
  table(paper: Paper): SetTable {
    const box = tableBox(paper, 36)
    const width = box.x2 - box.x1
    const known = this.tables.get(width) ?? setTable(this.drawing.asMade, width, this.manner)
    this.tables.set(width, known)
    return known
  }

  /** Packs views and notes on one sheet; `undefined` when they do not fit, or when a view could not be solved at this scale. */
  onOne(ask: {
    scale: number
    broken: boolean
    down: number
    landscape: boolean
    front?: View
    aligned: readonly View[]
    loose: readonly View[]
    notes: readonly Notes[]
    table: boolean
    forced?: boolean
  }): Body | undefined {
    const { scale, broken, drafting } = { ...ask, drafting: this.drafting }
    const paper = paperOf(drafting.paper, ask.landscape)
    const title = titleBox(paper)
    const table = ask.table && this.drawing.asMade.rows.length > 0
    const reserved = [title, ...(table ? [tableBox(paper, this.table(paper).height)] : [])]
    const top = paper.frame.y2 - (drafting.band === undefined ? 0 : bandHeight)
    const [wide, high] = [paper.frame.x2 - paper.frame.x1 - 8, top - title.y2 - 8]
    const first = ask.front && this.reach(ask.front)
    if (first && ask.front && !ask.forced) {
      const beside = ask.aligned.filter((view) => horizontal(view))
      const stacked = ask.aligned.filter((view) => !horizontal(view))
      const shorter = broken ? Math.min(first.width, 150 / scale) : first.width
      const across = shorter * scale + strips(ask.front, 'left', 'right')
      const up = first.height * scale + strips(ask.front, 'top', 'bottom')
      const wider = (sum: number, view: View): number =>
        sum + this.reach(view).width * scale + 9 + strips(view, 'left', 'right')
      const higher = (sum: number, view: View): number =>
        sum + this.reach(view).height * scale + 9 + strips(view, 'top', 'bottom')
      if (beside.reduce(wider, across) > wide || stacked.reduce(higher, up) > high) return undefined
    }
    const blocks = ask.aligned.map((view) => this.block(view, scale, scale, broken, ask.forced))
    const loose = ask.loose.map((view) =>
      this.block(view, ownScale(view, scale, ask.down, this.style), scale, broken, ask.forced),
    )
    const front = ask.front && this.block(ask.front, scale, scale, broken, ask.forced)
    if (!ask.forced && [front, ...blocks, ...loose].some((block) => block && !block.solved)) return undefined
    const clusters = front ? inProjection(front, blocks, drafting.projection) : []
    const packed = pack(clusters, loose, ask.notes, paper, reserved, top, this.columns)
    const scales = new Set([...(front ? [front] : []), ...blocks].map((block) => block.scale))
    if (packed) return { paper, packed, scale: scaleWords([...scales][0] ?? scale), table }
    return undefined
  }
}

/** The least that strips on these sides add to a view, mm. */
const strips = (view: View, ...sides: readonly string[]): number =>
  12 *
  sides.filter((side) => view.callouts.some((callout) => callout.callout === 'linear' && callout.side === side)).length

const horizontal = (view: View): boolean =>
  (view.place.is === 'seen' || view.place.is === 'section') &&
  (view.place.from === 'left' || view.place.from === 'right')

/** Notes of a drawing, with what the title block had to shorten. */
function notesOf(layout: Layout): Notes[] {
  const { drawing, drafting } = layout
  const long = tooLong(
    {
      drawing,
      number: numberOf(drawing, drafting),
      sheet: '99 of 99',
      scale: '10 : 1',
      projection: drafting.projection,
      units: drafting.units,
      trace: '',
    },
    layout.style,
    layout.manner,
  )
  const notes = drawing.notes.filter((block) => block.lines.length > 0)
  if (long.length === 0) return notes
  return [...notes, { heading: 'IN FULL', lines: long.map(([name, words]) => [`${name}: ${words}`]) }]
}

const numberOf = (drawing: Drawing, { job }: Drafting): string => `${legible(job)}-${drawing.number}`

/** Sheets of a drawing without what needs their number: chosen scale, placed views, notes. */
export function bodiesOf(drawing: Drawing, drafting: Drafting): Bodies {
  const layout = new Layout(drawing, drafting)
  const notes = notesOf(layout)
  const { front, aligned, loose } = sorted(drawing)
  const { scales } = layout.style
  const whole = front ? [front, ...aligned] : loose
  const worthwhile = scales.filter(
    (scale) =>
      scale <= 1 ||
      whole.every((view) => Math.max(layout.reach(view).width, layout.reach(view).height) * scale <= largest),
  )
  const breakable = drawing.views.some((view) => (view.breaks ?? []).length > 0)
  const tries = worthwhile.flatMap((scale) =>
    (breakable && scale <= 1 ? [false, true] : [false]).flatMap((broken) =>
      [true, false].flatMap((landscape) => [0, 1].map((down) => ({ scale, broken, landscape, down }))),
    ),
  )
  const views = { ...(front && { front }), aligned, loose }
  // The largest scale at which the views alone fit says how far the notes may press it down: one step. Then the last notes go to a sheet of
  // their own, cautions never; then details and sections.
  const bare = tries.find((ask) => layout.onOne({ ...ask, ...views, notes: [], table: true }))
  const most = bare?.scale ?? 0
  const least = most / 2.6
  const [cautions, others] = [notes.filter((block) => block.caution), notes.filter((block) => !block.caution)]
  for (let left = bare ? others.length : -1; left >= 0; left--) {
    const here = [...others.slice(0, left), ...cautions]
    for (const ask of tries) {
      if (ask.scale > most || ask.scale < least) continue
      const body = layout.onOne({ ...ask, ...views, notes: here, table: true })
      if (!body) continue
      const rest = continued(layout, [], others.slice(left), ask.scale)
      if (rest) return { drawing, bodies: [body, ...rest], lettered: false }
    }
  }
  for (const ask of front ? tries : []) {
    const body = layout.onOne({ ...ask, ...views, loose: [], notes: cautions, table: true })
    const rest = body && continued(layout, loose, others, ask.scale)
    if (body && rest) return { drawing, bodies: [body, ...rest], lettered: false }
  }
  return lettered(layout, notes, tries)
}

/** Sheets that hold loose views and notes, as many as it takes; `undefined` when a view does not fit on an empty sheet. */
function continued(layout: Layout, views: readonly View[], notes: readonly Notes[], main: number): Body[] | undefined {
  const bodies: Body[] = []
  let loose = [...views]
  let left = notes.flatMap((block) => split(block, 14))
  while (loose.length > 0 || left.length > 0) {
    let best: { body: Body; loose: number; notes: number } | undefined
    search: for (let n = loose.length; n >= 0; n--)
      for (let m = left.length; m >= 0; m--) {
        if (n + m === 0) continue
        if (m > 0 && n < loose.length) continue
        for (const down of [0, 1]) {
          const body = layout.onOne({
            scale: main,
            broken: false,
            down,
            landscape: true,
            aligned: [],
            loose: loose.slice(0, n),
            notes: left.slice(0, m),
            table: false,
          })
          if (body) {
            best = { body, loose: n, notes: m }
            break search
          }
        }
      }
    if (!best) return undefined
    bodies.push(best.body)
    loose = loose.slice(best.loose)
    left = left.slice(best.notes)
  }
  return bodies
}

/** A long block of notes in parts of so many lines, so that each part goes on a sheet. */
function split(block: Notes, lines: number): Notes[] {
  if (block.lines.length <= lines || block.numbered) return [block]
  const parts: Notes[] = []
  for (let i = 0; i < block.lines.length; i += lines) parts.push({ ...block, lines: block.lines.slice(i, i + lines) })
  return parts
}

/** Last resort: letters on the views, and a table that says what each stands for. */
function lettered(
  layout: Layout,
  notes: readonly Notes[],
  tries: readonly { scale: number; broken: boolean; landscape: boolean; down: number }[],
): Bodies {
  const { drawing, manner } = layout
  const letters = new Map<string, string>()
  const lines: string[] = []
  for (const view of drawing.views)
    for (const callout of view.callouts) {
      const known = letters.get(callout.of)
      if (known !== undefined) continue
      const letter = letterOf(letters.size)
      letters.set(callout.of, letter)
      const said: readonly (string | Worth)[] =
        callout.callout === 'leader'
          ? callout.lines.flatMap((line, index) => (index > 0 ? [' ', ...line] : line))
          : [callout.worth]
      lines.push(`${letter}   ${inWords(said, manner)}`)
    }
  layout.letters = letters
  const table: Notes = { heading: 'SIZES', lines: lines.map((line) => [line]) }
  const { front, aligned, loose } = sorted(drawing)
  const views = { ...(front && { front }), aligned, loose }
  const all = [table, ...notes]
  for (const ask of tries) {
    const body = layout.onOne({ ...ask, ...views, notes: all, table: true })
    if (body) return { drawing, bodies: [body], lettered: true }
  }
  for (const forced of [false, true])
    for (const ask of tries) {
      const body = layout.onOne({ ...ask, ...views, loose: [], notes: [], table: true, forced })
      if (!body) continue
      const rest = continued(layout, front ? loose : [], all, ask.scale)
      if (rest) return { drawing, bodies: [body, ...rest], lettered: true }
    }
  // Not even that: the views as they come, one a sheet, from the upper left corner.
  const last = tries.at(-1) ?? { scale: 0.1, broken: false, landscape: true, down: 0 }
  const paper = paperOf(layout.drafting.paper, true)
  const bodies = drawing.views.map((view): Body => {
    const block = layout.block(view, last.scale, last.scale, last.broken, true)
    return {
      paper,
      packed: {
        blocks: [{ block, x: paper.frame.x1 + 4 - block.left, y: paper.frame.y2 - 14 - block.high }],
        columns: [],
      },
      scale: scaleWords(last.scale),
      table: false,
    }
  })
  return { drawing, bodies: [...bodies, ...(continued(layout, [], all, last.scale) ?? [])], lettered: true }
}

/** a … z, then aa, ab … */
const letterOf = (index: number): string =>
  (index >= 26 ? String.fromCharCode(96 + Math.floor(index / 26)) : '') + String.fromCharCode(97 + (index % 26))

/** Finishes laid-out bodies: frame, title block, table, numbers. */
export function sheetsOf({ drawing, bodies }: Bodies, drafting: Drafting, numbering: Numbering): Sheet[] {
  const style = styles[drafting.convention]
  const manner: Manner = drafting
  const number = numberOf(drawing, drafting)
  const trace = `${program} · spec ${drafting.checksum} · ${drafting.verdict}`
  return bodies.map((body, index): Sheet => {
    const { paper } = body
    const words = {
      drawing,
      number,
      sheet: `${numbering.first + index} of ${numbering.of}`,
      scale: body.scale,
      projection: drafting.projection,
      units: drafting.units,
      trace,
    }
    const strokes: Stroke[] = [...drawFrameOf(paper, trace), ...drawTitleBlock(paper, words, style, manner)]
    if (body.table) {
      const set = setTable(drawing.asMade, tableBox(paper, 0).x2 - tableBox(paper, 0).x1, manner)
      strokes.push(...set.draw(tableBox(paper, set.height)))
    }
    if (drafting.band !== undefined) strokes.push(...drawBand(paper, drafting.band))
    const dimensions: SheetDimension[] = []
    for (const { block, x, y } of body.packed.blocks) {
      const first = strokes.length
      const ink = block.ink()
      for (const stroke of ink.strokes) strokes.push(moved(stroke, x, y))
      for (const dimension of ink.dimensions)
        dimensions.push({
          ...dimension,
          points: dimension.points.map(([px, py]) => [px + x, py + y] as const),
          line: [dimension.line[0] + x, dimension.line[1] + y],
          textAt: [dimension.textAt[0] + x, dimension.textAt[1] + y],
          strokes: dimension.strokes.map((stroke) => stroke + first),
        })
    }
    for (const { column, x, y } of body.packed.columns)
      for (const stroke of column.strokes) strokes.push(moved(stroke, x, y))
    return {
      number,
      title: drawing.title,
      part: drawing.part,
      paper: { name: paper.name, width: paper.width, height: paper.height },
      strokes,
      dimensions,
    }
  })
}

/** The sheets of one part. They number themselves where `numbering` is left out. Never an exception for a part that can be drawn at all. */
export function lay(drawing: Drawing, drafting: Drafting, numbering?: Numbering): Sheet[] {
  const bodies = bodiesOf(drawing, drafting)
  return sheetsOf(bodies, drafting, numbering ?? { first: 1, of: bodies.bodies.length })
}
