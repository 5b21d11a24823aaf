/** A beam by finite elements, sharing nothing with the closed forms: two-node elements, each end with a deflection and a slope. */

export interface Piece {
  readonly length: number
  /** N mm². */
  readonly stiffness: number
}

export interface Root {
  /** N/mm against sliding sideways; ∞ where it cannot. */
  readonly slide: number
  /** N mm a radian against tilting. */
  readonly tilt: number
}

/** Gauss with pivots. */
const solve = (matrix: number[][], right: number[]): number[] => {
  const n = right.length
  const a = matrix.map((row, i) => [...row, right[i] ?? 0])
  const at = (i: number, j: number) => a[i]?.[j] ?? 0
  for (let k = 0; k < n; k++) {
    let pivot = k
    for (let i = k + 1; i < n; i++) if (Math.abs(at(i, k)) > Math.abs(at(pivot, k))) pivot = i
    const [one, other] = [a[k], a[pivot]]
    if (!one || !other) throw new Error('no such row')
    a[k] = other
    a[pivot] = one
    for (let i = k + 1; i < n; i++) {
      const by = at(i, k) / at(k, k)
      const row = a[i]
      if (row && by !== 0) for (let j = k; j <= n; j++) row[j] = (row[j] ?? 0) - by * at(k, j)
    }
  }
  const found = Array.from({ length: n }, () => 0)
  for (let i = n - 1; i >= 0; i--) {
    let rest = at(i, n)
    for (let j = i + 1; j < n; j++) rest -= at(i, j) * (found[j] ?? 0)
    found[i] = rest / at(i, i)
  }
  return found
}

/** Deflection of the free end under a force and a moment there, root first, every piece cut into elements. */
export const endDeflection = (
  pieces: readonly Piece[],
  root: Root,
  force: number,
  moment: number,
  elements = 12,
): number => {
  const all = pieces.flatMap(({ length, stiffness }) =>
    Array.from({ length: elements }, () => ({ length: length / elements, stiffness })),
  )
  const n = 2 * (all.length + 1)
  const K = Array.from({ length: n }, () => Array.from({ length: n }, () => 0))
  const add = (i: number, j: number, value: number) => {
    const row = K[i]
    if (row) row[j] = (row[j] ?? 0) + value
  }
  for (const [e, { length: L, stiffness: EI }] of all.entries()) {
    const k = [
      [12, 6 * L, -12, 6 * L],
      [6 * L, 4 * L * L, -6 * L, 2 * L * L],
      [-12, -6 * L, 12, -6 * L],
      [6 * L, 2 * L * L, -6 * L, 4 * L * L],
    ]
    for (const [i, row] of k.entries())
      for (const [j, value] of row.entries()) add(2 * e + i, 2 * e + j, (value * EI) / L ** 3)
  }
  // A root that cannot move is a very stiff spring.
  const stiffest = 1e12
  add(0, 0, Math.min(root.slide, stiffest))
  add(1, 1, Math.min(root.tilt, stiffest * 1e3))
  const right = Array.from({ length: n }, () => 0)
  right[n - 2] = force
  right[n - 1] = moment
  return solve(K, right)[n - 2] ?? Number.NaN
}
