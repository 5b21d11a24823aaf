/** The one thing to buy or make that would do, where what is on hand does not: looked for on the usual lists, the smallest change first. */
import { bestCandidate, worth } from '../dimensions/candidates.ts'
import { isMapping } from '../spec/place.ts'
import type { Shop } from '../spec/shop.ts'
import { usualShop } from '../spec/shop-file.ts'
import { threadNamed } from '../standards/threads.ts'
import type { FitJob, Proposal } from './rule.ts'
import { barOf, stock, written } from './ways.ts'

/** One more of something than the shop has. */
interface Bought {
  readonly say: string
  readonly shop: Shop
  /** As a spec or shop file takes it. */
  readonly list: 'drills' | 'threads' | 'bits' | 'bars' | 'collets'
  readonly as: Readonly<Record<string, string>>
}

const ascending = (sizes: readonly number[], more: number): readonly number[] =>
  [...sizes, more].toSorted((a, b) => a - b)
const lacking = (usual: readonly number[], held: readonly number[]): readonly number[] =>
  usual.filter((size) => held.every((one) => Math.abs(one - size) > 1e-6))

/** All that could be added to the shop, one thing each, cheapest kinds first. */
const additions = (job: FitJob): readonly Bought[] => {
  const { shop } = job.spec
  const usual = usualShop(job.spec.units)
  const within = (size: number) => size < job.section.bore.lower
  const drills = usual.drills
    .filter(({ diameter }) => within(diameter) && shop.drills.every((one) => Math.abs(one.diameter - diameter) > 1e-6))
    .map((drill) => ({
      say: `Buy a drill of ${stock(job, drill.diameter)}`,
      shop: { ...shop, drills: [...shop.drills, drill].toSorted((a, b) => a.diameter - b.diameter) },
      list: 'drills' as const,
      as: { '': written(job, drill.diameter) },
    }))
  // The largest first: of two that serve it holds the bit better.
  const threads = usual.threads
    .toReversed()
    .filter((name) => !shop.threads.includes(name) && within(threadNamed(name)?.major ?? Infinity))
    .map((name) => ({
      say: `Buy a tap and set screws of ${name}`,
      shop: {
        ...shop,
        threads: [...shop.threads, name].toSorted(
          (a, b) => (threadNamed(a)?.major ?? 0) - (threadNamed(b)?.major ?? 0),
        ),
      },
      list: 'threads' as const,
      as: { '': name },
    }))
  const bits = usual.bits
    .filter(
      ({ shape, size }) =>
        within(size) && shop.bits.every((one) => one.shape !== shape || Math.abs(one.size - size) > 1e-6),
    )
    .map((bit) => ({
      say: `Buy a ${bit.shape} tool-bit blank of ${stock(job, bit.size)}`,
      shop: { ...shop, bits: [...shop.bits, bit].toSorted((a, b) => a.size - b.size) },
      list: 'bits' as const,
      as: { '.shape': bit.shape, '.size': written(job, bit.size) },
    }))
  const bars = lacking(usual.bars.filter(within), shop.bars).map((size) => ({
    say: `Buy round bar of ${stock(job, size)}`,
    shop: { ...shop, bars: ascending(shop.bars, size) },
    list: 'bars' as const,
    as: { '': written(job, size) },
  }))
  const collets = lacking(usual.collets.filter(within), shop.collets).map((size) => ({
    say: `Buy a collet of ${stock(job, size)}, or bore a holder for it`,
    shop: { ...shop, collets: ascending(shop.collets, size) },
    list: 'collets' as const,
    as: { '': written(job, size) },
  }))
  return [...drills, ...bits, ...threads, ...bars, ...collets]
}

/** Where the lists stand as they were written; `undefined` where nothing was told of the shop. */
const listed = (job: FitJob): Readonly<Record<string, unknown>> | undefined => {
  const { document, shop } = job.spec.written
  const lists = shop ?? (isMapping(document) ? document['shop'] : undefined)
  return isMapping(lists) ? lists : undefined
}

/** The lists of the shop file that the thing goes into: a thread may stand in those of taps and screws. */
const placesOf = (lists: Readonly<Record<string, unknown>>, list: Bought['list']): readonly string[] => {
  const told = (name: string) => Array.isArray(lists[name])
  return list === 'threads' && !told(list) ? ['taps', 'screws'].filter(told) : [list].filter(told)
}

/** Three of them at the most are tried in full. */
const tried = 3

/**
 * What one more blank, drill, thread, bar or collet of the usual lists would make work, best bar first. Nothing where the shop has told of
 * nothing: then all of the usual lists is on hand already.
 */
export const buying = (job: FitJob): readonly Proposal[] => {
  const lists = listed(job)
  if (!lists) return []
  const kinds = ['drills', 'bits', 'threads', 'bars', 'collets']
  return additions(job)
    .filter(({ list }) => placesOf(lists, list).length > 0)
    .flatMap((bought) => {
      const made = bestCandidate({ ...job.spec, shop: bought.shop }, job.asked, job.section)
      return made?.broken.length === 0 ? [{ bought, made }] : []
    })
    .toSorted(
      (a, b) =>
        a.made.cautions - b.made.cautions ||
        worth(b.made) - worth(a.made) ||
        kinds.indexOf(a.bought.list) - kinds.indexOf(b.bought.list),
    )
    .slice(0, tried)
    .map(({ bought: { say, list, as } }) => {
      const set = placesOf(lists, list).flatMap((name) =>
        Object.entries(as).map(([key, value]) => [
          `shop.${name}[${(lists[name] as readonly unknown[]).length}]${key}`,
          value,
        ]),
      )
      return {
        say: `${say}.`,
        told: (healed) => `${say}: that gives ${barOf(healed)}.`,
        set: Object.fromEntries(set) as Readonly<Record<string, string>>,
        kind: 'buy',
      }
    })
}
