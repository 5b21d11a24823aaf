import type { Point } from '../solid/outline.ts'

/** A decimal number with at most `places` digits after the point, never an exponent, never a negative zero. */
export function decimal(value: number, places: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a number that can be drawn: ${value}`)
  const fixed = value.toFixed(places)
  let end = fixed.length
  if (fixed.includes('.')) {
    while (fixed[end - 1] === '0') end--
    if (fixed[end - 1] === '.') end--
  }
  const short = fixed.slice(0, end)
  return short === '-0' ? '0' : short
}

// Line ends of every kind and the C0 and C1 controls; the last two are line ends to some readers.
const unprintable = /[\p{Cc}\u2028\u2029\ufffe\uffff]/gu

/** Text that stays on one line in every format: controls and line ends become spaces, halves of a character the sign for one. */
export const oneLine = (text: string): string => text.replace(unprintable, ' ').replace(/\p{Surrogate}/gu, '\ufffd')

/** The point of a circle at an angle in degrees. */
export function onCircle(centre: Point, radius: number, degrees: number): Point {
  const radians = (degrees * Math.PI) / 180
  return [centre[0] + radius * Math.cos(radians), centre[1] + radius * Math.sin(radians)]
}

/** Counter-clockwise sweep from one angle to the other, degrees: a turn or more apart is the whole circle, equal is nothing. */
export function sweep(from: number, to: number): number {
  if (Math.abs(to - from) > 360 - 1e-9) return 360
  return (((to - from) % 360) + 360) % 360
}

/**
 * The stretches that are drawn of a line `length` mm long, as distances from its start. Patterns repeat where they are shorter than the
 * line; without a pattern the whole line is one stretch.
 */
export function stretches(length: number, dashes?: readonly number[]): readonly (readonly [number, number])[] {
  const period = dashes?.reduce((sum, part) => sum + part, 0) ?? 0
  if (!dashes || !(period > 1e-6)) return [[0, length]]
  const drawn: [number, number][] = []
  let at = 0
  for (let index = 0; at < length - 1e-6; index++) {
    const end = Math.min(length, at + (dashes[index % dashes.length] ?? 0))
    if (index % 2 === 0 && end > at) drawn.push([at, end])
    at = end
  }
  return drawn
}
