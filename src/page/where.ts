import { signal } from '@preact/signals'

/** Address of the view at the machine: it can be a mark on a home screen, and the job comes from what this browser keeps. */
export const machineAddress = '#machine'

/** Whether the page is at the machine or at the desk. */
export const atMachine = signal(location.hash === machineAddress)

/** Keeps it in step with the address. */
export const followWhere = (): void => {
  addEventListener('hashchange', () => {
    const there = location.hash === machineAddress
    if (there !== atMachine.value) scrollTo(0, 0)
    atMachine.value = there
  })
}
