import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { inspect } from 'node:util'
import { describe, expect, it } from 'vitest'
import { parse } from '../../src/spec/parse.ts'
import { type Answer, answered, answeredData, inTime } from './answered.ts'
import { drawnShops, drawnSpecs, struckOut } from './drawn.ts'
import { all, texts } from './hostile.ts'
import { placesOf, withAt } from './places.ts'
import { thorough } from '../thorough.ts'

// The same every time; another seed looks for new ones.
const seed = 20

const specimens = join(import.meta.dirname, '../specimens')
const files = readdirSync(specimens).filter((name) => name.endsWith('.yaml'))
const written = files.map((name) => ({ name, text: readFileSync(join(specimens, name), 'utf8') }))
const shown = (value: unknown): string => inspect(value, { depth: 8, breakLength: Number.POSITIVE_INFINITY })

const tally = (): { readonly count: (answer: Answer) => void; readonly of: Record<Answer['is'], number> } => {
  const of = { complaint: 0, broken: 0, made: 0 }
  return { of, count: ({ is }) => void (of[is] += 1) }
}

describe('specimens with something else at one place', () => {
  it.each(written)(
    '$name: complained of, refused or made, in time, every number finite',
    { timeout: 180_000 },
    ({ text }) => {
      const read = parse(text)
      if (!('document' in read)) throw new Error('a specimen that cannot be read')
      const { of, count } = tally()
      const hostile = all()
      // What changes nothing but a word need not be worked out sixty times over.
      const cases = placesOf(read.document).flatMap((place, n) => {
        const idle = ['name', 'use'].includes(String(place[0]))
        return hostile
          .filter((_, at) => (idle ? at % 30 === n % 30 : at % 8 === n % 8))
          .map((value) => ({ place, value }))
      })
      for (const { place, value } of cases)
        count(inTime(() => answeredData(withAt(read.document, place, value)), `${place.join('.')} = ${shown(value)}`))
      expect(of.complaint).toBeGreaterThan(50)
      expect(of.broken + of.made).toBeGreaterThan(0)
    },
  )
})

describe('specimens with bytes changed', () => {
  it('hundreds of them: answered in time', { timeout: 180_000 }, () => {
    const { of, count } = tally()
    const bits = fc.oneof(
      fc.constantFrom(
        ...texts,
        '\t',
        '\r',
        '\r\n',
        '- ',
        ': ',
        '{',
        '}',
        '[',
        ']',
        '"',
        '&a',
        '*a',
        '!!js/function',
        '<<: ',
        '.inf',
        '-.inf',
        '.nan',
        '1e308',
        '-',
      ),
      fc.string({ unit: 'binary', maxLength: 3 }),
    )
    const changed = fc
      .record({
        text: fc.constantFrom(...written.map((each) => each.text)),
        edits: fc.array(fc.record({ at: fc.nat(2000), drop: fc.nat(12), put: bits }), { minLength: 1, maxLength: 4 }),
      })
      .map(({ text, edits }) =>
        edits.reduce((now, { at, drop, put }) => {
          const place = at % (now.length + 1)
          return now.slice(0, place) + put + now.slice(place + drop)
        }, text),
      )
    for (const text of fc.sample(changed, { seed, numRuns: thorough ? 2000 : 300 }))
      count(inTime(() => answered(text), text))
    expect(of.complaint).toBeGreaterThan(150)
    expect(of.broken + of.made).toBeGreaterThan(5)
  })
})

describe('specs drawn from the schema', () => {
  it('with something in them that nobody should write: answered in time', { timeout: 180_000 }, () => {
    const { of, count } = tally()
    for (const document of fc.sample(drawnSpecs(fc.constantFrom(...all())), { seed, numRuns: 120 }))
      count(inTime(() => answeredData(document), shown(document)))
    expect(of.complaint).toBeGreaterThan(60)
  })

  it('with a shop file likewise', { timeout: 180_000 }, () => {
    const { count } = tally()
    const parsed = parse(written.find(({ name }) => name.startsWith('cider'))?.text ?? '')
    if (!('document' in parsed)) throw new Error('a specimen that cannot be read')
    const spec = withAt(parsed.document, ['shop'], 'shop.yaml')
    const kinds = { complaint: 0, broken: 0, made: 0 }
    const shops = [drawnShops(), drawnShops(fc.constantFrom(...all()))]
    for (const shop of shops.flatMap((drawn) => fc.sample(drawn, { seed, numRuns: 30 }))) {
      const answer = inTime(() => answeredData(spec, shop), shown(shop))
      count(answer)
      kinds[answer.is] += 1
    }
    expect(kinds.complaint).toBeGreaterThan(20)
    expect(kinds.made + kinds.broken).toBeGreaterThan(5)
  })

  it('and struck out until they can be read: refused or made, of every feature and in both units', {
    timeout: 180_000,
  }, () => {
    const met = new Set<string>()
    for (const drawn of fc.sample(drawnSpecs(), { seed, numRuns: 100 })) {
      const left = struckOut(drawn)
      if (!left) continue
      const answer = inTime(() => answeredData(left.document), shown(left.document))
      if (answer.is !== 'complaint') met.add(answer.design.section.kind).add(answer.design.spec.units)
    }
    expect([...met].toSorted()).toEqual(['groove', 'in', 'keyway', 'mm', 'slit', 'socket', 'spline'])
  })
})
