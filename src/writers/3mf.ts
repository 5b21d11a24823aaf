import { FileForRelThumbnail, fileForContentTypes, to3dmodelSimple } from '@jscadui/3mf-export'
import { strToU8, zipSync } from 'fflate'
import { snapped } from '../solid/chords.ts'
import { boundsOf, type Mesh } from '../solid/measure.ts'

const model = '3D/3dmodel.model'
/** Nine digits are a thousandth of a micron in a metre: all that a carved mesh has. */
const digits = 9
const gap = 10
/** A row is not longer than this, mm, unless one body alone is: a small printer's bed. */
const bed = 180
/** No clock in a file. A zip's dates are local time: this one is the same in every zone. */
const mtime = new Date(1980, 0, 1)

/**
 * Meshes as one 3MF package, unit millimetre, corners shared, each in its own coordinates; on the plate they stand in rows along x, 10 mm
 * apart, one row behind the other, their lowest points at z = 0. The same meshes give the same bytes.
 */
export function threeMf(named: readonly { readonly name: string; readonly mesh: Mesh }[]): Uint8Array {
  let [x, y, behind] = [0, 0, 0]
  const meshes = named.map(({ name, mesh }, index) => {
    const { min, max } = boundsOf(mesh)
    const [wide, deep] = [max[0] - min[0], max[1] - min[1]]
    if (x > 0 && x + wide > bed) [x, y, behind] = [0, y + behind + gap, 0]
    const [dx, dy, dz] = [x - min[0], y - min[1], -min[2]].map(snapped)
    x += wide + gap
    behind = Math.max(behind, deep)
    const transform = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, dx ?? 0, dy ?? 0, dz ?? 0, 1]
    return { id: index + 1, name: escaped(name), vertices: mesh.positions, indices: mesh.triangles, transform }
  })
  const title = escaped(named.map(({ name }) => name).join(', '))
  const header = { unit: 'millimeter', title, application: 'borewright', creationDate: null } as const
  const relations = new FileForRelThumbnail()
  relations.add3dModel(`/${model}`)
  const files = [fileForContentTypes, relations, { name: model, content: to3dmodelSimple(meshes, header, digits) }]
  return zipSync(Object.fromEntries(files.map(({ name, content }) => [name, strToU8(content)])), { mtime, level: 3 })
}

const signs: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string): string => text.replaceAll(/[&<>"]/g, (sign) => signs[sign] ?? sign)
