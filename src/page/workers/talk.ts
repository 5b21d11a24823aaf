/** One worker's questions and what it answers to each. */
export type Talk = Readonly<Record<string, { readonly asks: unknown; readonly answers: unknown }>>

interface Asked {
  readonly id: number
  readonly name: string
  readonly asks: unknown
}
type Told =
  | { readonly id: number; readonly step: unknown }
  | { readonly id: number; readonly answers: unknown }
  | { readonly id: number; readonly fault: string }

/** Tells how far it is. */
type Step = (step: unknown) => void

/** What a worker does with each question; `step` tells how far it is. */
export type Hands<T extends Talk> = {
  readonly [Name in keyof T]: (asks: T[Name]['asks'], step: Step) => T[Name]['answers'] | Promise<T[Name]['answers']>
}

/** Answers, in the worker, whatever is asked; what goes wrong is told with its stack. */
export const answering = <T extends Talk>(hands: Hands<T>): void => {
  const here = self as unknown as {
    addEventListener: (what: 'message', hear: (event: { data: Asked }) => void) => void
    postMessage: (told: Told) => void
  }
  here.addEventListener('message', async ({ data: { id, name, asks } }) => {
    try {
      const hand = hands[name]
      if (!hand) throw new Error(`nobody answers ${name}`)
      here.postMessage({ id, answers: await hand(asks, (step) => here.postMessage({ id, step })) })
    } catch (error) {
      here.postMessage({ id, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) })
    }
  })
}

/** A worker as the page sees it. */
export interface Asking<T extends Talk> {
  /** Rejects with the worker's fault, or when it is ended. */
  readonly ask: <Name extends keyof T & string>(
    name: Name,
    asks: T[Name]['asks'],
    step?: Step,
  ) => Promise<T[Name]['answers']>
  /** Ends what is under way; the next question starts afresh. */
  readonly end: () => void
}

/** What `end` rejects with. */
export class Ended extends Error {}

/** A worker that is started with its first question. */
export const asking = <T extends Talk>(start: () => Worker): Asking<T> => {
  let worker: Worker | undefined
  let count = 0
  const open = new Map<number, { resolve: (answer: never) => void; reject: (error: Error) => void; step?: Step }>()
  const refuseAll = (error: Error): void => {
    for (const { reject } of open.values()) reject(error)
    open.clear()
  }
  const started = (): Worker => {
    if (worker) return worker
    worker = start()
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      const waiting = open.get(data.id)
      if (!waiting) return
      if ('step' in data) return waiting.step?.(data.step)
      open.delete(data.id)
      if ('fault' in data) waiting.reject(new Error(data.fault))
      else waiting.resolve(data.answers as never)
    })
    worker.addEventListener('error', (event) => {
      event.preventDefault()
      worker?.terminate()
      worker = undefined
      refuseAll(new Error(event.message || 'the worker did not start'))
    })
    return worker
  }
  return {
    ask: (name, asks, step) =>
      new Promise((resolve, reject) => {
        count += 1
        open.set(count, { resolve, reject, ...(step && { step }) })
        started().postMessage({ id: count, name, asks })
      }),
    end: () => {
      worker?.terminate()
      worker = undefined
      refuseAll(new Ended('ended'))
    },
  }
}
