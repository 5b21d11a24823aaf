import { describe, expect, it } from 'vitest'
import { dividingRatios, holeCircles, usualDividingRatio, usualHoleCircles } from '../../src/standards/dividing.ts'

/** Circles of a set on which the crank's part turn for so many divisions comes out whole, with the holes: `12/18`. */
const exactly = (divisions: number, circles: readonly number[]): readonly string[] =>
  circles
    .filter((circle) => (usualDividingRatio * circle) % divisions === 0)
    .map((circle) => `${((usualDividingRatio % divisions) * circle) / divisions}/${circle}`)

describe('dividing heads', () => {
  it('circles ascend, each once, and the first set is taken where none is named', () => {
    for (const { circles } of holeCircles.rows) expect(circles).toEqual([...new Set(circles)].toSorted((a, b) => a - b))
    expect(usualHoleCircles).toBe(holeCircles.rows[0]?.circles)
    expect(holeCircles.rows.map(({ circles }) => circles.length)).toEqual([18, 22])
    expect(dividingRatios.rows[0]?.ratio).toBe(usualDividingRatio)
  })

  // A US Army milling course (6, 42) and indexing practice sheets (15); the others worked by hand.
  it.each([
    [6, '12/18'],
    [6, '26/39'],
    [42, '20/21'],
    [15, '18/27'],
    [7, '15/21'],
    [7, '35/49'],
    [13, '3/39'],
    [16, '8/16'],
    [11, '21/33'],
  ])('%i divisions: %s of a turn beside whole turns', (divisions, holes) => {
    expect(exactly(divisions, usualHoleCircles)).toContain(holes)
  })

  it('the usual plates divide into every number to 50, the other set to 60; neither into 127', () => {
    const fails = (circles: readonly number[]): number | undefined =>
      Array.from({ length: 99 }, (_, n) => n + 2).find(
        (divisions) => usualDividingRatio % divisions !== 0 && exactly(divisions, circles).length === 0,
      )
    // Plates of the common one-plate and three-plate sets are sold as dividing into all numbers to 50, the one-plate set to 60: from memory.
    expect(holeCircles.rows.map(({ circles }) => fails(circles))).toEqual([51, 61])
    for (const { circles } of holeCircles.rows) expect(exactly(127, circles)).toEqual([])
  })

  it('a turn of the crank is a whole number of degrees or of half ones', () => {
    for (const { ratio } of dividingRatios.rows) expect(720 % ratio).toBe(0)
  })
})
