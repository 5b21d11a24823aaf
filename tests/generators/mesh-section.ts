import { difference, intersection, type MultiPolygon, type Polygon, type Ring } from './clipping.ts'
import type { Mesh } from '../../src/solid/measure.ts'

/** Loops in which a closed mesh meets the plane `axis` = `level`, in the other two coordinates, cyclic order kept (x, y of z; y, z of x). */
export const loopsAt = (mesh: Mesh, axis: 0 | 1 | 2, level: number): readonly Ring[] => {
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3] as [number, number]
  const key = (at: readonly [number, number]) => `${at[0]} ${at[1]}`
  const next = new Map<string, { to: [number, number]; from: [number, number] }[]>()
  for (let first = 0; first < mesh.triangles.length; first += 3) {
    const corners = [0, 1, 2].map((side) => {
      const at = 3 * (mesh.triangles[first + side] ?? 0)
      return [0, 1, 2].map((one) => mesh.positions[at + one] ?? 0) as [number, number, number]
    })
    const crossed: { at: [number, number]; up: boolean }[] = []
    for (let side = 0; side < 3; side += 1) {
      const [a, b] = [corners[side], corners[(side + 1) % 3]] as [number[], number[]]
      const [za, zb] = [(a[axis] ?? 0) - level, (b[axis] ?? 0) - level]
      if (za < 0 === zb < 0) continue
      // Worked from below upwards, so that both triangles of an edge give the very same numbers.
      const [low, high] = za < 0 ? [a, b] : [b, a]
      const part = (level - (low[axis] ?? 0)) / ((high[axis] ?? 0) - (low[axis] ?? 0))
      const along = (one: number) => (low[one] ?? 0) + part * ((high[one] ?? 0) - (low[one] ?? 0))
      crossed.push({ at: [along(u), along(v)], up: za < 0 })
    }
    const [from, to] = [crossed.find(({ up }) => !up), crossed.find(({ up }) => up)]
    if (!from || !to || key(from.at) === key(to.at)) continue
    next.set(key(from.at), [...(next.get(key(from.at)) ?? []), { from: from.at, to: to.at }])
  }
  const loops: Ring[] = []
  for (const start of next.keys()) {
    const loop: [number, number][] = []
    let at = start
    for (;;) {
      const edge = next.get(at)?.pop()
      if (!edge) break
      loop.push(edge.from)
      at = key(edge.to)
    }
    if (loop.length > 2) loops.push(loop)
  }
  return loops
}

const ringArea = (ring: Ring): number =>
  ring.reduce((sum, [x, y], index) => {
    const [nx, ny] = ring[(index + 1) % ring.length] ?? [x, y]
    return sum + (x * ny - nx * y) / 2
  }, 0)

/** mm², holes taken off. */
export const areaIn = (shapes: MultiPolygon): number =>
  shapes.reduce(
    (sum, rings) =>
      sum + rings.reduce((all, ring, index) => all + (index === 0 ? 1 : -1) * Math.abs(ringArea(ring)), 0),
    0,
  )

/** Metal of a section from its loops: outer loops run one way round, holes the other. */
export const metalOf = (loops: readonly Ring[]): MultiPolygon => {
  const largest = loops.toSorted((a, b) => Math.abs(ringArea(b)) - Math.abs(ringArea(a)))
  const way = Math.sign(ringArea(largest[0] ?? []))
  const outer: Polygon[] = largest.filter((ring) => Math.sign(ringArea(ring)) === way).map((ring) => [ring])
  const holes: Polygon[] = largest.filter((ring) => Math.sign(ringArea(ring)) !== way).map((ring) => [ring])
  return holes.length === 0 ? outer : difference(outer, ...holes)
}

export const moved = (shapes: MultiPolygon, x: number, y: number): MultiPolygon =>
  shapes.map((rings) => rings.map((ring) => ring.map(([px, py]): [number, number] => [px + x, py + y])))

/** What of `shape` lies outside `within`, mm². */
export const outside = (shape: MultiPolygon, within: MultiPolygon): number => areaIn(difference(shape, within))
/** What two share, mm². */
export const shared = (shape: MultiPolygon, other: MultiPolygon): number => areaIn(intersection(shape, other))
