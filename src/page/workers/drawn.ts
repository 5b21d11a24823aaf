import type { Design } from '../../design.ts'
import { lagAt, zeroOf } from '../../figures/cut.ts'
import { type Figure, onPage } from '../../figures/figure.ts'
import { fourLengths } from '../../figures/lengths.ts'
import { longInfeed } from '../../figures/long-infeed.ts'
import { sectionFigure } from '../../figures/section.ts'
import { svgOf } from '../../figures/svg.ts'
import { figure } from '../../spec/figures.ts'
import type { Drawn, PassRun, Picture, PictureName } from './works.ts'

/** Every pass of a bar job in the order of the cut, with the gates at which something is measured. */
export const passRuns = (design: Design): readonly PassRun[] => {
  const zero = zeroOf(design)
  return (design.plan?.cuts ?? []).flatMap(({ lane, setting, passes, gates }) => {
    // A gate stands after the last pass that does not go beyond it.
    const after = new Map(
      gates.map((gate) => [passes.findLastIndex(({ x }) => x <= gate.x + 1e-6), gate.expected ?? gate.byDial] as const),
    )
    return passes.map(({ x, reading }, place): PassRun => {
      const gate = after.get(place)
      return { lane, setting, infeed: x - zero, reading, ...(gate !== undefined && { gate }) }
    })
  })
}

const pictureOf = (made: Figure): Picture => ({
  svg: svgOf(made),
  title: made.title,
  says: made.says,
  sizes: made.sizes.map(({ of, name, said }) => ({ of, name, said })),
})

/** The words under the picture: which pass, what to measure, how far the slot stands behind. */
const spokenOf = (
  design: Design,
  runs: readonly PassRun[],
  passes: number,
): { readonly spoken: string; readonly dial: string } => {
  const { bar, section, spec } = design
  const run = runs[passes - 1]
  const said = (mm: number): string => figure(mm, spec.units, { unit: false })
  if (!bar || runs.length === 0) return { spoken: '', dial: '' }
  if (!run) return { spoken: 'First touch: nothing is cut yet.', dial: `first touch, dial ${said(0)}` }
  const lag = lagAt(design, run.lane, run.infeed)
  const across = section.boreRadius + zeroOf(design) + run.infeed - lag
  const inLane = bar.lanes.length > 1 ? `, lane ${run.lane + 1} of ${bar.lanes.length}` : ''
  const gate = run.gate === undefined ? '' : `, a gate: measure across, expect ${said(run.gate)}`
  const behind = lag >= 0.005 ? ` The slot stands ${said(lag)} behind the dial.` : ''
  return {
    spoken: `Pass ${passes} of ${runs.length}${inLane}${gate}.${behind}`,
    dial: `pass ${passes} of ${runs.length}, dial ${figure(run.reading, spec.units)}, across ${figure(across, spec.units)}`,
  }
}

/** The figures of a design after so many passes. */
export const drawn = (design: Design, passes: number, width: number): Drawn => {
  const runs = passRuns(design)
  const run = runs[Math.min(passes, runs.length) - 1]
  const target = onPage(width)
  const cursor = run ? { infeed: run.infeed, lane: run.lane } : { infeed: 0, lane: 0 }
  const done = runs.length === 0 || passes >= runs.length
  const made: Partial<Record<PictureName, Figure>> = {
    section: sectionFigure(design, done ? 'floor' : { ...cursor, stage: run?.setting ?? 0 }, target),
    lengths: fourLengths(design, target),
    ...(runs.length > 0 && { infeed: longInfeed(design, target, cursor) }),
  }
  const pictures = Object.fromEntries(Object.entries(made).map(([name, figure]) => [name, pictureOf(figure)]))
  return { pictures, ...spokenOf(design, runs, passes) }
}
