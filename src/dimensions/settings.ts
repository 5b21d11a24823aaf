import type { BarSpec } from '../spec/spec.ts'
import { workMaterial } from '../standards/materials.ts'
import { targetOf } from './engaged.ts'
import { grooveHalf } from './round-nose.ts'
import type { Section } from './types.ts'
import { mouthHalfOfV } from './v-nose.ts'
import { laneOffsets, type Setting, chipCoil } from './window.ts'
import { either, roundTo, roundUp } from './makeable.ts'
import type { Spec } from '../spec/spec.ts'

/** Overlap of neighbouring lanes: a tenth of the nose and twice its corner radius, or a ridge stands between them. Source: common practice, no source. */
export const leastOverlap = (noseWidth: number, cornerRadius: number): number =>
  // A nose that is all corners has no flat to overlap with: three quarters of it is as near as lanes can lie.
  Math.min(Math.max(0.1 * noseWidth, 2 * cornerRadius), 0.75 * noseWidth)

/** Infeed for one pass: as given, else the material's own in a round figure of the job's unit. */
export const infeedPerPass = (spec: Spec, bar: BarSpec): number => {
  if (bar.infeed !== undefined) return bar.infeed
  const usual = workMaterial(spec.hub.material)?.infeed ?? 0.02
  return spec.units === 'mm' ? usual : Math.max(1, Math.round(usual / (0.0005 * 25.4))) * 0.0005 * 25.4
}

/** Smaller infeeds to fall back on where the usual one asks too much of bar or bit, largest first; none thinner than an edge can cut. */
export const lighterInfeeds = (spec: Spec, bar: BarSpec): readonly number[] => {
  const usual = infeedPerPass(spec, bar)
  const step = spec.units === 'mm' ? 0.0025 : 0.0001 * 25.4
  return [0.75, 0.5, 0.35, 0.25]
    .map((part) => Math.round((usual * part) / step) * step)
    .filter((infeed) => infeed >= 0.005 - 1e-9)
}

/** A spring-like coil of chip must find room before the bar. */
export const chipRoomFor = (spec: Spec, bar: BarSpec): number => chipCoil(infeedPerPass(spec, bar), spec.bore.length)

/** Which corner of the tolerances: the one at which the bar comes nearest the back wall, the front, or the middle of all. */
export type Corner = 'back' | 'front' | 'middle'

type Nose = { readonly width: number; readonly cornerRadius: number; readonly single: boolean }

/** What all lanes have in common at a corner of the limits. */
type Shared = Pick<Setting, 'radius' | 'floor' | 'clearances' | 'chipRoom'> & { readonly tilted: number }

/** Flat noses: one as wide as its slot, or lanes. */
const flatSettings = (corner: Corner, section: Section, nose: Nose, shared: Shared): readonly Setting[] => {
  const { radius, floor, clearances, chipRoom, tilted } = shared
  const { widthLimits } = section
  const width =
    corner === 'middle' ? section.width : corner === 'front' && nose.single ? widthLimits.lower : widthLimits.upper
  const noseWidth = nose.single ? width : Math.min(nose.width, width)
  const offsets = nose.single ? [0] : laneOffsets(width, noseWidth, leastOverlap(nose.width, nose.cornerRadius))
  const cornerRadius = Math.min(nose.cornerRadius, noseWidth / 2)
  const endRadius = nose.single ? section.spline?.noseEndRadius : undefined
  return offsets.map((offset) => ({
    radius,
    floor,
    noseWidth,
    cornerRadius,
    offset,
    endRadius,
    clearances,
    chipRoom,
    opening: undefined,
    tilted,
  }))
}

/** A V or a round touches with its tip; what it leaves open is as wide as its mouth. */
const tipSetting = (corner: Corner, section: Section, shared: Shared): Setting => {
  const { radius, floor } = shared
  const { socket, groove, cornerRadius } = section
  const tip = { ...shared, noseWidth: 2 * cornerRadius, cornerRadius, offset: 0 }
  if (!socket) return { ...tip, opening: { half: grooveHalf(radius, groove?.radius ?? cornerRadius, floor - radius) } }
  const { sides, acrossFlats } = socket
  const flat = (corner === 'middle' ? (acrossFlats.lower + acrossFlats.upper) / 2 : acrossFlats.upper) / 2
  return { ...tip, opening: { half: mouthHalfOfV(sides, flat, radius), flank: { sides, flat } } }
}

/** x of the floor at a corner: with the smallest bore, the deepest. A groove's depth counts from the bore it is cut in. */
const floorAt = (corner: Corner, section: Section, radius: number): number => {
  const { across, acrossLimits, floorLimits, groove, slit } = section
  if (slit) return targetOf(section)
  if (groove && corner !== 'middle') return radius + groove.depth.upper
  if (!floorLimits) return (corner === 'middle' ? across : acrossLimits.upper) - radius
  return corner === 'middle' ? section.floor : floorLimits.upper
}

/**
 * The settings, one a lane, at a corner of the tolerances: smallest bore; for the back the widest slot (it touches first); for the front
 * the deepest, and the narrowest for a nose as wide as the slot, the widest for lanes, which then lie farthest off the middle.
 */
export const settingsAt = (
  corner: Corner,
  section: Section,
  nose: Nose,
  clearances: Setting['clearances'],
  chipRoom: number,
): readonly Setting[] => {
  const radius = corner === 'middle' ? section.boreRadius : section.bore.lower / 2
  const floor = floorAt(corner, section, radius)
  const tilted = section.key?.taper?.windowLoss ?? 0
  const shared = { radius, floor, clearances, chipRoom, tilted }
  return section.socket || section.groove
    ? [tipSetting(corner, section, shared)]
    : flatSettings(corner, section, nose, shared)
}

/** A nose narrower than its slot, for a wanted number of lanes: a round figure with more overlap than the least. */
export const noseForLanes = (spec: Spec, slotWidth: number, cornerRadius: number, lanes: number): number => {
  const step = either(spec.units, 0.5, 1 / 64)
  const bare = slotWidth / (1 + 0.9 * (lanes - 1))
  const wanted = lanes === 2 ? 0.6 * slotWidth : 1.08 * bare
  const rounded = Math.ceil(wanted / step - 0.2) * step
  const finer = rounded > 0.85 * slotWidth || rounded < bare ? roundTo(wanted, step / 5) : rounded
  return roundUp(Math.max(finer, bare + 2 * cornerRadius), either(spec.units, 0.05, 0.002))
}
