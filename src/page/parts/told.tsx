import type { ComponentChildren } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { current, design, jobAsked, outcome, settled, working } from '../answers.ts'
import { document, jobUnits, opened, stated, told } from '../job.ts'
import { chosen } from '../rows/chosen.ts'
import { byRow } from '../rows/complaining.ts'
import { known } from '../rows/known.ts'
import { asked, type Group, type Row } from '../rows/row.ts'
import { shop } from '../rows/shop.ts'
import { statedShown, unitOf, workedShown } from '../rows/shown.ts'
import { shownUnits } from '../shown-in.ts'
import { Blank } from './blank.tsx'
import { Heading } from './heading.tsx'
import { unfolded } from './to-blank.ts'
import { isMapping, placeOf, standsAt } from '../../spec/place.ts'

const there = (row: Row): boolean => row.when?.(asked(document.value)) ?? true

/** Told when the job was opened: what is told since does not move under the hand. */
const wasTold = (row: Row): boolean => standsAt(opened.value.document, placeOf(row.path)) !== undefined

/** Lines that are seldom told, folded away until they are asked for, or complained of. */
const Folded = ({
  says,
  rows,
  line,
}: {
  says: string
  rows: readonly Row[]
  line: (row: Row) => ComponentChildren
}) => {
  const [open, setOpen] = useState(rows.some(wasTold))
  const complained = rows.some((row) => byRow(outcome.value?.complaints ?? []).has(row.path))
  useEffect(() => {
    if (complained || rows.some(wasTold)) setOpen(true)
  }, [complained, opened.value])
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{says}</summary>
      {rows.map(line)}
    </details>
  )
}

/** One or more groups of lines; what is seldom told is folded away. */
export const Groups = ({ groups }: { groups: readonly Group[] }) => {
  const complaints = byRow(outcome.value?.complaints ?? [])
  const line = (row: Row) => <Blank key={row.path} row={row} complaint={complaints.get(row.path)} />
  return (
    <>
      {groups
        .filter((group) => group.when?.(asked(document.value)) ?? true)
        .map((group) => {
          const rows = group.rows.filter(there)
          const often = group.seldom ? [] : rows.filter((row) => !row.seldom || wasTold(row))
          const seldom = rows.filter((row) => !often.includes(row))
          const lower = group.heading.charAt(0).toLowerCase() + group.heading.slice(1)
          return (
            <fieldset key={group.heading}>
              <legend class={group.seldom ? 'unseen' : ''}>{group.heading}</legend>
              {often.map(line)}
              {seldom.length > 0 && (
                <Folded says={group.seldom ? group.heading : `More of ${lower}`} rows={seldom} line={line} />
              )}
            </fieldset>
          )
        })}
    </>
  )
}

/** A group in a line, for where there is little room: made from the same lines. */
const inWords = (rows: readonly Row[]): string => {
  const units = { job: jobUnits.value, shown: shownUnits.value }
  return rows
    .filter(there)
    .flatMap((row) => {
      const value = stated(row.path)
      const told =
        row.kind.is === 'branch'
          ? isMapping(value)
            ? (row.kind.words[Object.keys(value)[0] ?? ''] ?? '')
            : ''
          : row.kind.is === 'presence'
            ? value === undefined
              ? row.kind.without
              : row.kind.within
            : row.kind.is === 'flag'
              ? value === true
                ? row.word.toLowerCase()
                : ''
              : row.kind.is === 'word'
                ? (row.kind.words[String(value ?? '')] ?? '')
                : statedShown(value, row.kind, units)
      const unit = unitOf(row.kind, units.shown)
      if (told === '') return []
      const bare = ['branch', 'presence', 'word', 'flag', 'tolerance', 'text'].includes(row.kind.is)
      return [bare ? told : `${row.word.toLowerCase()} ${told}${/[a-z"]$/i.test(told) ? '' : ` ${unit}`}`.trim()]
    })
    .join(', ')
}

let down = false
addEventListener('mousedown', () => (down = true), true)
addEventListener('mouseup', () => (down = false), true)

/** Does it when nothing is pressed any more, and what the press does is done. */
const whenLetGo = (does: () => void): void => {
  if (down) addEventListener('mouseup', () => setTimeout(does), { once: true, capture: true })
  else setTimeout(does)
}

/** What is known: everything that only the machinist can tell. */
export const Known = () => {
  const form = useRef<HTMLElement>(null)
  /** Filled in from nothing: it folds by itself once that is done. */
  const filling = useRef(false)
  const open = unfolded.known.value
  const empty = !told()
  useLayoutEffect(() => {
    filling.current = empty
    unfolded.known.value = empty
  }, [opened.value])
  useEffect(() => {
    if (!empty) return
    filling.current = true
    unfolded.known.value = true
  }, [empty])
  /** Whoever goes elsewhere when the job can be worked out is done; never while a finger is still down on what would move. */
  const left = (event: FocusEvent): void => {
    if (!filling.current || form.current?.contains(event.relatedTarget as Node | null)) return
    whenLetGo(() => {
      const focus = window.document.activeElement
      if (!filling.current || !current.value || !form.current || form.current.contains(focus)) return
      filling.current = false
      unfolded.known.value = false
      if (focus !== window.document.body) requestAnimationFrame(() => focus?.scrollIntoView({ block: 'nearest' }))
    })
  }
  return (
    <section ref={form} class={`told known${open ? ' is-open' : ''}`} aria-labelledby="known" onFocusOut={left}>
      <Heading id="known">What is known</Heading>
      <p class="in-words">
        {known
          .map((group) => inWords(group.rows))
          .filter((words) => words !== '')
          .join('; ')}{' '}
        <button
          type="button"
          class="link"
          aria-expanded={open}
          onClick={() => {
            filling.current = false
            unfolded.known.value = !open
          }}
        >
          {open ? 'Done' : 'Change'}
          <span class="unseen"> what is known</span>
        </button>
      </p>
      <div class="rows">
        <Groups groups={known} />
        <details>
          <summary>What is on hand</summary>
          <Groups groups={shop} />
        </details>
      </div>
    </section>
  )
}

/** What was chosen, and what is held. */
export const Chosen = () => {
  const open = unfolded.chosen.value
  const [free, setFree] = useState<Readonly<Record<string, { worked: number | string; why?: string }>>>({})
  const held = chosen.filter((row) => stated(row.path) !== undefined).map((row) => row.path)
  const text = settled.value?.text
  useEffect(() => {
    if (held.length === 0) return setFree({})
    let late = false
    working.ask('free', { ...jobAsked(), paths: held }).then(
      (found) => !late && setFree(found),
      () => undefined,
    )
    return () => {
      late = true
    }
  }, [text, held.join()])
  if (!design.value?.bar && !design.value?.groundBar && held.length === 0) return null
  const complaints = byRow(outcome.value?.complaints ?? [])
  const units = shownUnits.value
  const words = chosen
    .slice(0, 10)
    .filter(there)
    .flatMap((row) => {
      const value = design.value && row.worked?.(design.value)
      const shown = workedShown(value, row.kind, units)
      return shown === '' ? [] : [`${row.word.toLowerCase()} ${shown}${stated(row.path) === undefined ? '' : ', held'}`]
    })
    .join('; ')
  return (
    <section class={`told chosen${open ? ' is-open' : ''}${current.value ? '' : ' is-old'}`} aria-labelledby="chosen">
      <Heading id="chosen" aside="type over one to hold it">
        Chosen for you
      </Heading>
      <p class="in-words">
        {words}{' '}
        <button type="button" class="link" aria-expanded={open} onClick={() => (unfolded.chosen.value = !open)}>
          {open ? 'Done' : 'Change'}
          <span class="unseen"> what is chosen</span>
        </button>
      </p>
      <div class="rows">
        {chosen.filter(there).map((row) => (
          <Blank key={row.path} row={row} chosen complaint={complaints.get(row.path)} free={free[row.path]} />
        ))}
      </div>
    </section>
  )
}
