/** What errors of index, eccentric work and a common offset take from the play of splines or of several keys. mm, degrees. */

export interface IndexErrors {
  /** Where each slot should stand. */
  readonly at: readonly number[]
  /** How far each stands from there. */
  readonly errors: readonly number[]
  /** From the bore to the tip of the tooth, or to the top of the key. */
  readonly radii: readonly [number, number]
  /** Bore off the axis that it was turned about, whichever way. */
  readonly eccentric?: number
  /** All slots sideways alike. */
  readonly offset?: number
}

const radians = Math.PI / 180

/**
 * Play that a shaft needs which is free to turn and to shift until it fits, exactly: the worst pair of slots k, l at either radius of
 * 2 (y_k r_l − y_l r_k)/(r_k + r_l), y = r × error + eccentric × sin(at − direction) + offset. Index errors alone: outer radius × their range.
 */
export const playNeeded = ({ at, errors, radii, eccentric = 0, offset = 0 }: IndexErrors): number => {
  let worst = 0
  at.forEach((here, k) => {
    at.forEach((there, l) => {
      for (const rk of radii) {
        for (const rl of radii) {
          const y = (n: number, r: number) => r * (errors[n] ?? 0) * radians + offset
          const apart = Math.hypot(
            rl - rk * Math.cos((here - there) * radians),
            rk * Math.sin((here - there) * radians),
          )
          const needed = (2 * (y(k, rk) * rl - y(l, rl) * rk + Math.abs(eccentric) * apart)) / (rk + rl)
          worst = Math.max(worst, needed)
        }
      }
    })
  })
  return worst
}
