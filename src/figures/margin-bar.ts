/**
 * A finding as a bar: hatched is metal, clear is room, the thick upright is the limit, the diamond is this job, the thick line between them the
 * margin. At most: the limit at 66 % of the width; at least: at 34 %.
 */
import type { Finding, Verdict } from '../checks/rule.ts'
import type { Point } from '../solid/outline.ts'
import type { Figure, Target } from './figure.ts'
import { chain, sketch } from './sketch.ts'

export interface Margin {
  readonly verdict: Verdict
  /** What is said of it in words; the figure itself is for the eye. */
  readonly says: string
  readonly measured?: number
  readonly least?: number
  readonly most?: number
}

/** The margin of one finding. Which side is room follows from the sign of its margin. */
export const marginOf = ({ verdict, reason, measured, limit, margin }: Finding): Margin => {
  const known = { verdict, says: reason, ...(measured !== undefined && { measured }) }
  if (limit === undefined) return known
  const atMost =
    measured !== undefined && margin !== undefined
      ? margin * (limit - measured) > 0 || (margin === 0 && measured <= limit)
      : false
  return atMost ? { ...known, most: limit } : { ...known, least: limit }
}

/** Place of a value along the bar, 0 to 1 within it. */
const scaleOf = ({ measured, least, most }: Margin): ((value: number) => number) => {
  if (least !== undefined && most !== undefined) {
    const wide = Math.abs(most - least) || Math.abs(most) || 1
    const [from, to] = least <= most ? [0.25, 0.75] : [0.4, 0.6]
    return (value) => from + ((value - Math.min(least, most)) / wide) * (to - from)
  }
  const limit = most ?? least ?? 0
  const place = most !== undefined ? 0.66 : 0.34
  // Nought at the left, where that shows the limit at its place; else the limit stays and the rest is stretched.
  if (limit > 1e-9 && (measured ?? 0) >= 0) return (value) => (value / limit) * place
  const reach = 2 * Math.max(Math.abs((measured ?? limit) - limit), Math.abs(limit), 1e-9)
  return (value) => place + ((value - limit) / reach) * 0.5
}

export const marginBar = (margin: Margin, target: Target): Figure => {
  const { em, width } = target
  const on = sketch(target)
  const { measured, least, most, verdict } = margin
  const height = 1.15 * em
  const middle = height / 2
  const [top, bottom] = [middle - 0.32 * em, middle + 0.02 * em]
  const edge = 0.45 * em
  const at = scaleOf(margin)
  const x = (part: number): number => Math.min(Math.max(part, 0), 1) * width
  const hatched = (from: number, to: number): void => {
    if (to - from > 0.5) on.area('no-room', [chain([from, top], [to, top], [to, bottom], [from, bottom])])
  }
  if (least !== undefined) hatched(0, x(at(least)))
  if (most !== undefined) hatched(x(at(most)), width)
  on.line('leader', chain([0, middle], [width, middle]))
  const limits = [least, most].filter((limit) => limit !== undefined)
  // To the limit that is nearer to being broken.
  const nearest =
    measured === undefined ? undefined : limits.toSorted((a, b) => Math.abs(a - measured) - Math.abs(b - measured))[0]
  const place = measured === undefined ? undefined : at(measured)
  const stop = place === undefined ? undefined : Math.min(Math.max(place * width, edge), width - edge)
  if (stop !== undefined && nearest !== undefined) on.line('margin', chain([x(at(nearest)), middle], [stop, middle]))
  for (const limit of limits)
    on.line('limit', chain([x(at(limit)), middle - 0.5 * em], [x(at(limit)), middle + 0.5 * em]))
  const diamond = (cx: number): readonly Point[] => [
    [cx - 0.36 * em, middle],
    [cx, middle - 0.36 * em],
    [cx + 0.36 * em, middle],
    [cx, middle + 0.36 * em],
  ]
  if (stop !== undefined && place !== undefined) {
    on.area('diamond', [chain(...diamond(stop))])
    if (place * width > width - edge + 1e-6)
      on.line(
        'margin',
        chain([width - 0.3 * em, middle - 0.4 * em], [width, middle], [width - 0.3 * em, middle + 0.4 * em]),
      )
    if (place * width < edge - 1e-6 && place < 0)
      on.line('margin', chain([0.3 * em, middle - 0.4 * em], [0, middle], [0.3 * em, middle + 0.4 * em]))
  } else on.line('open', chain(...diamond(x(most !== undefined ? 0.33 : 0.67))), undefined, true)
  return {
    name: `margin-bar ${verdict}`,
    width,
    height,
    em,
    marks: on.marks,
    title: 'Margin',
    says: margin.says,
    sizes: [],
  }
}
