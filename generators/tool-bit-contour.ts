/**
 * The nose from above: its end, and the sides that run back from there. Half of it, y positive; the other half is its mirror image.
 *
 *     flat             vee               round
 *     ┌───.             ,┐__             .──.
 *     │    `──         /    `──         /    `──       y
 *    ─│─ ─ ─ ─ ─     ─(─ ─ ─ ─ ─      ─(─ ─ ─ ─ ─      └ x back from the end
 *
 * Two of each: as the edge is seen, on the raked face; and level cuts, before the face is ground, which the reliefs draw in and back.
 */
import type { ToolBit } from '../src/dimensions/types.ts'
import type { Corner, Point } from '../src/solid/outline.ts'

export const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180)
export const cos = (angle: number): number => Math.cos((angle * Math.PI) / 180)
export const sin = (angle: number): number => Math.sin((angle * Math.PI) / 180)
const atan = (slope: number): number => (Math.atan(slope) * 180) / Math.PI

/** A rounded corner between an end (flat, or convex to `endRadius`) at x = 0 and a side that starts at y = `half` and runs in by `taper`. */
const cornerOf = (half: number, taper: number, radius: number, endRadius: number | undefined) => {
  const across = (x: number): number => half - x * tan(taper) - radius / cos(taper)
  let x = radius
  if (endRadius !== undefined)
    for (let round = 0; round < 20; round += 1) x = endRadius - Math.sqrt((endRadius - radius) ** 2 - across(x) ** 2)
  const centre: Point = [x, across(x)]
  // Seen from the corner's centre: where the end leaves off, and where the side begins.
  const leaves = endRadius === undefined ? 180 : 180 - (Math.asin(centre[1] / (endRadius - radius)) * 180) / Math.PI
  return { centre, leaves, begins: 90 - taper }
}

const onCircle = ([x, y]: Point, radius: number, angle: number): Point => [
  x + radius * cos(angle),
  y + radius * sin(angle),
]

/** Points round a circle from one angle to another, both ends with them. */
const round = (centre: Point, radius: number, from: number, to: number, chords: number): readonly Point[] =>
  Array.from({ length: radius > 0 ? chords + 1 : 1 }, (_, index) =>
    onCircle(centre, radius, from + ((to - from) * index) / chords),
  )

const includedHalf = (bit: ToolBit): number => (bit.includedAngle ?? 180) / 2

/**
 * Half the angle between a V's flanks, seen square to the blank. Upright it is half the included angle; the face of a bit that leans is seen
 * more or less aslant than the stroke sees it.
 */
export const planHalfAngle = (bit: ToolBit): number =>
  atan((tan(includedHalf(bit)) * cos(bit.leaning?.rake ?? bit.rake)) / cos(bit.rake))

/** A V from its half angle: the tip's circle, and how far its foremost point is behind where the flanks would meet. */
const vee = (bit: ToolBit, half: number) => {
  // However it is looked at, the set-back is seen as long or as short as the V is.
  const setBack = ((bit.tipRadius ?? 0) * (1 / sin(includedHalf(bit)) - 1) * tan(includedHalf(bit))) / tan(half)
  return { half, setBack, radius: setBack / (1 / sin(half) - 1) }
}

/** How far behind its end the nose is widest, seen from above: 0 for a flat one. */
export const widestAt = (bit: ToolBit): number => {
  if (bit.form === 'round') return bit.tipRadius ?? 0
  if (bit.form !== 'vee') return 0
  const { half, setBack } = vee(bit, planHalfAngle(bit))
  return bit.noseWidth.nominal / 2 / tan(half) - setBack
}

/** Half the nose's width on the raked face, `x` back from its end. */
export const sideOnFace = (bit: ToolBit, x: number): number => {
  const half = bit.noseWidth.nominal / 2
  const slope = tan(bit.backTaperEffective)
  // A round runs on into its sides a little past its widest place.
  if (bit.form === 'round') return half / cos(bit.backTaperEffective) - (x - half) * slope
  return half - (x - widestAt(bit)) * slope
}

/** The same, level with the edge, where the sides are not yet met by the face. */
export const sideLevel = (bit: ToolBit, x: number): number => {
  const half = bit.noseWidth.nominal / 2
  if (bit.form === 'round') return half / cos(bit.backTaper) - (x - half) * tan(bit.backTaper)
  return half + widestAt(bit) * tan(bit.backTaperEffective) - x * tan(bit.backTaper)
}

/** The edge as it is seen on the raked face, from the middle of the end to where the side begins. */
export const endOnFace = (bit: ToolBit): readonly Corner[] => {
  const taper = bit.backTaperEffective
  if (bit.form === 'vee') {
    const { half, radius } = vee(bit, planHalfAngle(bit))
    const shoulder: Corner = { at: [widestAt(bit), bit.noseWidth.nominal / 2] }
    if (radius <= 0) return [{ at: [0, 0] }, shoulder]
    return [{ at: [0, 0], bulge: -tan((90 - half) / 4) }, { at: onCircle([radius, 0], radius, 90 + half) }, shoulder]
  }
  if (bit.form === 'round') {
    const radius = bit.tipRadius ?? 0
    return [{ at: [0, 0], bulge: -tan((90 + taper) / 4) }, { at: onCircle([radius, 0], radius, 90 - taper) }]
  }
  const { cornerRadius: radius, noseEndRadius } = bit
  const { centre, leaves, begins } = cornerOf(sideOnFace(bit, 0), taper, radius, noseEndRadius)
  return [
    ...(noseEndRadius === undefined ? [] : [{ at: [0, 0] as const, bulge: -tan((180 - leaves) / 4) }]),
    ...(radius > 0
      ? [
          { at: onCircle(centre, radius, leaves), bulge: -tan((leaves - begins) / 4) },
          { at: onCircle(centre, radius, begins) },
        ]
      : [{ at: centre }]),
  ]
}

/** Chords that stand for the quarter turn of a corner, of a tip, and of a round nose in the solid; and for half of a convex end. */
const chords = { corner: 6, tip: 8, round: 24, end: 8 } as const

/** A level cut of the nose's end, `down` under the edge, by points: as many at every level, and each on a straight line through all levels. */
export const endLevel = (bit: ToolBit, down: number): readonly Point[] => {
  const { endRelief, sideRelief, backTaper } = bit
  const back = down * tan(endRelief)
  const behind = (points: readonly Point[]): readonly Point[] => points.map(([x, y]) => [x + back, y])
  // The side where the end now stands.
  const half = sideLevel(bit, back) - down * tan(sideRelief)
  if (bit.form === 'vee') {
    const { half: swing, setBack, radius } = vee(bit, bit.flankSwing ?? includedHalf(bit))
    const slope = tan(swing)
    const x = (half - setBack * slope) / (slope + tan(backTaper))
    return behind([...round([radius, 0], radius, 180, 90 + swing, chords.tip), [x, (x + setBack) * slope]])
  }
  if (bit.form === 'round') {
    // The end's relief in front runs out into the sides' own.
    const radius = (bit.tipRadius ?? 0) - down * tan(sideRelief)
    return behind(round([radius, 0], radius, 180, 90 - backTaper, chords.round))
  }
  const { cornerRadius: radius, noseEndRadius } = bit
  // Level it is flatter by so much as the raked face makes it rounder.
  const end = noseEndRadius === undefined ? undefined : noseEndRadius / (1 - tan(bit.rake) * tan(endRelief))
  const { centre, leaves, begins } = cornerOf(half, backTaper, radius, end)
  const corner = round(centre, radius, leaves, begins, chords.corner)
  if (end === undefined) return behind(corner)
  return behind([...round([end, 0], end, 180, leaves, chords.end).slice(0, -1), ...corner])
}
