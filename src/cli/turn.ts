import { open, readdir, readFile, rm, stat } from 'node:fs/promises'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { threadId } from 'node:worker_threads'

/** Where a run says that it is writing. */
const markName = '.borewright-writing'
/** A mark of another computer is believed for so long, ms: no run writes for longer. */
const believed = 60_000

/** What a run puts into names that stand in a folder while it writes: host, process and thread. */
const self = `${hostname().replace(/[^A-Za-z0-9-]/g, '')}.${process.pid}.${threadId}`

/** A name under which a file may stand half-written. */
export const passingName = (name: string): string => `.${name}.${self}.part`

/** Who wrote such a name: `.cutter-bar.svg.bench.4711.0.part`. */
const passing = /^\..+\.([A-Za-z0-9-]*)\.(\d+)\.\d+\.part$/

const alive = (host: string, id: number): boolean => {
  if (host !== hostname().replace(/[^A-Za-z0-9-]/g, '')) return true
  try {
    process.kill(id, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

/**
 * Has the folder to itself while `work` runs: one that comes second waits for up to `patience` ms. What a run that was killed has left
 * behind, its mark and half-written files, is cleared away. Answers `undefined` if the folder was not to be had.
 */
export const inTurn = async <Answer>(
  folder: string,
  work: () => Promise<Answer>,
  patience = 20_000,
): Promise<{ readonly answer: Answer } | undefined> => {
  const mark = join(folder, markName)
  const until = Date.now() + patience
  for (;;) {
    try {
      const file = await open(mark, 'wx')
      await file.writeFile(self)
      await file.close()
      break
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error
      if (await left(mark)) await rm(mark, { force: true })
      else if (Date.now() > until) return undefined
      else await new Promise((resolve) => setTimeout(resolve, 50))
    }
  }
  try {
    await clear(folder)
    return { answer: await work() }
  } finally {
    await rm(mark, { force: true })
  }
}

/** Whether the run that made the mark is no more. */
const left = async (mark: string): Promise<boolean> => {
  const [text, found] = await Promise.all([readFile(mark, 'utf8').catch(() => ''), stat(mark).catch(() => undefined)])
  if (found === undefined) return false
  const old = Date.now() - found.mtimeMs
  const [host = '', id = ''] = text.split('.')
  // Just made and not yet written to.
  if (id === '') return old > 2000
  return old > believed || !alive(host, Number(id))
}

const clear = async (folder: string): Promise<void> => {
  for (const name of await readdir(folder)) {
    const [, host = '', id] = passing.exec(name) ?? []
    if (id !== undefined && !alive(host, Number(id))) await rm(join(folder, name), { force: true })
  }
}
