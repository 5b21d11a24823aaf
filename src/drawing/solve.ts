/** Places the callouts of one view on unlimited paper: strips of linear dimensions, then angles, then leaders. */
import { drawAngle, type PreparedAngle, waysOfAngle } from './angle.ts'
import { type Label, labelOf, labelOfWorth } from './label.ts'
import { drawLeader, leaning, type PreparedLeader, reaches } from './leader.ts'
import { drawLinear, type Form, formsOf, type Prepared, prepareLinear } from './linear.ts'
import type { Drawn } from './marks.ts'
import type { Manner } from './numbers.ts'
import type { OntoPaper } from './onto-paper.ts'
import { clearOfItself, costOf, is, Piece } from './piece.ts'
import { cross, degrees, edgesOf, enters, radians } from './plane.ts'
import type { Style } from './style.ts'
import type { Angle, Box, Callout, Leader, Linear, View } from './view.ts'
import { frameOf } from './writing.ts'

export interface Placed {
  readonly callout: Callout
  readonly piece: Piece
  readonly words: string
  /** A point of the dimension line or arc, for live dimensions; absent for leaders. */
  readonly line?: readonly [number, number]
  readonly points?: readonly (readonly [number, number])[]
}

export interface Solving {
  readonly view: View
  readonly paper: OntoPaper
  readonly drawn: Drawn
  /** Marks and stand-offs that are there before any callout. */
  readonly standing: readonly Piece[]
  readonly metal: readonly Box[]
  readonly style: Style
  readonly manner: Manner
  /** Letters in place of sizes, by the callout's name. */
  readonly letters?: ReadonlyMap<string, string>
  /** Go on where something has no room, and put it where it does least harm. */
  readonly forced?: boolean
}

interface Lane {
  readonly side: Linear['side']
  readonly line: number
  readonly low: number
  readonly high: number
  readonly t1: number
  readonly t2: number
  /** The area between outline and dimension line, on paper. */
  readonly box: Box
  readonly of: string
}

interface Strip {
  readonly piece: Piece
  readonly lane: Lane
  readonly line: [number, number]
}

const step = 0.5
const farthest = 60

/**
 * All callouts of a view placed. `solved` is false where one had to be forced, `blocked` is true where that was a linear dimension whose way
 * out the marks shut.
 */
export function place(solving: Solving): {
  readonly placed: Placed[]
  readonly solved: boolean
  readonly blocked: boolean
} {
  const { view, paper, style, manner } = solving
  const field: Piece[] = [solving.drawn.field, ...solving.standing]
  const placed: Placed[] = []
  let solved = true
  let blocked = false
  const labelFor = (callout: Linear | Angle): Label => {
    const letter = solving.letters?.get(callout.of)
    return letter === undefined
      ? labelOfWorth(callout.worth, manner, style.text)
      : labelOf([letter], manner, style.text)
  }
  const tips = view.callouts.flatMap((callout) => (callout.callout === 'leader' ? callout.tips.slice(0, 1) : []))
  const tipsOnPaper = tips.map((tip) => paper.at(tip.at))

  // Strips.
  const lanes: Lane[] = []
  const linears = view.callouts.filter((callout) => callout.callout === 'linear')
  for (const side of ['bottom', 'top', 'left', 'right'] as const) {
    const own = linears
      .filter((callout) => callout.side === side)
      .map((callout) => prepared(callout, solving, labelFor(callout)))
      .toSorted((a, b) => a.t2 - a.t1 - (b.t2 - b.t1) || a.t1 - b.t1)
    // One whose way is shut goes first the next time round.
    let order = own
    const rounds = Math.min(own.length, 5)
    for (let round = 0; ; round++) {
      const done: { strip: Prepared; found: Strip }[] = []
      let shut: Prepared | undefined
      for (const strip of order) {
        const around = [...field, ...done.map(({ found }) => found.piece)]
        const beside = [...lanes, ...done.map(({ found }) => found.lane)]
        let found = placeLinear(strip, side, around, beside, tipsOnPaper, style, farthest)
        if (!found && round >= rounds)
          found = placeLinear(strip, side, around, beside, tipsOnPaper, style, 4 * farthest)
        if (!found && round < rounds) {
          shut = strip
          break
        }
        if (!found) blocked = true
        found ??= drawnLinear(strip, side, style, style.first + 8 * beside.length, formsOf(style, strip).at(-1)!)
        done.push({ strip, found })
      }
      if (shut) {
        order = [shut, ...order.filter((strip) => strip !== shut)]
        continue
      }
      for (const { strip, found } of done) {
        field.push(found.piece)
        lanes.push(found.lane)
        const { t1, t2, foot1, foot2 } = strip
        placed.push({
          callout: strip.callout,
          piece: found.piece,
          words: strip.label.words,
          line: found.line,
          points:
            strip.axis === 'x'
              ? [
                  [t1, foot1],
                  [t2, foot2],
                ]
              : [
                  [foot1, t1],
                  [foot2, t2],
                ],
        })
      }
      break
    }
  }

  if (blocked && !solving.forced) return { placed, solved: false, blocked }

  // Angles; what has no room for an arc is said by a leader to its second arm.
  const leaders: Leader[] = view.callouts.filter((callout) => callout.callout === 'leader')
  const instead = new Map<Leader, Angle>()
  for (const callout of view.callouts) {
    if (callout.callout !== 'angle') continue
    const found = placeAngle(callout, solving, labelFor(callout), field, lanes)
    if (found) {
      field.push(found.piece)
      placed.push(found)
      continue
    }
    const leader = leaderOf(callout, solving)
    instead.set(leader, callout)
    leaders.push(leader)
  }

  // Leaders, widest first; one without room throws another out.
  const queue = leaders
    .map((callout) => ({ callout, prepared: preparedLeader(callout, solving) }))
    .toSorted((a, b) => b.prepared.width - a.prepared.width || b.prepared.labels.length - a.prepared.labels.length)
  const standing: { callout: Leader; prepared: PreparedLeader; piece: Piece }[] = []
  let moves = leaders.length > 20 ? 4 : 24
  while (queue.length > 0) {
    const next = queue.shift()!
    const others = standing.map((other) => other.piece)
    let found = placeLeader(next.prepared, [...field, ...others], lanes, solving, 'strict')
    if (!found && moves > 0 && standing.length > 0) {
      let least = Infinity
      let out = -1
      for (const index of standing.keys()) {
        const rest = others.filter((_, other) => other !== index)
        const tried = placeLeader(next.prepared, [...field, ...rest], lanes, solving, 'strict', least)
        if (tried && tried.cost < least) {
          least = tried.cost
          out = index
          found = tried
        }
      }
      if (out >= 0) {
        moves--
        const [thrown] = standing.splice(out, 1)
        if (thrown) queue.push(thrown)
      }
    }
    found ??= placeLeader(next.prepared, [...field, ...others], lanes, solving, 'loose')
    if (!found) {
      solved = false
      if (!solving.forced) break
      found = placeLeader(next.prepared, [...field, ...others], lanes, solving, 'forced')
    }
    if (found) standing.push({ ...next, piece: found.piece })
  }
  for (const { callout, prepared: own, piece } of standing)
    placed.push({
      callout: instead.get(callout) ?? callout,
      piece,
      words: own.labels.map((label) => label.words).join(' '),
    })
  return { placed, solved: solved && !blocked, blocked }
}

function prepared(callout: Linear, { drawn, paper, style, manner }: Solving, label: Label): Prepared {
  const level = callout.axis === 'x'
  const base = { top: drawn.high, bottom: drawn.low, left: drawn.left, right: drawn.right }[callout.side]
  return prepareLinear(callout, style, manner, level ? paper.x : paper.y, level ? paper.y : paper.x, base, label)
}

function placeLinear(
  strip: Prepared,
  side: Linear['side'],
  field: readonly Piece[],
  lanes: readonly Lane[],
  tips: readonly (readonly [number, number])[],
  style: Style,
  most: number,
): Strip | undefined {
  if (shutIn(strip, field, style)) return undefined
  const forms = formsOf(style, strip)
  const scratch = new Piece(true)
  let best: { offset: number; form: Form } | undefined
  let least = Infinity
  const neighbour = lanes.find((lane) => lane.of === strip.callout.chain)
  /** What a place was last shut by: the next is likely shut by it too. */
  let shut: Piece | undefined
  for (let offset = style.first; offset <= most && offset < least; offset += offset < 24 ? step : 2 * step) {
    const line = strip.base + strip.out * offset
    if (!keepsOrder(strip, side, line, lanes)) continue
    for (const form of forms) {
      let cost = offset + form.cost
      if (neighbour && Math.abs(neighbour.line - line) > 1e-6) cost += 4
      if (cost >= least) continue
      scratch.clear()
      if (!drawLinear(scratch, strip, style, offset, form)) continue
      if (!keepsApart(strip, side, line, lanes, style)) continue
      if (strip.callout.hangs && !clearOfItself(scratch)) continue
      if (shut && costOf(scratch, shut) === Infinity) continue
      for (const tip of tips) if (liesBy(tip, scratch.boxes)) cost += 3
      for (let i = 0; i < field.length && cost < least; i++) {
        const met = costOf(scratch, field[i]!)
        if (met === Infinity) shut = field[i]
        cost += 4 * met
      }
      if (cost >= least) continue
      least = cost
      best = { offset, form }
    }
  }
  return best && drawnLinear(strip, side, style, best.offset, best.form)
}

/** Whether a point lies within 5 mm of the first of boxes. */
const liesBy = (at: readonly [number, number], boxes: readonly number[]): boolean =>
  at[0] > boxes[0]! - 5 && at[0] < boxes[2]! + 5 && at[1] > boxes[1]! - 5 && at[1] < boxes[3]! + 5

/** Whether the way of an extension line out to the first dimension line is shut already: then no offset helps. */
function shutIn(strip: Prepared, field: readonly Piece[], style: Style): boolean {
  const way = new Piece(true)
  const to = strip.base + strip.out * style.first
  for (const [t, foot] of [
    [strip.t1, strip.foot1],
    [strip.t2, strip.foot2],
  ] as const) {
    const from = foot + strip.out * style.gap
    if ((to - from) * strip.out <= 0.2) continue
    if (strip.axis === 'x') way.segment(is.extension, t, from, t, to)
    else way.segment(is.extension, from, t, to, t)
  }
  return field.some((other) => costOf(way, other) === Infinity)
}

/** A strip drawn for good, with the lane that it takes. */
function drawnLinear(strip: Prepared, side: Linear['side'], style: Style, offset: number, form: Form): Strip {
  const piece = new Piece()
  drawLinear(piece, strip, style, offset, form)
  const line = strip.base + strip.out * offset
  const far = Math.max(strip.out * line, strip.out * strip.base)
  const near = Math.min(strip.out * strip.foot1, strip.out * strip.foot2, strip.out * strip.base)
  const across: [number, number] = strip.out > 0 ? [near, far] : [-far, -near]
  const [low, high] = strip.extent
  const { t1, t2 } = strip
  const box =
    strip.axis === 'x'
      ? { x1: t1, y1: across[0], x2: t2, y2: across[1] }
      : { x1: across[0], y1: t1, x2: across[1], y2: t2 }
  return { piece, line: [...strip.text], lane: { side, line, low, high, t1, t2, of: strip.callout.of, box } }
}

/** Short inside, long outside. */
function keepsOrder(strip: Prepared, side: Linear['side'], line: number, lanes: readonly Lane[]): boolean {
  for (const lane of lanes) {
    if (lane.side !== side) continue
    const farther = strip.out * (line - lane.line)
    const contains = strip.t1 <= lane.t1 + 0.01 && strip.t2 >= lane.t2 - 0.01
    if (contains && strip.t2 - strip.t1 > lane.t2 - lane.t1 + 0.01 && farther <= 0) return false
    const within = strip.t1 >= lane.t1 - 0.01 && strip.t2 <= lane.t2 + 0.01
    if (within && strip.t2 - strip.t1 < lane.t2 - lane.t1 - 0.01 && farther >= 0) return false
  }
  return true
}

/** Lines whose extents overlap stand apart. */
function keepsApart(
  { extent: [low, high], out }: Prepared,
  side: Linear['side'],
  line: number,
  lanes: readonly Lane[],
  style: Style,
): boolean {
  for (const lane of lanes) {
    if (lane.side !== side || low >= lane.high - 0.01 || high <= lane.low + 0.01) continue
    if (Math.abs(out * (line - lane.line)) < style.between - 1e-6) return false
  }
  return true
}

function placeAngle(
  callout: Angle,
  { paper, style, metal }: Solving,
  label: Label,
  field: readonly Piece[],
  lanes: readonly Lane[],
): Placed | undefined {
  const vertex = paper.at(callout.vertex)
  const away = (at: readonly [number, number]): number => Math.hypot(at[0] - vertex[0], at[1] - vertex[1])
  const strip: PreparedAngle = {
    label,
    vertex,
    a1: callout.a1,
    a2: callout.a2,
    starts: [away(paper.at(callout.starts[0])), away(paper.at(callout.starts[1]))],
  }
  const scratch = new Piece(true)
  let bestWay = -1
  let least = Infinity
  let bestRadius = 0
  for (let radius = 16; radius <= 50; radius += 2)
    for (let way = 0; way < waysOfAngle; way++) {
      let cost = 0.3 * radius + 0.4 * way
      if (cost >= least) break
      scratch.clear()
      if (!drawAngle(scratch, strip, style, radius, way)) continue
      if (!clearOfItself(scratch) || overMetal(scratch, metal)) continue
      for (const lane of lanes) if (boxEnters(scratch, lane.box)) cost += 4
      cost += 3 * chordsOver(scratch, metal)
      for (let i = 0; i < field.length && cost < least; i++) cost += 3 * costOf(scratch, field[i]!)
      if (cost >= least) continue
      least = cost
      bestWay = way
      bestRadius = radius
    }
  if (bestWay < 0) return undefined
  const best = new Piece()
  drawAngle(best, strip, style, bestRadius, bestWay)
  const at = (angle: number, r: number): [number, number] => [
    vertex[0] + r * Math.cos(radians(angle)),
    vertex[1] + r * Math.sin(radians(angle)),
  ]
  return {
    callout,
    piece: best,
    words: label.words,
    line: at((callout.a1 + callout.a2) / 2, bestRadius),
    points: [vertex, at(callout.a1, Math.max(strip.starts[0], 1)), at(callout.a2, Math.max(strip.starts[1], 1))],
  }
}

/** Too small an angle for an arc: a leader to the sloping edge, which lies on the line of one of its arms. */
function leaderOf(callout: Angle, { view, paper }: Solving): Leader {
  const [vx, vy] = callout.vertex
  const slopes = [callout.a2, callout.a1].filter((angle) => Math.abs(angle - 90 * Math.round(angle / 90)) > 0.01)
  const angle = radians(slopes[0] ?? callout.a2)
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
  // Where the drawn edges lie along that line, as distances from the vertex.
  let [from, to] = [Infinity, -Infinity]
  const lies = (a: readonly [number, number], b: readonly [number, number]): void => {
    const along = [a, b].map(([x, y]) => (x - vx) * ux + (y - vy) * uy)
    const off = [a, b].map(([x, y]) => Math.abs((x - vx) * uy - (y - vy) * ux))
    if (Math.max(...off) > 0.02 || Math.abs(along[1]! - along[0]!) < 0.05) return
    from = Math.min(from, ...along)
    to = Math.max(to, ...along)
  }
  for (const mark of view.marks) {
    if (mark.mark === 'line' && mark.kind === 'visible') lies(mark.from, mark.to)
    if (mark.mark === 'outline' && mark.kind === 'visible')
      for (const edge of edgesOf(mark.outline, mark.closed !== false)) if (edge.straight) lies(edge.a, edge.b)
  }
  const start = callout.starts[1]
  const reach = (start[0] - vx) * ux + (start[1] - vy) * uy
  if (to < from) [from, to] = [reach, reach]
  // Some millimetres of paper from the end that is nearer to the vertex, not past the middle.
  const inset = Math.min((to - from) / 2, 4 / paper.scale)
  const along = Math.abs(from) < Math.abs(to) ? from + inset : to - inset
  const at = [vx + along * ux, vy + along * uy] as const
  return {
    callout: 'leader',
    of: callout.of,
    tips: [
      { at, out: [-uy, ux] },
      { at, out: [uy, -ux] },
    ],
    lines: [[callout.worth]],
  }
}

function preparedLeader(callout: Leader, { paper, style, manner, letters }: Solving): PreparedLeader {
  const height = callout.small ? style.small : style.text
  const letter = letters?.get(callout.of)
  const labels = (letter === undefined ? callout.lines : [[letter]]).map((line) => labelOf(line, manner, height))
  const frames = (callout.hangs ?? []).flatMap((hung) =>
    hung.hang === 'frame' ? [frameOf(hung, manner, style.small)] : [],
  )
  return {
    labels,
    width: Math.max(...labels.map((label) => label.width)),
    under: frames,
    tips: callout.tips.map(({ at, out }) => {
      const [x, y] = paper.at(at)
      return { x, y, angle: degrees(Math.atan2(out[1], out[0])) }
    }),
  }
}

const overMetal = (piece: Piece, metal: readonly Box[]): boolean => metal.some((box) => boxEnters(piece, box))

/** How many chords of arcs lie in the metal or hard by it: arcs belong outside. */
function chordsOver({ segments, segmentsEnd }: Piece, metal: readonly Box[]): number {
  let count = 0
  for (let i = 0; i < segmentsEnd; i += 5) {
    if (segments[i] !== is.chord) continue
    const x = (segments[i + 1]! + segments[i + 3]!) / 2
    const y = (segments[i + 2]! + segments[i + 4]!) / 2
    if (metal.some((box) => x > box.x1 - 1.5 && x < box.x2 + 1.5 && y > box.y1 - 1.5 && y < box.y2 + 1.5)) count++
  }
  return count
}

function boxEnters(piece: Piece, box: Box): boolean {
  const { boxes, boxesEnd } = piece
  for (let i = 0; i < boxesEnd; i += 5)
    if (boxes[i]! < box.x2 && boxes[i + 2]! > box.x1 && boxes[i + 1]! < box.y2 && boxes[i + 3]! > box.y1) return true
  return false
}

/** A direction that a leader may take from one of its tips. */
interface Ray {
  readonly angle: number
  readonly lean: number
  readonly ux: number
  readonly uy: number
  /** Where in `segments` the edges stand that a line this way may cross, however long it is. */
  readonly edges: readonly number[]
}

function rayOf(tip: PreparedLeader['tips'][number], turn: number, { segments, segmentsEnd }: Piece): Ray {
  const angle = tip.angle + turn
  const ux = Math.cos(radians(angle))
  const uy = Math.sin(radians(angle))
  const edges: number[] = []
  for (let i = 0; i < segmentsEnd; i += 5) {
    if (segments[i]! > is.hidden) continue
    const one = ux * (segments[i + 2]! - tip.y) - uy * (segments[i + 1]! - tip.x)
    const other = ux * (segments[i + 4]! - tip.y) - uy * (segments[i + 3]! - tip.x)
    if (!((one > 0 && other > 0) || (one < 0 && other < 0))) edges.push(i)
  }
  return { angle, lean: leaning(angle), ux, uy, edges }
}

/** Nearer than this to metal, mm, a place is drawn to see whether it lies over it. */
const hair = 1e-6

/** Whether boxes round (x, y) surely lie over metal. */
function surelyOverMetal(boxes: readonly number[], x: number, y: number, metal: readonly Box[]): boolean {
  for (let i = 0; i < boxes.length; i += 5) {
    const left = x + boxes[i]! + hair
    const low = y + boxes[i + 1]! + hair
    const right = x + boxes[i + 2]! - hair
    const high = y + boxes[i + 3]! - hair
    for (const box of metal) if (left < box.x2 && right > box.x1 && low < box.y2 && high > box.y1) return true
  }
  return false
}

/** The boxes of a leader's words, from the end of its line on. */
function wordsOf(leader: PreparedLeader, style: Style, run: 1 | -1): readonly number[] {
  const piece = new Piece()
  drawLeader(piece, leader, style, 0, 0, 0, 0, run)
  return piece.boxes
}

/**
 * `strict` as the rules have it; `loose` may cross more outlines and go farther; `forced` takes the least evil. Nothing that costs `most` or more is
 * found.
 */
function placeLeader(
  leader: PreparedLeader,
  field: readonly Piece[],
  lanes: readonly Lane[],
  { drawn, metal, style }: Solving,
  manner: 'strict' | 'loose' | 'forced',
  most = Infinity,
): { piece: Piece; cost: number } | undefined {
  const scratch = new Piece(true)
  let best: { x: number; y: number; angle: number; long: number; run: 1 | -1 } | undefined
  let least = most
  const { segments } = drawn.field
  const rays = leader.tips.map(() => new Map<number, Ray>())
  const mayCross = manner === 'strict' ? 1 : 4
  const words = { [1]: wordsOf(leader, style, 1), [-1]: wordsOf(leader, style, -1) }
  /** What a place was last shut by: the next is likely shut by it too. */
  let shut: Piece | undefined
  for (const { turn, length, cost: base } of reaches) {
    if (base >= least) break
    const long = manner === 'strict' ? length : length * 1.6
    for (let index = 0; index < leader.tips.length; index++) {
      const tip = leader.tips[index]!
      let ray = rays[index]!.get(turn)
      if (!ray) {
        ray = rayOf(tip, turn, drawn.field)
        rays[index]!.set(turn, ray)
      }
      const { angle, lean, ux, uy, edges } = ray
      if (base + lean >= least) continue
      const ex = tip.x + long * ux
      const ey = tip.y + long * uy
      let own = base + lean + 0.01 * index
      let crossed = 0
      for (let at = 0; at < edges.length && crossed <= mayCross; at++) {
        const i = edges[at]!
        if (
          cross(tip.x + ux, tip.y + uy, ex, ey, segments[i + 1]!, segments[i + 2]!, segments[i + 3]!, segments[i + 4]!)
        )
          crossed++
      }
      if (crossed > mayCross) continue
      own += 8 * crossed
      const mx = tip.x + (ux * long) / 2
      const my = tip.y + (uy * long) / 2
      if (metal.some((box) => mx > box.x1 && mx < box.x2 && my > box.y1 && my < box.y2)) own += 6
      for (const { box } of lanes)
        if (enters(tip.x + ux, tip.y + uy, ex, ey, box.x1, box.y1, box.x2, box.y2)) own += 2.5
      if (own >= least) continue
      for (const run of [1, -1] as const) {
        let cost = own + (run * ux < 0 ? 3 : 0)
        if (cost >= least) continue
        if (manner === 'strict' && surelyOverMetal(words[run], ex, ey, metal)) continue
        scratch.clear()
        drawLeader(scratch, leader, style, tip.x, tip.y, angle, long, run)
        if (!clearOfItself(scratch)) continue
        if (overMetal(scratch, metal)) {
          if (manner === 'strict') continue
          cost += 60
        }
        if (shut && manner !== 'forced' && costOf(scratch, shut) === Infinity) continue
        for (const { box } of lanes) if (boxEnters(scratch, box)) cost += 5
        for (let i = 0; i < field.length && cost < least; i++) {
          const met = costOf(scratch, field[i]!)
          if (met === Infinity) shut = field[i]
          cost += met === Infinity && manner === 'forced' ? 100 : met
        }
        if (cost >= least) continue
        least = cost
        best = { x: tip.x, y: tip.y, angle, long, run }
      }
    }
  }
  if (!best) return undefined
  const piece = new Piece()
  drawLeader(piece, leader, style, best.x, best.y, best.angle, best.long, best.run)
  return { piece, cost: least }
}
