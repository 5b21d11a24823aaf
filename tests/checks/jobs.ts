import { barRules } from '../../src/checks/bar.ts'
import { broachRule, bushingRules, noBarRule } from '../../src/checks/bushing.ts'
import { groundForceRules, groundRules } from '../../src/checks/ground.ts'
import { forceRules, keyRules, pressForceRules } from '../../src/checks/forces.ts'
import { indexRules } from '../../src/checks/indexing.ts'
import { judge } from '../../src/checks/judge.ts'
import type { Judged, Rule } from '../../src/checks/rule.ts'
import { sectionRules } from '../../src/checks/section.ts'
import { type Sized, sizesOf } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'

/** Every rule there is; what a rule of its family looks at is in the sizes where the document asks for it. */
export const everyRule = [
  ...sectionRules,
  ...indexRules,
  ...barRules,
  ...groundRules,
  ...groundForceRules,
  ...bushingRules,
  broachRule,
  noBarRule,
  ...forceRules,
  ...pressForceRules,
  ...keyRules,
] as readonly Rule<Sized>[]

export type Document = Readonly<Record<string, unknown>>

/** Sizes of a document that the reader lets pass. */
export const sizedOf = (document: Document): Sized => {
  const read = readSpec({ name: 'trial', ...document })
  if ('spec' in read) return sizesOf(read.spec)
  throw new Error(`not read: ${JSON.stringify(read.complaints)}`)
}

/** A job for one rule: a document, and where no document can bring it about, what is changed in its sizes. */
export interface Trial {
  readonly document: Document
  readonly amend?: (sized: Sized) => Sized
}

export const judged = (rule: Rule<Sized>, { document, amend }: Trial): Judged => {
  const sized = sizedOf(document)
  const job = amend ? amend(sized) : sized
  if (rule.applies?.(job) === false) throw new Error(`${rule.id} does not apply`)
  return judge(rule, job)
}
