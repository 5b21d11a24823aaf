import { computed, signal } from '@preact/signals'
import { patchDocument } from '../spec/patch.ts'
import { isMapping, placeOf, standsAt } from '../spec/place.ts'
import type { Units } from '../spec/spec.ts'

/** The job that lies on the page: what it was opened from, and every document since. Documents are never changed, only followed by others. */
export interface Opened {
  /** As it was opened: the text that is kept where nothing is changed. */
  readonly text: string
  readonly document: unknown
  /** The shop file that it names, as text. */
  readonly shop?: string
}

interface Step {
  readonly document: unknown
  /** Path of a change that may still be typed on, so that a word typed slowly is one step. */
  readonly typing?: string
}

/** An empty page: what is told goes on from here. */
export const nothingTold: Opened = {
  text: 'name: job\nunits: mm\nbore: {}\nfeature:\n  keyway: {}\n',
  document: { name: 'job', units: 'mm', bore: {}, feature: { keyway: {} } },
}

export const opened = signal<Opened>(nothingTold)
const steps = signal<readonly Step[]>([{ document: nothingTold.document }])
const at = signal(0)

/** The document as it stands. */
export const document = computed<unknown>(() => steps.value[at.value]?.document)
export const canUndo = computed(() => at.value > 0)
export const canRedo = computed(() => at.value < steps.value.length - 1)

/** Units that a bare number of the spec is in. */
export const jobUnits = computed<Units>(() => (standsAt(document.value, ['units']) === 'in' ? 'in' : 'mm'))

/** Lays another job on the page. */
export const open = (job: Opened, now: unknown = job.document): void => {
  opened.value = job
  steps.value = now === job.document ? [{ document: now }] : [{ document: job.document }, { document: now }]
  at.value = steps.value.length - 1
}

/** Sets values by path, in one step; `null` takes a path out. `typing` joins what follows on the same path into this step. */
export const tell = (set: Readonly<Record<string, unknown>>, typing?: string): void => {
  const next = patched(document.value, set)
  if (JSON.stringify(next) === JSON.stringify(document.value)) return
  const now = steps.value[at.value]
  const goesOn = typing !== undefined && now?.typing === typing && at.value > 0
  const kept = steps.value.slice(0, at.value + (goesOn ? 0 : 1))
  steps.value = [...kept, { document: next, ...(typing !== undefined && { typing }) }]
  at.value = kept.length
}

/** What is typed next on the same blank is a step of its own. */
export const doneTyping = (): void => {
  const now = steps.value[at.value]
  if (now?.typing === undefined) return
  steps.value = steps.value.map((step, place) => (place === at.value ? { document: step.document } : step))
}

export const undo = (): void => {
  if (canUndo.value) at.value -= 1
}
export const redo = (): void => {
  if (canRedo.value) at.value += 1
}

/** The patch of the reader takes plain values; lists and mappings are set in the same way. */
const patched = (here: unknown, set: Readonly<Record<string, unknown>>): unknown =>
  withoutUnasked(here, patchDocument(here, set as Readonly<Record<string, string | number | null>>))

const nothingIn = (value: unknown): boolean => isMapping(value) && Object.values(value).every(nothingIn)

/** A press of which nothing is told is no press: named, it would ask for a broach that nobody has. One that stood so before stays. */
const withoutUnasked = (before: unknown, now: unknown): unknown => {
  const tooling = standsAt(now, ['tooling'])
  if (!isMapping(tooling) || !nothingIn(tooling['press'])) return now
  const stood = standsAt(before, ['tooling', 'press'])
  if (JSON.stringify(stood) === JSON.stringify(tooling['press'])) return now
  const { press: _, ...others } = tooling
  return { ...(now as object), tooling: others }
}

export const stated = (path: string): unknown => standsAt(document.value, placeOf(path))

/** Whether any size has been told at all. */
export const told = (): boolean => stated('bore.diameter') !== undefined || stated('bore.length') !== undefined

/** One thing that stands otherwise than when the job was opened. */
export interface Change {
  readonly path: string
  readonly before: unknown
  readonly now: unknown
}

const leaves = (value: unknown, above: string): ReadonlyMap<string, unknown> => {
  const found = new Map<string, unknown>()
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    if (above !== '') found.set(above, value)
    return found
  }
  for (const [key, child] of Object.entries(value))
    for (const [path, leaf] of leaves(child, above === '' ? key : `${above}.${key}`)) found.set(path, leaf)
  return found
}

/** Which feature a document names. */
const featureIn = (of: unknown): string | undefined => {
  const feature = standsAt(of, ['feature'])
  return isMapping(feature) ? Object.keys(feature)[0] : undefined
}

/** What stands otherwise than when the job was opened, leaf by leaf; another feature is one change, with all that is told of it. */
export const changes = computed<readonly Change[]>(() => {
  const [was, is] = [opened.value.document, document.value]
  const [before, now] = [leaves(was, ''), leaves(is, '')]
  const another = featureIn(was) !== featureIn(is)
  const single = [...new Set([...before.keys(), ...now.keys()])]
    .filter((path) => !(another && path.startsWith('feature.')))
    .filter((path) => JSON.stringify(before.get(path)) !== JSON.stringify(now.get(path)))
    .map((path) => ({ path, before: before.get(path), now: now.get(path) }))
  if (!another) return single
  return [{ path: 'feature', before: standsAt(was, ['feature']), now: standsAt(is, ['feature']) }, ...single]
})

/** Puts one change back as it was; all of them without one. */
export const putBack = (change?: Change): void => {
  if (change) tell({ [change.path]: change.before ?? null })
  else if (at.value > 0) {
    steps.value = [...steps.value.slice(0, at.value + 1), { document: opened.value.document }]
    at.value = steps.value.length - 1
  }
}
