import { drillNamed } from '../standards/drills.ts'
import { angle, area, force, length, readQuantity, stiffness, stress, torque } from './quantity.ts'
import type { Units } from './spec.ts'

/** What besides a plain length is meant. */
export interface LengthKind {
  readonly signed?: boolean
  /** A drill: a single letter is its name. */
  readonly drill?: boolean
}

/**
 * A length as written, in mm; `undefined` when it is none. A bare number is in `units`; a text may carry its own unit
 * and may be a fraction: `24`, `"24 mm"`, `"12,5 mm"`, `"15/16"`, `"1-3/8 in"`, `"1 3/8"`, `'1-3/8"'`; `"#7"` and
 * `"letter F"` are drills, and `"F"` too where a drill is meant.
 *
 * A comma is a decimal comma, also with three digits after it (`24,012` is a measured bore; no length here comes to
 * thousands); comma and point together are refused. Not negative unless `signed`.
 */
export function readLength(written: unknown, units: Units, kind: LengthKind = {}): number | undefined {
  const mm = readQuantity(written, length, units) ?? (typeof written === 'string' ? drillOf(written, kind) : undefined)
  return mm !== undefined && (mm >= 0 || kind.signed) ? mm : undefined
}

/** Diameter of a drill named by number or letter, mm. */
function drillOf(written: string, kind: LengthKind): number | undefined {
  const [, number, letter] = /^(?:#\s*(\d{1,2})|((?:letter\s+)?[a-z]))$/i.exec(written.trim()) ?? []
  if (number !== undefined) return drillNamed(`#${Number(number)}`)?.diameter
  if (letter === undefined || (letter.length === 1 && !kind.drill)) return undefined
  return drillNamed(`letter ${letter.slice(-1).toUpperCase()}`)?.diameter
}

/** A quantity that cannot be negative, or `undefined`. */
const positive = (value: number | undefined): number | undefined =>
  value !== undefined && value >= 0 ? value : undefined

/** N mm. Bare: N m in a mm job, lbf in in an inch job. */
export const readTorque = (written: unknown, units: Units): number | undefined =>
  positive(readQuantity(written, torque, units))

/** N. Bare: N in a mm job, lbf in an inch job. A ton is the short ton of 2000 lbf. */
export const readForce = (written: unknown, units: Units): number | undefined =>
  positive(readQuantity(written, force, units))

/** mm2. Bare: mm2 in a mm job, in2 in an inch job. */
export const readArea = (written: unknown, units: Units): number | undefined =>
  positive(readQuantity(written, area, units))

/** N/mm2. Bare: MPa in a mm job, psi in an inch job. */
export const readStress = (written: unknown, units: Units): number | undefined =>
  positive(readQuantity(written, stress, units))

/** N/mm. Bare: N/mm in a mm job, lbf/in in an inch job. */
export const readStiffness = (written: unknown, units: Units): number | undefined =>
  positive(readQuantity(written, stiffness, units))

/** Degrees, of either sign. Bare: degrees. */
export const readAngle = (written: unknown): number | undefined => readQuantity(written, angle, 'mm')
