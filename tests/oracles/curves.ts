/**
 * Brute force in the plane: pieces of outline that are walked point by point. Shares nothing with the closed forms it checks.
 * The bore's axis is the origin, the keyway on +x.
 */
export type Point = readonly [x: number, y: number]

/** A piece of outline, from 0 to 1. */
export type Piece = (along: number) => Point

export const line =
  ([ax, ay]: Point, [bx, by]: Point): Piece =>
  (along) => [ax + (bx - ax) * along, ay + (by - ay) * along]

/** Angles in radians. */
export const arc =
  ([x, y]: Point, radius: number, from: number, to: number): Piece =>
  (along) => {
    const angle = from + (to - from) * along
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  }

/** Least value of `ask` along a piece: walked in steps, then narrowed about the best of them. */
export const least = (piece: Piece, ask: (at: Point) => number, steps = 48): number => {
  let best = 0
  let found = Infinity
  for (let step = 0; step <= steps; step++) {
    const value = ask(piece(step / steps))
    if (value < found) [found, best] = [value, step]
  }
  let [low, high] = [Math.max(0, best - 1) / steps, Math.min(steps, best + 1) / steps]
  for (let turn = 0; turn < 28; turn++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (ask(piece(a)) < ask(piece(b))) high = b
    else low = a
  }
  return Math.min(found, ask(piece((low + high) / 2)))
}

/** The value at which `holds` ceases to: true at `low`, false at `high`. */
export const bisected = (low: number, high: number, holds: (value: number) => boolean, turns = 60): number => {
  let [yes, no] = [low, high]
  for (let turn = 0; turn < turns; turn++) {
    const middle = (yes + no) / 2
    if (holds(middle)) yes = middle
    else no = middle
  }
  return yes
}

/** All of several lists taken one each. */
export const corners = <const T extends readonly (readonly number[])[]>(...lists: T): number[][] =>
  lists.reduce<number[][]>((made, list) => made.flatMap((some) => list.map((value) => [...some, value])), [[]])
