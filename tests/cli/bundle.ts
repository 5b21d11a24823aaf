import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Path of the bundled program. */
    readonly program: string
  }
}

/** Bundles the program as `npm run prepare` does, into a folder of this run's own; gone when the tests are over. */
export default async (project: TestProject): Promise<() => void> => {
  const root = join(import.meta.dirname, '../..')
  const folder = mkdtempSync(join(tmpdir(), 'borewright-bundle-'))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  const outDir = join(folder, 'dist')
  await build({ root, configFile: join(root, 'vite.config.ts'), logLevel: 'warn', build: { outDir } })
  project.provide('program', join(outDir, 'borewright.js'))
  return () => rmSync(folder, { recursive: true, force: true })
}
