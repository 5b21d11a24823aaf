import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { called, has, ofExamples, packages, type Program, python, said } from './programs.ts'
import { thorough } from '../thorough.ts'

/** The examples as programs read them that are not ours. A program that is not here is passed over, and the run says which. */

const scratch = mkdtempSync(join(tmpdir(), 'borewright-read-'))
afterAll(() => rmSync(scratch, { recursive: true, force: true }))

const missing = (program: string, of: string): void =>
  it.skip(`SKIPPED: ${program} is missing here: apt-get install ${of}`, () => undefined)
const where = (program: Program, tests: () => void): void => {
  describe(program, () => {
    if (has(program)) tests()
    else {
      console.warn(`SKIPPED: ${program} is missing here: apt-get install ${packages[program]}`)
      missing(program, packages[program])
    }
  })
}

const number = (text: string, pattern: RegExp): number => Number(pattern.exec(text)?.[1] ?? Number.NaN)

/** Sizes along x, y, z, mm. */
type Sizes = readonly [number, number, number]
const bySlicer = (info: string): Sizes =>
  ['x', 'y', 'z'].map((axis) => number(info, new RegExp(`size_${axis} = ([-\\d.]+)`))) as unknown as Sizes
const byMesh = (info: string): Sizes =>
  ['X', 'Y', 'Z'].map((axis) => {
    const [, least, most] = new RegExp(`Min ${axis} = +([-\\d.]+), Max ${axis} = +([-\\d.]+)`).exec(info) ?? []
    return Number(most) - Number(least)
  }) as unknown as Sizes

/** Quick to slice: whether it can be is asked here, not how well it prints. */
const coarse = ['--layer-height', '0.3', '--fill-density', '0', '--perimeters', '1', '--top-solid-layers', '0']

/** Parts of metal: everything else is printed, and must slice. */
const ofMetal = /^(?:cutter-bar|ground-bar|tool-bit|guide-bushing|shim-pack)\b/

where('admesh', () => {
  it.each(ofExamples('.stl').map((path) => [called(path), path]))(
    '%s: nothing to repair, in millimetres',
    async (_, path = '') => {
      const told = await said('admesh', [path])
      const count = (what: string): number => number(told, new RegExp(`${what} *: +(\\d+)`))
      expect(told).toContain('millimetres')
      expect(
        Object.fromEntries(
          [
            'Total disconnected facets',
            'Degenerate facets',
            'Edges fixed',
            'Facets removed',
            'Facets added',
            'Facets reversed',
            'Backwards edges',
          ].map((what) => [what, count(what)]),
        ),
      ).toEqual({
        'Total disconnected facets': 0,
        'Degenerate facets': 0,
        'Edges fixed': 0,
        'Facets removed': 0,
        'Facets added': 0,
        'Facets reversed': 0,
        'Backwards edges': 0,
      })
      // Of a sliver the file's four-byte numbers turn the normal a little.
      expect(count('Normals fixed')).toBeLessThanOrEqual(0.02 * number(told, /Number of facets +: +(\d+)/))
      expect(number(told, /Volume +: +([-\d.]+)/)).toBeGreaterThan(0)
    },
  )
})

where('prusa-slicer', () => {
  it.each(ofExamples('.3mf').map((path) => [called(path), path]))('%s: a closed body', async (_, path = '') => {
    const told = await said('prusa-slicer', ['--info', path])
    expect(told).toMatch(/manifold = yes/)
    expect(told).not.toMatch(/open_edges|facets_reversed|backwards_edges|degenerate_facets/)
    expect(number(told, /volume = ([-\d.]+)/)).toBeGreaterThan(0)
    for (const size of bySlicer(told)) expect(size).toBeGreaterThan(0.04)
  })

  if (has('admesh'))
    it('takes 3MF and STL for the same size, and the bar as thick as the report has it', async () => {
      for (const path of ofExamples('.mm.stl')) {
        const sizes = byMesh(await said('admesh', [path]))
        const other = bySlicer(await said('prusa-slicer', ['--info', path.replace(/\.mm\.stl$/, '.3mf')]))
        // Several bodies are set on the plate apart.
        if (!/^(shim-pack|hub-ring|bit-stick-out|width-gauge|setting-step)/.test(basename(path)))
          for (const axis of [0, 1, 2] as const)
            expect([called(path), Math.abs(sizes[axis] - other[axis]) < 0.02]).toEqual([called(path), true])
        if (!basename(path).startsWith('cutter-bar')) continue
        const { bar } = JSON.parse(readFileSync(join(dirname(path), 'report.json'), 'utf8'))
        const thick = Math.max(bar.diameter, bar.shank)
        expect(Math.abs(Math.min(...sizes) - thick)).toBeLessThan(0.1)
      }
    })

  it.each(
    // One by one they are sliced from their STL below; here all on their plate, and by hand each by itself.
    ofExamples('.3mf')
      .filter((path) => !ofMetal.test(basename(path)) && (thorough || basename(path) === 'gauges.3mf'))
      .map((path) => [called(path), path]),
  )('%s: slices', async (name, path = '') => {
    const to = join(scratch, `${String(name).replaceAll('/', '-')}.gcode`)
    await said('prusa-slicer', ['--export-gcode', ...coarse, '--output', to, path])
    const layers = readFileSync(to, 'utf8').match(/^;LAYER_CHANGE/gm)?.length ?? 0
    expect(layers).toBeGreaterThan(5)
  })
})

where('slic3r', () => {
  it.each(
    ofExamples('.stl')
      .filter((path) => !ofMetal.test(basename(path)) && (thorough || path.includes('cider-mill-pulley')))
      .map((path) => [called(path), path]),
  )('%s: slices without repair', async (name, path = '') => {
    const to = join(scratch, `${String(name).replaceAll('/', '-')}.slic3r.gcode`)
    const told = await said('slic3r', [...coarse, '--output', to, path])
    expect(told).not.toMatch(/repair|not manifold|holes/i)
    expect(statSync(to).size).toBeGreaterThan(5000)
  })
})

where('pdfinfo', () => {
  it.each(ofExamples('.pdf').map((path) => [called(path), path]))('%s: whole, on real paper', async (_, path = '') => {
    const told = await said('pdfinfo', ['-f', '1', '-l', '999', path])
    const pages = number(told, /^Pages: +(\d+)/m)
    const sizes = [...told.matchAll(/size: +([\d.]+) x ([\d.]+) pts/g)].map(([, a, b]) =>
      [Number(a), Number(b)].toSorted((x, y) => x - y),
    )
    expect(sizes).toHaveLength(pages)
    // A4 and A3, Letter and Tabloid, points.
    const papers = [
      [595.28, 841.89],
      [841.89, 1190.55],
      [612, 792],
      [792, 1224],
    ]
    for (const [short = 0, long = 0] of sizes)
      expect(papers.some(([a = 0, b = 0]) => Math.abs(a - short) < 0.5 && Math.abs(b - long) < 0.5)).toBe(true)
    expect(told).toMatch(/^JavaScript: +no/m)
    expect(told).not.toMatch(/error|warning/i)
  })
})

where('pdftoppm', () => {
  it.each(ofExamples('.pdf').map((path) => [called(path), path]))(
    '%s: shows without complaint, no page empty',
    async (_, path = '') => {
      const to = mkdtempSync(join(scratch, 'pages-'))
      const told = await said('pdftoppm', ['-gray', '-r', '40', path, join(to, 'p')])
      expect(told).toBe('')
      for (const page of readdirSync(to)) {
        const dots = readFileSync(join(to, page)).subarray(20)
        const dark = dots.reduce((sum, dot) => sum + (dot < 128 ? 1 : 0), 0)
        expect(dark / dots.length).toBeGreaterThan(0.002)
      }
    },
  )
})

where('xmllint', () => {
  it('reads every SVG and every card', async () => {
    const paths = ofExamples('.svg')
    expect(await said('xmllint', ['--noout', '--nonet', ...paths])).toBe('')
  })
})

describe('ezdxf', () => {
  if (!python) {
    console.warn('SKIPPED: ezdxf is missing here: apt-get install python3-ezdxf')
    return missing('ezdxf', 'python3-ezdxf')
  }
  const audit = `
import json, sys, ezdxf
told = {}
for path in sys.argv[1:]:
    doc = ezdxf.readfile(path)
    auditor = doc.audit()
    box = [e.dxf.text for e in doc.modelspace().query('TEXT')]
    told[path] = {'errors': [e.message for e in auditor.errors], 'fixes': [e.message for e in auditor.fixes],
                  'units': doc.header.get('$INSUNITS'), 'entities': len(doc.modelspace()), 'texts': len(box)}
print(json.dumps(told))
`
  it('audits every DXF: no error, nothing to fix, millimetres', async () => {
    const paths = ofExamples('.dxf')
    expect(paths.length).toBeGreaterThan(5)
    const told = JSON.parse(await said(python ?? '', ['-c', audit, ...paths])) as Record<
      string,
      { errors: string[]; fixes: string[]; units: number; entities: number; texts: number }
    >
    for (const path of paths) {
      const { errors, fixes, units, entities, texts } = told[path] ?? {
        errors: ['not read'],
        fixes: [],
        units: 0,
        entities: 0,
        texts: 0,
      }
      expect([called(path), errors, fixes, units]).toEqual([called(path), [], [], 4])
      expect(entities).toBeGreaterThan(0)
      // A profile is for cutting: no text. A sheet is for reading.
      expect(texts > 0).toBe(!path.endsWith('.profile.dxf'))
    }
  })
})
