import type { Design } from '../../design.ts'
import { fourLengths } from '../../figures/lengths.ts'
import { onPage } from '../../figures/figure.ts'
import { sectionFigure } from '../../figures/section.ts'
import { sizesOf } from '../../design.ts'
import type { Complaint } from '../../spec/complaint.ts'
import { patchDocument, readSpec } from '../../spec/read.ts'
import { standsAt } from '../../spec/place.ts'
import { pictureOf } from './drawn.ts'
import type { JobAsked, Looked, Picture, PictureName } from './works.ts'

/** What is still wanted and has no part in the section: stands in for it only while the section is drawn. */
const standIns: Readonly<Record<string, (document: unknown) => unknown>> = {
  'bore.length': (document) => standsAt(document, ['bore', 'diameter']),
}

/** The section without a bar, of a job of which only such things are wanted as the section does not show; undefined where it cannot be drawn. */
export const halfTold = (
  { document, shown }: JobAsked,
  { width }: Looked,
  complaints: readonly Complaint[],
): Readonly<Partial<Record<PictureName, Picture>>> | undefined => {
  if (!complaints.every(({ path, read }) => path in standIns && read.startsWith('nothing'))) return undefined
  const set = Object.fromEntries(complaints.map(({ path }) => [path, standIns[path]?.(document) as string | number]))
  const read = readSpec(patchDocument(document, { ...set, tooling: null }), undefined)
  if (!('spec' in read)) return undefined
  const { section, plug, measuring, errors, basis } = sizesOf({ ...read.spec, units: shown })
  const bare: Design = {
    spec: { ...read.spec, units: shown },
    section,
    plug,
    measuring,
    errors,
    basis,
    findings: [],
    verdict: 'unknown',
  }
  const target = onPage(width)
  return { section: pictureOf(sectionFigure(bare, 'floor', target)), lengths: pictureOf(fourLengths(bare, target)) }
}
