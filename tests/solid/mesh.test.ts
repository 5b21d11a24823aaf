import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { carve, interference, type Mesh, measure, openKernel } from '../../src/solid/mesh.ts'
import { circle, rectangle } from '../../src/solid/outline.ts'
import { bore, common, cut, extrude, join, letters, type Point3, place, type Solid } from '../../src/solid/solid.ts'
import { anyPart, bar, plug } from './parts.ts'

const kernel = await openKernel()
const cornersOf = ({ positions }: Mesh): Point3[] =>
  Array.from(
    { length: positions.length / 3 },
    (_, at) => [...positions.subarray(3 * at, 3 * at + 3)] as unknown as Point3,
  )
const middlesOf = (mesh: Mesh): Point3[] => {
  const corners = cornersOf(mesh)
  return Array.from({ length: mesh.triangles.length / 3 }, (_, facet) => {
    const three = [0, 1, 2].map((side) => corners[mesh.triangles[3 * facet + side] ?? -1] ?? [Number.NaN, 0, 0])
    return [0, 1, 2].map((axis) => three.reduce((sum, at) => sum + (at[axis] ?? 0), 0) / 3) as unknown as Point3
  })
}
/** Corners are snapped to 1e-6 mm, going in and coming out. */
const rounding = 2e-6

describe.each(Object.entries(anyPart))('a carved %s', (_, parts) => {
  it('is one closed body, with its ways through, no sliver, and the volume of the closed form', () => {
    fc.assert(
      fc.property(parts, ({ solid, volume, area, genus }) => {
        const found = measure(carve(kernel, solid))
        expect(found).toMatchObject({ bodies: 1, genus, openEdges: 0 })
        expect(found.leastFacet).toBeGreaterThan(2e-5)
        expect(Math.abs(found.volume - volume)).toBeLessThan(0.01 * area)
      }),
      { numRuns: 40 },
    )
  })

  it('is nowhere further from its true surface than the sagitta', () => {
    fc.assert(
      fc.property(parts, fc.constantFrom(0.01, 0.05), ({ solid, off }, sagitta) => {
        const mesh = carve(kernel, solid, sagitta)
        const worst = [...cornersOf(mesh), ...middlesOf(mesh)].reduce((most, at) => Math.max(most, off(at)), 0)
        expect(worst).toBeLessThan(sagitta + rounding)
      }),
      { numRuns: 25 },
    )
  })

  it('comes nearer to its closed form as the sagitta shrinks', () => {
    fc.assert(
      fc.property(parts, ({ solid, volume, area }) => {
        expect(Math.abs(measure(carve(kernel, solid, 0.001)).volume - volume)).toBeLessThan(
          0.001 * area + rounding * area,
        )
      }),
      { numRuns: 10 },
    )
  })
})

describe('which side the chords lie', () => {
  it('a hole that clears has nothing within its circle, one that does not has nothing outside it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 40, noNaN: true }), fc.boolean(), (radius, clears) => {
        const wide = 3 * radius
        const block = extrude(rectangle([-wide, -wide], [wide, wide]), 0, radius)
        const mesh = carve(kernel, cut(block, bore('z', [0, 0, -1], 2 * radius, radius + 2, { clears })))
        const metal = 4 * wide * wide * radius - measure(mesh).volume
        const true_ = Math.PI * radius ** 3
        if (clears) expect(metal).toBeGreaterThan(true_ * (1 - 1e-7))
        else expect(metal).toBeLessThan(true_ * (1 + 1e-7))
        expect(Math.abs(metal - true_)).toBeLessThan(0.01 * 2 * Math.PI * radius * radius)
      }),
    )
  })

  it('a plug is never proud of its circle, nor its holes small', () => {
    const mesh = carve(kernel, extrude(circle(20), 0, 5, [circle(8)]))
    const radii = cornersOf(mesh).map(([x, y]) => Math.hypot(x, y))
    expect(Math.max(...radii)).toBeLessThan(10 + rounding)
    expect(Math.min(...radii)).toBeGreaterThan(4 - rounding)
    expect(measure(mesh).genus).toBe(1)
    expect(measure(mesh).max).toEqual([10, 10, 5])
  })
})

describe('recipes', () => {
  const cube = extrude(rectangle([0, 0], [10, 10]), 0, 10)
  const volume = (solid: Solid): number => measure(carve(kernel, solid)).volume

  it('a bore runs along its axis, with the point of its drill beyond its length', () => {
    for (const [axis, at] of [
      ['x', [-1, 5, 5]],
      ['-x', [11, 5, 5]],
      ['y', [5, -1, 5]],
      ['-y', [5, 11, 5]],
      ['z', [5, 5, -1]],
      ['-z', [5, 5, 11]],
    ] as const) {
      const drilled = carve(kernel, cut(cube, bore(axis, at, 4, 6, { point: 118 })), 0.001)
      // 5 mm of cylinder within the cube, and the cone of the point: r / tan 59°
      const gone = Math.PI * 4 * 5 + (Math.PI * 4 * (2 / Math.tan((59 * Math.PI) / 180))) / 3
      expect(measure(drilled).volume, axis).toBeCloseTo(1000 - gone, 0)
      const deepest = cornersOf(drilled).some((corner) => {
        const along = corner['xyz'.indexOf(axis.slice(-1))] ?? 0
        return (
          Math.abs((axis.startsWith('-') ? 10 - along : along) - (5 + 2 / Math.tan((59 * Math.PI) / 180))) < rounding
        )
      })
      expect(deepest, axis).toBe(true)
    } // prettier-ignore
  })

  it('turns about x, then y, then z, then moves', () => {
    const stick = extrude(rectangle([0, 0], [1, 2]), 0, 3)
    const { min, max } = measure(carve(kernel, place(stick, { turn: [90, 0, 90], move: [100, 0, 0] })))
    // x: (x, y, z) -> (x, -z, y); z: -> (z, x, y)
    expect([min, max]).toEqual([
      [100, 0, 0],
      [103, 1, 2],
    ])
  })

  it('joins, shares and cuts to volumes that add up, faces that coincide among them', () => {
    const beside = place(cube, { move: [10, 0, 0] })
    const half = place(cube, { move: [5, 0, 0] })
    expect(volume(join(cube, beside))).toBeCloseTo(2000, 6)
    expect(measure(carve(kernel, join(cube, beside)))).toMatchObject({ bodies: 1, genus: 0 })
    expect(volume(common(cube, half))).toBeCloseTo(500, 6)
    expect(volume(cut(cube, half))).toBeCloseTo(500, 6)
  })

  it('a recipe that leaves no body is a bug of its maker', () => {
    expect(() => carve(kernel, cut(cube, cube))).toThrow('the recipe leaves no body')
  })
})

describe('lettering', () => {
  const text = (line: string) =>
    measure(carve(kernel, letters(line, { height: 5, stroke: 0.8, at: [3, 4], from: 1, to: 1.6 })))

  it('has capitals as high as asked, stroke and all, about the point asked for', () => {
    const { min, max } = text('H')
    expect(max[1] - min[1]).toBeCloseTo(5, 2)
    expect([(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]).toEqual([expect.closeTo(3, 4), expect.closeTo(4, 2)])
    expect([min[2], max[2]]).toEqual([1, expect.closeTo(1.6, 6)])
  })

  it('has the letters and their eyes: bodies and ways through', () => {
    expect(text('GO 8')).toMatchObject({ bodies: 3, genus: 3, openEdges: 0 })
    expect(text('Ø36×8')).toMatchObject({ bodies: 5, genus: 2 + 1 + 2, openEdges: 0 })
    for (let code = 33; code < 127; code += 1)
      expect(text(String.fromCodePoint(code)).openEdges, String.fromCodePoint(code)).toBe(0)
  })

  it('of one stroke has the area of a round-ended slot', () => {
    const long = (12.857142857142858 / 15) * (5 - 0.8) // the dash of the font
    expect(text('-').volume).toBeCloseTo(0.6 * (0.8 * long + Math.PI * 0.16), 1)
  }) // prettier-ignore

  it('says which sign it has not', () => expect(() => text('8 µm')).toThrow('no sign "µ"'))
})

describe('interference', () => {
  const hub = cut(extrude(circle(40), 0, 30), bore('z', [0, 0, -1], 20, 32, { clears: true }))

  it('is nothing between a shaft and a bore that clears it, and the ring between them where it does not', () => {
    const shaft = (diameter: number) => extrude(circle(diameter), -5, 35)
    expect(interference(kernel, hub, shaft(20))).toBe(0)
    expect(interference(kernel, hub, shaft(19.98), [0.009, 0, 0])).toBe(0)
    expect(interference(kernel, hub, shaft(21), [0, 0, 0], 0.001)).toBeCloseTo(30 * Math.PI * (10.5 ** 2 - 100), -1)
  })

  it('of a bit fed into the wall is what the bit has gone in by', () => {
    const bit = extrude(rectangle([-5, -2], [0, 2]), 10, 14)
    expect(interference(kernel, hub, bit, [9, 0, 0])).toBe(0)
    const crescent = 2 * Math.sqrt(96) + 100 * Math.asin(0.2) // ∫ √(100 - y²) over the width of 4
    expect(interference(kernel, hub, bit, [13, 0, 0], 0.001)).toBeCloseTo(4 * (4 * 13 - crescent), 1)
  })
})

interface Memory {
  readonly buffer: ArrayBuffer
}
/** As much of WebAssembly as it takes to see how much memory the kernel has. */
interface Assembly {
  instantiate: (...given: unknown[]) => Promise<{ instance: { exports: Record<string, Memory> } }>
  readonly Memory: new () => Memory
}

describe('the kernel', () => {
  it('keeps what was asked for to the last micron of a metre', () => {
    const long = extrude(rectangle([-0.1, 0], [1000.123456, 7.654321]), -0.333333, 160.3375)
    expect(measure(carve(kernel, long))).toMatchObject({
      min: [-0.1, 0, -0.333333],
      max: [1000.123456, 7.654321, 160.3375],
    })
  })

  it('gives the same mesh each time', () => {
    const { solid } = bar(8, 2.5, 1.6)
    expect(carve(kernel, solid)).toEqual(carve(kernel, solid))
  })

  it('opens from bytes or a place, and gives back all it was lent', async () => {
    const { readFile } = await import('node:fs/promises')
    const where = new URL('../../node_modules/manifold-3d/manifold.wasm', import.meta.url)
    expect(measure(carve(await openKernel(where.href), plug(10, 4, 22).solid)).bodies).toBe(1)
    const { WebAssembly } = globalThis as unknown as { WebAssembly: Assembly }
    const plain = WebAssembly.instantiate
    let memory: Memory | undefined
    WebAssembly.instantiate = async (...given) => {
      const started = await plain(...given)
      memory = Object.values(started.instance.exports).find((found) => found instanceof WebAssembly.Memory)
      return started
    }
    const own = await openKernel(new Uint8Array(await readFile(where))).finally(() => {
      WebAssembly.instantiate = plain
    })
    const { solid } = plug(20, 6, 44)
    for (let round = 0; round < 20; round += 1) carve(own, solid)
    const settled = memory?.buffer.byteLength ?? Number.NaN
    for (let round = 0; round < 150; round += 1) carve(own, solid)
    expect(memory?.buffer.byteLength).toBe(settled)
  })
})
