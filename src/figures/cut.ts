/** Passes, their forces and the gates, as the figures want them: read from the plan. Infeeds count from first touch of the first lane. */
import type { Design } from '../design.ts'
import type { BarInBore } from '../dimensions/types.ts'
import { cuttingForce } from '../mechanics/cutting.ts'
import type { Gate } from '../plan/types.ts'
import { workMaterial } from '../standards/materials.ts'
import type { Cut } from './contour.ts'

export interface Pass {
  /** Infeed by the dial after the pass, mm. */
  readonly to: number
  /** Worn edge, N; 0 where the material's is not known. */
  readonly force: number
}

/** The nose of a lane with its flat at `x`. */
export const noseAt = (bar: BarInBore, lane: number, x: number): Cut => {
  const offset = bar.lanes[lane]?.offset ?? 0
  return { x, low: offset - bar.noseWidth / 2, high: offset + bar.noseWidth / 2, corner: bar.cornerRadius }
}

/** x of the nose at the dial's nought. */
export const zeroOf = ({ bar, groundBar, section }: Design): number =>
  (bar ?? groundBar)?.lanes[0]?.touchOff ?? section.touchOff

/** Infeed from the dial's nought to the last pass of the plan; to the floor where there is no plan. */
export const lastInfeed = (design: Design): number => {
  const { plan, section } = design
  const last = Math.max(...(plan?.cuts ?? []).flatMap(({ passes }) => passes.map(({ x }) => x)), -Infinity)
  return Math.max(section.floor, last) - zeroOf(design)
}

/** Passes of a lane in order, at whatever settings of the projection, each with the force that it takes. */
export const passesOf = (design: Design, lane = 0): readonly Pass[] => {
  const zero = zeroOf(design)
  const material = workMaterial(design.spec.hub.material)
  const rake = design.bit?.rake ?? design.groundBar?.rake ?? 0
  return (design.plan?.cuts ?? [])
    .filter((cut) => cut.lane === lane)
    .flatMap(({ passes }) =>
      passes.map(({ x, chip, engaged, force }) => ({
        to: x - zero,
        force: force ?? (material && chip > 0 ? cuttingForce(material.kienzle, engaged, chip, rake, 'worn') : 0),
      })),
    )
}

/** Where the plan stops to measure, with the infeed there. */
export const gatesOf = (design: Design, lane = 0): readonly (Gate & { readonly infeed: number })[] => {
  const zero = zeroOf(design)
  return (design.plan?.cuts ?? [])
    .filter((cut) => cut.lane === lane)
    .flatMap(({ gates }) => gates.map((gate) => ({ ...gate, infeed: gate.x - zero })))
}

/** How far the slot stands behind the dial at an infeed, mm: the lag band's upper end, in the measure of the force there. */
export const lagAt = (design: Design, lane: number, infeed: number, passes = passesOf(design, lane)): number => {
  const { loads } = design
  if (!loads || infeed <= 0 || loads.cuttingForce <= 0) return 0
  // At a gate it is what the gate reckons with.
  const gate = gatesOf(design, lane).find((each) => Math.abs(each.infeed - infeed) < 1e-6)
  if (gate?.expected !== undefined) return gate.byDial - gate.expected
  const pass = passes.find(({ to }) => to >= infeed - 1e-6) ?? passes.at(-1)
  return Math.min((loads.lag.most * (pass?.force ?? 0)) / loads.cuttingForce, infeed)
}
