import { describe, expect, it } from 'vitest'
import { gap, touchOff, wallsOf } from '../oracles/bore.ts'
import { designed } from './designed.ts'

/** A taper key's keyway: the hub is tilted so that its floor lies along the stroke, and its bore leans against the bar. */
const job = (rate: '1:96' | '1:100', bar: object) => ({
  units: 'mm',
  bore: { diameter: 25, tolerance: [0, 0.021], length: 40 },
  hub: { outside: 60 },
  feature: { keyway: { width: [8, 8.036], across: [28.3, 28.5], taper: rate } },
  tooling: { bar },
})

const forms = [
  ['a bar with a bit', {}],
  ['a bar of one piece', { form: 'one piece' }],
] as const

describe.each(forms)('%s in a hub tilted for a taper key', (_name, asked) => {
  const { bar, groundBar, section, spec } = designed(job('1:100', asked))
  const made = bar ?? groundBar
  const clearance = spec.tooling.bar?.clearance
  if (!made || !clearance) throw new Error('no bar')
  const rho = made.diameter.nominal / 2

  /** Least gap behind the bar over the hub's length: slice by slice, the bore’s axis leans towards the nose by 1 in 100. */
  const behind = (x: number): number =>
    Math.min(
      ...Array.from({ length: 41 }, (_, z) =>
        gap(wallsOf(section.boreRadius), [x - made.projection - rho - z / 100, made.lanes[0]?.offset ?? 0], 2 * rho),
      ),
    )

  it('has behind it what is said, at the shallow end too', () => {
    const touch = Math.min(
      ...made.lanes.map(({ offset }) =>
        touchOff(
          section.boreRadius,
          made.lanes.length === 1 ? section.width : made.noseWidth,
          made.cornerRadius,
          offset,
        ),
      ),
    )
    expect(made.gaps.back).toBeCloseTo(behind(touch), 4)
    expect(behind(touch - clearance.withdrawn)).toBeGreaterThan(clearance.back)
  })

  it('keeps the clearance at the worst corner, with the projection set as far out as it may come', () => {
    const least = (section.bore.lower / 2) * 2
    const radius = least / 2
    for (const { offset } of made.lanes) {
      const width = made.lanes.length === 1 ? section.widthLimits.upper : made.noseWidth
      const touch = touchOff(radius, width, made.cornerRadius, offset)
      const axis = touch - clearance.withdrawn - made.projection - made.setting - made.diameter.upper / 2 - 0.4
      expect(gap(wallsOf(radius), [axis, offset], made.diameter.upper)).toBeGreaterThan(clearance.back - 1e-6)
    }
  })
})

describe('the go plug of a tapered keyway', () => {
  it('has a straight key, which must pass the shallow end: 1:100 over 40 takes 0.4 (derived)', () => {
    const { plug, section } = designed(job('1:100', {}))
    expect(section.key?.taper?.acrossShallow.lower).toBeCloseTo(27.9, 9)
    expect(plug.across).toBeCloseTo(27.8, 9)
    const straight = designed({ ...job('1:100', {}), feature: { keyway: { width: [8, 8.036], across: [28.3, 28.5] } } })
    expect(straight.plug.across).toBeCloseTo(28.2, 9)
  })
})
