import { infeedPerPass } from '../dimensions/settings.ts'
import type { CutterBar, Plan } from '../dimensions/types.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'

/** Passes for an infeed, a whole count up. */
export const passesFor = (infeed: number, perPass: number): number => Math.ceil(infeed / perPass - 1e-9)

/** Lanes, passes and what the dial reads at the end; no lag and no spring passes in it. */
export const planOf = (spec: Spec, bar: BarSpec, cutter: CutterBar): Plan => {
  const perPass = infeedPerPass(spec, bar)
  const lanes = cutter.lanes.map(({ offset, touchOff, infeed }) => ({
    offset,
    touchOff,
    infeed,
    passes: passesFor(infeed, perPass),
  }))
  const deepest = Math.max(...lanes.map((lane) => lane.infeed))
  const target = bar.dial.reads === 'diameter' ? 2 * deepest : deepest
  return {
    infeedPerPass: perPass,
    passes: lanes.reduce((sum, lane) => sum + lane.passes, 0),
    lanes,
    dial: { ...bar.dial, target, marks: target / bar.dial.mark },
  }
}
