import { bench, describe } from 'vitest'
import { parts } from '../../generators/set.ts'
import { design } from '../../src/design.ts'
import { laySet } from '../../src/drawing/set.ts'
import { svg } from '../../src/writers/svg.ts'
import { specimen } from './specimens.ts'

// Warm, in one process. Aim: from a read spec to every drawing of every part within 20 ms.
for (const name of ['cider-mill-pulley', 'winch-drum-gear']) {
  const spec = specimen(name)
  const worked = design(spec)
  const drafting = { ...spec.drafting, units: spec.units, job: name, checksum: '00000000', verdict: 'sound' }
  const own = parts.filter((part) => part.belongs(worked))
  describe(name, () => {
    bench('design', () => void design(spec))
    bench('drawings, unlaid', () => void own.map((part) => part.drawing(worked)))
    bench('spec to sheets of every part', () => {
      const made = design(spec)
      laySet(
        parts.filter((part) => part.belongs(made)).map((part) => part.drawing(made)),
        drafting,
      )
    })
    bench('spec to SVG of every sheet', () => {
      const made = design(spec)
      laySet(
        parts.filter((part) => part.belongs(made)).map((part) => part.drawing(made)),
        drafting,
      ).map(svg)
    })
  })
}
