/**
 * The free space of a bore that a nose of any shape has been driven into, told point by point; and how near a bar in it is to metal, by rays.
 * Shares nothing with the closed forms it checks. The bore's axis is the origin, the nose points to +x.
 */
import { bisected, type Point } from './curves.ts'

/** Whether a point lies in the nose when its foremost point stands at x; everything behind it too, as it came that way. */
export type Nose = (point: Point, x: number) => boolean

/**
 * Within `round` of a wedge whose apex lies `round` behind the tip: a V with a rounded tip, or a pointed one, no wider than `width`. `half`: half
 * the angle between its flanks, radians.
 */
export const veeNose =
  (half: number, round: number, width = Infinity): Nose =>
  ([px, py], x) => {
    if (Math.abs(py) > width / 2) return false
    const [dx, dy] = [px - (x - round), Math.abs(py)]
    // Along the flank from the apex, and off it.
    const along = -dx * Math.cos(half) + dy * Math.sin(half)
    const off = dx * Math.sin(half) + dy * Math.cos(half)
    if (off <= 0) return true
    return along >= 0 ? off <= round : Math.hypot(dx, dy) <= round
  }

export const roundNose =
  (radius: number): Nose =>
  ([px, py], x) =>
    Math.abs(py) <= radius && (px <= x - radius || Math.hypot(px - (x - radius), py) <= radius)

export const flatNose =
  (width: number, corner: number): Nose =>
  ([px, py], x) => {
    const beside = Math.abs(py) - (width / 2 - corner)
    if (px > x || beside > corner) return false
    return beside <= 0 || px <= x - corner || Math.hypot(px - (x - corner), beside) <= corner
  }

const free =
  (radius: number, nose: Nose, x: number) =>
  (point: Point): boolean =>
    Math.hypot(...point) <= radius || (point[0] > 0 && nose(point, x))

/** Distance along a ray from `from` to the first point that is not free. */
const ray = (isFree: (point: Point) => boolean, [x, y]: Point, angle: number, far: number): number => {
  const at = (t: number): Point => [x + t * Math.cos(angle), y + t * Math.sin(angle)]
  const step = far / 400
  let t = 0
  while (t < far && isFree(at(t + step))) t += step
  return bisected(t, t + step, (distance) => isFree(at(distance)), 40)
}

/** How far a bar at `centre` is from metal in front of it or behind it; negative in metal. By rays, the shortest of them narrowed down. */
export const gapByRays = (
  radius: number,
  nose: Nose,
  x: number,
  centre: Point,
  bar: number,
  side: 'ahead' | 'behind',
): number => {
  const isFree = free(radius, nose, x)
  const middle = side === 'ahead' ? 0 : Math.PI
  const far = 3 * radius
  const cast = (angle: number) => ray(isFree, centre, angle, far)
  const rays = 120
  const angles = Array.from({ length: rays + 1 }, (_, n) => middle + (n / rays - 0.5) * Math.PI * 0.98)
  const lengths = angles.map(cast)
  const best = lengths.indexOf(Math.min(...lengths))
  let [low, high] = [angles[Math.max(0, best - 1)] ?? 0, angles[Math.min(rays, best + 1)] ?? 0]
  for (let turn = 0; turn < 40; turn++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (cast(a) < cast(b)) high = b
    else low = a
  }
  return Math.min(...lengths, cast((low + high) / 2)) - bar / 2
}

/** Half outline of the nose at x from its foremost point: where it is at each of many heights. */
const outline = (nose: Nose, x: number, half: number, steps: number): readonly Point[] =>
  Array.from({ length: steps + 1 }, (_, n): Point => {
    // Thicker towards the middle and the side, where outlines turn.
    const y = (half * (1 - Math.cos((Math.PI * n) / steps))) / 2
    return [bisected(-4 * half - 10, x, (px) => nose([px, y], x), 50), y]
  })

/** Length of the nose's outline that lies outside the bore, both sides, and how wide it is across. */
export const outlineInMetal = (radius: number, nose: Nose, x: number, half: number) => {
  const points = outline(nose, x, half, 4000)
  let [edge, across] = [0, 0]
  for (const [n, [px, py]] of points.entries()) {
    const [qx, qy] = points[n + 1] ?? [px, py]
    if (Math.hypot((px + qx) / 2, (py + qy) / 2) <= radius) continue
    edge += 2 * Math.hypot(qx - px, qy - py)
    across += 2 * Math.abs(qy - py)
  }
  return { edge, across }
}

/** x of the nose's foremost point when any of its outline first leaves the bore. */
export const touchByWalking = (radius: number, nose: Nose, half: number): number =>
  bisected(
    0,
    2 * radius,
    (x) => outline(nose, x, half, 400).every(([px, py]) => px < 0 || Math.hypot(px, py) <= radius),
    40,
  )
