/** A rule as data, and the finding that judging it gives. */
export type Verdict = 'pass' | 'caution' | 'fail' | 'unknown'

/** A way out. `set` patches the spec as written, by path; `null` takes the path out so that it is chosen again. */
export interface Remedy {
  readonly say: string
  readonly set?: Readonly<Record<string, string | number | null>>
}

export interface Rule {
  readonly id: string
  /** One sentence: what must hold. */
  readonly states: string
  readonly source: string
  readonly binding: 'must' | 'should'
  readonly sense: 'at least' | 'at most'
  readonly unit: 'mm' | 'mm2' | 'degrees' | 'count' | 'ratio' | 'N' | 'HRC'
}

export interface Finding {
  readonly rule: string
  readonly verdict: Verdict
  readonly measured?: number
  readonly limit?: number
  readonly unit: Rule['unit']
  /** Positive = room, in `unit`. */
  readonly margin?: number
  readonly reason: string
  readonly remedies: readonly Remedy[]
}
