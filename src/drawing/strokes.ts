/** Strokes from pieces and lines: colours and widths of their class, broken lines fitted. */
import type { Point } from '../solid/outline.ts'
import { is, type Piece } from './piece.ts'
import { kept } from './plane.ts'
import type { Stroke, StrokeClass } from './sheet.ts'
import { classes, fittedDashes, type Style } from './style.ts'
import type { LineKind } from './view.ts'

export const widthOf = (kind: LineKind, style: Style): number =>
  kind === 'visible' || kind === 'cut' ? style.widths.thick : style.widths.thin

export const point = (x: number, y: number): Point => [kept(x), kept(y)]

/** A line of a view. */
export function lineStroke(kind: LineKind, x1: number, y1: number, x2: number, y2: number, style: Style): Stroke {
  const dashes = fittedDashes(kind, Math.hypot(x2 - x1, y2 - y1))
  return {
    stroke: 'line',
    class: classes[kind],
    width: widthOf(kind, style),
    from: point(x1, y1),
    to: point(x2, y2),
    ...(dashes && { dashes: dashes.map(kept) }),
  }
}

/** An arc of a view, counter-clockwise. */
export function arcStroke(
  kind: LineKind,
  centre: Point,
  radius: number,
  from: number,
  to: number,
  style: Style,
): Stroke {
  const dashes = fittedDashes(kind, (radius * (to - from) * Math.PI) / 180)
  return {
    stroke: 'arc',
    class: classes[kind],
    width: widthOf(kind, style),
    centre: point(centre[0], centre[1]),
    radius: kept(radius),
    from: kept(from),
    to: kept(to),
    ...(dashes && { dashes: dashes.map(kept) }),
  }
}

/** The filled triangle of an arrowhead, 3 : 1. */
export function arrowhead(x: number, y: number, ux: number, uy: number, length: number): Point[] {
  const bx = x - length * ux
  const by = y - length * uy
  const half = length / 6
  return [point(x, y), point(bx - uy * half, by + ux * half), point(bx + uy * half, by - ux * half)]
}

/** Extension lines that stand already, so that one is not drawn over another. */
export class Extensions {
  private readonly drawn: { upright: boolean; at: number; from: number; to: number }[] = []

  /** What is left to draw of an axis-parallel segment. */
  rest(x1: number, y1: number, x2: number, y2: number): [number, number, number, number] | undefined {
    const upright = Math.abs(x1 - x2) < 1e-6
    if (!upright && Math.abs(y1 - y2) > 1e-6) return [x1, y1, x2, y2]
    const at = upright ? x1 : y1
    let from = upright ? Math.min(y1, y2) : Math.min(x1, x2)
    let to = upright ? Math.max(y1, y2) : Math.max(x1, x2)
    for (const other of this.drawn) {
      if (other.upright !== upright || Math.abs(other.at - at) > 0.01) continue
      if (other.from <= from + 0.01 && other.to >= to - 0.01) return undefined
      if (other.from <= from + 0.01 && other.to > from) from = other.to
      else if (other.to >= to - 0.01 && other.from < to) to = other.from
    }
    this.drawn.push({ upright, at, from, to })
    return upright ? [at, from, at, to] : [from, at, to, at]
  }
}

/** All strokes of a piece, thin, in class `size` unless said otherwise; of its segments only those of kind `only`. */
export function strokesOf(
  piece: Piece,
  style: Style,
  of: string | undefined,
  extensions: Extensions,
  klass: StrokeClass = 'size',
  only?: number,
): Stroke[] {
  const strokes: Stroke[] = []
  const common = { class: klass, width: style.widths.thin, ...(of !== undefined && { of }) }
  const { segments, arrows, arcs, fills } = piece
  for (let i = 0; i < segments.length; i += 5) {
    if (segments[i] === is.chord || (only !== undefined && segments[i] !== only)) continue
    let ends: [number, number, number, number] | undefined = [
      segments[i + 1]!,
      segments[i + 2]!,
      segments[i + 3]!,
      segments[i + 4]!,
    ]
    if (segments[i] === is.extension) ends = extensions.rest(...ends)
    if (ends && Math.hypot(ends[2] - ends[0], ends[3] - ends[1]) > 1e-6)
      strokes.push({ stroke: 'line', ...common, from: point(ends[0], ends[1]), to: point(ends[2], ends[3]) })
  }
  for (let i = 0; i < arcs.length; i += 5)
    strokes.push({
      stroke: 'arc',
      ...common,
      centre: point(arcs[i]!, arcs[i + 1]!),
      radius: kept(arcs[i + 2]!),
      from: kept(arcs[i + 3]!),
      to: kept(arcs[i + 4]!),
    })
  for (let i = 0; i < arrows.length; i += 4)
    strokes.push({
      stroke: 'fill',
      ...common,
      points: arrowhead(arrows[i]!, arrows[i + 1]!, arrows[i + 2]!, arrows[i + 3]!, style.arrow),
    })
  for (let i = 0; i < fills.length; i += 6)
    strokes.push({
      stroke: 'fill',
      ...common,
      points: [
        point(fills[i]!, fills[i + 1]!),
        point(fills[i + 2]!, fills[i + 3]!),
        point(fills[i + 4]!, fills[i + 5]!),
      ],
    })
  for (const text of piece.texts)
    strokes.push({
      stroke: 'text',
      ...common,
      at: point(text.x, text.y),
      height: text.height,
      length: kept(text.length),
      turn: text.turn,
      text: text.text,
      ...(text.bold && { bold: true }),
    })
  return strokes
}

/** A stroke moved over the paper. */
export function moved(stroke: Stroke, dx: number, dy: number): Stroke {
  const to = (at: Point): Point => [kept(at[0] + dx), kept(at[1] + dy)]
  switch (stroke.stroke) {
    case 'line':
      return { ...stroke, from: to(stroke.from), to: to(stroke.to) }
    case 'arc':
      return { ...stroke, centre: to(stroke.centre) }
    case 'text':
      return { ...stroke, at: to(stroke.at) }
    case 'fill':
      return { ...stroke, points: stroke.points.map(to) }
  }
}
