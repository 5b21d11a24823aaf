import { drillNamed, type Drill } from '../standards/drills.ts'
import { inch } from '../standards/inch.ts'
import { stockLists } from '../standards/stock.ts'
import { threadNamed } from '../standards/threads.ts'
import { complaintsOf } from './complain.ts'
import { force, stiffness } from './quantity.ts'
import type { Complaint } from './complaint.ts'
import { fraction } from './figures.ts'
import { present, type Reading, reading } from './reading.ts'
import { readThread } from './read-tooling.ts'
import { plainLine } from './place.ts'
import type { Dividing, Machine, Measuring, Shop } from './shop.ts'
import { shopSchema } from './shop-schema.ts'
import { spindleHolds } from './spindle.ts'
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
  const refused = complaintsOf(shopSchema(), document, ['shop'])
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
      screws: screws(file),
      reamers: lengths(file, 'reamers'),
      endMills: lengths(file, 'endMills'),
      pins: lengths(file, 'pins'),
      plugs: lengths(file, 'plugs'),
      gears: counts(file, 'gears'),
      machines: machines(file),
      dividing: dividing(file),
      measuring: measuring(file),
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

const ascending = (read: readonly number[] | undefined): readonly number[] | undefined =>
  read && [...new Set(read)].toSorted((a, b) => a - b)

const lengths = (file: Reading, name: string): readonly number[] | undefined =>
  ascending(places(file, name)?.map((path) => file.length(path) ?? Number.NaN))

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

/** A screw may stand by its thread alone, or with its lengths. */
const threadPath = (file: Reading, path: string): string => (file.text(path) === undefined ? `${path}.thread` : path)

/** The screws whose lengths the file gives; those of one thread together. */
function screws(file: Reading): Shop['screws'] {
  const read = places(file, 'screws')?.flatMap((path) => {
    const lengthsHeld = lengths(file, `${path}.lengths`)
    const thread = lengthsHeld && readThread(file, `${path}.thread`)
    return lengthsHeld && thread !== undefined ? [{ thread, lengths: lengthsHeld }] : []
  })
  if (!read || read.length === 0) return undefined
  return [...new Set(read.map(({ thread }) => thread))].map((thread) => ({
    thread,
    lengths: read
      .filter((screw) => screw.thread === thread)
      .flatMap((screw) => screw.lengths)
      .toSorted((a, b) => a - b),
  }))
}

const counts = (file: Reading, name: string): readonly number[] | undefined =>
  ascending(places(file, name)?.map((path) => file.number(path) ?? Number.NaN))

function machines(file: Reading): readonly Machine[] | undefined {
  const names = new Set<string>()
  return places(file, 'machines')?.map((path) => {
    const size = (name: string) => file.length(`${path}.${name}`)
    const [mark, radius, turn] = [size('dial.mark'), size('handle.radius'), size('handle.travel')]
    const name = plainLine(file.text(`${path}.name`) ?? '')
    if (names.has(name)) file.complain(`${path}.name`, 'a name that no other machine has')
    names.add(name)
    return present({
      name,
      kind: file.word(`${path}.kind`, ['lathe', 'mill', 'press']) ?? ('lathe' as const),
      dial:
        mark === undefined
          ? undefined
          : { mark, reads: file.word(`${path}.dial.reads`, ['diameter']) ?? ('travel' as const) },
      travel: size('travel'),
      give: file.quantity(`${path}.give`, stiffness),
      thrust: file.quantity(`${path}.thrust`, force),
      handle: radius === undefined || turn === undefined ? undefined : { radius, travel: turn },
      hold: file.word(`${path}.hold`, spindleHolds),
      jaws: file.quantity(`${path}.jaws`, force),
    })
  })
}

function dividing(file: Reading): Dividing | undefined {
  const [ratio, circles] = [file.number('dividing.ratio'), counts(file, 'dividing.circles')]
  return ratio === undefined || circles === undefined ? undefined : { ratio, circles }
}

function measuring(file: Reading): Measuring | undefined {
  if (!file.states('measuring')) return undefined
  const trusted = (name: string) => file.length(`measuring.${name}`)
  return present({
    caliper: trusted('caliper'),
    micrometer: trusted('micrometer'),
    depthMicrometer: trusted('depthMicrometer'),
    boreGauge: trusted('boreGauge'),
    indicator: trusted('indicator'),
    blocks: trusted('blocks'),
    square: trusted('square'),
  })
}

/** Threads named for good, or those that the taps and the set screws have in common. */
function threads(file: Reading): readonly string[] | undefined {
  const lists = ['threads', 'taps', 'screws'].flatMap((name) => {
    const read = places(file, name)?.map((path) => readThread(file, threadPath(file, path)))
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
