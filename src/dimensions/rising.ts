/** Largest number between two at which a rising quantity is still no more than `most`; `high` where it never is. By false position, halved (Illinois). */
export const lastOf = (low: number, high: number, most: number, rising: (value: number) => number): number => {
  let [inside, outside] = [low, high]
  let [under, over] = [rising(low) - most, rising(high) - most]
  if (over <= 0) return high
  let side = 0
  for (let step = 0; step < 60 && outside - inside > 1e-10 * high; step++) {
    // Where nothing cuts yet there is nothing to go by: halve.
    const share = under < 0 && step % 8 !== 7 ? under / (under - over) : 0.5
    const value = inside + (outside - inside) * Math.min(0.999, Math.max(0.001, share))
    const off = rising(value) - most
    if (off <= 0) {
      inside = value
      under = off
      if (side === -1) over /= 2
      side = -1
    } else {
      outside = value
      over = off
      if (side === 1) under /= 2
      side = 1
    }
  }
  return inside
}
