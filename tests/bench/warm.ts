// What things take in a process that runs already: bundled and run by bench.mjs, which hands it the root of the tree. Prints rows as JSON.
import jscad from '@jscad/modeling'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { ManifoldToplevel } from 'manifold-3d'
import { parts } from '../../generators/set.ts'
import { cardOf } from '../../src/card/card-of.ts'
import { design } from '../../src/design.ts'
import { laySet } from '../../src/drawing/set.ts'
import { make, type Tools } from '../../src/make.ts'
import { carve, openKernel } from '../../src/solid/mesh.ts'
import { svg } from '../../src/writers/svg.ts'
import { bare, own } from './engines.ts'
import { build } from './recipe.ts'
import { specimen } from './specimens.ts'

const root = process.argv[2] ?? '.'
const bytes = (path: string): Uint8Array => new Uint8Array(readFileSync(join(root, path)))
const kernel = await openKernel(bytes('node_modules/manifold-3d/manifold.wasm'))
const faces = 'src/writers/faces/AtkinsonHyperlegibleNext'
const dejaVu = 'node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed'
const tools: Tools = {
  kernel: () => Promise.resolve(kernel),
  fonts: () => Promise.resolve({ regular: bytes(`${dejaVu}.ttf`), bold: bytes(`${dejaVu}-Bold.ttf`) }),
  faces: () =>
    Promise.resolve({
      print: { regular: bytes(`${faces}-Regular.ttf`), bold: bytes(`${faces}-Bold.ttf`) },
      web: { regular: bytes(`${faces}-Regular.woff2`), bold: bytes(`${faces}-Bold.woff2`) },
    }),
}

/**
 * Median, ms, of as many runs as fit in a second, three at least, after two seconds of them that do not count; of what is quick two thousand
 * runs in up to five, for V8 goes on bettering what is run often.
 */
const timed = async (work: () => unknown): Promise<number> => {
  const start = performance.now()
  const passed = (): number => performance.now() - start
  for (let runs = 0; passed() < 2000 || (runs < 2000 && passed() < 5000 && passed() / runs < 10); runs += 1)
    await work()
  const took: number[] = []
  for (const start = performance.now(); took.length < 3 || performance.now() - start < 1000; ) {
    const from = performance.now()
    await work()
    took.push(performance.now() - from)
  }
  return took.toSorted((a, b) => a - b)[Math.floor(took.length / 2)] ?? Number.NaN
}

interface Row {
  readonly of: string
  readonly what: string
  readonly ms: number
  /** How often it goes into the yardstick of its group: the first row. */
  readonly ratio: number
}
const rows: Row[] = []
const group = async (of: string, works: Readonly<Record<string, () => unknown>>): Promise<void> => {
  let first: number | undefined
  for (const [what, work] of Object.entries(works)) {
    const ms = await timed(work)
    first ??= ms
    rows.push({ of, what, ms, ratio: ms / first })
  }
}

for (const name of ['cider-mill-pulley', 'winch-drum-gear', 'chaff-cutter-clutch']) {
  const spec = specimen(root, name)
  const worked = design(spec)
  const drafting = { ...spec.drafting, units: spec.units, job: name, checksum: '00000000', verdict: 'sound' }
  const own = parts.filter((part) => part.belongs(worked))
  const drawings = own.map((part) => part.drawing(worked))
  const sheets = laySet(drawings, drafting)
  await group(`${name}, warm`, {
    'spec to design': () => design(spec),
    'drawings laid on sheets': () => laySet(drawings, drafting),
    'sheets to SVG': () => sheets.map(svg),
    'job card': () => cardOf(worked),
    'job card as HTML': () => make(worked, { formats: ['html'] }, tools),
    'card, drawings and packet as PDF': () => make(worked, { formats: ['pdf'] }, tools),
    'solids as STL and 3MF': () => make(worked, { formats: ['stl', '3mf'] }, tools),
    'everything that is made when nothing is said': () => make(worked, {}, tools),
  })
}

const sagitta = 0.01
for (const [name, wanted] of [
  ['cider-mill-pulley', ['cutter-bar', 'tool-bit']],
  ['winch-drum-gear', ['guide-bushing']],
] as const) {
  const worked = design(specimen(root, name))
  for (const part of parts.filter((part) => (wanted as readonly string[]).includes(part.name))) {
    const solid = part.solid(worked)
    const engine = bare(kernel as ManifoldToplevel)
    await group(`solid of the ${part.name} of ${name}, chords within ${sagitta} mm`, {
      'bare manifold-3d': () => build(solid, engine, sagitta).getMesh(),
      'as it is carved: held to the surface, snapped, tidied': () => carve(kernel, solid, sagitta),
      'JSCAD’s own booleans': () => jscad.geometries.geom3.toPolygons(build(solid, own, sagitta)),
    })
  }
}

console.log(JSON.stringify(rows))
