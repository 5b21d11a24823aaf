import { figure, rounded } from '../spec/figures.ts'
import type { Units } from '../spec/spec.ts'
import { inch, poundForce } from '../standards/inch.ts'
import type { RuleUnit } from './rule.ts'

/** How each kind of number is written for the two units: what one of them is inside, its sign, and its decimals. */
const written: Readonly<
  Record<Exclude<RuleUnit, 'mm'>, Readonly<Record<Units, readonly [one: number, unit: string, decimals: number]>>>
> = {
  mm2: { mm: [1, 'mm²', 2], in: [inch * inch, 'in²', 4] },
  degrees: { mm: [1, '°', 1], in: [1, '°', 1] },
  count: { mm: [1, '', 2], in: [1, '', 2] },
  ratio: { mm: [1, '', 3], in: [1, '', 3] },
  N: { mm: [1, 'N', 0], in: [poundForce, 'lbf', 0] },
  'N mm': { mm: [1000, 'N m', 1], in: [poundForce * inch, 'lbf in', 0] },
  'N/mm2': { mm: [1, 'N/mm²', 0], in: [(1000 * poundForce) / (inch * inch), 'ksi', 1] },
  HRC: { mm: [1, 'HRC', 1], in: [1, 'HRC', 1] },
}

/** A number of a finding for people, leaning as told. */
export const measure = (value: number, unit: RuleUnit, units: Units, lean?: 'up' | 'down', bare = false): string => {
  if (!Number.isFinite(value)) return value > 0 ? 'without end' : 'nothing'
  if (unit === 'mm') return figure(value, units, { fit: true, unit: !bare, ...(lean && { lean }) })
  const [one, sign, decimals] = written[unit][units]
  const digits = rounded(value / one, decimals, lean)
  const number = unit === 'count' ? String(Number(digits)) : digits
  return bare || sign === '' ? number : `${number}${sign === '°' ? '' : ' '}${sign}`
}
