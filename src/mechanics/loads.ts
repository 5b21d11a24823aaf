import type { Reasoned } from '../dimensions/basis.ts'
import { infeedPerPass } from '../dimensions/settings.ts'
import type { CutterBar, GuideBushing, Section, ToolBit } from '../dimensions/types.ts'
import type { BarSpec, Broach, Spec } from '../spec/spec.ts'
import { barMaterial, workMaterial } from '../standards/materials.ts'
import { setScrewFor } from '../standards/set-screws.ts'
import {
  type Band,
  deflection,
  digIn,
  giveBand,
  type Held,
  holeStress,
  rootStress,
  secondMoment,
  steelModulus,
} from './bar.ts'
import { columnMargin, forceAlong } from './broaching.ts'
import { cuttingForce, thrustRatio } from './cutting.ts'
import { torqueBearingHub, torqueBearingShaft, torqueShear } from './key.ts'
import { lag, leastChip, residual, springPasses } from './lag.ts'
import { noseStress } from './nose.ts'

/** Forces on bar and bit at the planned infeed, whole nose in the cut. N, mm, N/mm². */
export interface Loads {
  /** A worn edge: what to expect. */
  readonly cuttingForce: number
  /** A dull edge: what the tooling must bear. */
  readonly cuttingForceMost: number
  readonly thrust: Band
  readonly thrustMost: number
  /** Bar alone, into the work +. */
  readonly deflection: Band
  readonly lag: Band
  readonly residual: Band
  readonly springPasses: number
  readonly machineGive: number
  readonly digIn: number
  readonly holeStress: number
  readonly rootStress: number
  /** The softest steel that bears it, as sold. */
  readonly barSteel: string
  readonly barYield: number
  readonly noseStress: number
  /** Axial force of the set screw; absent where no source gives its torque. */
  readonly screwForce?: number
  /** What the screw's friction keeps the bit from being pushed in by. */
  readonly bitHeld?: number
  /** Screw force that keeps the bit from rocking. */
  readonly screwForceLeast: number
}

/** Sideways stiffness of a machine that nobody has measured, N/mm. Source: judgement. */
const usualMachine = 5000
const friction = 0.12

/** Thrust per mm of an edge that takes no chip, N: 40 in steel and iron, half in aluminium and brass. Source: judgement, the upper end. */
const edgeThrust = (material: string): number => (/alumin|brass|bronze|6061/.test(material) ? 20 : 40)

export const loadsOf = (spec: Spec, asked: BarSpec, bar: CutterBar, bit: ToolBit): Reasoned<Loads> | undefined => {
  const material = workMaterial(spec.hub.material)
  if (!material) return undefined
  const width = bar.noseWidth
  const chip = infeedPerPass(spec, asked)
  // The flanks of a V, and a round nose's arc, cut aslant: a longer edge, a thinner chip, and less of the thrust straight back.
  const engaged = bar.engaged ?? { edge: width, chip: 1 }
  const force = (edge: 'worn' | 'dull') => (thickness: number) =>
    cuttingForce(material.kienzle, engaged.edge, thickness * engaged.chip, bit.rake, edge)
  const worn = force('worn')(chip)
  const dull = force('dull')(chip)
  const onEdge = thrustRatio(bit.rake)
  const ratio = { least: onEdge.least * engaged.chip, most: onEdge.most * engaged.chip }
  const machine = asked.give ?? usualMachine
  const held: Held = {
    diameter: bar.diameter.nominal,
    overhang: bar.overhang,
    projection: bar.projection,
    machine,
    stroke: asked.stroke,
  }
  const give = giveBand(held, ratio)
  const plain = 1 / machine + held.overhang ** 3 / (3 * steelModulus * secondMoment(held.diameter))
  const cut = {
    force: force('worn'),
    planned: chip,
    least: leastChip,
    edgeThrust: engaged.edge * engaged.chip * edgeThrust(material.name),
    give: plain,
  }
  const springs = springPasses(cut, give.most)
  const bends = [ratio.least, ratio.most].map((r) => deflection(held, worn, r * worn))
  const down = bit.size - bit.faceDrop.nominal
  const stresses = noseStress(
    {
      top: bit.widthAtNeck.nominal,
      bottom: Math.max(0.1 * width, bit.widthAtNeck.nominal - 2 * down * Math.tan((bit.sideRelief * Math.PI) / 180)),
      height: down,
      length: bit.noseLength,
    },
    dull,
  )
  const torque = setScrewFor(bar.screw.thread)?.seatingTorque
  const screwForce = torque === undefined ? undefined : torque / (0.2 * bar.screw.major)
  const radius = bar.diameter.nominal / 2
  const tail = bar.bitLength - bar.projection - radius
  const grip = bar.bit.shape === 'round' ? 2 : 1 + bar.crossHole.nominal / 2 / bar.seatRise
  const atHole = holeStress(held, bar.crossHole.upper / bar.diameter.lower, dull)
  const atRoot = rootStress(held, dull, ratio)
  const bears = (steel: { readonly yield: number }) => atHole <= steel.yield && atRoot <= steel.yield / 1.5
  const steels = ['drill rod', '4140 pre-hardened'].flatMap((name) => barMaterial(name) ?? [])
  const steel = steels.find(bears) ?? steels.at(-1)
  return {
    sizes: {
      cuttingForce: worn,
      cuttingForceMost: dull,
      thrust: { least: ratio.least * worn, most: ratio.most * worn },
      thrustMost: ratio.most * dull,
      deflection: { least: Math.min(...bends), most: Math.max(...bends) },
      lag: lag(cut, give),
      residual: residual(cut, give),
      springPasses: give.least > 0 ? springs.passes : 0,
      machineGive: machine,
      digIn: digIn(held, ratio.least, ((1 - material.kienzle.exponent) * worn) / chip),
      holeStress: atHole,
      rootStress: atRoot,
      barSteel: steel?.name ?? 'unknown',
      barYield: steel?.yield ?? 0,
      noseStress: Math.max(stresses.down, stresses.sideways),
      ...(screwForce !== undefined && { screwForce, bitHeld: grip * friction * screwForce }),
      screwForceLeast:
        asked.stroke === 'push'
          ? (dull * bar.projection) / radius
          : dull * (1 + (radius + bar.projection) / Math.max(tail, 0.1)),
    },
    basis: {
      cuttingForce: `${material.kienzle.material}, VDI 3323 group ${material.kienzle.group}, worn edge at hand speed, ±30 %`,
      cuttingForceMost: 'the same, dull edge',
      thrust: 'friction angles of 35 to 45° less the rake: judgement',
      thrustMost: 'the upper end with a dull edge',
      deflection: 'cantilever with the nose beside its axis; into the work +',
      lag: 'bar and machine give; the slot stands this much behind the dial',
      residual: 'what no number of spring passes removes',
      springPasses: 'until the chip is thinner than 0.005 mm',
      machineGive:
        asked.give === undefined ? 'not measured: 5000 N/mm taken, judgement' : 'given in the spec, as measured',
      digIn: 'gain of the cut drawing itself in; 1 hooks',
      holeStress:
        'three times nominal on the net section, an upper bound to Peterson’s factor, and direct stress; dull edge',
      rootStress: 'worse end of the thrust’s band, dull edge',
      barSteel: 'drill rod where it bears the stress, else pre-hardened 4140 class',
      barYield: steel?.source ?? 'unknown',
      noseStress: 'down and sideways bending at the nose’s root, dull edge',
      screwForce: 'seating torque over 0.2 of the diameter',
      bitHeld: 'friction 0.12 on what the screw presses',
      screwForceLeast:
        asked.stroke === 'push'
          ? 'rocking about the bar’s axis'
          : 'the cut drags the nose off the wall; the tail reacts',
    },
  }
}

/** The press: force along the stroke, what the press gives, the broach as a column. N. */
export interface PressLoads {
  readonly force: number
  readonly teethInCut: number
  readonly capacity?: number
  readonly pull?: number
  readonly columnMargin?: number
  /** Force of each pass, N. */
  readonly passes: readonly number[]
}

/** Face angle of a bought keyway broach where none is measured. Source: broach design tables, steel 10 to 18°. */
const faceAngle = 10

export const pressLoadsOf = (
  spec: Spec,
  broach: Broach,
  bushing: GuideBushing,
  section: Section,
): Reasoned<PressLoads> | undefined => {
  const material = workMaterial(spec.hub.material)
  if (!material) return undefined
  const tooth = (width: number, bite: number) => cuttingForce(material.kienzle, width, bite, faceAngle, 'worn')
  const before = (pass: number) => bushing.shims.slice(0, pass).reduce((sum, shim) => sum + shim, 0)
  const strokes = bushing.passes.map(({ shims }) => ({
    broach,
    hub: spec.bore.length,
    radius: section.boreRadius,
    tipX: (height: number) => bushing.floorFromBore + height + before(shims),
    floorBefore: shims === 0 ? 0 : bushing.floorFromBore + broach.lastTooth + before(shims - 1),
    tooth,
  }))
  const along = strokes.map((stroke) => forceAlong(stroke))
  const passes = along.map((points) => Math.max(0, ...points.map(({ force }) => force)))
  const force = Math.max(0, ...passes)
  const { press } = spec.tooling
  const lever = press?.lever
  const capacity = lever
    ? (lever.pull * lever.length * lever.efficiency) / lever.pinion
    : press?.force === undefined
      ? undefined
      : 0.7 * press.force
  const columns = strokes.map((stroke) => columnMargin(stroke, bushing.collarThickness))
  const column = columns.every((margin) => margin !== undefined) ? Math.min(...columns) : undefined
  return {
    sizes: {
      force,
      teethInCut: Math.max(0, ...along.flat().map(({ teeth }) => teeth)),
      ...(capacity !== undefined && { capacity }),
      ...(lever && { pull: (lever.pull * force) / (capacity ?? force) }),
      ...(column !== undefined && { columnMargin: column }),
      passes,
    },
    basis: {
      force: `tooth by tooth, ${material.kienzle.material}, face angle ${faceAngle}°, worn, 15 % for the guide`,
      teethInCut: 'most teeth in the bore at once',
      capacity: lever
        ? 'pull × lever over the pinion’s pitch radius × efficiency, used to the full'
        : '70 % of what the press is rated (Machinery’s Handbook)',
      pull: 'hand pull that the greatest force asks of this lever',
      columnMargin: 'least buckling load over force along the stroke; ends pinned, Euler or Johnson',
      passes: 'greatest force of each pass',
    },
  }
}

/** What the key carries at its allowed stresses. N mm; hubWall mm. */
export interface KeyLoads {
  readonly torqueShear: number
  readonly torqueBearingHub: number
  readonly torqueBearingShaft: number
  readonly length: number
  readonly hubWall?: number
}

/** Yield of key and shaft where nobody has said, N/mm², and the safety used. Source: E335, a table of EN materials; judgement. */
const keyYield = 335
const safety = 2

export const keyLoadsOf = (spec: Spec, section: Section): Reasoned<KeyLoads> | undefined => {
  const { key } = section
  if (!key?.shaft || !key.height) return undefined
  const shaft = spec.bore.diameter.nominal
  const hub = workMaterial(spec.hub.material)?.strength
  const hubAllows =
    hub?.yield !== undefined ? hub.yield / safety : hub?.tensile !== undefined ? hub.tensile / 3 : undefined
  if (hubAllows === undefined) return undefined
  const length = Math.min(spec.bore.length, 1.5 * shaft)
  const joint = {
    shaft,
    width: key.nominalWidth,
    height: key.height.nominal,
    shaftAcross: key.shaft.across.nominal,
    boreRadius: section.boreRadius,
    floor: section.floor,
    length,
    chamfer: key.chamfer?.upper ?? 0.3,
    edgeBreak: 0.2,
  }
  const keyAllows = keyYield / safety
  return {
    sizes: {
      torqueShear: torqueShear(joint, 0.577 * keyAllows),
      torqueBearingHub: torqueBearingHub(joint, Math.min(keyAllows, hubAllows)),
      torqueBearingShaft: torqueBearingShaft(joint, keyAllows),
      length,
      ...(spec.hub.outside !== undefined && { hubWall: spec.hub.outside / 2 - section.cornerReach }),
    },
    basis: {
      torqueShear: `key of yield ${keyYield} N/mm², ${safety}-fold, square-ended over ${Math.round(length * 10) / 10} mm`,
      torqueBearingHub: 'the softer of key and hub, true lever arms',
      torqueBearingShaft: 'key and shaft alike, true lever arms',
      length: 'the hub’s length, no more than one and a half shafts',
      hubWall: 'half the hub’s outside less the slot’s farthest corner',
    },
  }
}
