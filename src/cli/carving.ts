import { existsSync } from 'node:fs'
import { Worker } from 'node:worker_threads'
import type { Design } from '../design.ts'
import type { MadeFile, Tools, Wanted } from '../make.ts'

/** What the thread is to carve. Plain: it is sent between threads. */
export interface Carving {
  readonly design: Design
  readonly wanted: Wanted
}

/** What came of it. */
export type Carved = { readonly files: readonly MadeFile[] } | { readonly thrown: unknown }

const program = new URL('carver.js', import.meta.url)

/**
 * A thread of its own for solids, one design at a time: started before there is a design, since its kernel takes as long to open as a spec to
 * read. It keeps nobody waiting: the process may end whether it has been asked or not. Undefined where the program does not run from its bundle.
 */
export const openCarver = (): Tools['solids'] | undefined => {
  if (!existsSync(program)) return undefined
  const thread = new Worker(program)
  thread.unref()
  let broken: unknown
  thread.once('error', (error) => (broken = error))
  thread.once('exit', (status) => (broken ??= new Error(`the thread that carves ended with ${status}`)))
  return (design, wanted) =>
    new Promise((resolve, reject) => {
      if (broken !== undefined) return reject(broken)
      thread.ref()
      const settle = (done: () => void) => {
        thread.unref()
        thread.removeAllListeners('message').off('error', failed).off('exit', ended)
        done()
      }
      const failed = (error: unknown) => settle(() => reject(error))
      const ended = (status: number) => failed(new Error(`the thread that carves ended with ${status}`))
      thread.once('error', failed)
      thread.once('exit', ended)
      thread.once('message', (carved: Carved) =>
        settle(() => ('files' in carved ? resolve(carved.files) : reject(carved.thrown))),
      )
      thread.postMessage({ design, wanted } satisfies Carving)
    })
}
