import type { Sheet, Stroke, StrokeClass } from '../drawing/sheet.ts'
import { byClass } from './by-class.ts'
import { at, at3, dxfFile, type Entity, type Layer, type LineType, real, type Tag, weight } from './dxf-file.ts'
import { oneLine, sweep } from './marks.ts'

// Named as a client matches them that knows patterns by name alone: it draws PHANTOM2 unbroken, DIVIDE2 not.
const dashed: Readonly<Partial<Record<StrokeClass, LineType>>> = {
  hidden: 'HIDDEN2',
  axis: 'CENTER2',
  ghost: 'DIVIDE2',
}
/** The layer of a class: its own name in capitals. */
const layerOf = (name: StrokeClass): string => name.toUpperCase()
const lineTypeOf = (name: StrokeClass): LineType => dashed[name] ?? 'CONTINUOUS'

/**
 * A sheet as plain DXF: paper millimetres, model space, every dimension taken apart into LINE, ARC, CIRCLE, TEXT and SOLID, one entity a
 * stroke, in the sheet's order, so that every client shows the same. A fill is two: a SOLID, and its outline as a hairline for clients that
 * pass over the first. Text is fitted between the two ends of its measured length.
 */
export function dxf(sheet: Sheet): string {
  const entity = entities(sheet)
  return dxfFile({
    layers: layers(sheet),
    entities: [...sheet.strokes.flatMap(entity), ...warning(sheet)],
    area: { from: [0, 0], to: [sheet.paper.width, sheet.paper.height] },
  })
}

/** A layer a class, by the order of painting; NOTE is always there for the warning. */
export function layers(sheet: Sheet): readonly Layer[] {
  const used = byClass(sheet.strokes).map(
    (each): Layer => ({
      name: layerOf(each.class),
      lineType: lineTypeOf(each.class),
      width: each.width,
      colour: each.class === 'hatch' ? 8 : 7,
    }),
  )
  if (used.some((layer) => layer.name === 'NOTE')) return used
  return [...used, { name: 'NOTE', lineType: 'CONTINUOUS', width: 0.25, colour: 7 }]
}

/** A sheet is for reading; the line over its frame says so to whoever opens it beside a cutter. */
export function warning(sheet: Sheet): readonly Entity[] {
  const text = 'SHEET IN PAPER MILLIMETRES. TO CUT, USE THE PROFILE FILE.'
  // Stroke letters of 1.8 run 1.25 a letter at most.
  return [lettering('NOTE', text, [20, sheet.paper.height - 7], 1.8, 1.25 * text.length, 0, [])]
}

/** Strokes into entities; what agrees with its layer is not said again. */
export function entities(sheet: Sheet): (stroke: Stroke) => readonly Entity[] {
  const usual = new Map(byClass(sheet.strokes).map((each) => [each.class, each.width]))
  return (stroke) => {
    const layer = layerOf(stroke.class)
    const own: Tag[] = stroke.width === usual.get(stroke.class) ? [] : [[370, weight(stroke.width)]]
    switch (stroke.stroke) {
      case 'line':
        return [
          {
            type: 'LINE',
            layer,
            tags: [...lineType(stroke), ...own, [100, 'AcDbLine'], ...at3(10, stroke.from), ...at3(11, stroke.to)],
          },
        ]
      case 'arc': {
        const circle: Tag[] = [[100, 'AcDbCircle'], ...at3(10, stroke.centre), [40, real(stroke.radius)]]
        // Clients take an arc between equal angles for the whole circle.
        if (sweep(stroke.from, stroke.to) === 0) return []
        if (sweep(stroke.from, stroke.to) === 360)
          return [{ type: 'CIRCLE', layer, tags: [...lineType(stroke), ...own, ...circle] }]
        const angles: Tag[] = [
          [100, 'AcDbArc'],
          [50, real(turned(stroke.from))],
          [51, real(turned(stroke.to))],
        ]
        return [{ type: 'ARC', layer, tags: [...lineType(stroke), ...own, ...circle, ...angles] }]
      }
      case 'text': {
        const text = plainText(stroke.text)
        if (text.trim() === '') return []
        return [lettering(layer, text, stroke.at, stroke.height, stroke.length, stroke.turn, own)]
      }
      case 'fill':
        return [
          { type: 'SOLID', layer, tags: [...own, [100, 'AcDbTrace'], ...corners(stroke.points)] },
          { type: 'LWPOLYLINE', layer, tags: [[370, '0'], [100, 'AcDbPolyline'], ...closed(stroke.points)] },
        ]
    }
  }
}

const turned = (degrees: number): number => ((degrees % 360) + 360) % 360

/** Said where the stroke departs from its layer: dashes on a continuous layer, or a line too short for its layer's dashes. */
function lineType(stroke: Extract<Stroke, { dashes?: readonly number[] }>): readonly Tag[] {
  const layer = lineTypeOf(stroke.class)
  const [first = 0, , third = first] = stroke.dashes ?? []
  const own = !stroke.dashes?.length
    ? 'CONTINUOUS'
    : layer !== 'CONTINUOUS'
      ? layer
      : third < first / 2
        ? 'CENTER2'
        : 'HIDDEN2'
  return own === layer ? [] : [[6, own]]
}

/** A SOLID counts its corners in the order of the letter Z. */
function corners(points: readonly (readonly [number, number])[]): readonly Tag[] {
  const [a, b, c, d = c] = points
  if (!a || !b || !c || !d || points.length > 4)
    throw new RangeError(`a fill has three or four corners, not ${points.length}`)
  return [...at3(10, a), ...at3(11, b), ...at3(12, d), ...at3(13, c)]
}

function closed(points: readonly (readonly [number, number])[]): readonly Tag[] {
  return [[90, String(points.length)], [70, '1'], ...points.flatMap((corner) => at(10, corner))]
}

function lettering(
  layer: string,
  text: string,
  start: readonly [number, number],
  height: number,
  length: number,
  turn: 0 | 90,
  own: readonly Tag[],
): Entity {
  const end: readonly [number, number] = turn === 90 ? [start[0], start[1] + length] : [start[0] + length, start[1]]
  return {
    type: 'TEXT',
    layer,
    tags: [
      ...own,
      [100, 'AcDbText'],
      ...at3(10, start),
      [40, real(height)],
      [1, text],
      ...(turn === 90 ? ([[50, '90.0']] satisfies Tag[]) : []),
      [41, '0.8'],
      [7, 'Standard'],
      [72, '5'],
      ...at3(11, end),
      [100, 'AcDbText'],
    ],
  }
}

/**
 * Text as DXF clients draw it: one line; no code of theirs (`%%c`, `^J`, `\U+…`) read into it; what their letters lack said otherwise.
 */
export function plainText(text: string): string {
  return oneLine(text)
    .replaceAll('\u2212', '-')
    .replaceAll(/[\u2010-\u2015]/g, '-')
    .replaceAll(/[\u2018\u2019]/g, "'")
    .replaceAll(/[\u201c\u201d]/g, '"')
    .replaceAll('\u2026', '...')
    .replaceAll('\u25a1', 'SQ ')
    .replaceAll('%%', '% %')
    .replaceAll('^', '^ ')
    .replaceAll(/\\([UM])\+/gi, '/$1+')
}
