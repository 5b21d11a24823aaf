/** A keyway whose floor falls along the bore, for a taper key. mm, degrees. */

/** Fall of the floor for each millimetre of bore. Source: from memory: 1 in 8 in a foot (ASME B17.1), 1:100 (ISO/R 774). */
export const taperRates = { '1:96': 1 / 96, '1:100': 1 / 100 } as const

/** Floor to opposite wall at a distance from the deep end. */
export const acrossAt = (deep: number, rate: number, from: number): number => deep - rate * from

/** Tilt of the hub that lays its floor along the stroke. */
export const tiltOf = (rate: number): number => (Math.atan(rate) * 180) / Math.PI

/** What the window of projections loses at its upper end: the tilted bore shifts against the bar by so much over its length. */
export const windowLoss = (rate: number, length: number): number => rate * length
