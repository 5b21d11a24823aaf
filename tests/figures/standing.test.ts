import { describe, expect, it } from 'vitest'
import type { Design } from '../../src/design.ts'
import { gatesOf, zeroOf } from '../../src/figures/cut.ts'
import { standingOf } from '../../src/figures/standing.ts'
import { everyDesign, specimen } from '../generators/designs.ts'

const standings = (design: Design, infeedOf: (touch: number) => number) =>
  (design.bar?.lanes ?? []).flatMap(({ touchOff }, lane) => {
    const standing = standingOf(design, { infeed: infeedOf(touchOff) - zeroOf(design), lane, lag: 0 })
    return standing ? [standing] : []
  })

describe('where the bar stands', () => {
  it('behind: at first touch the least gap over the lanes is that of the bar’s own closed form', () => {
    for (const design of everyDesign) {
      const { bar } = design
      if (!bar || bar.stages.length > 1) continue
      const touch = standings(design, (x) => x)
      if (touch.some(({ axis }) => axis[0] > 0)) continue
      const least = Math.min(...touch.map(({ back }) => back.length))
      expect(least).toBeCloseTo(bar.gaps.back, 9)
    }
  })

  it('in front: at the floor the least gap over the lanes is that of the bar’s own closed form', () => {
    for (const design of everyDesign) {
      const { bar, section } = design
      if (!bar || bar.stages.length > 1 || section.kind !== 'keyway') continue
      const floor = standings(design, () => section.floor)
      const fronts = floor.flatMap(({ front }) => front?.length ?? [])
      if (fronts.length < floor.length) continue
      // The closed form takes the slot's own width where one nose fills it; the picture takes the nose as it is ground.
      const width = Math.abs(section.width - bar.noseWidth)
      expect(Math.abs(Math.min(...fronts) - bar.gaps.front)).toBeLessThan(1e-6 + (bar.lanes.length === 1 ? width : 0))
    }
  })

  it('a gap’s ends are as far apart as it says, on the bar and on the metal', () => {
    for (const design of everyDesign) {
      const standing = standingOf(design, 'withdrawn')
      if (!standing || standing.back.length < 0) continue
      const [[ax, ay], [bx, by]] = standing.back.span
      const rho = standing.bar.diameter.nominal / 2
      expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo(standing.back.length, 9)
      expect(Math.hypot(ax - standing.axis[0], ay - standing.axis[1])).toBeCloseTo(rho, 9)
      expect(Math.hypot(bx, by)).toBeCloseTo(design.section.boreRadius, 9)
    }
  })

  it('the nose stands behind the dial by the lag, and nowhere at rest', () => {
    const design = specimen('cider-mill-pulley')
    const at = standingOf(design, { infeed: 2 })
    const gate = gatesOf(design).find(({ infeed }) => Math.abs(infeed - 2) < 1e-9)
    expect((at?.dial ?? 0) - (at?.nose ?? 0)).toBeCloseTo((gate?.byDial ?? 0) - (gate?.expected ?? Number.NaN), 6)
    for (const rest of ['withdrawn', 'floor'] as const) {
      const standing = standingOf(design, rest)
      expect(standing?.nose).toBe(standing?.dial)
    }
  })

  it('a press job has no bar to stand', () => {
    const { bar: _, ...rest } = specimen('winch-drum-gear')
    expect(standingOf(rest, 'floor')).toBeUndefined()
  })
})
