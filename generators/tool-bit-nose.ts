/**
 * The ground nose as planes, and the points where they meet.
 *
 *   side            z                  above          y
 *        edge  ┌────|─────────            edge w ┌──.  |   ┌──────
 *          \`-.│                                 │    `──.│           x back along the blank from the edge,
 *           \  │   blank                     ─ ─ │─ ─ ─ ─ ─ ─ ─       y sideways from the middle,
 *   x ──►    \ │                                 │    .──'│           z up from the blank's bottom
 *             \└──────────────                   └──'      └──────
 *
 * With h the edge's height, alpha rake, epsilon end relief, gamma side relief, beta swing of the sides:
 *   end   x = (h - z) tan epsilon
 *   face  z = h - x tan alpha
 *   side  y = ±(w/2 - x tan beta - (h - z) tan gamma)
 * A level cut at any z is the same corner between end and side, only moved: so the corner's radius is a cylinder that leans along with
 * both reliefs, and every ruling of it runs from the face down to the bottom.
 */
import type { ToolBit } from '../src/dimensions/types.ts'
import { circle, type Outline, type Point, polygon } from '../src/solid/outline.ts'
import { common, extrude, hull, join, place, type Solid } from '../src/solid/solid.ts'
import type { Point3 } from '../src/solid/solid.ts'

export const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180)
const cos = (angle: number): number => Math.cos((angle * Math.PI) / 180)
const sin = (angle: number): number => Math.sin((angle * Math.PI) / 180)

/** Height of the cutting edge over the bottom, mm. */
export const edgeHeight = (bit: ToolBit): number => bit.edgeHeight

/** Half the nose's width at (x, z), mm: the side plane. */
export const halfWidthAt = (bit: ToolBit, x: number, z: number): number =>
  bit.noseWidth.nominal / 2 - x * tan(bit.backTaper) - (edgeHeight(bit) - z) * tan(bit.sideRelief)

/** Chords that stand for the corner's quarter turn in the solid. */
const cornerChords = 6

/** The corner's arc at the height of the edge, from the end to the side, y positive: centre and points (x, y). */
export const cornerArc = (
  bit: ToolBit,
  radius = bit.cornerRadius,
): { readonly centre: Point; readonly points: readonly Point[] } => {
  const swing = bit.backTaper
  const centre: Point = [radius, bit.noseWidth.nominal / 2 - radius * tan(swing) - radius / cos(swing)]
  const sweep = 90 + swing
  const points = Array.from({ length: radius > 0 ? cornerChords + 1 : 1 }, (_, index): Point => {
    const angle = 180 - (sweep * index) / cornerChords
    return [centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)]
  })
  return { centre, points }
}

/** How far under the edge the face has fallen where a ruling of the nose's skin, at (x, ·) level with the edge, meets it. */
const fall = (bit: ToolBit, x: number): number => (x * tan(bit.rake)) / (1 - tan(bit.rake) * tan(bit.endRelief))

/** A point of the skin, `down` under the edge, on the ruling that starts at (x, y) level with the edge. */
const onRuling = (bit: ToolBit, [x, y]: Point, down: number): Point3 => [
  x + down * tan(bit.endRelief),
  y - down * (tan(bit.sideRelief) + tan(bit.endRelief) * tan(bit.backTaper)),
  edgeHeight(bit) - down,
]

/** Corners of the nose: on the face, at the bottom, and at the neck where it runs into the blank. */
export const nosePoints = (
  bit: ToolBit,
): { readonly face: readonly Point3[]; readonly bottom: readonly Point3[]; readonly neck: readonly Point3[] } => {
  const height = edgeHeight(bit)
  const { points } = cornerArc(bit)
  const both = (half: readonly Point3[]): readonly Point3[] =>
    half.flatMap(
      ([x, y, z]) =>
        [
          [x, y, z],
          [x, -y, z],
        ] as const,
    )
  const neck = bit.noseLength
  const neckTop = height - neck * tan(bit.rake)
  return {
    face: both(points.map((at) => onRuling(bit, at, fall(bit, at[0])))),
    bottom: both(points.map((at) => onRuling(bit, at, height))),
    neck: both([
      [neck, halfWidthAt(bit, neck, neckTop), neckTop],
      [neck, halfWidthAt(bit, neck, 0), 0],
    ]),
  }
}

/** Section of the blank in (y, z) from its bottom's middle: a square with broken corners, or a round with its flat, counter-clockwise. */
export const blankSection = (bit: ToolBit): Outline => {
  const half = bit.size / 2
  if (bit.shape === 'square') {
    const broken = bit.cornerBreak
    return polygon([
      [broken - half, 0],
      [half - broken, 0],
      [half, broken],
      [half, bit.size - broken],
      [half - broken, bit.size],
      [broken - half, bit.size],
      [-half, bit.size - broken],
      [-half, broken],
    ])
  }
  const flat = bit.flat ?? 0
  if (flat <= 0) return circle(bit.size, [0, half])
  const up = half - flat
  const chord = Math.sqrt(half ** 2 - up ** 2)
  const bulge = Math.tan((Math.PI / 2 + Math.asin(up / half)) / 4)
  return [{ at: [-chord, half + up], bulge }, { at: [0, 0], bulge }, { at: [chord, half + up] }]
}

/** The blank from x = `from` to x = `to`. */
const lying = (bit: ToolBit, from: number, to: number): Solid =>
  place(extrude(blankSection(bit), from, to), { turn: [90, 0, 90] })

/** The whole bit. The nose reaches a little into the blank, narrower there, so that the two are one body. The neck's radius is left out. */
export const bitSolid = (bit: ToolBit): Solid => {
  const { face, bottom, neck } = nosePoints(bit)
  const inside = Math.min(bit.noseLength, bit.length - bit.noseLength) / 4
  const root = neck.map(
    ([x, y, z]): Point3 => [x + inside, 0.8 * y, edgeHeight(bit) / 2 + 0.8 * (z - edgeHeight(bit) / 2)],
  )
  const ground = hull([...face, ...bottom, ...neck, ...root])
  const nose = bit.shape === 'square' ? ground : common(ground, lying(bit, -1, bit.noseLength + 2 * inside))
  return join(nose, lying(bit, bit.noseLength, bit.length))
}
