/** The ground that section, four lengths and cone share: one scale and one axis for a job and a width. */
import type { Design } from '../design.ts'
import type { Point } from '../solid/outline.ts'
import { isNarrow, scaleFor, type Target } from './figure.ts'

export interface Stage {
  readonly scale: number
  /** Where the bore's axis falls. */
  readonly origin: Point
  readonly width: number
  /** Of the section alone. */
  readonly height: number
}

/** Far wall to floor fills the width, with room for the torn hub and for figures to the right of the floor. */
export const stageOf = ({ section }: Design, target: Target): Stage => {
  const { width, em, scales } = target
  const several = section.at.length > 1
  const reach = section.cornerReach
  const left = several ? reach : section.boreRadius
  const right = section.floor
  const high = several ? reach : section.boreRadius
  const [leftRoom, rightRoom, roof] = scales
    ? [2.2 * em, 4 * em, em]
    : isNarrow(target)
      ? [1.6 * em, 4.7 * em, 1.3 * em]
      : [4.6 * em, 7 * em, 2.3 * em]
  const most = target.height ?? (isNarrow(target) ? 0.95 : 0.76) * width
  const scale = scaleFor(
    target,
    Math.min((width - leftRoom - rightRoom) / (left + right), (most - 2 * roof) / (2 * high)),
  )
  const spare = width - leftRoom - rightRoom - scale * (left + right)
  const height = Math.min(most, 2 * roof + 2 * scale * high)
  return { scale, width, height, origin: [leftRoom + spare / 2 + scale * left, height / 2] }
}
