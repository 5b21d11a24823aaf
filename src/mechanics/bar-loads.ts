import type { Basis, Reasoned } from '../dimensions/basis.ts'
import { infeedPerPass } from '../dimensions/settings.ts'
import type { BarInBore, CutterBar, GroundBar, ToolBit } from '../dimensions/types.ts'
import type { BarSpec, Spec } from '../spec/spec.ts'
import { barMaterial, isNonferrous, type WorkMaterial, workMaterial } from '../standards/materials.ts'
import { setScrewFor } from '../standards/set-screws.ts'
import {
  type Band,
  bendsTo,
  deflection,
  digIn,
  giveBand,
  type Held,
  holeStresses,
  rootStresses,
  secondMoment,
  steelModulus,
} from './bar.ts'
import { heldFlat, heldOnCorners, pressLeast, screwPress } from './bit-holding.ts'
import { cuttingForce, thrustRatio } from './cutting.ts'
import { type Driven, drivenBy, machineStiffness } from './driven.ts'
import { lag, leastChip, residual, springPasses } from './lag.ts'
import { noseStress } from './nose.ts'
import { sidewaysBend, slipShift, twistRadians, worstStripTorque } from './side-load.ts'

/** Forces on a bar and its nose at the planned infeed, whole nose in the cut, however the bar holds its edge. N, mm, N/mm². */
interface CutLoads extends Driven {
  /** A worn edge: what to expect. */
  readonly cuttingForce: number
  /** A dull edge: what the tooling must bear. */
  readonly cuttingForceMost: number
  readonly thrust: Band
  readonly thrustMost: number
  /** Bar alone, into the work +. */
  readonly deflection: Band
  readonly bends: 'digs in' | 'pushes off' | 'may do either'
  readonly lag: Band
  readonly residual: Band
  readonly springPasses: number
  readonly machineGive: number
  /** False where the pull at the nose is stiffer than the bar alone: machineGive is then the usual one. */
  readonly machineGiveKnown: boolean
  readonly digIn: number
  readonly rootStress: number
  readonly rootStressLimits: Band
  /** The softest steel that bears it, as sold. */
  readonly barSteel: string
  readonly barYield: number
  readonly noseStress: number
  /** Twist that the spindle must hold, N mm, dull edge; 0 where the nose is as wide as the slot. */
  readonly twist: number
  /** Sideways bend of the nose over half a strip, worn edge; 0 likewise. */
  readonly sideways: number
  /** Twist of the bar under that, degrees. */
  readonly twistOfBar: number
  /** Sideways shift of the nose when the spindle slips by half a degree. */
  readonly slip: number
}

/** The same, with what the bar's own form adds. */
export interface Loads extends CutLoads {
  /** At the cross hole, where there is one: the bound that is held against the yield, and what is to be expected. */
  readonly holeStress?: number
  readonly holeStressExpected?: number
  /** What the set screw is tightened with, N mm; absent where no source gives it. */
  readonly screwTorque?: number
  /** Force of the set screw; absent where no source gives its torque. */
  readonly screwForce?: number
  /** What the screw's friction keeps the bit from being pushed in by. */
  readonly bitHeld?: number
  /** Screw force that keeps the bit from rocking. */
  readonly screwForceLeast?: number
  /** Bar of one piece: where the head joins the neck. */
  readonly neckStress?: number
}

/** Thrust per mm of an edge that takes no chip, N: 40 in steel and iron, half in aluminium and brass. Source: judgement, the upper end. */
const edgeThrust = (material: WorkMaterial): number => (isNonferrous(material) ? 20 : 40)

/** The nose at its root, under a dull edge: down or sideways bending, whichever is worse. */
const worstOfNose = (
  root: { readonly top: number; readonly height: number; readonly length: number; readonly sideRelief: number },
  width: number,
  dull: number,
): number => {
  const { top, height, sideRelief } = root
  const bottom = Math.max(0.1 * width, top - 2 * height * Math.tan((sideRelief * Math.PI) / 180))
  const stresses = noseStress({ ...root, bottom }, dull)
  return Math.max(stresses.down, stresses.sideways)
}

/** How an edge is ground, as it cuts, and what bar and nose bear of it. */
interface Edge {
  readonly rake: number
  readonly rock: number
  /** Stress where the bar is weakest near the edge. */
  readonly atWeakest: (held: Held, dull: number) => number
  readonly ofNose: (dull: number) => number
}

/** What the set screw presses and holds with, and what it must press with so that the bit does not rock. */
const heldBit = (bar: CutterBar, stroke: BarSpec['stroke'], dull: number) => {
  const torque = setScrewFor(bar.screw.thread)?.seatingTorque
  const screwForce = torque === undefined ? undefined : screwPress(torque, bar.screw.major)
  const radius = bar.diameter.nominal / 2
  const tail = bar.bitLength - bar.projection - radius
  // A screw in the wall presses the bit on one face of its hole; from the end, a square sits on two corners.
  const corners = bar.form === 'end screw' && bar.bit.shape === 'square'
  return {
    ...(torque !== undefined && { screwTorque: torque }),
    ...(screwForce !== undefined && {
      screwForce,
      bitHeld: corners ? heldOnCorners(screwForce, bar.crossHole.nominal, bar.seatRise) : heldFlat(screwForce),
    }),
    screwForceLeast: pressLeast(dull, { radius, projection: bar.projection, tail }, stroke),
  }
}

const cutLoadsOf = (
  spec: Spec,
  asked: BarSpec,
  bar: BarInBore,
  { rake, rock, atWeakest, ofNose }: Edge,
): { readonly held: Held; readonly dull: number; readonly loads: Reasoned<CutLoads> } | undefined => {
  const material = workMaterial(spec.hub.material)
  if (!material) return undefined
  const width = bar.noseWidth
  const chip = infeedPerPass(spec, asked)
  // The flanks of a V, and a round nose's arc, cut aslant: a longer edge, a thinner chip, and less of the thrust straight back.
  const engaged = bar.engaged ?? { edge: width, chip: 1 }
  const force = (edge: 'worn' | 'dull') => (thickness: number) =>
    cuttingForce(material.kienzle, engaged.edge, thickness * engaged.chip, rake, edge)
  const worn = force('worn')(chip)
  const dull = force('dull')(chip)
  // A bit that rocks in its hole cuts with so much more rake.
  const ratio = {
    least: engaged.chip * thrustRatio(rake + rock).least,
    most: engaged.chip * thrustRatio(rake).most,
  }
  const { machine, known } = machineStiffness(asked, bar)
  const held: Held = {
    diameter: bar.diameter.nominal,
    overhang: bar.overhang,
    projection: bar.projection,
    machine,
    stroke: asked.stroke,
  }
  const give = giveBand(held, ratio)
  const cut = {
    force: force('worn'),
    planned: chip,
    least: leastChip,
    edgeThrust: engaged.edge * engaged.chip * edgeThrust(material),
    give: 1 / machine + held.overhang ** 3 / (3 * steelModulus * secondMoment(held.diameter)),
  }
  const springs = springPasses(cut, give.most)
  const ends = [ratio.least, ratio.most].map((r) => deflection(held, worn, r * worn))
  const bends = { least: Math.min(...ends), most: Math.max(...ends) }
  const weakest = atWeakest(held, dull)
  const atRoot = rootStresses(held, dull, ratio)
  const bears = (steel: { readonly yield: number }) => weakest <= steel.yield && atRoot.most <= steel.yield / 1.5
  const steels = ['drill rod', '4140 pre-hardened'].flatMap((name) => barMaterial(name) ?? [])
  const steel = steels.find(bears) ?? steels.at(-1)
  const lanes = bar.lanes.length > 1
  const twist = lanes ? worstStripTorque(width, ratio.most * dull) : 0
  const driven = drivenBy(asked, material, engaged, rake, worn)
  const loads: Reasoned<CutLoads> = {
    sizes: {
      cuttingForce: worn,
      cuttingForceMost: dull,
      thrust: { least: ratio.least * worn, most: ratio.most * worn },
      thrustMost: ratio.most * dull,
      deflection: bends,
      bends: bendsTo(bends),
      lag: lag(cut, give),
      residual: residual(cut, give),
      springPasses: give.least > 0 ? springs.passes : 0,
      machineGive: machine,
      machineGiveKnown: known,
      digIn: digIn(held, ratio.least, ((1 - material.kienzle.exponent) * worn) / chip),
      rootStress: atRoot.most,
      rootStressLimits: atRoot,
      barSteel: steel?.name ?? 'unknown',
      barYield: steel?.yield ?? 0,
      noseStress: ofNose(dull),
      twist,
      sideways: lanes ? sidewaysBend(held, worn / 2, width / 4) : 0,
      twistOfBar: (twistRadians(held.diameter, held.overhang, twist) * 180) / Math.PI,
      slip: slipShift(held.diameter / 2 + held.projection, 0.5),
      ...driven.sizes,
    },
    get basis(): Basis<CutLoads> {
      return {
        cuttingForce: `${material.kienzle.material}, VDI 3323 group ${material.kienzle.group}, worn edge at hand speed, ±30 %`,
        cuttingForceMost: 'the same, dull edge',
        thrust: 'friction angles of 35 to 45° less the rake: judgement',
        thrustMost: 'the upper end with a dull edge',
        deflection: 'cantilever with the nose beside its axis; into the work +',
        bends: 'the sign of the deflection over the band of thrust',
        lag: 'bar and machine give; the slot stands this much behind the dial',
        residual: 'what no number of spring passes removes',
        springPasses: 'until the chip is thinner than 0.005 mm',
        machineGive:
          asked.give !== undefined
            ? 'given in the spec, as measured'
            : asked.pull === undefined
              ? 'not measured: 5000 N/mm (28600 lbf/in) taken, judgement'
              : known
                ? 'from the pull at the nose, less what the bar itself gives'
                : 'the pull at the nose is stiffer than the bar alone: 5000 N/mm (28600 lbf/in) taken, judgement',
        machineGiveKnown: '1/machine = 1/pull − L³/(3EI)',
        digIn: 'gain of the cut drawing itself in; 1 hooks',
        rootStress: 'worse end of the thrust’s band, dull edge',
        rootStressLimits: 'over the thrust’s band, dull edge',
        barSteel: 'drill rod where it bears the stress, else pre-hardened 4140 class',
        barYield: steel?.source ?? 'unknown',
        noseStress: 'down and sideways bending at the nose’s root, dull edge',
        twist: 'a strip of half the nose is the worst: an eighth of its width times the thrust, dull edge',
        sideways: 'the same strip, worn edge: bar, and tilt of its holder',
        twistOfBar: 'over the overhang; shear modulus 79.3 kN/mm²',
        slip: 'half a degree at the nose’s distance from the bar’s axis',
        ...driven.basis,
      }
    },
  }
  return { held, dull, loads }
}

/** Why, for what one form or the other adds. */
const formBasis = (stroke: BarSpec['stroke']) => ({
  holeStress:
    'three times nominal on the net section, an upper bound to Peterson’s factor, and direct stress; dull edge',
  holeStressExpected:
    'Peterson’s factor on the net section, that of a hole 0.4 of the bar where it is larger, and direct stress; dull edge',
  screwTorque: 'seating torque of the screw’s own table',
  screwForce: 'seating torque over 0.2 of the diameter',
  bitHeld: 'friction 0.12 on what the screw presses',
  screwForceLeast:
    stroke === 'push' ? 'rocking about the bar’s axis' : 'the cut drags the nose off the wall; the tail reacts',
  neckStress: 'twice the nominal bending at the head’s fillet (judgement), and direct stress; dull edge',
})

export const loadsOf = (spec: Spec, asked: BarSpec, bar: CutterBar, bit: ToolBit): Reasoned<Loads> | undefined => {
  const ratio = bar.crossHole.upper / bar.diameter.lower
  const root = {
    top: bit.widthAtNeck.nominal,
    height: bit.size - bit.faceDrop.nominal,
    length: bit.noseLength,
    sideRelief: bit.sideRelief,
  }
  const cut = cutLoadsOf(spec, asked, bar, {
    rake: bit.leaning?.rake ?? bit.rake,
    rock: bar.rock ?? 0,
    atWeakest: (held, dull) => holeStresses(held, ratio, dull).bound,
    ofNose: (dull) => worstOfNose(root, bar.noseWidth, dull),
  })
  if (!cut) return undefined
  const { held, dull, loads } = cut
  const atHole = holeStresses(held, ratio, dull)
  return {
    sizes: Object.assign(
      loads.sizes,
      { holeStress: atHole.bound, holeStressExpected: atHole.expected },
      heldBit(bar, asked.stroke, dull),
    ),
    get basis(): Basis<Loads> {
      return {
        ...loads.basis,
        ...formBasis(asked.stroke),
      }
    },
  }
}

/** What tool steel that is hardened and drawn to straw is trusted with, N/mm². Source: judgement; its yield is far higher, from memory. */
const hardenedYield = 1200

/** A bar of one piece: no hole and no screw; its neck bears what the head brings, with twice the nominal at the fillet. */
export const groundLoadsOf = (spec: Spec, asked: BarSpec, bar: GroundBar): Reasoned<Loads> | undefined => {
  const drop = bar.projection * Math.tan((bar.rake * Math.PI) / 180)
  const root = {
    top: bar.noseWidth,
    height: bar.headLength - drop,
    length: bar.projection,
    sideRelief: bar.sideRelief,
  }
  const atNeck = ({ diameter, projection }: Held, dull: number): number =>
    (2 * dull * (diameter / 2 + projection)) / ((Math.PI * diameter ** 3) / 32) + dull / ((Math.PI * diameter ** 2) / 4)
  const cut = cutLoadsOf(spec, asked, bar, {
    rake: bar.rake,
    rock: 0,
    atWeakest: atNeck,
    ofNose: (dull) => worstOfNose(root, bar.noseWidth, dull),
  })
  return (
    cut && {
      sizes: {
        ...cut.loads.sizes,
        barSteel: 'drill rod, hardened',
        barYield: hardenedYield,
        neckStress: atNeck(cut.held, cut.dull),
      },
      get basis(): Basis<Loads> {
        return {
          ...cut.loads.basis,
          ...formBasis(asked.stroke),
          barSteel: 'the nose is of one piece with it: it must be as hard as a cutting edge',
          barYield:
            'judgement: tool steel hardened and drawn to straw, with room for its notches (far higher, from memory)',
        }
      },
    }
  )
}
