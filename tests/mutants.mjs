// `npm run mutants`: changes one operator or number of the core at a time, in a copy, and tells which changes the tests notice; a table and every
// change that nobody noticed go to tests/mutants/<version>.md. Takes half an hour or so on one core. `--sample 240 --seed 1` is what is done unless
// told otherwise; `--all` takes every mutant; `--rest` goes on where the last run stopped, with what has not been killed yet; `--only <words>` takes
// those whose name holds the words, and writes nothing. A word on each survivor stands in tests/mutants/words.yaml.
import { fork } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync } from 'node:fs'
import { rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { parseArgs } from 'node:util'
import { parse } from 'yaml'
import { folderOf, folders, kinds, mutantsOf, sampled, withMutants } from './mutants/mutate.mjs'

const { values } = parseArgs({
  options: {
    sample: { type: 'string', default: '240' },
    seed: { type: 'string', default: '1' },
    all: { type: 'boolean', default: false },
    rest: { type: 'boolean', default: false },
    only: { type: 'string' },
    times: { type: 'boolean', default: false },
  },
})
const project = join(import.meta.dirname, '..')
const { version } = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'))
/** Whole processes, browsers, whatever is drawn or written from the numbers, and goldens: slow, and they hold the numbers only by the way. */
const leftOut = [
  'cli',
  'page',
  'readers',
  'writers',
  'fuzz',
  'bench',
  'card',
  'drawing',
  'figures',
  'generators',
  'solid',
]
const goldens = ['make.test.ts', 'gallery.test.ts']
/** Tests that could notice are run up to so many milliseconds a mutant. */
const most = 25_000

// A copy, so that whoever goes on writing does not disturb it.
const root = realpathSync(mkdtempSync(join(tmpdir(), 'borewright-mutants-')))
process.on('exit', () => rmSync(root, { recursive: true, force: true }))
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(1))
const notCopied = new Set(['.git', 'node_modules', 'dist'])
for (const name of readdirSync(project))
  if (!notCopied.has(name)) cpSync(join(project, name), join(root, name), { recursive: true })
symlinkSync(join(project, 'node_modules'), join(root, 'node_modules'))
const notes = join(root, 'notes')
mkdirSync(notes)

const sources = folders.flatMap((folder) =>
  readdirSync(join(root, 'src', folder)).map((name) => `src/${folder}/${name}`),
)
const every = sources.flatMap((file) => mutantsOf(file, readFileSync(join(root, file), 'utf8')))
const chosen = values.only
  ? every.filter(({ name }) => name.includes(values.only))
  : values.all
    ? every
    : sampled(every, Number(values.sample), values.seed)
const mutants = chosen.map((mutant, number) => ({ ...mutant, number }))
for (const file of sources) {
  const of = mutants.filter((mutant) => mutant.file === file)
  if (of.length === 0) continue
  writeFileSync(join(root, file), withMutants(readFileSync(join(root, file), 'utf8'), of))
}
console.error(`${every.length} mutants can be made; ${mutants.length} are`)

/** A process that runs test files, begun anew after it had to be ended. */
const runner = (...words) => {
  let child
  const begin = async () => {
    child = fork(join(import.meta.dirname, 'mutants/runs.mjs'), words, {
      cwd: root,
      env: { ...process.env, MUTANTS_ROOT: root, NO_COLOR: '1' },
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    })
    await new Promise((done) => child.once('message', done))
  }
  return {
    /** What came of it; undefined where it took longer than it may. */
    run: async (ask, most) => {
      if (child === undefined) await begin()
      let clock
      const told = await new Promise((done) => {
        clock = setTimeout(() => done(undefined), most)
        child.once('message', done)
        child.once('exit', () => done({ failure: { file: ask.files[0], test: 'the process ended' }, ended: true }))
        child.send(ask)
      })
      clearTimeout(clock)
      child.removeAllListeners('message').removeAllListeners('exit')
      if (told === undefined || told.ended) {
        child.kill('SIGKILL')
        child = undefined
      }
      return told
    },
    end: () => child?.kill(),
  }
}

// Once with none alive: who reaches what, and how long each takes.
const files = readdirSync(join(root, 'tests'), { recursive: true })
  .filter((file) => file.endsWith('.test.ts') && ![...leftOut, ...goldens].includes(file.split('/')[0]))
  .map((file) => join(root, 'tests', file))
  .toSorted()
const noting = runner('isolate')
const began = performance.now()
const { failed } = await noting.run({ active: -1, count: mutants.length, notes, files }, 3_600_000)
noting.end()
if (failed.length > 0)
  console.error(`left out, since they fail on the copy: ${failed.map((file) => relative(root, file)).join(', ')}`)
const noted = readdirSync(notes)
  .map((name) => JSON.parse(readFileSync(join(notes, name), 'utf8')))
  .filter(({ file }) => !failed.includes(file))
const seconds = (ms) => `${(ms / 1000).toFixed(1)} s`
console.error(`noted what ${noted.length} files reach, in ${seconds(performance.now() - began)}`)
if (values.times) {
  const total = ({ within, besides }) => besides + Object.values(within).reduce((sum, { took }) => sum + took, 0)
  for (const note of noted.toSorted((a, b) => total(b) - total(a)))
    console.error(
      `${relative(root, note.file)} ${seconds(total(note))}, of it outside of tests ${seconds(note.besides)}`,
    )
}

/** How often a test file was asked about mutants of a folder, and how often it noticed. */
const asked = new Map()
const recordOf = (folder, file) => {
  const key = `${folder} ${file}`
  // Before anything is known, those of the folder's own name are trusted most.
  const own = file.includes(`/tests/${folder}/`)
  if (!asked.has(key)) asked.set(key, { times: own ? 2 : 5, noticed: 1 })
  return asked.get(key)
}

/**
 * The files that reach it, and in each the tests that do; null for all of them. First those that are likely to notice for the time that they take, as
 * the run itself has shown.
 */
const reaching = ({ file: source, number }) => {
  const of = noted.flatMap(({ file, outside, within, besides }) => {
    const names = Object.keys(within)
    const those = outside.includes(number) ? names : names.filter((name) => within[name].numbers.includes(number))
    if (those.length === 0 && !outside.includes(number)) return []
    const takes = besides + those.reduce((sum, name) => sum + within[name].took, 0)
    return [{ file, tests: those.length === names.length ? null : those, takes }]
  })
  let sum = 0
  const worth = ({ file, takes }) => {
    const { times, noticed } = recordOf(folderOf(source), file)
    return noticed / times / (takes + 20)
  }
  return of
    .toSorted((a, b) => worth(b) - worth(a))
    .filter(({ takes }, at) => {
      if (at > 0 && sum + takes > most) return false
      sum += takes
      return true
    })
}

const cache = join(project, `node_modules/.cache/mutants/${version}.json`)
const outcomes = {}
if (values.rest)
  for (const [name, outcome] of Object.entries(JSON.parse(readFileSync(cache, 'utf8'))))
    if (outcome.killed) outcomes[name] = outcome
const keep = () => {
  if (values.only) return
  mkdirSync(join(project, 'node_modules/.cache/mutants'), { recursive: true })
  writeFileSync(cache, JSON.stringify(outcomes, undefined, 1))
}

const running = runner('together')
const left = mutants.filter(({ name }) => outcomes[name] === undefined)
for (const [nth, mutant] of left.entries()) {
  const of = reaching(mutant)
  const from = performance.now()
  const expected = of.reduce((sum, { takes }) => sum + takes, 0)
  let outcome
  if (of.length === 0) outcome = { killed: false, unreached: true }
  else {
    const tests = Object.fromEntries(of.map(({ file, tests }) => [file, tests]))
    const ask = { active: mutant.number, count: mutants.length, tests, files: of.map(({ file }) => file) }
    // What took too long once may have been held up by others at work: it is tried again.
    const told = (await running.run(ask, 12_000 + 2.5 * expected)) ?? (await running.run(ask, 12_000 + 2.5 * expected))
    if (told === undefined) outcome = { killed: true, tooLong: true }
    else if (told.failure) outcome = { killed: true, by: { ...told.failure, file: relative(root, told.failure.file) } }
    else outcome = { killed: false }
  }
  outcomes[mutant.name] = outcome
  for (const { file } of of) {
    const record = recordOf(folderOf(mutant.file), file)
    record.times += 1
    if (outcome.by === undefined || relative(root, file) !== outcome.by.file) continue
    record.noticed += 1
    break
  }
  if (nth % 10 === 9) keep()
  const how = outcome.killed
    ? outcome.tooLong
      ? 'takes too long'
      : `killed by ${outcome.by.file} ${outcome.by.test}`
    : outcome.unreached
      ? 'REACHED BY NO TEST'
      : 'SURVIVES'
  console.error(
    `${nth + 1}/${left.length} ${mutant.file}:${mutant.line} ${mutant.change}: ${how} (${seconds(performance.now() - from)} of ${seconds(expected)})`,
  )
}
keep()
running.end()

// The table, and a word on each that nobody noticed.
const share = (part, all) => (all === 0 ? '–' : `${((100 * part) / all).toFixed(1)} %`)
const told = {
  equivalent: {},
  since: [],
  alone: {},
  ...parse(readFileSync(join(import.meta.dirname, 'mutants/words.yaml'), 'utf8')),
}
const killed = mutants.filter(({ name }) => outcomes[name].killed)
const tooLong = killed.filter(({ name }) => outcomes[name].tooLong)
const survivors = mutants.filter(({ name }) => !outcomes[name].killed)
const equivalent = survivors.filter(({ name }) => name in told.equivalent)
const since = killed.filter(({ name }) => told.since.includes(name))
const cell = (of) => `${of.filter(({ name }) => outcomes[name].killed).length} of ${of.length}`
const rows = [...kinds, 'all'].map((kind) => {
  const of = mutants.filter((mutant) => kind === 'all' || mutant.kind === kind)
  const cells = folders.map((folder) => cell(of.filter(({ file }) => folderOf(file) === folder)))
  return `| ${[kind, ...cells, cell(of), share(of.filter(({ name }) => outcomes[name].killed).length, of.length)].join(' | ')} |`
})
const shown = ({ file, line, change }) =>
  `\`${file.replace('src/', '')}:${line}\` \`${change.length > 160 ? `${change.slice(0, 157)}…` : change}\``
const at = (a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1)
const text = [
  `# Mutants of ${version}`,
  '',
  `${values.all ? 'All' : `${mutants.length} of ${every.length}, chosen with seed ${values.seed}`}: each changes one operator, number or condition of src/dimensions, src/mechanics, src/checks or src/plan, and the tests outside of tests/${leftOut.slice(0, -1).join(', tests/')} are run until one fails, those that are likely to notice first, for ${most / 1000} s of tests a mutant at the most. Made by \`npm run mutants\`.`,
  '',
  `- ${killed.length} of ${mutants.length} are killed: ${share(killed.length, mutants.length)}${tooLong.length > 0 ? ` (${tooLong.length} of them by taking too long)` : ''}. Before the tests that were written because of it: ${killed.length - since.length}, ${share(killed.length - since.length, mutants.length)}.`,
  `- ${equivalent.length} of the ${survivors.length} that survive change nothing that could be noticed, as said below; of the others ${share(killed.length, mutants.length - equivalent.length)} are killed.`,
  '',
  `| killed | ${folders.join(' | ')} | all | share |`,
  `| --- |${' ---: |'.repeat(folders.length + 2)}`,
  ...rows,
  '',
  '## What survives',
  '',
  ...survivors
    .toSorted(at)
    .map(
      (mutant) =>
        `- ${shown(mutant)}: ${mutant.name in told.equivalent ? `equivalent because ${told.equivalent[mutant.name]}` : mutant.name in told.alone ? `killed by ${told.alone[mutant.name]} when tried alone; the time for a mutant did not reach so far` : `**not held**${outcomes[mutant.name].unreached ? ', reached by no test' : ''}`}`,
    ),
  '',
  '## What survived at first',
  '',
  ...since
    .toSorted(at)
    .map(
      (mutant) =>
        `- ${shown(mutant)}: killed since by ${outcomes[mutant.name].by?.file ?? 'taking too long'}, ${outcomes[mutant.name].by?.test ?? ''}`,
    ),
  '',
].join('\n')
if (!values.only) writeFileSync(join(import.meta.dirname, `mutants/${version}.md`), text)
console.log(text)
