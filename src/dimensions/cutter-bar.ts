import { withDeviations } from '../fits/size.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import type { Basis, Reasoned } from './basis.ts'
import { type Candidate, bodyTolerance, cornersOf, overtravel } from './candidates.ts'
import { engagedMost, noseForm } from './engaged.ts'
import { rockOf } from './holding.ts'
import { either, roundDown, roundUp, stepsOf } from './makeable.ts'
import { classed } from './section.ts'
import { chipRoomFor } from './settings.ts'
import type { Corners } from './stages.ts'
import type { CutterBar, Lane, Section, Stage } from './types.ts'
import { flankBefore, openHalf, projectionLeast, projectionMost, type Setting, touchOf } from './window.ts'

/** Least room between holder and hub when the bar is right in: half an inch, less for short hubs. Source: judgement. */
export const leastHolderGap = (hub: number): number => Math.min(12.7, Math.max(5, hub / 3))

/** The nose's lanes with what their first touch and windows are: of the last stage, where there are several. */
export const lanesOf = (
  { back, front, middle }: Corners,
  stages: readonly Stage[],
  diameter: number,
): readonly Lane[] => {
  const last = stages.length > 1 ? stages.at(-1) : undefined
  return middle.map((setting, lane) => {
    const touchOff = touchOf(setting)
    return {
      offset: setting.offset,
      touchOff,
      infeed: setting.floor - touchOff,
      projectionMin: projectionLeast(front[lane] ?? setting, diameter),
      projectionMax: last?.projectionMax ?? projectionMost(back[lane] ?? setting, diameter),
    }
  })
}

/**
 * Gaps at mid-tolerance with the projections as chosen: behind when withdrawn to where each stage starts, in front where it ends, the least
 * over stages and lanes. `tilted`: by so much a hub tilted for a taper key comes nearer to the bar's back over its length.
 */
export const gapsOf = (
  diameter: number,
  stages: readonly Stage[],
  settings: readonly Setting[],
  tilted: number,
): CutterBar['gaps'] => {
  const radius = diameter / 2
  let back = Infinity
  let front = Infinity
  let frontAt: CutterBar['gaps']['frontAt'] = 'crown or floor'
  for (const [stage, { projection: p, from, to }] of stages.entries())
    for (const setting of settings) {
      const { offset } = setting
      const touch = touchOf(setting)
      const start = stage === 0 ? touch : Math.max(touch, from)
      // At the deep end, and at the other, where the tilted bore has come towards the nose.
      for (const shifted of [0, tilted])
        back = Math.min(back, setting.radius - radius - Math.hypot(start - p - radius - shifted, offset))
      const axis = (stage === stages.length - 1 ? setting.floor : to) - p - radius
      const half = openHalf(setting)
      const halfOfSlot = Math.abs(offset) + half
      const corner = Math.sqrt(setting.radius ** 2 - halfOfSlot ** 2)
      const toCorner = Math.hypot(corner - axis, half) - radius
      const toFlank = flankBefore(setting, axis)
      const toBore = setting.radius - radius - Math.hypot(axis, offset)
      const towardsMouth = axis * halfOfSlot >= Math.abs(offset) * corner
      const [gap, at] =
        toFlank !== undefined
          ? [toFlank - radius, 'flank' as const]
          : towardsMouth
            ? [toCorner, 'mouth corner' as const]
            : [toBore, 'bore' as const]
      // With its axis behind the bore's the bar has nothing in front but the floor.
      if (gap < front && axis >= 0) [front, frontAt] = [gap, at]
      if (p < front) [front, frontAt] = [p, 'crown or floor']
    }
  return { back, front, frontAt }
}

/** The smallest round on hand, bar or bushing stock, that this diameter comes out of; the diameter itself where none does. */
export const stockOver = (spec: Spec, diameter: number): number => {
  const enough = [...spec.shop.bars, ...spec.shop.rounds].filter((size) => size >= diameter - 1e-9)
  return enough.length > 0 ? Math.min(...enough) : diameter
}

/** Which of the bar's diameters are turned, `all` where they are one; what is not keeps the stock's skin. */
export const turnedParts = ({
  stock,
  diameter,
  shank,
}: Pick<CutterBar, 'stock' | 'diameter' | 'shank'>): 'body' | 'shank' | 'both' | 'all' | 'neither' => {
  const [body, end] = [diameter, shank].map(({ nominal }) => nominal < stock.diameter - 1e-9)
  if (body && end) return Math.abs(diameter.nominal - shank.nominal) < 1e-9 ? 'all' : 'both'
  return body ? 'body' : end ? 'shank' : 'neither'
}

/** Whether the bar is of a steel that can still be hardened by whoever makes it. */
export const canBeHardened = ({ stock }: Pick<CutterBar, 'stock'>): boolean => stock.material.startsWith('drill rod')

/** Every dimension of the bar that was chosen, with its reason. */
export const cutterBarOf = (spec: Spec, bar: BarSpec, section: Section, candidate: Candidate): Reasoned<CutterBar> => {
  const steps = stepsOf(spec.units)
  const d = candidate.diameter.nominal
  const chipRoom = chipRoomFor(spec, bar)
  const small = d < 8
  const shank = bar.shank ?? spec.shop.collets.find((collet) => collet >= d - 1e-9) ?? d
  const shouldered = shank > d + 1e-9
  const { edgeToEnd } = candidate
  const bodyLength = roundUp(
    spec.bore.length + overtravel + leastHolderGap(spec.bore.length) + Math.max(0, edgeToEnd),
    steps.whole,
  )
  const overhang = bodyLength - edgeToEnd
  const shankLength = roundUp(
    Math.min(Math.max(3 * shank, either(spec.units, 30, 1.25)), either(spec.units, 75, 3)),
    either(spec.units, 5, 0.25),
  )
  const overall = bodyLength + shankLength
  const { bitLengthMin, bitLengthMax } = candidate
  const blank = [steps.whole, steps.half, steps.fine]
    .map((step) => roundDown(bitLengthMax, step))
    .find((length) => length >= bitLengthMin - 1e-9)
  const bitLength = blank ?? (bitLengthMin + bitLengthMax) / 2
  const corners = cornersOf(bar, section, candidate.nose, chipRoom)
  const { stages } = candidate
  const first = stages[0]?.projection ?? candidate.projection
  const endScrew = candidate.form === 'end screw'
  const chosen = (path: string, why: string) =>
    spec.stated.includes(`tooling.bar.${path}`) ? 'given in the spec' : why
  const recess = small ? 0.3 : 0.5
  return {
    sizes: {
      diameter: withDeviations(d, -bodyTolerance(spec, d), 0),
      diameterMax: candidate.diameterMax(),
      projection: candidate.projection,
      projectionMin: candidate.projectionMin,
      projectionMax: candidate.projectionMax,
      projectionFloor: candidate.projectionFloor,
      setting: bar.setting,
      lanes: lanesOf(corners, stages, d),
      stages,
      form: candidate.form,
      incline: candidate.incline,
      ...(candidate.wallAtEnd !== undefined && { wallAtEnd: candidate.wallAtEnd }),
      ...(!endScrew && {
        rock: rockOf(
          { bit: candidate.bit, hole: candidate.hole, rise: candidate.rise, bar: candidate.diameter },
          Math.max(0, bitLength - first - d / 2),
        ),
      }),
      bit: {
        shape: candidate.bit.shape,
        size: candidate.bit.size,
        cornerBreak: candidate.bit.cornerBreak,
        flat: candidate.bit.flat,
      },
      noseWidth: candidate.nose.width,
      cornerRadius: candidate.nose.cornerRadius,
      ...(noseForm(section) !== 'flat' && { engaged: engagedMost(section, candidate.nose) }),
      noseLengthMin: candidate.noseLengthMin,
      crossHole: { nominal: candidate.hole.nominal, lower: candidate.hole.least, upper: candidate.hole.most },
      crossHoleDrill: candidate.hole.drill,
      holeRatio: candidate.hole.nominal / d,
      wallBesideHole: (d - candidate.hole.nominal) / 2,
      wallRoundTap: (endScrew ? d - candidate.screw.major : 2 * candidate.holeToEnd - candidate.screw.major) / 2,
      holeToEnd: candidate.holeToEnd,
      bitToEnd: candidate.bitToEnd,
      seatRise: candidate.rise,
      screw: candidate.screw,
      tapDepth: endScrew ? candidate.holeToEnd : (d - candidate.hole.nominal) / 2,
      countersink: roundUp(1.1 * candidate.screw.major, either(spec.units, 0.1, 0.01)),
      mouthChamfer: either(spec.units, 0.3, 0.01),
      endChamfer: small ? either(spec.units, 0.5, 0.02) : either(spec.units, 1, 0.04),
      bodyLength,
      overhang,
      overtravel,
      holderGap: overhang - spec.bore.length - overtravel,
      tipBeyond: overtravel + Math.max(0, edgeToEnd),
      overall,
      shank: spec.units === 'mm' ? classed(shank, 'h7') : withDeviations(shank, -0.0005 * 25.4, 0),
      shouldered,
      fillet: shouldered ? Math.min(either(spec.units, 1, 0.04), (shank - d) / 2) : 0,
      bitLength,
      bitLengthMin,
      bitLengthMax,
      overBarAndNose: d + candidate.projection,
      gaps: gapsOf(d, stages, corners.middle, section.key?.taper?.windowLoss ?? 0),
      stock: {
        diameter: stockOver(spec, Math.max(shank, d)),
        length: roundUp(overall + 3, steps.whole),
        material: 'drill rod (silver steel), soft',
      },
    },
    get basis(): Basis<CutterBar> {
      return {
        diameter: chosen(
          'diameter',
          `the stiffest bar on hand that passes: ${candidate.lanes > 1 ? `${candidate.lanes} lanes, ` : ''}hole ratio, walls and projection window all met as far as they can be`,
        ),
        diameterMax: 'largest bar with a window of projections, at the worst corner of the limits',
        projection: chosen(
          'projection',
          'the least that reaches, and its setting tolerance, rounded up to a step; else the middle of the window',
        ),
        projectionMin: 'full depth: bar to mouth corner or bore, at the worst corner of the limits; or the chip’s room',
        projectionMax: 'withdrawn from first touch: bar to far wall, at the worst corner of the limits',
        projectionFloor: 'front clearance, or the coil of chip from one pass',
        setting: chosen('setting', 'how near the projection can be set: judgement'),
        lanes:
          candidate.lanes > 1
            ? 'the nose is narrower than the slot: sideways positions, spread evenly, all taken to one floor'
            : 'one lane: the nose is as wide as the slot',
        stages:
          stages.length > 1
            ? `no single projection both enters and reaches: ${stages.length} settings, each as far out as the slot cut so far lets pass, the last as far as reaches; each starts from the floor of the one before`
            : 'one setting of the projection reaches the floor',
        form: chosen(
          'form',
          endScrew
            ? 'a screw from the end clamps the bit against rocking: taken wherever it works'
            : candidate.form === 'side screw'
              ? 'with a screw from the end nothing on hand works; one through the wall leaves the end short'
              : 'the blind bore has no room for an upright bit: leaning, its edge comes nearer the end',
        ),
        incline: chosen('incline', 'the least of 10, 15, 20 and 25° that works'),
        wallAtEnd: 'a third of the blank, 1.2 mm at the least: judgement',
        rock: 'the hole’s play over the bit’s length in the bar',
        bit: chosen('bit', 'a blank on hand that the nose can be ground on, with the least hole in the bar'),
        noseWidth: chosen(
          'nose.width',
          candidate.lanes > 1
            ? 'narrow enough for the blank, wide enough to overlap'
            : 'three quarters up the slot’s width limits, or what the blank gives',
        ),
        cornerRadius: 'see section.cornerRadius',
        engaged: 'both flanks of a V, or a round nose’s arc, outside the bore at full depth; its chip lies aslant',
        noseLengthMin: 'the blank’s shoulder corners stay inside the bore at full depth',
        crossHole:
          'the blank over its broken corners and 0.08 mm of play (a round one: 0.05), then the next drill on hand',
        crossHoleDrill: 'the next drill on hand',
        holeRatio: 'cross hole over bar diameter',
        wallBesideHole: 'half of what the hole leaves',
        wallRoundTap: 'half of what the thread leaves',
        holeToEnd: endScrew
          ? 'half the hole, one screw diameter engaged, recess and chamfer; longer where no stock screw fits'
          : 'half the hole and the wall at the end',
        bitToEnd: 'hole centre to end, with the bit seated on the upper wall',
        seatRise: 'the square rides up until its corner breaks meet the hole',
        screw: chosen(
          'screw',
          endScrew
            ? 'the largest thread on hand up to 0.9 of the blank with its own half diameter of wall round it'
            : 'the largest thread on hand up to 0.9 of the blank with four threads in the wall; ground to length where none is short enough',
        ),
        tapDepth: endScrew ? 'into the cross hole, its far wall untouched' : 'through the wall into the cross hole',
        countersink: '1.1 of the thread',
        mouthChamfer: 'judgement',
        endChamfer: 'judgement',
        bodyLength: 'hub, overtravel, up to half an inch before the holder, and the end below the bit; rounded up',
        overhang: 'body length less the end below the bit',
        overtravel: 'judgement',
        holderGap: 'what is left between hub and holder when the bar is right in',
        tipBeyond:
          bar.stroke === 'push'
            ? 'overtravel and the end below the edge'
            : 'overtravel and the whole end below the edge, which looks to the holder on the pull',
        overall: 'body and three diameters of shank, within what a holder takes',
        shank: chosen(
          'shank',
          shouldered
            ? 'the next collet or holder on hand'
            : 'the body’s own size goes in a collet on hand: nothing to turn',
        ),
        shouldered: 'a shank larger than the body has a shoulder',
        fillet: 'judgement, no more than the shoulder',
        bitLength: 'the longest round figure in its window: the tail is what resists rocking',
        bitLengthMin: 'past the screw’s cup point and 0.75 mm, at the longest projection',
        bitLengthMax: 'tail corners under the bar’s surface, at the shortest projection',
        overBarAndNose: 'bar and projection: what a caliper reads',
        gaps: `worked at mid-tolerance from the chosen projection; recess ${recess} mm`,
        stock: 'the next round on hand over the shank, with 3 mm to face',
      }
    },
  }
}
