/** A few words of which one is chosen. */
export const Words = <Word extends string>({
  name,
  label,
  words,
  now,
  choose,
}: {
  name: string
  label: string
  words: readonly (readonly [Word, string])[]
  now: Word | undefined
  choose: (word: Word) => void
}) => (
  <fieldset class="words">
    <legend class="unseen">{label}</legend>
    {words.map(([word, says]) => (
      <label key={word} class={now === word ? 'is-on' : ''}>
        <input type="radio" name={name} value={word} checked={now === word} onChange={() => choose(word)} />
        <span>{says}</span>
      </label>
    ))}
  </fieldset>
)
