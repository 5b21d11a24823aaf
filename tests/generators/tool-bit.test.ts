import { beforeAll, describe, expect, it } from 'vitest'
import { faceEdge } from '../../generators/tool-bit-above.ts'
import { endLevel } from '../../generators/tool-bit-contour.ts'
import { bitSolid, blankSection, edgeHeight, nosePoints } from '../../generators/tool-bit-nose.ts'
import type { ToolBit } from '../../src/dimensions/types.ts'
import { carve, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf } from '../../src/solid/outline.ts'
import type { Point3 } from '../../src/solid/solid.ts'
import { everyDesign } from './designs.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** Flat noses with a straight end, of bits that stand square in their bars; the others have tests of their own. */
const bits = everyDesign.flatMap(({ bit }) =>
  bit && bit.form === undefined && bit.noseEndRadius === undefined && !bit.leaning ? [bit] : [],
)
const square = bits.filter(({ shape }) => shape === 'square')
const round = bits.filter(({ shape }) => shape === 'round')
const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180)

const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const crossed = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** The side's plane through the last corner point on the face, the same at the bottom, and the neck's upper corner; y at (x, z). */
const sidePlane = (bit: ToolBit): ((x: number, z: number) => number) => {
  const { face, bottom, neck } = nosePoints(bit)
  const last = face.length - 2
  const [a, b, c] = [face[last], bottom[last], neck[0]]
  if (!a || !b || !c) throw new Error('no points')
  const normal = crossed(minus(b, a), minus(c, a))
  return (x, z) => (dot(normal, a) - normal[0] * x - normal[2] * z) / normal[1]
}

describe('the ground nose', () => {
  it('covers both shapes of blank', () => {
    expect(square.length).toBeGreaterThan(20)
    expect(round.length).toBeGreaterThan(5)
  })

  it('has the widths of the core, at the edge, at the neck on the face, and under the edge', () => {
    for (const bit of bits) {
      const side = sidePlane(bit)
      const height = edgeHeight(bit)
      expect(2 * side(0, height)).toBeCloseTo(bit.noseWidth.nominal, 9)
      expect(2 * side(bit.noseLength, height - bit.faceDrop.nominal)).toBeCloseTo(bit.widthAtNeck.nominal, 9)
      expect(2 * side(0, 0)).toBeCloseTo(bit.widthAtHeel.nominal, 9)
      const neck = nosePoints(bit).neck[0]
      expect(neck?.[0]).toBeCloseTo(bit.noseLength, 12)
      expect(2 * (neck?.[1] ?? 0)).toBeCloseTo(bit.widthAtNeck.nominal, 9)
      expect(height - (neck?.[2] ?? 0)).toBeCloseTo(bit.faceDrop.nominal, 9)
    }
  })

  it('is set back at the bottom by the end relief', () => {
    for (const bit of square) {
      const least = Math.min(...nosePoints(bit).bottom.map(([x]) => x))
      expect(least).toBeCloseTo(bit.endSetBack.nominal, 9)
      expect(least).toBeGreaterThan(bit.endSetBack.lower)
    }
  })

  it('has true planes: face, end and sides', () => {
    for (const bit of bits) {
      const height = edgeHeight(bit)
      const { face, bottom, neck } = nosePoints(bit)
      const side = sidePlane(bit)
      for (const [x, , z] of face) expect(z).toBeCloseTo(height - x * tan(bit.rake), 9)
      for (const [x, , z] of [...face.slice(0, 2), ...bottom.slice(0, 2)])
        expect(x).toBeCloseTo((height - z) * tan(bit.endRelief), 9)
      for (const [x, y, z] of neck) expect(Math.abs(y)).toBeCloseTo(side(x, z), 9)
      for (const [, , z] of bottom) expect(z).toBeCloseTo(0, 12)
    }
  })

  it('rounds the corner tangent to end and side', () => {
    for (const bit of bits.filter(({ cornerRadius }) => cornerRadius > 0)) {
      const points = endLevel(bit, 0)
      const [first, last] = [points[0], points.at(-1)]
      const radius = bit.cornerRadius
      // The centre lies behind the end's tangent point, square to it.
      const centre = [radius, first?.[1] ?? 0]
      expect(first?.[0]).toBeCloseTo(0, 9)
      for (const [x, y] of points) expect(Math.hypot(x - radius, y - (first?.[1] ?? 0))).toBeCloseTo(radius, 9)
      const onSide = bit.noseWidth.nominal / 2 - (last?.[0] ?? 0) * tan(bit.backTaper)
      expect(last?.[1]).toBeCloseTo(onSide, 9)
      const along = [(last?.[0] ?? 0) - (centre[0] ?? 0), (last?.[1] ?? 0) - (centre[1] ?? 0)]
      expect((along[0] ?? 0) - tan(bit.backTaper) * (along[1] ?? 0)).toBeCloseTo(0, 9)
    }
  })

  it('is clear of the broken corners of a square blank', () => {
    for (const bit of square) {
      const half = bit.noseWidth.nominal / 2
      const height = edgeHeight(bit)
      // Across the break: y + z is constant.
      expect(half + height).toBeLessThanOrEqual(bit.size / 2 + bit.size - bit.cornerBreak + 1e-9)
      expect(height).toBeLessThanOrEqual(bit.size)
      for (const [, y] of nosePoints(bit).bottom) expect(Math.abs(y)).toBeLessThan(bit.size / 2 - bit.cornerBreak)
    }
  })

  it('fits in a round blank at the edge', () => {
    for (const bit of round) {
      const above = edgeHeight(bit) - bit.size / 2
      expect(Math.hypot(bit.noseWidth.nominal / 2, above)).toBeLessThanOrEqual(bit.size / 2)
      expect(above).toBeLessThanOrEqual(Math.sqrt(bit.size ** 2 - bit.noseWidth.nominal ** 2) / 2)
    }
  })

  it('is drawn from above as the face is ground', () => {
    for (const bit of bits) {
      const edge = faceEdge(bit)
      for (const { at } of edge.slice(bit.cornerRadius > 0 ? 1 : 0, -1))
        expect(at[1]).toBeCloseTo(bit.noseWidth.nominal / 2 - at[0] * tan(bit.backTaperEffective), 9)
    }
  })
})

describe('the carved bit', () => {
  it('is one closed body of the length and size of the blank', () => {
    for (const bit of [...square.slice(0, 12), ...round.slice(0, 6)]) {
      const { bodies, genus, openEdges, min, max } = measure(carve(kernel, bitSolid(bit), 0.005))
      expect({ bodies, genus, openEdges }).toEqual({ bodies: 1, genus: 0, openEdges: 0 })
      expect([min[0], max[0]]).toEqual([expect.closeTo(0, 5), expect.closeTo(bit.length, 5)])
      expect(Math.abs(max[2] - min[2] - bit.size + (bit.flat ?? 0))).toBeLessThan(0.011)
      expect(Math.abs(max[1] - min[1] - bit.size)).toBeLessThan(0.011)
    }
  })

  it('has the neck and heel of the core in its mesh', () => {
    for (const bit of square.slice(0, 12)) {
      const { positions } = carve(kernel, bitSolid(bit), 0.005)
      const points = Array.from({ length: positions.length / 3 }, (_, index) =>
        [0, 1, 2].map((axis) => positions[3 * index + axis] ?? 0),
      )
      const near = (x: number, z: number) =>
        Math.max(
          ...points
            .filter((point) => Math.hypot((point[0] ?? 0) - x, (point[2] ?? 0) - z) < 1e-3)
            .map((point) => point[1] ?? 0),
        )
      const neckZ = edgeHeight(bit) - bit.faceDrop.nominal
      expect(2 * near(bit.noseLength, neckZ)).toBeCloseTo(bit.widthAtNeck.nominal, 2)
      // The heel's corner is where end, side and bottom meet, behind the point under the edge by the set-back.
      const foot = points
        .filter((point) => Math.abs(point[2] ?? 0) < 1e-3 && (point[0] ?? 0) < bit.noseLength - 1e-3)
        .map((point) => (point[1] ?? 0) + (point[0] ?? 0) * tan(bit.backTaper))
      const heel = 2 * Math.max(...foot)
      expect(heel).toBeCloseTo(bit.widthAtHeel.nominal, 2)
    }
  })

  it('has the volume of blank and nose', () => {
    for (const bit of square) {
      const { volume } = measure(carve(kernel, bitSolid(bit), 0.005))
      // Level slices of the nose: length and mean width are linear in z below the face, the face cuts a wedge off.
      const height = edgeHeight(bit)
      const slice = (z: number): number => {
        const down = height - z
        const from = down * tan(bit.endRelief)
        const to = Math.min(bit.noseLength, bit.rake > 0 ? down / tan(bit.rake) : bit.noseLength)
        const width = (x: number) => bit.noseWidth.nominal - 2 * x * tan(bit.backTaper) - 2 * down * tan(bit.sideRelief)
        return Math.max(0, to - from) * width((from + to) / 2)
      }
      const steps = 4000
      let nose = 0
      for (let step = 0; step < steps; step += 1) nose += slice(((step + 0.5) * height) / steps)
      nose *= height / steps
      const blank = areaOf(blankSection(bit)) * (bit.length - bit.noseLength)
      const corners = 2 * bit.cornerRadius ** 2 * (1 - Math.PI / 4) * bit.size
      expect(volume / (blank + nose - corners), JSON.stringify(bit)).toBeCloseTo(1, 3)
    }
  })
})
