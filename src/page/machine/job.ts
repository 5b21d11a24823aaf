import { computed } from '@preact/signals'
import { sayingOf, type Saying } from '../../card/saying.ts'
import type { Design } from '../../design.ts'
import { readingOf } from '../../plan/answers.ts'
import { type Wanted, wantedOf } from '../../plan/found.ts'
import { type Stretch, stretchesOf } from '../../plan/standing.ts'
import type { Gate, LaneCut, Plan } from '../../plan/types.ts'
import { design } from '../answers.ts'
import { orderOf, type Screen } from './order.ts'
import { record, valueOf } from './record.ts'

export type Way = 'bar' | 'press'

/** The job as the machine sees it: in its own units, by one way. */
export interface Job {
  readonly design: Design
  readonly says: Saying
  readonly unit: 'mm' | 'in'
  readonly way: Way
  /** Both, where both are open. */
  readonly ways: readonly Way[]
  readonly order: readonly Screen[]
  /** Absent at a press. */
  readonly plan: Plan | undefined
  readonly stretches: readonly Stretch[]
  /** What the gates measure; absent where nothing can be. */
  readonly wanted: Wanted | undefined
}

/** The ways that a design can be cut by, the recommended one first. */
const waysOf = (whole: Design): readonly Way[] => {
  const bar: readonly Way[] = (whole.bar ?? whole.groundBar) && whole.plan ? ['bar'] : []
  const press: readonly Way[] = whole.bushing ? ['press'] : []
  return whole.ways?.recommended === 'press' ? [...press, ...bar] : [...bar, ...press]
}

export const job = computed<Job | undefined>(() => {
  const whole = design.value
  if (!whole) return undefined
  const ways = waysOf(whole)
  const way = ways.find((each) => each === record.value.way) ?? ways[0]
  if (!way) return undefined
  const plan = way === 'bar' ? whole.plan : undefined
  return {
    design: whole,
    says: sayingOf(whole.spec),
    unit: whole.spec.units,
    way,
    ways,
    order: orderOf(whole, way),
    plan,
    stretches: plan ? stretchesOf(plan) : [],
    wanted: plan && wantedOf(plan, whole.measuring, whole.section),
  }
})

export const screenNow = computed<Screen | undefined>(() => {
  const order = job.value?.order ?? []
  return order.find(({ key }) => key === record.value.at) ?? order[0]
})

export const cutAt = ({ plan }: Job, cut: number): LaneCut | undefined => plan?.cuts[cut]
export const gateAt = (now: Job, cut: number, gate: number): Gate | undefined => cutAt(now, cut)?.gates[gate]
export const stretchAt = (now: Job, cut: number, gate: number, slot: number): Stretch | undefined =>
  now.stretches.find((each) => each.cut === cut && each.gate === gate && each.slot === slot)

/** What a gate measures, as it is said. */
export const measuredAs = (now: Job): string =>
  now.wanted?.by === 'floor to floor'
    ? 'floor to floor'
    : now.wanted?.by === 'plug and blocks'
      ? 'blocks over the plug'
      : 'across'

/** Name under which the measurement at a gate is kept. */
export const gateKey = (cut: number, gate: number): string => `gate-${cut}-${gate}`

/** Across as it was measured on the floor that a new projection begins on, and what the dial is set to by it; absent where it was not. */
export const floorMeasured = (
  now: Job,
  cut: number,
): { readonly measured: number; readonly reading: number } | undefined => {
  const value = valueOf(gateKey(cut - 1, (cutAt(now, cut - 1)?.gates.length ?? 0) - 1))
  return value && now.plan?.gateBy === 'across'
    ? { measured: value.mm, reading: readingOf(now.plan, value.mm) }
    : undefined
}
