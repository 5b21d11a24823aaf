import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'

const view = signal<ComponentType | undefined>(undefined)
const failed = signal(false)

const load = async (): Promise<void> => {
  failed.value = false
  try {
    view.value = (await import('../solid-view/solid-view.tsx')).SolidView
  } catch {
    failed.value = true
  }
}

/** The solids, which come when they are first looked at. */
export const InTheRound = () => {
  useEffect(() => {
    if (!view.value) void load()
  }, [])
  const View = view.value
  if (View) return <View />
  return failed.value ? (
    <p class="note">
      The solids could not be had.{' '}
      <button type="button" onClick={() => void load()}>
        Try again
      </button>
    </p>
  ) : (
    <p class="note">One moment.</p>
  )
}
