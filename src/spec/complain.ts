import type { z } from 'zod/mini'
import type { Complaint } from './complaint.ts'
import { nearest } from './near.ts'
import { type Place, pathOf, shown, standsAt } from './place.ts'

/** Words of the trade that are no spelling of ours, and what is meant by them. */
const meantBy: Readonly<Record<string, string>> = {
  P9: 'tight',
  JS9: 'normal',
  D10: 'sliding',
  close: 'tight',
  free: 'sliding',
  metric: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  inch: 'in',
  inches: 'in',
  imperial: 'in',
  'din-6885': 'iso-773',
  'iso-2491': 'iso-773',
  'set screws': 'screws',
  od: 'outside',
  id: 'diameter',
}

/** Nobody reads on beyond so many; a list of a hundred thousand would be nearly as many. */
const mostComplaints = 100

type Definition = { readonly innerType?: unknown; readonly options?: readonly unknown[]; readonly element?: unknown }
const shapeOf = (schema: unknown): Readonly<Record<string, unknown>> | undefined => {
  const { shape, def } = (schema ?? {}) as { shape?: Readonly<Record<string, unknown>>; def?: Definition }
  if (shape) return shape
  if (def?.innerType) return shapeOf(def.innerType)
  return def?.options?.map(shapeOf).find((found) => found !== undefined)
}
const elementOf = (schema: unknown): unknown => {
  const def = ((schema ?? {}) as { def?: Definition }).def
  if (def?.innerType) return elementOf(def.innerType)
  return def?.element ?? def?.options?.map(elementOf).find((found) => found !== undefined)
}

/** The keys that the schema knows at a place. */
export function keysAt(schema: unknown, place: Place): readonly string[] {
  const there = place.reduce(
    (here, part) => (typeof part === 'number' ? elementOf(here) : shapeOf(here)?.[String(part)]),
    schema,
  )
  return Object.keys(shapeOf(there) ?? {}).filter((key) => key !== '$schema')
}

/** Every path of a key in the schema, the shallow ones first. */
function everywhere(schema: unknown, above: readonly string[] = []): readonly (readonly string[])[] {
  const here = Object.entries(shapeOf(schema) ?? {})
  return [
    ...here.map(([key]) => [...above, key]),
    ...here.flatMap(([key, child]) => everywhere(child, [...above, key])),
  ]
}

/** A key that is not known here: the known key that is near, or the place where it belongs. */
function meantKey(schema: z.ZodMiniType, place: Place, key: string): string | undefined {
  const near = nearest(meantBy[key] ?? key, keysAt(schema, place))
  if (near !== undefined) return near
  const elsewhere = everywhere(schema).find((path) => path.at(-1) === key && pathOf(path) !== pathOf([...place, key]))
  return elsewhere && pathOf(elsewhere)
}

type Issue = z.core.$ZodIssue

/** The words of a choice, as far as the issue tells them. */
const wordsOf = (issue: Issue): readonly string[] =>
  issue.code === 'invalid_value'
    ? issue.values.map(String)
    : issue.code === 'invalid_union'
      ? issue.errors.flat().flatMap(wordsOf)
      : []

/** The branch of a union that the document was nearest to: the one that complains deepest, where one does. */
const deepest = (issue: Issue): readonly Issue[] | undefined => {
  if (issue.code !== 'invalid_union') return undefined
  return issue.errors.find(
    (branch) =>
      branch.length > 0 &&
      branch.every(
        (inner) => inner.path.length > 0 || ['unrecognized_keys', 'too_big', 'too_small'].includes(inner.code),
      ),
  )
}

/** Complaints of what the schema refuses; the message of an issue is the phrase for what is accepted. */
export function complaintsOf(schema: z.ZodMiniType, document: unknown, above: Place = []): readonly Complaint[] {
  const outcome = schema.safeParse(document)
  if (outcome.success) return []
  return outcome.error.issues
    .slice(0, mostComplaints)
    .flatMap((issue) => complaintsFrom(schema, document, issue, above))
    .slice(0, mostComplaints)
}

function complaintsFrom(schema: z.ZodMiniType, document: unknown, issue: Issue, above: Place): readonly Complaint[] {
  const path = pathOf([...above, ...issue.path])
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, issue.path)
    return issue.keys.slice(0, mostComplaints).map((key) => {
      const at = pathOf([...above, ...issue.path, key])
      return /^\d+$/.test(key)
        ? complaint(at, 'a key that is all digits', `${known.join(', ')}; ${commaPhrase('24,5')}`)
        : complaint(at, 'a key that is not known', known.join(', '), meantKey(schema, issue.path, key))
    })
  }
  const inner = deepest(issue)
  if (inner)
    return inner.flatMap((each) =>
      complaintsFrom(schema, document, { ...each, path: [...issue.path, ...each.path] }, above),
    )
  const read = standsAt(document, issue.path)
  const words = wordsOf(issue)
  const alias = typeof read === 'string' && Object.hasOwn(meantBy, read) ? meantBy[read] : undefined
  return [
    complaint(
      path,
      shown(read),
      issue.message,
      alias !== undefined && words.includes(alias) ? alias : nearest(read, words),
    ),
  ]
}

/** What is said where a comma has cut a number in two. */
export const commaPhrase = (number: string): string => `a decimal comma inside braces needs quotes: "${number}"`

/** One complaint; `meant` only where there is one. */
export const complaint = (path: string, read: string, accepted: string, meant?: string): Complaint => ({
  path,
  read,
  accepted,
  ...(meant !== undefined && { meant }),
})
