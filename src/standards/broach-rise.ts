import { inch } from './inch.ts'
import type { Table } from './table.ts'

type Range = readonly [least: number, most: number]

/** How the teeth of a broach are ground for a metal. mm, degrees. */
export interface BroachTeeth {
  readonly material: string
  /** Names of `workMaterials` that it stands for; judgement. */
  readonly works: readonly string[]
  /** What each roughing tooth stands above the one before. */
  readonly rise: Range
  /** The same of the finishing teeth. */
  readonly finishRise: number
  readonly faceAngle: Range
  readonly clearance: Range
  readonly finishClearance: Range
  readonly source: string
}

const handbook =
  "Machinery's Handbook, designing data for surface broaches: Pocket Companion p. 165 and an engineering reference page"
const cutShort = `${handbook}; the row is cut short on the page, its angles from the Pocket Companion alone`

/** Rises printed in thousandths of an inch, turned to mm here. */
const thousandths = (count: number): number => (count * inch) / 1000
const row = (
  material: string,
  works: readonly string[],
  rise: Range,
  finishRise: number,
  faceAngle: Range,
  clearance: Range,
  finishClearance: Range,
  source = handbook,
): BroachTeeth => ({
  material,
  works,
  rise: [thousandths(rise[0]), thousandths(rise[1])],
  finishRise: thousandths(finishRise),
  faceAngle,
  clearance,
  finishClearance,
  source,
})

/** Columns: metal, what it stands for, rise and finishing rise in thousandths of an inch, face angle, clearance, finishing clearance. */
export const broachTeeth: Table<BroachTeeth> = {
  source: handbook,
  scope: 'surface broaches of high-speed steel; a guided keyway broach takes less (see `keywayBroachRises`)',
  rows: [
    row('steel high tensile', ['alloy steel'], [1.5, 2], 0.5, [10, 12], [1.5, 3], [0.5, 1]),
    row(
      'steel medium tensile',
      ['mild steel', 'structural steel', 'medium carbon steel'],
      [2.5, 5],
      0.5,
      [14, 18],
      [1.5, 3],
      [0.5, 1],
    ),
    row('cast steel', [], [2.5, 5], 0.5, [10, 10], [1.5, 3], [0.5, 0.5]),
    row('malleable iron', ['ductile iron'], [2.5, 5], 0.5, [7, 7], [1.5, 3], [0.5, 0.5]),
    row('cast iron soft', ['grey iron'], [6, 10], 0.5, [10, 15], [1.5, 3], [0.5, 0.5]),
    row('cast iron hard', ['hard grey iron'], [3, 5], 0.5, [5, 5], [1.5, 3], [0.5, 0.5]),
    row('zinc die casting', [], [5, 10], 1, [12, 12], [5, 5], [2, 2]),
    row('cast bronze', ['bronze', 'bearing bronze'], [10, 25], 0.5, [8, 8], [0, 0], [0, 0]),
    row(
      'wrought aluminium',
      ['aluminium', 'soft aluminium', 'aluminium, heat-treated'],
      [5, 10],
      1,
      [15, 15],
      [3, 3],
      [1, 1],
    ),
    row('cast aluminium', [], [5, 10], 1, [12, 12], [3, 3], [1, 1], cutShort),
    row('magnesium die casting', [], [10, 15], 1, [20, 20], [3, 3], [1, 1], cutShort),
  ],
}

/** How a broach is ground for a metal of the table or of `workMaterials`; `undefined` for others (stainless steel, brass). */
export const broachTeethFor = (material: string): BroachTeeth | undefined =>
  broachTeeth.rows.find((each) => each.material === material || each.works.includes(material))

/** Rise of the teeth of keyway broaches, mm. */
export interface KeywayBroachRise {
  readonly works: readonly string[]
  readonly rise: Range
  readonly source: string
}

/** By the names of `workMaterials`. */
export const keywayBroachRises: Table<KeywayBroachRise> = {
  source:
    'from memory; within the 0.02 to 0.15 mm of production notes but for the upper ends of iron, bronze and aluminium',
  scope: 'keyway broaches in steel, iron, brass, bronze and aluminium; not stainless steel',
  rows: [
    {
      works: ['mild steel', 'structural steel', 'medium carbon steel', 'alloy steel'],
      rise: [0.05, 0.12],
      source: 'from memory',
    },
    {
      works: ['grey iron', 'hard grey iron', 'ductile iron'],
      rise: [0.08, 0.2],
      source: 'from memory; ductile iron as grey: judgement',
    },
    { works: ['brass', 'bronze', 'bearing bronze'], rise: [0.1, 0.2], source: 'from memory' },
    { works: ['aluminium', 'soft aluminium', 'aluminium, heat-treated'], rise: [0.1, 0.2], source: 'from memory' },
  ],
}

/** Rise that keyway broaches have for a work material, [least, most] mm; `undefined` where no row stands. */
export const keywayBroachRise = (work: string): Range | undefined =>
  keywayBroachRises.rows.find((each) => each.works.includes(work))?.rise
