import { availableParallelism } from 'node:os'
import type { Format } from '../make.ts'
import type { Desk } from './desk.ts'
import type { Done } from './task.ts'
import { exits, type Exit, type Verb, word } from './verb.ts'

// Known before anything heavy is loaded; tests hold both lists against what there is.
export const formatNames = [
  'pdf',
  'html',
  'svg',
  'dxf',
  'dxf-live',
  'stl',
  '3mf',
  'profile',
] as const satisfies readonly Format[]
export const partNames = [
  'guide-bushing',
  'shim-pack',
  'press-spacer',
  'drill-jig',
  'cutter-bar',
  'ground-bar',
  'tool-bit',
  'bit-templates',
  'bit-stick-out',
  'setting-step',
  'index-plate',
  'plug-gauge',
  'bore-plug',
  'across-no-go',
  'width-gauge',
  'hub-ring',
] as const

export const make: Verb = {
  name: 'make',
  takes: 'SPEC...',
  things: [1, Number.POSITIVE_INFINITY],
  says: 'write the job card, and drawings, solids and profiles of every part, into DIR/<name>/',
  flags: [
    { name: 'to', takes: 'DIR', says: 'the folder that the job folders go into; left out: output' },
    {
      name: 'formats',
      takes: 'LIST',
      says: 'which formats; left out: all but dxf-live',
      among: formatNames,
      many: true,
    },
    { name: 'parts', takes: 'LIST', says: 'which parts; left out: all that the job has', among: partNames, many: true },
    {
      name: 'shard',
      takes: 'I/N',
      says: 'of many specs only every n-th, from the i-th: one share for each of n machines',
    },
    { name: 'workers', takes: 'COUNT', says: 'threads for many specs; left out: one for each core' },
    { name: 'anyway', says: 'write although a rule is broken; every sheet is marked' },
  ],
  run: async (asked, desk) => {
    const shard = shardOf(word(asked, 'shard'))
    const threads = countOf(word(asked, 'workers'))
    if (shard === undefined || threads === undefined) {
      if (shard === undefined) desk.complain('--shard wants i/n, the first of three being 1/3.')
      if (threads === undefined) desk.complain('--workers wants a count from 1 to 256.')
      return exits.unreadable
    }
    const given = asked.words
    const order = {
      to: word(asked, 'to') ?? 'output',
      anyway: asked.switches.has('anyway'),
      ...(given.has('formats') && { formats: (given.get('formats') ?? []) as readonly Format[] }),
      ...(given.has('parts') && { parts: given.get('parts') ?? [] }),
    }
    // Begun before anything is read: by the time there is a design it is ready.
    const few = asked.things.length <= sequentially && threads === 0
    const solids = few && carves(order.formats) ? (await import('./carving.ts')).openCarver() : undefined
    const { twins } = await import('./job.ts')
    // Of two specs of one name, in whatever shard, the later would write over the earlier.
    const wrong = asked.things.length > 1 ? await twins(asked.things, desk.folder) : new Map<number, string>()
    const tasks = asked.things
      .map((path, at) => ({ at, path, order, desk: plain(desk) }))
      .filter(({ at }) => at % shard.of === shard.at)
    const progress =
      desk.attended && tasks.length > 3 ? (await import('./progress.ts')).progress(desk, tasks.length) : undefined
    const at = progress?.desk ?? desk
    let worst: Exit = exits.sound
    let made = 0
    let told = 0
    const tell = (done: Done): void => {
      if (made > 0 && done.said.some(([to]) => to === 'say')) at.say('')
      for (const [to, text] of done.said) at[to](text)
      worst = done.exit > worst ? done.exit : worst
      if (done.made) made += 1
      told += 1
      progress?.step()
    }
    const sound = tasks.filter((task) => !wrong.has(task.at))
    for (const task of tasks.filter((task) => wrong.has(task.at)))
      tell({ at: task.at, exit: exits.unreadable, made: false, said: [['complain', wrong.get(task.at) ?? '']] })
    const workers = threads === 0 ? (sound.length > sequentially ? availableParallelism() : 1) : threads
    if (workers > 1) await (await import('./batch.ts')).batch(sound, workers, tell)
    else {
      const { carryOut } = await import('./task.ts')
      for (const task of sound) tell(await carryOut(task, solids))
    }
    progress?.stop()
    if (made > 0) {
      const { closing } = await import('./telling.ts')
      desk.say(`\n${closing(desk.width)}`)
    }
    if (told > 1 && worst !== exits.sound)
      desk.complain(`\n${made} of ${told} specs made; what kept the others is told above, by name.`)
    return worst
  },
}

/** So few specs are not worth a thread each. */
const sequentially = 3

/** Whether solids are asked for, and the machine has a core for them. */
const carves = (formats: readonly Format[] | undefined): boolean =>
  (formats === undefined || formats.includes('stl') || formats.includes('3mf')) && availableParallelism() > 1

/** What a worker may know of the desk. */
const plain = (desk: Desk) => ({
  folder: desk.folder,
  called: desk.called,
  width: desk.width,
  colour: desk.paint.strong('.') !== '.',
})

/** `2/3`, the second of three shards; all where nothing is said, undefined where it cannot be read. */
const shardOf = (written: string | undefined): { readonly at: number; readonly of: number } | undefined => {
  if (written === undefined) return { at: 0, of: 1 }
  const [, at, of] = /^(\d{1,6})\/(\d{1,6})$/.exec(written)?.map(Number) ?? []
  return at !== undefined && of !== undefined && at >= 1 && at <= of ? { at: at - 1, of } : undefined
}

/** A count of threads; 0, as many as the machine has, where nothing is said. */
const countOf = (written: string | undefined): number | undefined => {
  if (written === undefined) return 0
  const count = /^\d{1,3}$/.test(written) ? Number(written) : 0
  return count >= 1 && count <= 256 ? count : undefined
}
