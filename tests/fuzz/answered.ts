import { readFileSync } from 'node:fs'
import { expect } from 'vitest'
import { type Design, design } from '../../src/design.ts'
import { parse } from '../../src/spec/parse.ts'
import { tell } from '../../src/spec/print.ts'
import { readSpec } from '../../src/spec/read.ts'
import { report } from '../../src/writers/report.ts'

/** What comes of whatever was written: complaints, a line each; or a design, broken or not. */
export type Answer =
  | { readonly is: 'complaint'; readonly lines: readonly string[] }
  | { readonly is: 'broken' | 'made'; readonly design: Design }

/** Longer than this nobody waits, ms: ten times what the slowest job takes on a busy machine. */
export const patience = 2000

/** A value that no report may hold, by the path at which it stands; `undefined` where all is well. */
export const unsound = (value: unknown, at = ''): string | undefined => {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${at}: ${value}`
  if (typeof value === 'string')
    return /\b(?:NaN|undefined|Infinity)\b|\[object |\d,?e[+-]\d/.test(value) ? `${at}: ${value}` : undefined
  if (typeof value !== 'object' || value === null) return value === undefined ? `${at}: undefined` : undefined
  for (const [key, each] of Object.entries(value)) {
    const found = unsound(each, `${at}.${key}`)
    if (found !== undefined) return found
  }
  return undefined
}

/** Control characters, and what ends a line or turns its direction: none is said to a person. */
// oxlint-disable-next-line no-control-regex
const unsayable = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/

const complained = (complaints: Parameters<typeof tell>[0][]): Answer => {
  const lines = complaints.map(tell)
  expect(lines.length).toBeGreaterThan(0)
  for (const line of lines) {
    expect(line).not.toMatch(unsayable)
    expect(line.length).toBeLessThan(1000)
    expect(line).not.toMatch(/\bat \S+ \(|node_modules|\[object /)
  }
  return { is: 'complaint', lines }
}

/** Plain data as a spec, all the way: read, worked out, reported. Whatever does not hold throws. */
export const answeredData = (document: unknown, shop?: unknown): Answer => {
  const read = readSpec(document, shop)
  if ('complaints' in read) return complained([...read.complaints])
  const made = design(read.spec)
  const told = report(made)
  // A word of the spec that only looks like a number is the writer's own.
  const own = /NaN|Infinity|undefined/.test(`${made.spec.name} ${made.spec.use ?? ''}`)
  expect(own ? undefined : unsound(JSON.parse(JSON.stringify(told)), 'report')).toBeUndefined()
  return { is: made.verdict === 'fail' ? 'broken' : 'made', design: made }
}

/** A text, all the way. */
export const answered = (text: string): Answer => {
  const read = parse(text)
  return 'complaints' in read ? complained([...read.complaints]) : answeredData(read.document)
}

/** Milliseconds that this thread has worked; where the system does not count them, that have gone by. */
const worked = (): number => {
  try {
    return Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[0]) / 1e6
  } catch {
    return performance.now()
  }
}

/** The same, no slower than anybody's patience. */
export const inTime = <T>(work: () => T, what: string): T => {
  const begun = worked()
  const answer = work()
  const took = worked() - begun
  if (took > patience) throw new Error(`${Math.round(took)} ms: ${what.slice(0, 500)}`)
  return answer
}
