// Gauges and aids against the limits of the hub: sections of their meshes, clipped by polygon-clipping with slots drawn here by themselves.
import { strFromU8, unzipSync } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { acrossNoGo } from '../../generators/across-no-go.ts'
import { borePlug } from '../../generators/bore-plug.ts'
import { drillJig } from '../../generators/drill-jig.ts'
import { guideBushing } from '../../generators/guide-bushing.ts'
import { hubRing } from '../../generators/hub-ring.ts'
import { indexPlate } from '../../generators/index-plate.ts'
import type { Part } from '../../generators/part.ts'
import { plugGauge } from '../../generators/plug-gauge.ts'
import { pressSpacer } from '../../generators/press-spacer.ts'
import { parts } from '../../generators/set.ts'
import { shimPack } from '../../generators/shim-pack.ts'
import { settingStep } from '../../generators/setting-step.ts'
import { openTools } from '../../src/cli/tools.ts'
import { widthGauge } from '../../generators/width-gauge.ts'
import type { Design } from '../../src/design.ts'
import { make } from '../../src/make.ts'
import { carve, interference, type Kernel, type Mesh, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf } from '../../src/solid/outline.ts'
import { bore, place } from '../../src/solid/solid.ts'
import { profileDxf } from '../../src/writers/profile.ts'
import { readDxf } from '../writers/read-dxf.ts'
import { type MultiPolygon, type Ring, union } from './clipping.ts'
import { designed, everyDesign, specimen } from './designs.ts'
import { areaIn, loopsAt, metalOf, moved, outside, shared } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const keyed = everyDesign.filter(({ section }) => section.kind === 'keyway')
const few = keyed.filter((_, index) => index % 6 === 0)

const circleOf = (radius: number, away: 'in' | 'out' = 'in'): Ring => {
  const count = 1440
  const out = away === 'in' ? radius : radius / Math.cos(Math.PI / count)
  return Array.from({ length: count }, (_, at): [number, number] => {
    const angle = (2 * Math.PI * (at + 0.5)) / count
    return [out * Math.cos(angle), out * Math.sin(angle)]
  })
}
const box = (x1: number, y1: number, x2: number, y2: number): Ring => [
  [x1, y1],
  [x2, y1],
  [x2, y2],
  [x1, y2],
]

/** The bore with its keyway on +x at one end of all limits, corners sharp. */
const hubVoid = ({ section }: Design, end: 'lower' | 'upper'): MultiPolygon => {
  const radius = section.bore[end] / 2
  const half = section.widthLimits[end] / 2
  return union(
    [circleOf(radius, end === 'lower' ? 'in' : 'out')],
    [box(0, -half, section.acrossLimits[end] - radius, half)],
  )
}

const meshOf = (part: Part, design: Design): Mesh => carve(kernel, part.solid(design))

describe('go and no-go', () => {
  it('the go plug goes into the smallest hub, printed as large as it may come out; and is not slack by more than three prints', () => {
    for (const design of few) {
      const { plug, section } = design
      const worst = { ...design, plug: { ...plug, offset: -plug.tolerance / 2 } }
      const at = plug.length / 2 + 1
      const grown = metalOf(loopsAt(meshOf(plugGauge, worst), 2, at))
      // Its back against the wall opposite.
      const back = -section.bore.lower / 2 - Math.min(...grown.flat(2).map(([x]) => x))
      expect(outside(moved(grown, back, 0), hubVoid(design, 'lower'))).toBeLessThan(0.02)
      expect(section.acrossLimits.lower - plug.across).toBeLessThan(3 * plug.tolerance)
    }
  })

  it('the no-go does not go into the largest hub, printed as small as it may come out, wherever it is pushed', () => {
    let tried = 0
    for (const design of few.filter((one) => acrossNoGo.belongs(one))) {
      const gauge = design.acrossNoGo
      if (!gauge) throw new Error('no gauge')
      // At the last of its limits it is line to line: a hair before.
      const small = { ...design, acrossNoGo: { ...gauge, offset: 0.49 * gauge.tolerance } }
      const metal = metalOf(loopsAt(meshOf(acrossNoGo, small), 2, gauge.length / 2 + 1))
      const hub = hubVoid(design, 'upper')
      const back = Math.min(...metal.flat(2).map(([x]) => x))
      const seated = -design.section.bore.upper / 2 - back
      for (const x of [-0.5, -0.2, -0.1, -0.05, 0, 0.05, 0.1, 0.2])
        for (const y of [-0.15, 0, 0.15]) expect(outside(moved(metal, seated + x, y), hub)).toBeGreaterThan(1e-4)
      // A little shorter it would go: nothing but across stops it.
      const shorter = { ...small, acrossNoGo: { ...small.acrossNoGo, across: gauge.across - 2.2 * gauge.tolerance } }
      const goes = metalOf(loopsAt(meshOf(acrossNoGo, shorter), 2, gauge.length / 2 + 1))
      const shift = -design.section.bore.upper / 2 - Math.min(...goes.flat(2).map(([x]) => x))
      expect(outside(moved(goes, shift + 0.02, 0), hub)).toBeLessThan(0.01)
      tried += 1
    }
    expect(tried).toBeGreaterThan(5)
  })

  it('the no-go is told by its form: short, on a waist', () => {
    for (const design of few.filter((one) => acrossNoGo.belongs(one))) {
      const { acrossNoGo: gauge, plug } = design
      if (!gauge) throw new Error('no gauge')
      const mesh = meshOf(acrossNoGo, design)
      const reach = (z: number) =>
        Math.max(
          ...loopsAt(mesh, 2, z)
            .flat()
            .map(([x, y]) => Math.hypot(x, y)),
        )
      expect(2 * reach(gauge.length + gauge.waistLength / 2)).toBeCloseTo(gauge.waistDiameter, 1)
      expect(gauge.waistDiameter).toBeLessThan(0.8 * gauge.handleDiameter)
      expect(gauge.length).toBeLessThan(0.6 * plug.length)
      expect(measure(mesh).genus).toBe(0)
      expect(gauge.marking[0]).toBe('NO GO')
    }
  })

  it('the width gauge: its go end lies on the floor of the narrowest slot with the roundest corners, its no-go head does not go into the widest', () => {
    for (const design of few.filter((one) => widthGauge.belongs(one))) {
      const { widthGauge: gauge, section } = design
      if (!gauge) throw new Error('no gauge')
      const trust = gauge.tolerance / 2
      const grown = meshOf(widthGauge, { ...design, widthGauge: { ...gauge, offset: -trust } })
      const shrunk = meshOf(widthGauge, { ...design, widthGauge: { ...gauge, offset: trust } })
      // Cut across x: coordinates (y, z).
      const go = metalOf(loopsAt(grown, 0, -gauge.goLength / 2))
      const noGo = metalOf(loopsAt(shrunk, 0, gauge.gripLength + gauge.waistLength + gauge.noGoLength / 2))
      const half = section.widthLimits.lower / 2
      const round = Math.min(section.cornerLimits?.upper ?? section.cornerRadius, gauge.edge / 0.59)
      const turned = Array.from({ length: 46 }, (_, at): [number, number] => {
        const angle = ((at / 45) * Math.PI) / 2
        return [half - round + round * Math.sin(angle), round - round * Math.cos(angle)]
      })
      const slot: Ring = [
        ...turned,
        [half, 50],
        [-half, 50],
        ...turned.toReversed().map(([y, z]): [number, number] => [-y, z]),
      ]
      expect(outside(go, [[slot]])).toBeLessThan(1e-3)
      const wide = Math.max(...noGo.flat(2).map(([y]) => y)) * 2
      expect(wide).toBeGreaterThanOrEqual(section.widthLimits.upper - 1e-5)
      expect(gauge.noGoLength + gauge.waistLength).toBeLessThan(gauge.goLength)
    }
  })
})

describe('slices of the hub', () => {
  it('the finished one is larger than any hub, printed as small as it may come out', () => {
    for (const design of few.filter(({ section, hubRing: ring }) => ring && section.at.length === 1)) {
      const ring = design.hubRing
      if (!ring) throw new Error('no ring')
      const [finished] = hubRing.prints?.({ ...design, hubRing: { ...ring, offset: ring.tolerance / 2 } }) ?? []
      if (!finished) throw new Error('no print')
      const metal = metalOf(loopsAt(carve(kernel, finished.solid), 2, ring.thickness / 2))
      expect(areaIn(metal)).toBeGreaterThan(10)
      // The hub's void, its back against the ring's.
      const slack = (ring.finishedBore - ring.tolerance - design.section.bore.upper) / 2
      expect(shared(metal, moved(hubVoid(design, 'upper'), -slack, 0))).toBeLessThan(0.02)
      expect(shared(metal, moved(hubVoid(design, 'upper'), slack + 2 * ring.tolerance, 0))).toBeGreaterThan(0.1)
    }
  })

  it('the uncut one is smaller than any hub, printed as large as it may come out', () => {
    let tried = 0
    for (const design of few) {
      const { hubRing: ring, section } = design
      if (!ring || ring.uncutBore === undefined) continue
      const prints = hubRing.prints?.({ ...design, hubRing: { ...ring, offset: -ring.tolerance / 2 } }) ?? []
      const uncut = prints[1]
      if (!uncut) throw new Error('no print')
      const hole = loopsAt(carve(kernel, uncut.solid), 2, ring.thickness / 2).toSorted((a, b) => a.length - b.length)
      const smallest = Math.min(...hole.map((loop) => Math.max(...loop.map(([x, y]) => Math.hypot(x, y)))))
      expect(2 * smallest).toBeLessThan(section.bore.lower + 0.03)
      expect(ring.uncutBore).toBeLessThanOrEqual(section.bore.lower - ring.tolerance + 1e-9)
      tried += 1
    }
    expect(tried).toBeGreaterThan(5)
  })

  it('are rings with one way through each, and with every keyway', () => {
    for (const design of few.filter((one) => hubRing.belongs(one)))
      for (const print of hubRing.prints?.(design) ?? []) {
        const { genus, bodies, openEdges, min } = measure(carve(kernel, print.solid))
        expect({ genus, bodies, openEdges, at: min[2] }).toEqual({ genus: 1, bodies: 1, openEdges: 0, at: 0 })
      }
    const coupling = specimen('feed-roll-coupling')
    const [finished, uncut] = hubRing.prints?.(coupling) ?? []
    if (!finished || !uncut) throw new Error('two rings')
    const slots = coupling.section.at.length
    const [plain, slotted] = [uncut, finished].map(({ solid }) => areaIn(metalOf(loopsAt(carve(kernel, solid), 2, 6))))
    const cutAway = (plain ?? NaN) - (slotted ?? NaN)
    expect(slots).toBe(2)
    const bores = ((coupling.hubRing?.finishedBore ?? 0) ** 2 - (coupling.hubRing?.uncutBore ?? 0) ** 2) * (Math.PI / 4)
    expect((cutAway - bores) / (2 * coupling.section.area)).toBeGreaterThan(0.95)
    expect((cutAway - bores) / (2 * coupling.section.area)).toBeLessThan(1.2)
  })
})

describe('setting step', () => {
  it('stands over its foot by the projection, and by what is to be filed off', () => {
    for (const design of few.filter((one) => settingStep.belongs(one))) {
      const step = design.settingStep
      if (!step || !design.bar) throw new Error('no step')
      const prints = settingStep.prints?.(design) ?? []
      expect(prints.length).toBe(design.bar.stages.length)
      prints.forEach((print, at) => {
        const mesh = carve(kernel, print.solid)
        const points = loopsAt(mesh, 2, step.thickness / 2).flat()
        const low = (from: number) => Math.min(...points.filter(([x]) => x > from).map(([, y]) => y))
        expect(low(-1000)).toBeCloseTo(0, 6)
        expect(low(1)).toBeCloseTo((design.bar?.stages[at]?.projection ?? 0) + step.allowance, 5)
        expect(measure(mesh).genus).toBe(0)
      })
      expect(step.within).toBeLessThanOrEqual(design.bar.setting + 1e-12)
    }
  })
})

describe('index plate', () => {
  it('has a hole at every angle, no smaller than its pin, and one for the mandrel', () => {
    const plates = everyDesign.filter((one) => indexPlate.belongs(one))
    expect(plates.length).toBeGreaterThan(2)
    for (const design of plates) {
      const plate = design.indexPlate
      if (!plate) throw new Error('no plate')
      const mesh = meshOf(indexPlate, design)
      expect(measure(mesh).genus).toBe(plate.count + 1)
      const holes = loopsAt(mesh, 2, plate.thickness / 2).map((loop) => {
        const box = [0, 1].map((axis) => {
          const all = loop.map((at) => at[axis] ?? 0)
          return [Math.min(...all), Math.max(...all)] as const
        })
        const middle = box.map(([low, high]) => (low + high) / 2)
        return { x: middle[0] ?? 0, y: middle[1] ?? 0, wide: (box[0]?.[1] ?? 0) - (box[0]?.[0] ?? 0) }
      })
      for (const angle of plate.at) {
        const [x, y] = [
          plate.pitchRadius * Math.cos((angle * Math.PI) / 180),
          plate.pitchRadius * Math.sin((angle * Math.PI) / 180),
        ]
        const hole = holes.find((one) => Math.hypot(one.x - x, one.y - y) < 0.02)
        expect(hole?.wide).toBeGreaterThanOrEqual(plate.hole - 1e-6)
        expect(hole?.wide).toBeLessThan(plate.hole + 0.03)
      }
    }
  })
})

describe('drill jig', () => {
  it('lets the bar in as far as its stop, and the drill through at the hole’s place', () => {
    const jigs = everyDesign.filter((one) => drillJig.belongs(one)).slice(0, 8)
    expect(jigs.length).toBeGreaterThan(3)
    for (const design of jigs) {
      const { drillJig: jig, bar } = design
      if (!jig || !bar) throw new Error('no jig')
      const body = drillJig.solid(design)
      const stop = jig.length - jig.barDepth
      const rod = bore('z', [0, 0, stop], bar.diameter.upper, jig.barDepth + 20)
      expect(interference(kernel, body, rod)).toBeLessThan(1e-6)
      expect(interference(kernel, body, rod, [0, 0, -0.1])).toBeGreaterThan(0.1)
      const drill = bore('y', [0, -jig.height, stop + bar.holeToEnd], bar.crossHole.nominal, 2 * jig.height)
      expect(interference(kernel, body, drill)).toBeLessThan(1e-6)
      expect(interference(kernel, body, place(drill, { move: [0, 0, 1.5] }))).toBeGreaterThan(0)
      expect(measure(carve(kernel, body)).genus).toBe(3)
      expect(jig.bush.length).toBeLessThan((jig.height - jig.barHole) / 2)
    }
  })
})

describe('spacer', () => {
  it('is open under bore and slot at their largest, and carries the hub', () => {
    const spacers = everyDesign.filter((one) => pressSpacer.belongs(one))
    expect(spacers.some(({ pressSpacer: one }) => one?.under === 'broach')).toBe(true)
    expect(spacers.some(({ pressSpacer: one }) => one?.under === 'bar')).toBe(true)
    for (const design of spacers) {
      const spacer = design.pressSpacer
      if (!spacer) throw new Error('no spacer')
      expect(spacer.opening / 2).toBeGreaterThanOrEqual(design.section.cornerReachMost + 0.2 - 1e-9)
      // What the card asks for: the teeth’s way out, or the bar’s end and 0.5 mm.
      expect(spacer.free).toBeCloseTo(
        spacer.under === 'broach'
          ? (design.bushing?.below ?? Infinity)
          : ((design.bar ?? design.groundBar)?.tipBeyond ?? Infinity) + 0.5,
        9,
      )
      expect(spacer.outside).toBeGreaterThan(spacer.opening + 11)
      const { volume, genus } = measure(meshOf(pressSpacer, design))
      expect(volume / ((Math.PI / 4) * (spacer.outside ** 2 - spacer.opening ** 2) * spacer.height)).toBeCloseTo(1, 2)
      expect(genus).toBe(1)
    }
  })
})

describe('what sheets of the press say in use', () => {
  /** Sizes under a heading, mm. */
  const sizesUnder = (part: Part, design: Design, heading: string): readonly number[] =>
    part
      .drawing(design)
      .notes.filter((notes) => notes.heading === heading)
      .flatMap(({ lines }) => lines.flat())
      .flatMap((word) => (typeof word === 'object' && 'value' in word ? [word.value] : []))
  const inches = (sizes: readonly number[]) => sizes.map((mm) => Number((mm / 25.4).toFixed(6)))
  const winch = specimen('winch-drum-gear')

  it('the spacer, what the card says: .9 + 5 for the teeth, 6.75 + 1/16 up to 1/8 for the broach, 2.5 of it the ring', () => {
    expect(inches(sizesUnder(pressSpacer, winch, 'IN USE'))).toEqual([5.9, 6.875, 3.4])
  })

  it('a bar’s spacer, what the rule of its room says', () => {
    const held = everyDesign.flatMap((design) => {
      const limit = design.findings.find(({ rule }) => rule === 'room-behind-hub')?.limit
      return design.pressSpacer?.under === 'bar' && limit !== undefined ? [{ design, limit }] : []
    })
    expect(held.length).toBeGreaterThan(0)
    for (const { design, limit } of held) expect(sizesUnder(pressSpacer, design, 'IN USE')[0]).toBe(limit)
  })

  it('the bushing, its pusher; and none where the tail stands over collar and shim', () => {
    const { pusher } = winch
    expect(inches(sizesUnder(guideBushing, winch, 'IN USE'))).toEqual([0.18, 0.325, 1.375])
    expect(pusher).toBeDefined()
    const { pusher: _none, ...without } = winch
    expect(sizesUnder(guideBushing, without, 'IN USE')).toEqual([])
  })
})

describe('one plate of all that is printed', () => {
  it('holds every print by its name, on the bed, none over another, and comes out the same again', async () => {
    for (const name of ['feed-roll-coupling', 'winch-drum-gear']) {
      const design = specimen(name)
      const made = async () =>
        (await make(design, { formats: ['3mf'] }, openTools())).find((file) => file.name === 'gauges.3mf')
      const plate = await made()
      if (!plate) throw new Error('no plate')
      expect((await made())?.bytes).toEqual(plate.bytes)
      const xml = strFromU8(unzipSync(plate.bytes)['3D/3dmodel.model'] ?? new Uint8Array())
      const objects = [...xml.matchAll(/<object id="(\d+)" type="model" name="([^"]*)">(.*?)<\/object>/gs)]
      const wanted = parts.filter((part) => part.belongs(design)).flatMap((part) => part.prints?.(design) ?? [])
      expect(objects.map(([, , called]) => called)).toEqual(wanted.map((print) => print.name))
      const boxes = objects.map(([, id = '', , inside = '']) => {
        const item = new RegExp(`<item objectid="${id}" transform="([^"]*)"`).exec(xml)?.[1] ?? ''
        const move = item.split(' ').slice(-3).map(Number)
        return [0, 1, 2].map((axis) => {
          const all = [...inside.matchAll(new RegExp(`<vertex [^>]*${'xyz'[axis]}="([^"]*)"`, 'g'))].map((found) =>
            Number(found[1]),
          )
          return [Math.min(...all) + (move[axis] ?? NaN), Math.max(...all) + (move[axis] ?? NaN)] as const
        })
      })
      boxes.forEach((box, one) => {
        expect(box[2]?.[0]).toBeCloseTo(0, 5)
        for (const other of boxes.slice(one + 1))
          expect(
            [0, 1].some(
              (axis) =>
                (box[axis]?.[1] ?? NaN) + 9.99 < (other[axis]?.[0] ?? NaN) ||
                (other[axis]?.[1] ?? NaN) + 9.99 < (box[axis]?.[0] ?? NaN),
            ),
          ).toBe(true)
      })
    }
  })
})

describe('profiles', () => {
  it('of flat aids are closed, the outside counter-clockwise, holes clockwise, of the area drawn, when read again', () => {
    const coupling = specimen('feed-roll-coupling')
    for (const part of [widthGauge, settingStep, indexPlate]) {
      const profile = part.profile?.(coupling)
      if (!profile) throw new Error(part.name)
      const loops = readDxf(profileDxf(profile)).entities.map((entity) => {
        const { vertices, shape } = entity as unknown as { vertices: { x: number; y: number }[]; shape: boolean }
        expect(shape, part.name).toBe(true)
        return vertices.map(({ x, y }): [number, number] => [x, y])
      })
      expect(loops.length).toBe(profile.contours.length)
      loops.forEach((loop, index) => {
        const area = loop.reduce((sum, [x, y], at) => {
          const [nx, ny] = loop[(at + 1) % loop.length] ?? [x, y]
          return sum + (x * ny - nx * y) / 2
        }, 0)
        expect(Math.sign(area)).toBe(index === 0 ? 1 : -1)
        expect(Math.abs(area / areaOf(profile.contours[index] ?? []))).toBeCloseTo(1, 2)
      })
    }
  })
})

describe('bore plug', () => {
  const whole = (feature: object, diameter: number): Design =>
    designed({ name: 'whole', units: 'mm', bore: { diameter, length: 30 }, hub: { outside: 60 }, feature })
  const jobs = [
    whole({ spline: { standard: 'iso-14', size: '6x23x26' } }, 23),
    whole({ spline: { count: 5, width: [4, 4.05], major: [26, 26.1] } }, 22),
    whole({ socket: { sides: 4, across: [12, 12.1], tip: 0.2 } }, 12.5),
    whole({ socket: { sides: 6, across: [12, 12.1], tip: 0.2 } }, 12.25),
  ]

  it('goes into the smallest hub, printed as large as it may come out, and not into one turned between its slots', () => {
    for (const design of jobs) {
      const { borePlug: plug, section } = design
      if (!plug) throw new Error('no plug')
      const mesh = meshOf(borePlug, { ...design, borePlug: { ...plug, offset: -plug.tolerance / 2 } })
      const metal = metalOf(loopsAt(mesh, 2, plug.length - 2))
      // Drawn by itself: the bore, and strips to the floors or the polygon of the flats.
      const turned = (by: number): MultiPolygon => {
        const spun = (ring: Ring, angle: number): Ring => {
          const [c, s] = [Math.cos(((angle + by) * Math.PI) / 180), Math.sin(((angle + by) * Math.PI) / 180)]
          return ring.map(([x, y]): [number, number] => [x * c - y * s, x * s + y * c])
        }
        const flat = (section.socket?.acrossFlats.lower ?? 0) / 2
        const count = section.at.length
        const corner = flat / Math.cos(Math.PI / count)
        const shapes = section.socket
          ? [
              Array.from({ length: count }, (_, at): [number, number] => [
                corner * Math.cos((2 * Math.PI * at) / count),
                corner * Math.sin((2 * Math.PI * at) / count),
              ]),
            ]
          : section.at.map((angle) =>
              spun(
                box(0, -section.widthLimits.lower / 2, section.floorLimits?.lower ?? 0, section.widthLimits.lower / 2),
                angle - by,
              ),
            )
        return union([circleOf(section.bore.lower / 2)], ...shapes.map((ring): [Ring] => [spun(ring, 0)]))
      }
      expect(outside(metal, turned(0)), section.kind).toBeLessThan(0.01)
      expect(outside(metal, turned(180 / section.at.length)), section.kind).toBeGreaterThan(0.5)
      const { genus, bodies, openEdges, min } = measure(mesh)
      expect({ genus, bodies, openEdges, at: min[2] }).toEqual({ genus: 0, bodies: 1, openEdges: 0, at: 0 })
    }
  })
})

describe('every gauge', () => {
  it('says on its sheet that it is a go-check, how near it is, and what it is not for', () => {
    const gauges = [plugGauge, borePlug, acrossNoGo, widthGauge, hubRing, settingStep]
    for (const design of everyDesign)
      for (const part of gauges.filter((one) => one.belongs(design))) {
        const headings = part.drawing(design).notes.map(({ heading, caution }) => (caution ? heading : ''))
        expect(
          headings.some((heading) => /^GO-CHECK ±0?\.\d+, NOT FOR ACCEPTANCE$/.test(heading)),
          part.name,
        ).toBe(true)
      }
  })

  it('is not larger than a small printer’s bed, but for plates and slices of large hubs', () => {
    for (const design of few)
      for (const part of parts.filter((one) => one.belongs(design)))
        for (const print of part.prints?.(design) ?? []) {
          const { min, max } = measure(carve(kernel, print.solid, 0.05))
          const wide = Math.max(max[0] - min[0], max[1] - min[1])
          expect(wide, print.name).toBeLessThan(Math.max(190, 2.6 * design.section.cornerReachMost))
        }
  })
})

describe('shims', () => {
  it('cannot fall through: their heads lie on the collar on both sides, however far the bar is pushed over in the slot', () => {
    let tried = 0
    for (const design of everyDesign) {
      const { bushing } = design
      if (!bushing || bushing.shims.length === 0) continue
      const { shim, slotWidth, collarDiameter, floorFromAxis } = bushing
      // The whole pack lies between the slot's floor and its top there; the collar is narrowest at the end farther from the axis.
      const far = Math.max(
        Math.abs(floorFromAxis),
        Math.abs(floorFromAxis + bushing.shims.reduce((sum, one) => sum + one, 0)),
      )
      const chord = Math.sqrt((collarDiameter / 2) ** 2 - far ** 2)
      const pushed = (slotWidth.upper - (shim.width - 0.1016)) / 2
      expect(Math.min(shim.headWidth / 2 - pushed, chord) - slotWidth.upper / 2).toBeGreaterThan(1)
      // And the bar ends inside the bushing, so that it rests on the head alone.
      expect(shim.length).toBeLessThan(bushing.length + bushing.collarThickness)
      expect(shim.length).toBeGreaterThan(bushing.length)
      tried += 1
    }
    expect(tried).toBeGreaterThan(20)
  })

  it('are cut from one profile, the outside counter-clockwise, the hole inside its head', () => {
    const design = everyDesign.find((one) => shimPack.belongs(one))
    if (!design) throw new Error('no shims')
    const profile = shimPack.profile?.(design)
    const [outline, hole] = profile?.contours ?? []
    expect(areaOf(outline ?? [])).toBeGreaterThan(0)
    expect(areaOf(hole ?? [])).toBeLessThan(0)
    const { entities } = readDxf(profileDxf(profile ?? { name: '', contours: [] }))
    expect(entities.map(({ type }) => type)).toEqual(['LWPOLYLINE', 'LWPOLYLINE'])
  })
})
