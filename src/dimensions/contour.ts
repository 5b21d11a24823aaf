/**
 * The bore with its features as one closed contour, counter-clockwise, each feature a notch on its own angle:
 *
 *        .-----+ mouth
 *      /       |________ .  corner: rounded, broken, or with room for a sharp one
 *     |--------|---------|-- x
 *      \       |________ '
 *        `-----+        floor
 *
 * Of the finished hub, of a ring that is printed like it (larger all round), or of a plug that goes in (smaller). Plain arcs and lines, mm.
 */
import { mouthX } from './bore.ts'
import type { Section } from './types.ts'

type Place = readonly [x: number, y: number]

/** `bulge` bends the edge that leaves this corner: the tangent of a quarter of its angle, positive counter-clockwise. */
export interface Turn {
  readonly at: Place
  readonly bulge?: number
}

/** One feature on +x. */
export type Notch =
  | {
      readonly is: 'slot'
      readonly half: number
      readonly floor: number
      /** What becomes of the floor's corners, and by how much: a fillet, a 45° break, or a round of its own at the corner. */
      readonly corner: { readonly is: 'round' | 'broken' | 'freed'; readonly by: number }
      /** Radius of the room at the mouth's corners, for a plug. */
      readonly mouthRoom?: number
    }
  /** Between two flats `flat` from the axis. */
  | { readonly is: 'vee'; readonly sides: number; readonly flat: number; readonly tip: number }
  | { readonly is: 'round'; readonly radius: number; readonly floor: number }

export interface Bored {
  readonly radius: number
  /** Degrees. */
  readonly at: readonly number[]
  readonly notch: Notch
}

/** Bulge of an arc that turns by `sweep`, radians. */
const bulged = (sweep: number): number => Math.tan(sweep / 4)

/** The upper half of a notch, from its floor's middle (left out) to its mouth. */
const upperHalf = ({ radius, notch }: Bored): readonly Turn[] => {
  switch (notch.is) {
    case 'slot': {
      const { half, floor, corner, mouthRoom = 0 } = notch
      const { by } = corner
      const turned: readonly Turn[] =
        by <= 0
          ? [{ at: [floor, half] }]
          : [
              {
                at: [floor, half - by],
                ...(corner.is === 'broken'
                  ? {}
                  : { bulge: bulged(corner.is === 'round' ? Math.PI / 2 : 1.5 * Math.PI) }),
              },
              { at: [floor - by, half] },
            ]
      const foot = mouthX(radius, half)
      if (mouthRoom <= 0) return [...turned, { at: [foot, half] }]
      // The room's circle stands on the mouth's corner and meets the bore at this angle.
      const leaves = Math.asin(half / radius) + 2 * Math.asin(mouthRoom / (2 * radius))
      const on: Place = [radius * Math.cos(leaves), radius * Math.sin(leaves)]
      const towards = Math.atan2(on[1] - half, on[0] - foot)
      return [...turned, { at: [foot + mouthRoom, half], bulge: -bulged(2 * Math.PI - towards) }, { at: on }]
    }
    case 'vee': {
      const { sides, flat, tip } = notch
      const share = Math.PI / sides
      const psi = share - Math.acos(Math.min(1, flat / radius))
      const mouth: Turn = { at: [radius * Math.cos(psi), radius * Math.sin(psi)] }
      const vertex = flat / Math.cos(share)
      if (tip <= 0) return [mouth]
      // The tip's round touches the flat where its own radius is square to it.
      const centre = vertex - tip / Math.cos(share)
      return [{ at: [centre + tip * Math.cos(share), tip * Math.sin(share)] }, mouth]
    }
    case 'round': {
      const centre = notch.floor - notch.radius
      const along = (centre ** 2 + radius ** 2 - notch.radius ** 2) / (2 * centre)
      if (centre > 0 && along > centre) return [{ at: [along, Math.sqrt(Math.max(0, radius ** 2 - along ** 2))] }]
      return [{ at: [centre, notch.radius] }, { at: [mouthX(radius, notch.radius), notch.radius] }]
    }
  }
}

/** A notch from its lower mouth to its upper, on +x. */
const notchOn = (bored: Bored): readonly Turn[] => {
  const { notch } = bored
  const upper = upperHalf(bored)
  const first = upper[0]
  if (!first) return []
  const lower = upper.toReversed().map(({ at: [x, y] }, index): Turn => {
    const bulge = upper[upper.length - 2 - index]?.bulge
    return bulge === undefined ? { at: [x, -y] } : { at: [x, -y], bulge }
  })
  const inner = lower.at(-1) ?? first
  // From the lower half into the upper: along the floor, round the tip, or by the sharp vertex.
  const across = (centre: number): Turn => {
    const [from, to] = [inner, first].map(({ at: [x, y] }) => Math.atan2(y, x - centre)) as [number, number]
    return { at: inner.at, bulge: bulged(to - from) }
  }
  if (notch.is === 'slot') return [...lower, ...upper]
  if (notch.is === 'round') return [...lower.slice(0, -1), across(notch.floor - notch.radius), ...upper]
  const vertex = notch.flat / Math.cos(Math.PI / notch.sides)
  return notch.tip > 0
    ? [...lower.slice(0, -1), across(vertex - notch.tip / Math.cos(Math.PI / notch.sides)), ...upper]
    : [...lower, { at: [vertex, 0] }, ...upper]
}

const turnedBy = (path: readonly Turn[], degrees: number): readonly Turn[] => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return path.map((turn) => ({ ...turn, at: [turn.at[0] * c - turn.at[1] * s, turn.at[0] * s + turn.at[1] * c] }))
}

/** The bore from one mouth on to the next, in half turns at most; its last point left out. */
const boreArc = (from: Place, to: Place, radius: number): readonly Turn[] => {
  const start = Math.atan2(from[1], from[0])
  let sweep = Math.atan2(to[1], to[0]) - start
  while (sweep <= 1e-9) sweep += 2 * Math.PI
  const pieces = Math.ceil(sweep / Math.PI - 1e-9)
  return Array.from({ length: pieces }, (_, piece): Turn => {
    const angle = start + (sweep * piece) / pieces
    const at: Place = piece === 0 ? from : [radius * Math.cos(angle), radius * Math.sin(angle)]
    return { at, bulge: bulged(sweep / pieces) }
  })
}

/** The whole contour. The notches must not run into one another. */
export const boredContour = (bored: Bored): readonly Turn[] => {
  const notch = notchOn(bored)
  const notches = bored.at
    .map((angle) => ((angle % 360) + 360) % 360)
    .toSorted((a, b) => a - b)
    .map((angle) => turnedBy(notch, angle))
  return notches.flatMap((path, index) => {
    const [last, next] = [path.at(-1), notches[(index + 1) % notches.length]?.[0]]
    return last && next ? [...path.slice(0, -1), ...boreArc(last.at, next.at, bored.radius)] : []
  })
}

/** Which end of the limits: the tightest hub, the middle, the widest. */
export type End = 'least' | 'middle' | 'most'

/** The finished bore at one end of its limits, its surfaces moved outwards by `radius`, `half` and `floor` (mm; negative: inwards). */
export const finishedBore = (
  section: Section,
  end: End,
  by: { readonly radius: number; readonly half: number; readonly floor: number } = { radius: 0, half: 0, floor: 0 },
): Bored => {
  const pick = (middleOf: number, size: { readonly lower: number; readonly upper: number }): number =>
    end === 'least' ? size.lower : end === 'most' ? size.upper : middleOf
  const boreRadius = pick(2 * section.boreRadius, section.bore) / 2
  const radius = boreRadius + by.radius
  const { at, socket, groove } = section
  if (socket)
    return {
      radius,
      at,
      notch: {
        is: 'vee',
        sides: socket.sides,
        flat: pick((socket.acrossFlats.lower + socket.acrossFlats.upper) / 2, socket.acrossFlats) / 2 + by.floor,
        tip: section.cornerRadius,
      },
    }
  const floor =
    (section.floorLimits
      ? pick(section.floor, section.floorLimits)
      : pick(section.across, section.acrossLimits) - boreRadius) + by.floor
  if (groove) return { radius, at, notch: { is: 'round', radius: groove.radius + by.half, floor } }
  return {
    radius,
    at,
    notch: {
      is: 'slot',
      half: pick(section.width, section.widthLimits) / 2 + by.half,
      floor,
      corner: { is: 'round', by: section.cornerRadius },
    },
  }
}
