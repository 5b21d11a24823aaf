import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod/mini'
import { flagAs, keyed, lengthAs, maybe, wordAs } from '../../src/spec/leaf.ts'

const inner = () =>
  keyed('Within', { depth: () => lengthAs('A depth', [1]), side: maybe(() => wordAs('A side', ['near', 'far'])) })
const parts = {
  length: () => lengthAs('A length', [1]),
  play: maybe(() => lengthAs('A play', [0], { zero: true })),
  within: maybe(() => z.nullable(inner())),
  either: maybe(() => z.union([flagAs('Yes or no'), inner()], { error: 'yes, no, or a mapping' })),
  list: maybe(() => z.array(inner(), { error: 'a list' })),
}
const schema = keyed('All', parts)

/** The same by zod alone: every key made, and asked. */
const plain = () => {
  const innerPlain = () => {
    const shape = { depth: lengthAs('', []), side: z.optional(wordAs('', ['near', 'far'])) }
    return z.strictObject(shape, { error: 'a mapping with the keys depth, side' })
  }
  return z.strictObject(
    {
      length: lengthAs('', []),
      play: z.optional(lengthAs('', [], { zero: true })),
      within: z.optional(z.nullable(innerPlain())),
      either: z.optional(z.union([flagAs(''), innerPlain()], { error: 'yes, no, or a mapping' })),
      list: z.optional(z.array(innerPlain(), { error: 'a list' })),
    },
    { error: 'a mapping with the keys length, play, within, either, list' },
  )
}

const issuesOf = (read: { readonly error?: { readonly issues: unknown } | undefined }): unknown =>
  JSON.parse(JSON.stringify(read.error?.issues ?? null))

describe('a mapping', () => {
  it('is let through or complained of as it is where every key is asked', () => {
    const wrong = fc.constantFrom<unknown>(0, -1, 20_000, 'x', '', null, undefined, true, [], {}, 'near')
    const or = (...sound: readonly unknown[]) => fc.oneof({ weight: 6, arbitrary: fc.constantFrom(...sound) }, wrong)
    const size = or(1, '2 mm', '1/2 in')
    const within = fc.oneof(
      { weight: 6, arbitrary: fc.record({ depth: size, side: or('near', 'far') }, { requiredKeys: ['depth'] }) },
      fc.record({ depth: size, side: wrong, other: size }, { requiredKeys: [] }),
      wrong,
    )
    const some = {
      length: size,
      play: or(0, 1),
      within: fc.oneof(fc.constant(null), within),
      either: fc.oneof(fc.boolean(), within),
      list: fc.oneof(wrong, fc.array(within, { maxLength: 2 })),
    }
    const document = fc.oneof(
      { weight: 6, arbitrary: fc.record(some, { requiredKeys: ['length'] }) },
      fc.record({ ...some, bor: wrong }, { requiredKeys: [] }),
      wrong,
    )
    const whole = plain()
    const met = { sound: 0, wrong: 0 }
    fc.assert(
      fc.property(document, (value) => {
        const [read, expected] = [schema.safeParse(value), whole.safeParse(value)]
        met[read.success ? 'sound' : 'wrong'] += 1
        expect(issuesOf(read)).toEqual(issuesOf(expected))
      }),
      { seed: 11, numRuns: 2000 },
    )
    expect(Math.min(met.sound, met.wrong)).toBeGreaterThan(100)
  })

  it('makes nothing of a key that it does not state, and what it states once', () => {
    const made: string[] = []
    const noted = (name: string) => () => {
      made.push(name)
      return lengthAs(name, [1])
    }
    const few = keyed('Few', { one: noted('one'), two: maybe(noted('two')), three: maybe(noted('three')) })
    for (let times = 0; times < 3; times += 1) expect(few.safeParse({ one: 1, three: 3 }).success).toBe(true)
    expect(made).toEqual(['one', 'three'])
    expect(few.safeParse({ one: 0 }).success).toBe(false)
    expect(made).toEqual(['one', 'three', 'two'])
  })
})
