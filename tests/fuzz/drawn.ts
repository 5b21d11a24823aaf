import fc from 'fast-check'
import { placeOf } from '../../src/spec/place.ts'
import { readSpec } from '../../src/spec/read.ts'
import type { Spec } from '../../src/spec/spec.ts'
import { schemaText } from '../../src/spec/schema-text.ts'

/** Specs drawn from the schema itself: every key that there is, with values that it would take and now and then with one that nobody should write. */

interface Node {
  readonly type?: string
  readonly properties?: Readonly<Record<string, Node>>
  readonly required?: readonly string[]
  readonly anyOf?: readonly Node[]
  readonly items?: Node | readonly Node[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly examples?: readonly unknown[]
  readonly minimum?: number
  readonly maximum?: number
  readonly minItems?: number
  readonly maxItems?: number
}

const schema = JSON.parse(schemaText()) as Node

/** Sizes of any job, in its units or with their own. */
const sizes = fc.oneof(
  fc.double({ min: 0.01, max: 120, noNaN: true }).map((size) => Math.round(size * 1000) / 1000),
  fc.double({ min: 0.01, max: 120, noNaN: true }).map((size) => `${Math.round(size * 1000) / 1000} mm`),
  fc.constantFrom('1/8 in', '3/16"', '7/8 in', '1-3/8 in', '0,5 mm', '#7', '.001 in', 0.02, 0.5, 1, 8, 24),
)

/** One of the examples; a number or a length as large again, or as small. */
const leaf = (node: Node): fc.Arbitrary<unknown> => {
  if (node.const !== undefined) return fc.constant(node.const)
  if (node.enum) return fc.constantFrom(...node.enum)
  if (node.type === 'boolean') return fc.boolean()
  if (node.type === 'integer')
    return fc.integer({ min: Math.max(node.minimum ?? 0, 0), max: Math.min(node.maximum ?? 40, 60) })
  const examples = node.examples ?? ['M6', 8]
  const asSize = examples.some((each) => typeof each === 'number' || /^[\d.]/.test(String(each)))
  return asSize ? fc.oneof({ arbitrary: fc.constantFrom(...examples), weight: 6 }, sizes) : fc.constantFrom(...examples)
}

const listOf = (node: Node): fc.Arbitrary<unknown> => {
  if (Array.isArray(node.items)) return drawn((node.items as readonly Node[])[0] ?? {}).map((each) => [each, each])
  return fc.array(drawn((node.items ?? {}) as Node), {
    minLength: node.minItems ?? 0,
    maxLength: Math.min(node.maxItems ?? 6, 6),
  })
}

/** `share` of the keys that may be left out are there. */
const mappingOf = (node: Node, spoilt: fc.Arbitrary<unknown>, share: number): fc.Arbitrary<unknown> =>
  fc
    .record(
      Object.fromEntries(
        Object.entries(node.properties ?? {})
          .filter(([key]) => key !== '$schema')
          .map(([key, each]) => {
            const value = drawn(each, spoilt, share)
            const kept = node.required?.includes(key) === true
            return [
              key,
              kept
                ? value
                : fc.oneof({ arbitrary: value, weight: share }, { arbitrary: fc.constant(absent), weight: 10 - share }),
            ]
          }),
      ),
    )
    .map((mapping) => Object.fromEntries(Object.entries(mapping).filter(([, value]) => value !== absent)))

const absent = Symbol('left out')
const none = fc.constant(absent)

const drawn = (node: Node, spoilt: fc.Arbitrary<unknown> = none, share = 3): fc.Arbitrary<unknown> => {
  const sound =
    node.properties !== undefined
      ? mappingOf(node, spoilt, share)
      : node.items !== undefined
        ? listOf(node)
        : node.anyOf && node.examples === undefined
          ? fc.oneof(
              ...node.anyOf
                .filter(({ type }) => type !== 'null')
                .map((each) => drawn({ ...each, ...(node.examples && { examples: node.examples }) }, spoilt, share)),
            )
          : leaf(node)
  return fc
    .tuple(sound, spoilt, fc.integer({ min: 0, max: 79 }))
    .map(([value, bad, roll]) => (roll === 0 && bad !== absent ? bad : value))
}

const kinds = Object.entries(schema.properties?.['feature']?.properties ?? {})

/** One job of one feature, of a plausible bore; now and then with `spoilt` at any place. */
export const drawnSpecs = (spoilt: fc.Arbitrary<unknown> = none): fc.Arbitrary<unknown> =>
  fc
    .record({
      rest: drawn(schema, spoilt),
      units: fc.constantFrom('mm', 'in'),
      bore: fc.oneof(fc.integer({ min: 6, max: 100 }), fc.constantFrom(12, 23)),
      long: fc.integer({ min: 3, max: 180 }),
      feature: fc
        .constantFrom(...kinds)
        .chain(([kind, node]) => drawn(node, spoilt, 4).map((value) => ({ [kind]: value }))),
    })
    .map(({ rest, units, bore, long, feature }) => {
      if (typeof rest !== 'object' || rest === null) return rest
      const { bore: stated, ...others } = rest as Record<string, unknown>
      return {
        ...others,
        name: 'drawn',
        units,
        bore: {
          ...(typeof stated === 'object' ? stated : {}),
          diameter: `${bore} mm`,
          length: `${long} mm`,
          measured: undefined,
          tolerance: 'H7',
        },
        hub: { outside: `${2 * bore} mm` },
        feature,
      }
    })

/** What the shop has, as a file of its own. */
export const drawnShops = (spoilt: fc.Arbitrary<unknown> = none): fc.Arbitrary<unknown> => {
  const shop = schema.properties?.['shop']?.anyOf?.find((each) => each.properties)
  if (!shop) throw new Error('the schema has no shop')
  return drawn(shop, spoilt, 2)
}

const without = (document: unknown, [first, ...rest]: readonly (string | number)[]): unknown => {
  if (typeof document !== 'object' || document === null || first === undefined) return document
  const { [first]: here, ...others } = document as Record<string | number, unknown>
  return rest.length === 0 || Array.isArray(document) ? others : { ...others, [first]: without(here, rest) }
}

/** The spec that a drawn document comes to once everything that is complained of is struck out; `undefined` where that cannot be. */
export const struckOut = (document: unknown): { readonly document: unknown; readonly spec: Spec } | undefined => {
  let left = document
  for (let round = 0; round < 12; round++) {
    const read = readSpec(left)
    if ('spec' in read) return { document: left, spec: read.spec }
    for (const { path } of read.complaints) left = without(left, placeOf(path.replace(/\[.*/, '')))
  }
  return undefined
}
