import yargs from 'yargs'
import { type Read, saysOf } from './line.ts'
import type { Verb } from './verb.ts'

/** Reads any line, and the help where it is asked for: `help` is empty otherwise. `width` in characters. */
export const readAny = (
  words: readonly string[],
  verbs: readonly Verb[],
  about: { readonly version: string; readonly width: number },
): { asked: Read; help: string } => {
  const parser = yargs([])
    .scriptName('borewright')
    .locale('en')
    .parserConfiguration({
      'boolean-negation': false,
      'camel-case-expansion': false,
      'dot-notation': false,
      'duplicate-arguments-array': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
    })
    .usage(
      'borewright VERB ...\n\nOne spec of a bore and its keyway in; checked sizes, shop drawings and solids of the tooling out.',
    )
    .epilogue(
      'Exit status: 0 sound, 1 a rule that must hold is broken, 2 the spec or the command cannot be read, 70 a bug of ours.',
    )
    .version(about.version)
    .help()
    .exitProcess(false)
    .fail(false)
    .wrap(about.width)
  for (const verb of verbs)
    parser.command(
      `${verb.name}${verb.takes === '' ? '' : ` ${verb.takes}`}`.split(' ')[0] ?? verb.name,
      verb.says,
      (inner) => {
        inner.usage(`borewright ${verb.name} ${verb.takes}\n\n${verb.says}`)
        for (const flag of verb.flags)
          inner.option(flag.name, {
            describe: saysOf(flag),
            ...(flag.takes === undefined ? { type: 'boolean' } : { type: 'string', requiresArg: false }),
          })
        return inner
      },
      () => undefined,
    )
  let help = ''
  const asked = parser.parse([...words], {}, (_error: unknown, _asked: unknown, shown: string) => {
    help = shown
  }) as Read
  return { asked, help }
}
