import { describe, expect, it } from 'vitest'
import { inch, poundForce } from '../../src/standards/inch.ts'
import { inchSetScrews, metricSetScrews, setScrewFor } from '../../src/standards/set-screws.ts'
import { metricThreads, threadNamed, threadNames, unifiedThreads } from '../../src/standards/threads.ts'
import { threadChart } from './thread-chart.ts'

const threads = [...metricThreads.rows, ...unifiedThreads.rows]

describe('threads', () => {
  it('minor diameters and tap drills are those of the charts', () => {
    for (const [name, minor, tap] of threadChart) {
      const thread = threadNamed(name)
      const unit = thread?.system === 'metric' ? 1 : inch
      expect([name, (thread?.minorInternal ?? 0) / unit, (thread?.tapDrill.diameter ?? 0) / unit]).toEqual([
        name,
        expect.closeTo(minor, thread?.system === 'metric' ? 2 : 3),
        expect.closeTo(tap, 4),
      ])
    }
    expect(threads).toHaveLength(threadChart.length + 4)
  })

  it.each(threads)('$name: the tap drill leaves 66 to 81 % of thread, (major − drill) / 1.299 pitch', (thread) => {
    const share = (thread.major - thread.tapDrill.diameter) / (1.299 * thread.pitch)
    expect(share).toBeGreaterThan(0.66)
    expect(share).toBeLessThan(0.81)
    // The drill is no smaller than the basic minor diameter of the nut, to a twentieth of the pitch.
    expect(thread.tapDrill.diameter).toBeGreaterThan(thread.minorInternal - 0.05 * thread.pitch)
    expect(thread.minorInternal).toBeCloseTo(thread.major - 1.082532 * thread.pitch, 5)
    expect(threadNamed(thread.name)).toBe(thread)
  })

  it('1/4-20 with #7: 75.4 %; M6 with 5.0: 77.0 % (ISO 68-1 geometry)', () => {
    const share = (name: string) => {
      const thread = threadNamed(name)
      return thread && ((thread.major - thread.tapDrill.diameter) / (0.75 * Math.sqrt(3) * thread.pitch)) * 100
    }
    expect(share('1/4-20')).toBeCloseTo(75.4, 1)
    expect(share('M6')).toBeCloseTo(77, 1)
  })

  it('M1.6, #0 and #1 (from memory) sit in line: number sizes step by .013 in, M1.6 × 0.35 takes 1.25', () => {
    expect(threadNamed('M1.6')).toMatchObject({ major: 1.6, pitch: 0.35, tapDrill: { name: '1.25', diameter: 1.25 } })
    expect((threadNamed('#0-80')?.major ?? 0) / inch).toBeCloseTo(0.06, 9)
    expect((threadNamed('#1-72')?.major ?? 0) / inch).toBeCloseTo(0.073, 9)
    expect((threadNamed('#10-32')?.major ?? 0) / inch).toBeCloseTo(0.19, 9)
    expect((threadNamed('#12-24')?.major ?? 0) / inch).toBeCloseTo(0.216, 9)
  })

  it('names and callouts', () => {
    expect(threadNamed('M5')?.callout).toBe('M5-6H')
    expect(threadNamed('#10-32')).toMatchObject({ callout: '#10-32 UNF-2B', size: '#10', system: 'inch' })
    expect(threadNamed('1/4-20 UNC')?.callout).toBe('1/4-20 UNC-2B')
    expect(threadNamed('M5x0.8')?.name).toBe('M5')
    expect(['M7', '#10', '1/4', '#10-28', '', 'M5x1'].map(threadNamed)).toEqual(Array(6).fill(undefined))
    expect(new Set(threadNames()).size).toBe(threadNames().length)
  })
})

describe('set screws', () => {
  it.each(threads.filter((thread) => !['M3.5', '#12'].includes(thread.size)))(
    '$name has a screw, whose point and key are smaller than its core',
    (thread) => {
      const screw = setScrewFor(thread.name)
      expect(screw?.size).toBe(thread.size)
      if (!screw) return
      expect(screw.cupPoint).toBeLessThan(thread.minorInternal)
      expect(screw.hexKey).toBeLessThan(0.72 * thread.major)
      expect(screw.lengths.length).toBeGreaterThan(3)
      // The shortest is no longer than the screw is thick, the longest at least twice that.
      expect(screw.lengths[0]).toBeLessThan(1.6 * thread.major)
      expect(screw.lengths.at(-1)).toBeGreaterThan(2 * thread.major)
      expect(screw.lengths).toEqual(screw.lengths.toSorted((a, b) => a - b))
    },
  )

  it('M3.5 and #12 have taps but no set screw: neither standard makes them', () => {
    expect(['M3.5', '#12-24', '#12-28'].map(setScrewFor)).toEqual([undefined, undefined, undefined])
  })

  it('points, keys and torques rise with the size', () => {
    for (const { rows } of [metricSetScrews, inchSetScrews])
      rows.forEach((row, i) => {
        const before = rows[i - 1]
        if (!before) return
        expect(row.cupPoint).toBeGreaterThan(before.cupPoint)
        expect(row.hexKey).toBeGreaterThanOrEqual(before.hexKey)
        if (row.seatingTorque !== undefined && before.seatingTorque !== undefined)
          expect(row.seatingTorque).toBeGreaterThanOrEqual(before.seatingTorque)
        if (row.axialHolding !== undefined) expect(row.axialHolding).toBeGreaterThan(before.axialHolding ?? 0)
      })
  })

  it('ISO 4029 and ASME B18.3 as printed', () => {
    expect(setScrewFor('M5')).toMatchObject({
      cupPoint: 2.5,
      hexKey: 2.5,
      lengths: [5, 6, 8, 10, 12, 16, 20, 25],
      seatingTorque: 4000,
    })
    expect(setScrewFor('M8')).toMatchObject({ cupPoint: 5, hexKey: 4 })
    const four = setScrewFor('#4-40')
    expect(four?.lengths.map((length) => Math.round((length / inch) * 64) / 64)).toEqual([
      0.125, 0.15625, 0.1875, 0.25, 0.3125, 0.375, 0.4375, 0.5,
    ])
    expect(four?.cupPoint).toBeCloseTo(0.061 * 25.4, 9)
    expect(setScrewFor('1/4-28')?.lengths.map((length) => Math.round((length / inch) * 64) / 64)).toEqual([
      0.1875, 0.25, 0.3125, 0.375, 0.4375, 0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5,
    ])
    expect(setScrewFor('#10-24')).toBe(setScrewFor('#10-32'))
    expect(setScrewFor('M20')).toBeUndefined()
  })

  it('holding force times the shaft radius is the printed torsional holding (holding-power sheet, lbf in, cut off to tenths)', () => {
    const printed = [
      ['#0', 1 / 16, 1.5],
      ['#0', 3 / 32, 2.3],
      ['#1', 1 / 16, 2],
      ['#2', 1 / 16, 2.6],
      ['#3', 1 / 8, 7.5],
      ['#4', 1 / 8, 10],
    ] as const
    for (const [size, shaft, torsional] of printed) {
      const held = ((inchSetScrews.rows.find((row) => row.size === size)?.axialHolding ?? 0) / poundForce) * (shaft / 2)
      expect(Math.floor(held * 10 + 1e-9) / 10).toBe(torsional)
    }
  })
})
