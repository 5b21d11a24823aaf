import { describe, expect, it } from 'vitest'
import { readLine } from '../../src/cli/line.ts'
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
const asked = (...words: string[]) => {
  const line = read(...words)
  if (line.is !== 'verb') throw new Error(JSON.stringify(line))
  return line.asked
}
const wrong = (...words: string[]): string => {
  const line = read(...words)
  if (line.is !== 'wrong') throw new Error(JSON.stringify(line))
  return line.wrong
}

describe('a command line', () => {
  it('is a verb, its things and its flags, in any order', () => {
    for (const words of [
      ['make', 'a.yaml', '--to', 'out', 'b.yaml', '--anyway', '--formats', 'pdf, dxf'],
      ['make', '--formats=pdf,dxf', '--anyway', '--to=out', 'a.yaml', 'b.yaml'],
    ]) {
      const { things, switches, words: given } = asked(...words)
      expect(things).toEqual(['a.yaml', 'b.yaml'])
      expect([...switches]).toEqual(['anyway'])
      expect(Object.fromEntries(given)).toEqual({ to: ['out'], formats: ['pdf', 'dxf'] })
    }
  })

  it('keeps numbers as they were written', () => {
    expect(asked('make', '1.50', '007').things).toEqual(['1.50', '007'])
  })

  it('after -- everything is a thing', () => {
    expect(asked('make', '--', '--anyway').things).toEqual(['--anyway'])
  })

  it('a verb that is none is told, with the one that was meant', () => {
    expect(wrong('maek', 'a.yaml')).toContain("'maek' is no verb of borewright. Did you mean 'make'?")
    expect(wrong('polish')).toContain("'polish' is no verb of borewright.\n")
    expect(wrong()).toContain('Say what to do.')
  })

  it('a flag that is none is told, with the one that was meant', () => {
    expect(wrong('make', 'a.yaml', '--formts', 'pdf')).toContain("has no flag --formts. Did you mean '--formats'?")
    expect(wrong('make', 'a.yaml', '-q')).toContain('has no flag -q.')
  })

  it('a word that a flag does not take is told, with the one that was meant', () => {
    expect(wrong('make', 'a.yaml', '--formats', 'pdf,dxff')).toContain("does not know 'dxff'. Did you mean 'dxf'?")
    expect(wrong('make', 'a.yaml', '--to')).toContain('--to wants DIR after it.')
    expect(wrong('make', 'a.yaml', '--formats', ',')).toContain('--formats wants LIST after it.')
  })

  it('a flag with a word is given once', () => {
    expect(wrong('make', 'a.yaml', '--to', 'x', '--to=y')).toContain('--to is given twice: once is enough.')
    expect(asked('make', '--to', 'x', '--', '--to').things).toEqual(['--to'])
  })

  it('too few things are told', () => {
    expect(wrong('make')).toContain("'make' wants SPEC...")
  })

  it('shows its help and its version', () => {
    const help = read('--help')
    expect(help.is === 'text' && help.text).toContain('make things')
    const inner = read('make', '--help')
    expect(inner.is === 'text' && inner.text).toContain('which (pdf, dxf, svg)')
    const version = read('--version')
    expect(version.is === 'text' && version.text).toBe('1.2.3')
  })
})
