/**
 * The contour of a bore with its features, as the void that is left: one closed outline, counter-clockwise, in the section's own plane (origin on
 * the bore axis). Each kind of feature gives a notch: a chain from its lower mouth, out to its floor and back to its upper mouth, on +x.
 */
import { mouthX } from '../dimensions/bore.ts'
import { boredContour, finishedBore } from '../dimensions/contour.ts'
import type { Section } from '../dimensions/types.ts'
import type { Corner, Outline, Point } from '../solid/outline.ts'

/** One lane of a slot as far as it is cut: nose flat at `x`, between two y, corners rounded by `corner`. */
export interface Cut {
  readonly x: number
  readonly low: number
  readonly high: number
  readonly corner: number
}

const turned = (path: readonly Corner[], angle: number): readonly Corner[] => {
  const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
  return path.map((corner) => ({
    ...corner,
    at: [corner.at[0] * c - corner.at[1] * s, corner.at[0] * s + corner.at[1] * c],
  }))
}

/** Bulge of an arc on a circle round `centre` from one point to another, counter-clockwise the short way; negative the other way. */
const bulgeBetween = (from: Point, to: Point, centre: Point): number => {
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  let sweep = Math.atan2(to[1] - centre[1], to[0] - centre[0]) - start
  if (sweep > Math.PI) sweep -= 2 * Math.PI
  if (sweep < -Math.PI) sweep += 2 * Math.PI
  return Math.tan(sweep / 4)
}

/** Where two circles cross, the crossing farther from the x axis first; undefined where they do not. */
const crossings = (radius: number, centre: Point, small: number): readonly [Point, Point] | undefined => {
  const away = Math.hypot(centre[0], centre[1])
  const along = (away ** 2 + radius ** 2 - small ** 2) / (2 * away)
  const off = radius ** 2 - along ** 2
  if (off < 0) return undefined
  const [ux, uy] = [centre[0] / away, centre[1] / away]
  const h = Math.sqrt(off)
  const one: Point = [ux * along - uy * h, uy * along + ux * h]
  const other: Point = [ux * along + uy * h, uy * along - ux * h]
  return one[1] >= other[1] ? [one, other] : [other, one]
}

/** The upper half of a centred flat nose's notch, from the middle of its floor (or from the crown's corner) to the mouth. */
const upperHalf = (radius: number, half: number, x: number, corner: number): readonly Corner[] | undefined => {
  const r = Math.min(corner, half)
  const centre: Point = [x - r, half - r]
  const wallFrom = mouthX(radius, half)
  const meets = crossings(radius, centre, r)
  const onWall = wallFrom <= x - r
  const mouth: Point | undefined = onWall ? [wallFrom, half] : meets?.[0]
  if (!mouth) return undefined
  const flat = x >= radius ? 0 : Math.sqrt(radius ** 2 - x ** 2)
  const onFlat = flat <= half - r
  const start: Point | undefined = onFlat ? [x, flat] : meets?.[1]
  if (!start) return undefined
  const path: Corner[] = []
  const bendFrom: Point = onFlat ? [x, half - r] : start
  const bendTo: Point = onWall ? [x - r, half] : mouth
  if (onFlat && x < radius) path.push({ at: start })
  if (r > 0) {
    path.push({ at: bendFrom, bulge: bulgeBetween(bendFrom, bendTo, centre) })
    if (onWall) path.push({ at: bendTo })
  } else path.push({ at: [x, half] })
  path.push({ at: mouth })
  return path
}

const mirroredBack = (path: readonly Corner[]): readonly Corner[] =>
  path.toReversed().map(({ at: [x, y] }, index, all) => {
    const bulge = path[all.length - 2 - index]?.bulge
    return bulge ? { at: [x, -y], bulge } : { at: [x, -y] }
  })

/** A centred flat nose's notch as far as its flat at `x`: two corner strips before the crown is gone, the whole floor after. */
const flatNotch = (radius: number, { x, high, corner }: Cut): readonly Corner[] | undefined => {
  const upper = upperHalf(radius, high, x, corner)
  const first = upper?.[0]
  if (!upper || !first) return undefined
  const lower = mirroredBack(upper)
  if (x >= radius) return [...lower, ...upper]
  const inner = lower.at(-1)
  if (!inner) return undefined
  return [...lower.slice(0, -1), { at: inner.at, bulge: bulgeBetween(inner.at, first.at, [0, 0]) }, ...upper]
}

/** How far out a lane reaches at a height; nothing beside it. */
const reach = ({ x, low, high, corner }: Cut, y: number): number => {
  if (y < low - 1e-9 || y > high + 1e-9) return -Infinity
  const inward = Math.min(y - low, high - y)
  if (inward >= corner) return x
  return x - corner + Math.sqrt(Math.max(0, corner ** 2 - (corner - inward) ** 2))
}

/** The notch of several lanes not all at one depth, as short chords. */
const lanesNotch = (radius: number, cuts: readonly Cut[]): readonly Corner[] | undefined => {
  const [low, high] = [Math.min(...cuts.map((cut) => cut.low)), Math.max(...cuts.map((cut) => cut.high))]
  const ys = new Set<number>()
  for (let part = 0; part <= 160; part++) ys.add(low + ((high - low) * part) / 160)
  for (const cut of cuts)
    for (const y of [cut.low, cut.high])
      for (const off of [-1e-7, 0, 1e-7, 0.3, 0.6, 1]) {
        const by = Math.abs(off) < 1e-6 ? off : off * cut.corner * (y === cut.low ? 1 : -1)
        if (y + by >= low && y + by <= high) ys.add(y + by)
      }
  const points = [...ys]
    .toSorted((a, b) => a - b)
    .map((y): Point => [Math.max(mouthX(radius, Math.abs(y)), ...cuts.map((cut) => reach(cut, y))), y])
  const cutAway = points.some(([x, y]) => x > mouthX(radius, Math.abs(y)) + 1e-9)
  if (!cutAway) return undefined
  const lower: Point = [mouthX(radius, Math.abs(low)), low]
  const upper: Point = [mouthX(radius, Math.abs(high)), high]
  return [lower, ...points, upper].map((at) => ({ at }))
}

/** The whole slot of a section, one lane. */
export const wholeSlot = (section: Section): Cut => ({
  x: section.floor,
  low: -section.width / 2,
  high: section.width / 2,
  corner: section.cornerRadius,
})

/** A notch that has its nose's own form, V or round, with the nose's foremost point at `x`. */
const formedNotch = (section: Section, x: number): readonly Corner[] | undefined => {
  const radius = section.boreRadius
  if (x <= radius + 1e-9) return undefined
  const back = section.floor - x
  const { notch } = finishedBore(section, 'middle')
  const moved =
    notch.is === 'vee'
      ? { ...notch, flat: notch.flat - back * Math.cos(Math.PI / notch.sides) }
      : notch.is === 'round'
        ? { ...notch, floor: notch.floor - back }
        : notch
  const path = boredContour({ radius, at: [0], notch: moved })
  // The bore's far side follows in two turns: its first corner is the notch's last, its second is not wanted.
  return path.slice(0, -1).map((corner, index, all) => (index === all.length - 1 ? { at: corner.at } : corner))
}

/** The notch that lanes have cut so far, on +x; undefined while nothing is cut. */
export const notchOf = (section: Section, cuts: readonly Cut[]): readonly Corner[] | undefined => {
  const [one] = cuts
  if (!one) return undefined
  if (section.socket || section.groove) return formedNotch(section, one.x)
  const whole = wholeSlot(section)
  const alike = cuts.every((cut) => Math.abs(cut.x - one.x) < 1e-9)
  const [low, high] = [Math.min(...cuts.map((cut) => cut.low)), Math.max(...cuts.map((cut) => cut.high))]
  const centred = Math.abs(low + high) < 1e-9
  if (centred && alike && (cuts.length === 1 || Math.abs(one.x - whole.x) < 1e-9))
    return flatNotch(section.boreRadius, { ...one, low, high })
  return lanesNotch(section.boreRadius, cuts)
}

/**
 * The bore with its features. `cuts` says of each feature, in the order of `section.at`, how far it is cut; left out, all are finished. `turn`
 * turns the whole by so many degrees.
 */
export const contourOf = (
  section: Section,
  cuts: readonly (readonly Cut[])[] = section.at.map(() => [wholeSlot(section)]),
  turn = 0,
): Outline => {
  const radius = section.boreRadius
  const notches = section.at
    .map((angle, index) => ({
      angle: (((angle + turn) % 360) + 360) % 360,
      notch: notchOf(section, cuts[index] ?? []),
    }))
    .toSorted((a, b) => a.angle - b.angle)
    .flatMap(({ angle, notch }) => (notch ? [turned(notch, angle)] : []))
  if (notches.length === 0)
    return [
      { at: [radius, 0], bulge: 1 },
      { at: [-radius, 0], bulge: 1 },
    ]
  return notches.flatMap((notch, index) => {
    const last = notch.at(-1)
    const next = notches[(index + 1) % notches.length]?.[0]
    if (!last || !next) return []
    return [...notch.slice(0, -1), ...boreArc(last.at, next.at, radius)]
  })
}

/** The bore from one mouth to the next, counter-clockwise, in half turns at most; without its last point. */
const boreArc = (from: Point, to: Point, radius: number): readonly Corner[] => {
  const start = Math.atan2(from[1], from[0])
  // Mouths that touch leave nothing of the bore between them.
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 1e-6) return [{ at: from }]
  let sweep = Math.atan2(to[1], to[0]) - start
  while (sweep <= 1e-9) sweep += 2 * Math.PI
  const pieces = Math.ceil(sweep / Math.PI - 1e-9)
  return Array.from({ length: pieces }, (_, piece): Corner => {
    const angle = start + (sweep * piece) / pieces
    const at: Point = piece === 0 ? from : [radius * Math.cos(angle), radius * Math.sin(angle)]
    return { at, bulge: Math.tan(sweep / pieces / 4) }
  })
}
