import { type Design, design } from '../../src/design.ts'
import { readSpec } from '../../src/spec/read.ts'
import type { Spec } from '../../src/spec/spec.ts'

/** The spec that a document is read as; complaints are a failed test. */
export const specOf = (document: object): Spec => {
  const read = readSpec({ name: 'trial', ...document })
  if ('spec' in read) return read.spec
  throw new Error(`not read: ${JSON.stringify(read.complaints)}`)
}

export const designed = (document: object): Design => design(specOf(document))

/** The design with its bar and bit, for jobs that must have them. */
export const withBar = (document: object) => {
  const made = designed(document)
  const { bar, bit, plan } = made
  if (!bar || !bit || !plan) throw new Error('no bar')
  return { ...made, bar, bit, plan }
}

export const withBushing = (document: object) => {
  const made = designed(document)
  if (!made.bushing) throw new Error('no bushing')
  return { ...made, bushing: made.bushing }
}
