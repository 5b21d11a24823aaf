import { describe, expect, it } from 'vitest'
import { buying } from '../../src/checks/buying.ts'
import { sizedOf } from './jobs.ts'

/** What is to be bought for an 8 mm keyway in a bore of 25, of a shop that has a bar of 16 and what a 6 mm bit in it takes, but for one thing. */
const bought = (change: object) => {
  const job = sizedOf({
    units: 'mm',
    bore: { diameter: 25, length: 40 },
    hub: { outside: 70 },
    feature: { keyway: {} },
    tooling: { bar: { behind: 40 } },
    shop: {
      bits: [{ shape: 'square', size: 6 }],
      drills: [4.2, 8.4],
      threads: ['M5'],
      bars: [16],
      collets: [16],
      ...change,
    },
  })
  if (!job.asked) throw new Error('no bar is asked for')
  return buying({ ...job, asked: job.asked }).map(({ say, set }) => [say, set])
}

describe('the one thing to buy', () => {
  it('is the largest thread that serves, where the screws on hand are too large: M5 is under 0.9 of 6', () => {
    expect(bought({ threads: ['M8'] })[0]).toEqual(['Buy a tap and set screws of M5.', { 'shop.threads[1]': 'M5' }])
  })

  it('is a blank, where the one on hand is as thick as the bar: its place in the list, shape and size', () => {
    const ways = bought({ bits: [{ shape: 'square', size: 16 }] })
    expect(ways[0]).toEqual([
      'Buy a square tool-bit blank of 6 mm.',
      { 'shop.bits[1].shape': 'square', 'shop.bits[1].size': '6 mm' },
    ])
    expect(ways.length).toBeLessThanOrEqual(3)
  })

  it('is a drill of 8.4, where the next on hand is wider than the bar; a bar of 16, where there is one of 8', () => {
    expect(bought({ drills: [4.2, 20] })[0]).toEqual(['Buy a drill of 8.4 mm.', { 'shop.drills[2]': '8.4 mm' }])
    expect(bought({ bars: [8] })[0]).toEqual(['Buy round bar of 16 mm.', { 'shop.bars[1]': '16 mm' }])
  })

  it('is never what is on hand already, and nothing where the shop has told of nothing', () => {
    for (const [say] of bought({
      bits: [
        { shape: 'square', size: 6 },
        { shape: 'square', size: 16 },
      ],
      bars: [16],
    })) // prettier-ignore
      expect(say).not.toMatch(/blank of (?:6|16) mm|bar of 16 mm/)
    for (const [say] of bought({ bars: [8] })) expect(say).not.toContain('of 8 mm')
    expect(
      bought({ bits: undefined, drills: undefined, threads: undefined, bars: undefined, collets: undefined }),
    ).toEqual([]) // prettier-ignore
  })
})
