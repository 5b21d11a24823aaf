/**
 * borewright as a library: `parse` a text, `readSpec` what it holds, `design` what follows, `make` the files, or `report` the numbers.
 * Nothing here touches the computer: files, fonts and kernel are the caller's.
 */
export type { Finding, Remedy, Verdict } from './checks/rule.ts'
export { cardOf } from './card/card-of.ts'
export type { Card } from './card/document.ts'
export { type Design, design } from './design.ts'
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
export type { Fonts } from './writers/pdf.ts'
export { type Report, report } from './writers/report.ts'
