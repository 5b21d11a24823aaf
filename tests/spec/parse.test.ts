import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from '../../src/spec/parse.ts'
import { tell } from '../../src/spec/print.ts'

const told = (text: string): readonly string[] => {
  const read = parse(text)
  return 'complaints' in read ? read.complaints.map(tell) : []
}

describe('a text as plain data', () => {
  it('reads YAML and JSON alike', () => {
    const document = { name: 'a', bore: { diameter: '7/8', length: 1.5 }, at: [0, 90] }
    expect(parse('name: a\nbore: { diameter: 7/8, length: 1.5 }\nat: [0, 90]\n')).toEqual({ document })
    expect(parse(JSON.stringify(document))).toEqual({ document })
    expect(parse(`\uFEFF${JSON.stringify(document, null, 2).replaceAll('\n', '\r\n')}`)).toEqual({ document })
  })

  it('keeps a fraction, a decimal comma and a drill as texts', () => {
    expect(parse('[1-3/8, "12,5 mm", "#7", 5/8", 1 3/8]')).toEqual({
      document: ['1-3/8', '12,5 mm', '#7', '5/8"', '1 3/8'],
    })
  })

  it.each([
    ['a: 1\nb: 2\na: 3', 'line 3, column 1: read the key a a second time; accepted: each key once'],
    ['a: 0x10', 'line 1, column 4: read 0x10; accepted: a decimal number'],
    ['a: 0o17', 'line 1, column 4: read 0o17; accepted: a decimal number'],
    ['a: 1\n---\nb: 2', 'line 2, column 1: read a second document; accepted: one document, one job'],
    ['a: !!str 1', 'line 1, column 10: read the tag tag:yaml.org,2002:str'],
    ['{ "__proto__": { "polluted": true } }', 'line 1, column 3: read the key __proto__'],
    ['constructor: 1', 'line 1, column 1: read the key constructor'],
    ['? [a, b]\n: 1', 'a key that is no word'],
    ['a: [1, 2', 'line 1, column 9: read '],
    ['a: b: c', 'line 1, column 4: read '],
    ['a: *nobody', 'Unresolved alias'],
    [`${'['.repeat(25)}${']'.repeat(25)}`, 'read nested too deep; accepted: mappings and lists at most 20 deep'],
  ])('%j is refused', (text, complaint) => {
    expect(told(text).join('\n')).toContain(complaint)
  })

  it('lets a few aliases stand and refuses a flood of them', () => {
    expect(parse('a: &x [1, 2]\nb: *x')).toEqual({ document: { a: [1, 2], b: [1, 2] } })
    const flood = Array.from({ length: 30 }, (_, n) => `b${n + 1}: &b${n + 1} [*b${n}, *b${n}]`)
    expect(told(['b0: &b0 [1]', ...flood].join('\n')).join()).toContain('alias')
  })

  it('answers texts made to choke a parser, at once', () => {
    const [long, started] = [200_000, performance.now()]
    for (const part of ['[', '{a: ', '- ', '? ', 'a: ', '"', '&a ', '!a ', '*a '])
      expect(told(part.repeat(long / part.length)).length).toBeGreaterThan(0)
    expect(told('x'.repeat(200_001))).toEqual([
      'the spec: read 200001 characters; accepted: a spec of at most 200000 characters',
    ])
    expect(performance.now() - started).toBeLessThan(20_000)
  })

  it('comments may hold brackets, however many', () => {
    expect(parse(`${'# [ {\n'.repeat(300)}a: 1`)).toEqual({ document: { a: 1 } })
  })

  it('never throws', () => {
    const bits = fc.constantFrom(
      'a',
      ':',
      ' ',
      '\n',
      '-',
      '[',
      ']',
      '{',
      '}',
      '"',
      "'",
      '#',
      '&a',
      '*a',
      '!',
      '|',
      '>',
      '?',
      '%',
      ',',
      '1',
      '\t',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(bits, { maxLength: 60 }).map((all) => all.join('')),
        ),
        (text) => {
          const read = parse(text)
          expect('complaints' in read ? read.complaints.length > 0 : 'document' in read).toBe(true)
        },
      ),
      { numRuns: 500 },
    )
  })
})

describe('a decimal comma inside braces', () => {
  it.each([
    ['bore: { diameter: 24,5, length: 38 }', '24,5'],
    ['{ "bore": { length: 38, diameter: 24,012 } }', '24,012'],
    ['bore: { diameter: 24,5 mm }', '24,5 mm'],
  ])('%s is told by what was meant', (text, meant) => {
    const read = parse(text)
    expect(read).toMatchObject({
      complaints: [{ read: meant, accepted: `a decimal comma inside braces needs quotes: "${meant}"` }],
    })
  })

  it('in quotes it is a number, and two keys beside one another are no comma', () => {
    expect(parse('{ a: "24,5", b: 3 }')).toEqual({ document: { a: '24,5', b: 3 } })
    expect(parse('{ a: 24, b: }')).toEqual({ document: { a: 24, b: null } })
  })

  it('says what to type in place of the commonest slips', () => {
    const accepted = (text: string) => {
      const read = parse(text)
      return 'complaints' in read ? read.complaints.map((each) => each.accepted).join(' ') : 'read'
    }
    expect(accepted('bore:\n\tdiameter: 3\n')).toContain('spaces before each line')
    expect(accepted('name:k\nunits:mm\nbore: { diameter: 3 }\n')).toContain('a colon and a space after each key')
    expect(accepted('name: [a\n')).toBe('YAML or JSON')
  })
})
