import { beforeAll, describe, expect, it } from 'vitest'
import { cutterBar } from '../../generators/cutter-bar.ts'
import { acrossMetal, alongHole } from '../../generators/cutter-bar-wall.ts'
import { toolBit } from '../../generators/tool-bit.ts'
import type { Design } from '../../src/design.ts'
import { carve, interference, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf, edgesOf, type Outline } from '../../src/solid/outline.ts'
import { place } from '../../src/solid/solid.ts'
import { inWords } from '../../src/drawing/numbers.ts'
import { intersection, type MultiPolygon } from './clipping.ts'
import { everyDesign, otherBars } from './designs.ts'
import { areaIn, loopsAt, metalOf } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const barOf = ({ bar }: Design) => {
  if (!bar) throw new Error('no bar')
  return bar
}
const wall = everyDesign.filter(({ bar }) => bar !== undefined && bar.form !== 'end screw')
const rad = (angle: number): number => (angle * Math.PI) / 180

describe('a bar with its screw in the wall', () => {
  it('is among the designs, upright and leaning', () => {
    expect(wall.some(({ bar }) => bar?.form === 'side screw')).toBe(true)
    expect(wall.some(({ bar }) => bar?.form === 'inclined')).toBe(true)
  })

  it('is one closed body with a hole across it and one into that', () => {
    for (const design of wall) {
      const { openEdges, bodies, genus, min, max } = measure(carve(kernel, cutterBar.solid(design), 0.005))
      expect({ openEdges, bodies, genus }).toEqual({ openEdges: 0, bodies: 1, genus: 2 })
      expect([min[2], max[2]]).toEqual([expect.closeTo(-barOf(design).overall, 4), expect.closeTo(0, 6)])
    }
  })

  it('is carved across the hole as it is drawn there', () => {
    for (const design of wall) {
      const bar = barOf(design)
      const mesh = carve(kernel, cutterBar.solid(design), 0.002)
      const carved = areaIn(metalOf(loopsAt(mesh, 2, -bar.holeToEnd + 1e-4)))
      const drawn = acrossMetal(bar).reduce((sum, outline) => sum + areaOf(outline), 0)
      // The mouths' small chamfers are not in the section's outlines.
      const mouths = 2 * bar.mouthChamfer * bar.diameter.nominal * 0.2
      expect(Math.abs(carved - drawn), `${carved} ${drawn}`).toBeLessThan(0.003 * drawn + mouths)
      for (const outline of acrossMetal(bar)) expect(areaOf(outline)).toBeGreaterThan(0)
    }
  })

  it('keeps metal at either end of a slim hole that leans far: an ellipse in the section, and the screw’s hole into it', () => {
    const leaning = wall.find(({ bar }) => bar?.form === 'inclined')
    if (!leaning?.bar) throw new Error('none leans')
    const bar = { ...leaning.bar, incline: 25, diameter: { nominal: 40, lower: 40, upper: 40 } }
    const [only, ...others] = acrossMetal(bar)
    expect(others).toHaveLength(0)
    const [body, hole, minor] = [20, bar.crossHole.nominal / 2, bar.screw.tapDrill.diameter / 2]
    const steps = 20000
    let open = (Math.PI * hole ** 2) / Math.sin(rad(25))
    for (let step = 0; step < steps; step += 1) {
      const y = ((step + 0.5) / steps) * bar.countersink * 0.6
      const inner = Math.sqrt(hole ** 2 - (y * Math.sin(rad(25))) ** 2)
      const outer = Math.sqrt(body ** 2 - y ** 2)
      const from = y < minor ? inner : body - (bar.countersink / 2 - y)
      open += (2 * Math.max(0, outer - from) * bar.countersink * 0.6) / steps
    }
    expect(areaOf(only ?? []) / (Math.PI * body ** 2 - open)).toBeCloseTo(1, 3)
  })

  it('is carved along the hole as it is drawn there', () => {
    for (const design of wall) {
      const bar = barOf(design)
      const mesh = carve(kernel, cutterBar.solid(design), 0.002)
      const hatch = alongHole(design, bar).marks.flatMap((mark) => (mark.mark === 'hatch' ? mark.outlines : []))
      const from = Math.min(...hatch.flatMap((outline) => outline.map(({ at }) => at[0])))
      // The loops' coordinates are y and z of x = 0, a hair on the far side of the screw.
      const within: MultiPolygon = [
        [
          [
            [-100, from],
            [100, from],
            [100, 1],
            [-100, 1],
          ],
        ],
      ]
      const carved = areaIn(intersection(metalOf(loopsAt(mesh, 0, 1e-4)), within))
      const drawn = hatch.reduce((sum: number, outline: Outline) => sum + areaOf(outline), 0)
      const mouths = 8 * bar.mouthChamfer ** 2
      expect(Math.abs(carved - drawn), `${carved} ${drawn}`).toBeLessThan(0.003 * drawn + mouths)
    }
  })

  it('draws the mouth of its hole where the carved one is', () => {
    for (const design of wall.filter(({ bar }) => bar?.form === 'inclined')) {
      const bar = barOf(design)
      const front = cutterBar.drawing(design).views[0]
      const mouth = front?.marks.flatMap((mark) =>
        mark.mark === 'outline' && mark.outline.length > 60 ? [mark.outline] : [],
      )[0]
      const along = (mouth ?? []).map(({ at }) => at[0])
      const middle = -bar.holeToEnd + (bar.diameter.nominal / 2) * Math.tan(rad(bar.incline))
      expect(Math.max(...along)).toBeCloseTo(middle + bar.crossHole.nominal / 2 / Math.cos(rad(bar.incline)), 6)
      // The wall at the end, where the hole comes out.
      expect(-Math.max(...along)).toBeCloseTo(bar.wallAtEnd ?? Number.NaN, 6)
      expect(edgesOf(mouth ?? [])).toHaveLength(72)
    }
  })

  it('takes its bit: seated on the wall towards the holder, the two do not meet, and the edge is as far from the end as the report says', () => {
    for (const design of wall) {
      const { bit } = design
      const bar = barOf(design)
      if (!bit) throw new Error('no bit')
      const lean = rad(bar.incline)
      const out = bar.diameter.nominal / 2 + (bar.stages[0]?.projection ?? bar.projection)
      // The bit's own edge, at (0, 0, edge height), comes to y = out; its top flat looks to the end.
      const behind = bit.size - (bit.flat ?? 0) - bit.edgeHeight
      const edgeToEnd = bar.bitToEnd + behind / Math.cos(lean) - 0
      // Along the leaning bit the edge lies `behind` its leading face; where it is on y = out, that face is further out.
      const middle = { y: 0, z: -bar.holeToEnd }
      const across = bar.seatRise - bit.size / 2
      // Middle line of the blank: through the hole's middle, moved towards the holder by how high it rides.
      const towards = [Math.cos(lean), Math.sin(lean)] as const
      const square = [Math.sin(lean), -Math.cos(lean)] as const
      const edgeFrom = bit.edgeHeight - bit.size / 2
      const base = [middle.y + square[0] * (across - edgeFrom), middle.z + square[1] * (across - edgeFrom)] as const
      const reach = (out - base[0]) / towards[0]
      const edgeZ = base[1] + reach * towards[1]
      if (bit.shape === 'square') expect(-edgeZ).toBeCloseTo(edgeToEnd, 6)
      const turned = place(
        place(toolBit.solid(design), { move: [0, 0, -bit.edgeHeight] }),
        // x runs back into the bar, y sideways, z to the end.
        { turn: [0, 0, -90] },
      )
      const seated = place(turned, { turn: [bar.incline, 0, 0], move: [0, out, edgeZ] })
      expect(interference(kernel, cutterBar.solid(design), seated, [0, 0, 0], 0.002)).toBeLessThan(0.05)
    }
  })

  it('tells how the hole is drilled, that the screw is in one wall, and to which side the bit is held', () => {
    for (const design of wall) {
      const words = cutterBar
        .drawing(design)
        .notes.flatMap(({ lines }) => lines)
        .map((line) => inWords(line, { convention: 'iso', units: 'mm' }))
        .join('\n')
      expect(words).toContain('Tap drill through one wall')
      expect(words).toContain("on the holder's side")
      expect(words.includes('out of level')).toBe(barOf(design).incline > 0)
      expect(words).not.toMatch(/−\d/)
    }
  })
})

describe('a bar with several settings', () => {
  it('says over bar and nose for each, and how deep it goes', () => {
    const staged = otherBars.filter(({ bar }) => (bar?.stages.length ?? 0) > 1)
    expect(staged.length).toBeGreaterThan(0)
    for (const design of staged) {
      const settings = cutterBar.drawing(design).notes.find(({ heading }) => heading.startsWith('SETTINGS'))
      const said = (settings?.lines ?? []).flatMap((line) =>
        line.flatMap((word) => (typeof word === 'string' ? [] : [word.value])),
      )
      const { bar, section } = design
      const wanted = (bar?.stages ?? []).flatMap(({ projection, to }) => [
        projection,
        (bar?.diameter.nominal ?? 0) + projection,
        section.boreRadius + to,
      ])
      expect(said).toEqual([...wanted, bar?.diameter.nominal])
      expect(said.at(-2)).toBeCloseTo(section.across, 9)
    }
  })
})
