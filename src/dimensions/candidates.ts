import { band } from '../fits/size.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { setScrewFor } from '../standards/set-screws.ts'
import { threadNamed } from '../standards/threads.ts'
import { endSizes, holeFor, holeToEndFor, leastBar, leastEngaged, seatRise } from './cross-hole.ts'
import { either, roundDown, roundTo, roundUp, stepsOf } from './makeable.ts'
import { chipRoomFor, noseForLanes, settingsAt } from './settings.ts'
import type { Screw, Section } from './types.ts'
import {
  bitLengthWindow,
  largestBar,
  noseLengthLeast,
  projectionFloor,
  projectionLeast,
  projectionMost,
  type Setting,
} from './window.ts'

/** A bar that could be made: bit, nose, hole and screw, with how far it is from working. */
export interface Candidate {
  readonly bit: {
    readonly shape: 'square' | 'round'
    readonly size: number
    readonly cornerBreak: number
    readonly flat: number
  }
  readonly nose: { readonly width: number; readonly cornerRadius: number; readonly single: boolean }
  readonly lanes: number
  readonly diameter: { readonly nominal: number; readonly least: number }
  readonly hole: { readonly nominal: number; readonly least: number; readonly most: number; readonly drill: string }
  readonly rise: number
  readonly screw: Screw
  readonly holeToEnd: number
  readonly bitToEnd: number
  readonly projection: number
  readonly projectionMin: number
  readonly projectionMax: number
  readonly projectionFloor: number
  readonly diameterMax: number
  readonly bitLengthMin: number
  readonly bitLengthMax: number
  readonly noseLengthMin: number
  /** What is broken, each as a share of its limit; empty when it works. */
  readonly broken: readonly number[]
  readonly cautions: number
}

/** Room that grinding the sides takes off a blank, at least. */
const grindingAllowance = 0.01

/** Corner radius break of a square blank. Source: common practice, no source. */
const cornerBreakOf = (size: number): number => size / 40

interface Tooling {
  readonly shape: 'square' | 'round'
  readonly size: number
}

const nosesFor = (spec: Spec, bar: BarSpec, section: Section, bit: Tooling): readonly Candidate['nose'][] => {
  const { cornerRadius, widthLimits } = section
  const fixed = bar.nose.width
  const most = bit.shape === 'round' ? 0.9 * bit.size : bit.size - grindingAllowance
  if (fixed !== undefined) return [{ width: fixed, cornerRadius, single: fixed >= widthLimits.lower - 1e-9 }]
  const noses: Candidate['nose'][] = []
  const full = widthLimits.lower + 0.75 * band(widthLimits)
  // A full-width nose leaves the blank what grinding takes; where it cannot, it is offered with a caution.
  const width = Math.min(full, most) >= widthLimits.lower - 1e-9 ? Math.min(full, most) : Math.min(full, bit.size)
  if (width >= widthLimits.lower - 1e-9) noses.push({ width, cornerRadius, single: true })
  for (let lanes = 2; lanes <= 5; lanes++) {
    const width = noseForLanes(spec, section.width, cornerRadius, lanes)
    const spare = either(spec.units, 0.5, 1 / 64) * Math.min(1, bit.size / 6)
    const roomy = bit.shape === 'round' ? width <= 0.9 * bit.size : width <= bit.size - spare + 1e-9
    if (width < section.width && roomy && width >= 0.25 * bit.size) noses.push({ width, cornerRadius, single: false })
  }
  return noses
}

/** The smallest hole on hand that the blank passes: drill name and size. */
const holeOnHand = (spec: Spec, bit: Tooling, cornerBreak: number) => {
  const wanted = holeFor(bit.shape, bit.size, cornerBreak)
  const drill = spec.shop.drills.find(({ diameter }) => diameter >= wanted - 1e-9)
  const tolerance = wanted < 3 ? either(spec.units, 0.02, 0.001) : either(spec.units, 0.05, 0.003)
  const nominal = drill?.diameter ?? roundUp(wanted, stepsOf(spec.units).small)
  // In round figures round the drill, so that the drill itself lies within its limits.
  const least = roundDown(nominal, either(spec.units, 0.01, 0.001))
  return { nominal, least, most: least + tolerance, drill: drill?.name ?? 'bored' }
}

/** Tolerance of the body, all of it down. */
export const bodyTolerance = (spec: Spec, diameter: number): number =>
  diameter < 6 ? either(spec.units, 0.02, 0.001) : either(spec.units, 0.05, 0.002)

const recessOf = (bar: number): number => (bar < 6 ? 0.3 : 0.5)

const screwFor = (
  spec: Spec,
  name: string,
  bit: Candidate['bit'],
  hole: number,
  most: number,
  rise: number,
  bar: number,
): { readonly screw: Screw; readonly holeToEnd: number; readonly bitToEnd: number } | undefined => {
  const thread = threadNamed(name)
  const stock = setScrewFor(name)
  if (!thread || !stock) return undefined
  const step = stepsOf(spec.units).small
  const recess = recessOf(bar)
  const height = bit.size - bit.flat
  const wanted = roundUp(holeToEndFor(hole, thread.major, recess), step)
  const open = most / 2 + seatRise(bit.shape, bit.size, bit.cornerBreak, most) - height
  const least = leastEngaged(thread.major, thread.pitch) + open
  const asWanted = endSizes(hole, rise, height, thread, wanted, recess)
  const held = stock.lengths.filter((length) => length >= least - 1e-9)
  const fitting = held.findLast((length) => length <= asWanted.screwMost + 1e-9)
  const length = fitting ?? held[0]
  if (length === undefined) return undefined
  // No stock screw in the window: the end grows until the shortest that holds fits.
  const holeToEnd = fitting ? wanted : roundUp(wanted + length - asWanted.screwMost, step)
  const end = endSizes(hole, rise, height, thread, holeToEnd, recess)
  return {
    holeToEnd,
    bitToEnd: end.bitToEnd,
    screw: {
      thread: name,
      major: thread.major,
      pitch: thread.pitch,
      callout: thread.callout,
      cupPoint: stock.cupPoint,
      length,
      lengthMin: least,
      lengthMax: end.screwMost,
      engaged: length - open,
      tapDrill: thread.tapDrill,
    },
  }
}

const share = (short: number, of: number): number => short / Math.max(Math.abs(of), 1e-6)

/** What a nose in this bore bounds, whatever the bar. */
interface Bound {
  readonly back: readonly Setting[]
  readonly front: readonly Setting[]
  readonly diameterMax: number
}

const boundOf = (bar: BarSpec, section: Section, nose: Candidate['nose'], chipRoom: number): Bound => {
  const back = settingsAt('back', section, nose, bar.clearance, chipRoom)
  const front = settingsAt('front', section, nose, bar.clearance, chipRoom)
  return { back, front, diameterMax: Math.min(...[...back, ...front].map(largestBar)) }
}

const assess = (
  spec: Spec,
  bar: BarSpec,
  section: Section,
  bit: Candidate['bit'],
  nose: Candidate['nose'],
  hole: Candidate['hole'],
  bound: Bound,
  nominal: number,
): Candidate | undefined => {
  const { back, front, diameterMax } = bound
  const rise = seatRise(bit.shape, bit.size, bit.cornerBreak, hole.nominal)
  const least = nominal - bodyTolerance(spec, nominal)
  const names = bar.screw
    ? [bar.screw]
    : spec.shop.threads.filter((name) => {
        const major = threadNamed(name)?.major ?? Infinity
        return major <= 0.9 * bit.size + 1e-9 && 2 * major <= least + 1e-9
      })
  const known = names.filter((name) => setScrewFor(name)?.seatingTorque !== undefined)
  const fitted = (known.length > 0 ? known : names)
    .toReversed()
    .flatMap((name) => screwFor(spec, name, bit, hole.nominal, hole.most, rise, nominal) ?? [])[0]
  if (!fitted) return undefined
  const { screw, holeToEnd, bitToEnd } = fitted
  const each = (settings: readonly Setting[], ask: (setting: Setting) => number) => settings.map(ask)
  const projectionMax = Math.min(...each(back, (setting) => projectionMost(setting, nominal)))
  const projectionMin = Math.max(...each(front, (setting) => projectionLeast(setting, nominal)))
  const steps = stepsOf(spec.units)
  const wanted = roundUp(projectionMin + bar.setting, steps.setting)
  const projection =
    bar.projection ??
    (wanted <= projectionMax - bar.setting
      ? wanted
      : roundTo(
          Number.isFinite(projectionMin) && Number.isFinite(projectionMax)
            ? (projectionMin + projectionMax) / 2
            : section.crownDepth + bar.clearance.front,
          steps.fine,
        ))
  // The back clearance that the tail keeps under the surface takes up the body's own tolerance.
  const length = bitLengthWindow(projection, nominal, bit.size, screw.cupPoint, bar.clearance.back)
  const noseLengthMin = Math.max(...each(front, (setting) => noseLengthLeast(setting, bit.size)))
  const ratio = hole.most / least
  const wall = (least - hole.most) / 2
  const broken: number[] = []
  const must = (measured: number, limit: number) => {
    if (measured >= limit - 1e-9) return
    const short = share(limit - measured, limit)
    broken.push(Number.isFinite(short) ? short : 10)
  }
  must(projection - bar.setting, projectionMin)
  must(projectionMax, projection + bar.setting)
  must(0.7, ratio)
  must(wall, 1.2)
  must((least - screw.major) / 2, screw.major / 2)
  must(0.9 * bit.size, screw.major)
  must(length.most, length.least)
  must(bit.size, nose.width)
  must(Number.isFinite(noseLengthMin) ? 1 : -Infinity, 0)
  must(nose.single ? section.widthLimits.upper : section.widthLimits.lower, nose.width)
  const allowance = bit.shape === 'round' ? 0.9 * bit.size : bit.size - grindingAllowance
  return {
    bit,
    nose,
    lanes: back.length,
    diameter: { nominal, least },
    hole,
    rise,
    screw,
    holeToEnd,
    bitToEnd,
    projection,
    projectionMin,
    projectionMax,
    projectionFloor: projectionFloor(front[0] as Setting),
    diameterMax,
    bitLengthMin: length.least,
    bitLengthMax: length.most,
    noseLengthMin,
    broken,
    cautions: (ratio > 0.6 + 1e-9 ? 1 : 0) + (nose.width > allowance + 1e-9 ? 1 : 0),
  }
}

/**
 * A second lane doubles the passes: it is worth a bar an eighth thicker, no more. A round bit has nothing that stops it from turning before
 * its screw seats: it comes after a square one unless the bar gains a sixth.
 */
const worth = ({ bit, diameter, lanes }: Candidate): number =>
  diameter.nominal / 1.125 ** (lanes - 1) / (bit.shape === 'round' ? 7 / 6 : 1)

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Negative where `a` is the better bar: works before broken, sound before cautioned, then stiffest, then fewest lanes, then the smallest bit. */
const better = (a: Candidate, b: Candidate): number =>
  sum(a.broken) - sum(b.broken) ||
  a.cautions - b.cautions ||
  worth(b) - worth(a) ||
  a.lanes - b.lanes ||
  (a.bit.shape === b.bit.shape ? a.bit.size - b.bit.size : a.bit.shape === 'square' ? -1 : 1)

/**
 * The best bar from what is on hand, whatever the spec fixes being kept: every blank, number of lanes and bar is tried. Where nothing works the
 * least broken is returned, and the rules say what is wrong with it. Undefined only where no thread on hand goes with any blank.
 */
export const bestCandidate = (spec: Spec, bar: BarSpec, section: Section): Candidate | undefined => {
  const chipRoom = chipRoomFor(spec, bar)
  // A round bit has its flat on the rake's side: it cannot be turned over to be pulled.
  const blanks: readonly Tooling[] = bar.bit
    ? [bar.bit]
    : spec.shop.bits.filter(({ shape }) => bar.stroke === 'push' || shape === 'square')
  const held = spec.shop.collets.at(-1) ?? Infinity
  const bars =
    bar.diameter === undefined
      ? spec.shop.bars.filter((diameter) => diameter < section.bore.lower && diameter <= held + 1e-9)
      : [bar.diameter]
  let best: Candidate | undefined
  for (const blank of blanks) {
    if (!bar.bit && blank.size > Math.max(1.6 * section.width, 2.1)) continue
    const bit = {
      ...blank,
      cornerBreak: blank.shape === 'square' ? cornerBreakOf(blank.size) : 0,
      flat: blank.shape === 'round' ? roundDown(0.1 * blank.size + 0.005, 0.01) : 0,
    }
    const hole = holeOnHand(spec, bit, bit.cornerBreak)
    const thick = bars.findIndex((diameter) => diameter >= leastBar(hole.nominal))
    const from = bar.diameter !== undefined ? 0 : Math.max(0, thick < 0 ? bars.length - 1 : thick - 1)
    for (const nose of nosesFor(spec, bar, section, bit)) {
      const bound = boundOf(bar, section, nose, chipRoom)
      // One bar too thick is looked at too, for a refusal to be about; from the thickest down, the first that is sound is the best.
      const over = bars.findIndex((diameter) => diameter > bound.diameterMax)
      const upTo = over < 0 ? bars.length : Math.max(over + 1, from + 1)
      for (const diameter of bars.slice(from, upTo).toReversed()) {
        const candidate = assess(spec, bar, section, bit, nose, hole, bound, diameter)
        if (!candidate) continue
        if (!best || better(candidate, best) < 0) best = candidate
        if (candidate.broken.length === 0 && candidate.cautions === 0) break
      }
    }
  }
  return best
}
