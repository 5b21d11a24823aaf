import { useRef, useState } from 'preact/hooks'
import { design } from '../answers.ts'
import { keepJob, openFiles } from '../coming-and-going.ts'
import { jobUnits, stated, tell } from '../job.ts'
import { lightNow, putOn, showIn, shownUnits } from '../shown-in.ts'
import { machineAddress } from '../where.ts'
import { Words } from './words.tsx'
import type { Units } from '../../spec/spec.ts'

/** Shows lengths in other units; a job of which no size is told yet is in them too. */
const shownIn = (units: Units): void => {
  if (stated('bore.diameter') === undefined && stated('bore.length') === undefined && jobUnits.value !== units)
    tell({ units })
  showIn(units)
}

export const chooser = { open: (): void => undefined }

export const Head = () => {
  const chosen = useRef<HTMLInputElement>(null)
  const [more, setMore] = useState(false)
  const [wrong, setWrong] = useState<string | undefined>(undefined)
  chooser.open = () => chosen.current?.click()
  const name = String(stated('name') ?? '')
  const rename = (typed: string): void => {
    const sound = /^[A-Za-z0-9_-]{1,64}$/.test(typed)
    const near = typed
      .trim()
      .replace(/[^A-Za-z0-9_-]+/g, '-')
      .slice(0, 64)
    setWrong(
      sound
        ? undefined
        : `A name holds letters, figures, - and _.${near === '' ? '' : ` “${typed}” would be ${near}.`}`,
    )
    if (sound) tell({ name: typed })
  }
  return (
    <header class={more ? 'is-open' : ''}>
      <p class="brand">borewright</p>
      <h1 class="named">
        <label for="job-name" class="unseen">
          Name of the job
        </label>
        <input
          id="job-name"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={name}
          size={Math.max(10, name.length + 1)}
          aria-invalid={wrong ? 'true' : undefined}
          aria-describedby={wrong ? 'job-name-said' : undefined}
          onChange={(event) => rename(event.currentTarget.value)}
        />
        {wrong && (
          <span class="note complaint" id="job-name-said">
            {wrong}
          </span>
        )}
      </h1>
      <button type="button" class="more" aria-expanded={more} aria-controls="head-more" onClick={() => setMore(!more)}>
        More
      </button>
      <div class="head-more" id="head-more">
        <Words
          name="units"
          label="Shown in"
          words={[
            ['mm', 'mm'],
            ['in', 'inch'],
          ]}
          now={shownUnits.value}
          choose={shownIn}
        />
        <Words
          name="light"
          label="Light"
          words={[
            ['day', 'Day'],
            ['night', 'Night'],
            ['strong', 'Strong'],
          ]}
          now={lightNow()}
          choose={putOn}
        />
        <span class="pair">
          <button type="button" onClick={() => chosen.current?.click()}>
            Open a job
          </button>
          <button type="button" onClick={keepJob}>
            Keep this job
          </button>
        </span>
      </div>
      {design.value && (
        <a class="to-machine" href={machineAddress}>
          Go to the machine
        </a>
      )}
      <input
        ref={chosen}
        type="file"
        class="unseen"
        tabIndex={-1}
        aria-hidden="true"
        multiple
        accept=".yaml,.yml,.json,application/json,application/yaml"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])]
          event.currentTarget.value = ''
          void openFiles(files)
        }}
      />
    </header>
  )
}
