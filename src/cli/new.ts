import { typed } from './desk.ts'
import { exits, type Verb } from './verb.ts'

export const starter: Verb = {
  name: 'new',
  takes: '[FILE]',
  things: [0, 1],
  says: 'a commented spec to start from; asks for the main sizes at a terminal, never when piped',
  flags: [],
  run: async (asked, desk) => {
    const [{ existsSync }, { writeFile }, { basename, extname, resolve }, { starterSpec }, { ask, jobName }] =
      await Promise.all([
        import('node:fs'),
        import('node:fs/promises'),
        import('node:path'),
        import('../spec/starter.ts'),
        import('./asking.ts'),
      ])
    const [file] = asked.things
    if (file === undefined && !desk.attended) {
      desk.say(starterSpec('mm').trimEnd())
      return exits.sound
    }
    const wrong = (name: string): string | undefined =>
      extname(name).toLowerCase() === '.json'
        ? `The spec to start from is YAML, for the sake of its comments: name it ${name.slice(0, -'.json'.length)}.yaml.`
        : existsSync(resolve(desk.folder, name))
          ? `${name} is there already and is left as it is: give another name.`
          : undefined
    const hindered = file === undefined ? undefined : wrong(file)
    if (hindered !== undefined) {
      desk.complain(hindered)
      return exits.unreadable
    }
    // The job is called as its file is, where that is a name for a folder.
    const stem = file === undefined ? '' : basename(file, extname(file))
    const own = jobName.test(stem) ? stem : undefined
    const given = desk.attended
      ? await ask(desk, own, file === undefined ? (name) => wrong(`${name}.yaml`) : undefined)
      : { units: 'mm' as const, answers: own === undefined ? {} : { name: own } }
    if (given === undefined) {
      desk.complain('\nstopped; nothing was written.')
      return exits.unreadable
    }
    const { schemaFile } = await import('./schema-file.ts')
    const schema = schemaFile()
    const text = starterSpec(given.units, { ...given.answers, ...(schema !== undefined && { schema }) })
    const name = file ?? `${given.answers.name}.yaml`
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
    desk.say(`${name} is written. Next: ${desk.called} check ${typed(name)}`)
    return exits.sound
  },
}
