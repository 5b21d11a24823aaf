// `npm run examples`: remakes output/examples from the specimens. What comes out is gallery and golden set in one: look at what changed before it
// is committed.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const run = (spec, ...more) =>
  spawnSync(
    process.execPath,
    ['dist/borewright.js', 'make', `tests/specimens/${spec}.yaml`, '--to', 'output/examples', ...more],
    { cwd: root, stdio: 'inherit' },
  ).status

const all = ['--formats', 'pdf,svg,dxf,dxf-live,stl,3mf,profile']
const outcomes = [
  run('cider-mill-pulley', ...all),
  run('winch-drum-gear', ...all),
  // Refused: drawn all the same, to show the mark.
  run('press-slide', '--anyway', '--formats', 'pdf,svg'),
]
if (outcomes.join() !== '0,0,1') {
  console.error(`status ${outcomes.join(', ')}, not 0, 0, 1`)
  process.exit(1)
}
