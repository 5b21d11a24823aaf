import { inch, poundForce } from './inch.ts'
import type { Table } from './table.ts'

/** A factor with the book it stands in. */
export interface Factor {
  readonly name: string
  readonly value: number
  readonly source: string
}

/** Yield in shear over yield in tension: by distortion energy, the usual one, and by greatest shear, the careful one. */
export const shearYield = {
  distortionEnergy: {
    name: 'shear over tension, distortion energy',
    value: 0.577,
    source: 'key design pages after Shigley; 1/√3 by theory',
  },
  greatestShear: { name: 'shear over tension, greatest shear', value: 0.5, source: 'Mott, 4th ed., section 11-4' },
} as const satisfies Record<string, Factor>

/** Safety on the yield of a key, shock not known. */
export const keySafety: Factor = {
  name: 'safety of a key',
  value: 3,
  source: 'Mott, 4th ed., section 11-4: typical industrial',
}

/** Safety on the tensile strength of grey iron under a key's flank; it has no yield. */
export const ironSafety = {
  name: 'safety of grey iron under a key',
  least: 1.5,
  most: 2,
  source: 'from memory (Roloff/Matek, Decker)',
} as const

/** Share that each of two keys carries of what one would. */
export const twoKeysShare: Factor = { name: 'share of each of two keys', value: 0.75, source: 'from memory' }

/** A key longer than this many shaft diameters bears no more. */
export const keyLengthLimit: Factor = {
  name: 'longest key over the shaft diameter',
  value: 1.5,
  source: 'Shigley, 9th ed., p. 391',
}

/** Part of a plain shaft's strength left at a keyway `width` wide and `depth` deep (any one unit), after H. F. Moore. Source: machine design notes, example 0.826. */
export const shaftLeftByKeyway = (shaft: number, width: number, depth: number): number =>
  1 - (0.2 * width) / shaft - (1.1 * depth) / shaft

/** 1000 psi, for which SAE J499 gives its torques, N/mm2. Source: SAE J499a, scope. */
export const saeSplinePressure = (1000 * poundForce) / inch ** 2

export type SplineUse = 'sliding under load' | 'sliding idle' | 'fixed'
export type SplineConditions = 'bad' | 'medium' | 'good'

/** Pressure that the flanks of a spline may bear, N/mm2. */
export interface SplinePressure {
  readonly use: SplineUse
  readonly flanks: 'soft' | 'hardened'
  readonly conditions: SplineConditions
  readonly least: number
  readonly most: number
  readonly source: string
}

const shop = 'from memory (Orlov; GOST practice)'
const pressures = (
  use: SplineUse,
  flanks: SplinePressure['flanks'],
  ...ranges: readonly (readonly [conditions: SplineConditions, least: number, most: number])[]
): readonly SplinePressure[] =>
  ranges.map(([conditions, least, most]) => ({ use, flanks, conditions, least, most, source: shop }))

/** Columns: use, flanks, then conditions with least and most. Soft flanks that slide under load: SAE's 1000 psi; Orlov advises against them. */
export const splinePressures: Table<SplinePressure> = {
  source: `${shop}; SAE J499a, scope, for soft flanks sliding under load`,
  scope: 'steel on steel; soft flanks sliding under load in medium conditions only',
  rows: [
    {
      use: 'sliding under load',
      flanks: 'soft',
      conditions: 'medium',
      least: saeSplinePressure,
      most: saeSplinePressure,
      source: 'SAE J499a, scope: 1000 psi',
    },
    ...pressures('sliding under load', 'hardened', ['bad', 3, 10], ['medium', 5, 15], ['good', 10, 20]),
    ...pressures('sliding idle', 'soft', ['bad', 15, 20], ['medium', 20, 30], ['good', 25, 40]),
    ...pressures('sliding idle', 'hardened', ['bad', 20, 35], ['medium', 30, 60], ['good', 40, 70]),
    ...pressures('fixed', 'soft', ['bad', 35, 50], ['medium', 60, 100], ['good', 80, 120]),
    ...pressures('fixed', 'hardened', ['bad', 40, 70], ['medium', 100, 140], ['good', 120, 200]),
  ],
}

/** Pressure allowed on a spline's flanks, N/mm2; `undefined` for soft flanks sliding under load in bad or good conditions: no row. */
export const splinePressure = (
  use: SplineUse,
  flanks: SplinePressure['flanks'] = 'soft',
  conditions: SplineConditions = 'medium',
): SplinePressure | undefined =>
  splinePressures.rows.find((row) => row.use === use && row.flanks === flanks && row.conditions === conditions)

/** Share of its flanks on which a spline is taken to bear. */
export const splineShare: Factor = {
  name: 'share of the flanks that bear',
  value: 0.75,
  source: 'judgement, as for two keys',
}
