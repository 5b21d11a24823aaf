/** What is left uncut because bar and machine give. mm, N. */
import { lastOf } from '../dimensions/rising.ts'
import type { Band } from './bar.ts'

export interface Cut {
  /** Cutting force at a chip thickness, N. */
  readonly force: (thickness: number) => number
  readonly planned: number
  /** Under this it rubs. Source: judgement, about the edge's radius. */
  readonly least: number
  /** Thrust of an edge that takes no chip, N. */
  readonly edgeThrust: number
  /** Give of bar and machine to a plain sideways push, mm/N. */
  readonly give: number
}

export const leastChip = 0.005

/** The slot stands this much shallower than the dial (negative: deeper) while the planned infeed is cut. */
export const lag = (cut: Cut, give: Band): Band => ({
  least: give.least * cut.force(cut.planned),
  most: give.most * cut.force(cut.planned),
})

/** What no number of spring passes removes; neither end more than the lag itself. */
export const residual = (cut: Cut, give: Band): Band => {
  const standing = lag(cut, give)
  const least = give.least * cut.force(cut.least) + cut.least
  const most = Math.max(give.most * cut.force(cut.least), cut.give * cut.edgeThrust) + cut.least
  return { least: Math.min(least, standing.least), most: Math.min(most, standing.most) }
}

/** Spring passes until the chip is thinner than can be cut, and what is left then. Solves chip + give·force(chip) = left, again and again. */
export const springPasses = (cut: Cut, give: number): { readonly passes: number; readonly left: number } => {
  let left = give * cut.force(cut.planned)
  let passes = 0
  while (passes < 50) {
    const standsFor = (chip: number) => chip + give * cut.force(chip)
    if (standsFor(cut.least) > left) break
    left -= lastOf(0, left, left, standsFor)
    passes++
  }
  return { passes, left }
}
