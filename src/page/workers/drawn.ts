import type { Design } from '../../design.ts'
import { gatesOf, lagAt, passesOf } from '../../figures/cut.ts'
import { type Figure, onPage } from '../../figures/figure.ts'
import { sectionFigure } from '../../figures/section.ts'
import type { Where } from '../../figures/standing.ts'
import { svgOf } from '../../figures/svg.ts'
import { figure } from '../../spec/figures.ts'
import type { Drawn, PassRun, Picture, PictureName } from './works.ts'

/** Every pass of a bar job in the order of the cut, with the gates of the first lane. */
export const passRuns = (design: Design): readonly PassRun[] => {
  const gates = new Map(gatesOf(design).map(({ after, across }) => [after, across]))
  return (design.plan?.lanes ?? []).flatMap((_, lane) =>
    passesOf(design, lane).map(({ to }, pass): PassRun => {
      const gate = lane === 0 ? gates.get(pass + 1) : undefined
      return { lane, infeed: to, ...(gate !== undefined && { gate }) }
    }),
  )
}

const pictureOf = (made: Figure): Picture => ({
  svg: svgOf(made),
  title: made.title,
  says: made.says,
  sizes: made.sizes.map(({ of, name, said }) => ({ of, name, said })),
})

/** The words under the picture: which pass, what to measure, how far the slot stands behind. */
const spokenOf = (design: Design, runs: readonly PassRun[], passes: number): { spoken: string; dial: string } => {
  const { bar, section, spec, plan } = design
  const run = runs[passes - 1]
  const said = (mm: number): string => figure(mm, spec.units, { unit: false })
  if (!bar || !plan) return { spoken: '', dial: '' }
  if (!run) return { spoken: 'First touch: nothing is cut yet.', dial: `first touch, dial ${said(0)}` }
  const lane = bar.lanes[run.lane]
  const lag = lagAt(design, run.lane, run.infeed)
  const across = section.boreRadius + (lane?.touchOff ?? section.touchOff) + run.infeed - lag
  const reading = plan.dial.reads === 'diameter' ? 2 * run.infeed : run.infeed
  const which = runs.length === 0 ? '' : `Pass ${passes} of ${runs.length}`
  const inLane = bar.lanes.length > 1 ? `, lane ${run.lane + 1} of ${bar.lanes.length}` : ''
  const gate = run.gate === undefined ? '' : `, a gate: measure across, expect ${said(across)}`
  const behind = lag >= 0.005 ? ` The slot stands ${said(lag)} behind the dial.` : ''
  return {
    spoken: `${which}${inLane}${gate}.${behind}`,
    dial: `pass ${passes} of ${runs.length}, dial ${figure(reading, spec.units)}, across ${figure(across, spec.units)}`,
  }
}

/** The figures of a design after so many passes. */
export const drawn = (design: Design, passes: number, width: number): Drawn => {
  const runs = passRuns(design)
  const run = runs[passes - 1]
  const where: Where =
    runs.length === 0 || passes >= runs.length
      ? 'floor'
      : run
        ? { infeed: run.infeed, lane: run.lane }
        : { infeed: 0, lane: 0 }
  const target = onPage(width)
  const pictures: Partial<Record<PictureName, Picture>> = { section: pictureOf(sectionFigure(design, where, target)) }
  return { pictures, ...spokenOf(design, runs, passes) }
}
