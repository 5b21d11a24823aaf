import { inch, poundForce } from './inch.ts'
import type { Table } from './table.ts'

/** Pressure on the teeth of a broach: force over the cross section of the chip. */
export interface BroachPressure {
  readonly material: string
  /** Names of `workMaterials` that it stands for; judgement. */
  readonly works: readonly string[]
  /** Chip of one tooth in inches, ascending, with short tons per square inch. */
  readonly points: readonly (readonly [chipInch: number, shortTons: number])[]
  readonly source: string
}

const handbook =
  "from memory (Machinery's Handbook, broaching pressure); against the VDI 3323 cutting force of the same chip steels lie within 15 %, grey irons 23 to 39 % lower"
const row = (
  material: string,
  works: readonly string[],
  ...points: readonly (readonly [chipInch: number, shortTons: number])[]
): BroachPressure => ({ material, works, points, source: handbook })

/** Columns: metal, what it stands for, then chip in inches with short tons per square inch. To hold worked forces against, not to work with. */
export const broachPressures: Table<BroachPressure> = {
  source: handbook,
  scope: 'between the printed chips of each metal; side rake and wear not told apart',
  rows: [
    row('steel high tensile', ['alloy steel'], [0.001, 312], [0.002, 250]),
    row('steel medium tensile', ['mild steel', 'medium carbon steel'], [0.001, 243], [0.002, 185], [0.004, 158]),
    row('cast steel', [], [0.002, 158], [0.004, 128]),
    row('malleable iron', ['ductile iron'], [0.002, 128], [0.004, 108]),
    row('cast iron', ['grey iron', 'hard grey iron'], [0.002, 143], [0.004, 115], [0.01, 115]),
    row('cast brass', [], [0.004, 50], [0.01, 50]),
    row('brass hot pressed', ['brass'], [0.004, 85], [0.01, 85]),
    row('zinc die casting', [], [0.004, 70], [0.01, 70]),
    row('cast bronze', ['bronze'], [0.01, 35], [0.024, 35]),
    row('wrought aluminium', ['aluminium', 'aluminium, heat-treated'], [0.004, 70], [0.01, 70]),
    row('cast aluminium', [], [0.004, 85], [0.01, 85]),
    row('magnesium alloy', [], [0.01, 35], [0.024, 35]),
  ],
}

/** N/mm2 in one short ton (2000 lbf) per square inch. */
const shortTon = (2000 * poundForce) / inch ** 2

/**
 * Broaching pressure, N/mm2, for a metal of this table or of `workMaterials` and a chip of `chip` mm on each tooth. Between printed chips
 * a straight line in logarithms, as cutting force goes; `undefined` beyond them and for metals that the table has not.
 */
export const broachPressure = (material: string, chip: number): number | undefined => {
  const points = broachPressures.rows.find(
    (each) => each.material === material || each.works.includes(material),
  )?.points
  const at = chip / inch
  for (const [n, [thick, atThick]] of (points ?? []).entries()) {
    if (Math.abs(at - thick) < 1e-9) return atThick * shortTon
    const before = points?.[n - 1]
    if (!before || !(at >= before[0] && at <= thick)) continue
    const [thin, atThin] = before
    return atThin * (atThick / atThin) ** (Math.log(at / thin) / Math.log(thick / thin)) * shortTon
  }
  return undefined
}
