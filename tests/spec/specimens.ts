import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from '../../src/spec/parse.ts'
import { tell } from '../../src/spec/print.ts'
import { readSpec } from '../../src/spec/read.ts'
import type { Spec } from '../../src/spec/spec.ts'

const folder = join(import.meta.dirname, '../specimens')

/** Names of the specimens, and their documents as plain data. */
export const specimenNames = readdirSync(folder).filter((name) => name.endsWith('.yaml'))
export const specimenText = (name: string): string => readFileSync(join(folder, name), 'utf8')

export function specimen(name: string): Record<string, unknown> {
  const read = parse(specimenText(name))
  if ('complaints' in read) throw new Error(read.complaints.map(tell).join('\n'))
  return read.document as Record<string, unknown>
}

/** The spec that a document must give. */
export function specOf(document: unknown, shop?: unknown): Spec {
  const read = readSpec(document, shop)
  if ('complaints' in read) throw new Error(read.complaints.map(tell).join('\n'))
  return read.spec
}

/** The complaints of a document by path: what is accepted, and what was meant. */
export function complaintsBy(document: unknown, shop?: unknown): Record<string, string> {
  const read = readSpec(document, shop)
  if ('spec' in read) return {}
  return Object.fromEntries(
    read.complaints.map((each) => [each.path, each.meant === undefined ? each.accepted : `${each.meant}!`]),
  )
}

/** A metric job of the fewest words, with what is given laid over it. */
export const least = (over: Record<string, unknown> = {}): Record<string, unknown> => ({
  name: 'least',
  units: 'mm',
  bore: { diameter: 24, length: 38 },
  feature: { keyway: {} },
  ...over,
})
