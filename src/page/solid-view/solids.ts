import { signal } from '@preact/signals'
import { making, outcome } from '../answers.ts'
import { opened } from '../job.ts'
import type { Carved, Carving } from '../workers/makes.ts'
import { Ended } from '../workers/talk.ts'

/** The solids of the job, as far as they are carved. */
export const solids = signal<readonly Carved[]>([])
export const carvingNow = signal<Carving | undefined>(undefined)
export const failed = signal(false)

let carvedOf: string | undefined
let busy = false

/** Carves the solids of the job as it stands; what was carved of the same job is kept. */
export const carve = async (): Promise<void> => {
  const { text, design } = outcome.peek() ?? {}
  if (busy || text === undefined || !design || text === carvedOf) return
  busy = true
  failed.value = false
  const shop = opened.peek().shop
  const fresh: Carved[] = []
  try {
    await making.ask('solids', { text, ...(shop !== undefined && { shop }), verdict: design.verdict }, (told) => {
      const step = told as Carved | Carving
      if ('facets' in step) fresh.push(step)
      else carvingNow.value = step
    })
    solids.value = fresh
    carvedOf = text
  } catch (error) {
    // What was left off elsewhere on the page can be asked for again.
    failed.value = true
    solids.value = []
    if (!(error instanceof Ended)) making.end()
  } finally {
    busy = false
    carvingNow.value = undefined
  }
  // What was changed meanwhile is carved next.
  if (!failed.peek() && outcome.peek()?.design && outcome.peek()?.text !== text) await carve()
}
