import { useEffect, useRef, useState } from 'preact/hooks'
import type { Complaint } from '../../spec/complaint.ts'
import { isMapping } from '../../spec/place.ts'
import { design, offered } from '../answers.ts'
import { doneTyping, jobUnits, stated, tell, told } from '../job.ts'
import { worded } from '../rows/complaining.ts'
import type { Kind, Row, Worked } from '../rows/row.ts'
import { otherwise, statedShown, unitOf, workedShown } from '../rows/shown.ts'
import { taken } from '../rows/typed.ts'
import { shownUnits } from '../shown-in.ts'

/** While it is typed, a value that reads is taken after this long, ms. */
const pause = 400

/** Name of a blank for labels and for what belongs to it. */
export const idOf = (path: string): string => `at-${path.replaceAll('.', '-')}`

/** The next value up or down by the last figure shown; undefined where the text is no plain number. */
const stepped = (text: string, by: number): string | undefined => {
  const found = /^(-?\d*)(?:([.,])(\d+))?$/.exec(text.trim())
  if (!found || text.trim() === '') return undefined
  const [, whole = '', mark = '.', part = ''] = found
  const steps = Math.round(Number(`${whole || '0'}.${part || '0'}`) * 10 ** part.length) + by
  return (steps / 10 ** part.length).toFixed(part.length).replace('.', mark)
}

interface BlankAsked {
  readonly row: Row
  readonly complaint?: Complaint | undefined
  /** A chosen value: dotted until it is held. */
  readonly chosen?: true
  /** What it would be were it let go. */
  readonly free?: { readonly worked: number | string; readonly why?: string } | undefined
}

/** One line of the form: a word, a blank, a unit; under it what is to be said of it. */
export const Blank = (asked: BlankAsked) => {
  const { kind } = asked.row
  if (kind.is === 'word' || kind.is === 'branch' || kind.is === 'presence' || kind.is === 'flag')
    return <Choice {...asked} />
  return <Line {...asked} />
}

/** What was taken where nothing is told: of the job as it stands, never of a feature that it had before. */
const workedOf = (row: Row): Worked => {
  const whole = design.value
  const ofFeature = /^feature\.(\w+)\./.exec(row.path)?.[1]
  return whole && (ofFeature === undefined || ofFeature === whole.spec.feature.kind) ? row.worked?.(whole) : undefined
}

const Line = ({ row, complaint, chosen, free }: BlankAsked) => {
  const { path, kind } = row
  const units = { job: jobUnits.value, shown: shownUnits.value }
  const value = stated(path)
  const worked = workedOf(row)
  const shown = statedShown(value, kind, units)
  const workedText = workedShown(worked, kind, units.shown)
  const [typed, setTyped] = useState<string | undefined>(undefined)
  const [wrong, setWrong] = useState<{ typed: string; accepted: string } | undefined>(undefined)
  const [asksWhy, setAsksWhy] = useState(false)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  useEffect(() => () => clearTimeout(timer.current), [])
  const held = chosen === true && value !== undefined
  const text = typed ?? (shown || (chosen ? workedText : ''))
  const why = row.why === undefined ? undefined : design.value?.basis[row.why]
  const id = idOf(path)

  /** Takes what was typed into the job; false where it does not read. */
  const take = (now: string, typing: boolean): boolean => {
    clearTimeout(timer.current)
    if (now === (shown || (chosen ? workedText : ''))) {
      setWrong(undefined)
      return true
    }
    const read = taken(now, kind, units)
    if ('accepted' in read) {
      if (!typing) setWrong({ typed: now, accepted: read.accepted })
      return false
    }
    setWrong(undefined)
    tell({ [path]: read.value }, typing ? path : undefined)
    return true
  }
  const leave = (): void => {
    if (typed === undefined) return
    const read = take(typed, false)
    doneTyping()
    if (read) setTyped(undefined)
  }
  const keyed = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') leave()
    else if (event.key === 'Escape') {
      clearTimeout(timer.current)
      setTyped(undefined)
      setWrong(undefined)
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      const next = stepped(text, (event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1))
      if (next === undefined) return
      event.preventDefault()
      setTyped(next)
      take(next, true)
    }
  }
  const write = (now: string): void => {
    setTyped(now)
    clearTimeout(timer.current)
    timer.current = setTimeout(() => take(now, true), pause)
  }

  // A value that is complained of is in force nowhere.
  const stays =
    shown === '' || complaint !== undefined
      ? 'Nothing of it is taken.'
      : `The last one that could be read, ${withUnit(shown, unitOf(kind, units.shown))}, stays in force.`
  // What was never told is no mistake: it is asked for, and on an empty page not even that.
  const wanted = complaint !== undefined && value === undefined
  const asks = wanted && told() ? worded(complaint) : undefined
  const said = wrong
    ? `“${wrong.typed}” is not taken. Write ${wrong.accepted}. ${stays}`
    : complaint && !wanted
      ? worded(complaint)
      : undefined
  const other = otherwise(value, kind, units)
  const freeText = free && `${workedShown(free.worked, kind, units.shown)}${free.why ? `: ${free.why}` : ''}`
  const notes = [
    said && `${id}-said`,
    !said && asks && `${id}-asks`,
    other && `${id}-other`,
    held && `${id}-held`,
    asksWhy && why && `${id}-why`,
    `${id}-unit`,
  ].filter((each) => typeof each === 'string' && each !== '')
  const wide = kind.is === 'list' || (kind.is === 'text' && kind.long)
  const list = kind.is === 'text' && kind.offered ? `offered-${kind.offered}` : undefined
  return (
    <div
      class={`row${chosen ? (held ? ' is-held' : ' is-chosen') : ''}${said ? ' is-wrong' : ''}${wide ? ' is-wide' : ''}`}
    >
      <label for={id}>{row.word}</label>
      {held && <span class="punch" role="img" aria-label="held by you" />}
      <input
        id={id}
        type="text"
        inputMode={kind.is === 'text' || kind.is === 'list' || kind.is === 'tolerance' ? 'text' : 'decimal'}
        autocomplete="off"
        spellcheck={false}
        value={text}
        placeholder={chosen ? '' : workedText}
        list={list}
        aria-invalid={said ? 'true' : undefined}
        aria-describedby={notes.join(' ')}
        onInput={(event) => write(event.currentTarget.value)}
        onKeyDown={keyed}
        onFocus={() => setAsksWhy(true)}
        onBlur={() => {
          setAsksWhy(false)
          leave()
        }}
      />
      <span class="unit" id={`${id}-unit`}>
        {/[a-z"]\s*$/i.test(text) ? '' : unitOf(kind, units.shown)}
      </span>
      {said && (
        <p class="note complaint" id={`${id}-said`}>
          {said}
        </p>
      )}
      {!said && asks && (
        <p class="note" id={`${id}-asks`}>
          {asks}
        </p>
      )}
      {!said && other && (
        <p class="note" id={`${id}-other`}>
          {other}
        </p>
      )}
      {held && (
        <p class="note" id={`${id}-held`}>
          Held by you.{freeText ? ` Left free it would be ${freeText}. ` : ' '}
          <button type="button" class="link" onClick={() => tell({ [letGoPath(path)]: null })}>
            Let it go
          </button>
        </p>
      )}
      {asksWhy && !held && why && (
        <p class="note" id={`${id}-why`}>
          {sentence(why)}
        </p>
      )}
    </div>
  )
}

/** A blank's size is no size of a blank that is not there: letting it go lets the whole of it go. */
const letGoPath = (path: string): string => (path === 'tooling.bar.bit.size' ? 'tooling.bar.bit' : path)

const withUnit = (shown: string, unit: string): string =>
  /[a-z"]$/i.test(shown) || unit === '' ? shown : `${shown} ${unit}`

export const sentence = (words: string): string => {
  const begun = words.charAt(0).toUpperCase() + words.slice(1)
  return /[.!?]$/.test(begun) ? begun : `${begun}.`
}

const Choice = ({ row, complaint, chosen }: BlankAsked) => {
  const { path, kind } = row
  const id = idOf(path)
  const value = stated(path)
  const held = chosen === true && value !== undefined
  const worked = workedOf(row)
  const choose = (word: string): void => {
    if (kind.is === 'presence') tell({ [path]: word === 'within' ? {} : null })
    else if (kind.is === 'branch') tell({ [path]: { [word]: kept(path, word) } })
    else if (kind.is === 'flag') tell({ [path]: word === '' ? null : word === 'true' })
    else tell({ [path]: word === '' ? null : word })
  }
  const now =
    kind.is === 'presence'
      ? value === undefined
        ? 'without'
        : 'within'
      : kind.is === 'branch'
        ? isMapping(value)
          ? (Object.keys(value)[0] ?? '')
          : ''
        : String(value ?? '')
  const offers = offersOf(kind, worked)
  const odd = offers.some(([word]) => word === now) ? [] : [[now, now] as const]
  return (
    <div class={`row${chosen ? (held ? ' is-held' : ' is-chosen') : ''}${complaint ? ' is-wrong' : ''}`}>
      <label for={id}>{row.word}</label>
      {held && <span class="punch" role="img" aria-label="held by you" />}
      <span class={`pick${now === '' ? ' is-taken' : ''}`}>
        <select
          id={id}
          value={now}
          aria-invalid={complaint ? 'true' : undefined}
          aria-describedby={complaint ? `${id}-said` : undefined}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {[...offers, ...odd].map(([word, says]) => (
            <option key={word} value={word}>
              {word === '' ? (says === '' ? 'not told' : says) : says}
            </option>
          ))}
        </select>
      </span>
      <span class="unit" />
      {complaint && (
        <p class="note complaint" id={`${id}-said`}>
          {worded(complaint)}
        </p>
      )}
    </div>
  )
}

type Offer = readonly [word: string, says: string]

/** What can be picked; the empty word leaves it to the program, and says what that comes to. */
const offersOf = (kind: Kind, worked: Worked): readonly Offer[] => {
  switch (kind.is) {
    case 'presence':
      return [
        ['without', kind.without],
        ['within', kind.within],
      ]
    case 'flag':
      return [
        ['', 'no'],
        ['true', 'yes'],
      ]
    case 'branch':
      return Object.entries(kind.words)
    case 'word':
      return [['', workedShown(worked, kind, 'mm')], ...Object.entries(kind.words)]
    default:
      return []
  }
}

/** What was told of each kind of feature, so that looking at another kind loses nothing. */
const left = new Map<string, unknown>()
const kept = (path: string, word: string): unknown => {
  const now = stated(path)
  if (isMapping(now)) for (const [kind, told] of Object.entries(now)) left.set(kind, told)
  return left.get(word) ?? {}
}

/** The words that blanks offer, once for the page. */
export const Offered = () => (
  <>
    <datalist id="offered-materials">
      {offered.value.materials.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
    <datalist id="offered-machines">
      {['lathe', 'mill'].map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
    <datalist id="offered-threads">
      {offered.value.threads.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  </>
)
