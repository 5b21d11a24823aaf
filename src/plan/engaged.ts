/** An edge on its way to the floor. All mm. */
import { engagedAt, type NoseInSlot } from '../dimensions/engaged.ts'
import type { Section } from '../dimensions/types.ts'

export interface Edge {
  /** Length of edge in the metal at x of the nose's foremost point; never falls with x. */
  readonly engaged: (x: number) => number
  /** The most of it, on its way to the floor. */
  readonly whole: number
}

/** The edge of a lane. Of a slit, what comes out at the far side is counted as still in it: there the passes get lighter, not heavier. */
export const edgeOf = (section: Section, nose: NoseInSlot): Edge => {
  const last = Math.min(section.floor, section.slit?.breakOut ?? Infinity)
  const engaged = (x: number) => engagedAt(section, nose, Math.min(x, last)).edge
  return { engaged, whole: engaged(last) }
}
