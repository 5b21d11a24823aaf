import type { Spec } from '../spec/spec.ts'
import type { Reasoned } from './basis.ts'
import { either, roundUp } from './makeable.ts'
import { footBasis, offsetBasis } from './printing.ts'
import type { Section } from './types.ts'

/**
 * A plate that divides by a pin, hole by hole: clamped behind the work or on the spindle's outer end. Hole 1 stands at 0°, its rim is notched.
 */
export interface IndexPlate {
  /** Angles of the holes from hole 1, degrees, ascending. */
  readonly at: readonly number[]
  readonly count: number
  readonly pitchRadius: number
  /** Twice the pitch radius: what a sheet says. */
  readonly pitchDiameter: number
  readonly hole: number
  readonly mandrel: number
  readonly outside: number
  readonly thickness: number
  /** Across the notch at the rim, 90°. */
  readonly notch: number
  /** Along the holes at the bed, where it is printed. */
  readonly foot: number
  /** Of a printed hole, per side. */
  readonly offset: number
  /** How near a hole lies to its place. */
  readonly within: number
  /** What that is as an angle, degrees. */
  readonly angleError: number
  /** And at the farthest point of the feature; between two holes at worst twice that. */
  readonly errorAtFloor: number
  readonly errorBetween: number
}

/** A plate for two features or more. */
export const indexPlateOf = (spec: Spec, section: Section): Reasoned<IndexPlate> | undefined => {
  const [first] = section.at
  if (first === undefined || section.at.length < 2) return undefined
  const at = section.at.map((angle) => (((angle - first) % 360) + 360) % 360).toSorted((a, b) => a - b)
  const least = Math.min(...at.map((angle, index) => (at[index + 1] ?? 360) - angle))
  const wanted = either(spec.units, 6, 0.25)
  const hole = spec.shop.pins?.find((pin) => pin >= 0.6 * wanted && pin <= 1.4 * wanted) ?? wanted
  const step = either(spec.units, 5, 0.25)
  const reach = section.cornerReachMost
  // Twice as far out as the feature, so that an error shrinks by half; as far as neighbours keep a hole's width between them.
  const apart = (2 * hole) / (2 * Math.sin((Math.min(least, 180) * Math.PI) / 360))
  const pitchRadius = roundUp(
    Math.max(either(spec.units, 50, 2), Math.min(2 * reach, either(spec.units, 100, 4)), apart),
    step,
  )
  const within = either(spec.units, 0.05, 0.002)
  const angle = (Math.atan(within / pitchRadius) * 180) / Math.PI
  const error = (within / pitchRadius) * reach
  return {
    sizes: {
      at,
      count: at.length,
      pitchRadius,
      pitchDiameter: 2 * pitchRadius,
      hole,
      mandrel: either(spec.units, 16, 0.625),
      outside: 2 * pitchRadius + 2 * roundUp(1.5 * hole, either(spec.units, 1, 1 / 16)),
      thickness: either(spec.units, 8, 0.3125),
      notch: either(spec.units, 4, 0.1875),
      foot: spec.shop.printer.foot,
      offset: spec.shop.printer.inside,
      within,
      angleError: angle,
      errorAtFloor: error,
      errorBetween: 2 * error,
    },
    basis: {
      at: 'the features’ own angles, from the first',
      count: 'one a feature',
      pitchRadius:
        'twice as far out as the feature’s farthest point, 50 to 100 mm (2 to 4 in); farther where holes would crowd',
      pitchDiameter: 'twice the pitch radius',
      hole: spec.shop.pins ? 'a pin on hand' : 'judgement: 6 mm (1/4 in)',
      mandrel: 'judgement: bore it to the mandrel or spindle on hand',
      outside: 'one and a half holes beyond the pitch circle',
      thickness: 'judgement',
      notch: 'judgement: seen from afar',
      foot: footBasis,
      offset: offsetBasis(spec),
      within: 'a scriber’s, a careful table’s or a good print’s: judgement',
      angleError: 'hole’s error over pitch radius',
      errorAtFloor: 'the same angle at the feature’s farthest point',
      errorBetween: 'both holes out, one each way',
    },
  }
}
