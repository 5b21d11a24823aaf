import { computed, effect, signal } from '@preact/signals'
import { fault, settled, working } from './answers.ts'
import { bars, barsShown, barWidth, drawnNow, seen, taken, width } from './looked-at.ts'
import { lookNow } from './looks.ts'
import { shownUnits } from './shown-in.ts'
import { Ended } from './workers/talk.ts'
import type { PassRun, PictureName } from './workers/works.ts'

/** The cut, pass by pass, and the figures kept in step with it. */

export const passes = computed<readonly PassRun[]>(() => settled.value?.passes ?? [])
export const passAt = computed(() => Math.min(taken.value ?? passes.value.length, passes.value.length))
/** Takes so many passes, within what there is. */
export const takePasses = (count: number): void => {
  const within = Math.max(0, Math.min(passes.value.length, Math.round(count)))
  taken.value = within === passes.value.length ? undefined : within
}

/** The passes after which something is measured, and both ends. */
const gates = computed(() => [
  0,
  ...passes.value.flatMap((run, place) => (run.gate === undefined ? [] : [place + 1])),
  passes.value.length,
])
export const nextGate = (): number => gates.value.find((gate) => gate > passAt.value) ?? passes.value.length
export const lastGate = (): number => gates.value.findLast((gate) => gate < passAt.value) ?? 0

/** Passes a second while the cut runs, and how long it stops at a gate. */
const aSecond = 12
const atGate = 900
export const running = signal(false)
let timer: ReturnType<typeof setTimeout> | undefined

export const stop = (): void => {
  clearTimeout(timer)
  running.value = false
}

/** Runs the cut from where it stands, from first touch where it is done; from gate to gate for whoever wants no motion. */
export const run = (): void => {
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
  if (passAt.value >= passes.value.length) takePasses(0)
  running.value = true
  const on = (): void => {
    if (passAt.value >= passes.value.length) return stop()
    takePasses(calm ? nextGate() : passAt.value + 1)
    const gate = passes.value[passAt.value - 1]?.gate !== undefined
    timer = setTimeout(on, gate || calm ? atGate : 1000 / aSecond)
  }
  timer = setTimeout(on, 1000 / aSecond)
}

/** What stands below the figures that are looked at: drawn after them. */
const below = (): readonly PictureName[] => (lookNow.value?.below ? [lookNow.value.below] : [])

let wanted = false
let busy = false

/** Draws the newest that is wanted as soon as the hand is free. */
const draw = async (): Promise<void> => {
  if (busy) return
  busy = true
  while (wanted) {
    wanted = false
    try {
      drawnNow.value = await working.ask('draw', {
        ...(taken.value !== undefined && { passes: taken.value }),
        width: width.value,
        pictures: [...seen.value, ...below()],
        shown: shownUnits.value,
      })
    } catch (error) {
      if (!(error instanceof Ended))
        fault.value = error instanceof Error ? (error.stack ?? error.message) : String(error)
    }
  }
  busy = false
}

/** Keeps the figures in step with job, pass and width. */
export const followBench = (): void => {
  effect(() => {
    if (lookNow.value) seen.value = lookNow.value.pictures
  })
  effect(() => {
    if (!settled.value?.design || width.value < 100) return
    void [passAt.value, shownUnits.value, seen.value, below()]
    wanted = true
    void draw()
  })
  effect(() => {
    if (!settled.value?.design || barWidth.value < 100 || barsShown.value.length === 0) return
    working.ask('margins', { width: barWidth.value, rules: barsShown.value }).then(
      (found) => {
        bars.value = found
      },
      () => undefined,
    )
  })
}
