import { describe, expect, it } from 'vitest'
import { columnMargin, forceAlong } from '../../src/mechanics/broaching.ts'
import { cuttingForce } from '../../src/mechanics/cutting.ts'
import type { Broach } from '../../src/spec/spec.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const mild =
  kienzleGroup(1) ??
  (() => {
    throw new Error('no group 1')
  })() // prettier-ignore
const inch = 25.4

/** Broach, bore, hub and across in one unit; collar of the bushing. */
const job = (unit: number, sizes: { broach: Broach; bore: number; hub: number; across: number; collar: number }) => {
  const { broach } = sizes
  const R = (sizes.bore * unit) / 2
  const lengths = Object.fromEntries(
    Object.entries(broach).map(([name, value]) => [
      name,
      ['teeth', 'finishingTeeth', 'yield'].includes(name) ? value : value * unit,
    ]),
  ) as unknown as Broach
  const f = sizes.across * unit - R
  const touch = Math.sqrt(R ** 2 - (lengths.toothWidth / 2) ** 2)
  const floor = Math.min(touch - lengths.firstTooth - 0.05, f - lengths.lastTooth)
  const total = f - floor - lengths.lastTooth
  const shims = Math.ceil(total / (lengths.lastTooth - lengths.firstTooth) - 1e-9)
  const tooth = (width: number, bite: number) => cuttingForce(mild, width, bite, 10, 'worn')
  const passes = Array.from({ length: shims + 1 }, (_, k) => ({
    broach: lengths,
    hub: sizes.hub * unit,
    radius: R,
    tipX: (height: number) => floor + height + (total * k) / Math.max(shims, 1),
    floorBefore: k === 0 ? 0 : floor + lengths.lastTooth + (total * (k - 1)) / shims,
    tooth,
  }))
  return {
    most: Math.max(...passes.flatMap((pass) => forceAlong(pass).map(({ force }) => force))),
    column: Math.min(...passes.map((pass) => columnMargin(pass, sizes.collar * unit) ?? Number.NaN)),
  }
}

const f1: Broach = {
  toothWidth: 0.1885,
  bodyWidth: 0.187,
  firstTooth: 0.375,
  lastTooth: 0.44,
  pilot: 0.36,
  toothedLength: 5,
  teeth: 21,
  overall: 6.75,
  pilotLength: 0.9,
  rootHeight: 0.25,
  yield: 830,
} // prettier-ignore
const f2: Broach = {
  toothWidth: 0.1255,
  bodyWidth: 0.124,
  firstTooth: 0.25,
  lastTooth: 0.295,
  pilot: 0.24,
  toothedLength: 3.6,
  teeth: 19,
  overall: 5,
  pilotLength: 0.7,
  rootHeight: 0.165,
  yield: 830,
} // prettier-ignore
const f6: Broach = {
  toothWidth: 8.018,
  bodyWidth: 7.98,
  firstTooth: 12.5,
  lastTooth: 14.4,
  pilot: 12,
  toothedLength: 150,
  teeth: 26,
  overall: 210,
  pilotLength: 28,
  rootHeight: 9,
  yield: 830,
} // prettier-ignore
const f5: Broach = {
  toothWidth: 6.015,
  bodyWidth: 5.98,
  firstTooth: 9.5,
  lastTooth: 11.2,
  pilot: 9,
  toothedLength: 120,
  teeth: 21,
  overall: 170,
  pilotLength: 22,
  rootHeight: 6.5,
  yield: 830,
} // prettier-ignore

describe('a push broach in the press: worked scenarios, derived', () => {
  it.each([
    [
      '3/16 in a 3/4 bore',
      inch,
      { broach: f1, bore: 0.75, hub: 1, across: 0.836842, collar: 0.375 },
      1438.9 * 4.4482216,
      2.178,
    ],
    [
      '1/8 in a 1/2 bore',
      inch,
      { broach: f2, bore: 0.5, hub: 0.75, across: 0.559561, collar: 0.375 },
      778.6 * 4.4482216,
      1.562,
    ],
    [
      'the same, hub 1.5',
      inch,
      { broach: f2, bore: 0.5, hub: 1.5, across: 0.559561, collar: 0.375 },
      1557.3 * 4.4482216,
      1.201,
    ],
    ['6 in a 20 bore', 1, { broach: f5, bore: 20, hub: 30, across: 22.8, collar: 8 }, 10285.8, 1.988],
    ['8 in a 25 bore', 1, { broach: f6, bore: 25, hub: 40, across: 28.3, collar: 8 }, 17571.1, 2.998],
  ])('%s', (_name, unit, sizes, force, column) => {
    const got = job(unit, sizes)
    expect(got.most / force).toBeCloseTo(1, 3)
    expect(got.column).toBeCloseTo(column, 2)
  })
})
