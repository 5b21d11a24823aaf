import { useEffect, useRef } from 'preact/hooks'
import { current, design, outcome } from '../answers.ts'
import { lastGate, nextGate, passAt, passes, run, running, stop, takePasses } from '../bench.ts'
import { drawnNow, shownFinding, width } from '../looked-at.ts'
import type { Picture } from '../workers/works.ts'
import { dimensionsOf } from '../dimensions-of.ts'
import { lookAt, lookNow, looksThere } from '../looks.ts'
import { InTheRound } from './in-the-round.tsx'
import { Words } from './words.tsx'
import { Heading } from './heading.tsx'

/** One figure; it says in words what it shows. */
const Shown = ({ picture, name }: { picture: Picture | undefined; name: string }) =>
  picture ? <div class={`picture ${name}`} dangerouslySetInnerHTML={{ __html: picture.svg }} /> : null

/** The bore, to scale, with the four lengths and the long infeed on the same axis. */
export const Bore = () => {
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (!place.current) return undefined
    const seen = new ResizeObserver(([entry]) => {
      if (entry) width.value = Math.floor(entry.contentRect.width)
    })
    seen.observe(place.current)
    return () => seen.disconnect()
  }, [])
  const pictures = drawnNow.value?.pictures ?? {}
  const finding = shownFinding.value
  const look = lookNow.value
  const half = outcome.value?.half
  const below = look?.below
  useEffect(() => {
    const of = new Set(finding === undefined ? [] : dimensionsOf(finding))
    for (const mark of place.current?.querySelectorAll('[data-of]') ?? [])
      mark.classList.toggle('is-shown', of.has(mark.getAttribute('data-of') ?? ''))
  }, [finding, drawnNow.value, look])
  const shown = look?.pictures.flatMap((name) => (pictures[name] ? [name] : [])) ?? []
  const sizes = shown.flatMap((name) => pictures[name]?.sizes ?? [])
  const cut = shown.includes('infeed') || shown.includes('section')
  return (
    <section class={`bore${current.value ? '' : ' is-old'}`} id="bore" tabIndex={-1} aria-labelledby="bore-heading">
      <h2 id="bore-heading" class="unseen">
        The bore
      </h2>
      {design.value && look && (
        <div class="look">
          <Words
            name="look"
            label="Look at it"
            words={looksThere.value.map(({ name, word }) => [name, word] as const)}
            now={look.name}
            choose={lookAt}
          />
          {look.pictures.length > 0 && <p class="aside">to scale; the hub is broken away</p>}
        </div>
      )}
      <div ref={place} class={`pictures look-${look?.name ?? 'none'}`}>
        {design.value ? (
          shown.map((name) => <Shown key={name} picture={pictures[name]} name={name} />)
        ) : half ? (
          Object.entries(half).map(([name, picture]) => <Shown key={name} picture={picture} name={name} />)
        ) : (
          <Pencilled />
        )}
        {design.value && look?.name === 'in-the-round' && <InTheRound />}
      </div>
      {design.value && cut && passes.value.length > 0 && <Dial />}
      {sizes.length > 0 && (
        <details class="sizes">
          <summary>Sizes in the picture</summary>
          <table>
            <tbody>
              {sizes.map(({ of, name, said }) => (
                <tr key={`${of}${name}${said}`}>
                  <th scope="row">{name}</th>
                  <td>{said}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
      {below && pictures[below] && (
        <>
          <Heading id="lengthwise" aside="start of the stroke; its end in broken line">
            Cut lengthwise
          </Heading>
          <Shown picture={pictures[below]} name={below} />
        </>
      )}
    </section>
  )
}

/** Running the cut: by buttons, and by a dial. */
const Dial = () => {
  const keyed = (event: KeyboardEvent): void => {
    const gate = event.key === 'PageUp' ? nextGate() : event.key === 'PageDown' ? lastGate() : undefined
    if (gate === undefined) return
    event.preventDefault()
    takePasses(gate)
  }
  const moved = (by: () => number) => () => {
    stop()
    takePasses(by())
  }
  return (
    <div class="dial">
      <p class="spoken" aria-live={running.value ? 'off' : 'polite'}>
        {drawnNow.value?.spoken}
      </p>
      <div class="runs">
        <button type="button" onClick={() => (running.value ? stop() : run())}>
          {running.value ? 'Stop' : 'Run the cut'}
        </button>
        <button type="button" onClick={moved(() => passAt.value - 1)}>
          One back
        </button>
        <button type="button" onClick={moved(() => passAt.value + 1)}>
          One on
        </button>
        <button type="button" onClick={moved(nextGate)}>
          To the next gate
        </button>
        <input
          type="range"
          aria-label="Dial"
          min={0}
          max={passes.value.length}
          step={1}
          value={passAt.value}
          aria-valuetext={drawnNow.value?.dial}
          onKeyDown={keyed}
          onInput={(event) => {
            stop()
            takePasses(Number(event.currentTarget.value))
          }}
        />
      </div>
    </div>
  )
}

/** A bore of which nothing is known: in pencil. */
const Pencilled = () => (
  <svg class="pencilled" viewBox="0 0 340 240" role="img" aria-labelledby="pencilled-title">
    <title id="pencilled-title">A bore of which no size is told yet.</title>
    <circle cx="170" cy="120" r="92" />
    <path d="M20 120H320M170 10V230" class="axis" />
    <path d="M105 185L235 55" />
    <text x="182" y="100">
      Ø ?
    </text>
  </svg>
)
