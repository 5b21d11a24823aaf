/**
 * A figure in black on paper: strokes in mm, y up, origin at the figure's lower left corner. Fills are hatched with true lines, clipped to their
 * area and to whatever was painted over it; nothing depends on a tint.
 */
import type { Stroke, StrokeClass } from '../drawing/sheet.ts'
import { fittedDashes } from '../drawing/style.ts'
import { capHeight, lengthOf } from '../drawing/letters.ts'
import { type Corner, edgesOf, type Point } from '../solid/outline.ts'
import { bodies } from './bodies.ts'
import type { Body, Figure, LineKind, Mark } from './figure.ts'
import { type Box, boxOf, flattened, isBold, lengthOfRuns } from './sketch.ts'

/** mm on paper. */
const hatchWidth = 0.13
const widths: Readonly<Record<LineKind, number>> = {
  edge: 0.35,
  slot: 0.6,
  hidden: 0.2,
  crown: 0.2,
  still: 0.3,
  centre: 0.15,
  ghost: 0.3,
  torn: 0.15,
  thin: 0.2,
  leader: 0.15,
  tick: 0.2,
  dots: 0.2,
  limit: 0.6,
  dial: 0.5,
  mark: 0.2,
  margin: 0.6,
  ring: 0.5,
  open: 0.25,
}
const classes: Readonly<Partial<Record<LineKind, StrokeClass>>> = {
  hidden: 'hidden',
  crown: 'hidden',
  still: 'hidden',
  ghost: 'ghost',
  centre: 'axis',
  torn: 'torn',
  thin: 'size',
  leader: 'size',
  tick: 'size',
  mark: 'size',
}
/** What hides whatever was drawn before it. */
const opaque: readonly Body[] = [
  'hub',
  'bar',
  'bit',
  'broach',
  'bushing',
  'plug',
  'void',
  'still-to-cut',
  'rule',
  'broken',
]

type Polygon = readonly Point[]

interface Area {
  readonly index: number
  readonly polygons: readonly Polygon[]
  readonly box: Box
}

const around = (points: readonly Point[]): Box => ({
  left: Math.min(...points.map((at) => at[0])),
  right: Math.max(...points.map((at) => at[0])),
  top: Math.min(...points.map((at) => at[1])),
  bottom: Math.max(...points.map((at) => at[1])),
})

type Span = readonly [from: number, to: number]

/** Where the line through `a` and `b` runs inside polygons by even-odd, as parts of the way from `a` to `b`. */
const inside = ([ax, ay]: Point, [bx, by]: Point, polygons: readonly Polygon[]): Span[] => {
  const dx = bx - ax
  const dy = by - ay
  const meets: number[] = []
  for (const polygon of polygons)
    for (let index = 0; index < polygon.length; index++) {
      const from = polygon[index]
      const to = polygon[index + 1] ?? polygon[0]
      if (!from || !to) continue
      // Signed distances of the edge's ends from the line; a half-open rule counts every corner once.
      const one = (from[0] - ax) * dy - (from[1] - ay) * dx
      const other = (to[0] - ax) * dy - (to[1] - ay) * dx
      if (one > 0 === other > 0) continue
      const part = one / (one - other)
      const x = from[0] + (to[0] - from[0]) * part
      const y = from[1] + (to[1] - from[1]) * part
      meets.push(Math.abs(dx) > Math.abs(dy) ? (x - ax) / dx : (y - ay) / dy)
    }
  meets.sort((p, q) => p - q)
  const spans: Span[] = []
  for (let i = 0; i + 1 < meets.length; i += 2) spans.push([meets[i] ?? 0, meets[i + 1] ?? 0])
  return spans
}

/** Nearer than this to a box, mm, a line is looked at as if it met it. */
const hair = 1e-6

/** Where areas hide the stretch from `a` to `b`, as parts of it. */
const hiddenBy = (a: Point, b: Point, over: readonly Area[]): Span[] => {
  const left = Math.min(a[0], b[0]) - hair
  const right = Math.max(a[0], b[0]) + hair
  const top = Math.min(a[1], b[1]) - hair
  const bottom = Math.max(a[1], b[1]) + hair
  const spans: Span[] = []
  for (const { box, polygons } of over)
    if (box.left < right && box.right > left && box.top < bottom && box.bottom > top)
      spans.push(...inside(a, b, polygons))
  return spans
}

/** What holes leave of spans. */
const without = (spans: readonly Span[], holes: readonly Span[]): readonly Span[] =>
  holes.reduce<readonly Span[]>((left, [enter, leave]) => {
    if (left.every(([from, to]) => leave <= from || enter >= to)) return left
    return left.flatMap(([from, to]): readonly Span[] => {
      if (leave <= from || enter >= to) return [[from, to]]
      return [...(enter > from ? [[from, enter] as const] : []), ...(leave < to ? [[leave, to] as const] : [])]
    })
  }, spans)

const boxPolygon = ({ left, top, right, bottom }: Box): Polygon => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

/** Hatch lines of an area, as pairs of ends; `words` and what lies over it are left free. */
const hatchLines = (
  area: Area,
  body: Body,
  em: number,
  over: readonly Area[],
  words: readonly Box[],
): (readonly [Point, Point])[] => {
  const hatch = bodies[body] ?? (body === 'broken' ? { pitch: 0.16, angle: 135 as const } : undefined)
  if (!hatch) return []
  const { left, right, top, bottom } = area.box
  const pitch = hatch.pitch * em
  const sign = hatch.angle === 45 ? 1 : -1
  const lines: (readonly [Point, Point])[] = []
  /** The least and the most of x + sign · y in a box. */
  const levels = (box: Box): readonly [number, number] =>
    sign > 0 ? [box.left + box.top, box.right + box.bottom] : [box.left - box.bottom, box.right - box.top]
  const free = [...over, ...words.map((box) => ({ polygons: [boxPolygon(box)], box }))].map(({ polygons, box }) => ({
    polygons,
    levels: levels(box),
  }))
  // Level n: the points where x + sign · y = n · pitch · √2; the phase is the figure's own, so that parts of one body match.
  const step = pitch * Math.SQRT2
  const ends = [left + sign * top, left + sign * bottom, right + sign * top, right + sign * bottom]
  for (let n = Math.ceil(Math.min(...ends) / step); n <= Math.floor(Math.max(...ends) / step); n++) {
    const level = n * step + 1e-4
    const a: Point = [level - sign * top, top]
    const b: Point = [level - sign * bottom, bottom]
    const holes = free.flatMap(({ polygons, levels: [least, most] }) =>
      level > least - hair && level < most + hair ? inside(a, b, polygons) : [],
    )
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    for (const [from, to] of without(inside(a, b, area.polygons), holes)) {
      if ((to - from) * length < 0.25) continue
      const at = (part: number): Point => [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
      lines.push([at(from), at(to)])
    }
  }
  return lines
}

const kept = (value: number): number => Math.round(value * 1000) / 1000 + 0

/** Every stroke of a figure that was drawn for paper. */
export const strokesOf = (figure: Figure): readonly Stroke[] => {
  const { marks, height, em } = figure
  const up = ([x, y]: Point): Point => [kept(x), kept(height - y)]
  const areas: Area[] = marks.flatMap((mark, index) => {
    if (mark.mark !== 'area' || !opaque.includes(mark.body)) return []
    const polygons = mark.outlines.map((outline) => flattened(outline, true, 0.06))
    return [{ index, polygons, box: around(polygons.flat()) }]
  })
  const words = marks.flatMap((mark) => {
    if (mark.mark !== 'text') return []
    const box = boxOf(mark)
    return [{ left: box.left - 0.5, right: box.right + 0.5, top: box.top - 0.2, bottom: box.bottom + 0.2 }]
  })
  return marks.flatMap((mark, index) => {
    const over = areas.filter((area) => area.index > index)
    switch (mark.mark) {
      case 'text':
        return textStrokes(mark, up)
      case 'line':
        return lineStrokes(mark, over, up)
      case 'area':
        return areaStrokes(mark, index, areas, words, em, up)
    }
  })
}

type Up = (at: Point) => Point

const areaStrokes = (
  mark: Extract<Mark, { mark: 'area' }>,
  index: number,
  areas: readonly Area[],
  words: readonly Box[],
  em: number,
  up: Up,
): Stroke[] => {
  const of = mark.of === undefined ? {} : { of: mark.of }
  if (mark.body === 'ink' || mark.body === 'diamond')
    return mark.outlines.map((outline) => ({
      stroke: 'fill',
      class: 'size',
      width: 0,
      points: flattened(outline, true, 0.3).map(up),
      ...of,
    }))
  if (mark.body === 'ball' || mark.body === 'flag')
    return mark.outlines.flatMap((path) =>
      lineStrokes({ mark: 'line', line: 'tick', path, closed: true, ...of }, [], up),
    )
  const area = areas.find((one) => one.index === index)
  if (!area) return []
  const over = areas.filter((one) => one.index > index && meets(one.box, area.box))
  return hatchLines(area, mark.body, em, over, words).map(([from, to]) => ({
    stroke: 'line',
    class: 'hatch',
    width: hatchWidth,
    from: up(from),
    to: up(to),
  }))
}

const meets = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

const dashesFor = (line: LineKind, length: number): { readonly dashes?: readonly number[] } => {
  const kind =
    line === 'centre' ? 'centre' : ['hidden', 'crown', 'still', 'ghost', 'open'].includes(line) ? 'hidden' : undefined
  if (line === 'dots') {
    const count = Math.floor(length / 1.2)
    if (count < 1) return {}
    const gap = (length - 0.4 * (count + 1)) / count
    return { dashes: Array.from({ length: 2 * count + 1 }, (_, i) => (i % 2 === 0 ? 0.4 : gap)) }
  }
  const dashes = kind && fittedDashes(kind, length)
  return dashes ? { dashes } : {}
}

const lineStrokes = (
  { line, path, closed, of }: Extract<Mark, { mark: 'line' }>,
  over: readonly Area[],
  up: Up,
): Stroke[] => {
  const own = { class: classes[line] ?? ('edge' as const), width: widths[line], ...(of !== undefined && { of }) }
  const straight = (a: Point, b: Point, whole: boolean): Stroke[] => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length < 1e-6) return []
    return without([[0, 1]], hiddenBy(a, b, over)).flatMap(([from, to]): Stroke[] => {
      const at = (part: number): Point => [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
      if ((to - from) * length < 0.05) return []
      return [
        {
          stroke: 'line',
          ...own,
          from: up(at(from)),
          to: up(at(to)),
          ...(whole && dashesFor(line, (to - from) * length)),
        },
      ]
    })
  }
  const edges = edgesOf(path as readonly Corner[]).slice(0, closed ? path.length : path.length - 1)
  return edges.flatMap(({ from, to, arc }): Stroke[] => {
    if (!arc) return straight(from, to, true)
    const points = flattened([{ at: from, bulge: Math.tan(arc.sweep / 4) }, { at: to }], false, 0.06)
    const chords = points.slice(1).map((point, index) => [points[index] ?? from, point] as const)
    const hidden = chords.filter(
      ([a, b]) => without([[0, 1]], hiddenBy(a, b, over)).reduce((sum, [p, q]) => sum + q - p, 0) < 0.5,
    )
    if (hidden.length === chords.length) return []
    if (hidden.length > 0.03 * chords.length) return chords.flatMap(([a, b]) => straight(a, b, false))
    // The figure's y runs down: its turns are the other way round on paper.
    const [first, last] = [-arc.start, -(arc.start + arc.sweep)]
    const degrees = (radians: number): number => kept((radians * 180) / Math.PI)
    return [
      {
        stroke: 'arc',
        ...own,
        centre: up(arc.centre),
        radius: kept(arc.radius),
        from: degrees(Math.min(first, last)),
        to: degrees(Math.max(first, last)),
        ...dashesFor(line, arc.radius * Math.abs(arc.sweep)),
      },
    ]
  })
}

const textStrokes = ({ at, anchor, size, turn, runs, of }: Extract<Mark, { mark: 'text' }>, up: Up): Stroke[] => {
  const length = lengthOfRuns(runs, size)
  let along = anchor === 'start' ? 0 : anchor === 'middle' ? -length / 2 : -length
  const height = size * capHeight
  return runs.map(({ role, text: said }): Stroke => {
    const text = said.trim()
    const own = lengthOf(text, height, isBold(role))
    const before = lengthOf(said.slice(0, said.length - said.trimStart().length), height, isBold(role))
    const start = up(turn === 0 ? [at[0] + along + before, at[1]] : [at[0], at[1] - along - before])
    along += lengthOf(said, height, isBold(role))
    return {
      stroke: 'text',
      class: 'note',
      width: 0.25,
      at: start,
      height: kept(height),
      length: kept(own),
      turn,
      text,
      ...(isBold(role) && { bold: true }),
      ...(of !== undefined && { of }),
    }
  })
}
