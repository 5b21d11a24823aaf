/** Which tooling a rule is about, for whoever marks sheets. */
import { barRules } from './bar.ts'
import { broachRule, bushingRules, noBarRule } from './bushing.ts'
import { forceRules, pressForceRules } from './forces.ts'
import { groundForceRules, groundRules } from './ground.ts'

const bar = new Set([...barRules, ...forceRules, ...groundRules, ...groundForceRules, noBarRule].map(({ id }) => id))
const press = new Set([...bushingRules, ...pressForceRules, broachRule].map(({ id }) => id))

/** `bar`: cutter bar and bit; `press`: bushing and shims; `job`: whatever is made. */
export const about = (rule: string): 'bar' | 'press' | 'job' =>
  bar.has(rule) ? 'bar' : press.has(rule) ? 'press' : 'job'
