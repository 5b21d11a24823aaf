import type { Table } from './table.ts'

/** A set of plates for a dividing head: how many holes each circle has, ascending. */
export interface HoleCircles {
  readonly name: string
  readonly circles: readonly number[]
  readonly source: string
}

/** The two sets that are met most; a shop gives its own where it has another. */
export const holeCircles: Table<HoleCircles> = {
  source: 'plate lists of a US Army milling course and of another text',
  scope: 'plain indexing with one plate at a time',
  rows: [
    {
      name: 'three plates, 15 to 49',
      circles: [15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49],
      source: 'US Army milling course; practice sheets of plain indexing',
    },
    {
      name: 'one plate with two sides, 24 to 66',
      circles: [24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43, 46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66],
      source: 'a published plate list; two sides of one plate from memory',
    },
  ],
}

/** Circles that are taken where a shop names none. */
export const usualHoleCircles: readonly number[] = holeCircles.rows[0]?.circles ?? []

/** Turns of the crank for one turn of the spindle. */
export interface DividingRatio {
  readonly ratio: number
  readonly found: string
  readonly source: string
}

/** Ratios met, the usual one first. */
export const dividingRatios: Table<DividingRatio> = {
  source: 'US Army milling course for 40; the others common practice, no source',
  scope: 'worm-driven heads and rotary tables',
  rows: [
    { ratio: 40, found: 'dividing heads', source: 'US Army milling course' },
    { ratio: 60, found: 'small dividing heads', source: 'common practice, no source' },
    { ratio: 72, found: 'rotary tables, 5° a turn', source: 'common practice, no source' },
    { ratio: 90, found: 'rotary tables, 4° a turn', source: 'common practice, no source' },
    { ratio: 120, found: 'rotary tables, 3° a turn', source: 'common practice, no source' },
  ],
}

/** The ratio that is taken where a shop names none. */
export const usualDividingRatio = 40
