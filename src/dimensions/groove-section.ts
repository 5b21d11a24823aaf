import { middle, type Size } from '../fits/size.ts'
import type { Groove, Spec } from '../spec/spec.ts'
import { type Reasoned, within } from './basis.ts'
import { sagitta } from './bore.ts'
import { anglesBetween, landBetween, measurableOf } from './round-the-bore.ts'
import { changeDepth, grooveArea, grooveHalf } from './round-nose.ts'
import { absent, between, boreAsCut, boreSays } from './sized.ts'
import type { GrooveSizes, Section } from './types.ts'

/** Section of a bore with an oil groove or several, cut with a round nose: depths are from the crown. */
export const grooveSection = (spec: Spec, groove: Groove): Reasoned<Section> => {
  const bore = boreAsCut(spec.bore)
  const radius = middle(bore) / 2
  const depth = between(groove.depth)
  const floor = radius + middle(depth)
  const at = (boreRadius: number, by: number) => grooveHalf(boreRadius, groove.radius, by)
  const half = at(radius, middle(depth))
  const corners = [bore.lower, bore.upper].flatMap((diameter) =>
    [depth.lower, depth.upper].map((by) => at(diameter / 2, by)),
  )
  const width: Size = { nominal: 2 * half, lower: 2 * Math.min(...corners), upper: 2 * Math.max(...corners) }
  const floorLimits: Size = {
    nominal: floor,
    lower: bore.lower / 2 + depth.lower,
    upper: bore.upper / 2 + depth.upper,
  }
  const mouth = radius - sagitta(radius, half)
  const side = (boreRadius: number, by: number) => by + sagitta(boreRadius, at(boreRadius, by))
  const sides = [bore.lower, bore.upper].flatMap((diameter) =>
    [depth.lower, depth.upper].map((by) => side(diameter / 2, by)),
  )
  const deep = changeDepth(radius, groove.radius)
  const sizes: GrooveSizes = {
    radius: groove.radius,
    depth,
    changeDepth: deep,
    mouthOn: middle(depth) < deep ? 'round' : 'sides',
  }
  return {
    sizes: {
      kind: 'groove',
      boreRadius: radius,
      bore,
      width: 2 * half,
      widthLimits: width,
      mouth,
      sagitta: sagitta(radius, half),
      floor,
      floorLimits,
      crownDepth: middle(depth),
      crownDepthLimits: depth,
      sideDepth: floor - mouth,
      sideDepthLimits: { nominal: floor - mouth, lower: Math.min(...sides), upper: Math.max(...sides) },
      across: radius + floor,
      acrossLimits: { nominal: radius + floor, lower: bore.lower + depth.lower, upper: bore.upper + depth.upper },
      touchOff: radius,
      infeed: middle(depth),
      cornerRadius: groove.radius,
      cornerReach: floor,
      cornerReachMost: floorLimits.upper,
      area: grooveArea(radius, groove.radius, middle(depth)),
      at: groove.at,
      ...(groove.at.length > 1 && {
        land: landBetween(bore.lower / 2, width.upper / 2, Math.min(...anglesBetween(groove.at))),
        measurable: measurableOf(groove.at, radius, half, floor),
      }),
      groove: sizes,
    },
    basis: {
      kind: 'given in the spec',
      boreRadius: `half the bore, ${boreSays(spec.bore)}`,
      bore: spec.bore.measured === undefined ? spec.bore.tolerance : 'as measured: infeed follows from it',
      width: 'across the mouth, where the round nose leaves the bore’s wall at full depth',
      widthLimits: 'the worst corners of bore and depth',
      mouth: '√(R² − (w/2)²)',
      sagitta: 'bore radius less the mouth',
      floor: 'bore radius and depth',
      floorLimits: 'the limits of bore and depth taken together',
      crownDepth: 'given in the spec, from the crown of the bore',
      crownDepthLimits: 'given in the spec',
      sideDepth: 'floor less mouth',
      sideDepthLimits: 'the worst corners of bore and depth',
      across: 'bore and depth: floor to the wall opposite, by a ball or a round point',
      acrossLimits: 'the limits of bore and depth taken together',
      touchOff: 'a round nose first touches with its middle, at the crown',
      infeed: 'the depth from the crown: what the dial does',
      cornerRadius: 'given in the spec: the nose’s end is one round',
      cornerLimits: 'does not apply',
      cornerReach: 'the deepest point of the groove',
      cornerReachMost: 'the same at the worst corner of the limits: hub wall, relief and openings go by it',
      area: 'segment of the nose, and its straight sides, less the bore’s segment',
      at: 'given in the spec, or one at 0',
      land: 'bore arc between the nearest two mouths, smallest bore and widest mouths',
      measurable: 'to the bore where the wall opposite is whole, floor to floor where a groove stands right opposite',
      groove: 'given in the spec',
      ...within<GrooveSizes>('groove', sizes, {
        changeDepth: 'where the nose is in to its full width: √(R² − ρ²) + ρ − R',
        mouthOn: 'shallower than the change of depth, on the round; deeper, on the straight sides',
        radius: 'given in the spec',
        depth: 'given in the spec, from the crown',
      }),
      ...absent('key', 'spline', 'socket', 'slit'),
    },
  }
}
