/**
 * Splines, sockets, slits and oil grooves, number for number. Where no source is named, a number was worked out by hand from the same geometry
 * and checked by brute force in tests/oracles/features.test.ts.
 */
import { describe, expect, it } from 'vitest'
import { report } from '../../src/writers/report.ts'
import { engagedAt, engagedMost, targetOf } from '../../src/dimensions/engaged.ts'
import { laneOfSocket, matingReliefOf, pilotBoreOf, setBackOf } from '../../src/dimensions/v-nose.ts'
import { settingsAt } from '../../src/dimensions/settings.ts'
import { designed, withBar } from './designed.ts'

const exactly = (diameter: number, length = 30) => ({ diameter, tolerance: [0, 0], length })
const c = (by: number) => ({ back: by, front: by, withdrawn: by })
const made = (diameter: number, feature: object, bar: object = {}) =>
  designed({ units: 'mm', bore: exactly(diameter), hub: { outside: 60 }, feature, tooling: { bar } })

describe('a spline of six, 6 wide in 23, 26.1 over the floors', () => {
  const design = made(
    23,
    { spline: { count: 6, width: 6, major: 26.1 } },
    { diameter: 14, clearance: c(0.2), setting: 0, infeed: 0.002, nose: { cornerRadius: 0 } },
  )
  const { section } = design

  it('has its depths', () => {
    expect(section.sideDepth).toBeCloseTo(1.948198, 6)
    expect(section.crownDepth).toBeCloseTo(1.55, 9)
    expect(section.floor).toBeCloseTo(13.05, 9)
    expect(section.across).toBeCloseTo(section.boreRadius + section.floor, 12)
    expect(section.spline?.floorToFloor?.nominal).toBeCloseTo(26.1, 9)
  })

  it('has a land with two slots only: half of a bore of 23 less two mouths of 6', () => {
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 23, tolerance: [0, 0], length: 30 },
      feature: { spline: { count: 2, width: [6, 6], major: [26, 26.2] } },
    })
    expect(section.land).toBeCloseTo(11.5 * (Math.PI - 2 * Math.asin(3 / 11.5)), 6)
    expect(section.measurable?.map(({ to }) => to)).toEqual(['floor', 'floor'])
  })

  it('has limits at the worst corners: bore 23 to 23.2, floors 13 to 13.1 from the axis, 6 to 6.1 wide', () => {
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 23, tolerance: [0, 0.2], length: 30 },
      feature: { spline: { count: 2, width: [6, 6.1], major: [26, 26.2] } },
    })
    expect(section.floorLimits).toMatchObject({ lower: 13, upper: 13.1 })
    expect(section.crownDepthLimits.lower).toBeCloseTo(13 - 11.6, 9)
    expect(section.crownDepthLimits.upper).toBeCloseTo(13.1 - 11.5, 9)
    expect(section.crownDepth).toBeCloseTo(13.05 - 11.55, 9)
    expect(section.sideDepthLimits.lower).toBeCloseTo(13 - Math.sqrt(11.6 ** 2 - 3 ** 2), 9)
    expect(section.sideDepthLimits.upper).toBeCloseTo(13.1 - Math.sqrt(11.5 ** 2 - 3.05 ** 2), 9)
    expect(section.acrossLimits.lower).toBeCloseTo(11.5 + 13, 9)
    expect(section.acrossLimits.upper).toBeCloseTo(11.6 + 13.1, 9)
  })

  it('has its land; ISO 14 prints an arc of 5.97 on the minor diameter', () => {
    expect(section.spline?.landAngle).toBeCloseTo(29.756669, 6)
    expect(section.spline?.landArc).toBeCloseTo(5.972546, 6)
    expect(section.spline?.landChord).toBeCloseTo(5.905649, 6)
    expect(section.land).toBeCloseTo(5.972546, 6)
  })

  it('leaves the tooth its tip and its corners', () => {
    expect(section.spline?.toothReach).toBeCloseTo(13, 9)
    expect(section.spline?.flankGap).toBeCloseTo(0.350889, 6)
    expect(section.spline?.cornerMost).toBeCloseTo(0.400889, 6)
    const round = made(23, { spline: { count: 6, width: 6, major: 26.1 } }, { nose: { cornerRadius: 0.2 } })
    expect(round.section.spline?.flankTrueTo).toBeCloseTo(13.195548, 6)
    expect(round.findings.find(({ rule }) => rule === 'nose-clears-tooth')?.verdict).toBe('pass')
  })

  it('has a window of projections for a full nose in a bar of 14', () => {
    const wide = made(
      23,
      { spline: { count: 6, width: 6, major: 26.1 } },
      {
        diameter: 14,
        clearance: c(0.2),
        setting: 0,
        infeed: 0.002,
        bit: { size: 6 },
        nose: { width: 6, cornerRadius: 0 },
      },
    )
    expect(wide.bar?.projectionMin).toBeCloseTo(1.493426, 6)
    expect(wide.bar?.projectionMax).toBeCloseTo(8.201802, 6)
  })

  it('is measured floor to floor all round', () => {
    expect(section.measurable?.map(({ to }) => to)).toEqual(Array.from({ length: 6 }, () => 'floor'))
    for (const { size } of section.measurable ?? []) expect(size).toBeCloseTo(26.1, 9)
  })
})

describe('splines by a standard', () => {
  it('of ISO 14: bore H7, width H9, hub not treated; H11 where it is hardened after', () => {
    const at = (treated: boolean) =>
      designed({ units: 'mm', bore: { diameter: 23, length: 30 }, feature: { spline: { size: '6x23x26', treated } } })
        .section
    // ISO 14:1982 and ISO 286: 6 H9 +0.030, 6 H11 +0.075.
    expect(at(false).widthLimits).toEqual({ nominal: 6, lower: 6, upper: 6.03 })
    expect(at(true).widthLimits).toEqual({ nominal: 6, lower: 6, upper: 6.075 })
    // 26 H10, +0.084, in its middle.
    expect(at(false).floor).toBeCloseTo(13.021, 9)
    expect([at(false).floorLimits?.lower, at(false).floorLimits?.upper]).toEqual(
      [13, 13.042].map((x) => expect.closeTo(x, 9)),
    )
    expect(at(false).spline).toMatchObject({ designation: '6x23x26', centring: 'minor', symmetryTolerance: 0.012 })
    expect(at(false).spline).not.toHaveProperty('noseEndRadius')
  })

  it('of SAE J499: six of 1 in, fit B, as its summary table prints them', () => {
    const { section } = designed({
      units: 'in',
      bore: { diameter: 0.85, tolerance: [-0.001, 0], length: 1 },
      feature: { spline: { standard: 'sae-j499', count: 6, size: 1, fit: 'B' } },
    })
    // SAE J499-2014, summary table: D .999 to 1.000, W .248 to .250, d .849 to .850.
    expect(section.widthLimits.lower / 25.4).toBeCloseTo(0.248, 9)
    expect(section.widthLimits.upper / 25.4).toBeCloseTo(0.25, 9)
    expect((2 * (section.floorLimits?.lower ?? 0)) / 25.4).toBeCloseTo(0.999, 9)
    expect((2 * (section.floorLimits?.upper ?? 0)) / 25.4).toBeCloseTo(1, 9)
    // .015 in at the most: J499a, scope.
    expect((section.spline?.cornerMost ?? 0) / 25.4).toBeLessThanOrEqual(0.015 + 1e-9)
    expect(section.spline?.centring).toBe('major')
    expect(section.spline?.noseEndRadius).toBeCloseTo(section.floor, 12)
    // A nose as wide as the slot is ground to it, one for lanes is not.
    const nose = (single: boolean) =>
      settingsAt(
        'middle',
        section,
        { width: single ? section.width : section.width / 2, cornerRadius: 0, single },
        { back: 0.1, front: 0.1, withdrawn: 0.1 },
        0,
      )
    expect(nose(true).map(({ endRadius }) => endRadius)).toEqual([section.spline?.noseEndRadius])
    for (const { endRadius } of nose(false)) expect(endRadius).toBeUndefined()
  })

  // Fourteen leave 2π·14/14 − 2·14·asin(3/14) = 0.24 mm of land, thirteen 0.72: half a millimetre is the least.
  it('has no land for sixteen of 6 in 28, any for fourteen, and says that thirteen have enough', () => {
    const design = made(28, { spline: { count: 16, width: 6, major: 32 } })
    expect(design.section.spline?.landAngle).toBeCloseTo(-2.24725, 5)
    expect(design.section.spline?.countMost).toBe(14)
    const finding = design.findings.find(({ rule }) => rule === 'land-between-keyways')
    expect(finding?.verdict).toBe('fail')
    expect(finding?.reason).toContain('room for 13 such slots')
    expect(design.verdict).toBe('fail')
  })
})

describe('a socket', () => {
  it.each([
    [12, 12.5, 8.485281, 2.235281, 4.25, 0.708333, 28.739795, 6.0104076],
    [10, 10.4, 7.071068, 1.871068, 3.571714, 0.714343, 29.057631, 5.0511668],
  ])('square %d in %d', (across, bore, vertex, infeed, half, share, psi, mouth) => {
    const { section } = made(bore, { socket: { sides: 4, across } })
    expect(section.socket?.vertex).toBeCloseTo(vertex, 6)
    expect(section.infeed).toBeCloseTo(infeed, 6)
    expect(section.touchOff).toBe(bore / 2)
    expect(section.socket?.halfFlat).toBeCloseTo(half, 6)
    expect(section.socket?.flatShare).toBeCloseTo(share, 6)
    expect(section.socket?.mouthHalfAngle).toBeCloseTo(psi, 6)
    expect(section.width).toBeCloseTo(mouth, 6)
    expect(section.socket?.edge).toBeCloseTo(2 * half, 5)
    expect(section.socket?.angleError).toBeCloseTo(half * Math.tan(Math.PI / 360), 6)
  })

  it('with a tip is cut less deep: else each flat lies .058579 mm too far out', () => {
    const { section } = made(12.5, { socket: { sides: 4, across: 12, tip: 0.2 } })
    expect(section.floor).toBeCloseTo(8.4024387, 6)
    expect(section.infeed).toBeCloseTo(2.1524387, 6)
    expect(section.socket?.matingRelief).toBeCloseTo(0.2 * Math.SQRT1_2, 6)
    // As deep as a pointed one, the flats stand out by what the tip is set back, along their normal.
    expect(setBackOf(4, 0.2) * Math.SQRT1_2).toBeCloseTo(0.058579, 6)
    expect(matingReliefOf(6, 1)).toBeCloseTo(0.288675, 6)
    expect(setBackOf(6, 1)).toBeCloseTo(0.154701, 6)
  })

  it('has its pilot bores', () => {
    expect(pilotBoreOf(4, 0.5, 0.7)).toBeCloseTo(1.044031, 6)
    expect(pilotBoreOf(6, 0.5, 0.7)).toBeCloseTo(1.014889, 6)
  })

  const windowAt = (diameter: number, tip = 0) =>
    made(12.5, { socket: { sides: 4, across: 12, tip } }, { diameter, clearance: c(0.1), setting: 0, infeed: 0.002 })
      .bar
  it('has its windows of projections: by the flank, by the mouth corner', () => {
    expect(windowAt(6)?.projectionMin).toBeCloseTo(1.384062, 6)
    expect(windowAt(6, 0.2)?.projectionMin).toBeCloseTo(1.301219, 6)
    expect(windowAt(6)?.gaps.frontAt).toBe('flank')
    expect(windowAt(9)?.projectionMin).toBeCloseTo(1.987839, 6)
    expect(windowAt(9)?.gaps.frontAt).toBe('mouth corner')
    expect(windowAt(9)?.diameterMax).toBeCloseTo(10.1561, 5)
    expect(windowAt(7)?.projectionMin).toBeCloseTo(1.591169, 6)
    expect(windowAt(7)?.projectionMax).toBeCloseTo(5.3, 6)
  })

  it('is never cut in side-shifted lanes, and is told why', () => {
    expect(laneOfSocket(4, 6, 6.25, 3, 0.1)).toEqual({
      offset: expect.closeTo(4.5, 9),
      barMost: expect.closeTo(3.3, 9),
    })
    const design = made(12.5, { socket: { sides: 4, across: 12 } }, { nose: { width: 3 }, clearance: c(0.1) })
    const finding = design.findings.find(({ rule }) => rule === 'nose-fills-corner')
    expect(finding?.verdict).toBe('fail')
    expect(finding?.reason).toContain('4.5 mm off the middle')
    expect(finding?.reason).toContain('Ø3.3 mm at the most')
  })

  it('asks of the edge what two flanks at a slant ask: .760 and .893 of a flat one, exponent .21', () => {
    for (const [sides, factor] of [
      [4, 0.76],
      [6, 0.893],
    ] as const) {
      const { section } = made(20, { socket: { sides, across: 19 } })
      const { edge, chip } = engagedMost(section, { width: 50 })
      expect(edge).toBeCloseTo(section.socket?.edge ?? 0, 9)
      expect(chip ** (1 - 0.21)).toBeCloseTo(factor, 3)
    }
  })
})

describe('a slit', () => {
  const { section } = made(12, { slit: { width: 1, count: 3, outside: 16 } })

  it('of 1 mm from 12 to 16: touch, corners out, web, infeed', () => {
    expect(section.touchOff).toBeCloseTo(5.97913, 6)
    expect(section.slit?.breakOut).toBeCloseTo(7.98436, 6)
    expect(section.slit?.web).toBeCloseTo(0.01564, 6)
    expect(section.infeed).toBeCloseTo(2.02087, 6)
  })

  it('goes on past the outside, and cuts nothing there', () => {
    expect(targetOf(section)).toBeCloseTo(8.3, 9)
    const edge = (x: number) => engagedAt(section, { width: 1 }, x).edge
    expect(edge(7)).toBe(1)
    expect(edge(7.99)).toBeGreaterThan(0)
    expect(edge(7.99)).toBeLessThan(1)
    expect(edge(8)).toBe(0)
    const { bar } = made(12, { slit: { width: 1, count: 3, outside: 16 } })
    expect(bar?.lanes[0]?.infeed).toBeCloseTo(8.3 - 5.97913, 5)
    expect(bar?.stages.at(-1)?.to).toBeCloseTo(8.3, 9)
  })
})

describe('an oil groove', () => {
  it.each([
    [1, 2.894258, 'round'],
    [1.8, 3, 'sides'],
  ])('of radius 1.5 in a bore of 20, %d deep', (depth, width, mouthOn) => {
    const { section } = made(20, { groove: { radius: 1.5, depth } })
    expect(section.width).toBeCloseTo(width, 6)
    expect(section.groove?.changeDepth).toBeCloseTo(1.38686, 6)
    expect(section.groove?.mouthOn).toBe(mouthOn)
    expect(section.infeed).toBeCloseTo(depth, 9)
    expect(section.touchOff).toBe(10)
    expect(section.across).toBeCloseTo(20 + depth, 9)
  })
})

const jobs = {
  spline: [23, { spline: { count: 6, width: 6, major: 26.1 } }],
  socket: [17.4, { socket: { sides: 4, across: 16, tip: 0.2 } }],
  slit: [12, { slit: { width: 1, count: 3, outside: 16 } }],
  groove: [20, { groove: { radius: 1.5, depth: [1, 1.1] } }],
} as const

describe.each(Object.entries(jobs))('a %s', (kind, [bore, feature]) => {
  it('is the same job in millimetres and in inches', () => {
    const inInches = (value: unknown): unknown =>
      typeof value === 'number'
        ? `${value} mm`
        : Array.isArray(value)
          ? value.map(inInches)
          : Object.fromEntries(
              Object.entries(value as object).map(([key, of]) => [
                key,
                ['count', 'sides'].includes(key) ? of : inInches(of),
              ]),
            )
    const inch = designed({
      units: 'in',
      bore: { diameter: `${bore} mm`, tolerance: [0, 0], length: '30 mm' },
      hub: { outside: '60 mm' },
      feature: { [kind]: inInches((feature as Record<string, unknown>)[kind]) },
      tooling: { bar: { nose: kind === 'spline' || kind === 'slit' ? { cornerRadius: 0 } : {} } },
    }).section
    const metric = made(bore, feature, {
      nose: kind === 'spline' || kind === 'slit' ? { cornerRadius: 0 } : {},
    }).section
    for (const key of ['boreRadius', 'width', 'mouth', 'floor', 'touchOff', 'infeed', 'area', 'cornerReach'] as const)
      expect([key, inch[key]]).toEqual([key, expect.closeTo(metric[key], 9)])
  })

  it('turned round the bore is itself', () => {
    const still = made(bore, feature)
    const turned = made(bore, { [kind]: { ...(feature as Record<string, object>)[kind], at: 33 } })
    expect(turned.section.at[0]).toBe(33)
    expect({ ...turned.section, at: [], measurable: [], land: 0 }).toEqual({
      ...still.section,
      at: [],
      measurable: [],
      land: 0,
    })
    expect(turned.section.land ?? 0).toBeCloseTo(still.section.land ?? 0, 9)
    expect(turned.bar).toEqual(still.bar)
  })

  it('twice as large in everything has twice the section', () => {
    const twice = (value: unknown): unknown =>
      typeof value === 'number'
        ? 2 * value
        : Array.isArray(value)
          ? value.map(twice)
          : Object.fromEntries(
              Object.entries(value as object).map(([key, of]) => [
                key,
                ['count', 'sides'].includes(key) ? of : twice(of),
              ]),
            )
    const bar = kind === 'spline' || kind === 'slit' ? { nose: { cornerRadius: 0 } } : {}
    const one = made(bore, feature, bar).section
    const two = made(2 * bore, { [kind]: twice((feature as Record<string, unknown>)[kind]) }, bar).section
    for (const key of ['width', 'mouth', 'sagitta', 'floor', 'touchOff', 'infeed', 'cornerReach'] as const)
      expect([key, two[key]]).toEqual([key, expect.closeTo(2 * one[key], 9)])
    expect(two.area).toBeCloseTo(4 * one.area, 8)
  })

  it('keeps the sums of its section, and tells all of it with reasons', () => {
    const design = made(bore, feature)
    const { section } = design
    expect(section.across).toBeCloseTo(section.boreRadius + section.floor, 12)
    expect(section.infeed).toBeCloseTo(section.floor - section.touchOff, 12)
    expect(section.crownDepth).toBeCloseTo(section.floor - section.boreRadius, 12)
    expect(section.sideDepth).toBeCloseTo(section.floor - section.mouth, 12)
    expect(section.mouth ** 2 + (section.width / 2) ** 2).toBeCloseTo(section.boreRadius ** 2, 9)
    for (const key of Object.keys(section)) expect(design.basis[`section.${key}`]?.length ?? 0).toBeGreaterThan(2)
    for (const key of Object.keys(section[kind as 'socket'] ?? {}))
      expect([key, design.basis[`section.${kind}.${key}`]]).toEqual([key, expect.stringMatching(/.{4}/)])
    const { section: told } = report(design)
    expect(told['kind']).toBe(kind)
    expect(told).toHaveProperty(kind)
    for (const key of ['boreRadius', 'width', 'floor', 'crownDepth', 'sideDepth', 'across', 'touchOff', 'infeed', 'at'])
      expect(told).toHaveProperty(key)
    expect(JSON.stringify(told)).not.toMatch(/null|NaN/)
  })
})

describe('the bit', () => {
  it('of a socket is a V between its flats, no shorter than its flanks', () => {
    const { bit, bar } = made(17.4, { socket: { sides: 4, across: 16, tip: 0.2 } })
    expect(bit).toMatchObject({ form: 'vee', includedAngle: 90, tipRadius: 0.2 })
    expect(bit?.flankLength).toBeCloseTo((bar?.noseWidth ?? 0) / 2 - setBackOf(4, 0.2), 9)
    expect(bit?.noseLength).toBeGreaterThan(bit?.flankLength ?? Infinity)
    const hexagon = made(20, { socket: { sides: 6, across: 19 } }).bit
    expect(hexagon?.includedAngle).toBe(120)
  })

  it('of a groove is round, of a spline and a slit flat', () => {
    const { bit } = made(20, { groove: { radius: 1.5, depth: 1 } })
    expect(bit).toMatchObject({ form: 'round', tipRadius: 1.5 })
    expect(bit?.noseWidth.nominal).toBe(3)
    for (const [bore, feature] of [jobs.spline, jobs.slit]) expect(made(bore, feature).bit).not.toHaveProperty('form')
  })
})

describe('an oil groove at the worst corners of its limits', () => {
  it('bore 20 to 20.1, round 1.5, 0.9 to 1.1 deep: side depth from where two circles meet', () => {
    const { section } = designed({
      units: 'mm',
      bore: { diameter: 20, tolerance: [0, 0.1], length: 30 },
      feature: { groove: { radius: 1.5, depth: [0.9, 1.1] } },
    })
    // Circles of R about 0 and of r about c = R + depth − r meet at x = (R² + c² − r²)/2c.
    const sides = [10, 10.05].flatMap((R) =>
      [0.9, 1.1].map((depth) => {
        const c = R + depth - 1.5
        return R + depth - (R ** 2 + c ** 2 - 1.5 ** 2) / (2 * c)
      }),
    )
    expect(section.sideDepthLimits.lower).toBeCloseTo(Math.min(...sides), 6)
    expect(section.sideDepthLimits.upper).toBeCloseTo(Math.max(...sides), 6)
    expect(section.crownDepthLimits).toMatchObject({ lower: 0.9, upper: 1.1 })
    expect(section.acrossLimits.lower).toBeCloseTo(20.9, 9)
    expect(section.acrossLimits.upper).toBeCloseTo(21.2, 9)
  })

  it('its nose is twice the round, 0.02 either way', () => {
    const { bit } = withBar({
      units: 'mm',
      bore: { diameter: 20, length: 30 },
      hub: { outside: 60 },
      feature: { groove: { radius: 1.5, depth: 1 } },
      tooling: { bar: {} },
    })
    expect(bit.noseWidth).toMatchObject({ nominal: 3, lower: 2.98, upper: 3.02 })
  })
})
