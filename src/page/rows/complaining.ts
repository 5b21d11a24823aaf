import type { Complaint } from '../../spec/complaint.ts'
import { chosen } from './chosen.ts'
import { known } from './known.ts'
import { press } from './press.ts'
import type { Row } from './row.ts'
import { shop } from './shop.ts'

/** Every line that the form can have. */
export const allRows: readonly Row[] = [...[...known, ...press, ...shop].flatMap((group) => group.rows), ...chosen]

/** The lines by whom the complaint is told: the one at its path, else those under it, else the nearest above it. */
const rowFor = (path: string): string | undefined => {
  const paths = allRows.map((row) => row.path)
  if (paths.includes(path)) return path
  const under = paths.find((each) => each.startsWith(`${path}.`))
  return under ?? paths.filter((each) => path.startsWith(each)).toSorted((a, b) => b.length - a.length)[0]
}

/** Complaints by the line they stand under; those that belong to no line under ''. */
export const byRow = (complaints: readonly Complaint[]): ReadonlyMap<string, Complaint> => {
  const found = new Map<string, Complaint>()
  for (const complaint of complaints) {
    const row = rowFor(complaint.path) ?? ''
    if (!found.has(row)) found.set(row, complaint)
  }
  return found
}

/** A complaint in words, for a blank. */
export const worded = ({ read, accepted, meant }: Complaint): string => {
  const asked = read.startsWith('nothing') ? `Wanted: ${accepted}.` : `Read ${read}. Accepted: ${accepted}.`
  return meant === undefined ? asked : `${asked} Was ${meant} meant?`
}
