import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { usualHoleCircles } from '../../src/standards/dividing.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import { playNeeded } from '../../src/plan/index-play.ts'
import { circleFor, crankTo, indexingOf, plateOf } from '../../src/plan/indexing.ts'
import { designed, specOf } from '../dimensions/designed.ts'

const head = { ratio: 40, circles: usualHoleCircles }
const evenly = (count: number) => Array.from({ length: count }, (_, n) => (360 * n) / count)
const indexed = (feature: object, index: object = {}, rest: object = {}) => {
  const spec = specOf({
    units: 'mm',
    bore: { diameter: 23, length: 30 },
    hub: { outside: 60 },
    feature,
    tooling: { bar: {}, index },
    ...rest,
  })
  const made = indexingOf(spec, sectionOf(spec).sizes)
  if (!made) throw new Error('one slot')
  return made.sizes
}
const spline = { spline: { standard: 'iso-14', size: '6x23x26' } }

describe('turns of the crank', () => {
  // US Army milling course and practice sheets of plain indexing; 13 worked by hand.
  it.each([
    [6, 6, 12, 18],
    [7, 5, 15, 21],
    [11, 3, 21, 33],
    [13, 3, 3, 39],
  ])('%i slots: %i turns and %i holes on %i', (count, turns, holes, circle) => {
    const chosen = circleFor(evenly(count), head)
    expect(chosen.circle).toBe(circle)
    expect(crankTo(360 / count, circle, 40)).toMatchObject({ turns, holes })
    expect(crankTo(360 / count, circle, 40).error).toBeCloseTo(0, 12)
  })

  it('7 slots go on 49 as well: 35 holes', () => {
    expect(circleFor(evenly(7), head).others).toEqual([49])
    expect(crankTo(360 / 7, 49, 40)).toMatchObject({ turns: 5, holes: 35 })
  })

  it('51.25° is 5 turns and 34 holes on 49, .306 minutes out (derived)', () => {
    const { circle, others } = circleFor([0, 51.25], head)
    expect([circle, others]).toEqual([49, []])
    const { turns, holes, error } = crankTo(51.25, circle, 40)
    expect([turns, holes]).toEqual([5, 34])
    expect(Math.abs(60 * error)).toBeCloseTo(0.306, 3)
  })

  it('no hole on any circle is nearer', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 359, noNaN: true }), (angle) => {
        const { circle } = circleFor([angle], head)
        const here = crankTo(angle, circle, 40)
        const set = ((here.turns + here.holes / circle) * 360) / 40
        expect(set - angle).toBeCloseTo(here.error, 9)
        let nearest = Infinity
        for (const each of usualHoleCircles)
          for (let hole = 0; hole <= 40 * each; hole++) nearest = Math.min(nearest, Math.abs((hole * 9) / each - angle))
        expect(Math.abs(here.error)).toBeCloseTo(nearest, 9)
      }),
      { numRuns: 40 },
    )
  })

  it('errors do not add up: every slot is counted from the first', () => {
    const { slots, error } = indexed({ spline: { count: 17, width: 2, major: 26 } })
    for (const { angle, turns, holes, error: out } of slots.slice(0, 17)) {
      const circle = circleFor(evenly(17), head).circle
      expect(((turns + holes / circle) * 9 - angle) * 60).toBeCloseTo(out, 6)
    }
    expect(error).toBeLessThanOrEqual((9 / 49 / 2) * 60)
  })
})

describe('the table of slots', () => {
  it('six splines on the usual head and a gear of 48: as worked by hand', () => {
    const { slots, gear } = indexed(spline, { gear: 48 })
    expect(gear).toEqual({ teeth: 48, step: 8 })
    expect(slots.map(({ turns, holes, tooth }) => [turns, holes, tooth])).toEqual([
      [0, 0, 0],
      [6, 12, 8],
      [13, 6, 16],
      [20, 0, 24],
      [26, 12, 32],
      [33, 6, 40],
      [40, 0, 48],
    ])
  })

  it('finds a gear on hand that every slot falls on, and none that does not', () => {
    expect(indexed(spline, {}, { shop: { gears: [40, 48, 60] } }).gear?.teeth).toBe(48)
    expect(indexed(spline, {}, { shop: { gears: [40, 50] } }).gear).toBeUndefined()
  })

  it('goes by the shop’s head, and by the spec before it', () => {
    const dividing = { ratio: 90, circles: [20] }
    expect(indexed(spline, {}, { shop: { dividing } })).toMatchObject({ ratio: 90, circle: 20 })
    expect(indexed(spline, { ratio: 60, circles: [18] }, { shop: { dividing } })).toMatchObject({
      ratio: 60,
      circle: 18,
    })
  })

  it('starts at the first angle, wherever that is', () => {
    const { slots } = indexed({ keyway: { width: 4, across: 25, at: [30, 120] } })
    expect(slots.map(({ angle }) => angle)).toEqual([0, 90, 360])
  })

  it('is not there for one slot', () => {
    const spec = specOf({
      units: 'mm',
      bore: { diameter: 23, length: 30 },
      feature: { keyway: { standard: 'iso-773' } },
    })
    expect(indexingOf(spec, sectionOf(spec).sizes)).toBeUndefined()
  })
})

describe('an own plate', () => {
  it('a hole .05 off at a radius of 60 is .047746°, .010833 mm at 13; two of them .021667 (derived)', () => {
    const { error, holes } = plateOf(evenly(6), 60, 0.05)
    expect(error).toBeCloseTo(0.047746, 6)
    expect((13 * error * Math.PI) / 180).toBeCloseTo(0.010833, 6)
    holes.forEach(({ x, y }) => expect(Math.hypot(x, y)).toBeCloseTo(60, 9))
    expect(holes[1]?.x).toBeCloseTo(30, 9)
    expect(indexed(spline, { plate: { radius: 60 } }).playNeeded).toBeCloseTo(0.021667, 5)
  })
})

describe('the play that errors ask for', () => {
  it('index errors alone: outer radius × their range; 1 minute at 13 is .003782 (derived)', () => {
    const minute = 1 / 60
    expect(playNeeded({ at: [0, 180], errors: [0, minute], radii: [11.5, 13] })).toBeCloseTo(0.003782, 6)
  })

  it('a common offset alone: offset × (x2 − x1)/mean, .1 mm on 25/8 is .026751 (derived)', () => {
    const needed = playNeeded({ at: [0], errors: [0], radii: [11.842719, 15.5], offset: 0.1 })
    expect(needed).toBeCloseTo(0.026751, 6)
  })

  /** Least play of a shaft that turns and shifts as it likes, by a linear programme solved by hand: bisect the play, and search turn and shift. */
  const searched = (
    at: readonly number[],
    errors: readonly number[],
    radii: readonly [number, number],
    eccentric: { readonly by: number; readonly to: number },
  ) => {
    const points = at.flatMap((angle, n) =>
      radii.map((r) => ({
        r,
        y: r * ((errors[n] ?? 0) * (Math.PI / 180)) + eccentric.by * Math.sin(((angle - eccentric.to) * Math.PI) / 180),
      })),
    )
    // Turned by phi alone: half play >= |y − r phi| at every point; convex in phi, so a ternary search is exact.
    const half = (phi: number) => Math.max(...points.map(({ r, y }) => Math.abs(y - r * phi)))
    let [low, high] = [-0.5, 0.5]
    for (let step = 0; step < 300; step++) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
      if (half(a) <= half(b)) high = b
      else low = a
    }
    return 2 * half((low + high) / 2)
  }

  it('is what a search over the turn of the shaft finds, whichever way the bore lies off', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 10 }),
        fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 10, maxLength: 10 }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 1.02, max: 1.4, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (count, errors, inner, share, by) => {
          const at = evenly(count)
          const radii = [inner, inner * share] as const
          const needed = playNeeded({ at, errors, radii, eccentric: by })
          const worst = Math.max(
            ...Array.from({ length: 360 }, (_, to) => searched(at, errors.slice(0, count), radii, { by, to })),
          )
          expect(worst).toBeLessThanOrEqual(needed + 1e-9)
          // A degree of direction is not exact: within its cosine.
          expect(worst).toBeGreaterThanOrEqual(needed - 2e-4 * by - 1e-9 - needed * 1e-9)
        },
      ),
      { numRuns: 12 },
    )
  })

  it('two keyways found off the middle by .1 take .026751 of it beside what the indexing takes (derived)', () => {
    const keyways = (found: object) =>
      indexed(
        { keyway: { standard: 'iso-773', at: [0, 180], ...found } },
        {},
        { bore: { diameter: 25, tolerance: [0, 0], length: 40 } },
      ).playNeeded
    expect(keyways({})).toBeCloseTo(0, 9)
    expect(keyways({ found: { offset: 0.1 } })).toBeCloseTo(0.026751, 6)
  })

  it('ISO 14: slot H9 on tooth h10, at mid-tolerance; SAE: nobody has said', () => {
    // H9 of 6: +0.030/0, h10 of 6: 0/−0.048 (ISO 286): 0.015 + 0.024.
    expect(indexed(spline).play).toBeCloseTo(0.039, 9)
    expect(indexed({ spline: { count: 6, width: 6, major: 26 } }).play).toBeUndefined()
    expect(indexed({ spline: { count: 6, width: 6, major: 26 } }, { play: 0.05 }).play).toBe(0.05)
  })

  it('is judged where somebody has said the play, or where some is needed: else there is nothing to say', () => {
    const verdict = (index: object) =>
      designed({
        units: 'mm',
        bore: { diameter: 23, length: 30 },
        hub: { outside: 60 },
        feature: { spline: { count: 6, width: 6, major: 26 } },
        tooling: { bar: {}, index },
      }).findings.find(({ rule }) => rule === 'index-fits')?.verdict
    expect(verdict({})).toBeUndefined()
    expect(verdict({ eccentric: 0.02 })).toBe('unknown')
    expect(verdict({ eccentric: 0.02, play: 0.1 })).toBe('pass')
  })
})
