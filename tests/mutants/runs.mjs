// A process that runs test files of the copy as often as it is asked to, one worker at a time; it is ended from outside when a run takes too long.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createVitest } from 'vitest/node'

const root = process.env.MUTANTS_ROOT
let order = []
class Ordered {
  shard = (specifications) => specifications
  sort = (specifications) => specifications.toSorted((a, b) => order.indexOf(a.moduleId) - order.indexOf(b.moduleId))
}

const [, , isolate] = process.argv
const vitest = await createVitest(
  'test',
  {
    root,
    config: false,
    watch: false,
    pool: 'threads',
    maxWorkers: 1,
    isolate: isolate === 'isolate',
    bail: isolate === 'isolate' ? 0 : 1,
    testTimeout: 60_000,
    reporters: [{}],
    include: ['tests/**/*.test.ts'],
    setupFiles: [join(root, 'tests/mutants/setup.mjs')],
    sequence: { sequencer: Ordered },
  },
  { root, configFile: false, logLevel: 'error' },
)
const project = vitest.getRootProject()

/** The first that failed: a test by its name, or what went wrong with a file. */
const firstFailure = (modules) => {
  for (const file of order) {
    const module = modules.find(({ moduleId }) => moduleId === file)
    if (module === undefined) continue
    for (const test of module.children.allTests('failed')) return { file, test: test.fullName }
    if (module.state() === 'failed') return { file, test: 'the file itself' }
  }
  return undefined
}

process.on('message', async (ask) => {
  writeFileSync(join(root, 'mutants.json'), JSON.stringify(ask))
  order = ask.files
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
    order.map((file) => project.createSpecification(file)),
  )
  const failed = testModules.filter((module) => module.state() === 'failed').map(({ moduleId }) => moduleId)
  const unhandled =
    unhandledErrors.length > 0 ? { file: order[0], test: `unhandled: ${unhandledErrors[0]}` } : undefined
  process.send({ failure: firstFailure(testModules) ?? unhandled, failed, ran: testModules.length })
})
process.on('disconnect', () => process.exit())
process.send('ready')
