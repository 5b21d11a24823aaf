/** What stands at the machine must not run over its side: the first of several ways to set it that does not is taken. */
import type { Card, Leaf, Side } from './document.ts'
import { sidesTaken } from './flow.ts'

/** What a card has before its leaves. */
export type Cover = Omit<Card, 'leaves'>

/** A leaf as far as its heads go: sides are counted where there are several. */
const machine: Leaf = {
  leaf: 'machine',
  title: 'Machine leaf',
  sides: [
    { title: '', blocks: [] },
    { title: '', blocks: [] },
  ],
}

/** What several ways to set a side have in common, worked out when the first of them is tried; one for each `key`. */
export const onceFor = <Key extends string | number | boolean, Made>(
  make: (key: Key) => Made,
): ((key: Key) => Made) => {
  const made = new Map<Key, Made>()
  return (key) => {
    const known = made.get(key) ?? make(key)
    made.set(key, known)
    return known
  }
}

/** The first that comes out on one side of paper; undefined where none does. */
export const firstThatFits = (cover: Cover, ways: readonly (() => Side)[]): Side | undefined => {
  for (const way of ways) {
    const side = way()
    if (sidesTaken(cover, machine, side) === 1) return side
  }
  return undefined
}

/** The same, or the last, which then goes on overleaf. */
export const asFits = (cover: Cover, ways: readonly (() => Side)[]): Side => {
  const last = ways.at(-1)
  if (!last) throw new RangeError('no way to set a side')
  return firstThatFits(cover, ways) ?? last()
}
