import { z } from 'zod/mini'
import { type LengthKind, readLength } from './length.ts'
import { isMapping } from './place.ts'
import { angle, type Quantity, readQuantity } from './quantity.ts'

/** The leaves that the schema is made of. Each carries, as its message, the phrase that a complaint gives as accepted. */

type Written = string | number
const written = [z.number(), z.string()] as const

type Said = z.core.GlobalMeta

/** The schema itself, with what it says to editors noted of it. */
export function told<Schema extends z.ZodMiniType>(schema: Schema, said: Said | undefined): Schema {
  if (said) z.globalRegistry.add(schema, said)
  return schema
}

/** The phrase that `wrong` answers for a value is what is said of it. `aborts`: the value is none at all, not one of the wrong size. */
const unless =
  (wrong: (value: Written) => { readonly message: string; readonly aborts: boolean } | undefined) =>
  ({ value, issues }: z.core.ParsePayload<Written>): void => {
    const found = wrong(value)
    if (found) issues.push({ code: 'custom', input: value, message: found.message, continue: !found.aborts })
  }

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
  const wrong = (value: Written) => {
    const mm = readLength(value, 'mm', kind)
    // an inch job makes a bare number 25.4 times as large, and it must still be one
    const asInches = readLength(value, 'in', kind)
    const none = mm === undefined || asInches === undefined
    if (none || (mm === 0 && kind.zero !== true && kind.signed !== true)) return { message: error, aborts: true }
    if (Math.abs(mm) > mostLength) return { message: `a length of at most ${mostLength} mm`, aborts: false }
    if (kind.signed !== true && mm !== 0 && Math.abs(asInches) < leastLength)
      return { message: `a length of at least ${leastLength} mm`, aborts: false }
    return undefined
  }
  return told(z.union(written, { error }).check(unless(wrong)), { description, examples: [...examples] })
}

/** A torque, force, area, stress or stiffness as written, above nought. `error` is the phrase for what is accepted. */
export function quantityAs(description: string, examples: readonly unknown[], kind: Quantity, error: string) {
  const wrong = (value: Written) => {
    const metric = readQuantity(value, kind, 'mm') ?? 0
    if (!(metric > 0 && (readQuantity(value, kind, 'in') ?? 0) > 0)) return { message: error, aborts: true }
    if (metric > mostQuantity) return { message: `${error}; far less of it`, aborts: false }
    return metric < leastQuantity ? { message: `${error}; far more of it`, aborts: false } : undefined
  }
  return told(z.union(written, { error }).check(unless(wrong)), { description, examples: [...examples] })
}

/** An angle in degrees within these limits. */
export function angleAs(description: string, examples: readonly unknown[], least: number, most: number) {
  const error = `an angle in degrees from ${least} to ${most}: 90, "90 deg"`
  const wrong = (value: Written) => {
    const degrees = readQuantity(value, angle, 'mm')
    const sound = degrees !== undefined && degrees >= least && degrees <= most
    return sound ? undefined : { message: error, aborts: false }
  }
  return told(z.union(written, { error }).check(unless(wrong)), { description, examples: [...examples] })
}

/** A plain number within these limits; whole where asked. */
export function numberAs(
  description: string,
  examples: readonly number[],
  limits: { readonly least: number; readonly most: number; readonly whole?: boolean },
) {
  const error = `a ${limits.whole ? 'whole ' : ''}number from ${limits.least} to ${limits.most}`
  const number = limits.whole ? z.int({ error }) : z.number({ error })
  return told(number.check(z.gte(limits.least, { error }), z.lte(limits.most, { error })), {
    description,
    examples: [...examples],
  })
}

/** One of these words. */
export const wordAs = <const Word extends string>(description: string, words: readonly Word[]) =>
  told(z.enum(words, { error: words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${words.at(-1)}` : words[0] }), {
    description,
  })

/** A text that is not empty. */
export const textAs = (description: string, examples: readonly string[], error: string) =>
  told(z.string({ error }).check(z.minLength(1, { error }), z.maxLength(200, { error })), {
    description,
    examples: [...examples],
  })

/** true or false. */
export const flagAs = (description: string) => told(z.boolean({ error: 'true or false' }), { description })

/** Two of one leaf in order. */
export const pairAs = <Leaf extends z.ZodMiniType>(description: string, leaf: Leaf, error: string) =>
  told(z.tuple([leaf, leaf], { error }), { description })

/** What stands at a key: made when it is asked for, since a spec states few of all the keys. */
type Part = (() => z.ZodMiniType) & { readonly absent?: boolean; readonly said?: Said | undefined }

/** What may be left out; `said` where the key says more to editors than what stands there. */
export const maybe = (part: () => z.ZodMiniType, said?: Said): Part =>
  Object.assign(() => part(), { absent: true, said })

/** A mapping with these keys and no others. */
export function keyed(description: string, parts: Readonly<Record<string, Part>>) {
  const names = Object.keys(parts)
  const made = new Map<string, z.ZodMiniType>()
  const at = (name: string): z.ZodMiniType => {
    const there = made.get(name) ?? parts[name]?.() ?? z.never()
    made.set(name, there)
    return there
  }
  const shape = names.map((name) => {
    const { absent, said } = parts[name] ?? {}
    const get = () => (absent ? told(z.optional(at(name)), said) : at(name))
    return [name, { get, enumerable: true }] as const
  })
  const error = `a mapping with the keys ${names.filter((name) => name !== '$schema').join(', ')}`
  const whole = told(z.strictObject(Object.defineProperties({}, Object.fromEntries(shape)), { error }), { description })
  const { run } = whole._zod
  // A sound mapping is let through by what it states; whatever else stands here is for the whole to complain of, unless one word is enough.
  whole._zod.run = (payload, context) => {
    const { value } = payload
    const briefly = context.abortEarly ? context : { async: context.async, abortEarly: true }
    const sound =
      isMapping(value) &&
      Object.keys(value).every((name) => Object.hasOwn(parts, name)) &&
      names.every((name) => {
        if (value[name] === undefined) return parts[name]?.absent === true
        const read = at(name)._zod.run({ value: value[name], issues: [] }, briefly)
        return !(read instanceof Promise) && read.issues.length === 0
      })
    if (!sound && !context.abortEarly) return run(payload, context)
    if (!sound) payload.issues.push({ code: 'custom', input: value, message: error })
    return payload
  }
  return whole
}
