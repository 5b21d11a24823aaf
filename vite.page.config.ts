import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createHash } from 'node:crypto'
import { createRequire } from 'node:module'
import { dirname, join, relative } from 'node:path'
import { createLogger, defineConfig, type Plugin } from 'vite'
import { contentPolicy } from './src/cli/policy.ts'
import { licences } from './vite.licences.ts'
import { light } from './vite.light.ts'

const packages = createRequire(import.meta.url)
const outDir = join(import.meta.dirname, 'dist/page')

/** The page says of itself what the local server says of it, for whoever serves the folder otherwise. */
const saysItsPolicy: Plugin = {
  name: 'says-its-policy',
  transformIndexHtml: (html) => html.replace('%POLICY%', contentPolicy),
}

/**
 * `offline.js` keeps every file of the page in the browser, under a name made from their bytes, so that the page opens with no line and no
 * server. Written last, when all files stand.
 */
const worksOffline: Plugin = {
  name: 'works-offline',
  apply: 'build',
  writeBundle: ({ dir = outDir }) => {
    copyFileSync(
      join(folderOf('@fontsource-variable/atkinson-hyperlegible-next'), 'LICENSE'),
      join(dir, 'Atkinson-LICENSE.txt'),
    )
    copyFileSync(join(folderOf('dejavu-fonts-ttf'), 'LICENSE'), join(dir, 'DejaVu-LICENSE.txt'))
    const files = readdirSync(dir, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !/^offline\.js$|\.(?:md|txt)$/.test(entry.name))
      .map((entry) => relative(dir, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
      .toSorted()
    const digest = createHash('sha256')
    for (const file of files) digest.update(file).update(readFileSync(join(dir, file)))
    const source = readFileSync(join(import.meta.dirname, 'src/page/offline.js'), 'utf8')
    writeFileSync(
      join(dir, 'offline.js'),
      source
        .replace("'%EDITION%'", JSON.stringify(digest.digest('hex').slice(0, 16)))
        .replace("['%FILES%']", JSON.stringify(files)),
    )
  },
}

const folderOf = (name: string): string => dirname(packages.resolve(`${name}/package.json`))
// The faces that its style and its workers name are modules to the bundler, and found as such; these lie among the sources.
const { gather, write } = licences([
  { name: 'Atkinson Hyperlegible Next', folder: join(import.meta.dirname, 'src/writers/faces') },
])

// The kernel's own code asks for node:module where it finds itself in Node, which a page is not.
const logger = createLogger('warn')
const { warn } = logger
logger.warn = (message, ...more) => {
  if (!message.includes('"node:module" has been externalized')) warn(message, ...more)
}

// A folder of static files, from which the page can be served by anything: `borewright page`, or any web server.
export default defineConfig({
  root: join(import.meta.dirname, 'src/page'),
  base: './',
  publicDir: false,
  customLogger: logger,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', plugins: () => [gather, light] },
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  plugins: [saysItsPolicy, light, worksOffline, write],
})
