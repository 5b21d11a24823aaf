import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Design } from '../../src/design.ts'
import { type Figure, onPage, onPaper, type Target } from '../../src/figures/figure.ts'
import { type Box, boxOf, flattened, lengthOfRuns, meet } from '../../src/figures/sketch.ts'
import type { Point } from '../../src/solid/outline.ts'
import { jobs, specimen, specimenNames } from '../generators/designs.ts'
import { figuresOf } from './all.ts'

const widths: readonly Target[] = [...[320, 360, 420, 500, 600, 700].map(onPage), onPaper(108, 79), onPaper(186)]
/** The specimens, and two hundred jobs drawn once; each at two widths in turn, so that every width is had many times over. */
const laid = [...specimenNames.map(specimen), ...fc.sample(jobs, { numRuns: 200, seed: 11 })].flatMap((design, index) =>
  [widths[index % widths.length], widths[(index * 3 + 1) % widths.length]].flatMap((target) =>
    target ? figuresOf(design, target).map((figure) => ({ design, target, figure })) : [],
  ),
)

const texts = (figure: Figure) =>
  figure.marks.flatMap((mark) =>
    mark.mark === 'text' ? [{ box: boxOf(mark), said: mark.runs.map(({ text }) => text).join('') }] : [],
  )

const named = (design: Design, figure: Figure, target: Target): string =>
  `${figure.name} of ${design.spec.bore.diameter.nominal} × ${design.spec.bore.length}, ${target.width}`

/** Half a letter is room for an arrow that comes from outside. */
const beyond = ([x, y]: Point, { width, height, em }: Figure): boolean =>
  !(x >= -0.5 * em && x <= width + 0.5 * em && y >= -0.5 * em && y <= height + 0.5 * em)

const outOf = (box: Box, { width, height }: Figure): boolean =>
  box.left < -0.01 || box.top < -0.01 || box.right > width + 0.01 || box.bottom > height + 0.01

describe('the lay of figures', () => {
  it('no words leave the frame or lie on others, whatever the job and the width', () => {
    const wrong = laid.flatMap(({ design, target, figure }) => {
      const said = texts(figure)
      const out = said.filter(({ box }) => outOf(box, figure)).map(({ said: text }) => `out of frame: ${text}`)
      const over = said.flatMap((one, index) =>
        said
          .slice(index + 1)
          .filter((other) => meet(one.box, other.box, -0.02))
          .map((other) => `${one.said} over ${other.said}`),
      )
      return [...out, ...over].map((fault) => `${named(design, figure, target)}: ${fault}`)
    })
    expect(wrong).toEqual([])
  })

  it('nothing is drawn out of the frame', () => {
    const wrong: string[] = []
    for (const { design, target, figure } of laid)
      for (const mark of figure.marks) {
        const paths = mark.mark === 'area' ? mark.outlines : mark.mark === 'line' ? [mark.path] : []
        const far = paths.flatMap((path) => flattened(path, mark.mark === 'area')).find((at) => beyond(at, figure))
        if (far) wrong.push(`${named(design, figure, target)}: ${mark.mark} to ${far.join(', ')}`)
      }
    expect(wrong).toEqual([])
  })

  it('what is spanned is as long as the size that is named', () => {
    const wrong: string[] = []
    for (const { design, target, figure } of laid)
      for (const { name, mm, span } of figure.sizes) {
        if (!span || figure.scale === undefined) continue
        const drawn = Math.hypot(span[1][0] - span[0][0], span[1][1] - span[0][1]) / figure.scale
        if (Math.abs(drawn - Math.abs(mm)) > 1e-6)
          wrong.push(`${named(design, figure, target)}: ${name} ${mm} drawn ${drawn}`)
      }
    expect(wrong).toEqual([])
  })

  it('every size of a section is said in it, in words or by a ball', () => {
    const wrong = laid
      .filter(({ figure }) => figure.name === 'section' || figure.name === 'press-section')
      .flatMap(({ design, target, figure }) => {
        const said = new Set(figure.marks.flatMap((mark) => (mark.mark === 'text' ? [mark.of] : [])))
        return figure.sizes
          .filter(({ of }) => !said.has(of))
          .map(({ name }) => `${named(design, figure, target)}: ${name}`)
      })
    expect(wrong).toEqual([])
  })

  it('words that name a size stand in the picture of the bore at 676', () => {
    const [figure] = figuresOf(specimen('cider-mill-pulley'), onPage(676))
    const said = figure ? texts(figure).map(({ said: text }) => text) : []
    expect(said).toHaveLength(6)
    expect(said).toContain('Ø24 H7 bore')
    expect(figure?.sizes.map(({ name }) => name)).toEqual([
      'bore',
      'back gap',
      'projection',
      'still to cut',
      'bar',
      'slot width',
    ])
  })

  it('a text is measured run by run, bold as bold', () => {
    const bold = lengthOfRuns([{ role: 'figure', text: '4.10' }], 14)
    const light = lengthOfRuns([{ role: 'word', text: '4.10' }], 14)
    expect(bold).toBeGreaterThan(light)
    expect(
      lengthOfRuns(
        [
          { role: 'figure', text: '4.10' },
          { role: 'word', text: '4.10' },
        ],
        14,
      ),
    ).toBeCloseTo(bold + light, 9)
  })
})
