import fc from 'fast-check'
import polygonClipping, { type Polygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { chamferNeeded, cornerReach, engagedWidth, sagitta, slotArea, touchOffX } from '../../src/dimensions/bore.ts'
import { seatRise } from '../../src/dimensions/cross-hole.ts'
import { sideDepthLimits } from '../../src/dimensions/section.ts'
import {
  bitLengthWindow,
  laneOffsets,
  largestBar,
  noseLengthLeast,
  projectionLeast,
  projectionMost,
  type Setting,
} from '../../src/dimensions/window.ts'
import { gap, gapsWalked, touchOff, type Walk, wallsOf, withdrawnGap } from './bore.ts'
import { arc, bisected, corners, least } from './curves.ts'

// The same cases every time; take the seed out to look for new ones.
fc.configureGlobal({ seed: 17, endOnFailure: true })

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A bore of 6 to 100 mm with a slot of a fifth to two fifths of it. */
const slots = fc
  .record({ bore: between(6, 100), share: between(0.18, 0.42), depth: between(0.05, 0.16), corner: between(0, 0.4) })
  .map(({ bore, share, depth, corner }) => {
    const width = bore * share
    return { radius: bore / 2, half: width / 2, floor: bore / 2 + bore * depth, corner: (corner * width) / 2 }
  })

describe('touch-off', () => {
  it('is where the nose’s outline meets the bore, walked out to it', () => {
    fc.assert(
      fc.property(slots, between(-1, 1), ({ radius, half, corner }, side) => {
        const nose = 1.2 * half
        const offset = 0.8 * half * side
        const round = Math.min(corner, nose / 2)
        expect(touchOffX(radius, nose, round, offset)).toBeCloseTo(touchOff(radius, nose, round, offset), 6)
      }),
      { numRuns: 300 },
    )
  })
})

describe('slot', () => {
  it('area by sampling', () => {
    for (const [radius, half, floor] of [
      [12.5, 4, 15.8],
      [5, 2, 6.8],
      [0.5, 0.125, 0.614123],
    ] as const) {
      const across = 1500
      let inside = 0
      for (let i = 0; i < across; i++)
        for (let j = 0; j < across; j++) {
          const [x, y] = [((i + 0.5) / across) * floor, ((j + 0.5) / across) * half]
          if (Math.hypot(x, y) > radius) inside++
        }
      const sampled = (2 * half * floor * inside) / across ** 2
      expect(Math.abs(slotArea(radius, half, floor) / sampled - 1)).toBeLessThan(2e-3)
    }
  })

  it('engaged width by counting what of the nose’s flat is in metal', () => {
    for (const x of [11.9, 12.1, 12.4, 12.6, 15]) {
      const points = 200_000
      let cutting = 0
      for (let i = 0; i < points; i++) if (Math.hypot(x, -4 + (8 * (i + 0.5)) / points) > 12.5) cutting++
      expect(engagedWidth(12.5, 8, x)).toBeCloseTo((8 * cutting) / points, 3)
    }
  })

  it('reach by walking its rounded floor corner', () => {
    fc.assert(
      fc.property(slots, ({ half, floor, corner }) => {
        const outline = arc([floor - corner, half - corner], corner, 0, Math.PI / 2)
        const reach = -least(outline, ([x, y]) => -Math.hypot(x, y))
        expect(cornerReach(floor, half, corner)).toBeCloseTo(reach, 8)
      }),
      { numRuns: 300 },
    )
  })

  it('height of the arc over the mouth, and narrower is lower', () => {
    fc.assert(
      fc.property(slots, ({ radius, half }) => {
        const mouth = bisected(0, radius, (x) => Math.hypot(x, half) < radius)
        expect(sagitta(radius, half)).toBeCloseTo(radius - mouth, 9)
        expect(sagitta(radius, half * 1.01)).toBeGreaterThan(sagitta(radius, half))
      }),
      { numRuns: 500 },
    )
  })

  it('depth along the wall: no corner of the limits is outside', () => {
    fc.assert(
      fc.property(slots, between(0, 0.3), between(0, 0.1), between(0, 0.3), ({ radius, half, floor }, db, dw, dt) => {
        const bore = { nominal: 2 * radius, lower: 2 * radius, upper: 2 * radius + db }
        const width = { nominal: 2 * half, lower: 2 * half - dw, upper: 2 * half + dw }
        const across = { nominal: floor + radius, lower: floor + radius, upper: floor + radius + dt }
        const depths = corners([bore.lower, bore.upper], [width.lower, width.upper], [across.lower, across.upper]).map(
          ([d = 0, w = 0, t = 0]) => {
            const mouth = bisected(0, d / 2, (x) => Math.hypot(x, w / 2) < d / 2)
            return t - d / 2 - mouth
          },
        )
        const limits = sideDepthLimits(bore, width, across)
        expect(limits.lower).toBeCloseTo(Math.min(...depths), 8)
        expect(limits.upper).toBeCloseTo(Math.max(...depths), 8)
      }),
      { numRuns: 300 },
    )
  })

  it('chamfer of the key by growing it until nothing of it is in the fillet', () => {
    fc.assert(
      fc.property(between(0.1, 1), between(0, 0.9), between(0, 0.9), (corner, topShare, sideShare) => {
        const [top, side] = [topShare * corner, sideShare * corner]
        // Slot corner at the origin, metal where both are under `corner` and farther than it from the fillet's centre. Key corner at (side, top).
        const clear = (chamfer: number) => {
          for (let step = 0; step <= 400; step++) {
            const [x, y] = [side + (chamfer * step) / 400, top + chamfer * (1 - step / 400)]
            if (x < corner && y < corner && Math.hypot(corner - x, corner - y) > corner + 1e-12) return false
          }
          // The key's sides next to the chamfer run away from the fillet: they clear if the chamfer's ends do.
          return true
        }
        const grown = clear(0) ? 0 : bisected(0, 2 * corner, (chamfer) => !clear(chamfer))
        expect(chamferNeeded(corner, top, side)).toBeCloseTo(grown, 5)
      }),
      { numRuns: 200 },
    )
  })
})

describe('bit in its hole', () => {
  it('seat of a square by sliding it up until a point of it meets the hole', () => {
    fc.assert(
      fc.property(between(2, 16), between(0, 0.12), between(0.01, 0.3), (size, share, play) => {
        const broken = size * share
        const half = size / 2
        const hole = 2 * Math.hypot(half, half - broken) + play
        // The upper half of the square's outline, its top at height `top` over the hole's centre.
        const fits = (top: number) => {
          const middle = top - half
          const points = [
            [half, middle + half - broken],
            [half - broken, middle + half],
            [0, middle + half],
            [half, middle],
          ] as const
          const chamfer = Array.from({ length: 101 }, (_, n) => {
            const along = n / 100
            return [half - broken * along, middle + half - broken * (1 - along)] as const
          })
          return [...points, ...chamfer].every(([x, y]) => Math.hypot(x, y) <= hole / 2)
        }
        expect(seatRise('square', size, broken, hole)).toBeCloseTo(bisected(half, hole, fits), 8)
      }),
      { numRuns: 300 },
    )
  })

  it('tail and shoulder by walking the blank’s corners', () => {
    fc.assert(
      fc.property(between(8, 40), between(0.2, 0.5), between(0.05, 0.4), (bar, share, under) => {
        const blank = bar * share
        const projection = 0.2 * bar
        const { most } = bitLengthWindow(projection, bar, blank, 2, under)
        const tail = (length: number) => Math.hypot(projection + bar / 2 - length, blank / 2)
        const longest = bisected(projection + bar / 2, projection + bar, (length) => tail(length) <= bar / 2 - under)
        expect(most).toBeCloseTo(longest, 8)
      }),
      { numRuns: 200 },
    )
  })
})

interface Case {
  readonly setting: Setting
  readonly bar: number
}

/** Bars of a third to nine tenths of the bore, in any lane of any nose. */
const cases: fc.Arbitrary<Case> = fc
  .record({
    slot: slots,
    lanes: fc.integer({ min: 1, max: 4 }),
    lane: fc.nat({ max: 3 }),
    bar: between(0.3, 0.93),
    back: between(0, 0.03),
    front: between(0, 0.03),
    withdrawn: between(0, 0.03),
  })
  .map(({ slot, lanes, lane, bar, back, front, withdrawn }) => {
    const width = 2 * slot.half
    const noseWidth = lanes === 1 ? width : (width * 1.15) / (lanes - 0.1)
    const offsets = laneOffsets(width, Math.min(noseWidth, width), 0.1 * noseWidth)
    return {
      bar: 2 * slot.radius * bar,
      setting: {
        radius: slot.radius,
        floor: slot.floor,
        noseWidth: Math.min(noseWidth, width),
        cornerRadius: slot.corner / 4,
        offset: offsets[lane % offsets.length] ?? 0,
        clearances: {
          back: back * slot.radius,
          front: front * slot.radius,
          withdrawn: withdrawn * slot.radius,
        },
        chipRoom: 0,
      },
    }
  })

const walkOf = ({ setting, bar }: Case, projection: number): Walk => ({
  radius: setting.radius,
  floor: setting.floor,
  noseWidth: setting.noseWidth,
  corner: setting.cornerRadius,
  offset: setting.offset,
  bar,
  projection,
  withdrawn: setting.clearances.withdrawn,
})
const walked = (each: Case, projection: number) => gapsWalked(walkOf(each, projection))

describe('window of projections, walked', () => {
  it('inside it every gap is what was asked, all along the travel', () => {
    let inside = 0
    let narrow = 0
    fc.assert(
      fc.property(cases, between(0, 1), (each, share) => {
        const { setting, bar } = each
        const [from, to] = [projectionLeast(setting, bar), projectionMost(setting, bar)]
        if (!(from <= to)) return
        inside++
        if (setting.offset !== 0) narrow++
        const { withdrawn, cutting, ahead } = walked(each, from + share * (to - from))
        const { back, front } = setting.clearances
        expect(ahead).toBeGreaterThanOrEqual(front - 1e-6)
        expect(withdrawn).toBeGreaterThanOrEqual(Math.min(back, front) - 1e-6)
        expect(cutting).toBeGreaterThanOrEqual(Math.min(back, front) - 1e-6)
      }),
      { numRuns: 3000 },
    )
    expect(inside).toBeGreaterThan(800)
    expect(narrow).toBeGreaterThan(200)
  })

  it('outside it one gap is not', () => {
    let [under, over] = [0, 0]
    fc.assert(
      fc.property(cases, (each) => {
        const { setting, bar } = each
        const [from, to] = [projectionLeast(setting, bar), projectionMost(setting, bar)]
        const { back, front } = setting.clearances
        const step = 1e-3 * setting.radius
        if (from <= to && from > step && Number.isFinite(from)) {
          under++
          expect(walked(each, from - step).cutting).toBeLessThan(front - 1e-9)
        }
        if (to > 0 && Number.isFinite(to)) {
          over++
          expect(walked(each, to + step).withdrawn).toBeLessThan(back - 1e-9)
        }
      }),
      { numRuns: 2000 },
    )
    expect(under).toBeGreaterThan(500)
    expect(over).toBeGreaterThan(500)
  })

  it('the largest bar is the largest that any projection lets through', () => {
    let looked = 0
    fc.assert(
      fc.property(cases, ({ setting: asked }) => {
        const { front } = asked.clearances
        // One clearance all round, so that it does not matter which metal is near.
        const setting = { ...asked, clearances: { back: front, front, withdrawn: front } }
        const largest = largestBar(setting)
        if (largest < 0.3 * setting.radius) return
        looked += 1
        const passes = (bar: number) => {
          // The longest nose that the back wall lets in is the one with which the front has most room.
          const longest = bisected(0, 2 * setting.radius, (p) => withdrawnGap(walkOf({ setting, bar }, p)) >= front, 32)
          return gapsWalked(walkOf({ setting, bar }, longest)).cutting >= front - 1e-6 && longest >= front - 1e-6
        }
        expect(passes(largest * (1 - 1e-3))).toBe(true)
        expect(passes(largest * (1 + 1e-3))).toBe(false)
      }),
      { numRuns: 40 },
    )
    expect(looked).toBeGreaterThan(10)
  })

  it('the least nose keeps the shoulder’s corners off the bore, and no less does', () => {
    fc.assert(
      fc.property(cases, between(0.8, 1.6), ({ setting }, wide) => {
        const shank = setting.noseWidth * wide
        const nose = noseLengthLeast(setting, shank)
        if (!Number.isFinite(nose)) return
        const off = Math.abs(setting.offset) + shank / 2
        const corner = (length: number) => setting.radius - Math.hypot(setting.floor - length, off)
        const walkedTo = bisected(setting.floor, 0, (length) => corner(length) >= setting.clearances.back)
        expect(nose).toBeCloseTo(walkedTo, 7)
      }),
      { numRuns: 300 },
    )
  })

  it('finds gaps that can be told by eye', () => {
    expect(gap(wallsOf(10), [0, 0], 12)).toBeCloseTo(4, 9)
    expect(gap(wallsOf(10), [-3, 0], 12)).toBeCloseTo(1, 9)
    expect(gap(wallsOf(10, { offset: 0, half: 3, floor: 14 }), [5, 0], 8)).toBeCloseTo(
      Math.hypot(Math.sqrt(91) - 5, 3) - 4,
      9,
    )
    expect(gap(wallsOf(10, { offset: 0, half: 5, floor: 16 }), [10, 0], 8)).toBeCloseTo(1, 9)
    expect(gap(wallsOf(10, { offset: 0, half: 5, floor: 14 }), [9, 0], 8)).toBeCloseTo(1, 9)
  })
})

describe('metal cut by areas', () => {
  const round = (x: number, y: number, radius: number, sides = 4000): Polygon => [
    Array.from({ length: sides }, (_, n) => {
      const angle = (2 * Math.PI * n) / sides
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
    }),
  ]
  const box = (x0: number, x1: number, y0: number, y1: number): Polygon => [
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
  ]
  const area = (shape: readonly (readonly (readonly (readonly [number, number])[])[])[]) =>
    shape.reduce(
      (sum, rings) =>
        sum +
        rings.reduce((part, ring, n) => {
          let twice = 0
          for (const [i, [x, y]] of ring.entries()) {
            const [nx, ny] = ring[(i + 1) % ring.length] ?? [0, 0]
            twice += x * ny - nx * y
          }
          return part + (n === 0 ? 1 : -1) * Math.abs(twice / 2)
        }, 0),
      0,
    )

  it('10 mm bore, bar 8, projection 1.9, hard against the back wall: the nose is in metal before it touches', () => {
    // Two strips between the arc and x = 4.9, by hand: .279860 mm².
    const buried = polygonClipping.difference(box(0, -5 + 8 + 1.9, -2, 2), round(0, 0, 5, 20_000))
    expect(area(buried)).toBeCloseTo(0.27986, 5)
  })

  it('under the least projection the bar cuts into the mouth; at it, it does not', () => {
    for (const [bore, width, across, bar] of [
      [25, 8, 28.3, 18],
      [10, 4, 11.8, 7],
      [50, 14, 53.8, 40],
    ] as const) {
      const [radius, floor] = [bore / 2, across - bore / 2]
      const setting: Setting = {
        radius,
        floor,
        noseWidth: width,
        cornerRadius: 0,
        offset: 0,
        clearances: { back: 0, front: 0, withdrawn: 0 },
        chipRoom: 0,
      }
      const free = polygonClipping.union(round(0, 0, radius), box(0, floor, -width / 2, width / 2))
      const overlap = (projection: number) =>
        area(polygonClipping.difference(round(floor - projection - bar / 2, 0, bar / 2), free))
      const p = projectionLeast(setting, bar)
      expect(overlap(p)).toBeLessThan(1e-5)
      expect(overlap(p + 0.05)).toBe(0)
      expect(overlap(p - 0.05)).toBeGreaterThan(1e-3)
      // Twice the shortfall, four times the metal and a little: two corners, each a triangle.
      expect(overlap(p - 0.1) / overlap(p - 0.05)).toBeGreaterThan(3)
    }
  })
})
