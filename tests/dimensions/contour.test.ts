// The bore's contour against areas that are worked out without it.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Bored, boredContour, finishedBore } from '../../src/dimensions/contour.ts'
import { areaOf, edgesOf } from '../../src/solid/outline.ts'
import { designed } from './designed.ts'

const job = (feature: object, diameter = 24) => ({
  units: 'mm',
  bore: { diameter, length: 30 },
  hub: { outside: 3 * diameter },
  feature,
})

const features: [string, object, number][] = [
  ['keyway', { keyway: { standard: 'iso-773' } }, 24],
  ['two keyways', { keyway: { standard: 'iso-773', at: [0, 120] } }, 24],
  ['splines', { spline: { standard: 'iso-14', size: '6x23x26' } }, 23],
  ['square socket', { socket: { sides: 4, across: 12, tip: 0.2 } }, 12.5],
  ['hexagon socket', { socket: { sides: 6, across: 12, tip: 0.2 } }, 12.2],
  ['oil groove', { groove: { radius: 1.5, depth: 1 } }, 20],
  ['deep oil groove', { groove: { radius: 1.5, depth: 1.8 } }, 20],
]

describe('the finished bore', () => {
  it.each(features)('of a %s is the bore and what each feature takes away', (_name, feature, diameter) => {
    const { section } = designed(job(feature, diameter))
    const area = areaOf(boredContour(finishedBore(section, 'middle')))
    const corners =
      section.kind === 'keyway' || section.kind === 'spline' ? 2 * section.cornerRadius ** 2 * (1 - Math.PI / 4) : 0
    const wanted = Math.PI * section.boreRadius ** 2 + section.at.length * (section.area - corners)
    expect(area / wanted).toBeCloseTo(1, 6)
  })

  it.each(features)(
    'of a %s is one contour whose every corner lies where its edges meet',
    (_name, feature, diameter) => {
      const { section } = designed(job(feature, diameter))
      for (const end of ['least', 'middle', 'most'] as const) {
        const edges = edgesOf(boredContour(finishedBore(section, end)))
        for (const [index, edge] of edges.entries()) {
          expect(Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]), `${end} ${index}`).toBeGreaterThan(
            1e-6,
          )
          expect(Math.hypot(...edge.from)).toBeLessThanOrEqual(section.cornerReachMost + 0.02)
        }
      }
      const [least, middle, most] = (['least', 'middle', 'most'] as const).map((end) =>
        areaOf(boredContour(finishedBore(section, end))),
      )
      expect(least).toBeLessThanOrEqual((middle ?? NaN) + 1e-9)
      expect(middle).toBeLessThanOrEqual((most ?? NaN) + 1e-9)
    },
  )
})

describe('several slots', () => {
  it('may be given in any order and by any full turns: the contour is the same', () => {
    const bored = (at: readonly number[]): Bored => ({
      radius: 10,
      at,
      notch: { is: 'slot', half: 3, floor: 13, corner: { is: 'round', by: 0.3 } },
    })
    const inOrder = boredContour(bored([0, 90, 200]))
    for (const at of [
      [200, 0, 90],
      [90, 200, 0],
      [-160, 450, 360],
    ])
      expect(boredContour(bored(at))).toEqual(inOrder)
  })
})

describe('corners of a slot', () => {
  const slot = (corner: 'round' | 'broken' | 'freed', by: number, mouthRoom = 0): Bored => ({
    radius: 10,
    at: [0],
    notch: { is: 'slot', half: 3, floor: 13, corner: { is: corner, by }, mouthRoom },
  })
  const sharp = areaOf(boredContour(slot('round', 0)))

  it('are rounded, broken, or freed beyond themselves', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (by) => {
        expect(sharp - areaOf(boredContour(slot('round', by)))).toBeCloseTo(2 * by ** 2 * (1 - Math.PI / 4), 9)
        expect(sharp - areaOf(boredContour(slot('broken', by)))).toBeCloseTo(by ** 2, 9)
        expect(areaOf(boredContour(slot('freed', by))) - sharp).toBeCloseTo(1.5 * Math.PI * by ** 2, 9)
      }),
    )
  })

  it('at the mouth take room out of a plug: less than a circle each', () => {
    const taken = sharp - areaOf(boredContour(slot('round', 0, 0.4)))
    expect(taken).toBeGreaterThan(0)
    expect(taken).toBeLessThan(2 * Math.PI * 0.4 ** 2)
  })
})
