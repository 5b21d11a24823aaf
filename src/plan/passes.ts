import type { Basis } from '../dimensions/basis.ts'
import { infeedPerPass } from '../dimensions/settings.ts'
import type { CutterBar, Plan, Section } from '../dimensions/types.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'

/** Passes for an infeed, a whole count up; a thousandth of a pass is none. */
export const passesFor = (infeed: number, perPass: number): number => Math.max(0, Math.ceil(infeed / perPass - 1e-3))

/** Forward, back and the dial, in seconds. Source: judgement. */
const secondsPerPass = 4.5

/**
 * Where to stop and measure: at the quarters of the first lane's infeed, after whole passes, with the across that the dial promises there.
 * The slot stands behind it by the lag.
 */
const checksOf = (section: Section, touchOff: number, infeed: number, perPass: number): Plan['checks'] =>
  [0.25, 0.5, 0.75, 1].map((part) => {
    const after = part === 1 ? passesFor(infeed, perPass) : Math.round((part * infeed) / perPass)
    return { after, across: section.boreRadius + touchOff + Math.min(after * perPass, infeed) }
  })

/** Why each figure of the plan is what it is. */
export const planBasis: Basis<Plan> = {
  infeedPerPass: 'as given; else the usual for the material, or the most that bar and bit bear',
  passes: 'infeed over what is taken in a pass, of every lane, rounded up; no spring passes in it',
  keyways: 'the angles in the spec',
  minutes: '4.5 s a stroke, judgement; measuring and stoning not counted',
  lanes: 'see bar.lanes: all go to one floor, none is set to nought again',
  checks: 'the quarters of the first lane, after whole passes',
  dial: 'to the last whole mark before the floor; the rest is found by measuring',
}

/** Lanes, passes of each keyway and what the dial reads at the end; no lag and no spring passes in it. */
export const planOf = (spec: Spec, bar: BarSpec, cutter: CutterBar, section: Section): Plan => {
  const perPass = infeedPerPass(spec, bar)
  const lanes = cutter.lanes.map(({ offset, touchOff, infeed }) => ({
    offset,
    touchOff,
    infeed,
    passes: passesFor(infeed, perPass),
  }))
  const deepest = Math.max(...lanes.map((lane) => lane.infeed))
  const whole = bar.dial.reads === 'diameter' ? 2 * deepest : deepest
  // To the mark short of the floor: what is left is found by measuring.
  const marks = Math.floor(whole / bar.dial.mark + 1e-3)
  const passes = lanes.reduce((sum, lane) => sum + lane.passes, 0)
  const first = lanes[0]
  return {
    infeedPerPass: perPass,
    passes,
    keyways: section.at.length,
    minutes: (section.at.length * passes * secondsPerPass) / 60,
    lanes,
    checks: first ? checksOf(section, first.touchOff, first.infeed, perPass) : [],
    dial: { ...bar.dial, target: marks * bar.dial.mark, marks, left: Math.max(0, whole - marks * bar.dial.mark) },
  }
}
