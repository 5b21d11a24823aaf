import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import type { TestProject } from 'vitest/node'
import { findBrowser, type Found } from './browser.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built page is served by the built program. */
    readonly address: string
    /** Path of the bundled program, with the page beside it. */
    readonly program: string
    /** Folder of the built page. */
    readonly built: string
    readonly browser: Found
  }
}

/** Builds program and page as `npm run prepare` does, into a folder of this run's own, and serves the page with it. */
export default async (project: TestProject): Promise<() => void> => {
  const root = join(import.meta.dirname, '../..')
  const browser = await findBrowser()
  const folder = mkdtempSync(join(tmpdir(), 'borewright-page-'))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  const outDir = join(folder, 'dist')
  // As it is built for everybody: nothing in it for those who are testing.
  process.env['NODE_ENV'] = 'production'
  await build({ root, configFile: join(root, 'vite.config.ts'), logLevel: 'error', build: { outDir } })
  const page = join(outDir, 'page')
  await build({ configFile: join(root, 'vite.page.config.ts'), logLevel: 'error', build: { outDir: page } })
  const program = join(outDir, 'borewright.js')
  const serving = spawn(process.execPath, [program, 'page', '--port', '0', '--no-open'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const address = await new Promise<string>((resolve, reject) => {
    let said = ''
    serving.stdout.on('data', (bytes: Buffer) => {
      said += bytes.toString()
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)
      if (found) resolve(found[0])
    })
    serving.on('exit', (code) => reject(new Error(`the program ended with ${code} before it served the page`)))
  })
  project.provide('address', address)
  project.provide('program', program)
  project.provide('built', page)
  project.provide('browser', browser)
  return () => {
    serving.kill('SIGTERM')
    rmSync(folder, { recursive: true, force: true })
  }
}
