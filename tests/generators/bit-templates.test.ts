import { beforeAll, describe, expect, it } from 'vitest'
import { bitTemplates, contour } from '../../generators/bit-templates.ts'
import { nosePoints } from '../../generators/tool-bit-nose.ts'
import type { Design } from '../../src/design.ts'
import { carve, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf, boundsOf, edgesOf, type Point } from '../../src/solid/outline.ts'
import { everyDesign } from './designs.ts'
import { areaIn, loopsAt, metalOf } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const made = everyDesign.filter((design) => bitTemplates.belongs(design))
const few = made.filter((_, index) => index % 6 === 0)
const sizesOf = ({ bitTemplates: templates }: Design) => {
  if (!templates) throw new Error('no templates')
  return templates
}
const limitsIn = ({ lower, upper }: { readonly lower: number; readonly upper: number }) => ({ lower, upper })
const degrees = (angle: number): number => (angle * 180) / Math.PI

/** Opening angles of the notches in the contour, left to right, between the straight legs that meet in each hole. */
const opened = (design: Design): readonly { readonly at: number; readonly angle: number }[] => {
  const edges = edgesOf(contour(sizesOf(design)))
  return edges
    .flatMap(({ arc }, index) => {
      const [down, up] = [edges[index - 1], edges[index + 1]]
      // Holes at vertices sweep more than half a turn, clockwise.
      if (!arc || arc.sweep > -Math.PI - 1e-6 || !down || !up) return []
      const turn = (from: Point, to: Point) => Math.atan2(to[1] - from[1], to[0] - from[0])
      const right = turn(down.to, down.from)
      return [{ at: arc.centre[0], angle: degrees(turn(up.from, up.to) - right) }]
    })
    .toSorted((a, b) => a.at - b.at)
}

describe('bit template', () => {
  it('goes with every bit, whatever its form', () => {
    for (const design of everyDesign) expect(bitTemplates.belongs(design)).toBe(design.bit !== undefined)
    expect(new Set(made.map(({ bit }) => bit?.form))).toEqual(new Set([undefined, 'vee', 'round']))
  })

  it('has the angles in its contour that it names, in the order of grinding', () => {
    for (const design of made) {
      const { side, end, plan, vee, wedge, first, pitch } = sizesOf(design)
      const wanted = [side, end, plan ?? vee, wedge]
      const notches = opened(design)
      const places = notches.map(({ at }) => Math.round((at - first) / pitch))
      expect(places).toEqual(wanted.flatMap((angle, index) => (angle === undefined ? [] : [index])))
      for (const [index, { angle, at }] of notches.entries()) {
        expect(angle).toBeCloseTo(wanted[places[index] ?? 0] ?? NaN, 9)
        expect(at).toBeCloseTo(first + (places[index] ?? 0) * pitch, 9)
      }
    }
  })

  it('has a notch for the width that never stops a nose within its limits: 0.03 and up to 0.05 more; in inches .001 and .002', () => {
    for (const design of made) {
      const { width, widthLimits } = sizesOf(design)
      const unit = design.spec.units === 'mm' ? 1 : 25.4
      const [least, most, step] = design.spec.units === 'mm' ? [0.03, 0.05, 0.01] : [0.001, 0.002, 0.0005]
      const over = (widthLimits.lower - (design.bit?.noseWidth.upper ?? NaN)) / unit
      expect(widthLimits.lower).toBe(width)
      expect(over).toBeGreaterThanOrEqual(least - 1e-9)
      // Rounded up to a step.
      expect(over).toBeLessThan(least + step)
      expect((widthLimits.upper - widthLimits.lower) / unit).toBeCloseTo(most, 9)
      const { views, asMade } = bitTemplates.drawing(design)
      const said = views.flatMap(({ callouts }) => callouts).find(({ of }) => of === 'width')
      if (said?.callout !== 'leader') throw new Error('no callout')
      expect(said.lines[0]?.[0]).toMatchObject({ saying: { say: 'limits', ...limitsIn(widthLimits) } })
      expect(asMade?.rows.at(-1)?.what).toBe('E, width')
      expect(asMade?.rows.at(-1)?.limits).toHaveLength(3)
    }
  })

  it('names the angles that the bit is carved with', () => {
    for (const design of made) {
      const { bit } = design
      if (!bit) throw new Error('no bit')
      const { face, bottom, neck } = nosePoints(bit)
      const [tip, foot, shoulder] = [face[0], bottom[0], neck[0]]
      if (!tip || !foot || !shoulder) throw new Error('no points')
      const along = degrees(Math.atan2(shoulder[2] - tip[2], shoulder[0] - tip[0]))
      const under = degrees(Math.atan2(foot[2] - tip[2], foot[0] - tip[0]))
      const { wedge, end, side } = sizesOf(design)
      expect(along - under).toBeCloseTo(wedge, 6)
      expect(-under).toBeCloseTo(end, 6)
      const [upper, lower] = [neck[0], neck[2]]
      if (!upper || !lower) throw new Error('no neck')
      expect(degrees(Math.atan2(upper[2] - lower[2], upper[1] - lower[1]))).toBeCloseTo(side, 6)
    }
  })

  it('lets the nose in where it must enter, and no more than slides', () => {
    for (const design of made) {
      const { width, widthDepth } = sizesOf(design)
      const upper = design.bit?.noseWidth.upper ?? 0
      expect(width).toBeGreaterThan(upper + 0.02)
      expect(width).toBeLessThan(upper + 0.05)
      expect(widthDepth).toBeLessThanOrEqual(design.bit?.noseLength ?? 0)
      expect(widthDepth).toBeGreaterThan(0.3)
    }
  })

  it('keeps metal between its notches and under them', () => {
    for (const design of made) {
      const { length, height, depth, room } = sizesOf(design)
      const { min, max } = boundsOf(contour(sizesOf(design)))
      expect([...min, ...max]).toEqual([0, 0, expect.closeTo(length, 9), expect.closeTo(height, 9)])
      expect(height - depth - room / 2).toBeGreaterThan(7)
      const tops = contour(sizesOf(design)).filter(({ at }) => Math.abs(at[1] - height) < 1e-9)
      const xs = tops.map(({ at }) => at[0]).toSorted((a, b) => a - b)
      // Land, notch, land, … : every second step is a land.
      for (let index = 0; index < xs.length - 1; index += 2)
        expect((xs[index + 1] ?? 0) - (xs[index] ?? 0)).toBeGreaterThan(3)
      expect(xs).toHaveLength(12)
    }
  })

  it('is carved as its contour, letters on top', () => {
    for (const design of few) {
      const templates = sizesOf(design)
      const mesh = carve(kernel, bitTemplates.solid(design), 0.005)
      const { openEdges, bodies, genus, max } = measure(mesh)
      expect({ openEdges, bodies, genus }).toEqual({ openEdges: 0, bodies: 1, genus: 0 })
      expect(max[2]).toBeCloseTo(templates.thickness + 0.6, 3)
      const section = areaIn(metalOf(loopsAt(mesh, 2, templates.thickness / 2)))
      expect(section / areaOf(contour(templates, -templates.offset))).toBeCloseTo(1, 3)
    }
  })

  it('gives its contour as a profile, full size', () => {
    for (const design of few) expect(bitTemplates.profile?.(design).contours).toEqual([contour(sizesOf(design))])
  })
})
