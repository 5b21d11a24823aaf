/**
 * `borewright/node`: what the library needs of a computer with Node. `openTools` hands `make` its kernel, fonts and faces from the package's own
 * files; `readJob` reads a spec, and the shop file that it names, from disk.
 */
export { type Job, readJob } from './cli/job.ts'
export { openTools } from './cli/tools.ts'
