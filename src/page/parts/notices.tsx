import { fault } from '../answers.ts'
import { elsewhere, keepJob, layAnyway, leaveIt, refused, takeElsewhere, waiting } from '../coming-and-going.ts'
import { isMapping } from '../../spec/place.ts'
import { changes, jobUnits, putBack } from '../job.ts'
import { keeps } from '../keeping.ts'
import { allRows } from '../rows/complaining.ts'
import type { Row } from '../rows/row.ts'
import { statedShown } from '../rows/shown.ts'
import { shownUnits } from '../shown-in.ts'

const isSpec = /\.(?:ya?ml|json|txt)$/i

/** What has to be said of the page itself: files that were not opened, and what is our own fault. */
export const Notices = () => (
  <>
    {fault.value !== undefined && (
      <section class="notice" role="alert">
        <p class="complaint">The program tripped over itself. That is our fault, not the job’s.</p>
        <p>
          What you typed is safe in this browser and in the file below. The last sound picture is still shown; do not
          cut from numbers on a page that says this.
        </p>
        <p class="pair">
          <button type="button" onClick={keepJob}>
            Keep this job
          </button>
          <button
            type="button"
            onClick={() => void navigator.clipboard.writeText(fault.value ?? '').catch(() => undefined)}
          >
            Copy what went wrong
          </button>
        </p>
      </section>
    )}
    {refused.value && <Refused />}
    {waiting.value && (
      <section class="notice" role="alert">
        <p>This job has changes not kept as a file. {waiting.value.name} waits.</p>
        <p class="pair">
          <button
            type="button"
            onClick={() => {
              keepJob()
              layAnyway()
            }}
          >
            Keep this job first
          </button>
          <button type="button" onClick={layAnyway}>
            Open anyway
          </button>
          <button type="button" onClick={leaveIt}>
            Leave it
          </button>
        </p>
      </section>
    )}
    {elsewhere.value !== undefined && (
      <section class="notice" role="status">
        <p>Another tab has kept a job in this browser. The one on this page is as it was.</p>
        <p class="pair">
          <button type="button" onClick={() => void takeElsewhere()}>
            Take the other
          </button>
          <button
            type="button"
            onClick={() => {
              elsewhere.value = undefined
            }}
          >
            Leave it
          </button>
        </p>
      </section>
    )}
    {!keeps.value && (
      <section class="notice" role="status">
        <p>This browser will not hold the job. Keep it as a file before you close the page.</p>
      </section>
    )}
  </>
)

const Refused = () => {
  const file = refused.value
  if (!file) return null
  const { name, complaints, readable, wants } = file
  const odd = complaints.length === 0 && wants === undefined
  return (
    <section class="notice" role="alert">
      <p class="complaint">
        {odd
          ? isSpec.test(name)
            ? `${name} is far too large for a spec.`
            : `${name} is not a spec. A spec is a .yaml or .json text.`
          : wants !== undefined && complaints.length === 0
            ? `${name} was not opened: it names a shop file, ${wants}. Drop both at once.`
            : `${name} was not opened: ${complaints.length === 1 ? 'one thing in it' : `${complaints.length} things in it`} cannot be read. The job on the page is as it was.`}
      </p>
      {complaints.length > 0 && (
        <dl class="bases">
          {complaints.map((complaint) => (
            <div key={`${complaint.path}${complaint.at ?? ''}`}>
              <dt>{complaint.path || complaint.at || 'the spec'}</dt>
              <dd>
                {complaint.at !== undefined && complaint.path !== '' ? `${complaint.at}. ` : ''}Read {complaint.read}.
                Accepted: {complaint.accepted}.
                {complaint.meant !== undefined && (
                  <>
                    {' '}
                    Was <b>{complaint.meant}</b> meant?
                  </>
                )}
              </dd>
            </div>
          ))}
        </dl>
      )}
      <p class="pair">
        {readable && wants === undefined && (
          <button type="button" onClick={layAnyway}>
            Open it with what can be read
          </button>
        )}
        <button type="button" onClick={leaveIt}>
          Leave it
        </button>
      </p>
    </section>
  )
}

/** A value as its blank shows it. */
const shownAs = (value: unknown, row: Row | undefined): string => {
  if (value === undefined) return 'not told'
  if (row?.kind.is === 'branch' && isMapping(value)) return row.kind.words[Object.keys(value)[0] ?? ''] ?? 'not told'
  if (row?.kind.is === 'word') return row.kind.words[String(value)] ?? String(value)
  if (row) return statedShown(value, row.kind, { job: jobUnits.value, shown: shownUnits.value })
  return typeof value === 'object' ? JSON.stringify(value) : String(value)
}

/** What stands otherwise than when the job was opened. */
export const Changed = () => {
  if (changes.value.length === 0) return null
  return (
    <details class="changed">
      <summary>Changed since it was opened: {changes.value.length}</summary>
      <ul>
        {changes.value.map((change) => {
          const row = allRows.find(({ path }) => path === change.path)
          return (
            <li key={change.path}>
              {row?.word ?? change.path}: {shownAs(change.before, row)} to {shownAs(change.now, row)}{' '}
              <button type="button" class="link" onClick={() => putBack(change)}>
                Undo<span class="unseen"> {row?.word.toLowerCase() ?? change.path}</span>
              </button>
            </li>
          )
        })}
      </ul>
      <button type="button" class="link" onClick={() => putBack()}>
        Undo all
      </button>
    </details>
  )
}
