/**
 * Turned parts: half sections in (radius, z) and how they look with the axis level.
 *
 *     y
 *     |  ┌──┐            half section, corners from the
 *     |  │  └─────────┐  axis on the left round to the
 *     ┼──┴────────────┴─ x = z    axis on the right
 */
import type { Mark } from '../src/drawing/view.ts'
import type { Corner, Outline, Point } from '../src/solid/outline.ts'

const quarter = Math.tan(Math.PI / 8)

/** A corner cut inwards (the tool comes in along -radius and leaves along +z) with a radius left in it. */
export const roundedInside = ([r, z]: Point, radius: number): readonly Corner[] => [
  { at: [r + radius, z], bulge: -quarter },
  { at: [r, z + radius] },
]

/** Silhouette of the turned body with its axis level: view (x, y) = (z, ±radius), counter-clockwise. */
export const turned = (halfSection: Outline): Outline => {
  const skin = halfSection.filter(({ at: [radius] }) => radius > 0)
  const below = skin.map(({ at: [radius, z], bulge = 0 }): Corner => ({ at: [z, -radius], bulge }))
  const above = skin.map(
    ({ at: [radius, z] }, index): Corner => ({ at: [z, radius], bulge: skin[index - 1]?.bulge ?? 0 }),
  )
  return [...below, ...above.toReversed()]
}

/** A turned edge seen from the side, left out within `clear` of the axis where a slot takes it away. */
export const turnedEdge = (z: number, radius: number, clear = 0): readonly Mark[] =>
  clear === 0
    ? [{ mark: 'line', kind: 'visible', from: [z, -radius], to: [z, radius] }]
    : [-1, 1].map((side) => ({
        mark: 'line',
        kind: 'visible',
        from: [z, side * clear],
        to: [z, side * radius],
      }))
