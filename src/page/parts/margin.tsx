import type { Finding } from '../../checks/rule.ts'
import type { Units } from '../../spec/spec.ts'

/** How far a finding stands from its limit, drawn. The figures under it say the same in words. */
export const MarginBar = (_: { finding: Finding; units: Units }) => null
