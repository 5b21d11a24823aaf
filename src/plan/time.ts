/** How long it takes, minutes. All judgement: an estimate for planning a day, not a promise. */
import type { LaneCut, Time } from './types.ts'

/** Turning the dial, drawing back and coming up again, s. */
const secondsAtDial = 3
/** Along the bore and back by hand, mm/s. */
const handSpeed = 40
/** Measuring across at a gate, the bar out and in; stoning the edge and finding the zero again; bit out to a new setting; turning the work on. */
const minutesEach = { gate: 3, stoning: 6, setting: 8, index: 2 } as const

export const secondsPerStroke = (length: number): number => secondsAtDial + (2 * length) / handSpeed

/** `together`: all slots are taken to a gate before any goes deeper, so that the work is turned on at every gate. */
export const timeOf = (cuts: readonly LaneCut[], stroke: number, slots: number, together: boolean): Time => {
  const perStroke = secondsPerStroke(stroke) / 60
  const gates = cuts.flatMap((cut) => cut.gates)
  const count = (of: (cut: LaneCut) => number) => slots * cuts.reduce((sum, cut) => sum + of(cut), 0)
  const strokes = perStroke * count((cut) => cut.passes.length)
  const springPasses = perStroke * count((cut) => cut.gates.reduce((sum, gate) => sum + gate.springPasses, 0))
  const measuring = minutesEach.gate * slots * gates.filter(({ kind }) => kind !== 'setting').length
  // The bit stays where it is between slots: it is stoned once a lane, set anew once for all slots.
  const stoning =
    minutesEach.stoning * gates.filter(({ kind }) => kind === 'edge').length +
    minutesEach.setting * new Set(cuts.map((cut) => cut.setting)).size -
    minutesEach.setting
  const indexing = slots > 1 ? minutesEach.index * slots * (together ? gates.length : cuts.length) : 0
  return {
    strokes,
    springPasses,
    measuring,
    stoning: Math.max(0, stoning),
    indexing,
    whole: strokes + springPasses + measuring + Math.max(0, stoning) + indexing,
  }
}
