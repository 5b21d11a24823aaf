import { describe, expect, it } from 'vitest'
import { deflection, digIn, giveBand, type Held, holeStress, netSection, rootStress } from '../../src/mechanics/bar.ts'
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
    expect(soft.left / inch).toBeCloseTo(0.00164, 5)
  })

  it('hooks in when raked too far: worked scenario, derived', () => {
    const rows = [
      [10, 0.625, 0.2, 0.25, 1.5, 0.0345],
      [20, 0.625, 0.2, 0.25, 1.5, 0.5054],
      [25, 0.625, 0.2, 0.25, 1.5, 0.9304],
      [10, 0.5, 0.25, 0.25, 1.25, 0.1412],
      [20, 0.5, 0.25, 0.25, 1.25, 0.9259],
      [10, 0.25, 0.15, 0.09375, 0.59, 0.1551],
      [25, 0.25, 0.15, 0.09375, 0.59, 0.7641],
    ] as const
    for (const [rake, d, p, w, L, wanted] of rows) {
      const slope = ((1 - mild.exponent) * force(w, rake)(chip)) / chip
      expect(digIn(held(d, L, p), thrustRatio(rake).least, slope)).toBeCloseTo(wanted, 3)
    }
  })

  it('a pull cut cannot dig in while there is thrust', () => {
    const bar: Held = { ...held(0.5, 1.25, 0.25), stroke: 'pull' }
    expect(digIn(bar, 0.3, 20_000)).toBeLessThan(0)
  })
})

describe('stress in the bar', () => {
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
    expect(netSection(0.4).modulus).toBeCloseTo(0.407995, 5)
  })

  it('peak at the hole and bending at the root: worked scenario, derived, N/mm²', () => {
    const bar = held(0.625, 2.5, 0.2)
    const F = force(0.25)(chip)
    expect(holeStress(bar, 0.556764, F)).toBeCloseTo(185.3, 0)
    expect(rootStress(bar, F, { least: 0.466308, most: 1 })).toBeCloseTo(54.1, 1)
    expect(rootStress({ ...bar, stroke: 'pull' }, F, { least: 0.466308, most: 1 })).toBeCloseTo(81.9, 1)
  })
})
