import type { Table } from './table.ts'

/** Stiffness of a metal, N/mm2. */
export interface Moduli {
  readonly material: string
  readonly elastic: number
  /** In shear; absent where no source gives it. */
  readonly shear?: number
  readonly source: string
}

const shigley = 'from memory (Shigley Table A-5)'
const row = (material: string, elastic: number, shear: number, source = shigley): Required<Moduli> => ({
  material,
  elastic: elastic * 1000,
  shear: shear * 1000,
  source,
})

/** What bars, bits' shanks and broaches are made of. */
export const steelModuli = row('carbon steel', 207, 79.3)

/** Columns: metal, modulus of elasticity, modulus in shear, both in thousands of N/mm2. */
export const moduli: Table<Moduli> = {
  source: shigley,
  scope: 'at room temperature; irons at low stress',
  rows: [
    steelModuli,
    row('alloy steel', 207, 79.3),
    row('stainless steel', 190, 73.1),
    row('high-speed steel', 207, 80, 'from memory; 207 to 230 are quoted'),
    { material: 'carbide', elastic: 580_000, source: 'from memory; 600 nominal' },
    row('grey iron', 100, 41.4),
    row('ductile iron', 169, 66, 'from memory'),
    row('brass', 106, 40.1),
    row('bronze', 111, 41.4),
    row('aluminium', 71.7, 26.9),
  ],
}

/** The moduli of a metal of the table, or `undefined`. */
export const moduliOf = (material: string): Moduli | undefined => moduli.rows.find((each) => each.material === material)
