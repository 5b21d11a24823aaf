import type { Size } from './size.ts'

/** Least play of a hole on a shaft (or a slot on a key), mm: smallest hole, largest shaft. Negative is interference. */
export const leastPlay = (hole: Size, shaft: Size): number => hole.lower - shaft.upper

/** Most play of a hole on a shaft, mm: largest hole, smallest shaft. Negative: they interfere in every case. */
export const mostPlay = (hole: Size, shaft: Size): number => hole.upper - shaft.lower
