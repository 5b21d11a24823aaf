import type { Design } from '../design.ts'
import type {
  BarInBore,
  CutterBar,
  GroundBar,
  GuideBushing,
  KeySizes,
  PlugGauge,
  Section,
  ToolBit,
} from '../dimensions/types.ts'
import { takesPlug } from '../dimensions/plug-gauge.ts'
import type { Size } from '../fits/size.ts'
import type { Gate, Indexing, LaneCut, Measuring, Plan } from '../plan/types.ts'
import { type Budget, spreadOf } from '../plan/errors.ts'
import { rounded } from './json.ts'

/**
 * Everything that follows from a spec, as one plain object for other programs: format `borewright-report/1`. Always millimetres,
 * newtons and degrees; numbers rounded to 1e-6. Names are never changed within a format number, only added. A section that does
 * not apply is absent.
 */
export const report = (design: Design): Report =>
  rounded({
    format: 'borewright-report/1',
    name: design.spec.name,
    verdict: design.verdict,
    units: design.spec.units,
    section: sectionOf(design.section),
    bar: design.bar ? barOf(design.bar) : design.groundBar && groundBarOf(design.groundBar),
    bushing: design.bushing && bushingOf(design.bushing),
    press: design.bushing && pressOf(design.bushing, design.pressLoads),
    bit: design.bit && bitOf(design.bit),
    plug: takesPlug(design.section) ? plugOf(design.plug) : undefined,
    ...aidsOf(design),
    loads: design.loads && loadsOf(design.loads),
    key: design.section.key && keyOf(design.section.key, design.keyLoads),
    joint: design.jointLoads && { ...design.jointLoads },
    plan: design.plan && planOf(design.plan, design.loads, design.indexing),
    measuring: measuringOf(design.measuring),
    hubWeight: design.hubWeight,
    indexing: design.indexing && indexingOf(design.indexing),
    errors: design.errors && errorsOf(design.errors),
    ways: design.ways,
    findings: design.findings,
    basis: design.basis,
  }) as Report

/** The report's outer shape; the sections hold numbers, words and lists under the names of the format. */
export interface Report {
  readonly format: 'borewright-report/1'
  readonly name: string
  readonly verdict: Design['verdict']
  readonly units: Design['spec']['units']
  readonly section: ReportSection
  readonly bar?: ReportSection
  readonly bushing?: ReportSection
  readonly press?: ReportSection
  readonly bit?: ReportSection
  readonly plug?: ReportSection
  readonly borePlug?: ReportSection
  readonly acrossNoGo?: ReportSection
  readonly widthGauge?: ReportSection
  readonly hubRing?: ReportSection
  readonly bitTemplates?: ReportSection
  readonly settingStep?: ReportSection
  readonly indexPlate?: ReportSection
  readonly drillJig?: ReportSection
  readonly pressSpacer?: ReportSection
  readonly pusher?: ReportSection
  /** Of a round hub as long as its bore, kg. */
  readonly hubWeight?: number
  readonly loads?: ReportSection
  readonly key?: ReportSection
  /** Splines and sockets: what their flanks carry. */
  readonly joint?: ReportSection
  readonly plan?: ReportSection
  readonly measuring: ReportSection
  readonly indexing?: ReportSection
  readonly errors?: ReportSection
  readonly ways?: Design['ways']
  readonly findings: Design['findings']
  readonly basis: Design['basis']
}

export type ReportSection = Readonly<Record<string, unknown>>

const limits = (size: Size): readonly [number, number] => [size.lower, size.upper]
const whole = (size: Size) => ({ nominal: size.nominal, lower: size.lower, upper: size.upper })

const sectionOf = (section: Section): ReportSection => ({
  boreRadius: section.boreRadius,
  boreLimits: limits(section.bore),
  width: section.width,
  widthLimits: limits(section.widthLimits),
  mouth: section.mouth,
  sagitta: section.sagitta,
  floor: section.floor,
  crownDepth: section.crownDepth,
  crownDepthLimits: limits(section.crownDepthLimits),
  sideDepth: section.sideDepth,
  sideDepthLimits: limits(section.sideDepthLimits),
  across: section.across,
  acrossLimits: limits(section.acrossLimits),
  touchOff: section.touchOff,
  infeed: section.infeed,
  cornerRadius: section.cornerRadius,
  cornerLimits: section.cornerLimits && limits(section.cornerLimits),
  cornerReach: section.cornerReach,
  area: section.area,
  at: section.at,
  land: section.land,
  measurable: section.measurable,
  // A keyway's across is given; of every other kind the floor is.
  kind: section.kind === 'keyway' ? undefined : section.kind,
  floorLimits: section.floorLimits && limits(section.floorLimits),
  spline: section.spline && {
    ...section.spline,
    floorToFloor: section.spline.floorToFloor?.nominal,
    floorToFloorLimits: section.spline.floorToFloor && limits(section.spline.floorToFloor),
  },
  socket: section.socket && {
    ...section.socket,
    acrossFlats: (section.socket.acrossFlats.lower + section.socket.acrossFlats.upper) / 2,
    acrossFlatsLimits: limits(section.socket.acrossFlats),
  },
  slit: section.slit,
  groove: section.groove && {
    ...section.groove,
    depth: section.crownDepth,
    depthLimits: limits(section.groove.depth),
  },
})

/** What is said of a bar whichever way it holds its edge. */
const inBoreOf = (bar: BarInBore): ReportSection => ({
  diameter: bar.diameter.nominal,
  diameterLimits: limits(bar.diameter),
  diameterMax: bar.diameterMax,
  projection: bar.projection,
  projectionMin: bar.projectionMin,
  projectionMax: bar.projectionMax,
  projectionFloor: bar.projectionFloor,
  setting: bar.setting,
  overBarAndNose: bar.overBarAndNose,
  lanes: bar.lanes,
  stages: bar.stages,
  noseWidth: bar.noseWidth,
  cornerRadius: bar.cornerRadius,
  engaged: bar.engaged,
  overall: bar.overall,
  overhang: bar.overhang,
  overtravel: bar.overtravel,
  holderGap: bar.holderGap,
  tipBeyond: bar.tipBeyond,
  shank: bar.shank.nominal,
  shankLimits: limits(bar.shank),
  gapBack: bar.gaps.back,
  gapFront: bar.gaps.front,
  gapFrontAt: bar.gaps.frontAt,
  stock: bar.stock,
})

const barOf = (bar: CutterBar): ReportSection => ({
  form: bar.form,
  ...inBoreOf(bar),
  incline: bar.form === 'inclined' ? bar.incline : undefined,
  wallAtEnd: bar.wallAtEnd,
  rock: bar.rock,
  noseLengthMin: bar.noseLengthMin,
  bitShape: bar.bit.shape,
  bitSize: bar.bit.size,
  bitCornerBreak: bar.bit.cornerBreak,
  bitLength: bar.bitLength,
  bitLengthMin: bar.bitLengthMin,
  bitLengthMax: bar.bitLengthMax,
  crossHole: bar.crossHole.nominal,
  crossHoleLimits: limits(bar.crossHole),
  crossHoleDrill: bar.crossHoleDrill,
  holeRatio: bar.holeRatio,
  wallBesideHole: bar.wallBesideHole,
  wallRoundTap: bar.wallRoundTap,
  holeToEnd: bar.holeToEnd,
  bitToEnd: bar.bitToEnd,
  seatRise: bar.seatRise,
  screw: bar.screw.thread,
  screwCallout: bar.screw.callout,
  screwPitch: bar.screw.pitch,
  screwLength: bar.screw.length,
  screwLengthMin: bar.screw.lengthMin,
  screwLengthMax: bar.screw.lengthMax,
  screwEngaged: bar.screw.engaged,
  tapDrill: bar.screw.tapDrill.diameter,
  tapDrillName: bar.screw.tapDrill.name,
  tapDepth: bar.tapDepth,
  countersink: bar.countersink,
  mouthChamfer: bar.mouthChamfer,
  endChamfer: bar.endChamfer,
  bodyLength: bar.bodyLength,
  shouldered: bar.shouldered,
  fillet: bar.shouldered ? bar.fillet : undefined,
})

const groundBarOf = (bar: GroundBar): ReportSection => ({
  form: bar.form,
  ...inBoreOf(bar),
  blank: bar.blank.nominal,
  blankLimits: limits(bar.blank),
  backToNose: bar.backToNose.nominal,
  backToNoseLimits: limits(bar.backToNose),
  backToNoseMost: bar.backToNoseMost,
  eccentricity: bar.eccentricity,
  headLength: bar.headLength,
  neckLength: bar.neckLength,
  rake: bar.rake,
  endRelief: bar.endRelief,
  sideRelief: bar.sideRelief,
  noseWidthLimits: limits(bar.noseTolerance),
  widthAtHeel: bar.widthAtHeel,
  endSetBack: bar.endSetBack,
  fillet: bar.fillet,
})

const bushingOf = (bushing: GuideBushing): ReportSection => ({
  outside: whole(bushing.outside),
  length: bushing.length,
  slotWidth: bushing.slotWidth.nominal,
  slotWidthLimits: limits(bushing.slotWidth),
  floorFromBore: bushing.floorFromBore,
  floorFromAxis: bushing.floorFromAxis,
  backWall: bushing.backWall.nominal,
  backWallLimits: limits(bushing.backWall),
  cornerWall: bushing.cornerWall,
  plungeDepth: bushing.plungeDepth,
  collarDiameter: bushing.collarDiameter,
  collarThickness: bushing.collarThickness,
  lead: bushing.lead,
  undercut: bushing.undercut,
  shims: bushing.shims,
  shimPacks: bushing.packs,
  shimWidth: bushing.shim.width,
  shimLength: bushing.shim.length,
  shimHeadWidth: bushing.shim.headWidth,
  shimHeadLength: bushing.shim.headLength,
  shimHole: bushing.shim.hole,
  passes: bushing.passes,
  plateHoleRadius: bushing.plateHoleRadius,
  stock: bushing.stock,
  locating: bushing.locating,
})

/** What the push asks of press and broach, N and mm. */
const pressOf = (bushing: GuideBushing, loads: Design['pressLoads']): ReportSection => ({
  force: loads?.force,
  forceOfPasses: loads?.passes,
  capacity: loads?.capacity,
  pull: loads?.pull,
  columnMargin: loads?.columnMargin,
  forceOfTooth: loads?.tooth,
  hubMost: loads?.hubMost,
  spread: loads?.spread,
  hubStress: loads?.hubStress,
  hubStressMost: loads?.hubStressMost,
  overError: loads?.overError,
  teethInCut: bushing.teethInCut.most,
  teethInCutLeast: bushing.teethInCut.least,
  toothPitch: bushing.toothPitch,
  bite: bushing.bite,
  stroke: bushing.stroke,
  below: bushing.below,
  fallsFree: bushing.fallsFree,
  daylight: bushing.daylight,
  raised: bushing.raised,
  tableToRam: bushing.tableToRam,
})

/** Forces on bar and bit, N, mm, N mm, degrees and N/mm². Where there is a band, its greater end is the plain name's. */
const loadsOf = (loads: NonNullable<Design['loads']>): ReportSection => ({
  cuttingForce: loads.cuttingForce,
  cuttingForceMost: loads.cuttingForceMost,
  thrust: loads.thrust.most,
  thrustLimits: [loads.thrust.least, loads.thrust.most],
  thrustMost: loads.thrustMost,
  deflection: [loads.deflection.least, loads.deflection.most],
  lag: loads.lag.most,
  lagLimits: [loads.lag.least, loads.lag.most],
  residual: loads.residual.most,
  residualLimits: [loads.residual.least, loads.residual.most],
  machineGive: loads.machineGive,
  digIn: loads.digIn,
  holeStress: loads.holeStress,
  rootStress: loads.rootStress,
  noseStress: loads.noseStress,
  barSteel: loads.barSteel,
  barYield: loads.barYield,
  neckStress: loads.neckStress,
  screwTorque: loads.screwTorque,
  screwForce: loads.screwForce,
  screwForceLeast: loads.screwForceLeast,
  bitHeld: loads.bitHeld,
  bends: loads.bends,
  machineGiveKnown: loads.machineGiveKnown,
  holeStressExpected: loads.holeStressExpected,
  rootStressLimits: [loads.rootStressLimits.least, loads.rootStressLimits.most],
  pushMost: loads.pushMost,
  infeedMost: loads.infeedMost,
  feedForceAtHandle: loads.feedForceAtHandle,
  twist: loads.twist,
  twistOfBar: loads.twistOfBar,
  sideways: loads.sideways,
  slip: loads.slip,
})

/** ± of depth, width and position by each way; `often`: 95 of 100 come out within it. */
const errorsOf = (errors: NonNullable<Design['errors']>): ReportSection =>
  Object.fromEntries(
    Object.entries(errors).map(([by, budgets]) => [
      by,
      Object.fromEntries(
        (budgets as readonly Budget[]).map(({ of, ...budget }) => [of, { ...budget, often: spreadOf(budget) }]),
      ),
    ]),
  )

const bitOf = (bit: ToolBit): ReportSection => ({
  form: bit.form,
  includedAngle: bit.includedAngle,
  faceAngle: bit.faceAngle,
  tipRadius: bit.tipRadius,
  flankLength: bit.flankLength,
  flankSwing: bit.flankSwing,
  flankTilt: bit.flankTilt,
  noseEndRadius: bit.noseEndRadius,
  shape: bit.shape,
  size: bit.size,
  cornerBreak: bit.cornerBreak,
  noseWidth: bit.noseWidth.nominal,
  noseWidthLimits: limits(bit.noseWidth),
  noseWidthAsGround: limits(bit.groundWidth),
  noseLength: bit.noseLength,
  noseLengthMin: bit.noseLengthMin,
  cornerRadius: bit.cornerRadius,
  rake: bit.rake,
  endRelief: bit.endRelief,
  sideRelief: bit.sideRelief,
  backTaper: bit.backTaper,
  backTaperEffective: bit.backTaperEffective,
  neckRadius: bit.neckRadius,
  widthAtHeel: bit.widthAtHeel.nominal,
  widthAtHeelLimits: limits(bit.widthAtHeel),
  widthAtNeck: bit.widthAtNeck.nominal,
  widthAtNeckLimits: limits(bit.widthAtNeck),
  neckUnder: bit.neckUnder.nominal,
  neckUnderLimits: limits(bit.neckUnder),
  endSetBack: bit.endSetBack.nominal,
  endSetBackLimits: limits(bit.endSetBack),
  faceDrop: bit.faceDrop.nominal,
  faceDropLimits: limits(bit.faceDrop),
  length: bit.length,
  lengthMin: bit.lengthMin,
  lengthMax: bit.lengthMax,
  angleTolerance: bit.angleTolerance,
  regrinds: bit.regrinds,
  regrindStep: bit.regrindStep,
  widthPerRegrind: bit.widthPerRegrind,
  lanes: bit.lanes,
  flat: bit.flat,
  edgeHeight: bit.edgeHeight,
  edgeHeightLimits: bit.edgeLimits && limits(bit.edgeLimits),
})

const plugOf = (plug: PlugGauge): ReportSection => ({ ...plug })

/** Gauges and aids say in the report what they say in the design. */
const aidsOf = (design: Design) => ({
  bitTemplates: design.bitTemplates,
  borePlug: design.borePlug,
  acrossNoGo: design.acrossNoGo,
  widthGauge: design.widthGauge,
  hubRing: design.hubRing,
  settingStep: design.settingStep,
  indexPlate: design.indexPlate,
  drillJig: design.drillJig,
  pressSpacer: design.pressSpacer,
  pusher: design.pusher,
})

/** The key; torques in N mm. */
const keyOf = (key: KeySizes, loads: Design['keyLoads']): ReportSection => ({
  torqueShear: loads?.torqueShear,
  torqueBearingHub: loads?.torqueBearingHub,
  torqueBearingShaft: loads?.torqueBearingShaft,
  hubWall: loads?.hubWall,
  length: loads?.length,
  torque: loads?.torque,
  weakest: loads?.weakest,
  play: loads?.play,
  playLimits: loads?.playLimits,
  offsetWithin: loads?.offsetWithin,
  lostToTenth: loads?.lostToTenth,
  lostAsFound: loads?.lostAsFound,
  offsetMost: loads?.offsetMost,
  leadMost: loads?.leadMost,
  shaftLeft: loads?.shaftLeft,
  clearanceConcentric: loads?.topClearances && limits(loads.topClearances.concentric),
  clearanceHubDown: loads?.topClearances && limits(loads.topClearances.hubDown),
  clearanceOtherWay: loads?.topClearances && limits(loads.topClearances.otherWay),
  taper: key.taper && {
    rate: key.taper.rate,
    tilt: key.taper.tilt,
    acrossShallow: whole(key.taper.acrossShallow),
    windowLoss: key.taper.windowLoss,
  },
  designation: key.designation,
  source: key.source,
  nominalWidth: key.nominalWidth,
  width: key.width && whole(key.width),
  height: key.height && whole(key.height),
  chamfer: key.chamfer && whole(key.chamfer),
  shaftAcross: key.shaft && whole(key.shaft.across),
  shaftDepth: key.shaft?.depth,
  shaftSideDepth: key.shaft?.sideDepth,
  shaftWidth: key.shaft && whole(key.shaft.width),
  topClearance: key.topClearance && limits(key.topClearance),
})

/** Passes and gates, mm and N. Readings are the dial's own, from its zero at first touch of the first lane. */
const planOf = (plan: Plan, loads: Design['loads'], indexing: Indexing | undefined): ReportSection => ({
  infeedPerPass: plan.infeedPerPass,
  passes: plan.passes,
  springPasses: loads?.springPasses,
  minutes: plan.minutes,
  lanes: plan.lanes,
  checks: plan.checks,
  dial: plan.dial,
  index: indexing?.slots,
  slide: plan.slide,
  target: plan.target,
  settings: plan.settings,
  cuts: plan.cuts.map((cut) => cutOf(cut)),
  bores: plan.bores,
  sharpNose: plan.sharpNose,
  missingOnDial: plan.missingOnDial,
  centring: plan.centring,
  withdraw: plan.withdraw,
  stroke: plan.stroke,
  tram: plan.tram,
  time: plan.time,
})

/** Without its single strokes, which follow from its runs. */
const cutOf = (cut: LaneCut): ReportSection => ({
  setting: cut.setting,
  lane: cut.lane,
  offset: cut.offset,
  from: cut.from,
  to: cut.to,
  runs: cut.runs,
  passes: cut.passes.length,
  forceMost: cut.passes.some(({ force }) => force !== undefined)
    ? Math.max(...cut.passes.map(({ force }) => force ?? 0))
    : undefined,
  gates: cut.gates.map((gate) => gateOf(gate)),
})

const gateOf = (gate: Gate): ReportSection => ({ ...gate })

const measuringOf = (measuring: Measuring): ReportSection => ({ ...measuring })

const indexingOf = (indexing: Indexing): ReportSection => ({ ...indexing })
