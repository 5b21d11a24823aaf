import type { CrossSection, Manifold, ManifoldToplevel } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { cutterBar } from '../../generators/cutter-bar.ts'
import { groundBar } from '../../generators/ground-bar.ts'
import { bitSolid } from '../../generators/tool-bit-nose.ts'
import { type Design, design } from '../../src/design.ts'
import { setBackOf } from '../../src/dimensions/v-nose.ts'
import { carve, type Kernel, openKernel } from '../../src/solid/mesh.ts'
import { place, type Solid } from '../../src/solid/solid.ts'
import { readSpec } from '../../src/spec/read.ts'

let kernel: Kernel
let solids: ManifoldToplevel
beforeAll(async () => {
  kernel = await openKernel()
  solids = kernel as unknown as ManifoldToplevel
})

/** Positions between first touch, drawn back, and the floor. */
const positions = 50
/** Room left in the cut hub round the nose, so that faces that only touch do not count. */
const hair = 0.005

const job = (diameter: number, length: number, feature: object, bar: object = {}, rest: object = {}) => ({
  name: 'travel',
  units: 'mm',
  bore: { diameter, length },
  hub: { outside: Math.ceil(2.2 * diameter) },
  feature,
  tooling: { bar: { behind: 60, ...bar } },
  ...rest,
})
const iso = { keyway: { standard: 'iso-773' } }
const close = { clearance: { back: 0.1, front: 0.1, withdrawn: 0.1 }, setting: 0.02 }
const blind = { bore: { diameter: 30, length: 30, blind: { beyond: 12, relief: { diameter: 40, length: 12 } } } }

/** Every kind of feature and every form of bar. */
const jobs: readonly (readonly [string, object])[] = [
  ['keyway, two lanes', job(24, 38, iso)],
  ['keyway, three lanes', job(100, 120, iso)],
  ['two keyways', job(30, 40, { keyway: { standard: 'iso-773', at: [0, 180] } })],
  ['keyway in inches', { ...job(0.875, 1.375, { keyway: { standard: 'asme-b17.1' } }), units: 'in' }],
  ['keyway in stages', job(10, 14, { keyway: { width: 4, across: 11.8 } }, { ...close, diameter: 8 })],
  ['keyway, screw in the wall', job(25, 30, iso, { form: 'side screw' })],
  ['keyway, bit leaning', job(30, 30, iso, { form: 'inclined' }, blind)],
  [
    'keyway, bar of one piece',
    job(6, 8, { keyway: { width: 2, height: 2, across: 7 } }, { ...close, form: 'one piece' }),
  ],
  ['spline', job(23, 30, { spline: { standard: 'iso-14', size: '6x23x26' } })],
  ['square socket', job(20.8, 24, { socket: { sides: 4, across: 20, tip: 0.2 } })],
  ['hexagon socket', job(25.4, 20, { socket: { sides: 6, across: 25, tip: 0 } })],
  ['slit', job(16, 24, { slit: { width: 2, count: 3, outside: 20 } })],
  ['oil groove', job(20, 30, { groove: { radius: 1.5, depth: 1 } })],
]

const designed = (document: object): Design => {
  const read = readSpec(document)
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  return design(read.spec)
}

/** A recipe once carved, as a body of the kernel. */
const body = (solid: Solid): Manifold => {
  const { positions: at, triangles } = carve(kernel, solid, 0.01)
  const mesh = new solids.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(at),
    triVerts: Uint32Array.from(triangles),
  })
  mesh.merge()
  return new solids.Manifold(mesh)
}

/** What carries the edge, its axis on z; and the edge itself, its foremost point on the axis. One piece is one body. */
const toolOf = (made: Design): readonly { readonly body: Manifold; readonly byNose: boolean }[] => {
  const { bar, bit } = made
  const inOne = made.groundBar
  if (inOne) {
    const nose = inOne.diameter.nominal / 2 + inOne.projection - inOne.eccentricity
    return [{ body: body(groundBar.solid(made)).translate(0, -nose, 0), byNose: true }]
  }
  if (!bar || !bit) throw new Error('no bar')
  const leading = (bit.size - (bit.flat ?? 0) - bit.edgeHeight) / Math.cos((bar.incline * Math.PI) / 180)
  const seated = place(place(place(bitSolid(bit), { move: [0, 0, -bit.edgeHeight] }), { turn: [0, 0, -90] }), {
    turn: [bar.incline, 0, 0],
    move: [0, 0, -bar.bitToEnd - leading],
  })
  return [
    { body: body(cutterBar.solid(made)), byNose: false },
    { body: body(seated), byNose: true },
  ]
}

/** What a nose whose foremost point stands at x has taken out of the bore’s wall, seen along the stroke, with a hair round it. */
const takenOut = (made: Design, x: number, offset: number): CrossSection => {
  const { section } = made
  const bar = made.bar ?? made.groundBar
  if (!bar) throw new Error('no bar')
  const { CrossSection: Flat } = solids
  const tip = x + hair
  if (section.groove) {
    const round = section.groove.radius + hair
    return Flat.circle(round, 512)
      .translate(0, tip - round)
      .add(Flat.square([2 * round, tip - round]).translate(-round, 0))
  }
  if (section.socket) {
    const half = bar.noseWidth / 2 + hair
    const apex = tip + setBackOf(section.socket.sides, section.cornerRadius) + hair
    const foot = apex - half / Math.tan(Math.PI / 2 - Math.PI / section.socket.sides)
    const points: [number, number][] = [
      [-half, 0],
      [half, 0],
      [half, foot],
      [0, apex],
      [-half, foot],
    ] // prettier-ignore
    return Flat.ofPolygons([points])
  }
  const half = (bar.lanes.length === 1 ? Math.max(section.width, bar.noseWidth) : bar.noseWidth) / 2 + hair
  return Flat.square([2 * half, tip]).translate(offset - half, 0)
}

describe.each(jobs)('in the hub all along the travel: %s', (_name, document) => {
  const made = designed(document)
  const bar = made.bar ?? made.groundBar
  if (!bar) throw new Error('no bar')
  const { section, asked } = made
  const withdrawn = asked?.clearance.withdrawn ?? 0

  it('goes as the rules say it does', () => {
    const broken = made.findings.filter(({ verdict, rule }) => verdict === 'fail' && /projection|bar-passes/.test(rule))
    expect(broken).toEqual([])
  })

  it(`touches nothing at any of ${positions} places, in any lane, at any setting`, () => {
    const tool = toolOf(made)
    const { CrossSection: Flat } = solids
    const ring = Flat.circle(2.2 * section.boreRadius, 64).subtract(Flat.circle(section.boreRadius, 1024))
    const depth = bar.overhang - 2
    const target = section.slit?.target ?? section.floor
    for (const [stage, { projection, from, to }] of bar.stages.entries()) {
      const last = stage === bar.stages.length - 1
      for (const { offset, touchOff } of bar.lanes) {
        const start = stage === 0 ? touchOff : Math.max(touchOff, from)
        const end = last ? target : to
        for (let place = 0; place < positions / bar.lanes.length; place++) {
          const drawnBack = place === 0
          const x = drawnBack ? start - withdrawn : start + ((end - start) * place) / (positions / bar.lanes.length - 1)
          const cut = drawnBack ? (stage === 0 ? undefined : from) : Math.min(x, end)
          const open = cut === undefined ? ring : ring.subtract(takenOut(made, cut, offset))
          const hub = open.extrude(depth + 4).translate(0, 0, -depth)
          for (const { body: part, byNose } of tool) {
            const y = byNose ? Math.min(x, end) : Math.min(x, end) - projection - bar.diameter.nominal / 2
            const moved = part.translate(offset, y, 0)
            const both = hub.intersect(moved)
            expect([stage, offset, place, both.volume() < 1e-6]).toEqual([stage, offset, place, true])
            both.delete()
            moved.delete()
          }
          hub.delete()
        }
      }
    }
  })

  it('touches as soon as it goes a tenth deeper than the slot', () => {
    const [stage] = bar.stages.slice(-1)
    const [lane] = bar.lanes
    const { CrossSection: Flat } = solids
    if (!stage || !lane || section.slit) return
    const ring = Flat.circle(2.2 * section.boreRadius, 64).subtract(Flat.circle(section.boreRadius, 1024))
    const hub = ring
      .subtract(takenOut(made, section.floor, lane.offset))
      .extrude(bar.overhang + 2)
      .translate(0, 0, 2 - bar.overhang)
    const tool = toolOf(made)
    for (const { body: part } of tool) expect(part.volume()).toBeGreaterThan(1)
    const nose = tool.find(({ byNose }) => byNose)
    expect(
      hub.intersect(nose?.body.translate(lane.offset, section.floor + 0.1, 0) as Manifold).volume(),
    ).toBeGreaterThan(1e-4)
  })
})
