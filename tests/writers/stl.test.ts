import jscad from '@jscad/modeling'
import reader from '@jscad/stl-deserializer'
import fc from 'fast-check'
import type { ManifoldToplevel } from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { carve, type Mesh, measure, openKernel } from '../../src/solid/mesh.ts'
import { stl } from '../../src/writers/stl.ts'
import { anyPart, bar } from '../solid/parts.ts'

const kernel = (await openKernel()) as ManifoldToplevel
const view = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

/** The facets of a file with the corners that are the same made one, as a slicer does. */
const welded = (bytes: Uint8Array): Mesh => {
  const file = view(bytes)
  const seen = new Map<string, number>()
  const triangles = Array.from({ length: 3 * file.getUint32(80, true) }, (_, index) => {
    const at = 84 + 50 * Math.floor(index / 3) + 12 + 12 * (index % 3)
    const corner = [0, 4, 8].map((along) => file.getFloat32(at + along, true)).join(' ')
    if (!seen.has(corner)) seen.set(corner, seen.size)
    return seen.get(corner) ?? -1
  })
  const positions = [...seen.keys()].flatMap((corner) => corner.split(' ').map(Number))
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }
}

describe('STL', () => {
  it('is binary, as long as its count says, and its header says millimetres', () => {
    const mesh = carve(kernel, bar(8, 2, 1.5).solid)
    const bytes = stl(mesh)
    expect(view(bytes).getUint32(80, true)).toBe(mesh.triangles.length / 3)
    expect(bytes.length).toBe(84 + (50 * mesh.triangles.length) / 3)
    expect(new TextDecoder().decode(bytes.subarray(0, 80)).trim()).toBe('borewright - lengths in millimetres')
    expect(stl(mesh)).toEqual(bytes)
  })

  it.each(Object.entries(anyPart))('of a %s, welded and measured again, is the same closed body', (_, parts) => {
    fc.assert(
      fc.property(parts, ({ solid }) => {
        const mesh = carve(kernel, solid)
        const before = measure(mesh)
        const after = measure(welded(stl(mesh)))
        expect(after).toMatchObject({ bodies: before.bodies, genus: before.genus, openEdges: 0 })
        expect(Math.abs(after.volume - before.volume)).toBeLessThan(1e-5 * before.area)
        expect(after.leastFacet).toBeGreaterThan(1e-5)
      }),
      { numRuns: 20 },
    )
  })

  it.each(Object.entries(anyPart))('of a %s is taken by the kernel as a body without mending', (_, parts) => {
    fc.assert(
      fc.property(parts, ({ solid }) => {
        const { positions, triangles } = welded(stl(carve(kernel, solid)))
        const read = new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles })
        const body = kernel.Manifold.ofMesh(read)
        expect(body.status()).toBe('NoError')
        expect(body.numTri()).toBe(triangles.length / 3)
        body.delete()
      }),
      { numRuns: 10 },
    )
  })

  it('is read back by another reader with the same volume, and normals that point outwards', () => {
    const { solid, volume, area } = bar(8, 2, 1.5)
    const bytes = stl(carve(kernel, solid))
    const read = [reader.deserialize({ output: 'geometry' }, bytes.buffer)].flat()
    expect(read.map((body) => Math.abs(jscad.measurements.measureVolume(body) - volume) < 0.01 * area)).toEqual([true])
    const file = view(bytes)
    for (let facet = 84; facet < bytes.length; facet += 50) {
      const [normal, a, b, c] = [0, 12, 24, 36].map((part) =>
        [0, 4, 8].map((along) => file.getFloat32(facet + part + along, true)),
      ) as [number[], number[], number[], number[]]
      const [u, v] = [b, c].map((end) => end.map((at, axis) => at - (a[axis] ?? 0))) as [number[], number[]]
      const across = [0, 1, 2].map((axis) => {
        const [i, j] = [(axis + 1) % 3, (axis + 2) % 3]
        return (u[i] ?? 0) * (v[j] ?? 0) - (u[j] ?? 0) * (v[i] ?? 0)
      })
      const along = across.reduce((sum, at, axis) => sum + at * (normal[axis] ?? 0), 0) / Math.hypot(...across)
      expect(along).toBeGreaterThan(0.999)
    }
  })
})
