import type { Complaint } from './complaint.ts'
import { plainLine } from './place.ts'

/** A complaint as one plain line: `bore.length: read "24 furlongs"; accepted: a length…; meant: …?` */
export const tell = (complaint: Complaint): string => tellOf('the spec', complaint)

/** The same, of a document called `whole`. */
export function tellOf(whole: string, { path, at, read, accepted, meant }: Complaint): string {
  const line = `${at ?? (path === '' ? whole : path)}: read ${read}; accepted: ${accepted}`
  return plainLine(meant === undefined ? line : `${line}. Was ${meant} meant?`)
}
