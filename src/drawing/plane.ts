/** Plane geometry for placing: segments, boxes, arcs. All mm, angles in degrees; numbers are kept to 0.001 so that every machine agrees. */
import type { Outline, Point } from '../solid/outline.ts'

export const kept = (value: number): number => Math.round(value * 1000) / 1000 + 0
export const radians = (degrees: number): number => (degrees * Math.PI) / 180
export const degrees = (angle: number): number => (angle * 180) / Math.PI

/** Whether a segment passes through the open box (touching its border is not entering). Liang–Barsky. */
export function enters(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  left: number,
  low: number,
  right: number,
  high: number,
): boolean {
  if (x1 <= left && x2 <= left) return false
  if (x1 >= right && x2 >= right) return false
  if (y1 <= low && y2 <= low) return false
  if (y1 >= high && y2 >= high) return false
  let t0 = 0
  let t1 = 1
  const dx = x2 - x1
  const dy = y2 - y1
  if (dx !== 0) {
    const a = (left - x1) / dx
    const b = (right - x1) / dx
    t0 = Math.max(t0, Math.min(a, b))
    t1 = Math.min(t1, Math.max(a, b))
  }
  if (dy !== 0) {
    const a = (low - y1) / dy
    const b = (high - y1) / dy
    t0 = Math.max(t0, Math.min(a, b))
    t1 = Math.min(t1, Math.max(a, b))
  }
  return dx === 0 && dy === 0 ? true : t1 - t0 > 1e-9
}

/** Whether two segments cross inside both of them; sharing an end or lying on one line is not crossing. */
export function cross(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean {
  const e = 1e-6
  if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) return false
  if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) return false
  const d1 = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
  const d2 = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax)
  if (!((d1 > e && d2 < -e) || (d1 < -e && d2 > e))) return false
  const d3 = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx)
  const d4 = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx)
  return (d3 > e && d4 < -e) || (d3 < -e && d4 > e)
}

export interface Arc {
  readonly centre: Point
  readonly radius: number
  /** Counter-clockwise from `from` to `to`, degrees, `to` > `from`. */
  readonly from: number
  readonly to: number
}

/** The arc of an outline's edge with a bulge. */
export function arcOf(a: Point, b: Point, bulge: number): Arc {
  const chord = Math.hypot(b[0] - a[0], b[1] - a[1])
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
  const rise = (1 - bulge * bulge) / (4 * bulge)
  const centre: Point = [(a[0] + b[0]) / 2 - (b[1] - a[1]) * rise, (a[1] + b[1]) / 2 + (b[0] - a[0]) * rise]
  const [start, end] = bulge > 0 ? [a, b] : [b, a]
  const from = degrees(Math.atan2(start[1] - centre[1], start[0] - centre[0]))
  const sweep = degrees(4 * Math.atan(Math.abs(bulge)))
  const to = degrees(Math.atan2(end[1] - centre[1], end[0] - centre[0]))
  const turns = Math.round((from + sweep - to) / 360)
  return { centre, radius, from, to: to + 360 * turns }
}

export const onArc = (arc: Arc, angle: number): Point => [
  arc.centre[0] + arc.radius * Math.cos(radians(angle)),
  arc.centre[1] + arc.radius * Math.sin(radians(angle)),
]

/** Points along an arc, ends included, chords no farther than `sagitta` off it. */
export function chords(arc: Arc, sagitta: number): Point[] {
  const step = arc.radius <= sagitta ? 90 : 2 * degrees(Math.acos(Math.max(0, 1 - sagitta / arc.radius)))
  const count = Math.max(2, Math.ceil((arc.to - arc.from) / Math.min(step, 45)))
  const points: Point[] = []
  for (let i = 0; i <= count; i++) points.push(onArc(arc, arc.from + ((arc.to - arc.from) * i) / count))
  return points
}

/** An edge of an outline. An arc runs counter-clockwise; `back` says that the outline runs along it the other way. */
export type Edge =
  | { readonly straight: true; readonly a: Point; readonly b: Point }
  | ({ readonly straight: false; readonly back: boolean } & Arc)

/** The edges of an outline; `closed` false leaves out the one that leads back. */
export function edgesOf(outline: Outline, closed: boolean): Edge[] {
  const edges: Edge[] = []
  const count = closed ? outline.length : outline.length - 1
  for (let i = 0; i < count; i++) {
    const corner = outline[i]
    const next = outline[(i + 1) % outline.length]
    if (!corner || !next) continue
    if (corner.bulge)
      edges.push({ straight: false, back: corner.bulge < 0, ...arcOf(corner.at, next.at, corner.bulge) })
    else edges.push({ straight: true, a: corner.at, b: next.at })
  }
  return edges
}
