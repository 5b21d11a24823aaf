import type { BarInBore, CutterBar, GroundBar, GuideBushing, Section, ToolBit } from '../dimensions/types.ts'
import type { JointLoads, KeyLoads, Loads, PressLoads } from '../mechanics/loads.ts'
import type { Indexing } from '../plan/types.ts'
import type { BarSpec, Broach, Spec } from '../spec/spec.ts'

/** `pass`, `caution` (holds, with something to mind), `fail` (broken), `unknown` (cannot be told, which is never a pass). */
export type Verdict = 'pass' | 'caution' | 'fail' | 'unknown'

export type RuleUnit = 'mm' | 'mm2' | 'degrees' | 'count' | 'ratio' | 'N' | 'N mm' | 'N/mm2' | 'HRC'

/** A way out. `set` patches the spec as written, by path; `null` takes the path out so that it is chosen again. */
export interface Remedy {
  readonly say: string
  readonly set?: Readonly<Record<string, string | number | null>>
}

/** A way out that a rule proposes; it is offered once it has been tried. */
export interface Proposal extends Remedy {
  /** Said in its place once tried: names the sizes that come of it. */
  readonly told?: (healed: Worked) => string
  /** Of the ways of one kind, the first that heals is offered, and no other. */
  readonly kind?: string
}

/** All that the rules may look at: what was worked out of a spec, before it is judged. */
export interface Worked {
  readonly spec: Spec
  readonly section: Section
  /** Infeed of a pass; absent where there is no bar. */
  readonly infeed?: number
  readonly bar?: CutterBar
  readonly bit?: ToolBit
  /** In place of bar and bit, where the bar is ground of one piece. */
  readonly groundBar?: GroundBar
  readonly bushing?: GuideBushing
  /** More than one slot. */
  readonly indexing?: Indexing
  readonly loads?: Loads
  readonly pressLoads?: PressLoads
  readonly keyLoads?: KeyLoads
  /** Splines and sockets. */
  readonly jointLoads?: JointLoads
}

/** A job with a bar of either kind. */
export interface FitJob extends Worked {
  readonly asked: BarSpec
}

/** The bar of a job, whichever way it holds its edge. */
export const inBore = ({ bar, groundBar }: Worked): BarInBore => {
  const made = bar ?? groundBar
  if (!made) throw new Error('a rule of bars on a job without one')
  return made
}

/** What a family of rules is about; undefined where the job has none. */
export interface BarJob extends Worked {
  readonly asked: BarSpec
  readonly bar: CutterBar
  readonly bit: ToolBit
}

export interface PressJob extends Worked {
  readonly broach: Broach
  readonly bushing: GuideBushing
}

/** Writes a number of the rule's unit for a reader, leaning as told. */
export type Say = (value: number, lean?: 'up' | 'down') => string

/** One rule, as data. */
export interface Rule<Job extends Worked = Worked> {
  readonly id: string
  /** One sentence: what must hold. */
  readonly states: string
  readonly source: string
  readonly binding: 'must' | 'should'
  readonly sense: 'at least' | 'at most'
  readonly unit: RuleUnit
  /** Left out: always. */
  readonly applies?: (job: Job) => boolean
  /** Undefined: cannot be told, which is never a pass. */
  readonly measured: (job: Job) => number | undefined
  readonly limit: (job: Job) => number | undefined
  /** One plain sentence; measured and limit already written, leaning the way the verdict leans. */
  readonly reason: (said: { readonly measured: string; readonly limit: string }, job: Job, broken: boolean) => string
  /** Said where it cannot be told. */
  readonly untold?: string
  readonly remedies?: (job: Job) => readonly Proposal[]
}

/** What a rule comes to, without its words. */
export interface Weighed {
  readonly rule: string
  readonly verdict: Verdict
  readonly binding: 'must' | 'should'
  readonly measured?: number
  readonly limit?: number
  readonly unit: RuleUnit
  /** Positive = room, in `unit`. */
  readonly margin?: number
}

/** What a rule found: its verdict with the numbers that it rests on. */
export interface Finding extends Weighed {
  /** One plain sentence with both numbers. */
  readonly reason: string
  /** Ways out, the best first; each with a `set` has been tried, and heals. */
  readonly remedies: readonly Remedy[]
}

/** A finding whose ways out have not been tried: none is offered yet. */
export interface Judged extends Finding {
  readonly proposals: () => readonly Proposal[]
}
