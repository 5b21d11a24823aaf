import { middle, type Size } from '../fits/size.ts'
import type { Bore } from '../spec/spec.ts'
import type { Basis, Reasoned } from './basis.ts'
import { cornerReach, mouthX, sagitta, slotArea, touchOffX } from './bore.ts'
import { anglesBetween, landBetween, measurableOf } from './round-the-bore.ts'
import { absent, boreAsCut, boreSays } from './sized.ts'
import type { Section } from './types.ts'

/** A slot with a flat floor that stands at its own distance from the axis. */
export interface FlatSlot {
  readonly kind: 'spline' | 'slit'
  readonly width: Size
  /** x of the floor. */
  readonly floor: Size
  readonly cornerRadius: number
  /** Radius of the nose's convex end; left out: flat. */
  readonly endRadius?: number
  readonly cornerLimits?: Size
  readonly at: readonly number[]
  readonly why: Readonly<Record<'width' | 'floor' | 'cornerRadius' | 'cornerLimits' | 'at', string>>
}

/** Section of a bore with flat-floored slots whose floors are given from the axis. */
export const flatSlotSection = (bored: Bore, slot: FlatSlot): Reasoned<Section> => {
  const bore = boreAsCut(bored)
  const radius = middle(bore) / 2
  const [width, floor] = [middle(slot.width), middle(slot.floor)]
  const half = width / 2
  const mouth = mouthX(radius, half)
  const cornerRadius = Math.min(slot.cornerRadius, half)
  const touchOff = touchOffX(radius, width, cornerRadius, 0, slot.endRadius)
  const { at, why } = slot
  return {
    sizes: {
      kind: slot.kind,
      boreRadius: radius,
      bore,
      width,
      widthLimits: slot.width,
      mouth,
      sagitta: sagitta(radius, half),
      floor,
      floorLimits: slot.floor,
      crownDepth: floor - radius,
      crownDepthLimits: {
        nominal: floor - radius,
        lower: slot.floor.lower - bore.upper / 2,
        upper: slot.floor.upper - bore.lower / 2,
      },
      sideDepth: floor - mouth,
      sideDepthLimits: {
        nominal: floor - mouth,
        lower: slot.floor.lower - mouthX(bore.upper / 2, slot.width.lower / 2),
        upper: slot.floor.upper - mouthX(bore.lower / 2, slot.width.upper / 2),
      },
      across: radius + floor,
      acrossLimits: {
        nominal: radius + floor,
        lower: bore.lower / 2 + slot.floor.lower,
        upper: bore.upper / 2 + slot.floor.upper,
      },
      touchOff,
      infeed: floor - touchOff,
      cornerRadius,
      ...(slot.cornerLimits && { cornerLimits: slot.cornerLimits }),
      cornerReach: cornerReach(floor, half, cornerRadius),
      cornerReachMost: cornerReach(
        slot.floor.upper,
        slot.width.upper / 2,
        Math.min(cornerRadius, slot.width.upper / 2),
      ),
      area: slotArea(radius, half, floor),
      at,
      ...(at.length > 1 && {
        land: landBetween(bore.lower / 2, slot.width.upper / 2, Math.min(...anglesBetween(at))),
        measurable: measurableOf(at, radius, half, floor),
      }),
    },
    get basis(): Basis<Section> {
      return {
        kind: 'given in the spec',
        boreRadius: `half the bore, ${boreSays(bored)}`,
        bore: bored.measured === undefined ? bored.tolerance : 'as measured: infeed follows from it',
        width: 'the middle of the width limits',
        widthLimits: why.width,
        mouth: '√(R² − (w/2)²)',
        sagitta: 'bore radius less the mouth: what the crown stands higher than the mouth corners',
        floor: 'the middle of its limits',
        floorLimits: why.floor,
        crownDepth: 'floor less bore radius; the crown is cut away, so nothing can touch it',
        crownDepthLimits: 'least floor less largest bore, most floor less smallest bore',
        sideDepth: 'floor less mouth: crown depth and sagitta',
        sideDepthLimits: 'the worst corners of bore, width and floor',
        across: 'bore radius and floor: to the wall opposite, where that is whole',
        acrossLimits: 'the limits of bore and floor taken together',
        touchOff:
          cornerRadius > 0
            ? 'where the rounded corners of the nose first touch the bore'
            : 'where the nose’s sharp corners first touch the bore',
        infeed: 'from first touch to the floor: what the dial does',
        cornerRadius: why.cornerRadius,
        cornerLimits: why.cornerLimits,
        cornerReach: 'the farthest point of the slot from the axis',
        cornerReachMost: 'the same at the worst corner of the limits: hub wall, relief and openings go by it',
        area: 'slot area less the bore’s segment',
        at: why.at,
        land: 'bore arc between the nearest two mouths, smallest bore and widest slots',
        measurable: 'to the bore where the wall opposite is whole, floor to floor where a slot stands right opposite',
        ...absent('key', 'spline', 'socket', 'slit', 'groove'),
      }
    },
  }
}
