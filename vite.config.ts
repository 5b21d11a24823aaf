import { copyFileSync, mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { defineConfig, type Plugin } from 'vite'
import { licences } from './vite.licences.ts'

const packages = createRequire(import.meta.url)

/** What the program reads when it runs, put beside it: the solid kernel, and the faces of its drawings and of its job card. */
const beside: readonly (readonly [from: string, as: string])[] = [
  [packages.resolve('manifold-3d/manifold.wasm'), 'manifold.wasm'],
  ...['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'].map(
    (face) => [packages.resolve(`dejavu-fonts-ttf/ttf/${face}`), face] as const,
  ),
  [join(dirname(packages.resolve('dejavu-fonts-ttf/package.json')), 'LICENSE'), 'DejaVu-LICENSE.txt'],
  ...['Regular.ttf', 'Bold.ttf', 'Regular.woff2', 'Bold.woff2'].map((face) => {
    const name = `AtkinsonHyperlegibleNext-${face}`
    return [join(import.meta.dirname, 'src/writers/faces', name), name] as const
  }),
  [join(import.meta.dirname, 'src/writers/faces/OFL.txt'), 'Atkinson-OFL.txt'],
]

const putBeside: Plugin = {
  name: 'put-beside',
  writeBundle: ({ dir = 'dist' }) => {
    mkdirSync(dir, { recursive: true })
    for (const [from, as] of beside) copyFileSync(from, join(dir, as))
  },
}

const { write } = licences([
  { name: 'DejaVu Sans Condensed', folder: dirname(packages.resolve('dejavu-fonts-ttf/package.json')) },
  { name: 'Atkinson Hyperlegible Next', folder: join(import.meta.dirname, 'src/writers/faces') },
])

/** Reading a line and a spec, and the whole core. */
const core =
  /\/(src\/(standards|fits|spec|dimensions|mechanics|plan|checks|design\.ts|sizes\.ts|cli\/(job|suggest|lines|desk|verb|bug)\.ts)|node_modules\/(zod|yaml|yargs|yargs-parser|y18n|cliui|escalade|string-width|strip-ansi|ansi-regex|get-caller-file|get-east-asian-width)\/)/

// One bundle for the command line and for `import 'borewright'` and 'borewright/node': nothing is left to be installed. Each verb's code is a chunk of its own,
// loaded when it is asked for.
export default defineConfig({
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: join(import.meta.dirname, 'dist'),
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    rolldownOptions: {
      input: { borewright: 'src/cli/main.ts', worker: 'src/cli/worker.ts', index: 'src/index.ts', node: 'src/node.ts' },
      output: {
        entryFileNames: '[name].js',
        chunkFileNames: '[name].js',
        // What every verb needs, in one file: each file more costs a millisecond.
        codeSplitting: { groups: [{ name: 'core', test: core }] },
        banner: (chunk) => (chunk.name === 'borewright' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
  plugins: [putBeside, write],
})
