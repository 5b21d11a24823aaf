import type { Design } from '../../design.ts'
import { isMapping, placeOf, standsAt } from '../../spec/place.ts'

/** What is typed into a blank, and so how it is read and shown. */
export type Kind =
  /** A length, mm inside. `fit`: shown one figure finer. */
  | { readonly is: 'length'; readonly fit?: true; readonly zero?: true; readonly signed?: true }
  /** A length, or two of them: least and most. */
  | { readonly is: 'limits'; readonly zero?: true }
  /** An ISO class, or two deviations. */
  | { readonly is: 'tolerance' }
  | { readonly is: 'torque' | 'force' | 'area' | 'stress' | 'stiffness' | 'angle' | 'angles' }
  | { readonly is: 'number'; readonly whole?: true }
  | { readonly is: 'flag' }
  | { readonly is: 'text'; readonly offered?: 'materials' | 'threads' | 'machines'; readonly long?: true }
  /** A list in one line, with commas and blanks between. `of` drills: a letter is one. */
  | { readonly is: 'list'; readonly of: 'lengths' | 'drills' | 'texts' | 'bits' | 'counts' }
  /** One of a few words; the empty one leaves it to the program. */
  | { readonly is: 'word'; readonly words: Readonly<Record<string, string>> }
  /** Whether a mapping is there at all: its word without, and with. */
  | { readonly is: 'presence'; readonly without: string; readonly within: string }
  /** Which of several mappings stands at the path. */
  | { readonly is: 'branch'; readonly words: Readonly<Record<string, string>> }

/** What stands where nothing is told: a length in mm, another quantity in its unit inside, or words. */
export type Worked = number | readonly number[] | string | undefined

/** One line of the form. */
export interface Row {
  /** Where it stands in the spec: `tooling.bar.projection`. */
  readonly path: string
  readonly word: string
  readonly kind: Kind
  /** What the program took or chose; left out where nothing can be taken. */
  readonly worked?: (design: Design) => Worked
  /** Where its reason stands in the design's basis: `bar.projection`. */
  readonly why?: string
  /** Whether the line is there; left out: always. */
  readonly when?: (job: Asked) => boolean
  /** Folded away until it is told or asked for. */
  readonly seldom?: true
}

/** A document, asked what it states. */
export interface Asked {
  readonly at: (path: string) => unknown
  readonly has: (path: string) => boolean
}

export const asked = (document: unknown): Asked => {
  const at = (path: string): unknown => standsAt(document, placeOf(path))
  return { at, has: (path) => at(path) !== undefined }
}

/** One group of lines under a word of their own. */
export interface Group {
  readonly heading: string
  readonly rows: readonly Row[]
  readonly when?: (job: Asked) => boolean
  /** The whole group is folded away. */
  readonly seldom?: true
}

/** The one feature that a document names. */
export const featureOf = (job: Asked): string => {
  const feature = job.at('feature')
  return isMapping(feature) ? (Object.keys(feature)[0] ?? '') : ''
}
