import fc from 'fast-check'
import { strFromU8, unzipSync } from 'fflate'
import type { ManifoldToplevel } from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { carve, type Mesh, measure, openKernel } from '../../src/solid/mesh.ts'
import { threeMf } from '../../src/writers/3mf.ts'
import { anyPart, bar, bushing, plug } from '../solid/parts.ts'

const kernel = (await openKernel()) as ManifoldToplevel
const xmlOf = (bytes: Uint8Array): string => strFromU8(unzipSync(bytes)['3D/3dmodel.model'] ?? new Uint8Array())
const numbers = (xml: string, tag: string, names: readonly string[]): number[] =>
  [...xml.matchAll(new RegExp(`<${tag} ([^>]*)/>`, 'g'))].flatMap(([, attributes = '']) =>
    names.map((name) => Number(new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1])),
  )
/** What the XML alone says of each object. */
const read = (xml: string): { name: string; id: string; mesh: Mesh }[] =>
  [...xml.matchAll(/<object id="(\d+)" type="model" name="([^"]*)">(.*?)<\/object>/gs)].map(
    ([, id = '', name = '', inside = '']) => ({
      id,
      name,
      mesh: {
        positions: Float64Array.from(numbers(inside, 'vertex', ['x', 'y', 'z'])),
        triangles: Uint32Array.from(numbers(inside, 'triangle', ['v1', 'v2', 'v3'])),
      },
    }),
  )

describe('3MF', () => {
  it('is a package of three files, in millimetres, the same bytes each time', () => {
    const mesh = carve(kernel, plug(10, 4, 22).solid)
    const bytes = threeMf([{ name: 'plug', mesh }])
    expect(threeMf([{ name: 'plug', mesh }])).toEqual(bytes)
    const files = unzipSync(bytes)
    expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model'])
    expect(strFromU8(files['_rels/.rels'] ?? new Uint8Array())).toContain('Target="/3D/3dmodel.model"')
    expect(xmlOf(bytes)).toContain('<model unit="millimeter"')
    // Time 00:00:00 and date 1980-01-01 of the first local header (APPNOTE 4.3.7): local time, whatever zone this runs in.
    expect([...bytes.subarray(10, 14)]).toEqual([0, 0, 0x21, 0])
  })

  it.each(Object.entries(anyPart))(
    'of a %s is the mesh again, to the last digit, and a body to the kernel',
    (_, parts) => {
      fc.assert(
        fc.property(parts, ({ solid }) => {
          const mesh = carve(kernel, solid)
          const again = read(xmlOf(threeMf([{ name: 'part', mesh }])))[0]?.mesh
          expect(again).toEqual(mesh)
          const body = kernel.Manifold.ofMesh(
            new kernel.Mesh({
              numProp: 3,
              vertProperties: Float32Array.from(again?.positions ?? []),
              triVerts: mesh.triangles,
            }),
          )
          const { volume, genus } = measure(mesh)
          expect(body.status()).toBe('NoError')
          expect(body.genus()).toBe(genus)
          expect(Math.abs(body.volume() / volume - 1)).toBeLessThan(1e-5)
          body.delete()
        }),
        { numRuns: 10 },
      )
    },
  )

  it('sets several in a row on the plate, clear of one another', () => {
    const named = [bar(6, 2, 1.2), bushing(12, -2, 5), plug(9, 3, 20)].map(({ solid }, index) => ({
      name: `part ${index} <"a" & b>`,
      mesh: carve(kernel, solid),
    }))
    const xml = xmlOf(threeMf(named))
    const objects = read(xml)
    expect(objects.map(({ name }) => name)).toEqual(
      [0, 1, 2].map((index) => `part ${index} &lt;&quot;a&quot; &amp; b&gt;`),
    )
    const items = [...xml.matchAll(/<item objectid="(\d+)" transform="([^"]*)"/g)]
    expect(items.map(([, id]) => id)).toEqual(objects.map(({ id }) => id))
    let clear = -10
    for (const [index, [, , transform = '']] of items.entries()) {
      const [dx = 0, dy = 0, dz = 0] = transform.split(' ').map(Number).slice(9)
      const { min, max } = measure(
        objects[index]?.mesh ?? named[0]?.mesh ?? { positions: new Float64Array(), triangles: new Uint32Array() },
      )
      expect(min[0] + dx).toBeCloseTo(clear + 10, 5)
      expect([min[1] + dy, min[2] + dz]).toEqual([expect.closeTo(0, 5), expect.closeTo(0, 5)])
      clear = max[0] + dx
    }
  })
})
