/**
 * borewright as a library. `parse` reads a text and `readSpec` what it holds; `design` works everything out, at once and without a file or a
 * clock; `make` turns a design into files, as names and bytes; `report` is every number of it. All lengths are mm, all angles degrees, all
 * forces N. Nothing here touches the computer: kernel, fonts and faces are handed in, by `openTools` of `borewright/node` where there is Node.
 *
 * @example
 * const read = parse(text)
 * const spec = 'complaints' in read ? read : readSpec(read.document)
 * if ('complaints' in spec) throw new Error(spec.complaints.map(tell).join('\n'))
 * const worked = design(spec.spec)
 * const files = await make(worked, { formats: ['pdf'] }, openTools())
 */
export type { Finding, Remedy, Verdict } from './checks/rule.ts'
export { cardOf } from './card/card-of.ts'
export type { Card } from './card/document.ts'
export { type Design, design } from './design.ts'
export type { Size } from './fits/size.ts'
export {
  checksum,
  type Format,
  formats,
  type MadeFile,
  make,
  partNames,
  partsOf,
  type Tools,
  usual,
  type Wanted,
} from './make.ts'
export { type Kernel, openKernel } from './solid/mesh.ts'
export type { Complaint } from './spec/complaint.ts'
export { parse } from './spec/parse.ts'
export { tell } from './spec/print.ts'
export { readSpec, shopPath } from './spec/read.ts'
export { schemaText } from './spec/schema-text.ts'
export type { Spec } from './spec/spec.ts'
export { starterSpec } from './spec/starter.ts'
export type { Faces } from './writers/card-files.ts'
export { cardHtml } from './writers/card-html.ts'
export type { Fonts } from './writers/fonts.ts'
export { type Report, report } from './writers/report.ts'
