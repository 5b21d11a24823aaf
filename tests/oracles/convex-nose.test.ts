import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { touchOffX } from '../../src/dimensions/bore.ts'

/** Points of a nose with a convex end, its middle at x = 0, the bar behind it: end arc, corner arc, side. By stepping, no closed form. */
const outline = (width: number, corner: number, end: number): readonly (readonly [number, number])[] => {
  const half = width / 2
  const points: [number, number][] = []
  // Every circle of the corner's radius that lies inside both end arc and side: the corner is the one whose centre touches both.
  const centreY = half - corner
  const centreX = -end + Math.sqrt((end - corner) ** 2 - centreY ** 2)
  for (let step = 0; step <= 4000; step++) {
    const angle = (step / 4000) * (Math.PI / 2)
    const y = (step / 4000) * (centreY + corner)
    if (y <= (centreY * end) / (end - corner)) points.push([Math.sqrt(end ** 2 - y ** 2) - end, y])
    points.push([centreX + corner * Math.cos(angle), centreY + corner * Math.sin(angle)])
  }
  return points
}

describe('a convex nose', () => {
  it('first touches where no point of its outline has left the bore before', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 1.02, max: 1.4, noNaN: true }),
        (radius, narrow, round, larger) => {
          const width = narrow * radius
          const corner = (round * width) / 2
          const end = larger * radius
          // How far out the middle may go: the least over the outline of what is left before the bore's circle.
          const brute = Math.min(...outline(width, corner, end).map(([x, y]) => Math.sqrt(radius ** 2 - y ** 2) - x))
          expect(touchOffX(radius, width, corner, 0, end)).toBeCloseTo(brute, 4)
        },
      ),
      { numRuns: 200, seed: 7 },
    )
  })

  it('with an end that is all but flat touches as a flat one', () => {
    expect(touchOffX(12.5, 8, 0.2, 0, 1e9)).toBeCloseTo(touchOffX(12.5, 8, 0.2), 6)
  })
})
