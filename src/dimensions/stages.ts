/**
 * Staged projection: once a slot runs right through, the nose may lie in it while the bar is drawn back, so that a bar too large for any
 * single projection still reaches the floor, its nose set farther out for each stage. Source: geometry, derived.
 */
import { mouthX } from './bore.ts'
import { type Steps, roundDown, roundTo, roundUp } from './makeable.ts'
import type { Stage } from './types.ts'
import { barAxisMost, projectionFloor, projectionLeast, projectionMost, type Setting, touchOf } from './window.ts'

/** The lanes of one nose at the corners of the limits: nearest to the back wall, nearest to the front, and in the middle of all. */
export interface Corners {
  readonly back: readonly Setting[]
  readonly front: readonly Setting[]
  readonly middle: readonly Setting[]
}

/** A stage that deepens the slot by less is none. Source: judgement, mm. */
export const leastGain = 0.1

const firstTouch = (lanes: readonly Setting[]): number => Math.min(...lanes.map((lane) => touchOf(lane)))
const entering = (lanes: readonly Setting[], diameter: number, cut: number): number =>
  Math.min(...lanes.map((lane) => projectionMost(lane, diameter, cut)))
const axisMost = (lanes: readonly Setting[], diameter: number): number =>
  Math.min(...lanes.map((lane) => barAxisMost(lane, diameter)))

/**
 * The settings of the projection, first to last, that take a nose from first touch to the floor with a bar of `diameter`, each set within
 * ± `setting`: as far out as the slot cut so far lets pass, the last one only as far as reaches. Worked at the worst corner of the limits;
 * depths are given at the middle of them, for the dial. Undefined where more than `most` are needed, or where none gains.
 */
export const stagesFor = (
  corners: Corners,
  diameter: number,
  setting: number,
  steps: Pick<Steps, 'setting' | 'fine'>,
  most: number,
): readonly Stage[] | undefined => {
  const { back, front, middle } = corners
  const touch = { back: firstTouch(back), front: firstTouch(front), middle: firstTouch(middle) }
  const floor = Math.max(...middle.map((lane) => lane.floor))
  const least = Math.max(...front.map((lane) => projectionLeast(lane, diameter)))
  const floorOfAll = Math.max(...front.map(projectionFloor))
  const reach = diameter / 2 + axisMost(front, diameter)
  // One that reaches the floor at the middle of the limits but not at the deepest of them stops short, so that the last has something to cut.
  const shortOfFloor = (deeper: number): number =>
    deeper < floor - touch.middle - steps.fine ? deeper : roundDown(floor - touch.middle - leastGain, steps.fine)
  const stages: Stage[] = []
  // What has been cut, counted from first touch, as the dial counts it.
  let cut = 0
  while (stages.length < most) {
    const projectionMax = entering(back, diameter, touch.back + cut)
    if (!Number.isFinite(projectionMax) || !Number.isFinite(reach)) return undefined
    const from = touch.middle + cut
    if (least + setting <= projectionMax - setting + 1e-9) {
      const wanted = [steps.setting, steps.fine].map((step) => roundUp(least + setting, step))
      const projection =
        wanted.find((size) => size <= projectionMax - setting + 1e-9) ?? roundTo((least + projectionMax) / 2, 1e-6)
      return [...stages, { projection, projectionMin: least, projectionMax, from, to: floor }]
    }
    const out = [steps.setting, steps.fine]
      .map((step) => roundDown(projectionMax - setting, step))
      .map((projection) => ({
        projection,
        deeper: shortOfFloor(roundDown(projection - setting + reach - touch.front, steps.fine)),
      }))
    // A round setting is worth a tenth of a stage, no more.
    const [round, fine] = out as [(typeof out)[0], (typeof out)[0]]
    const stage = round.deeper - cut >= 0.9 * (fine.deeper - cut) ? round : fine
    const projectionMin = Math.max(stage.deeper + touch.front - reach, floorOfAll)
    if (stage.deeper - cut < leastGain || stage.projection - setting < projectionMin - 1e-9) return undefined
    stages.push({
      projection: stage.projection,
      projectionMin,
      projectionMax,
      from,
      to: touch.middle + stage.deeper,
    })
    cut = stage.deeper
  }
  return undefined
}

/** What one lane's full stage gains with a bar of `diameter`, with no tolerance on its setting. */
const gain = (lanes: readonly Setting[], diameter: number): number =>
  Math.min(
    ...lanes.map(({ radius, offset, clearances, tilted = 0 }) => {
      const free = radius - diameter / 2 - clearances.back
      if (free <= Math.abs(offset) && offset !== 0) return -Infinity
      return (offset === 0 ? free : Math.sqrt(free ** 2 - offset ** 2)) - clearances.withdrawn - tilted
    }),
  ) + axisMost(lanes, diameter)

/**
 * Largest bar that any number of stages takes to the floor: each gains something, and the first stands out far enough. For a centred nose
 *     K = R + x_c − c_b − c_r;  min( K − c_f + h²/(K + c_f), R + X_t − c_b − c_r − floor ).
 */
export const largestStagedBar = (back: readonly Setting[], front: readonly Setting[]): number => {
  const [lane] = front
  const [behind] = back
  if (!lane || !behind) return 0
  if (front.length === 1 && lane.offset === 0 && !lane.opening) {
    const { clearances, tilted = 0 } = lane
    const half = lane.noseWidth / 2
    const k = lane.radius + mouthX(lane.radius, half) - clearances.back - clearances.withdrawn - tilted
    const byMouth = k - clearances.front + half ** 2 / (k + clearances.front)
    const inSlot = 2 * (half - clearances.front)
    const touch = touchOf(behind)
    const byFirst = behind.radius + touch - clearances.back - clearances.withdrawn - tilted - projectionFloor(lane)
    return Math.max(0, Math.min(Math.max(byMouth, inSlot), byFirst))
  }
  const passes = (diameter: number): boolean =>
    gain(front, diameter) > 0 &&
    Math.min(...back.map((each) => projectionMost(each, diameter) - projectionFloor(each))) >= 0
  let [fits, tooBig] = [0, 2 * lane.radius]
  for (let halving = 0; halving < 60; halving++) {
    const diameter = (fits + tooBig) / 2
    if (passes(diameter)) fits = diameter
    else tooBig = diameter
  }
  return fits
}
