import { readAngle, readLength } from '../../spec/length.ts'
import { area, force, type Quantity, readQuantity, stiffness, stress, torque } from '../../spec/quantity.ts'
import type { Units } from '../../spec/spec.ts'
import type { Kind } from './row.ts'

/** What was typed, as the spec holds it; or what is accepted in its place. `null` takes it out of the spec. */
export type Taken = { readonly value: unknown } | { readonly accepted: string }

/** The units of the job, in which a bare number of the spec is, and those the page shows. */
export interface InUnits {
  readonly job: Units
  readonly shown: Units
}

const quantities: Readonly<Record<string, Quantity>> = { torque, force, area, stress, stiffness }
const phrases: Readonly<Record<string, string>> = {
  torque: 'a torque: 90 N m, 800 lbf in',
  force: 'a force: 20 kN, 4500 lbf, 2 ton',
  area: 'an area: 8 mm2, 0.012 in2',
  stress: 'a stress: 2000 MPa, 290000 psi',
  stiffness: 'a stiffness: 5000 N/mm, 28550 lbf/in',
}

const lengthPhrase = (kind: { readonly signed?: true; readonly zero?: true }): string =>
  kind.signed
    ? 'a length with its sign: -0.02, +0.0005 in'
    : `one length${kind.zero ? '' : ' above 0'}: 38, 38.0, 38 mm, 1.5 in or 1-1/2 in`

/** Nothing but a number: no unit of its own. */
const bare = /^[+\-−–]?[\d\s.,/¼½¾⅛⅜⅝⅞⁄-]+$/
/** A number as YAML and JSON write it. */
const plain = /^-?(?:\d+(?:\.\d*)?|\.\d+)$/

/** The units in which each kind of bare number is, where the page shows other units than the job's own. */
const bareUnits: Readonly<Record<string, Readonly<Record<Units, string>>>> = {
  length: { mm: 'mm', in: 'in' },
  torque: { mm: 'N m', in: 'lbf in' },
  force: { mm: 'N', in: 'lbf' },
  area: { mm: 'mm2', in: 'in2' },
  stress: { mm: 'MPa', in: 'psi' },
  stiffness: { mm: 'N/mm', in: 'lbf/in' },
}

/** A quantity as the spec holds it: a number where that says all, else the words as typed, with the unit that was meant. */
const written = (text: string, what: string, units: InUnits): string | number => {
  if (!bare.test(text)) return text
  if (units.job !== units.shown) return `${text} ${bareUnits[what]?.[units.shown] ?? ''}`.trim()
  return plain.test(text) ? Number(text) : text
}

const twoOf = (text: string): readonly string[] =>
  text
    .replace(/^\[|\]$/g, '')
    .split(/\s+to\s+|\s*(?:\.\.|;|…)\s*|,\s+/)
    .map((part) => part.trim())
    .filter((part) => part !== '')

/** Reads what was typed into a blank. Empty: the spec leaves it out. */
export const taken = (typed: string, kind: Kind, units: InUnits): Taken => {
  const text = typed.trim()
  if (text === '') return { value: null }
  const lengthOf = (part: string, like: { readonly signed?: true; readonly zero?: true; readonly drill?: true }) => {
    const value = written(part, 'length', units)
    const mm = readLength(value, units.job, { signed: like.signed === true, drill: like.drill === true })
    return mm === undefined || (mm === 0 && !like.zero && !like.signed) ? undefined : value
  }
  const all = (parts: readonly string[], read: (part: string) => unknown, accepted: string): Taken => {
    const values = parts.map(read)
    return values.length > 0 && values.every((value) => value !== undefined) ? { value: values } : { accepted }
  }
  switch (kind.is) {
    case 'length': {
      const value = lengthOf(text, kind)
      return value === undefined ? { accepted: lengthPhrase(kind) } : { value }
    }
    case 'limits': {
      const accepted = `${lengthPhrase(kind)}; or the least and the most: 7.98 to 8.02`
      const parts = twoOf(text)
      const only = parts.length === 1 ? lengthOf(text, kind) : undefined
      if (only !== undefined) return { value: only }
      return parts.length === 2 ? all(parts, (part) => lengthOf(part, kind), accepted) : { accepted }
    }
    case 'tolerance': {
      if (/^[a-z]{1,2}\s*\d{1,2}$/i.test(text)) return { value: text.replace(/\s/g, '') }
      const accepted = 'a class of limits, H6 to H11, JS, G, F; or two deviations: 0, +0.021'
      const parts = twoOf(text)
      return parts.length === 2
        ? all(parts, (part) => lengthOf(part.replace(/^\+/, ''), { signed: true }), accepted)
        : { accepted }
    }
    case 'angle':
      return readAngle(text) === undefined ? { accepted: 'an angle in degrees: 8' } : { value: anglesValue(text) }
    case 'angles': {
      const parts = text
        .replace(/^\[|\]$/g, '')
        .split(/[\s;]+|,\s*/)
        .filter((part) => part !== '')
      return all(
        parts,
        (part) => (readAngle(part) === undefined ? undefined : anglesValue(part)),
        'angles in degrees: 0, 90',
      )
    }
    case 'number': {
      const number = Number(text.replace(',', '.'))
      const sound = Number.isFinite(number) && (!kind.whole || Number.isInteger(number))
      return sound ? { value: number } : { accepted: `a ${kind.whole ? 'whole ' : ''}number` }
    }
    case 'text':
    case 'word':
    case 'presence':
    case 'branch':
    case 'flag':
      return { value: text }
    case 'list': {
      const parts = text
        .split(/,\s+|;\s*/)
        .map((part) => part.trim())
        .filter((part) => part !== '')
      const drill = kind.of === 'drills' ? ({ drill: true } as const) : {}
      const one = (part: string): unknown => {
        if (kind.of === 'texts') return part
        if (kind.of === 'counts') return /^\d+$/.test(part) ? Number(part) : undefined
        const round = kind.of === 'bits' ? /^(.+?)\s+round$/i.exec(part)?.[1] : undefined
        const value = lengthOf(round ?? part, drill)
        return round !== undefined && value !== undefined ? { shape: 'round', size: value } : value
      }
      return all(
        parts,
        one,
        kind.of === 'counts'
          ? 'whole numbers with commas between: 15, 18'
          : kind.of === 'texts'
            ? 'names with commas between: M5, M6'
            : 'lengths with commas between: 16, 18, 5/8 in',
      )
    }
    default: {
      const quantity = quantities[kind.is]
      const value = written(text, kind.is, units)
      return quantity && (readQuantity(value, quantity, units.job) ?? 0) > 0
        ? { value }
        : { accepted: phrases[kind.is] ?? 'a quantity with its unit' }
    }
  }
}

const anglesValue = (text: string): string | number => (plain.test(text) ? Number(text) : text)
