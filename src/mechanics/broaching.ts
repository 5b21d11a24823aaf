/** A push broach in the press: force along the stroke, and the broach as a column. N, mm, N/mm². */
import type { Broach } from '../spec/spec.ts'
import { steelModulus } from './bar.ts'

export interface Stroke {
  readonly broach: Broach
  readonly hub: number
  readonly radius: number
  /** x of a tooth's tip for its height over the back, in the pass's own set of shims. */
  readonly tipX: (height: number) => number
  /** x that the slot's floor has reached before this pass; the bore alone before the first. */
  readonly floorBefore: number
  /** Force of one tooth, N, for an engaged width and a bite. */
  readonly tooth: (width: number, bite: number) => number
}

/** What the guide adds to a tooth's force. Source: judgement. */
export const guideFriction = 1.15

/** Heights of the teeth over the back, first to last: as measured, or rising evenly to the finishing teeth, all at full height. */
export const toothHeights = (broach: Broach): readonly number[] => {
  if (broach.heights) return broach.heights
  const rising = broach.teeth - (broach.finishingTeeth ?? 1)
  const bite = (broach.lastTooth - broach.firstTooth) / rising
  return Array.from({ length: broach.teeth }, (_, tooth) => broach.firstTooth + bite * Math.min(tooth, rising))
}

const engaged = (radius: number, width: number, x: number): number =>
  x >= radius ? width : Math.max(0, width - 2 * Math.sqrt(Math.max(0, radius ** 2 - x ** 2)))

/** What each tooth takes in this pass: its bite below what stands before it, and the width of it that is in metal. */
const takes = ({ broach, radius, tipX, floorBefore, tooth }: Stroke): readonly number[] => {
  let floor = floorBefore
  const touch = Math.sqrt(radius ** 2 - (broach.toothWidth / 2) ** 2)
  return toothHeights(broach).map((height) => {
    const x = tipX(height)
    const bite = x - Math.max(floor, touch)
    if (bite <= 1e-9) return 0
    floor = x
    return guideFriction * tooth(engaged(radius, broach.toothWidth, x), bite)
  })
}

/** Travel of the first tooth into the hub at which the set of teeth in the cut changes, with the force just after. */
export const forceAlong = (
  stroke: Stroke,
): readonly { readonly travel: number; readonly force: number; readonly teeth: number }[] => {
  const pitch = stroke.broach.toothedLength / (stroke.broach.teeth - 1)
  const forces = takes(stroke)
  const events = forces.flatMap((_, i) => [i * pitch, i * pitch + stroke.hub]).toSorted((a, b) => a - b)
  return events.map((travel) => {
    let force = 0
    let teeth = 0
    forces.forEach((one, i) => {
      if (i * pitch <= travel + 1e-9 && travel < i * pitch + stroke.hub - 1e-9) {
        force += one
        teeth++
      }
    })
    return { travel, force, teeth }
  })
}

/** Load at which the broach buckles over an unguided length between pinned ends: Euler for slender, Johnson for stocky. */
export const bucklingLoad = (broach: Broach, length: number): number | undefined => {
  const { rootHeight, bodyWidth, yield: strength } = broach
  if (rootHeight === undefined || strength === undefined) return undefined
  const [thin, wide] = [Math.min(rootHeight, bodyWidth), Math.max(rootHeight, bodyWidth)]
  const area = thin * wide
  const inertia = (wide * thin ** 3) / 12
  if (length <= 0) return area * strength
  const slenderness = length / Math.sqrt(inertia / area)
  const turning = Math.sqrt((2 * Math.PI ** 2 * steelModulus) / strength)
  return slenderness > turning
    ? (Math.PI ** 2 * steelModulus * inertia) / length ** 2
    : area * strength * (1 - (strength * slenderness ** 2) / (4 * Math.PI ** 2 * steelModulus))
}

/** Least ratio of buckling load to force along a pass; undefined without the broach's root height and yield. `endFactor`: 1 with pinned ends, 2 with one free. */
export const columnMargin = (stroke: Stroke, collar: number, endFactor = 1): number | undefined => {
  const { broach } = stroke
  let least = Infinity
  for (const { travel, force } of forceAlong(stroke)) {
    if (force <= 0) continue
    const load = bucklingLoad(broach, endFactor * (broach.overall - broach.pilotLength - travel - collar))
    if (load === undefined) return undefined
    least = Math.min(least, load / force)
  }
  return least
}
