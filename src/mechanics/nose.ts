/** Stress at the root of the bit's nose. N, mm, N/mm². */

export interface Root {
  readonly top: number
  readonly bottom: number
  readonly height: number
  /** Edge to root. */
  readonly length: number
}

/** Down and sideways bending at the root (a trapezium), and shear. The sideways force is a fifth of the cutting force. Source: judgement. */
export const noseStress = (root: Root, force: number) => {
  const { top, bottom, height, length } = root
  const area = (height * (top + bottom)) / 2
  const inertia = (height ** 3 * (bottom ** 2 + 4 * bottom * top + top ** 2)) / (36 * (bottom + top))
  const fromBottom = (height * (bottom + 2 * top)) / (3 * (bottom + top))
  const far = Math.max(fromBottom, height - fromBottom)
  const sideways = (height * (top + bottom) * (top ** 2 + bottom ** 2)) / 48
  return {
    down: (force * length * far) / inertia,
    sideways: (0.2 * force * length * (top / 2)) / sideways,
    shear: (1.5 * force) / area,
  }
}
