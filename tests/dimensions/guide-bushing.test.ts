import { describe, expect, it, test } from 'vitest'
import { mouthX } from '../../src/dimensions/bore.ts'
import { biteOf, cornerWall, packOf, pitchOf, shimCount, slotFloorX } from '../../src/dimensions/guide-bushing.ts'
import { withBushing } from './designed.ts'

const broach = (
  firstTooth: number,
  lastTooth: number,
  teeth: number,
  toothedLength: number,
  overall: number,
  pilotLength: number,
  toothWidth: number,
  bodyWidth: number,
) => ({
  firstTooth,
  lastTooth,
  teeth,
  toothedLength,
  overall,
  pilotLength,
  toothWidth,
  bodyWidth,
  pilot: firstTooth * 0.95,
})

const threeSixteenths = broach(0.375, 0.44, 21, 5, 6.75, 0.9, 0.1885, 0.187)
const eighth = broach(0.25, 0.295, 19, 3.6, 5, 0.7, 0.1255, 0.124)
const six = broach(9.5, 11.2, 21, 120, 170, 22, 6.015, 5.98)
const eight = broach(12.5, 14.4, 26, 150, 210, 28, 8.018, 7.98)

/** The broach with every length in mm. */
const inMm = (tool: ReturnType<typeof broach>, k: number) => ({
  ...tool,
  firstTooth: tool.firstTooth * k,
  lastTooth: tool.lastTooth * k,
  toothedLength: tool.toothedLength * k,
  overall: tool.overall * k,
  pilotLength: tool.pilotLength * k,
  toothWidth: tool.toothWidth * k,
  bodyWidth: tool.bodyWidth * k,
  pilot: tool.pilot * k,
})

type Worked = [
  name: string,
  unit: number,
  bore: number,
  across: number,
  tool: ReturnType<typeof broach>,
  slot: number,
  fromBushing: number,
  wall: number,
  corner: number,
  count: number,
  shim: number,
]

// Worked scenario, derived; broaches invented. [name, unit, bore, across, broach, slot, floor from bushing, back wall, corner wall, shims, shim]
const jobs: readonly Worked[] = [
  ['3/4 bore, 3/16 broach', 25.4, 0.75, 0.836842, threeSixteenths, 0.19165, -0.013612, 0.360994, 0.27782, 1, 0.035848],
  ['1/2 bore, 1/8 broach', 25.4, 0.5, 0.559561, eighth, 0.12865, -0.009578, 0.240028, 0.184572, 1, 0.024533],
  ['20 bore, 6 broach', 1, 20, 22.8, six, 6.095, -0.00297, 9.98703, 6.942499, 1, 1.61297],
  ['25 bore, 8 broach', 1, 25, 28.3, eight, 8.098, -0.700324, 11.789676, 8.380881, 2, 1.055162],
]

describe('bushing and shims', () => {
  test.each(jobs)('%s', (_name, unit, bore, across, tool, slot, fromBushing, wall, corner, count, shim) => {
    const measured = inMm(tool, unit)
    const outside = bore * unit - 0.02
    const radius = (bore * unit) / 2
    const floor = across * unit - radius
    const x = slotFloorX(radius, floor, measured)
    const slotWidth = Math.max(measured.bodyWidth, measured.toothWidth) + 0.08
    const total = floor - x - measured.lastTooth
    expect(Math.abs(slotWidth / unit - slot)).toBeLessThan(1e-6)
    expect(Math.abs((x + 0.01) / unit - fromBushing)).toBeLessThan(1.5e-6)
    expect(Math.abs((x + radius) / unit - wall)).toBeLessThan(1.5e-6)
    expect(Math.abs(cornerWall(outside, x + 0.01, slotWidth) / unit - corner)).toBeLessThan(1.5e-6)
    expect(shimCount(total, measured)).toBe(count)
    expect(Math.abs(total / count / unit - shim)).toBeLessThan(1.5e-6)
    // Back wall, shims and last tooth are across, whatever the outside.
    expect(x + radius + total + measured.lastTooth).toBeCloseTo(across * unit, 9)
  })

  it('1/4 broach in a 1/2 bore: the slot would come out of the back of its bushing', () => {
    // Worked scenario, derived: first tooth at .500, W 1/4.
    const k = 25.4
    const tool = inMm(broach(0.5, 0.565, 21, 5, 6.75, 0.9, 0.25, 0.25), k)
    const x = slotFloorX(0.25 * k, 0.31 * k, tool)
    const outside = 0.5 * k - 0.02
    const slotWidth = 0.25 * k + 0.08
    expect(slotWidth / k).toBeCloseTo(0.25315, 6)
    expect((x + 0.01) / k).toBeCloseTo(-0.285068, 5)
    expect((x + 0.01 + outside / 2) / k).toBeCloseTo(-0.035462, 5)
    expect(cornerWall(outside, x + 0.01, slotWidth) / k).toBeCloseTo(-0.062299, 5)
  })

  it('counts the bite over the teeth that rise', () => {
    // Worked scenario, derived.
    expect(biteOf(threeSixteenths)).toBeCloseTo(0.00325, 9)
    expect(biteOf({ ...threeSixteenths, finishingTeeth: 3 })).toBeCloseTo(0.003611, 6)
    expect(pitchOf(threeSixteenths)).toBeCloseTo(0.25, 12)
    expect(pitchOf(eighth)).toBeCloseTo(0.2, 12)
  })

  it('a broach that reaches the floor by itself needs no shim', () => {
    expect(shimCount(0, six)).toBe(0)
    expect(shimCount(1.7, six)).toBe(1)
    expect(shimCount(1.7001, six)).toBe(2)
  })
})

/** A job of exact sizes with this broach: bore and slot by hand. */
const job = (
  units: 'mm' | 'in',
  bore: number,
  across: number,
  hub: number,
  tool: ReturnType<typeof broach>,
  press: object = {},
) =>
  withBushing({
    units,
    bore: { diameter: bore, tolerance: [0, 0], length: hub },
    hub: { outside: 2.5 * bore },
    feature: { keyway: { width: tool.toothWidth, across } },
    tooling: { press: { broach: tool, ...press } },
  })

describe('bushing of a design', () => {
  // Worked scenario, derived: [stroke, room below, daylight, teeth in the cut least and most].
  test.each([
    ['3/4 bore', 'in', 0.75, 0.836842, 1, threeSixteenths, 6, 5.9, 6.85, 4, 4],
    ['1/2 bore, hub 3/4', 'in', 0.5, 0.559561, 0.75, eighth, 4.35, 4.3, 5.05, 3, 4],
    ['1/2 bore, hub 1-1/2', 'in', 0.5, 0.559561, 1.5, eighth, 5.1, 4.3, 5.8, 7, 8],
    ['20 bore', 'mm', 20, 22.8, 30, six, 150, 142, 178, 5, 5],
    ['25 bore', 'mm', 25, 28.3, 40, eight, 190, 178, 222, 6, 7],
  ] as const)('%s', (_name, units, bore, across, hub, tool, stroke, below, daylight, least, most) => {
    const { bushing } = job(units, bore, across, hub, tool)
    const k = units === 'in' ? 25.4 : 1
    expect(bushing.stroke / k).toBeCloseTo(stroke, 9)
    expect(bushing.below / k).toBeCloseTo(below, 9)
    expect(bushing.daylight / k).toBeCloseTo(daylight, 9)
    expect(bushing.teethInCut).toEqual({ least, most })
  })

  // Room for the whole broach, and what the bushing stands out below: 1 + 1/16 under the collar, 6.75 + .0625 up to 1/8; 42 under it, 210 + 2.
  // The spacer: room below and 1/16 or 2 for chips, no more than 2-1/2 or 60.
  test.each([
    ['3/4 bore', 'in', 0.75, 0.836842, 1, threeSixteenths, 6.875, 2.5, 9.35],
    ['1/2 bore, hub 3/4', 'in', 0.5, 0.559561, 0.75, eighth, 5.125, 2.5, 7.55],
    ['25 bore', 'mm', 25, 28.3, 40, eight, 212, 60, 282],
    [
      '25 bore, short broach',
      'mm',
      25,
      28.3,
      20,
      { ...eight, toothedLength: 35, overall: 60, pilotLength: 10 },
      62,
      47,
      117,
    ],
  ] as const)(
    '%s: falls free, and the daylight with its spacer',
    (_name, units, bore, across, hub, tool, free, high, ram) => {
      const { bushing, pressSpacer } = job(units, bore, across, hub, tool)
      const k = units === 'in' ? 25.4 : 1
      expect(bushing.fallsFree / k).toBeCloseTo(free, 9)
      expect(bushing.raised / k).toBeCloseTo(high, 9)
      expect(bushing.tableToRam / k).toBeCloseTo(ram, 9)
      expect(pressSpacer?.height).toBe(bushing.raised)
      expect(pressSpacer?.free).toBe(bushing.below)
    },
  )

  it('a table with the room under it needs no spacer', () => {
    const on = (below: number) => job('mm', 25, 28.3, 40, eight, { below })
    expect(on(178).bushing).toMatchObject({ raised: 0, tableToRam: 222 })
    expect(on(178).pressSpacer).toBeUndefined()
    // With some of it, the spacer makes up the rest and 2 mm for chips, in whole millimetres: 10 at the least, 60 at the most.
    expect(on(177.9).bushing).toMatchObject({ raised: 10, tableToRam: 232 })
    expect(on(140).bushing).toMatchObject({ raised: 40, tableToRam: 262 })
    expect(on(60).bushing).toMatchObject({ raised: 60, tableToRam: 282 })
    // 178 in all is asked for, in table and spacer: 118 and 60.
    const room = (below: number) => on(below).findings.find(({ rule }) => rule === 'room-under-table')?.verdict
    expect([117.9, 118, 140, 178].map(room)).toEqual(['fail', 'pass', 'pass', 'pass'])
  })

  // Tail = overall − pilot − toothed; the ram meets the collar (.25, 6), or a shim's head (.3125, 8) on it: so much is left, and 1/4 or 6.
  // Width: the slot less .001 (.025) and .010 (.25). Height: √(R² − (width/2)²) less floor, shims and .010 (.25).
  test.each([
    // 1 + .25 + .3125 − .85 + .25 = .9625; .1905 − .010 = .1805; √(.375² − .09²) = .36404, floor .362 − .375, shim .035842: .3312
    ['3/4 bore', 'in', 0.75, 0.836842, 1, threeSixteenths, 1, 0.18, 0.33],
    // 40 + 6 + 8 − 32 + 6 = 28; 8.075 − .25 = 7.825; √(12.5² − 3.9²) = 11.876, floor 11.81 − 12.5, shims 2.11: 10.206
    ['25 bore', 'mm', 25, 28.3, 40, eight, 28, 7.8, 10.2],
    // 30 + 6 + 8 − 28 + 6 = 22; 6.015 + .08 to 6.1 (6.095, up), less .025 and .25: 5.825; √(10² − 2.9²) = 9.570, floor 10.01 − 10, shim 1.61: 7.7
    ['20 bore', 'mm', 20, 22.8, 30, six, 22, 5.8, 7.7],
    // No shim, no head: 30 + 6 − 28 + 6 = 14; back wall 21.18 − 11.2 = 9.98, upper 10: 9.570 − 0 − .25 = 9.32
    ['20 bore, no shim', 'mm', 20, 21.18, 30, six, 14, 5.8, 9.3],
  ] as const)('%s: a pusher follows the broach', (_name, units, bore, across, hub, tool, length, width, height) => {
    const { pusher } = job(units, bore, across, hub, tool)
    const k = units === 'in' ? 25.4 : 1
    expect((pusher?.length ?? NaN) / k).toBeCloseTo(length, 9)
    expect((pusher?.width ?? NaN) / k).toBeCloseTo(width, 9)
    expect((pusher?.height ?? NaN) / k).toBeCloseTo(height, 9)
  })

  it('a broach whose tail stands 1 mm over collar and shim needs no pusher', () => {
    // 40 + 6 + 8 = 54 of tail, and 1: 28 + 150 + 55 = 233. A tenth less, and 54 − 54.9 + 6 = 5.1 is missing.
    const tail = (overall: number) => job('mm', 25, 28.3, 40, { ...eight, overall })
    expect(tail(233).pusher).toBeUndefined()
    expect(Object.keys(tail(233).basis).filter((path) => path.startsWith('pusher'))).toEqual([])
    expect(tail(232.9).pusher?.length).toBe(6)
    expect(tail(232.9).basis['pusher.length']).toMatch(/tail/)
  })

  test.each(jobs)(
    '%s: makeable sizes lie within half a step of the exact ones',
    (name, unit, bore, across, tool, ...exactly) => {
      const [slot, , wall, , count, shim] = exactly
      const units = unit === 1 ? 'mm' : 'in'
      const { bushing } = job(units, bore, across, bore * 1.5, tool)
      const step = units === 'mm' ? 0.01 : 0.0005
      expect(Math.abs(bushing.slotWidth.nominal / unit - slot), name).toBeLessThanOrEqual(step / 2 + 2e-6)
      expect(Math.abs(bushing.backWall.nominal / unit - wall), name).toBeLessThanOrEqual(step / 2 + 2e-6)
      expect(bushing.shims).toHaveLength(count)
      for (const each of bushing.shims) expect(Math.abs(each / unit - shim)).toBeLessThanOrEqual(step / 2 + 2e-4)
      const sum = bushing.shims.reduce((total, each) => total + each, 0)
      expect(bushing.backWall.nominal + sum + tool.lastTooth * unit).toBeCloseTo(across * unit, 6)
      for (const each of bushing.shims) expect(each / unit).toBeLessThanOrEqual(tool.lastTooth - tool.firstTooth + 1e-4)
    },
  )

  it('its first tooth clears the mouth by its allowance, within the half step', () => {
    const { bushing, section } = job('mm', 25, 28.3, 40, eight)
    const room = mouthX(section.boreRadius, eight.toothWidth / 2) - (bushing.floorFromBore + eight.firstTooth)
    expect(room).toBeGreaterThanOrEqual(0.05 - 0.005 - 1e-9)
    expect(room).toBeLessThanOrEqual(0.05 + 0.005 + 1e-9)
  })

  it('a small one in inches and a large one in mm, every size by the sentence that gives its reason', () => {
    const tool = { ...eighth, firstTooth: 0.2, lastTooth: 0.245, pilot: 0.19 }
    const small = job('in', 0.45, 0.51, 0.75, tool).bushing
    const inches = (mm: number) => Number((mm / 25.4).toFixed(6))
    expect([small.outside.lower, small.outside.upper].map(inches)).toEqual([0.449, 0.4495])
    expect(inches(small.length)).toBe(0.8125) // the bore and 1/16
    expect(inches(small.collarDiameter)).toBe(0.875) // .450 + .375, up to 1/16
    expect(inches(small.collarThickness)).toBe(0.1875)
    expect(inches(small.lead.length)).toBe(0.04)
    expect(Object.values(small.undercut).map(inches)).toEqual([0.03, 0.008, 0.008])
    // .1255 and 0.08 mm is .12865, to .0005, a thousandth either way.
    expect([small.slotWidth.lower, small.slotWidth.upper].map(inches)).toEqual([0.1275, 0.1295])
    expect(inches(small.shim.width)).toBe(0.1245)
    expect(inches(small.shim.length)).toBe(0.96) // .8125 + .1875 - .04
    expect(inches(small.shim.headWidth)).toBe(0.453125) // .1285 + .3125, up to 1/64
    expect(inches(small.shim.hole)).toBe(0.09375)
    expect(inches(small.stock.length)).toBe(2.125) // 1.000 of part, 1/8 to part off, 1 of grip
    expect(small.teethInCut).toEqual({ least: 3, most: 4 })
    expect(inches(small.bite)).toBe(0.0025)

    const large = job('mm', 25, 28.3, 40, { ...eight, toothWidth: 8 }).bushing
    expect(large).toMatchObject({
      outside: { nominal: 25, lower: 24.975, upper: 24.987 },
      length: 42,
      collarDiameter: 37,
      collarThickness: 6,
      lead: { length: 1.5 },
      undercut: { width: 1.2, depth: 0.3, radius: 0.3 },
      slotWidth: { nominal: 8.08 },
      // Slot less 0.15; 42 + 6 - 1; slot and 8 up; a third of the slot and 1.5 to the half, 4 at the most.
      shim: { width: 7.93, length: 47, headWidth: 16.5, headLength: 8, hole: 4, corner: 0.5 },
      stock: { length: 76 }, // 48 of part, 3 and 25
    })
    // The first tooth just enters: 12.5 + 11.842719 - 0.05 - 12.5, to 0.01; what is missing to 28.3 in two shims.
    expect(large.backWall.nominal).toBeCloseTo(11.79, 9)
    expect(large.shims).toEqual([1.055, 1.055])
    expect(large.passes.map(({ over }) => over)).toEqual([26.19, 27.245, 28.3].map((over) => expect.closeTo(over, 9)))
  })

  it('its plate hole clears the slot’s corners', () => {
    // Worked scenario, derived: 25 bore, 8 × 7, sharp corners.
    expect(job('mm', 25, 28.3, 40, { ...eight, toothWidth: 8 }).bushing.plateHoleRadius).toBeCloseTo(16.498466, 6)
  })

  it('mike over back, shims and last tooth: the last reading is across', () => {
    const { bushing, section } = job('in', 0.75, 0.836842, 1, threeSixteenths)
    expect(bushing.passes.map(({ shims }) => shims)).toEqual([0, 1])
    expect(bushing.passes.at(-1)?.over).toBeCloseTo(section.across, 6)
  })
})

describe('packs of shim stock', () => {
  const stock = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.5, 2, 3]

  it('one leaf where one does, and says what is missing', () => {
    expect(packOf(0.5, stock, 0.01)).toEqual({ leaves: [0.5], short: 0 })
    const { leaves, short } = packOf(1.613, stock, 0.01)
    expect(leaves.reduce((sum, leaf) => sum + leaf, 0) + short).toBeCloseTo(1.613, 6)
  })

  it('is never farther off than the best of up to three leaves, by trying them all', () => {
    for (let wanted = 0.23; wanted < 4; wanted += 0.171) {
      const { leaves, short } = packOf(wanted, stock, 0.01)
      expect(leaves.length).toBeLessThanOrEqual(4)
      expect(leaves.reduce((sum, leaf) => sum + leaf, 0) + short).toBeCloseTo(wanted, 5)
      const none = [0, ...stock]
      let nearest = Infinity
      for (const a of none)
        for (const b of none)
          for (const c of none) {
            const left = wanted - a - b - c
            if (left > -0.01 && Math.abs(left) < Math.abs(nearest)) nearest = left
          }
      expect(Math.abs(short), `${wanted}: ${leaves}`).toBeLessThanOrEqual(Math.max(Math.abs(nearest), 0.01) + 1e-6)
    }
  })
})

describe('the bushing’s sizes among themselves', () => {
  it('close to a millionth: floor from bore and axis, plunge, stroke, what stands below', () => {
    for (const units of ['mm', 'in'] as const) {
      const { bushing, section, broach, spec } = withBushing({
        name: 'closing',
        units,
        bore: { diameter: units === 'mm' ? 25 : 1, length: units === 'mm' ? 40 : 1.5 },
        hub: { outside: units === 'mm' ? 70 : 3 },
        feature: { keyway: units === 'mm' ? { standard: 'iso-773' } : { standard: 'asme-b17.1' } },
        tooling: {
          press: {
            broach:
              units === 'mm'
                ? {
                    toothWidth: 8,
                    bodyWidth: 7.98,
                    firstTooth: 12.5,
                    lastTooth: 14.4,
                    pilot: 12,
                    teeth: 26,
                    toothedLength: 150,
                    overall: 210,
                    pilotLength: 28,
                  } // prettier-ignore
                : {
                    toothWidth: 0.251,
                    bodyWidth: 0.25,
                    firstTooth: 0.5,
                    lastTooth: 0.57,
                    pilot: 0.48,
                    teeth: 24,
                    toothedLength: 6,
                    overall: 8,
                    pilotLength: 1,
                  }, // prettier-ignore
          },
        },
      })
      if (!broach) throw new Error('no broach')
      const middle = (bushing.outside.lower + bushing.outside.upper) / 2
      const wall = bushing.backWall.nominal
      expect(bushing.floorFromBore).toBeCloseTo(wall - section.boreRadius, 9)
      expect(bushing.floorFromAxis).toBeCloseTo(wall - middle / 2, 9)
      expect(bushing.plungeDepth).toBeCloseTo(bushing.outside.lower - wall, 9)
      expect(bushing.cornerWall).toBeCloseTo(
        middle / 2 - Math.hypot(wall - middle / 2, bushing.slotWidth.nominal / 2),
        9,
      )
      expect(bushing.passes.at(-1)?.over).toBeCloseTo(section.across, 6)
      expect(bushing.stroke).toBeCloseTo(spec.bore.length + broach.toothedLength, 9)
      expect(bushing.below).toBeCloseTo(broach.pilotLength + broach.toothedLength, 9)
      expect(bushing.daylight).toBeCloseTo(spec.bore.length + broach.overall - broach.pilotLength, 9)
    }
  })
})
