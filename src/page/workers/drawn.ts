import type { Design } from '../../design.ts'
import { lagAt, zeroOf } from '../../figures/cut.ts'
import { expectedOf, measuredAs } from '../../plan/at-gate.ts'
import { type Figure, onPage } from '../../figures/figure.ts'
import { fourLengths } from '../../figures/lengths.ts'
import { lengthwise } from '../../figures/lengthwise.ts'
import { longInfeed } from '../../figures/long-infeed.ts'
import { marginBar, marginOf } from '../../figures/margin-bar.ts'
import { pressLengthwise } from '../../figures/press-lengthwise.ts'
import { pressSection } from '../../figures/press-section.ts'
import { sectionFigure } from '../../figures/section.ts'
import type { Where } from '../../figures/standing.ts'
import { svgOf } from '../../figures/svg.ts'
import { figure } from '../../spec/figures.ts'
import type { Drawn, Looked, PassRun, Picture, PictureName } from './works.ts'

/** Every pass of a bar job in the order of the cut, with the gates at which something is measured. */
export const passRuns = (design: Design): readonly PassRun[] => {
  const zero = zeroOf(design)
  const by = design.plan?.gateBy ?? 'across'
  return (design.plan?.cuts ?? []).flatMap(({ lane, setting, passes, gates }) => {
    // A gate stands after the last pass that does not go beyond it.
    const after = new Map(
      gates.map((gate) => {
        const { expected, byDial } = expectedOf(gate, by)
        return [passes.findLastIndex(({ x }) => x <= gate.x + 1e-6), expected ?? byDial] as const
      }),
    )
    return passes.map(({ x, reading }, place): PassRun => {
      const gate = after.get(place)
      return { lane, setting, infeed: x - zero, reading, ...(gate !== undefined && { gate }) }
    })
  })
}

/** A figure as the page holds it. */
export const pictureOf = (made: Figure): Picture => ({
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
  if (!run) return { spoken: 'First touch: nothing is cut yet.', dial: `first touch, dial ${figure(0, spec.units)}` }
  const lag = lagAt(design, run.lane, run.infeed)
  const by = design.plan?.gateBy ?? 'nothing'
  const what = measuredAs[by]
  // Two slots that stand opposite are both so deep when one of them is measured to the other.
  const x = zeroOf(design) + run.infeed - lag
  const size = by === 'floor to floor' ? 2 * x : by === 'across' ? section.boreRadius + x : undefined
  const inLane = bar.lanes.length > 1 ? `, lane ${run.lane + 1} of ${bar.lanes.length}` : ''
  const gate =
    run.gate === undefined
      ? ''
      : `, a gate: ${what === undefined ? 'look at it' : `measure ${what}, expect ${said(run.gate)}`}`
  const behind = lag >= 0.005 ? ` The slot stands ${said(lag)} behind the dial.` : ''
  return {
    spoken: `Pass ${passes} of ${runs.length}${inLane}${gate}.${behind}`,
    dial: `pass ${passes} of ${runs.length}, dial ${figure(run.reading, spec.units)}${size === undefined || what === undefined ? '' : `, ${what} ${figure(size, spec.units)}`}`,
  }
}

/** The figures of a design after so many passes: those that are looked at. */
export const drawn = (design: Design, { passes = Infinity, width, pictures: seen }: Looked): Drawn => {
  const runs = passRuns(design)
  const taken = Math.min(passes, runs.length)
  const run = runs[taken - 1]
  const target = onPage(width)
  const cursor = run ? { infeed: run.infeed, lane: run.lane } : { infeed: 0, lane: 0 }
  const done = taken >= runs.length
  const where: Where = done ? 'floor' : { ...cursor, stage: run?.setting ?? 0 }
  const made: Readonly<Record<PictureName, () => Figure | undefined>> = {
    section: () => sectionFigure(design, where, target),
    lengths: () => fourLengths(design, target),
    infeed: () => (runs.length > 0 ? longInfeed(design, target, cursor) : undefined),
    lengthwise: () => lengthwise(design, target, where),
    press: () => pressSection(design, onPage(Math.min(width, 560))),
    pressLengthwise: () => pressLengthwise(design, onPage(Math.min(width, 460))),
  }
  const pictures = Object.fromEntries(
    seen.flatMap((name) => {
      const one = made[name]()
      return one ? [[name, pictureOf(one)]] : []
    }),
  )
  return { pictures, ...spokenOf(design, runs, taken) }
}

/** A bar for each of these findings, so many px wide. */
export const bars = (design: Design, rules: readonly string[], width: number): Readonly<Record<string, string>> =>
  Object.fromEntries(
    design.findings
      .filter(({ rule }) => rules.includes(rule))
      .map((finding) => [finding.rule, svgOf(marginBar(marginOf(finding), onPage(width)), `bar-${finding.rule}`)]),
  )
