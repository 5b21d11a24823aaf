import { describe, expect, it, test } from 'vitest'
import { endSizes, holeFor, holeToEndFor, leastBar, leastEngaged, seatRise } from '../../src/dimensions/cross-hole.ts'
import { setScrewFor } from '../../src/standards/set-screws.ts'
import { threadNamed } from '../../src/standards/threads.ts'

const k = 25.4

/** A square blank with corners broken by a fortieth, its hole, and its screw, in the blank's own unit. */
const end = (size: number, screw: string, unit: number) => {
  const mm = size * unit
  const hole = holeFor('square', mm, mm / 40)
  const rise = seatRise('square', mm, mm / 40, hole)
  const thread = threadNamed(screw)
  const stock = setScrewFor(screw)
  if (!thread || !stock) throw new Error(`no ${screw}`)
  const ends = endSizes(hole, rise, mm, thread, holeToEndFor(hole, thread.major, 0.5), 0.5)
  return { hole, rise, thread, stock, ends }
}

describe('square blank, hole and screw', () => {
  // Worked scenario, derived; threads ISO 68-1 and ASME B1.1, tap drills ISO 2306 and the 75 % chart, screws ISO 4029 and ASME B18.3.
  // [blank, hole, least bar, screw, tap drill, rise, blank to end, screw from, to, stock length, engaged over its diameter, threads]
  test.each([
    [1 / 8, 0.175564, 0.2701, '#4-40', 0.089, 0.064655, 0.178807, 0.1274, 0.1591, 5 / 32, 1.15, 5.2],
    [3 / 16, 0.26177, 0.374, '#8-32', 0.136, 0.09591, 0.242666, 0.1705, 0.223, 3 / 16, 0.9, 4.7],
    [1 / 4, 0.347977, 0.4971, '#10-32', 0.159, 0.127163, 0.280522, 0.2032, 0.2608, 1 / 4, 1.05, 6.4],
    [5 / 16, 0.434184, 0.6203, '1/4-28', 0.213, 0.158415, 0.352377, 0.263, 0.3327, 5 / 16, 1.0, 7.0],
    [3 / 8, 0.520391, 0.7434, '5/16-24', 0.272, 0.189666, 0.426732, 0.3249, 0.407, 3 / 8, 0.96, 7.2],
  ])('%d in blank', (size, hole, bar, screw, drill, rise, toEnd, from, to, length, engaged, threads) => {
    const { ends, ...made } = end(size, screw, k)
    expect(made.hole / k).toBeCloseTo(hole, 6)
    expect(Math.abs(leastBar(made.hole) / k - bar)).toBeLessThan(6e-5)
    expect(made.thread.tapDrill.diameter / k).toBeCloseTo(drill, 4)
    expect(made.rise / k).toBeCloseTo(rise, 6)
    expect(ends.bitToEnd / k).toBeCloseTo(toEnd, 6)
    expect(Math.abs(ends.screwLeast / k - from)).toBeLessThan(6e-5)
    expect(Math.abs(ends.screwMost / k - to)).toBeLessThan(6e-5)
    expect(made.stock.lengths.some((stock) => Math.abs(stock - length * k) < 1e-6)).toBe(true)
    expect((length * k - ends.open) / made.thread.major).toBeCloseTo(engaged, 2)
    expect((length * k - ends.open) / made.thread.pitch).toBeCloseTo(threads, 1)
  })

  test.each([
    [3, 4.217934, 6.618, 'M2.5', 2.05, 1.554708, 4.163675, 2.664, 3.664, 3, 0.93, 5.2],
    [4, 5.597246, 7.997, 'M3', 2.5, 2.054821, 4.853444, 3.253, 4.353, 4, 1.05, 6.3],
    [5, 6.976557, 9.967, 'M4', 3.3, 2.55489, 6.043168, 4.243, 5.543, 5, 0.99, 5.7],
    [6, 8.355869, 11.937, 'M5', 4.2, 3.054936, 7.23287, 5.233, 6.733, 6, 0.95, 6.0],
    [8, 11.114491, 15.878, 'M6', 5.0, 4.054994, 8.61224, 6.412, 8.112, 8, 1.06, 6.4],
    [10, 13.873114, 19.819, 'M8', 6.8, 5.05503, 10.991587, 8.392, 10.492, 10, 1.0, 6.4],
  ])('%d mm blank', (size, hole, bar, screw, drill, rise, toEnd, from, to, length, engaged, threads) => {
    const { ends, ...made } = end(size, screw, 1)
    expect(made.hole).toBeCloseTo(hole, 6)
    expect(Math.abs(leastBar(made.hole) - bar)).toBeLessThan(6e-4)
    expect(made.thread.tapDrill.diameter).toBeCloseTo(drill, 6)
    expect(made.rise).toBeCloseTo(rise, 6)
    expect(ends.bitToEnd).toBeCloseTo(toEnd, 6)
    expect(Math.abs(ends.screwLeast - from)).toBeLessThan(6e-4)
    expect(Math.abs(ends.screwMost - to)).toBeLessThan(6e-4)
    expect(made.stock.lengths).toContain(length)
    expect((length - ends.open) / made.thread.major).toBeCloseTo(engaged, 2)
    expect((length - ends.open) / made.thread.pitch).toBeCloseTo(threads, 1)
  })

  it('6 mm blank, M5: what a blind bore must give beyond the keyway', () => {
    // Worked scenario, derived: overtravel 1, end 7.232870, 0.5 to spare.
    expect(1 + end(6, 'M5', 1).ends.bitToEnd + 0.5).toBeCloseTo(8.73287, 6)
  })
})

describe('hole and bar', () => {
  it('weakens the bar by its share', () => {
    // Worked scenario, derived: [blank, bar, share].
    expect(holeFor('square', 0.25 * k, (0.25 * k) / 40) / (0.625 * k)).toBeCloseTo(0.556764, 6)
    expect(holeFor('square', 6, 0.15) / 16).toBeCloseTo(0.522242, 6)
    expect(holeFor('square', 6, 0.15) / 14).toBeCloseTo(0.596848, 6)
    expect(holeFor('square', 3, 0.075) / 7).toBeCloseTo(0.602562, 6)
    expect(holeFor('round', 3, 0) / 7).toBeCloseTo(0.435714, 6)
  })

  it('6 mm bore, 4.5 bar: a square 2 mm blank leaves too little, a round one enough', () => {
    // Worked scenario, derived.
    const square = holeFor('square', 2, 0.05)
    expect(square / 4.5).toBeCloseTo(0.630805, 6)
    expect((4.5 - square) / 2).toBeCloseTo(0.830689, 6)
    expect(leastBar(square)).toBeGreaterThan(4.5)
    const round = holeFor('round', 2, 0)
    expect(round).toBeCloseTo(2.05, 12)
    expect(round / 4.5).toBeCloseTo(0.455556, 6)
    expect((4.5 - round) / 2).toBeCloseTo(1.225, 12)
    expect(leastBar(round)).toBeLessThan(4.5)
  })

  it('sharp corners need the blank’s whole diagonal', () => {
    expect(holeFor('square', 6, 0)).toBeCloseTo(6 * Math.SQRT2 + 0.08, 12)
  })

  it('holds by four threads where the thread is coarse, by its diameter where it is fine', () => {
    expect(leastEngaged(4, 0.7)).toBeCloseTo(3.2, 12)
    expect(leastEngaged(2.5, 0.7)).toBeCloseTo(2.8, 12)
  })

  it('a round bit lies on the hole’s own top', () => {
    expect(seatRise('round', 6, 0, 6.05)).toBeCloseTo(3.025, 12)
  })
})
