import { nearest } from '../spec/near.ts'

/** ` Did you mean 'check'?` with a space before it; nothing where no word is near. `before` is put before the word: dashes. */
export const suggest = (read: string, among: readonly string[], before = ''): string => {
  const meant = nearest(read, among)
  return meant === undefined ? '' : ` Did you mean '${before}${meant}'?`
}
