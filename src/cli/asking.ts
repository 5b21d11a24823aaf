import { createInterface } from 'node:readline/promises'
import { readLength } from '../spec/length.ts'
import type { Units } from '../spec/spec.ts'
import type { StarterAnswers } from '../spec/starter.ts'
import type { Desk } from './desk.ts'

export interface Answers {
  readonly units: Units
  readonly answers: StarterAnswers & { readonly name: string }
}

/** Where questions are asked and answered. */
export interface Ends {
  readonly input: NodeJS.ReadableStream
  readonly output: NodeJS.WritableStream
}

/** Names that name a folder too. */
export const jobName = /^[A-Za-z0-9_-]{1,64}$/

/**
 * Asks a person for the main sizes; each answer is asked for again until it can be read. Enter takes what stands in brackets.
 * `usual` is the name offered; `taken` says what is against a name that reads well. `undefined` when the person leaves (Ctrl+C,
 * Ctrl+D).
 */
export const ask = async (
  desk: Pick<Desk, 'complain'>,
  usual = 'my-first-keyway',
  taken: (name: string) => string | undefined = () => undefined,
  ends: Ends = { input: process.stdin, output: process.stdout },
): Promise<Answers | undefined> => {
  const lines = createInterface({ ...ends, terminal: true })
  const left = new Promise<undefined>((resolve) => lines.once('close', () => resolve(undefined)))
  const answer = async (
    question: string,
    usual: string,
    wrong: (said: string) => string | undefined,
  ): Promise<string> => {
    for (;;) {
      const line = await Promise.race([lines.question(`${question} [${usual}] `).catch(leaving), left])
      if (line === undefined) throw new Left()
      const said = line.trim() || usual
      const complaint = wrong(said)
      if (complaint === undefined) return said
      desk.complain(complaint)
    }
  }
  try {
    const name = await answer('Name of the job', usual, (said) =>
      jobName.test(said) ? taken(said) : "Letters, digits, '-' and '_', at most 64: it names a folder.",
    )
    const units = await answer('Units, mm or in', 'mm', (said) =>
      said === 'mm' || said === 'in' ? undefined : "'mm' or 'in'.",
    )
    const read = units === 'in' ? 'in' : 'mm'
    const length = (said: string): string | undefined =>
      (readLength(said, read) ?? 0) > 0 ? undefined : `'${said}' is no length: write 24, 7/8, "24 mm" or "1-3/8 in".`
    const diameter = await answer('Diameter of the bore', read === 'in' ? '7/8' : '24', length)
    const long = await answer('Length of the bore', read === 'in' ? '1-3/8' : '38', length)
    return { units: read, answers: { name, diameter, length: long } }
  } catch (error) {
    if (error instanceof Left) return undefined
    throw error
  } finally {
    lines.close()
  }
}

/** The person has left. */
class Left extends Error {}

/** A question cut short is no answer; whatever else goes wrong is thrown on. */
const leaving = (error: unknown): undefined => {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'ABORT_ERR' || code === 'ERR_USE_AFTER_CLOSE') return undefined
  throw error
}
