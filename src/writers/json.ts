/**
 * JSON as the project writes it: two spaces, a line feed at the end, numbers rounded to 1e-6, what is absent (or endless) left out.
 * The order of names is the order in which they were put, so that the same value gives the same bytes.
 */
export const json = (value: unknown): string => `${JSON.stringify(rounded(value), null, 2)}\n`

/** A number that cannot be written, or a list that holds one. */
const endless = (value: unknown): boolean =>
  typeof value === 'number' ? !Number.isFinite(value) : Array.isArray(value) && value.some(endless)

/** The value with every number rounded to a millionth (never -0) and every `undefined` and every endless number taken out of its object. */
export const rounded = (value: unknown): unknown => {
  if (typeof value === 'number') return Math.round(value * 1e6) / 1e6 + 0
  if (Array.isArray(value)) return value.map(rounded)
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, held]) => held !== undefined && !endless(held))
      .map(([name, held]) => [name, rounded(held)]),
  )
}

/** The same document, whatever the order of its names: sorted names, no white space. What a checksum is taken of. */
export const canonical = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null'
  const held = Object.entries(value).filter(([, inner]) => inner !== undefined)
  return `{${held
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, inner]) => `${JSON.stringify(name)}:${canonical(inner)}`)
    .join(',')}}`
}
