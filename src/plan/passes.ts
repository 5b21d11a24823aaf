import type { Basis } from '../dimensions/basis.ts'
import { touchOffX } from '../dimensions/bore.ts'
import { engagedMost, targetOf as floorOf } from '../dimensions/engaged.ts'
import { infeedPerPass } from '../dimensions/settings.ts'
import type { BarInBore, Section } from '../dimensions/types.ts'
import type { Loads } from '../mechanics/loads.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { workMaterial } from '../standards/materials.ts'
import { boresOf, infeedIn } from './bores.ts'
import { centringOf } from './centring.ts'
import { crownReading, cutsOf, type Cutting, settingsOf } from './cuts.ts'
import { dialOf, readingAt, slideAngles } from './dial.ts'
import { edgeOf } from './engaged.ts'
import { evenPasses, passesFor } from './schedule.ts'
import { gateByOf, quarterOfLimits } from './measuring.ts'
import { stopsOf } from './stops.ts'
import { targetOf, yieldingOf } from './target.ts'
import { timeOf } from './time.ts'
import type { Plan } from './types.ts'

/** Forward, back and the dial, in seconds. Source: judgement. */
const secondsPerPass = 4.5

/**
 * Where to stop and measure: at the quarters of the first lane's infeed, after whole passes, with the across that the dial promises there.
 * The slot stands behind it by the lag.
 */
const checksOf = (section: Section, touchOff: number, infeed: number, perPass: number): Plan['checks'] =>
  [0.25, 0.5, 0.75, 1].map((part) => {
    const after = part === 1 ? passesFor(infeed, perPass) : Math.round((part * infeed) / perPass + 1e-6)
    return { after, across: section.boreRadius + touchOff + Math.min(after * perPass, infeed) }
  })

/** Why each figure of the plan is what it is. */
export const planBasis: Basis<Plan> = {
  infeedPerPass: 'as given; else the usual for the material, or the most that bar and bit bear',
  passes: 'infeed over what is taken in a pass, of every lane, rounded up; no spring passes in it',
  keyways: 'the angles in the spec',
  minutes: '4.5 s a stroke, judgement; measuring and stoning not counted',
  lanes: 'see bar.lanes: all go to one floor, none is set to nought again',
  checks: 'the quarters of the first lane, after whole passes',
  dial: 'to the last whole mark before the floor; the rest is found by measuring',
  slide: 'sine of the angle from the bed’s axis: 30° halves a mark, 5.739° makes a tenth of it',
  settings: 'see bar.stages; their ends on marks of the dial, toward shallow',
  cuts: 'no pass asks more force than the whole nose at the planned infeed, or takes more than twice of it; in marks or halves of one',
  target:
    'floor and the least that spring passes leave, where the bar always gives way; else floor and the lower end of the lag at a full cut. Across at mid-tolerance, bore as measured or at mid-tolerance; to the mark, toward shallow',
  bores: 'across held, the bore as found; left: beyond the last gate',
  sharpNose: 'corners of no radius touch the bore sooner: the difference of the two touches',
  missingOnDial: 'what the dial reads for one of infeed; between two floors each slot is short by half',
  centring:
    'x at touch over nose width, both less the corners’ radius; a quarter of the offset that the fit can lose, no more than a quarter of 0.25 mm (.010 in)',
  gateBy: 'see measuring.toBore',
  withdraw: 'as the bar’s clearance when drawn back',
  stroke: 'judgement: 3 mm clear before the bore; see bar.overtravel',
  tram: 'a quarter of the limits of across, no less than 0.01 mm (.0005 in)',
  time: 'judgement: 3 s at the dial, 40 mm/s (1-1/2 in/s) by hand; 3 min to measure at a gate, 6 to stone, 8 to set the bit, 2 to turn the work on',
}

/** Largest size between two floors that stand right opposite. */
const floorsMost = (section: Section): number =>
  section.spline?.floorToFloor?.upper ?? 2 * (section.acrossLimits.upper - section.boreRadius)

/** Clear before the bore at the start of a stroke. */
const before = (spec: Spec): number => (spec.units === 'mm' ? 3 : 25.4 / 8)

/**
 * Infeed for each mm that is missing of what is measured: half between two floors; two flats of a socket move apart by twice the sine of half
 * its corner's angle, 2 cos(180°/n).
 */
const missingShare = (section: Section, gateBy: Plan['gateBy']): number => {
  if (section.socket) return 1 / (2 * Math.cos(Math.PI / section.at.length))
  return gateBy === 'floor to floor' ? 1 / 2 : 1
}

/**
 * The whole plan of one bar in one bore: passes of even force in marks of the dial, gates, target, what another bore asks, centring, time.
 * `loads` undefined where nothing is known of the material: no forces, no lag, and the target is the floor itself.
 */
export const planOf = (spec: Spec, asked: BarSpec, bar: BarInBore, section: Section, loads?: Loads): Plan => {
  const perPass = infeedPerPass(spec, asked)
  const { material } = spec.hub
  const exponent = workMaterial(material)?.kienzle.exponent ?? 0.25
  const single = bar.lanes.length === 1
  const flat = section.kind !== 'groove' && section.kind !== 'socket'
  const noseWidth = flat && single ? section.width : bar.noseWidth
  const wholeEdge = engagedMost(section, { width: noseWidth }).edge
  const [first] = bar.lanes
  const zero = first?.touchOff ?? section.touchOff
  const dial = dialOf(asked, zero, perPass)
  const yielding = yieldingOf(loads, material, engagedMost(section, { width: bar.noseWidth }).edge, perPass)
  const target = targetOf(section, dial, yielding, material, { force: loads?.cuttingForce ?? 0 })
  // A slit goes on past its outside.
  const beyond = section.slit ? floorOf(section) - zero - (first?.infeed ?? 0) : 0
  const infeed = (diameter: number) => beyond + (first ? infeedIn(section, first, noseWidth, diameter) : section.infeed)
  const { measured } = spec.bore
  const { lower, upper } = spec.bore.diameter
  const least = measured === undefined ? Math.min(infeed(lower), infeed(upper)) : infeed(measured)
  const short = Math.min(0, target.allowance)
  const stops = stopsOf(
    dial,
    (least + short) * dial.perInfeed,
    (infeed(2 * section.boreRadius) + short) * dial.perInfeed,
    crownReading(section, dial, loads?.lag.most ?? 0),
    section.slit && readingAt(dial, section.slit.halfInfeedFrom),
  )
  const settings = settingsOf(bar, dial, stops.last)
  const gateBy = gateByOf(section)
  const cutting: Cutting = {
    units: spec.units,
    section,
    bar,
    noseWidth,
    wholeEdge,
    dial,
    planned: perPass,
    exponent,
    yielding,
    target,
    stops,
    ...(gateBy === 'floor to floor' && { floorToFloor: floorsMost(section) }),
    ...(gateBy === 'plug and blocks' && { plug: section.bore.lower }),
  }
  const cuts = cutsOf(cutting, settings)
  const lanes = bar.lanes.map((lane) => {
    const edge = edgeOf(section, { width: noseWidth, offset: lane.offset })
    return {
      offset: lane.offset,
      touchOff: lane.touchOff,
      infeed: lane.infeed,
      passes: passesFor(lane.infeed, perPass),
      touchReading: readingAt(dial, lane.touchOff),
      evenPasses: evenPasses({ edge, whole: wholeEdge, planned: perPass, exponent }, lane.touchOff, floorOf(section))
        .length,
    }
  })
  const deepest = Math.max(...lanes.map((lane) => lane.infeed))
  const whole = deepest * dial.perInfeed
  // To the mark short of the floor: what is left is found by measuring.
  const marks = Math.floor(whole / dial.mark + 1e-3)
  const passes = lanes.reduce((sum, lane) => sum + lane.passes, 0)
  // The middle is found with the nose in the middle, whatever lanes come after.
  const corner = Math.min(section.cornerRadius, noseWidth / 2)
  const middleTouch = touchOffX(section.boreRadius, noseWidth, corner)
  const slots = section.at.length
  const stroke = {
    before: before(spec),
    past: bar.overtravel,
    length: before(spec) + spec.bore.length + bar.overtravel,
  }
  return {
    infeedPerPass: perPass,
    passes,
    keyways: slots,
    minutes: (slots * passes * secondsPerPass) / 60,
    lanes,
    checks: first ? checksOf(section, first.touchOff, first.infeed, perPass) : [],
    dial: {
      mark: dial.mark,
      reads: dial.reads,
      target: marks * dial.mark,
      marks,
      left: Math.max(0, whole - marks * dial.mark),
      runs: asked.machine === 'lathe' && asked.points === 'front' ? 'out' : 'in',
      perInfeed: dial.perInfeed,
      ...(dial.slide !== undefined && { slide: dial.slide }),
      finest: dial.finest,
      crown: crownReading(section, dial, loads?.lag.most ?? 0),
      acrossAtZero: section.boreRadius + zero,
    },
    slide: slideAngles(dial.mark),
    settings,
    cuts,
    target,
    bores: { reading: stops.last, rows: boresOf(spec, infeed, stops.last / dial.perInfeed, dial.perInfeed) },
    ...(flat && { sharpNose: middleTouch - touchOffX(section.boreRadius, noseWidth, 0) }),
    missingOnDial: dial.perInfeed * missingShare(section, gateBy),
    gateBy,
    ...(flat && {
      centring: centringOf(section, noseWidth, middleTouch, dial, spec.units, Math.min(corner, 0.45 * noseWidth)),
    }),
    withdraw: asked.clearance.withdrawn,
    stroke,
    tram: quarterOfLimits(section, spec.units),
    time: timeOf(cuts, stroke.length, slots, section.kind === 'spline'),
  }
}
