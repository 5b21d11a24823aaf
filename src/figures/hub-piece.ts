/** A piece of the hub round its bore: the true outside where that is near, a torn edge where the metal goes on. */
import type { Design } from '../design.ts'
import type { Corner, Point } from '../solid/outline.ts'
import type { LineKind } from './figure.ts'
import type { Stage } from './stage.ts'

export interface Piece {
  readonly outline: readonly Corner[]
  readonly lines: readonly { readonly kind: LineKind; readonly path: readonly Corner[] }[]
}

/** A fixed wave, the same every time: parts of the wave's swing at an angle. */
const wave = (angle: number): number =>
  0.55 * Math.sin(5 * angle + 0.6) + 0.3 * Math.sin(9 * angle + 2.1) + 0.15 * Math.sin(17 * angle)

/** In the section's plane, mm. */
export const hubPiece = ({ spec, section }: Design, stage: Stage, em: number): Piece => {
  const { scale, origin, width, height } = stage
  const outside = (spec.hub.outside ?? Infinity) / 2
  const swing = (0.28 * em) / scale
  const left = origin[0] / scale - (0.45 * em) / scale - swing
  const right = (width - origin[0]) / scale - (0.45 * em) / scale - swing
  const high = height / 2 / scale - (0.1 * em) / scale - swing
  const reach = Math.max(section.boreRadius, section.cornerReach)
  // No wider than looks like a piece of a hub round this bore.
  const across = Math.min(Math.min(left, right + section.floor), 1.75 * reach)
  const [toLeft, toRight] = [
    Math.min(left, across),
    Math.min(right, Math.max(across, section.floor + (7 * em) / scale)),
  ]
  const torn = (angle: number): number => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const a = c < 0 ? toLeft : toRight
    // Between an ellipse and a rectangle: the corners stay free for words.
    const n = 2.5
    return (Math.abs(c / a) ** n + Math.abs(s / high) ** n) ** (-1 / n) + swing * wave(angle)
  }
  const steps = 240
  const points = Array.from({ length: steps }, (_, step) => {
    const angle = (2 * Math.PI * step) / steps
    const free = torn(angle)
    const r = Math.min(free, outside)
    return { at: [r * Math.cos(angle), r * Math.sin(angle)] as Point, whole: outside <= free }
  })
  const lines: Piece['lines'][number][] = []
  const start = points.findIndex(({ whole }, index) => whole !== points.at(index - 1)?.whole)
  const run = [...points.slice(Math.max(start, 0)), ...points.slice(0, Math.max(start, 0))]
  let path: Corner[] = []
  let kind: LineKind | undefined
  for (const { at, whole } of [...run, run[0]].flatMap((one) => one ?? [])) {
    const wanted: LineKind = whole ? 'edge' : 'torn'
    path.push({ at })
    if (kind !== undefined && wanted !== kind) {
      lines.push({ kind, path })
      path = [{ at }]
    }
    kind = wanted
  }
  if (kind && path.length > 1) lines.push({ kind, path })
  return { outline: points.map(({ at }) => ({ at })), lines }
}
