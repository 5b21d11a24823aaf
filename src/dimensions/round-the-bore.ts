import { mouthHalfAngle } from './bore.ts'
import type { Measurable } from './types.ts'

/** Angles between neighbouring slots, degrees, all the way round. */
export const anglesBetween = (at: readonly number[]): readonly number[] => {
  const sorted = [...at].map((angle) => ((angle % 360) + 360) % 360).toSorted((a, b) => a - b)
  return sorted.map((angle, i) => (sorted[i + 1] ?? (sorted[0] ?? 0) + 360) - angle)
}

/** Bore arc left between two slots `angle` degrees apart, mm; negative where they run into each other. */
export const landBetween = (radius: number, half: number, angle: number): number =>
  (radius * (angle - 2 * mouthHalfAngle(radius, half)) * Math.PI) / 180

/** Half the width of what is held against the wall: a caliper's jaw, a gauge's ball, mm. Source: judgement. */
const anvilHalf = 1
/** Slots as near to opposite as this are opposite, degrees. Source: judgement. */
const opposite = 0.5

/** Angle from the point opposite `from` to `to`, degrees, 0 up to 180. */
const fromOpposite = (from: number, to: number): number => Math.abs(((((to - from) % 360) + 360) % 360) - 180)

/**
 * What each floor can be measured to: the wall opposite where no other mouth comes within a jaw's half width of it, the floor opposite, else
 * nothing.
 */
export const measurableOf = (
  at: readonly number[],
  radius: number,
  half: number,
  floor: number,
): readonly Measurable[] => {
  const clear = mouthHalfAngle(radius, half) + mouthHalfAngle(radius, anvilHalf)
  return at.map((angle, n) => {
    const near = at.filter((_, other) => other !== n).map((other) => fromOpposite(angle, other))
    if (near.every((away) => away > clear)) return { at: angle, to: 'bore', size: radius + floor }
    if (near.some((away) => away < opposite)) return { at: angle, to: 'floor', size: 2 * floor }
    return { at: angle, to: 'nothing' }
  })
}
