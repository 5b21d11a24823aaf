import { describe, expect, it, test } from 'vitest'
import { holeFor, seatRise } from '../../src/dimensions/cross-hole.ts'
import {
  bitToEndOf,
  type Form,
  holdingFor as holdingOf,
  leaningLength,
  leaningNose,
  rockOf,
  type Seated,
  threadsOnHand,
} from '../../src/dimensions/holding.ts'
import { readSpec } from '../../src/spec/read.ts'

/** A square blank in an exact hole in an exact bar. */
const seated = (bar: number, size: number): Seated => {
  const hole = holeFor('square', size, size / 40)
  return {
    bit: { shape: 'square', size, cornerBreak: size / 40, flat: 0 },
    hole: { nominal: hole, most: hole },
    rise: seatRise('square', size, size / 40, hole),
    bar: { nominal: bar, least: bar },
  }
}
const spec = (units: 'mm' | 'in', shop: object = {}) => {
  const read = readSpec({
    name: 'trial',
    units,
    bore: { diameter: units === 'mm' ? 20 : 0.75, length: units === 'mm' ? 25 : 1 },
    feature: { keyway: {} },
    shop,
  })
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  return read.spec
}

const holdingFor = (of: ReturnType<typeof spec>, form: Form, at: Seated, incline: number, fixed?: string) =>
  holdingOf(of, form, at, incline, threadsOnHand(of, fixed), fixed !== undefined)

describe('a screw in the wall', () => {
  test.each([
    // Worked scenario, derived: bar, blank, screw, threads in the wall.
    [14, 6, 'M4', 0.7, 4.03],
    [0.625 * 25.4, 0.25 * 25.4, '#8-32', 25.4 / 32, 4.43],
  ])('bar %d, blank %d, %s: enough threads', (bar, size, screw, pitch, threads) => {
    const of = seated(bar, size)
    expect((bar - of.hole.most) / 2 / pitch).toBeCloseTo(threads, 2)
    const holding = holdingFor(spec(screw.startsWith('M') ? 'mm' : 'in'), 'side screw', of, 0, screw)
    expect(holding?.screw.thread).toBe(screw)
    // Its head not above the bar, its point on the bit with four threads engaged.
    expect(holding?.screw.length).toBeLessThanOrEqual(bar / 2 - size / 2 + 1e-9)
    expect((holding?.screw.engaged ?? 0) / pitch).toBeGreaterThanOrEqual(4)
  })

  it('lets the bit rock by the play of its hole: 6 in 14, tail as long as the bar is thick, 0.45°', () => {
    // Worked scenario, derived: 2 (u_b − b/2)/(ρ + tail).
    expect(rockOf(seated(14, 6), 7)).toBeCloseTo(0.45, 2)
  })

  it('takes a screw of the lengths on hand, or grinds the next longer one', () => {
    const of = seated(16, 6)
    const held = (lengths: readonly number[]) =>
      holdingFor(spec('mm', { screws: [{ thread: 'M4', lengths }], taps: ['M4'] }), 'side screw', of, 0)?.screw.length
    expect(held([4, 5, 8])).toBe(5)
    expect(held([8])).toBe(5)
    expect(held([3])).toBeUndefined()
  })
})

describe('a bit that leans', () => {
  it('d 14, b 6, p 3, 20°, 2 mm of wall: 2.220083 from edge to end, grooves of 3.720083', () => {
    // Worked scenario, derived.
    const of = seated(14, 6)
    const holding = holdingFor(spec('mm'), 'inclined', of, 20)
    expect(holding?.wallAtEnd).toBe(2)
    const toEnd = bitToEndOf('inclined', of, holding as NonNullable<typeof holding>, 20, 3)
    expect(toEnd).toBeCloseTo(2.220083, 6)
    expect(1 + toEnd + 0.5).toBeCloseTo(3.720083, 6)
  })

  it('upright it is a screw in the wall, and an end screw takes 7.232870', () => {
    const of = seated(14, 6)
    const side = holdingFor(spec('mm'), 'side screw', of, 0) as NonNullable<ReturnType<typeof holdingFor>>
    expect(bitToEndOf('side screw', of, side, 0, 3)).toBeCloseTo(2 + of.hole.nominal / 2 + of.rise - 6, 9)
    // Worked scenario, derived; the end is rounded up to a tenth: 7.232870 at its own 9.233.
    const end = holdingFor(spec('mm'), 'end screw', of, 0, 'M5') as NonNullable<ReturnType<typeof holdingFor>>
    const exact = of.hole.nominal / 2 + 5 + 1
    expect(bitToEndOf('end screw', of, { ...end, holeToEnd: exact }, 0, 3)).toBeCloseTo(7.23287, 6)
  })

  // The same from vectors: the blank's corners in the plane of bar and bit, z towards the end, x towards the nose.
  it.each([5, 10, 15, 20, 25, 30])('leaning by %d°: sizes from vectors', (lean) => {
    const [bar, size, p, cup, under] = [14, 6, 3, 2.5, 0.25]
    const of = seated(bar, size)
    const holding = holdingFor(spec('mm'), 'inclined', of, lean) as NonNullable<ReturnType<typeof holdingFor>>
    const turn = (lean * Math.PI) / 180
    type Vector = readonly [x: number, z: number]
    const [out, forth]: readonly [Vector, Vector] = [
      [Math.cos(turn), Math.sin(turn)],
      [-Math.sin(turn), Math.cos(turn)],
    ]
    const at = (origin: Vector, a: number, b: number): Vector => [
      origin[0] + a * out[0] + b * forth[0],
      origin[1] + a * out[1] + b * forth[1],
    ]
    // Hole's centre on the axis; the end at z = holeToEnd from there. Seated on the wall away from the end: the far face stands `rise` back.
    const leading = size - of.rise
    // The edge: where the leading face has come out to x = ρ + p.
    const along = (bar / 2 + p - leading * forth[0]) / out[0]
    const edge = at([0, 0], along, leading)
    expect(edge[0]).toBeCloseTo(bar / 2 + p, 9)
    expect(holding.holeToEnd - edge[1]).toBeCloseTo(bitToEndOf('inclined', of, holding, lean, p), 9)
    // The hole's own lower edge at the bar's surface leaves the wall that was asked for on the axis side of the nose.
    const mouth = at([0, 0], (bar / 2 - (of.hole.nominal / 2) * forth[0]) / out[0], of.hole.nominal / 2)
    expect(mouth[0]).toBeCloseTo(bar / 2, 9)
    expect(holding.holeToEnd - mouth[1]).toBeCloseTo(holding.wallAtEnd ?? Number.NaN, 9)
    // The nose's shoulder, square to the blank: its trailing corner stands farthest out.
    const nose = leaningNose(4, size, lean)
    const corners = [0, -size].map((across) => at(edge, -nose, across)[0])
    expect(Math.max(...corners)).toBeCloseTo(edge[0] - 4, 9)
    // Length: no tail corner comes within `under` of the surface; the cup's far edge and the margin lie on the blank.
    const { least, most } = leaningLength(p, bar, size, cup, under, lean)
    const inside = Math.sqrt((bar / 2 - under) ** 2 - (size / 2) ** 2)
    expect(at(edge, -most, 0)[0]).toBeCloseTo(-inside, 9)
    // From a blank whose middle line goes through the axis, as the closed form takes it.
    const middle = at([0, 0], (bar / 2 + p - (size / 2) * forth[0]) / out[0], size / 2)
    const cupAt = middle[0] * out[0] + middle[1] * out[1] + cup / 2 + 0.75
    expect(least).toBeCloseTo(cupAt, 9)
  })
})
