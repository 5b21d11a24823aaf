import about from '../../package.json' with { type: 'json' }
import { bugWords } from './bug.ts'
import { type Desk, deskOf } from './desk.ts'
import { readLine } from './line.ts'
import { type Exit, exits } from './verb.ts'
import { verbs } from './verbs.ts'

const { version } = about

/** Runs one command line and answers with its exit status. Here, and only here, an error that got this far becomes one. */
export const run = async (words: readonly string[], desk: Desk): Promise<Exit> => {
  try {
    const line = await readLine(words, verbs, { version, width: desk.width })
    if (line.is === 'text') {
      desk.say(line.text)
      return exits.sound
    }
    if (line.is === 'wrong') {
      desk.complain(line.wrong)
      return exits.unreadable
    }
    return await line.verb.run(line.asked, desk)
  } catch (thrown) {
    for (const line of bugWords(thrown)) desk.complain(line)
    return exits.bug
  }
}

// A reader that leaves early (`borewright check … | head -1`) is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
const desk = deskOf(process)
process.exitCode = await run(process.argv.slice(2), desk)
// Once all is said there is nothing to wait for: what the program holds need not be given back piece by piece first.
setImmediate(() => {
  if (desk.allSaid()) process.exit()
})
