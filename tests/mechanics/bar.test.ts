import { describe, expect, it } from 'vitest'
import {
  bendsTo,
  deflection,
  digIn,
  giveBand,
  type Held,
  holeStress,
  holeStresses,
  netSection,
  petersonFactor,
  rootStress,
  rootStresses,
} from '../../src/mechanics/bar.ts'
import { cuttingForce, thrustRatio } from '../../src/mechanics/cutting.ts'
import { lag, residual, springPasses } from '../../src/mechanics/lag.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'

const inch = 25.4
const mild =
  kienzleGroup(1) ??
  (() => {
    throw new Error('no group 1')
  })() // prettier-ignore
const held = (diameter: number, overhang: number, projection: number, machine = 5000): Held => ({
  diameter: diameter * inch,
  overhang: overhang * inch,
  projection: projection * inch,
  machine,
  stroke: 'push',
})
const force =
  (width: number, rake = 10) =>
  (chip: number) =>
    cuttingForce(mild, width * inch, chip, rake, 'worn')
const chip = 0.0127

describe('the bar as a cantilever', () => {
  it('end-loaded, as a general beam page prints it: L 15 in, Ø5, 20 lbf, E 30e6 psi: 2.44462e-5 in', () => {
    const bar = held(5, 15, -2.5)
    // The eccentricity is nothing here; the page’s modulus is 30e6 psi, ours 207 GPa.
    const page = 2.4446199e-5 * inch * ((30e6 * 0.00689475729) / 207_000)
    expect(-deflection(bar, 0, 20 * 4.4482216152605)).toBeCloseTo(page, 9)
  })

  it('digs in when short and is pushed off when long: worked scenario, derived, inches', () => {
    const F = force(0.25)(chip)
    expect(F).toBeCloseTo(420.602865, 4)
    const at = (L: number, ratio: number) => deflection(held(0.625, L, 0.2), F, ratio * F) / inch
    expect(at(1.5, 0.466308)).toBeCloseTo(0.000022, 6)
    expect(at(1.5, 1)).toBeCloseTo(-0.000231, 6)
    expect(at(2.5, 0.466308)).toBeCloseTo(-0.000348, 6)
    expect(at(2.5, 0.7)).toBeCloseTo(-0.00086, 6)
    expect(at(5, 0.466308)).toBeCloseTo(-0.005476, 6)
    expect(at(5, 0.7)).toBeCloseTo(-0.00957, 6)
    expect(at(5, 1)).toBeCloseTo(-0.014826, 6)
  })

  it('lags and leaves a residual: worked scenario, derived, inches', () => {
    const rows = [
      [0.625, 1.75, 0.2, 0.25, 3.591589, 22.543551, 0.000595, 0.003733, 0.000482, 0.00265],
      [0.625, 1.75, 0.2, 0.125, 3.591589, 22.543551, 0.000297, 0.001867, 0.000297, 0.001424],
      [0.625, 2.5, 0.2, 0.25, 7.326428, 29.158504, 0.001213, 0.004828, 0.000778, 0.003519],
      [0.75, 4.8, 0.25, 0.25, 18.955324, 56.325424, 0.003139, 0.009327, 0.0017, 0.006711],
      [1, 4.8, 0.25, 0.25, 9.513916, 30.93565, 0.001575, 0.005123, 0.000951, 0.003625],
    ] as const
    for (const [d, L, p, w, cLo, cHi, lagLo, lagHi, resLo, resHi] of rows) {
      const bar = held(d, L, p)
      const give = giveBand(bar, thrustRatio(10))
      expect(give.least * 1e5).toBeCloseTo(cLo, 5)
      expect(give.most * 1e5).toBeCloseTo(cHi, 5)
      const cut = {
        force: force(w),
        planned: chip,
        least: 0.005,
        edgeThrust: w * inch * 40,
        give: 1 / 5000 + bar.overhang ** 3 / (3 * 207_000 * (Math.PI / 64) * bar.diameter ** 4),
      }
      expect(lag(cut, give).least / inch).toBeCloseTo(lagLo, 5)
      expect(lag(cut, give).most / inch).toBeCloseTo(lagHi, 5)
      expect(residual(cut, give).least / inch).toBeCloseTo(resLo, 5)
      expect(residual(cut, give).most / inch).toBeCloseTo(resHi, 5)
    }
  })

  it('needs few spring passes on a stiff machine: worked scenario, derived', () => {
    const bar = held(0.625, 2.5, 0.2, Infinity)
    const give = giveBand(bar, { least: 0.7, most: 0.7 }).most
    const cut = { force: force(0.25), planned: chip, least: 0.005, edgeThrust: 0, give }
    const stiff = springPasses(cut, give)
    expect(stiff.passes).toBe(1)
    expect(stiff.left / inch).toBeCloseTo(0.000565, 5)
    const real = giveBand(held(0.625, 2.5, 0.2), { least: 0.7, most: 0.7 }).most
    const soft = springPasses(cut, real)
    expect(soft.passes).toBe(5)
    expect((real * cut.force(chip)) / inch).toBeCloseTo(0.003178, 5)
    expect(soft.left / inch).toBeCloseTo(0.00164, 5)
    // An inch longer on a machine that does not give.
    const long = giveBand(held(0.625, 3.5, 0.2, Infinity), { least: 0.7, most: 0.7 }).most
    const longer = springPasses(cut, long)
    expect(longer.passes).toBe(5)
    expect(longer.left / inch).toBeCloseTo(0.001409, 5)
  })

  it('hooks in when raked too far: worked scenario, derived', () => {
    const rows = [
      [10, 0.625, 0.2, 0.25, 1.5, 0.0345, 0.0345],
      [20, 0.625, 0.2, 0.25, 1.5, 0.5054, 0.1625],
      [25, 0.625, 0.2, 0.25, 1.5, 0.9304, 0.2094],
      [10, 0.5, 0.25, 0.25, 1.25, 0.1412, 0.1412],
      [20, 0.5, 0.25, 0.25, 1.25, 0.9259, 0.3117],
      [25, 0.5, 0.25, 0.25, 1.25, 1.3482, 0.3728],
      [10, 0.25, 0.15, 0.09375, 0.59, 0.1551, 0.1551],
      [20, 0.25, 0.15, 0.09375, 0.59, 0.601, 0.2554],
      [25, 0.25, 0.15, 0.09375, 0.59, 0.7641, 0.2903],
    ] as const
    for (const [rake, d, p, w, L, wanted, barAlone] of rows) {
      const slope = ((1 - mild.exponent) * force(w, rake)(chip)) / chip
      expect(digIn(held(d, L, p), thrustRatio(rake).least, slope)).toBeCloseTo(wanted, 4)
      expect(digIn(held(d, L, p, Infinity), thrustRatio(rake).least, slope)).toBeCloseTo(barAlone, 4)
    }
  })

  it('aluminium raked 25 and 30° hooks in a slim bar: .7903 and .9923 of it (derived)', () => {
    const aluminium = kienzleGroup(21) ?? mild
    for (const [rake, wanted] of [
      [25, 0.7903],
      [30, 0.9923],
    ] as const) {
      const slope = ((1 - aluminium.exponent) * cuttingForce(aluminium, 0.25 * inch, chip, rake, 'worn')) / chip
      expect(digIn(held(0.5, 1.25, 0.25), thrustRatio(rake).least, slope)).toBeCloseTo(wanted, 3)
    }
  })

  it('a pull cut cannot dig in while there is thrust', () => {
    const bar: Held = { ...held(0.5, 1.25, 0.25), stroke: 'pull' }
    expect(digIn(bar, 0.3, 20_000)).toBeLessThan(0)
  })
})

describe('which way the nose goes', () => {
  it('is told from the band: .625 bar, 1.5, 2.5 and 5 in long: worked scenario, derived', () => {
    const F = force(0.25)(chip)
    const band = (L: number) => {
      const ends = [thrustRatio(10).least, 1].map((ratio) => deflection(held(0.625, L, 0.2), F, ratio * F))
      return { least: Math.min(...ends), most: Math.max(...ends) }
    }
    expect([1.5, 2.5, 5].map((L) => bendsTo(band(L)))).toEqual(['may do either', 'pushes off', 'pushes off'])
    // Neutral at a thrust of 1.5·e/L of the cut: .5125, .3075, .15375.
    for (const [L, ratio] of [
      [1.5, 0.5125],
      [2.5, 0.3075],
      [5, 0.15375],
    ] as const)
      expect(deflection(held(0.625, L, 0.2), F, ratio * F)).toBeCloseTo(0, 9)
    expect(bendsTo(band(0.5))).toBe('digs in')
  })

  it('a pull cut pushes off more: .75 × 4.8, p .2, thrust .466: push −.002143, pull −.004829 in: worked scenario, derived', () => {
    const F = force(0.25)(chip)
    const bar = held(0.75, 4.8, 0.2)
    expect(deflection(bar, F, 0.466308 * F) / inch).toBeCloseTo(-0.002143, 5)
    expect(deflection({ ...bar, stroke: 'pull' }, F, 0.466308 * F) / inch).toBeCloseTo(-0.004829, 5)
  })
})

describe('stress in the bar', () => {
  it('Peterson’s factor on the whole section, and on what is left: Shigley A-16, solid bar, within 1.5 % (from memory)', () => {
    // hole/bar, factor on the whole, factor on what is left.
    const printed = [
      [0.1, 2.74, 2.27],
      [0.2, 3.03, 2.07],
      [0.3, 3.6, 1.94],
    ] as const
    const shigley = { 0.1: 0.83, 0.2: 0.68, 0.3: 0.54 }
    for (const [ratio, gross, net] of printed) {
      expect(petersonFactor(ratio)).toBeCloseTo(gross, 2)
      expect(((petersonFactor(ratio) ?? 0) * shigley[ratio]) / net).toBeCloseTo(1, 1.5)
    }
    expect(petersonFactor(0.4)).toBeCloseTo(4.18, 2)
    expect(petersonFactor(0.41)).toBeUndefined()
  })

  it('Ø16, 60 long, 500 N at its end, 6 mm hole at the root: 302 N/mm² and 74.60 without the hole: derived from Peterson', () => {
    const nominal = (500 * 60) / ((Math.PI * 16 ** 3) / 32)
    expect(nominal).toBeCloseTo(74.6, 1)
    expect((petersonFactor(6 / 16) ?? 0) * nominal).toBeCloseTo(302, 0)
  })

  it('is expected at 1.71 of what is left, and held at three times: .4 of the bar and beyond: worked scenario, derived', () => {
    const bar = held(0.625, 2.5, 0.2)
    const F = force(0.25)(chip)
    for (const ratio of [0.4, 0.556764]) {
      const direct = F / (netSection(ratio).area * (Math.PI / 4) * bar.diameter ** 2)
      const { expected, bound } = holeStresses(bar, ratio, F)
      expect((bound - direct) / (expected - direct)).toBeCloseTo(3 / 1.7054, 3)
      expect(expected).toBeLessThan(bound)
    }
    // Within the formula's range the whole section gives the same.
    const small = holeStresses(bar, 0.25, F)
    const whole = (F * 0.5125 * inch) / ((Math.PI * bar.diameter ** 3) / 32)
    const area = netSection(0.25).area * (Math.PI / 4) * bar.diameter ** 2
    expect(small.expected).toBeCloseTo((petersonFactor(0.25) ?? 0) * whole + F / area, 6)
  })

  it('peaks at 26 877 psi, 185.3 N/mm²; 213.8 with a dull edge; 369.7 at .001 in: worked scenario, derived', () => {
    const bar = held(0.625, 2.5, 0.2)
    const ratio = 0.347977 / 0.625
    const [usual, dull, thick] = [
      force(0.25)(chip),
      cuttingForce(mild, 0.25 * inch, chip, 10, 'dull'),
      cuttingForce(mild, 0.25 * inch, 2 * chip, 10, 'dull'),
    ].map((cutting) => holeStress(bar, ratio, cutting))
    expect((usual ?? 0) / 0.006894757).toBeCloseTo(26_877, -1)
    expect(usual).toBeCloseTo(185.3, 1)
    expect(dull).toBeCloseTo(213.8, 1)
    expect(thick).toBeCloseTo(369.7, 1)
    // Net section modulus .005604 in³, nominal 8647 psi.
    expect((netSection(ratio).modulus * Math.PI * 0.625 ** 3) / 32).toBeCloseTo(0.005604, 5)
    expect(48.459584 / 0.005604).toBeCloseTo(8647, 0)
  })

  it('bends at the holder from nothing where the two work against one another', () => {
    const bar = held(0.625, 1.5, 0.2)
    expect(rootStresses(bar, 400, { least: 0.2, most: 0.7 }).least).toBe(0)
    // 2.5 in long: 17.8 to 54.1 pushed, 45.6 to 81.9 pulled, N/mm²: worked scenario, derived.
    const long = held(0.625, 2.5, 0.2)
    const F = force(0.25)(chip)
    const band = { least: thrustRatio(10).least, most: 1 }
    const [push, pull] = [rootStresses(long, F, band), rootStresses({ ...long, stroke: 'pull' }, F, band)]
    for (const [got, wanted] of [
      [push.least, 17.8],
      [push.most, 54.1],
      [pull.least, 45.6],
      [pull.most, 81.9],
    ] as const)
      expect(got).toBeCloseTo(wanted, 0)
  })

  it('net section at a diametral hole, by quadrature', () => {
    for (const ratio of [0.25, 0.4, 0.55, 0.7]) {
      const strips = 200_000
      let inertia = 0
      let area = 0
      for (let i = 0; i < strips; i++) {
        const z = -1 + (2 * (i + 0.5)) / strips
        // z runs across the hole: where |z| < ratio only the depth outside nothing is left
        if (Math.abs(z) < ratio) continue
        const half = Math.sqrt(1 - z * z)
        inertia += ((2 * half ** 3) / 3) * (2 / strips)
        area += 2 * half * (2 / strips)
      }
      expect(netSection(ratio).inertia).toBeCloseTo(inertia / (Math.PI / 4), 4)
      expect(netSection(ratio).area).toBeCloseTo(area / Math.PI, 4)
    }
    // Derived: hole over bar, and what is left of second moment, section modulus and area.
    for (const [of, inertia, modulus, area] of [
      [0.25, 0.588724, 0.608032, 0.685038],
      [0.4, 0.373934, 0.407995, 0.504632],
      [0.5, 0.25317, 0.292336, 0.391002],
      [0.55, 0.200852, 0.240494, 0.33683],
      [0.6, 0.154377, 0.192972, 0.284757],
      [0.7, 0.079917, 0.111906, 0.18812],
    ] as const) {
      expect(netSection(of).inertia).toBeCloseTo(inertia, 6)
      expect(netSection(of).modulus).toBeCloseTo(modulus, 6)
      expect(netSection(of).area).toBeCloseTo(area, 6)
    }
  })

  it('peak at the hole and bending at the root: worked scenario, derived, N/mm²', () => {
    const bar = held(0.625, 2.5, 0.2)
    const F = force(0.25)(chip)
    expect(holeStress(bar, 0.556764, F)).toBeCloseTo(185.3, 0)
    expect(rootStress(bar, F, { least: 0.466308, most: 1 })).toBeCloseTo(54.1, 1)
    expect(rootStress({ ...bar, stroke: 'pull' }, F, { least: 0.466308, most: 1 })).toBeCloseTo(81.9, 1)
  })
})
