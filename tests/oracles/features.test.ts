import fc from 'fast-check'
import polygonClipping, { type Pair, type Polygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { touchOffX } from '../../src/dimensions/bore.ts'
import { engagedAt } from '../../src/dimensions/engaged.ts'
import { changeDepth, grooveArea, grooveHalf } from '../../src/dimensions/round-nose.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import type { Section } from '../../src/dimensions/types.ts'
import { halfFlat, heightOfV, mouthHalfOfV, setBackOf, vertexOf } from '../../src/dimensions/v-nose.ts'
import { largestBar, projectionLeast, projectionMost, type Setting } from '../../src/dimensions/window.ts'
import { findingsOf, sizesOf } from '../../src/design.ts'
import { specOf } from '../dimensions/designed.ts'
import { bisected } from './curves.ts'
import { runs, seed } from './runs.ts'
import { flatNose, gapByRays, type Nose, outlineInMetal, roundNose, touchByWalking, veeNose } from './noses.ts'

// The same cases every time; take the seed out to look for new ones.
fc.configureGlobal({ seed: seed(29), endOnFailure: true })

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A socket in a bore a little over its flats. */
const sockets = fc
  .record({
    sides: fc.constantFrom(3, 4, 5, 6, 8),
    bore: between(8, 60),
    over: between(0.05, 0.7),
    tip: between(0, 0.02),
    bar: between(0.35, 0.75),
    clearance: between(0.01, 0.02),
  })
  .map(({ sides, bore, over, tip, bar, clearance }) => {
    // Between flats as large as the bore and corners no farther than it.
    const across = bore * (1 - over * (1 - Math.cos(Math.PI / sides)))
    return { sides, radius: bore / 2, flat: across / 2, tip: tip * bore, bar: bar * bore, c: clearance * bore }
  })
type Socketed = typeof sockets extends fc.Arbitrary<infer Each> ? Each : never

const veeOf = ({ sides, tip, flat, radius }: Socketed): Nose =>
  veeNose(Math.PI / 2 - Math.PI / sides, tip, 2.02 * mouthHalfOfV(sides, flat, radius))
const settingOf = ({ sides, radius, flat, tip, c }: Socketed): Setting => ({
  radius,
  floor: vertexOf(sides, flat) - setBackOf(sides, tip),
  noseWidth: 2 * tip,
  cornerRadius: tip,
  offset: 0,
  clearances: { back: c, front: c, withdrawn: c },
  chipRoom: 0,
  opening: { half: mouthHalfOfV(sides, flat, radius), flank: { sides, flat } },
})

const grooves = fc
  .record({
    bore: between(8, 80),
    nose: between(0.03, 0.12),
    depth: between(0.3, 1.6),
    bar: between(0.4, 0.85),
    clearance: between(0.005, 0.02),
  })
  .map(({ bore, nose, depth, bar, clearance }) => ({
    radius: bore / 2,
    nose: nose * bore,
    depth: depth * nose * bore,
    bar: bar * bore,
    c: clearance * bore,
  }))
type Grooved = typeof grooves extends fc.Arbitrary<infer Each> ? Each : never
const grooveSetting = ({ radius, nose, depth, c }: Grooved): Setting => ({
  radius,
  floor: radius + depth,
  noseWidth: 2 * nose,
  cornerRadius: nose,
  offset: 0,
  clearances: { back: c, front: c, withdrawn: c },
  chipRoom: 0,
  opening: { half: grooveHalf(radius, nose, depth) },
})

/** Least gap ahead all the way from touch to floor. */
const aheadAllTheWay = (setting: Setting, nose: Nose, projection: number, bar: number, steps = 8): number => {
  const { radius, floor } = setting
  const touch = touchOffX(radius, setting.noseWidth, setting.cornerRadius)
  return Math.min(
    ...Array.from({ length: steps + 1 }, (_, n) => {
      const x = touch + ((floor - touch) * n) / steps
      return gapByRays(radius, nose, x, [x - projection - bar / 2, 0], bar, 'ahead')
    }),
  )
}

const windowHolds = (setting: Setting, nose: Nose, bar: number): void => {
  const { radius, clearances } = setting
  const least = projectionLeast(setting, bar)
  const near = 2e-4 * radius
  const ahead = aheadAllTheWay(setting, nose, least, bar)
  expect(ahead).toBeGreaterThan(clearances.front - near)
  // No closer than asked, and no farther either, unless the nose itself must stand out so far.
  if (least > clearances.front + 1e-9) expect(ahead).toBeLessThan(clearances.front + near)
  const most = projectionMost(setting, bar)
  const back = touchOffX(radius, setting.noseWidth, setting.cornerRadius) - clearances.withdrawn
  const behind = gapByRays(radius, nose, back, [back - most - bar / 2, 0], bar, 'behind')
  expect(Math.abs(behind - clearances.back)).toBeLessThan(near)
}

describe('the window of a V in a socket’s corner', () => {
  it('keeps its clearances by rays, from touch to floor', () => {
    fc.assert(
      fc.property(sockets, (each) => windowHolds(settingOf(each), veeOf(each), each.bar)),
      { numRuns: 40 },
    )
  })

  it('ends with the largest bar', () => {
    fc.assert(
      fc.property(sockets, (each) => {
        const setting = settingOf(each)
        const most = largestBar(setting)
        const room = (bar: number) => projectionMost(setting, bar) - projectionLeast(setting, bar)
        expect(most).toBeGreaterThan(0)
        expect(room(most * 0.9999)).toBeGreaterThanOrEqual(0)
        expect(room(most * 1.0001)).toBeLessThan(0)
      }),
      { numRuns: 300 },
    )
  })

  it('touches with its tip', () => {
    fc.assert(
      fc.property(sockets, (each) => {
        expect(touchOffX(each.radius, 2 * each.tip, each.tip)).toBeCloseTo(
          touchByWalking(each.radius, veeOf(each), each.radius / 3),
          6,
        )
      }),
      { numRuns: 40 },
    )
  })
})

describe('the window of a round nose', () => {
  it('keeps its clearances by rays, from touch to floor', () => {
    fc.assert(
      fc.property(grooves, (each) => windowHolds(grooveSetting(each), roundNose(each.nose), each.bar)),
      { numRuns: 40 },
    )
  })

  it('touches at the crown', () => {
    fc.assert(
      fc.property(grooves, ({ radius, nose }) => {
        expect(touchByWalking(radius, roundNose(nose), nose)).toBeCloseTo(touchOffX(radius, 2 * nose, nose), 6)
      }),
      { numRuns: 40 },
    )
  })
})

/** A section with no more in it than the engaged edge is asked of. */
const bare = (radius: number, more: Partial<Section>) => ({ boreRadius: radius, ...more }) as Section

describe('the edge in the metal', () => {
  it('of a V, by walking its outline', () => {
    fc.assert(
      fc.property(sockets, between(0.02, 1), (each, part) => {
        const { sides, radius, flat, tip } = each
        const { floor } = settingOf(each)
        const x = radius + (floor - radius) * part
        const width = 2.2 * mouthHalfOfV(sides, flat, radius)
        const walked = outlineInMetal(radius, veeNose(Math.PI / 2 - Math.PI / sides, tip), x, width / 2)
        const section = bare(radius, { cornerRadius: tip, floor, socket: { sides } as NonNullable<Section['socket']> })
        const { edge, chip } = engagedAt(section, { width }, x)
        expect(Math.abs(edge - walked.edge)).toBeLessThan(2e-3 * radius)
        expect(Math.abs(edge * chip - walked.across)).toBeLessThan(2e-3 * radius)
      }),
      { numRuns: 40 },
    )
  })

  it('of a round nose, by walking its outline', () => {
    fc.assert(
      fc.property(grooves, between(0.02, 1), ({ radius, nose, depth }, part) => {
        const x = radius + depth * part
        const walked = outlineInMetal(radius, roundNose(nose), x, nose)
        const section = bare(radius, { groove: { radius: nose } as NonNullable<Section['groove']> })
        const { edge, chip } = engagedAt(section, { width: 2 * nose }, x)
        // Deeper, its sides run straight back and cut nothing: the walk across leaves them out.
        expect(Math.abs(edge - walked.edge)).toBeLessThan(5e-3 * radius)
        expect(Math.abs(edge * chip - walked.across)).toBeLessThan(5e-3 * radius)
      }),
      { numRuns: 40 },
    )
  })

  it('of a flat nose beside slots already cut, and of one that comes out through a wall, by sampling', () => {
    const cases = fc.record({
      radius: between(4, 40),
      share: between(0.1, 0.4),
      off: between(-0.4, 0.4),
      cut: between(-0.5, 0.5),
      x: between(0.85, 1.25),
      wall: between(0.1, 0.3),
      slit: fc.boolean(),
    })
    fc.assert(
      fc.property(cases, ({ radius, share, off, cut, x: of, wall, slit }) => {
        const width = share * radius
        const offset = slit ? 0 : off * radius * 0.4
        const x = of * radius
        const outside = radius * (1 + wall)
        const strips: readonly (readonly [number, number])[] = slit
          ? []
          : [[offset + cut * width - 0.2 * width, offset + cut * width + 0.2 * width]]
        const section = bare(radius, slit ? { slit: { outside: 2 * outside } as NonNullable<Section['slit']> } : {})
        const samples = 20000
        let inMetal = 0
        for (let n = 0; n < samples; n++) {
          const y = offset - width / 2 + (width * (n + 0.5)) / samples
          const away = Math.hypot(x, y)
          if (away > radius && (!slit || away < outside) && !strips.some(([a, b]) => y > a && y < b)) inMetal += 1
        }
        const { edge } = engagedAt(section, { width, offset, cut: strips }, x)
        expect(Math.abs(edge - (width * inMetal) / samples)).toBeLessThan(2e-3 * width)
      }),
      { numRuns: 60 },
    )
  })
})

const ring = (points: readonly Pair[]): Polygon => [[...points, points[0] ?? [0, 0]]]
const disc = (radius: number, facets = 2000): Polygon =>
  ring(
    Array.from({ length: facets }, (_, n): Pair => {
      const angle = (2 * Math.PI * n) / facets
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    }),
  )
const areaOf = (shape: readonly (readonly (readonly Pair[])[])[]): number =>
  shape.reduce(
    (sum, polygon) =>
      sum +
      polygon.reduce(
        (part, points) =>
          part +
          points.reduce((all, [x, y], n) => {
            const [nx, ny] = points[(n + 1) % points.length] ?? [x, y]
            return all + (x * ny - nx * y) / 2
          }, 0),
        0,
      ),
    0,
  )
const socketOf = (sides: number, across: number, bore: number, tip = 0) =>
  sectionOf(
    specOf({
      units: 'mm',
      bore: { diameter: bore, tolerance: [0, 0], length: 20 },
      feature: { socket: { sides, across, tip } },
    }),
  ).sizes

describe('a finished socket, by rays from its axis', () => {
  it.each([
    [4, 12, 12.5, 0],
    [6, 14, 14.4, 0],
    [3, 12, 13, 0],
    [8, 20, 20.2, 0],
    [4, 12, 12.5, 0.3],
    [6, 14, 14.4, 0.4],
  ])('%d sides of %d in a bore of %d, tip %d', (sides, across, bore, tip) => {
    const section = socketOf(sides, across, bore, tip)
    const nose = veeNose(Math.PI / 2 - Math.PI / sides, tip)
    const half = Math.PI / sides
    const rays = 20000
    let [taken, missing, over] = [0, 0, 0]
    for (let n = 0; n < rays; n++) {
      // One corner: half a side on either hand of it.
      const angle = ((n + 0.5) / rays) * 2 * half - half
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const made = bisected(0, 2 * bore, (t) => t <= bore / 2 || nose([t * c, t * s], section.floor), 50)
      const wanted = Math.max(bore / 2, across / 2 / Math.cos(half - Math.abs(angle)))
      const share = half / rays
      taken += share * (made ** 2 - (bore / 2) ** 2)
      missing += share * Math.max(0, wanted ** 2 - made ** 2)
      over = Math.max(over, made - wanted)
    }
    expect(over).toBeLessThan(1e-9)
    expect(missing).toBeCloseTo(tip ** 2 * (Math.tan(half) - half), 4)
    expect(taken).toBeCloseTo(section.area, 4)
  })
})

describe('a groove, clipped', () => {
  it('has the mouth and the area that are worked out', () => {
    fc.assert(
      fc.property(grooves, ({ radius, nose, depth }) => {
        const half = grooveHalf(radius, nose, depth)
        const inside = (y: number) => roundNose(nose)([Math.sqrt(radius ** 2 - y ** 2), y], radius + depth)
        expect(half).toBeCloseTo(bisected(0, nose * 1.2, inside), 8)
        const centre = radius + depth - nose
        const arc = Array.from({ length: 2001 }, (_, n): Pair => {
          const angle = (Math.PI * (n - 1000)) / 2000
          return [centre + nose * Math.cos(angle), nose * Math.sin(angle)]
        })
        const shape = ring([[0, -nose], ...arc, [0, nose]])
        const taken = areaOf(polygonClipping.difference(shape, disc(radius)))
        expect(Math.abs(taken - grooveArea(radius, nose, depth))).toBeLessThan(1e-4 * radius ** 2)
        const whole = changeDepth(radius, nose)
        expect(grooveHalf(radius, nose, whole * 1.0001)).toBeCloseTo(nose, 8)
        expect(grooveHalf(radius, nose, whole * 0.999)).toBeLessThan(nose)
      }),
      { numRuns: 30 },
    )
  })
})

describe('a spline', () => {
  const splines = fc.record({
    count: fc.integer({ min: 3, max: 16 }),
    bore: between(11, 90),
    share: between(0.25, 0.8),
    rise: between(0.03, 0.12),
  })
  const made = ({ count, bore, share, rise }: { count: number; bore: number; share: number; rise: number }) => {
    const width = share * bore * Math.sin(Math.PI / count)
    const over = bore * (1 + 2 * rise)
    const section = sectionOf(
      specOf({
        units: 'mm',
        bore: { diameter: bore, tolerance: [0, 0], length: 20 },
        feature: { spline: { count, width, major: over } },
      }),
    ).sizes
    if (!section.spline) throw new Error('no spline')
    return { section, spline: section.spline, width, radius: bore / 2 }
  }

  it('clears the mating tooth with the largest corner it allows, and with none larger', () => {
    fc.assert(
      fc.property(splines, (each) => {
        const { section, spline, width } = made(each)
        const half = width / 2
        // The tooth: round tip, straight flanks; does all of its tip lie in the nose at the floor?
        const clears = (corner: number) => {
          const nose = flatNose(width, corner)
          return Array.from({ length: 2001 }, (_, n) => (half * (1 - 1e-9) * n) / 2000).every((y) =>
            nose([Math.sqrt(spline.toothReach ** 2 - y ** 2), y], section.floor),
          )
        }
        const most = bisected(0, half, clears, 30)
        // The flank's own end is the closed form's only point: true to the tip.
        expect(spline.cornerMost).toBeLessThanOrEqual(most + 1e-4)
        if (spline.cornerMost < half) {
          const [end] = [Math.sqrt(spline.toothReach ** 2 - half ** 2)]
          expect(section.floor - spline.cornerMost).toBeCloseTo(end, 8)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('has its land by sampling round the bore, and its greatest count by trying', () => {
    fc.assert(
      fc.property(splines, (each) => {
        const { section, spline, width, radius } = made(each)
        const samples = 40000
        let land = 0
        for (let n = 0; n < samples; n++) {
          const angle = (2 * Math.PI * n) / samples
          const inSlot = section.at.some((at) => {
            const a = angle - (at * Math.PI) / 180
            return Math.cos(a) > 0 && Math.abs(radius * Math.sin(a)) < width / 2
          })
          if (!inSlot) land += 1
        }
        const arc = (2 * Math.PI * radius * land) / samples / each.count
        expect(Math.abs(spline.landArc - arc)).toBeLessThan(2e-3 * radius)
        const room = (count: number) => Math.sin(Math.PI / count) * radius > width / 2
        let most = 2
        while (room(most + 1)) most += 1
        expect(spline.countMost).toBe(most)
      }),
      { numRuns: 20 },
    )
  })
})

const slitted = (bore: number, outside: number, width: number) =>
  sectionOf(
    specOf({
      units: 'mm',
      bore: { diameter: bore, tolerance: [0, 0], length: 20 },
      feature: { slit: { width, count: 3, outside } },
    }),
  ).sizes

describe('a slit', () => {
  it('comes out where its corners do, by walking', () => {
    fc.assert(
      fc.property(between(8, 60), between(0.05, 0.3), between(0.05, 0.3), (bore, wall, share) => {
        const outside = bore * (1 + 2 * wall)
        const section = slitted(bore, outside, share * bore)
        const out = bisected(0, outside, (x) => Math.hypot(x, (share * bore) / 2) <= outside / 2)
        expect(section.slit?.breakOut).toBeCloseTo(out, 8)
        expect(section.slit?.web).toBeCloseTo(outside / 2 - out, 8)
        expect(section.touchOff).toBeCloseTo(touchByWalking(bore / 2, flatNose(share * bore, 0), (share * bore) / 2), 6)
      }),
      { numRuns: 30 },
    )
  })
})

describe('whole jobs, by rays', () => {
  const kinds = fc.constantFrom('spline' as const, 'socket' as const, 'slit' as const, 'groove' as const)
  const jobs = fc
    .record({
      kind: kinds,
      units: fc.constantFrom('mm' as const, 'in' as const),
      bore: between(8, 90),
      sides: fc.constantFrom(4, 6),
      part: between(0.2, 0.8),
      play: between(0, 0.05),
      wide: between(0, 0.1),
      clearance: between(0.05, 0.3),
    })
    .map(({ kind, units, bore, sides, part, play, wide, clearance }) => {
      const mm = (size: number) => `${Math.round(size * 1e4) / 1e4} mm`
      const limits = (size: number, by: number) => [mm(size), mm(size + by)]
      const across = bore / (1 + part * (1 / Math.cos(Math.PI / sides) - 1))
      const features = {
        spline: { count: 4, width: limits(bore * 0.2, wide), major: limits(bore * (1.06 + 0.1 * part), wide) },
        socket: { sides, across: limits(across, wide * 0.3), tip: mm(0.01 * bore * part) },
        slit: { width: limits(bore * 0.12, wide), count: 3, outside: mm(bore * (1.1 + 0.1 * part)) },
        groove: { radius: mm(bore * 0.06), depth: limits(bore * 0.08 * part, wide) },
      }
      return {
        kind,
        play,
        document: {
          name: 'trial',
          units,
          bore: { diameter: mm(bore), tolerance: [mm(0), mm(play)], length: mm(bore) },
          feature: { [kind]: features[kind] },
          tooling: {
            bar: { clearance: { back: mm(clearance), front: mm(clearance), withdrawn: mm(clearance) } },
          },
        },
      }
    })

  it('keep the clearances asked at the worst corners of their limits', () => {
    let sound = 0
    fc.assert(
      fc.property(jobs, ({ kind, document }) => {
        const sized = sizesOf(specOf(document))
        const { bar, section, spec } = sized
        const findings = findingsOf(sized)
        if (!bar || bar.lanes.length > 1 || bar.stages.length > 1) return
        if (findings.some(({ rule, verdict }) => verdict === 'fail' && /projection|bar-passes/.test(rule))) return
        sound += 1
        const asked = sized.asked?.clearance ?? spec.tooling.bar?.clearance
        if (!asked) throw new Error('no bar asked for')
        const { socket, groove, cornerRadius } = section
        for (const bore of [section.bore.lower, section.bore.upper])
          for (const corner of ['lower', 'upper'] as const) {
            const radius = bore / 2
            const flats = socket ? socket.acrossFlats[corner] / 2 : 0
            const floor = socket
              ? vertexOf(socket.sides, flats) - setBackOf(socket.sides, cornerRadius)
              : groove
                ? radius + groove.depth[corner]
                : (section.slit?.target ?? section.floorLimits?.[corner] ?? 0)
            for (const width of [section.widthLimits.lower, section.widthLimits.upper]) {
              const nose = socket
                ? veeNose(Math.PI / 2 - Math.PI / socket.sides, cornerRadius, bar.noseWidth)
                : groove
                  ? roundNose(groove.radius)
                  : flatNose(width, Math.min(cornerRadius, width / 2))
              const half = socket ? radius / 3 : groove ? groove.radius : width / 2
              const near = 2e-4 * radius
              for (const by of [-bar.setting, bar.setting]) {
                const p = bar.projection + by
                const rho = bar.diameter.upper / 2
                const ahead = gapByRays(radius, nose, floor, [floor - p - rho, 0], 2 * rho, 'ahead')
                expect([kind, ahead > asked.front - near]).toEqual([kind, true])
                const back = touchByWalking(radius, nose, half) - asked.withdrawn
                const behind = gapByRays(radius, nose, back, [back - p - rho, 0], 2 * rho, 'behind')
                expect([kind, behind > asked.back - near]).toEqual([kind, true])
              }
            }
          }
      }),
      runs(9),
    )
    expect(sound).toBeGreaterThan(4)
  })

  it('V and round keep them at any corner of the limits all along the travel, and would not a little outside the window', () => {
    let [sound, under] = [0, 0]
    fc.assert(
      fc.property(jobs, between(0, 1), fc.boolean(), fc.boolean(), ({ kind, document }, along, deep, wide) => {
        if (kind !== 'socket' && kind !== 'groove') return
        const sized = sizesOf(specOf(document))
        const { bar, section, spec } = sized
        const asked = sized.asked?.clearance ?? spec.tooling.bar?.clearance
        if (!bar || !asked) return
        if (findingsOf(sized).some(({ rule, verdict }) => verdict === 'fail' && /projection|bar-passes/.test(rule)))
          return
        sound += 1
        const { socket, groove, cornerRadius } = section
        const nose = socket
          ? veeNose(Math.PI / 2 - Math.PI / socket.sides, cornerRadius, bar.noseWidth)
          : roundNose(groove?.radius ?? 0)
        const rho = bar.diameter.upper / 2
        const near = 2e-4 * section.boreRadius
        const floorIn = (radius: number, corner: 'lower' | 'upper') =>
          socket
            ? vertexOf(socket.sides, socket.acrossFlats[corner] / 2) - setBackOf(socket.sides, cornerRadius)
            : radius + (groove?.depth[corner] ?? 0)
        const touchIn = (radius: number) => touchByWalking(radius, nose, socket ? radius / 3 : (groove?.radius ?? 0))
        const ahead = (radius: number, x: number, p: number) =>
          gapByRays(radius, nose, x, [x - p - rho, 0], 2 * rho, 'ahead')
        const behind = (radius: number, p: number) => {
          const x = touchIn(radius) - asked.withdrawn
          return gapByRays(radius, nose, x, [x - p - rho, 0], 2 * rho, 'behind')
        }
        const radius = section.bore[wide ? 'upper' : 'lower'] / 2
        const [from, to] = [touchIn(radius), floorIn(radius, deep ? 'upper' : 'lower')]
        for (const p of [bar.projection - bar.setting, bar.projection + bar.setting]) {
          for (const x of [from + along * (to - from), to])
            expect([kind, x, ahead(radius, x, p) > asked.front - near]).toEqual([kind, x, true])
          expect([kind, behind(radius, p) > asked.back - near]).toEqual([kind, true])
        }
        const small = section.bore.lower / 2
        expect([kind, behind(small, bar.projectionMax + 3 * near) < asked.back]).toEqual([kind, true])
        if (bar.projectionMin <= bar.projectionFloor + 3 * near) return
        under += 1
        const deepest = floorIn(small, 'upper')
        expect([kind, ahead(small, deepest, bar.projectionMin - 3 * near) < asked.front]).toEqual([kind, true])
      }),
      runs(60),
    )
    expect(sound).toBeGreaterThan(10)
    expect(under).toBeGreaterThan(3)
  })

  it('has a V no shorter than its corner, and shoulders that stay in the bore', () => {
    let looked = 0
    fc.assert(
      fc.property(jobs, ({ kind, document }) => {
        const { bar, bit, section, spec } = sizesOf(specOf(document))
        if (!bar || !bit || !Number.isFinite(bit.noseLengthMin)) return
        looked += 1
        const back = bit.noseLength
        const floor = section.slit?.target ?? section.floorLimits?.upper ?? section.floor
        const shoulder = Math.hypot(floor - back, bar.bit.size / 2)
        const clear = section.bore.lower / 2 - (spec.tooling.bar?.clearance.back ?? 0)
        if (bar.lanes.length === 1 && bar.bit.size > bar.noseWidth)
          expect([kind, shoulder < clear]).toEqual([kind, true])
        if (section.socket) {
          expect(back).toBeGreaterThan(heightOfV(section.socket.sides, bar.noseWidth, section.cornerRadius) - 1e-9)
          expect(
            halfFlat(section.socket.sides, section.socket.acrossFlats.nominal / 2, section.boreRadius),
          ).toBeGreaterThan(0)
        }
      }),
      { numRuns: 60 },
    )
    expect(looked).toBeGreaterThan(20)
  })
})
