import { middle, type Size, withDeviations } from '../fits/size.ts'
import type { Broach, Spec } from '../spec/spec.ts'
import type { Basis, Reasoned } from './basis.ts'
import { mouthX } from './bore.ts'
import { spacerHeight } from './press-spacer.ts'
import { either, roundDown, roundTo, roundUp, stepsOf } from './makeable.ts'
import { locatingOf } from './locating.ts'
import type { GuideBushing, Section } from './types.ts'

/** First-tooth clearance and slot clearance, mm. Source: judgement. */
const firstToothClear = 0.05
const slotClear = 0.08

/**
 * x of the slot's floor in the bore, from the bore axis: low enough for the first tooth to enter at its corners, and for the last tooth
 * to end at the floor.
 */
export const slotFloorX = (radius: number, floor: number, broach: Broach): number =>
  Math.min(mouthX(radius, broach.toothWidth / 2) - broach.firstTooth - firstToothClear, floor - broach.lastTooth)

/** Shims needed to bring the last tooth to the floor, none taller than the broach's own rise. */
export const shimCount = (total: number, broach: Broach): number =>
  total <= 1e-9 ? 0 : Math.ceil(total / (broach.lastTooth - broach.firstTooth) - 1e-9)

/** Metal behind the slot, thinnest at the slot's corner. `floor` from the bushing's own axis. */
export const cornerWall = (outside: number, floor: number, slotWidth: number): number =>
  outside / 2 - Math.hypot(floor, slotWidth / 2)

/** Largest rise of the teeth as measured, else the mean of the roughing ones: finishing teeth stand at full height. */
export const biteOf = (broach: Broach): number =>
  broach.heights
    ? Math.max(...broach.heights.slice(1).map((height, n) => height - (broach.heights?.[n] ?? height)))
    : (broach.lastTooth - broach.firstTooth) / (broach.teeth - (broach.finishingTeeth ?? 1))

export const pitchOf = (broach: Broach): number => broach.toothedLength / (broach.teeth - 1)

/**
 * Leaves of stock that make up a pack of `thickness`: fewest leaves that come within `near`, else the nearest with up to four, no more than
 * twice `near` over it: so much is rubbed off a leaf.
 */
export const packOf = (thickness: number, stock: readonly number[], near: number): Pack => {
  const first = nearestPack(thickness, stock, near, near)
  if (Math.abs(first.short) <= near) return first
  const rubbed = nearestPack(thickness, stock, near, 2 * near)
  return Math.abs(rubbed.short) < Math.abs(first.short) ? rubbed : first
}

interface Pack {
  readonly leaves: readonly number[]
  readonly short: number
}

const nearestPack = (thickness: number, stock: readonly number[], near: number, over: number): Pack => {
  let best: { leaves: readonly number[]; short: number } = { leaves: [], short: thickness }
  const descending = stock.toReversed()
  const grow = (leaves: readonly number[], left: number, from: number, most: number): boolean => {
    if (leaves.length > 0 && Math.abs(left) < Math.abs(best.short) - 1e-9) best = { leaves, short: left }
    if (Math.abs(best.short) <= near) return true
    if (leaves.length === most) return false
    for (let i = from; i < descending.length; i++) {
      const leaf = descending[i] ?? 0
      if (leaf > left + over) continue
      if (
        leaf * (most - leaves.length) < left - near &&
        leaves.length + 1 < most &&
        leaf * (most - leaves.length) < Math.abs(best.short)
      )
        break
      if (grow([...leaves, leaf], left - leaf, i, most)) return true
    }
    return false
  }
  for (let most = 1; most <= 4; most++) if (grow([], thickness, 0, most)) break
  return { leaves: best.leaves, short: Math.round(best.short * 1e6) / 1e6 }
}

/** What stays in the chuck, to be turned, bored and parted off in one chucking. */
const grip = (spec: Spec): number => either(spec.units, 25, 1)

/**
 * Height of the spacer that makes up what the press is not told to have below its table, mm; 0 where the hub stands on the table itself.
 * A ring lower than 10 mm (3/8 in) is hard to hold and to face. Source: judgement.
 */
const spacerFor = (spec: Spec, below: number): number => {
  const lacking = below - (spec.tooling.press?.below ?? 0)
  return lacking > 1e-9 ? Math.max(either(spec.units, 10, 0.375), spacerHeight(spec, lacking)) : 0
}

const outsideFor = (spec: Spec, bore: Size): Size =>
  spec.units === 'mm'
    ? withDeviations(bore.lower, -0.025, -0.013)
    : withDeviations(bore.lower, -0.001 * 25.4, -0.0005 * 25.4)

/** Every dimension of bushing and shims for a measured broach, with its reason. */
export const guideBushingOf = (spec: Spec, broach: Broach, section: Section): Reasoned<GuideBushing> => {
  const steps = stepsOf(spec.units)
  const { bore, across } = section
  const radius = section.boreRadius
  const small = bore.lower < 12
  const outside = outsideFor(spec, bore)
  const length = roundUp(spec.bore.length + either(spec.units, 2, 1 / 16), spec.units === 'mm' ? 0.5 : steps.half)
  const slot = roundTo(Math.max(broach.bodyWidth, broach.toothWidth) + slotClear, steps.fine)
  const slotTolerance = either(spec.units, 0.025, 0.001)
  const slotWidth = { nominal: slot, lower: slot - slotTolerance, upper: slot + slotTolerance }
  // The first tooth must enter the smallest bore; the last must not pass the floor, so what it leaves is rounded down.
  const smallest = bore.lower / 2
  const byFirst = smallest + slotFloorX(smallest, Infinity, broach)
  const wall = Math.min(roundTo(byFirst, steps.fine), roundDown(across - broach.lastTooth, steps.fine))
  const wallTolerance = either(spec.units, 0.02, 0.001)
  const backWall = { nominal: wall, lower: wall - wallTolerance, upper: wall + wallTolerance }
  // Less than a step of the wall is no shim.
  const missing = across - wall - broach.lastTooth
  const total = missing < steps.fine ? 0 : missing
  const count = shimCount(total, broach)
  const one = count > 0 ? roundTo(total / count, steps.shim) : 0
  // Sums close: the last shim is what the others leave.
  const shims = Array.from({ length: count }, (_, i) =>
    i < count - 1 ? one : roundTo(total - one * (count - 1), 1e-6),
  )
  const overs = Array.from({ length: count + 1 }, (_, k) => ({
    shims: k,
    over: wall + broach.lastTooth + shims.slice(0, k).reduce((sum, shim) => sum + shim, 0),
  }))
  const axis = middle(outside) / 2
  const collarDiameter = roundUp(bore.nominal + either(spec.units, 12, 0.375), spec.units === 'mm' ? 1 : steps.whole)
  const collarThickness = either(spec.units, small ? 4 : 6, small ? 0.1875 : 0.25)
  const pitch = pitchOf(broach)
  const hub = spec.bore.length
  const below = broach.pilotLength + broach.toothedLength
  const daylight = hub + broach.overall - broach.pilotLength
  const raised = spacerFor(spec, below)
  const shimWidth = roundTo(slot - either(spec.units, 0.15, 0.004), steps.fine)
  const locating = locatingOf(spec, section, { outside, slotWidth, floorFromAxis: wall - axis })
  return {
    sizes: {
      outside: {
        nominal: spec.bore.measured === undefined ? bore.nominal : bore.lower,
        lower: outside.lower,
        upper: outside.upper,
      },
      length,
      collarDiameter,
      collarThickness,
      lead: { length: either(spec.units, small ? 1 : 1.5, small ? 0.04 : 0.06), angle: 15 },
      undercut: {
        width: either(spec.units, small ? 0.8 : 1.2, small ? 0.03 : 0.05),
        depth: either(spec.units, small ? 0.2 : 0.3, small ? 0.008 : 0.012),
        radius: either(spec.units, small ? 0.2 : 0.3, small ? 0.008 : 0.012),
      },
      slotWidth,
      backWall,
      floorFromBore: wall - radius,
      floorFromAxis: wall - axis,
      cornerWall: cornerWall(middle(outside), wall - axis, slot),
      plungeDepth: outside.lower - wall,
      shims,
      packs: shims.map((shim) => packOf(shim, spec.shop.shims, either(spec.units, 0.01, 0.0005))),
      passes: overs,
      shim: {
        width: shimWidth,
        length: length + collarThickness - either(spec.units, 1, 0.04),
        headWidth: roundUp(slot + either(spec.units, 8, 0.3125), steps.half),
        headLength: either(spec.units, 8, 0.3125),
        hole: either(spec.units, Math.min(4, roundTo(slot / 3 + 1.5, 0.5)), slot > 4.7 ? 0.15625 : 0.09375),
        corner: either(spec.units, 0.5, 0.02),
      },
      toothPitch: pitch,
      teethInCut: { least: Math.floor(hub / pitch + 1e-9), most: Math.ceil(hub / pitch - 1e-9) },
      bite: biteOf(broach),
      stroke: hub + broach.toothedLength,
      below,
      fallsFree: roundUp(broach.overall + length - hub, either(spec.units, 1, 1 / 8)),
      daylight,
      raised,
      tableToRam: daylight + raised,
      plateHoleRadius: section.cornerReachMost + 0.2,
      stock: {
        diameter: spec.shop.rounds.find((size) => size >= collarDiameter + 1) ?? collarDiameter,
        length: roundUp(length + collarThickness + either(spec.units, 3, 0.125) + grip(spec), steps.whole),
        material: 'free-cutting mild steel',
      },
      ...(locating && { locating }),
    },
    get basis(): Basis<GuideBushing> {
      return {
        outside: 'slides in the bore by hand, oiled: 0.013 to 0.025 mm (.0005 to .001 in) under the smallest bore',
        length: 'at least the bore, and a little: the broach stays guided until the last tooth is through',
        collarDiameter: 'bore and 12 mm (3/8 in): it rests on the hub',
        collarThickness: 'judgement',
        lead: 'judgement',
        undercut: 'clears the bore’s mouth under the collar',
        slotWidth: `the broach as measured and ${slotClear} mm (.003 in)`,
        backWall: 'across less last tooth and shims: the first tooth just enters the closed bore',
        floorFromBore: 'back wall less bore radius: the thrust holds the bushing against the back of the bore',
        floorFromAxis: 'back wall less half the outside',
        cornerWall: 'thinnest at the slot’s corner, not behind its middle',
        plungeDepth: 'a setting aid from the top of the outside: measure the outside first',
        shims:
          'what is missing from back wall and last tooth to across, in equal steps no higher than the broach’s own rise',
        packs: 'from the shim stock on hand; what it misses by is ground or made up by feeler',
        passes: 'mike over bushing back, shims and last tooth before pressing: that is across after the pass',
        shim: 'slides in the slot; its head hangs on the collar so that the broach cannot drag it through',
        toothPitch: 'toothed length over teeth less one',
        teethInCut: 'bore length over pitch, down and up',
        bite: 'rise over the roughing teeth',
        stroke: 'bore and toothed length',
        below: 'pilot and toothed length',
        fallsFree: 'the broach’s whole length, and what the bushing stands out below the hub',
        daylight: 'bore, and the broach less its pilot',
        raised: 'the spacer that the hub stands on: what the press is not told to have below its table',
        tableToRam: 'daylight, and the spacer',
        plateHoleRadius: 'the slot’s farthest corner and 0.2 mm',
        locating:
          'a loose key in the keyway cut last and in a second slot of the bushing sets the next: deep enough to hold, its top 0.3 mm (.012 in) short of the keyway’s floor',
        stock: 'the next round over the collar; 3 mm (1/8 in) to part off and face, 25 mm (1 in) of grip',
      }
    },
  }
}
