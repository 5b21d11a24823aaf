import type { Tools } from '../make.ts'
import { type Desk, paint } from './desk.ts'
import { readJob } from './job.ts'
import { makeJob, type Order } from './making.ts'
import { exits, type Exit } from './verb.ts'

/** One spec of many, as a worker is given it. Plain: it is sent between threads. */
export interface Task {
  readonly at: number
  readonly path: string
  readonly order: Order
  readonly desk: { readonly folder: string; readonly called: string; readonly width: number; readonly colour: boolean }
}

/** What came of it, and what was said, in order. */
export interface Done {
  readonly at: number
  readonly exit: Exit
  readonly made: boolean
  readonly said: readonly (readonly [to: 'say' | 'complain', text: string])[]
}

/** Reads and makes one spec, keeping what is said for whoever asked; its solids in a thread of their own where there is one. */
export const carryOut = async ({ at, path, order, desk }: Task, solids?: Tools['solids']): Promise<Done> => {
  const said: (readonly ['say' | 'complain', string])[] = []
  const kept: Desk = {
    folder: desk.folder,
    called: desk.called,
    attended: false,
    width: desk.width,
    paint: paint(desk.colour),
    say: (text) => void said.push(['say', text]),
    complain: (text) => void said.push(['complain', text]),
  }
  const job = await readJob(path, desk.folder)
  if ('wrong' in job) {
    kept.complain(job.wrong)
    return { at, exit: exits.unreadable, made: false, said }
  }
  const exit = await makeJob(job, order, kept, solids)
  return { at, exit, made: exit === exits.sound || (exit === exits.broken && order.anyway), said }
}
