/** A line where metal goes on beyond the picture: a fixed wave, the same every time. */
import type { Point } from '../solid/outline.ts'

/** From a to b, ends on the straight line, `swing` to either side. */
export const tornLine = (a: Point, b: Point, swing: number): Point[] => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length < 1e-9) return [a, b]
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const count = Math.max(8, Math.min(120, Math.ceil(length / swing)))
  return Array.from({ length: count + 1 }, (_, step): Point => {
    const along = (length * step) / count
    const ends = Math.min(1, along / (4 * swing), (length - along) / (4 * swing))
    const off = ends * swing * (0.7 * Math.sin(along / (2.6 * swing)) + 0.3 * Math.sin(along / (1.1 * swing) + 1))
    return [a[0] + ux * along - uy * off, a[1] + uy * along + ux * off]
  })
}
