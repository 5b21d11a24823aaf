import { inch, poundForce } from '../standards/inch.ts'
import type { Units } from './spec.ts'

/** Units of one kind of quantity: what one of each is in the unit kept inside, and which of them a bare number is in. */
export interface Quantity {
  readonly units: Readonly<Record<string, number>>
  readonly bare: Readonly<Record<Units, string>>
  /** True where a comma with three digits after it may be a thousands mark: such a number is refused. */
  readonly thousands: boolean
}

export const length: Quantity = {
  units: {
    mm: 1,
    cm: 10,
    m: 1000,
    um: 1e-3,
    in: inch,
    inch,
    inches: inch,
    '"': inch,
    "''": inch,
    thou: inch / 1000,
  },
  bare: { mm: 'mm', in: 'in' },
  thousands: false,
}

/** To N mm. A pound-force is written lbf or lb. */
export const torque: Quantity = {
  units: {
    nm: 1000,
    nmm: 1,
    knm: 1e6,
    lbfin: poundForce * inch,
    inlbf: poundForce * inch,
    lbfft: poundForce * inch * 12,
    ftlbf: poundForce * inch * 12,
  },
  bare: { mm: 'nm', in: 'lbfin' },
  thousands: true,
}

/** To N. A ton is the short ton of 2000 lbf, a tonne 1000 kgf. */
export const force: Quantity = {
  units: {
    n: 1,
    kn: 1000,
    lbf: poundForce,
    kgf: 9.80665,
    ton: 2000 * poundForce,
    tons: 2000 * poundForce,
    tonne: 9806.65,
    tonnes: 9806.65,
  },
  bare: { mm: 'n', in: 'lbf' },
  thousands: true,
}

/** To mm2. */
export const area: Quantity = {
  units: { mm2: 1, cm2: 100, in2: inch * inch, sqin: inch * inch },
  bare: { mm: 'mm2', in: 'in2' },
  thousands: true,
}

/** To N/mm2. */
export const stress: Quantity = {
  units: {
    mpa: 1,
    gpa: 1000,
    'n/mm2': 1,
    psi: poundForce / (inch * inch),
    ksi: (1000 * poundForce) / (inch * inch),
    'lbf/in2': poundForce / (inch * inch),
  },
  bare: { mm: 'mpa', in: 'psi' },
  thousands: true,
}

/** To N/mm. */
export const stiffness: Quantity = {
  units: { 'n/mm': 1, 'kn/mm': 1000, 'n/um': 1000, 'lbf/in': poundForce / inch },
  bare: { mm: 'n/mm', in: 'lbf/in' },
  thousands: true,
}

/** To degrees. */
export const angle: Quantity = {
  units: { deg: 1, degree: 1, degrees: 1, '°': 1 },
  bare: { mm: 'deg', in: 'deg' },
  thousands: true,
}

const spoken: Readonly<Record<string, string>> = {
  '¼': ' 1/4',
  '½': ' 1/2',
  '¾': ' 3/4',
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
}

/** One way of writing for each sign that has several: minus signs, inch marks, micro, squares, fractions. */
const plain = (written: string): string =>
  written
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => spoken[sign] ?? sign)
    .replace(/[−–]/g, '-')
    .replace(/[″”“]/g, '"')
    .replace(/[’′]/g, "'")
    .replace(/[µμ]/g, 'u')
    .replace(/²|\^2/g, '2')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replaceAll('⁄', '/')
    .trim()

/** A unit as the tables spell it: no spaces or joining marks, small letters, lb as lbf. */
const unitOf = (written: string): string =>
  written
    .toLowerCase()
    .replace(/[\s·*.]|(?<=[a-z])-(?=[a-z])/g, '')
    .replace(/lbs?(?!f)/g, 'lbf')

const shape = /^([+-]?)\s*(?:(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+))(?:\s*(.*))$/s

/**
 * A number, alone or in a text with its unit, in the unit kept inside. A bare number is in the quantity's own unit for
 * `units`. Decimal point or comma; a fraction, proper with a whole number before it (`1-3/8`, `1 3/8`). Anything else,
 * and anything that is not finite, is `undefined`.
 */
export function readQuantity(written: unknown, quantity: Quantity, units: Units): number | undefined {
  const bare = quantity.units[quantity.bare[units]] ?? Number.NaN
  if (typeof written === 'number') return finite(times(written, bare))
  if (typeof written !== 'string' || written.length > 60) return undefined
  const found = shape.exec(plain(written))
  if (!found) return undefined
  const [, sign, whole, over, under, decimal, rest = ''] = found
  const unit = unitOf(rest)
  const factor =
    unit === '' && rest === '' ? bare : Object.hasOwn(quantity.units, unit) ? quantity.units[unit] : undefined
  if (factor === undefined) return undefined
  const turn = sign === '-' ? -1 : 1
  if (decimal !== undefined) {
    if (quantity.thousands && /^[1-9]\d{0,2},\d{3}$/.test(decimal)) return undefined
    return finite(times(turn * Number(decimal.replace(',', '.')), factor))
  }
  const [wholes, parts, of] = [Number(whole ?? 0), Number(over), Number(under)]
  if (of === 0 || (whole !== undefined && parts >= of)) return undefined
  return finite(times(turn * (wholes * of + parts), factor, of))
}

/** So many of a unit. Inches by 254/10: 25.4 itself is no binary number, and 7/8 in is 22.225 mm, not a hair less. */
const times = (count: number, factor: number, of = 1): number =>
  factor === inch ? (count * 254) / (10 * of) : (count * factor) / of

/** The number, unless it is not finite; never minus zero. */
const finite = (value: number): number | undefined => (Number.isFinite(value) ? value + 0 : undefined)
