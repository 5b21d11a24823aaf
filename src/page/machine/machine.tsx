import './machine.css'
import { useEffect, useRef } from 'preact/hooks'
import { current, fault, outcome } from '../answers.ts'
import { visited } from '../coming-and-going.ts'
import { keeps } from '../keeping.ts'
import { followKeys, keysOn, turnKeys } from './keys.ts'
import { job, type Job, screenNow } from './job.ts'
import type { Screen } from './order.ts'
import { changedHere, followOthers, note, record, takeUp } from './record.ts'
import { Anew, Lane, Turn } from './screen-between.tsx'
import { Bit, Stack } from './screen-bit.tsx'
import { Bore } from './screen-bore.tsx'
import { Cut } from './screen-cut.tsx'
import { Add, Done, Exports, Measure } from './screen-end.tsx'
import { Gate } from './screen-gate.tsx'
import { PushThrough } from './screen-push.tsx'
import { Stop } from './screen-stop.tsx'
import { Zero } from './screen-zero.tsx'
import { holdLit, lit } from './wake.ts'
import { Whole } from './whole.tsx'
import { isWrong, Wrong } from './wrong.tsx'

/** What a plan is, in so few letters that it can be told from another. */
const stampOf = ({ plan, design }: Job): string =>
  JSON.stringify([
    plan?.cuts.map(({ lane, setting, gates }) => [
      lane,
      setting,
      gates.map(({ reading }) => Number(reading.toFixed(6))),
    ]),
    plan?.settings.map(({ overBarAndNose }) => Number(overBarAndNose.toFixed(4))),
    design.bushing?.passes.map(({ over }) => Number(over.toFixed(4))),
  ])

/** The large view: one screen, one thing to do. */
export const Machine = () => {
  useEffect(() => {
    const ends = [holdLit(), followKeys(), followOthers()]
    const title = document.title
    return () => {
      document.title = title
      for (const end of ends) end()
    }
  }, [])
  const now = job.value
  const name = now?.design.spec.name
  useEffect(() => {
    if (name === undefined) return
    takeUp(name)
    document.title = `${name}, at the machine`
  }, [name])
  return (
    <div class="machine">
      <aside class="band" aria-label="Above all">
        <p>{now?.way === 'press' ? 'No hand between ram and table.' : 'Plug out while the bar is in the hub.'}</p>
      </aside>
      <header class="top">
        <h1>{name ?? 'At the machine'}</h1>
        <a href="#desk">Back to the desk</a>
      </header>
      <main>
        {now && name === record.value.job ? <Standing now={now} /> : <Nothing />}
        {now && now.design.verdict !== 'fail' && <Whole now={now} />}
      </main>
      {now && <Foot now={now} />}
    </div>
  )
}

const Standing = ({ now }: { now: Job }) => {
  const screen = screenNow.value
  const place = useRef<HTMLDivElement>(null)
  const before = useRef(screen?.key)
  // Whoever hears the page is told of another screen; on the cut the hand stays on its button.
  useEffect(() => {
    if (before.current !== screen?.key) place.current?.focus({ preventScroll: true })
    before.current = screen?.key
  }, [screen?.key])
  const { design } = now
  const stamp = stampOf(now)
  const begun = record.value.at !== 'stop'
  const other = record.value.stamp !== stamp
  const own = record.value.stamp === '' || changedHere.value
  const moved = begun && other && !own
  useEffect(() => {
    if (!begun || !other || !own) return
    note({ stamp })
    changedHere.value = false
  }, [begun, other, own, stamp])
  if (design.verdict === 'fail') {
    const broken = design.findings.find(({ verdict }) => verdict === 'fail')
    return (
      <div class="answer broken" role="alert">
        <b>This job will not go.</b> {broken?.reason} No dial reading is given for it.{' '}
        <a href="#desk">Mend it at the desk</a>
      </div>
    )
  }
  return (
    <>
      <Notices moved={moved} stamp={stamp} />
      {isWrong() ? (
        <Wrong />
      ) : (
        screen && (
          <div ref={place} tabIndex={-1} class={`screen is-${screen.is}`}>
            <On key={screen.key} now={now} screen={screen} />
          </div>
        )
      )}
    </>
  )
}

const On = ({ now, screen }: { now: Job; screen: Screen }) => {
  switch (screen.is) {
    case 'stop':
      return <Stop now={now} />
    case 'bore':
      return <Bore now={now} />
    case 'bit':
      return <Bit now={now} />
    case 'stack':
      return <Stack now={now} />
    case 'zero':
      return <Zero now={now} />
    case 'anew':
      return <Anew now={now} screen={screen} />
    case 'lane':
      return <Lane now={now} screen={screen} />
    case 'turn':
      return <Turn now={now} screen={screen} />
    case 'cut':
      return <Cut now={now} screen={screen} />
    case 'gate':
      return <Gate now={now} screen={screen} />
    case 'push':
      return <PushThrough now={now} screen={screen} />
    case 'add':
      return <Add now={now} />
    case 'measure':
      return <Measure now={now} />
    case 'done':
      return <Done now={now} />
  }
}

/** What has to be said of the page itself. */
const Notices = ({ moved, stamp }: { moved: boolean; stamp: string }) => (
  <>
    {fault.value !== undefined && (
      <p class="answer broken" role="alert">
        <b>The program tripped over itself.</b> Do not cut from numbers on a page that says this.
      </p>
    )}
    {!keeps.value && (
      <p class="answer broken" role="alert">
        <b>This browser will not hold it.</b> Write ticks and values on the card too: a page that is closed forgets
        them.
      </p>
    )}
    {!current.value && (
      <p class="answer broken" role="alert">
        <b>The job cannot be read as it stands.</b> What is shown is of the last that could be.{' '}
        <a href="#desk">Mend it at the desk</a>
      </p>
    )}
    {moved && (
      <div class="answer care" role="status">
        <b>This job was changed since you stood here.</b> Gates or settings are other than they were. Look at the bit
        and the zero before you go on.{' '}
        <button type="button" class="link" onClick={() => note({ stamp })}>
          I have looked
        </button>
      </div>
    )}
  </>
)

const Nothing = () => (
  <p class="do">
    {outcome.value === undefined || (visited.value && outcome.value.design) ? (
      'One moment.'
    ) : (
      <>
        No job that can be cut lies on the page. <a href="#desk">Lay one on it at the desk</a>
      </>
    )}
  </p>
)

const Foot = ({ now }: { now: Job }) => (
  <footer>
    {lit.value !== undefined && (
      <p role="status">{lit.value ? 'The screen stays lit.' : 'The screen may go dark here.'}</p>
    )}
    {now.way === 'bar' && (
      <label class="switch">
        <input type="checkbox" checked={keysOn.value} onChange={(event) => turnKeys(event.currentTarget.checked)} />
        <span>
          Space, Enter, Page Down, right arrow or a foot switch says pass done; Backspace or Page Up one back. A second
          press within 0.7 s is not counted.
        </span>
      </label>
    )}
    <p>
      Every tick and value is kept in this browser at once. Two phones are not kept in step. All lengths in{' '}
      {now.unit === 'mm' ? 'millimetres' : 'inches'}.
    </p>
    <Exports now={now} />
  </footer>
)
