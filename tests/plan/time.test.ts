import { describe, expect, it } from 'vitest'
import { secondsPerStroke } from '../../src/plan/time.ts'
import { withBar } from '../dimensions/designed.ts'

const planFor = (at: readonly number[], length = 25) =>
  withBar({
    units: 'mm',
    bore: { diameter: 30, length },
    hub: { outside: 80 },
    feature: { keyway: { standard: 'iso-773', at } },
    tooling: { bar: { infeed: 0.02 } },
  }).plan

describe('time', () => {
  it('4.5 s for a stroke of 30 mm, some more for a long one: common practice, no source', () => {
    expect(secondsPerStroke(30)).toBeCloseTo(4.5, 9)
    expect(secondsPerStroke(60)).toBeGreaterThan(secondsPerStroke(30))
  })

  it('is the sum of its parts, and strokes are what the cuts have', () => {
    const { time, cuts, stroke } = planFor([0])
    const { strokes, springPasses, measuring, stoning, indexing, whole } = time
    expect(whole).toBeCloseTo(strokes + springPasses + measuring + stoning + indexing, 9)
    const passes = cuts.reduce((sum, cut) => sum + cut.passes.length, 0)
    expect(strokes).toBeCloseTo((passes * secondsPerStroke(stroke.length)) / 60, 9)
    expect(indexing).toBe(0)
    // Three minutes a gate, six to stone the edge for the last of it.
    const gates = cuts.flatMap((cut) => cut.gates)
    expect(measuring).toBe(3 * gates.length)
    expect(gates.filter(({ kind }) => kind === 'edge')).toHaveLength(1)
    expect(stoning).toBe(6)
    expect(stroke.length).toBeCloseTo(stroke.before + 25 + stroke.past, 9)
  })

  it('two keyways take twice the strokes, and turning on', () => {
    const [one, two] = [planFor([0]).time, planFor([0, 90]).time]
    expect(two.strokes).toBeCloseTo(2 * one.strokes, 9)
    expect(two.stoning).toBe(one.stoning)
    // Two minutes to turn the work on, to each slot once: a keyway is cut down to its floor before the next.
    expect(two.indexing).toBe(4)
  })
})
