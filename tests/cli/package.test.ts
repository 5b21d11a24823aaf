import { execFileSync, spawn, spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { build, type Plugin } from 'vite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { install, pack, type Packed, root } from './packed.ts'

let packed: Packed
let user: string
const inPackage = (name: string): string => join(user, 'node_modules/borewright', name)
const ran = (...words: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(join(user, 'node_modules/.bin/borewright'), words, {
    cwd: user,
    encoding: 'utf8',
    input: '',
  })
  return { status, out: stdout, err: stderr }
}

beforeAll(() => {
  packed = pack()
  user = install(packed)
  cpSync(join(root, 'tests/specimens/cider-mill-pulley.yaml'), join(user, 'pulley.yaml'))
}, 300_000)
afterAll(() => rmSync(packed.folder, { recursive: true, force: true }))

describe('the package', () => {
  it('is under 4 MB and holds program, library, types, page, schema and papers, and no source or test', () => {
    expect(packed.size).toBeLessThan(4_000_000)
    expect(packed.files).toEqual(
      expect.arrayContaining([
        'CHANGELOG.md',
        'LICENSE',
        'README.md',
        'borewright.schema.json',
        'dist/AtkinsonHyperlegibleNext-Regular.ttf',
        'dist/AtkinsonHyperlegibleNext-Regular.woff2',
        'dist/DejaVuSansCondensed.ttf',
        'dist/borewright.js',
        'dist/index.js',
        'dist/licenses.md',
        'dist/manifold.wasm',
        'dist/node.js',
        'dist/page/index.html',
        'dist/page/licenses.md',
        'dist/page/offline.js',
        'dist/types/src/index.d.ts',
        'dist/types/src/node.d.ts',
        'dist/worker.js',
        'package.json',
      ]),
    )
    expect(
      packed.files.filter((file) => !/^(?:dist\/|[A-Z]+(?:\.md)?$|(?:package|borewright\.schema)\.json$)/.test(file)),
    ).toEqual([])
    expect(packed.files.filter((file) => /(?<!\.d)\.tsx?$|\.map$/.test(file))).toEqual([])
  })

  it('brings nothing else with it, and runs nothing when it is installed', () => {
    const told = JSON.parse(readFileSync(inPackage('package.json'), 'utf8')) as Record<string, object | undefined>
    for (const kind of ['dependencies', 'peerDependencies', 'optionalDependencies', 'bundleDependencies'])
      expect(told[kind], kind).toBeUndefined()
    expect(Object.keys(told['scripts'] ?? {}).filter((name) => /^(?:pre|post)?install$/.test(name))).toEqual([])
    expect(readdirSync(join(user, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['borewright'])
    expect(existsSync(inPackage('binding.gyp'))).toBe(false)
  })

  it('names each dependency that it is built from in one exact version, the one that is locked', () => {
    const read = (name: string): { devDependencies: Record<string, string> } =>
      JSON.parse(readFileSync(join(root, name), 'utf8')) as { devDependencies: Record<string, string> }
    const lock = read('package-lock.json') as unknown as { packages: Record<string, { version: string }> }
    for (const [name, version] of Object.entries(read('package.json').devDependencies))
      expect(version, name).toBe(lock.packages[`node_modules/${name}`]?.version)
  })
})

describe('the installed program', () => {
  it('says its version', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
    expect(ran('--version')).toEqual({ status: 0, out: `${version}\n`, err: '' })
  })

  it('looks up a key', () => {
    const { status, out } = ran('key', '25')
    expect(status).toBe(0)
    expect(out).toContain('8 × 7')
  })

  it('starts a spec, which it checks', () => {
    expect(ran('new', 'mine.yaml').status).toBe(0)
    expect(readFileSync(join(user, 'mine.yaml'), 'utf8')).toMatch(/^units: mm/m)
    expect(ran('check', 'mine.yaml').status).toBe(0)
  })

  it('checks and makes a job with everything that belongs to it, in threads too', () => {
    expect(ran('check', 'pulley.yaml').status).toBe(0)
    cpSync(join(user, 'pulley.yaml'), join(user, 'other.yaml'))
    const text = readFileSync(join(user, 'other.yaml'), 'utf8').replace(/^name: .*$/m, 'name: other')
    writeFileSync(join(user, 'other.yaml'), text)
    const { status, err } = ran('make', 'pulley.yaml', 'other.yaml', '--workers', '2')
    expect(err).not.toMatch(/bug/)
    expect(status).toBe(0)
    for (const name of ['cider-mill-pulley', 'other'])
      expect(readdirSync(join(user, 'output', name))).toEqual(
        expect.arrayContaining(['card.html', 'cutter-bar.3mf', 'drawings.pdf', 'packet.pdf', 'report.json']),
      )
  })

  it('serves the page', async () => {
    const serving = spawn(process.execPath, [inPackage('dist/borewright.js'), 'page', '--port', '0', '--no-open'], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    try {
      const address = await new Promise<string>((resolve, reject) => {
        let said = ''
        serving.stdout.on('data', (bytes: Buffer) => {
          said += bytes.toString()
          const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)
          if (found) resolve(found[0])
        })
        serving.on('exit', (code) => reject(new Error(`it ended with ${code}`)))
      })
      const index = await fetch(address)
      const html = await index.text()
      expect(index.status).toBe(200)
      expect(html).toContain('<title>borewright</title>')
      const script = /<script[^>]* src="\.\/([^"]+)"/.exec(html)?.[1] ?? ''
      const asked = await fetch(new URL(script, address))
      expect(asked.headers.get('content-type')).toMatch(/javascript/)
      expect((await asked.text()).length).toBeGreaterThan(1000)
    } finally {
      serving.kill('SIGTERM')
    }
  })
})

describe('licences', () => {
  /** Names of the packages whose modules go into what a configuration builds, the workers' bundles included. */
  const bundledBy = async (configuration: string): Promise<readonly string[]> => {
    const names = new Set<string>()
    const collect: Plugin = {
      name: 'collect',
      generateBundle: (_, bundle) => {
        for (const chunk of Object.values(bundle))
          for (const module of chunk.type === 'chunk' ? chunk.moduleIds : []) {
            const name = /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(module)?.[1]
            if (name !== undefined) names.add(name)
          }
      },
    }
    await build({
      configFile: join(packed.folder, 'tree', configuration),
      logLevel: 'error',
      build: { write: false },
      plugins: [collect],
      worker: { plugins: () => [collect] },
    })
    return [...names].toSorted()
  }

  it.each([
    ['program and library', 'vite.config.ts', 'dist/licenses.md', ['manifold-3d', 'pdfkit', 'yaml', 'yargs', 'zod']],
    ['the page', 'vite.page.config.ts', 'dist/page/licenses.md', ['manifold-3d', 'pdfkit', 'preact', 'yaml', 'zod']],
  ])('of everything in %s, each with its text', async (_, configuration, file, some) => {
    const text = readFileSync(inPackage(file), 'utf8')
    const entries = new Map(
      text
        .split(/^## /m)
        .slice(1)
        .map((entry) => [entry.split('\n', 1)[0]?.replace(/ \d.*/, '') ?? '', entry]),
    )
    const names = await bundledBy(configuration)
    expect(names).toEqual(expect.arrayContaining(some))
    for (const name of names) {
      expect(entries.get(name), name).toMatch(/copyright|public domain/i)
      expect(entries.get(name), name).toMatch(/permission|licen[cs]e|free and unencumbered/i)
    }
    expect(entries.get('Atkinson Hyperlegible Next')).toContain('SIL OPEN FONT LICENSE Version 1.1')
    expect(text).toContain('Bitstream Vera')
    for (const entry of entries.values()) expect(entry.length).toBeGreaterThan(500)
  })
})

describe('the library', () => {
  const tsc = join(root, 'node_modules/typescript/bin/tsc')
  /** What the compiler has against a file of the user's; nothing is skipped, nothing of ours in reach. */
  const against = (name: string, more: object): string => {
    const compilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
      skipLibCheck: false,
      target: 'es2022',
      lib: ['es2022'],
      types: [],
      outDir: 'out',
      ...more,
    }
    writeFileSync(join(user, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: [name] }))
    return spawnSync(process.execPath, [tsc], { cwd: user, encoding: 'utf8' }).stdout
  }

  it.each([
    { module: 'nodenext', moduleResolution: 'nodenext' },
    { module: 'esnext', moduleResolution: 'bundler' },
  ])('has types that stand by themselves, by $moduleResolution', (resolved) => {
    writeFileSync(join(user, 'uses.ts'), uses)
    expect(against('uses.ts', { ...resolved, noEmit: true })).toBe('')
  })

  it('tells an editor what each thing is that it hands out', () => {
    const types = inPackage('dist/types/src')
    const bare: string[] = []
    for (const entry of ['index.d.ts', 'node.d.ts'])
      for (const [, names = '', from = ''] of readFileSync(join(types, entry), 'utf8').matchAll(
        /export (?:type )?\{([^}]*)\} from '([^']*)'/g,
      )) {
        const text = readFileSync(join(types, from.replace(/\.ts$/, '.d.ts')), 'utf8')
        for (const name of names.split(',').map((one) => one.replace('type ', '').trim()))
          if (name && !new RegExp(`\\*/\\nexport (?:declare )?(?:const|function|interface|type) ${name}\\b`).test(text))
            bare.push(name)
      }
    expect(bare).toEqual([])
  })

  it('does what the README shows', () => {
    const shown = /```ts\n([\s\S]*?)```/.exec(readFileSync(join(root, 'README.md'), 'utf8'))?.[1] ?? ''
    writeFileSync(join(user, 'shown.ts'), shown)
    const types = join(user, 'node_modules/@types')
    mkdirSync(types, { recursive: true })
    // Types of Node are what any program has that writes a file.
    for (const name of ['@types/node', 'undici-types'])
      cpSync(join(root, 'node_modules', name), join(user, 'node_modules', name), { recursive: true })
    expect(against('shown.ts', { module: 'nodenext', types: ['node'] })).toBe('')
    const said = execFileSync(process.execPath, ['out/shown.js'], { cwd: user, encoding: 'utf8' })
    expect(said).toMatch(/^(?:pass|caution|unknown)/)
    expect(readdirSync(join(user, 'made'))).toEqual(
      expect.arrayContaining(['drawings.pdf', 'report.json', 'spec.yaml', 'cutter-bar.mm.stl']),
    )
    // The same as the program writes.
    expect(readFileSync(join(user, 'made/drawings.pdf'))).toEqual(
      readFileSync(join(dirname(user), 'user/output/cider-mill-pulley/drawings.pdf')),
    )
  })
})

const uses = `
import { design, type Finding, make, parse, readSpec, type Size, tell } from 'borewright'
import { openTools } from 'borewright/node'

const read = parse('name: a')
const spec = 'complaints' in read ? read : readSpec(read.document)
if ('complaints' in spec) throw new Error(spec.complaints.map(tell).join())
const worked = design(spec.spec)
export const broken: readonly Finding[] = worked.findings.filter((one) => one.verdict === 'fail')
export const bore: Size = worked.spec.bore.diameter
export const projection: number | undefined = worked.bar?.projection
export const files = await make(worked, { formats: ['pdf'] }, openTools())
// @ts-expect-error: no such format
await make(worked, { formats: ['doc'] }, openTools())
// @ts-expect-error: a design says nothing of this
worked.nothing
`
