import type { Desk } from './desk.ts'

/** What the shell hears. 0 sound, 1 a `must` is broken, 2 the spec or the command cannot be read, 70 our own bug. */
export const exits = { sound: 0, broken: 1, unreadable: 2, bug: 70 } as const
export type Exit = (typeof exits)[keyof typeof exits]

/** One flag of a verb. `takes` absent: a switch. */
export interface Flag {
  readonly name: string
  /** What stands after it, as shown in the help: `DIR`. */
  readonly takes?: string
  readonly says: string
  /** The words that are accepted, where they are few. A comma parts several where `many`. */
  readonly among?: readonly string[]
  readonly many?: boolean
}

/** What was asked of a verb, read and checked against its flags. */
export interface Asked {
  /** What stands on the line beside the flags, in order. */
  readonly things: readonly string[]
  readonly switches: ReadonlySet<string>
  readonly words: ReadonlyMap<string, readonly string[]>
}

/** One verb of the command line: its help as data, and what it does. `run` loads what is heavy when it is called. */
export interface Verb {
  readonly name: string
  /** Things on the line: `SPEC...`. */
  readonly takes: string
  /** How many things, [least, most]. */
  readonly things: readonly [least: number, most: number]
  readonly says: string
  readonly flags: readonly Flag[]
  readonly run: (asked: Asked, desk: Desk) => Promise<Exit>
}

/** The first word given for a flag, or `undefined`. */
export const word = (asked: Asked, flag: string): string | undefined => asked.words.get(flag)?.[0]
