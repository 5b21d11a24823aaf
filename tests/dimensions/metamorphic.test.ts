import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Design, design, type Sized, sizesOf } from '../../src/design.ts'
import { sagitta, touchOffX } from '../../src/dimensions/bore.ts'
import { halfFlat, mouthHalfOfV, setBackOf, vertexOf } from '../../src/dimensions/v-nose.ts'
import { barAxisMost, largestBar, projectionLeast, projectionMost, type Setting } from '../../src/dimensions/window.ts'
import { runs, seed } from '../oracles/runs.ts'
import { specOf } from './designed.ts'

// What must stay the same, or must move one way, when a job is said or asked for otherwise. No number here has another source.
fc.configureGlobal({ seed: seed(53), endOnFailure: true })

type Units = 'mm' | 'in'
type Write = (size: number) => string | number

const asItIs: Write = (size) => size
/** A length of the job's unit, written in the other. */
const inOther =
  (units: Units): Write =>
  (size) =>
    units === 'mm' ? `${size / 25.4} in` : `${size * 25.4} mm`

interface Job {
  readonly bore: number
  readonly length: number
  readonly feature: (write: Write) => object
  readonly bar?: (write: Write) => object
  readonly bored?: (write: Write) => object
}

/** A job of every kind of feature and every form of bar; the sizes are in the job's own unit. */
const kinds: Readonly<Record<string, (units: Units) => Job>> = {
  'keyway by hand': (units) => {
    const [bore, width, across] = units === 'mm' ? [25, 8, 28.3] : [1, 0.25, 1.114]
    return {
      bore,
      length: 1.4 * bore,
      feature: (write) => ({ keyway: { width: write(width), across: write(across), at: [0, 120] } }),
    }
  },
  'keyway by its side depth': (units) => {
    const [bore, width, depth] = units === 'mm' ? [40, 12, 4.2] : [1.5, 0.375, 0.19]
    return {
      bore,
      length: 1.2 * bore,
      feature: (write) => ({ keyway: { width: write(width), depth: { side: write(depth) } } }),
      bar: () => ({ form: 'side screw' }),
    }
  },
  'taper keyway': (units) => {
    const [bore, width, across] = units === 'mm' ? [30, 8, 33.3] : [1.25, 0.25, 1.365]
    return {
      bore,
      length: bore,
      feature: (write) => ({ keyway: { width: write(width), across: write(across), taper: '1:100' } }),
    }
  },
  'blind keyway': (units) => {
    const [bore, width, across] = units === 'mm' ? [30, 8, 33.3] : [1.25, 0.25, 1.365]
    return {
      bore,
      length: bore,
      feature: (write) => ({ keyway: { width: write(width), across: write(across) } }),
      bar: () => ({ form: 'inclined' }),
      bored: (write) => ({
        blind: { beyond: write(0.4 * bore), relief: { diameter: write(1.3 * bore), length: write(0.3 * bore) } },
      }),
    }
  },
  'keyway by a bar of one piece': (units) => {
    const [bore, width, across] = units === 'mm' ? [8, 2, 9] : [0.3125, 0.09375, 0.36]
    return {
      bore,
      length: 1.2 * bore,
      feature: (write) => ({ keyway: { width: write(width), across: write(across) } }),
      bar: (write) => ({ form: 'one piece', setting: write(units === 'mm' ? 0.02 : 0.0008) }),
    }
  },
  'keyway by standard': (units) => ({
    bore: units === 'mm' ? 50 : 2,
    length: units === 'mm' ? 60 : 2.5,
    feature: () => ({ keyway: {} }),
  }),
  spline: (units) => {
    const [bore, width, major] = units === 'mm' ? [23, 6, 26.2] : [0.9, 0.25, 1.0]
    return {
      bore,
      length: bore,
      feature: (write) => ({ spline: { count: 6, width: write(width), major: write(major) } }),
    }
  },
  socket: (units) => {
    const [bore, across, tip] = units === 'mm' ? [12.5, 12, 0.2] : [0.52, 0.5, 0.008]
    return {
      bore,
      length: bore,
      feature: (write) => ({ socket: { sides: 4, across: write(across), tip: write(tip) } }),
    }
  },
  slit: (units) => {
    const [bore, width, outside] = units === 'mm' ? [20, 2, 26] : [0.75, 0.0625, 1]
    return {
      bore,
      length: bore,
      feature: (write) => ({ slit: { width: write(width), count: 3, outside: write(outside) } }),
    }
  },
  groove: (units) => {
    const [bore, radius, depth] = units === 'mm' ? [20, 1.5, 1] : [0.75, 0.0625, 0.03]
    return { bore, length: bore, feature: (write) => ({ groove: { radius: write(radius), depth: write(depth) } }) }
  },
}

const documentOf = (units: Units, { bore, length, feature, bar, bored }: Job, write: Write) => ({
  units,
  bore: {
    diameter: write(bore),
    tolerance: [write(0), write(bore / 1000)],
    length: write(length),
    ...bored?.(write),
  },
  hub: { outside: write(2.5 * bore) },
  feature: feature(write),
  tooling: { bar: { infeed: write(units === 'mm' ? 0.02 : 0.001), behind: write(2 * bore), ...bar?.(write) } },
})

/** Every number and word of a value, by path; what the spec was written as is not compared. */
const all = (value: unknown, path = ''): readonly (readonly [path: string, value: number | string | boolean])[] => {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => (key === 'written' ? [] : all(inner, `${path}.${key}`)))
}

const expectAlike = (one: unknown, other: unknown, within: number): void => {
  const [plain, again] = [all(one), all(other)]
  expect(again.map(([path]) => path)).toEqual(plain.map(([path]) => path))
  for (const [n, [path, value]] of plain.entries()) {
    const found = again[n]?.[1]
    if (typeof value !== 'number') expect([path, found]).toEqual([path, value])
    else if (Number.isFinite(value))
      expect([path, Math.abs(Number(found) - value) <= within * Math.max(1, Math.abs(value))]).toEqual([path, true])
    else expect([path, found]).toEqual([path, value])
  }
}

const named = Object.keys(kinds).flatMap((kind) => (['mm', 'in'] as const).map((units) => [kind, units] as const))

describe('a job said in the other unit', () => {
  it.each(named)('%s, %s: every size, force, pass and finding is the same', (kind, units) => {
    const job = (kinds[kind] as (units: Units) => Job)(units)
    const made = (write: Write): Design => design(specOf(documentOf(units, job, write)))
    const [plain, spelt] = [made(asItIs), made(inOther(units))]
    expect(plain.bar ?? plain.groundBar).toBeDefined()
    expectAlike(plain, spelt, 1e-9)
  })
})

describe('a job turned round', () => {
  it.each(named)('%s, %s: no size of the tooling changes', (kind, units) => {
    const job = (kinds[kind] as (units: Units) => Job)(units)
    const turned = (by: number): Sized => {
      const document = documentOf(units, job, asItIs)
      const [name = '', feature = {}] = Object.entries(document.feature)[0] ?? []
      const at = Array.isArray(feature.at) ? feature.at.map((angle: number) => angle + by) : by
      return sizesOf(specOf({ ...document, feature: { [name]: { ...feature, at } } }))
    }
    const sizes = ({ bar, groundBar, bit, loads, plan, plug }: Sized) => ({ bar, groundBar, bit, loads, plan, plug })
    expectAlike(sizes(turned(0)), sizes(turned(37)), 1e-9)
  })
})

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A setting as the window takes it, of a flat nose in any lane, of a V or of a round; all as shares of the bore. */
const settings: fc.Arbitrary<{ readonly setting: Setting; readonly bar: number }> = fc
  .record({
    radius: between(3, 50),
    depth: between(0.05, 0.3),
    half: between(0.05, 0.24),
    lane: between(-0.4, 0.4),
    corner: between(0, 0.9),
    sides: fc.constantFrom(0, 0, 0, 4, 6),
    flats: between(0.2, 0.8),
    clearances: fc.tuple(between(0, 0.02), between(0, 0.02), between(0, 0.02)),
    chip: between(0, 0.03),
    bar: between(0.4, 0.95),
  })
  .map(({ radius, depth, half, lane, corner, sides, flats, clearances: [back, front, withdrawn], chip, bar }) => {
    const share = sides === 0 ? 0 : Math.PI / sides
    const flat = (radius * (1 - flats * (1 - Math.cos(share))) * radius) / radius
    const tip = 0.1 * corner * half * radius
    const shared = {
      radius,
      clearances: { back: back * radius, front: front * radius, withdrawn: withdrawn * radius },
      chipRoom: chip * radius,
    }
    const setting: Setting =
      sides === 0
        ? {
            ...shared,
            floor: radius * (1 + depth),
            noseWidth: 2 * half * radius,
            cornerRadius: corner * half * radius,
            offset: lane * half * radius,
          }
        : {
            ...shared,
            floor: vertexOf(sides, flat) - setBackOf(sides, tip),
            noseWidth: 2 * tip,
            cornerRadius: tip,
            offset: 0,
            opening: { half: mouthHalfOfV(sides, flat, radius), flank: { sides, flat } },
          }
    return { setting, bar: 2 * bar * radius }
  })

const scaled = (setting: Setting, k: number): Setting => ({
  ...setting,
  radius: k * setting.radius,
  floor: k * setting.floor,
  noseWidth: k * setting.noseWidth,
  cornerRadius: k * setting.cornerRadius,
  offset: k * setting.offset,
  clearances: {
    back: k * setting.clearances.back,
    front: k * setting.clearances.front,
    withdrawn: k * setting.clearances.withdrawn,
  },
  chipRoom: k * setting.chipRoom,
  ...(setting.opening && {
    opening: {
      half: k * setting.opening.half,
      ...(setting.opening.flank && {
        flank: { sides: setting.opening.flank.sides, flat: k * setting.opening.flank.flat },
      }),
    },
  }),
})

const window = (setting: Setting, bar: number) => ({
  least: projectionLeast(setting, bar),
  most: projectionMost(setting, bar),
})

describe('the window of projections', () => {
  it('grows with the job: everything 25.4 times as large gives 25.4 times the sizes', () => {
    fc.assert(
      fc.property(settings, between(0.04, 30), ({ setting, bar }, k) => {
        const near = 1e-9 * k * setting.radius
        const [one, large] = [window(setting, bar), window(scaled(setting, k), k * bar)]
        for (const side of ['least', 'most'] as const)
          if (Number.isFinite(one[side])) expect(Math.abs(large[side] - k * one[side])).toBeLessThan(near)
          else expect(large[side]).toBe(one[side])
        const [small, grown] = [largestBar(setting), largestBar(scaled(setting, k))]
        expect(Math.abs(grown - k * small)).toBeLessThan(near)
      }),
      runs(1000),
    )
  })

  it('is the same on the other side of the middle', () => {
    fc.assert(
      fc.property(settings, ({ setting, bar }) => {
        const mirrored = { ...setting, offset: -setting.offset }
        expect(window(mirrored, bar)).toEqual(window(setting, bar))
        expect(largestBar(mirrored)).toBe(largestBar(setting))
      }),
      runs(500),
    )
  })

  it('never gets wider when more is asked, whichever of the clearances it is', () => {
    fc.assert(
      fc.property(
        settings,
        fc.constantFrom('back' as const, 'front' as const, 'withdrawn' as const),
        between(1e-3, 0.5),
        ({ setting, bar }, which, more) => {
          const asked = { ...setting.clearances, [which]: setting.clearances[which] + more }
          const tighter = { ...setting, clearances: asked }
          const [before, after] = [window(setting, bar), window(tighter, bar)]
          expect(after.least).toBeGreaterThanOrEqual(before.least - 1e-12)
          expect(after.most).toBeLessThanOrEqual(before.most + 1e-12)
          expect(largestBar(tighter)).toBeLessThanOrEqual(largestBar(setting) + 1e-9)
          // Behind, it loses at least what is asked: more in a side lane, where the wall leans.
          if (which !== 'front' && Number.isFinite(after.most))
            expect(after.most).toBeLessThanOrEqual(before.most - more + 1e-9)
        },
      ),
      runs(1000),
    )
  })

  it('does not jump as the nose’s corners become sharp, nor between a lane and the middle', () => {
    fc.assert(
      fc.property(settings, ({ setting, bar }) => {
        if (setting.opening) return
        const cornered = (cornerRadius: number, offset = setting.offset) =>
          window({ ...setting, cornerRadius, offset }, bar)
        const [sharp, nearly] = [cornered(0), cornered(1e-7)]
        if (Number.isFinite(sharp.most)) expect(nearly.most).toBeCloseTo(sharp.most, 5)
        if (Number.isFinite(sharp.least)) expect(nearly.least).toBeCloseTo(sharp.least, 5)
        const free = setting.radius - bar / 2 - setting.clearances.back
        // With no more room behind than a hair the bore’s own curve is steep.
        if (free < 0.01 * setting.radius) return
        const [middle, aside] = [cornered(setting.cornerRadius, 0), cornered(setting.cornerRadius, 1e-7)]
        expect(aside.most).toBeCloseTo(middle.most, 5)
        if (Number.isFinite(middle.least) && Number.isFinite(aside.least))
          expect(aside.least).toBeCloseTo(middle.least, 4)
      }),
      runs(500),
    )
  })

  it('never lets a later slot make an earlier check worse: what is behind depends on the touch alone', () => {
    fc.assert(
      fc.property(settings, between(0, 0.1), ({ setting, bar }, deeper) => {
        const far = { ...setting, floor: setting.floor + deeper * setting.radius }
        expect(projectionMost(far, bar)).toBe(projectionMost(setting, bar))
        if (!setting.opening) expect(barAxisMost(far, bar)).toBe(barAxisMost(setting, bar))
      }),
      runs(300),
    )
  })
})

describe('the arc over the mouth', () => {
  it('grows with the width and is gone with it; the naive bar is then the exact one', () => {
    fc.assert(
      fc.property(between(3, 50), between(0.01, 0.9), between(1e-3, 0.09), (radius, share, more) => {
        expect(sagitta(radius, (share + more) * radius)).toBeGreaterThan(sagitta(radius, share * radius))
        // R(1 − √(1 − q²)) is q²R/2 where q is small.
        expect(sagitta(radius, 1e-4 * radius)).toBeCloseTo(0.5e-8 * radius, 12)
        expect(touchOffX(radius, 2e-6 * radius, 0, 0)).toBeCloseTo(radius, 9)
        const slim: Setting = {
          radius,
          floor: 1.1 * radius,
          noseWidth: 2e-6 * radius,
          cornerRadius: 0,
          offset: 0,
          clearances: { back: 0, front: 0, withdrawn: 0 },
          chipRoom: 0,
        }
        // Bar and crown depth fill the bore.
        expect(largestBar(slim)).toBeCloseTo(2 * radius - 0.1 * radius, 6)
      }),
      runs(200),
    )
  })

  it('of a V goes to nothing as the bore reaches its corners', () => {
    for (const sides of [4, 6])
      for (const flat of [3, 10, 40]) {
        const vertex = vertexOf(sides, flat)
        expect(mouthHalfOfV(sides, flat, vertex * (1 - 1e-12))).toBeCloseTo(0, 8)
        expect(halfFlat(sides, flat, vertex * (1 - 1e-12))).toBeCloseTo(0, 8)
      }
  })
})
