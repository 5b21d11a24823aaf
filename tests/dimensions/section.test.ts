import { describe, expect, it } from 'vitest'
import { anglesBetween, sideDepthLimits } from '../../src/dimensions/section.ts'
import { withDeviations } from '../../src/fits/size.ts'
import { designed, withBar } from './designed.ts'

const k = 25.4

describe('section by a standard', () => {
  it('25 H7 with an 8 × 7 key', () => {
    // Sizes ISO/R 773 (hub depth 3.3 +0.2/0, JS9 ±0.018); 25 H7 +0.021/0 ISO 286; depths worked by hand.
    const { section } = designed({ units: 'mm', bore: { diameter: 25, length: 30 }, feature: { keyway: {} } })
    expect(section.bore).toEqual({ nominal: 25, lower: 25, upper: 25.021 })
    expect([section.widthLimits.lower, section.widthLimits.upper]).toEqual([7.982, 8.018])
    // ISO/R 773 prints 0.16 to 0.25 in the corners: 0.85 of the most, down to 0.05.
    expect(section.cornerRadius).toBeCloseTo(0.2, 9)
    expect(section.acrossLimits.lower).toBeCloseTo(28.3, 9)
    expect(section.acrossLimits.upper).toBeCloseTo(28.5, 9)
    expect(section.sideDepthLimits.lower).toBeCloseTo(3.932665, 6)
    expect(section.sideDepthLimits.upper).toBeCloseTo(4.160324, 6)
    expect(section.crownDepthLimits.lower).toBeCloseTo(3.279, 9)
    expect(section.crownDepthLimits.upper).toBeCloseTo(3.5, 9)
    expect(section.boreRadius).toBeCloseTo(12.50525, 9)
    expect(section.across).toBeCloseTo(28.4, 9)
    // Key 7 −0.09, shaft 21 −0.2: clearance over the key whichever way it is pushed.
    expect(section.key?.topClearance?.lower).toBeCloseTo(0.3, 9)
    expect(section.key?.topClearance?.upper).toBeCloseTo(0.79, 9)
  })

  it('1 in bore with a 1/4 square key', () => {
    // ASME B17.1: T 1.114 +.010/−0, key seat .250 to .252 class 1, Machinery's Handbook 31, p. 2552; bore +.0005/0.
    const { section } = designed({
      units: 'in',
      bore: { diameter: 1, tolerance: [0, 0.0005], length: 1 },
      feature: { keyway: {} },
    })
    expect(section.widthLimits.lower / k).toBeCloseTo(0.25, 9)
    expect(section.widthLimits.upper / k).toBeCloseTo(0.252, 9)
    expect(section.acrossLimits.lower / k).toBeCloseTo(1.114123, 6)
    expect(section.acrossLimits.upper / k).toBeCloseTo(1.124123, 6)
    // Worked scenario, derived.
    expect(section.sideDepthLimits.lower / k).toBeCloseTo(0.129492, 6)
    expect(section.sideDepthLimits.upper / k).toBeCloseTo(0.140259, 6)
    expect((section.key?.shaft?.across.nominal ?? 0) / k).toBeCloseTo(0.859123, 6)
  })

  it('aims from the measured bore at the middle of across', () => {
    // Worked scenario, derived: 25.0105 measured, T 28.3 +0.2, sharp corners: infeed 4.046489 at the width of 8.
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 25, measured: 25.0105, length: 30 },
      feature: { keyway: {} },
      tooling: { bar: { nose: { cornerRadius: 0 } } },
    })
    expect(section.infeed).toBeCloseTo(4.046489, 6)
    expect(section.touchOff + section.infeed + section.boreRadius).toBeCloseTo(28.4, 9)
  })
})

describe('a shaft that is told of', () => {
  it('has its own keyseat: 28.3 to 28.5, less 21 to 21.1 of shaft, less 7 of key at h11 (0 to −0.09)', () => {
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 25, length: 30 },
      feature: { keyway: {} },
      shaft: { across: [21, 21.1] },
    })
    expect(section.key?.shaft?.across).toMatchObject({ lower: 21, upper: 21.1 })
    expect(section.key?.shaft?.depth).toBeCloseTo(25 - 21.05, 9)
    expect(section.key?.topClearance?.lower).toBeCloseTo(28.3 - 21.1 - 7, 9)
    expect(section.key?.topClearance?.upper).toBeCloseTo(28.5 - 21 - 6.91, 9)
    // By hand there is no standard keyseat to take the width from.
    const bare = designed({
      units: 'mm',
      bore: { diameter: 25, length: 30 },
      feature: { keyway: { width: 8, height: 7, across: 28.3 } },
      shaft: { across: 21 },
    }).section
    expect(bare.key?.shaft?.width).toMatchObject({ lower: 8, upper: 8 })
    expect(bare.key?.topClearance?.nominal).toBeCloseTo(0.3, 9)
  })
})

describe('section by hand', () => {
  const byHand = (keyway: object) =>
    designed({ units: 'mm', bore: { diameter: 25, tolerance: [0, 0], length: 30 }, feature: { keyway } }).section

  it('takes across, crown depth or side depth for one and the same slot', () => {
    // Worked scenario, derived: 28.3, 3.3 and 3.957281.
    const wanted = byHand({ width: 8, across: 28.3 })
    expect(wanted.floor).toBeCloseTo(15.8, 9)
    expect(byHand({ width: 8, depth: { crown: 3.3 } }).across).toBeCloseTo(28.3, 9)
    expect(byHand({ width: 8, depth: { side: 3.957281 } }).across).toBeCloseTo(28.3, 6)
    // The crown depth dialled in as an infeed would be shallow by the arc over the mouth.
    expect(wanted.infeed - 3.3).toBeCloseTo(0.657281, 6)
  })

  it('refuses a floor that lies in the bore', () => {
    const made = designed({
      units: 'mm',
      bore: { diameter: 25, tolerance: [0, 0], length: 30 },
      feature: { keyway: { width: 8, across: 24.9 } },
    })
    expect(made.findings.find(({ rule }) => rule === 'floor-beyond-bore')?.verdict).toBe('fail')
    expect(made.verdict).toBe('fail')
  })

  it('a hub of 32 over 25, 8 × 7, corners 0.2: 0.2 by the floor, nothing at the corner', () => {
    // Worked scenario, derived.
    const { section, findings } = designed({
      units: 'mm',
      bore: { diameter: 25, tolerance: [0, 0], length: 30 },
      hub: { outside: 32 },
      feature: { keyway: { width: 8, height: 7, across: 28.3 } },
      tooling: { bar: { nose: { cornerRadius: 0.2 } } },
    })
    expect(16 - section.floor).toBeCloseTo(0.2, 9)
    const wall = findings.find(({ rule }) => rule === 'hub-wall')
    expect(wall?.measured).toBeCloseTo(-0.256151, 6)
    expect(wall?.limit).toBe(3.5)
    expect(wall?.verdict).toBe('fail')
  })
})

describe('limits along the wall', () => {
  it('are the worst of all corners', () => {
    const bore = withDeviations(25, 0, 0.021)
    const width = withDeviations(8, -0.018, 0.018)
    const across = withDeviations(28.3, 0, 0.2)
    const depths = [bore.lower, bore.upper].flatMap((d) =>
      [width.lower, width.upper].flatMap((w) =>
        [across.lower, across.upper].map((t) => t - d / 2 - Math.sqrt(d * d - w * w) / 2),
      ),
    )
    const limits = sideDepthLimits(bore, width, across)
    expect(limits.lower).toBeCloseTo(Math.min(...depths), 12)
    expect(limits.upper).toBeCloseTo(Math.max(...depths), 12)
  })
})

describe('several keyways', () => {
  it('counts the angles between neighbours all round', () => {
    expect(anglesBetween([0])).toEqual([360])
    expect(anglesBetween([0, 90])).toEqual([90, 270])
    expect(anglesBetween([350, 10, 180])).toEqual([170, 170, 20])
    expect(anglesBetween([0, 60, 120, 180, 240, 300])).toEqual([60, 60, 60, 60, 60, 60])
  })

  it('leaves the land of the closed form', () => {
    // ISO 14 spline 6×23×26×6 (land arc 5.972546, worked by hand), as six keyways.
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 23, tolerance: [0, 0], length: 30 },
      feature: { keyway: { width: 6, across: 24.55, at: [0, 60, 120, 180, 240, 300] } },
    })
    expect(section.land).toBeCloseTo(5.972546, 6)
    expect(section.sideDepth).toBeCloseTo(1.948198, 6)
    expect(section.crownDepth).toBeCloseTo(1.55, 9)
    expect(2 * section.floor).toBeCloseTo(26.1, 9)
  })
})

describe('worked jobs', () => {
  it('1 in, 1/4 square, bar 5/8, projection .2', () => {
    // Worked scenario, derived: window [.114790, .339123], infeed .130000, 130 passes at .001.
    const { bar, plan, section } = withBar({
      units: 'in',
      bore: { diameter: 1, tolerance: [0, 0], length: 1 },
      feature: { keyway: { width: 0.25, depth: { side: 0.13 } } },
      tooling: {
        bar: {
          machine: 'mill',
          diameter: 0.625,
          projection: 0.2,
          infeed: 0.001,
          bit: { size: 0.25 },
          nose: { width: 0.25, cornerRadius: 0 },
          clearance: { back: 0.01, front: 0.01, withdrawn: 0.01 },
        },
      },
    })
    expect(bar.lanes).toHaveLength(1)
    expect(bar.projectionMin / k).toBeCloseTo(0.11479, 6)
    expect(bar.projectionMax / k).toBeCloseTo(0.339123, 6)
    expect(bar.diameterMax / k).toBeCloseTo(0.842633, 6)
    expect(bar.noseLengthMin / k).toBeCloseTo(0.140335, 6)
    expect(section.across / k).toBeCloseTo(1.114123, 6)
    expect(plan.passes).toBe(130)
    expect(bar.overBarAndNose / k).toBeCloseTo(0.825, 9)
    // Tail under the bar at its smallest: .002 under nominal, of which half each in axis and surface.
    expect(bar.bitLengthMin / k).toBeCloseTo(0.593028, 6)
    expect(Math.abs(bar.bitLengthMax / k - 0.787966)).toBeLessThan(0.0022)
    // The next drill over .347977, by no more than a sixteenth of a millimetre.
    expect(bar.crossHole.nominal / k).toBeGreaterThanOrEqual(0.347977 - 1e-6)
    expect(bar.crossHole.nominal / k).toBeLessThan(0.347977 + 0.0025)
  })

  it('25 mm, 8 × 7, bar 16, nose 6 in two lanes, projection 4.5', () => {
    // Worked scenario, derived.
    const { bar, section } = withBar({
      units: 'mm',
      bore: { diameter: 25, tolerance: [0, 0], length: 30 },
      feature: { keyway: { width: 8, across: 28.3 } },
      tooling: {
        bar: { diameter: 16, projection: 4.5, bit: { size: 6 }, nose: { width: 6, cornerRadius: 0 }, infeed: 0.005 },
      },
    })
    expect(bar.lanes.map(({ offset }) => offset)).toEqual([-1, 1])
    for (const lane of bar.lanes) {
      expect(lane.projectionMin).toBeCloseTo(3.642494, 6)
      expect(lane.projectionMax).toBeCloseTo(7.723397, 6)
      expect(lane.touchOff).toBeCloseTo(11.842719, 6)
      expect(lane.infeed).toBeCloseTo(3.957281, 6)
    }
    expect(bar.noseLengthMin).toBeCloseTo(4.221464, 6)
    expect(section.infeed).toBeCloseTo(3.957281, 6)
  })

  it('10 mm, 4 × 4, bar 8: the bar passes the bore by the rule of thumb and yet does not', () => {
    // Worked scenario, derived: [1.681526, 1.582576] though 8 + 1.9 < 10.
    const { bar, findings, verdict } = withBar({
      units: 'mm',
      bore: { diameter: 10, tolerance: [0, 0], length: 10 },
      feature: { keyway: { width: 4, across: 11.8 } },
      tooling: {
        bar: {
          diameter: 8,
          projection: 1.9,
          infeed: 0.005,
          nose: { width: 4, cornerRadius: 0 },
          bit: { size: 4 },
          clearance: { back: 0, front: 0, withdrawn: 0 },
        },
      },
    })
    expect(bar.projectionMin).toBeCloseTo(1.681526, 6)
    expect(bar.projectionMax).toBeCloseTo(1.582576, 6)
    expect(findings.find(({ rule }) => rule === 'bar-passes-bore')?.verdict).toBe('fail')
    expect(findings.find(({ rule }) => rule === 'projection-enters')?.verdict).toBe('fail')
    expect(verdict).toBe('fail')
  })

  it('6 mm, 2 × 2, bar 4.5 with a round bit: a window of 0.08', () => {
    // Worked scenario, derived: [1.048190, 1.128427], ±0.04 of setting at most.
    const small = (setting: number) =>
      withBar({
        units: 'mm',
        bore: { diameter: 6, tolerance: [0, 0], length: 6 },
        feature: { keyway: { width: 2, across: 7 } },
        tooling: {
          bar: {
            diameter: 4.5,
            stages: 1,
            setting,
            infeed: 0.005,
            bit: { shape: 'round', size: 2 },
            nose: { width: 2, cornerRadius: 0 },
            clearance: { back: 0.1, front: 0.1, withdrawn: 0.1 },
          },
        },
      })
    const { bar, findings } = small(0.03)
    expect(bar.projectionMin).toBeCloseTo(1.04819, 6)
    expect(bar.projectionMax).toBeCloseTo(1.128427, 6)
    expect(bar.diameterMax).toBeCloseTo(4.576304, 6)
    const holds = (of: ReturnType<typeof small>) =>
      ['projection-enters', 'projection-reaches'].every(
        (id) => of.findings.find(({ rule }) => rule === id)?.verdict === 'pass',
      )
    expect(holds({ ...small(0.03), findings })).toBe(true)
    expect(holds(small(0.05))).toBe(false)
  })

  it('1-1/8 in on a lathe that reads diameters', () => {
    // Worked scenario, derived: T 1.240935, radial .130000, the dial .260000, 130 marks of .002.
    const { plan, section } = withBar({
      units: 'in',
      bore: { diameter: 1.125, tolerance: [0, 0], length: 1.125 },
      feature: { keyway: { width: 0.25, depth: { side: 0.13 } } },
      tooling: {
        bar: { dial: { mark: 0.002, reads: 'diameter' }, nose: { width: 0.25, cornerRadius: 0 }, bit: { size: 0.25 } },
      },
    })
    expect(section.across / k).toBeCloseTo(1.240935, 6)
    expect(section.infeed / k).toBeCloseTo(0.13, 9)
    expect(plan.dial.target / k).toBeCloseTo(0.26, 6)
    expect(plan.dial.marks).toBeCloseTo(130, 9)
  })

  it('1-1/2 in, 3/8 key with a nose of 3/16', () => {
    // Worked scenario, derived: sides .09375 off, window [.196106, .683763], nose ≥ .216991, 175 passes at .001 in the middle.
    const { bar, plan } = withBar({
      units: 'in',
      bore: { diameter: 1.5, tolerance: [0, 0], length: 1.5 },
      feature: { keyway: { width: 0.375, depth: { side: 0.1925 } } },
      tooling: {
        bar: {
          machine: 'mill',
          diameter: 0.75,
          projection: 0.25,
          infeed: 0.001,
          bit: { size: 0.25 },
          nose: { width: 0.1875, cornerRadius: 0 },
          clearance: { back: 0.015, front: 0.015, withdrawn: 0.015 },
        },
      },
    })
    expect(bar.lanes.map(({ offset }) => offset / k)).toEqual([-0.09375, 0, 0.09375].map((e) => expect.closeTo(e, 9)))
    expect(Math.max(...bar.lanes.map(({ projectionMin }) => projectionMin)) / k).toBeCloseTo(0.196106, 6)
    expect(Math.min(...bar.lanes.map(({ projectionMax }) => projectionMax)) / k).toBeCloseTo(0.683763, 6)
    expect(bar.noseLengthMin / k).toBeCloseTo(0.216991, 6)
    expect(bar.lanes.map(({ touchOff }) => touchOff / k)).toEqual(
      [0.726184, 0.744118, 0.726184].map((x) => expect.closeTo(x, 6)),
    )
    expect(plan.lanes[1]?.passes).toBe(175)
  })
})
