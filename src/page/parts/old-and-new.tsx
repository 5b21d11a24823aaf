import { otherwiseNow, takeNew } from '../old-and-new.ts'
import { counted } from '../words.ts'
import { Heading } from './heading.tsx'

/** A job that another version worked out, and what comes out otherwise now. */
export const OldAndNew = () => {
  const told = otherwiseNow.value
  if (!told) return null
  const { version, here, moved } = told
  return (
    <section class="old-and-new" aria-labelledby="old-and-new">
      <Heading id="old-and-new">Old and new</Heading>
      <p>
        This job was made by version {version}; this is {here}.{' '}
        {counted(moved.length, 'number came out otherwise:', 'numbers came out otherwise:')}
      </p>
      <dl class="bases">
        {moved.map(({ word, now, was }) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>
              {now}, was {was}.
            </dd>
          </div>
        ))}
      </dl>
      <p class="note">A card printed from the old version should be printed again.</p>
      <p class="pair">
        <button type="button" onClick={takeNew}>
          Go on with the new
        </button>
      </p>
    </section>
  )
}
