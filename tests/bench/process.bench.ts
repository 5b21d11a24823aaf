import { execFileSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { bench, describe } from 'vitest'
import { pathOf } from './specimens.ts'

// Whole processes of the bundled program (build it first: npm run prepare), against Node doing nothing.
const program = join(import.meta.dirname, '../../dist/borewright.js')
const folder = mkdtempSync(join(tmpdir(), 'borewright-bench-'))
const node = (...words: readonly string[]): void => {
  execFileSync(process.execPath, words, { cwd: folder, stdio: 'ignore' })
}
const few = { iterations: 10, time: 0, warmupIterations: 2, warmupTime: 0 }
const metric = pathOf('cider-mill-pulley')

describe('whole processes', () => {
  bench('node -e 0', () => node('-e', '0'), few)
  bench('key 25', () => node(program, 'key', '25'), few)
  bench('check', () => node(program, 'check', metric), few)
  bench('make, sheets as SVG', () => node(program, 'make', metric, '--formats', 'svg'), few)
  bench('make, everything', () => node(program, 'make', metric), few)
})
