/** How far a cut has come, by what the dial reads: the dial is the truth, a count of strokes is not. Readings are the dial's own; all mm. */
import type { Expected, Gate, Pass, Plan } from './types.ts'

/** From one stop to the next in one lane of one slot. Every slot is cut to a gate before any goes deeper. */
export interface Stretch {
  /** Places in `plan.cuts`, in the cut's `gates`, and of the slot, all from 0. */
  readonly cut: number
  readonly gate: number
  readonly slot: number
  readonly lane: number
  /** Reading at its beginning, and at the gate. */
  readonly from: number
  readonly to: number
  readonly passes: readonly Pass[]
  readonly springPasses: number
}

/** All of them in the order that they are cut. */
export const stretchesOf = (plan: Plan): readonly Stretch[] =>
  plan.cuts.flatMap((cut, at) => {
    let from = cut.from
    let done = 0
    return cut.gates.flatMap((gate, place): readonly Stretch[] => {
      const stretch = {
        cut: at,
        gate: place,
        lane: cut.lane,
        from,
        to: gate.reading,
        passes: cut.passes.slice(done, done + gate.passes),
        springPasses: gate.springPasses,
      }
      from = gate.reading
      done += gate.passes
      return Array.from({ length: plan.keyways }, (_, slot) => ({ ...stretch, slot }))
    })
  })

export interface Standing {
  /** The stroke that comes next; absent where only spring passes or the gate do. */
  readonly next?: Pass
  /** What the dial is turned on by for it, and how many marks that is. */
  readonly by: number
  readonly marks: number
  /** Infeed from the zero that the next stroke, or the dial as it stands, comes to. */
  readonly travel: number
  /** Infeed from the zero by the dial as it stands. */
  readonly infeed: number
  readonly springsLeft: number
  /** On the dial, to the last gate. */
  readonly left: number
  /** Strokes to the gate, and to the end of all lanes and slots; spring passes are strokes. */
  readonly toGate: number
  readonly strokesLeft: number
  /** The dial stands so much beyond the gate: no more than 0 where it does not. */
  readonly beyond: number
}

/** A hair of the dial that is none. */
const hair = 1e-6

/** Where the dial stands in a stretch, `springs` of its spring passes done. */
export const standing = (plan: Plan, at: Stretch, reading: number, springs = 0): Standing => {
  const stretches = stretchesOf(plan)
  const here = stretches.findIndex(({ cut, gate, slot }) => cut === at.cut && gate === at.gate && slot === at.slot)
  const ahead = at.passes.filter((pass) => pass.reading > reading + hair)
  const next = ahead[0]
  const springsLeft = Math.max(0, at.springPasses - springs)
  const later = stretches
    .slice(here + 1)
    .reduce((sum, { passes, springPasses }) => sum + passes.length + springPasses, 0)
  const by = next ? next.reading - reading : 0
  const toGate = ahead.length + springsLeft
  return {
    ...(next && { next }),
    by,
    marks: by / plan.dial.mark,
    travel: (next?.reading ?? reading) / plan.dial.perInfeed,
    infeed: reading / plan.dial.perInfeed,
    springsLeft,
    left: Math.max(0, plan.bores.reading - reading),
    toGate,
    strokesLeft: toGate + later,
    beyond: reading - at.to,
  }
}

/** The reading before this one in a stretch: where the dial stood a stroke ago. */
export const readingBefore = (at: Stretch, reading: number): number =>
  [at.from, ...at.passes.map((pass) => pass.reading)].findLast((each) => each < reading - hair) ?? at.from

/** What is measured at a gate, as the plan says to measure it. */
export const expectedOf = (gate: Gate, by: Plan['gateBy']): Expected =>
  (by === 'floor to floor' ? gate.floorToFloor : by === 'plug and blocks' ? gate.overPlug : undefined) ?? gate
