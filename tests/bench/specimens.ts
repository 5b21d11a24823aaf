import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'
import type { Spec } from '../../src/spec/spec.ts'

export const pathOf = (name: string): string => join(import.meta.dirname, '../specimens', `${name}.yaml`)

/** A specimen, read. */
export const specimen = (name: string): Spec => {
  const parsed = parse(readFileSync(pathOf(name), 'utf8'))
  const read = 'document' in parsed ? readSpec(parsed.document) : parsed
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  return read.spec
}
