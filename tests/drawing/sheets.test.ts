import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodiesOf, type Drafting, lay } from '../../src/drawing/lay.ts'
import { legible, lengthOf } from '../../src/drawing/letters.ts'
import { said } from '../../src/drawing/numbers.ts'
import { laySet } from '../../src/drawing/set.ts'
import type { Sheet } from '../../src/drawing/sheet.ts'
import { styles } from '../../src/drawing/style.ts'
import type { Callout, Drawing } from '../../src/drawing/view.ts'
import { measure } from './measure.ts'
import { groundBit, slottedBushing, steppedBar } from './parts.ts'
import { thorough } from '../thorough.ts'

const drafting: Drafting = {
  convention: 'iso',
  units: 'mm',
  paper: 'A4',
  projection: 'first',
  job: 'cider-mill-pulley',
  checksum: '5f3a91c2',
  verdict: 'sound, 1 caution',
}

const between = (least: number, most: number): fc.Arbitrary<number> => fc.double({ min: least, max: most, noNaN: true })
/** Sizes as they are chosen: to 0.01 mm. */
const made = (value: number): number => Math.round(value * 100) / 100

/** Bores of 6 to 100 mm, and parts as they go with them. */
const drawings: fc.Arbitrary<Drawing> = fc
  .record({
    bore: between(6, 100),
    a: between(0, 1),
    b: between(0, 1),
    c: between(0, 1),
    which: fc.constantFrom('bar', 'bushing', 'bit'),
  })
  .map(({ bore, a, b, c, which }) => {
    if (which === 'bushing') {
      const slot = made(bore * (0.2 + 0.15 * a))
      return slottedBushing(made(bore), made(bore * (0.8 + 1.2 * b) + 6), slot, made(bore * (0.42 + 0.12 * c)))
    }
    if (which === 'bar') {
      const body = made(bore * (0.55 + 0.2 * a))
      const length = made(bore * (1.5 + 2 * b) + 25)
      return steppedBar(
        body,
        made(body * (1.15 + 0.2 * c) + 1),
        length,
        made(length + 40 + 30 * c),
        made(body * (0.4 + 0.15 * b)),
      )
    }
    const size = [3, 4, 5, 6, 8, 10, 12][Math.floor(a * 6.99)] ?? 6
    return groundBit(
      size,
      made(size * (2.5 + 2 * b) + 3),
      made(size * (0.6 + 0.3 * c)),
      made(size * 0.8),
      2 + Math.round(10 * b),
      5 + Math.round(5 * c),
      0.5 + Math.round(3 * a) / 2,
    )
  })

const draftings: fc.Arbitrary<Drafting> = fc
  .record({
    convention: fc.constantFrom('iso' as const, 'asme' as const),
    units: fc.constantFrom('mm' as const, 'in' as const),
    paper: fc.constantFrom('A4' as const, 'Letter' as const),
    projection: fc.constantFrom('first' as const, 'third' as const),
    job: fc.constant('cider-mill-pulley'),
    checksum: fc.constant('5f3a91c2'),
    verdict: fc.constant('sound, 1 caution'),
    band: fc.constantFrom('', 'DO NOT MAKE: bar does not clear the bore, 2 more'),
  })
  .map(({ band, ...rest }) => ({ ...rest, ...(band !== '' && { band }) }))

const calloutsOf = (drawing: Drawing): readonly Callout[] => drawing.views.flatMap((view) => view.callouts)
const textsOf = (sheets: readonly Sheet[], of?: string): string[] =>
  sheets.flatMap((sheet) =>
    sheet.strokes.flatMap((stroke) =>
      stroke.stroke === 'text' && (of === undefined || stroke.of === of) ? [stroke.text] : [],
    ),
  )

describe('sheets', () => {
  it('nothing overlaps, all is in the frame, no letters are needed', () => {
    fc.assert(
      fc.property(drawings, draftings, (drawing, manner) => {
        expect(bodiesOf(drawing, manner).lettered).toBe(false)
        const leaders = new Set(calloutsOf(drawing).flatMap(({ callout, of }) => (callout === 'leader' ? [of] : [])))
        for (const sheet of lay(drawing, manner)) {
          const { clearance, outside, ...met } = measure(sheet, leaders)
          expect(met).toEqual({ textOverText: 0, arrowsOverText: 0, linesThroughText: 0, leadersCrossed: 0, where: [] })
          expect(clearance).toBeGreaterThanOrEqual(0.5 - 1e-3)
          expect(outside).toEqual([])
        }
      }),
      { numRuns: 120, seed: 11 },
    )
  })

  it('every callout stands on the sheets of its part once, with its number', () => {
    fc.assert(
      fc.property(drawings, draftings, (drawing, manner) => {
        const sheets = lay(drawing, manner)
        for (const callout of calloutsOf(drawing)) {
          const texts = textsOf(sheets, callout.of)
          if (callout.callout === 'leader') {
            expect(texts.length).toBe(callout.lines.length)
            continue
          }
          const { main, upper, lower, after } = said(callout.worth, manner)
          const wanted = [main, upper, lower, after].filter((text) => text !== undefined && text !== '')
          for (const text of wanted)
            expect(texts.filter((one) => one === text)).toHaveLength(wanted.filter((one) => one === text).length)
        }
      }),
      { numRuns: 60, seed: 12 },
    )
  })

  it('is true: a callout spans its value, and on paper its value times the scale', () => {
    fc.assert(
      fc.property(drawings, draftings, (drawing, manner) => {
        const sheets = lay(drawing, manner)
        const broken = sheets.some((sheet) => sheet.strokes.some((stroke) => stroke.class === 'torn'))
        for (const callout of calloutsOf(drawing)) {
          if (callout.callout !== 'linear') continue
          expect(Math.abs(callout.b - callout.a)).toBeCloseTo(callout.worth.value, 9)
          const found = sheets.flatMap((sheet) => sheet.dimensions).filter((dimension) => dimension.of === callout.of)
          expect(found).toHaveLength(1)
          const [dimension] = found
          const [from, to] = dimension?.points ?? []
          if (!dimension || !from || !to) throw new Error(callout.of)
          const paper = callout.axis === 'x' ? to[0] - from[0] : to[1] - from[1]
          // A stretch that is cut short is shorter on paper.
          if (broken && callout.axis === 'x')
            expect(paper).toBeLessThanOrEqual(callout.worth.value * dimension.scale + 0.002)
          else expect(Math.abs(paper - callout.worth.value * dimension.scale)).toBeLessThan(0.002)
        }
      }),
      { numRuns: 60, seed: 13 },
    )
  })

  it('is legible: heights of the convention, every text as long as it is measured', () => {
    fc.assert(
      fc.property(drawings, draftings, (drawing, manner) => {
        const style = styles[manner.convention]
        for (const sheet of lay(drawing, manner))
          for (const stroke of sheet.strokes) {
            if (stroke.stroke !== 'text') continue
            expect(stroke.length).toBeCloseTo(lengthOf(stroke.text, stroke.height, stroke.bold), 2)
            if (stroke.class === 'size') expect([style.text, style.small]).toContain(stroke.height)
            expect(stroke.height).toBeGreaterThanOrEqual(1.8)
          }
      }),
      { numRuns: 40, seed: 14 },
    )
  })

  it('keeps no hatch on texts', () => {
    const drawing = slottedBushing(60, 70, 14, 28)
    for (const sheet of lay(drawing, drafting)) {
      expect(sheet.strokes.filter((stroke) => stroke.class === 'hatch').length).toBeGreaterThan(10)
      expect(measure(sheet, new Set()).linesThroughText).toBe(0)
    }
  })

  it('first and third angle say the same and put views on opposite sides', () => {
    const drawing = groundBit(6, 18, 5, 5, 8, 7, 1)
    const [first, third] = (['first', 'third'] as const).map((projection) => lay(drawing, { ...drafting, projection }))
    const words = (sheets: readonly Sheet[] | undefined): string[] =>
      textsOf(sheets ?? [])
        .filter((text) => !/angle$|: 1$|1 :/.test(text))
        .toSorted()
    expect(words(third)).toEqual(words(first))
    const at = (sheets: readonly Sheet[] | undefined, of: string): readonly [number, number] => {
      const found = sheets?.flatMap((sheet) => sheet.dimensions).find((dimension) => dimension.of === of)
      if (!found) throw new Error(of)
      return found.line
    }
    // From above: below the front in first angle. From the left: right of it.
    expect(at(first, 'noseWidth')[1]).toBeLessThan(at(first, 'length')[1])
    expect(at(third, 'noseWidth')[1]).toBeGreaterThan(at(third, 'length')[1])
    expect(at(first, 'size')[0]).toBeGreaterThan(at(first, 'length')[0])
    expect(at(third, 'size')[0]).toBeLessThan(at(third, 'length')[0])
  })

  it('a warning stands across every sheet of the set, sheets are numbered through', () => {
    const band = 'DO NOT MAKE: bar does not clear the bore'
    const sheets = laySet(
      [slottedBushing(24, 40, 8.1, 10.77), steppedBar(16, 20, 68, 128, 8.4), groundBit(6, 18, 5, 5, 8, 7, 1)],
      { ...drafting, band },
    )
    for (const [index, sheet] of sheets.entries()) {
      const texts = textsOf([sheet])
      expect(texts).toContain(band)
      expect(texts).toContain(`${index + 1} of ${sheets.length}`)
      expect(sheet.strokes.some((stroke) => stroke.class === 'stop' && stroke.stroke === 'text')).toBe(true)
    }
    expect(sheets.map((sheet) => sheet.number)).toEqual(
      expect.arrayContaining(['cider-mill-pulley-10', 'cider-mill-pulley-20', 'cider-mill-pulley-30']),
    )
  })

  it('the same drawing gives the same strokes', () => {
    fc.assert(
      fc.property(drawings, draftings, (drawing, manner) => {
        expect(JSON.stringify(lay(drawing, manner))).toBe(JSON.stringify(lay(structuredClone(drawing), manner)))
      }),
      { numRuns: 15, seed: 15 },
    )
  })

  it('the title block is 180 by 36 in the lower right corner, the frame 20 from the left', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const [sheet] = lay(slottedBushing(24, 40, 8.1, 10.77), { ...drafting, paper })
      if (!sheet) throw new Error('no sheet')
      const lines = sheet.strokes.flatMap((stroke) =>
        stroke.stroke === 'line' && stroke.class === 'sheet' ? [stroke] : [],
      )
      const right = sheet.paper.width - 10
      const has = (x1: number, y1: number, x2: number, y2: number, width: number): boolean =>
        lines.some(
          ({ from, to, width: own }) =>
            own === width && [from[0] - x1, from[1] - y1, to[0] - x2, to[1] - y2].every((off) => Math.abs(off) < 1e-9),
        )
      expect(has(right - 180, 46, right, 46, 0.35)).toBe(true)
      expect(has(right - 180, 10, right - 180, 46, 0.35)).toBe(true)
      expect(has(20, 10, right, 10, 0.7)).toBe(true)
      // The check line: 100 mm, or 4 in.
      const check = lines.find(({ from, to }) => from[0] === 12 && to[0] === 12)
      expect(check && check.to[1] - check.from[1]).toBeCloseTo(paper === 'A4' ? 100 : 101.6, 9)
    }
  })

  it.runIf(thorough)('ends with a sheet whatever it is given: more callouts than there is room for', () => {
    const bar = steppedBar(16, 20, 68, 128, 8.4)
    const crowded: Drawing = {
      ...bar,
      views: bar.views.map((view) => ({
        ...view,
        callouts: Array.from({ length: 5 }, (_, n) => n).flatMap((n) =>
          view.callouts.map((callout) => ({ ...callout, of: `${callout.of}${n}` })),
        ),
      })),
      notes: Array.from({ length: 12 }, (_, n) => ({
        heading: `NOTE ${n}`,
        lines: [[legible('a line of words that goes on '.repeat(30).trim())]],
      })),
    }
    const sheets = lay(crowded, drafting)
    expect(sheets.length).toBeGreaterThan(1)
    expect(textsOf(sheets)).toContain('SIZES')
    for (let n = 0; n < 12; n++) expect(textsOf(sheets)).toContain(`NOTE ${n}`)
  })
})
