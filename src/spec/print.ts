import type { Complaint } from './complaint.ts'

/** A complaint as one plain line: `bore.length: read "24 furlongs"; accepted: a length…; meant: …?` */
export function tell(complaint: Complaint): string {
  const { path, at, read, accepted, meant } = complaint
  const line = `${at ?? (path === '' ? 'the spec' : path)}: read ${read}; accepted: ${accepted}`
  return (meant === undefined ? line : `${line}. Was ${meant} meant?`).replace(/\s+/g, ' ')
}
