/** What another bore than the one worked for asks of the infeed: a finished bore is measured, and its row ringed. All mm. */
import { touchOffX } from '../dimensions/bore.ts'
import type { Lane, Section } from '../dimensions/types.ts'
import type { Spec } from '../spec/spec.ts'
import { downTo } from './dial.ts'
import type { BoreRow } from './types.ts'

/**
 * First touch to the floor in a bore of this diameter. A keyway keeps its across, a groove its depth from the crown; splines, slits and
 * sockets keep their floor.
 */
export const infeedIn = (section: Section, lane: Lane, noseWidth: number, diameter: number): number => {
  const radius = diameter / 2
  const nose = Math.min(section.cornerRadius, noseWidth / 2)
  const end = lane.offset === 0 ? section.spline?.noseEndRadius : undefined
  const touch = (r: number) =>
    section.kind === 'groove' || section.kind === 'socket' ? r : touchOffX(r, noseWidth, nose, lane.offset, end)
  const floor = (r: number) =>
    section.kind === 'keyway' ? section.across - r : section.kind === 'groove' ? r + section.crownDepth : section.floor
  const at = (r: number) => floor(r) - touch(r)
  return lane.infeed + at(radius) - at(section.boreRadius)
}

/** Rows from the smallest bore to the largest, or the one as measured, in a step that a micrometer reads; no more than nine. */
export const boresOf = (
  spec: Spec,
  infeed: (diameter: number) => number,
  reached: number,
  perInfeed: number,
): readonly BoreRow[] => {
  const { measured } = spec.bore
  const [lower, upper] =
    measured === undefined ? [spec.bore.diameter.lower, spec.bore.diameter.upper] : [measured, measured]
  const steps = spec.units === 'mm' ? [0.001, 0.002, 0.003, 0.005] : [0.0001, 0.0002, 0.0005].map((inch) => inch * 25.4)
  const step =
    [1, 10, 100].flatMap((tens) => steps.map((each) => each * tens)).find((s) => (upper - lower) / s <= 8.01) ??
    (upper - lower) / 8
  const count = Math.round(downTo(upper - lower, step) / step)
  const bores = Array.from({ length: count + 1 }, (_, n) => lower + n * step)
  const last = bores.at(-1) ?? lower
  const all = upper - last > 1e-6 ? [...bores, upper] : bores
  return all.map((bore) => {
    const wanted = infeed(bore)
    const left = wanted - reached
    return { bore, infeed: wanted, left, onDial: wanted * perInfeed, leftOnDial: left * perInfeed }
  })
}
