import { readAngle } from './length.ts'
import type { Reading } from './reading.ts'

/** More slots than any feature may have: the schema has refused a longer list, or a larger count. */
const mostSlots = 1000

const apart = (one: number, other: number): number => Math.min(Math.abs(one - other), 360 - Math.abs(one - other))
const wrapped = (angle: number): number => ((angle % 360) + 360) % 360

/** Angles from 0 up to 360, as written, one at 0 where none are; two of one angle are a complaint. */
export function readAngles(reading: Reading, path: string): readonly number[] | undefined {
  const written = reading.raw(path) ?? 0
  if (Array.isArray(written) && written.length > mostSlots) return undefined
  const read = (Array.isArray(written) ? written : [written]).map(readAngle)
  if (read.some((angle) => angle === undefined)) return undefined
  const angles = read.map((angle) => wrapped(angle ?? 0))
  const twice = angles.some((angle, n) => angles.slice(0, n).some((other) => apart(angle, other) < 0.01))
  if (twice) reading.complain(path, 'angles that differ: [0, 90]')
  return angles
}

/** `count` angles evenly round from the first, as written, or from 0. */
export function readEvenAngles(reading: Reading, path: string, count: number): readonly number[] | undefined {
  const first = readAngle(reading.raw(path) ?? 0)
  if (first === undefined || count > mostSlots) return undefined
  return Array.from({ length: count }, (_, n) => wrapped(first + (360 * n) / count))
}
