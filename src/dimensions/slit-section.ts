import { exact, middle } from '../fits/size.ts'
import type { Slit, Spec } from '../spec/spec.ts'
import { type Reasoned, within } from './basis.ts'
import { mouthX } from './bore.ts'
import { flatSlotSection } from './flat-slot.ts'
import { either } from './makeable.ts'
import { between } from './sized.ts'
import type { Section, SlitSizes } from './types.ts'

/** Section of a bore with slits right through its wall: the nose goes on past the outside. */
export const slitSection = (spec: Spec, slit: Slit): Reasoned<Section> => {
  const radius = slit.outside / 2
  const base = flatSlotSection(spec.bore, {
    kind: 'slit',
    width: between(slit.width),
    floor: exact(radius),
    cornerRadius: spec.tooling.bar?.nose.cornerRadius ?? 0,
    at: slit.at,
    why: {
      width: 'given in the spec',
      floor: 'half the outside that the slit runs out through',
      cornerRadius: spec.stated.includes('tooling.bar.nose.cornerRadius')
        ? 'given in the spec'
        : 'sharp: a slit has no floor',
      cornerLimits: 'a slit has no floor',
      at: 'evenly round from the first, given in the spec or at 0',
    },
  })
  const breakOut = mouthX(radius, middle(between(slit.width)) / 2)
  // What bar and machine give is well within it: judgement.
  const target = radius + either(spec.units, 0.3, 0.012)
  const wall = radius - base.sizes.boreRadius
  const last = either(spec.units, 0.25, 0.01)
  const sizes: SlitSizes = {
    outside: slit.outside,
    wall,
    breakOut,
    web: radius - breakOut,
    target,
    halfInfeedFrom: Math.max(base.sizes.touchOff, Math.min(breakOut, radius - last)),
  }
  return {
    sizes: { ...base.sizes, slit: sizes },
    basis: {
      ...base.basis,
      slit: 'given in the spec',
      ...within<SlitSizes>('slit', sizes, {
        wall: 'half of outside less bore',
        breakOut: 'where the nose’s corners come out first: √(Rₒ² − h²)',
        web: 'what then still stands at the middle: it snaps sideways',
        target: 'the outside, and 0.3 mm (.012 in) past it: judgement',
        halfInfeedFrom: 'the web, or the last 0.25 mm (.01 in) of the wall: judgement',
        outside: 'given in the spec, or the hub’s',
      }),
    },
  }
}
