import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { Heading } from '../parts/heading.tsx'

/** What has gone wrong: undefined where nothing has, '' where it is not yet said what. */
const wrong = signal<string | undefined>(undefined)
export const isWrong = (): boolean => wrong.value !== undefined
export const openWrong = (): void => {
  wrong.value = ''
  scrollTo(0, 0)
}
export const closeWrong = (): void => {
  wrong.value = undefined
  scrollTo(0, 0)
}

/** Each gives three short lines: stop, make safe, what to look at. */
const causes: readonly (readonly [cause: string, lines: readonly [string, string, string]])[] = [
  [
    'Handle gone heavy',
    [
      'Stop. Do not lean on it.',
      'Back the dial off, then draw the bar out by hand.',
      'Look for a chipped corner, a chip wedged in the slot, a bar that has sprung.',
    ],
  ],
  [
    'A corner is chipped',
    [
      'Stop. The next stroke would rub, not cut.',
      'Bar out. Find the piece and brush it out; it is harder than your file.',
      'Grind or change the bit, set it over bar and nose, find the zero again.',
    ],
  ],
  [
    'The bit moved',
    [
      'Stop. The slot is no longer where the dial says.',
      'Bar out before the screw is touched.',
      'Measure the slot as it is, set the bit, tighten the screw, touch the floor anew.',
    ],
  ],
  [
    'The hub moved',
    [
      'Stop. The slot would come out crooked or wide.',
      'Bar out, then slack the jaws or clamps.',
      'True the hub by the indicator, and the slot to the nose, before it is cut on.',
    ],
  ],
  [
    'I hurt myself or nearly did',
    [
      'Stop, and get help.',
      'Leave the machine as it stands; the plug stays out.',
      'The job keeps. Come back to it when it was a near miss and you know why.',
    ],
  ],
]

export const Wrong = () => {
  const heading = useRef<HTMLDivElement>(null)
  const now = causes.find(([cause]) => cause === wrong.value)
  useEffect(() => heading.current?.focus(), [wrong.value])
  return (
    <div ref={heading} tabIndex={-1} class="wrong">
      <Heading id="screen">{now ? now[0] : 'Something is wrong'}</Heading>
      {now ? (
        <ol class="three-lines">
          {now[1].map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      ) : (
        <div class="causes">
          {causes.map(([cause]) => (
            <button
              key={cause}
              type="button"
              onClick={() => {
                wrong.value = cause
              }}
            >
              {cause}
            </button>
          ))}
        </div>
      )}
      <button type="button" class="go is-quiet" onClick={closeWrong}>
        {now ? 'Back to where it stands' : 'Nothing: back to where it stands'}
      </button>
    </div>
  )
}
