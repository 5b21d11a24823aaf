// `npm run tables`, `npm run schema`: tables.test.ts, writing what it otherwise compares.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const { status } = spawnSync(
  process.execPath,
  ['node_modules/vitest/vitest.mjs', 'run', 'tests/tables.test.ts', ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit', env: { ...process.env, TABLES: 'write' } },
)
process.exitCode = status ?? 1
