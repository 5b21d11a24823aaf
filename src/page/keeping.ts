import { signal } from '@preact/signals'

/** Whether this browser keeps what it is given. */
export const keeps = signal(true)

const named = (name: string): string => `borewright.${name}`

/** What was kept under a name in this browser; undefined where nothing was, or where nothing is kept. */
export const kept = (name: string): string | undefined => {
  try {
    return localStorage.getItem(named(name)) ?? undefined
  } catch {
    keeps.value = false
    return undefined
  }
}

/** Keeps a text in this browser; where that is refused the page says so. */
export const keep = (name: string, text: string): void => {
  try {
    localStorage.setItem(named(name), text)
    keeps.value = true
  } catch {
    keeps.value = false
  }
}

/** Tells of what another tab keeps under a name. */
export const whenKeptElsewhere = (name: string, tell: (text: string) => void): void => {
  addEventListener('storage', (event) => {
    if (event.key === named(name) && event.newValue !== null) tell(event.newValue)
  })
}
