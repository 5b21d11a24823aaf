import { complaint, complaintsOf } from './complain.ts'
import type { Complaint } from './complaint.ts'
import { isMapping, plainLine, shown, standsAt, statedPaths } from './place.ts'
import { torque } from './quantity.ts'
import { readBore, readHub } from './read-bore.ts'
import { byBroach, readFeature } from './read-feature.ts'
import { readShaft } from './read-key.ts'
import { readTooling } from './read-tooling.ts'
import { type Reading, present, reading } from './reading.ts'
import { specSchema } from './schema.ts'
import type { Shop } from './shop.ts'
import { readShop, usualShop } from './shop-file.ts'
import type { Drafting, Spec, Units } from './spec.ts'

export { patchDocument } from './patch.ts'

/**
 * Reads a spec from plain data (parsed YAML or JSON), and the shop file that it names, parsed too. All complaints come at
 * once, one a path; a document of any kind is answered, none throws.
 */
export function readSpec(
  document: unknown,
  shopDocument?: unknown,
): { readonly spec: Spec } | { readonly complaints: readonly Complaint[] } {
  const refused = complaintsOf(specSchema, document)
  const units = unitsOf(document)
  if (units === undefined) return { complaints: onePerPath(refused) }
  const read = reading(document, units)
  const bore = readBore(read)
  const hub = readHub(read)
  const feature = readFeature(read)
  const stock = shopOf(document, shopDocument, units)
  const tooling = readTooling(read, stock.shop)
  const shaft = readShaft(read)
  const complaints = onePerPath([...refused, ...read.complaints, ...stock.complaints])
  if (complaints.length > 0) return { complaints }
  if (!bore || !feature || !stock.shop) throw new Error('a spec without complaint is not complete')
  return {
    spec: present({
      name: read.text('name') ?? '',
      units,
      bore,
      hub,
      feature,
      shaft,
      load: readLoad(read),
      use: plainLine(read.text('use') ?? '') || undefined,
      tooling: byBroach(feature.kind) ? tooling : present({ bar: tooling.bar }),
      shop: stock.shop,
      drafting: readDrafting(read),
      stated: statedPaths(document),
      written: { document, ...(shopDocument !== undefined && { shop: shopDocument }) },
    }),
  }
}

const unitsOf = (document: unknown): Units | undefined => {
  const stated = standsAt(document, ['units'])
  return stated === 'mm' || stated === 'in' ? stated : undefined
}

/** The first complaint of each path: what the schema refuses comes before what does not agree. */
const onePerPath = (complaints: readonly Complaint[]): readonly Complaint[] => {
  const met = new Set<string>()
  return complaints.filter(({ path }) => {
    const first = !met.has(path)
    met.add(path)
    return first
  })
}

/** The path of the shop file that a document names, from the document's own folder; `undefined` where it names none. */
export function shopPath(document: unknown): string | undefined {
  const named = standsAt(document, ['shop'])
  return typeof named === 'string' && named !== '' ? named : undefined
}

/** The shop: from the file that is named, from the lists in the spec itself, or the usual one. */
function shopOf(
  document: unknown,
  shopDocument: unknown,
  units: Units,
): { readonly shop?: Shop; readonly complaints: readonly Complaint[] } {
  const stated = standsAt(document, ['shop'])
  const none: readonly Complaint[] = []
  if (typeof stated === 'string' && shopDocument === undefined)
    return {
      complaints: [
        complaint('shop', shown(stated), 'a shop file that is handed over with the spec; or what is on hand, here'),
      ],
    }
  const lists = shopDocument ?? (isMapping(stated) ? stated : undefined)
  const outcome = lists === undefined ? { shop: usualShop(units) } : readShop(lists, units)
  return 'shop' in outcome ? { shop: outcome.shop, complaints: none } : outcome
}

function readLoad(read: Reading): Spec['load'] {
  const carried = read.quantity('load.torque', torque)
  return carried === undefined ? undefined : { torque: carried, service: read.number('load.service') ?? 1 }
}

/** How drawings are made; in mm ISO on A4 in first angle, in inches ASME on Letter in third. */
function readDrafting(read: Reading): Drafting {
  const metric = read.units === 'mm'
  return {
    convention: read.word('drafting.convention', ['iso', 'asme']) ?? (metric ? 'iso' : 'asme'),
    paper: read.word('drafting.paper', ['A4', 'Letter']) ?? (metric ? 'A4' : 'Letter'),
    projection: read.word('drafting.projection', ['first', 'third']) ?? (metric ? 'first' : 'third'),
    ...(read.raw('drafting.dual') === true && { dual: true as const }),
  }
}
