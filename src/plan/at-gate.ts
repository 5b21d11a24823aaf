/** What is measured at a gate, and what is to be found there. */
import type { Expected, Gate, Plan } from './types.ts'

/** By its name; undefined where nothing can be measured. */
export const measuredAs: Readonly<Record<Plan['gateBy'], string | undefined>> = {
  across: 'across',
  'floor to floor': 'floor to floor',
  'plug and blocks': 'blocks over plug',
  nothing: undefined,
}

/** What the gate expects of it. */
export const expectedOf = (gate: Gate, by: Plan['gateBy']): Expected =>
  (by === 'floor to floor' ? gate.floorToFloor : by === 'plug and blocks' ? gate.overPlug : undefined) ?? gate
