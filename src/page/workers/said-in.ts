import type { Judged, Proposal, Remedy } from '../../checks/rule.ts'
import { type Ways, waysOf } from '../../checks/compare.ts'
import { type Design, findingsOf, sizesOf } from '../../design.ts'
import { figure } from '../../spec/figures.ts'
import { readLength } from '../../spec/length.ts'
import { patchDocument, readSpec } from '../../spec/read.ts'
import type { Units } from '../../spec/spec.ts'

/** What is said of a job in other units than its own; by rule. */
export interface SaidIn {
  readonly reasons: Readonly<Record<string, string>>
  /** Of the remedies of each finding, in their order; `undefined` where the other units would choose another size, so that its words are not theirs. */
  readonly remedies: Readonly<Record<string, readonly (string | undefined)[]>>
  readonly ways?: Ways
}

type Set = NonNullable<Remedy['set']>

/** Whether two patches come to the same as they are shown. */
const alike = (one: Set | undefined, other: Set | undefined, units: Units): boolean => {
  if (!one || !other) return one === other
  const paths = Object.keys(one)
  if (paths.join() !== Object.keys(other).join()) return false
  return paths.every((path) => {
    const [a, b] = [one[path], other[path]]
    if (a === b) return true
    const [mm, too] = [a, b].map((value) => (typeof value === 'string' ? readLength(value, units) : undefined))
    return (
      mm !== undefined && too !== undefined && figure(mm, units, { fit: true }) === figure(too, units, { fit: true })
    )
  })
}

/** A sentence that goes on from another, where there is no other. */
const alone = (say: string): string => say.replace(/^(?:Or|Otherwise) (.)/, (_, first: string) => first.toUpperCase())

/** The same rules and ways out said in other units: only their words are taken, never a number. */
export const saidIn = (worked: Design, units: Units): SaidIn => {
  if (units === worked.spec.units) return { reasons: {}, remedies: {} }
  const shown: Design = { ...worked, spec: { ...worked.spec, units } }
  const [own, said] = [worked, shown].map(
    (design) => new Map(findingsOf(design).map((judged): [string, Judged] => [judged.rule, judged])),
  )
  const worded = (remedy: Remedy, of: Proposal, there: Proposal): string | undefined => {
    if (!alike(of.set, there.set, units)) return undefined
    if (!there.told || !of.set || remedy.set === undefined) return there.say
    const { document, shop } = worked.spec.written
    const read = readSpec(patchDocument(document, of.set), shop)
    return 'spec' in read ? there.told(sizesOf({ ...read.spec, units })) : undefined
  }
  const remedies = Object.fromEntries(
    worked.findings
      .filter((finding) => finding.remedies.length > 0)
      .map((finding) => {
        const from = own?.get(finding.rule)?.proposals() ?? []
        const to = said?.get(finding.rule)?.proposals() ?? []
        const words = finding.remedies.map((remedy, place) => {
          const at = from.findIndex(({ set, say }) =>
            remedy.set
              ? JSON.stringify(set) === JSON.stringify(remedy.set)
              : set === undefined && sameWords(say, remedy.say),
          )
          const [of, there] = [from[at], to[at]]
          const word = of && there && worded(remedy, of, there)
          return word !== undefined && place === 0 ? alone(word) : word
        })
        return [finding.rule, words] as const
      }),
  )
  const findings = [...(said?.values() ?? [])]
  const ways = waysOf(shown, findings)
  return {
    reasons: Object.fromEntries(findings.map(({ rule, reason }) => [rule, reason])),
    remedies,
    ...(ways && { ways }),
  }
}

const sameWords = (one: string, other: string): boolean => one === other || alone(one) === other
