import { describe, expect, it, test } from 'vitest'
import { type Corners, largestStagedBar, stagesFor } from '../../src/dimensions/stages.ts'
import { bitLengthWindow, projectionLeast, projectionMost, type Setting } from '../../src/dimensions/window.ts'

/** One lane at exact sizes: every corner of the limits is the same. */
const exact = (bore: number, width: number, across: number, clearance: number, chipRoom = 0): Corners => {
  const setting: Setting = {
    radius: bore / 2,
    floor: across - bore / 2,
    noseWidth: width,
    cornerRadius: 0,
    offset: 0,
    clearances: { back: clearance, front: clearance, withdrawn: clearance },
    chipRoom,
  }
  return { back: [setting], front: [setting], middle: [setting] }
}

const endless = { setting: 1e-7, fine: 1e-7 }
const workshop = { setting: 0.1, fine: 0.01 }

describe('a bar in stages', () => {
  it('10 mm, 4 × 4, bar 8: two stages', () => {
    // Worked scenario, derived: p 1.382576 reaches 6.386045, then p from 1.796530 (to 3.186045) reaches 6.8.
    const of = exact(10, 4, 11.8, 0.1)
    const stages = stagesFor(of, 8, 0, endless, 6) ?? []
    expect(stages).toHaveLength(2)
    const [first, second] = stages
    expect(first?.projection).toBeCloseTo(1.382576, 5)
    expect(first?.projectionMax).toBeCloseTo(1.382576, 6)
    expect(first?.to).toBeCloseTo(6.386045, 5)
    expect(second?.from).toBe(first?.to)
    expect(second?.projectionMin).toBeCloseTo(1.79653, 5)
    expect(second?.projectionMax).toBeCloseTo(3.186045, 5)
    expect(second?.projection).toBeCloseTo(1.79653, 5)
    expect(second?.to).toBeCloseTo(6.8, 9)
    // One bit for both, 3 mm, M2.5: 7.146530 to 8.982576; a fortieth of clearance under the surface is .1 here.
    expect(bitLengthWindow(1.79653, 8, 3, 1.2, 0.1).least).toBeCloseTo(7.14653, 5)
    expect(bitLengthWindow(1.382576, 8, 3, 1.2, 0.1).most).toBeCloseTo(8.982576, 5)
  })

  it('10 mm, 4 × 4, bar 8, set within 0.03: by tenths where that costs no more than a tenth of a stage', () => {
    // As above, p reaches 5.003469 + p from touch at 4.582576: 1.3 less 0.03 is deeper by 1.69, 1.35 by 1.74.
    const [first] = stagesFor(exact(10, 4, 11.8, 0.1), 8, 0.03, workshop, 6) ?? []
    expect(first?.projection).toBe(1.3)
    expect((first?.to ?? NaN) - (first?.from ?? NaN)).toBeCloseTo(1.69, 9)
    // By whole millimetres it would cost more: 1 goes 1.39 deep, which is less than 0.9 of 1.74.
    const [coarse] = stagesFor(exact(10, 4, 11.8, 0.1), 8, 0.03, { setting: 1, fine: 0.01 }, 6) ?? []
    expect(coarse?.projection).toBe(1.35)
  })

  it('10 mm, 4 × 4, bar 7.6: one is enough', () => {
    // Worked scenario, derived: 1.765558 to 1.782576.
    const stages = stagesFor(exact(10, 4, 11.8, 0.1), 7.6, 0, endless, 6) ?? []
    expect(stages).toHaveLength(1)
    expect(stages[0]?.projectionMin).toBeCloseTo(1.765558, 6)
    expect(stages[0]?.projectionMax).toBeCloseTo(1.782576, 6)
  })

  test.each([
    // Worked scenario, derived, no chip room: bore, key, across, clearance, largest staged bar.
    [25, 8, 28.3, 0.25, 23.592719],
    [10, 4, 11.8, 0.1, 9.282576],
  ])('bore %d, key %d, across %d: no bar over the largest', (bore, key, across, c, largest) => {
    const of = exact(bore, key, across, c)
    expect(largestStagedBar(of.back, of.front)).toBeCloseTo(largest, 6)
    expect(stagesFor(of, largest - 0.001, 0, endless, 60)).toBeDefined()
    expect(stagesFor(of, largest + 0.001, 0, endless, 60)).toBeUndefined()
  })

  it('a bar that keeps far from the metal in front is bound by the mouth: 12.5 + 11.842719 − 1 + 16/25.342719', () => {
    const of = exact(25, 8, 28.3, 0)
    const [setting] = of.front
    if (!setting) throw new Error('no lane')
    // A nose that is all corner touches at 12.5: by the first stage alone 24 would pass.
    const lane = { ...setting, cornerRadius: 4, clearances: { back: 0, front: 1, withdrawn: 0 } }
    expect(largestStagedBar([lane], [lane])).toBeCloseTo(23.974067, 5)
  })

  it('each stage keeps its setting tolerance inside its window, in round figures, and deepens the slot', () => {
    let staged = 0
    for (const [bore, key, across] of [
      [6, 2, 7],
      [10, 4, 11.8],
      [20, 6, 22.8],
      [25, 8, 28.3],
      [50, 14, 53.8],
      [100, 28, 106.4],
    ] as const)
      for (const c of [0.1, 0.25])
        for (let d = 0.4 * bore; d < bore; d += 0.02 * bore) {
          const of = exact(bore, key, across, c, 0.3)
          const stages = stagesFor(of, d, 0.03, workshop, 12)
          if (!stages) continue
          if (stages.length > 1) staged++
          let at = of.middle[0] ? stages[0]?.from : undefined
          for (const [n, stage] of stages.entries()) {
            expect(stage.projection - 0.03).toBeGreaterThanOrEqual(stage.projectionMin - 1e-9)
            expect(stage.projection + 0.03).toBeLessThanOrEqual(stage.projectionMax + 1e-9)
            expect(stage.projectionMin).toBeGreaterThanOrEqual(0.3)
            expect(stage.from).toBe(at)
            expect(stage.to).toBeGreaterThan(stage.from)
            if (n > 0) expect(stage.projection).toBeGreaterThan(stages[n - 1]?.projection ?? Infinity)
            expect(Math.abs(stage.projection * 100 - Math.round(stage.projection * 100))).toBeLessThan(1e-6)
            at = stage.to
          }
          expect(at).toBe(across - bore / 2)
        }
    expect(staged).toBeGreaterThan(40)
  })

  it('is not made where one setting does, and not where the count is held to fewer', () => {
    const of = exact(25, 8, 28.3, 0.25)
    const [front, back] = [of.front[0] as Setting, of.back[0] as Setting]
    for (let d = 10; d < 23.5; d += 0.1) {
      const once = projectionLeast(front, d) + 0.1 <= projectionMost(back, d) + 1e-9
      const stages = stagesFor(of, d, 0.05, workshop, 12)
      if (once) expect(stages).toHaveLength(1)
      else if (stages) {
        expect(stages.length).toBeGreaterThan(1)
        expect(stagesFor(of, d, 0.05, workshop, stages.length - 1)).toBeUndefined()
      }
    }
  })

  it('with lanes: all of them start and end at one floor', () => {
    const lane = (offset: number): Setting => ({
      ...(exact(10, 4, 11.8, 0.1).front[0] as Setting),
      noseWidth: 2.4,
      offset,
    })
    const lanes = [lane(-0.8), lane(0.8)]
    const of: Corners = { back: lanes, front: lanes, middle: lanes }
    const largest = largestStagedBar(lanes, lanes)
    const stages = stagesFor(of, 7.8, 0, endless, 9) ?? []
    expect(stages.length).toBeGreaterThan(1)
    expect(stagesFor(of, largest - 0.02, 0, endless, 99)).toBeDefined()
    expect(stagesFor(of, largest + 0.001, 0, endless, 99)).toBeUndefined()
    for (const [n, stage] of stages.entries())
      for (const each of lanes)
        expect(stage.projection).toBeLessThanOrEqual(projectionMost(each, 7.8, n === 0 ? -Infinity : stage.from) + 1e-6)
  })
})
