import { exits, type Verb } from './verb.ts'

export const starter: Verb = {
  name: 'new',
  takes: '[FILE]',
  things: [0, 1],
  says: 'a commented spec to start from; asks for the main sizes at a terminal, never when piped',
  flags: [],
  run: async (asked, desk) => {
    const [{ writeFile }, { resolve }, { starterSpec }] = await Promise.all([
      import('node:fs/promises'),
      import('node:path'),
      import('../spec/starter.ts'),
    ])
    const [file] = asked.things
    const { units, answers } = desk.attended
      ? await (await import('./asking.ts')).ask(desk)
      : { units: 'mm' as const, answers: {} }
    const text = starterSpec(units, answers)
    if (file === undefined && !desk.attended) {
      desk.say(text.trimEnd())
      return exits.sound
    }
    const name = file ?? `${'name' in answers ? answers.name : 'spec'}.yaml`
    try {
      // wx: never over a file that is there.
      await writeFile(resolve(desk.folder, name), text, { flag: 'wx' })
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined
      if (code === undefined) throw error
      desk.complain(
        code === 'EEXIST'
          ? `${name} is there already and is left as it is: give another name.`
          : `${name} cannot be written: ${error instanceof Error ? error.message : String(error)}`,
      )
      return exits.unreadable
    }
    desk.say(`${name} is written. Next: borewright check ${name}`)
    return exits.sound
  },
}
