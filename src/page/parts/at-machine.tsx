import './at-machine.css'
import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'

const view = signal<ComponentType | undefined>(undefined)
const failed = signal(false)

const load = async (): Promise<void> => {
  failed.value = false
  try {
    view.value = (await import('../machine/machine.tsx')).Machine
  } catch {
    failed.value = true
  }
}

/** The view at the machine, which comes when it is first gone to. */
export const AtMachine = () => {
  useEffect(() => {
    if (!view.value) void load()
  }, [])
  const Machine = view.value
  if (Machine) return <Machine />
  return (
    <main>
      {failed.value ? (
        <p class="notice" role="alert">
          The view at the machine could not be had.{' '}
          <button type="button" onClick={() => void load()}>
            Try again
          </button>
        </p>
      ) : (
        <p class="verdict">One moment.</p>
      )}
    </main>
  )
}
