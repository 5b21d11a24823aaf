import type { Sheet, SheetDimension } from '../drawing/sheet.ts'
import type { Point } from '../solid/outline.ts'
import { entities, layers, plainText, warning } from './dxf.ts'
import { at3, type Block, type DimensionStyle, dxfFile, type Entity, real, type Tag } from './dxf-file.ts'

const layer = 'SIZE'

/**
 * A sheet as DXF with live dimensions: each is a DIMENSION with its anonymous block (`*D1`, `*D2` …), which holds the strokes that draw
 * it; those strokes are nowhere else. The printed label overrides the measured one, and each scale has a dimension style whose length
 * factor turns paper into part, so that label and measurement agree. All else is as in the plain file.
 */
export function liveDxf(sheet: Sheet): string {
  const entity = entities(sheet)
  const taken = new Set<number>()
  const blocks: Block[] = []
  const live: Entity[] = []
  for (const dimension of sheet.dimensions) {
    // A frame that hangs on it and has a name of its own stays outside: readers that draw dimensions anew would lose it.
    const own = dimension.strokes.filter((index) => {
      const stroke = sheet.strokes[index]
      return stroke && !taken.has(index) && (stroke.of ?? dimension.of) === dimension.of
    })
    // A dimension without a picture is struck out by readers' audits.
    if (own.length === 0) continue
    for (const index of own) taken.add(index)
    const name = `*D${blocks.length + 1}`
    blocks.push({ name, layer, entities: sheet.strokes.filter((_, index) => own.includes(index)).flatMap(entity) })
    live.push(dimensionEntity(dimension, name))
  }
  const known = layers(sheet)
  return dxfFile({
    layers:
      live.length === 0 || known.some(({ name }) => name === layer)
        ? known
        : [...known, { name: layer, lineType: 'CONTINUOUS', width: 0.25, colour: 7 }],
    entities: [...sheet.strokes.filter((_, index) => !taken.has(index)).flatMap(entity), ...live, ...warning(sheet)],
    blocks,
    dimensionStyles: styles(sheet),
    level: level(sheet),
    area: { from: [0, 0], to: [sheet.paper.width, sheet.paper.height] },
  })
}

/** Whether upright dimensions carry their text level throughout. */
function level(sheet: Sheet): boolean {
  const upright = sheet.dimensions.filter((dimension) => dimension.turn === 90)
  const turned = upright.some(({ strokes }) =>
    strokes.some((index) => {
      const stroke = sheet.strokes[index]
      return stroke?.stroke === 'text' && stroke.turn === 90
    }),
  )
  return upright.length > 0 && !turned
}

/** A style a scale, in order of first use: `SIZE_2` is twice full size. */
function styles(sheet: Sheet): readonly DimensionStyle[] {
  const scales = [...new Set(sheet.dimensions.map(({ scale }) => scale))]
  return scales.map((scale) => ({ name: styleOf(scale), factor: 1 / scale, textHeight: 3.5, arrow: 3 }))
}

const styleOf = (scale: number): string => `SIZE_${real(scale, 4).replace(/\.0$/, '').replace('.', '_')}`

function dimensionEntity(dimension: SheetDimension, block: string): Entity {
  const upright = dimension.turn === 90
  const [a, b] = ends(dimension)
  const measured =
    dimension.is === 'angle'
      ? angleBetween(dimension)
      : (upright ? Math.abs(b[1] - a[1]) : Math.abs(b[0] - a[0])) / dimension.scale
  // Angular: 2 between two lines; linear: 0; 32 the block is its own; 128 the text stands where it was put.
  const kind = (dimension.is === 'angle' ? 2 : 0) + 32 + 128
  const common: Tag[] = [
    [100, 'AcDbDimension'],
    [2, block],
    ...at3(10, dimension.is === 'angle' ? arms(dimension)[3] : foot(dimension)),
    ...at3(11, dimension.textAt),
    [70, String(kind)],
    [71, '5'],
    [42, real(dimension.is === 'angle' ? (measured * Math.PI) / 180 : measured, 9)],
    [1, label(dimension.text)],
    [3, styleOf(dimension.scale)],
  ]
  if (dimension.is === 'angle') {
    const [from1, to1, from2] = arms(dimension)
    return {
      type: 'DIMENSION',
      layer,
      tags: [
        ...common,
        [100, 'AcDb2LineAngularDimension'],
        ...at3(13, from1),
        ...at3(14, to1),
        ...at3(15, from2),
        ...at3(16, dimension.line),
      ],
    }
  }
  return {
    type: 'DIMENSION',
    layer,
    tags: [
      ...common,
      [100, 'AcDbAlignedDimension'],
      ...at3(13, a),
      ...at3(14, b),
      ...(upright ? ([[50, '90.0']] satisfies Tag[]) : []),
      [100, 'AcDbRotatedDimension'],
    ],
  }
}

/**
 * Where the extension lines start, both at the same height across the dimension (the one nearer to its line): some readers measure the
 * straight distance between them.
 */
function ends({ points, line, turn }: SheetDimension): readonly [Point, Point] {
  const [a, b] = points
  if (!a || !b) throw new RangeError('a linear dimension has two ends')
  const across = turn === 90 ? 0 : 1
  const level = Math.abs(a[across] - line[across]) < Math.abs(b[across] - line[across]) ? a[across] : b[across]
  return turn === 90
    ? [
        [level, a[1]],
        [level, b[1]],
      ]
    : [
        [a[0], level],
        [b[0], level],
      ]
}

/** Where the second extension line meets the dimension line. */
function foot(dimension: SheetDimension): Point {
  const [, b] = ends(dimension)
  return dimension.turn === 90 ? [dimension.line[0], b[1]] : [b[0], dimension.line[1]]
}

/** Both arms of an angle as lines from the vertex outwards. */
function arms({ points }: SheetDimension): readonly [Point, Point, Point, Point] {
  const [vertex, first, second] = points
  if (!vertex || !first || !second) throw new RangeError('an angle has a vertex and a point on either arm')
  return [vertex, first, vertex, second]
}

/** Degrees between the arms, 0 to 180. */
function angleBetween(dimension: SheetDimension): number {
  const [vertex, first, , second] = arms(dimension)
  const [ax, ay, bx, by] = [first[0] - vertex[0], first[1] - vertex[1], second[0] - vertex[0], second[1] - vertex[1]]
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI
}

/** A dimension's text is read as formatted text: its three signs of formatting are replaced by what looks like them. */
const label = (text: string): string =>
  plainText(text).replaceAll('\\', '/').replaceAll('{', '(').replaceAll('}', ')').replaceAll('<>', '< >').trim() || ' '
