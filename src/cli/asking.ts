import { createInterface } from 'node:readline/promises'
import { readLength } from '../spec/length.ts'
import type { Units } from '../spec/spec.ts'
import type { StarterAnswers } from '../spec/starter.ts'
import type { Desk } from './desk.ts'

/** Asks a person for the main sizes; each answer is asked for again until it can be read. Enter takes what stands in brackets. */
export const ask = async (desk: Desk): Promise<{ readonly units: Units; readonly answers: StarterAnswers }> => {
  const lines = createInterface({ input: process.stdin, output: process.stdout })
  const answer = async (
    question: string,
    usual: string,
    wrong: (said: string) => string | undefined,
  ): Promise<string> => {
    for (;;) {
      const said = (await lines.question(`${question} [${usual}] `)).trim() || usual
      const complaint = wrong(said)
      if (complaint === undefined) return said
      desk.complain(complaint)
    }
  }
  try {
    const name = await answer('Name of the job', 'my-first-keyway', (said) =>
      /^[A-Za-z0-9_-]{1,64}$/.test(said) ? undefined : "Letters, digits, '-' and '_', at most 64: it names a folder.",
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
  } finally {
    lines.close()
  }
}
