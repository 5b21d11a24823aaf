import type { Format } from '../make.ts'
import type { Job } from './job.ts'
import { exits, type Exit, type Verb, word } from './verb.ts'

// Known before anything heavy is loaded; tests hold both lists against what there is.
export const formatNames = [
  'pdf',
  'svg',
  'dxf',
  'dxf-live',
  'stl',
  '3mf',
  'profile',
] as const satisfies readonly Format[]
export const partNames = ['guide-bushing', 'shim-pack', 'cutter-bar', 'tool-bit', 'plug-gauge'] as const

export const make: Verb = {
  name: 'make',
  takes: 'SPEC...',
  things: [1, Number.POSITIVE_INFINITY],
  says: 'write drawings, solids and profiles of every part into DIR/<name>/',
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
    { name: 'anyway', says: 'write although a rule is broken; every sheet is marked' },
  ],
  run: async (asked, desk) => {
    const [{ readJob }, { makeJob }] = await Promise.all([import('./job.ts'), import('./making.ts')])
    const jobs = await Promise.all(asked.things.map((path) => readJob(path, desk.folder)))
    const given = asked.words
    const order = {
      to: word(asked, 'to') ?? 'output',
      anyway: asked.switches.has('anyway'),
      ...(given.has('formats') && { formats: (given.get('formats') ?? []) as readonly Format[] }),
      ...(given.has('parts') && { parts: given.get('parts') ?? [] }),
    }
    const progress =
      desk.attended && jobs.length > 3 ? (await import('./progress.ts')).progress(desk, jobs.length) : undefined
    const at = progress?.desk ?? desk
    const taken = new Map<string, string>()
    let worst: Exit = exits.sound
    let made = 0
    for (const job of jobs) {
      if (made > 0 && 'spec' in job) at.say('')
      const wrong = 'wrong' in job ? job.wrong : twice(job, taken)
      if (wrong !== undefined) at.complain(wrong)
      const exit = 'wrong' in job || wrong !== undefined ? exits.unreadable : await makeJob(job, order, at)
      worst = exit > worst ? exit : worst
      if (exit === exits.sound || (exit === exits.broken && order.anyway)) made += 1
      progress?.step()
    }
    progress?.stop()
    if (made > 0) {
      const { closing } = await import('./telling.ts')
      desk.say(`\n${closing(desk.width)}`)
    }
    return worst
  },
}

/** Two specs of one name would write over one another. Notes the name. */
const twice = (job: Extract<Job, { spec: unknown }>, taken: Map<string, string>): string | undefined => {
  // As a folder name, on computers that do not tell capitals apart.
  const name = job.spec.name.toLowerCase()
  const earlier = taken.get(name)
  if (earlier === undefined) taken.set(name, job.path)
  return earlier === undefined
    ? undefined
    : `${job.path}: its name, ${job.spec.name}, is also that of ${earlier}, whose folder it would write over.`
}
