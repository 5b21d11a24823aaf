import { band, withDeviations } from '../fits/size.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { workMaterial } from '../standards/materials.ts'
import type { Basis, Reasoned } from './basis.ts'
import { touchOffX } from './bore.ts'
import { bodyTolerance, cornersOf, type Nose, overtravel } from './candidates.ts'
import { gapsOf, lanesOf, leastHolderGap, stockOver } from './cutter-bar.ts'
import { either, roundDown, roundUp, stepsOf } from './makeable.ts'
import { classed } from './section.ts'
import { chipRoomFor, noseForLanes } from './settings.ts'
import type { Corners } from './stages.ts'
import type { GroundBar, Section } from './types.ts'
import { largestBar, projectionFloor, projectionLeast, projectionMost, type Setting } from './window.ts'

/**
 * Back of a round blank to the flat of a nose ground on its front: as far as the nose's corners, rounded by `corner`, lie on the round.
 * For sharp ones R₀ + √(R₀² − w²/4). All mm.
 */
export const backToNoseMost = (blank: number, noseWidth: number, corner = 0): number =>
  blank / 2 + touchOffX(blank / 2, noseWidth, corner)

/** How near nose and neck are ground to one another. Source: judgement. */
const groundWithin = (spec: Spec, bar: BarSpec): number =>
  spec.stated.includes('tooling.bar.setting') ? bar.setting : either(spec.units, 0.02, 0.0008)

/** A neck and nose that could be ground. */
interface Ground {
  readonly nose: Nose
  readonly corners: Corners
  readonly blank: number
  readonly neck: number
  readonly most: number
  readonly projection: number
  readonly projectionMin: number
  readonly projectionMax: number
  readonly setting: number
  /** How far it is from working, mm; 0 or less where it works. */
  readonly short: number
}

const nosesOf = (spec: Spec, bar: BarSpec, section: Section): readonly Nose[] => {
  const { widthLimits, cornerRadius } = section
  const full = bar.nose.width ?? widthLimits.lower + 0.75 * band(widthLimits)
  const single = { width: full, cornerRadius, single: full >= widthLimits.lower - 1e-9 }
  if (bar.nose.width !== undefined) return [single]
  const lanes = [2, 3].map((count) => noseForLanes(spec, section.width, cornerRadius, count))
  return [
    single,
    ...lanes.filter((width) => width < section.width).map((width) => ({ width, cornerRadius, single: false })),
  ]
}

/** The thickest neck that this nose can be ground with, or the one asked for; where none has room, the one that is least short of it. */
const groundFor = (spec: Spec, bar: BarSpec, section: Section, nose: Nose): Ground => {
  const corners = cornersOf(bar, section, nose, chipRoomFor(spec, bar))
  const { back, front } = corners
  const setting = groundWithin(spec, bar)
  const steps = stepsOf(spec.units)
  const blank = roundDown(
    section.bore.lower - bar.clearance.back - bar.clearance.withdrawn,
    either(spec.units, 0.05, 0.002),
  )
  const corner = Math.min(nose.cornerRadius, nose.width / 2)
  const most = backToNoseMost(blank - bodyTolerance(spec, blank), nose.width, corner)
  const at = (neck: number): Ground => {
    const projectionMin = Math.max(...front.map((lane) => projectionLeast(lane, neck)))
    const projectionMax = Math.min(...back.map((lane) => projectionMost(lane, neck)))
    const wanted = roundUp(projectionMin + setting, steps.fine)
    const projection = bar.projection ?? (Number.isFinite(wanted) ? wanted : section.sideDepth)
    const room = Math.min(projectionMax, most - neck) - setting
    return {
      nose,
      corners,
      blank,
      neck,
      most,
      projection,
      projectionMin,
      projectionMax: Math.min(projectionMax, most - neck),
      setting,
      short: Math.max(projection - room, projectionMin + setting - projection),
    }
  }
  if (bar.diameter !== undefined) return at(bar.diameter)
  const step = either(spec.units, 0.1, 0.005)
  let best: Ground | undefined
  for (let neck = roundDown(blank - step, step); neck > 0.3 * blank; neck = roundDown(neck - step, step)) {
    const ground = at(neck)
    if (!best || ground.short < best.short - 1e-9) best = ground
    if (ground.short <= 1e-9) return ground
  }
  return best ?? at(roundDown(blank / 2, step))
}

/** Shortest head that bears its nose: one and a quarter nose widths, two and a half projections, 3 mm. Source: judgement. */
const headFor = (spec: Spec, { nose, projection }: Ground): number =>
  roundUp(Math.max(1.25 * nose.width, 2.5 * projection, 3), stepsOf(spec.units).half)

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)

/** A bar of one piece, and whether it has room in this bore. */
interface GroundChoice {
  readonly works: boolean
  readonly reasoned: Reasoned<GroundBar>
}

/**
 * The stiffest bar of one piece: neck and nose ground from a round that just passes the bore. A nose as wide as the slot first; in lanes where
 * that has no room or its neck gains a sixth. It needs no hole and no screw, so that it goes where no bit can be held; it cannot be set.
 */
export const groundBarOf = (spec: Spec, bar: BarSpec, section: Section): GroundChoice => {
  const all = nosesOf(spec, bar, section).map((nose) => groundFor(spec, bar, section, nose))
  const worth = ({ short, neck, corners }: Ground) =>
    short > 1e-9 ? -short : neck / (7 / 6) ** (corners.middle.length - 1)
  const ground = all.reduce((best, other) => (worth(other) > worth(best) ? other : best))
  const { neck, nose, blank, corners, projection, projectionMin, projectionMax, setting } = ground
  const steps = stepsOf(spec.units)
  const head = headFor(spec, ground)
  const edgeToEnd = bar.stroke === 'push' ? 0 : head
  const neckLength = roundUp(
    spec.bore.length + overtravel + leastHolderGap(spec.bore.length) + edgeToEnd - head,
    steps.whole,
  )
  const shank = bar.shank ?? spec.shop.collets.find((collet) => collet >= blank - 1e-9) ?? roundUp(blank, steps.whole)
  const shankLength = roundUp(
    Math.min(Math.max(3 * shank, either(spec.units, 30, 1.25)), either(spec.units, 75, 3)),
    either(spec.units, 5, 0.25),
  )
  const overall = head + neckLength + shankLength
  const overhang = head + neckLength - edgeToEnd
  const material = workMaterial(spec.hub.material)
  const usual = material?.rake[2] ?? 8
  const rake = bar.rake ?? Math.min(usual, 10)
  const endRelief = material?.endRelief[2] ?? 5
  const sideRelief = 2
  const single = corners.middle.length === 1
  const stages = [{ projection, projectionMin, projectionMax, from: section.touchOff, to: section.floor }]
  const noseTolerance = either(spec.units, 0.02, 0.001)
  const chosen = (path: string, why: string) =>
    spec.stated.includes(`tooling.bar.${path}`) ? 'given in the spec' : why
  const relieved = 'head length by the relief'
  return {
    works: ground.short <= 1e-9,
    reasoned: {
      sizes: {
        form: 'one piece',
        diameter: withDeviations(neck, -bodyTolerance(spec, neck), 0),
        diameterMax: Math.min(...[...corners.back, ...corners.front].map(largestBar)),
        projection,
        projectionMin,
        projectionMax,
        projectionFloor: projectionFloor(corners.front[0] as Setting),
        setting,
        lanes: lanesOf(corners, stages, neck),
        stages,
        noseWidth: nose.width,
        cornerRadius: nose.cornerRadius,
        blank: withDeviations(blank, -bodyTolerance(spec, blank), 0),
        backToNose: withDeviations(neck + projection, -setting, setting),
        backToNoseMost: ground.most,
        eccentricity: (blank - neck) / 2,
        headLength: head,
        rake,
        endRelief,
        sideRelief,
        noseTolerance: single
          ? {
              nominal: nose.width,
              lower: Math.min(section.widthLimits.lower, nose.width),
              upper: Math.max(nose.width, Math.min(section.widthLimits.upper, nose.width + noseTolerance)),
            }
          : withDeviations(nose.width, -noseTolerance, noseTolerance),
        widthAtHeel: nose.width - 2 * head * tan(sideRelief),
        endSetBack: head * tan(endRelief),
        neckLength,
        fillet: Math.min(either(spec.units, 1, 0.04), (shank - neck) / 2),
        overhang,
        overtravel,
        holderGap: overhang - spec.bore.length - overtravel,
        tipBeyond: overtravel + edgeToEnd,
        overall,
        shank: spec.units === 'mm' ? classed(shank, 'h7') : withDeviations(shank, -0.0005 * 25.4, 0),
        overBarAndNose: neck + projection,
        gaps: gapsOf(neck, stages, corners.middle, section.key?.taper?.windowLoss ?? 0),
        stock: {
          diameter: stockOver(spec, Math.max(shank, blank)),
          length: roundUp(overall + 3, steps.whole),
          material: 'drill rod (silver steel), hardened and drawn to straw',
        },
      },
      get basis(): Basis<GroundBar> {
        return {
          form: chosen('form', 'no bit can be held in a bar that passes this bore: neck and nose of one piece'),
          diameter: chosen('diameter', 'the thickest neck that leaves the nose its window, in round figures'),
          diameterMax: 'largest bar with a window of projections, at the worst corner of the limits',
          projection: chosen('projection', 'the least that reaches, and what grinding may miss it by'),
          projectionMin:
            'full depth: neck to mouth corner or bore, at the worst corner of the limits; or the chip’s room',
          projectionMax: 'withdrawn from first touch: neck to far wall; no more than the blank gives',
          projectionFloor: 'front clearance, or the coil of chip from one pass',
          setting: chosen('setting', 'how near it can be ground: judgement'),
          lanes: single ? 'one lane: the nose is as wide as the slot' : 'the nose is narrower than the slot',
          stages: 'ground, not set: one projection',
          noseWidth: chosen(
            'nose.width',
            single ? 'three quarters up the slot’s width limits' : 'narrow, so that the neck can be thicker',
          ),
          cornerRadius: 'see section.cornerRadius',
          engaged: 'the whole flat nose',
          blank: 'the bore less the clearances behind and withdrawn, in round figures',
          backToNose: 'neck and projection: what a micrometer reads over both',
          backToNoseMost: 'R + √(R² − w²/4) of the smallest blank: the nose’s corners on its round',
          eccentricity: 'half of blank less neck: their backs are one line',
          headLength: '1.25 nose widths, 2.5 projections, 3 mm: judgement',
          rake: bar.rake === undefined ? `for ${spec.hub.material}, no more than 10°` : 'given in the spec',
          endRelief: `for ${spec.hub.material}`,
          sideRelief: 'judgement: 2° a side',
          noseTolerance: 'its own limits, inside the slot’s',
          widthAtHeel: `nose width less twice the ${relieved}`,
          endSetBack: relieved,
          neckLength: 'hub, overtravel and up to half an inch before the holder, less the head; rounded up',
          fillet: 'judgement, no more than the shoulder',
          overhang: 'neck and head, edge to holder',
          overtravel: 'judgement',
          holderGap: 'what is left between hub and holder when the bar is right in',
          tipBeyond: bar.stroke === 'push' ? 'overtravel: the edge is the bar’s end' : 'overtravel and the head',
          overall: 'head, neck and three diameters of shank, within what a holder takes',
          shank: chosen('shank', 'the next collet or holder on hand over the blank'),
          overBarAndNose: 'neck and projection',
          gaps: 'worked at mid-tolerance',
          stock: 'the next round on hand over the shank, with 3 mm to face',
        }
      },
    },
  }
}
