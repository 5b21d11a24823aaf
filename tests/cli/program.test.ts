import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { run as runIn } from './run.ts'

const specimens = join(import.meta.dirname, '../specimens')
let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'borewright-'))
  for (const name of ['cider-mill-pulley', 'winch-drum-gear', 'press-slide'])
    copyFileSync(join(specimens, `${name}.yaml`), join(folder, `${name}.yaml`))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const run = (...words: string[]) => runIn(folder, words)
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text)
const read = (...path: string[]): string => readFileSync(join(folder, ...path), 'utf8')
const listed = (...path: string[]): string[] => readdirSync(join(folder, ...path)).toSorted()

describe('borewright make', () => {
  it('writes every part of a metric job, names what it wrote and what to open', async () => {
    const { status, out, err } = await run('make', 'cider-mill-pulley.yaml')
    expect({ status, err }).toEqual({ status: 0, err: '' })
    const files = listed('output', 'cider-mill-pulley')
    expect(files).toEqual(
      expect.arrayContaining([
        'cutter-bar.3mf',
        'cutter-bar.dxf',
        'cutter-bar.mm.stl',
        'cutter-bar.svg',
        'drawings.pdf',
        'manifest.json',
        'report.json',
        'spec.yaml',
        'tool-bit.svg',
      ]),
    )
    expect(out).toContain(`${files.length} files in ${join('output', 'cider-mill-pulley')}/`)
    expect(out).toContain(`Open ${join('output', 'cider-mill-pulley', 'packet.pdf')} first`)
    expect(read('output', 'cider-mill-pulley', 'spec.yaml')).toBe(read('cider-mill-pulley.yaml'))
    const manifest = JSON.parse(read('output', 'cider-mill-pulley', 'manifest.json'))
    expect(manifest.files.map((file: { name: string }) => file.name)).toEqual(
      files.filter((name) => name !== 'manifest.json'),
    )
  })

  it('writes the bushing and its shims for an inch job with a broach', async () => {
    const { status } = await run('make', 'winch-drum-gear.yaml', '--to', 'made', '--formats', 'svg,profile')
    expect(status).toBe(0)
    const files = listed('made', 'winch-drum-gear')
    expect(files).toContain('guide-bushing.svg')
    expect(files.filter((name) => name.endsWith('.profile.dxf')).length).toBeGreaterThan(0)
    expect(files.filter((name) => /\.(pdf|stl|3mf)$/.test(name))).toEqual([])
  })

  it('writes nothing for a broken job, and says why and the way out', async () => {
    const { status, out, err } = await run('make', 'press-slide.yaml')
    expect({ status, out }).toEqual({ status: 1, out: '' })
    expect(err).toContain('press-slide cannot be made as written')
    expect(err).toContain('broken: ')
    expect(err).toMatch(/\n {2}- /)
    expect(err).toContain('--anyway')
    expect(existsSync(join(folder, 'output'))).toBe(false)
  })

  it('draws a broken job with --anyway, still with status 1, every sheet marked', async () => {
    const { status } = await run('make', 'press-slide.yaml', '--anyway', '--formats', 'svg')
    expect(status).toBe(1)
    const sheets = listed('output', 'press-slide').filter((name) => name.endsWith('.svg'))
    expect(sheets.length).toBeGreaterThan(0)
    for (const sheet of sheets) expect(read('output', 'press-slide', sheet), sheet).toContain('DO NOT MAKE')
  })

  it('marks no sheet of a job that is not broken', async () => {
    await run('make', 'cider-mill-pulley.yaml', '--formats', 'svg')
    for (const sheet of listed('output', 'cider-mill-pulley').filter((name) => name.endsWith('.svg')))
      expect(read('output', 'cider-mill-pulley', sheet), sheet).not.toContain('DO NOT MAKE')
  })

  it('makes the parts that are asked for, and says which the job does not have', async () => {
    const { out } = await run('make', 'cider-mill-pulley.yaml', '--parts', 'tool-bit,guide-bushing', '--formats', 'svg')
    const sheets = listed('output', 'cider-mill-pulley').filter((name) => name.endsWith('.svg'))
    expect(new Set(sheets.map((name) => name.replace(/(-\d+)?\.svg$/, '')))).toEqual(new Set(['tool-bit']))
    expect(out).toContain('This job has no guide-bushing.')
  })

  it('run again: the same bytes, own leavings removed, other files untouched', async () => {
    // Every format's bytes are held by tests/cli/same-bytes.
    const most = ['--formats', 'svg,dxf,pdf,profile']
    await run('make', 'cider-mill-pulley.yaml', ...most)
    const made = (): Record<string, string> =>
      Object.fromEntries(
        listed('output', 'cider-mill-pulley').map((name) => [
          name,
          readFileSync(join(folder, 'output', 'cider-mill-pulley', name)).toString('base64'),
        ]),
      )
    const first = made()
    await run('make', 'cider-mill-pulley.yaml', ...most)
    expect(made()).toEqual(first)
    write(join('output', 'cider-mill-pulley', 'notes.txt'), 'mine')
    const { out } = await run('make', 'cider-mill-pulley.yaml', '--formats', 'svg', '--parts', 'tool-bit')
    const left = listed('output', 'cider-mill-pulley')
    expect(left).toContain('notes.txt')
    expect(left).not.toContain('drawings.pdf')
    expect(out).toContain('removed, of an earlier run:')
    expect(read('output', 'cider-mill-pulley', 'notes.txt')).toBe('mine')
  })

  // A system folder of Linux that takes no folders, and never answers where a whole path is asked of it.
  it.runIf(process.platform === 'linux')('a place that takes no folders is told, and not waited for', async () => {
    const { status, err } = await run('make', 'cider-mill-pulley.yaml', '--to', '/proc/foo', '--formats', 'svg')
    expect(status).toBe(2)
    expect(err).toContain('/proc takes no folders')
  })

  it('does not write over a file of somebody else’s', async () => {
    await run('make', 'cider-mill-pulley.yaml', '--formats', 'svg')
    write(join('output', 'cider-mill-pulley', 'drawings.pdf'), 'mine')
    const { status, err } = await run('make', 'cider-mill-pulley.yaml', '--formats', 'svg,pdf')
    expect(status).toBe(2)
    expect(err).toContain('was not made by borewright')
    expect(read('output', 'cider-mill-pulley', 'drawings.pdf')).toBe('mine')
  })

  it('refuses a target that is a file', async () => {
    write('taken', '')
    const { status, err } = await run('make', 'cider-mill-pulley.yaml', '--to', 'taken')
    expect(status).toBe(2)
    expect(err).toContain('taken is a file')
  })

  it('survives a bad spec among good ones, and leaves with the worst status', async () => {
    write('bad.yaml', 'name: [')
    const { status, out, err } = await run(
      'make',
      'bad.yaml',
      'press-slide.yaml',
      'cider-mill-pulley.yaml',
      '--formats',
      'svg',
    )
    expect(status).toBe(2)
    expect(err).toContain('bad.yaml: ')
    expect(err).toContain('press-slide cannot be made')
    expect(out).toContain('files in output/cider-mill-pulley/')
    expect(listed('output')).toEqual(['cider-mill-pulley'])
  })

  it('refuses two specs of one name', async () => {
    copyFileSync(join(folder, 'cider-mill-pulley.yaml'), join(folder, 'copy.yaml'))
    const { status, err } = await run('make', 'cider-mill-pulley.yaml', 'copy.yaml', '--formats', 'svg')
    expect(status).toBe(2)
    expect(err).toContain('copy.yaml: its name, cider-mill-pulley, is also that of cider-mill-pulley.yaml')
  })
})

describe('borewright check', () => {
  it('tells the verdict, the findings and the sizes, and writes nothing', async () => {
    const before = listed()
    const { status, out, err } = await run('check', 'cider-mill-pulley.yaml')
    expect({ status, err }).toEqual({ status: 0, err: '' })
    expect(out.startsWith('cider-mill-pulley')).toBe(true)
    for (const heading of ['bore and keyway, mm', 'cutter bar, mm', 'tool bit, mm']) expect(out).toContain(heading)
    // ISO/R 773: across for a 24 mm bore with an 8 × 7 key is 24 + 3.3, +0.2/0.
    expect(out).toMatch(/across +27\.3 +27\.3 +to 27\.5/)
    expect(out).not.toContain('\u001b')
    expect(listed()).toEqual(before)
  })

  it('speaks inches in an inch job, with fractions and drill names', async () => {
    const { status, out } = await run('check', 'winch-drum-gear.yaml')
    expect(status).toBe(0)
    expect(out).toContain('bore and keyway, in')
    expect(out).toMatch(/bore +0?\.875.*7\/8/)
    expect(out).toMatch(/width +0?\.18\d/)
    expect(out).toMatch(/tap drill (#\d+|letter [A-Z]|\d+\/\d+)/)
  })

  it('leaves with 1 when a rule that must hold is broken', async () => {
    const { status, out } = await run('check', 'press-slide.yaml')
    expect(status).toBe(1)
    expect(out).toContain('cannot be made as written')
  })

  it('--json is the report and nothing else; of several, a list', async () => {
    const one = await run('check', 'cider-mill-pulley.yaml', '--json')
    const report = JSON.parse(one.out)
    expect(report.format).toBe('borewright-report/1')
    expect(report.section.acrossLimits).toEqual([27.3, 27.5])
    expect(report.bar.diameter).toBeGreaterThan(5)
    const two = await run('check', 'cider-mill-pulley.yaml', 'winch-drum-gear.yaml', '--json')
    expect(JSON.parse(two.out).map((each: { name: string }) => each.name)).toEqual([
      'cider-mill-pulley',
      'winch-drum-gear',
    ])
  })

  it('reads the shop file that a spec names, from the spec’s own folder', async () => {
    write('small.yaml', read('cider-mill-pulley.yaml').replace(/^name: .*$/m, 'name: small\nshop: lathe.yaml'))
    const absent = await run('check', 'small.yaml')
    expect(absent.status).toBe(2)
    expect(absent.err).toContain('lathe.yaml (the shop file of small.yaml): there is no such file.')
    // However like its name is: the spec is no shop file.
    expect(absent.err).not.toContain("'small.yaml'?")
    write('lathe.yaml', 'bars: [12, thick]\n')
    const wrong = await run('check', 'small.yaml')
    expect(wrong.status).toBe(2)
    expect(wrong.err).toMatch(/^lathe\.yaml \(the shop file of small\.yaml\): bars\[1\]: read "thick"/)
    write('lathe.yaml', 'bars: [12, 14, 16]\n')
    const { status, out } = await runIn(tmpdir(), ['check', join(folder, 'small.yaml'), '--json'])
    expect(status).toBe(0)
    expect([12, 14, 16]).toContain(JSON.parse(out).bar.diameter)
  })
})

describe('a spec that cannot be read', () => {
  const complaint = async (name: string, text: string) => {
    write(name, text)
    const { status, out, err } = await run('check', name)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    return err
  }

  it('is told by file, path, what was read and what is accepted', async () => {
    const spec = read('cider-mill-pulley.yaml')
    const err = await complaint('bad.yaml', spec.replace('length: 38', 'length: 8 furlongs'))
    expect(err).toContain('bad.yaml: bore.length: read "8 furlongs"; accepted: a length')
  })

  it('has every complaint told at once, a line each, with the near miss', async () => {
    const err = await complaint(
      'bad.yaml',
      'name: a b\nunits: mm\nbore: { diametre: 24, length: 38 }\nfeature: { keyway: {} }\n',
    )
    expect(err.trim().split('\n').length).toBeGreaterThanOrEqual(2)
    expect(err).toContain('diameter meant?')
  })

  it('may be no YAML at all', async () => {
    expect(await complaint('bad.yaml', 'name: [\n  - {')).toMatch(/^bad\.yaml: .*line \d+, column \d+/)
  })

  it('may be a folder, missing, or far too large', async () => {
    expect((await run('check', '.')).err).toContain('is a folder')
    const missing = await run('check', 'cider-mil-pulley.yaml')
    expect(missing.status).toBe(2)
    expect(missing.err).toContain("there is no such file. Did you mean 'cider-mill-pulley.yaml'?")
    expect(await complaint('sheet.yaml', 'PK\u0003\u0004\u0000\u0000')).toBe(
      'sheet.yaml is not a text file: a spec is YAML or JSON, in UTF-8.\n',
    )
    expect(await complaint('large.yaml', '#'.repeat(1_000_001))).toContain('far too large')
  })
})

describe('borewright key', () => {
  it('knows the metric key, in every spelling of the shaft', async () => {
    const answers = await Promise.all(['25', '25 mm', '25,0 mm', '2.5 cm'].map((shaft) => run('key', shaft, '--json')))
    for (const { status, out } of answers) {
      expect(status).toBe(0)
      const key = JSON.parse(out)
      // ISO/R 773: over 22 up to 30, key 8 × 7, t1 4.0, t2 3.3, both +0.2/0.
      expect(key.designation).toBe('8 × 7')
      expect(key.hub.across).toEqual({ nominal: 28.3, lower: 28.3, upper: 28.5 })
      expect(key.seat.across).toEqual({ nominal: 21, lower: 20.8, upper: 21 })
    }
  })

  it('knows the inch key: a unit chooses the standard', async () => {
    const { status, out } = await run('key', '1', 'in', '--json')
    expect(status).toBe(0)
    const key = JSON.parse(out)
    expect(key.designation).toBe('1/4 square')
    // ASME B17.1: T = 1.114 and S = .859 for a 1 in shaft with a 1/4 square key.
    expect(key.hub.across.nominal / 25.4).toBeCloseTo(1.114, 3)
    expect(key.seat.across.nominal / 25.4).toBeCloseTo(0.859, 3)
    expect((await run('key', '1-1/4in', '--json')).out).toContain('"1/4 square"')
    expect(JSON.parse((await run('key', '1 in', '--standard', 'iso-773', '--json')).out).designation).toBe('8 × 7')
  })

  it('says how to measure, and that a bare number is mm', async () => {
    const { out } = await run('key', '25')
    expect(out).toContain("'25' read as mm")
    expect(out).toContain('how to measure')
    // A 7 mm key on the floor leaves 28.3 - 7 = 21.3 to 21.5 to the opposite wall; over key and shaft 20.8 + 7 to 21 + 7.
    expect(out.replaceAll(/\s+/g, ' ')).toContain('21.3 to 21.5 mm')
    expect(out.replaceAll(/\s+/g, ' ')).toContain('27.8 to 28 mm')
  })

  it('names the block with the decimals that the sums were done with', async () => {
    const out = (await run('key', '7/16 in')).out.replaceAll(/\s+/g, ' ')
    expect(out).toContain('for a shaft of 7/16 in ')
    expect(out).toContain('a block of 3/32 (.09375) on the floor')
    // T for 7/16 with a 3/32 key, ASME B17.1: 0.4843; less the block of 0.09375 it is 0.39055, not less.
    expect(out).toContain(': 0.3906 to 0.4005 in.')
  })

  it('a bare fraction beside the inch tables is inches, a bare decimal stays mm', async () => {
    const inches = await run('key', '7/8', '--standard', 'asme-b17.1')
    expect(inches.out).toContain("('7/8' read as inches)")
    expect(inches.out).toContain('key 3/16 square for a shaft of 7/8 in')
    expect((await run('key', '22.225', '--standard', 'asme-b17.1')).out).toContain("('22.225' read as mm)")
  })

  it('speaks of the shaft and of nothing else when it has no key', async () => {
    for (const shaft of ['0', '3', '5', '400', '600 in', '0.1 in', '5/16 in']) {
      const { status, err } = await run('key', shaft)
      expect(status, shaft).toBe(2)
      expect(err, shaft).not.toMatch(/bore\.|feature|tolerance|by hand|give width/)
      expect(err, shaft).toMatch(/no length|no key|has keys for shafts|no limits/)
    }
    expect((await run('key', '25', '--standard', 'iso-773', '--standard=asme-b17.1')).err).toContain('is given twice')
  })

  it('does not guess beyond its tables', async () => {
    const small = await run('key', '1-1/4')
    expect(small.status).toBe(2)
    expect(small.err).toContain('A bare number is mm')
    expect((await run('key', 'thick')).status).toBe(2)
    expect((await run('key', '25', '--standard', 'iso-7733')).err).toContain("Did you mean 'iso-773'?")
  })
})

describe('borewright new', () => {
  it('piped, prints a spec that can be checked as it stands', async () => {
    const { status, out, err } = await run('new')
    expect({ status, err }).toEqual({ status: 0, err: '' })
    write('mine.yaml', out)
    expect((await run('check', 'mine.yaml')).status).toBe(0)
  })

  it('writes a file, and never over one that is there', async () => {
    const { status, out } = await run('new', 'mine.yaml')
    expect(status).toBe(0)
    expect(out).toMatch(/Next: node .*borewright\.js check mine\.yaml\n/)
    expect(read('mine.yaml')).toContain('\nname: mine ')
    write('mine.yaml', 'kept')
    const again = await run('new', 'mine.yaml')
    expect(again.status).toBe(2)
    expect(again.err).toContain('mine.yaml is there already')
    expect(read('mine.yaml')).toBe('kept')
  })
})

describe('borewright new, further', () => {
  it('writes no YAML under a name that ends in .json', async () => {
    const { status, err } = await run('new', 'pulley.json')
    expect(status).toBe(2)
    expect(err).toContain('name it pulley.yaml')
    expect(existsSync(join(folder, 'pulley.json'))).toBe(false)
  })

  it('a name with blanks stands in quotes where it is to be typed', async () => {
    expect((await run('new', 'my spec.yaml')).out).toContain(' check "my spec.yaml"')
  })
})

describe('the command', () => {
  it('leaves with 2 for a verb or a flag that is none, and names the near one', async () => {
    const verb = await run('chekc', 'cider-mill-pulley.yaml')
    expect(verb.status).toBe(2)
    expect(verb.err).toContain("Did you mean 'check'?")
    const flag = await run('check', 'cider-mill-pulley.yaml', '--jsn')
    expect(flag.status).toBe(2)
    expect(flag.err).toContain("Did you mean '--json'?")
    expect((await run()).status).toBe(2)
  })

  it('shows its help and its version', async () => {
    const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8'))
    expect((await run('--version')).out.trim()).toBe(version)
    const { status, out } = await run('--help')
    expect(status).toBe(0)
    for (const verb of ['make', 'check', 'key', 'new']) expect(out).toContain(`borewright ${verb}`)
  })
})
