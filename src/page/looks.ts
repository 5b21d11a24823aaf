import { computed, signal } from '@preact/signals'
import { design } from './answers.ts'
import type { PictureName } from './workers/works.ts'

/** One way of looking at the job, and the figures that it shows, from top to bottom. Another way is one line here. */
interface Look {
  readonly name: string
  readonly word: string
  readonly pictures: readonly PictureName[]
  /** What stands below, under a heading of its own. */
  readonly below?: PictureName
  /** Whether the job has it. */
  readonly there: () => boolean
}

const looks: readonly Look[] = [
  {
    name: 'end-on',
    word: 'End on',
    pictures: ['section', 'lengths', 'infeed'],
    below: 'lengthwise',
    there: () => true,
  },
  {
    name: 'lengthwise',
    word: 'Cut lengthwise',
    pictures: ['lengthwise', 'infeed'],
    there: () => (design.value?.bar ?? design.value?.groundBar) !== undefined,
  },
  {
    name: 'press',
    word: 'At the press',
    pictures: ['press', 'pressLengthwise'],
    there: () => design.value?.bushing !== undefined,
  },
  { name: 'in-the-round', word: 'In the round', pictures: [], there: () => true },
]

/** Undefined until somebody chooses: then a blind bore is seen lengthwise, where it fails, and a press job at the press. */
const chosen = signal<string | undefined>(undefined)
export const looksThere = computed(() => looks.filter((look) => look.there()))
export const lookNow = computed<Look | undefined>(() => {
  const { spec, bar, groundBar, bushing } = design.value ?? {}
  const usual = !bar && !groundBar && bushing ? 'press' : spec?.bore.blind ? 'lengthwise' : 'end-on'
  return (
    looksThere.value.find(({ name }) => name === chosen.value) ??
    looksThere.value.find(({ name }) => name === usual) ??
    looksThere.value[0]
  )
})
export const lookAt = (name: string): void => {
  chosen.value = name
}
