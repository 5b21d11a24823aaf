import { computed, effect, signal } from '@preact/signals'
import type { Design } from '../design.ts'
import { document, jobUnits, opened } from './job.ts'
import { drawnNow, seen, taken, width } from './looked-at.ts'
import { shownUnits } from './shown-in.ts'
import type { Makes } from './workers/makes.ts'
import type { Told } from './workers/rules.ts'
import { asking } from './workers/talk.ts'
import type { Drawn, JobAsked, Looked, Outcome, Works } from './workers/works.ts'

const hand = () => new Worker(new URL('./workers/hand.worker.ts', import.meta.url), { type: 'module' })
/** Works out the job; always the same hand, so that it is warm. */
export const working = asking<Works>(hand)
/** Draws the sheets of the parts, and makes the files: two hands, so that a picture never waits for a solid. */
export const drawing = asking<Makes>(hand)
export const making = asking<Makes>(hand)

/** What followed from the job as it stands, or from the one before while it is worked out. */
export const outcome = signal<Outcome | undefined>(undefined)
/** The last job that could be read; still shown while the one that stands cannot. */
export const settled = signal<Outcome | undefined>(undefined)
/** Our own fault, with its stack. */
export const fault = signal<string | undefined>(undefined)
export const rules = signal<Readonly<Record<string, Told>>>({})
export const offered = signal<Works['offered']['answers']>({ materials: [], threads: [] })

export const design = computed<Design | undefined>(() => settled.value?.design)
/** The numbers on the page are those of the job as it stands. */
export const current = computed(() => outcome.value?.design !== undefined)

export const jobAsked = (): JobAsked => ({
  text: opened.value.text,
  document: document.value,
  ...(opened.value.shop !== undefined && { shop: opened.value.shop }),
  shown: shownUnits.value,
})

const lookedAt = (): Looked => ({
  width: width.value,
  pictures: seen.value,
  ...(taken.value !== undefined && { passes: taken.value }),
})

let wanted: JobAsked | undefined
let busy = false

/** The newest job is worked out as soon as the hand is free; what came between is passed over. */
const pass = async (): Promise<void> => {
  if (busy) return
  busy = true
  while (wanted) {
    const job = wanted
    wanted = undefined
    try {
      const looked = width.value < 100 ? {} : { looked: lookedAt() }
      const answer = await working.ask('work', { ...job, ...looked }, (step) => {
        const drawn = step as Drawn
        drawnNow.value = { ...drawn, pictures: { ...drawnNow.value?.pictures, ...drawn.pictures } }
      })
      outcome.value = answer
      if (answer.design) settled.value = answer
      fault.value = undefined
    } catch (error) {
      fault.value = error instanceof Error ? (error.stack ?? error.message) : String(error)
      working.end()
    }
  }
  busy = false
}

/** Keeps the answers in step with the job from now on. */
export const followJob = (): void => {
  effect(() => {
    void jobUnits.value
    wanted = jobAsked()
    void pass()
  })
  void working.ask('rules', undefined).then(
    (told) => {
      rules.value = told
    },
    () => undefined,
  )
  void working.ask('offered', undefined).then(
    (told) => {
      offered.value = told
    },
    () => undefined,
  )
}
