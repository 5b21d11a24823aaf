import { atThePress, atTheMachine } from '../../card/cautions.ts'
import { plain } from '../../card/document.ts'
import { light, putOn } from '../shown-in.ts'
import { Heading } from '../parts/heading.tsx'
import type { Job, Way } from './job.ts'
import { Go, Said, Tick } from './parts.tsx'
import { note, ticked } from './record.ts'

const wayNamed: Readonly<Record<Way, string>> = { bar: 'By the bar', press: 'At the press' }

/** The card's cautions; on only when all that is to be ticked is ticked. */
export const Stop = ({ now }: { now: Job }) => {
  const blocks = now.way === 'press' ? atThePress(now.design) : atTheMachine(now.design, now.says)
  const ticks = blocks.flatMap((block) => (block.block === 'caution' ? (block.ticks ?? []) : [])).map(plain)
  const left = ticks.filter((each) => !ticked(`stop-${each}`)).length
  return (
    <>
      <Heading id="screen">Stop</Heading>
      {now.ways.length > 1 && (
        <fieldset class="ways-to-go">
          <legend>This job goes either way</legend>
          {now.ways.map((way) => (
            <label key={way} class={`choose${way === now.way ? ' is-on' : ''}`}>
              <input
                type="radio"
                name="way"
                checked={way === now.way}
                onChange={() => note({ way, at: 'stop', ticks: [], reading: 0, springs: 0, strokes: 0 })}
              />
              <span>{wayNamed[way]}</span>
            </label>
          ))}
        </fieldset>
      )}
      {blocks.map((block, place) =>
        block.block === 'caution' ? (
          <div key={place} class="caution">
            {block.says.map(({ signal, words }) => (
              <p key={signal}>
                <b class="signal">{signal}</b> <Said words={words} />
              </p>
            ))}
          </div>
        ) : block.block === 'paragraph' ? (
          <p key={place} class="small">
            <Said words={block.words} />
          </p>
        ) : null,
      )}
      <div class="ticks">
        {ticks.map((words) => (
          <Tick key={words} name={`stop-${words}`}>
            {words.charAt(0).toUpperCase() + words.slice(1)}
          </Tick>
        ))}
      </div>
      <Go when={left === 0}>Go on</Go>
      {left > 0 && (
        <p class="small" role="status">
          {left === 1 ? 'One more to tick' : `${left} more to tick`} before it goes on.
        </p>
      )}
      {light.value !== 'strong' && (
        <p class="small">
          In sunlight?{' '}
          <button type="button" class="link" onClick={() => putOn('strong')}>
            Strong
          </button>
        </p>
      )}
    </>
  )
}
