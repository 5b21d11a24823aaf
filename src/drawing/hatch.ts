/** Section lines: 45° (135° for a second piece), clipped by even-odd against flattened outlines, cut out round texts. */
import { kept } from './plane.ts'
import type { Stroke } from './sheet.ts'
import type { Style } from './style.ts'

export interface Circle {
  readonly x: number
  readonly y: number
  readonly radius: number
}

export type Polygon = readonly (readonly [number, number])[]

/** Where metal is thinner than this on paper it is left plain. */
const thinnest = 2

/**
 * Hatch of polygons on paper. `boxes` (x1, y1, x2, y2, pad in turn) are left free. The lines' phase is that of the view's origin, so that the
 * parts of one piece match.
 */
export function hatch(
  polygons: readonly Polygon[],
  angle: 45 | 135,
  boxes: readonly number[],
  style: Style,
  clip?: Circle,
): Stroke[] {
  let left = Infinity
  let right = -Infinity
  let low = Infinity
  let high = -Infinity
  for (const polygon of polygons)
    for (const [x, y] of polygon) {
      left = Math.min(left, x)
      right = Math.max(right, x)
      low = Math.min(low, y)
      high = Math.max(high, y)
    }
  const short = Math.min(right - left, high - low)
  if (!(short >= thinnest)) return []
  const pitch = Math.min(3, Math.max(1.6, short / 8))
  // Along the lines: p, across them: q. For 45° p = (x + y)/√2, q = (y − x)/√2; for 135° mirrored in x.
  const mirror = angle === 45 ? 1 : -1
  const r = Math.SQRT1_2
  const p = (x: number, y: number): number => (mirror * x + y) * r
  const q = (x: number, y: number): number => (y - mirror * x) * r
  const turned = polygons.map((polygon) => polygon.map(([x, y]) => [p(x, y), q(x, y)] as const))
  const qs = turned.flat().map((at) => at[1])
  const first = Math.ceil(Math.min(...qs) / pitch)
  const last = Math.floor(Math.max(...qs) / pitch)
  const strokes: Stroke[] = []
  for (let n = first; n <= last; n++) {
    const level = n * pitch + 1e-4
    const meets: number[] = []
    for (const polygon of turned)
      for (let i = 0; i < polygon.length; i++) {
        const a = polygon[i]!
        const b = polygon[(i + 1) % polygon.length]!
        if (a[1] > level === b[1] > level) continue
        meets.push(a[0] + ((b[0] - a[0]) * (level - a[1])) / (b[1] - a[1]))
      }
    meets.sort((a, b) => a - b)
    for (let i = 0; i + 1 < meets.length; i += 2) {
      let start = meets[i]!
      let end = meets[i + 1]!
      if (clip) {
        const half = Math.sqrt(Math.max(0, clip.radius ** 2 - (level - q(clip.x, clip.y)) ** 2))
        start = Math.max(start, p(clip.x, clip.y) - half)
        end = Math.min(end, p(clip.x, clip.y) + half)
        if (start >= end) continue
      }
      for (const [from, to] of without(start, end, level, boxes, mirror)) {
        if (to - from < 0.3) continue
        strokes.push({
          stroke: 'line',
          class: 'hatch',
          width: style.widths.hatch,
          from: [kept(mirror * (from - level) * r), kept((from + level) * r)],
          to: [kept(mirror * (to - level) * r), kept((to + level) * r)],
        })
      }
    }
  }
  return strokes
}

/** The pieces of one hatch line that keep off the boxes. */
function without(
  from: number,
  to: number,
  level: number,
  boxes: readonly number[],
  mirror: number,
): (readonly [number, number])[] {
  let parts: (readonly [number, number])[] = [[from, to]]
  const r = Math.SQRT1_2
  for (let i = 0; i < boxes.length; i += 5) {
    const pad = 0.7
    // x = mirror (p − q) r and y = (p + q) r: each side of the box bounds p.
    const xs = [(boxes[i]! - pad) * mirror, (boxes[i + 2]! + pad) * mirror].toSorted((a, b) => a - b)
    const enter = Math.max(xs[0]! / r + level, (boxes[i + 1]! - pad) / r - level)
    const leave = Math.min(xs[1]! / r + level, (boxes[i + 3]! + pad) / r - level)
    if (enter >= leave) continue
    parts = parts.flatMap(([a, b]): (readonly [number, number])[] => {
      if (leave <= a || enter >= b) return [[a, b]]
      const rest: (readonly [number, number])[] = []
      if (enter > a) rest.push([a, enter])
      if (leave < b) rest.push([leave, b])
      return rest
    })
  }
  return parts
}
