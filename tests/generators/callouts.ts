import type { Callout, Drawing, Linear, Wording, Worth } from '../../src/drawing/view.ts'

export const calloutsOf = (drawing: Drawing): readonly Callout[] => drawing.views.flatMap(({ callouts }) => callouts)

/** Every name that the callouts of a drawing say, frames hung on them too. */
export const namesOf = (drawing: Drawing): readonly string[] =>
  calloutsOf(drawing).flatMap((callout) => [
    callout.of,
    ...(callout.callout === 'leader' ? (callout.also ?? []) : []),
    ...(callout.callout === 'angle'
      ? []
      : (callout.hangs ?? []).flatMap((hung) => (hung.hang === 'frame' ? [hung.of] : []))),
  ])

const isWorth = (part: string | Worth): part is Worth => typeof part !== 'string'

/** Every size that a callout says. */
export const worthsOf = (callout: Callout): readonly Worth[] =>
  callout.callout === 'leader' ? callout.lines.flatMap((line) => line.filter(isWorth)) : [callout.worth]

/** Every line of words of a drawing: leaders, notes, the table, the stock. */
export const wordingsOf = (drawing: Drawing): readonly Wording[] => [
  ...calloutsOf(drawing).flatMap((callout) => (callout.callout === 'leader' ? callout.lines : [[callout.worth]])),
  ...drawing.notes.flatMap(({ lines }) => lines),
  ...drawing.asMade.rows.map(({ limits }) => limits),
  drawing.block.stock,
]

/** What is under a dotted name in a part's dimensions. */
export const under = (dimensions: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], dimensions)

/** All numbers in a dimension: its own value, its nominal, its members. */
export const numbersIn = (dimension: unknown): readonly number[] => {
  if (typeof dimension === 'number') return [dimension]
  if (typeof dimension !== 'object' || dimension === null) return []
  return Object.values(dimension).flatMap(numbersIn)
}

/** Linear callouts as links between edges; a diameter, or a width about the axis, hangs on its own middle. */
export const linksAlong = (callouts: readonly Callout[], axis: 'x' | 'y'): readonly (readonly [string, string])[] =>
  callouts
    .filter((callout): callout is Linear => callout.callout === 'linear' && callout.axis === axis)
    .map(({ a, b, worth }) => {
      const middle = (a + b) / 2
      const own = worth.prefix === 'Ø' || Math.abs(middle) < 1e-9
      return [own ? middle : a, b].map((at) => (at + 0).toFixed(6).replace('-0.000000', '0.000000')) as [string, string]
    })

/** Trees and loops among links: how many pieces, and how many links too many. */
export const forest = (
  links: readonly (readonly [string, string])[],
): { readonly pieces: number; readonly loops: number } => {
  const parent = new Map<string, string>()
  const root = (node: string): string => {
    const up = parent.get(node) ?? node
    return up === node ? node : root(up)
  }
  let loops = 0
  for (const [a, b] of links) {
    parent.set(a, parent.get(a) ?? a)
    parent.set(b, parent.get(b) ?? b)
    if (root(a) === root(b)) loops += 1
    else parent.set(root(a), root(b))
  }
  return { pieces: [...parent.keys()].filter((node) => root(node) === node).length, loops }
}
