/** Edits (a letter put in, left out or changed) that turn one word into the other. Levenshtein 1965. */
export function edits(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, column) => column)
  for (let line = 1; line <= one.length; line += 1) {
    const next = [line]
    for (let column = 1; column <= other.length; column += 1) {
      const changed = (row[column - 1] ?? 0) + (one[line - 1] === other[column - 1] ? 0 : 1)
      next.push(Math.min((row[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1, changed))
    }
    row = next
  }
  return row[other.length] ?? 0
}

const bare = (word: string): string => word.toLowerCase().replace(/[\s_-]/g, '')

/**
 * The word that was probably meant: the nearest within two edits, capitals, spaces and dashes aside, and never by
 * changing more than half of it or a word of two letters. `undefined` when none is near.
 */
export function nearest(written: unknown, words: readonly string[]): string | undefined {
  if (typeof written !== 'string' || written.length > 40) return undefined
  let best: { readonly word: string; readonly away: number } | undefined
  for (const word of words) {
    const away = edits(bare(written), bare(word))
    const longer = Math.max(bare(written).length, bare(word).length)
    if (away <= 2 && (away === 0 || (longer > 2 && away * 2 <= longer)) && away < (best?.away ?? 3))
      best = { word, away }
  }
  return best?.word
}
