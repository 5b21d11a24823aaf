/** The pen that figures are drawn with: marks, words that are measured, and the room that is taken. */
import { capHeight, legible, lengthOf } from '../drawing/letters.ts'
import { type Corner, edgesOf, type Outline, type Point } from '../solid/outline.ts'
import type { Body, LineKind, Mark, Role, Run, Said, Target } from './figure.ts'

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

const bold: readonly Role[] = ['figure', 'name', 'flag', 'ball', 'broken', 'mark']

/** Whether words of this role are set in bold. */
export const isBold = (role: Role): boolean => bold.includes(role)

/** Length of words at a size, by the metrics of the drawings' own face, which is a little wider than the page's. */
export const lengthOfRuns = (runs: readonly Run[], size: number): number =>
  runs.reduce((sum, { role, text }) => sum + lengthOf(text, size * capHeight, isBold(role)), 0)

/** The room that words take. */
export const boxOf = ({ at, anchor, size, turn, runs }: Extract<Mark, { mark: 'text' }>): Box => {
  const length = lengthOfRuns(runs, size)
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? length / 2 : length
  const [up, down] = [0.76 * size, 0.24 * size]
  const [x, y] = at
  return turn === 0
    ? { left: x - before, top: y - up, right: x - before + length, bottom: y + down }
    : { left: x - up, top: y - (length - before), right: x + down, bottom: y + before }
}

export const meet = (a: Box, b: Box, pad = 0): boolean =>
  a.left < b.right + pad && b.left < a.right + pad && a.top < b.bottom + pad && b.top < a.bottom + pad

/** From a part's coordinates (mm, y up) to the figure's (y down). */
export interface Placing {
  readonly scale: number
  readonly at: (point: Point) => Point
  readonly path: (corners: readonly Corner[]) => readonly Corner[]
}

/** `origin` is where the part's own origin falls in the figure. */
export const placing = (scale: number, origin: Point): Placing => {
  const at = ([x, y]: Point): Point => [origin[0] + x * scale, origin[1] - y * scale]
  return {
    scale,
    at,
    path: (corners) =>
      corners.map((corner) => (corner.bulge ? { at: at(corner.at), bulge: -corner.bulge } : { at: at(corner.at) })),
  }
}

export const chain = (...points: readonly Point[]): readonly Corner[] => points.map((at) => ({ at }))

/** A part of a circle, counter-clockwise in the part's plane from one angle to another, radians; in half turns at most. */
export const arc = (centre: Point, radius: number, from: number, to: number): readonly Corner[] => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / Math.PI - 1e-9))
  const step = (to - from) / pieces
  return Array.from({ length: pieces + 1 }, (_, piece): Corner => {
    const angle = from + piece * step
    const at: Point = [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
    return piece < pieces ? { at, bulge: Math.tan(step / 4) } : { at }
  })
}

/** Straight chords of a chain of corners, for measuring and clipping. */
export const flattened = (path: readonly Corner[], closed: boolean, most = 0.09): Point[] => {
  const edges = edgesOf(path).slice(0, closed ? path.length : Math.max(0, path.length - 1))
  const points = edges.flatMap(({ from, arc: bend }): Point[] => {
    if (!bend) return [from]
    const count = Math.max(1, Math.ceil(Math.abs(bend.sweep) / most))
    return Array.from({ length: count }, (_, step): Point => {
      if (step === 0) return from
      const angle = bend.start + (bend.sweep * step) / count
      return [bend.centre[0] + bend.radius * Math.cos(angle), bend.centre[1] + bend.radius * Math.sin(angle)]
    })
  })
  const last = path.at(-1)
  return closed || !last ? points : [...points, last.at]
}

/** A mark moved by (x, y). */
export const shifted = (mark: Mark, [dx, dy]: Point): Mark => {
  const moved = (path: readonly Corner[]): readonly Corner[] =>
    path.map((corner) => ({ ...corner, at: [corner.at[0] + dx, corner.at[1] + dy] }))
  if (mark.mark === 'text') return { ...mark, at: [mark.at[0] + dx, mark.at[1] + dy] }
  return mark.mark === 'area' ? { ...mark, outlines: mark.outlines.map(moved) } : { ...mark, path: moved(mark.path) }
}

interface Words {
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly size?: number
  readonly turn?: 0 | 90
  readonly of?: string | undefined
}

export type Sketch = ReturnType<typeof sketch>

/** A new sheet to draw a figure on. */
export function sketch({ em }: Target) {
  const marks: Mark[] = []
  const sizes: Said[] = []
  const taken: Box[] = []
  const spoken: Box[] = []
  const arrowLong = 0.62 * em
  const arrowHalf = 0.16 * em

  const area = (body: Body, outlines: readonly Outline[], of?: string): void => {
    marks.push({ mark: 'area', body, outlines, ...(of !== undefined && { of }) })
  }
  const line = (kind: LineKind, path: readonly Corner[], of?: string, closed?: true): void => {
    marks.push({ mark: 'line', line: kind, path, ...(closed && { closed }), ...(of !== undefined && { of }) })
  }
  const claim = (box: Box): void => {
    taken.push(box)
  }
  const mark = (at: Point, runs: readonly Run[], more: Words): Extract<Mark, { mark: 'text' }> => ({
    mark: 'text',
    at,
    anchor: more.anchor ?? 'start',
    size: more.size ?? em,
    turn: more.turn ?? 0,
    runs: runs.map(({ role, text }) => ({ role, text: legible(text) })),
    ...(more.of !== undefined && { of: more.of }),
  })
  /** Words from an anchor on their baseline; their room is taken. */
  const words = (at: Point, runs: readonly Run[], more: Words = {}): Box => {
    const made = mark(at, runs, more)
    marks.push(made)
    const box = boxOf(made)
    claim(box)
    spoken.push(box)
    return box
  }
  /** A number in a filled ball round `centre`. */
  const ball = (centre: Point, text: string, of?: string, size = 0.82): void => {
    words([centre[0], centre[1] + 0.36 * size * em], [{ role: 'ball', text }], {
      anchor: 'middle',
      size: size * em,
      of,
    })
  }
  /** Keeps words off a line that was drawn. */
  const avoid = (path: readonly Corner[], closed = false): void => {
    const points = flattened(path, closed)
    const half = 0.12 * em
    points.forEach((from, index) => {
      const to = points[index + 1] ?? (closed ? points[0] : undefined)
      if (!to) return
      const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / (0.5 * em)))
      for (let step = 0; step < count; step++) {
        const [x, y] = [from[0] + ((to[0] - from[0]) * step) / count, from[1] + ((to[1] - from[1]) * step) / count]
        claim({ left: x - half, right: x + half, top: y - half, bottom: y + half })
      }
    })
  }
  /** Whether words at an anchor would keep off everything that took its room before, and within these bounds. */
  const fits = (at: Point, runs: readonly Run[], more: Words, within: Box, pad = 0.15 * em): boolean => {
    const box = boxOf(mark(at, runs, more))
    return (
      box.left >= within.left - 1e-6 &&
      box.right <= within.right + 1e-6 &&
      box.top >= within.top - 1e-6 &&
      box.bottom <= within.bottom + 1e-6 &&
      taken.every((other) => !meet(box, other, pad))
    )
  }
  /** An arrow's head with its point at `tip`, pointing along a unit direction. */
  const head = (tip: Point, [ux, uy]: Point, of?: string, body: Body = 'ink'): void => {
    const [bx, by] = [tip[0] - ux * arrowLong, tip[1] - uy * arrowLong]
    area(
      body,
      [
        [
          { at: tip },
          { at: [bx - uy * arrowHalf, by + ux * arrowHalf] },
          { at: [bx + uy * arrowHalf, by - ux * arrowHalf] },
        ],
      ],
      of,
    )
  }
  /**
   * A line with a head at either end, level or upright or leaning, spanning two points; where it is too short for both heads they come from
   * outside.
   */
  const span = (a: Point, b: Point, of?: string, kind: LineKind = 'thin', body: Body = 'ink'): void => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length < 1e-9) return
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    if (length >= 2.4 * arrowLong) {
      line(kind, chain(a, b), of)
      head(a, [-ux, -uy], of, body)
      head(b, [ux, uy], of, body)
    } else {
      const out = 1.7 * arrowLong
      line(kind, chain([a[0] - ux * out, a[1] - uy * out], a), of)
      line(kind, chain(b, [b[0] + ux * out, b[1] + uy * out]), of)
      if (length > 0.4 * arrowLong) line(kind, chain(a, b), of)
      head(a, [ux, uy], of, body)
      head(b, [-ux, -uy], of, body)
    }
    const reach = length >= 2.4 * arrowLong ? 0 : 1.7 * arrowLong
    claim({
      left: Math.min(a[0] - ux * reach, b[0] + ux * reach) - arrowHalf,
      right: Math.max(a[0] - ux * reach, b[0] + ux * reach) + arrowHalf,
      top: Math.min(a[1] - uy * reach, b[1] + uy * reach) - arrowHalf,
      bottom: Math.max(a[1] - uy * reach, b[1] + uy * reach) + arrowHalf,
    })
  }
  const say = (said: Said): void => {
    sizes.push(said)
  }
  return { em, marks, sizes, taken, spoken, arrowLong, area, line, claim, avoid, words, ball, fits, head, span, say }
}
