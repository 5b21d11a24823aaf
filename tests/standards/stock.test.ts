import { describe, expect, it } from 'vitest'
import { inch, inchesNamed, inchName, fromInchName } from '../../src/standards/inch.ts'
import { stockLists } from '../../src/standards/stock.ts'
import { setScrewFor } from '../../src/standards/set-screws.ts'
import { threadNamed } from '../../src/standards/threads.ts'

const rises = (sizes: readonly number[]) => sizes.every((size, i) => i === 0 || size > (sizes[i - 1] ?? 0))

describe.each(['mm', 'in'] as const)('stock of a shop in %s', (units) => {
  const lists = stockLists(units)

  it('every list rises and names no size twice', () => {
    for (const list of [lists.bars, lists.rounds, lists.collets, lists.shims]) expect(rises(list)).toBe(true)
    for (const shape of ['square', 'round'])
      expect(rises(lists.bits.filter((bit) => bit.shape === shape).map((bit) => bit.size))).toBe(true)
    expect(lists.bits.map((bit) => bit.size)).toEqual(lists.bits.map((bit) => bit.size).toSorted((a, b) => a - b))
    expect(lists.drills.map((drill) => drill.diameter)).toEqual(
      lists.drills.map((drill) => drill.diameter).toSorted((a, b) => a - b),
    )
  })

  it('threads rise in size, and each has tap drill on hand and a screw', () => {
    const threads = lists.threads.map(threadNamed)
    threads.forEach((thread, i) => {
      expect(thread?.major).toBeGreaterThanOrEqual(threads[i - 1]?.major ?? 0)
      expect(lists.drills.map((drill) => drill.name)).toContain(thread?.tapDrill.name)
      expect(setScrewFor(thread?.name ?? '')?.size).toBe(thread?.size)
    })
  })

  it('reaches from the smallest bore (6 mm, 1/4 in) to the largest (100 mm, 4 in)', () => {
    const [least, most] = units === 'mm' ? [6, 100] : [0.25 * inch, 4 * inch]
    expect(lists.bars[0]).toBeLessThan(0.6 * least)
    expect(lists.bars.at(-1)).toBeGreaterThanOrEqual(0.6 * most)
    expect(lists.rounds.at(-1)).toBeGreaterThanOrEqual(1.25 * most)
    expect(lists.rounds[0]).toBeLessThan(1.6 * least)
    expect(lists.bits[0]?.size).toBeLessThan(0.26 * least)
    expect(lists.bits.at(-1)?.size).toBeGreaterThan(15)
  })

  it('bars step finely where bores are small: never by more than a quarter, nor by more than 10 mm', () => {
    lists.bars.forEach((bar, i) => {
      const before = lists.bars[i - 1]
      if (before === undefined) return
      expect(bar / before).toBeLessThan(1.26)
      expect(bar - before).toBeLessThanOrEqual(10)
    })
  })
})

describe('inches', () => {
  it('names of inch stock are fractions', () => {
    for (const bar of stockLists('in').bars) expect(fromInchName(inchName(bar) ?? '0')).toBeCloseTo(bar, 9)
    expect([4.7625, 31.75, 25.4, 12, 0, -6.35].map(inchName)).toEqual([
      '3/16',
      '1-1/4',
      '1',
      undefined,
      undefined,
      undefined,
    ])
  })

  it('fractions as printed', () => {
    expect(['3/16', '1-1/4', '2', '63/64'].map(inchesNamed)).toEqual([0.1875, 1.25, 2, 63 / 64])
    expect(() => inchesNamed('a bit')).toThrow('not a fraction of an inch: a bit')
  })
})
