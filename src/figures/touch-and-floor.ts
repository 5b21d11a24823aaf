/** The bar in its bore twice: drawn back from first touch, where its back fouls, and at the floor, where its front does. */
import type { Design } from '../design.ts'
import type { Point } from '../solid/outline.ts'
import type { Figure, Target } from './figure.ts'
import { bare } from './saying.ts'
import { sectionFigure } from './section.ts'
import { edgeOf } from './standing.ts'
import { shifted, sketch } from './sketch.ts'

/** Side by side, or one over the other where the width is small. Undefined for a job without a bar. */
export const touchAndFloor = (design: Design, target: Target): Figure | undefined => {
  if (!edgeOf(design)) return undefined
  const { em, width } = target
  const on = sketch(target)
  const beside = width >= 26 * em
  const gap = 1.2 * em
  const own: Target = {
    ...target,
    width: beside ? (width - gap) / 2 : width,
    ...(target.height !== undefined && { height: target.height - 6 * em }),
  }
  const first = sectionFigure(design, 'withdrawn', own, ['bar.gaps.back', 'bar.projection'])
  const last = sectionFigure(design, 'floor', own, ['bar.gaps.front', 'bar.gaps.back'])
  const head = 1.7 * em
  const second: Point = beside ? [own.width + gap, head] : [0, 2 * head + first.height + 4.2 * em]
  const withdrawn = 'Drawn back from first touch'
  const floor = 'At full depth'
  on.words([0.1 * em, 1.05 * em], [{ role: 'name', text: withdrawn }])
  on.words([second[0] + 0.1 * em, second[1] - 0.65 * em], [{ role: 'name', text: floor }])
  const under = (figure: Figure, [x, y]: Point): number => {
    let row = 0
    for (const { of, name, said, mm } of figure.sizes) {
      const bad = of === 'broken'
      on.words(
        [x + 0.1 * em, y + figure.height + (1.2 + 1.35 * row) * em],
        [
          { role: bad ? 'broken' : 'word', text: `${name} ` },
          { role: bad ? 'broken' : 'figure', text: bad ? said : bare(design, mm) },
        ],
        { of },
      )
      row++
    }
    return y + figure.height + (0.5 + 1.35 * row) * em
  }
  const feet = [under(first, [0, head]), under(last, second)]
  const marks = [
    ...on.marks,
    ...first.marks.map((mark) => shifted(mark, [0, head])),
    ...last.marks.map((mark) => shifted(mark, second)),
  ]
  const moved = (figure: Figure, [dx, dy]: Point, when: string): Figure['sizes'] =>
    figure.sizes.map(({ span, ...said }) => ({
      ...said,
      name: `${said.name} ${when}`,
      ...(span && {
        span: [
          [span[0][0] + dx, span[0][1] + dy],
          [span[1][0] + dx, span[1][1] + dy],
        ] as const,
      }),
    }))
  return {
    name: 'touch-and-floor',
    width,
    height: Math.max(...feet),
    em,
    ...(first.scale !== undefined && { scale: first.scale }),
    marks,
    title: 'The bar in its bore, withdrawn and at full depth',
    says: `${first.says} ${last.says}`,
    sizes: [...moved(first, [0, head], 'withdrawn'), ...moved(last, second, 'at full depth')],
  }
}
