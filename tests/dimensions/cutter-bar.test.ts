import { describe, expect, it } from 'vitest'
import { bestCandidate, type Candidate, worth } from '../../src/dimensions/candidates.ts'
import { sectionOf } from '../../src/dimensions/section.ts'
import { specOf, withBar } from './designed.ts'

const job = (bar: object) => ({
  name: 'stroke',
  units: 'mm',
  bore: { diameter: 25, tolerance: [0, 0], length: 40 },
  hub: { outside: 70 },
  feature: { keyway: { width: 8, height: 7, across: 28.3 } },
  tooling: {
    bar: { machine: 'lathe', behind: 40, diameter: 16, bit: { shape: 'square', size: 6 }, nose: { width: 5 }, ...bar },
  },
}) // prettier-ignore

describe('lanes', () => {
  it('are worked at mid-tolerance: across 28.2 to 28.6 in 25 puts the floor 15.9 from the axis', () => {
    const { bar } = withBar({
      ...job({ nose: { width: 8 }, bit: { shape: 'square', size: 8 } }),
      feature: { keyway: { width: 8, height: 7, across: [28.2, 28.6] } },
    })
    for (const lane of bar.lanes) expect(lane.touchOff + lane.infeed).toBeCloseTo(15.9, 9)
  })

  it('each have a window of their own: nearer the middle more may stand out', () => {
    // Three lanes of a nose of 3: 2.5 to either side, and the middle.
    const { bar, asked } = withBar(job({ nose: { width: 3, cornerRadius: 0 } }))
    expect(bar.stages).toHaveLength(1)
    const middle = bar.lanes.find(({ offset }) => Math.abs(offset) < 1e-9)
    const side = bar.lanes.find(({ offset }) => Math.abs(offset) > 1)
    if (!middle || !side) throw new Error('no lanes')
    // Withdrawn as far from its own first touch, the bar's back keeps as much from the far wall: touch and wall are what differ.
    const far = (offset: number) => Math.sqrt((12.5 - 8 - (asked?.clearance.back ?? NaN)) ** 2 - offset ** 2)
    expect(middle.projectionMax - side.projectionMax).toBeCloseTo(
      far(0) + middle.touchOff - far(side.offset) - side.touchOff,
      6,
    )
  })
})

describe('the bar beyond the hub', () => {
  it('pushed, runs out by overtravel and the end below the bit’s face on the screw’s side', () => {
    const { bar } = withBar(job({ stroke: 'push' }))
    // Hole centre to end, the bit risen to the upper wall, its own height back: worked by hand from the drawing of the end.
    expect(bar.tipBeyond).toBeCloseTo(bar.overtravel + bar.holeToEnd + bar.seatRise - 6, 9)
    expect(bar.bodyLength - bar.overhang).toBeCloseTo(bar.tipBeyond - bar.overtravel, 9)
  })

  it('pulled, runs out by the whole end under the edge that looks to the holder: the bit is turned over', () => {
    const pushed = withBar(job({ stroke: 'push' })).bar
    const { bar } = withBar(job({ stroke: 'pull' }))
    expect(bar.tipBeyond).toBeCloseTo(bar.overtravel + bar.holeToEnd + bar.seatRise, 9)
    expect(bar.tipBeyond - pushed.tipBeyond).toBeCloseTo(6, 9)
    expect(bar.bodyLength).toBeGreaterThan(pushed.bodyLength + 5)
  })

  it('leaves the holder its gap when it is right in', () => {
    for (const stroke of ['push', 'pull']) {
      const { bar } = withBar(job({ stroke }))
      expect(bar.holderGap).toBeCloseTo(bar.overhang - 40 - bar.overtravel, 9)
      expect(bar.holderGap).toBeGreaterThanOrEqual(12.7 - 1e-9)
    }
  })

  it('is pulled with square bits only, whatever is on hand', () => {
    const { bar } = withBar({
      ...job({}),
      bore: { diameter: 12, length: 14 },
      feature: { keyway: { standard: 'iso-773' } },
      tooling: { bar: { machine: 'mill', behind: 40, stroke: 'pull' } },
    })
    expect(bar.bit.shape).toBe('square')
  })

  it('says what a caliper reads over it, and stock that it comes out of', () => {
    const { bar } = withBar(job({}))
    expect(bar.overBarAndNose).toBeCloseTo(16 + bar.projection, 9)
    expect(bar.stock.diameter).toBeGreaterThanOrEqual(bar.shank.nominal)
    expect(bar.stock.length).toBeGreaterThanOrEqual(bar.overall + 3 - 1e-9)
  })
})

describe('a bar that has no room', () => {
  it('is drawn with its nose a crown and the front clearance out: thicker than the bore with its clearances', () => {
    const { bar, asked } = withBar(job({ diameter: 24.9 }))
    expect([bar.projectionMin, bar.projectionMax].every(Number.isFinite)).toBe(false)
    expect(bar.projection).toBeCloseTo(28.3 - 25 + (asked?.clearance.front ?? NaN), 2)
  })

  it('with room, but none to set it in, stands in the middle of its window', () => {
    const { bar } = withBar(job({ diameter: 19, setting: 1, stages: 1 }))
    expect(bar.projectionMax - bar.projectionMin).toBeLessThan(2)
    expect(bar.projection).toBeCloseTo((bar.projectionMin + bar.projectionMax) / 2, 2)
  })
})

describe('the nose of a socket', () => {
  it('is as wide as a round blank gives it, nine tenths: 16 across in 17.07 has a mouth of 7.107', () => {
    // On the flat, 8 from the axis, the bore reaches √(8.535² − 64); the corner is 8 from the middle, and half the mouth that difference × sin 45°.
    const mouth = 2 * (8 - Math.sqrt(8.535 ** 2 - 64)) * Math.SQRT1_2
    const { bar, section } = withBar({
      name: 'square',
      units: 'mm',
      bore: { diameter: 17.07, tolerance: [0, 0], length: 20 },
      hub: { outside: 60 },
      feature: { socket: { sides: 4, across: [16, 16] } },
      tooling: { bar: { bit: { shape: 'round', size: 8 } } },
    })
    expect(section.widthLimits.upper).toBeCloseTo(mouth, 6)
    expect(mouth).toBeCloseTo(7.107, 3)
    expect(bar.noseWidth).toBeCloseTo(7.2, 9)
  })
})

// By the sentences that give the reasons, with pencil and paper.
describe('lengths and small sizes of a bar', () => {
  it('Ø16 through a hub of 40: hub, 1 of overtravel, 12.7 before the holder and the end below the bit', () => {
    const { bar } = withBar(job({}))
    const end = bar.tipBeyond - 1
    expect(bar.bodyLength).toBe(Math.ceil(40 + 1 + 12.7 + end))
    expect(bar.overhang).toBeCloseTo(bar.bodyLength - end, 9)
    // Three diameters are 48, in fives.
    expect(bar.overall).toBe(bar.bodyLength + 50)
    expect(bar.stock).toMatchObject({ diameter: 16, length: bar.overall + 3 })
    expect(bar.shank).toMatchObject({ lower: expect.closeTo(15.982, 9), upper: 16 })
    expect(bar).toMatchObject({ endChamfer: 1, mouthChamfer: 0.3, shouldered: false, fillet: 0 })
    expect(bar.countersink).toBeCloseTo(Math.ceil(11 * bar.screw.major) / 10, 9)
    expect(bar.wallBesideHole).toBeCloseTo((16 - bar.crossHole.nominal) / 2, 9)
    expect(bar.wallRoundTap).toBeCloseTo((16 - bar.screw.major) / 2, 9)
    expect(bar.holeRatio).toBeCloseTo(bar.crossHole.nominal / 16, 9)
  })

  it('engages what of the screw is not taken up by reaching the bit: 0.8 of M5 and the reach are its least length', () => {
    const { screw } = withBar(job({ screw: 'M5' })).bar
    expect(screw.engaged).toBeCloseTo(screw.length - (screw.lengthMin - 4), 9)
  })

  it('holds a round blank by a flat of a tenth of it', () => {
    const flat = (size: number) => withBar(job({ bit: { shape: 'round', size }, nose: { width: 4 } })).bar.bit.flat
    expect([flat(5), flat(6)]).toEqual([0.5, 0.6])
  })

  it('under 8 mm its end is broken by 0.5', () => {
    const of = (diameter: number) =>
      withBar(job({ diameter, bit: { shape: 'square', size: 3 }, nose: { width: 2 } })).bar
    expect([of(7.9).endChamfer, of(8).endChamfer]).toEqual([0.5, 1])
  })

  const slim = (shank: number) =>
    withBar({
      name: 'slim',
      units: 'in',
      bore: { diameter: 1, tolerance: [0, 0], length: 1.5 },
      hub: { outside: 3 },
      feature: { keyway: { width: 0.25, height: 0.25, across: 1.114 } },
      tooling: {
        bar: { diameter: 0.28, shank, bit: { shape: 'square', size: 0.125 }, nose: { width: 0.1 }, behind: 2 },
      },
    }).bar

  it('.280 on a shank of 3/8 in inches: the shank .3745 to .3750, 1-1/4 long; the shoulder’s fillet .040', () => {
    const bar = slim(0.375)
    const end = bar.tipBeyond / 25.4 - 1 / 25.4
    expect(bar.bodyLength / 25.4).toBeCloseTo(Math.ceil(16 * (1.5 + 1 / 25.4 + 0.5 + end)) / 16, 9)
    expect((bar.overall - bar.bodyLength) / 25.4).toBeCloseTo(1.25, 9)
    expect(bar.shank.upper / 25.4).toBeCloseTo(0.375, 9)
    expect(bar.shank.lower / 25.4).toBeCloseTo(0.3745, 9)
    expect(bar.diameter.lower / 25.4).toBeCloseTo(0.278, 9)
    expect(bar.endChamfer / 25.4).toBeCloseTo(0.02, 9)
    expect(bar.fillet / 25.4).toBeCloseTo(0.04, 9)
    // 3 mm to face, up to 1/16.
    expect(bar.stock.length / 25.4).toBeCloseTo(Math.ceil(16 * (bar.overall / 25.4 + 3 / 25.4)) / 16, 9)
    // A lower shoulder takes no larger fillet than half of it.
    expect(slim(0.3125).fillet / 25.4).toBeCloseTo(0.01625, 9)
  })
})

describe('what a bar is worth', () => {
  const worthOf = (diameter: number, lanes: number, stages = 1, shape = 'square') =>
    worth({
      bit: { shape },
      diameter: { nominal: diameter },
      lanes,
      stages: Array.from({ length: stages }),
    } as unknown as Candidate)

  it('a second lane, or a second stage, is worth an eighth of diameter; a square bit a sixth', () => {
    expect(worthOf(18, 2)).toBeCloseTo(worthOf(16, 1), 9)
    expect(worthOf(18, 1, 2)).toBeCloseTo(worthOf(16, 1), 9)
    expect(worthOf(14, 1, 1, 'round')).toBeCloseTo(worthOf(12, 1), 9)
  })
})

describe('what is on hand', () => {
  const best = (bar: number) => {
    const spec = specOf({
      ...job({}),
      tooling: { bar: { behind: 40 } },
      shop: { bits: [{ shape: 'square', size: 6 }], drills: [4.2, 8.4], threads: ['M5'], bars: [bar], collets: [16] },
    })
    const { bar: asked } = spec.tooling
    return asked && bestCandidate(spec, asked, sectionOf(spec).sizes)
  }

  it('a hole of 8.45 breaks a bar under 12.07, seven tenths, and is cautioned under 14.08, six tenths', () => {
    expect(best(11.5)?.broken).toHaveLength(1)
    expect([best(12.2)?.broken, best(12.2)?.cautions]).toEqual([[], 1])
    expect([best(14.2)?.broken, best(14.2)?.cautions]).toEqual([[], 0])
  })

  it('a square blank as wide as the slot gives it a nose of 0.01 less, within 8 JS9 (7.982 to 8.018)', () => {
    const { bar } = withBar({
      ...job({}),
      feature: { keyway: { standard: 'iso-773' } },
      tooling: { bar: { diameter: 18, bit: { shape: 'square', size: 8 }, behind: 40 } },
    })
    expect(bar.noseWidth).toBeCloseTo(7.99, 9)
    expect(bar.lanes).toHaveLength(1)
  })

  it('a square blank gives a nose all but 1/64 of itself, a round one nine tenths: 5/16 and .282 for a slot of .460', () => {
    const nose = (shape: string) =>
      withBar({
        name: 'blanks',
        units: 'in',
        bore: { diameter: 1.25, length: 1.5 },
        hub: { outside: 3 },
        feature: { keyway: { width: 0.46, height: 0.25, across: 1.36 } },
        tooling: { bar: { bit: { shape, size: 0.3125 }, behind: 2 } },
      }).bar
    expect(nose('square').noseWidth / 25.4).toBeCloseTo(0.282, 9)
    expect(nose('square').lanes).toHaveLength(2)
    expect(nose('round').noseWidth / 25.4).toBeLessThanOrEqual(0.28125)
    expect(nose('round').lanes).toHaveLength(3)
  })
})
