import type { KeyLoads, Loads, PressLoads } from '../mechanics/loads.ts'
import type { BarJob, FitJob, PressJob, Worked } from './rule.ts'

/** Jobs whose forces have been worked out. */
export interface CutJob extends FitJob {
  readonly loads: Loads
}

export interface LoadedBar extends BarJob {
  readonly loads: Loads
}

export interface LoadedPress extends PressJob {
  readonly pressLoads: PressLoads
}

export interface LoadedKey extends Worked {
  readonly keyLoads: KeyLoads
}
