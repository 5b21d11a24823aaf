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
