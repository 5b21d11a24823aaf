import { beforeAll, describe, expect, it } from 'vitest'
import { contour, plugSection } from '../../generators/plug-gauge.ts'
import { contours } from '../../generators/shim-pack.ts'
import { guideBushing, halfSection as bushingSection } from '../../generators/guide-bushing.ts'
import { cutterBar, halfSection as barSection } from '../../generators/cutter-bar.ts'
import { parts } from '../../generators/set.ts'
import { toolBit } from '../../generators/tool-bit.ts'
import type { Design } from '../../src/design.ts'
import { carve, interference, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf, edgesOf, type Outline } from '../../src/solid/outline.ts'
import { place } from '../../src/solid/solid.ts'
import { everyDesign, specimen } from './designs.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const some = everyDesign.filter((_, index) => index % 4 === 0)
const carved = (design: Design, name: string, sagitta = 0.01) => {
  const part = parts.find((one) => one.name === name)
  if (!part) throw new Error(name)
  return measure(carve(kernel, part.solid(design), sagitta))
}

/** ∫ f over [from, to] by Gauss-Legendre of five points in `count` pieces: shares nothing with the carving. */
const integral = (f: (x: number) => number, from: number, to: number, count = 400): number => {
  const [nodes, weights] = [
    [-0.9061798459, -0.5384693101, 0, 0.5384693101, 0.9061798459],
    [0.2369268851, 0.4786286705, 0.5688888889, 0.4786286705, 0.2369268851],
  ]
  let sum = 0
  const half = (to - from) / count / 2
  for (let piece = 0; piece < count; piece += 1)
    nodes.forEach((node, index) => {
      sum += (weights[index] ?? 0) * f(from + (2 * piece + 1) * half + node * half) * half
    })
  return sum
}

/** Radius of the turned skin at z, from the half section's edges. */
const skinAt = (outline: Outline, z: number): number =>
  Math.max(
    0,
    ...edgesOf(outline).flatMap(({ from, to, arc }) => {
      const [low, high] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])]
      if (z < low || z > high || high - low < 1e-12) return []
      if (!arc) return [from[0] + ((to[0] - from[0]) * (z - from[1])) / (to[1] - from[1])]
      return [arc.centre[0] - Math.sqrt(Math.max(arc.radius ** 2 - (z - arc.centre[1]) ** 2, 0))]
    }),
  )

const turnedVolume = (outline: Outline): number => {
  const cuts = [...new Set(outline.map(({ at }) => at[1]))].toSorted((a, b) => a - b)
  return cuts
    .slice(1)
    .reduce((sum, to, index) => sum + integral((z) => Math.PI * skinAt(outline, z) ** 2, cuts[index] ?? to, to, 40), 0)
}

describe('every solid', () => {
  it('is closed, without slivers gone wrong, in one piece', () => {
    for (const design of some)
      for (const part of parts.filter((one) => one.belongs(design))) {
        const { openEdges, bodies, volume } = measure(carve(kernel, part.solid(design), 0.02))
        const wanted =
          part.name === 'shim-pack' ? (design.bushing?.shims.length ?? 0) : (part.prints?.(design).length ?? 1)
        expect({ part: part.name, openEdges, bodies }).toEqual({ part: part.name, openEdges: 0, bodies: wanted })
        expect(volume).toBeGreaterThan(0)
      }
  })
})

describe('guide bushing', () => {
  const designs = everyDesign.filter((design) => guideBushing.belongs(design)).slice(0, 6)

  it('is a turned body less its slot, open from end to end', () => {
    for (const design of designs) {
      const { bushing } = design
      if (!bushing) throw new Error('no bushing')
      const half = bushing.slotWidth.nominal / 2
      const floor = bushing.backWall.nominal - bushing.outside.nominal / 2
      const outline = bushingSection(bushing)
      const slotAt = (r: number) =>
        half * Math.sqrt(r ** 2 - half ** 2) + r ** 2 * Math.asin(half / r) - 2 * half * floor
      const cuts = [...new Set(outline.map(({ at }) => at[1]))].toSorted((a, b) => a - b)
      const slot = cuts
        .slice(1)
        .reduce((sum, to, index) => sum + integral((z) => slotAt(skinAt(outline, z)), cuts[index] ?? to, to, 40), 0)
      const { volume, genus, min, max } = carved(design, 'guide-bushing', 0.003)
      expect(volume / (turnedVolume(outline) - slot)).toBeCloseTo(1, 3)
      expect(genus).toBe(0)
      expect(min[2]).toBeCloseTo(-bushing.collarThickness, 5)
      expect(max[2]).toBeCloseTo(bushing.length, 5)
      expect(min[0]).toBeCloseTo(-bushing.collarDiameter / 2, 2)
    }
  })
})

describe('shims', () => {
  it('have the area of their contour, one hole each', () => {
    for (const design of everyDesign.filter(({ bushing }) => (bushing?.shims.length ?? 0) > 0).slice(0, 6)) {
      const [outside, hole] = contours(design)
      const shims = design.bushing?.shims ?? []
      const { volume, genus, max } = carved(design, 'shim-pack', 0.002)
      const thick = shims.reduce((sum, shim) => sum + shim, 0)
      expect(volume / ((areaOf(outside) + areaOf(hole)) * thick)).toBeCloseTo(1, 3)
      expect(genus).toBe(shims.length)
      expect(max[0]).toBeCloseTo(design.bushing?.shim.length ?? 0, 5)
    }
  })
})

describe('cutter bar', () => {
  it('has a hole across it and one from the end into that, no farther', () => {
    for (const design of everyDesign.filter((one) => cutterBar.belongs(one)).filter((_, index) => index % 8 === 0)) {
      const { bar } = design
      if (!bar) throw new Error('no bar')
      const [body, hole, tap] = [bar.diameter.nominal / 2, bar.crossHole.nominal / 2, bar.screw.tapDrill.diameter / 2]
      const across = integral((x) => 4 * Math.sqrt(body ** 2 - x ** 2) * Math.sqrt(hole ** 2 - x ** 2), -hole, hole)
      const open = integral((x) => 2 * Math.sqrt(tap ** 2 - x ** 2) * Math.sqrt(hole ** 2 - x ** 2), -tap, tap)
      const drilled = Math.PI * tap ** 2 * bar.holeToEnd - open
      const sink = bar.countersink / 2
      const sunk = (Math.PI * (sink ** 3 - tap ** 3)) / 3 - Math.PI * tap ** 2 * (sink - tap)
      const wanted = turnedVolume(barSection(bar)) - across - drilled - sunk
      const { volume, genus, min, max } = carved(design, 'cutter-bar', 0.002)
      // The mouths' chamfers are left out of the closed form: a ring of triangles all round is more than both of them.
      const rings = 2 * Math.PI * (2 * hole + 2 * bar.mouthChamfer) * (bar.mouthChamfer ** 2 / 2)
      expect(volume).toBeLessThan(wanted * 1.001)
      expect(volume).toBeGreaterThan(wanted * 0.999 - rings)
      expect(genus).toBe(2)
      expect([min[2], max[2]]).toEqual([expect.closeTo(-bar.overall, 4), expect.closeTo(0, 6)])
      // The drill's point stays short of the far wall.
      expect(bar.tapDepth + tap / Math.tan((59 * Math.PI) / 180)).toBeLessThan(bar.holeToEnd + hole)
    }
  })

  it('takes the blank: seated as the core says, the two do not meet', () => {
    for (const name of ['cider-mill-pulley', 'winch-drum-gear', 'saw-bench-pulley']) {
      const design = specimen(name)
      const { bar, bit } = design
      if (!bar || !bit) throw new Error('no bar')
      const seated = place(toolBit.solid(design), {
        turn: [0, 0, -90],
        move: [0, bar.diameter.nominal / 2 + bar.projection, -bar.bitToEnd - bit.size],
      })
      expect(interference(kernel, cutterBar.solid(design), seated, [0, 0, 0], 0.002)).toBeLessThan(0.02)
    }
  })
})

describe('plug gauge', () => {
  it('has the model size that this printer makes the finished size of', () => {
    for (const design of some) {
      const { plug } = design
      const model = plugSection(design, plug.offset)
      const { min, max, genus } = carved(design, 'plug-gauge')
      const wide = Math.max(model.diameter / 2, plug.handleDiameter / 2)
      expect(max[2]).toBeCloseTo(plug.length + plug.handleLength + 0.6, 3)
      expect(max[1]).toBeCloseTo(wide, 1)
      expect(max[0]).toBeCloseTo(Math.max(model.across - model.diameter / 2, plug.handleDiameter / 2), 1)
      expect(min[2]).toBeCloseTo(0, 6)
      expect(genus).toBe(0)
    }
  })

  it('is narrower than the plain sizes by the offset all round', () => {
    const design = specimen('cider-mill-pulley')
    const offset = 0.06
    const [drawn, model] = [plugSection(design), plugSection(design, offset)]
    expect(drawn.diameter - model.diameter).toBeCloseTo(2 * offset, 9)
    expect(drawn.keyWidth - model.keyWidth).toBeCloseTo(2 * offset, 9)
    expect(drawn.across - model.across).toBeCloseTo(2 * offset, 9)
  })

  it('has a contour of plug and block, less the room at the two inner corners', () => {
    for (const design of everyDesign) {
      const section = plugSection(design)
      const [radius, half] = [section.diameter / 2, section.keyWidth / 2]
      const [foot, top] = [Math.sqrt(radius ** 2 - half ** 2), section.across - radius]
      const cap = radius ** 2 * Math.asin(half / radius) - half * foot
      const whole = Math.PI * radius ** 2 + 2 * half * (top - foot) - cap - section.keyCorner ** 2
      const room = whole - areaOf(contour(section))
      expect(room).toBeGreaterThan(0)
      expect(room).toBeLessThan(2 * Math.PI * 0.4 ** 2)
    }
  })
})
