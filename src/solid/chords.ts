import { areaOf, type Edge, edgesOf, type Outline, type Point } from './outline.ts'

/** Where the chords of an arc lie: within the enclosed area, round it, or with their ends on the arc whichever way it bends. */
export type Side = 'inside' | 'outside' | 'on'

const grid = 1e6
/** To the nearest 1e-6 mm: engines differ in the last digit of sin and cos, and the kernel must be handed the same numbers by each. */
export const snapped = (length: number): number => Math.round(length * grid) / grid + 0

/** Chords in a full circle of this radius (mm), a multiple of four, so that none is further than `sagitta` (mm) from the circle. */
export const chordsRound = (radius: number, sagitta: number, side: Side = 'on'): number =>
  4 * Math.ceil(Math.PI / 2 / step(radius, sagitta, side === 'outside'))

/** The widest step (radians, at most a quarter turn) of chords within `sagitta`: ends on the circle, or `tangent` to it. */
const step = (radius: number, sagitta: number, tangent: boolean): number => {
  const cosine = tangent ? radius / (radius + sagitta) : 1 - sagitta / radius
  return Math.min(Math.PI / 2, 2 * Math.acos(Math.max(cosine, 0)))
}

const chordsOf = ({ from, arc }: Edge, sagitta: number, tangent: boolean): Point[] => {
  if (!arc) return [from]
  const least = Math.ceil(Math.abs(arc.sweep) / step(arc.radius, sagitta, tangent) - 1e-9)
  const count = 2 * Math.ceil(least / 2) // even, so that half a circle has a corner where it reaches farthest
  const turn = arc.sweep / count
  const out = tangent ? 1 / Math.cos(turn / 2) : 1
  const [x, y] = [(from[0] - arc.centre[0]) * out, (from[1] - arc.centre[1]) * out]
  const between = Array.from({ length: tangent ? count : count - 1 }, (_, index): Point => {
    const angle = turn * (index + (tangent ? 0.5 : 1))
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    return [arc.centre[0] + x * c - y * s, arc.centre[1] + x * s + y * c]
  })
  return [from, ...between]
}

/** The outline as straight chords, each within `sagitta` (mm) of its arc. The corners of the outline are kept as they are. */
export const chords = (outline: Outline, sagitta: number, side: Side = 'on'): Point[] => {
  const turns = Math.sign(areaOf(outline))
  return edgesOf(outline).flatMap((edge) => {
    const convex = Math.sign(edge.arc?.sweep ?? 0) === turns
    const tangent = side !== 'on' && convex === (side === 'outside')
    return chordsOf(edge, sagitta, tangent).map(([x, y]): Point => [snapped(x), snapped(y)])
  })
}
