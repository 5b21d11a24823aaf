import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from '../../src/spec/parse.ts'
import { readSpec } from '../../src/spec/read.ts'
import type { Spec } from '../../src/spec/spec.ts'

/** A specimen of the tree at `root`, read. */
export const specimen = (root: string, name: string): Spec => {
  const parsed = parse(readFileSync(join(root, 'tests/specimens', `${name}.yaml`), 'utf8'))
  const read = 'document' in parsed ? readSpec(parsed.document) : parsed
  if ('complaints' in read) throw new Error(JSON.stringify(read.complaints))
  return read.spec
}
