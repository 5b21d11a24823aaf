/** Sizes as sheets say them: the number and its limits are handed on, rounding and units are the sheet's. */
import { limitsOf } from '../src/fits/iso-286.ts'
import type { Size } from '../src/fits/size.ts'
import { either, roundDown, roundUp } from '../src/dimensions/makeable.ts'
import { figure, fraction } from '../src/spec/figures.ts'
import type { Hung, Saying, Wording, Worth } from '../src/drawing/view.ts'
import type { Design } from '../src/design.ts'

type More = Pick<Worth, 'prefix' | 'suffix'>

/** A size under the general tolerance, mm. */
export const plain = (value: number, more: More = {}): Worth => ({ value, saying: { say: 'plain' }, ...more })

/** A size with so many decimals, by unit; what closes a sum needs them. */
export const withDecimals = (value: number, mm: number, inches: number, more: More = {}): Worth => ({
  value,
  saying: { say: 'plain', decimals: { mm, in: inches } },
  ...more,
})

/** A measured or ground size: to 0.01 mm or .0005 in and better. */
export const fine = (value: number, more: More = {}): Worth => withDecimals(value, 3, 4, more)

/** A size that a caliper reads or a print holds: to 0.01 mm or .001 in. */
export const coarse = (value: number, more: More = {}): Worth => withDecimals(value, 2, 3, more)

/** A diameter under the general tolerance, mm. */
export const round = (value: number): Worth => plain(value, { prefix: 'Ø' })

/** Stock, as it is asked for: a fraction in inch shops where it is one. */
export const bought = (value: number, more: More = {}): Worth => ({ value, saying: { say: 'fraction' }, ...more })

export const plusMinus = (value: number, tolerance: number, more: More = {}): Worth => ({
  value,
  saying: { say: 'plusMinus', tolerance },
  ...more,
})

/** An angle in degrees. */
export const degrees = (value: number, more: More = {}): Worth => ({
  value,
  saying: { say: 'plain' },
  angle: true,
  ...more,
})

/** Greatest size that is allowed, mm. */
export const most = (value: number, more: More = {}): Worth => ({ value, saying: { say: 'max' }, ...more })

/** Least size that is allowed, mm. */
export const atLeast = (value: number): Worth => ({ value, saying: { say: 'min' } })

/** How a size with limits is said: even limits as ±, others as limits with their ISO 286 class where they have one. */
const sayingOf = (size: Size, letters: string): Saying => {
  const { nominal, lower, upper } = size
  if (upper - lower < 1e-9) return { say: 'plain' }
  if (Math.abs(upper + lower - 2 * nominal) < 1e-9) return { say: 'plusMinus', tolerance: (upper - lower) / 2 }
  const fit = [6, 7, 8, 9]
    .map((grade) => `${letters}${grade}`)
    .find((name) => {
      const limits = letters === '' ? undefined : limitsOf(nominal, name)
      return limits && Math.abs(nominal + limits.lower - lower) + Math.abs(nominal + limits.upper - upper) < 1e-6
    })
  return { say: 'limits', lower, upper, ...(fit ? { fit } : {}) }
}

/** A size with its limits; `letters` of a fit (`h`) are looked for among the ISO 286 classes and named where they hold. */
export const sized = (size: Size, more: More = {}, letters = ''): Worth => ({
  value: size.nominal,
  saying: sayingOf(size, letters),
  ...more,
})

/**
 * Both limits, mm, for the table of sizes that a caliper is put on: rounded inwards to 0.01 mm or .001 in; finer only where that would leave
 * nothing between them.
 */
export const byCaliper = ({ spec: { units } }: Design, lower: number, upper: number): Wording => {
  const within = (finer: number) => {
    const step = either(units, 0.01, 0.001) / 10 ** finer
    return { lower: roundUp(lower, step), upper: roundDown(upper, step), finer }
  }
  const kept = [0, 1].map(within).find((limits) => limits.lower < limits.upper) ?? { lower, upper, finer: 2 }
  const said = (value: number) => withDecimals(value, 2 + kept.finer, 3 + kept.finer)
  return [said(kept.lower), ' / ', said(kept.upper)]
}

/** A small size that is said coarsely: chamfers and fillets. */
export const small = (value: number, more: More = {}): Worth => withDecimals(value, 2, 2, more)

export interface Sum {
  readonly terms: readonly Worth[]
  readonly total: Worth
}

/**
 * Terms that make up a total, each rounded to a figure that is measured (0.01 mm, .0001 in), so that what is printed adds up: the total and
 * all terms but the second are rounded, the second is what they leave.
 */
export const sumOf = ({ spec: { units } }: Design, total: number, terms: readonly number[]): Sum => {
  const step = units === 'mm' ? 0.01 : 25.4e-4
  const whole = Math.round(total / step)
  const counts = terms.map((term) => Math.round(term / step))
  const others = counts.reduce((sum, count, index) => (index === 1 ? sum : sum + count), 0)
  const said = (count: number) => withDecimals(count * step, 2, 4)
  return { terms: counts.map((count, index) => said(index === 1 ? whole - others : count)), total: said(whole) }
}

const isThousandths = (mm: number): boolean => Math.abs((mm / 25.4) * 1000 - Math.round((mm / 25.4) * 1000)) < 1e-6

/** A drill: its size, or its name with the size behind it where the name is no size. */
export const drill = (name: string, diameter: number): Wording =>
  Number.isNaN(Number(name))
    ? [`${name} (`, withDecimals(diameter, 2, isThousandths(diameter) ? 3 : 4), ')']
    : [round(diameter)]

/** A feature that must lie in the middle, within a zone `value` wide: symmetry, or where the convention has none, position. */
export const central = (design: Design, of: string, value: number): Hung => ({
  hang: 'frame',
  of,
  feature: design.spec.drafting.convention === 'asme' ? 'position' : 'symmetry',
  value,
  datum: 'A',
})

/** `for cider-mill-pulley, bore 24 H7 x 38`, or `bore 30.018 measured x 45`: what title blocks say under the title. */
export const jobLine = ({ spec: { name, bore, units } }: Design): string => {
  const size = (value: number) =>
    (units === 'in' && fraction(value)) || figure(value, units, { unit: false, fit: true }).replace(/^0\./, '.')
  const across =
    bore.measured === undefined ? `${size(bore.diameter.nominal)} ${bore.tolerance}` : `${size(bore.measured)} measured`
  return `for ${name}, bore ${across} x ${size(bore.length)}`
}
