import { exits, type Exit, type Verb } from './verb.ts'

export const check: Verb = {
  name: 'check',
  takes: 'SPEC...',
  things: [1, Number.POSITIVE_INFINITY],
  says: 'work out every size and judge it; nothing is written',
  flags: [
    { name: 'json', says: 'print the report as JSON: mm, N, degrees' },
    { name: 'picture', says: 'show the bore with its bar in plain characters, at the end of the cut' },
  ],
  run: async (asked, desk) => {
    const [{ readJob }, { design }] = await Promise.all([import('./job.ts'), import('../design.ts')])
    const asJson = asked.switches.has('json')
    const reports: unknown[] = []
    let worst: Exit = exits.sound
    for (const [at, path] of asked.things.entries()) {
      const job = await readJob(path, desk.folder)
      if ('wrong' in job) {
        desk.complain(job.wrong)
        worst = exits.unreadable
        continue
      }
      const made = design(job.spec)
      if (made.verdict === 'fail' && worst === exits.sound) worst = exits.broken
      if (asJson) reports.push((await import('../writers/report.ts')).report(made))
      else {
        const { telling } = await import('./telling.ts')
        desk.say(`${at > 0 ? '\n' : ''}${telling(made, desk.width, desk.paint)}`)
        if (asked.switches.has('picture')) {
          const { plainSection } = await import('../figures/plain-section.ts')
          desk.say(`\n${plainSection(made, desk.width).join('\n')}`)
        }
      }
    }
    // One spec: its report. Several: a list of those that could be read.
    if (asJson && (asked.things.length > 1 || reports.length > 0))
      desk.say(JSON.stringify(asked.things.length > 1 ? reports : reports[0], null, 2))
    return worst
  },
}
