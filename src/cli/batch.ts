import { Worker } from 'node:worker_threads'
import type { Done, Task } from './task.ts'
import { exits } from './verb.ts'

const program = 'worker.js'

/**
 * Carries out tasks on `workers` threads, each kept for the whole batch. `told` hears of each in the order of the tasks, whichever is done
 * first. A thread that dies takes its task down with it and is replaced. Ours rather than a library's: a pool's own file would have to stand
 * beside the bundle.
 */
export const batch = (tasks: readonly Task[], workers: number, told: (done: Done) => void): Promise<void> =>
  new Promise((finished) => {
    const waiting = tasks.values()
    const done = new Map<number, Done>()
    const order = tasks.map(({ at }) => at)
    let next = 0
    let open = 0
    const tell = (one: Done): void => {
      done.set(one.at, one)
      for (let at = order[next]; at !== undefined && done.has(at); at = order[++next]) {
        const first = done.get(at)
        done.delete(at)
        if (first) told(first)
      }
    }
    const start = (): void => {
      const first = waiting.next()
      if (first.done) {
        if (open === 0) finished()
        return
      }
      open += 1
      let task: Task | undefined = first.value
      const thread = new Worker(new URL(program, import.meta.url))
      const hand = (): void => {
        if (task !== undefined) thread.postMessage(task)
        else void thread.terminate()
      }
      thread.on('message', (one: Done) => {
        tell(one)
        const following = waiting.next()
        task = following.done ? undefined : following.value
        hand()
      })
      let fault: unknown
      thread.on('error', (error) => (fault = error))
      thread.on('exit', () => {
        open -= 1
        if (task !== undefined)
          tell({
            at: task.at,
            exit: exits.bug,
            made: false,
            said: [['complain', `${task.path}: the thread that made it died: ${String(fault ?? 'it said nothing')}`]],
          })
        if (task === undefined && open > 0) return
        start()
      })
      hand()
    }
    for (let count = 0; count < Math.max(1, Math.min(workers, tasks.length)); count++) start()
    if (tasks.length === 0) finished()
  })
