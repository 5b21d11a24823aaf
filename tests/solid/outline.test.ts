import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chords, chordsRound } from '../../src/solid/chords.ts'
import {
  areaOf,
  boundsOf,
  circle,
  edgesOf,
  mirrored,
  moved,
  type Outline,
  type Point,
  polygon,
  rectangle,
  reversed,
} from '../../src/solid/outline.ts'

const size = fc.double({ min: 0.5, max: 50, noNaN: true })
/** A slot with round ends, `long` between its centres. */
const slot = (long: number, radius: number): Outline => [
  { at: [-long / 2, -radius] },
  { at: [long / 2, -radius], bulge: 1 },
  { at: [long / 2, radius] },
  { at: [-long / 2, radius], bulge: 1 },
]
/** A square with its corners hollowed out by quarter circles: arcs that bend inwards. */
const hollowed = (half: number, radius: number): Outline => {
  const inwards = -Math.tan(Math.PI / 8)
  const near = half - radius
  const corners: readonly (readonly [Point, Point])[] = [
    [
      [half, near],
      [near, half],
    ],
    [
      [-near, half],
      [-half, near],
    ],
    [
      [-half, -near],
      [-near, -half],
    ],
    [
      [near, -half],
      [half, -near],
    ],
  ] // prettier-ignore
  return corners.flatMap(([enters, leaves]) => [{ at: enters, bulge: inwards }, { at: leaves }])
}
const shoelace = (points: readonly Point[]): number => areaOf(polygon(points))

describe('outlines', () => {
  it('have the area of the closed form, arcs included', () => {
    fc.assert(
      fc.property(size, size, (long, radius) => {
        expect(areaOf(circle(2 * radius, [7, -3]))).toBeCloseTo(Math.PI * radius ** 2, 6)
        expect(areaOf(slot(long, radius))).toBeCloseTo(2 * radius * long + Math.PI * radius ** 2, 6)
        expect(areaOf(hollowed(long + radius, radius))).toBeCloseTo(4 * (long + radius) ** 2 - Math.PI * radius ** 2, 6)
        expect(areaOf(rectangle([long, 0], [0, radius]))).toBeCloseTo(long * radius, 9)
      }),
    )
  })

  it('reach as far as their arcs do', () => {
    const { min, max } = boundsOf(slot(10, 3))
    expect([...min, ...max].map((at) => Math.round(at * 1e9) / 1e9)).toEqual([-8, -3, 8, 3])
    const round = boundsOf(circle(8, [1, 2]))
    expect([...round.min, ...round.max].map((at) => Math.round(at * 1e9) / 1e9)).toEqual([-3, -2, 5, 6])
    expect(boundsOf(hollowed(5, 2))).toEqual({ min: [-5, -5], max: [5, 5] })
  })

  it('keep their area when moved and mirrored, and lose its sign when reversed', () => {
    const lopsided: Outline = [{ at: [0, 0] }, { at: [9, 1], bulge: 0.3 }, { at: [4, 7], bulge: -0.2 }, { at: [1, 5] }]
    const area = areaOf(lopsided)
    expect(areaOf(moved(lopsided, [30, -4]))).toBeCloseTo(area, 9)
    expect(areaOf(mirrored(lopsided, 'x = 0'))).toBeCloseTo(area, 9)
    expect(areaOf(mirrored(lopsided, 'y = 0'))).toBeCloseTo(area, 9)
    expect(areaOf(reversed(lopsided))).toBeCloseTo(-area, 9)
    expect(reversed(reversed(lopsided)).map(({ at, bulge = 0 }) => [...at, bulge + 0])).toEqual(
      lopsided.map(({ at, bulge = 0 }) => [...at, bulge]),
    )
    expect(boundsOf(mirrored(lopsided, 'x = 0')).min[0]).toBeCloseTo(-boundsOf(lopsided).max[0], 9)
  })

  it('have arcs that start and end where their corners are', () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: -1.5, max: 1.5, noNaN: true }), (x, y, bulge) => {
        const [edge] = edgesOf([{ at: [0, 0], bulge }, { at: [x, y] }])
        if (!edge?.arc) return
        const { centre, radius, start, sweep } = edge.arc
        fc.pre(radius < 1e4)
        expect(centre[0] + radius * Math.cos(start)).toBeCloseTo(0, 6)
        expect(centre[0] + radius * Math.cos(start + sweep)).toBeCloseTo(x, 6)
        expect(centre[1] + radius * Math.sin(start + sweep)).toBeCloseTo(y, 6)
      }),
    )
  })
})

describe('chords', () => {
  const sagitta = fc.constantFrom(0.002, 0.01, 0.1)

  it('stay within the sagitta, on the side they are asked for', () => {
    fc.assert(
      fc.property(size, sagitta, fc.constantFrom('inside', 'outside', 'on'), (radius, bound, side) => {
        const points = chords(circle(2 * radius), bound, side)
        for (const [index, [x, y]] of points.entries()) {
          const [nx, ny] = points[(index + 1) % points.length] ?? [x, y]
          const [middle, end] = [Math.hypot((x + nx) / 2, (y + ny) / 2) - radius, Math.hypot(x, y) - radius]
          for (const off of [middle, end]) expect(Math.abs(off)).toBeLessThan(bound + 2e-6)
          if (side === 'outside') expect(Math.min(middle, end)).toBeGreaterThan(-2e-6)
          if (side !== 'outside') expect(Math.max(middle, end)).toBeLessThan(2e-6)
        }
      }),
    )
  })

  it('round hollow corners too: inside takes metal off, outside adds it', () => {
    fc.assert(
      fc.property(size, size, (half, radius) => {
        const outline = hollowed(half + radius, radius)
        const true_ = areaOf(outline)
        const slack = 1e-5 * (half + radius)
        expect(shoelace(chords(outline, 0.01, 'inside'))).toBeLessThan(true_ + slack)
        expect(shoelace(chords(outline, 0.01, 'outside'))).toBeGreaterThan(true_ - slack)
        for (const side of ['inside', 'outside', 'on'] as const)
          expect(Math.abs(shoelace(chords(outline, 0.01, side)) - true_)).toBeLessThan(
            0.01 * 2 * Math.PI * radius + slack,
          )
      }),
    )
  })

  it('reach exactly as far as the outline does, wherever its arcs begin', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.2, max: 0.95, noNaN: true }), (radius, flat) => {
        const [x, y] = [flat * radius, radius * Math.sqrt(1 - flat * flat)]
        const turn = 2 * Math.PI - 2 * Math.acos(flat)
        const flatted: Outline = [{ at: [x, y], bulge: Math.tan(turn / 4) }, { at: [x, -y] }]
        const [{ min, max }, reached] = [boundsOf(flatted), boundsOf(polygon(chords(flatted, 0.01)))]
        const off = [...min, ...max].map((at, index) => Math.abs(at - ([...reached.min, ...reached.max][index] ?? 0)))
        // A sixty-fourth of the sagitta where the farthest point is so near a corner that it is left to it.
        expect(Math.max(...off)).toBeLessThan(0.01 / 64 + 2e-6)
      }),
    )
  })

  it('lie on a grid of 1e-6 mm and keep every corner', () => {
    const points = chords(slot(20, 1 / 3), 0.01)
    for (const at of points.flat()) expect(Math.abs(at * 1e6 - Math.round(at * 1e6))).toBeLessThan(1e-6)
    for (const corner of [
      [-10, -0.333333],
      [10, -0.333333],
      [10, 0.333333],
      [-10, 0.333333],
    ])
      expect(points).toContainEqual(corner)
  }) // prettier-ignore

  it('are no more than the sagitta asks for', () => {
    // s = R(1 - cos(π/n)): 157.06 chords for R = 50, s = 0.01; the next multiple of four is 160.
    expect(chordsRound(50, 0.01)).toBe(160)
    expect(chordsRound(0.001, 0.01)).toBe(4)
  })
})
