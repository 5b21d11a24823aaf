import type { IEntity } from 'dxf-parser'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stroke } from '../../src/drawing/sheet.ts'
import { dxf, plainText } from '../../src/writers/dxf.ts'
import { liveDxf } from '../../src/writers/dxf-live.ts'
import { hostile, sheet, sheetSaying, strokes } from './hand-made-sheet.ts'
import { readDxf } from './read-dxf.ts'

/** A group-code file, pair by pair. */
function pairs(source: string): readonly (readonly [number, string])[] {
  const lines = source.split('\n')
  return Array.from(
    { length: Math.floor(lines.length / 2) },
    (_, index) => [Number(lines[2 * index]), lines[2 * index + 1] ?? ''] as const,
  )
}
type Read = IEntity & Record<string, unknown>
const read = (source: string): readonly Read[] => readDxf(source).entities as Read[]
const xy = (point: unknown): readonly number[] => {
  const { x, y } = point as { x: number; y: number }
  return [x, y]
}
const isNote = (entity: Read): boolean => String(entity.text).startsWith('SHEET IN PAPER')
/** What each stroke must come back as. */
const expectedTypes = (stroke: Stroke): readonly string[] => {
  switch (stroke.stroke) {
    case 'line':
      return ['LINE']
    case 'arc':
      return [(stroke.to - stroke.from) % 360 === 0 ? 'CIRCLE' : 'ARC']
    case 'text':
      return ['TEXT']
    case 'fill':
      return ['SOLID', 'LWPOLYLINE']
  }
}

describe('a sheet as plain DXF', () => {
  const source = dxf(sheet)
  const entities = read(source)
  const drawn = entities.filter((entity) => !isNote(entity))

  it('holds each stroke, in order, on the layer of its class, and one line of warning', () => {
    expect(drawn.map((entity) => [entity.type, entity.layer])).toEqual(
      strokes.flatMap((stroke) => expectedTypes(stroke).map((type) => [type, stroke.class.toUpperCase()])),
    )
    expect(entities.filter(isNote).map((entity) => [entity.text, entity.layer])).toEqual([
      ['SHEET IN PAPER MILLIMETRES. TO CUT, USE THE PROFILE FILE.', 'NOTE'],
    ])
  })

  it('puts lines and arcs where the strokes are', () => {
    const lines = drawn
      .filter((entity) => entity.type === 'LINE')
      .map((entity) => (entity.vertices as object[]).map(xy))
    expect(lines).toEqual(strokes.flatMap((stroke) => (stroke.stroke === 'line' ? [[stroke.from, stroke.to]] : [])))
    const arcs = strokes.flatMap((stroke) => (stroke.stroke === 'arc' ? [stroke] : []))
    const round = drawn.filter((entity) => entity.type === 'ARC' || entity.type === 'CIRCLE')
    expect(round.length).toBe(arcs.length)
    round.forEach((entity, index) => {
      const arc = arcs[index]
      expect(xy(entity.center)).toEqual(arc?.centre)
      expect(entity.radius).toBe(arc?.radius)
      if (entity.type === 'CIRCLE') return
      // The reader gives radians.
      expect(((entity.startAngle as number) * 180) / Math.PI).toBeCloseTo((arc?.from ?? 0) % 360, 6)
      expect(((entity.endAngle as number) * 180) / Math.PI).toBeCloseTo((arc?.to ?? 0) % 360, 6)
    })
  })

  it('fits text between the ends of its measured length', () => {
    const texts = strokes.flatMap((stroke) => (stroke.stroke === 'text' ? [stroke] : []))
    const found = drawn.filter((entity) => entity.type === 'TEXT')
    expect(found.map((entity) => entity.text)).toEqual(texts.map((stroke) => stroke.text.replace('−', '-')))
    found.forEach((entity, index) => {
      const stroke = texts[index]
      if (!stroke) throw new Error('a text too many')
      expect(xy(entity.startPoint)).toEqual(stroke.at)
      const [x, y] = xy(entity.endPoint)
      const [along, across] = stroke.turn === 90 ? [y, x] : [x, y]
      const [start, level] = stroke.turn === 90 ? [stroke.at[1], stroke.at[0]] : stroke.at
      expect(along).toBeCloseTo(start + stroke.length, 5)
      expect(across).toBe(level)
      expect([entity.textHeight, entity.halign, entity.rotation ?? 0]).toEqual([stroke.height, 5, stroke.turn])
    })
  })

  it('fills corner by corner, and outlines what it fills', () => {
    const fills = strokes.flatMap((stroke) => (stroke.stroke === 'fill' ? [stroke.points] : []))
    const solids = drawn
      .filter((entity) => entity.type === 'SOLID')
      .map((entity) => (entity.points as object[]).map(xy))
    // A SOLID runs like the letter Z, so its last two corners change places; a triangle says its third twice.
    expect(solids).toEqual(fills.map(([a, b, c, d]) => [a, b, d ?? c, c]))
    const outlines = drawn.filter((entity) => entity.type === 'LWPOLYLINE')
    expect(outlines.map((entity) => [entity.shape, (entity.vertices as object[]).map(xy)])).toEqual(
      fills.map((points) => [true, points]),
    )
  })

  it('takes an arc of no length for nothing, not for a circle', () => {
    const nothing: Stroke = { stroke: 'arc', class: 'edge', width: 0.5, centre: [50, 50], radius: 10, from: 30, to: 30 }
    expect(read(dxf({ ...sheet, strokes: [nothing] })).map((entity) => entity.type)).toEqual(['TEXT'])
  })

  it('states units, paper and release', () => {
    const { header } = readDxf(source)
    expect(header).toMatchObject({
      $ACADVER: 'AC1021', // R2007: text is UTF-8
      $INSUNITS: 4, // millimetres
      $MEASUREMENT: 1,
      $LTSCALE: 1,
      $PLIMMAX: { x: 297, y: 210 },
    })
    expect(source).not.toMatch(/\$TD|\$TIME/)
  })

  it('gives layers their line types, weights and colours', () => {
    const { tables } = readDxf(source)
    const layers = tables.layer.layers
    expect(layers.HATCH?.colorIndex).toBe(8)
    expect(layers.EDGE?.colorIndex).toBe(7)
    expect(Object.keys(layers).toSorted()).toEqual(
      ['0', ...new Set(strokes.map((stroke) => stroke.class.toUpperCase()))].toSorted(),
    )
    expect(tables.lineType.lineTypes.CENTER2?.pattern).toEqual([6, -0.75, 0.5, -0.75])
    expect(tables.lineType.lineTypes.HIDDEN2?.pattern).toEqual([3, -0.75])
    const records = source.split('  0\nLAYER\n').slice(1)
    const said = (name: string) => {
      const record = records.find((each) => each.includes(`  2\n${name}\n`)) ?? ''
      return [/\n {2}6\n(.+)\n/.exec(record)?.[1], /\n370\n(.+)\n/.exec(record)?.[1]]
    }
    expect(said('EDGE')).toEqual(['CONTINUOUS', '50'])
    expect(said('HIDDEN')).toEqual(['HIDDEN2', '25'])
    expect(said('AXIS')).toEqual(['CENTER2', '25'])
    expect(said('GHOST')).toEqual(['DIVIDE2', '25'])
    expect(said('HATCH')).toEqual(['CONTINUOUS', '18'])
    expect(said('SHEET')).toEqual(['CONTINUOUS', '70'])
  })

  it('says only what departs from the layer', () => {
    expect(drawn.filter((entity) => entity.lineweight === 35).length).toBe(1) // the check line
    expect(
      drawn
        .filter((entity) => entity.type === 'LINE' && entity.lineType === 'CONTINUOUS')
        .map((entity) => entity.layer),
    ).toEqual(['AXIS'])
  })

  it('writes reals as reals, ends no entity with a bare 0, and gives every object a handle of its own', () => {
    for (const text of [source, liveDxf(sheet)]) {
      const all = pairs(text)
      const from = all.findIndex(([code, value]) => code === 2 && value === 'ENTITIES')
      all.forEach(([code, value], index) => {
        if ((code >= 10 && code < 60) || (code >= 140 && code < 150)) expect(value).toMatch(/^-?\d+\.\d+$/)
        if (index > from && index > 0 && code === 0 && value !== 'ENDSEC') expect(all[index - 1]?.[1]).not.toBe('0')
      })
      const handles = all.filter(([code]) => code === 5 || code === 105).map(([, value]) => value)
      const seed = handles.shift() ?? ''
      expect(new Set(handles).size).toBe(handles.length)
      expect(Math.max(...handles.map((handle) => Number.parseInt(handle, 16)))).toBeLessThan(Number.parseInt(seed, 16))
      const known = new Set([...handles, '0'])
      for (const [code, value] of all) if ([330, 340, 350, 390].includes(code)) expect(known).toContain(value)
    }
  })

  it('lets no text end its line or be read as a code', () => {
    const found = read(dxf(sheetSaying(hostile)))
    expect(found.map((entity) => entity.type)).toEqual([...hostile.map(() => 'TEXT'), 'TEXT'])
    expect(found[0]?.text).toBe('one   0 LINE   8 EDGE')
    expect(found[5]?.text).toBe('% %c ^ J /U+000A \\P{six}')
    expect(dxf(sheetSaying(hostile))).not.toMatch(/\r|[\u0085\u2028]/)
  })

  it('never gets an entity more or less from any words at all', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 40 }), { minLength: 1, maxLength: 5 }), (words) => {
        const seen = words.filter((word) => plainText(word).trim() !== '')
        expect(read(dxf(sheetSaying(words))).map((entity) => entity.type)).toEqual([...seen.map(() => 'TEXT'), 'TEXT'])
        // Two lines a pair, as many as with plain words in their place.
        const lines = (each: readonly string[]) =>
          dxf(sheetSaying(each)).split(/\r\n|[\n\r\v\f\u0085\u2028\u2029]/).length
        expect(lines(words)).toBe(lines(words.map((word) => (seen.includes(word) ? 'plain' : ' '))))
      }),
    )
  })

  it('writes what stroke fonts lack otherwise', () => {
    expect(plainText('□6 −0.013 “a – b” c…')).toBe('SQ 6 -0.013 "a - b" c...')
    expect(plainText('Ø24 ±0.02 8° 6 ×')).toBe('Ø24 ±0.02 8° 6 ×')
  })

  it('is the same text each time, whatever was written before', () => {
    expect(dxf(structuredClone(sheet))).toBe(source)
  })

  it('refuses a fill of more corners than a SOLID has', () => {
    const points = [
      [0, 0],
      [1, 0],
      [2, 1],
      [1, 2],
      [0, 1],
    ] as const // prettier-ignore
    expect(() => dxf({ ...sheet, strokes: [{ stroke: 'fill', class: 'size', width: 0.25, points }] })).toThrow(
      RangeError,
    )
  })
})

describe('a sheet as live DXF', () => {
  const source = liveDxf(sheet)
  const { blocks, tables } = readDxf(source)
  const entities = read(source)
  const live = entities.filter((entity) => entity.type === 'DIMENSION')
  const taken = new Set(sheet.dimensions.flatMap((dimension) => dimension.strokes))

  it('makes each dimension one entity with its own block', () => {
    expect(live.map((entity) => [entity.block, entity.text, entity.layer])).toEqual([
      ['*D1', 'Ø23.987', 'SIZE'],
      ['*D2', '40 -0.013', 'SIZE'],
      ['*D3', '45°', 'SIZE'],
    ])
    sheet.dimensions.forEach((dimension, index) => {
      const block = blocks[`*D${index + 1}`]
      expect(block?.entities.map((entity) => entity.type)).toEqual(
        dimension.strokes.flatMap((each) => expectedTypes(strokes[each] as Stroke)),
      )
      expect(new Set(block?.entities.map((entity) => entity.layer))).toEqual(new Set(['SIZE']))
    })
    expect(source.match(/\n {2}2\n\*D\d\n 70\n1\n/g)?.length).toBe(3) // anonymous
  })

  it('draws no stroke twice and drops none', () => {
    const rest = entities
      .filter((entity) => entity.type !== 'DIMENSION' && !isNote(entity))
      .map((entity) => entity.type)
    expect(rest).toEqual(strokes.flatMap((stroke, index) => (taken.has(index) ? [] : expectedTypes(stroke))))
  })

  it('measures in part millimetres what the sheet shows at its scale', () => {
    expect(live.map((entity) => entity.actualMeasurement)).toEqual([9.5, 40, expect.closeTo(Math.PI / 4, 6)])
    // Length factor of the style: the reverse of the scale.
    expect(source).toMatch(/\n {2}2\nSIZE_2\n(?: *\d+\n.*\n)*?144\n0\.5\n/)
    expect(Object.keys(tables)).toContain('layer')
  })

  it('starts both extension lines at one height, the one nearer to the dimension line', () => {
    expect(xy(live[0]?.linearOrAngularPoint1)).toEqual([180, 130])
    expect(xy(live[0]?.linearOrAngularPoint2)).toEqual([199, 130])
    expect(xy(live[0]?.anchorPoint)).toEqual([199, 119])
    expect(xy(live[1]?.linearOrAngularPoint1)).toEqual([214, 70])
    expect(live[1]?.angle).toBe(90)
  })

  it('gives an angle its two arms', () => {
    expect(
      [
        live[2]?.linearOrAngularPoint1,
        live[2]?.linearOrAngularPoint2,
        live[2]?.diameterOrRadiusPoint,
        live[2]?.anchorPoint,
      ].map(xy),
    ).toEqual([
      [180, 60],
      [210, 60],
      [180, 60],
      [201.2132, 81.2132],
    ])
  })

  it('leaves a frame of another name outside the block', () => {
    const framed = strokes.map((stroke, index) => (index === 22 ? { ...stroke, of: 'parallel' } : stroke))
    const file = readDxf(liveDxf({ ...sheet, strokes: framed }))
    expect(file.blocks['*D2']?.entities.map((entity) => entity.type)).toEqual(['TEXT'])
    expect(file.entities.filter((entity) => entity.type === 'LINE').length).toBe(
      strokes.filter((stroke, index) => stroke.stroke === 'line' && (index === 22 || !taken.has(index))).length,
    )
  })

  it('says whether texts stand level', () => {
    const level = (of: typeof sheet) => readDxf(liveDxf(of)).header.$DIMTIH
    const flat = strokes.map((stroke) => (stroke.stroke === 'text' ? { ...stroke, turn: 0 as const } : stroke))
    expect([level(sheet), level({ ...sheet, strokes: flat })]).toEqual([0, 1])
  })

  it('equals the plain file where no dimension lives', () => {
    expect(read(liveDxf({ ...sheet, dimensions: [] }))).toEqual(read(dxf(sheet)))
  })

  it('keeps formatting codes out of a label', () => {
    const [first] = sheet.dimensions
    if (!first) throw new Error('no dimension')
    const odd = liveDxf({ ...sheet, dimensions: [{ ...first, text: 'a\\Pb{c}<>\n  0\nLINE' }] })
    const [found, ...more] = read(odd).filter((entity) => entity.type === 'DIMENSION')
    expect([found?.text, more.length]).toEqual(['a/Pb(c)< >   0 LINE', 0])
  })
})
