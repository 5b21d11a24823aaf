import { type Document, isMap, parseDocument, stringify, type YAMLMap } from 'yaml'
import { isMapping } from '../../spec/place.ts'

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

/** Brings one mapping of the text to what the document says; what is the same is left as it was written, comments too. */
const bring = (
  tree: Document,
  map: YAMLMap,
  before: Readonly<Record<string, unknown>>,
  now: Readonly<Record<string, unknown>>,
): void => {
  for (const key of Object.keys(before)) if (!Object.hasOwn(now, key)) map.delete(key)
  for (const [key, value] of Object.entries(now)) {
    const earlier = before[key]
    if (Object.hasOwn(before, key) && same(earlier, value)) continue
    const within = map.get(key, true)
    if (isMapping(value) && isMapping(earlier) && isMap(within)) bring(tree, within as YAMLMap, earlier, value)
    else if (typeof value === 'object' && value !== null) map.set(key, tree.createNode(value))
    else map.set(key, value)
  }
}

/**
 * The text of a spec, brought to what its document says now: untouched where nothing changed, comments and order kept where they can be. Read
 * again it gives the document; a text for which that does not come out is written anew.
 */
export const rewritten = (text: string, now: unknown): string => {
  const tree = parseDocument(text, { version: '1.2', schema: 'core', merge: false, logLevel: 'error' })
  const before: unknown = tree.toJS({ maxAliasCount: 20 })
  if (same(before, now)) return text
  const anew = stringify(now, { lineWidth: 0 })
  if (!isMapping(before) || !isMapping(now) || !isMap(tree.contents)) return anew
  bring(tree, tree.contents as YAMLMap, before, now)
  const brought = tree.toString({ lineWidth: 0, flowCollectionPadding: true })
  return same(parseDocument(brought, { version: '1.2', schema: 'core' }).toJS(), tree.toJS()) &&
    sameWhateverOrder(parseDocument(brought).toJS(), now)
    ? brought
    : anew
}

const sorted = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(sorted)
    : isMapping(value)
      ? Object.fromEntries(
          Object.keys(value)
            .toSorted()
            .map((key) => [key, sorted(value[key])]),
        )
      : value

const sameWhateverOrder = (one: unknown, other: unknown): boolean => same(sorted(one), sorted(other))
