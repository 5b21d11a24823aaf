import { describe, expect, it } from 'vitest'
import { parse } from '../../src/spec/parse.ts'
import { answered, answeredData, inTime } from './answered.ts'

/** As long as a spec may be at all, characters. */
const most = 200_000
const filled = (part: string): string => part.repeat(Math.floor((most - 1000) / part.length))
const job = 'name: a\nunits: mm\nbore: { diameter: 24, length: 38 }\nfeature: { keyway: }\n'
const lines = (text: string): readonly string[] => {
  const answer = inTime(() => answered(text), text.slice(0, 60))
  return answer.is === 'complaint' ? answer.lines : []
}

describe('a text as long as a spec may be', () => {
  it.each([
    ['a list of words where sizes are wanted', `${job}shop: { drills: [${filled('a,')}] }`],
    ['a list of sizes beyond counting', `${job}shop: { bars: [${filled('8,')}] }`],
    ['mappings in a list', `${job}shop: { bits: [${filled('{},')}] }`],
    ['angles beyond counting', job.replace('keyway:', `keyway: { at: [${filled('1,')}] }`)],
    ['keys that nobody knows', job + Array.from({ length: 12_000 }, (_, n) => `k${n}: 1`).join('\n')],
    ['keys near to known ones', job + Array.from({ length: 12_000 }, (_, n) => `shp${n}: 1`).join('\n')],
    ['keys of digits', `${job}hub: { ${Array.from({ length: 12_000 }, (_, n) => `${n}: 1`).join(', ')} }`],
    ['one long word', job.replace('name: a', `name: ${filled('x')}`)],
    ['one long number', job.replace('24', filled('9'))],
    ['blanks', job + filled(' ')],
    ['line ends', job + filled('\n')],
    ['a long use', `${job}use: ${filled('🔧')}`],
    ['a key as long', `${job}${filled('k')}: 1`],
    ['a heap of anchors', `${job}use: [${filled('&a a,')}]`],
    ['comments', job + filled('# \u0000\n')],
  ])('%s: answered at once', (_, text) => {
    const told = lines(text)
    for (const line of told) expect(line.length).toBeLessThan(1000)
    expect(told.length).toBeLessThanOrEqual(100)
  })

  it.each([
    ['brackets', '['],
    ['braces', '{a: '],
    ['dashes', '- '],
    ['questions', '? '],
    ['quotes', '"'],
    ['anchors', '&a '],
    ['tags', '!a '],
    ['aliases', '*a '],
    ['block scalars', '|\n '],
    ['documents', '---\n'],
    ['directives', '%YAML 1.2\n'],
    ['keys', 'a:\n'],
    ['commas', ','],
    ['carriage returns', '\r'],
    ['null bytes', '\u0000'],
    ['tabs', '\t'],
    ['line separators', '\u2028'],
    ['half pairs', '\ud800'],
  ])('%s and nothing else: answered at once', (_, part) => {
    expect(inTime(() => parse(filled(part)), part)).toBeTypeOf('object')
  })
})

describe('aliases', () => {
  it('that multiply are refused, not unfolded', () => {
    const flood = Array.from({ length: 30 }, (_, n) => `b${n + 1}: &b${n + 1} [*b${n},*b${n},*b${n},*b${n},*b${n}]`)
    expect(lines(['b0: &b0 [lol]', ...flood, job].join('\n')).join()).toContain('alias')
    expect(lines(`a: &a [*a]\n${job}`).length).toBeGreaterThan(0)
    expect(lines(`${job}hub: &h\n  outside: *h\n`).length).toBeGreaterThan(0)
  })

  it('and merge keys do not slip anything in', () => {
    expect(lines(`${job}x: &x { outside: 40 }\nhub: { <<: *x }`).join()).toContain('<<')
  })
})

describe('keys by which a document could reach into its reader', () => {
  it('are refused as text, and do nothing as data', () => {
    for (const key of ['__proto__', 'constructor', 'prototype', '"__proto__"', "'constructor'"])
      expect(lines(`${job}hub: { ${key}: { outside: 40 } }`).length).toBeGreaterThan(0)
    answeredData(JSON.parse('{ "__proto__": { "units": "mm", "polluted": 1 }, "name": "a" }'))
    answeredData(JSON.parse('{ "name": "a", "units": "mm", "hub": { "__proto__": { "polluted": 1 } } }'))
    answeredData(JSON.parse('{ "name": "a", "units": "mm", "constructor": { "prototype": { "polluted": 1 } } }'))
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('of other kinds of thing are no way round either', () => {
    for (const key of ['toString', 'valueOf', 'hasOwnProperty', 'length', 'then', 'toJSON', '$schema'])
      for (const value of ['1', '{}', '[]', 'null'])
        expect(inTime(() => answered(`${job}hub: { ${key}: ${value} }\n${key}: ${value}`), key).is).toBe('complaint')
  })
})
