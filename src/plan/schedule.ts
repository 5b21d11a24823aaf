/** How much to take in each pass. All mm of infeed. */
import { lastOf } from '../dimensions/rising.ts'
import type { Edge } from './engaged.ts'

/** Passes for an infeed, a whole count up; a thousandth of a pass is none. */
export const passesFor = (infeed: number, perPass: number): number => Math.max(0, Math.ceil(infeed / perPass - 1e-3))

/** What a pass may ask: no more force than the whole nose at the planned chip. */
export interface EvenForce {
  readonly edge: Edge
  /** Length of edge at which the planned chip is meant. */
  readonly whole: number
  readonly planned: number
  /** Force goes with width × chip^(1 − exponent). */
  readonly exponent: number
}

const cap = ({ whole, planned, exponent }: EvenForce): number => whole * planned ** (1 - exponent) * (1 + 1e-12)

/** Largest chip from x on that keeps the force at the end of its pass; twice the planned at most. */
export const largestChip = (force: EvenForce, x: number): number => {
  const { edge, planned, exponent } = force
  const most = cap(force)
  // Once the whole edge cuts there is nothing to search.
  if (edge.engaged(x) >= edge.whole - 1e-12)
    return Math.min(2 * planned, edge.whole > 0 ? (most / edge.whole) ** (1 / (1 - exponent)) : Infinity)
  return lastOf(0, 2 * planned, most, (chip) => edge.engaged(x + chip) * chip ** (1 - exponent))
}

/** x after every pass of even force, from `from` to exactly `to`; what is under a thousandth of a pass is no pass of its own. */
export const evenPasses = (force: EvenForce, from: number, to: number): readonly number[] => {
  const hair = 1e-3 * force.planned
  const stops: number[] = []
  let x = from
  // Once the whole edge cuts, every pass is alike.
  let alike: number | undefined
  while (to - x > hair && stops.length < 20_000) {
    const chip: number = alike ?? largestChip(force, x)
    if (alike === undefined && force.edge.engaged(x) >= force.edge.whole - 1e-12) alike = chip
    const next = x + chip
    x = to - next > hair ? next : to
    stops.push(x)
  }
  return stops
}

/** How far, from `from` to no more than `to`, chips of `chip` keep the force. */
export const evenUpTo = (force: EvenForce, from: number, to: number, chip: number): number => {
  const most = cap(force)
  const asks = (x: number) => force.edge.engaged(x) * chip ** (1 - force.exponent)
  return asks(from) <= most ? lastOf(from, to, most, asks) : from
}
