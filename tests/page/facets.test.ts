import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { contourAt, facetsOf } from '../../src/page/solid-view/facets.ts'
import { carve, type Kernel, type Mesh, openKernel } from '../../src/solid/mesh.ts'
import { circle } from '../../src/solid/outline.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel(readFileSync(join(import.meta.dirname, '../../node_modules/manifold-3d/manifold.wasm')))
})

const cube: Mesh = {
  positions: Float64Array.from([0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0, 0, 0, 2, 2, 0, 2, 2, 2, 2, 0, 2, 2]),
  triangles: Uint32Array.from([
    0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7,
  ]),
}
const as = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]

/** Length of pieces laid end to end in any order. */
const lengthOf = (ends: Float32Array): number => {
  let sum = 0
  for (let at = 0; at < ends.length; at += 6)
    sum += Math.hypot(
      (ends[at + 3] ?? 0) - (ends[at] ?? 0),
      (ends[at + 4] ?? 0) - (ends[at + 1] ?? 0),
      (ends[at + 5] ?? 0) - (ends[at + 2] ?? 0),
    )
  return sum
}

describe('a solid to be looked at', () => {
  it('a cube: twelve edges, none across its faces, and every face flat', () => {
    const { positions, normals, edges } = facetsOf(cube)
    expect(positions.length).toBe(3 * 36)
    expect(edges.length).toBe(6 * 12)
    expect(lengthOf(edges)).toBeCloseTo(24, 5)
    for (let at = 0; at < normals.length; at += 3)
      expect([...normals.subarray(at, at + 3)].map(Math.abs).toSorted()).toEqual([0, 0, 1])
  })

  it('a round: two edges, and normals straight out from its axis', () => {
    const mesh = carve(kernel, { make: 'extrude', outline: circle(10), from: 0, to: 8 }, 0.03)
    const { positions, normals, edges } = facetsOf(mesh)
    expect(lengthOf(edges)).toBeGreaterThan(2 * 2 * Math.PI * 5 * 0.98)
    expect(lengthOf(edges)).toBeLessThanOrEqual(2 * 2 * Math.PI * 5)
    let sides = 0
    for (let at = 0; at < normals.length; at += 3) {
      if (Math.abs(normals[at + 2] ?? 0) > 0.5) continue
      sides += 1
      const [x, y] = [positions[at] ?? 0, positions[at + 1] ?? 0]
      const out = (x * (normals[at] ?? 0) + y * (normals[at + 1] ?? 0)) / Math.hypot(x, y)
      expect(out).toBeGreaterThan(Math.cos((8 * Math.PI) / 180))
    }
    expect(sides).toBeGreaterThan(60)
  })

  it('cut open, its contour is closed and as long as the section is round', () => {
    const contour = contourAt(facetsOf(cube).positions, as, 1)
    expect(lengthOf(contour)).toBeCloseTo(8, 6)
    const ends = new Map<string, number>()
    for (let at = 0; at < contour.length; at += 3) {
      const key = [...contour.subarray(at, at + 3)].map((each) => each.toFixed(4)).join()
      ends.set(key, (ends.get(key) ?? 0) + 1)
    }
    expect([...ends.values()].every((count) => count % 2 === 0)).toBe(true)
    expect(contourAt(facetsOf(cube).positions, as, 3).length).toBe(0)
    // Moved and turned over before it is cut: the same.
    const moved = [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, 0, 5, 0, 2, 1]
    expect(lengthOf(contourAt(facetsOf(cube).positions, moved, 0.5))).toBeCloseTo(8, 6)
  })
})
