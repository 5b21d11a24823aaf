/**
 * What stands on a sheet, measured from its strokes alone, apart from the code that placed them: boxes from baselines, heights and advances;
 * areas by polygon clipping; distances in the plane.
 */
import polygonClipping from 'polygon-clipping'
import { lengthOf } from '../../src/drawing/letters.ts'
import type { Sheet, Stroke } from '../../src/drawing/sheet.ts'

type Xy = readonly [number, number]
interface Box {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}
type Segment = readonly [Xy, Xy]

const hanging = /[gjpqyQ,;()|/]/

/** The box of a text stroke: advances along the baseline, from what hangs under it to the capitals' height. */
export function textBox(stroke: Extract<Stroke, { stroke: 'text' }>): Box {
  const long = lengthOf(stroke.text, stroke.height, stroke.bold)
  const under = hanging.test(stroke.text) ? 0.28 * stroke.height : 0
  const [x, y] = stroke.at
  return stroke.turn === 0
    ? { x1: x, y1: y - under, x2: x + long, y2: y + stroke.height }
    : { x1: x - stroke.height, y1: y, x2: x + under, y2: y + long }
}

/** Straight pieces of a line or an arc. */
export function segmentsOf(stroke: Stroke): Segment[] {
  if (stroke.stroke === 'line') return [[stroke.from, stroke.to]]
  if (stroke.stroke !== 'arc') return []
  const count = Math.max(4, Math.ceil((stroke.to - stroke.from) / 4))
  const at = (n: number): Xy => {
    const angle = ((stroke.from + ((stroke.to - stroke.from) * n) / count) * Math.PI) / 180
    return [stroke.centre[0] + stroke.radius * Math.cos(angle), stroke.centre[1] + stroke.radius * Math.sin(angle)]
  }
  return Array.from({ length: count }, (_, n) => [at(n), at(n + 1)] as const)
}

const apartOnAxis = (a1: number, a2: number, b1: number, b2: number): number => Math.max(0, b1 - a2, a1 - b2)
const between = (a: Box, b: Box): number =>
  Math.hypot(apartOnAxis(a.x1, a.x2, b.x1, b.x2), apartOnAxis(a.y1, a.y2, b.y1, b.y2))

function pointToSegment([px, py]: Xy, [[ax, ay], [bx, by]]: Segment): number {
  const square = (bx - ax) ** 2 + (by - ay) ** 2
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square))
  return Math.hypot(px - ax - t * (bx - ax), py - ay - t * (by - ay))
}

/** Length of a segment inside a box, by halving it into the parts on either side of each border line. */
function lengthInside(segment: Segment, box: Box): number {
  const [[ax, ay], [bx, by]] = segment
  const cuts = [0, 1]
  for (const x of [box.x1, box.x2]) if (ax !== bx) cuts.push((x - ax) / (bx - ax))
  for (const y of [box.y1, box.y2]) if (ay !== by) cuts.push((y - ay) / (by - ay))
  const inside = cuts.filter((t) => t >= 0 && t <= 1).toSorted((a, b) => a - b)
  const long = Math.hypot(bx - ax, by - ay)
  let sum = 0
  for (let i = 0; i + 1 < inside.length; i++) {
    const t = (inside[i]! + inside[i + 1]!) / 2
    const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)]
    if (x > box.x1 && x < box.x2 && y > box.y1 && y < box.y2) sum += (inside[i + 1]! - inside[i]!) * long
  }
  return sum
}

function segmentToBox(segment: Segment, box: Box): number {
  if (lengthInside(segment, box) > 0) return 0
  const corners: Xy[] = [
    [box.x1, box.y1],
    [box.x2, box.y1],
    [box.x2, box.y2],
    [box.x1, box.y2],
  ]
  const toEnds = segment.map(([x, y]) => between({ x1: x, y1: y, x2: x, y2: y }, box))
  return Math.min(...toEnds, ...corners.map((corner) => pointToSegment(corner, segment)))
}

const ring = (box: Box): [number, number][] => [
  [box.x1, box.y1],
  [box.x2, box.y1],
  [box.x2, box.y2],
  [box.x1, box.y2],
]

function area(rings: readonly (readonly (readonly Xy[])[])[]): number {
  let sum = 0
  for (const polygon of rings)
    for (const points of polygon)
      for (let i = 0; i < points.length; i++) {
        const [ax, ay] = points[i]!
        const [bx, by] = points[(i + 1) % points.length]!
        sum += (ax * by - bx * ay) / 2
      }
  return Math.abs(sum)
}

function crossing([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Xy, q: Xy, r: Xy): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  const e = 1e-3
  return (
    Math.min(side(a, b, c), side(a, b, d)) < -e &&
    Math.max(side(a, b, c), side(a, b, d)) > e &&
    Math.min(side(c, d, a), side(c, d, b)) < -e &&
    Math.max(side(c, d, a), side(c, d, b)) > e
  )
}

export interface Measured {
  /** mm²: text over text, arrows over text. */
  readonly textOverText: number
  readonly arrowsOverText: number
  /** mm of lines inside texts. */
  readonly linesThroughText: number
  readonly leadersCrossed: number
  /** mm: least distance of a text to another text or to a line. */
  readonly clearance: number
  /** Strokes of views and notes that reach out of the frame. */
  readonly outside: readonly string[]
  readonly where: readonly string[]
}

/** Measures a sheet; `leaders` are the names that leaders say. */
export function measure(sheet: Sheet, leaders: ReadonlySet<string>): Measured {
  const texts = sheet.strokes
    .filter((stroke) => stroke.stroke === 'text')
    .map((stroke) => ({ stroke, box: textBox(stroke) }))
  const lines = sheet.strokes.flatMap((stroke) => segmentsOf(stroke).map((segment) => ({ stroke, segment })))
  const fills = sheet.strokes.filter((stroke) => stroke.stroke === 'fill')
  let [textOverText, arrowsOverText, linesThroughText, leadersCrossed] = [0, 0, 0, 0]
  let clearance = Infinity
  const where: string[] = []
  const near = (distance: number, what: string): void => {
    if (distance < 0.5) where.push(`${distance.toFixed(2)} ${what}`)
    clearance = Math.min(clearance, distance)
  }
  for (const [i, one] of texts.entries()) {
    for (const other of texts.slice(i + 1)) {
      if (between(one.box, other.box) > 3) continue
      textOverText += area(polygonClipping.intersection([ring(one.box)], [ring(other.box)]))
      near(between(one.box, other.box), `text "${one.stroke.text}" / text "${other.stroke.text}"`)
    }
    for (const { stroke, segment } of lines) {
      const [[ax, ay], [bx, by]] = segment
      const reach: Box = { x1: Math.min(ax, bx), y1: Math.min(ay, by), x2: Math.max(ax, bx), y2: Math.max(ay, by) }
      if (between(one.box, reach) > 3) continue
      linesThroughText += lengthInside(segment, one.box)
      near(segmentToBox(segment, one.box), `text "${one.stroke.text}" / ${stroke.class} of ${stroke.of ?? 'none'}`)
    }
    for (const fill of fills) {
      const points = fill.points.map(([x, y]): [number, number] => [x, y])
      if (points.every(([x, y]) => between({ x1: x, y1: y, x2: x, y2: y }, one.box) > 4)) continue
      const met = area(polygonClipping.intersection([points], [ring(one.box)]))
      arrowsOverText += met
      if (met > 0) where.push(`arrow of ${fill.of ?? 'none'} on "${one.stroke.text}"`)
    }
  }
  const led = lines.filter(({ stroke }) => stroke.of !== undefined && leaders.has(stroke.of))
  for (const [i, one] of led.entries())
    for (const other of led.slice(i + 1))
      if (one.stroke.of !== other.stroke.of && crossing(one.segment, other.segment)) {
        leadersCrossed++
        where.push(`leaders ${one.stroke.of} × ${other.stroke.of}`)
      }
  const frame: Box = { x1: 20, y1: 10, x2: sheet.paper.width - 10, y2: sheet.paper.height - 10 }
  const outside: string[] = []
  const inFrame = ([x, y]: Xy): boolean =>
    x >= frame.x1 - 1e-6 && x <= frame.x2 + 1e-6 && y >= frame.y1 - 1e-6 && y <= frame.y2 + 1e-6
  for (const stroke of sheet.strokes) {
    if (stroke.class === 'sheet') continue
    const points: readonly Xy[] =
      stroke.stroke === 'fill'
        ? stroke.points
        : stroke.stroke === 'text'
          ? ring(textBox(stroke))
          : segmentsOf(stroke).flat()
    const furniture = stroke.stroke === 'text' && stroke.class === 'note' && stroke.height < 2
    if (!furniture && !points.every(inFrame)) outside.push(`${stroke.stroke} ${stroke.class} ${stroke.of ?? ''}`)
  }
  return { textOverText, arrowsOverText, linesThroughText, leadersCrossed, clearance, outside, where }
}
