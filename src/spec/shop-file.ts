import { drillNamed, type Drill } from '../standards/drills.ts'
import { inch } from '../standards/inch.ts'
import { stockLists } from '../standards/stock.ts'
import { threadNamed } from '../standards/threads.ts'
import { complaintsOf } from './complain.ts'
import type { Complaint } from './complaint.ts'
import { fraction } from './figures.ts'
import { present, type Reading, reading } from './reading.ts'
import { readThread } from './read-tooling.ts'
import type { Shop } from './shop.ts'
import { shopSchema } from './shop-schema.ts'
import type { Units } from './spec.ts'

/** What a shop has that has told nothing: the usual lists, and a printer that nobody has measured. */
export const usualShop = (units: Units): Shop => ({ units, ...stockLists(units), printer: unmeasured })

/** A print taken as it comes; the foot is common practice, no source. */
const unmeasured: Shop['printer'] = { outside: 0, inside: 0, foot: 0.4, measured: false }

/**
 * A shop file as plain data (`units` of the spec hold unless it states its own): each list that it gives in place of the
 * usual one, all mm, ascending. Paths of complaints begin with `shop`.
 */
export function readShop(
  document: unknown,
  units: Units,
): { readonly shop: Shop } | { readonly complaints: readonly Complaint[] } {
  const refused = complaintsOf(shopSchema, document, ['shop'])
  if (refused.length > 0) return { complaints: refused }
  const file = reading(document, reading(document, units).word('units', ['mm', 'in']) ?? units, 'shop')
  const usual = usualShop(file.units)
  const { outside, inside, foot } = {
    outside: file.length('printer.outside', { signed: true }),
    inside: file.length('printer.inside', { signed: true }),
    foot: file.length('printer.foot'),
  }
  const shop: Shop = {
    ...usual,
    ...present({
      drills: drills(file),
      threads: threads(file),
      bits: bits(file),
      bars: lengths(file, 'bars'),
      rounds: lengths(file, 'rounds'),
      collets: lengths(file, 'collets'),
      shims: lengths(file, 'shims'),
      reamers: lengths(file, 'reamers'),
      pins: lengths(file, 'pins'),
    }),
    ...(outside !== undefined &&
      inside !== undefined &&
      foot !== undefined && { printer: { outside, inside, foot, measured: true } }),
  }
  return file.complaints.length > 0 ? { complaints: file.complaints } : { shop }
}

/** The places of a list, or `undefined` where the file leaves it out. */
function places(file: Reading, name: string): readonly string[] | undefined {
  const list = file.raw(name)
  return Array.isArray(list) ? list.map((_, n) => `${name}[${n}]`) : undefined
}

const lengths = (file: Reading, name: string): readonly number[] | undefined => {
  const read = places(file, name)?.map((path) => file.length(path) ?? Number.NaN)
  return read && [...new Set(read)].toSorted((a, b) => a - b)
}

const drills = (file: Reading): readonly Drill[] | undefined =>
  places(file, 'drills')
    ?.map((path) => {
      const diameter = file.length(path, { drill: true }) ?? Number.NaN
      return { name: drillName(file, path, diameter), diameter }
    })
    .toSorted((a, b) => a.diameter - b.diameter)

/** The name a drill is asked for by: as the tables have it, else its fraction or its size. */
function drillName(file: Reading, path: string, diameter: number): string {
  const written = file.text(path)?.trim() ?? ''
  const letter = /^(?:letter\s+)?([a-z])$/i.exec(written)?.[1]?.toUpperCase()
  const named = drillNamed(letter ?? written.replace(/\s/g, ''))
  if (named && Math.abs(named.diameter - diameter) < 1e-6) return named.name
  const metric = String(Number(diameter.toFixed(3)))
  if (file.units === 'in' && /mm/i.test(written)) return `${metric} mm`
  if (file.units === 'mm' && !/in|"/i.test(written)) return metric
  return fraction(diameter) ?? (diameter / inch).toFixed(4).replace(/^0/, '')
}

/** Threads named for good, or those that the taps and the set screws have in common. */
function threads(file: Reading): readonly string[] | undefined {
  const lists = ['threads', 'taps', 'screws'].flatMap((name) => {
    const read = places(file, name)?.map((path) => readThread(file, path))
    return read ? [read.filter((thread) => thread !== undefined)] : []
  })
  const [first, ...rest] = lists
  if (first === undefined) return undefined
  const common = [...new Set(first)].filter((thread) => rest.every((list) => list.includes(thread)))
  return common.toSorted((a, b) => (threadNamed(a)?.major ?? 0) - (threadNamed(b)?.major ?? 0))
}

const bits = (file: Reading): Shop['bits'] | undefined =>
  places(file, 'bits')
    ?.map((path) => ({
      shape: file.word(`${path}.shape`, ['round']) ?? ('square' as const),
      size: file.length(path) ?? file.length(`${path}.size`) ?? Number.NaN,
    }))
    .toSorted((a, b) => a.size - b.size)
