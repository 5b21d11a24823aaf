/** A point in a plane, mm. */
export type Point = readonly [x: number, y: number]

/**
 * A corner of an outline. `bulge` bends the edge that leaves this corner: tan(a quarter of the arc's angle), positive where the
 * arc turns counter-clockwise (the DXF convention), 0 or absent for a straight edge.
 */
export interface Corner {
  readonly at: Point
  readonly bulge?: number
}

/** A closed contour: the last corner's edge leads back to the first. Counter-clockwise round metal. */
export type Outline = readonly Corner[]

/** One edge of an outline. For an arc: its centre, radius, the angle of its start and its sweep (radians, + is counter-clockwise). */
export interface Edge {
  readonly from: Point
  readonly to: Point
  readonly arc?: { readonly centre: Point; readonly radius: number; readonly start: number; readonly sweep: number }
}

/** A full circle: two half turns, counter-clockwise. */
export const circle = (diameter: number, centre: Point = [0, 0]): Outline => [
  { at: [centre[0] + diameter / 2, centre[1]], bulge: 1 },
  { at: [centre[0] - diameter / 2, centre[1]], bulge: 1 },
]

/** The upright rectangle between two opposite corners, counter-clockwise. */
export const rectangle = (one: Point, other: Point): Outline => {
  const [left, right] = [Math.min(one[0], other[0]), Math.max(one[0], other[0])]
  const [low, high] = [Math.min(one[1], other[1]), Math.max(one[1], other[1])]
  return polygon([
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ])
}

/** Straight edges from point to point and back to the first. */
export const polygon = (points: readonly Point[]): Outline => points.map((at) => ({ at }))

/** The edges in order, arcs worked out. */
export const edgesOf = (outline: Outline): Edge[] =>
  outline.map(({ at: from, bulge = 0 }, index) => {
    const to = (outline[index + 1] ?? outline[0])?.at ?? from
    if (bulge === 0) return { from, to }
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const lean = (1 - bulge * bulge) / (4 * bulge)
    const centre: Point = [(from[0] + to[0]) / 2 - dy * lean, (from[1] + to[1]) / 2 + dx * lean]
    const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
    const start = Math.atan2(from[1] - centre[1], from[0] - centre[0])
    return { from, to, arc: { centre, radius, start, sweep: 4 * Math.atan(bulge) } }
  })

/** Enclosed area, mm², exact with its arcs; negative for a clockwise outline. */
export const areaOf = (outline: Outline): number =>
  edgesOf(outline).reduce((sum, { from, to, arc }) => {
    const segment = arc ? (arc.radius ** 2 * (arc.sweep - Math.sin(arc.sweep))) / 2 : 0
    return sum + (from[0] * to[1] - to[0] * from[1]) / 2 + segment
  }, 0)

/** The smallest upright rectangle round the outline, exact with its arcs. */
export const boundsOf = (outline: Outline): { readonly min: Point; readonly max: Point } => {
  const reached = edgesOf(outline).flatMap(({ from, arc }) => {
    if (!arc) return [from]
    const [low, high] = [Math.min(arc.start, arc.start + arc.sweep), Math.max(arc.start, arc.start + arc.sweep)]
    const quarters: Point[] = [from]
    for (let quarter = Math.ceil(low / (Math.PI / 2)); quarter * (Math.PI / 2) <= high; quarter += 1) {
      const side = ((quarter % 4) + 4) % 4
      const [x, y] = [[1, 0, -1, 0][side] ?? 0, [0, 1, 0, -1][side] ?? 0]
      quarters.push([arc.centre[0] + x * arc.radius, arc.centre[1] + y * arc.radius])
    }
    return quarters
  })
  const [xs, ys] = [reached.map((at) => at[0]), reached.map((at) => at[1])]
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }
}

/** The same contour run the other way round. */
export const reversed = (outline: Outline): Outline =>
  outline
    .map((corner, index) => {
      const bulge = (outline[index - 1] ?? outline.at(-1))?.bulge ?? 0
      return bulge === 0 ? { at: corner.at } : { at: corner.at, bulge: -bulge }
    })
    .toReversed()

/** Mirrored in the line x = 0 or y = 0, turning the same way round as before. */
export const mirrored = (outline: Outline, line: 'x = 0' | 'y = 0'): Outline => {
  const [sx, sy] = line === 'x = 0' ? [-1, 1] : [1, -1]
  return reversed(
    outline.map(({ at: [x, y], bulge = 0 }) =>
      bulge === 0 ? { at: [sx * x, sy * y] } : { at: [sx * x, sy * y], bulge: -bulge },
    ),
  )
}

/** Moved by (x, y) mm. */
export const moved = (outline: Outline, by: Point): Outline =>
  outline.map((corner) => ({ ...corner, at: [corner.at[0] + by[0], corner.at[1] + by[1]] }))
