// Loaded before each test file of the copy: says which mutant is alive, and notes which mutants a test reaches.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, expect } from 'vitest'

const root = process.env.MUTANTS_ROOT
/** `active`: the number of the one that lives, −1 for none; `tests`: by file the tests that reach it, null for all of them; `notes`: a folder, in the run that notes. */
const { active, count, tests, notes } = JSON.parse(readFileSync(join(root, 'mutants.json'), 'utf8'))

globalThis.__mutants ??= { active: -1, hit: new Uint8Array(count) }
const { hit } = globalThis.__mutants
globalThis.__mutants.active = active

/** Numbers that were reached since it was last asked. */
const reached = () => {
  const numbers = []
  for (let number = hit.indexOf(1); number >= 0; number = hit.indexOf(1, number + 1)) numbers.push(number)
  hit.fill(0)
  return numbers
}

if (notes) {
  // What is reached outside of a test, by loading the file or in a beforeAll, is every test's.
  const outside = new Set()
  const within = {}
  const loaded = performance.now()
  let from = loaded
  let file
  beforeEach(({ task }) => {
    file ??= task.file
    for (const number of reached()) outside.add(number)
    from = performance.now()
  })
  afterEach(() => {
    const name = expect.getState().currentTestName
    within[name] = {
      numbers: [...new Set([...(within[name]?.numbers ?? []), ...reached()])],
      took: (within[name]?.took ?? 0) + performance.now() - from,
    }
  })
  afterAll(() => {
    if (file === undefined) return
    for (const number of reached()) outside.add(number)
    const inTests = Object.values(within).reduce((sum, { took }) => sum + took, 0)
    const note = { file: file.filepath, outside: [...outside], within, besides: performance.now() - loaded - inTests }
    writeFileSync(join(notes, `${file.id}.json`), JSON.stringify(note))
  })
} else {
  beforeEach((context) => {
    const wanted = tests[context.task.file.filepath]
    if (wanted && !wanted.includes(expect.getState().currentTestName)) context.skip()
  })
}
