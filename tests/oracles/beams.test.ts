import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deflection, digIn, givePerNewton, type Held } from '../../src/mechanics/bar.ts'
import { cuttingForce, thrustRatio } from '../../src/mechanics/cutting.ts'
import { machineFromPull } from '../../src/mechanics/machine.ts'
import { kienzleGroup } from '../../src/standards/kienzle.ts'
import { endDeflection, type Root } from './beams.ts'

const E = 207_000
const stiffness = (d: number): number => (E * Math.PI * d ** 4) / 64
const fixed: Root = { slide: Infinity, tilt: Infinity }
const mild = kienzleGroup(1) as NonNullable<ReturnType<typeof kienzleGroup>>

const bars = fc.record({
  diameter: fc.double({ min: 4, max: 60, noNaN: true }),
  long: fc.double({ min: 1.2, max: 7, noNaN: true }),
  out: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
  machine: fc.double({ min: 500, max: 50_000, noNaN: true }),
  tilt: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
  ratio: fc.double({ min: 0, max: 1.2, noNaN: true }),
  stroke: fc.constantFrom('push' as const, 'pull' as const),
})

const heldOf = ({
  diameter,
  long,
  out,
  machine,
  stroke,
}: typeof bars extends fc.Arbitrary<infer T> ? T : never): Held => ({
  diameter,
  overhang: long * diameter,
  projection: out * diameter,
  machine,
  stroke,
})

/** Into the work at the nose: thrust away from it, and the cutting force's moment about the bar's axis. */
const byElements = (held: Held, root: Root, cutting: number, thrust: number): number => {
  const moment = cutting * (held.diameter / 2 + held.projection) * (held.stroke === 'push' ? 1 : -1)
  return endDeflection([{ length: held.overhang, stiffness: stiffness(held.diameter) }], root, -thrust, moment)
}

/** Root that gives 1/machine sideways at the nose, the share `tilt` of it by tilting. */
const rootOf = ({ machine, overhang }: Held, tilt: number): Root => ({
  slide: machine / (1 - tilt),
  tilt: (machine * overhang ** 2) / tilt,
})

const alike = (one: number, other: number, scale: number): void => {
  expect(Math.abs(one - other)).toBeLessThan(1e-5 * scale)
}

describe('a bar by finite elements', () => {
  it('bends as the closed form says, held fast at its root', () => {
    fc.assert(
      fc.property(bars, (bar) => {
        const held = heldOf(bar)
        const thrust = 500 * bar.ratio
        const found = byElements(held, fixed, 500, thrust)
        alike(
          deflection(held, 500, thrust),
          found,
          Math.abs(byElements({ ...held, stroke: 'pull' }, fixed, 500, thrust)),
        )
      }),
      { numRuns: 60, seed: 3 },
    )
  })

  it('gives way on a root that slides and tilts as the closed form says', () => {
    fc.assert(
      fc.property(bars, (bar) => {
        const held = heldOf(bar)
        const away = -byElements(held, rootOf(held, bar.tilt), 1, bar.ratio)
        alike(givePerNewton(held, bar.ratio, bar.tilt), away, Math.abs(away) + 1 / bar.machine)
      }),
      { numRuns: 60, seed: 4 },
    )
  })

  it('hooks at the gain that the slope of its own deflection gives', () => {
    fc.assert(
      fc.property(bars, fc.constantFrom(0, 10, 20, 25), (bar, rake) => {
        const held: Held = { ...heldOf(bar), stroke: 'push' }
        const { least } = thrustRatio(rake)
        const force = (chip: number) => cuttingForce(mild, 6, chip, rake, 'worn')
        const [chip, step] = [0.02, 1e-4]
        // How much farther the nose goes in for a chip so much thicker.
        const gain = (root: Root) =>
          (byElements(held, root, force(chip + step), least * force(chip + step)) -
            byElements(held, root, force(chip - step), least * force(chip - step))) /
          (2 * step)
        const slope = ((1 - mild.exponent) * force(chip)) / chip
        const whole = Math.max(gain(fixed), gain(rootOf(held, 0.999999)))
        alike(digIn(held, least, slope), whole, 10 * (Math.abs(whole) + slope / bar.machine))
      }),
      { numRuns: 40, seed: 5 },
    )
  })

  it('tells the machine from a pull on the nose', () => {
    const held: Held = { diameter: 16, overhang: 70, projection: 4, machine: 3000, stroke: 'push' }
    for (const tilt of [0.1, 0.5, 0.9]) {
      const pull = 1 / endDeflection([{ length: 70, stiffness: stiffness(16) }], rootOf(held, tilt), 1, 0)
      expect(machineFromPull(pull, 16, 70)).toBeCloseTo(3000, 0)
    }
  })

  it('with a thicker shank at its root gives less than reckoned, and more than its thin part alone', () => {
    // The overhang is reckoned as all of the thin diameter: on the safe side.
    for (const shank of [18, 22, 30]) {
      const stepped = endDeflection(
        [
          { length: 15, stiffness: stiffness(shank) },
          { length: 55, stiffness: stiffness(16) },
        ],
        fixed,
        -300,
        0,
      )
      const held: Held = { diameter: 16, overhang: 70, projection: 4, machine: Infinity, stroke: 'push' }
      expect(stepped).toBeGreaterThan(deflection(held, 0, 300))
      expect(stepped).toBeLessThan(deflection({ ...held, overhang: 55 }, 0, 300))
    }
  })
})
