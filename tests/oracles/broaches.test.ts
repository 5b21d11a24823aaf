import { describe, expect, it } from 'vitest'
import { guideBushingOf } from '../../src/dimensions/guide-bushing.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import { pressLoadsOf } from '../../src/mechanics/loads.ts'
import type { Spec } from '../../src/spec/spec.ts'
import { specOf } from '../spec/specimens.ts'

/**
 * Teeth driven through a slot's floor on a grid: columns across the slot, cells along the hub. Nothing is shared with the forces that are
 * held against it; cutting force is typed again from the VDI 3323 constants of mild steel.
 */
interface Job {
  readonly radius: number
  readonly hub: number
  readonly width: number
  readonly heights: readonly number[]
  readonly pitch: number
  /** x of the bushing's floor for each pass, shims under the broach. */
  readonly floors: readonly number[]
  readonly column?: { readonly wide: number; readonly high: number; readonly strength: number; readonly free: number }
}

/** N for a strip of an edge `width` wide at a chip: worn, hand speed, slotting, 10° of face, guide. */
const strip = (width: number, chip: number): number => 1.15 * 0.9 * 1.2 * 1.1 * 1.3 * 1350 * width * chip ** 0.79

const drive = ({ radius, hub, width, heights, pitch, floors, column }: Job) => {
  const columns = 400
  const cells = 60
  const y = (i: number) => -width / 2 + ((i + 0.5) * width) / columns
  const floor = Array.from({ length: columns }, (_, i) =>
    new Float64Array(cells).fill(Math.sqrt(radius ** 2 - y(i) ** 2)),
  )
  let most = 0
  let margin = Infinity
  for (const from of floors) {
    const depth = heights.map((height) => from + height)
    const last = (heights.length - 1) * pitch + hub
    // A step is one cell of hub; every tooth in it cuts what stands before it there.
    const step = hub / cells
    for (let n = 0; n * step < last + step; n++) {
      let force = 0
      for (const [tooth, x] of depth.entries()) {
        const cell = Math.floor(n - (tooth * pitch) / step + 1e-9)
        if (cell < 0 || cell >= cells) continue
        for (let i = 0; i < columns; i++) {
          const line = floor[i]
          const stands = line?.[cell] ?? x
          if (!line || x <= stands) continue
          force += strip(width / columns, x - stands)
          line[cell] = x
        }
      }
      most = Math.max(most, force)
      if (column && force > 0) {
        const { wide, high, strength, free } = column
        const [thin, broad] = [Math.min(wide, high), Math.max(wide, high)]
        const long = free - n * step
        const gyration = thin / Math.sqrt(12)
        const bends = (Math.PI ** 2 * 207_000 * broad * thin ** 3) / 12 / long ** 2
        const turning = Math.sqrt((2 * Math.PI ** 2 * 207_000) / strength)
        const squashes =
          thin * broad * strength * (1 - (strength * (long / gyration) ** 2) / (4 * Math.PI ** 2 * 207_000))
        margin = Math.min(margin, (long / gyration > turning ? bends : squashes) / force)
      }
    }
  }
  return { most, margin }
}

const evenly = (first: number, last: number, teeth: number, finishing: number): readonly number[] =>
  Array.from(
    { length: teeth },
    (_, n) => first + ((last - first) * Math.min(n, teeth - finishing)) / (teeth - finishing),
  )

const document = (
  units: 'mm' | 'in',
  sizes: { bore: number; hub: number; across: number; width: number },
  broach: object,
) => ({
  name: 'trial',
  units,
  bore: { diameter: sizes.bore, tolerance: [0, 0], length: sizes.hub },
  hub: { outside: 3 * sizes.bore },
  feature: { keyway: { width: sizes.width, height: sizes.width, across: sizes.across } },
  tooling: { press: { broach: { ...broach, yield: '830 MPa' }, force: '50 kN' } },
})

const f1 = {
  toothWidth: 0.1885,
  bodyWidth: 0.187,
  firstTooth: 0.375,
  lastTooth: 0.44,
  pilot: 0.36,
  toothedLength: 5,
  teeth: 21,
  overall: 6.75,
  pilotLength: 0.9,
  rootHeight: 0.25,
}
const f5 = {
  toothWidth: 6.015,
  bodyWidth: 5.98,
  firstTooth: 9.5,
  lastTooth: 11.2,
  pilot: 9,
  toothedLength: 120,
  teeth: 21,
  overall: 170,
  pilotLength: 22,
  rootHeight: 6.5,
}
const f6 = {
  toothWidth: 8.018,
  bodyWidth: 7.98,
  firstTooth: 12.5,
  lastTooth: 14.4,
  pilot: 12,
  toothedLength: 150,
  teeth: 26,
  overall: 210,
  pilotLength: 28,
  rootHeight: 9,
}

/** The design's own bushing and loads, and the job as the grid takes it. */
const both = (spec: Spec) => {
  const broach = spec.tooling.press?.broach
  if (!broach) throw new Error('no broach')
  const section = sectionOf(spec).sizes
  const bushing = guideBushingOf(spec, broach, section).sizes
  const loads = pressLoadsOf(spec, broach, bushing, section)?.sizes
  if (!loads) throw new Error('no loads')
  const under = [0, ...bushing.shims.map((_, n) => bushing.shims.slice(0, n + 1).reduce((sum, one) => sum + one, 0))]
  const grid = drive({
    radius: section.boreRadius,
    hub: spec.bore.length,
    width: broach.toothWidth,
    heights: broach.heights ?? evenly(broach.firstTooth, broach.lastTooth, broach.teeth, broach.finishingTeeth ?? 1),
    pitch: broach.toothedLength / (broach.teeth - 1),
    floors: under.map((shims) => bushing.floorFromBore + shims),
    ...(broach.rootHeight !== undefined &&
      broach.yield !== undefined && {
        column: {
          wide: broach.bodyWidth,
          high: broach.rootHeight,
          strength: broach.yield,
          free: broach.overall - broach.pilotLength - bushing.collarThickness,
        },
      }),
  })
  return { loads, grid }
}

describe('a broach driven through a floor on a grid', () => {
  it.each([
    ['3/16 in a 3/4 bore', document('in', { bore: 0.75, hub: 1, across: 0.836842, width: 0.1875 }, f1)],
    ['6 in a 20 bore', document('mm', { bore: 20, hub: 30, across: 22.8, width: 6 }, f5)],
    ['8 in a 25 bore', document('mm', { bore: 25, hub: 40, across: 28.3, width: 8 }, f6)],
    [
      'three finishing teeth',
      document('mm', { bore: 25, hub: 40, across: 28.3, width: 8 }, { ...f6, finishingTeeth: 3 }),
    ],
    [
      'every tooth measured, one of them chipped',
      document(
        'mm',
        { bore: 25, hub: 40, across: 28.3, width: 8 },
        { ...f6, heights: evenly(12.5, 14.4, 26, 1).map((height, n) => (n === 20 ? height - 0.05 : height)) },
      ),
    ],
  ])('%s: greatest force and column margin alike', (_name, written) => {
    const { loads, grid } = both(specOf(written))
    // The grid rounds each tooth's place to a cell of hub.
    expect(grid.most / loads.force).toBeGreaterThan(0.985)
    expect(grid.most / loads.force).toBeLessThan(1.005)
    expect(grid.margin / (loads.columnMargin ?? Number.NaN)).toBeGreaterThan(0.97)
    // Where corner strips alone are cut, each is reckoned at its whole bite: on the safe side.
    expect(grid.margin / (loads.columnMargin ?? Number.NaN)).toBeLessThan(1.08)
  })

  it('a tooth that stands high bites more than its share, and the broach then asks more', () => {
    const sizes = { bore: 25, hub: 40, across: 28.3, width: 8 }
    const even = evenly(12.5, 14.4, 26, 1)
    const high = even.map((height, n) => (n === 20 ? height + 0.05 : height))
    const [plain, uneven] = [
      { ...f6, heights: even },
      { ...f6, heights: high },
    ].map((broach) => both(specOf(document('mm', sizes, broach))))
    expect(plain?.loads.force).toBeCloseTo(17571.1, 0)
    expect(uneven?.loads.force).toBeGreaterThan(1.03 * (plain?.loads.force ?? 0))
    expect((uneven?.grid.most ?? 0) / (uneven?.loads.force ?? 0)).toBeGreaterThan(0.985)
    expect((uneven?.grid.most ?? 0) / (uneven?.loads.force ?? 0)).toBeLessThan(1.005)
  })
})
