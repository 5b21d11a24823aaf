import { describe, expect, it, test } from 'vitest'
import { type Sized, sizesOf } from '../../src/design.ts'
import { specOf } from './designed.ts'

/** A length in the job's unit, written in the other. */
const other = (units: 'mm' | 'in', value: number): string =>
  units === 'mm' ? `${value / 25.4} in` : `${Math.round(value * 254e9) / 1e10} mm`

const numbersOf = (value: unknown, path = ''): readonly (readonly [path: string, value: number | string])[] => {
  if (typeof value === 'number' || typeof value === 'string') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${path}.${key}`))
}

const sizes = ({ section, bar, bit, bushing, plug, plan }: Sized) =>
  numbersOf({ section, bar, bit, bushing, plug, plan })

const broach = (units: 'mm' | 'in', write: (value: number) => string | number) =>
  units === 'mm'
    ? {
        toothWidth: write(8.018),
        bodyWidth: write(7.98),
        firstTooth: write(12.5),
        lastTooth: write(14.4),
        pilot: write(12),
        teeth: 26,
        toothedLength: write(150),
        overall: write(210),
        pilotLength: write(28),
      }
    : {
        toothWidth: write(0.1885),
        bodyWidth: write(0.187),
        firstTooth: write(0.375),
        lastTooth: write(0.44),
        pilot: write(0.36),
        teeth: 21,
        toothedLength: write(5),
        overall: write(6.75),
        pilotLength: write(0.9),
      }

const job = (units: 'mm' | 'in', write: (value: number) => string | number, form: 'standard' | 'hand') => {
  const [bore, hub, width, across] = units === 'mm' ? [25, 40, 8, 28.3] : [0.75, 1, 0.1875, 0.836842]
  return {
    units,
    bore: { diameter: write(bore), tolerance: [write(0), write(bore / 1000)], length: write(hub) },
    hub: { outside: write(2.5 * bore) },
    feature: { keyway: form === 'standard' ? {} : { width: write(width), across: write(across) } },
    tooling: { bar: { infeed: write(units === 'mm' ? 0.02 : 0.001) }, press: { broach: broach(units, write) } },
  }
}

describe('one job in two spellings', () => {
  test.each([
    ['mm', 'standard'],
    ['mm', 'hand'],
    ['in', 'standard'],
    ['in', 'hand'],
  ] as const)('%s, %s: every size is the same, whichever unit it was written in', (units, form) => {
    const plain = sizes(sizesOf(specOf(job(units, (value) => value, form))))
    const spelt = sizes(sizesOf(specOf(job(units, (value) => other(units, value), form))))
    expect(spelt.map(([path]) => path)).toEqual(plain.map(([path]) => path))
    for (const [n, [path, value]] of plain.entries()) {
      const [, again] = spelt[n] ?? []
      if (typeof value === 'string') expect(again, path).toBe(value)
      else expect(Math.abs(Number(again) - value), path).toBeLessThan(1e-7)
    }
  })
})

describe('angles and sides', () => {
  const turned = (at: number | number[]) =>
    sizesOf(specOf({ units: 'mm', bore: { diameter: 30, length: 40 }, feature: { keyway: { at } } }))

  it('turning the keyway round changes no size', () => {
    for (const at of [37, 180, -90]) {
      expect(turned(at).bar).toEqual(turned(0).bar)
      expect(turned(at).section.infeed).toBe(turned(0).section.infeed)
    }
    expect(turned([10, 130]).section.land).toBeCloseTo(turned([0, 120]).section.land ?? 0, 9)
  })

  it('lanes lie the same on either side, with one window', () => {
    const { bar } = turned(0)
    const lanes = bar?.lanes ?? []
    for (const [n, lane] of lanes.entries()) {
      const mirrored = lanes[lanes.length - 1 - n]
      expect(lane.offset).toBeCloseTo(-(mirrored?.offset ?? Number.NaN), 12)
      expect(lane.projectionMin).toBeCloseTo(mirrored?.projectionMin ?? Number.NaN, 9)
      expect(lane.projectionMax).toBeCloseTo(mirrored?.projectionMax ?? Number.NaN, 9)
    }
  })
})

describe('asking for less', () => {
  const bar = (clearance: number, width = 8) => {
    const made = sizesOf(
      specOf({
        units: 'mm',
        bore: { diameter: 25, length: 30 },
        feature: { keyway: { width, across: [28.3, 28.5] } },
        tooling: {
          bar: {
            diameter: 16,
            infeed: 0.005,
            bit: { size: 10 },
            nose: { width, cornerRadius: 0.2 },
            clearance: { back: clearance, front: clearance, withdrawn: clearance },
          },
        },
      }),
    )
    if (!made.bar) throw new Error('no bar')
    return { ...made.bar, section: made.section }
  }

  it('closer clearances: a wider window, a larger bar', () => {
    const wider = [0.5, 0.4, 0.3, 0.2, 0.1, 0.05].map((clearance) => bar(clearance))
    for (const [n, now] of wider.slice(1).entries()) {
      const before = wider[n]
      expect(now.projectionMin).toBeLessThan(before?.projectionMin ?? -Infinity)
      expect(now.projectionMax).toBeGreaterThan(before?.projectionMax ?? Infinity)
      expect(now.diameterMax).toBeGreaterThan(before?.diameterMax ?? Infinity)
    }
  })

  it('a wider key: more arc over its mouth, an earlier touch, a longer infeed', () => {
    const wider = [5, 6, 7, 8, 9].map((width) => bar(0.25, width).section)
    for (const [n, now] of wider.slice(1).entries()) {
      const before = wider[n]
      expect(now.sagitta).toBeGreaterThan(before?.sagitta ?? Infinity)
      expect(now.touchOff).toBeLessThan(before?.touchOff ?? -Infinity)
      expect(now.infeed).toBeGreaterThan(before?.infeed ?? Infinity)
      expect(now.crownDepth).toBeCloseTo(before?.crownDepth ?? 0, 12)
    }
  })
})
