import { band } from '../fits/size.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { holeFor, leastBar, seatRise } from './cross-hole.ts'
import {
  bitToEndOf,
  type Form,
  holdingFor,
  inRoundFigures,
  type Holding,
  leaningLength,
  leaningNose,
  type OnHand,
  type Seated,
  threadsOnHand,
} from './holding.ts'
import { either, roundDown, roundTo, roundUp, stepsOf } from './makeable.ts'
import { chipRoomFor, noseForLanes, settingsAt } from './settings.ts'
import { type Corners, largestStagedBar, stagesFor } from './stages.ts'
import { edgeHeightOf, leastRake, noseLengthOf, underTop } from './tool-bit.ts'
import type { CutterBar, Screw, Section, Stage } from './types.ts'
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
  readonly form: Form
  /** Degrees; 0 unless inclined. */
  readonly incline: number
  readonly bit: CutterBar['bit']
  readonly nose: Nose
  readonly lanes: number
  readonly diameter: { readonly nominal: number; readonly least: number }
  readonly hole: { readonly nominal: number; readonly least: number; readonly most: number; readonly drill: string }
  readonly rise: number
  readonly screw: Screw
  readonly holeToEnd: number
  readonly wallAtEnd: number | undefined
  readonly bitToEnd: number
  /** The edge to the bar's end; negative where the edge stands beyond it. */
  readonly edgeToEnd: number
  /** Of the last stage; with it its window. */
  readonly projection: number
  readonly projectionMin: number
  readonly projectionMax: number
  readonly projectionFloor: number
  /** One where a single setting reaches the floor, or where none does. */
  readonly stages: readonly Stage[]
  /** Reckoned when it is asked for. */
  readonly diameterMax: () => number
  readonly bitLengthMin: number
  readonly bitLengthMax: number
  readonly noseLengthMin: number
  /** What is broken, each as a share of its limit; empty when it works. */
  readonly broken: readonly number[]
  readonly cautions: number
}

/** A nose to be ground: as wide as the slot, or narrower, for lanes. */
export interface Nose {
  readonly width: number
  readonly cornerRadius: number
  readonly single: boolean
}

/** One way of making a bar: how it holds its bit, how far the bit leans, and how often the projection may be set anew. */
interface Way {
  readonly form: Form
  readonly incline: number
  readonly stages: number
}

/** Room that grinding the sides takes off a blank, at least. */
const grindingAllowance = 0.01

/** Corner radius break of a square blank. Source: common practice, no source. */
const cornerBreakOf = (size: number): number => size / 40

/** The edge runs this far past the far face. Source: judgement. */
export const overtravel = 1

/** Stages that are asked of nobody unless he says so. Source: judgement. */
const mostStages = 6

interface Tooling {
  readonly shape: 'square' | 'round'
  readonly size: number
}

/** A V this much narrower than its mouth, both sides together, leaves slivers that come away with the burr, mm. Source: judgement. */
export const sliver = 0.04

/**
 * A V is ground no narrower than its mouth, a little more where the blank gives it; a round is what it is. A narrower V that is asked for is kept,
 * for a rule to speak of.
 */
const tipNose = (spec: Spec, bar: BarSpec, section: Section, bit: Tooling): Nose => {
  const { cornerRadius, groove, widthLimits } = section
  if (groove) return { width: 2 * groove.radius, cornerRadius, single: true }
  const mouth = widthLimits.upper
  const wanted = roundUp(mouth + either(spec.units, 0.2, 0.008), either(spec.units, 0.1, 0.005))
  const blank = bit.shape === 'round' ? 0.9 * bit.size : bit.size
  const rounded = roundUp(mouth, either(spec.units, 0.05, 0.001))
  const width =
    bar.nose.width ?? (blank >= mouth - sliver ? Math.min(wanted, blank) : bit.size >= rounded ? rounded : mouth)
  return { width, cornerRadius, single: true }
}

const nosesFor = (spec: Spec, bar: BarSpec, section: Section, bit: Tooling): readonly Nose[] => {
  const { cornerRadius, widthLimits } = section
  const fixed = bar.nose.width
  if (section.socket || section.groove) return [tipNose(spec, bar, section, bit)]
  const most = bit.shape === 'round' ? 0.9 * bit.size : bit.size - grindingAllowance
  if (fixed !== undefined) return [{ width: fixed, cornerRadius, single: fixed >= widthLimits.lower - 1e-9 }]
  const noses: Nose[] = []
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

/** The smallest hole on hand that the blank passes, drilled or, where that is tighter, reamed: name and size. */
const holeOnHand = (spec: Spec, bit: Tooling, cornerBreak: number): Candidate['hole'] => {
  const wanted = holeFor(bit.shape, bit.size, cornerBreak)
  const drill = spec.shop.drills.find(({ diameter }) => diameter >= wanted - 1e-9)
  const reamer = spec.shop.reamers?.find((diameter) => diameter >= wanted - 1e-9)
  const tolerance = wanted < 3 ? either(spec.units, 0.02, 0.001) : either(spec.units, 0.05, 0.003)
  if (reamer !== undefined && reamer < (drill?.diameter ?? Infinity) - tolerance)
    return { nominal: reamer, least: reamer, most: reamer + 0.4 * tolerance, drill: 'reamed' }
  const nominal = drill?.diameter ?? roundUp(wanted, stepsOf(spec.units).small)
  // In round figures round the drill, so that the drill itself lies within its limits.
  const least = roundDown(nominal, either(spec.units, 0.01, 0.001))
  return { nominal, least, most: least + tolerance, drill: drill?.name ?? 'bored' }
}

/** Tolerance of the body, all of it down. */
export const bodyTolerance = (spec: Spec, diameter: number): number =>
  diameter < 6 ? either(spec.units, 0.02, 0.001) : either(spec.units, 0.05, 0.002)

const share = (short: number, of: number): number => short / Math.max(Math.abs(of), 1e-6)

/** What a nose in this bore bounds, whatever the bar. */
interface Bound extends Corners {
  /** Largest bar for one setting, and for as many as it takes; reckoned when they are asked for. */
  readonly once: () => number
  readonly staged: () => number
}

/** The lanes of a nose at the corners of the limits. */
export const cornersOf = (bar: BarSpec, section: Section, nose: Nose, chipRoom: number): Corners => ({
  back: settingsAt('back', section, nose, bar.clearance, chipRoom),
  front: settingsAt('front', section, nose, bar.clearance, chipRoom),
  middle: settingsAt('middle', section, nose, bar.clearance, chipRoom),
})

/** Most noses are passed over before anybody asks for the middle of their limits. */
const boundOf = (bar: BarSpec, section: Section, nose: Nose, chipRoom: number): Bound => {
  const at = (corner: 'back' | 'front' | 'middle') => settingsAt(corner, section, nose, bar.clearance, chipRoom)
  const [back, front] = [at('back'), at('front')]
  let middle: Corners['middle'] | undefined
  let [once, staged]: (number | undefined)[] = []
  return {
    back,
    front,
    get middle() {
      return (middle ??= at('middle'))
    },
    once: () => (once ??= Math.min(...[...back, ...front].map(largestBar))),
    staged: () => (staged ??= largestStagedBar(back, front)),
  }
}

/** Whether each lane by itself, at either corner, has a window of projections with a bar. */
const hasWindow = ({ back, front }: Corners, diameter: number): boolean => {
  const open = (setting: Setting) => projectionLeast(setting, diameter) <= projectionMost(setting, diameter)
  return back.every(open) && front.every(open)
}

/** The first of ascending sizes for which something holds that holds for all after it; their count where it never does. */
const firstOf = (sizes: readonly number[], holds: (size: number) => boolean): number => {
  let [from, to] = [0, sizes.length]
  while (from < to) {
    const middle = (from + to) >> 1
    if (holds(sizes[middle] as number)) to = middle
    else from = middle + 1
  }
  return from
}

/** Whether a bar has a window of projections that serves all lanes and both corners, but for a hair. */
const passes = ({ back, front }: Corners, diameter: number): boolean => {
  let [least, most] = [-Infinity, Infinity]
  for (const setting of front) least = Math.max(least, projectionLeast(setting, diameter))
  for (const setting of back) most = Math.min(most, projectionMost(setting, diameter))
  return least <= most + 1e-6
}

/** One setting, as near as it comes to its window, where no stages are wanted or none help. */
const singleStage = (spec: Spec, bar: BarSpec, section: Section, corners: Corners, diameter: number): Stage => {
  const { back, front, middle } = corners
  const projectionMax = Math.min(...back.map((setting) => projectionMost(setting, diameter)))
  const projectionMin = Math.max(...front.map((setting) => projectionLeast(setting, diameter)))
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
  const to = Math.max(...middle.map(({ floor }) => floor))
  return { projection, projectionMin, projectionMax, from: section.touchOff, to }
}

/** The edge over the blank's face that looks to the bar's end, and how far that edge then stands from the end. */
const edgeToEndOf = (
  bar: BarSpec,
  way: Way,
  seated: Seated,
  holding: Holding,
  nose: Nose,
  p: number,
  climbs: number,
) => {
  const { bit, rise } = seated
  const flat = way.form === 'end screw' ? bit.flat : 0
  // The edge lies as far behind the bit's face as it was ground down.
  const ground = bit.size - flat - edgeHeightOf(bit, nose.width) + climbs
  const bitToEnd = bitToEndOf(way.form, seated, holding, way.incline, p)
  // Pushed, the edge is the bit's face on the end's side; pulled, the bit is turned over and its edge looks to the holder.
  const edgeToEnd =
    bar.stroke === 'push'
      ? bitToEnd + ground / Math.cos((way.incline * Math.PI) / 180)
      : holding.holeToEnd + rise - ground - (bit.shape === 'round' ? flat : 0)
  return { bitToEnd, edgeToEnd }
}

/**
 * One bar with one bit in it, judged; undefined where no thread goes with them, or where more is broken of it than `most`, all shares together:
 * what costs least to tell is told first, and the rest is not looked at then.
 */
const assess = (
  spec: Spec,
  bar: BarSpec,
  section: Section,
  way: Way,
  { bit, nose, hole, bound }: Choice,
  threads: readonly OnHand[],
  nominal: number,
  most: number,
): Candidate | undefined => {
  const { back, front } = bound
  const broken: number[] = []
  let short = 0
  const must = (measured: number, limit: number) => {
    if (measured >= limit - 1e-9) return
    const by = share(limit - measured, limit)
    broken.push(Number.isFinite(by) ? by : 10)
    short += Number.isFinite(by) ? by : 10
  }
  const stages = (way.stages > 1 && bar.projection === undefined
    ? stagesFor(bound, nominal, bar.setting, stepsOf(spec.units), way.stages)
    : undefined) ?? [singleStage(spec, bar, section, bound, nominal)]
  for (const stage of stages) {
    must(stage.projection - bar.setting, stage.projectionMin)
    must(stage.projectionMax, stage.projection + bar.setting)
  }
  if (short > most) return undefined
  const least = nominal - bodyTolerance(spec, nominal)
  const ratio = hole.most / least
  const wall = (least - hole.most) / 2
  must(0.7, ratio)
  must(wall, 1.2)
  if (short > most) return undefined
  const rise = seatRise(bit.shape, bit.size, bit.cornerBreak, hole.nominal)
  const seated: Seated = { bit, hole, rise, bar: { nominal, least } }
  const held = holdingFor(spec, way.form, seated, way.incline, threads, bar.screw !== undefined)
  if (!held) return undefined
  const holding = inRoundFigures(spec, held, way.incline)
  const { screw } = holding
  if (way.form === 'end screw') must((least - screw.major) / 2, screw.major / 2)
  else must(wall, 4 * screw.pitch)
  must(0.9 * bit.size, screw.major)
  must(screw.length, screw.lengthMin)
  must(screw.lengthMax, screw.length)
  if (short > most) return undefined
  const [first, last] = [stages[0] as Stage, stages.at(-1) as Stage]
  const { projection, projectionMin, projectionMax } = last
  // The back clearance that the tail keeps under the surface takes up the body's own tolerance. One bit serves all stages.
  const windowAt = (p: number) =>
    way.form === 'inclined'
      ? leaningLength(p, nominal, bit.size, screw.cupPoint, bar.clearance.back, way.incline)
      : bitLengthWindow(p, nominal, bit.size, screw.cupPoint, bar.clearance.back)
  const bitLengthMin = windowAt(projection).least
  const bitLengthMax = windowAt(first.projection).most
  const upright = Math.max(...front.map((setting) => noseLengthLeast(setting, bit.size)))
  const noseLengthMin = way.form === 'inclined' ? leaningNose(upright, bit.size, way.incline) : upright
  // A bit that leans far is ground with a face that climbs from the edge: reckoned with the least rake.
  const climbs = underTop(leastRake(spec, bar) - way.incline, noseLengthOf(spec, section, nose, noseLengthMin))
  const { bitToEnd, edgeToEnd } = edgeToEndOf(bar, way, seated, holding, nose, first.projection, climbs)
  must(bitLengthMax, bitLengthMin)
  must(bit.size, nose.width)
  must(Number.isFinite(noseLengthMin) ? 1 : -Infinity, 0)
  if (section.socket) must(nose.width, section.widthLimits.upper - sliver)
  else if (!section.groove) must(nose.single ? section.widthLimits.upper : section.widthLimits.lower, nose.width)
  const { blind } = spec.bore
  if (blind) must(blind.beyond, overtravel + edgeToEnd + 0.5)
  if (short > most) return undefined
  const allowance = bit.shape === 'round' ? 0.9 * bit.size : bit.size - grindingAllowance
  return {
    form: way.form,
    incline: way.incline,
    bit,
    nose,
    lanes: back.length,
    diameter: { nominal, least },
    hole,
    rise,
    screw,
    holeToEnd: holding.holeToEnd,
    wallAtEnd: holding.wallAtEnd,
    bitToEnd,
    edgeToEnd,
    projection,
    projectionMin,
    projectionMax,
    projectionFloor: projectionFloor(front[0] as Setting),
    stages,
    diameterMax: stages.length > 1 ? bound.staged : bound.once,
    bitLengthMin,
    bitLengthMax,
    noseLengthMin,
    broken,
    cautions: (ratio > 0.6 + 1e-9 ? 1 : 0) + (nose.width > allowance + 1e-9 ? 1 : 0),
  }
}

/**
 * A second lane doubles the passes: it is worth a bar an eighth thicker, no more, and so is another stage. A round bit has nothing that stops
 * it from turning before its screw seats: it comes after a square one unless the bar gains a sixth.
 */
export const worth = ({ bit, diameter, lanes, stages }: Candidate): number =>
  worthOf(diameter.nominal, lanes, stages.length, bit.shape)

/** An eighth more, so many times over: of the few that are asked for again and again, a table. */
const eighths = Array.from({ length: 16 }, (_, more) => 1.125 ** more)
const eighthsMore = (times: number): number => eighths[times] ?? 1.125 ** times
const worthOf = (diameter: number, lanes: number, stages: number, shape: Tooling['shape']): number =>
  diameter / eighthsMore(lanes - 1) / eighthsMore(stages - 1) / (shape === 'round' ? 7 / 6 : 1)

/** A screw in the wall leaves the bit the play of its hole, and one that leans is harder to drill and to grind for. Source: judgement. */
const formWorth: Readonly<Record<Form, number>> = { 'end screw': 1, 'side screw': 6 / 7, inclined: 0.8 }

const isSound = ({ broken, cautions }: Candidate): boolean => broken.length === 0 && cautions === 0

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Negative where `a` is the better bar: works before broken, sound before cautioned, then stiffest, then fewest lanes, then the smallest bit. */
const better = (a: Candidate, b: Candidate): number =>
  sum(a.broken) - sum(b.broken) ||
  a.cautions - b.cautions ||
  worth(b) - worth(a) ||
  a.lanes - b.lanes ||
  (a.bit.shape === b.bit.shape ? a.bit.size - b.bit.size : a.bit.shape === 'square' ? -1 : 1)

/** Blank, nose and hole that do not depend on the bar, with what they bound. */
interface Choice {
  readonly bit: Candidate['bit']
  readonly nose: Nose
  readonly hole: Candidate['hole']
  readonly bound: Bound
}

/** A blank on hand with its hole and the noses that may be ground on it. */
interface Offered extends Pick<Choice, 'bit' | 'hole'> {
  readonly noses: readonly Nose[]
}

const offeredFor = (spec: Spec, bar: BarSpec, section: Section): readonly Offered[] => {
  // A round bit has its flat on the rake's side: it cannot be turned over to be pulled.
  const blanks: readonly Tooling[] = bar.bit
    ? [bar.bit]
    : spec.shop.bits.filter(({ shape }) => bar.stroke === 'push' || shape === 'square')
  return blanks
    .filter((blank) => bar.bit !== undefined || blank.size <= Math.max(1.6 * section.width, 2.1))
    .map(({ shape, size }) => {
      const bit = {
        shape,
        size,
        cornerBreak: shape === 'square' ? cornerBreakOf(size) : 0,
        flat: shape === 'round' ? roundDown(0.1 * size + 0.005, 0.01) : 0,
      }
      return { bit, hole: holeOnHand(spec, bit, bit.cornerBreak), noses: nosesFor(spec, bar, section, bit) }
    })
}

const choicesFor = (spec: Spec, bar: BarSpec, section: Section, offered: readonly Offered[]): readonly Choice[] => {
  const chipRoom = chipRoomFor(spec, bar)
  // By width; that of lanes below nought.
  const bounds = new Map<number, Bound>()
  return offered.flatMap(({ bit, hole, noses }) =>
    noses.map((nose) => {
      const key = nose.single ? nose.width : -nose.width
      const bound = bounds.get(key) ?? boundOf(bar, section, nose, chipRoom)
      bounds.set(key, bound)
      return { bit, nose, hole, bound }
    }),
  )
}

/** The best bar made in one way; none of which more is broken than `most`, all shares together. */
const bestOf = (
  spec: Spec,
  bar: BarSpec,
  section: Section,
  way: Way,
  choices: readonly Choice[],
  threads: readonly OnHand[],
  most: number,
): Candidate | undefined => {
  const held = spec.shop.collets.at(-1) ?? Infinity
  const bars =
    bar.diameter === undefined
      ? spec.shop.bars.filter((diameter) => diameter < section.bore.lower && diameter <= held + 1e-9)
      : [bar.diameter]
  let best: Candidate | undefined
  let least = most
  for (const choice of choices) {
    const { bit, hole, bound } = choice
    const thick = bars.findIndex((diameter) => diameter >= leastBar(hole.nominal))
    // What is worth more than the best so far must be so thick at least; where that has no room, nothing here is looked for.
    if (best && isSound(best)) {
      const enough = worth(best)
      const thinnest = bars.find((diameter) => worthOf(diameter, bound.back.length, 1, bit.shape) >= enough)
      if (thinnest === undefined || (way.stages === 1 && !passes(bound, thinnest))) continue
    }
    const from = bar.diameter !== undefined ? 0 : Math.max(0, thick < 0 ? bars.length - 1 : thick - 1)
    // One bar too thick is looked at too, for a refusal to be about; from the thickest down, the first that is sound is the best.
    const over =
      way.stages > 1
        ? firstOf(bars, (diameter) => diameter > bound.staged())
        : firstOf(bars, (diameter) => !hasWindow(bound, diameter))
    const upTo = Math.min(bars.length, Math.max(over + 1, from + 1))
    for (const diameter of bars.slice(from, upTo).toReversed()) {
      // Thinner bars are worth less yet.
      if (best && isSound(best) && worthOf(diameter, bound.back.length, 1, bit.shape) < worth(best)) break
      const candidate = assess(spec, bar, section, way, choice, threads, diameter, least)
      if (!candidate) continue
      if (!best || better(candidate, best) < 0) best = candidate
      least = Math.min(least, sum(best.broken))
      // More stages let in more bar, but a thinner one with fewer may be worth more.
      if (isSound(candidate) && way.stages === 1) break
    }
  }
  return best
}

/** The ways of making a bar, in the order in which they are tried: a screw in the wall, or more than one setting, only where nothing before works. */
const waysFor = (spec: Spec, bar: BarSpec): readonly Way[] => {
  // The mouth of a V or a round is narrower the shallower it is: no stage before the last reaches as far as at full depth.
  const most = spec.feature.kind === 'socket' || spec.feature.kind === 'groove' ? 1 : (bar.stages ?? mostStages)
  const leans = bar.incline === undefined ? [10, 15, 20, 25] : [bar.incline]
  const upright: readonly Form[] = ['end screw', 'side screw']
  const forms = upright.filter((form) => bar.form === undefined || bar.form === form)
  // An edge that leans forward has its rake towards the end: it is for pushing.
  const inclined = bar.form === 'inclined' || (bar.form === undefined && spec.bore.blind !== undefined)
  return [
    ...forms.map((form) => ({ form, incline: 0, stages: 1 })),
    ...(inclined && (bar.stroke === 'push' || bar.form === 'inclined')
      ? leans.map((incline) => ({ form: 'inclined' as const, incline, stages: 1 }))
      : []),
    ...(most > 1 ? forms.map((form) => ({ form, incline: 0, stages: most })) : []),
    ...(most > 1 && bar.form === 'inclined'
      ? leans.map((incline) => ({ form: bar.form as Form, incline, stages: most }))
      : []),
  ]
}

/**
 * The best bar from what is on hand, whatever the spec fixes being kept: every blank, number of lanes and bar is tried, with a screw from the
 * end, with one in the wall, leaning in a blind bore, then in stages. Where nothing works the least broken of the first way is returned, and
 * the rules say what is wrong with it. Undefined only where no thread on hand goes with any blank.
 */
export const bestCandidate = (
  spec: Spec,
  bar: BarSpec,
  section: Section,
  offered = offeredFor(spec, bar, section),
): Candidate | undefined => {
  const choices = choicesFor(spec, bar, section, offered)
  const threads = threadsOnHand(spec, bar.screw)
  const ways = waysFor(spec, bar)
  const made = (way: Way, most: number) => bestOf(spec, bar, section, way, choices, threads, most)
  // In a blind bore each way is as deep as its end is long: they are weighed against one another.
  if (spec.bore.blind) {
    const working = ways.filter(({ stages }) => stages === 1).flatMap((way) => made(way, 0) ?? [])
    const value = (one: Candidate) => worth(one) * formWorth[one.form]
    if (working.length > 0)
      return working.reduce((best, one) =>
        (one.cautions - best.cautions || value(best) - value(one)) < 0 ? one : best,
      )
  }
  let first: Candidate | undefined
  for (const way of ways) {
    // Once there is something to refuse by, only what works is looked for.
    const best = made(way, first ? 0 : Infinity)
    if (best && best.broken.length === 0) return best
    first ??= best
  }
  return first
}

/** The same for many bars in one bore: those that a search cannot tell apart are searched for once. */
export const bestCandidates = (spec: Spec, section: Section): ((bar: BarSpec) => Candidate | undefined) => {
  const known = new Map<string, Candidate | undefined>()
  // What may be ground on which blank hangs on nothing that is set at the machine.
  const offers = new Map<string, readonly Offered[]>()
  const offered = (bar: BarSpec): readonly Offered[] => {
    const key = `${bar.stroke} ${bar.nose.width} ${bar.bit?.shape} ${bar.bit?.size}`
    const found = offers.get(key) ?? offeredFor(spec, bar, section)
    offers.set(key, found)
    return found
  }
  return (bar) => {
    // Of the infeed only the chip's room counts, where it is more than the clearance; of the rake only a face that climbs from the edge.
    const room = Math.max(bar.clearance.front, chipRoomFor(spec, bar))
    const rake = leastRake(spec, bar)
    const climbing = rake < 0 || waysFor(spec, bar).some(({ incline }) => incline > 0) ? rake : 0
    const key = JSON.stringify({ ...bar, infeed: room, rake: climbing })
    if (!known.has(key)) known.set(key, bestCandidate(spec, bar, section, offered(bar)))
    return known.get(key)
  }
}
