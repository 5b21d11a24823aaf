import type { Design } from '../../design.ts'
import type { Format, MadeFile } from '../../make.ts'
import type { Facets } from '../solid-view/facets.ts'

/** A job that can be made: its document, its text as it is kept, and the shop file that it names. */
export interface JobMade {
  readonly text: string
  readonly shop?: string
}

/** One part, with its sheets as pictures. */
export interface PartShown {
  readonly name: string
  readonly title: string
  readonly sheets: readonly { readonly name: string; readonly svg: string }[]
  readonly profile: boolean
}

/** What the making hand answers. */
export type Makes = {
  readonly parts: { readonly asks: JobMade; readonly answers: readonly PartShown[] }
  /** The job card as it is printed: its style, and what it says. */
  readonly card: {
    readonly asks: JobMade
    readonly answers: { readonly style: string; readonly main: string } | undefined
  }
  /** Files as the command line writes them; left out: all formats that are usual, all parts. Tells of each solid as it is carved. */
  readonly files: {
    readonly asks: JobMade & { readonly formats?: readonly Format[]; readonly parts?: readonly string[] }
    readonly answers: readonly MadeFile[]
  }
  /** Every part, of a job that has been judged, as a solid to be looked at: told one after another as they are carved. The answer is how many. */
  readonly solids: { readonly asks: JobMade & Pick<Design, 'verdict'>; readonly answers: number }
  /** Everything, with the list of it, in one zip. */
  readonly everything: {
    readonly asks: JobMade
    readonly answers: { readonly zip: Uint8Array; readonly count: number }
  }
}

/** Told while solids are carved. */
export interface Carving {
  readonly part: string
  readonly at: number
  readonly of: number
}

/** Told when one is carved. */
export interface Carved {
  readonly part: string
  readonly title: string
  readonly facets: Facets
}
