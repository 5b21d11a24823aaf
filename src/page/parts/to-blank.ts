import { signal } from '@preact/signals'
import { document } from '../job.ts'
import { allRows } from '../rows/complaining.ts'
import { asked, type Row } from '../rows/row.ts'
import { idOf } from './blank.tsx'

/** Whether what is known and what is chosen stand unfolded, where there is little room. */
export const unfolded = { known: signal(true), chosen: signal(false) }

/** The line for a path, if it is one that can be gone to as the job stands. */
export const rowAt = (path: string): Row | undefined => {
  const job = asked(document.value)
  const row = allRows.find((each) => each.path === path && (each.when?.(job) ?? true))
  return path.startsWith('tooling.press') && !job.has('tooling.press.broach') ? undefined : row
}

/** Goes to the blank of a path, and unfolds whatever it is folded away in. */
export const toBlank = (event: Event, path: string): void => {
  event.preventDefault()
  const blank = window.document.getElementById(idOf(path))
  for (let fold = blank?.closest('details'); fold; fold = fold.parentElement?.closest('details')) fold.open = true
  const part = blank?.closest('.told')
  const which = part?.classList.contains('chosen') ? 'chosen' : 'known'
  if (part) unfolded[which].value = true
  // It cannot have the focus before it is seen, and it is not seen before it is unfolded.
  part?.classList.add('is-open')
  blank?.focus()
}
