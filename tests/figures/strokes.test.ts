import { describe, expect, it } from 'vitest'
import { onPaper } from '../../src/figures/figure.ts'
import { sectionFigure } from '../../src/figures/section.ts'
import { standingOf } from '../../src/figures/standing.ts'
import { stageOf } from '../../src/figures/stage.ts'
import { strokesOf } from '../../src/figures/strokes.ts'
import { specimen, specimenNames } from '../generators/designs.ts'
import { figuresOf } from './all.ts'

describe('a figure in black on paper', () => {
  it('every stroke is finite and stands on the figure', () => {
    for (const name of specimenNames)
      for (const figure of figuresOf(specimen(name), onPaper(108, 79))) {
        const room = 1.2 * figure.em
        for (const stroke of strokesOf(figure)) {
          const points =
            stroke.stroke === 'line'
              ? [stroke.from, stroke.to]
              : stroke.stroke === 'arc'
                ? [stroke.centre]
                : stroke.stroke === 'text'
                  ? [stroke.at]
                  : stroke.points
          const astray = points.filter(
            ([x, y]) =>
              !(Number.isFinite(x) && Number.isFinite(y)) ||
              (stroke.stroke !== 'arc' &&
                !(x > -room && x < figure.width + room && y > -room && y < figure.height + room)),
          )
          if (astray.length > 0) expect({ name, stroke, astray }).toEqual({ name, stroke, astray: [] })
          if (stroke.stroke === 'line' && stroke.dashes) {
            const length = Math.hypot(stroke.to[0] - stroke.from[0], stroke.to[1] - stroke.from[1])
            expect(stroke.dashes.reduce((sum, part) => sum + part, 0)).toBeCloseTo(length, 2)
          }
        }
      }
  })

  it('hub and bar are hatched opposite ways, and no hatch crosses open room', () => {
    const design = specimen('cider-mill-pulley')
    const target = onPaper(108, 79)
    const figure = sectionFigure(design, 'withdrawn', target)
    const { scale, origin } = stageOf(design, target)
    const standing = standingOf(design, 'withdrawn')
    if (!standing) throw new Error('no bar')
    const lines = strokesOf(figure).filter((stroke) => stroke.class === 'hatch')
    expect(lines.length).toBeGreaterThan(80)
    let [rising, falling] = [0, 0]
    for (const line of lines) {
      if (line.stroke !== 'line') throw new Error('a hatch that is no line')
      const [x, y] = [(line.from[0] + line.to[0]) / 2, (line.from[1] + line.to[1]) / 2]
      const [px, py] = [(x - origin[0]) / scale, (figure.height - y - origin[1]) / -scale]
      const inBore = Math.hypot(px, py) < design.section.boreRadius - 0.05
      const fromBar = Math.hypot(px - standing.axis[0], py - standing.axis[1])
      const inBar = fromBar < standing.bar.diameter.nominal / 2 + 0.05
      const inBit = px > standing.axis[0] && Math.abs(py - standing.axis[1]) < standing.bit.size / 2 + 0.05
      expect(!inBore || inBar || inBit).toBe(true)
      const slope = (line.to[1] - line.from[1]) / (line.to[0] - line.from[0])
      if (!inBore) {
        expect(slope).toBeCloseTo(1, 1)
        rising++
      } else if (Math.abs(py - standing.axis[1]) > standing.bit.size / 2 + 0.2) {
        expect(slope).toBeCloseTo(-1, 1)
        falling++
      }
    }
    expect(rising).toBeGreaterThan(20)
    expect(falling).toBeGreaterThan(8)
  })

  it('words are as long as they were measured, bold ones marked', () => {
    const figure = sectionFigure(specimen('winch-drum-gear'), 'floor', onPaper(108, 79))
    const words = strokesOf(figure).filter((stroke) => stroke.stroke === 'text')
    expect(words.map(({ text }) => text)).toContain('Ø0.875 H7')
    expect(words.some(({ bold }) => bold)).toBe(true)
    for (const { text, length } of words) {
      expect(text).toBe(text.trim())
      expect(length).toBeGreaterThan(0)
    }
  })
})
