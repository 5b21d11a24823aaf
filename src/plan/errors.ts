/** What final depth, width and position may come out wrong by, and what it comes from. mm. */
import { isUpright } from './upright.ts'
import type { GuideBushing, Section } from '../dimensions/types.ts'
import type { CutterBar, GroundBar, ToolBit } from '../dimensions/types.ts'
import { band, type Size } from '../fits/size.ts'
import type { Loads } from '../mechanics/loads.ts'
import type { Broach, Spec } from '../spec/spec.ts'
import { offsetAllowed } from './centring.ts'
import { byEye } from './indexing.ts'
import type { Indexing, Plan } from './types.ts'

/** One thing that can be out, and the most by which it puts the size out, ±. */
export interface Contribution {
  readonly of: string
  readonly by: number
  readonly source: string
}

export interface Budget {
  readonly of: 'depth' | 'width' | 'position'
  /** Largest first. */
  readonly contributions: readonly Contribution[]
  /** ± all against it. */
  readonly worst: number
  /** ± root of the sum of squares. */
  readonly likely: number
  /** ± that the limits allow about their middle; for the position, how far the slot may be off. */
  readonly allowed: number
}

export interface Errors {
  readonly bar?: readonly Budget[]
  readonly press?: readonly Budget[]
}

/** Budget from what contributes; what contributes nothing is left out. */
export const budgetOf = (of: Budget['of'], contributions: readonly Contribution[], allowed: number): Budget => {
  const counted = contributions.filter(({ by }) => by > 0).toSorted((a, b) => b.by - a.by)
  return {
    of,
    contributions: counted,
    worst: counted.reduce((sum, { by }) => sum + by, 0),
    likely: Math.hypot(...counted.map(({ by }) => by)),
    allowed,
  }
}

/**
 * ± within which 95 of 100 jobs come out, each contribution anywhere in its range with equal chance: by trial with a fixed seed, so that the
 * same budget always gives the same answer. Good to about 1 % at 20 000 trials.
 */
export const spreadOf = ({ contributions }: Pick<Budget, 'contributions'>, trials = 20_000, seed = 1): number => {
  if (contributions.length === 0) return 0
  const most = Float64Array.from(contributions, ({ by }) => by)
  const outcomes = new Float64Array(trials)
  // Multiplicative congruence on 32 bits (Numerical Recipes’ quick generator): the same numbers on every machine.
  let state = seed >>> 0
  for (let trial = 0; trial < trials; trial++) {
    let sum = 0
    for (const by of most) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
      sum += (state / 2 ** 31 - 1) * by
    }
    outcomes[trial] = Math.abs(sum)
  }
  return inOrder(outcomes, Math.ceil(0.95 * trials) - 1)
}

/** What would stand at a place if the values were sorted; they come out in another order. By Hoare's selection: a fifth of what sorting takes. */
const inOrder = (values: Float64Array, place: number): number => {
  const at = (index: number): number => values[index] ?? Number.NaN
  let [from, to] = [0, values.length - 1]
  while (from < to) {
    const middle = at(place)
    let [low, high] = [from, to]
    while (low <= high) {
      while (at(low) < middle) low += 1
      while (at(high) > middle) high -= 1
      if (low > high) break
      const moved = at(low)
      values[low] = at(high)
      values[high] = moved
      low += 1
      high -= 1
    }
    if (high < place) from = low
    if (low > place) to = high
  }
  return at(place)
}

const judged = 'judgement'
const shopFile = 'the shop file'
const inchOf = (spec: Spec, mm: number, inches: number): number => (spec.units === 'mm' ? mm : inches * 25.4)

/** The best stated of these instruments; a caliper of ±0.02 mm (.001 in) where none is told of. */
const instrument = (spec: Spec, names: readonly (keyof NonNullable<Spec['shop']['measuring']>)[], usual: number) => {
  const { measuring } = spec.shop
  const told = names.find((name) => measuring?.[name] !== undefined)
  return told === undefined ? { by: usual, source: judged } : { by: measuring?.[told] ?? usual, source: shopFile }
}

/** A cut comes out wider than its edge by .005 to .013 mm: judgement. What of that cannot be foreseen. */
const overCut = { of: 'the cut, over its edge', by: 0.004, source: judged } as const

/** Sideways, of a slot that the work is turned on to. */
const turnedOn = (section: Section, indexing: Indexing | undefined): Contribution => ({
  of: 'turning the work on',
  by: indexing ? (section.boreRadius * indexing.spread * Math.PI) / (180 * 60) : 0,
  source: 'see indexing.spread',
})

const ofBar = (
  spec: Spec,
  section: Section,
  made: {
    readonly bar: CutterBar | GroundBar
    readonly nose: Size
    readonly plan: Plan
    readonly loads?: Loads | undefined
  },
  indexing: Indexing | undefined,
): readonly Budget[] => {
  const { bar, nose: ground, plan, loads } = made
  const marks = plan.dial.finest / plan.dial.perInfeed
  const across = instrument(
    spec,
    plan.gateBy === 'plug and blocks' ? ['blocks', 'micrometer', 'caliper'] : ['boreGauge', 'micrometer', 'caliper'],
    inchOf(spec, 0.02, 0.001),
  )
  const nose = instrument(spec, ['micrometer', 'caliper'], inchOf(spec, 0.01, 0.0005))
  const square = spec.shop.measuring?.square ?? 0.05
  const lanes = bar.lanes.length > 1
  const { indicator } = spec.shop.measuring ?? {}
  const tram = {
    of: 'bar not along the bore',
    by: plan.tram / 2 + (indicator ?? 0),
    source: indicator === undefined ? 'see plan.tram' : 'see plan.tram; the indicator of the shop file',
  }
  return [
    budgetOf(
      'depth',
      [
        { of: 'measuring across', ...across },
        { of: 'setting the dial', by: marks / 2, source: 'half of the least that is set by hand' },
        {
          of: 'what the last passes leave',
          by: loads ? Math.max(0, loads.residual.most - loads.residual.least) / 2 : 0,
          source: 'half the band of loads.residual',
        },
        tram,
      ],
      band(section.acrossLimits) / 2,
    ),
    budgetOf(
      'width',
      [
        { of: 'the nose’s width', by: band(ground) / 2, source: 'its limits' },
        { of: 'measuring the nose', ...nose },
        overCut,
        ...(lanes
          ? [
              isUpright(spec.tooling.bar)
                ? {
                    of: 'setting the lanes',
                    by: indicator ?? inchOf(spec, 0.02, 0.001),
                    source:
                      indicator === undefined
                        ? 'judgement: height by shims, under an indicator'
                        : 'the shop file’s indicator',
                  }
                : { of: 'setting the lanes', by: marks, source: 'the least that is set by hand, both lanes' },
              { of: 'the bar bent sideways', by: loads?.sideways ?? 0, source: 'see loads.sideways' },
            ]
          : []),
      ],
      band(section.widthLimits) / 2,
    ),
    budgetOf(
      'position',
      [
        { of: 'finding the middle by two corners', by: plan.centring?.uncertainty ?? marks, source: 'half a mark' },
        {
          of: 'the nose’s end out of square',
          by: (bar.lanes[0]?.touchOff ?? section.touchOff) * (square / 100),
          source: spec.shop.measuring?.square === undefined ? judged : shopFile,
        },
        tram,
        turnedOn(section, indexing),
      ],
      offsetAllowed,
    ),
  ]
}

/** Sideways, of the last keyway from the first, where several are pushed one after another. */
const toTheNext = ({ at }: Section, { locating }: GuideBushing): readonly Contribution[] => {
  if (at.length < 2) return []
  return locating
    ? [{ of: 'the locating key', by: (at.length - 1) * locating.stepError, source: 'see bushing.locating' }]
    : [{ of: 'the slot laid on a scribed line', by: byEye, source: judged }]
}

const ofPress = (
  spec: Spec,
  section: Section,
  made: { readonly bushing: GuideBushing; readonly broach: Broach },
): readonly Budget[] => {
  const { bushing, broach } = made
  const reading = instrument(spec, ['micrometer'], 0.0005 * 25.4)
  const read = (of: string): Contribution => ({ of, ...reading })
  const floor = instrument(spec, ['micrometer', 'depthMicrometer'], 0.0005 * 25.4)
  return [
    budgetOf(
      'depth',
      [
        { of: 'measuring bushing back to slot floor', ...floor },
        ...(bushing.shims.length > 0 ? [read('measuring the shims')] : []),
        read('measuring the last tooth'),
        { of: 'seating bushing and shims', by: 0.0002 * 25.4, source: judged },
      ],
      band(section.acrossLimits) / 2,
    ),
    budgetOf('width', [read('measuring the teeth'), overCut], band(section.widthLimits) / 2),
    budgetOf(
      'position',
      [
        {
          of: 'bushing in the bore',
          by: Math.max(0, section.bore.upper - bushing.outside.lower) / 2,
          source: 'half the most play',
        },
        {
          of: 'broach in the bushing’s slot',
          by: Math.max(0, bushing.slotWidth.upper - Math.max(broach.bodyWidth, broach.toothWidth)) / 2,
          source: 'half the most play',
        },
        ...toTheNext(section, bushing),
      ],
      offsetAllowed,
    ),
  ]
}

/** Depth, width and position of each way that is worked out. The depth of a bar is that of a slot that is measured, and what is missing added. */
export const errorsOf = (
  spec: Spec,
  section: Section,
  made: {
    readonly bar?: CutterBar | GroundBar | undefined
    readonly bit?: ToolBit | undefined
    readonly plan?: Plan | undefined
    readonly loads?: Loads | undefined
    readonly bushing?: GuideBushing | undefined
    readonly broach?: Broach | undefined
    readonly indexing?: Indexing | undefined
  },
): Errors => {
  const { bar, bit, plan, loads, bushing, broach, indexing } = made
  const nose = bar?.form === 'one piece' ? bar.noseTolerance : bit?.noseWidth
  return {
    ...(bar && nose && plan && { bar: ofBar(spec, section, { bar, nose, plan, loads }, indexing) }),
    ...(bushing && broach && { press: ofPress(spec, section, { bushing, broach }) }),
  }
}
