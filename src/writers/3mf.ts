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
  const items = named.map(({ mesh }, index) => {
    const { min, max } = boundsOf(mesh)
    const [wide, deep] = [max[0] - min[0], max[1] - min[1]]
    if (x > 0 && x + wide > bed) [x, y, behind] = [0, y + behind + gap, 0]
    const moved = [x - min[0], y - min[1], -min[2]].map(snapped)
    x += wide + gap
    behind = Math.max(behind, deep)
    return `    <item objectid="${index + 1}" transform="1 0 0 0 1 0 0 0 1 ${moved.join(' ')}" />\n`
  })
  const objects = named.map(
    ({ name, mesh }, index) =>
      `  <object id="${index + 1}" type="model" name="${escaped(name)}">\n${meshText(mesh)}  </object>\n`,
  )
  const title = escaped(named.map(({ name }) => name).join(', '))
  const text = `${headOf(title)}  <resources>\n${objects.join('')}  </resources>\n<build>\n${items.join('')}</build>\n</model>\n`
  const files = { '[Content_Types].xml': contentTypes, '_rels/.rels': relations, [model]: text }
  const packed = Object.entries(files).map(([name, content]) => [name, strToU8(content)] as const)
  return zipSync(Object.fromEntries(packed), { mtime, level: 3 })
}

const signs: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string): string => text.replaceAll(/[&<>"]/g, (sign) => signs[sign] ?? sign)

/** What is written of a mesh, kept as long as the mesh is: it goes into its part's file and onto the plate. */
const written = new WeakMap<Mesh, string>()

function meshText(mesh: Mesh): string {
  const known = written.get(mesh)
  if (known !== undefined) return known
  const { positions, triangles } = mesh
  let text = '   <mesh>\n    <vertices>\n'
  const mm = (at: number): string => (positions[at] ?? 0).toPrecision(digits)
  for (let at = 0; at < positions.length; at += 3)
    text += `     <vertex x="${mm(at)}" y="${mm(at + 1)}" z="${mm(at + 2)}" />\n`
  text += '    </vertices>\n    <triangles>\n'
  for (let at = 0; at < triangles.length; at += 3)
    text += `     <triangle v1="${triangles[at]}" v2="${triangles[at + 1]}" v3="${triangles[at + 2]}" />\n`
  text += '    </triangles>\n   </mesh>\n'
  written.set(mesh, text)
  return text
}

const contentTypes = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml" />
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml" />
<Default Extension="png" ContentType="image/png" />
</Types>`

const relations = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
  <Relationship Target="/${model}" Id="rel-1" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" />
</Relationships>`

/** Metadata that says nothing is there for slicers that look for it. */
const headOf = (title: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:slic3rpe="http://schemas.slic3r.org/3mf/2017/06">
  <metadata name="slic3rpe:Version3mf">1</metadata>
  <metadata name="Title">${title}</metadata>
  <metadata name="Designer"></metadata>
  <metadata name="Description">${title}</metadata>
  <metadata name="Copyright"></metadata>
  <metadata name="LicenseTerms"></metadata>
  <metadata name="Rating"></metadata>
  <metadata name="CreationDate"></metadata>
  <metadata name="ModificationDate"></metadata>
  <metadata name="Application">borewright</metadata>
   `
