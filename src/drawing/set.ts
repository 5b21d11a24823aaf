/** The sheets of a whole set, numbered through. */
import { bodiesOf, type Drafting, sheetsOf } from './lay.ts'
import type { Sheet } from './sheet.ts'
import type { Drawing } from './view.ts'

/** Lays all drawings of a set and numbers their sheets from 1 to the last. */
export function laySet(drawings: readonly Drawing[], drafting: Drafting): Sheet[] {
  const laid = drawings.map((drawing) => bodiesOf(drawing, drafting))
  const of = laid.reduce((sum, { bodies }) => sum + bodies.length, 0)
  const sheets: Sheet[] = []
  for (const bodies of laid) sheets.push(...sheetsOf(bodies, drafting, { first: sheets.length + 1, of }))
  return sheets
}
