import { describe, expect, it } from 'vitest'
import { netSection } from '../../src/mechanics/bar.ts'
import {
  ironSafety,
  keyLengthLimit,
  keySafety,
  saeSplinePressure,
  shaftLeftByKeyway,
  shearYield,
  splinePressure,
  splinePressures,
  splineShare,
  twoKeysShare,
} from '../../src/standards/allowable-stress.ts'
import { crossHoleFactor, crossHoles } from '../../src/standards/cross-hole-factor.ts'
import { moduli, moduliOf } from '../../src/standards/moduli.ts'

describe('stresses allowed in keys and splines', () => {
  it('shear over tension: 1/√3 by distortion energy, half by greatest shear', () => {
    expect(shearYield.distortionEnergy.value).toBeCloseTo(1 / Math.sqrt(3), 3)
    expect(shearYield.greatestShear.value).toBe(0.5)
  })

  it('a key of yield 460 and safety 3 shears at 88.47 and is crushed at 153.33 N/mm2, as a worked example prints', () => {
    // Bhandari's square key, from memory: 25 mm shaft, 15 kW at 720 1/min.
    expect((shearYield.distortionEnergy.value * 460) / keySafety.value).toBeCloseTo(88.47, 2)
    expect(460 / keySafety.value).toBeCloseTo(153.33, 2)
  })

  it('what textbooks allow a mild steel key, 40 to 56 in shear and 70 to 112 crushed, is its yield of 275 with a safety of 2.5 to 4', () => {
    expect(275 / 112).toBeLessThan(keySafety.value)
    expect(275 / 70).toBeGreaterThan(keySafety.value)
    expect((shearYield.greatestShear.value * 275) / keySafety.value).toBeGreaterThan(40)
    expect((shearYield.distortionEnergy.value * 275) / keySafety.value).toBeLessThan(56)
  })

  it('two keys carry more than one and less than two', () => {
    expect(2 * twoKeysShare.value).toBe(1.5)
    expect(splineShare.value).toBe(0.75)
    expect(keyLengthLimit.value).toBe(1.5)
    expect(ironSafety.least).toBeLessThan(ironSafety.most)
  })

  it('a shaft of 50 mm with a keyway 16 wide and 5 deep keeps 0.826 of its strength, as design notes print', () => {
    expect(shaftLeftByKeyway(50, 16, 5)).toBeCloseTo(0.826, 12)
    expect(shaftLeftByKeyway(50, 0, 0)).toBe(1)
  })

  it('1000 psi is 6.9 N/mm2', () => {
    expect(saeSplinePressure).toBeCloseTo(6.894757, 6)
    expect(splinePressure('sliding under load')?.most).toBe(saeSplinePressure)
    expect(splinePressure('sliding idle')).toMatchObject({ least: 20, most: 30 })
    expect(splinePressure('fixed')).toMatchObject({ least: 60, most: 100 })
    expect(splinePressure('sliding under load', 'soft', 'good')).toBeUndefined()
  })

  it('more is allowed the less it slides, the better it is kept, the harder it is; each row once', () => {
    const names = splinePressures.rows.map((row) => `${row.use} ${row.flanks} ${row.conditions}`)
    expect(new Set(names).size).toBe(16)
    for (const row of splinePressures.rows) {
      const { use, flanks, conditions, least, most } = row
      expect(least).toBeLessThanOrEqual(most)
      expect(row.source.length).toBeGreaterThan(5)
      for (const less of [
        use === 'fixed' ? splinePressure('sliding idle', flanks, conditions) : undefined,
        use === 'sliding idle' ? splinePressure('sliding under load', flanks, conditions) : undefined,
        flanks === 'hardened' && use !== 'sliding under load' ? splinePressure(use, 'soft', conditions) : undefined,
        conditions === 'good' ? splinePressure(use, flanks, 'medium') : undefined,
        conditions === 'medium' ? splinePressure(use, flanks, 'bad') : undefined,
      ]) {
        expect(less?.least ?? -1).toBeLessThan(least)
        expect(less?.most ?? -1).toBeLessThan(most)
      }
    }
  })
})

describe('moduli', () => {
  it.each(moduli.rows.filter((row) => row.shear))(
    '$material: the two moduli give a ratio of Poisson of a metal',
    (row) => {
      const poisson = row.elastic / (2 * (row.shear ?? 0)) - 1
      expect(poisson).toBeGreaterThan(0.2)
      expect(poisson).toBeLessThan(0.345)
    },
  )

  // Poisson's ratios from memory (Shigley Table A-5).
  it.each([
    ['carbon steel', 0.292],
    ['alloy steel', 0.292],
    ['stainless steel', 0.305],
    ['grey iron', 0.211],
    ['brass', 0.324],
    ['bronze', 0.349],
    ['aluminium', 0.333],
  ])('%s: the modulus in shear is what elasticity and a Poisson ratio of %f give', (metal, poisson) => {
    const { elastic, shear } = moduliOf(metal) ?? { elastic: 0, shear: 0 }
    expect(Math.abs((shear ?? 0) / (elastic / (2 * (1 + poisson))) - 1)).toBeLessThan(0.011)
  })

  it('shear modulus of steel is 80000 to 1 %, as coupling notes print; names stand once; no lead', () => {
    expect(Math.abs((moduliOf('carbon steel')?.shear ?? 0) / 80000 - 1)).toBeLessThan(0.01)
    expect(new Set(moduli.rows.map((row) => row.material)).size).toBe(10)
    expect(moduliOf('carbide')).not.toHaveProperty('shear')
    expect(moduliOf('lead')).toBeUndefined()
  })
})

/** Peterson's fit for a solid bar, on the whole section: peak over 32 M / (π D³). Source: a published formula page. */
const peterson = (x: number): number => 3 - 6.25 * x + 41 * x ** 2 - 45 * x ** 3

describe('cross hole in bending', () => {
  it('rows ascend; the larger hole leaves less', () => {
    crossHoles.rows.slice(1).forEach((row, n) => {
      const before = crossHoles.rows[n]
      expect(row.ratio - (before?.ratio ?? 0)).toBeCloseTo(0.025, 12)
      expect(row.modulus).toBeLessThan(before?.modulus ?? 0)
      expect(row.net).toBeLessThan(before?.net ?? 0)
    })
  })

  it('lies within 1.5 % of Peterson’s fit, on the rows and between them', () => {
    for (let x = 0.05; x <= 0.3; x += 0.005) {
      const ratio = (crossHoleFactor(x)?.gross ?? 0) / peterson(x)
      expect([x, Math.abs(ratio - 1) < 0.015]).toEqual([x, true])
    }
    // The same page, worked: 0.2 gives 3.030, 0.3 gives 3.600.
    expect(peterson(0.2)).toBeCloseTo(3.03, 9)
    expect(peterson(0.3)).toBeCloseTo(3.6, 9)
  })

  it('is read on the rows, between them and nowhere else', () => {
    expect(crossHoleFactor(0.05)).toMatchObject({ modulus: 0.88, net: 2.42 })
    expect(crossHoleFactor(0.3)).toMatchObject({ modulus: 0.54, net: 1.94 })
    const between = crossHoleFactor(0.2125)
    expect(between?.net).toBeCloseTo(2.055, 12)
    expect(between?.modulus).toBeCloseTo(0.665, 12)
    expect([0, 0.049, 0.301, -1, Number.NaN].map(crossHoleFactor)).toEqual(Array(5).fill(undefined))
  })

  it('a hole never helps: over 2.7 times the plain bar; what is left is about what geometry leaves', () => {
    for (const row of crossHoles.rows) {
      expect(row.net / row.modulus).toBeGreaterThan(2.7)
      expect(row.net).toBeLessThan(3)
      expect(Math.abs(row.modulus - netSection(row.ratio).modulus)).toBeLessThan(0.05)
    }
  })
})
