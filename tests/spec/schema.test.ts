import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { parse } from '../../src/spec/parse.ts'
import { schemaText } from '../../src/spec/schema-text.ts'
import { starterSpec } from '../../src/spec/starter.ts'
import { complaintsBy, least, specimen, specimenNames, specimenText, specOf } from './specimens.ts'

const ofEditors = z.fromJSONSchema(JSON.parse(schemaText()))

describe('the schema for editors', () => {
  it('stands in borewright.schema.json as it is now', () => {
    const file = join(import.meta.dirname, '../../borewright.schema.json')
    expect(readFileSync(file, 'utf8'), 'stale: npm run schema').toBe(schemaText())
  })

  it('describes every key', () => {
    const bare: string[] = []
    const look = (schema: Record<string, unknown>, path: string): void => {
      if (path !== '' && schema['description'] === undefined && schema['anyOf'] === undefined) bare.push(path)
      for (const part of (schema['anyOf'] ?? []) as Record<string, unknown>[])
        if (part['type'] === 'object') look(part, path)
      for (const [key, child] of Object.entries(
        (schema['properties'] ?? {}) as Record<string, Record<string, unknown>>,
      ))
        look(child, `${path}.${key}`)
    }
    look(JSON.parse(schemaText()) as Record<string, unknown>, '')
    expect(bare).toEqual([])
  })

  it.each(specimenNames)('accepts %s', (name) => {
    expect(ofEditors.safeParse(specimen(name)).error).toBeUndefined()
  })

  it.each([
    ['an unknown key', { ...least(), bor: {} }],
    ['no feature', least({ feature: {} })],
    ['no units', { ...least(), units: undefined }],
    ['another form of bar', least({ tooling: { bar: { form: 'two screws' } } })],
    ['a list for a length', least({ bore: { diameter: [24], length: 38 } })],
  ])('refuses %s', (_, document) => {
    expect(ofEditors.safeParse(document).success).toBe(false)
  })
})

describe('specimens', () => {
  it.each(specimenNames)('%s is read, says that it is invented, names the schema, and is called what it is', (name) => {
    expect(specOf(specimen(name)).name).toBe(name.replace('.yaml', ''))
    expect(specimenText(name)).toMatch(
      /^# yaml-language-server: \$schema=\.\.\/\.\.\/borewright\.schema\.json\n# Invented data/,
    )
  })
})

describe('the starter spec', () => {
  const read = (text: string): unknown => {
    const parsed = parse(text)
    return 'document' in parsed ? parsed.document : parsed.complaints
  }
  it.each(['mm', 'in'] as const)('in %s reads without complaint and names the schema', (units) => {
    const text = starterSpec(units)
    expect(complaintsBy(read(text))).toEqual({})
    expect(specOf(read(text)).units).toBe(units)
    expect(text).toMatch(/^# yaml-language-server: \$schema=borewright\.schema\.json\n/)
    expect(ofEditors.safeParse(read(text)).error).toBeUndefined()
  })

  // Every example under a # must be one that works, one block at a time.
  it.each(['mm', 'in'] as const)('in %s keeps its promises when a line is brought to life', (units) => {
    const live = (text: string): string =>
      text
        .replace(/^( *)# (measured|outside|fit|at|load|use): /gm, '$1$2: ')
        .replace(/^# (tooling:\n(?:#   .*\n)+)/m, (block) => block.replace(/^# /gm, ''))
    const spec = specOf(read(live(starterSpec(units))))
    expect(spec.stated).toEqual(
      expect.arrayContaining([
        'bore.measured',
        'hub.outside',
        'load.torque',
        'tooling.press.broach.teeth',
        'tooling.bar.screw',
        'use',
        'feature.keyway.at',
      ]),
    )
    const byHand = starterSpec(units)
      .replace(/ {2}keyway:\n {4}standard: .*\n/, '')
      .replace('# keyway: {', 'keyway: {')
    expect(specOf(read(byHand)).feature).not.toHaveProperty('standard')
    expect(specOf(read(starterSpec(units).replace('# blind', 'blind'))).bore.blind).toBeDefined()
  })

  // Every example has to belong to the bore that was asked for, from small to large.
  it.each([
    ['mm', '8'],
    ['mm', '35,5'],
    ['mm', '100'],
    ['in', '7/16'],
    ['in', '1-1/2'],
    ['in', '4'],
  ] as const)('in %s has examples that follow a bore of %s', (units, diameter) => {
    const text = starterSpec(units, { diameter })
    const stated = specOf(
      read(
        text
          .replace(/^( *)# (measured|outside): /gm, '$1$2: ')
          .replace(/^# (tooling:\n(?:#   .*\n)+)/m, (block) => block.replace(/^# /gm, '')),
      ),
    )
    const bore = stated.bore.diameter.nominal
    expect((stated.bore.measured ?? 0) - bore).toBeGreaterThan(0)
    expect((stated.bore.measured ?? 0) - bore).toBeLessThan(0.02)
    expect(stated.hub.outside ?? 0).toBeGreaterThan(2 * bore)
    const bar = Number(stated.tooling.bar?.diameter ?? 0)
    expect(bar).toBeGreaterThan(0.5 * bore * (bore > 90 ? 0.9 : 1))
    expect(bar).toBeLessThan(0.8 * bore)
    const byHand = specOf(read(text.replace(/ {2}keyway:\n {4}standard: .*\n/, '').replace('# keyway: {', 'keyway: {')))
    expect(byHand.feature).not.toHaveProperty('standard')
    expect(byHand.bore.diameter.nominal).toBeCloseTo(bore, 9)
  })

  it.each([
    ['mm', '8'],
    ['mm', '23'],
    ['mm', '100'],
    ['in', '7/16'],
    ['in', '4'],
  ] as const)('in %s has every other feature for a bore of %s', (units, diameter) => {
    const text = starterSpec(units, { diameter })
    for (const kind of ['spline', 'socket', 'slit', 'groove']) {
      const other = text.replace(/ {2}keyway:\n {4}standard: .*\n/, '').replace(`  # ${kind}: {`, `  ${kind}: {`)
      expect(specOf(read(other)).feature.kind).toBe(kind)
    }
  })

  it('takes answers as they are given', () => {
    const text = starterSpec('in', {
      name: '1234',
      diameter: '1 1/2"',
      length: '2-1/4',
      material: 'gray iron',
      schema: '/a b/s.json',
    })
    expect(specOf(read(text))).toMatchObject({
      name: '1234',
      bore: { diameter: { nominal: 38.1 }, length: 57.15 },
      hub: { material: 'grey iron' },
    })
    expect(text).toMatch(/^# yaml-language-server: \$schema=\/a%20b\/s\.json\n/)
  })
})
