import { figure, rounded } from '../../spec/figures.ts'
import { isMapping } from '../../spec/place.ts'
import { readLength } from '../../spec/length.ts'
import { area, force, type Quantity, readQuantity, stiffness, stress, torque } from '../../spec/quantity.ts'
import type { Units } from '../../spec/spec.ts'
import { poundForce, inch } from '../../standards/inch.ts'
import type { Kind, Worked } from './row.ts'
import type { InUnits } from './typed.ts'

const quantities: Readonly<Record<string, Quantity>> = { torque, force, area, stress, stiffness }

/** What stands after a blank. */
export const unitOf = (kind: Kind, units: Units): string => {
  switch (kind.is) {
    case 'length':
    case 'limits':
      return units
    case 'angle':
    case 'angles':
      return '°'
    case 'torque':
      return units === 'mm' ? 'N m' : 'lbf in'
    case 'force':
      return units === 'mm' ? 'N' : 'lbf'
    case 'area':
      return units === 'mm' ? 'mm²' : 'in²'
    case 'stress':
      return units === 'mm' ? 'N/mm²' : 'psi'
    case 'stiffness':
      return units === 'mm' ? 'N/mm' : 'lbf/in'
    default:
      return ''
  }
}

/** What one of the unit shown is in the unit kept inside. */
const inside: Readonly<Record<string, Readonly<Record<Units, number>>>> = {
  torque: { mm: 1000, in: poundForce * inch },
  force: { mm: 1, in: poundForce },
  area: { mm: 1, in: inch * inch },
  stress: { mm: 1, in: poundForce / (inch * inch) },
  stiffness: { mm: 1, in: poundForce / inch },
}

/** A number with four figures at most after nothing that matters: for quantities that no one sets to a hair. */
const round = (value: number): string => {
  const decimals = Math.max(0, Math.min(4, 3 - Math.floor(Math.log10(Math.abs(value) || 1))))
  return String(Number(rounded(value, decimals)))
}

const lengthShown = (mm: number, units: Units, kind: Kind): string =>
  figure(mm, units, { unit: false, fit: kind.is === 'length' && kind.fit === true })

/** A worked value as a blank shows it. */
export const workedShown = (worked: Worked, kind: Kind, units: Units): string => {
  if (worked === undefined) return ''
  if (typeof worked === 'string') return kind.is === 'word' ? (kind.words[worked] ?? worked) : worked
  if (typeof worked !== 'number')
    return worked
      .map((each) =>
        kind.is === 'list' && kind.of !== 'counts'
          ? figure(each, units, { unit: false })
          : String(Number(rounded(each, 3))),
      )
      .join(', ')
  if (kind.is === 'length' || kind.is === 'limits') return lengthShown(worked, units, kind)
  const of = inside[kind.is]
  return of ? round(worked / of[units]) : String(Number(rounded(worked, 4)))
}

/** What stands in the spec as a blank shows it: as typed, or a bare number in the units shown. */
export const statedShown = (stated: unknown, kind: Kind, units: InUnits): string => {
  if (stated === undefined || stated === null) return ''
  if (Array.isArray(stated)) {
    const between = kind.is === 'limits' ? ' to ' : ', '
    return stated.map((each) => statedShown(each, one(kind), units)).join(between)
  }
  if (isMapping(stated) && stated['thread'] !== undefined) return String(stated['thread'])
  if (isMapping(stated))
    return `${statedShown(stated['size'], { is: 'length' }, units)} ${String(stated['shape'] ?? '')}`.trim()
  if (typeof stated !== 'number' || units.job === units.shown) return String(stated)
  if (kind.is === 'length' || kind.is === 'limits' || kind.is === 'tolerance') {
    const mm = readLength(stated, units.job, { signed: true })
    return mm === undefined ? String(stated) : figure(mm, units.shown, { unit: false, fit: true })
  }
  const quantity = quantities[kind.is]
  const value = quantity && readQuantity(stated, quantity, units.job)
  return value === undefined ? String(stated) : workedShown(value, kind, units.shown)
}

const one = (kind: Kind): Kind =>
  kind.is === 'list' && (kind.of === 'lengths' || kind.of === 'drills' || kind.of === 'bits') ? { is: 'length' } : kind

/** The same length in the units shown, where what is stated carries others: `Typed in inches: 23.8125 mm.` */
export const otherwise = (stated: unknown, kind: Kind, units: InUnits): string | undefined => {
  if (kind.is !== 'length') return undefined
  if (typeof stated === 'number') {
    if (units.job === units.shown) return undefined
    return `Kept as ${stated} ${units.job}, as it was told.`
  }
  if (typeof stated !== 'string') return undefined
  const said = /(?:in|inch|inches|"|″|thou)\s*$/i.test(stated) ? 'in' : /mm\s*$/i.test(stated) ? 'mm' : units.job
  if (said === units.shown) return undefined
  const mm = readLength(stated, units.job, { signed: true })
  if (mm === undefined) return undefined
  const exact = units.shown === 'mm' ? String(Number(mm.toFixed(6))) : figure(mm, 'in', { unit: false, fit: true })
  return `Typed in ${said === 'in' ? 'inches' : 'millimetres'}: ${exact} ${units.shown}.`
}
