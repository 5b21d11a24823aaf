import './solid-view.css'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { design, outcome } from '../answers.ts'
import { lookAt } from '../looks.ts'
import { light } from '../shown-in.ts'
import { Words } from '../parts/words.tsx'
import { carve, carvingNow, failed, solids } from './solids.ts'
import { atFirst, type Paints, type Stage, stageOn } from './stage.ts'

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']
const counts = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

/** Bodies in the page's own colours, whatever the light. */
const paintsNow = (): Paints => {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim()
  const kind = (part: string): 'bit' | 'steel' | 'metal' =>
    part === 'tool-bit' ? 'bit' : /bar|bushing|shim/.test(part) ? 'steel' : 'metal'
  return {
    body: (part) => token(kind(part)),
    hatch: (part) => token(kind(part) === 'bit' ? 'paper' : kind(part) === 'steel' ? 'edge' : 'hatch'),
    edge: token('edge'),
  }
}

/** One press of a button or an arrow, degrees. */
const step = 15

/** How it was left when something else was looked at. */
const look = atFirst()
const leftAt: { alone: string; cut: number | undefined } = { alone: '', cut: undefined }

/** The solids, to be turned, brought nearer and cut open. */
export const SolidView = () => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const stage = useRef<Stage | undefined>(undefined)
  const [canDraw, setCanDraw] = useState(true)
  const [alone, setAlone] = useState(leftAt.alone)
  const [cut, setCut] = useState(leftAt.cut)
  Object.assign(leftAt, { alone, cut })
  const now = solids.value
  const text = outcome.value?.text
  useEffect(() => {
    if (canDraw) void carve()
  }, [text, canDraw])

  const chosen = now.some(({ part }) => part === alone) ? alone : ''
  const there = now.length > 0
  // What a stage held of the graphics card is given back when it is left.
  useLayoutEffect(() => {
    const drawnOn = canvas.current
    if (!drawnOn || !there) return undefined
    const made = stageOn(drawnOn, look)
    if (!made) {
      setCanDraw(false)
      return undefined
    }
    stage.current = made
    made.paint(paintsNow())
    made.cut(cut)
    const seen = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) made.fit(entry.contentRect.width, entry.contentRect.height)
    })
    seen.observe(drawnOn)
    const dark = matchMedia('(prefers-color-scheme: dark)')
    const repaint = (): void => made.paint(paintsNow())
    dark.addEventListener('change', repaint)
    const lost = (event: Event): void => {
      event.preventDefault()
      if (stage.current === made) setCanDraw(false)
    }
    drawnOn.addEventListener('webglcontextlost', lost)
    return () => {
      stage.current = undefined
      drawnOn.removeEventListener('webglcontextlost', lost)
      dark.removeEventListener('change', repaint)
      seen.disconnect()
      made.leave()
    }
  }, [there])
  useLayoutEffect(() => stage.current?.put(now), [now])
  useLayoutEffect(() => stage.current?.show(chosen === '' ? undefined : chosen), [chosen, there])
  useEffect(() => stage.current?.paint(paintsNow()), [light.value])
  useEffect(() => stage.current?.cut(cut), [cut])

  if (!canDraw) return <CannotDraw />
  if (failed.value) return <Failed />
  const names = now.filter(({ part }) => chosen === '' || part === chosen).map(({ title }) => title.toLowerCase())
  return (
    <div class="solid-view">
      {now.length === 0 && <OnTheWay />}
      {now.length > 1 && (
        <Words
          name="solid"
          label="Which solid"
          words={[['', 'All'], ...now.map(({ part, title }) => [part, title] as const)]}
          now={chosen}
          choose={setAlone}
        />
      )}
      {now.length > 0 && (
        <>
          <Turned stage={stage} canvas={canvas} label={names.join(', ')} cut={cut !== undefined} />
          <div class="runs">
            {(
              [
                ['Turn left', () => stage.current?.turn(-step, 0)],
                ['Turn right', () => stage.current?.turn(step, 0)],
                ['Tip up', () => stage.current?.turn(0, -step)],
                ['Tip down', () => stage.current?.turn(0, step)],
                ['Nearer', () => stage.current?.near(1.25)],
                ['Farther', () => stage.current?.near(0.8)],
                ['As at first', () => stage.current?.asAtFirst()],
              ] as const
            ).map(([says, does]) => (
              <button key={says} type="button" onClick={does}>
                {says}
              </button>
            ))}
          </div>
          <div class="cut-open">
            <label>
              <input
                type="checkbox"
                checked={cut !== undefined}
                onChange={(event) => setCut(event.currentTarget.checked ? 0.5 : undefined)}
              />{' '}
              Cut open
            </label>
            {cut !== undefined && (
              <input
                type="range"
                aria-label="Where it is cut"
                aria-valuetext={`${Math.round(100 * cut)} in the hundred cut away`}
                min={0}
                max={1}
                step={0.01}
                value={cut}
                onInput={(event) => setCut(Number(event.currentTarget.value))}
              />
            )}
          </div>
          <p class="note">
            Each part true to its size beside the others, laid as on a bench. Drag it to turn it, or use the arrow keys;
            + and − bring it nearer and farther.
          </p>
        </>
      )}
    </div>
  )
}

const OnTheWay = () => {
  const step = carvingNow.value
  return (
    <p class="under-way" role="status">
      {step
        ? `carving the solid, ${ordinals[step.at] ?? step.at + 1} of ${counts[step.of - 1] ?? step.of}`
        : 'carving the solids'}
      {step && <progress max={step.of} value={step.at} aria-label="solids carved" />}
    </p>
  )
}

const turns: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-step, 0],
  ArrowRight: [step, 0],
  ArrowUp: [0, -step],
  ArrowDown: [0, step],
}

/** What is dragged, or turned by keys. */
const Turned = ({
  stage,
  canvas,
  label,
  cut,
}: {
  stage: { current: Stage | undefined }
  canvas: { current: HTMLCanvasElement | null }
  label: string
  cut: boolean
}) => {
  const from = useRef<{ x: number; y: number } | undefined>(undefined)
  useEffect(() => {
    const on = canvas.current
    if (!on) return undefined
    // The page rolls on unless somebody has come to the solid.
    const wheel = (event: WheelEvent): void => {
      if (document.activeElement !== on && !event.ctrlKey) return
      event.preventDefault()
      stage.current?.near(event.deltaY < 0 ? 1.1 : 1 / 1.1)
    }
    on.addEventListener('wheel', wheel, { passive: false })
    return () => on.removeEventListener('wheel', wheel)
  }, [])
  return (
    <canvas
      ref={canvas}
      class="solids"
      tabIndex={0}
      role="application"
      aria-roledescription="solid that can be turned"
      aria-label={`In the round: ${label}${cut ? ', cut open' : ''}. Arrow keys turn it.`}
      onKeyDown={(event) => {
        const by = turns[event.key]
        if (by) stage.current?.turn(...by)
        else if (event.key === '+' || event.key === '=') stage.current?.near(1.25)
        else if (event.key === '-') stage.current?.near(0.8)
        else if (event.key === 'Home') stage.current?.asAtFirst()
        else return
        event.preventDefault()
      }}
      onPointerDown={(event) => {
        if (!event.isPrimary) return
        from.current = { x: event.clientX, y: event.clientY }
        event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerMove={(event) => {
        if (!from.current) return
        stage.current?.turn((event.clientX - from.current.x) / 2.5, (event.clientY - from.current.y) / 2.5)
        from.current = { x: event.clientX, y: event.clientY }
      }}
      onPointerUp={() => {
        from.current = undefined
      }}
      onPointerCancel={() => {
        from.current = undefined
      }}
    />
  )
}

const CannotDraw = () => (
  <div class="cannot">
    <p>This browser cannot draw solids. The section, the drawings, the card and every file are not touched by that.</p>
    <button type="button" onClick={() => lookAt('end-on')}>
      Look end on
    </button>
  </div>
)

const Failed = () => (
  <div class="cannot">
    <p>
      The part that carves solids did not start here. No STL or 3MF from this page; everything else is ready. On a
      command line the same job makes them:{' '}
      <code>borewright make {design.value?.spec.name}.yaml --formats stl,3mf</code>
    </p>
    <p class="pair">
      <button type="button" onClick={() => void carve()}>
        Try again
      </button>
      <button type="button" onClick={() => lookAt('end-on')}>
        Look end on
      </button>
    </p>
  </div>
)
