import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAny } from '../../src/cli/any-line.ts'
import { readLine, readPlain } from '../../src/cli/line.ts'
import { exits, type Verb } from '../../src/cli/verb.ts'

const make: Verb = {
  name: 'make',
  takes: 'SPEC...',
  things: [1, Number.POSITIVE_INFINITY],
  says: 'make things',
  flags: [
    { name: 'to', takes: 'DIR', says: 'where' },
    { name: 'formats', takes: 'LIST', says: 'which', among: ['pdf', 'dxf', 'svg'], many: true },
    { name: 'anyway', says: 'all the same' },
  ],
  run: async () => exits.sound,
}
const read = (...words: string[]) => readLine(words, [make], { version: '1.2.3', width: 100 })
const asked = async (...words: string[]) => {
  const line = await read(...words)
  if (line.is !== 'verb') throw new Error(JSON.stringify(line))
  return line.asked
}
const wrong = async (...words: string[]): Promise<string> => {
  const line = await read(...words)
  if (line.is !== 'wrong') throw new Error(JSON.stringify(line))
  return line.wrong
}

describe('a command line', () => {
  it('is a verb, its things and its flags, in any order', async () => {
    for (const words of [
      ['make', 'a.yaml', '--to', 'out', 'b.yaml', '--anyway', '--formats', 'pdf, dxf'],
      ['make', '--formats=pdf,dxf', '--anyway', '--to=out', 'a.yaml', 'b.yaml'],
    ]) {
      const { things, switches, words: given } = await asked(...words)
      expect(things).toEqual(['a.yaml', 'b.yaml'])
      expect([...switches]).toEqual(['anyway'])
      expect(Object.fromEntries(given)).toEqual({ to: ['out'], formats: ['pdf', 'dxf'] })
    }
  })

  it('keeps numbers as they were written', async () => {
    expect((await asked('make', '1.50', '007')).things).toEqual(['1.50', '007'])
  })

  it('after -- everything is a thing', async () => {
    expect((await asked('make', '--', '--anyway')).things).toEqual(['--anyway'])
  })

  it('a verb that is none is told, with the one that was meant', async () => {
    expect(await wrong('maek', 'a.yaml')).toContain("'maek' is no verb of borewright. Did you mean 'make'?")
    expect(await wrong('polish')).toContain("'polish' is no verb of borewright.\n")
    expect(await wrong()).toContain('Say what to do.')
  })

  it('a flag that is none is told, with the one that was meant', async () => {
    expect(await wrong('make', 'a.yaml', '--formts', 'pdf')).toContain(
      "has no flag --formts. Did you mean '--formats'?",
    )
    expect(await wrong('make', 'a.yaml', '-q')).toContain('has no flag -q.')
  })

  it('a word that a flag does not take is told, with the one that was meant', async () => {
    expect(await wrong('make', 'a.yaml', '--formats', 'pdf,dxff')).toContain(
      "does not know 'dxff'. Did you mean 'dxf'?",
    )
    expect(await wrong('make', 'a.yaml', '--to')).toContain('--to wants DIR after it.')
    expect(await wrong('make', 'a.yaml', '--formats', ',')).toContain('--formats wants LIST after it.')
  })

  it('a flag with a word is given once', async () => {
    expect(await wrong('make', 'a.yaml', '--to', 'x', '--to=y')).toContain('--to is given twice: once is enough.')
    expect((await asked('make', '--to', 'x', '--', '--to')).things).toEqual(['--to'])
  })

  it('too few things are told', async () => {
    expect(await wrong('make')).toContain("'make' wants SPEC...")
  })

  it('shows its help and its version', async () => {
    const help = await read('--help')
    expect(help.is === 'text' && help.text).toContain('make things')
    const inner = await read('make', '--help')
    expect(inner.is === 'text' && inner.text).toContain('which (pdf, dxf, svg)')
    const version = await read('--version')
    expect(version.is === 'text' && version.text).toBe('1.2.3')
  })
})

describe('a plain line', () => {
  const about = { version: '1.2.3', width: 100 }

  it('is read as any line is', () => {
    const word = fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom('a.yaml', '--to', '--to=out', '--formats', 'pdf,dxf', '--anyway') },
      fc.constantFrom('--formats=svg', '--to=', '--to=a=b', '--anyway=false', '--no-anyway', '--help', '--version'),
      fc.constantFrom('help', 'version', 'make', 'true', 'false', '-', '--', '---', '', '-q', '-5', '1.50', '0x1'),
      fc.constantFrom(
        "'a b'",
        '"a"',
        '--to="a"',
        'a b',
        'a\nb',
        '--to=a\nb',
        '__proto__',
        '--__proto__',
        '--to.a',
        'ä',
      ),
      fc.string({ maxLength: 6 }),
    )
    let plain = 0
    fc.assert(
      fc.property(fc.array(word, { maxLength: 6 }), (rest) => {
        const words = ['make', ...rest]
        const read = readPlain(words, [make])
        if (read === undefined) return
        plain += 1
        const { asked, help } = readAny(words, [make], about)
        expect(help).toBe('')
        const { $0: _, ...all } = asked
        expect(Object.entries(read)).toEqual(Object.entries(all))
      }),
      { seed: 7, numRuns: 1000 },
    )
    expect(plain).toBeGreaterThan(100)
  })

  it('is what is usually written', () => {
    expect(readPlain(['make', 'a.yaml', 'b.yaml', '--to', 'out', '--anyway'], [make])).toEqual({
      _: ['make', 'a.yaml', 'b.yaml'],
      to: 'out',
      anyway: true,
    })
    for (const words of [[], ['--help'], ['maek'], ['make', 'help'], ['make', '--to'], ['make', '--to', 'x', '--to=y']])
      expect(readPlain(words, [make]), words.join(' ')).toBeUndefined()
  })
})
