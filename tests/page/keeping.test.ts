import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { invented } from '../../src/page/invented.ts'
import { packed, unpacked } from '../../src/page/workers/link.ts'
import { rewritten } from '../../src/page/workers/rewritten.ts'
import { parse } from '../../src/spec/parse.ts'
import { patchDocument, readSpec } from '../../src/spec/read.ts'

const specimens = join(import.meta.dirname, '../specimens')
const texts = readdirSync(specimens)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => [name, readFileSync(join(specimens, name), 'utf8')] as const)

const document = (text: string): unknown => {
  const read = parse(text)
  if (!('document' in read)) throw new Error(read.complaints.map(({ read: found }) => found).join())
  return read.document
}

describe('a spec kept', () => {
  it('is untouched where nothing changed', () => {
    for (const [name, text] of texts) expect([name, rewritten(text, document(text))]).toEqual([name, text])
  })

  it('read again, it is what it was brought to, whatever is changed', () => {
    const leaf = fc.oneof(
      fc.float({ min: 1, max: 99, noNaN: true }).map((number) => Number(number.toFixed(2))),
      fc.constantFrom(
        '15/16 in',
        '12,5 mm',
        '#7',
        '1-3/8',
        'grey iron',
        'true',
        'null',
        '24',
        ': x',
        '- y',
        '# z',
        '"',
      ),
      fc.constant(null),
    )
    const path = fc.constantFrom(
      'bore.diameter',
      'bore.blind.beyond',
      'hub.outside',
      'hub.material',
      'load.torque',
      'tooling.bar.nose.width',
      'tooling.press.force',
      'feature.keyway.at',
      'use',
    )
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.array(fc.tuple(path, leaf), { minLength: 1, maxLength: 4 }),
        ([, text], sets) => {
          const now = sets.reduce<unknown>((here, [at, value]) => patchDocument(here, { [at]: value }), document(text))
          const sorted = (value: unknown): unknown =>
            JSON.parse(JSON.stringify(value), (_, each: unknown) =>
              typeof each === 'object' && each !== null && !Array.isArray(each)
                ? Object.fromEntries(Object.entries(each).toSorted(([a], [b]) => (a < b ? -1 : 1)))
                : each,
            )
          expect(sorted(document(rewritten(text, now)))).toEqual(sorted(now))
        },
      ),
    )
  })

  it('keeps notes, order and braces around what is changed', () => {
    const text =
      'name: a # the name\nunits: mm\nbore: { diameter: 24, length: 38 } # as drawn\n# and so on\nfeature:\n  keyway: {}\n'
    expect(rewritten(text, patchDocument(document(text), { 'bore.length': '1-1/2 in' }))).toBe(
      text.replace('38', '1-1/2 in'),
    )
    expect(rewritten(text, patchDocument(document(text), { 'hub.outside': 62 }))).toBe(`${text}hub:\n  outside: 62\n`)
  })

  it('a mapping that another one repeats is not changed with it', () => {
    const text = 'name: a\nunits: mm\nbore: &b { diameter: 24, length: 38 }\nhub: *b\nfeature: { keyway: {} }\n'
    const now = patchDocument(document(text), { 'hub.length': 40 })
    expect(document(rewritten(text, now))).toEqual(now)
  })
})

describe('a job in an address', () => {
  it('comes back as it went, in letters that an address may hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.option(fc.string(), { nil: undefined }), (text, shop) => {
        const letters = packed({ text, ...(shop !== undefined && { shop }) })
        expect(letters).toMatch(/^[\w-]+$/)
        // Halves of letters that no text can hold come back as the sign for what cannot be read.
        const whole = (one: string): string => new TextDecoder().decode(new TextEncoder().encode(one))
        expect(unpacked(letters)).toEqual({ text: whole(text), ...(shop !== undefined && { shop: whole(shop) }) })
      }),
    )
  })

  it('is short for every specimen', () => {
    for (const [name, text] of texts) expect([name, packed({ text }).length < 1500]).toEqual([name, true])
  })

  it('what is no job is none, however long it would unfold', () => {
    for (const address of ['', 'A', '%%%', 'AAAA', 'x'.repeat(300_000)]) expect(unpacked(address)).toBe(undefined)
    expect(unpacked(packed({ text: ' '.repeat(3_000_000) }))).toBe(undefined)
    fc.assert(fc.property(fc.string(), (address) => void unpacked(address)))
  })
})

describe('invented jobs', () => {
  for (const [name, text] of Object.entries(invented))
    it(`${name} can be read, is called so and says that it is invented`, () => {
      expect(text).toMatch(/^# Invented/)
      const read = readSpec(document(text))
      expect('spec' in read && read.spec.name).toBe(name)
    })
})
