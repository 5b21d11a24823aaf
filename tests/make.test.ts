import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { examples } from './gallery.ts'
import { openTools } from '../src/cli/tools.ts'
import { type Design, design } from '../src/design.ts'
import { checksum, formats, type MadeFile, make, partsOf, usual } from '../src/make.ts'
import { parse } from '../src/spec/parse.ts'
import { readSpec } from '../src/spec/read.ts'

const root = join(import.meta.dirname, '..')
const read = (document: unknown): Design => {
  const outcome = readSpec(document)
  if ('complaints' in outcome) throw new Error(JSON.stringify(outcome.complaints))
  return design(outcome.spec)
}
const written = (name: string): Uint8Array => readFileSync(join(root, 'tests/specimens', `${name}.yaml`))
const specimen = (name: string): Design => {
  const parsed = parse(new TextDecoder().decode(written(name)))
  if ('complaints' in parsed) throw new Error(JSON.stringify(parsed.complaints))
  return read(parsed.document)
}
const text = (file: MadeFile): string => new TextDecoder().decode(file.bytes)
const same = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0

describe('making', () => {
  it('gives the same bytes for the same spec, formats and parts in whatever order they are asked', async () => {
    const once = await make(specimen('winch-drum-gear'), { formats }, openTools())
    const again = await make(specimen('winch-drum-gear'), { formats: formats.toReversed() }, openTools())
    expect(again.map((file) => file.name)).toEqual(once.map((file) => file.name))
    for (const [at, file] of once.entries())
      expect(same(file.bytes, again[at]?.bytes ?? new Uint8Array()), file.name).toBe(true)
  })

  it('names every file once, by bare names that every computer takes', async () => {
    const files = await make(specimen('winch-drum-gear'), { formats }, openTools())
    const names = files.map((file) => file.name.toLowerCase())
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name).toMatch(/^[a-z0-9][a-z0-9.-]*$/)
  })

  it('makes what is asked for and nothing else', async () => {
    const worked = specimen('winch-drum-gear')
    const names = async (wanted: Parameters<typeof make>[1]) =>
      (await make(worked, wanted, openTools())).map((file) => file.name)
    expect(await names({ formats: [] })).toEqual(['report.json'])
    expect(await names({ formats: ['stl'], parts: ['guide-bushing'] })).toEqual(['report.json', 'guide-bushing.mm.stl'])
    expect(usual).not.toContain('dxf-live')
    expect(await names({ formats: ['html'] })).toEqual(['report.json', 'card.html'])
    expect(await names({ formats: ['pdf'] })).toEqual(['report.json', 'drawings.pdf', 'card.pdf', 'packet.pdf'])
    expect(await names({ formats: ['pdf'], parts: ['cutter-bar'] })).toEqual(['report.json', 'drawings.pdf'])
    expect((await names({})).some((name) => name.endsWith('.live.dxf'))).toBe(false)
  })

  it('opens kernel and fonts only when a format asks for them', async () => {
    const never = {
      kernel: () => Promise.reject(new Error('kernel opened')),
      fonts: () => Promise.reject(new Error('fonts opened')),
      faces: () => Promise.reject(new Error('faces opened')),
    }
    const files = await make(specimen('cider-mill-pulley'), { formats: ['svg', 'dxf', 'dxf-live', 'profile'] }, never)
    expect(files.length).toBeGreaterThan(6)
    await expect(make(specimen('cider-mill-pulley'), { formats: ['pdf'] }, never)).rejects.toThrow('fonts opened')
    await expect(make(specimen('cider-mill-pulley'), { formats: ['stl'] }, never)).rejects.toThrow('kernel opened')
    await expect(make(specimen('cider-mill-pulley'), { formats: ['html'] }, never)).rejects.toThrow('faces opened')
  })

  it('a part of what is broken is not to be made, of one piece or not; others only not yet', async () => {
    // A neck of 2.7 mm under 0.3 mm a pass.
    const broken = read({
      name: 'broken',
      units: 'mm',
      bore: { diameter: 6, length: 14 },
      hub: { outside: 20, material: 'alloy steel' },
      feature: { keyway: { width: 2, height: 2, across: 7 } },
      tooling: { bar: { form: 'one piece', infeed: 0.3, behind: 20 } },
    })
    expect(broken.findings.filter(({ verdict }) => verdict === 'fail').length).toBeGreaterThan(0)
    const band = async (part: string) =>
      text((await make(broken, { formats: ['svg'], parts: [part] }, openTools()))[1]!)
    expect(await band('ground-bar')).toMatch(/DO NOT MAKE: /)
    expect(await band('plug-gauge')).toMatch(/DO NOT MAKE YET, broken elsewhere: /)
  })

  it('a sheet keeps its number whichever parts are asked for', async () => {
    const worked = specimen('winch-drum-gear')
    const bit = async (wanted: Parameters<typeof make>[1]): Promise<string | undefined> =>
      (await make(worked, wanted, openTools())).filter((file) => file.name === 'tool-bit.svg').map(text)[0]
    const alone = await bit({ formats: ['svg'], parts: ['tool-bit'] })
    expect(alone).toBe(await bit({ formats: ['svg'] }))
  })
})

describe('the checksum', () => {
  const document = {
    name: 'pulley',
    units: 'mm',
    bore: { diameter: 24, length: 38 },
    feature: { keyway: { standard: 'iso-773' } },
  }

  it('is that of what was written, whatever the order of its names', async () => {
    const { name, ...rest } = document
    const sum = await checksum(read(document))
    expect(sum).toMatch(/^[0-9a-f]{8}$/)
    expect(await checksum(read({ ...rest, name }))).toBe(sum)
    expect(await checksum(read({ ...document, bore: { diameter: 24, length: 38.5 } }))).not.toBe(sum)
    // printf '%s' '{"document":{"bore":{"diameter":24,"length":38},"feature":{"keyway":{"standard":"iso-773"}},"name":"pulley","units":"mm"}}' | sha256sum
    expect(sum).toBe('410e480b')
  })

  it('stands on every sheet', async () => {
    const worked = read(document)
    const sum = await checksum(worked)
    const sheets = (await make(worked, { formats: ['svg'] }, openTools())).filter((file) => file.name.endsWith('.svg'))
    expect(sheets.length).toBeGreaterThanOrEqual(partsOf(worked).length)
    for (const sheet of sheets) expect(text(sheet), sheet.name).toContain(sum)
  })
})

// The gallery is the golden set. `npm run examples` remakes it; this never writes.
describe('output/examples', () => {
  const folder = join(root, 'output/examples')
  const shown = ['pdf', 'html', 'svg'] as const
  const all = new Set(['cider-mill-pulley', 'winch-drum-gear'])

  it('holds these and no others', () => {
    const names = [...examples.map(({ name }) => name), 'index.html', 'pictures']
    expect(readdirSync(folder).toSorted()).toEqual(names.toSorted())
  })

  for (const { name } of examples)
    it(`${name} is what is made now`, async () => {
      const files = await make(
        specimen(name),
        { formats: all.has(name) ? formats : shown, written: [{ name: 'spec.yaml', bytes: written(name) }] },
        openTools(),
      )
      const there = readdirSync(join(folder, name)).filter((file) => file !== 'manifest.json')
      expect(there.toSorted()).toEqual(files.map((file) => file.name).toSorted())
      const changed = files.filter(({ name: file, bytes }) => {
        const path = join(folder, name, file)
        return !existsSync(path) || !same(readFileSync(path), bytes)
      })
      expect(changed.map((file) => file.name)).toEqual([])
    })
})
