/** The marks of a view put on paper: strokes, and the segments that callouts keep off. */
import type { Point } from '../solid/outline.ts'
import type { Circle, Polygon } from './hatch.ts'
import type { OntoPaper } from './onto-paper.ts'
import { is, Piece, type SegmentKind } from './piece.ts'
import { type Arc, chords, degrees, edgesOf, onArc } from './plane.ts'
import type { Stroke } from './sheet.ts'
import { arcStroke, lineStroke } from './strokes.ts'
import type { Style } from './style.ts'
import { torn, wave } from './torn.ts'
import type { LineKind, View } from './view.ts'

/** Centre lines run this far past what they are given, mm on paper. */
const overrun = 3

export interface Drawn {
  readonly strokes: Stroke[]
  /** Everything that callouts keep off. */
  readonly field: Piece
  /** Reach of the outline, centre lines left out. */
  readonly left: number
  readonly right: number
  readonly low: number
  readonly high: number
  readonly hatches: readonly { readonly polygons: readonly Polygon[]; readonly angle: 45 | 135 }[]
  readonly clip?: Circle
}

const segmentKinds: Readonly<Record<LineKind, SegmentKind>> = {
  visible: is.edge,
  cut: is.edge,
  hidden: is.hidden,
  centre: is.centre,
  phantom: is.hidden,
  thin: is.thin,
  break: is.thin,
}

/** What of a line lies in a circle. */
function inCircle(a: Point, b: Point, clip: Circle): readonly [Point, Point] | undefined {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const fx = a[0] - clip.x
  const fy = a[1] - clip.y
  const qa = dx * dx + dy * dy
  const qb = 2 * (fx * dx + fy * dy)
  const root = qb * qb - 4 * qa * (fx * fx + fy * fy - clip.radius ** 2)
  if (root <= 0 || qa === 0) return undefined
  const t1 = Math.max(0, (-qb - Math.sqrt(root)) / (2 * qa))
  const t2 = Math.min(1, (-qb + Math.sqrt(root)) / (2 * qa))
  if (t2 - t1 < 1e-6) return undefined
  return [
    [a[0] + t1 * dx, a[1] + t1 * dy],
    [a[0] + t2 * dx, a[1] + t2 * dy],
  ]
}

/** The parts of an arc that lie in a circle. */
function arcsInCircle(arc: Arc, clip: Circle): Arc[] {
  const dx = clip.x - arc.centre[0]
  const dy = clip.y - arc.centre[1]
  const apart = Math.hypot(dx, dy)
  const cuts = [arc.from, arc.to]
  if (apart > 1e-9) {
    const cosine = (apart ** 2 + arc.radius ** 2 - clip.radius ** 2) / (2 * apart * arc.radius)
    if (Math.abs(cosine) < 1)
      for (const angle of [1, -1].map((sign) => degrees(Math.atan2(dy, dx) + sign * Math.acos(cosine))))
        for (let turn = -720; turn <= 720; turn += 360)
          if (angle + turn > arc.from && angle + turn < arc.to) cuts.push(angle + turn)
  }
  cuts.sort((a, b) => a - b)
  const parts: Arc[] = []
  for (let i = 0; i + 1 < cuts.length; i++) {
    const from = cuts[i]!
    const to = cuts[i + 1]!
    const [x, y] = onArc(arc, (from + to) / 2)
    if (to - from > 1e-6 && Math.hypot(x - clip.x, y - clip.y) < clip.radius) parts.push({ ...arc, from, to })
  }
  return parts
}

/** Puts the marks of a view on paper, all but arrows, cutting planes, detail circles and texture, which look for a place. */
export function drawMarks(view: View, paper: OntoPaper, style: Style): Drawn {
  const strokes: Stroke[] = []
  const field = new Piece()
  const hatches: { polygons: Polygon[]; angle: 45 | 135 }[] = []
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
  const reach = (x: number, y: number): void => {
    left = Math.min(left, x)
    right = Math.max(right, x)
    low = Math.min(low, y)
    high = Math.max(high, y)
  }
  const cutOut = view.place.is === 'detail' ? view.place.clip : undefined
  const clip: Circle | undefined = cutOut && {
    x: paper.x(cutOut.centre[0]),
    y: paper.y(cutOut.centre[1]),
    radius: cutOut.radius * paper.scale,
  }
  const breaks: (readonly [Point, Point])[] = []

  const piece = (kind: LineKind, a: Point, b: Point): void => {
    const ends = clip ? inCircle(a, b, clip) : ([a, b] as const)
    if (!ends) return
    const [[x1, y1], [x2, y2]] = ends
    strokes.push(lineStroke(kind, x1, y1, x2, y2, style))
    field.segment(segmentKinds[kind], x1, y1, x2, y2)
    if (kind === 'centre') return
    reach(x1, y1)
    reach(x2, y2)
  }
  const tornLine = (a: Point, b: Point): void => {
    breaks.push([a, b])
    const points = wave(a, b)
    for (let i = 0; i + 1 < points.length; i++) piece('break', points[i]!, points[i + 1]!)
  }
  const line = (kind: LineKind, from: Point, to: Point): void => {
    let a: Point = paper.at(from)
    let b: Point = paper.at(to)
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length < 1e-6) return
    if (kind === 'break') return tornLine(a, b)
    if (kind === 'centre') {
      const ux = ((b[0] - a[0]) / length) * overrun
      const uy = ((b[1] - a[1]) / length) * overrun
      a = [a[0] - ux, a[1] - uy]
      b = [b[0] + ux, b[1] + uy]
      return piece(kind, a, b)
    }
    // A line across a stretch that is cut short is drawn up to each break line.
    const forth = from[0] <= to[0]
    let [start, end] = forth ? [a, b] : [b, a]
    for (const cut of paper.cuts) {
      if (end[0] <= cut.x1 || start[0] >= cut.x2 || end[0] - start[0] < 1e-9) continue
      const y = (x: number): number => start[1] + ((end[1] - start[1]) * (x - start[0])) / (end[0] - start[0])
      if (start[0] < cut.x1) piece(kind, start, [cut.x1, y(cut.x1)])
      start = [cut.x2, y(cut.x2)]
    }
    if (end[0] >= start[0] - 1e-9 || paper.cuts.length === 0) piece(kind, start, end)
  }
  const arc = (kind: LineKind, part: Arc): void => {
    const onSheet: Arc = {
      centre: paper.at(part.centre),
      radius: part.radius * paper.scale,
      from: part.from,
      to: part.to,
    }
    for (const kept of clip ? arcsInCircle(onSheet, clip) : [onSheet]) {
      strokes.push(arcStroke(kind, kept.centre, kept.radius, kept.from, kept.to, style))
      const points = chords(kept, 0.1)
      for (let i = 0; i + 1 < points.length; i++) {
        const [a, b] = [points[i]!, points[i + 1]!]
        field.segment(segmentKinds[kind], a[0], a[1], b[0], b[1])
        if (kind === 'centre') continue
        reach(a[0], a[1])
        reach(b[0], b[1])
      }
    }
  }

  for (const mark of view.marks) {
    switch (mark.mark) {
      case 'line':
        line(mark.kind, mark.from, mark.to)
        break
      case 'arc':
        arc(mark.kind, mark)
        break
      case 'outline':
        for (const edge of edgesOf(mark.outline, mark.closed !== false)) {
          if (edge.straight) line(mark.kind, edge.a, edge.b)
          else arc(mark.kind, edge)
        }
        break
      case 'centreMark': {
        const over = mark.radius * paper.scale < 3 ? 1.5 : 2.5
        const [x, y] = paper.at(mark.centre)
        const r = mark.radius * paper.scale + over
        piece('centre', [x - r, y], [x + r, y])
        piece('centre', [x, y - r], [x, y + r])
        break
      }
      case 'arrow':
      case 'hatch':
      case 'plane':
      case 'detail':
      case 'texture':
        break
    }
  }
  for (const cut of paper.cuts) {
    // Between the outermost lines that reach the break.
    let [bottom, top] = [Infinity, -Infinity]
    for (let i = 0; i < field.segments.length; i += 5) {
      if (field.segments[i] !== is.edge) continue
      for (const end of [1, 3])
        if (Math.abs(field.segments[i + end]! - cut.x1) < 0.01) {
          bottom = Math.min(bottom, field.segments[i + end + 1]!)
          top = Math.max(top, field.segments[i + end + 1]!)
        }
    }
    if (top > bottom) for (const x of [cut.x1, cut.x2]) tornLine([x, bottom], [x, top])
  }
  for (const mark of view.marks) {
    if (mark.mark !== 'hatch') continue
    const polygons = mark.outlines.map((outline) =>
      torn(
        edgesOf(outline, true).flatMap((edge): Point[] =>
          edge.straight ? [paper.at(edge.a)] : edgePoints(edge).map((at) => paper.at(at)),
        ),
        breaks,
      ),
    )
    hatches.push({ polygons, angle: mark.angle ?? 45 })
  }
  if (clip) {
    strokes.push(arcStroke('thin', [clip.x, clip.y], clip.radius, 0, 360, style))
    const points = chords({ centre: [clip.x, clip.y], radius: clip.radius, from: 0, to: 360 }, 0.1)
    for (let i = 0; i + 1 < points.length; i++)
      field.segment(is.thin, points[i]![0], points[i]![1], points[i + 1]![0], points[i + 1]![1])
    for (const way of [-1, 1]) reach(clip.x + way * clip.radius, clip.y + way * clip.radius)
  }
  if (!(right >= left)) [left, right, low, high] = [0, 0, 0, 0]
  return { strokes, field, left, right, low, high, hatches, ...(clip && { clip }) }
}

/** Points of a bent edge in the outline's own direction, the last left out. */
function edgePoints(arc: Arc & { readonly back: boolean }): Point[] {
  const points = chords(arc, Math.max(1e-3, arc.radius * 2e-4))
  return (arc.back ? points.toReversed() : points).slice(0, -1)
}
