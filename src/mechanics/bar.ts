/** The bar as a cantilever held at the holder, with its nose beside its axis. N, mm, N/mm². */
import { steelModuli } from '../standards/moduli.ts'

export const steelModulus = steelModuli.elastic

/** Second moment of a round bar, mm⁴. */
export const secondMoment = (diameter: number): number => (Math.PI * diameter ** 4) / 64

export interface Held {
  readonly diameter: number
  /** Cutting edge to holder. */
  readonly overhang: number
  readonly projection: number
  /** Sideways stiffness of the machine at the nose, N/mm. */
  readonly machine: number
  readonly stroke: 'push' | 'pull'
}

const eccentricity = ({ diameter, projection }: Held): number => diameter / 2 + projection
const flexibility = (held: Held): number => steelModulus * secondMoment(held.diameter)

/**
 * Deflection of the nose into the work (+) or away from it (−), bar alone. On the push stroke the cutting force bends the bar into the
 * cut and the thrust out of it; on the pull stroke both bend it out.
 */
export const deflection = (held: Held, cutting: number, thrust: number): number => {
  const L = held.overhang
  const into = (cutting * eccentricity(held) * L ** 2) / (2 * flexibility(held))
  return (held.stroke === 'push' ? into : -into) - (thrust * L ** 3) / (3 * flexibility(held))
}

/**
 * How far the nose gives way per newton of cutting force, bar and machine, mm/N; negative where it digs in. `ratio` is thrust over
 * cutting force, `tilt` the share of the machine's give that is tilt of the holder (0 to 1).
 */
export const givePerNewton = (held: Held, ratio: number, tilt: number): number => {
  const L = held.overhang
  const away = ratio * (L ** 3 / (3 * flexibility(held)) + 1 / held.machine)
  const into = eccentricity(held) * (L ** 2 / (2 * flexibility(held)) + tilt / (held.machine * L))
  return held.stroke === 'push' ? away - into : away + into
}

export interface Band {
  readonly least: number
  readonly most: number
}

/** Band of the give over thrust and tilt. */
export const giveBand = (held: Held, ratio: Band): Band =>
  held.stroke === 'push'
    ? { least: givePerNewton(held, ratio.least, 1), most: givePerNewton(held, ratio.most, 0) }
    : { least: givePerNewton(held, ratio.least, 0), most: givePerNewton(held, ratio.most, 1) }

/**
 * How near the cut is to drawing itself in: at 1 it hooks. The larger of bar and machine together, and the bar alone.
 * `slope` is d(cutting force)/d(infeed), N/mm.
 */
export const digIn = (held: Held, ratioLeast: number, slope: number): number => {
  const L = held.overhang
  const e = eccentricity(held)
  const sign = held.stroke === 'push' ? 1 : -1
  const bar = (L ** 2 / flexibility(held)) * ((sign * e) / 2 - (ratioLeast * L) / 3)
  const machine = ((sign * e) / L - ratioLeast) / held.machine
  return slope * Math.max(bar, bar + machine)
}

/** Parts of a round bar's second moment, section modulus and area left at a hole `ratio` of its diameter across it, the hole in the plane of bending. */
export const netSection = (
  ratio: number,
): { readonly inertia: number; readonly modulus: number; readonly area: number } => {
  const root = Math.sqrt(1 - ratio ** 2)
  const hole = (4 / 3) * ((ratio * root ** 3) / 4 + (3 / 8) * (ratio * root + Math.asin(ratio)))
  const inertia = 1 - (4 / Math.PI) * hole
  return { inertia, modulus: inertia / root, area: 1 - (2 / Math.PI) * (ratio * root + Math.asin(ratio)) }
}

/**
 * Peak stress at the hole's mouth over the nominal stress of the whole section: 3 − 6.25x + 41x² − 45x³ for a hole x of the bar.
 * Source: Peterson, the formula for a round bar with a transverse hole; good to 0.4 of the bar (from memory), `undefined` beyond.
 */
export const petersonFactor = (ratio: number): number | undefined =>
  ratio > 0 && ratio <= 0.4 + 1e-9 ? 3 - 6.25 * ratio + 41 * ratio ** 2 - 45 * ratio ** 3 : undefined

/** The same over the nominal stress of what the hole leaves; it falls as the hole grows, and the last of the formula stands for all larger ones. */
const netFactor = (ratio: number): number => {
  const within = Math.min(ratio, 0.4)
  return (petersonFactor(within) ?? 3) * netSection(within).modulus
}

/** Stress to expect at the hole's mouth, and the bound that is held against the yield: N/mm². */
export const holeStresses = (
  held: Held,
  ratio: number,
  cutting: number,
): { readonly expected: number; readonly bound: number } => {
  const area = (netSection(ratio).area * Math.PI * held.diameter ** 2) / 4
  const bound = holeStress(held, ratio, cutting)
  return { expected: ((bound - cutting / area) * netFactor(ratio)) / 3 + cutting / area, bound }
}

/** Peak stress at the hole's mouth: three times the nominal in bending, an upper bound, and the direct stress. Source: Peterson, as a bound. */
export const holeStress = (held: Held, ratio: number, cutting: number): number => {
  const { diameter } = held
  const net = netSection(ratio)
  const modulus = (net.modulus * Math.PI * diameter ** 3) / 32
  const area = (net.area * Math.PI * diameter ** 2) / 4
  return (3 * cutting * eccentricity(held)) / modulus + cutting / area
}

/** Bending stress at the holder over the thrust's band, N/mm². On the push stroke the two bends work against one another. */
export const rootStresses = (held: Held, cutting: number, ratio: Band): Band => {
  const modulus = (Math.PI * held.diameter ** 3) / 32
  const sign = held.stroke === 'push' ? -1 : 1
  const at = (r: number) => (cutting * eccentricity(held) + sign * r * cutting * held.overhang) / modulus
  const [one, other] = [at(ratio.least), at(ratio.most)]
  const sizes = [Math.abs(one), Math.abs(other)]
  return { least: one * other < 0 ? 0 : Math.min(...sizes), most: Math.max(...sizes) }
}

/** The worse end of that band. */
export const rootStress = (held: Held, cutting: number, ratio: Band): number => rootStresses(held, cutting, ratio).most

/** Which way the nose goes over the thrust's band: into the work (+), off it, or one can't tell. */
export const bendsTo = ({ least, most }: Band): 'digs in' | 'pushes off' | 'may do either' =>
  least > 0 ? 'digs in' : most < 0 ? 'pushes off' : 'may do either'
