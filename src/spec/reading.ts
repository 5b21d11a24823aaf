import { complaint } from './complain.ts'
import type { Complaint } from './complaint.ts'
import { type LengthKind, readLength } from './length.ts'
import { pathOf, placeOf, shown, standsAt } from './place.ts'
import { type Quantity, readQuantity } from './quantity.ts'
import type { LeastMost, Units } from './spec.ts'

/**
 * A document being read: what stands at a path, by kind, in mm and degrees, and the complaints that gather. A value that
 * is absent, or that the schema has refused already, reads as `undefined`; nothing here complains by itself.
 */
export interface Reading {
  readonly units: Units
  readonly complaints: readonly Complaint[]
  readonly raw: (path: string) => unknown
  readonly states: (path: string) => boolean
  readonly length: (path: string, kind?: LengthKind) => number | undefined
  /** [least, most] of a size given exactly or as limits; out of order reads as `undefined` with a complaint. */
  readonly limits: (path: string) => LeastMost | undefined
  readonly quantity: (path: string, kind: Quantity) => number | undefined
  readonly number: (path: string) => number | undefined
  readonly text: (path: string) => string | undefined
  readonly word: <Word extends string>(path: string, words: readonly Word[]) => Word | undefined
  /** Complains of what stands at the path. */
  readonly complain: (path: string, accepted: string, meant?: string) => void
}

/** `above` is the path at which the document itself stands, for a shop file: `shop`. */
export function reading(document: unknown, units: Units, above = ''): Reading {
  const complaints: Complaint[] = []
  const raw = (path: string): unknown => standsAt(document, placeOf(path))
  const complain = (path: string, accepted: string, meant?: string): void => {
    complaints.push(complaint(pathOf([...placeOf(above), ...placeOf(path)]), shown(raw(path)), accepted, meant))
  }
  const length = (path: string, kind?: LengthKind): number | undefined => readLength(raw(path), units, kind)
  const text = (path: string): string | undefined => {
    const value = raw(path)
    return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined
  }
  return {
    units,
    complaints,
    raw,
    states: (path) => raw(path) !== undefined,
    length,
    limits: (path) => {
      if (!Array.isArray(raw(path))) {
        const size = length(path)
        return size === undefined ? undefined : [size, size]
      }
      const [least, most] = [length(`${path}[0]`), length(`${path}[1]`)]
      if (least === undefined || most === undefined) return undefined
      if (least <= most) return [least, most]
      complain(path, 'the least first: [least, most]')
      return undefined
    },
    quantity: (path, kind) => readQuantity(raw(path), kind, units),
    number: (path) => {
      const value = raw(path)
      return typeof value === 'number' && Number.isFinite(value) ? value : undefined
    },
    text,
    word: (path, words) => words.find((word) => word === raw(path)),
    complain,
  }
}

/** The fields that are there, for an object with optional keys. */
export type Present<Fields> = { [Key in keyof Fields as undefined extends Fields[Key] ? never : Key]: Fields[Key] } & {
  [Key in keyof Fields as undefined extends Fields[Key] ? Key : never]?: Exclude<Fields[Key], undefined>
}

/** Leaves out every field that is `undefined`. */
export const present = <Fields extends object>(fields: Fields): Present<Fields> => {
  const kept: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(fields)) if (value !== undefined) kept[key] = value
  return kept as Present<Fields>
}
