/** Round steps for the edges of a rule, and forces as they are said along it. */
import type { Units } from '../spec/spec.ts'
import { poundForce } from '../standards/inch.ts'

/** The least of 1, 2, 5 × 10ⁿ that is no less. */
export const rounder = (least: number): number => {
  const power = 10 ** Math.floor(Math.log10(least) + 1e-9)
  return [1, 2, 5, 10].map((times) => times * power).find((step) => step >= least - 1e-12) ?? 10 * power
}

/** A scale of forces up to `most` N: about three round steps, in N or lbf. */
export const newtons = (most: number, units: Units) => {
  const unit = units === 'mm' ? 1 : poundForce
  const name = units === 'mm' ? 'N' : 'lbf'
  const step = rounder(most / unit / 3.4) * unit
  const said = (force: number): string => `${Math.round((force / unit) * 10) / 10} ${name}`
  const count = Math.floor(most / step + 1e-6)
  const widest = Array.from({ length: count }, (_, n) => said((n + 1) * step)).reduce(
    (a, b) => (b.length > a.length ? b : a),
    '',
  )
  return { step, said, widest, exact: `${Math.round(most / unit)} ${name}` }
}
