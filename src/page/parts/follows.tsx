import { computed, signal } from '@preact/signals'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Finding, Remedy } from '../../checks/rule.ts'
import type { Design } from '../../design.ts'
import { readLength } from '../../spec/length.ts'
import { current, design, rules, settled } from '../answers.ts'
import { barsShown, barWidth, shownFinding } from '../looked-at.ts'
import { document, jobUnits, stated, tell, undo } from '../job.ts'
import { measure } from '../measures.ts'
import { chosen } from '../rows/chosen.ts'
import { allRows } from '../rows/complaining.ts'
import { statedShown, workedShown } from '../rows/shown.ts'
import type { InUnits } from '../rows/typed.ts'
import { shownUnits } from '../shown-in.ts'
import { verdicts } from '../words.ts'
import { Heading } from './heading.tsx'
import { MarginBar } from './margin.tsx'
import { plainly, Reason } from './reason.tsx'

/** How many of those that hold are shown at once. */
const first = 7

/** A remedy that was taken: what it set, the design it was taken from, and the document that it made. */
interface Applied {
  readonly rule: string
  /** Where its finding stood among those shown. */
  readonly place: number
  readonly set: NonNullable<Remedy['set']>
  readonly before: Readonly<Record<string, unknown>>
  readonly was: Design | undefined
  readonly made: unknown
}
const applied = signal<Applied | undefined>(undefined)
/** It can be taken back as long as nothing was changed after it, and it was not taken back already. */
const lastApplied = computed(() => (applied.value?.made === document.value ? applied.value : undefined))
/** While somebody is in the list it keeps its order, so that nothing moves under a finger. */
const order = signal<readonly string[] | undefined>(undefined)

const inOrder = (findings: readonly Finding[]): readonly Finding[] => {
  const frozen = order.value
  if (!frozen) return findings
  const place = (finding: Finding): number => {
    const at = frozen.indexOf(finding.rule)
    return at < 0 ? frozen.length : at
  }
  return findings.toSorted((a, b) => place(a) - place(b))
}

export const Follows = () => {
  const [all, setAll] = useState(false)
  const whole = design.value
  const ordered = inOrder(whole?.findings ?? [])
  const open = ordered.filter((finding, place) => finding.verdict !== 'pass' || place < first)
  const shown = all
    ? ordered
    : ordered.slice(0, Math.max(first, open.filter((finding) => finding.verdict !== 'pass').length))
  const more = ordered.length - shown.length
  const list = useRef<HTMLOListElement>(null)
  useEffect(() => {
    if (!list.current) return undefined
    const seen = new ResizeObserver(() => {
      const first = list.current?.querySelector('.margin')
      if (first) barWidth.value = Math.floor(first.getBoundingClientRect().width)
    })
    seen.observe(list.current)
    return () => seen.disconnect()
  }, [whole !== undefined])
  const named = shown.map((finding) => finding.rule)
  useEffect(() => {
    barsShown.value = named
  }, [named.join()])
  if (!whole) return null
  const note = lastApplied.value
  const items = shown.map((finding, place) => (
    <Found key={finding.rule} finding={finding} place={place} above={waysOf(shown.slice(0, place))} />
  ))
  // A finding that was mended sinks among those that hold: what mended it is told where it stood.
  if (note && !named.includes(note.rule))
    items.splice(
      note.place,
      0,
      <li key="undo" class="finding-gone">
        <Note note={note} />
      </li>,
    )
  return (
    <section class={`follows${current.value ? '' : ' is-old'}`} aria-labelledby="follows" tabIndex={-1}>
      <Heading id="follows" aside="tightest first">
        What follows
      </Heading>
      <ol
        ref={list}
        class="findings"
        onFocusCapture={() => {
          order.value ??= whole.findings.map((finding) => finding.rule)
        }}
        onBlurCapture={(event) => {
          if (!event.currentTarget.contains(event.relatedTarget as Node | null)) order.value = undefined
        }}
      >
        {items}
      </ol>
      {(more > 0 || all) && (
        <button type="button" class="link" onClick={() => setAll(!all)}>
          {all ? 'The tightest alone' : `And ${more} more hold`}
        </button>
      )}
    </section>
  )
}

/** What the remedies of some findings say. */
const waysOf = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(findings.flatMap(({ remedies }) => remedies.map(({ say }) => say)))

/** One finding. Ways out that stand `above` already are not offered twice. */
const Found = ({ finding, place, above }: { finding: Finding; place: number; above: ReadonlySet<string> }) => {
  const { rule, verdict, unit, measured, limit, margin } = finding
  const remedies = finding.remedies.filter(({ say }) => !above.has(say))
  const repeated = finding.remedies.length - remedies.length
  const [asks, setAsks] = useState(false)
  const told = rules.value[rule]
  const { one, is } = verdicts[verdict]
  const units = shownUnits.value
  const reason = settled.value?.said.reasons[rule] ?? finding.reason
  const least = told?.sense === 'at least'
  const broken = verdict === 'fail' || verdict === 'caution'
  // A number is rounded the way the verdict leans, so that a printed one never contradicts it.
  const [low, high] = broken
    ? least
      ? (['down', 'up'] as const)
      : (['up', 'down'] as const)
    : ([undefined, undefined] as const)
  const say = (value: number, lean?: 'up' | 'down', bare?: boolean): string => measure(value, unit, units, lean, bare)
  const note = lastApplied.value?.rule === rule ? lastApplied.value : undefined
  // A rule that only holds or does not has nothing that figures or a bar could show.
  const measures = limit !== 0 || (measured ?? 0) !== 0 || verdict === 'unknown'
  return (
    <li
      class={`finding ${is}`}
      data-rule={rule}
      onMouseEnter={() => {
        shownFinding.value = rule
      }}
      onMouseLeave={() => {
        shownFinding.value = undefined
      }}
      onFocusCapture={() => {
        shownFinding.value = rule
      }}
      onClick={() => {
        shownFinding.value = rule
      }}
    >
      <p class="reason">
        <b>{one}.</b> <Reason says={reason} />
      </p>
      {measures && <MarginBar rule={rule} />}
      {measures && limit !== undefined && told && (
        <p class="figures">
          <span>
            {measured === undefined ? 'not told' : say(measured, low, true)}, {told.sense} {say(limit, high)}
          </span>
          {margin !== undefined && (
            <span>
              {margin < 0 ? `${least ? 'short' : 'over'} by ${say(-margin, 'up')}` : `room ${say(margin, 'down')}`}
            </span>
          )}
        </p>
      )}
      {note && <Note note={note} />}
      {remedies.length > 0 && (
        <ul class="remedies">
          {remedies.map((remedy) => (
            <li key={remedy.say}>
              <Way
                rule={rule}
                place={place}
                remedy={remedy}
                say={sayIn(rule, finding.remedies.indexOf(remedy), remedy)}
              />
            </li>
          ))}
        </ul>
      )}
      {repeated > 0 && (
        <p class="note">{remedies.length > 0 ? 'Or as above.' : 'The ways out above serve here too.'}</p>
      )}
      {told && (
        <p class="basis">
          <button type="button" class="link" aria-expanded={asks} onClick={() => setAsks(!asks)}>
            How this was come by
            <span class="unseen">: {plainly(reason)}</span>
          </button>
          {asks && (
            <span class="note">
              It {finding.binding} hold that {told.states}. From: {told.source}.
            </span>
          )}
        </p>
      )}
    </li>
  )
}

/** What a patch sets, in the units shown: `Infeed a pass 0.0003`. */
const setShown = (set: NonNullable<Remedy['set']>, units: InUnits): string =>
  Object.entries(set)
    .flatMap(([path, value]) => {
      const row = allRows.find((each) => each.path === path)
      const mm = typeof value === 'string' ? readLength(value, units.job) : undefined
      return row && mm !== undefined
        ? [`${row.word.toLowerCase()} ${workedShown(mm, row.kind, units.shown)} ${units.shown}`]
        : []
    })
    .join(', ')

/** A remedy in the units shown: in words that are made for them, or as told with its sizes after it. */
const sayIn = (rule: string, place: number, { say, set }: Remedy): string => {
  const units = { job: jobUnits.value, shown: shownUnits.value }
  if (units.job === units.shown) return say
  const said = settled.value?.said.remedies[rule]?.[place]
  if (said !== undefined) return said
  const sizes = set ? setShown(set, units) : ''
  return sizes === '' ? say : `${say.replace(/\.$/, '')} (${sizes})`
}

const Way = ({ rule, place, remedy, say }: { rule: string; place: number; remedy: Remedy; say: string }) => {
  const { set } = remedy
  if (!set)
    return (
      <span class="plain">
        <Reason says={say} />
      </span>
    )
  const take = (): void => {
    const before = Object.fromEntries(Object.keys(set).map((path) => [path, stated(path)]))
    const stood = document.value
    const was = design.value
    tell(set)
    if (document.value !== stood) applied.value = { rule, place, set, before, was, made: document.value }
  }
  return (
    // What was found of a job that could be read is no way out of one that cannot.
    <button type="button" onClick={take} disabled={!current.value}>
      {say.replace(/\.$/, '')}
    </button>
  )
}

/** What a remedy did, and the way back. */
const Note = ({ note }: { note: Applied }) => {
  const back = useRef<HTMLButtonElement>(null)
  // The button that was pressed goes with what it mended: the focus goes to what takes it back.
  useEffect(() => {
    if (window.document.activeElement === window.document.body) back.current?.focus()
  }, [design.value])
  const units = { job: jobUnits.value, shown: shownUnits.value }
  const now = design.value
  const rowOf = (path: string) => allRows.find((row) => row.path === path)
  const said = Object.entries(note.set).map(([path, value]) => {
    const row = rowOf(path)
    const word = row?.word ?? path
    const was =
      row && note.was && row.worked
        ? workedShown(row.worked(note.was), row.kind, units.shown)
        : statedShown(note.before[path], row?.kind ?? { is: 'text' }, units)
    if (value === null) return `${word} let go${was === '' ? '' : `, was ${was}`}.`
    const is = row ? statedShown(value, row.kind, units) : String(value)
    return `${word} ${is}${was === '' || was === is ? '' : `, was ${was}`}.`
  })
  const moved = chosen.flatMap((row) => {
    if (!now || !note.was || !row.worked || row.path in note.set) return []
    const [is, was] = [row.worked(now), row.worked(note.was)].map((worked) =>
      workedShown(worked, row.kind, units.shown),
    )
    return is === was || is === '' ? [] : [`${row.word} moved to ${is}.`]
  })
  return (
    <p class="undo" role="status">
      <span>{[...said, ...moved.slice(0, 3)].join(' ')}</span>
      <button
        type="button"
        class="link"
        ref={back}
        onClick={(event) => {
          // This button goes: whoever reads on does so from the list's beginning.
          event.currentTarget.closest('section')?.focus({ preventScroll: true })
          undo()
        }}
      >
        Undo
      </button>
    </p>
  )
}
