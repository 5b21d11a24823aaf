// Gauges and aids worked by hand from the limits that they go by.
import { describe, expect, it } from 'vitest'
import { drillJigOf } from '../../src/dimensions/drill-jig.ts'
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
    // The next round on hand 1 mm over, or one to be sawn out 2 mm over.
    const spacer = (rounds: readonly number[]) =>
      withBar(job({ tooling: { bar: { machine: 'mill', behind: 20 } }, shop: { rounds } })).pressSpacer
    const outside = spacer([100])?.outside ?? NaN
    expect(spacer([outside + 0.5, outside + 5])?.stock.diameter).toBe(outside + 5)
    expect(spacer([10])?.stock.diameter).toBe(outside + 2)
  })
})

const inches = (of: object | undefined): unknown =>
  JSON.parse(JSON.stringify(of ?? null), (_, value) =>
    typeof value === 'number' ? Number((value / 25.4).toFixed(6)) : value,
  )

// Every size by the sentence that gives its reason, with pencil and paper.
describe('aids of a 3/4 in bore 1-1/4 long, key 3/16: bore .7500 to .750827, width .1875 to .1895, across .836842 to .846842', () => {
  const made = withBar({
    name: 'aids',
    units: 'in',
    bore: { diameter: 0.75, length: 1.25 },
    hub: { outside: 2 },
    feature: { keyway: { standard: 'asme-b17.1' } },
    tooling: { bar: { machine: 'mill', behind: 1, diameter: 0.5625, bit: { shape: 'square', size: 0.15625 } } },
  })

  it('width gauge', () => {
    expect(inches(made.widthGauge)).toMatchObject({
      go: 0.183, // .1875 - .004 down
      noGo: 0.194, // .1895 + .004 up
      goLength: 0.9375, // three quarters of the bore
      gripWidth: 0.625,
      waistWidth: 0.13, // .7 of .194 is .1358
      thickness: 0.125, // three quarters of .183 is .137, to 1/32
      lead: 0.03, // 1 mm is .039
      edge: 0.02, // the printer's foot of 0.4 mm is .016
    })
  })

  it('no-go for across', () => {
    expect(inches(made.acrossNoGo)).toMatchObject({
      diameter: 0.6, // four fifths of .750
      keyWidth: 0.171, // .1875 - .016
      across: 0.851, // .846842 + .004 up
      handleDiameter: 0.5, // six tenths of the bore is .45
      waistDiameter: 0.36, // .6 of .6; three quarters of the handle is .375
      waistLength: 0.1875,
      length: 0.3125,
      handleLength: 1,
    })
  })

  it('slices', () => {
    // The slot's farthest corner is .481 out while sharp; a wall of 5/16 makes 1.587 across, up to 1/16.
    expect(inches(made.hubRing)).toMatchObject({
      finishedBore: 0.757, // .750827 + .006 up
      slotWidth: 0.194,
      across: 0.851,
      uncutBore: 0.746,
      outside: 1.625,
      thickness: 0.5,
      room: 0.015748, // 0.4 mm; an eighth of the slot is .024
    })
  })

  it('go plug', () => {
    expect(inches(made.plug)).toMatchObject({
      diameter: 0.744, // .750 - .006
      keyWidth: 0.183,
      across: 0.832, // .836842 - .004 down
      length: 0.9375,
      handleDiameter: 0.5625, // three quarters of .744 is .558
      handleLength: 1.1875,
      lead: 0.059055, // 1.5 mm; an eighth of the plug is .093
      marking: ['GO', '3/16 square', '0.75'],
    })
  })

  it('setting step', () => {
    const { bar } = made
    expect(inches(made.settingStep)).toMatchObject({
      footLength: 1.125, // two bars
      thickness: 0.4375, // .7 of .5625 is .394
      over: 0.375,
      within: 0.002, // what the projection is set to
      tolerance: 0.004,
      allowance: 0.004,
    })
    const over = (bar.holeToEnd + bar.crossHole.nominal / 2) / 25.4
    expect((made.settingStep?.stepLength ?? NaN) / 25.4).toBeCloseTo(Math.ceil(over * 16) / 16, 9)
  })

  it('spacer', () => {
    const free = made.bar.tipBeyond / 25.4 + 0.0625
    expect(inches(made.pressSpacer)).toMatchObject({
      opening: 1, // the corner's .480391 and 0.2 mm: .976530 across, up to 1/32
      height: Math.ceil(free * 16) / 16,
      outside: 1.5, // a wall of 1/4
      parallel: 0.001,
      stock: { diameter: 1.625, length: Math.ceil(free * 16) / 16 + 0.125 },
    })
  })

  it('bit template', () => {
    const { bit, bitTemplates } = made
    expect(bit.size / 25.4).toBeCloseTo(0.15625, 9)
    // 90° less side relief, end relief, rake and end relief, and the taper on the face to a tenth: 1.53.
    expect(bitTemplates).toMatchObject({ side: 87, end: 85, wedge: 75, plan: 88.5 })
    // The notch of 88.5°, .28125 deep: 2 × .28125 × tan 44.25° = .548.
    expect(inches(bitTemplates)).toMatchObject({
      depth: 0.28125, // 1/4 and 1/32
      pitch: 0.75, // .548 + .15 up to 1/16
      first: 0.4375, // .274 + .15 up to 1/32
      length: 3.875,
      height: 0.65625,
      room: 0.0625,
    })
  })
})

describe('aids of small and of large metric bores', () => {
  it('bit template of a blank of 10: seven tenths of it and 0.5; the notch of 88.5° is 14.61 wide', () => {
    const made = withBar(job({ tooling: { bar: { machine: 'mill', behind: 20, diameter: 16, bit: { size: 10 } } } }))
    expect(made.bitTemplates).toMatchObject({ depth: 7.5, pitch: 19, first: 11.5, length: 99, height: 16.5 })
  })

  it('slices of 7 mm: a room of an eighth of 2.0125 + 0.1 up; two keyways nearly opposite are measured from the axis', () => {
    const { hubRing } = designed(
      job({ bore: { diameter: 7, length: 10 }, feature: { keyway: { standard: 'iso-773', at: [0, 175] } } }),
    )
    expect(hubRing?.slotWidth).toBeCloseTo(2.12, 9)
    expect(hubRing?.room).toBeCloseTo(0.265, 9)
    // 8.1 - 7.015/2 + 0.05, up.
    expect(hubRing?.floor).toBeCloseTo(4.65, 9)
    expect(hubRing?.across).toBeUndefined()
    expect(hubRing?.marking).toEqual(['FINISHED 7', 'UNCUT 7'])
  })

  it('width gauge of 2 mm: lead a quarter, edge a fifth of 1.88; waist .7 of 2.12; 3 mm thick', () => {
    const { widthGauge } = designed(job({ bore: { diameter: 7, length: 10 } }))
    expect(widthGauge).toMatchObject({
      go: 1.88,
      noGo: 2.12,
      lead: 0.4,
      edge: 0.35,
      waistWidth: 1.4,
      thickness: 3,
      goLength: 15,
      gripWidth: 16,
    }) // prettier-ignore
  })

  it('setting step: seven tenths of the bar, 6 to 14', () => {
    const of = (diameter: number) =>
      withBar(job({ bore: { diameter, length: 16 }, tooling: { bar: {} } })).settingStep?.thickness
    expect(of(7)).toBe(6)
    expect(of(40)).toBe(14)
  })

  it('drill jig: bush of a wall of 1.5 or a quarter of the hole, short of the stop', () => {
    const spec = specOf(job({ bore: { diameter: 12, length: 16 }, tooling: { bar: {} } }))
    const { bar } = withBar(job({ bore: { diameter: 12, length: 16 }, tooling: { bar: {} } }))
    const jig = (hole: number, holeToEnd: number) =>
      drillJigOf(spec, {
        ...bar,
        diameter: { nominal: 9, lower: 8.95, upper: 9 },
        crossHole: { nominal: hole, lower: hole, upper: hole },
        holeToEnd,
        screw: { ...bar.screw, major: 4 },
      })?.sizes
    expect(jig(5.1, 7.6)).toMatchObject({
      barHole: 9.1,
      bush: { outside: 8.5, bore: 5.1, length: 7 }, // 8.1 up; (25 - 9.1)/2 - 5.1/8 = 7.3125 down
      chipHole: 6.5,
      clamp: { toFront: 6 },
      barDepth: 29, // 7.6 + 4.25 up to 12, the bar's 9, half the screw and 6
      length: 35,
      width: 18,
      height: 25,
    })
    // A quarter of 8 a side is more than 1.5; the stop is 2.5 away.
    expect(jig(8, 10)?.bush.outside).toBe(12)
    expect(jig(2, 2.5)?.bush.outside).toBe(4.5)
  })

  it('plug of six splines 6x23x26: 23, 6 and 26 less 0.15; the pilot clears the printer’s foot', () => {
    const spline = (shop: object = {}) =>
      designed(
        job({
          bore: { diameter: 23, length: 30 },
          feature: { spline: { standard: 'iso-14', size: '6x23x26' } },
          ...shop,
        }),
      ) // prettier-ignore
    const { borePlug, section } = spline()
    expect(borePlug).toMatchObject({
      diameter: 22.85,
      keyWidth: 5.85,
      overKeys: 25.85,
      room: 0.4,
      length: 23, // three quarters of 30, up
      pilot: { length: 3, less: 0.5 },
      handleDiameter: 18, // three quarters of 22.85 is 17.14
      marking: ['GO', '6X23X26', '23'],
    })
    expect(borePlug?.keyCorner).toBe(section.cornerLimits?.upper)
    expect(spline({ shop: { printer: { outside: 0, inside: 0, foot: 0.6 } } }).borePlug?.pilot.less).toBeCloseTo(0.7, 9)
    // Slim keys: an eighth of 2.5 - 0.15 down.
    const slim = designed(job({ feature: { spline: { count: 12, width: 2.5, major: 28 } } })).borePlug
    expect(slim?.room).toBeCloseTo((slim?.keyWidth ?? NaN) / 8, 9)
    expect(slim?.keyWidth).toBeLessThan(2.5)
    expect(designed(job()).borePlug).toBeUndefined()
  })
})
