/** Passes, their forces and the gates, as the figures want them: read from the plan. */
import type { Design } from '../design.ts'
import type { CutterBar } from '../dimensions/types.ts'
import { cuttingForce } from '../mechanics/cutting.ts'
import { workMaterial } from '../standards/materials.ts'
import { type Cut, engaged } from './contour.ts'

export interface Pass {
  /** Infeed of this lane after the pass, by the dial, mm. */
  readonly to: number
  /** Worn edge, N; 0 where the hub's material has no constants. */
  readonly force: number
}

export interface Gate {
  /** Infeed of the first lane at which it is measured, mm. */
  readonly infeed: number
  readonly after: number
  readonly across: number
}

/** The nose of a lane with its flat at `x`. */
export const noseAt = (bar: CutterBar, lane: number, x: number): Cut => {
  const offset = bar.lanes[lane]?.offset ?? 0
  return { x, low: offset - bar.noseWidth / 2, high: offset + bar.noseWidth / 2, corner: bar.cornerRadius }
}

/** Passes of a lane in order, each with the force that it takes. */
export const passesOf = (design: Design, lane = 0): readonly Pass[] => {
  const { bar, bit, plan, section, spec } = design
  const planned = plan?.lanes[lane]
  if (!bar || !bit || !plan || !planned) return []
  const material = workMaterial(spec.hub.material)
  const done = bar.lanes.slice(0, lane).map((_, before) => noseAt(bar, before, section.floor))
  let at = 0
  return Array.from({ length: planned.passes }, (_, pass): Pass => {
    const to = Math.min((pass + 1) * plan.infeedPerPass, planned.infeed)
    const take = to - at
    at = to
    const width = engaged(section.boreRadius, noseAt(bar, lane, planned.touchOff + to), done)
    return { to, force: material && take > 0 ? cuttingForce(material.kienzle, width, take, bit.rake, 'worn') : 0 }
  })
}

/** Where the plan stops to measure, first lane. */
export const gatesOf = (design: Design): readonly Gate[] => {
  const { plan, section } = design
  const first = plan?.lanes[0]
  if (!plan || !first) return []
  return plan.checks.map(({ after, across }) => ({
    after,
    across,
    infeed: across - section.boreRadius - first.touchOff,
  }))
}

/** How far the slot stands behind the dial at an infeed, mm: the lag band's upper end, in the measure of the force there. */
export const lagAt = (design: Design, lane: number, infeed: number, passes = passesOf(design, lane)): number => {
  const { loads } = design
  if (!loads || infeed <= 0 || loads.cuttingForce <= 0) return 0
  const pass = passes.find(({ to }) => to >= infeed - 1e-6) ?? passes.at(-1)
  const full = Math.max(...passes.map(({ force }) => force), 1e-9)
  return Math.min((loads.lag.most * (pass?.force ?? 0)) / full, infeed)
}
