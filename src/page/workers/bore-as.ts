import { judge } from '../../checks/judge.ts'
import { sectionRules } from '../../checks/section.ts'
import { type Design, design, sizesOf } from '../../design.ts'
import { patchDocument, readSpec } from '../../spec/read.ts'
import type { Spec } from '../../spec/spec.ts'
import { chosen } from '../rows/chosen.ts'
import type { Row } from '../rows/row.ts'

/** A bore as it was measured at the machine, mm: the least of it, the most, and the mean as the spec is to have it. */
export interface BoreAsked {
  readonly least: number
  readonly most: number
  readonly mean: string
  readonly way: 'bar' | 'press'
}

/** What may be done in such a bore. */
export interface BoreAs {
  /** Why nothing may be cut in it. */
  readonly refused?: string
  /** What the spec has to say to be worked for it with the tooling that is made already; absent where it cannot be. */
  readonly set?: Readonly<Record<string, string | number>>
  /** Why it cannot. */
  readonly against?: string
}

const another = sectionRules.find(({ id }) => id === 'bore-not-another')

const refusedBy = (spec: Spec, section: Design['section'], measured: number): string | undefined => {
  const found = another && judge(another, { spec: { ...spec, bore: { ...spec.bore, measured } }, section })
  return found?.verdict === 'fail' ? found.reason : undefined
}

/** What stands when the bar is made; of one that is of one piece its projection too. */
const made: readonly Row[] = chosen.filter(({ path }) =>
  ['diameter', 'form', 'bit.size', 'nose.width', 'nose.cornerRadius', 'rake', 'screw', 'shank'].some(
    (name) => path === `tooling.bar.${name}`,
  ),
)
const ofOnePiece = chosen.filter(({ path }) => path === 'tooling.bar.projection')

const differs = (one: unknown, other: unknown): boolean =>
  typeof one === 'number' && typeof other === 'number' ? Math.abs(one - other) > 1e-6 : one !== other

/** A worked value as the spec takes it, whatever its units are. */
const written = (row: Row, value: unknown): string | number | undefined =>
  typeof value === 'string'
    ? value
    : typeof value !== 'number'
      ? undefined
      : row.kind.is === 'length'
        ? `${Number(value.toFixed(6))} mm`
        : Number(value.toFixed(6))

/** A bushing is turned to the bore: no value of the spec holds it. */
const sameBushing = (one: Design, other: Design): boolean =>
  (['outside', 'slotWidth'] as const).every(
    (name) => !differs(one.bushing?.[name].nominal, other.bushing?.[name].nominal),
  )

/** Whether the job can be gone on with in a bore as measured, and what makes it the job for that bore with the tooling as it stands. */
export const boreAs = (document: unknown, shop: unknown, { least, most, mean, way }: BoreAsked): BoreAs => {
  const read = readSpec(document, shop)
  if (!('spec' in read)) return {}
  const stands: Design = { ...sizesOf(read.spec), findings: [], verdict: 'pass' }
  const refused = refusedBy(read.spec, stands.section, least) ?? refusedBy(read.spec, stands.section, most)
  if (refused !== undefined) return { refused }
  const rows = stands.groundBar ? [...made, ...ofOnePiece] : made
  let set: Record<string, string | number> = { 'bore.measured': mean }
  // What is held may move what was not: each round holds what the one before has moved.
  for (let round = 0; round < rows.length; round++) {
    const again = readSpec(patchDocument(document, set), shop)
    if (!('spec' in again)) return { against: 'it is too far from its diameter.' }
    const worked = design(again.spec)
    const moved = way === 'bar' ? rows.filter((row) => differs(row.worked?.(stands), row.worked?.(worked))) : []
    const held = moved.flatMap((row) => {
      const value = written(row, row.worked?.(stands))
      return value === undefined || row.path in set ? [] : [[row.path, value] as const]
    })
    if (held.length > 0) {
      set = { ...set, ...Object.fromEntries(held) }
      continue
    }
    if (moved.length > 0) return { against: 'the bar would have to be another.' }
    if (way === 'press' && !sameBushing(stands, worked)) return { against: 'the bushing would have to be another.' }
    const broken = worked.findings.find(({ verdict }) => verdict === 'fail')
    return broken ? { against: `it does not go with what is made. ${broken.reason}` } : { set }
  }
  return { against: 'the bar would have to be another.' }
}
