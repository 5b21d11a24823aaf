import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Edge } from '../../src/plan/engaged.ts'
import { type EvenForce, evenPasses, evenUpTo, largestChip, passesFor } from '../../src/plan/schedule.ts'

/** Width of a sharp nose in the metal, counted on a grid of strips across it: shares nothing with the closed form. */
const byStrips = (radius: number, from: number, to: number, x: number, strips = 4000): number => {
  const each = (to - from) / strips
  let inMetal = 0
  for (let n = 0; n < strips; n++) {
    const y = from + (n + 0.5) * each
    if (x * x + y * y > radius * radius) inMetal++
  }
  return inMetal * each
}

const sharp = (radius: number, width: number): Edge => ({
  engaged: (x) => (x >= radius ? width : Math.max(0, width - 2 * Math.sqrt(radius ** 2 - x ** 2))),
  whole: width,
})
const job = (radius: number, width: number, planned: number, exponent = 0.21): EvenForce => ({
  edge: sharp(radius, width),
  whole: width,
  planned,
  exponent,
})
const touch = (radius: number, width: number) => Math.sqrt(radius ** 2 - (width / 2) ** 2)

describe('passes of one infeed', () => {
  it('counts a rest as a pass, and none for a hair', () => {
    expect(passesFor(0.13, 0.001)).toBe(130)
    expect(passesFor(0.1301, 0.001)).toBe(131)
    expect(passesFor(0, 0.001)).toBe(0)
  })
})

describe('passes of even force', () => {
  // Derived: 1 in bore, 1/4 in key; 25 mm, 8 × 7; 10 mm, 4 × 4; whole nose, sharp corners, exponent 0.21.
  it.each([
    ['1 in, 1/4', 0.5, 0.25, 0.614123, 0.001, 130, 123],
    ['25 mm, 8', 12.5, 8, 15.8, 0.02, 198, 183],
    ['10 mm, 4', 5, 4, 6.8, 0.02, 111, 102],
  ])('%s: fewer than at one infeed', (_, radius, width, floor, planned, alike, even) => {
    // The first floor is rounded to a millionth.
    expect(passesFor(floor - touch(radius, width) - 1e-6, planned)).toBe(alike)
    expect(evenPasses(job(radius, width, planned), touch(radius, width), floor)).toHaveLength(even)
  })

  it('one by one they are the largest that a grid of strips and a fine search find', () => {
    const [radius, width, planned, exponent] = [12.5, 8, 0.02, 0.21]
    const cap = width * planned ** (1 - exponent)
    let x = touch(radius, width)
    for (const stop of evenPasses(job(radius, width, planned), x, 12.7)) {
      let chip = 0
      // Coarse to fine, up to twice the planned.
      for (const step of [1e-3, 1e-4, 1e-5, 1e-6])
        while (
          chip + step <= 2 * planned + 1e-12 &&
          byStrips(radius, -width / 2, width / 2, x + chip + step) * (chip + step) ** (1 - exponent) <= cap
        )
          chip += step
      expect(Math.abs(stop - x - chip)).toBeLessThan(stop === 12.7 ? planned : 3e-5)
      x = stop
    }
  })

  it('never ask more than the cap nor take more than twice, and end exactly where they shall', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.double({ min: 0.005, max: 0.06, noNaN: true }),
        fc.double({ min: 0.18, max: 0.3, noNaN: true }),
        (radius, share, deep, planned, exponent) => {
          const width = 2 * radius * share
          const force = job(radius, width, planned, exponent)
          const from = touch(radius, width)
          const floor = radius * (1 + deep)
          const stops = evenPasses(force, from, floor)
          expect(stops.at(-1)).toBe(floor)
          const cap = width * planned ** (1 - exponent)
          stops.forEach((stop, n) => {
            const chip = stop - (stops[n - 1] ?? from)
            expect(chip).toBeGreaterThan(0)
            // The last may take the hair that is no pass of its own.
            const hair = n === stops.length - 1 ? 1e-3 * planned : 0
            expect(chip).toBeLessThanOrEqual(2 * planned + hair + 1e-9)
            expect(force.edge.engaged(stop) * (chip - hair) ** (1 - exponent)).toBeLessThanOrEqual(cap * (1 + 1e-9))
          })
          expect(stops.length).toBeLessThanOrEqual(passesFor(floor - from, planned) + 1)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('a strip beside a lane that stands is taken at twice the infeed where half the nose cuts', () => {
    const half: Edge = { engaged: () => 4, whole: 4 }
    const strip = { edge: half, whole: 8, planned: 0.02, exponent: 0.21 }
    // 2^(1/0.79) is more than 2.
    expect(largestChip(strip, 13)).toBeCloseTo(0.04, 12)
    expect(largestChip({ ...strip, whole: 4 }, 13)).toBeCloseTo(0.02, 12)
    expect(largestChip({ ...strip, whole: 6 }, 13)).toBeCloseTo(0.02 * 1.5 ** (1 / 0.79), 9)
  })

  it('says how far a chip may go on: where engaged × chip^(1 − m) meets the cap', () => {
    const force = job(12.5, 8, 0.02)
    const up = evenUpTo(force, touch(12.5, 8), 15.8, 0.04)
    // Closed form: w − 2√(R² − x²) = w / 2^(1 − m).
    expect(up).toBeCloseTo(Math.sqrt(12.5 ** 2 - (4 * (1 - 2 ** -0.79)) ** 2), 9)
    expect(evenUpTo(force, touch(12.5, 8), 15.8, 0.02)).toBe(15.8)
  })
})
