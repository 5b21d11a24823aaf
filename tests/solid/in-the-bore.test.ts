import { beforeAll, describe, expect, it } from 'vitest'
import { cutterBar } from '../../generators/cutter-bar.ts'
import { toolBit } from '../../generators/tool-bit.ts'
import { design } from '../../src/design.ts'
import { type Kernel, carve, interference, measure, openKernel } from '../../src/solid/mesh.ts'
import { circle, rectangle } from '../../src/solid/outline.ts'
import { cut, extrude, join, place, type Solid } from '../../src/solid/solid.ts'
import { readSpec } from '../../src/spec/read.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const specOf = (document: object) => {
  const read = readSpec(document)
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  return read.spec
}

const bore = (units: 'mm' | 'in', diameter: number, length: number, keyway: object, bar: object = {}) => ({
  name: 'try',
  units,
  bore: { diameter, length },
  hub: { outside: 2.2 * diameter, material: 'mild steel' },
  feature: { keyway },
  tooling: { bar: { machine: 'lathe', behind: diameter, ...bar } },
})

const jobs: readonly (readonly [string, object])[] = [
  ['24 mm, two lanes', bore('mm', 24, 38, { standard: 'iso-773' })],
  ['10 mm', bore('mm', 10, 14, { standard: 'iso-773' })],
  ['60 mm', bore('mm', 60, 80, { standard: 'iso-773' })],
  ['100 mm, three lanes', bore('mm', 100, 120, { standard: 'iso-773' })],
  ['7/8 in', bore('in', 0.875, 1.375, { standard: 'asme-b17.1' })],
  [
    '6 mm, close',
    bore(
      'mm',
      6,
      8,
      { width: 2, height: 2, across: 7 },
      { clearance: { back: 0.1, front: 0.1, withdrawn: 0.1 }, setting: 0.03 },
    ),
  ],
]

/** Bar and bit together, the bar's axis on z, the nose on +y; the bit pressed up by its screw. */
const tool = (made: ReturnType<typeof design>): Solid => {
  const { bar, bit } = made
  if (!bar || !bit) throw new Error('no bar')
  const top = bit.size - (bit.flat ?? 0)
  return join(
    cutterBar.solid(made),
    place(toolBit.solid(made), {
      turn: [0, 0, -90],
      move: [0, bar.diameter.nominal / 2 + bar.projection, -bar.bitToEnd - top],
    }),
  )
}

describe.each(jobs)('bar and bit in the hub: %s', (_name, document) => {
  const made = design(specOf(document))
  const { section, bar } = made
  if (!bar) throw new Error('no bar')
  const length = bar.bodyLength - 2
  const hub = (slotted: boolean): Solid => {
    const ring = extrude(circle(4 * section.boreRadius), -length, 5, [circle(2 * section.boreRadius)])
    // A hair of room beside and before the nose, so that faces that touch do not count.
    const half = section.width / 2 + 0.005
    return slotted ? cut(ring, extrude(rectangle([-half, 0], [half, section.floor + 0.005]), -length - 1, 6)) : ring
  }
  const at = (x: number, offset: number): [number, number, number] => [
    offset,
    x - bar.projection - bar.diameter.nominal / 2,
    0,
  ]
  const withdrawn = made.spec.tooling.bar?.clearance.withdrawn ?? 0

  it('touches nothing when withdrawn from first touch in the closed bore, in any lane', () => {
    for (const lane of bar.lanes) {
      const there = at(lane.touchOff - withdrawn, lane.offset)
      expect(interference(kernel, hub(false), tool(made), there, 0.002)).toBeLessThan(1e-6)
    }
  })

  it('touches metal just past first touch, so the touch is where it is said to be', () => {
    for (const lane of bar.lanes) {
      expect(
        interference(kernel, hub(false), tool(made), at(lane.touchOff + 0.08, lane.offset), 0.002),
      ).toBeGreaterThan(1e-6)
    }
  })

  it('touches nothing at full depth in the finished slot, and reaches the floor', () => {
    for (const lane of bar.lanes) {
      const there = at(section.floor, lane.offset)
      expect(interference(kernel, hub(true), tool(made), there, 0.002)).toBeLessThan(1e-6)
    }
    const reach = measure(carve(kernel, tool(made), 0.002)).max[1] + at(section.floor, 0)[1]
    expect(reach).toBeCloseTo(section.floor, 3)
  })

  it('is one body with bit and bar not in each other’s metal but where the screw presses', () => {
    const { bit } = made
    if (!bit) throw new Error('no bit')
    const top = bit.size - (bit.flat ?? 0)
    const seated = place(toolBit.solid(made), {
      turn: [0, 0, -90],
      move: [0, bar.diameter.nominal / 2 + bar.projection, -bar.bitToEnd - top],
    })
    expect(interference(kernel, cutterBar.solid(made), seated, [0, 0, 0], 0.002)).toBeLessThan(0.02)
  })
})
