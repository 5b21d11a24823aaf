import { parentPort } from 'node:worker_threads'
import { bugWords } from './bug.ts'
import { carryOut, type Done, type Task } from './task.ts'
import { exits } from './verb.ts'

// A thread that makes one spec after another; kernel, fonts and writers are loaded once and kept.
parentPort?.on('message', async (task: Task) => {
  const done: Done = await carryOut(task).catch((thrown) => ({
    at: task.at,
    exit: exits.bug,
    made: false,
    said: [['complain', `${task.path}: ${bugWords(thrown).join('\n')}`]] as const,
  }))
  parentPort?.postMessage(done)
})
