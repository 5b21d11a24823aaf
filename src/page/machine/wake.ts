import { signal } from '@preact/signals'

/** Whether the screen stays lit: undefined until it is known. */
export const lit = signal<boolean | undefined>(undefined)

/** Holds the screen lit while the page is seen; gives back what ends it. */
export const holdLit = (): (() => void) => {
  let held: WakeLockSentinel | undefined
  let over = false
  const hold = async (): Promise<void> => {
    if (over || document.visibilityState !== 'visible') return
    try {
      held = await navigator.wakeLock.request('screen')
      lit.value = true
      // A phone that is low takes it back.
      held.addEventListener('release', () => {
        if (!over && document.visibilityState === 'visible') lit.value = false
      })
      if (over) await held.release()
    } catch {
      lit.value = false
    }
  }
  const seen = (): void => void hold()
  document.addEventListener('visibilitychange', seen)
  void hold()
  return () => {
    over = true
    document.removeEventListener('visibilitychange', seen)
    void held?.release().catch(() => undefined)
  }
}
