import { describe, expect, it } from 'vitest'
import { gatesOf, passesOf } from '../../src/figures/cut.ts'
import { onPage, onPaper, scaleFor } from '../../src/figures/figure.ts'
import { fourLengths } from '../../src/figures/lengths.ts'
import { lengthwise } from '../../src/figures/lengthwise.ts'
import { longInfeed } from '../../src/figures/long-infeed.ts'
import { marginBar, marginOf } from '../../src/figures/margin-bar.ts'
import { plainSection } from '../../src/figures/plain-section.ts'
import { pressSection } from '../../src/figures/press-section.ts'
import { sectionFigure } from '../../src/figures/section.ts'
import { boundsOf } from '../../src/solid/outline.ts'
import { designed, everyDesign, specimen } from '../generators/designs.ts'

describe('the figures', () => {
  it('four lengths start in four places and end at one floor, on the section’s axis', () => {
    for (const design of everyDesign.slice(0, 20)) {
      const figure = fourLengths(design, onPage(676))
      const ends = figure.sizes.map(({ span }) => span?.[1][0] ?? Number.NaN)
      for (const end of ends) expect(end).toBeCloseTo(ends[0] ?? Number.NaN, 9)
      // A sharp nose touches at the mouth's corners: then infeed and side depth are one.
      if (design.section.kind === 'keyway' && design.section.cornerRadius > 0)
        expect(new Set(figure.sizes.map(({ mm }) => mm.toFixed(9))).size).toBe(4)
      expect(figure.scale).toBe(sectionFigure(design, 'floor', onPage(676)).scale)
    }
  })

  it('the long infeed puts the dial’s cursor at its infeed and the slot’s behind it by the lag', () => {
    const design = specimen('cider-mill-pulley')
    const figure = longInfeed(design, onPage(676), { infeed: 2 })
    const of = (name: string) => figure.sizes.find((size) => size.of === name)
    expect(of('cut.dial')?.mm).toBe(2)
    const gate = gatesOf(design).find(({ infeed }) => Math.abs(infeed - 2) < 1e-9)
    expect(of('cut.lag')?.mm).toBeCloseTo((gate?.byDial ?? 0) - (gate?.expected ?? Number.NaN), 6)
    expect(of('cut.across')?.mm).toBeCloseTo(gate?.expected ?? Number.NaN, 6)
    const gates = figure.sizes.filter(({ name }) => name === 'gate')
    expect(gates).toHaveLength(gatesOf(design).length)
  })

  it('the go box spans the limits of across', () => {
    const design = specimen('cider-mill-pulley')
    const figure = longInfeed(design, onPage(676))
    const go = figure.marks.find((mark) => mark.mark === 'area' && mark.body === 'go')
    if (go?.mark !== 'area' || !go.outlines[0]) throw new Error('no go')
    const { min, max } = boundsOf(go.outlines[0])
    const { lower, upper } = design.section.acrossLimits
    expect((max[0] - min[0]) / (figure.scale ?? 0)).toBeCloseTo(upper - lower, 6)
  })

  it('the steps of the force are as many as there are passes', () => {
    const design = specimen('winch-drum-gear')
    const figure = longInfeed(design, onPage(676))
    const steps = figure.marks.find((mark) => mark.mark === 'area' && mark.body === 'force')
    if (steps?.mark !== 'area') throw new Error('no force')
    expect(steps.outlines[0]).toHaveLength(2 * passesOf(design).length + 2)
  })

  it('bodies that share space are filled, ringed, and their size is said', () => {
    const design = specimen('press-slide')
    const figure = sectionFigure(design, 'withdrawn', onPage(676))
    const by = -(design.bar?.gaps.back ?? 0) + (design.asked?.clearance.withdrawn ?? 0)
    const broken = figure.sizes.find(({ of }) => of === 'broken')
    expect(broken?.mm).toBeCloseTo(by, 9)
    expect(figure.marks.some((mark) => mark.mark === 'area' && mark.body === 'broken')).toBe(true)
    expect(figure.marks.some((mark) => mark.mark === 'line' && mark.line === 'ring')).toBe(true)
    expect(figure.says).toContain('in the metal by')
  })

  it('a sound job has nothing broken in its pictures', () => {
    for (const at of ['withdrawn', 'floor', { infeed: 1 }] as const) {
      const figure = sectionFigure(specimen('cider-mill-pulley'), at, onPage(676))
      expect(figure.marks.filter((mark) => mark.mark === 'area' && mark.body === 'broken')).toEqual([])
    }
  })

  it('a bar that runs into what stands behind the hub is shown in it', () => {
    const job = (behind: number) =>
      designed({
        name: 'trial',
        units: 'mm',
        bore: { diameter: 24, length: 30 },
        hub: { outside: 60, material: 'mild steel' },
        feature: { keyway: { standard: 'iso-773' } },
        tooling: { bar: { behind } },
      })
    const broken = (behind: number) => lengthwise(job(behind), onPage(676))?.sizes.find(({ of }) => of === 'broken')
    expect(broken(3)?.mm).toBeCloseTo((job(3).bar?.tipBeyond ?? 0) - 3, 9)
    expect(broken(40)).toBeUndefined()
  })

  it('over bushing back, shims and last tooth is the across after the pass', () => {
    const design = specimen('winch-drum-gear')
    const figure = pressSection(design, onPage(560))
    expect(figure?.sizes.find(({ of }) => of === 'bushing.over')?.mm).toBe(design.bushing?.passes.at(-1)?.over)
    expect(pressSection(specimen('clock-barrel'), onPage(560))).toBeUndefined()
  })

  it('numbers are in the job’s units', () => {
    expect(sectionFigure(specimen('winch-drum-gear'), 'floor', onPage(676)).says).toMatch(/bore 0\.875 in/)
    expect(sectionFigure(specimen('cider-mill-pulley'), 'floor', onPage(676)).says).toMatch(/bore 24\.01 mm/)
  })

  it('paper has round scales: 3 : 1 for a bore of 24 in 108 × 79', () => {
    expect(sectionFigure(specimen('cider-mill-pulley'), 'floor', onPaper(108, 79)).scale).toBe(3)
    expect(scaleFor(onPaper(100), 0.9, 1)).toBe(0.5)
  })

  it('a margin stands at its limit: at most at 66 %, at least at 34 %', () => {
    const limit = (margin: Parameters<typeof marginBar>[0]) =>
      marginBar(margin, onPage(300)).marks.flatMap((mark) =>
        mark.mark === 'line' && mark.line === 'limit' ? [mark.path[0]?.at[0]] : [],
      )
    expect(limit({ verdict: 'pass', says: '', measured: 1, most: 2 })).toEqual([198])
    expect(limit({ verdict: 'pass', says: '', measured: 3, least: 2 })).toEqual([expect.closeTo(102, 9)])
    expect(limit({ verdict: 'fail', says: '', measured: 1.6, least: 1.8, most: 1.38 })).toEqual([
      expect.closeTo(180, 9),
      expect.closeTo(120, 9),
    ])
    for (const finding of specimen('cider-mill-pulley').findings) {
      const { measured, most, least } = marginOf(finding)
      if (measured === undefined || finding.margin === undefined || Math.abs(finding.margin) < 1e-9) continue
      const room = most === undefined ? measured - (least ?? Number.NaN) : most - measured
      expect(room).toBeCloseTo(finding.margin, 9)
    }
  })

  it('the section in plain characters holds hub, bar, bit and what is still to cut, to scale', () => {
    const design = specimen('winch-drum-gear')
    const lines = plainSection(design, 72, { infeed: 1, lag: 0 })
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(72)
      expect(line).toMatch(/^[ -~]*$/)
    }
    const drawn = lines.filter((line) => /^[/ .o#]+$/.test(line))
    const count = (letter: string) => drawn.join('').split(letter).length - 1
    const { section, bar } = design
    const margin = 0.22 * section.boreRadius
    const cell = (section.boreRadius + section.floor + 2 * margin) / 61
    expect((count('o') + count('#')) * 2 * cell ** 2).toBeGreaterThan((Math.PI * (bar?.diameter.nominal ?? 0) ** 2) / 4)
    expect(count('.')).toBeGreaterThan(0)
    expect(plainSection(design, 72, 'floor').join('')).not.toMatch(/\/\.|\.\//)
  })
})
