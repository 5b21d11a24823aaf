import { effect, signal } from '@preact/signals'
import { isMapping } from '../../spec/place.ts'
import { tell } from '../job.ts'
import { keep, kept, whenKeptElsewhere } from '../keeping.ts'

/** A value as it was measured. */
export interface Value {
  readonly text: string
  /** What it says, mm. */
  readonly mm: number
  /** ISO, of this device. */
  readonly when: string
  /** What the dial read there. */
  readonly dial?: number
}

/** What is kept of a job at the machine: where it stands, every tick and every value. */
export interface Kept {
  readonly job: string
  /** Screen that it stands at. */
  readonly at: string
  /** Screen to go on to from one that was gone back to. */
  readonly resume?: string
  readonly way?: 'bar' | 'press'
  /** What the dial reads, and spring passes done, in the stretch that is cut. */
  readonly reading: number
  readonly springs: number
  readonly strokes: number
  readonly ticks: readonly string[]
  readonly values: Readonly<Record<string, Value>>
  /** Gates that were gone past without, or against what was measured. */
  readonly noted: Readonly<Record<string, string>>
  /** What the plan was when this was last touched. */
  readonly stamp: string
}

const fresh = (job: string): Kept => ({
  job,
  at: 'stop',
  reading: 0,
  springs: 0,
  strokes: 0,
  ticks: [],
  values: {},
  noted: {},
  stamp: '',
})

export const record = signal<Kept>(fresh(''))

const named = (job: string): string => `machine.${job}`

const number = (value: unknown): number => (typeof value === 'number' && Number.isFinite(value) ? value : 0)

const values = (read: unknown): Kept['values'] =>
  Object.fromEntries(
    Object.entries(isMapping(read) ? read : {}).flatMap(([key, value]): [string, Value][] =>
      isMapping(value) && typeof value['text'] === 'string' && typeof value['mm'] === 'number'
        ? [
            [
              key,
              {
                text: value['text'],
                mm: value['mm'],
                when: String(value['when'] ?? ''),
                ...(typeof value['dial'] === 'number' && { dial: value['dial'] }),
              },
            ],
          ]
        : [],
    ),
  )

/** What this browser kept of a job; where that is nothing, or nothing that reads, it begins. */
const recalled = (job: string, text: string | undefined): Kept => {
  let read: unknown
  try {
    read = text === undefined ? undefined : JSON.parse(text)
  } catch {
    read = undefined
  }
  if (!isMapping(read) || read['job'] !== job || typeof read['at'] !== 'string') return fresh(job)
  const { resume, way, ticks, noted } = read
  return {
    job,
    at: read['at'],
    ...(typeof resume === 'string' && { resume }),
    ...((way === 'bar' || way === 'press') && { way }),
    reading: number(read['reading']),
    springs: number(read['springs']),
    strokes: number(read['strokes']),
    ticks: Array.isArray(ticks) ? ticks.filter((tick) => typeof tick === 'string') : [],
    values: values(read['values']),
    noted: Object.fromEntries(
      Object.entries(isMapping(noted) ? noted : {}).filter(
        (each): each is [string, string] => typeof each[1] === 'string',
      ),
    ),
    stamp: String(read['stamp'] ?? ''),
  }
}

/** Takes up what was kept of a job. */
export const takeUp = (job: string): void => {
  if (record.peek().job === job) return
  record.value = recalled(job, kept(named(job)))
}

/** Changes what is kept, and keeps it at once. */
export const note = (change: Partial<Kept>): void => {
  record.value = { ...record.peek(), ...change }
  const now = record.peek()
  if (now.job !== '') keep(named(now.job), JSON.stringify(now))
}

export const ticked = (tick: string): boolean => record.value.ticks.includes(tick)

export const tick = (name: string, on: boolean): void => {
  const others = record.peek().ticks.filter((each) => each !== name)
  note({ ticks: on ? [...others, name] : others })
}

export const valueOf = (name: string): Value | undefined => record.value.values[name]

export const setValue = (name: string, value: Omit<Value, 'when'> | undefined): void => {
  const { [name]: _, ...others } = record.peek().values
  note({ values: value ? { ...others, [name]: { ...value, when: new Date().toISOString() } } : others })
}

/** The plan changes because of what was found here: nobody need be told of it. */
export const changedHere = signal(false)

/** Says something in the job itself that was found at the machine. */
export const tellJob = (set: Readonly<Record<string, unknown>>): void => {
  changedHere.value = true
  tell(set)
}

/** Begins the job again: nothing that was ticked or measured is left. */
export const beginAgain = (): void => {
  const { job, way } = record.peek()
  record.value = { ...fresh(job), ...(way && { way }) }
  note({})
}

/** Takes on what another tab of this browser keeps of the same job. */
export const followOthers = (): (() => void) => {
  let job = ''
  return effect(() => {
    if (record.value.job === job || record.value.job === '') return
    job = record.value.job
    const mine = job
    whenKeptElsewhere(named(mine), (text) => {
      if (record.peek().job === mine) record.value = recalled(mine, text)
    })
  })
}
