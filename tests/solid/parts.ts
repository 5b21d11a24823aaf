// Small parts of the trade with the closed forms of their volumes, for the tests of carving and of the files made from it.
import fc from 'fast-check'
import { type Outline, polygon, rectangle } from '../../src/solid/outline.ts'
import { bore, cut, extrude, hull, join, letters, type Point3, revolve, type Solid } from '../../src/solid/solid.ts'

export interface Known {
  readonly solid: Solid
  /** mm³ */
  readonly volume: number
  /** mm²; an upper bound will do */
  readonly area: number
  readonly genus: number
  /** How far a point is from the nearest of the true surfaces, mm. */
  readonly off: (at: Point3) => number
}

/** ∫ f over [from, to] by the midpoint rule in θ with x = middle - half·cosθ, which smooths the square roots at both ends. */
const integral = (f: (x: number) => number, from: number, to: number, steps = 4000): number => {
  const half = (to - from) / 2
  let sum = 0
  for (let step = 0; step < steps; step += 1) {
    const angle = ((step + 0.5) / steps) * Math.PI
    sum += f(from + half * (1 - Math.cos(angle))) * half * Math.sin(angle) * (Math.PI / steps)
  }
  return sum
}
const root = (square: number): number => Math.sqrt(Math.max(square, 0))

/** What two cylinders share whose axes cross squarely, r <= R. */
const crossed = (r: number, R: number): number => integral((x) => 4 * root(r * r - x * x) * root(R * R - x * x), -r, r)

/** Round bar, chamfered ends, cross hole along y, tapped hole from the end z = 0 to the axis of the cross hole. */
export const bar = (R: number, crossHole: number, tap: number, clears = true): Known => {
  const [c, at, long] = [R / 10, 1.5 * R, 8 * R]
  const outline = polygon([
    [0, 0],
    [R - c, 0],
    [R, c],
    [R, long - c],
    [R - c, long],
    [0, long],
  ]) // prettier-ignore
  const body = Math.PI * R * R * long - 2 * Math.PI * c * c * (R - c / 3)
  return {
    solid: cut(
      revolve(outline),
      bore('y', [0, -2 * R, at], 2 * crossHole, 4 * R, { clears }),
      bore('z', [0, 0, -1], 2 * tap, at + 1, { clears }),
    ),
    volume: body - crossed(crossHole, R) - (Math.PI * tap * tap * at - crossed(tap, crossHole) / 2),
    area: 2 * Math.PI * R * (long + R) + 4 * Math.PI * R * crossHole + 2 * Math.PI * tap * at,
    genus: 2,
    off: ([x, y, z]) => {
      const r = Math.hypot(x, y)
      const cone = (end: number) => Math.abs(r - (R - c) - Math.abs(end)) / Math.SQRT2
      const flats = [Math.abs(z), Math.abs(z - long), cone(z), cone(z - long)]
      return Math.min(Math.abs(r - R), Math.abs(Math.hypot(x, z - at) - crossHole), Math.abs(r - tap), ...flats)
    },
  }
}

/** Slotted bushing: collar below z = 0, a half-round undercut above it, slot from x = `floor` outwards, open end to end. */
export const bushing = (R: number, floor: number, width: number): Known => {
  const [collar, thick, g, long] = [1.3 * R, R / 3, R / 20, 3 * R]
  const outline: Outline = [
    ...polygon([
      [0, -thick],
      [collar, -thick],
      [collar, 0],
    ]),
    { at: [R, 0], bulge: -1 },
    ...polygon([
      [R, 2 * g],
      [R, long],
      [0, long],
    ]),
  ] // prettier-ignore
  const slice = (r: number): number =>
    Math.PI * r * r - integral((y) => Math.sqrt(r * r - y * y) - floor, -width / 2, width / 2, 400)
  const groove = (z: number): number => slice(R - root(g * g - (z - g) ** 2))
  return {
    solid: cut(revolve(outline), extrude(rectangle([floor, -width / 2], [2 * R, width / 2]), -R, 4 * R)),
    volume: thick * slice(collar) + integral(groove, 0, 2 * g, 400) + (long - 2 * g) * slice(R),
    area: 2 * Math.PI * collar * (thick + collar) + 2 * Math.PI * R * long + long * (width + 4 * R),
    genus: 0,
    off: ([x, y, z]) => {
      const r = Math.hypot(x, y)
      const round = [Math.abs(r - R), Math.abs(r - collar), Math.abs(Math.hypot(r - R, z - g) - g)]
      const flat = [Math.abs(x - floor), Math.abs(Math.abs(y) - width / 2)]
      return Math.min(...round, ...flat, Math.abs(z + thick), Math.abs(z), Math.abs(z - long))
    },
  }
}

/** Nose of a bit: edge of `width` at x = 0, its sides relieved towards the heel and tapered back to the neck. Its surfaces are plane. */
export const nose = (width: number, long: number, high: number): Known => {
  const half = (x: number, z: number): number => (width / 2) * (1 - (0.15 * x) / long - 0.2 * (1 - z / high))
  const across = (x: number, z: number): Point3[] => [-1, 1].map((side): Point3 => [x, side * half(x, z), z])
  return {
    solid: hull([...across(0, high), ...across(0, 0), ...across(long, high), ...across(long, 0)]),
    volume: long * high * 2 * half(long / 2, high / 2),
    area: 2 * (long * high + width * (long + high)),
    genus: 0,
    off: ([x, y, z]) => {
      const flats = [Math.abs(x), Math.abs(x - long), Math.abs(z), Math.abs(z - high)]
      return Math.min(Math.abs(Math.abs(y) - half(x, z)), ...flats)
    },
  }
}

/** Plug with a key on +x and one raised dash on its end: one round-ended stroke. */
export const plug = (R: number, width: number, across: number): Known => {
  const mouth = root(R * R - (width / 2) ** 2)
  const [long, tall] = [R, 0.6]
  const turn = 2 * Math.PI - 2 * Math.asin(width / 2 / R)
  const outline: Outline = [
    { at: [mouth, width / 2], bulge: Math.tan(turn / 4) },
    { at: [mouth, -width / 2] },
    { at: [across - R, -width / 2] },
    { at: [across - R, width / 2] },
  ]
  const flat = (R * R * (turn - Math.sin(turn))) / 2 + width * (across - R - mouth)
  // The stroke of '-' is 12.857 long where capitals are 15 high.
  const [height, stroke] = [R / 2, R / 8]
  const dash = (12.857142857142858 / 15) * (height - stroke)
  const raised = stroke * dash + (Math.PI * stroke * stroke) / 4
  return {
    solid: join(
      extrude(outline, 0, long),
      letters('-', { height, stroke, at: [0, 0], from: long - 0.1, to: long + tall }),
    ),
    volume: flat * long + raised * tall,
    area: 2 * flat + (2 * Math.PI * R + 2 * across) * long + 2 * (stroke + dash) * 4 * tall,
    genus: 0,
    off: ([x, y, z]) => {
      const walls = [Math.abs(Math.hypot(x, y) - R), Math.abs(Math.abs(y) - width / 2), Math.abs(x - (across - R))]
      const beyond = Math.max(Math.abs(x) - dash / 2, 0)
      const lettered = Math.abs(Math.hypot(beyond, y - dashRise(height, stroke)) - stroke / 2)
      return Math.min(...walls, lettered, Math.abs(z), Math.abs(z - long), Math.abs(z - long - tall))
    },
  }
}
/** The dash lies 6.4286/15 of the way up the capitals, whose middle is at 0. */
const dashRise = (height: number, stroke: number): number => (6.428571428571429 / 15 - 0.5) * (height - stroke)

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const radius = between(3, 50)
/** Bars, bushings, noses and plugs of all the sizes that the tooling has. */
export const anyPart = {
  bar: fc
    .tuple(radius, between(0.15, 0.45), between(0.4, 0.85))
    .map(([R, hole, tap]) => bar(R, hole * R, tap * hole * R)),
  bushing: fc.tuple(radius, between(-0.6, 0.3), between(0.1, 0.5)).map(([R, floor, w]) => bushing(R, floor * R, w * R)),
  nose: fc.tuple(between(1, 25), between(2, 20), between(1, 25)).map((sizes) => nose(...sizes)),
  plug: fc.tuple(radius, between(0.1, 0.5), between(2.05, 2.3)).map(([R, w, across]) => plug(R, w * R, across * R)),
}
