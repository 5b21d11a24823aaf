import { inch, inchName } from './inch.ts'
import { once, sameSize } from './table.ts'

/** A twist drill: the name it is asked for by (`#21`, `letter T`, `23/64`, `8.4`) and its diameter in mm. */
export interface Drill {
  readonly name: string
  readonly diameter: number
}

// ASME B94.11M number, letter and fractional twist drills: public-domain drill size table (#80 to #54) and
// an independent code table (all); #1 #2 #3 #4 #7 #10 #21 #25 also in a shop reference chart, A and Z in two shop articles.
// Metric steps: common practice, no source.

/** Number drills #1 to #80, ten-thousandths of an inch. */
const numbers = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660,
  1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995,
  980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380,
  370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
]

/** Letter drills A to Z, thousandths of an inch. */
const letters = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377, 386,
  397, 404, 413,
]

const ascending = (drills: readonly Drill[]): readonly Drill[] => drills.toSorted((a, b) => a.diameter - b.diameter)
const steps = (from: number, to: number, each: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / each) + 1 }, (_, n) => Math.round((from + n * each) * 100) / 100)

/** #80 to #1, ascending. */
export const numberDrills = once(() =>
  ascending(numbers.map((size, n) => ({ name: `#${n + 1}`, diameter: (size / 10000) * inch }))),
)

/** Letter A to letter Z, ascending. */
export const letterDrills = once((): readonly Drill[] =>
  letters.map((size, n) => ({ name: `letter ${String.fromCharCode(65 + n)}`, diameter: (size / 1000) * inch })),
)

/** 1/64 to 1 in by 1/64, ascending; the last is named `1 in`. */
export const fractionDrills = once((): readonly Drill[] =>
  Array.from({ length: 64 }, (_, n) => {
    const diameter = ((n + 1) / 64) * inch
    // `1` alone would be the metric drill.
    return { name: n === 63 ? '1 in' : (inchName(diameter) ?? ''), diameter }
  }),
)

/** Metric drills: 0.5 to 3 by 0.05, to 13 by 0.1, to 25 by 0.5 mm. Common practice, no source. */
export const metricDrills = once((): readonly Drill[] =>
  [...steps(0.5, 3, 0.05), ...steps(3.1, 13, 0.1), ...steps(13.5, 25, 0.5)].map((diameter) => ({
    name: String(diameter),
    diameter,
  })),
)

/** Every inch drill, ascending; where two are one size (1/4 and letter E) the fraction comes first. */
export const inchDrills = once(() => ascending([...fractionDrills(), ...numberDrills(), ...letterDrills()]))

/** Every name by which a drill of these tables can be asked for. */
export const drillNames = (): readonly string[] => [...inchDrills(), ...metricDrills()].map((drill) => drill.name)

/** The drill of this name (`#21`, `letter T` or `T`, `23/64`, `8.4`), or `undefined`. */
export const drillNamed = (name: string): Drill | undefined => {
  const full = /^[A-Z]$/.test(name) ? `letter ${name}` : name
  // No name stands in both.
  return metricDrills().find((drill) => drill.name === full) ?? inchDrills().find((drill) => drill.name === full)
}

/** The smallest of these drills that is no smaller than the diameter (mm); `undefined` if all are smaller. */
export const drillAtOrAbove = (diameter: number, drills: readonly Drill[]): Drill | undefined =>
  drills
    .filter((drill) => drill.diameter >= diameter - sameSize)
    .reduce<Drill | undefined>((best, drill) => (best && best.diameter <= drill.diameter ? best : drill), undefined)
