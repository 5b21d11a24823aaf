/** What of an edge is in the metal at a depth. */
import { angleInMetal } from './round-nose.ts'
import { setBackOf } from './v-nose.ts'
import type { Section } from './types.ts'

/** A nose in its slot. `cut`: stretches across the slot, [from, to], that lanes before this one have taken to the floor. */
export interface NoseInSlot {
  readonly width: number
  readonly offset?: number
  readonly cut?: readonly (readonly [from: number, to: number])[]
}

export interface Engaged {
  /** Length of edge in the metal, mm. */
  readonly edge: number
  /** Thickness of its chip as a share of the infeed: 1 of a flat nose, cos π/N of a V's flanks; a mean where it varies along the edge. */
  readonly chip: number
}

const nothing: Engaged = { edge: 0, chip: 1 }

/** Length of [from, to] that none of the stretches covers. */
const uncovered = (from: number, to: number, stretches: readonly (readonly [number, number])[]): number => {
  const sorted = stretches
    .map(([a, b]) => [Math.max(a, from), Math.min(b, to)] as const)
    .filter(([a, b]) => b > a)
    .toSorted(([a], [b]) => a - b)
  let [covered, upTo] = [0, from]
  for (const [a, b] of sorted) {
    covered += Math.max(0, b - Math.max(a, upTo))
    upTo = Math.max(upTo, b)
  }
  return Math.max(0, to - from - covered)
}

const flat = ({ boreRadius, slit }: Section, { width, offset = 0, cut = [] }: NoseInSlot, x: number): Engaged => {
  const inside = x >= boreRadius ? 0 : Math.sqrt(boreRadius ** 2 - x ** 2)
  // Of a slit, what has come out at the far side cuts no more.
  const out = slit ? Math.sqrt(Math.max(0, (slit.outside / 2) ** 2 - x ** 2)) : Infinity
  const [from, to] = [Math.max(offset - width / 2, -out), Math.min(offset + width / 2, out)]
  if (to <= from) return nothing
  // A first lane, as nearly all are: the bore alone has taken something.
  if (cut.length === 0)
    return { edge: Math.max(0, to - from - Math.max(0, Math.min(inside, to) - Math.max(-inside, from))), chip: 1 }
  return { edge: uncovered(from, to, [[-inside, inside], ...cut]), chip: 1 }
}

const round = (boreRadius: number, nose: number, x: number): Engaged => {
  const angle = angleInMetal(boreRadius, nose, x)
  return angle > 0 ? { edge: 2 * nose * angle, chip: Math.sin(angle) / angle } : nothing
}

const vee = (boreRadius: number, sides: number, tip: number, width: number, x: number): Engaged => {
  if (x <= boreRadius) return nothing
  const share = Math.PI / sides
  const flats = (x + setBackOf(sides, tip)) * Math.cos(share)
  const flank = Math.min(
    flats * Math.tan(share) - Math.sqrt(Math.max(0, boreRadius ** 2 - flats ** 2)),
    width / 2 / Math.cos(share),
  )
  const tangent = tip * Math.tan(share)
  if (flank <= tangent) {
    const angle = Math.min(share, angleInMetal(boreRadius, tip, x))
    return angle > 0 ? { edge: 2 * tip * angle, chip: Math.sin(angle) / angle } : nothing
  }
  const edge = flank - tangent + tip * share
  return { edge: 2 * edge, chip: (flank * Math.cos(share)) / edge }
}

/**
 * The edge in the metal when the nose’s foremost point stands at `x`: of a flat nose as if its corners were sharp, of a V both flanks and the
 * tip between them, of a round nose its arc.
 */
export const engagedAt = (section: Section, nose: NoseInSlot, x: number): Engaged => {
  const { boreRadius, socket, groove, cornerRadius } = section
  if (groove) return round(boreRadius, groove.radius, x)
  if (socket) return vee(boreRadius, socket.sides, cornerRadius, nose.width, x)
  return flat(section, nose, x)
}

/** The most that a nose has in the metal on its way to the floor: the whole flat, or what a V or a round has there. */
export const engagedMost = (section: Section, nose: NoseInSlot): Engaged =>
  section.groove || section.socket ? engagedAt(section, nose, section.floor) : { edge: nose.width, chip: 1 }

/** How a nose is shaped that cuts this. */
export const noseForm = ({ kind }: Section): 'flat' | 'vee' | 'round' =>
  kind === 'socket' ? 'vee' : kind === 'groove' ? 'round' : 'flat'

/** x at which the nose has done: the floor, or of a slit so far past the outside that it is open from end to end. */
export const targetOf = ({ floor, slit }: Section): number => slit?.target ?? floor
