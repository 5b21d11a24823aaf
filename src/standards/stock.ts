import { type Drill, inchDrills, metricDrills } from './drills.ts'
import { inch } from './inch.ts'
import { once } from './table.ts'

/** What a shop that has not said otherwise is taken to have. All mm, all ascending. Common practice, no source. */
export interface StockLists {
  readonly drills: readonly Drill[]
  /** Threads for which there are taps and set screws. */
  readonly threads: readonly string[]
  /** Tool-bit blanks. */
  readonly bits: readonly { readonly shape: 'square' | 'round'; readonly size: number }[]
  /** Round bar for cutter bars. */
  readonly bars: readonly number[]
  /** Round bar for bushings. */
  readonly rounds: readonly number[]
  /** Diameters that collet or holder takes. */
  readonly collets: readonly number[]
  /** Shim and feeler stock, thicknesses. */
  readonly shims: readonly number[]
}

/** From `from` to `to`, both in, by `each`; exact where `each` is a power of two or a whole number. */
const steps = (from: number, to: number, each: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / each) + 1 }, (_, n) => from + n * each)
const inMm = (inches: readonly number[]): readonly number[] => inches.map((size) => size * inch)

const blanks = (square: readonly number[], round: readonly number[]): StockLists['bits'] =>
  [
    ...square.map((size) => ({ shape: 'square' as const, size })),
    ...round.map((size) => ({ shape: 'round' as const, size })),
  ].toSorted((a, b) => a.size - b.size)

const metric = once(
  (): StockLists => ({
    drills: metricDrills(),
    threads: ['M1.6', 'M2', 'M2.5', 'M3', 'M4', 'M5', 'M6', 'M8', 'M10', 'M12'],
    bits: blanks([2, 2.5, 3, 4, 5, 6, 8, 10, 12, 14, 16], [1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 14, 16]),
    bars: [...steps(3, 10, 0.5), 11, 12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 35, 36, 38, 40, 45, 50, 60],
    rounds: [...steps(8, 20, 1), ...steps(22, 40, 2), ...steps(45, 130, 5)],
    collets: [...steps(3, 26, 1), 30, 32, 40, 50],
    shims: [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.5, 2, 3],
  }),
)

const inches = once(
  (): StockLists => ({
    drills: inchDrills(),
    threads: [
      '#0-80',
      '#1-72',
      '#2-56',
      '#3-48',
      '#4-40',
      '#5-40',
      '#6-32',
      '#8-32',
      '#10-24',
      '#10-32',
      '1/4-20',
      '1/4-28',
      '5/16-18',
      '5/16-24',
      '3/8-16',
      '3/8-24',
      '1/2-13',
      '1/2-20',
    ],
    bits: blanks(
      inMm([1 / 16, 3 / 32, 1 / 8, 5 / 32, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8]),
      inMm([1 / 16, 5 / 64, 3 / 32, 1 / 8, 5 / 32, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8]),
    ),
    bars: inMm([...steps(1 / 8, 1 / 2, 1 / 32), ...steps(9 / 16, 1.25, 1 / 16), ...steps(1.375, 2.5, 1 / 8)]),
    rounds: inMm([...steps(5 / 16, 1.25, 1 / 16), ...steps(1.375, 3, 1 / 8), ...steps(3.25, 5, 1 / 4)]),
    collets: inMm([...steps(1 / 8, 1, 1 / 16), 1.25, 1.5, 2]),
    shims: inMm([
      0.001,
      0.0015,
      0.002,
      0.003,
      0.004,
      0.005,
      0.006,
      0.008,
      0.01,
      0.012,
      0.015,
      0.02,
      0.025,
      1 / 32,
      0.032,
      1 / 16,
      1 / 8,
    ]),
  }),
)

/** Our own default lists for a metric or an inch shop. */
export const stockLists = (units: 'mm' | 'in'): StockLists => (units === 'mm' ? metric() : inches())
