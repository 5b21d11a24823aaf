/** The sheets of a whole set, numbered through. */
import { bodiesOf, type Drafting, sheetsOf } from './lay.ts'
import type { Sheet } from './sheet.ts'
import type { Drawing } from './view.ts'

/** Lays all drawings of a set and numbers their sheets from 1 to the last. `bandOf` says the band of a part that must not be made. */
export function laySet(
  drawings: readonly Drawing[],
  drafting: Drafting,
  bandOf: (part: string) => string | undefined = () => drafting.band,
): Sheet[] {
  const draftings = drawings.map(({ part }): Drafting => {
    const { band: _, ...plain } = drafting
    const band = bandOf(part)
    return band === undefined ? plain : { ...plain, band }
  })
  const laid = drawings.map((drawing, i) => bodiesOf(drawing, draftings[i] ?? drafting))
  const of = laid.reduce((sum, { bodies }) => sum + bodies.length, 0)
  const sheets: Sheet[] = []
  for (const [i, bodies] of laid.entries())
    sheets.push(...sheetsOf(bodies, draftings[i] ?? drafting, { first: sheets.length + 1, of }))
  return sheets
}
