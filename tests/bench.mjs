// `npm run bench`: what it takes, against yardsticks, as a table; written to tests/bench/results/<version>.md. Wants a quiet machine and a
// quarter of an hour. `node tests/bench.mjs --count 100` makes so many specs in place of a thousand (everything of a tenth of them); `--no-page` leaves the browser out.
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'

const root = join(import.meta.dirname, '..')
const { values } = parseArgs({
  options: { count: { type: 'string', default: '1000' }, page: { type: 'boolean', default: true } },
  allowNegative: true,
})
const all = Number(values.count)
const [load] = loadavg()
const folder = mkdtempSync(join(tmpdir(), 'borewright-bench-'))
const program = join(root, 'dist/borewright.js')
const run = (...words) => spawnSync(process.execPath, words, { cwd: folder, stdio: 'ignore' }).status
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]
const took = (work) => {
  const from = performance.now()
  work()
  return performance.now() - from
}
const say = (ms) => (ms >= 999.5 ? `${(ms / 1000).toPrecision(3)} s` : `${ms.toPrecision(3)} ms`)
const lines = []
const table = (title, rows) => {
  lines.push(`## ${title}`, '', '| what | takes | times the first |', '| --- | ---: | ---: |')
  for (const { what, ms, ratio } of rows) lines.push(`| ${what} | ${say(ms)} | ${ratio.toFixed(2)} |`)
  lines.push('')
  console.error(title)
}
const beside = (rows) => rows.map((row) => ({ ...row, ratio: row.ms / rows[0].ms }))

// Whole processes, each from cold.
const pulley = join(root, 'tests/specimens/cider-mill-pulley.yaml')
const cold = (...words) => {
  run(...words)
  return median(Array.from({ length: 11 }, () => took(() => run(...words))))
}
table(
  'Whole processes, cold',
  beside([
    { what: '`node -e 0`', ms: cold('-e', '0') },
    { what: '`key 25`', ms: cold(program, 'key', '25') },
    { what: '`check`, cider-mill-pulley', ms: cold(program, 'check', pulley) },
    { what: '`make --formats svg`, cider-mill-pulley', ms: cold(program, 'make', pulley, '--formats', 'svg') },
    { what: '`make`, cider-mill-pulley, everything', ms: cold(program, 'make', pulley) },
  ]),
)

// In one process that runs already.
await build({
  root,
  configFile: false,
  logLevel: 'error',
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: join(folder, 'warm'),
    target: 'node20',
    rolldownOptions: { input: { warm: join(root, 'tests/bench/warm.ts') }, output: { entryFileNames: '[name].mjs' } },
  },
})
writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
const rows = JSON.parse(
  execFileSync(process.execPath, [join(folder, 'warm/warm.mjs'), root], { encoding: 'utf8', maxBuffer: 1e7 }),
)
for (const of of new Set(rows.map((row) => row.of)))
  table(
    of.charAt(0).toUpperCase() + of.slice(1),
    rows.filter((row) => row.of === of),
  )

// Many specs: the specimens over and over, each under a name of its own.
const specimens = readdirSync(join(root, 'tests/specimens'))
mkdirSync(join(folder, 'specs'))
for (let at = 0; at < all; at += 1) {
  const name = specimens[at % specimens.length]
  const text = readFileSync(join(root, 'tests/specimens', name), 'utf8')
  writeFileSync(join(folder, `specs/${at}.yaml`), text.replace(/^name: .*$/m, `name: job-${at}`))
}
const many = (count, workers, ...more) => {
  const specs = Array.from({ length: count }, (_, at) => `specs/${at}.yaml`)
  const to = join(folder, 'made')
  const ms = took(() => {
    // What is refused is drawn all the same: as much work as any other.
    const status = run(program, 'make', ...specs, '--anyway', '--to', to, '--workers', `${workers}`, ...more)
    if (readdirSync(to).length !== count) throw new Error(`status ${status}, ${readdirSync(to).length} made`)
  })
  rmSync(to, { recursive: true })
  return ms
}
for (const [what, count, ...more] of [
  ['sheets as SVG and report', all, '--formats', 'svg'],
  ['everything', Math.ceil(all / 10)],
]) {
  const one = many(count, 1, ...more)
  const two = many(count, 2, ...more)
  table(`${count} mixed specs, ${what}`, [
    { what: 'one worker', ms: one, ratio: 1 },
    { what: 'two workers', ms: two, ratio: two / one },
    { what: 'a spec, two workers', ms: two / count, ratio: two / count / one },
  ])
}

// The page, in a browser.
if (values.page) {
  const { stdout } = spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', '--project', 'bench'], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1', BENCH: '1' },
  })
  const told = [...stdout.matchAll(/^measured (.*)$/gm)].map(([, row]) => JSON.parse(row))
  if (told.length === 0) throw new Error(`nothing was measured of the page:\n${stdout.slice(-2000)}`)
  table('The page, in a browser', beside(told))
  const assets = join(root, 'dist/page/assets')
  const front = readFileSync(join(root, 'dist/page/index.html'), 'utf8')
  for (const [what, files] of [
    ['Loaded at first', readdirSync(assets).filter((file) => front.includes(file) && /\.(?:js|css)$/.test(file))],
    ['Loaded to work a job out', readdirSync(assets).filter((file) => file.startsWith('hand.worker'))],
  ])
    lines.push(
      `- ${what}, gzip: ${files.map((file) => `${file.replace(/-[\w-]{8}(?=\.)/, '')} ${gzipSync(readFileSync(join(assets, file))).length}`).join(', ')} bytes.`,
    )
  lines.push('')
}

const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
const [{ model }] = cpus()
const text = [
  `# What ${version} takes`,
  '',
  `Measured by \`npm run bench\` with Node ${process.versions.node} on ${cpus().length} × ${model.trim()}. Medians; a ratio can be compared from machine to machine, a time cannot. ${load > 0.5 ? `Others were at work on the machine (load ${load.toFixed(1)}): times are too long, ratios rough.` : 'Nobody else was at work on the machine.'}`,
  '',
  ...lines,
].join('\n')
mkdirSync(join(root, 'tests/bench/results'), { recursive: true })
writeFileSync(join(root, 'tests/bench/results', `${version}.md`), text)
console.log(text)
rmSync(folder, { recursive: true })
