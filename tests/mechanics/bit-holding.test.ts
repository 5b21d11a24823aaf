import { describe, expect, it } from 'vitest'
import { heldFlat, heldOnCorners, pressLeast, screwPress } from '../../src/mechanics/bit-holding.ts'
import { poundForce } from '../../src/standards/inch.ts'
import { setScrewFor } from '../../src/standards/set-screws.ts'

const inch = 25.4
/** What the screw of this thread presses with at its seating torque, N. */
const pressed = (thread: string, major: number): number => screwPress(setScrewFor(thread)?.seatingTorque ?? 0, major)

describe('the screw', () => {
  it.each([
    // Seating torques of collar charts and a holding-power sheet: 36 and 20 lbf in.
    ['#10-32', 0.19 * inch, 947.4],
    ['#8-32', 0.164 * inch, 609.8],
  ])('%s presses as its seating torque gives over 0.2 of the diameter', (thread, major, pounds) => {
    expect(pressed(thread, major) / poundForce).toBeCloseTo(pounds, 0)
  })

  it.each([
    // 2.2, 4.0 and 7.2 N m: ISO 4029, collar chart.
    ['M4', 4, 2750],
    ['M5', 5, 4000],
    ['M6', 6, 6000],
  ])('%s: the same, N', (thread, major, newtons) => {
    expect(pressed(thread, major)).toBeCloseTo(newtons, 0)
  })

  it('holds a square on two corners with 2.37 times friction: 947.4 lbf hold 269.2; M5 on 6 mm 1136.4 N: worked scenario, derived', () => {
    expect(heldOnCorners(947.4, 0.347977, 0.127163)).toBeCloseTo(269.2, 0)
    expect(heldOnCorners(4000, 8.355869, 3.054936)).toBeCloseTo(1136.4, 0)
    expect(heldFlat(1000)).toBeCloseTo(240, 9)
  })
})

describe('the press that keeps a bit from rocking', () => {
  const cutting = 94.555285
  const seat = (tail: number) => ({ radius: 0.3125, projection: 0.2, tail })

  it('pushed, 60.515383 lbf; pulled, 270.474162 with the longest bit and 696.331676 with the shortest: worked scenario, derived', () => {
    expect(pressLeast(cutting, seat(0.275466), 'push')).toBeCloseTo(60.515383, 5)
    expect(pressLeast(cutting, seat(0.275466), 'pull')).toBeCloseTo(270.474162, 3)
    // In inches a tail under a tenth of a millimetre is none.
    expect(
      pressLeast(cutting, { radius: 0.3125 * inch, projection: 0.2 * inch, tail: 0.080528 * inch }, 'pull'),
    ).toBeCloseTo(696.331676, 1)
  })

  it('is what moments about the far corner of the tail say, pulled', () => {
    // The nose hangs past the bar's axis, the tail's end bears: sum of moments about the axis, and of forces.
    const { radius, projection, tail } = { radius: 8, projection: 4, tail: 5 }
    const reaction = (500 * (radius + projection)) / tail
    expect(pressLeast(500, { radius, projection, tail }, 'pull')).toBeCloseTo(500 + reaction, 9)
  })
})
