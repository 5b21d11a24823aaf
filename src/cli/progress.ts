import { Presets, SingleBar } from 'cli-progress'
import type { Desk } from './desk.ts'

/** A bar over many specs, for a person at a terminal. What is said meanwhile is said when it is done. */
export const progress = (desk: Desk, total: number) => {
  const held: (() => void)[] = []
  const bar = new SingleBar(
    { format: '{bar} {value} of {total} specs', clearOnComplete: true, hideCursor: true, gracefulExit: true },
    Presets.shades_classic,
  )
  bar.start(total, 0)
  return {
    desk: {
      ...desk,
      say: (text: string) => void held.push(() => desk.say(text)),
      complain: (text: string) => void held.push(() => desk.complain(text)),
    } satisfies Desk,
    step: () => bar.increment(),
    stop: () => {
      bar.stop()
      for (const tell of held) tell()
    },
  }
}
