import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hatch } from '../../src/drawing/hatch.ts'
import { fittedDashes, styles } from '../../src/drawing/style.ts'

describe('broken lines', () => {
  it('start and end with a dash, and fill their length exactly', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('hidden' as const, 'centre' as const, 'phantom' as const),
        fc.double({ min: 0.5, max: 300, noNaN: true }),
        (kind, length) => {
          const dashes = fittedDashes(kind, length)
          if (!dashes) return
          expect(dashes.length % 2).toBe(1)
          expect(dashes.reduce((sum, dash) => sum + dash, 0)).toBeCloseTo(length, 9)
          expect(Math.min(...dashes)).toBeGreaterThanOrEqual(0.5 - 1e-9)
        },
      ),
    )
    expect(fittedDashes('visible', 50)).toBeUndefined()
  })
})

describe('hatch', () => {
  it('covers an area with lines a pitch apart, and leaves holes and texts free', () => {
    const ring = (size: number): [number, number][] => [
      [-size, -size],
      [size, -size],
      [size, size],
      [-size, size],
    ]
    const lines = hatch([ring(20), ring(8)], 45, [12, -2, 18, 2, 0.7], styles.iso)
    let length = 0
    for (const line of lines) {
      if (line.stroke !== 'line') throw new Error('hatch is lines')
      const [ax, ay] = line.from
      const [bx, by] = line.to
      length += Math.hypot(bx - ax, by - ay)
      expect((by - ay) / (bx - ax)).toBeCloseTo(1, 2)
      for (let n = 0; n <= 10; n++) {
        const [x, y] = [ax + ((bx - ax) * n) / 10, ay + ((by - ay) * n) / 10]
        expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThanOrEqual(20.001)
        expect(Math.max(Math.abs(x), Math.abs(y))).toBeGreaterThanOrEqual(7.999)
        expect(x > 11.4 && x < 18.6 && y > -2.6 && y < 2.6).toBe(false)
      }
    }
    // Area = length × pitch, pitch min(3, 40 / 8) = 3: the ring less the text's box.
    expect(length * 3).toBeGreaterThan((1600 - 256 - 7.4 * 5.4) * 0.95)
    expect(length * 3).toBeLessThan((1600 - 256 - 7.4 * 5.4) * 1.05)
  })

  it('leaves metal thinner than 2 mm plain', () => {
    expect(
      hatch(
        [
          [
            [0, 0],
            [30, 0],
            [30, 1.9],
            [0, 1.9],
          ],
        ],
        45,
        [],
        styles.iso,
      ),
    ).toEqual([])
  })
})
