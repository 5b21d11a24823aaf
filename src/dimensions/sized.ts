import { limitsOf } from '../fits/iso-286.ts'
import { exact, type Size, withDeviations } from '../fits/size.ts'
import type { Bore, LeastMost } from '../spec/spec.ts'

export const between = ([least, most]: LeastMost): Size => ({ nominal: (least + most) / 2, lower: least, upper: most })

/** The bore that is cut: as measured where it was measured, else its limits. */
export const boreAsCut = (bore: Bore): Size =>
  bore.measured === undefined
    ? bore.diameter
    : { nominal: bore.diameter.nominal, lower: bore.measured, upper: bore.measured }

export const boreSays = (bore: Bore): string =>
  bore.measured === undefined ? 'the middle of its limits' : 'as measured'

/** A size and half of it taken together: radius of a diameter, floor of a size over floors. */
export const halved = ({ nominal, lower, upper }: Size): Size => ({
  nominal: nominal / 2,
  lower: lower / 2,
  upper: upper / 2,
})

/** Limits by class for a shaft or holder size, as a Size; exact where the class is out of scope. */
export const classed = (nominal: number, toleranceClass: string): Size => {
  const limits = limitsOf(nominal, toleranceClass)
  return limits ? withDeviations(nominal, limits.lower, limits.upper) : exact(nominal)
}

/** Reasons of what a kind of section does not have. */
export const absent = <Name extends string>(...names: readonly Name[]): Record<Name, string> =>
  Object.fromEntries(names.map((name) => [name, 'does not apply'])) as Record<Name, string>
