import { kept, keep } from '../keeping.ts'
import { signal } from '@preact/signals'
import { oneBack, passDone } from './going.ts'
import { screenNow } from './job.ts'

/** Whether keys say that a pass is done: a foot switch or a page turner. */
export const keysOn = signal(kept('machine-keys') !== 'off')
export const turnKeys = (on: boolean): void => {
  keysOn.value = on
  keep('machine-keys', on ? 'on' : 'off')
}

const done = ['PageDown', 'ArrowRight']
const presses = [' ', 'Enter']
const back = ['Backspace', 'PageUp']

const typing = (target: EventTarget | null): boolean => target instanceof HTMLInputElement && target.type === 'text'
/** What a key presses of itself. */
const pressed = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('button, a, input, summary, select') !== null

/** Keys of the cut; at a gate nothing is gone past by a key. Gives back what ends it. */
export const followKeys = (): (() => void) => {
  const keyed = (event: KeyboardEvent): void => {
    if (!keysOn.value || event.ctrlKey || event.metaKey || event.altKey || typing(event.target)) return
    const cutting = screenNow.peek()?.is === 'cut'
    const isDone = done.includes(event.key) || (presses.includes(event.key) && !pressed(event.target))
    if (isDone && cutting) {
      event.preventDefault()
      if (!event.repeat) passDone()
    } else if (back.includes(event.key) && (cutting || screenNow.peek()?.is === 'gate')) {
      event.preventDefault()
      if (!event.repeat) oneBack()
    }
  }
  addEventListener('keydown', keyed)
  return () => removeEventListener('keydown', keyed)
}
