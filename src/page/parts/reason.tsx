import { idOf } from './blank.tsx'
import { rowAt, toBlank } from './to-blank.ts'

/** A path of the spec within a sentence. */
const path = /\b(?:[a-z]\w*\.)+[a-z]\w*/gi

/** A sentence of a rule, its paths told by the words that their blanks have, each the way to its blank. */
export const Reason = ({ says }: { says: string }) => {
  const parts: (string | { readonly path: string; readonly word: string })[] = []
  let from = 0
  for (const found of says.matchAll(path)) {
    const row = rowAt(found[0])
    if (!row) continue
    parts.push(says.slice(from, found.index), { path: row.path, word: row.word })
    from = found.index + found[0].length
  }
  return (
    <>
      {[...parts, says.slice(from)].map((part) =>
        typeof part === 'string' ? (
          part
        ) : (
          <a key={part.path} href={`#${idOf(part.path)}`} onClick={(event) => toBlank(event, part.path)}>
            {part.word}
          </a>
        ),
      )}
    </>
  )
}

/** The same where nothing can be pressed. */
export const plainly = (says: string): string => says.replace(path, (found) => rowAt(found)?.word ?? found)
