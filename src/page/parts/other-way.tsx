import { useEffect, useRef, useState } from 'preact/hooks'
import type { Way, Ways } from '../../checks/compare.ts'
import { figure } from '../../spec/figures.ts'
import type { Units } from '../../spec/spec.ts'
import { current, design, settled } from '../answers.ts'
import { isMapping } from '../../spec/place.ts'
import { document, stated, tell } from '../job.ts'
import { force } from '../measures.ts'
import { press } from '../rows/press.ts'
import { verdicts } from '../words.ts'
import { shownUnits } from '../shown-in.ts'
import { Heading } from './heading.tsx'
import { Groups } from './told.tsx'

/** Which ways the job asks for: both where it names none. */
const asks = (way: 'bar' | 'press'): boolean => {
  void document.value
  const tooling = stated('tooling')
  if (!isMapping(tooling) || (!('bar' in tooling) && !('press' in tooling))) return true
  return way in tooling
}

/** A push broach and a guide bushing, beside the bar. */
export const OtherWay = () => {
  const broach = stated('tooling.press.broach')
  const [open, setOpen] = useState(false)
  const rows = useRef<HTMLDivElement>(null)
  // The button that was pressed goes: whoever pressed it goes on in the first blank.
  useEffect(() => {
    if (open) rows.current?.querySelector<HTMLElement>('input, select')?.focus()
  }, [open])
  const whole = design.value
  const shown = open || broach !== undefined
  const compared = settled.value?.said.ways ?? whole?.ways
  const ways = broach === undefined ? undefined : compared
  const turn = (way: 'bar' | 'press') => () => {
    const both = asks('bar') && asks('press')
    const other = way === 'bar' ? 'press' : 'bar'
    if (both)
      tell({ [`tooling.${way}`]: null, ...(stated(`tooling.${other}`) === undefined && { [`tooling.${other}`]: {} }) })
    else tell({ [`tooling.${way}`]: {} })
  }
  if (!whole && broach === undefined) return null
  return (
    <section class={`other${current.value ? '' : ' is-old'}`} aria-labelledby="other">
      <Heading id="other" aside="a push broach and a guide bushing">
        The other way
      </Heading>
      {broach === undefined && (
        <p>
          No broach is told. Measure one from its back, first tooth, last tooth, pilot and width, and both ways stand
          here side by side: sizes, force, time, and what fails first.
        </p>
      )}
      {ways && <SideBySide ways={ways} />}
      {shown && (
        <div class="rows press-rows" ref={rows}>
          <Groups groups={press} />
        </div>
      )}
      <p class="pair">
        {!shown && (
          <button type="button" onClick={() => setOpen(true)}>
            Tell the broach
          </button>
        )}
        {broach !== undefined && (
          <button type="button" onClick={() => tell({ 'tooling.press.broach': null })}>
            Forget the broach
          </button>
        )}
        {broach !== undefined && (
          <button type="button" aria-pressed={asks('bar')} onClick={turn('bar')}>
            {asks('bar') ? 'Leave the bar out' : 'Work out the bar too'}
          </button>
        )}
      </p>
    </section>
  )
}

const bys: Readonly<Record<Way['by'], string>> = { bar: 'By the bar', press: 'By the broach' }

/** What is compared, line by line; a line that neither way has is left out. */
const lines: readonly (readonly [word: string, of: (way: Way, units: Units) => string | undefined])[] = [
  ['It stands', ({ verdict }) => verdicts[verdict].whole],
  ['To be made first', ({ make }) => make.join(', ') || undefined],
  ['Strokes', ({ passes }) => passes?.toString()],
  ['Time, about', ({ minutes }) => (minutes === undefined ? undefined : `${Math.ceil(minutes)} min`)],
  ['The most it asks', ({ force: asked }, units) => (asked === undefined ? undefined : force(asked, units))],
  ['There is', ({ capacity }, units) => (capacity === undefined ? undefined : force(capacity, units))],
  ['Depth good to', ({ depth }, units) => plusMinus(depth, units)],
  ['Place good to', ({ position }, units) => plusMinus(position, units)],
  ['Against it', ({ why }) => why],
]

const plusMinus = (mm: number | undefined, units: Units): string | undefined =>
  mm === undefined ? undefined : `± ${figure(mm, units, { fit: true, lean: 'up' })}`

/** Both ways in one table, and which of them is the better. */
const SideBySide = ({ ways: { ways, recommended, says } }: { ways: Ways }) => {
  const units = shownUnits.value
  return (
    <>
      <p class="says">{says}</p>
      <table class="ways">
        <thead>
          <tr>
            <td />
            {ways.map(({ by }) => (
              <th key={by} scope="col" class={by === recommended ? 'is-better' : ''}>
                {bys[by]}
                {by === recommended && <span class="note">, the better here</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map(([word, of]) => {
            const said = ways.map((way) => of(way, units))
            if (said.every((each) => each === undefined)) return null
            return (
              <tr key={word}>
                <th scope="row">{word}</th>
                {ways.map(({ by }, place) => (
                  <td key={by} class={word === 'Against it' ? 'from' : ''}>
                    {said[place] ?? ''}
                  </td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </>
  )
}
