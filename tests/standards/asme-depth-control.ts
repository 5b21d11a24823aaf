/**
 * Depth control values of square and rectangular keyseats, inches, as printed to three decimals: ASME B17.1 Table 2 in
 * Machinery's Handbook, 31st ed., p. 2552 (ANSI/ASME B17.1-1967 R2013) and in its Pocket Companion (B17.1-1967 R1989).
 * In the 2-3/8 and 2-1/2 rows T of the rectangular key and both T of taper keys were not legible: they are calculated, not printed.
 */
export interface DepthControl {
  /** Shaft, width, height of the square and of the rectangular key: fractions of an inch. */
  readonly shaft: string
  readonly width: string
  readonly square: string
  readonly rectangular: string
  /** [S, T, T of the taper key], square and rectangular. */
  readonly squareControls: readonly [s: number, t: number, taper: number]
  readonly rectangularControls: readonly [s: number, t: number, taper: number]
  readonly printed: boolean
}

const row = (
  shaft: string,
  width: string,
  square: string,
  rectangular: string,
  squareControls: readonly [number, number, number],
  rectangularControls: readonly [number, number, number],
  printed = true,
): DepthControl => ({ shaft, width, square, rectangular, squareControls, rectangularControls, printed })

export const depthControls: readonly DepthControl[] = [
  row('1/2', '1/8', '1/8', '3/32', [0.43, 0.56, 0.535], [0.445, 0.544, 0.519]),
  row('5/8', '3/16', '3/16', '1/8', [0.517, 0.709, 0.684], [0.548, 0.678, 0.653]),
  row('11/16', '3/16', '3/16', '1/8', [0.581, 0.773, 0.748], [0.612, 0.742, 0.717]),
  row('3/4', '3/16', '3/16', '1/8', [0.644, 0.837, 0.812], [0.676, 0.806, 0.781]),
  row('7/8', '3/16', '3/16', '1/8', [0.771, 0.964, 0.939], [0.802, 0.932, 0.907]),
  row('15/16', '1/4', '1/4', '3/16', [0.796, 1.051, 1.026], [0.827, 1.019, 0.994]),
  row('1', '1/4', '1/4', '3/16', [0.859, 1.114, 1.089], [0.89, 1.083, 1.058]),
  row('1-1/8', '1/4', '1/4', '3/16', [0.986, 1.241, 1.216], [1.017, 1.21, 1.185]),
  row('1-1/4', '1/4', '1/4', '3/16', [1.112, 1.367, 1.342], [1.144, 1.336, 1.311]),
  row('1-5/16', '5/16', '5/16', '1/4', [1.137, 1.455, 1.43], [1.169, 1.424, 1.399]),
  row('1-3/8', '5/16', '5/16', '1/4', [1.201, 1.518, 1.493], [1.232, 1.487, 1.462]),
  row('1-7/16', '3/8', '3/8', '1/4', [1.225, 1.605, 1.58], [1.288, 1.543, 1.518]),
  row('1-1/2', '3/8', '3/8', '1/4', [1.289, 1.669, 1.644], [1.351, 1.606, 1.581]),
  row('1-5/8', '3/8', '3/8', '1/4', [1.416, 1.796, 1.771], [1.478, 1.733, 1.708]),
  row('1-11/16', '3/8', '3/8', '1/4', [1.479, 1.859, 1.834], [1.541, 1.796, 1.771]),
  row('1-3/4', '3/8', '3/8', '1/4', [1.542, 1.922, 1.897], [1.605, 1.86, 1.835]),
  row('1-7/8', '1/2', '1/2', '3/8', [1.591, 2.096, 2.071], [1.654, 2.034, 2.009]),
  row('1-15/16', '1/2', '1/2', '3/8', [1.655, 2.16, 2.135], [1.717, 2.097, 2.072]),
  row('2', '1/2', '1/2', '3/8', [1.718, 2.223, 2.198], [1.781, 2.161, 2.136]),
  row('2-1/16', '1/2', '1/2', '3/8', [1.782, 2.287, 2.262], [1.844, 2.224, 2.199]),
  row('2-3/16', '1/2', '1/2', '3/8', [1.909, 2.414, 2.389], [1.971, 2.351, 2.326]),
  row('2-1/4', '1/2', '1/2', '3/8', [1.972, 2.477, 2.452], [2.034, 2.414, 2.389]),
  row('2-5/16', '5/8', '5/8', '7/16', [1.957, 2.587, 2.562], [2.051, 2.493, 2.468]),
  row('2-3/8', '5/8', '5/8', '7/16', [2.021, 2.651, 2.626], [2.114, 2.557, 2.532], false),
  row('2-1/2', '5/8', '5/8', '7/16', [2.148, 2.778, 2.753], [2.242, 2.684, 2.659], false),
]
