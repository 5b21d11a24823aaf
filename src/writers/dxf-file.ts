/**
 * A DXF file (R2007, UTF-8, millimetres) from layers, entities and blocks: group codes written by us. The libraries at hand leave out
 * what clients ask for: SOLID, LAYOUT objects, block names with a star, reals that look like reals (`0.0`: one client swallows the entity
 * after a last value of a bare `0`), line ends kept out of text, and handles that start afresh in every file.
 */
import { decimal } from './marks.ts'

export type Tag = readonly [code: number, value: string]

export interface Entity {
  readonly type: string
  readonly layer: string
  /** All that follows the layer, subclass markers included. */
  readonly tags: readonly Tag[]
  /** Tags that end the entity and must stand behind everything else. */
  readonly extended?: readonly Tag[]
}

export type LineType = 'CONTINUOUS' | 'HIDDEN2' | 'CENTER2' | 'DIVIDE2'

export interface Layer {
  readonly name: string
  readonly lineType: LineType
  /** mm. */
  readonly width: number
  /** AutoCAD colour index: 7 is black on white and white on black, 8 grey. */
  readonly colour: number
}

export interface Block {
  /** `*D1`: anonymous, belongs to a dimension. */
  readonly name: string
  readonly layer: string
  readonly entities: readonly Entity[]
}

export interface DimensionStyle {
  readonly name: string
  /** What a measured length on paper is multiplied by. */
  readonly factor: number
  readonly textHeight: number
  readonly arrow: number
}

interface DxfFile {
  readonly layers: readonly Layer[]
  readonly entities: readonly Entity[]
  readonly blocks?: readonly Block[]
  readonly dimensionStyles?: readonly DimensionStyle[]
  /** Dimension texts stand level in a break of the line, not along it above it. */
  readonly level?: boolean
  /** What is to be seen and printed, mm. */
  readonly area: { readonly from: readonly [number, number]; readonly to: readonly [number, number] }
}

/** A real always carries a point: `0.0`, `12.5`. */
export function real(value: number, places = 6): string {
  const short = decimal(value, places)
  return short.includes('.') ? short : `${short}.0`
}

/** Two tags of a point, its codes 10 apart. */
export const at = (code: number, [x, y]: readonly [number, number]): readonly Tag[] => [
  [code, real(x)],
  [code + 10, real(y)],
]
/** The same with a height of 0, as old readers want it. */
export const at3 = (code: number, [x, y]: readonly [number, number]): readonly Tag[] => [
  [code, real(x)],
  [code + 10, real(y)],
  [code + 20, '0.0'],
]

// The widths a DXF may state, in hundredths of a millimetre.
const widths = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211]
/** Group 370 for a width in mm: the nearest of the widths that the format knows. */
export const weight = (width: number): string =>
  String(widths.reduce((best, each) => (Math.abs(each - width * 100) < Math.abs(best - width * 100) ? each : best)))

/** Dashes and gaps (negative), mm, of the line types by their standard names; the lengths are those of the sheet. */
const patterns: Readonly<Record<LineType, { readonly says: string; readonly lengths: readonly number[] }>> = {
  CONTINUOUS: { says: 'Solid line', lengths: [] },
  HIDDEN2: { says: 'Hidden __ __ __ __ __', lengths: [3, -0.75] },
  CENTER2: { says: 'Center ____ _ ____ _ ____', lengths: [6, -0.75, 0.5, -0.75] },
  DIVIDE2: { says: 'Divide ____ . . ____ . . ____', lengths: [6, -0.75, 0.5, -0.75, 0.5, -0.75] },
}

/** The whole file as text, to be stored as UTF-8. Handles count from 1 in every file. */
export function dxfFile(file: DxfFile): string {
  let last = 0
  const handle = (): string => (++last).toString(16).toUpperCase()
  const style = handle()
  const [modelRecord, paperRecord, modelLayout, paperLayout] = [handle(), handle(), handle(), handle()]
  const [root, groups, layouts, plotStyles, plotStyle] = [handle(), handle(), handle(), handle(), handle()]
  const blocks = [
    { name: '*Model_Space', layer: '0', entities: [], record: modelRecord, layout: modelLayout, inFile: file.entities },
    { name: '*Paper_Space', layer: '0', entities: [], record: paperRecord, layout: paperLayout, inFile: [] },
    ...(file.blocks ?? []).map((block) => ({ ...block, record: handle(), layout: undefined, inFile: [] })),
  ]
  const { from, to } = file.area
  const [level, above] = file.level ? ['1', '0'] : ['0', '1']

  const table = (name: string, records: (owner: string) => readonly (readonly Tag[])[], more: readonly Tag[] = []) => {
    const owner = handle()
    const rows = records(owner)
    return [
      [0, 'TABLE'],
      [2, name],
      [5, owner],
      [330, '0'],
      [100, 'AcDbSymbolTable'],
      [70, String(rows.length)],
      ...more,
      ...rows.flat(),
      [0, 'ENDTAB'],
    ] satisfies Tag[]
  }
  const record = (
    type: string,
    owner: string,
    marker: string,
    tags: readonly Tag[],
    own = handle(),
  ): readonly Tag[] => [
    [0, type],
    [type === 'DIMSTYLE' ? 105 : 5, own],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, marker],
    ...tags,
  ]
  const entity = ({ type, layer, tags, extended = [] }: Entity, owner: string): string => {
    const head: readonly Tag[] = [
      [0, type],
      [5, handle()],
      [330, owner],
      [100, 'AcDbEntity'],
      [8, layer],
    ]
    return written(head) + written(tags) + written(extended)
  }

  const tables: Tag[] = [
    ...table('VPORT', (owner) => [
      record('VPORT', owner, 'AcDbViewportTableRecord', [
        [2, '*Active'],
        [70, '0'],
        ...at(10, [0, 0]),
        ...at(11, [1, 1]),
        ...at(12, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]),
        ...at(13, [0, 0]),
        ...at(14, [10, 10]),
        ...at(15, [10, 10]),
        ...at3(16, [0, 0]).slice(0, 2),
        [36, '1.0'],
        ...at3(17, [0, 0]),
        [40, real((to[1] - from[1]) * 1.05)],
        [41, real((to[0] - from[0]) / (to[1] - from[1]))],
        [42, '50.0'],
      ]),
    ]),
    ...table('LTYPE', (owner) => [
      ...['ByBlock', 'ByLayer'].map((name) =>
        record('LTYPE', owner, 'AcDbLinetypeTableRecord', [
          [2, name],
          [70, '0'],
          [3, ''],
          [72, '65'],
          [73, '0'],
          [40, '0.0'],
        ]),
      ),
      ...Object.entries(patterns).map(([name, { says, lengths }]) =>
        record('LTYPE', owner, 'AcDbLinetypeTableRecord', [
          [2, name],
          [70, '0'],
          [3, says],
          [72, '65'],
          [73, String(lengths.length)],
          [40, real(lengths.reduce((sum, length) => sum + Math.abs(length), 0))],
          ...lengths.flatMap((length): Tag[] => [
            [49, real(length)],
            [74, '0'],
          ]),
        ]),
      ),
    ]),
    ...table('LAYER', (owner) =>
      [{ name: '0', lineType: 'CONTINUOUS', width: 0.25, colour: 7 } satisfies Layer, ...file.layers].map((layer) =>
        record('LAYER', owner, 'AcDbLayerTableRecord', [
          [2, layer.name],
          [70, '0'],
          [62, String(layer.colour)],
          [6, layer.lineType],
          [370, weight(layer.width)],
          [390, plotStyle],
        ]),
      ),
    ),
    ...table('STYLE', (owner) => [
      record(
        'STYLE',
        owner,
        'AcDbTextStyleTableRecord',
        [
          [2, 'Standard'],
          [70, '0'],
          [40, '0.0'],
          [41, '1.0'],
          [50, '0.0'],
          [71, '0'],
          [42, '3.5'],
          [3, 'txt'],
          [4, ''],
        ],
        style,
      ),
    ]),
    ...table('VIEW', () => []),
    ...table('UCS', () => []),
    ...table('APPID', (owner) => [
      record('APPID', owner, 'AcDbRegAppTableRecord', [
        [2, 'ACAD'],
        [70, '0'],
      ]),
    ]),
    ...table(
      'DIMSTYLE',
      (owner) =>
        [{ name: 'Standard', factor: 1, textHeight: 3.5, arrow: 3 }, ...(file.dimensionStyles ?? [])].map((each) =>
          record('DIMSTYLE', owner, 'AcDbDimStyleTableRecord', [
            [2, each.name],
            [70, '0'],
            [40, '1.0'],
            [41, real(each.arrow)],
            [42, '1.0'],
            [44, '2.0'],
            [140, real(each.textHeight)],
            [144, real(each.factor, 9)],
            [147, '1.0'],
            [73, level],
            [74, level],
            [77, above],
            [340, style],
          ]),
        ),
      [[100, 'AcDbDimStyleTable']],
    ),
    ...table('BLOCK_RECORD', (owner) =>
      blocks.map(({ name, record: own, layout }) =>
        record(
          'BLOCK_RECORD',
          owner,
          'AcDbBlockTableRecord',
          [[2, name], ...(layout ? ([[340, layout]] satisfies Tag[]) : []), [70, '4'], [281, '0'], [280, '1']],
          own,
        ),
      ),
    ),
  ]

  const definitions = blocks.map(({ name, layer, entities, record: owner }) => {
    const begin: readonly Tag[] = [
      [0, 'BLOCK'],
      [5, handle()],
      [330, owner],
      [100, 'AcDbEntity'],
      [8, layer],
      [100, 'AcDbBlockBegin'],
      [2, name],
      [70, name.startsWith('*D') ? '1' : '0'],
      ...at3(10, [0, 0]),
      [3, name],
      [1, ''],
    ]
    const inside = entities.map((each) => entity(each, owner))
    const end: readonly Tag[] = [
      [0, 'ENDBLK'],
      [5, handle()],
      [330, owner],
      [100, 'AcDbEntity'],
      [8, layer],
      [100, 'AcDbBlockEnd'],
    ]
    return [written(begin), ...inside, written(end)].join('')
  })
  const entities = blocks.flatMap(({ inFile, record: owner }) => inFile.map((each) => entity(each, owner)))

  const dictionary = (own: string, owner: string, entries: readonly (readonly [string, string])[]): readonly Tag[] => [
    [0, 'DICTIONARY'],
    [5, own],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, '1'],
    ...entries.flatMap(([name, value]): Tag[] => [
      [3, name],
      [350, value],
    ]),
  ]
  const layout = (own: string, owner: string, name: string, order: number): readonly Tag[] => [
    [0, 'LAYOUT'],
    [5, own],
    [330, layouts],
    [100, 'AcDbPlotSettings'],
    [1, ''],
    [2, 'none_device'],
    [4, ''],
    [6, ''],
    ...[40, 41, 42, 43].map((code): Tag => [code, '0.0']),
    [44, real(to[0] - from[0])],
    [45, real(to[1] - from[1])],
    [46, '0.0'],
    [47, '0.0'],
    [48, real(from[0])],
    [49, real(from[1])],
    [140, real(to[0])],
    [141, real(to[1])],
    [142, '1.0'],
    [143, '1.0'],
    // Model space: 1024, lineweights 128, use plot styles 32, so that the sheet prints as it is.
    [70, order === 0 ? '1184' : '672'],
    [72, '1'],
    [73, '0'],
    // A window, the paper's own outline, at 1:1.
    [74, '4'],
    [7, ''],
    [75, '16'],
    [147, '1.0'],
    [148, '0.0'],
    [149, '0.0'],
    [100, 'AcDbLayout'],
    [1, name],
    [70, '1'],
    [71, String(order)],
    ...at(10, from),
    ...at(11, to),
    ...at3(12, [0, 0]),
    ...at3(14, from),
    ...at3(15, to),
    [146, '0.0'],
    ...at3(13, [0, 0]),
    ...at3(16, [1, 0]),
    ...at3(17, [0, 1]),
    [76, '1'],
    [330, owner],
  ]
  const objects: Tag[] = [
    ...dictionary(root, '0', [
      ['ACAD_GROUP', groups],
      ['ACAD_LAYOUT', layouts],
      ['ACAD_PLOTSTYLENAME', plotStyles],
    ]),
    ...dictionary(groups, root, []),
    ...dictionary(layouts, root, [
      ['Model', modelLayout],
      ['Layout1', paperLayout],
    ]),
    [0, 'ACDBDICTIONARYWDFLT'],
    [5, plotStyles],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, '1'],
    [3, 'Normal'],
    [350, plotStyle],
    [100, 'AcDbDictionaryWithDefault'],
    [340, plotStyle],
    [0, 'ACDBPLACEHOLDER'],
    [5, plotStyle],
    [330, plotStyles],
    ...layout(modelLayout, modelRecord, 'Model', 0),
    ...layout(paperLayout, paperRecord, 'Layout1', 1),
  ]

  const variable = (name: string, ...tags: readonly Tag[]): readonly Tag[] => [[9, name], ...tags]
  const header: Tag[] = [
    ...variable('$ACADVER', [1, 'AC1021']),
    ...variable('$DWGCODEPAGE', [3, 'ANSI_1252']),
    ...variable('$INSBASE', ...at3(10, [0, 0])),
    ...variable('$EXTMIN', ...at3(10, from)),
    ...variable('$EXTMAX', ...at3(10, to)),
    ...variable('$LIMMIN', ...at(10, from)),
    ...variable('$LIMMAX', ...at(10, to)),
    ...variable('$LTSCALE', [40, '1.0']),
    ...variable('$TEXTSTYLE', [7, 'Standard']),
    ...variable('$CLAYER', [8, '0']),
    ...variable('$DIMSTYLE', [2, 'Standard']),
    // For readers that draw dimensions anew from the header's sizes.
    ...variable('$DIMTXT', [40, '3.5']),
    ...variable('$DIMASZ', [40, '3.0']),
    ...variable('$DIMEXO', [40, '1.0']),
    ...variable('$DIMEXE', [40, '2.0']),
    ...variable('$DIMGAP', [40, '1.0']),
    ...variable('$DIMTIH', [70, level]),
    ...variable('$DIMTOH', [70, level]),
    ...variable('$DIMTAD', [70, above]),
    ...variable('$PLIMMIN', ...at(10, from)),
    ...variable('$PLIMMAX', ...at(10, to)),
    ...variable('$MEASUREMENT', [70, '1']),
    ...variable('$LWDISPLAY', [290, '1']),
    ...variable('$INSUNITS', [70, '4']),
    ...variable('$HANDSEED', [5, (last + 1).toString(16).toUpperCase()]),
  ]
  const section = (name: string, ...texts: readonly string[]): string =>
    `  0\nSECTION\n  2\n${name}\n${texts.join('')}  0\nENDSEC\n`
  return [
    section('HEADER', written(header)),
    section('CLASSES'),
    section('TABLES', written(tables)),
    section('BLOCKS', ...definitions),
    section('ENTITIES', ...entities),
    section('OBJECTS', written(objects)),
    '  0\nEOF\n',
  ].join('')
}

/** Tags as they stand in a file: a code three signs wide, and under it its value. */
function written(tags: readonly Tag[]): string {
  let text = ''
  for (const [code, value] of tags) text += `${code < 10 ? '  ' : code < 100 ? ' ' : ''}${code}\n${value}\n`
  return text
}
