import { readingBefore, standing, type Stretch } from '../../plan/standing.ts'
import { floorMeasured, type Job, job, screenNow, stretchAt } from './job.ts'
import type { Screen } from './order.ts'
import { note, record } from './record.ts'

/** What is kept changes with every screen and stroke: only here. */

/** The dial at the beginning of a stretch: at a new projection it was set by what was measured there. */
const dialAt = (now: Job, { cut, gate, from }: Stretch): number => {
  const lane = now.order.findIndex((screen) => screen.is === 'cut' && screen.cut === cut)
  const anew = now.order.slice(Math.max(0, lane - 3), lane).some((screen) => screen.is === 'anew')
  const found = anew && gate === 0 ? floorMeasured(now, cut) : undefined
  return found?.reading ?? from
}

const placeOf = (now: Job): number => now.order.findIndex(({ key }) => key === screenNow.peek()?.key)

/** Goes to a screen. A stretch is begun from its own beginning, unless it is gone back to. */
const enter = (now: Job, screen: Screen | undefined, back = false): void => {
  if (!screen) return
  const stretch = screen.is === 'cut' ? stretchAt(now, screen.cut, screen.gate, screen.slot) : undefined
  note({
    at: screen.key,
    ...(stretch &&
      (back ? { reading: stretch.to, springs: stretch.springPasses } : { reading: dialAt(now, stretch), springs: 0 })),
  })
  scrollTo(0, 0)
}

/** On to the next screen; to the one that was left, where an earlier one was gone back to. */
export const goOn = (): void => {
  const now = job.peek()
  if (!now) return
  const { resume } = record.peek()
  // Whoever went back as far as the beginning goes past the bore again.
  const left = screenNow.peek()?.is === 'stop' ? undefined : now.order.find(({ key }) => key === resume)
  if (left) {
    // What the dial read there is still kept.
    const { resume: _, ...others } = record.peek()
    record.value = others
    note({ at: left.key })
    scrollTo(0, 0)
    return
  }
  enter(now, now.order[placeOf(now) + 1])
}

/** One screen back. */
export const goBack = (): void => {
  const now = job.peek()
  if (now) enter(now, now.order[placeOf(now) - 1], true)
}

/** Back to an earlier screen, to come here again afterwards. */
export const backTo = (is: 'bore' | 'bit' | 'zero'): void => {
  const here = screenNow.peek()
  if (!here || here.key === is) return
  note({ at: is, resume: record.peek().resume ?? here.key })
  scrollTo(0, 0)
}

/** Straight to a screen. */
export const goTo = (key: string): void => {
  const now = job.peek()
  enter(
    now as Job,
    now?.order.find((screen) => screen.key === key),
  )
}

/** A second press within this is not counted, ms. */
const guard = 700
let pressed = -Infinity

const stretchNow = (): { readonly now: Job; readonly at: Stretch } | undefined => {
  const now = job.peek()
  const screen = screenNow.peek()
  const at = now && screen?.is === 'cut' ? stretchAt(now, screen.cut, screen.gate, screen.slot) : undefined
  return now && at ? { now, at } : undefined
}

/** A stroke is done: on to what the next one wants, or to what comes after the last. */
export const passDone = (): void => {
  const here = stretchNow()
  if (!here?.now.plan) return
  const clock = performance.now()
  if (clock - pressed < guard) return
  pressed = clock
  const { reading, springs, strokes } = record.peek()
  const { next, springsLeft, toGate } = standing(here.now.plan, here.at, reading, springs)
  if (toGate > 0)
    note({
      strokes: strokes + 1,
      ...(next ? { reading: next.reading } : springsLeft > 0 ? { springs: springs + 1 } : {}),
    })
  if (toGate <= 1) goOn()
}

/** The last stroke was not done: back to what the dial read before it. */
export const oneBack = (): void => {
  const here = stretchNow()
  if (!here) {
    goBack()
    return
  }
  const { reading, springs, strokes } = record.peek()
  if (springs > 0) return note({ springs: springs - 1, strokes: Math.max(0, strokes - 1) })
  if (reading <= here.at.from + 1e-6) return goBack()
  note({ reading: readingBefore(here.at, reading), strokes: Math.max(0, strokes - 1) })
}

/** The dial is the truth. */
export const dialReads = (reading: number): void => {
  note({ reading, springs: 0 })
  scrollTo(0, 0)
}
