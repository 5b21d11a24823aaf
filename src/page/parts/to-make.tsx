import { useEffect, useRef } from 'preact/hooks'
import { current, design } from '../answers.ts'
import { busyWith, carving, dropMaking, makeEverything, makeFiles, makeReport, parts, solidsFailed } from '../files.ts'
import type { Format } from '../../make.ts'
import type { PartShown } from '../workers/makes.ts'
import { hasCard } from '../printing.ts'
import { Heading } from './heading.tsx'

/** What of one part can be had; the card is the whole job's. A format that is added is wanted here. */
const formats: Readonly<Record<Exclude<Format, 'html'>, string>> = {
  pdf: 'PDF',
  dxf: 'DXF',
  'dxf-live': 'DXF, live dimensions',
  svg: 'SVG',
  stl: 'STL',
  '3mf': '3MF',
  profile: 'Profile',
}

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']
const spoken = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight']

/** Every part with its sheets, and every file that can be had. */
export const ToMake = () => {
  const whole = design.value
  if (!whole) return null
  const broken = whole.verdict === 'fail'
  const step = carving.value
  return (
    <section class={`make${current.value ? '' : ' is-old'}`} aria-labelledby="make">
      <Heading id="make">To make</Heading>
      <ul class="pieces">
        {hasCard.value && <Card />}
        {parts.value.map((part) => (
          <Piece key={part.name} part={part} />
        ))}
      </ul>
      <p class="pair">
        <button
          type="button"
          class="strong"
          disabled={!current.value || busyWith.value !== undefined}
          onClick={() => void makeEverything()}
        >
          {broken ? 'Make it anyway, marked on every sheet' : 'Make everything'}
        </button>
        <button
          type="button"
          disabled={!current.value || busyWith.value !== undefined}
          onClick={() => void makeFiles(undefined, 'pdf', 'drawings.pdf')}
        >
          All drawings, PDF
        </button>
        <button
          type="button"
          disabled={!current.value || busyWith.value !== undefined}
          onClick={() => void makeReport()}
        >
          The numbers, JSON
        </button>
        {hasCard.value && (
          <button type="button" disabled={!current.value} onClick={() => print()}>
            Print the job card
          </button>
        )}
        <span class="aside">Same job, same files, to the byte.</span>
      </p>
      <p class="under-way" role="status">
        {step
          ? `carving the solid, ${ordinals[step.at] ?? step.at + 1} of ${spoken[step.of - 1] ?? step.of}`
          : busyWith.value !== undefined
            ? 'making it'
            : ''}
        {step && <progress max={step.of} value={step.at} aria-label="solids carved" />}
        {busyWith.value !== undefined && (
          <button type="button" class="link" onClick={dropMaking}>
            Leave off
          </button>
        )}
      </p>
      {solidsFailed.value && (
        <div class="notice">
          <p class="complaint">
            The part that carves solids did not start here. No STL or 3MF from this page; everything else is ready.
          </p>
          <p class="note">
            On a command line the same job makes them:{' '}
            <code>borewright make {whole.spec.name}.yaml --formats stl,3mf</code>
          </p>
          <button type="button" onClick={() => void makeEverything()}>
            Try again
          </button>
        </div>
      )}
    </section>
  )
}

/** The job card: what is wanted at the machine. */
const Card = () => {
  const idle = !current.value || busyWith.value !== undefined
  return (
    <li class="piece">
      <p class="sheet is-card" aria-hidden="true" />
      <p>
        <b>Job card</b>
      </p>
      <p class="note">One sheet for the machine, both sides; then the tooling leaf and the reasons.</p>
      <p class="formats">
        {(
          [
            ['pdf', 'card.pdf', 'PDF'],
            ['html', 'card.html', 'HTML'],
            ['pdf', 'packet.pdf', 'With every sheet, PDF'],
          ] as const
        ).map(([format, file, says]) => (
          <button
            key={file}
            type="button"
            class="link"
            disabled={idle}
            onClick={() => void makeFiles(undefined, format, file)}
          >
            <span class="unseen">Job card, </span>
            {says}
          </button>
        ))}
      </p>
    </li>
  )
}

const Piece = ({ part }: { part: PartShown }) => (
  <li class="piece">
    <details>
      <summary>
        <Sheet svg={part.sheets[0]?.svg} title={`${part.title}, sheet 1`} />
        <b>{part.title}</b>
        <span class="note">{part.sheets.length === 1 ? 'One sheet' : `${part.sheets.length} sheets`}</span>
      </summary>
      <div class="sheets">
        {part.sheets.map((sheet, place) => (
          <Sheet key={sheet.name} svg={sheet.svg} title={`${part.title}, sheet ${place + 1}`} large />
        ))}
      </div>
    </details>
    <p class="formats">
      {(Object.entries(formats) as [keyof typeof formats, string][])
        .filter(([format]) => format !== 'profile' || part.profile)
        .map(([format, says]) => (
          <button
            key={format}
            type="button"
            class="link"
            disabled={!current.value || busyWith.value !== undefined}
            onClick={() => void makeFiles(part.name, format)}
          >
            <span class="unseen">{part.title}, </span>
            {says}
          </button>
        ))}
    </p>
  </li>
)

/** A sheet as a picture of its own, so that nothing of it mixes with the page. */
const Sheet = ({ svg, title, large }: { svg: string | undefined; title: string; large?: true }) => {
  const picture = useRef<HTMLImageElement>(null)
  useEffect(() => {
    if (svg === undefined || !picture.current) return undefined
    const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
    picture.current.src = address
    return () => URL.revokeObjectURL(address)
  }, [svg])
  return <img ref={picture} class={large ? 'sheet is-large' : 'sheet'} alt={title} width={420} height={297} />
}
