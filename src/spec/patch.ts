import { isMapping, placeOf } from './place.ts'

type Value = string | number | null
const forbidden = new Set(['__proto__', 'constructor', 'prototype'])
const tooling = ['bar', 'press'] as const

/**
 * A copy of a document, as written, with values set by path (`tooling.bar.diameter`, `feature.keyway.at[0]`); `null` takes
 * the path out. Mappings on the way are made where they are missing, and a value that stands in the way gives place to
 * one. A document that names no tooling asks for both kinds, and still does after one of them is set.
 */
export function patchDocument(document: unknown, set: Readonly<Record<string, Value>>): unknown {
  const both = tooling.every(
    (kind) => !isMapping(toolingOf(document)) || !Object.hasOwn(toolingOf(document) as object, kind),
  )
  let patched = document
  for (const [path, value] of Object.entries(set)) {
    const place = placeOf(path)
    if (place.length > 0 && !place.some((part) => forbidden.has(String(part))))
      patched = withValue(patched, place, value)
  }
  const now = toolingOf(patched)
  if (!both || !isMapping(now) || !tooling.some((kind) => Object.hasOwn(now, kind))) return patched
  return { ...(patched as object), tooling: { ...Object.fromEntries(tooling.map((kind) => [kind, {}])), ...now } }
}

const toolingOf = (document: unknown): unknown => (isMapping(document) ? document['tooling'] : undefined)

function withValue(here: unknown, place: readonly (string | number)[], value: Value): unknown {
  const [part, ...rest] = place
  if (part === undefined) return value
  const copy: Record<string, unknown> | unknown[] = Array.isArray(here) ? [...here] : isMapping(here) ? { ...here } : {}
  const within = copy as Record<string | number, unknown>
  if (value === null && !Object.hasOwn(within, part)) return here
  if (rest.length > 0) within[part] = withValue(within[part], rest, value)
  else if (value !== null) within[part] = value
  else if (Array.isArray(copy)) copy.splice(Number(part), 1)
  else delete within[part]
  return copy
}
