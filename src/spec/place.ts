/** Where something stands in a document: keys and places in lists. */
export type Place = readonly PropertyKey[]

/** `feature.keyway.at[1]`. */
export const pathOf = (place: Place): string =>
  place.map((part, n) => (typeof part === 'number' ? `[${part}]` : `${n > 0 ? '.' : ''}${String(part)}`)).join('')

/** `feature.keyway.at[1]`, or `feature.keyway.at.1`, taken apart. */
export const placeOf = (path: string): readonly (string | number)[] => {
  const known = places.get(path)
  if (known) return known
  if (places.size >= mostPlaces) places.clear()
  const place = takenApart(path)
  places.set(path, place)
  return place
}

/** The few hundred paths that there are are asked for again and again. */
const places = new Map<string, readonly (string | number)[]>()
const mostPlaces = 2000

const takenApart = (path: string): readonly (string | number)[] =>
  path
    .replace(/\[(\d+)\]/g, '.$1')
    .split('.')
    .filter((part) => part !== '')
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part))

/** A mapping, as YAML and JSON give it: no list, no null. */
export const isMapping = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What stands there, own keys only; `undefined` where nothing does. */
export function standsAt(document: unknown, place: Place): unknown {
  let here = document
  for (const part of place) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, part)) return undefined
    here = (here as Record<PropertyKey, unknown>)[part]
  }
  return here
}

/** Every path that the document states, mappings and their leaves; a list is one leaf. */
export function statedPaths(document: unknown): readonly string[] {
  const stated: string[] = []
  const gather = (mapping: unknown, above: string): void => {
    if (!isMapping(mapping)) return
    for (const key of Object.keys(mapping)) {
      if (key === '$schema') continue
      const path = above === '' ? key : `${above}.${key}`
      stated.push(path)
      gather(mapping[key], path)
    }
  }
  gather(document, '')
  return stated
}

/** What a terminal or a page would act on instead of showing: control characters, ends of lines, turns of direction, halves of a pair. */
// oxlint-disable-next-line no-control-regex
const unsayable = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]|\p{Surrogate}/gu

/** Words on one plain line, as they may be shown anywhere. */
export const plainLine = (words: string): string => words.replace(unsayable, ' ').replace(/\s+/g, ' ').trim()

/** A value as a person would know it again, on one line and not long. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (value === null) return 'nothing (empty)'
  if (typeof value === 'number') return Object.is(value, -0) ? '-0' : String(value)
  let text: string
  try {
    text =
      (typeof value === 'function' || typeof value === 'symbol' ? typeof value : JSON.stringify(value)) ?? typeof value
  } catch {
    text = Array.isArray(value) ? 'a list' : typeof value === 'object' ? 'a mapping' : String(value)
  }
  const line = [...text.replace(/\s+/g, ' ')]
  return line.length > 60 ? `${line.slice(0, 57).join('')}...` : line.join('')
}
