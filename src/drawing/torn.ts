/** Free-hand break lines: a fixed wave, the same every time. */
import type { Point } from '../solid/outline.ts'

/** Points of the wave from a to b on paper, ends included; it leaves and meets them on the straight line. */
export function wave(a: Point, b: Point): Point[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const count = Math.max(4, Math.ceil(length / 0.8))
  const ux = (b[0] - a[0]) / length
  const uy = (b[1] - a[1]) / length
  const points: Point[] = []
  for (let i = 0; i <= count; i++) {
    const s = (length * i) / count
    const swing = 0.75 * Math.sin((2 * Math.PI * s) / 10.5) + 0.3 * Math.sin((2 * Math.PI * s) / 4.3 + 1)
    const off = swing * Math.min(1, s / 1.5, (length - s) / 1.5)
    points.push([a[0] + ux * s - uy * off, a[1] + uy * s + ux * off])
  }
  return points
}

/** Whether the segment a–b lies on the line c–d. */
function liesOn(a: Point, b: Point, c: Point, d: Point): boolean {
  const length = Math.hypot(d[0] - c[0], d[1] - c[1])
  if (length < 1e-9) return false
  return [a, b].every((at) => {
    const along = ((at[0] - c[0]) * (d[0] - c[0]) + (at[1] - c[1]) * (d[1] - c[1])) / length
    const off = ((at[0] - c[0]) * (d[1] - c[1]) - (at[1] - c[1]) * (d[0] - c[0])) / length
    return Math.abs(off) < 0.01 && along > -0.01 && along < length + 0.01
  })
}

/** A polygon whose edges on a break line follow the wave, so that hatch ends where the metal is torn. */
export function torn(polygon: readonly Point[], breaks: readonly (readonly [Point, Point])[]): Point[] {
  if (breaks.length === 0) return [...polygon]
  const points: Point[] = []
  for (const [index, a] of polygon.entries()) {
    const b = polygon[(index + 1) % polygon.length]!
    points.push(a)
    const on = breaks.find(([c, d]) => Math.hypot(b[0] - a[0], b[1] - a[1]) > 0.5 && liesOn(a, b, c, d))
    if (!on) continue
    const between = wave(on[0], on[1]).filter((at) => {
      const along = (at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1])
      const square = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
      return along > 0 && along < square
    })
    const forth = (on[1][0] - on[0][0]) * (b[0] - a[0]) + (on[1][1] - on[0][1]) * (b[1] - a[1]) > 0
    points.push(...(forth ? between : between.toReversed()))
  }
  return points
}
