import { describe, expect, it } from 'vitest'
import {
  drillAtOrAbove,
  drillNamed,
  drillNames,
  fractionDrills,
  inchDrills,
  letterDrills,
  metricDrills,
  numberDrills,
} from '../../src/standards/drills.ts'
import { inch } from '../../src/standards/inch.ts'
import { drillChart } from './drill-chart.ts'

const ascends = (sizes: readonly number[]) => sizes.every((size, i) => i === 0 || size >= (sizes[i - 1] ?? 0))

describe('drills', () => {
  it('every number and letter drill is the size on the chart, exactly 25.4 to the inch', () => {
    expect(drillChart).toHaveLength(numberDrills().length + letterDrills().length)
    for (const [name, inches] of drillChart)
      expect([name, drillNamed(name)?.diameter]).toEqual([name, expect.closeTo(inches * 25.4, 9)])
  })

  it('sizes of a shop reference chart (#1 #2 #3 #4 #7 #10 #21 #25) and of two shop articles (A, Z), inches', () => {
    const printed = {
      '#1': 0.228,
      '#2': 0.221,
      '#3': 0.213,
      '#4': 0.209,
      '#7': 0.201,
      '#10': 0.1935,
      '#21': 0.159,
      '#25': 0.1495,
      A: 0.234,
      Z: 0.413,
    }
    for (const [name, inches] of Object.entries(printed))
      expect([name, (drillNamed(name)?.diameter ?? 0) / inch]).toEqual([name, expect.closeTo(inches, 9)])
  })

  it('each list rises, number drills fall with their number, letters begin where numbers end', () => {
    for (const list of [numberDrills(), letterDrills(), fractionDrills(), metricDrills(), inchDrills()])
      expect(ascends(list.map((drill) => drill.diameter))).toBe(true)
    expect(
      numberDrills()
        .map((drill) => drill.name)
        .slice(-3),
    ).toEqual(['#3', '#2', '#1'])
    expect(new Set(numberDrills().map((drill) => drill.diameter)).size).toBe(80)
    expect(letterDrills()[0]?.diameter).toBeGreaterThan(numberDrills().at(-1)?.diameter ?? 99)
    expect(inchDrills()).toHaveLength(80 + 26 + 64)
  })

  it('letter E is a quarter inch, and the fraction is met first', () => {
    expect(drillNamed('E')?.diameter).toBeCloseTo(6.35, 9)
    expect(drillAtOrAbove(6.35, inchDrills())?.name).toBe('1/4')
  })

  it('metric steps: 0.05 to 3, 0.1 to 13, 0.5 to 25', () => {
    expect(metricDrills().map((drill) => drill.diameter)).toEqual(
      expect.arrayContaining([0.5, 2.05, 2.95, 3.1, 4.2, 13, 13.5, 25]),
    )
    expect(metricDrills().every((drill) => drill.name === String(drill.diameter))).toBe(true)
    expect(drillNamed('1')?.diameter).toBe(1)
    expect(drillNamed('1 in')?.diameter).toBe(25.4)
  })

  it('the next drill up: a size that is there stays, the hole is never smaller than asked', () => {
    expect(drillAtOrAbove(8.355869, metricDrills())?.name).toBe('8.4')
    expect(drillAtOrAbove(8.4, metricDrills())?.name).toBe('8.4')
    expect(drillAtOrAbove(0.26177 * inch, inchDrills())?.name).toBe('17/64')
    expect(drillAtOrAbove(0.347977 * inch, inchDrills())?.name).toBe('letter S')
    expect(drillAtOrAbove(25.5, metricDrills())).toBeUndefined()
    expect(drillAtOrAbove(5, [])).toBeUndefined()
    expect(
      drillAtOrAbove(5, [
        { name: 'b', diameter: 9 },
        { name: 'a', diameter: 6 },
      ])?.name,
    ).toBe('a')
  })

  it('names: one drill each, and none for what is no drill', () => {
    expect(new Set(drillNames()).size).toBe(drillNames().length)
    for (const name of drillNames()) expect(drillNamed(name)?.name).toBe(name)
    expect(['#81', '#0', 'AA', '65/64', '', '8.45'].map(drillNamed)).toEqual(Array(6).fill(undefined))
  })
})
