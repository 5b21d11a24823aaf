/** Finding the middle of the bore with the two corners of the nose. All mm, degrees. */
import { engagement, offsetWithin, playOf } from '../mechanics/key-play.ts'
import type { Section } from '../dimensions/types.ts'
import type { Units } from '../spec/spec.ts'
import type { Centring } from './types.ts'

/** The slot may be this much off the middle before a key with play at mid-tolerance no longer goes in. */
export const offsetBudget = (section: Section): number | undefined => {
  const width = section.key?.width
  const engaged = engagement(section)
  if (!width || engaged.to <= engaged.from) return undefined
  const play = playOf(section.widthLimits, width)
  return play > 0 ? offsetWithin(engaged, play) : undefined
}

/** ASME B17.1: keyway offset no more than .010 in. */
export const offsetAllowed = 0.254

/**
 * One corner marks first, the other after a further difference d of infeed: the nose is off by about d × (x at touch − r) / (nose width − 2 r),
 * r the radius of its corners, toward the one that marked first: a rounded corner touches at its own middle's height. A nose out of square by an angle reads as off by x × its tangent.
 */
export const centringOf = (
  section: Section,
  noseWidth: number,
  touch: number,
  dial: { readonly mark: number; readonly perInfeed: number },
  units: Units,
  corner = 0,
): Centring => {
  const factor = (touch - corner) / (noseWidth - 2 * corner)
  const factorOfReading = factor / dial.perInfeed
  const budget = offsetBudget(section)
  const symmetry = section.spline?.symmetryTolerance
  const offsetMost = symmetry === undefined ? Math.min(offsetAllowed, budget ?? offsetAllowed) / 4 : symmetry / 2
  const half = dial.mark / 2
  const halves = Math.floor(offsetMost / factorOfReading / half + 1e-6)
  const step = units === 'mm' ? Math.max(dial.mark, 0.02) : Math.max(dial.mark, 0.001 * 25.4)
  return {
    factor,
    factorOfReading,
    offsetMost,
    offsetFrom: symmetry !== undefined ? 'standard' : budget !== undefined ? 'fit' : 'judgement',
    differenceMost: Math.max(1, halves) * half,
    dialIsFineEnough: halves >= 1,
    uncertainty: half * factorOfReading,
    perDegree: touch * Math.tan(Math.PI / 180),
    squareWithin: (Math.atan(offsetMost / touch) * 180) / Math.PI,
    table: [1, 2, 3, 4, 5, 10].map((n) => ({ difference: n * step, move: n * step * factorOfReading })),
  }
}

/** Difference of infeed between the two corners' marks when the nose is off by `offset`. */
export const differenceAt = (radius: number, noseWidth: number, offset: number, corner = 0): number => {
  const touch = (y: number) => Math.sqrt((radius - corner) ** 2 - (y - corner) ** 2)
  return touch(noseWidth / 2 - Math.abs(offset)) - touch(noseWidth / 2 + Math.abs(offset))
}

/**
 * Touched once more on the opposite wall with the spindle turned half round: the two readings of offset, in the bar's own frame, part into
 * the bar's axis off the bore's, which the table corrects, and the nose off the bar's axis (with what is out of square), which it cannot.
 */
export const turnedSpindle = (
  first: number,
  second: number,
): { readonly barOffBore: number; readonly noseOffBar: number } => ({
  barOffBore: (first - second) / 2,
  noseOffBar: (first + second) / 2,
})
