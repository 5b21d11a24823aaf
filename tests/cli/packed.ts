import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export const root = join(import.meta.dirname, '../..')

/** What the package is made of, and nothing else that stands in the tree. */
const sources = [
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.types.json',
  'vite.config.ts',
  'vite.page.config.ts',
  'vite.licences.ts',
  'vite.light.ts',
  'borewright.schema.json',
  'README.md',
  'CHANGELOG.md',
  'LICENSE',
  'src',
  'generators',
]

export interface Packed {
  /** Scratch folder of it all. */
  readonly folder: string
  readonly tarball: string
  /** Of the tarball, bytes. */
  readonly size: number
  readonly files: readonly string[]
}

/** `npm pack` on a copy of the tree, as for the registry: it builds everything anew. */
export const pack = (): Packed => {
  const folder = mkdtempSync(join(tmpdir(), 'borewright-package-'))
  const tree = join(folder, 'tree')
  mkdirSync(tree)
  for (const name of sources) cpSync(join(root, name), join(tree, name), { recursive: true })
  symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'))
  const said = execFileSync('npm', ['pack', '--json', '--silent', '--pack-destination', folder], {
    cwd: tree,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production' },
  })
  const [told] = JSON.parse(said.slice(said.indexOf('[\n'))) as [
    { readonly filename: string; readonly size: number; readonly files: readonly { readonly path: string }[] },
  ]
  return { folder, tarball: join(folder, told.filename), size: told.size, files: told.files.map(({ path }) => path) }
}

/** The tarball installed in an empty folder, with no registry to ask and no script run. */
export const install = ({ folder, tarball }: Packed): string => {
  const user = join(folder, 'user')
  mkdirSync(user)
  writeFileSync(join(user, 'package.json'), '{ "name": "user", "private": true, "type": "module" }\n')
  const quiet = ['--offline', '--ignore-scripts', '--no-audit', '--no-fund', '--silent']
  execFileSync('npm', ['install', ...quiet, tarball], { cwd: user, stdio: ['ignore', 'inherit', 'inherit'] })
  return user
}
