import { beforeAll, describe, expect, it } from 'vitest'
import { groundBar } from '../../generators/ground-bar.ts'
import type { Design } from '../../src/design.ts'
import { carve, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { difference, intersection, type MultiPolygon } from './clipping.ts'
import { everyDesign } from './designs.ts'
import { areaIn, loopsAt, metalOf } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const made = everyDesign.filter((design) => groundBar.belongs(design))
const barOf = ({ groundBar: bar }: Design) => {
  if (!bar) throw new Error('no bar of one piece')
  return bar
}
const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180)
const round = (diameter: number, y = 0): MultiPolygon => [
  [
    Array.from({ length: 1440 }, (_, index): [number, number] => {
      const angle = (2 * Math.PI * index) / 1440
      return [(diameter / 2) * Math.cos(angle), y + (diameter / 2) * Math.sin(angle)]
    }),
  ],
]

describe('a bar of one piece', () => {
  it('is among the designs, pushed and pulled', () => {
    expect(made.some(({ asked }) => asked?.stroke === 'push')).toBe(true)
    expect(made.some(({ asked }) => asked?.stroke === 'pull')).toBe(true)
  })

  it('is one closed body of its length, back to nose as a micrometer reads it', () => {
    for (const design of made) {
      const bar = barOf(design)
      const { openEdges, bodies, genus, min, max } = measure(carve(kernel, groundBar.solid(design), 0.003))
      expect({ openEdges, bodies, genus }).toEqual({ openEdges: 0, bodies: 1, genus: 0 })
      expect([min[2], max[2]]).toEqual([expect.closeTo(-bar.overall, 4), expect.closeTo(0, 4)])
      const nose = -bar.blank.nominal / 2 + bar.backToNose.nominal
      expect(Math.max(max[1], nose)).toBeCloseTo(Math.max(bar.shank.nominal / 2, nose), 2)
    }
  })

  it('has neck, nose width and heel of the core in sections of its mesh', () => {
    for (const design of made) {
      const bar = barOf(design)
      const mesh = carve(kernel, groundBar.solid(design), 0.002)
      const neck = metalOf(loopsAt(mesh, 2, -bar.headLength - bar.neckLength / 2))
      expect(areaIn(neck) / ((Math.PI * bar.diameter.nominal ** 2) / 4)).toBeCloseTo(1, 2)
      const pushed = design.asked?.stroke !== 'pull'
      // A little behind the edge, and a little before the heel.
      for (const part of [0.02, 0.98]) {
        const from = part * bar.headLength
        const head = metalOf(loopsAt(mesh, 2, pushed ? -from : from - bar.headLength))
        const flat = -bar.blank.nominal / 2 + bar.backToNose.nominal - from * tan(bar.endRelief)
        const points = head.flat().flat()
        const top = Math.max(...points.map(([, y]) => y))
        // Where the raked face has not yet come out to the nose, the section ends lower.
        if (bar.rake === 0 || part > 0.5) {
          expect(top).toBeCloseTo(flat, 2)
          const high = points.filter(([, y]) => y > top - 1e-3).map(([x]) => x)
          const wanted = bar.noseWidth - (bar.noseWidth - bar.widthAtHeel) * part
          expect(Math.max(...high) - Math.min(...high)).toBeCloseTo(wanted, 2)
        }
      }
    }
  })

  it('comes out of its blank, and out of the bore when it is drawn back', () => {
    for (const design of made) {
      const bar = barOf(design)
      const mesh = carve(kernel, groundBar.solid(design), 0.002)
      const pushed = design.asked?.stroke !== 'pull'
      const head = metalOf(loopsAt(mesh, 2, pushed ? -0.3 * bar.headLength : -0.7 * bar.headLength))
      const beyond = areaIn(difference(head, round(bar.blank.nominal + 0.01)))
      if (bar.backToNose.nominal <= bar.backToNoseMost + 1e-9) expect(beyond).toBeLessThan(0.002)
      expect(areaIn(intersection(head, round(bar.blank.nominal)))).toBeGreaterThan(0.2 * bar.blank.nominal ** 2)
    }
  })
})
