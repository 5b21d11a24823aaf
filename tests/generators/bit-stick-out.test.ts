import { beforeAll, describe, expect, it } from 'vitest'
import { bitStickOut } from '../../generators/bit-stick-out.ts'
import type { Design } from '../../src/design.ts'
import { inWords } from '../../src/drawing/numbers.ts'
import { carve, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { everyDesign, otherBars } from './designs.ts'
import { loopsAt } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

const made = everyDesign.filter((design) => bitStickOut.belongs(design))
const few = [...made.filter((_, index) => index % 8 === 0), ...otherBars.filter((one) => bitStickOut.belongs(one))]
const barOf = ({ bar }: Design) => {
  if (!bar) throw new Error('no bar')
  return bar
}

describe('the bit set in its bar', () => {
  it('goes with every bar that is pushed', () => {
    for (const design of everyDesign)
      expect(bitStickOut.belongs(design)).toBe(design.bit !== undefined && design.asked?.stroke !== 'pull')
  })

  it('is one body that reads over bar and nose what the sheet says', () => {
    for (const design of few) {
      const bar = barOf(design)
      const { openEdges, bodies, min, max } = measure(carve(kernel, bitStickOut.solid(design), 0.002))
      expect({ openEdges, bodies }).toEqual({ openEdges: 0, bodies: 1 })
      // A tail that stands out at the back would be in the reading.
      expect(max[1] - min[1]).toBeCloseTo(bar.overBarAndNose, 1)
      expect(max[1]).toBeCloseTo(bar.diameter.nominal / 2 + bar.projection, 4)
    }
  })

  it('has its edge as far from the end as the core says', () => {
    for (const design of few.filter(({ bar, bit }) => bar?.incline === 0 && bit?.shape === 'square')) {
      const { bit } = design
      const bar = barOf(design)
      const mesh = carve(kernel, bitStickOut.solid(design), 0.002)
      // A hair behind the edge, across the nose: z and x of y.
      const hair = 1e-3
      const loops = loopsAt(mesh, 1, bar.diameter.nominal / 2 + bar.projection - hair)
      const foremost = Math.max(...loops.flat().map(([z]) => z))
      expect(-foremost).toBeCloseTo(bar.bitToEnd + (bit?.size ?? 0) - (bit?.edgeHeight ?? 0), 2)
    }
  })

  it('asks for a try in the uncut slice only where one setting enters the bore', () => {
    for (const design of made) {
      const words = bitStickOut
        .drawing(design)
        .notes.flatMap(({ lines }) => lines.map((line) => inWords(line, { convention: 'iso', units: 'mm' })))
        .join('\n')
      const tried = design.hubRing?.uncutBore !== undefined && barOf(design).stages.length === 1
      expect(words.includes('must pass the uncut slice')).toBe(tried)
    }
  })
})
