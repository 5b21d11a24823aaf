/** What was measured at the machine beside what is wanted. All mm. */
import type { BarInBore, Section } from '../dimensions/types.ts'
import type { Spec } from '../spec/spec.ts'
import { infeedIn } from './bores.ts'
import type { Measuring, Plan } from './types.ts'

export interface BoreFound {
  /** Mean of what was measured, the least and the most of it. */
  readonly bore: number
  readonly least: number
  readonly most: number
  readonly says: 'within' | 'small' | 'large'
  /** Over or under the limit; 0 within. */
  readonly off: number
  /** What this bore asks of the infeed and of the dial, and what of it is left at the last gate; absent without a bar. */
  readonly infeed?: number
  readonly onDial?: number
  readonly leftOnDial?: number
}

/** The infeed in a bore of this diameter as the plan counts it: a slit's goes on past its outside. */
const infeedFor = (section: Section, bar: BarInBore, plan: Plan, diameter: number): number | undefined => {
  const [lane] = bar.lanes
  const [row] = plan.bores.rows
  if (!lane || !row) return undefined
  const flat = section.kind !== 'groove' && section.kind !== 'socket'
  const nose = flat && bar.lanes.length === 1 ? section.width : bar.noseWidth
  return row.infeed + infeedIn(section, lane, nose, diameter) - infeedIn(section, lane, nose, row.bore)
}

/** A bore as measured in one place or more; undefined where nothing is measured. */
export const boreFound = (
  {
    spec,
    section,
    plan,
    bar,
  }: {
    readonly spec: Spec
    readonly section: Section
    readonly plan?: Plan | undefined
    readonly bar?: BarInBore | undefined
  },
  measured: readonly number[],
): BoreFound | undefined => {
  if (measured.length === 0) return undefined
  const { lower, upper } = spec.bore.diameter
  const [least, most] = [Math.min(...measured), Math.max(...measured)]
  const bore = measured.reduce((sum, each) => sum + each, 0) / measured.length
  const off = most > upper + 1e-9 ? most - upper : least < lower - 1e-9 ? least - lower : 0
  const infeed = plan && bar && infeedFor(section, bar, plan, bore)
  return {
    bore,
    least,
    most,
    says: off > 0 ? 'large' : off < 0 ? 'small' : 'within',
    off,
    ...(plan &&
      infeed !== undefined && {
        infeed,
        onDial: infeed * plan.dial.perInfeed,
        leftOnDial: infeed * plan.dial.perInfeed - plan.bores.reading,
      }),
  }
}

/** Whether what was measured lies within, and how far off the middle it is. */
export const within = (
  measured: number,
  { least, most }: { readonly least: number; readonly most: number },
): { readonly good: boolean; readonly off: number } => ({
  good: measured >= least - 1e-9 && measured <= most + 1e-9,
  off: measured - (least + most) / 2,
})

/** What is measured at every gate, the limits of it in the end, and the size that is no slot yet. */
export interface Wanted {
  readonly by: Exclude<Plan['gateBy'], 'nothing'>
  readonly least: number
  readonly middle: number
  readonly most: number
  readonly none: number
}

/** Undefined where nothing can be measured on the way. */
export const wantedOf = (plan: Plan, measuring: Measuring, section: Section): Wanted | undefined => {
  const bore = 2 * section.boreRadius
  switch (plan.gateBy) {
    case 'across':
      return { by: 'across', ...measuring.across, none: bore }
    case 'floor to floor': {
      const { lower, upper } = section.acrossLimits
      const floors = measuring.floorToFloor ?? {
        least: 2 * (lower - section.boreRadius),
        middle: 2 * section.floor,
        most: 2 * (upper - section.boreRadius),
      }
      return { by: 'floor to floor', least: floors.least, middle: floors.middle, most: floors.most, none: bore }
    }
    case 'plug and blocks': {
      const { lower, upper } = section.crownDepthLimits
      return { by: 'plug and blocks', least: lower, middle: section.crownDepth, most: upper, none: 0 }
    }
    case 'nothing':
      return undefined
  }
}
