import { z } from 'zod'
import { type LengthKind, readLength } from './length.ts'
import { angle, type Quantity, readQuantity } from './quantity.ts'

// One document is read, not thousands: making code of each schema costs more than it saves, and a page forbids it.
z.config({ jitless: true })

/** The leaves that the schema is made of. Each carries, as its message, the phrase that a complaint gives as accepted. */

const written = z.union([z.number(), z.string()])

interface LeafKind extends LengthKind {
  /** May be nought. */
  readonly zero?: boolean
}

/** No shop has a length beyond these, mm: past them the sums lose their digits. Judgement. */
const leastLength = 1e-4
const mostLength = 10_000
/** The same of torques, forces, areas, stresses and stiffnesses, in the unit kept inside. Judgement. */
const leastQuantity = 1e-3
const mostQuantity = 1e9

/** What is said where a length is wanted. */
export const lengthPhrase = (kind: LeafKind = {}): string =>
  kind.drill
    ? 'a drill: 8.4, "23/64 in", "#7", "letter F"'
    : kind.signed
      ? 'a length with its sign: -0.02, "+0.0005 in"'
      : `a length${kind.zero ? '' : ' above 0'}: 24, "24 mm", "12,5 mm", "15/16 in", "1-3/8"`

/** A length as written: a number in the job's units, or a text in any spelling. */
export function lengthAs(description: string, examples: readonly unknown[], kind: LeafKind = {}) {
  const error = lengthPhrase(kind)
  const sound = (value: string | number): boolean => {
    const mm = readLength(value, 'mm', kind)
    // an inch job makes a bare number 25.4 times as large, and it must still be one
    return (
      mm !== undefined &&
      readLength(value, 'in', kind) !== undefined &&
      (mm !== 0 || kind.zero === true || kind.signed === true)
    )
  }
  const size = (value: string | number, units: 'mm' | 'in'): number => Math.abs(readLength(value, units, kind) ?? 0)
  return z
    .union(written.options, { error })
    .refine(sound, { error, abort: true })
    .refine((value) => size(value, 'mm') <= mostLength, { error: `a length of at most ${mostLength} mm` })
    .refine((value) => kind.signed === true || size(value, 'mm') === 0 || size(value, 'in') >= leastLength, {
      error: `a length of at least ${leastLength} mm`,
    })
    .meta({ description, examples: [...examples] })
}

/** A torque, force, area, stress or stiffness as written, above nought. `error` is the phrase for what is accepted. */
export const quantityAs = (description: string, examples: readonly unknown[], kind: Quantity, error: string) =>
  z
    .union(written.options, { error })
    .refine((value) => (['mm', 'in'] as const).every((units) => (readQuantity(value, kind, units) ?? 0) > 0), {
      error,
      abort: true,
    })
    .refine((value) => (readQuantity(value, kind, 'mm') ?? 0) <= mostQuantity, { error: `${error}; far less of it` })
    .refine((value) => (readQuantity(value, kind, 'mm') ?? 0) >= leastQuantity, { error: `${error}; far more of it` })
    .meta({ description, examples: [...examples] })

/** An angle in degrees within these limits. */
export function angleAs(description: string, examples: readonly unknown[], least: number, most: number) {
  const error = `an angle in degrees from ${least} to ${most}: 90, "90 deg"`
  const sound = (value: string | number): boolean => {
    const degrees = readQuantity(value, angle, 'mm')
    return degrees !== undefined && degrees >= least && degrees <= most
  }
  return z
    .union(written.options, { error })
    .refine(sound, { error })
    .meta({ description, examples: [...examples] })
}

/** A plain number within these limits; whole where asked. */
export function numberAs(
  description: string,
  examples: readonly number[],
  limits: { readonly least: number; readonly most: number; readonly whole?: boolean },
) {
  const error = `a ${limits.whole ? 'whole ' : ''}number from ${limits.least} to ${limits.most}`
  const number = limits.whole ? z.int({ error }) : z.number({ error })
  return number
    .gte(limits.least, { error })
    .lte(limits.most, { error })
    .meta({ description, examples: [...examples] })
}

/** One of these words. */
export const wordAs = <const Word extends string>(description: string, words: readonly Word[]) =>
  z.enum(words, { error: words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${words.at(-1)}` : words[0] }).meta({
    description,
  })

/** A text that is not empty. */
export const textAs = (description: string, examples: readonly string[], error: string) =>
  z
    .string({ error })
    .min(1, { error })
    .max(200, { error })
    .meta({ description, examples: [...examples] })

/** true or false. */
export const flagAs = (description: string) => z.boolean({ error: 'true or false' }).meta({ description })

/** Two of one leaf in order. */
export const pairAs = <Leaf extends z.ZodType>(description: string, leaf: Leaf, error: string) =>
  z.tuple([leaf, leaf], { error }).meta({ description })

/** A mapping with these keys and no others. */
export const keyed = <Shape extends z.core.$ZodShape>(description: string, shape: Shape) =>
  z
    .strictObject(shape, {
      error: `a mapping with the keys ${Object.keys(shape)
        .filter((key) => key !== '$schema')
        .join(', ')}`,
    })
    .meta({ description })
