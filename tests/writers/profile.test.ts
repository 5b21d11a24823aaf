import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Profile } from '../../src/drawing/profile.ts'
import { areaOf, circle, type Outline, polygon, rectangle, reversed } from '../../src/solid/outline.ts'
import { profileDxf, profileSvg } from '../../src/writers/profile.ts'
import { readDxf } from './read-dxf.ts'
import { tagsOf, textOf, tree } from './xml.ts'

/** A plate 60 × 30 with a round end of radius 15 and a hole of 4, each contour turned the wrong way. */
const plate: Profile = {
  name: 'plate <1>',
  contours: [
    reversed([{ at: [0, 0] }, { at: [60, 0], bulge: 1 }, { at: [60, 30] }, { at: [0, 30] }]),
    circle(4, [10, 15]),
  ],
}

/** Contours as the reader found them, and what it said of them. */
const read = (profile: Profile) => {
  return readDxf(profileDxf(profile)).entities.map((entity) => {
    const { vertices, shape } = entity as unknown as {
      vertices: { x: number; y: number; bulge?: number }[]
      shape: boolean
    }
    const outline: Outline = vertices.map(({ x, y, bulge }) => ({
      at: [x, y],
      ...(bulge === undefined ? {} : { bulge }),
    }))
    return { type: entity.type, layer: entity.layer, closed: shape, outline }
  })
}

describe('a profile as DXF', () => {
  it('is one closed polyline a contour on layer 0, and nothing else', () => {
    expect(read(plate).map(({ type, layer, closed }) => [type, layer, closed])).toEqual([
      ['LWPOLYLINE', '0', true],
      ['LWPOLYLINE', '0', true],
    ])
  })

  it('keeps metal left of the way: outside counter-clockwise, holes clockwise, areas within what the chords leave', () => {
    const [outside, hole] = read(plate)
    const round = Math.PI * 15 * 0.002
    expect(Math.abs((outside ? areaOf(outside.outline) : 0) - (60 * 30 + (Math.PI * 15 ** 2) / 2))).toBeLessThan(round)
    expect(Math.abs((hole ? areaOf(hole.outline) : 0) + Math.PI * 2 ** 2)).toBeLessThan(2 * Math.PI * 2 * 0.002)
  })

  it('says no corner twice', () => {
    for (const { outline } of read(plate)) {
      const said = outline.map(({ at }) => at.map((value) => value.toFixed(6)).join())
      expect(new Set(said).size).toBe(said.length)
    }
  })

  it('keeps every chord within 0.002 mm of its arc', () => {
    const [, hole] = read(plate)
    const points = hole?.outline.map(({ at }) => at) ?? []
    expect(points.length).toBeGreaterThan(20)
    points.forEach((from, i) => {
      const to = points[(i + 1) % points.length] ?? from
      const middle = [(from[0] + to[0]) / 2 - 10, (from[1] + to[1]) / 2 - 15] as const
      expect(Math.hypot(...middle)).toBeGreaterThan(2 - 0.0021)
    })
  })

  it('keeps any polygon with arcs, whichever way it ran', () => {
    const corner = fc.record({
      radius: fc.double({ min: 5, max: 60, noNaN: true }),
      bulge: fc.constantFrom(0, 0.1, -0.1, 0.2),
    })
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 12 }), fc.boolean(), (corners, turned) => {
        const outline = corners.map(({ radius, bulge }, index) => {
          const angle = (2 * Math.PI * index) / corners.length
          return { at: [radius * Math.cos(angle), radius * Math.sin(angle)] as const, bulge }
        })
        const given = turned ? reversed(outline) : outline
        fc.pre(Math.abs(areaOf(outline)) > 20)
        const [found] = read({ name: 'any', contours: [given] })
        expect(Math.abs((found ? areaOf(found.outline) : 0) - Math.abs(areaOf(outline)))).toBeLessThan(2)
        for (const { at } of outline)
          expect(found?.outline.some((each) => Math.hypot(each.at[0] - at[0], each.at[1] - at[1]) < 1e-4)).toBe(true)
      }),
    )
  })

  it('is the same each time', () => {
    expect(profileDxf(plate)).toBe(profileDxf(structuredClone(plate)))
  })

  it('refuses a profile without a contour', () => {
    expect(() => profileDxf({ name: 'empty', contours: [] })).toThrow(RangeError)
  })
})

describe('a profile as SVG', () => {
  it('is as large as the part, one unit a millimetre', () => {
    expect(tree(profileSvg(plate)).attributes).toMatchObject({ width: '75mm', height: '30mm', viewBox: '0 0 75 30' })
  })

  it('is one path of closed contours with true arcs and no text drawn', () => {
    const tags = tagsOf(tree(profileSvg(plate)))
    expect(tags.map((tag) => tag.name)).toEqual(['svg', 'title', 'path'])
    expect(tags[1] && textOf(tags[1])).toBe('plate <1>')
    // Seen with y down, the outside still runs against the clock (sweep 0) and the hole with it (sweep 1).
    expect(tags[2]?.attributes.d).toBe('M0 30L60 30A15 15 0 0 0 60 0L0 0L0 30ZM8 15A2 2 0 0 1 12 15A2 2 0 0 1 8 15Z')
  })

  it('moves a part that stands anywhere onto its own paper', () => {
    const far: Profile = { name: 'far', contours: [rectangle([-20, -5], [-10, 15])] }
    expect(tagsOf(tree(profileSvg(far)))[2]?.attributes.d).toBe('M0 20L10 20L10 0L0 0L0 20Z')
    const triangle: Profile = {
      name: 'triangle',
      contours: [
        polygon([
          [0, 0],
          [3, 0],
          [0, 4],
        ]),
      ],
    } // prettier-ignore
    expect(tagsOf(tree(profileSvg(triangle)))[2]?.attributes.d).toBe('M0 4L3 4L0 0L0 4Z')
  })
})
