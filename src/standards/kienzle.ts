import type { Table } from './table.ts'

/** Specific cutting force kc = kc11 · h^−exponent, N/mm2, h the chip thickness in mm. */
export interface KienzleRow {
  /** Number of the material group in VDI 3323. */
  readonly group: number
  readonly material: string
  /** Brinell hardness and tensile strength as printed: `125HB Rm420`. */
  readonly condition: string
  readonly kc11: number
  readonly exponent: number
  /** Rake at which the constants hold, degrees. */
  readonly referenceRake: number
}

const vdi = (group: number, material: string, condition: string, kc11: number, exponent: number): KienzleRow => ({
  group,
  material,
  condition,
  kc11,
  exponent,
  referenceRake: 0,
})

/**
 * The set that this tool calculates with. Good for chips of about 0.05 to 1.5 mm; below 0.03 mm the edge ploughs and the line reads low.
 * Never mixed with constants of other books: those hold at other rakes (6° for steel, 2° for iron).
 */
export const kienzleGroups: Table<KienzleRow> = {
  source:
    'VDI 3323 material groups as printed in a general turning catalogue, 2017; reference rake 0° from a public research note; 1 % per degree of rake from memory',
  scope: 'groups 1 to 28, chips of about 0.05 to 1.5 mm',
  rows: [
    vdi(1, 'unalloyed steel <0.25 %C annealed (mild steel)', '125HB Rm420', 1350, 0.21),
    vdi(2, 'unalloyed steel >=0.25 %C annealed', '190HB Rm650', 1500, 0.22),
    vdi(3, 'unalloyed steel <0.55 %C QT', '250HB Rm850', 1675, 0.24),
    vdi(4, 'unalloyed steel >=0.55 %C annealed', '220HB Rm750', 1700, 0.24),
    vdi(5, 'unalloyed steel >=0.55 %C QT', '300HB Rm1000', 1900, 0.24),
    vdi(6, 'low alloy steel annealed', '200HB Rm600', 1775, 0.24),
    vdi(7, 'low alloy steel QT', '275HB Rm930', 1675, 0.24),
    vdi(8, 'low alloy steel QT', '300HB Rm1000', 1725, 0.24),
    vdi(9, 'low alloy steel QT', '350HB Rm1200', 1800, 0.24),
    vdi(10, 'high alloy/tool steel annealed', '200HB Rm680', 2450, 0.23),
    vdi(11, 'high alloy/tool steel QT', '325HB Rm1100', 2500, 0.23),
    vdi(12, 'stainless ferritic/martensitic', '200HB Rm680', 1875, 0.21),
    vdi(13, 'stainless martensitic', '240HB Rm820', 1875, 0.21),
    vdi(14, 'stainless austenitic', '180HB Rm600', 2150, 0.2),
    vdi(15, 'ductile iron ferritic/pearlitic (GGG)', '180HB', 1150, 0.2),
    vdi(16, 'ductile iron pearlitic (GGG)', '260HB', 1350, 0.28),
    vdi(17, 'grey iron ferritic (GG)', '160HB', 1225, 0.25),
    vdi(18, 'grey iron pearlitic (GG)', '250HB', 1350, 0.28),
    vdi(19, 'malleable iron ferritic', '130HB', 1225, 0.25),
    vdi(20, 'malleable iron pearlitic', '230HB', 1420, 0.3),
    vdi(21, 'aluminium wrought, not cured', '60HB', 700, 0.25),
    vdi(22, 'aluminium wrought, cured', '100HB', 800, 0.25),
    vdi(23, 'aluminium cast <=12%Si not cured', '75HB', 700, 0.25),
    vdi(24, 'aluminium cast <=12%Si cured', '90HB', 700, 0.25),
    vdi(25, 'aluminium cast >12%Si', '130HB', 750, 0.25),
    vdi(26, 'copper alloy >1%Pb free cutting', '110HB', 700, 0.27),
    vdi(27, 'brass', '90HB', 700, 0.27),
    vdi(28, 'electrolytic copper / bronze (lead-free) group', '100HB', 700, 0.27),
  ],
}

/** The constants of a VDI 3323 group, or `undefined`. */
export const kienzleGroup = (group: number): KienzleRow | undefined =>
  kienzleGroups.rows.find((row) => row.group === group)
