import { middle, exact, type Size, withDeviations } from '../fits/size.ts'
import { limitsOf } from '../fits/iso-286.ts'
import type { Spec, Spline } from '../spec/spec.ts'
import { inch, inchName } from '../standards/inch.ts'
import { isoSplineHub, isoSplineNamed } from '../standards/iso-14.ts'
import { saeSpline } from '../standards/sae-j499.ts'
import { type Reasoned, within } from './basis.ts'
import { mouthHalfAngle, mouthX } from './bore.ts'
import { flatSlotSection } from './flat-slot.ts'
import { either, roundDown } from './makeable.ts'
import { between, halved } from './sized.ts'
import type { Section, SplineSizes } from './types.ts'

/** A flat floor stands this much over the tip of the tooth, at its middle, mm. Source: judgement. */
const floorClearance = 0.05

interface Slots {
  readonly designation: string
  readonly source: string
  readonly width: Size
  readonly floor: Size
  /** Tip of the mating tooth, from the axis. */
  readonly toothReach: number
  readonly centring: SplineSizes['centring']
  readonly cornerMost?: number
  readonly symmetryTolerance?: number
  readonly why: { readonly width: string; readonly floor: string; readonly centring: string }
}

const isoSlots = (spline: Spline): Slots | undefined => {
  const row = isoSplineNamed(spline.size ?? '')
  if (!row) return undefined
  const classes = isoSplineHub(spline.treated ? 'hardened' : 'untreated')
  const width = limitsOf(row.width, classes.width)
  const major = limitsOf(row.major, classes.major) ?? { lower: 0, upper: 0 }
  const toothReach = row.major / 2
  return {
    designation: `${row.count}x${row.minor}x${row.major}`,
    source: row.source,
    width: width ? withDeviations(row.width, width.lower, width.upper) : exact(row.width),
    // In the middle of its limits, as any slot is.
    floor: withDeviations(
      toothReach + (major.lower + major.upper) / 4,
      (major.lower - major.upper) / 4,
      (major.upper - major.lower) / 4,
    ),
    toothReach,
    centring: 'minor',
    symmetryTolerance: row.symmetryTolerance,
    why: {
      width: `${row.width} ${classes.width}, hub ${spline.treated ? 'hardened after cutting' : 'not treated after cutting'} (${row.source})`,
      floor: `half the major diameter ${row.major} ${classes.major} (${row.source}): a shaft's teeth, a11, end 0.14 mm or more short of it; it does not centre there`,
      centring: 'ISO 14 centres on the minor diameter: the bore',
    },
  }
}

const saeSlots = (spline: Spline): Slots | undefined => {
  const major = spline.major?.[1]
  const row =
    major === undefined || !spline.fit ? undefined : saeSpline({ count: spline.count, fit: spline.fit, major })
  if (!row) return undefined
  const sized = (nominal: number, by: { readonly lower: number; readonly upper: number } | undefined) =>
    by ? withDeviations(nominal, by.lower, by.upper) : exact(nominal)
  const over = sized(row.major, row.tolerances?.major)
  const limits = row.tolerances?.source ?? 'largest size; its limits are not on hand for this row: cut no more'
  return {
    designation: `${row.count} splines of ${inchName(row.major) ?? Math.round((row.major / inch) * 1e4) / 1e4} in, fit ${row.fit}`,
    source: row.source,
    width: sized(row.width, row.tolerances?.width),
    floor: halved(over),
    toothReach: over.lower / 2,
    centring: 'major',
    cornerMost: row.cornerMost,
    why: {
      width: `part of the major diameter by count (${row.source}); ${limits}`,
      floor: `half the major diameter (${row.source}); ${limits}`,
      centring: 'a shaft of SAE J499 is mostly ground on its outside: from memory; look at the shaft',
    },
  }
}

const slotsByHand = (spline: Spline): Slots | undefined => {
  if (!spline.width || !spline.major) return undefined
  const over = between(spline.major)
  return {
    designation: 'by hand',
    source: 'the spec',
    width: between(spline.width),
    floor: halved(over),
    toothReach: over.lower / 2 - floorClearance,
    centring: 'minor',
    why: {
      width: 'given in the spec',
      floor: `half the diameter over the floors, given in the spec; the mating tooth is taken to stand ${floorClearance} mm under it`,
      centring: 'sizes by hand: taken to centre on the bore; look at the shaft',
    },
  }
}

const slotsOf = (spline: Spline): Slots => {
  const slots =
    spline.standard === 'iso-14'
      ? isoSlots(spline)
      : spline.standard === 'sae-j499'
        ? saeSlots(spline)
        : slotsByHand(spline)
  // The reader has refused whatever its tables do not hold.
  if (!slots) throw new Error(`no spline sizes by ${spline.standard ?? 'hand'}`)
  return slots
}

/** Section of a bore with straight-sided splines: slots alike, evenly round. */
export const splineSection = (spec: Spec, spline: Spline): Reasoned<Section> => {
  const slots = slotsOf(spline)
  const { toothReach } = slots
  const cornerGap = (half: number, floor: number) => floor - mouthX(toothReach, half)
  const cornerAt = (width: number, floor: number) =>
    Math.max(0, Math.min(slots.cornerMost ?? Infinity, cornerGap(width / 2, floor)))
  const least = cornerAt(slots.width.lower, slots.floor.lower)
  const asked = spline.corner ? between(spline.corner) : { nominal: least, lower: 0, upper: least }
  const said = spec.tooling.bar?.nose.cornerRadius
  const usual = roundDown(Math.min(0.85 * asked.upper, either(spec.units, 0.3, 0.012)), either(spec.units, 0.05, 0.001))
  const base = flatSlotSection(spec.bore, {
    kind: 'spline',
    width: slots.width,
    floor: slots.floor,
    cornerRadius: said ?? usual,
    cornerLimits: asked,
    ...(slots.centring === 'major' && { endRadius: middle(slots.floor) }),
    at: spline.at,
    why: {
      width: slots.why.width,
      floor: slots.why.floor,
      cornerRadius: spec.stated.includes('tooling.bar.nose.cornerRadius')
        ? 'given in the spec'
        : 'a round figure inside what the tooth’s corners clear',
      cornerLimits: spline.corner
        ? 'given in the spec'
        : 'least floor less where the tooth’s tip meets its flanks: f − √(Rₐ² − h²)',
      at: 'evenly round from the first, given in the spec or at 0',
    },
  })
  const { boreRadius, floor, width, cornerRadius } = base.sizes
  const half = width / 2
  const landAngle = 360 / spline.count - 2 * mouthHalfAngle(boreRadius, half)
  const radians = (landAngle * Math.PI) / 180
  const sizes: SplineSizes = {
    designation: slots.designation,
    source: slots.source,
    count: spline.count,
    toothReach,
    floorClearance: floor - toothReach,
    flankGap: toothReach - mouthX(toothReach, half),
    cornerMost: cornerAt(width, floor),
    flankTrueTo: Math.hypot(floor - cornerRadius, half),
    ...(spline.count % 2 === 0 && {
      floorToFloor: { nominal: 2 * floor, lower: 2 * slots.floor.lower, upper: 2 * slots.floor.upper },
    }),
    landAngle,
    landArc: boreRadius * radians,
    landChord: 2 * boreRadius * Math.sin(radians / 2),
    countMost: Math.ceil(180 / mouthHalfAngle(boreRadius, half) - 1e-9) - 1,
    centring: slots.centring,
    ...(slots.centring === 'major' && { noseEndRadius: floor }),
    ...(slots.symmetryTolerance !== undefined && { symmetryTolerance: slots.symmetryTolerance }),
  }
  return {
    sizes: { ...base.sizes, spline: sizes },
    basis: {
      ...base.basis,
      spline: slots.source,
      ...within<SplineSizes>('spline', sizes, {
        toothReach: slots.why.floor,
        floorClearance: 'floor less the tip of the tooth, at its middle',
        flankGap: 'tip of the tooth less where it meets its flanks: Rₐ − √(Rₐ² − h²)',
        cornerMost:
          'floor less where the tooth’s tip meets its flanks, or the standard’s own; corner limits go by the least floor',
        flankTrueTo: '√((f − r)² + h²): no less than the tip of the tooth',
        floorToFloor: 'twice the floor: what is measured where slots stand opposite',
        landAngle: '360° over the count, less the mouth',
        countMost: 'most slots of this width with any land: 180° over half the mouth',
        centring: slots.why.centring,
        noseEndRadius: 'a flat floor bears the tooth in its middle alone: grind the nose’s end convex to this',
        symmetryTolerance: slots.source,
        designation: slots.source,
        source: 'where its sizes come from',
        count: 'given in the spec, or in the size',
        landArc: 'land angle at the bore’s radius',
        landChord: '2 R sin of half the land angle',
      }),
    },
  }
}
