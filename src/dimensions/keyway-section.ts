import { exact, middle, type Size, withDeviations } from '../fits/size.ts'
import type { Keyway, Spec } from '../spec/spec.ts'
import {
  asmeFit,
  asmeKeyFor,
  asmeKeyOfWidth,
  asmeParallelClearance,
  asmeTaperAllowance,
} from '../standards/asme-b17-1.ts'
import { isoHeightDeviations, isoKeyFor, isoKeyOfWidth, isoWidthDeviations } from '../standards/iso-773.ts'
import type { Basis, Reasoned } from './basis.ts'
import {
  acrossFromSide,
  asmeAcross,
  asmeShaftAcross,
  cornerReach,
  mouthX,
  sagitta,
  sideFromAcross,
  slotArea,
  touchOffX,
} from './bore.ts'
import { anglesBetween, landBetween, measurableOf } from './round-the-bore.ts'
import { keyAsTold } from './key-told.ts'
import { absent, between, boreAsCut, boreSays } from './sized.ts'
import type { KeySizes, Section } from './types.ts'

/** Width and across of the slot with their limits, and the key that goes in. */
interface Slot {
  readonly width: Size
  readonly across: Size
  readonly corner?: Size
  readonly key: KeySizes
  readonly why: { readonly width: string; readonly across: string }
}

const isoSlot = (keyway: Keyway, diameter: number): Slot | undefined => {
  const row = keyway.width ? isoKeyOfWidth(middle(between(keyway.width))) : isoKeyFor(diameter)
  const fit = keyway.fit === 'tight' || keyway.fit === 'sliding' ? keyway.fit : 'normal'
  if (!row) return undefined
  const hub = isoWidthDeviations(row.width, 'hub', fit)
  const shaft = isoWidthDeviations(row.width, 'shaft', fit)
  const key = isoWidthDeviations(row.width, 'key', fit)
  const height = isoHeightDeviations(row.width, row.height)
  if (!hub || !shaft || !key || !height) return undefined
  const sized = (nominal: number, by: { readonly lower: number; readonly upper: number }) =>
    withDeviations(nominal, by.lower, by.upper)
  const across = withDeviations(diameter + row.hubDepth, 0, row.hubDepthTolerance)
  const shaftAcross = withDeviations(diameter - row.shaftDepth, -row.shaftDepthTolerance, 0)
  const keyHeight = sized(row.height, height)
  return {
    width: sized(row.width, hub),
    across,
    corner: between(row.corner),
    key: {
      designation: `${row.width} × ${row.height}`,
      source: row.source,
      nominalWidth: row.width,
      height: keyHeight,
      width: sized(row.width, key),
      chamfer: between(row.keyChamfer),
      shaft: { across: shaftAcross, depth: row.shaftDepth, width: sized(row.width, shaft) },
    },
    why: {
      width: `key ${row.width} × ${row.height} for this bore, hub ${fit} fit (${row.source})`,
      across: `bore ${diameter} and hub depth ${row.hubDepth} at the crown, +${row.hubDepthTolerance}/0 (${row.source})`,
    },
  }
}

const asmeSlot = (keyway: Keyway, diameter: number): Slot | undefined => {
  const row = keyway.width ? asmeKeyOfWidth(middle(between(keyway.width))) : asmeKeyFor(diameter)
  const form = keyway.form ?? 'square'
  const height = form === 'square' ? row?.heightSquare : row?.heightRectangular
  if (!row || height === undefined) return undefined
  const fit = asmeFit({
    form: keyway.taper ? 'taper' : form,
    class: keyway.fit === 'class 2' ? 2 : 1,
    width: row.width,
  })
  if (!fit) return undefined
  const sized = (nominal: number, by: { readonly lower: number; readonly upper: number }) =>
    withDeviations(nominal, by.lower, by.upper)
  const over = keyway.taper ? asmeTaperAllowance : asmeParallelClearance
  const across = sized(asmeAcross(diameter, row.width, height, over), fit.hubDepth)
  const shaftAcross = sized(asmeShaftAcross(diameter, row.width, height), fit.shaftDepth)
  const keyHeight = sized(height, fit.keyHeight)
  const heightName = form === 'square' ? row.widthName : row.heightRectangularName
  return {
    width: sized(row.width, fit.hubWidth),
    across,
    key: {
      designation: form === 'square' ? `${row.widthName} square` : `${row.widthName} × ${heightName}`,
      source: row.source,
      nominalWidth: row.width,
      height: keyHeight,
      width: sized(row.width, fit.keyWidth),
      shaft: { across: shaftAcross, depth: diameter - shaftAcross.nominal, width: sized(row.width, fit.hubWidth) },
    },
    why: {
      width: `${form} key ${row.widthName} wide for this bore, ${keyway.fit} (${row.source}; ${fit.source})`,
      across: `half the key's height and the top ${keyway.taper ? 'allowance of a taper key (negative, deep end)' : 'clearance'} along the side wall: (D + H + √(D² − W²))/2 + C, tolerance ${keyway.fit} (${fit.source})`,
    },
  }
}

/**
 * Across that keeps a depth within its limits whatever the bore within its own. A depth given exactly is that of the middle bore; where the
 * bore's limits leave nothing between, a rule says so and the middle of both is worked on with.
 */
const acrossOfDepth = (depth: NonNullable<Keyway['depth']>, bore: Size, width: Size): Size => {
  const [least, most] = depth.by
  const at = (diameter: number, slot: number, by: number) =>
    depth.from === 'crown' ? diameter + by : acrossFromSide(diameter, slot, by)
  const nominal = at(middle(bore), width.nominal, (least + most) / 2)
  if (least === most) return exact(nominal)
  const [lower, upper] = [at(bore.upper, width.lower, least), at(bore.lower, width.upper, most)]
  return lower <= upper ? { nominal: (lower + upper) / 2, lower, upper } : exact(nominal)
}

const slotByHand = (keyway: Keyway, bore: Size): Slot | undefined => {
  if (!keyway.width) return undefined
  const width = between(keyway.width)
  const across = keyway.across ? between(keyway.across) : keyway.depth && acrossOfDepth(keyway.depth, bore, width)
  if (!across) return undefined
  return {
    width,
    across,
    ...(keyway.corner && { corner: between(keyway.corner) }),
    key: {
      designation: 'by hand',
      source: 'the spec',
      nominalWidth: width.nominal,
      ...(keyway.height && { height: between(keyway.height) }),
    },
    why: {
      width: 'given in the spec',
      across: keyway.across
        ? 'given in the spec'
        : keyway.depth?.from === 'crown'
          ? 'the bore and the depth from its crown, given in the spec'
          : 'from the depth along the side wall, given in the spec',
    },
  }
}

const slotOf = (spec: Spec, feature: Keyway): Slot => {
  const { bore } = spec
  const nominal = bore.diameter.nominal
  const slot =
    feature.standard === 'iso-773'
      ? isoSlot(feature, nominal)
      : feature.standard === 'asme-b17.1'
        ? asmeSlot(feature, nominal)
        : slotByHand(feature, boreAsCut(bore))
  // The reader has refused whatever its tables do not hold.
  if (!slot) throw new Error(`no keyway sizes for a bore of ${nominal} mm by ${feature.standard ?? 'hand'}`)
  const byHand: { width?: Size; across?: Size; corner?: Size } = {}
  if (feature.standard && feature.across) byHand.across = between(feature.across)
  if (feature.corner) byHand.corner = between(feature.corner)
  const whole = { ...slot, ...byHand }
  return { ...whole, key: keyAsTold(spec, feature, whole.across, whole.key) }
}

/**
 * Depth limits along the side wall over the corners of bore, width and across. Source: closed form, tested against all corners.
 */
export const sideDepthLimits = (bore: Size, width: Size, across: Size): Size => ({
  nominal: sideFromAcross(middle(bore), middle(width), middle(across)),
  lower: sideFromAcross(bore.upper, width.lower, across.lower),
  upper: sideFromAcross(bore.lower, width.upper, across.upper),
})

/** Corner radius for the nose where nobody has said one: a round figure inside the slot's limits. */
const cornerFor = (spec: Spec, feature: Keyway, slot: Slot): number => {
  const said = spec.tooling.bar?.nose.cornerRadius
  if (said !== undefined) return said
  if (slot.corner) return Math.floor((slot.corner.upper * 0.85 + 1e-9) / 0.05) * 0.05
  return feature.standard === 'asme-b17.1' ? 0.005 * 25.4 : 0
}

/** Section of a bore with one keyway or several: across is what is given, the floor follows. */
export const keywaySection = (spec: Spec, feature: Keyway): Reasoned<Section> => {
  const slot = slotOf(spec, feature)
  const bore = boreAsCut(spec.bore)
  const radius = middle(bore) / 2
  const width = middle(slot.width)
  const across = middle(slot.across)
  const half = width / 2
  const floor = across - radius
  const mouth = mouthX(radius, half)
  const cornerRadius = Math.min(cornerFor(spec, feature, slot), half)
  const touchOff = touchOffX(radius, width, cornerRadius)
  const { at } = feature
  const least = Math.min(...anglesBetween(at))
  return {
    sizes: {
      kind: 'keyway',
      boreRadius: radius,
      bore,
      width,
      widthLimits: slot.width,
      mouth,
      sagitta: sagitta(radius, half),
      floor,
      crownDepth: floor - radius,
      crownDepthLimits: {
        nominal: floor - radius,
        lower: slot.across.lower - bore.upper,
        upper: slot.across.upper - bore.lower,
      },
      sideDepth: floor - mouth,
      sideDepthLimits: sideDepthLimits(bore, slot.width, slot.across),
      across,
      acrossLimits: slot.across,
      touchOff,
      infeed: floor - touchOff,
      cornerRadius,
      ...(slot.corner && { cornerLimits: slot.corner }),
      cornerReach: cornerReach(floor, half, cornerRadius),
      cornerReachMost: cornerReach(
        slot.across.upper - bore.lower / 2,
        slot.width.upper / 2,
        Math.min(cornerRadius, slot.width.upper / 2),
      ),
      area: slotArea(radius, half, floor),
      at,
      ...(at.length > 1 && {
        land: landBetween(bore.lower / 2, slot.width.upper / 2, least),
        measurable: measurableOf(at, radius, half, floor),
      }),
      key: slot.key,
    },
    get basis(): Basis<Section> {
      return {
        kind: 'given in the spec',
        boreRadius: `half the bore, ${boreSays(spec.bore)}`,
        bore: spec.bore.measured === undefined ? `${spec.bore.tolerance}` : 'as measured: depths follow from it',
        width: 'the middle of the width limits',
        widthLimits: slot.why.width,
        mouth: '√(R² − (w/2)²)',
        sagitta: 'bore radius less the mouth: what the crown stands higher than the mouth corners',
        floor: 'across less the bore radius',
        crownDepth: 'floor less bore radius; the crown is cut away, so nothing can touch it',
        crownDepthLimits: 'least across less largest bore, most across less smallest bore',
        sideDepth: 'floor less mouth: crown depth and sagitta',
        sideDepthLimits: 'the worst corners of bore, width and across',
        across: 'the middle of its limits',
        acrossLimits: slot.why.across,
        touchOff:
          cornerRadius > 0
            ? 'where the rounded corners of the nose first touch the bore'
            : 'where the nose’s sharp corners first touch the bore',
        infeed: 'from first touch to the floor: what the dial does',
        cornerRadius: spec.stated.includes('tooling.bar.nose.cornerRadius')
          ? 'given in the spec'
          : slot.corner
            ? 'a round figure inside the slot’s corner limits'
            : 'a stoned corner where no limits are set',
        cornerLimits: feature.corner ? 'given in the spec' : slot.key.source,
        cornerReach: 'the farthest point of the slot from the axis',
        cornerReachMost: 'the same at the worst corner of the limits: hub wall, relief and openings go by it',
        area: 'slot area less the bore’s segment',
        at: 'given in the spec, or one at 0',
        land: 'bore arc between the nearest two mouths, smallest bore and widest slots',
        measurable: 'to the bore where the wall opposite is whole, floor to floor where a slot stands right opposite',
        key: slot.key.source,
        ...absent('floorLimits', 'spline', 'socket', 'slit', 'groove'),
      }
    },
  }
}
