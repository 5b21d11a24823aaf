/** A carved mesh made ready to be looked at: smooth where it was round, sharp where it was not. */
import type { Mesh } from '../../solid/mesh.ts'

export interface Facets {
  /** x, y, z of each corner of each triangle, mm; no corner is shared. */
  readonly positions: Float32Array<ArrayBuffer>
  readonly normals: Float32Array<ArrayBuffer>
  /** Both ends of every edge that is seen. */
  readonly edges: Float32Array<ArrayBuffer>
}

/** Faces that turn by more than this meet in an edge; by less they were one round surface. Chords of a corner of 0.2 mm turn by 36°. */
const crease = Math.cos((40 * Math.PI) / 180)

/** Normals of the faces, each as long as twice its area. */
const faceNormals = ({ positions, triangles }: Mesh): Float64Array => {
  const normals = new Float64Array(triangles.length)
  for (let face = 0; face < triangles.length; face += 3) {
    const a = 3 * (triangles[face] ?? 0)
    const b = 3 * (triangles[face + 1] ?? 0)
    const c = 3 * (triangles[face + 2] ?? 0)
    const x = positions[a] ?? 0
    const y = positions[a + 1] ?? 0
    const z = positions[a + 2] ?? 0
    const ux = (positions[b] ?? 0) - x
    const uy = (positions[b + 1] ?? 0) - y
    const uz = (positions[b + 2] ?? 0) - z
    const vx = (positions[c] ?? 0) - x
    const vy = (positions[c + 1] ?? 0) - y
    const vz = (positions[c + 2] ?? 0) - z
    normals[face] = uy * vz - uz * vy
    normals[face + 1] = uz * vx - ux * vz
    normals[face + 2] = ux * vy - uy * vx
  }
  return normals
}

export const facetsOf = (mesh: Mesh): Facets => {
  const { positions, triangles } = mesh
  const normals = faceNormals(mesh)
  const along = (a: number, b: number): number =>
    (normals[a] ?? 0) * (normals[b] ?? 0) +
    (normals[a + 1] ?? 0) * (normals[b + 1] ?? 0) +
    (normals[a + 2] ?? 0) * (normals[b + 2] ?? 0)
  const length = (face: number): number => Math.sqrt(along(face, face))
  const smooth = (a: number, b: number): boolean => along(a, b) >= crease * length(a) * length(b)

  const corners = positions.length / 3
  // Faces round each corner, one after another.
  const first = new Uint32Array(corners + 1)
  for (const corner of triangles) first[corner + 1] = (first[corner + 1] ?? 0) + 1
  for (let corner = 0; corner < corners; corner++) first[corner + 1] = (first[corner + 1] ?? 0) + (first[corner] ?? 0)
  const filled = first.slice(0, corners)
  const round = new Uint32Array(triangles.length)
  triangles.forEach((corner, place) => {
    const at = filled[corner] ?? 0
    round[at] = place - (place % 3)
    filled[corner] = at + 1
  })

  const outPositions = new Float32Array(3 * triangles.length)
  const outNormals = new Float32Array(3 * triangles.length)
  const edges: number[] = []
  const put = (corner: number): void => {
    for (let axis = 3 * corner; axis < 3 * corner + 3; axis++) edges.push(positions[axis] ?? 0)
  }
  const seen = new Map<number, number>()
  for (let place = 0; place < triangles.length; place++) {
    const corner = triangles[place] ?? 0
    const face = place - (place % 3)
    let [x, y, z] = [0, 0, 0]
    for (let at = first[corner] ?? 0; at < (first[corner + 1] ?? 0); at++) {
      const other = round[at] ?? 0
      if (other !== face && !smooth(face, other)) continue
      x += normals[other] ?? 0
      y += normals[other + 1] ?? 0
      z += normals[other + 2] ?? 0
    }
    const long = Math.sqrt(x * x + y * y + z * z) || 1
    const to = 3 * place
    outNormals[to] = x / long
    outNormals[to + 1] = y / long
    outNormals[to + 2] = z / long
    const from = 3 * corner
    outPositions[to] = positions[from] ?? 0
    outPositions[to + 1] = positions[from + 1] ?? 0
    outPositions[to + 2] = positions[from + 2] ?? 0
    const next = triangles[face + ((place + 1) % 3)] ?? 0
    const key = Math.min(corner, next) * corners + Math.max(corner, next)
    const other = seen.get(key)
    if (other === undefined) seen.set(key, face)
    else if (!smooth(face, other)) {
      put(corner)
      put(next)
    }
  }
  return { positions: outPositions, normals: outNormals, edges: Float32Array.from(edges) }
}

/**
 * Where a body lies open when it is cut across z: both ends of each piece of its contour. `placed`: how the body is turned and moved before,
 * sixteen numbers, column by column.
 */
export const contourAt = (positions: Float32Array, placed: readonly number[], z: number): Float32Array<ArrayBuffer> => {
  const m = (place: number): number => placed[place] ?? 0
  const found: number[] = []
  const [xs, ys, zs] = [new Float64Array(3), new Float64Array(3), new Float64Array(3)]
  for (let face = 0; face < positions.length; face += 9) {
    for (let corner = 0; corner < 3; corner++) {
      const at = face + 3 * corner
      const [px, py, pz] = [positions[at] ?? 0, positions[at + 1] ?? 0, positions[at + 2] ?? 0]
      xs[corner] = m(0) * px + m(4) * py + m(8) * pz + m(12)
      ys[corner] = m(1) * px + m(5) * py + m(9) * pz + m(13)
      zs[corner] = m(2) * px + m(6) * py + m(10) * pz + m(14)
    }
    for (let corner = 0; corner < 3; corner++) {
      const other = (corner + 1) % 3
      const [a, b] = [(zs[corner] ?? 0) - z, (zs[other] ?? 0) - z]
      // A corner right on the plane counts as beyond it, so that each piece has two ends.
      if (a >= 0 === b >= 0) continue
      const share = a / (a - b)
      found.push(
        (xs[corner] ?? 0) + share * ((xs[other] ?? 0) - (xs[corner] ?? 0)),
        (ys[corner] ?? 0) + share * ((ys[other] ?? 0) - (ys[corner] ?? 0)),
        z,
      )
    }
  }
  return Float32Array.from(found)
}
