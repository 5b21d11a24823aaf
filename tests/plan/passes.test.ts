import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Design, design, sizesOf } from '../../src/design.ts'
import { engagedAt } from '../../src/dimensions/engaged.ts'
import { planOf as planWith } from '../../src/plan/passes.ts'
import { readSpec } from '../../src/spec/read.ts'

type Json = Readonly<Record<string, unknown>>

const designed = (document: object): Design & { readonly plan: NonNullable<Design['plan']> } => {
  const read = readSpec({ name: 'plain', ...document })
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  const made = design(read.spec)
  if (!made.plan) throw new Error('no plan')
  return { ...made, plan: made.plan }
}
const planOf = (document: object) => designed(document).plan

const inch = 25.4
const bar = {
  machine: 'mill',
  behind: 2,
  diameter: 0.625,
  projection: 0.2,
  bit: { shape: 'square', size: 0.25 },
  nose: { width: 0.25 },
  infeed: 0.001,
}
const job = {
  units: 'in',
  bore: { diameter: 1, tolerance: [0, 0], length: 1 },
  hub: { outside: 3, material: 'mild steel' },
  feature: { keyway: { width: 0.25, across: 1.114123 } },
  tooling: { bar },
}
const inchJob = (change: Json, rest: Json = {}) => ({ ...job, tooling: { bar: { ...bar, ...change } }, ...rest })

/** 25 mm bore, 8 × 7. */
const metric = (change: Json, rest: Json = {}) => ({
  units: 'mm',
  bore: { diameter: 25, length: 40 },
  hub: { outside: 60 },
  feature: { keyway: { standard: 'iso-773' } },
  tooling: { bar: { diameter: 18, bit: { size: 8 }, nose: { width: 8 }, infeed: 0.02, ...change } },
  ...rest,
})

const isWhole = (value: number, step: number) => Math.abs(value / step - Math.round(value / step)) < 1e-6

describe('passes', () => {
  it('130 passes of .001 and 9.75 minutes for 1/4 in a 1 in bore; 123 of even force: worked scenario, derived', () => {
    const plan = planOf(job)
    expect(plan.passes).toBe(130)
    expect(plan.minutes).toBeCloseTo(9.75, 9)
    expect(plan.lanes[0]?.evenPasses).toBe(123)
  })

  it('stages at the quarters: across .984123 to 1.114123 by .0325, worked scenario, derived; whole passes between', () => {
    const { checks } = planOf(job)
    expect(checks.map(({ after }) => after)).toEqual([33, 65, 98, 130])
    const wanted = [0.984123 + 0.033, 0.984123 + 0.065, 0.984123 + 0.098, 1.114123]
    checks.forEach(({ across }, i) => expect(across / inch).toBeCloseTo(wanted[i] ?? 0, 5))
  })

  it('a 6 mm nose in 25/8 takes 198 passes a side, and the second side cuts only what the first left (derived)', () => {
    const { plan } = designed({
      ...metric({ diameter: 16, bit: { size: 6 }, nose: { width: 6, cornerRadius: 0 } }),
      bore: { diameter: 25, tolerance: [0, 0], length: 40 },
      feature: { keyway: { width: 8, across: 28.3 } },
    })
    expect(plan.lanes.map(({ passes }) => passes)).toEqual([198, 198])
    const [first, second] = plan.cuts
    if (!first || !second) throw new Error('two lanes')
    expect(Math.max(...first.passes.map(({ engaged }) => engaged))).toBeCloseTo(6, 9)
    expect(Math.max(...second.passes.map(({ engaged }) => engaged))).toBeCloseTo(2, 9)
    // No zero for the second lane: the same last reading.
    expect(second.to).toBe(first.to)
    expect(second.passes.length).toBeLessThan(first.passes.length)
  })
})

describe('what the dial reads', () => {
  it('the crown is cut away at 12.5 less touch at 11.842719, and the lag, up to the next mark', () => {
    const made = designed(
      metric(
        { machine: 'mill', nose: { width: 8, cornerRadius: 0 } },
        { bore: { diameter: 25, tolerance: [0, 0], length: 40 }, feature: { keyway: { width: 8, across: 28.3 } } },
      ),
    )
    const { crown, mark } = made.plan.dial
    const wanted = 12.5 - 11.842719 + (made.loads?.lag.most ?? NaN)
    expect(crown).toBeGreaterThanOrEqual(wanted - 1e-6)
    expect(crown).toBeLessThan(wanted + mark)
  })

  it('a dial that reads diameter goes twice as far: .130 is .260, 130 marks of .002 (worked scenario, derived)', () => {
    const { dial } = planOf(inchJob({ machine: 'lathe', dial: { mark: 0.002, reads: 'diameter' } }))
    expect(dial.target / inch).toBeCloseTo(0.26, 5)
    expect(dial.marks).toBeCloseTo(130, 3)
    expect(dial.perInfeed).toBe(2)
  })

  it('a slide set over by 5.739170° gives .0001 for .001, by 30° half (derived)', () => {
    const { slide } = planOf(inchJob({ dial: { mark: 0.001 } }))
    const [half, tenth] = slide
    expect(half?.angle).toBeCloseTo(30, 9)
    expect((half?.infeed ?? 0) / inch).toBeCloseTo(0.0005, 9)
    expect(tenth?.angle).toBeCloseTo(5.73917, 6)
    expect((tenth?.infeed ?? 0) / inch).toBeCloseTo(0.0001, 9)
  })

  it('with the slide set over the readings are larger, and the cut is the same', () => {
    const across = planOf(metric({}))
    const over = planOf(metric({ dial: { mark: 0.05, slide: 30 } }))
    expect(over.dial.perInfeed).toBeCloseTo(2, 9)
    expect(over.target.x).toBeCloseTo(across.target.x, 9)
    expect(over.cuts[0]?.readout.at(-1)).toBeCloseTo(across.cuts[0]?.readout.at(-1) ?? 0, 9)
    expect((over.cuts[0]?.to ?? 0) / 2).toBeCloseTo(across.cuts[0]?.to ?? 0, 1)
  })

  it('runs backwards on a lathe whose nose points to the front, and only there', () => {
    expect(planOf(metric({ points: 'front' })).dial.runs).toBe('out')
    expect(planOf(metric({})).dial.runs).toBe('in')
    expect(planOf(metric({ points: 'front', machine: 'mill' })).dial.runs).toBe('in')
  })

  it('reading and across go over into one another at every gate', () => {
    const { dial, cuts } = planOf(metric({ dial: { mark: 0.02, reads: 'diameter' } }))
    for (const { gates } of cuts)
      for (const { reading, byDial } of gates)
        expect((byDial - dial.acrossAtZero) * dial.perInfeed).toBeCloseTo(reading, 9)
  })
})

describe('the target, one rule', () => {
  it('a .625 bar 2.5 long says: dial .130, expect .1252 to .1288; the dial ends .000778 past it (derived)', () => {
    const made = designed(job)
    const { asked, bar, loads, section, spec } = made
    if (!asked || !bar || !loads) throw new Error('no loads')
    const lag = { least: 0.001213 * inch, most: 0.004828 * inch }
    const residual = { least: 0.000778 * inch, most: 0.003519 * inch }
    const plan = planWith(spec, asked, bar, section, { ...loads, lag, residual, springPasses: 5 })
    expect(plan.target.infeed / inch).toBeCloseTo(0.130778, 6)
    const [gate] = plan.cuts[0]?.gates ?? []
    expect(((gate?.byDial ?? 0) - (gate?.expected ?? 0)) / inch).toBeCloseTo(0.13 - 0.1252, 4)
    expect(((gate?.byDial ?? 0) - ((gate?.most ?? 0) - 0.08)) / inch).toBeCloseTo(0.13 - 0.1288, 4)
    const last = plan.cuts[0]?.gates.at(-1)
    expect(((last?.byDial ?? 0) - (last?.expected ?? 0)) / inch).toBeLessThanOrEqual(0.003519 + 1e-9)
  })

  it('where the bar always gives way: spring passes, and the least that they leave', () => {
    const { plan, loads, section } = designed(
      inchJob({ infeed: 0.0005 }, { bore: { diameter: 1, tolerance: [0, 0], length: 1.5 } }),
    )
    if (!loads) throw new Error('no loads')
    expect(loads.lag.least).toBeGreaterThan(0)
    expect(plan.target.rule).toBe('spring passes to no chip')
    expect(plan.target.x).toBeCloseTo(section.floor + loads.residual.least, 9)
    expect(plan.target.springPasses).toBeGreaterThanOrEqual(3)
    expect(plan.target.springPasses).toBeLessThanOrEqual(5)
  })

  it('where the cut may draw the bar in: full cuts, short by what it draws in', () => {
    const { plan, loads, section } = designed(
      inchJob(
        { diameter: 0.75, projection: 0.3, rake: 20 },
        {
          bore: { diameter: 1.25, tolerance: [0, 0], length: 0.5 },
          feature: { keyway: { width: 0.25, across: 1.38 } },
        },
      ),
    )
    if (!loads) throw new Error('no loads')
    expect(loads.lag.least).toBeLessThan(0)
    expect(plan.target.rule).toBe('full cuts to size')
    expect(plan.target.x).toBeCloseTo(section.floor + loads.lag.least, 9)
    expect(plan.target.springPasses).toBe(0)
    expect(plan.cuts.flatMap(({ gates }) => gates.map(({ springPasses }) => springPasses)).every((n) => n === 0)).toBe(
      true,
    )
  })

  it('stainless hardens under a light cut: full cuts, no spring passes, and the lower end of the lag', () => {
    const { plan, loads, section } = designed(metric({}, { hub: { outside: 60, material: '304' } }))
    if (!loads) throw new Error('no loads')
    expect(plan.target.rule).toBe('full cuts to size')
    expect(plan.target.x).toBeCloseTo(section.floor + loads.lag.least, 9)
    for (const { runs, passes } of plan.cuts) {
      // The last cut is as thick as the others.
      expect(runs.at(-1)?.by).toBeCloseTo(0.02, 9)
      expect(Math.max(...passes.map(({ chip }) => chip))).toBeLessThanOrEqual(0.04 + 1e-9)
    }
  })

  it('is on the dial’s mark, toward shallow, less than a mark short', () => {
    for (const mark of [0.02, 0.05, 0.025]) {
      const { target, dial } = planOf(metric({ dial: { mark } }))
      expect(isWhole(target.reading, mark)).toBe(true)
      const exact = target.infeed * dial.perInfeed
      expect(target.reading).toBeLessThanOrEqual(exact + 1e-6 * mark)
      expect(target.reading).toBeGreaterThan(exact - mark)
    }
  })
})

describe('gates', () => {
  it('a 24 mm bore for a pulley, as its card has them: whole readings, and the last 0.1 apart', () => {
    const { cuts, bores } = planOf({
      units: 'mm',
      bore: { diameter: 24, length: 38 },
      hub: { outside: 62, material: 'grey iron' },
      feature: { keyway: { standard: 'iso-773' } },
      tooling: {
        bar: {
          diameter: 18,
          projection: 4.1,
          bit: { size: 8 },
          nose: { width: 7.99, cornerRadius: 0.2 },
          infeed: 0.02,
        },
      },
    })
    expect(cuts).toHaveLength(1)
    expect(cuts[0]?.gates.map(({ reading }) => reading)).toEqual([1, 2, 3, 3.9, 4])
    expect(cuts[0]?.gates.map(({ kind }) => kind)).toEqual(['part', 'part', 'part', 'edge', 'last'])
    expect(cuts[0]?.runs.map(({ by }) => by)).toEqual([0.04, 0.02, 0.01])
    expect(cuts[0]?.runs.slice(1).map(({ to }) => to)).toEqual([3.9, 4])
    expect(bores.reading).toBe(4)
    expect(bores.rows.map(({ bore }) => Math.round(bore * 1000) / 1000)).toEqual([
      24, 24.003, 24.006, 24.009, 24.012, 24.015, 24.018, 24.021,
    ])
  })

  it('expect the slot behind the dial by the lag’s upper end, and go on 0.08 to either side of the band', () => {
    const { plan, loads } = designed(metric({}))
    if (!loads) throw new Error('no loads')
    const part = plan.cuts[0]?.gates.find(({ kind }) => kind === 'part')
    if (!part) throw new Error('no gate')
    expect(part.byDial - (part.expected ?? 0)).toBeCloseTo(loads.lag.most, 2)
    expect(part.least).toBeCloseTo((part.expected ?? 0) - 0.08, 9)
    expect(part.most).toBeCloseTo(part.byDial - loads.lag.least + 0.08, 2)
  })

  it('slots right opposite: between floors, twice as far behind', () => {
    const { plan, section } = designed(metric({}, { feature: { keyway: { standard: 'iso-773', at: [0, 180] } } }))
    expect(plan.gateBy).toBe('floor to floor')
    for (const gate of plan.cuts[0]?.gates ?? []) {
      const lag = gate.byDial - (gate.expected ?? 0)
      expect(gate.floorToFloor?.byDial).toBeCloseTo(2 * (gate.byDial - section.boreRadius), 9)
      expect((gate.floorToFloor?.byDial ?? 0) - (gate.floorToFloor?.expected ?? 0)).toBeCloseTo(2 * lag, 9)
    }
  })

  it('no more is let pass between floors than twice the floor: across of exactly 28.3 in 25 makes 31.6', () => {
    const { plan } = designed(
      metric(
        {},
        {
          bore: { diameter: 25, tolerance: [0, 0], length: 40 },
          feature: { keyway: { width: 8, across: 28.3, at: [0, 180] } },
        },
      ),
    )
    const last = plan.cuts[0]?.gates.at(-1)?.floorToFloor
    expect(last?.most).toBeCloseTo(Math.max(31.6, last?.byDial ?? NaN), 9)
    expect(last?.byDial).toBeLessThan(31.7)
  })

  it('over a plug and across stand behind the dial alike: it is one floor', () => {
    const { plan } = designed(metric({}, { feature: { keyway: { standard: 'iso-773', at: [0, 170] } } }))
    expect(plan.gateBy).toBe('plug and blocks')
    for (const { overPlug, byDial, expected, least } of plan.cuts[0]?.gates ?? []) {
      expect((overPlug?.byDial ?? NaN) - (overPlug?.expected ?? NaN)).toBeCloseTo(byDial - (expected ?? NaN), 9)
      expect((overPlug?.expected ?? NaN) - (overPlug?.least ?? NaN)).toBeCloseTo((expected ?? NaN) - least, 9)
    }
  })

  it('a measured bore has its own row and its own last gate', () => {
    const { bores, target } = planOf(metric({}, { bore: { diameter: 25, measured: 25.019, length: 40 } }))
    expect(bores.rows.map(({ bore }) => bore)).toEqual([25.019])
    expect((bores.rows[0]?.infeed ?? 0) + target.allowance).toBeCloseTo(target.infeed, 9)
  })

  it('two settings: all of the first before any of the second, the break on a mark and no deeper than it reaches', () => {
    // Derived: an 8 mm bar in a 10 mm bore, 4 × 4, clearances 0.1: 1.382576 reaches x = 6.386045, then 1.796530 the floor.
    const stages = [
      { projection: 1.382576, projectionMin: 1.38, projectionMax: 1.382576, from: 4.582576, to: 6.386045 },
      { projection: 1.79653, projectionMin: 1.79653, projectionMax: 3.186045, from: 6.386045, to: 6.8 },
    ]
    const made = designed({
      units: 'mm',
      bore: { diameter: 10, tolerance: [0, 0], length: 12 },
      hub: { outside: 30 },
      feature: { keyway: { width: 4, across: 11.8 } },
      tooling: { bar: { diameter: 7, bit: { size: 3 }, nose: { width: 4, cornerRadius: 0 } } },
    })
    const { asked, bar, section, spec } = made
    if (!asked || !bar) throw new Error('no bar')
    const plan = planWith(spec, asked, { ...bar, projection: 1.79653, overBarAndNose: 9.79653, stages }, section)
    expect(plan.settings.map(({ projection }) => projection)).toEqual([1.382576, 1.79653])
    expect(plan.settings[0]?.overBarAndNose).toBeCloseTo(9.382576, 9)
    expect(plan.settings[0]?.to).toBeCloseTo(1.8, 9)
    expect(plan.settings.map(({ from }) => from)).toEqual([0, plan.settings[0]?.to])
    expect(plan.cuts.map(({ setting }) => setting)).toEqual([0, 1])
    expect(plan.cuts[0]?.gates.at(-1)).toMatchObject({ kind: 'setting', reading: plan.settings[0]?.to })
    expect(plan.cuts[0]?.gates.at(-1)?.does).toContain('9.8 over bar and nose')
    expect(plan.cuts[1]?.gates.at(-1)?.kind).toBe('last')
    expect(plan.cuts[1]?.from).toBe(plan.settings[0]?.to)
    // No gate stands so near the break that it is the same.
    const readings = plan.cuts.flatMap(({ gates }) => gates.map(({ reading }) => reading))
    expect(Math.min(...readings.map((reading, n) => reading - (readings[n - 1] ?? 0)))).toBeGreaterThan(0.05)
  })
})

describe('bores', () => {
  it('across held: the infeed of another bore is touch and floor of that bore, by bisection', () => {
    const { bores, plan, section } = ((made) => ({ ...made, bores: made.plan.bores }))(
      designed(metric({ nose: { width: 8, cornerRadius: 0 } })),
    )
    const touch = (radius: number) => {
      let [low, high] = [0, radius]
      for (let n = 0; n < 80; n++) {
        const x = (low + high) / 2
        if (x ** 2 + (section.width / 2) ** 2 < radius ** 2) low = x
        else high = x
      }
      return low
    }
    for (const { bore, infeed, left } of bores.rows) {
      expect(infeed).toBeCloseTo(section.across - bore / 2 - touch(bore / 2), 9)
      expect(left).toBeCloseTo(infeed - bores.reading / plan.dial.perInfeed, 9)
    }
  })

  it('a bore .1 oversize with the old infeed would be .103 wrong (derived: 25/8)', () => {
    const exact = metric({ nose: { width: 8, cornerRadius: 0 } }, { feature: { keyway: { width: 8, across: 28.3 } } })
    const at = (measured: number) =>
      planOf({ ...exact, bore: { diameter: 25, tolerance: [0, 0.2], measured, length: 40 } }).bores.rows[0]?.infeed ?? 0
    expect(at(25) - at(25.1)).toBeCloseTo(0.103, 3)
    // Derived: measured 25.0105, infeed 4.046489, for across 28.4.
    const middle = planOf({
      ...exact,
      feature: { keyway: { width: 8, across: [28.3, 28.5] } },
      bore: { diameter: 25, measured: 25.0105, length: 40 },
    })
    expect(middle.bores.rows[0]?.infeed).toBeCloseTo(4.046489, 6)
  })
})

describe('any job', () => {
  const anyJob = fc.record({
    diameter: fc.integer({ min: 8, max: 60 }),
    length: fc.integer({ min: 6, max: 60 }),
    material: fc.constantFrom('mild steel', 'grey iron', 'brass', '6061', '304', 'c45'),
    mark: fc.constantFrom(0.01, 0.02, 0.025, 0.05),
    reads: fc.constantFrom('travel', 'diameter'),
    feature: fc.constantFrom(
      ...[[0], [0, 90], [0, 180]].map((at) => () => ({ keyway: { standard: 'iso-773', at } })),
      (bore: number) => ({ spline: { count: 6, width: bore / 6, major: 1.13 * bore } }),
      (bore: number) => ({ socket: { sides: 4, across: 0.97 * bore } }),
      (bore: number) => ({ slit: { width: 0.06 * bore, count: 2, outside: 1.3 * bore } }),
      (bore: number) => ({ groove: { radius: 0.07 * bore, depth: 0.04 * bore } }),
    ),
  })

  it('gates ascend, readings are marks, no pass asks more than the cap, and a readout ends at the target', () => {
    let looked = 0
    fc.assert(
      fc.property(anyJob, ({ diameter, length, material, mark, reads, feature }) => {
        const read = readSpec({
          name: 'any',
          units: 'mm',
          bore: { diameter, length },
          hub: { outside: 3 * diameter, material },
          feature: feature(diameter),
          tooling: { bar: { dial: { mark, reads } } },
        })
        if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
        const { plan, bar, section, loads } = sizesOf(read.spec)
        if (!plan || !bar) return
        looked += 1
        const { dial, target, infeedPerPass, cuts } = plan
        const strips = bar.lanes.map(({ offset }) => [offset - bar.noseWidth / 2, offset + bar.noseWidth / 2] as const)
        for (const cut of cuts) {
          const readings = cut.gates.map(({ reading }) => reading)
          expect(readings).toEqual([...new Set(readings)].toSorted((a, b) => a - b))
          for (const reading of readings) expect(isWhole(reading, dial.mark)).toBe(true)
          // Across can be measured: the crown is cut away.
          for (const { x, kind } of cut.gates)
            if (kind === 'part') expect(x).toBeGreaterThanOrEqual(Math.min(section.boreRadius, target.x) - 1e-9)
          for (const { to } of cut.runs) expect(isWhole(to, dial.finest)).toBe(true)
          expect(cut.gates.at(-1)?.reading).toBe(cut.to)
          expect(cut.passes.reduce((sum, { chip }) => sum + chip, 0)).toBeCloseTo(
            (cut.to - cut.from) / dial.perInfeed,
            6,
          )
          const flat = section.kind !== 'socket' && section.kind !== 'groove'
          const width = flat && bar.lanes.length === 1 ? section.width : bar.noseWidth
          const nose = { width, offset: cut.offset, cut: strips.slice(0, cut.lane) }
          for (const { x, chip, force } of cut.passes) {
            expect(chip).toBeLessThanOrEqual(2 * infeedPerPass + 1e-9)
            if (force !== undefined && loads) {
              // Whole nose at the planned infeed, width as cut in place of the nose's: nothing asks more.
              expect(force).toBeLessThanOrEqual(loads.cuttingForce * Math.max(1, width / bar.noseWidth) * (1 + 1e-6))
              if (flat) expect(engagedAt(section, nose, x).edge).toBeLessThanOrEqual(width + 1e-9)
            }
          }
          if (cut.setting === plan.settings.length - 1) expect(cut.readout.at(-1) ?? target.x).toBeCloseTo(target.x, 9)
          // Never deeper than the smallest infeed of the bores in limits.
          expect(cut.to / dial.perInfeed).toBeLessThanOrEqual(
            Math.min(...plan.bores.rows.map(({ infeed }) => infeed)) + 1e-6,
          )
        }
      }),
      { numRuns: 25 },
    )
    expect(looked).toBeGreaterThan(10)
  })

  it('of a socket: two flats move apart by 2 cos(180°/n) of the infeed', () => {
    const missing = (sides: number, reads: string) =>
      designed({
        units: 'mm',
        bore: { diameter: sides === 4 ? 17.4 : 20, length: 22 },
        hub: { outside: 45, material: 'grey iron' },
        feature: { socket: { sides, across: sides === 4 ? [16, 16.1] : [19, 19.1] } },
        tooling: { bar: { machine: 'lathe', dial: { mark: 0.02, reads } } },
      }).plan?.missingOnDial
    // A square's V is of 90°: 1 / (2 sin 45°); a hexagon's of 120°: 1 / (2 sin 60°). A dial of diameters reads twice.
    expect(missing(4, 'travel')).toBeCloseTo(1 / Math.sqrt(2), 9)
    expect(missing(6, 'travel')).toBeCloseTo(1 / Math.sqrt(3), 9)
    expect(missing(6, 'diameter')).toBeCloseTo(2 * 0.57735, 5)
  })
})
