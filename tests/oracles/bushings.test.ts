import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOf, sizesOf } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import { corners, least, line } from './curves.ts'

// The same cases every time; take the seed out to look for new ones.
fc.configureGlobal({ seed: 17, endOnFailure: true })

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const inMm = (mm: number) => `${Math.round(mm * 1e4) / 1e4} mm`

/** A broach that somebody might have measured, and a bore that it might go in. */
const documents = fc
  .record({
    units: fc.constantFrom('mm' as const, 'in' as const),
    bore: between(10, 100),
    hub: between(0.8, 2),
    share: between(0.2, 0.35),
    depth: between(0.08, 0.14),
    acrosses: between(0, 0.3),
    bores: between(0, 0.02),
    first: between(0.75, 1.15),
    rise: between(0.02, 0.12),
    teeth: fc.integer({ min: 8, max: 40 }),
    pitch: between(4, 14),
    wide: between(-0.1, 0.1),
  })
  .map((of) => {
    const width = of.bore * of.share
    const first = (of.bore / 2) * of.first
    const toothed = of.pitch * (of.teeth - 1)
    return {
      name: 'trial',
      units: of.units,
      bore: { diameter: inMm(of.bore), tolerance: ['0 mm', inMm(of.bores)], length: inMm(of.bore * of.hub) },
      feature: {
        keyway: {
          width: [inMm(width - 0.02), inMm(width + 0.02)],
          across: [inMm(of.bore * (1 + of.depth)), inMm(of.bore * (1 + of.depth) + of.acrosses)],
        },
      },
      tooling: {
        press: {
          broach: {
            toothWidth: inMm(width),
            bodyWidth: inMm(width + of.wide),
            firstTooth: inMm(first),
            lastTooth: inMm(first + of.bore * of.rise),
            pilot: inMm(first * 0.97),
            teeth: of.teeth,
            toothedLength: inMm(toothed),
            overall: inMm(toothed + 40),
            pilotLength: inMm(20),
          },
        },
      },
    }
  })

const made = (document: object) => {
  const read = readSpec(document)
  if (!('spec' in read)) throw new Error(JSON.stringify(read.complaints))
  const { bushing, broach, ...rest } = sizesOf(read.spec)
  if (!bushing || !broach) throw new Error('no bushing')
  return { ...rest, bushing, broach }
}

/** Farthest point of a tooth's top from the bore's axis, walked. */
const reach = (x: number, width: number): number =>
  -least(line([x, -width / 2], [x, width / 2]), ([px, py]) => -Math.hypot(px, py))

describe('bushings and shims that the design returns', () => {
  it('end at the middle of across: back wall, shims and last tooth', () => {
    fc.assert(
      fc.property(documents, (document) => {
        const { bushing, broach, section } = made(document)
        const shims = bushing.shims.reduce((sum, shim) => sum + shim, 0)
        const over = bushing.backWall.nominal + shims + broach.lastTooth
        const wanted = section.across
        // Without a shim the wall is a step of its own, 0.01 mm or .0005 in, short at the most, and never over.
        if (bushing.shims.length > 0) expect(over).toBeCloseTo(wanted, 6)
        else {
          expect(over).toBeGreaterThan(wanted - 0.0127)
          expect(over).toBeLessThanOrEqual(wanted + 1e-9)
        }
        expect(bushing.passes).toHaveLength(bushing.shims.length + 1)
        for (const [n, pass] of bushing.passes.entries()) {
          expect(pass.shims).toBe(n)
          const laid = bushing.shims.slice(0, n).reduce((sum, shim) => sum + shim, 0)
          expect(pass.over).toBeCloseTo(bushing.backWall.nominal + broach.lastTooth + laid, 9)
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('let every tooth in: the first into the uncut bore, each pass’s first into the slot that the last left', () => {
    fc.assert(
      fc.property(documents, (document) => {
        const { bushing, broach, section } = made(document)
        for (const [bore = 0, wall = 0] of corners(
          [section.bore.lower, section.bore.upper],
          [bushing.backWall.lower, bushing.backWall.upper],
        )) {
          const top = wall - bore / 2 + broach.firstTooth
          if (top > 0) expect(reach(top, broach.toothWidth)).toBeLessThan(bore / 2)
        }
        let cut = bushing.backWall.nominal + broach.lastTooth
        let under = bushing.backWall.nominal
        for (const shim of bushing.shims) {
          under += shim
          // Each shim is ground to a step of a ten-thousandth at the most; the last takes what the others leave.
          expect(under + broach.firstTooth).toBeLessThanOrEqual(cut + 0.0013 * bushing.shims.length)
          cut = under + broach.lastTooth
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('have the wall that is said behind the slot, walked round its corners', () => {
    fc.assert(
      fc.property(documents, (document) => {
        const of = made(document)
        const { bushing } = of
        const outside = (bushing.outside.lower + bushing.outside.upper) / 2
        const half = bushing.slotWidth.nominal / 2
        const floor = bushing.floorFromAxis
        const walked = least(line([floor, -half], [floor, half]), ([x, y]) => outside / 2 - Math.hypot(x, y))
        expect(bushing.cornerWall).toBeCloseTo(walked, 6)
        const rule = findingsOf(of).find(({ rule: id }) => id === 'bushing-wall')
        // At the worst of its limits it is less, by no more than they can add up to.
        if (floor > -0.05) return
        expect(rule?.measured ?? 0).toBeLessThanOrEqual(walked)
        expect(rule?.measured ?? 0).toBeGreaterThan(walked - 0.1)
      }),
      { numRuns: 500 },
    )
  })

  it('slide in the smallest bore, are as long as it, and take the broach', () => {
    fc.assert(
      fc.property(documents, (document) => {
        const { bushing, broach, section, spec } = made(document)
        expect(bushing.outside.upper).toBeLessThan(spec.bore.diameter.lower)
        expect(bushing.length).toBeGreaterThanOrEqual(spec.bore.length)
        expect(bushing.slotWidth.lower).toBeGreaterThan(Math.max(broach.toothWidth, broach.bodyWidth))
        expect(bushing.collarDiameter).toBeGreaterThan(spec.bore.diameter.upper)
        expect(bushing.shim.width).toBeLessThan(bushing.slotWidth.lower)
        // At mid-tolerance the plate's hole clears the floor's corners by 0.2.
        const { floor, width } = section
        expect(bushing.plateHoleRadius).toBeGreaterThan(
          Math.hypot(floor, width / 2) + 0.2 - section.cornerRadius - 1e-9,
        )
      }),
      { numRuns: 500 },
    )
  })
})
