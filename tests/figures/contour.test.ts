import { describe, expect, it } from 'vitest'
import { mouthX, slotArea, touchOffX } from '../../src/dimensions/bore.ts'
import { contourOf, type Cut, notchOf, wholeSlot } from '../../src/figures/contour.ts'
import { areaOf, edgesOf } from '../../src/solid/outline.ts'
import { designed, everyDesign } from '../generators/designs.ts'

const job = (feature: object, bore: object = { diameter: 24, length: 30 }) =>
  designed({
    name: 'trial',
    units: 'mm',
    bore,
    hub: { outside: 60, material: 'mild steel' },
    feature,
    tooling: { bar: {} },
  }).section

/** Area that a centred nose has cut outside the bore, by 200 000 strips. */
const cutArea = (radius: number, { x, high, corner }: Cut): number => {
  const strips = 200_000
  const step = (2 * high) / strips
  let area = 0
  for (let strip = 0; strip < strips; strip++) {
    const y = Math.abs(-high + (strip + 0.5) * step)
    const inward = high - y
    const to = inward >= corner ? x : x - corner + Math.sqrt(corner ** 2 - (corner - inward) ** 2)
    area += Math.max(0, to - mouthX(radius, y)) * step
  }
  return area
}

describe('the contour of a bore', () => {
  it('runs counter-clockwise and closes, edge by edge, for every design', () => {
    for (const { section } of everyDesign) {
      const contour = contourOf(section)
      expect(areaOf(contour)).toBeGreaterThan(Math.PI * section.boreRadius ** 2)
      const edges = edgesOf(contour)
      edges.forEach(({ to }, index) => expect(edges[(index + 1) % edges.length]?.from).toEqual(to))
      for (const { arc, from } of edges) {
        if (arc) expect(Math.hypot(from[0] - arc.centre[0], from[1] - arc.centre[1])).toBeCloseTo(arc.radius, 6)
      }
    }
  })

  it('holds bore and slots: πR² and, of each slot, its area less what its rounded corners leave', () => {
    for (const { section } of everyDesign) {
      if (section.kind !== 'keyway') continue
      const corners = 2 * (1 - Math.PI / 4) * section.cornerRadius ** 2
      const slot = slotArea(section.boreRadius, section.width / 2, section.floor) - corners
      expect(areaOf(contourOf(section))).toBeCloseTo(Math.PI * section.boreRadius ** 2 + section.at.length * slot, 6)
    }
  })

  it.each([0.05, 0.2, 0.5, 0.8, 1.2, 3])('an infeed of %s takes what strip by strip it takes', (infeed) => {
    const section = { ...job({ keyway: { standard: 'iso-773' } }), cornerRadius: 0.2 }
    const r = section.boreRadius
    const x = touchOffX(r, section.width, 0.2) + infeed
    const cut = { ...wholeSlot(section), x }
    expect(areaOf(contourOf({ ...section, at: [0] }, [[cut]])) - Math.PI * r ** 2).toBeCloseTo(cutArea(r, cut), 4)
  })

  it('nothing is cut at first touch, and two strips just after it', () => {
    const section = job({ keyway: { standard: 'iso-773' } })
    const touch = touchOffX(section.boreRadius, section.width, section.cornerRadius)
    expect(notchOf(section, [{ ...wholeSlot(section), x: touch - 1e-6 }])).toBeUndefined()
    const strips = notchOf(section, [{ ...wholeSlot(section), x: touch + 0.05 }])
    const crown = strips?.filter(({ at }) => Math.abs(at[1]) < section.width / 4)
    // Between the strips there is the bore itself, no corner of the cut.
    expect(crown).toEqual([])
  })

  it('lanes that are all at the floor are the whole slot', () => {
    const section = job({ keyway: { standard: 'iso-773' } })
    const whole = wholeSlot(section)
    const lanes = [
      { ...whole, high: 0.5 },
      { ...whole, low: -0.5 },
    ]
    expect(areaOf(contourOf(section, [lanes]))).toBeCloseTo(areaOf(contourOf(section)), 9)
  })

  it('a hexagon socket is the hexagon where it stands outside the bore', () => {
    const section = job(
      { socket: { sides: 6, across: [20, 20], tip: 0 } },
      { diameter: 20, tolerance: [0, 0], length: 30 },
    )
    // 2√3 a² with a half the flats.
    expect(areaOf(contourOf(section))).toBeCloseTo(2 * Math.sqrt(3) * 10 ** 2, 1)
  })

  it('several are turned so that any may stand on +x', () => {
    const section = job({ keyway: { standard: 'iso-773', at: [0, 90] } })
    const reach = (turn: number): number => Math.max(...contourOf(section, undefined, turn).map(({ at }) => at[0]))
    expect(reach(-90)).toBeCloseTo(section.floor, 9)
    expect(reach(-45)).toBeLessThan(section.floor)
  })
})
