/** Triangles with shared corners: `positions` x, y, z of each corner in mm, `triangles` three corners each, counter-clockwise seen from outside. */
export interface Mesh {
  readonly positions: Float64Array
  readonly triangles: Uint32Array
}

export interface Measured {
  /** mm³ */
  readonly volume: number
  /** mm² */
  readonly area: number
  readonly min: readonly [number, number, number]
  readonly max: readonly [number, number, number]
  /** Closed shells: one for one body without a hidden hollow. */
  readonly bodies: number
  /** Ways through: a plain tube has one. Of all the bodies together. */
  readonly genus: number
  /** Edges that are not shared by exactly two triangles, one each way: none in a watertight mesh. */
  readonly openEdges: number
  /** The least height of any triangle, mm: nothing for a triangle without area. */
  readonly leastFacet: number
}

/** The smallest upright box round a mesh, mm. */
export const boundsOf = ({ positions, triangles }: Mesh): Pick<Measured, 'min' | 'max'> => {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const corner of triangles)
    for (let axis = 0; axis < 3; axis += 1) {
      const at = positions[3 * corner + axis] ?? 0
      if (at < (min[axis] ?? 0)) min[axis] = at
      if (at > (max[axis] ?? 0)) max[axis] = at
    }
  return { min, max }
}

/** What can be said of a mesh without any kernel. */
export const measure = (mesh: Mesh): Measured => {
  const { positions, triangles } = mesh
  const parent = Array.from({ length: positions.length / 3 }, (_, index) => index)
  const rootOf = (vertex: number): number => {
    let at = vertex
    while (parent[at] !== at) at = parent[at] = parent[parent[at] ?? at] ?? at
    return at
  }
  const ways = new Map<number, number>()
  let [volume, area] = [0, 0]
  for (let first = 0; first < triangles.length; first += 3) {
    const [a, b, c] = facetOf(mesh, first)
    const across = cross(minus(b, a), minus(c, a))
    volume += dot(a, cross(b, c)) / 6
    const twice = Math.hypot(...across)
    area += twice / 2
    for (let side = 0; side < 3; side += 1) {
      const [from, to] = [triangles[first + side] ?? 0, triangles[first + ((side + 1) % 3)] ?? 0]
      const way = from * parent.length + to
      ways.set(way, (ways.get(way) ?? 0) + 1)
      parent[rootOf(from)] = rootOf(to)
    }
  }
  const open = [...ways].filter(([way, times]) => {
    const [from, to] = [Math.floor(way / parent.length), way % parent.length]
    return times !== 1 || ways.get(to * parent.length + from) !== 1
  })
  const used = new Set(triangles)
  const bodies = [...used].filter((vertex) => rootOf(vertex) === vertex).length
  const euler = used.size - ways.size / 2 + triangles.length / 3
  return {
    volume,
    area,
    ...boundsOf(mesh),
    bodies,
    genus: bodies - euler / 2,
    openEdges: open.length,
    leastFacet: leastHeight(mesh),
  }
}

/** The least height of any triangle, mm: twice its area by its longest side. In plain numbers, for every carving asks it. */
export const leastHeight = ({ positions, triangles }: Mesh): number => {
  let least = Infinity
  for (let first = 0; first < triangles.length; first += 3) {
    const a = 3 * (triangles[first] ?? 0)
    const b = 3 * (triangles[first + 1] ?? 0)
    const c = 3 * (triangles[first + 2] ?? 0)
    const x = positions[a] ?? 0
    const y = positions[a + 1] ?? 0
    const z = positions[a + 2] ?? 0
    const ux = (positions[b] ?? 0) - x
    const uy = (positions[b + 1] ?? 0) - y
    const uz = (positions[b + 2] ?? 0) - z
    const vx = (positions[c] ?? 0) - x
    const vy = (positions[c + 1] ?? 0) - y
    const vz = (positions[c + 2] ?? 0) - z
    const across = (uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2
    const opposite = (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2
    const longest = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz, opposite)
    least = Math.min(least, longest > 0 ? across / longest : 0)
  }
  return Math.sqrt(least)
}

/** The corners of the triangle whose first index stands at `first`. */
const facetOf = ({ positions, triangles }: Mesh, first: number): [Vector, Vector, Vector] => {
  const corner = (index: number): Vector => {
    const at = 3 * (triangles[index] ?? 0)
    return [positions[at] ?? 0, positions[at + 1] ?? 0, positions[at + 2] ?? 0]
  }
  return [corner(first), corner(first + 1), corner(first + 2)]
}

type Vector = readonly [number, number, number]
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
