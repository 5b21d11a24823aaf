// Gauges and aids worked by hand from the limits that they go by.
import { describe, expect, it } from 'vitest'
import { indexPlateOf } from '../../src/dimensions/index-plate.ts'
import { designed, specOf, withBar } from './designed.ts'

const job = (more: object = {}) => ({
  name: 'aids',
  units: 'mm',
  bore: { diameter: 24, length: 38 },
  hub: { outside: 62 },
  feature: { keyway: { standard: 'iso-773' } },
  ...more,
})
const measured = { shop: { printer: { outside: -0.06, inside: -0.12, foot: 0.4 } } }

describe('gauges of 24 H7 with 8 JS9: bore 24.000 to 24.021, width 7.982 to 8.018, across 27.3 to 27.5', () => {
  it('go and no-go for the width stand off by what a print is trusted to', () => {
    const { widthGauge } = designed(job())
    // 7.982 - 0.1 down, 8.018 + 0.1 up, to 0.01.
    expect(widthGauge?.go).toBeCloseTo(7.88, 9)
    expect(widthGauge?.noGo).toBeCloseTo(8.12, 9)
    const nearer = designed(job(measured)).widthGauge
    expect(nearer?.go).toBeCloseTo(7.93, 9)
    expect(nearer?.noGo).toBeCloseTo(8.07, 9)
    expect(nearer?.offset).toBe(-0.06)
    expect(nearer?.marking).toEqual(['GO 7.93', 'NO GO 8.07'])
  })

  it('no-go for across: 27.5 + 0.1, slack in bore and width', () => {
    const { acrossNoGo, section, plug } = designed(job())
    expect(acrossNoGo?.across).toBeCloseTo(27.6, 9)
    expect(acrossNoGo?.keyWidth).toBeCloseTo(7.58, 9)
    expect(acrossNoGo?.diameter).toBeCloseTo(19.2, 9)
    expect(acrossNoGo?.length).toBeLessThan(plug.length)
    expect(acrossNoGo?.diameter).toBeLessThan(section.bore.lower)
  })

  it('slices: finished over every largest size, uncut under the smallest bore', () => {
    const { hubRing } = designed(job({ tooling: { bar: {} } }))
    // 24.021 + 0.15 up; 8.118 and 27.6 up; 24.000 - 0.1 down.
    expect(hubRing?.finishedBore).toBeCloseTo(24.18, 9)
    expect(hubRing?.slotWidth).toBeCloseTo(8.12, 9)
    expect(hubRing?.across).toBeCloseTo(27.6, 9)
    expect(hubRing?.uncutBore).toBeCloseTo(23.9, 9)
    expect(designed(job(measured)).hubRing?.offset).toBe(-0.12)
  })

  it('inch jobs are rounded to a thousandth, so that the sheet says the size itself', () => {
    const { widthGauge, plug } = designed({
      units: 'in',
      bore: { diameter: 0.875, length: 1.375 },
      feature: { keyway: { standard: 'asme-b17.1' } },
    })
    for (const size of [widthGauge?.go, widthGauge?.noGo, plug.across, plug.diameter])
      expect(((size ?? NaN) / 25.4) * 1000).toBeCloseTo(Math.round(((size ?? NaN) / 25.4) * 1000), 6)
    // .1875 - .004 = .1835 down; .1895 + .004 = .1935 up.
    expect((widthGauge?.go ?? NaN) / 25.4).toBeCloseTo(0.183, 9)
    expect((widthGauge?.noGo ?? NaN) / 25.4).toBeCloseTo(0.194, 9)
  })

  it('what has no flat floor has no no-go for across, and a slit no slice', () => {
    const slit = designed(job({ feature: { slit: { width: 1, outside: 32, count: 3 } } }))
    expect(slit.acrossNoGo).toBeUndefined()
    expect(slit.hubRing).toBeUndefined()
    const opposed = designed(job({ feature: { keyway: { standard: 'iso-773', at: [0, 180] } } }))
    expect(opposed.acrossNoGo).toBeUndefined()
    expect(opposed.hubRing?.across).toBeUndefined()
    // Floor to floor: 2 (27.5 - 24.021/2) + 0.1 up to 0.01.
    expect(opposed.hubRing?.overFloors).toBeCloseTo(31.08, 9)
  })
})

describe('setting step', () => {
  it('is the projection; printed higher by the print’s own tolerance where that is coarser than the setting', () => {
    const { settingStep, bar } = withBar(job({ tooling: { bar: {} } }))
    expect(settingStep?.steps).toEqual([bar.projection])
    expect(bar.setting).toBeCloseTo(0.05, 9)
    expect(settingStep?.within).toBeCloseTo(0.05, 9)
    expect(settingStep?.allowance).toBeCloseTo(0.1, 9)
    const trusted = withBar(job({ ...measured, tooling: { bar: {} } })).settingStep
    expect(trusted?.allowance).toBe(0)
  })
})

describe('index plate', () => {
  it('turns a hole’s error into an angle, and that into an error at the floor: 0.05 at 60 is 0.047746°, at 13 it is 0.010833', () => {
    const spec = specOf(job({ feature: { keyway: { standard: 'iso-773', at: [30, 75, 210] } } }))
    const { section } = designed(job({ feature: { keyway: { standard: 'iso-773', at: [30, 75, 210] } } }))
    // A feature that reaches 30 asks for a pitch circle of 60.
    const plate = indexPlateOf(spec, { ...section, cornerReachMost: 30 })?.sizes
    expect(plate?.at).toEqual([0, 45, 180])
    expect(plate?.pitchRadius).toBe(60)
    expect(plate?.angleError).toBeCloseTo(0.047746, 6)
    expect(((plate?.errorAtFloor ?? NaN) * 13) / 30).toBeCloseTo(0.010833, 6)
    expect(((plate?.errorBetween ?? NaN) * 13) / 30).toBeCloseTo(0.021667, 6)
  })

  it('keeps holes two pins apart, and is not made for one keyway', () => {
    expect(designed(job()).indexPlate).toBeUndefined()
    const many = designed(job({ feature: { spline: { count: 16, width: 3, major: 28 } } })).indexPlate
    const apart = 2 * (many?.pitchRadius ?? NaN) * Math.sin(Math.PI / 16)
    expect(many?.count).toBe(16)
    expect(apart).toBeGreaterThanOrEqual(2 * (many?.hole ?? NaN))
  })
})

describe('drill jig', () => {
  it('is made for slim bars alone and takes its sizes from the bar', () => {
    expect(withBar(job({ tooling: { bar: {} } })).drillJig).toBeUndefined()
    const { drillJig, bar } = withBar(job({ bore: { diameter: 12, length: 16 }, tooling: { bar: {} } }))
    expect(bar.diameter.nominal).toBeLessThanOrEqual(12)
    expect(drillJig?.holeToStop).toBe(bar.holeToEnd)
    expect(drillJig?.bush.bore).toBe(bar.crossHole.nominal)
    expect(drillJig?.barHole).toBeGreaterThanOrEqual(bar.diameter.upper + 0.1 - 1e-9)
    expect(drillJig?.clamp.thread).toBe(bar.screw.thread)
    expect(drillJig?.barDepth).toBeGreaterThan((drillJig?.holeToStop ?? Infinity) + bar.diameter.nominal)
  })
})

describe('spacer', () => {
  it('under a mill’s hub gives the bar’s end room; on a lathe there is none', () => {
    expect(withBar(job({ tooling: { bar: { machine: 'lathe' } } })).pressSpacer).toBeUndefined()
    const { pressSpacer, bar, section } = withBar(job({ tooling: { bar: { machine: 'mill', behind: 20 } } }))
    expect(pressSpacer?.under).toBe('bar')
    expect(pressSpacer?.height).toBeGreaterThanOrEqual(bar.tipBeyond + 2)
    expect((pressSpacer?.opening ?? 0) / 2).toBeGreaterThanOrEqual(section.cornerReachMost + 0.2)
  })
})
