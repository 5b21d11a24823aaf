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
 * both reliefs, and every ruling of it runs from the face down to the bottom. A V moves back as a whole, a round nose is a leaning cone.
 * What the level cuts look like: tool-bit-contour.ts.
 */
import type { ToolBit } from '../src/dimensions/types.ts'
import { circle, type Outline, polygon } from '../src/solid/outline.ts'
import { common, extrude, hull, join, place, type Solid } from '../src/solid/solid.ts'
import type { Point3 } from '../src/solid/solid.ts'
import { endLevel, sideLevel, tan } from './tool-bit-contour.ts'

/** Height of the cutting edge over the bottom, mm. */
export const edgeHeight = (bit: ToolBit): number => bit.edgeHeight

/** The blank's top: the flat of a round one. */
export const top = (bit: ToolBit): number => bit.size - (bit.flat ?? 0)

/** Half the nose's width at (x, z), mm: the side plane. */
export const halfWidthAt = (bit: ToolBit, x: number, z: number): number =>
  sideLevel(bit, x) - (edgeHeight(bit) - z) * tan(bit.sideRelief)

/** Corners of the nose: on the face, at the bottom, and at the neck where it runs into the blank. */
export const nosePoints = (
  bit: ToolBit,
): { readonly face: readonly Point3[]; readonly bottom: readonly Point3[]; readonly neck: readonly Point3[] } => {
  const height = edgeHeight(bit)
  const below = endLevel(bit, height)
  const both = (half: readonly Point3[]): readonly Point3[] =>
    half.flatMap(([x, y, z]) =>
      y > 1e-9
        ? ([
            [x, y, z],
            [x, -y, z],
          ] as const)
        : ([[x, 0, z]] as const),
    )
  // Along each straight line of the skin, from level with the edge down to where the face or the bottom cuts it.
  const rulings = endLevel(bit, 0).map(([x, y], index) => {
    const [xBelow, yBelow] = below[index] ?? [x, y]
    const [back, inward] = [(xBelow - x) / height, (yBelow - y) / height]
    const at = (down: number): Point3 => [x + down * back, Math.max(0, y + down * inward), height - down]
    return { at, fall: (x * tan(bit.rake)) / (1 - back * tan(bit.rake)) }
  })
  const neck = bit.noseLength
  const neckTop = height - neck * tan(bit.rake)
  return {
    face: both(rulings.map(({ at, fall }) => at(fall))),
    bottom: both(rulings.map(({ at }) => at(height))),
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
  // Under face and sides as they would run on, so that nothing bulges before the neck.
  const x = bit.noseLength + inside
  const middle = (edgeHeight(bit) - x * tan(bit.rake)) / 2
  const root = [0.2, 1.8].flatMap((part) =>
    [0.8, -0.8].map((side): Point3 => [x, side * halfWidthAt(bit, x, part * middle), part * middle]),
  )
  const ground = hull([...face, ...bottom, ...neck, ...root])
  const nose = bit.shape === 'square' ? ground : common(ground, lying(bit, -1, bit.noseLength + 2 * inside))
  return join(nose, lying(bit, bit.noseLength, bit.length))
}
