import { describe, expect, it } from 'vitest'
import { tell } from '../../src/spec/print.ts'
import { readShop, usualShop } from '../../src/spec/shop-file.ts'
import type { Shop } from '../../src/spec/shop.ts'

const shop = (document: unknown, units: 'mm' | 'in' = 'mm'): Shop => {
  const read = readShop(document, units)
  if ('complaints' in read) throw new Error(read.complaints.map(tell).join('\n'))
  return read.shop
}

describe('a shop file', () => {
  it('that says nothing leaves the usual lists', () => {
    expect(shop({})).toEqual(usualShop('mm'))
    expect(shop({ units: 'in' })).toEqual(usualShop('in'))
  })

  it('gives lists in any spelling, in mm and ascending', () => {
    const read = shop({ bars: ['5/8 in', 12, '10 mm', 12], shims: ['0,05', 0.1], collets: ['3/4"'], pins: [6] })
    expect(read.bars).toEqual([10, 12, 15.875])
    expect(read.shims).toEqual([0.05, 0.1])
    expect(read.collets[0]).toBeCloseTo(19.05, 12)
    expect(read.pins).toEqual([6])
    expect(read.rounds).toEqual(usualShop('mm').rounds)
    expect(shop({ bars: ['5/8', 0.5] }, 'in').bars).toEqual([12.7, 15.875])
  })

  it('names drills as they are asked for', () => {
    const names = (drills: unknown, units: 'mm' | 'in' = 'mm') =>
      shop({ drills }, units).drills.map((drill) => drill.name)
    expect(names(['T', '#7', 8.4, '23/64 in', 'letter f', '6.15'])).toEqual([
      '#7',
      '6.15',
      'letter F',
      '8.4',
      'letter T',
      '23/64',
    ])
    expect(names(['1/4', 0.25, '.2570', '7 mm'], 'in')).toEqual(['1/4', '1/4', '.2570', '7 mm'])
  })

  it('keeps the threads for which there are both taps and screws', () => {
    expect(shop({ taps: ['M8', 'M5', 'M6'], screws: ['M6', 'M8', 'M10'] }).threads).toEqual(['M6', 'M8'])
    expect(shop({ taps: ['#10-32', 'M5'] }).threads).toEqual(['#10-32', 'M5'])
    expect(shop({ threads: ['M6x1'] }).threads).toEqual(['M6'])
  })

  it('reads blanks by size alone or with their shape', () => {
    expect(shop({ bits: [8, { shape: 'round', size: 6 }, '1/4 in'] }).bits).toEqual([
      { shape: 'round', size: 6 },
      { shape: 'square', size: 6.35 },
      { shape: 'square', size: 8 },
    ])
  })

  it('takes a printer as measured', () => {
    const printer = { outside: '-0,06', inside: -0.12, foot: 0.4 }
    expect(shop({ printer }).printer).toEqual({ outside: -0.06, inside: -0.12, foot: 0.4, measured: true })
  })

  it('tells of machines, in any units', () => {
    const read = shop({
      machines: [
        {
          name: 'bench lathe',
          kind: 'lathe',
          dial: { mark: '0.001 in', reads: 'diameter' },
          travel: 250,
          hold: 'gear',
        },
        {
          name: 'knee mill',
          kind: 'mill',
          give: '28550 lbf/in',
          thrust: '450 lbf',
          handle: { radius: '8 in', travel: '4 in' },
          jaws: '6 kN',
        },
      ],
    })
    expect(read.machines?.[0]).toEqual({
      name: 'bench lathe',
      kind: 'lathe',
      dial: { mark: 0.0254, reads: 'diameter' },
      travel: 250,
      hold: 'gear',
    })
    expect(read.machines?.[1]?.give).toBeCloseTo(5000, 0)
    // 450 lbf = 2001.7 N, by the pound-force of 4.4482216 N
    expect(read.machines?.[1]?.thrust).toBeCloseTo(2001.7, 1)
    expect(read.machines?.[1]?.handle).toEqual({ radius: 203.2, travel: 101.6 })
    expect(read.machines?.[1]?.jaws).toBe(6000)
  })

  it('refuses two machines of one name', () => {
    const two = [
      { name: 'lathe', kind: 'lathe' },
      { name: 'lathe', kind: 'mill' },
    ]
    const read = readShop({ machines: two }, 'mm')
    expect('complaints' in read && read.complaints.map(({ path }) => path)).toEqual(['shop.machines[1].name'])
  })

  it('tells of screws by their lengths, of dividing and of measuring', () => {
    const read = shop({
      screws: ['M6', { thread: 'M5', lengths: [8, 6] }, { thread: 'M5', lengths: [5] }],
      dividing: { ratio: 40, circles: [21, 15] },
      gears: [60, 48],
      endMills: [6, 4],
      plugs: ['1/2 in'],
      measuring: { caliper: 0.03, indicator: '0.0005 in', square: 0.02 },
    })
    expect(read.threads).toEqual(['M5', 'M6'])
    expect(read.screws).toEqual([{ thread: 'M5', lengths: [5, 6, 8] }])
    expect(read.dividing).toEqual({ ratio: 40, circles: [15, 21] })
    expect(read.gears).toEqual([48, 60])
    expect(read.endMills).toEqual([4, 6])
    expect(read.plugs).toEqual([12.7])
    expect(read.measuring).toEqual({ caliper: 0.03, indicator: 0.0127, square: 0.02 })
  })

  it('wants a circle of a dividing head, and takes every way of holding a spindle', () => {
    const read = readShop({ dividing: { ratio: 40, circles: [] } }, 'mm')
    expect('complaints' in read && read.complaints.map(({ path }) => path)).toEqual(['shop.dividing.circles'])
    const held = shop({
      machines: ['gear', 'lock', 'belt', 'hand'].map((hold) => ({ name: hold, kind: 'mill', hold })),
    })
    expect(held.machines?.map(({ hold }) => hold)).toEqual(['gear', 'lock', 'belt', 'hand'])
  })

  it('complains by path, of everything', () => {
    const read = readShop({ bars: [0, 'x'], drils: [], bits: [{ size: 3, shap: 'round' }], 'set screws': [] }, 'mm')
    expect('complaints' in read && read.complaints.map((each) => [each.path, each.meant])).toEqual([
      ['shop.bits[0].shap', 'shape'],
      ['shop.bars[0]', undefined],
      ['shop.bars[1]', undefined],
      ['shop.drils', 'drills'],
      ['shop.set screws', 'screws'],
    ])
    const threads = readShop({ taps: ['M55'] }, 'mm')
    expect('complaints' in threads && threads.complaints.map((each) => [each.path, each.meant])).toEqual([
      ['shop.taps[0]', 'M5'],
    ])
    expect('complaints' in readShop('shop.yaml', 'mm')).toBe(true)
  })
})
