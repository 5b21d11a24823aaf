// `npm start`: the main job on the demo specs. Two are made; the third is there to be refused.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const run = (...words) =>
  spawnSync(process.execPath, ['dist/borewright.js', ...words], { cwd: root, stdio: 'inherit' }).status

console.log('The demo specs are invented: no such pulley, gear or slide stands anywhere.\n')
const made = run('make', 'tests/specimens/cider-mill-pulley.yaml', 'tests/specimens/winch-drum-gear.yaml')

console.log('\nThe next one is meant to be refused, and says how it could be made:\n')
const refused = run('make', 'tests/specimens/press-slide.yaml')

if (made !== 0 || refused !== 1) {
  console.error(`\nThis is not what should have come out: status ${made} and ${refused}, not 0 and 1.`)
  process.exit(1)
}
console.log(
  [
    '',
    'That refusal is intended: status 1, and nothing written.',
    'Open output/cider-mill-pulley/packet.pdf and output/winch-drum-gear/packet.pdf.',
    'Next: node dist/borewright.js check tests/specimens/cider-mill-pulley.yaml, or in the browser: node dist/borewright.js page',
  ].join('\n'),
)
