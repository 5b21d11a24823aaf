import { type Design, design, sizesOf } from '../../design.ts'
import { parse } from '../../spec/parse.ts'
import { patchDocument, readSpec, shopPath } from '../../spec/read.ts'
import { workMaterials } from '../../standards/materials.ts'
import { threadNames } from '../../standards/threads.ts'
import { chosen } from '../rows/chosen.ts'
import { boreAs } from './bore-as.ts'
import { bars, drawn, passRuns } from './drawn.ts'
import { packed, unpacked } from './link.ts'
import { rewritten } from './rewritten.ts'
import { halfTold } from './half-told.ts'
import { rules } from './rules.ts'
import { saidIn } from './said-in.ts'
import type { Hands } from './talk.ts'
import type { JobAsked, Works } from './works.ts'

/** What was worked out last: what is drawn. */
let last: Design | undefined

const parsedShop = (text: string | undefined): unknown => {
  const read = text === undefined ? undefined : parse(text)
  return read && 'document' in read ? read.document : undefined
}

const read = ({ document, shop }: JobAsked) => readSpec(document, parsedShop(shop))

/** Works out the job, and draws it. */
export const working: Hands<Works> = {
  open: ({ text, shop }) => {
    const parsed = parse(text)
    if ('complaints' in parsed) return { unreadable: parsed.complaints }
    const shopRead = shop === undefined ? undefined : parse(shop)
    if (shopRead && 'complaints' in shopRead) return { unreadable: shopRead.complaints }
    const outcome = readSpec(parsed.document, shopRead?.document)
    const names = shopPath(parsed.document)
    return {
      document: parsed.document,
      complaints: 'complaints' in outcome ? outcome.complaints : [],
      ...(names !== undefined && { names }),
    }
  },

  unpack: (address) => unpacked(address),

  work: (job, step) => {
    const outcome = read(job)
    const { looked, shown } = job
    // The picture first: it follows the key. Text and judgement come after it.
    if ('spec' in outcome && looked) {
      const sized: Design = { ...sizesOf(outcome.spec), findings: [], verdict: 'pass' }
      step(drawn({ ...sized, spec: { ...sized.spec, units: shown } }, looked))
    }
    const text = rewritten(job.text, job.document)
    const link = packed({ text, ...(job.shop !== undefined && { shop: job.shop }) })
    if ('complaints' in outcome) {
      const half = looked && halfTold(job, looked, outcome.complaints)
      return {
        complaints: outcome.complaints,
        said: { reasons: {}, remedies: {} },
        passes: [],
        text,
        link,
        ...(half && { half }),
      }
    }
    const worked = design(outcome.spec)
    last = worked
    return {
      complaints: [],
      design: worked,
      said: saidIn(worked, shown),
      passes: passRuns(worked),
      text,
      link,
    }
  },

  free: ({ paths, ...job }) => {
    const found: Record<string, { worked: number | string; why?: string }> = {}
    for (const row of chosen) {
      if (!paths.includes(row.path) || !row.worked) continue
      const outcome = read({ ...job, document: patchDocument(job.document, { [row.path]: null }) })
      if ('complaints' in outcome) continue
      const worked = { ...sizesOf(outcome.spec), findings: [], verdict: 'pass' as const }
      const value = row.worked(worked)
      const why = row.why === undefined ? undefined : worked.basis[row.why]
      if (typeof value === 'number' || typeof value === 'string')
        found[row.path] = { worked: value, ...(why !== undefined && { why }) }
    }
    return found
  },

  boreAs: ({ bore, ...job }) => boreAs(job.document, parsedShop(job.shop), bore),

  draw: ({ shown, ...looked }) =>
    last ? drawn({ ...last, spec: { ...last.spec, units: shown } }, looked) : { pictures: {}, spoken: '', dial: '' },

  margins: ({ width, rules: asked }) => (last ? bars(last, asked, width) : {}),

  rules: () => rules,

  offered: () => ({ materials: workMaterials.rows.map((row) => row.name), threads: threadNames() }),
}
