import { useEffect, useRef, useState } from 'preact/hooks'
import about from '../../../package.json' with { type: 'json' }
import { design, outcome } from '../answers.ts'
import { keeps } from '../keeping.ts'
import { sentence } from './blank.tsx'

const keys: readonly (readonly [string, string])[] = [
  ['Enter', 'takes what is typed'],
  ['Esc', 'puts the old value back'],
  ['Up, Down', 'step by the last figure; with Shift by ten'],
  ['On the dial: arrows', 'one pass; Page Up, Page Down gate to gate; Home first touch, End full depth'],
  ['Ctrl+Z, Ctrl+Shift+Z', 'undo, redo'],
  ['Ctrl+S', 'keeps the job as a file'],
  ['Ctrl+O', 'opens a job'],
  ['Ctrl+P', 'prints the job card'],
]

/** The same everywhere: where things are kept, and what stands behind the numbers. */
export const Foot = () => {
  const [open, setOpen] = useState<'spec' | 'numbers' | 'keys' | undefined>(undefined)
  const turn = (which: 'spec' | 'numbers' | 'keys') => () => setOpen(open === which ? undefined : which)
  const opened = useRef<HTMLDivElement>(null)
  // It opens under the edge of the window: without this nothing would seem to happen.
  useEffect(() => {
    if (open) opened.current?.scrollIntoView({ block: 'nearest' })
  }, [open])
  const basis = Object.entries(design.value?.basis ?? {})
  return (
    <footer>
      <p class="deferral caution">
        These are sizes, not an approval. Steering, brakes, suspension, lifting gear, pressure parts, aircraft, and
        anything a life hangs on belong to someone licensed for that work, to the local code and to the maker’s own
        part.
      </p>
      <p class="foot">
        <span>Nothing leaves this computer. Works without a line.</span>
        <span>
          {keeps.value
            ? 'This job is held in this browser until you keep it as a file.'
            : 'This browser will not hold the job. Keep it as a file before you close the page.'}
        </span>
        <span>borewright {about.version}</span>
        <button type="button" class="link" aria-expanded={open === 'spec'} onClick={turn('spec')}>
          The spec, as text
        </button>
        <button type="button" class="link" aria-expanded={open === 'numbers'} onClick={turn('numbers')}>
          How each number was come by
        </button>
        <button type="button" class="link" aria-expanded={open === 'keys'} onClick={turn('keys')}>
          Keys on the keyboard
        </button>
      </p>
      <div ref={opened} class="opened">
        {open === 'spec' && (
          <pre class="spec" tabIndex={0}>
            {outcome.value?.text}
          </pre>
        )}
        {open === 'numbers' && (
          <dl class="bases">
            {basis.map(([path, why]) => (
              <div key={path}>
                <dt>{path}</dt>
                <dd>{sentence(why)}</dd>
              </div>
            ))}
          </dl>
        )}
        {open === 'keys' && (
          <dl class="bases">
            {keys.map(([key, does]) => (
              <div key={key}>
                <dt>{key}</dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        )}
      </div>
    </footer>
  )
}
