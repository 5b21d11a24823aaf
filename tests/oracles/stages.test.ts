import { describe, expect, it } from 'vitest'
import { stagesFor } from '../../src/dimensions/stages.ts'
import { gap, touchOff, wallsOf } from './bore.ts'
import { bisected } from './curves.ts'

/** A bore with a full-width nose, no tolerance, one clearance all round. */
interface Job {
  readonly bore: number
  readonly width: number
  readonly across: number
  readonly clearance: number
  readonly bar: number
}

const walls = ({ bore, width }: Job, floor?: number) =>
  wallsOf(bore / 2, floor === undefined ? undefined : { offset: 0, half: width / 2, floor })
const room = (job: Job, floor: number | undefined, x: number, p: number, ahead: boolean): number =>
  gap(walls(job, floor), [x - p - job.bar / 2, 0], job.bar, ahead)

/** Stages found by moving bar and nose about in the slot that is there: as far out as passes, then as deep as clears, until the floor is reached. */
const walked = (job: Job, most: number): readonly number[] | undefined => {
  const { bore, across, width, clearance: c, bar } = job
  const floor = across - bore / 2
  const depths: number[] = []
  let cut: number | undefined
  while (depths.length < most) {
    const from = cut ?? touchOff(bore / 2, width, 0, 0)
    // Too little out, the bar would lie in the mouth: the farthest that holds is looked for from far out.
    const holds = (out: number) => room(job, cut, from - c, out, false) >= c
    const step = 0.002 * bore
    let far = bore - bar + from
    while (far > 0 && !holds(far)) far -= step
    const p = bisected(far, far + step, holds, 46)
    // The floor or the crown stands p before the bar: that is its front clearance too.
    if (p < c - 1e-7) return undefined
    const to = bisected(from, floor + 1e-9, (x) => room(job, x, x, p, true) >= c - 1e-9, 46)
    if (to >= floor - 1e-6) return [...depths, floor]
    if (to - from < 1e-3 * bar) return undefined
    depths.push(to)
    cut = to
  }
  return undefined
}

const closed = ({ bore, width, across, clearance, bar }: Job, most: number) => {
  const lane = {
    radius: bore / 2,
    floor: across - bore / 2,
    noseWidth: width,
    cornerRadius: 0,
    offset: 0,
    clearances: { back: clearance, front: clearance, withdrawn: clearance },
    chipRoom: 0,
  }
  const of = { back: [lane], front: [lane], middle: [lane] }
  return stagesFor(of, bar, 0, { setting: 1e-7, fine: 1e-7 }, most)?.map(({ to }) => to)
}

describe('stages walked by their gaps', () => {
  it('10 mm, 4 × 4, bar 8', () => {
    // Worked scenario, derived.
    const depths = walked({ bore: 10, width: 4, across: 11.8, clearance: 0.1, bar: 8 }, 9)
    expect(depths?.map((depth) => depth.toFixed(3))).toEqual(['6.386', '6.800'])
  })

  it('25 mm, 8 × 7: 23.59 passes, 23.60 does not', () => {
    // Worked scenario, derived: the largest is 23.592719.
    const job = { bore: 25, width: 8, across: 28.3, clearance: 0.25 }
    expect(walked({ ...job, bar: 23.59 }, 60)).toBeDefined()
    expect(walked({ ...job, bar: 23.6 }, 60)).toBeUndefined()
  })

  it('are those of the closed form', () => {
    for (const [bore, width, across] of [
      [6, 2, 7],
      [10, 4, 11.8],
      [25, 8, 28.3],
      [75, 20, 79.9],
    ] as const)
      for (const part of [0.7, 0.76, 0.82, 0.86]) {
        const job = { bore, width, across, clearance: 0.01 * bore, bar: part * bore }
        const [told, found] = [closed(job, 40), walked(job, 40)]
        expect(told?.length).toBe(found?.length)
        for (const [n, depth] of (told ?? []).entries()) expect(depth).toBeCloseTo(found?.[n] ?? Number.NaN, 4)
      }
  })
})
