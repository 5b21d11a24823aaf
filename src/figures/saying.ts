/** How the figures write a size: in the job's units, as the rest of the program writes it. */
import type { Design } from '../design.ts'
import { figure } from '../spec/figures.ts'
import type { Run } from './figure.ts'

/** Without its unit: what stands in a picture. */
export const bare = ({ spec }: Design, mm: number, fit = false): string => figure(mm, spec.units, { unit: false, fit })

/** With its unit: what stands in a table. */
export const whole = ({ spec }: Design, mm: number, fit = false): string => figure(mm, spec.units, { fit })

/** A bold figure and what it is of. */
export const figured = (number: string, word: string): readonly Run[] => [
  { role: 'figure', text: number },
  { role: 'word', text: ` ${word}` },
]

/** `Ø24 H7`: the bore with its class, where its limits have one. */
export const boreNamed = (design: Design): string => {
  const { bore } = design.spec
  const limits = /^[A-Z]{1,2}\d/.test(bore.tolerance) ? ` ${bore.tolerance}` : ''
  return `Ø${bare(design, bore.measured ?? bore.diameter.nominal)}${bore.measured === undefined ? limits : ''}`
}

/** `a, b and c`. */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
