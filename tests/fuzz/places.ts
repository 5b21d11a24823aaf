/** Every place of a document: its mappings, lists and leaves, as paths of keys. */
export const placesOf = (value: unknown, above: readonly (string | number)[] = []): (string | number)[][] =>
  typeof value !== 'object' || value === null
    ? []
    : Object.entries(value).flatMap(([key, each]) => {
        const here = [...above, Array.isArray(value) ? Number(key) : key]
        return [here, ...placesOf(each, here)]
      })

/** The document with something else at one place; nothing is changed in the one given. */
export const withAt = (document: unknown, [first, ...rest]: readonly (string | number)[], value: unknown): unknown => {
  if (first === undefined) return value
  const copy = (Array.isArray(document) ? [...document] : { ...(document as object) }) as Record<
    string | number,
    unknown
  >
  copy[first] = withAt(copy[first], rest, value)
  return copy
}
