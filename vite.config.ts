import { copyFileSync, mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { defineConfig, type Plugin } from 'vite'
import { licences } from './vite.licences.ts'
import { light } from './vite.light.ts'

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

/** Files of what is needed together, each loaded when it is asked for: a line, what is shown of a key, and the rest of the core with what reads a file. */
const groups = [
  { name: 'line', test: /\/(src\/(cli\/(line|suggest|desk|verb|bug)|spec\/near)\.ts)/ },
  {
    name: 'sizes',
    test: /\/(src\/(standards\/|fits\/|spec\/(?!parse|schema-text|starter)|dimensions\/(bore|basis|sized|section|round|key-told|taper-key|flat-slot|makeable|v-nose|.*-section)|cli\/(lines|sizes)\.ts)|node_modules\/zod\/(?!.*json-schema))/,
  },
  {
    name: 'core',
    test: /\/(src\/(spec\/parse|dimensions\/|mechanics\/|plan\/|checks\/|design\.ts|sizes\.ts|cli\/(job|telling)\.ts)|node_modules\/yaml\/)/,
  },
]

/** What browsers are given does the same, and what is not asked of it can be left out. */
const forBrowsers = { yaml: join(dirname(packages.resolve('yaml/package.json')), 'browser/dist/index.js') }

// One bundle for the command line and for `import 'borewright'` and 'borewright/node': nothing is left to be installed. Each verb's code is a chunk of its own,
// loaded when it is asked for.
export default defineConfig({
  ssr: { noExternal: true },
  resolve: { alias: forBrowsers },
  build: {
    ssr: true,
    outDir: join(import.meta.dirname, 'dist'),
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    rolldownOptions: {
      input: {
        borewright: 'src/cli/main.ts',
        worker: 'src/cli/worker.ts',
        carver: 'src/cli/carver.ts',
        index: 'src/index.ts',
        node: 'src/node.ts',
      },
      output: {
        entryFileNames: '[name].js',
        chunkFileNames: '[name].js',
        codeSplitting: { groups },
        banner: (chunk) => (chunk.name === 'borewright' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
  plugins: [light, putBeside, write],
})
