import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { torqueBearingHub, torqueBearingShaft, torqueShear } from '../../src/mechanics/key.ts'
import { socketTorque, splineTorque } from '../../src/mechanics/splined.ts'

/** A pressure on a wall laid out strip by strip: each pushes at its own distance. */
const wall = (from: number, to: number, pressure: number, length: number): number => {
  const strips = 4000
  let torque = 0
  for (let n = 0; n < strips; n++) {
    const x = from + ((to - from) * (n + 0.5)) / strips
    torque += pressure * length * ((to - from) / strips) * x
  }
  return to > from ? torque : 0
}

const joints = fc
  .record({
    shaft: fc.double({ min: 8, max: 100, noNaN: true }),
    wide: fc.double({ min: 0.15, max: 0.35, noNaN: true }),
    high: fc.double({ min: 0.6, max: 1, noNaN: true }),
    sunk: fc.double({ min: 0.5, max: 0.62, noNaN: true }),
    over: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    edge: fc.double({ min: 0, max: 0.06, noNaN: true }),
  })
  .map(({ shaft, wide, high, sunk, over, edge }) => {
    const width = wide * shaft
    const height = high * width
    const bottom = shaft / 2 - sunk * height
    return {
      shaft,
      width,
      height,
      shaftAcross: bottom + shaft / 2,
      boreRadius: shaft / 2,
      floor: bottom + height * (1 + over),
      length: shaft,
      chamfer: edge * height,
      edgeBreak: edge * height,
    }
  })

describe('a key, strip by strip', () => {
  it('presses on hub and shaft as the closed forms say, whichever ends the wall: chamfer, break or floor', () => {
    fc.assert(
      fc.property(joints, fc.double({ min: 20, max: 300, noNaN: true }), (joint, pressure) => {
        const { shaft, width, height, shaftAcross, floor, length, chamfer, edgeBreak } = joint
        const bottom = shaftAcross - shaft / 2
        const rim = Math.sqrt((shaft / 2) ** 2 - (width / 2) ** 2)
        const onHub = wall(rim + edgeBreak, Math.min(bottom + height - chamfer, floor), pressure, length)
        const onShaft = wall(bottom + chamfer, rim - edgeBreak, pressure, length)
        expect(torqueBearingHub(joint, pressure)).toBeCloseTo(onHub, 4)
        expect(torqueBearingShaft(joint, pressure)).toBeCloseTo(onShaft, 4)
      }),
      { numRuns: 100, seed: 6 },
    )
  })

  it('textbooks, which take half the height at the shaft’s radius, ask too much of the shaft’s wall: 1341.6 for 950.3 lbf in, 41 %', () => {
    const inch = 25.4
    const joint = {
      shaft: inch,
      width: 0.25 * inch,
      height: 0.25 * inch,
      shaftAcross: 0.859123 * inch,
      boreRadius: 0.5 * inch,
      floor: 0.614123 * inch,
      length: inch,
      chamfer: 0.01 * inch,
      edgeBreak: 0.01 * inch,
    } // prettier-ignore
    const pressure = 370 / 2.5
    const textbook = pressure * (joint.height / 2) * joint.length * (joint.shaft / 2)
    expect(textbook / 112.9848290276167).toBeCloseTo(1341.6, 0)
    expect(textbook / torqueBearingShaft(joint, pressure)).toBeCloseTo(1.41, 2)
    expect(torqueShear(joint, 0.577 * pressure)).toBeGreaterThan(torqueBearingHub(joint, pressure))
  })
})

describe('splines and sockets, strip by strip', () => {
  it('press on flanks and flats as the closed forms say', () => {
    const flanks = 6 * wall(11.5, 13, 20, 30) * 0.75
    expect(
      splineTorque({ count: 6, boreRadius: 11.5, majorRadius: 13, chamfers: 0, length: 30, sharing: 0.75 }, 20),
    ).toBeCloseTo(flanks, 3)
    for (const sides of [4, 6]) {
      // One half of each flat of a square or hexagon 12 across, from where a bore of 13 leaves it to its corner.
      const corner = 6 * Math.tan(Math.PI / sides)
      const flat = wall(Math.sqrt(Math.max(0, 6.5 ** 2 - 36)), corner - 0.1, 80, 20) * sides * 0.75
      const joint = { sides, across: 12, boreRadius: 6.5, relief: 0.1, length: 20, sharing: 0.75 }
      expect(socketTorque(joint, 80)).toBeCloseTo(flat, 3)
    }
  })
})
