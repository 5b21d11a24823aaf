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

const quarter = Math.PI / 2

/** Where to break an arc (radians from its start): its ends, and between them where it reaches farthest along x or y. */
const breaksOf = ({ start, sweep }: NonNullable<Edge['arc']>, room: number): number[] => {
  const [low, high] = [Math.min(start, start + sweep), Math.max(start, start + sweep)]
  const first = Math.ceil((low + room) / quarter)
  const last = Math.floor((high - room) / quarter)
  const farthest = Array.from({ length: Math.max(last - first + 1, 0) }, (_, at) => (first + at) * quarter - start)
  return [0, ...(sweep < 0 ? farthest.toReversed() : farthest), sweep]
}

const chordsOf = ({ from, arc }: Edge, sagitta: number, tangent: boolean): Point[] => {
  if (!arc) return [from]
  const { centre, radius, start, sweep } = arc
  const widest = step(radius, sagitta, tangent)
  const breaks = breaksOf(arc, widest / 8)
  const between = breaks.slice(1).flatMap((end, index) => {
    const begin = breaks[index] ?? 0
    const count = Math.ceil(Math.abs(end - begin) / widest - 1e-9)
    const turn = (end - begin) / count
    const out = tangent ? radius / Math.cos(turn / 2) : radius
    const ends = Array.from(
      { length: tangent ? count : count - 1 },
      (_, at) => begin + turn * (at + (tangent ? 0.5 : 1)),
    )
    const round = ends.map((angle): [number, number] => [start + angle, out])
    return end === sweep ? round : [...round, [start + end, radius] as [number, number]]
  })
  const placed = ([angle, out]: [number, number]): Point => [
    centre[0] + out * Math.cos(angle),
    centre[1] + out * Math.sin(angle),
  ]
  return [from, ...between.map(placed)]
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
