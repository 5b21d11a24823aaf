// `npm run examples`: remakes output/examples from the specimens, with the page that shows them (tests/gallery.ts). What comes out is gallery and
// golden set in one: look at what changed before it is committed.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const node = (words, more = {}) =>
  spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit', env: { ...process.env, ...more } }).status
const make = (specs, ...more) => {
  const paths = specs.map((spec) => `tests/specimens/${spec}.yaml`)
  return node(['dist/borewright.js', 'make', ...paths, '--to', 'output/examples', '--workers', '2', ...more])
}

const all = ['--formats', 'pdf,html,svg,dxf,dxf-live,stl,3mf,profile']
// The others to be looked at: what is read with a card in hand.
const shown = ['--formats', 'pdf,html,svg']
const outcomes = [
  make(['cider-mill-pulley', 'winch-drum-gear'], ...all),
  make(
    [
      'chaff-cutter-clutch',
      'threshing-drum-boss',
      'cheese-press-cap',
      'sluice-gate-wheel',
      'engraver-collet',
      'line-shaft-bush',
      'tuning-knob',
    ],
    ...shown,
  ),
  // Refused: drawn all the same, to show the mark.
  make(['press-slide'], '--anyway', ...shown),
]
if (outcomes.join() !== '0,0,1') {
  console.error(`status ${outcomes.join(', ')}, not 0, 0 and 1`)
  process.exit(1)
}
process.exitCode = node(['node_modules/vitest/vitest.mjs', 'run', 'tests/gallery.test.ts'], { GALLERY: 'write' }) ?? 1
