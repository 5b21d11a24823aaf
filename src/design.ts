import type { Finding, Verdict } from './checks/rule.ts'
import type { CutterBar, GuideBushing, Plan, PlugGauge, Section, ToolBit } from './dimensions/types.ts'
import type { Spec } from './spec/spec.ts'

/** Everything that follows from one spec: plain, readonly, pure. */
export interface Design {
  readonly spec: Spec
  readonly section: Section
  readonly bar?: CutterBar
  readonly bit?: ToolBit
  readonly bushing?: GuideBushing
  readonly plug: PlugGauge
  readonly plan?: Plan
  readonly findings: readonly Finding[]
  readonly verdict: Verdict
  /** Why each dimension is what it is, by path: `bar.projection`. */
  readonly basis: Readonly<Record<string, string>>
}
