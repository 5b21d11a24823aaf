import { suggest } from './suggest.ts'
import type { Asked, Flag, Verb } from './verb.ts'

/** A command line as read: a verb to run, text to show and be done, or what is wrong with it. */
export type Line =
  | { readonly is: 'verb'; readonly verb: Verb; readonly asked: Asked }
  | { readonly is: 'text'; readonly text: string }
  | { readonly is: 'wrong'; readonly wrong: string }

/** How a verb stands in the help: `make SPEC... [--to DIR] [--anyway]`. */
export const usage = (verb: Verb): string =>
  [verb.name, verb.takes, ...verb.flags.map((flag) => `[--${flag.name}${flag.takes ? ` ${flag.takes}` : ''}]`)]
    .filter((part) => part !== '')
    .join(' ')

/** What a flag says, with the words that it accepts. */
export const saysOf = (flag: Flag): string =>
  flag.among === undefined ? flag.says : `${flag.says} (${flag.among.join(', ')})`

/** Reads a command line, with nothing done yet. `width` in characters, for the help. */
export const readLine = async (
  words: readonly string[],
  verbs: readonly Verb[],
  about: { readonly version: string; readonly width: number },
): Promise<Line> => {
  if (words.length === 1 && words[0] === '--version') return { is: 'text', text: about.version }
  const plain = readPlain(words, verbs)
  const { asked, help } = plain
    ? { asked: plain, help: '' }
    : (await import('./any-line.ts')).readAny(words, verbs, about)
  if (help !== '') return { is: 'text', text: help }
  const [name, ...things] = asked._.map(String)
  const verb = verbs.find((known) => known.name === name)
  if (verb === undefined) {
    const wrong =
      name === undefined
        ? 'Say what to do.'
        : `'${name}' is no verb of borewright.${suggest(
            name,
            verbs.map((known) => known.name),
          )}`
    return {
      is: 'wrong',
      wrong: `${wrong}\n\n${(await import('./any-line.ts')).readAny(['--help'], verbs, about).help}`,
    }
  }
  const wrong = [...wrongThings(verb, things), ...wrongFlags(verb, asked), ...twice(verb, words)]
  if (wrong.length > 0) return { is: 'wrong', wrong: `${wrong.join('\n')}\nusage: borewright ${usage(verb)}` }
  return { is: 'verb', verb, asked: askedOf(verb, things, asked) }
}

/** What stands on a line: its words beside the flags, and each flag by its name. */
export interface Read {
  readonly _: readonly (string | number)[]
  readonly [flag: string]: unknown
}

/**
 * Reads a line in its plainest form: a verb, its things, and its own flags once each, a word after those that take one. `undefined` for
 * any other line. Nearly every line is plain, and all that reads the others, the same, takes longer to load than most verbs to run.
 */
export const readPlain = (words: readonly string[], verbs: readonly Verb[]): Read | undefined => {
  const [name, ...rest] = words
  const verb = verbs.find((known) => known.name === name)
  if (verb === undefined || rest.some((word) => /^(?:help|true|false|.*["'].*|)$/s.test(word))) return undefined
  const things: string[] = [verb.name]
  const flags: Record<string, string | true> = {}
  for (let at = 0; at < rest.length; at += 1) {
    const [word, next] = [rest[at] ?? '', rest[at + 1] ?? '-']
    if (!word.startsWith('-')) {
      things.push(word)
      continue
    }
    const [, flagName, after] = /^--([^=]+)(?:=(.+))?$/s.exec(word) ?? []
    const flag = verb.flags.find((known) => known.name === flagName)
    if (flag === undefined || Object.hasOwn(flags, flag.name)) return undefined
    if (flag.takes === undefined) {
      if (after !== undefined) return undefined
      flags[flag.name] = true
    } else {
      if (after === undefined) at += 1
      const given = after ?? next
      if (given.startsWith('-')) return undefined
      flags[flag.name] = given
    }
  }
  return { _: things, ...flags }
}

const wrongThings = (verb: Verb, things: readonly string[]): string[] => {
  const [least, most] = verb.things
  if (things.length < least) return [`'${verb.name}' wants ${verb.takes}, and was given nothing.`]
  return things.length > most ? [`'${verb.name}' does not know what to do with '${things[most]}'.`] : []
}

const wrongFlags = (verb: Verb, asked: Read): string[] => {
  const known = verb.flags.map((flag) => flag.name)
  const wrong: string[] = []
  for (const [name, given] of Object.entries(asked)) {
    if (['_', '$0', 'help', 'version'].includes(name)) continue
    const flag = verb.flags.find((flag) => flag.name === name)
    const dashes = name.length === 1 ? '-' : '--'
    if (flag === undefined) {
      wrong.push(`'${verb.name}' has no flag ${dashes}${name}.${suggest(name, known, '--')}`)
    } else if (flag.takes !== undefined && wordsOf(flag, given).length === 0)
      wrong.push(`--${name} wants ${flag.takes} after it.`)
    else if (flag.takes !== undefined && flag.among !== undefined)
      for (const word of wordsOf(flag, given))
        if (!flag.among.includes(word))
          wrong.push(
            `--${name} does not know '${word}'.${suggest(word, flag.among)} It takes ${flag.among.join(', ')}.`,
          )
  }
  return wrong
}

/** Of a word given twice one would be dropped without a sound. */
const twice = (verb: Verb, words: readonly string[]): string[] => {
  const end = words.indexOf('--')
  const read = end < 0 ? words : words.slice(0, end)
  return verb.flags
    .filter((flag) => flag.takes !== undefined)
    .filter(({ name }) => read.filter((word) => word === `--${name}` || word.startsWith(`--${name}=`)).length > 1)
    .map(
      ({ name, many }) => `--${name} is given twice: once is enough${many ? ', with a comma between the words' : ''}.`,
    )
}

const wordsOf = (flag: Flag, given: unknown): string[] =>
  flag.many
    ? String(given)
        .split(',')
        .map((word) => word.trim())
        .filter((word) => word !== '')
    : [String(given)].filter((word) => word !== '')

const askedOf = (verb: Verb, things: readonly string[], asked: Read): Asked => {
  const given = verb.flags.filter((flag) => asked[flag.name] !== undefined)
  return {
    things,
    switches: new Set(
      given.filter((flag) => flag.takes === undefined && asked[flag.name] === true).map((flag) => flag.name),
    ),
    words: new Map(
      given.filter((flag) => flag.takes !== undefined).map((flag) => [flag.name, wordsOf(flag, asked[flag.name])]),
    ),
  }
}
