import { effect, signal } from '@preact/signals'
import type { Units } from '../spec/spec.ts'
import { kept, keep } from './keeping.ts'
import { atMachine } from './where.ts'

export type Light = 'day' | 'night' | 'strong'

/** Units that the page shows; undefined until they are chosen or a job is opened. Never what is worked with. */
export const shownUnits = signal<Units>(kept('units') === 'in' ? 'in' : 'mm')
/** Undefined: as the computer says. */
export const light = signal<Light | undefined>(
  (['day', 'night', 'strong'] as const).find((each) => each === kept('light')),
)

const darkness = matchMedia('(prefers-color-scheme: dark)')
const dark = signal(darkness.matches)
/** The light as it is: the chosen one, else the computer's. */
export const lightNow = (): Light => light.value ?? (dark.value ? 'night' : 'day')

/** Puts the light on, and keeps what was chosen. */
export const followShown = (): void => {
  darkness.addEventListener('change', ({ matches }) => (dark.value = matches))
  effect(() => {
    const root = window.document.documentElement
    // At the machine it is day until somebody says otherwise.
    const now = light.value ?? (atMachine.value ? 'day' : undefined)
    if (now) root.dataset['light'] = now
    else delete root.dataset['light']
  })
}

export const showIn = (units: Units): void => {
  shownUnits.value = units
  keep('units', units)
}

export const putOn = (chosen: Light): void => {
  light.value = chosen
  keep('light', chosen)
}
