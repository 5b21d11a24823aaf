import { barRules } from '../../checks/bar.ts'
import { broachRule, bushingRules, noBarRule } from '../../checks/bushing.ts'
import { forceRules, keyRules, pressForceRules } from '../../checks/forces.ts'
import { indexRules } from '../../checks/indexing.ts'
import { sectionRules } from '../../checks/section.ts'

/** What stands behind a finding, in words. */
export interface Told {
  readonly states: string
  readonly source: string
  readonly sense: 'at least' | 'at most'
}

interface Known extends Told {
  readonly id: string
}

const all: readonly Known[] = [
  ...sectionRules,
  ...indexRules,
  noBarRule,
  ...barRules,
  broachRule,
  ...bushingRules,
  ...forceRules,
  ...pressForceRules,
  ...keyRules,
]

/** Every rule by its name. */
export const rules: Readonly<Record<string, Told>> = Object.fromEntries(
  all.map(({ id, states, source, sense }) => [id, { states, source, sense }]),
)
