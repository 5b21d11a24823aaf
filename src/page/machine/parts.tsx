import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Run, Words } from '../../card/document.ts'
import { readLength } from '../../spec/length.ts'
import type { Answer } from './answers.ts'
import { goBack, goOn } from './going.ts'
import { setValue, tick, ticked, valueOf } from './record.ts'

/** Words of the card, as they are dressed. */
export const Said = ({ words }: { words: Words }) =>
  typeof words === 'string' ? <>{words}</> : <>{words.map((run, place) => said(run, place))}</>

const said = (run: Run, key: number) => {
  if (typeof run === 'string') return run
  if ('bold' in run) return <b key={key}>{run.bold}</b>
  if ('large' in run) return <b key={key}>{run.large}</b>
  if ('dial' in run) return <b key={key}>{run.dial}</b>
  if ('small' in run) return <small key={key}>{run.small}</small>
  if ('dual' in run) return <small key={key}>{run.dual}</small>
  return null
}

/** While it is typed, a value that reads is taken after this long, ms. */
const pause = 700

export interface BlankAsked {
  /** Name under which it is kept. */
  readonly name: string
  readonly label: ComponentChildren
  readonly unit: 'mm' | 'in'
  readonly large?: true
  /** What the dial reads while it is measured, kept with it. */
  readonly dial?: number
  readonly signed?: true
  readonly note?: ComponentChildren
}

/** A blank for what was measured: kept as soon as it reads. */
export const Blank = ({ name, label, unit, large, dial, signed, note }: BlankAsked) => {
  const value = valueOf(name)
  const [typed, setTyped] = useState<string | undefined>(undefined)
  const [wrong, setWrong] = useState<string | undefined>(undefined)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  useEffect(() => () => clearTimeout(timer.current), [])
  const id = `at-${name.replaceAll(/[^\w-]+/g, '-')}`
  const take = (text: string, final: boolean): void => {
    clearTimeout(timer.current)
    if (text.trim() === '') {
      setWrong(undefined)
      if (value) setValue(name, undefined)
      return
    }
    const mm = readLength(text.trim(), unit, signed ? { signed: true } : {})
    if (mm === undefined) {
      if (final) setWrong(`“${text}” is not one length. Write 25.26, 25,26 or 1-3/8 in.`)
      return
    }
    setWrong(undefined)
    if (value?.text !== text.trim()) setValue(name, { text: text.trim(), mm, ...(dial !== undefined && { dial }) })
    if (final) setTyped(undefined)
  }
  const shown = typed ?? value?.text ?? ''
  return (
    <div class={`measured${large ? ' is-large' : ''}${wrong ? ' is-wrong' : ''}`}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputmode={unit === 'mm' ? 'decimal' : 'text'}
        autocomplete="off"
        enterkeyhint="done"
        value={shown}
        aria-invalid={wrong ? 'true' : undefined}
        aria-describedby={wrong ? `${id}-said` : note === undefined ? undefined : `${id}-note`}
        onInput={(event) => {
          const text = event.currentTarget.value
          setTyped(text)
          clearTimeout(timer.current)
          timer.current = setTimeout(() => take(text, false), pause)
        }}
        onBlur={() => typed !== undefined && take(typed, true)}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && typed !== undefined) take(typed, true)
          if (event.key === 'Escape') {
            clearTimeout(timer.current)
            setTyped(undefined)
            setWrong(undefined)
          }
        }}
      />
      {note !== undefined && (
        <p class="note" id={`${id}-note`}>
          {note}
        </p>
      )}
      {wrong && (
        <p class="complaint" id={`${id}-said`} role="alert">
          {wrong}
        </p>
      )}
    </div>
  )
}

/** A box to tick, large enough for a thumb. */
export const Tick = ({ name, children }: { name: string; children: ComponentChildren }) => (
  <label class="tick">
    <input type="checkbox" checked={ticked(name)} onChange={(event) => tick(name, event.currentTarget.checked)} />
    <span class="box" aria-hidden="true" />
    <span>{children}</span>
  </label>
)

/** What is said of a measurement: told aloud when it changes. */
export const Told = ({ answer }: { answer: Answer | undefined }) => (
  <div class="told-here" role="status">
    {answer && (
      <p class={`answer ${answer.is}`}>
        <b>{answer.word}</b> {answer.says}
      </p>
    )}
  </div>
)

export const Go = ({
  children,
  when = true,
  press = goOn,
}: {
  children: ComponentChildren
  when?: boolean
  press?: () => void
}) =>
  when ? (
    <button type="button" class="go" onClick={press}>
      {children}
    </button>
  ) : null

/** The way back: never the only thing that can be pressed. */
export const Back = () => (
  <button type="button" class="link back" onClick={goBack}>
    One screen back
  </button>
)
