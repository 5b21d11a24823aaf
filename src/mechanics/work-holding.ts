/** What keeps the work still against the cut. N, mm. */

/** Dry steel on steel. Source: judgement. */
const friction = 0.12

/** What a vise holds along its jaws, N: two jaws of `jaw` each. */
export const viseHolds = (jaw: number): number => 2 * friction * jaw

/** What a three-jaw chuck holds along its axis, N: `jaw` the force of one jaw. */
export const chuckHolds = (jaw: number): number => 3 * friction * jaw

/**
 * Moment that jaws hold work `across` wide against being tipped over by, N mm: friction on their faces alone, up on one side and down on the other.
 * Of three jaws, the way that they hold it least.
 */
export const jawsHoldUpright = (jaw: number, across: number, held: 'vise' | 'chuck'): number =>
  friction * jaw * across * (held === 'chuck' ? Math.sqrt(3) / 2 : 1)

/** Moment that tips work off a support that ends short of the line of cut, N mm; 0 where it reaches under it. */
export const tippingMoment = (cutting: number, line: number, support: number): number =>
  cutting * Math.max(0, line - support)
