import type { Mesh } from '../solid/measure.ts'

const header = 'borewright - lengths in millimetres'.padEnd(80)
/** Bytes of a facet: its normal and three corners in single precision, and two that mean nothing. */
const facetSize = 50

/** A mesh as binary STL, mm. The format states no unit and keeps single precision: corners to within 4e-6 mm up to 100 mm. */
export function stl({ positions, triangles }: Mesh): Uint8Array {
  const count = triangles.length / 3
  const bytes = new Uint8Array(84 + facetSize * count)
  bytes.set(new TextEncoder().encode(header))
  const view = new DataView(bytes.buffer)
  view.setUint32(80, count, true)
  for (let facet = 0, at = 84; facet < count; facet++, at += facetSize) {
    const a = 3 * (triangles[3 * facet] ?? 0)
    const b = 3 * (triangles[3 * facet + 1] ?? 0)
    const c = 3 * (triangles[3 * facet + 2] ?? 0)
    const ax = positions[a] ?? 0
    const ay = positions[a + 1] ?? 0
    const az = positions[a + 2] ?? 0
    const bx = positions[b] ?? 0
    const by = positions[b + 1] ?? 0
    const bz = positions[b + 2] ?? 0
    const cx = positions[c] ?? 0
    const cy = positions[c + 1] ?? 0
    const cz = positions[c + 2] ?? 0
    const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay)
    const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az)
    const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    const squares = nx * nx + ny * ny + nz * nz
    const one = squares > 0 ? 1 / Math.sqrt(squares) : 0
    view.setFloat32(at, nx * one, true)
    view.setFloat32(at + 4, ny * one, true)
    view.setFloat32(at + 8, nz * one, true)
    view.setFloat32(at + 12, ax, true)
    view.setFloat32(at + 16, ay, true)
    view.setFloat32(at + 20, az, true)
    view.setFloat32(at + 24, bx, true)
    view.setFloat32(at + 28, by, true)
    view.setFloat32(at + 32, bz, true)
    view.setFloat32(at + 36, cx, true)
    view.setFloat32(at + 40, cy, true)
    view.setFloat32(at + 44, cz, true)
  }
  return bytes
}
