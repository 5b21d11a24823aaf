import { keepJob } from './coming-and-going.ts'
import { redo, undo } from './job.ts'
import { chooser } from './parts/head.tsx'

/** Within a blank, undoing is the browser's own. */
const isBlank = (target: EventTarget | null): boolean =>
  target instanceof HTMLTextAreaElement ||
  (target instanceof HTMLInputElement && target.type === 'text' && target.value !== target.defaultValue)

/** Keys that work anywhere on the page. */
export const listenForKeys = (): void => {
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 's') keepJob()
    else if (key === 'o') chooser.open()
    else if (key === 'z' && !isBlank(event.target)) {
      if (event.shiftKey) redo()
      else undo()
    } else if (key === 'y' && !isBlank(event.target)) redo()
    else return
    event.preventDefault()
  })
}
