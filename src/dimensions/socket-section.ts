import { middle, type Size } from '../fits/size.ts'
import type { Socket, Spec } from '../spec/spec.ts'
import { type Reasoned, within } from './basis.ts'
import { mouthX } from './bore.ts'
import { anglesBetween, landBetween, measurableOf } from './round-the-bore.ts'
import { absent, between, boreAsCut, boreSays } from './sized.ts'
import type { Section, SocketSizes } from './types.ts'
import {
  halfFlat,
  includedAngle,
  matingReliefOf,
  mouthHalfAngleOfV,
  mouthHalfOfV,
  pilotBoreOf,
  setBackOf,
  vertexOf,
} from './v-nose.ts'

/** Metal of one corner: the kite between two half flats and the axis, less the bore's sector and triangles in it, less what a round tip leaves. */
const cornerArea = (sides: number, flat: number, radius: number, tip: number): number => {
  const long = halfFlat(sides, flat, radius)
  const psi = (mouthHalfAngleOfV(sides, flat, radius) * Math.PI) / 180
  const share = Math.PI / sides
  return flat * long - radius ** 2 * psi - tip ** 2 * (Math.tan(share) - share)
}

/** Section of a bore with one corner of a socket on +x, cut with a V-nose along the diagonal. */
export const socketSection = (spec: Spec, socket: Socket): Reasoned<Section> => {
  const { sides, tip, at } = socket
  const bore = boreAsCut(spec.bore)
  const radius = middle(bore) / 2
  const flats = between(socket.across)
  const flat = middle(flats) / 2
  const setBack = setBackOf(sides, tip)
  const tipAt = (across: number) => vertexOf(sides, across / 2) - setBack
  const floor = tipAt(middle(flats))
  const floorLimits: Size = { nominal: floor, lower: tipAt(flats.lower), upper: tipAt(flats.upper) }
  const mouthHalf = mouthHalfOfV(sides, flat, radius)
  const widthLimits: Size = {
    nominal: 2 * mouthHalf,
    lower: 2 * mouthHalfOfV(sides, flats.lower / 2, bore.upper / 2),
    upper: 2 * mouthHalfOfV(sides, flats.upper / 2, bore.lower / 2),
  }
  const mouth = mouthX(radius, mouthHalf)
  const long = halfFlat(sides, flat, radius)
  const sizes: SocketSizes = {
    sides,
    acrossFlats: flats,
    vertex: vertexOf(sides, flat),
    includedAngle: includedAngle(sides),
    halfFlat: long,
    flatShare: long / (flat * Math.tan(Math.PI / sides)),
    mouthHalfAngle: mouthHalfAngleOfV(sides, flat, radius),
    mouthHalf,
    setBack,
    matingRound: tip,
    matingRelief: matingReliefOf(sides, tip),
    edge: 2 * (long - tip * (Math.tan(Math.PI / sides) - Math.PI / sides)),
    angleError: long * Math.tan((0.5 * Math.PI) / 180),
    pilotBore: pilotBoreOf(sides, flat, 0.7),
  }
  return {
    sizes: {
      kind: 'socket',
      boreRadius: radius,
      bore,
      width: 2 * mouthHalf,
      widthLimits,
      mouth,
      sagitta: radius - mouth,
      floor,
      floorLimits,
      crownDepth: floor - radius,
      crownDepthLimits: {
        nominal: floor - radius,
        lower: floorLimits.lower - bore.upper / 2,
        upper: floorLimits.upper - bore.lower / 2,
      },
      sideDepth: floor - mouth,
      sideDepthLimits: {
        nominal: floor - mouth,
        lower: floorLimits.lower - mouthX(bore.upper / 2, widthLimits.lower / 2),
        upper: floorLimits.upper - mouthX(bore.lower / 2, widthLimits.upper / 2),
      },
      across: radius + floor,
      acrossLimits: {
        nominal: radius + floor,
        lower: bore.lower / 2 + floorLimits.lower,
        upper: bore.upper / 2 + floorLimits.upper,
      },
      touchOff: radius,
      infeed: floor - radius,
      cornerRadius: tip,
      cornerReach: floor,
      cornerReachMost: floorLimits.upper,
      area: cornerArea(sides, flat, radius, tip),
      at,
      land: landBetween(bore.lower / 2, widthLimits.upper / 2, Math.min(...anglesBetween(at))),
      measurable: measurableOf(at, radius, mouthHalf, floor),
      socket: sizes,
    },
    basis: {
      kind: 'given in the spec',
      boreRadius: `half the bore, ${boreSays(spec.bore)}`,
      bore: spec.bore.measured === undefined ? spec.bore.tolerance : 'as measured: infeed follows from it',
      width: 'mouth of the V between two flats: 2 R sin ψ, ψ = π/N − acos(a/R)',
      widthLimits: 'the same at the worst corners of bore and flats',
      mouth: 'R cos ψ',
      sagitta: 'bore radius less the mouth',
      floor: 'the vertex of the flats, a tip’s radius set back: that tip gives the right flats',
      floorLimits: 'the same at the limits of the size across flats',
      crownDepth: 'floor less bore radius',
      crownDepthLimits: 'the worst corners of bore and flats',
      sideDepth: 'floor less mouth',
      sideDepthLimits: 'the worst corners of bore and flats',
      across: 'bore radius and floor; across flats is socket.acrossFlats',
      acrossLimits: 'the limits of bore and floor taken together',
      touchOff: 'the tip of a V first touches at the crown',
      infeed: 'from first touch to the floor: what the dial does',
      cornerRadius: 'the tip as given in the spec, or pointed',
      cornerLimits: 'does not apply',
      cornerReach: 'the tip: the farthest point of the socket from the axis',
      cornerReachMost: 'the same at the worst corner of the limits: hub wall, relief and openings go by it',
      area: 'half flats and bore sector of one corner, less what a round tip leaves',
      at: 'corners evenly round from the first, given in the spec or at 0',
      land: 'bore arc left between two corners: the flat’s middle, which the bore has already taken away',
      measurable: 'tip to tip where a corner stands right opposite; across flats is measured all the same',
      socket: 'given in the spec',
      ...within<SocketSizes>('socket', sizes, {
        vertex: 'half across flats over cos π/N',
        includedAngle: '180° less 360°/N',
        halfFlat: 'what the bore leaves of half a flat: a tan π/N − √(R² − a²)',
        setBack: 'tip × (1/cos π/N − 1)',
        matingRelief: 'tip × tan π/N × sin π/N, from the vertex inwards along the radius',
        edge: 'both flanks at full depth, round the tip',
        angleError: 'half a flat by tan 0.5°: measure the V against a template',
        pilotBore: 'A √(1 + (0.3 tan π/N)²)',
        sides: 'given in the spec',
        acrossFlats: 'given in the spec',
        flatShare: 'what is left over the whole half flat',
        mouthHalfAngle: 'ψ = π/N − acos(a/R)',
        mouthHalf: 'R sin ψ',
        matingRound: 'the tip’s own radius',
      }),
      ...absent('key', 'spline', 'slit', 'groove'),
    },
  }
}
