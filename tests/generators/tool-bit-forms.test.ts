import { beforeAll, describe, expect, it } from 'vitest'
import { faceEdge } from '../../generators/tool-bit-above.ts'
import { bitSolid } from '../../generators/tool-bit-nose.ts'
import type { Design } from '../../src/design.ts'
import { flankSwing, flankTilt } from '../../src/dimensions/tool-bit.ts'
import type { ToolBit } from '../../src/dimensions/types.ts'
import { carve, type Kernel, measure, openKernel } from '../../src/solid/mesh.ts'
import { areaOf, circle, edgesOf, type Outline } from '../../src/solid/outline.ts'
import { difference, intersection, type MultiPolygon, type Ring, union } from './clipping.ts'
import { everyDesign } from './designs.ts'
import { areaIn, loopsAt, metalOf, outside } from './mesh-section.ts'

let kernel: Kernel
beforeAll(async () => {
  kernel = await openKernel()
})

interface Job {
  readonly design: Design
  readonly bit: ToolBit
}
const jobs: readonly Job[] = everyDesign.flatMap((design) => (design.bit ? [{ design, bit: design.bit }] : []))
const vees = jobs.filter(({ bit }) => bit.form === 'vee')
const rounds = jobs.filter(({ bit }) => bit.form === 'round')
const convex = jobs.filter(({ bit }) => bit.noseEndRadius !== undefined)
const leaning = jobs.filter(({ bit }) => bit.leaning)

const radians = (angle: number): number => (angle * Math.PI) / 180
const tan = (angle: number): number => Math.tan(radians(angle))

/** Convex outline of points, counter-clockwise (monotone chain). */
const hullOf = (points: readonly [number, number][]): [number, number][] => {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (all: readonly [number, number][]): [number, number][] => {
    const kept: [number, number][] = []
    for (const [x, y] of all) {
      for (;;) {
        const [b, a] = [kept.at(-1), kept.at(-2)]
        if (!a || !b || (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) > 0) break
        kept.pop()
      }
      kept.push([x, y])
    }
    return kept.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

/** What the carved nose cuts: its outline along the stroke, x back from the foremost point; the blank behind it left out. */
const cutting = ({ design, bit }: Job): [number, number][] => {
  const { positions } = carve(kernel, bitSolid(bit), 0.002)
  const lean = radians(design.bar?.incline ?? 0)
  const points = Array.from({ length: positions.length / 3 }, (_, index): [number, number, number] => [
    positions[3 * index] ?? 0,
    positions[3 * index + 1] ?? 0,
    positions[3 * index + 2] ?? 0,
  ]).filter(
    ([x, y]) =>
      x < bit.noseLength - 1e-6 || (x < bit.noseLength + 1e-6 && 2 * Math.abs(y) < bit.widthAtNeck.nominal + 1e-3),
  )
  const seen = points.map(([x, y, z]): [number, number] => [
    x * Math.cos(lean) + (z - bit.edgeHeight) * Math.sin(lean),
    y,
  ])
  const foremost = Math.min(...seen.map(([x]) => x))
  return hullOf(seen.map(([x, y]) => [x - foremost, y]))
}

/** The same outline with its foremost point at x = `floor` in the hub. */
const inHub = (job: Job, floor: number): MultiPolygon => [
  [cutting(job).map(([x, y]): [number, number] => [floor - x, y])],
]

const ring = (outline: Outline, chords = 720): Ring =>
  edgesOf(outline).flatMap(({ from, arc }): [number, number][] =>
    arc
      ? Array.from({ length: chords / 2 }, (_, index): [number, number] => {
          const angle = arc.start + (arc.sweep * index) / (chords / 2)
          return [arc.centre[0] + arc.radius * Math.cos(angle), arc.centre[1] + arc.radius * Math.sin(angle)]
        })
      : [[from[0], from[1]]],
  )

describe('every form', () => {
  it('is among the designs', () => {
    expect([vees.length, rounds.length, convex.length, leaning.length].map((count) => count > 0)).toEqual([
      true,
      true,
      true,
      true,
    ])
    expect(leaning.some(({ bit }) => bit.form === 'vee')).toBe(true)
    expect(leaning.some(({ bit }) => bit.shape === 'square')).toBe(true)
  })

  it('carves to one closed body inside its blank', () => {
    for (const { bit } of [...vees, ...rounds, ...convex, ...leaning]) {
      const { bodies, genus, openEdges, min, max } = measure(carve(kernel, bitSolid(bit), 0.005))
      expect({ bodies, genus, openEdges }).toEqual({ bodies: 1, genus: 0, openEdges: 0 })
      expect([min[0], max[0]]).toEqual([expect.closeTo(0, 5), expect.closeTo(bit.length, 5)])
      expect(min[2]).toBeGreaterThan(-1e-4)
      expect(max[2]).toBeLessThan(bit.size - (bit.flat ?? 0) + 1e-4)
      expect(Math.max(max[1], -min[1])).toBeLessThan(bit.size / 2 + 1e-4)
    }
  })

  it('has relief all round: each level cut lies well inside the one above it', () => {
    for (const { bit } of [...vees, ...rounds, ...convex, ...leaning]) {
      const mesh = carve(kernel, bitSolid(bit), 0.002)
      // A round blank's own skin cuts the nose off lower down.
      const levels = [0.97, 0.85, 0.7].map(
        (part) => part * (bit.edgeHeight - bit.noseLength * tan(Math.max(0, bit.rake))),
      )
      const from = bit.noseLength - 0.05
      const nose: MultiPolygon = [
        [
          [
            [-1, -50],
            [from, -50],
            [from, 50],
            [-1, 50],
          ],
        ],
      ]
      const cuts = levels.map((level) => intersection(metalOf(loopsAt(mesh, 2, level)), nose))
      cuts.slice(1).forEach((cut, index) => {
        const [above, deeper] = [cuts[index] ?? cut, (levels[index] ?? 0) - (levels[index + 1] ?? 0)]
        expect(outside(cut, above)).toBeLessThan(1e-3)
        const tip = (shape: MultiPolygon) => Math.min(...(shape[0]?.[0] ?? []).map(([x]) => x))
        expect(tip(cut) - tip(above)).toBeCloseTo(deeper * tan(bit.endRelief), 3)
      })
    }
  })

  it('is drawn from above as it is carved', () => {
    for (const job of [...vees, ...rounds, ...convex].filter(({ bit }) => !bit.leaning)) {
      // The closing edge, from shoulder back to the end, is left out.
      const upper = ring(faceEdge(job.bit), 400).filter(([x, y]) => y >= 0 && x <= job.bit.noseLength)
      const lower = upper.toReversed().map(([x, y]): [number, number] => [x, -y])
      const from = job.bit.noseLength - job.bit.neckRadius - 0.05
      const box: MultiPolygon = [
        [
          [
            [-1, -50],
            [from, -50],
            [from, 50],
            [-1, 50],
          ],
        ],
      ]
      const whole = intersection([[[...upper, ...lower]]], box)
      const carved = intersection([[cutting(job)]], box)
      expect(outside(whole, carved) + outside(carved, whole)).toBeLessThan(0.02 * job.bit.noseWidth.nominal)
    }
  })
})

describe('a V in its socket at full depth', () => {
  const polygonOf = ({ section }: Design): Ring => {
    const sides = section.socket?.sides ?? 0
    const vertex = section.socket?.vertex ?? 0
    return Array.from({ length: sides }, (_, index): [number, number] => {
      const angle = (2 * Math.PI * index) / sides
      return [vertex * Math.cos(angle), vertex * Math.sin(angle)]
    })
  }

  it('cuts nothing that should stand', () => {
    for (const job of vees) {
      const { section } = job.design
      const open = union([polygonOf(job.design)], [ring(circle(2 * section.boreRadius), 2880)])
      expect(outside(inHub(job, section.floor), open)).toBeLessThan(1e-3)
    }
  })

  it('leaves nothing of the corner but its tip’s round', () => {
    for (const job of vees) {
      const { section } = job.design
      const half = radians(job.bit.includedAngle ?? 0) / 2
      const tip = job.bit.tipRadius ?? 0
      const reach = (section.socket?.vertex ?? 0) + 1
      const side = reach * Math.tan(Math.PI / (section.socket?.sides ?? 4) - 0.001)
      const wedge: MultiPolygon = [
        [
          [
            [0, 0],
            [reach, -side],
            [reach, side],
          ],
        ],
      ]
      const corner = difference(intersection([[polygonOf(job.design)]], wedge), [
        ring(circle(2 * section.boreRadius), 2880),
      ])
      const round = tip ** 2 * (1 / Math.tan(half) - (Math.PI / 2 - half))
      const left = areaIn(difference(corner, inHub(job, section.floor)))
      // At the mouth's edge, where the bore's chords and the flats run out together, next to nothing.
      expect(Math.abs(left - round), `${left} ${round}`).toBeLessThan(0.005)
    }
  })

  it('has its flanks at half the included angle along the stroke, however it is raked and however it leans', () => {
    for (const job of vees) {
      const half = (job.bit.includedAngle ?? 0) / 2
      const flank = cutting(job).filter(([x, y]) => y > 0 && x > 0)
      const widest = flank.reduce((best, at) => (at[1] > best[1] ? at : best))
      const tangent = flank.find(
        ([x]) => Math.abs(x - (job.bit.tipRadius ?? 0) * (1 - Math.sin(radians(half)))) < 0.004,
      )
      expect(tangent).toBeDefined()
      const slope = (widest[1] - (tangent?.[1] ?? 0)) / (widest[0] - (tangent?.[0] ?? 0))
      expect((Math.atan(slope) * 180) / Math.PI).toBeCloseTo(half, 1)
      expect(2 * widest[1]).toBeCloseTo(job.bit.noseWidth.nominal, 3)
    }
  })
})

describe('what the grinder sets for a V', () => {
  it('is half the included angle and the plain relief where the face is level', () => {
    expect(flankSwing(90, 0, 7)).toBeCloseTo(45, 12)
    expect(flankSwing(120, 0, 5)).toBeCloseTo(60, 12)
    // tan τ = tan 7° · sin 45°, by hand.
    expect(flankTilt(45, 7)).toBeCloseTo(4.9621, 3)
  })

  it('is blunter under rake, keener where the bit leans: the raked face against the flank’s plane, cut by hand', () => {
    for (const [rake, relief, lean] of [
      [10, 7, 0],
      [-5, 20, 15],
      [-10, 25, 20],
    ] as const) {
      const swing = radians(flankSwing(90, rake, relief, rake + lean))
      // Flank through the origin: normal square to its level line (cos, sin, 0) and to the ruling (tan relief, 0, -1).
      const along = [Math.cos(swing), Math.sin(swing), 0] as const
      const down = [tan(relief), 0, -1] as const
      const normal = [
        along[1] * down[2] - along[2] * down[1],
        along[2] * down[0] - along[0] * down[2],
        along[0] * down[1] - along[1] * down[0],
      ] as const
      const face = [tan(rake), 0, 1] as const
      const edge = [
        normal[1] * face[2] - normal[2] * face[1],
        normal[2] * face[0] - normal[0] * face[2],
        normal[0] * face[1] - normal[1] * face[0],
      ] as const
      const back = edge[0] * Math.cos(radians(lean)) + edge[2] * Math.sin(radians(lean))
      expect(Math.abs((Math.atan(edge[1] / back) * 180) / Math.PI)).toBeCloseTo(45, 9)
    }
  })
})

describe('a round nose', () => {
  it('cuts its groove and no more', () => {
    for (const job of rounds) {
      const { section } = job.design
      const nose = section.groove?.radius ?? 0
      const centre = section.floor - nose
      const floorRing = ring(circle(2 * nose, [centre, 0]), 2880)
      const open = union(
        [floorRing],
        [ring(circle(2 * section.boreRadius), 2880)],
        [
          [
            [0, -nose],
            [centre, -nose],
            [centre, nose],
            [0, nose],
          ],
        ],
      )
      const cut = inHub(job, section.floor)
      expect(outside(cut, open)).toBeLessThan(0.004)
      const front: MultiPolygon = difference([[floorRing]], [ring(circle(2 * section.boreRadius), 2880)])
      expect(areaIn(difference(front, cut))).toBeLessThan(0.02)
      expect(2 * Math.max(...cutting(job).map(([, y]) => y))).toBeCloseTo(job.bit.noseWidth.nominal, 2)
    }
  })
})

describe('a convex end', () => {
  it('is the floor of a spline: its points on the circle about the axis, corners rounded', () => {
    for (const job of convex) {
      const { section } = job.design
      const radius = job.bit.noseEndRadius ?? 0
      expect(radius).toBeCloseTo(section.floor, 9)
      const inner = job.bit.noseWidth.nominal / 2 - job.bit.cornerRadius - 0.05
      const end = cutting(job).filter(([x, y]) => Math.abs(y) < inner && x < radius / 4)
      expect(end.length).toBeGreaterThan(8)
      for (const [x, y] of end) expect(Math.hypot(section.floor - x, y)).toBeCloseTo(radius, 2)
      const floorOpen: MultiPolygon = [[ring(circle(2 * section.floor), 2880)]]
      expect(outside(inHub(job, section.floor), floorOpen)).toBeLessThan(0.01)
    }
  })

  it('touches the bore with its corners where the section says that its middle then stands', () => {
    for (const job of convex) {
      const outline = cutting(job)
      // Brought up to the bore: how far the outline may go out before any point of it meets the bore's circle.
      const bore = job.design.section.boreRadius
      const touch = Math.min(
        ...outline.filter(([, y]) => Math.abs(y) < bore).map(([x, y]) => x + Math.sqrt(bore ** 2 - y ** 2)),
      )
      expect(touch).toBeCloseTo(job.design.section.touchOff, 2)
    }
  })

  it('is drawn with the arc that is named, and its corners tangent to it', () => {
    for (const { bit } of convex) {
      const [end, corner] = edgesOf(faceEdge(bit))
      expect(end?.arc?.radius).toBeCloseTo(bit.noseEndRadius ?? 0, 6)
      expect(corner?.arc?.radius).toBeCloseTo(bit.cornerRadius, 6)
      const [far, near] = [end?.arc?.centre ?? [0, 0], corner?.arc?.centre ?? [0, 0]]
      expect(Math.hypot(far[0] - near[0], far[1] - near[1])).toBeCloseTo((bit.noseEndRadius ?? 0) - bit.cornerRadius, 6)
    }
  })
})

describe('a leaning bit', () => {
  it('has what it leans taken off its rake and put on its relief, and its edge under the blank’s top by what the face climbs', () => {
    for (const { design, bit } of leaning) {
      const lean = design.bar?.incline ?? 0
      expect(bit.leaning?.rake).toBeCloseTo(bit.rake + lean, 9)
      expect(bit.leaning?.endRelief).toBeCloseTo(bit.endRelief - lean, 9)
      const climbs = bit.noseLength * tan(Math.max(0, -bit.rake))
      expect(bit.edgeHeight + climbs).toBeLessThanOrEqual(bit.size - (bit.flat ?? 0) + 1e-9)
      // The bore's blind end is reckoned with the edge where it is, or nearer to the holder.
      const behindFace = bit.size - (bit.flat ?? 0) - bit.edgeHeight
      const edgeToEnd = (design.bar?.tipBeyond ?? 0) - (design.bar?.overtravel ?? 0)
      if (edgeToEnd > 0)
        expect(edgeToEnd).toBeGreaterThanOrEqual(
          (design.bar?.bitToEnd ?? 0) + behindFace / Math.cos(radians(lean)) - 1e-6,
        )
    }
  })
})

describe('areas', () => {
  it('a drawn nose is no wider than it says', () => {
    for (const { bit } of [...vees, ...rounds]) {
      const half: Outline = [...faceEdge(bit), { at: [bit.noseLength, 0] }, { at: [0, 0] }]
      expect(Math.abs(areaOf(half))).toBeLessThan((bit.noseLength * (bit.noseWidth.nominal + 4 * bit.neckRadius)) / 2)
    }
  })
})
