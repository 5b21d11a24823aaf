import type { Size } from '../fits/size.ts'
import type { Machine, Shop } from './shop.ts'
import type { SpindleHold } from './spindle.ts'

export type Units = 'mm' | 'in'

/** [least, most] in mm; both the same for a size given exactly. */
export type LeastMost = readonly [least: number, most: number]

export interface Bore {
  /** Nominal diameter with its limits, mm. */
  readonly diameter: Size
  /** How the tolerance was given: `H7`, or `+0.021/0` as written; for labels. */
  readonly tolerance: string
  /** The finished bore as measured, mm. */
  readonly measured?: number
  readonly length: number
  /** Plated with hard chromium. */
  readonly chromed?: boolean
  /** Chamfer at the mouth, mm. */
  readonly mouth: number
  readonly blind?: { readonly beyond: number; readonly relief?: { readonly diameter: number; readonly length: number } }
}

export interface Hub {
  readonly outside?: number
  /** Name of a row of standards/materials.ts. */
  readonly material: string
  /** Rockwell C, as measured. */
  readonly hardness?: number
}

/** A keyway, sizes still as given: dimensions/keyway.ts turns them into width and across with limits. */
export interface Keyway {
  readonly kind: 'keyway'
  readonly standard?: 'iso-773' | 'asme-b17.1'
  /** asme-b17.1 only. */
  readonly form?: 'square' | 'rectangular'
  /** iso-773: how the hub's keyway fits the key; asme-b17.1: the class. */
  readonly fit: 'normal' | 'tight' | 'sliding' | 'class 1' | 'class 2'
  /** Width by hand (slot limits), or with a standard: the key's nominal width, which picks the row. */
  readonly width?: LeastMost
  readonly height?: LeastMost
  /** Floor to opposite bore wall. */
  readonly across?: LeastMost
  /** Depth from the crown or along the side wall, instead of across. */
  readonly depth?: { readonly from: 'crown' | 'side'; readonly by: LeastMost }
  /** Corner radius in the slot, [least, most]. */
  readonly corner?: LeastMost
  /** Angles of the keyways, degrees. */
  readonly at: readonly number[]
  /** For a taper key: how the floor falls along the bore. Across is then that of the deep end. */
  readonly taper?: '1:96' | '1:100'
  readonly key?: KeySpec
  /** As found once it was cut: sideways of the bore's middle, and out of line over the whole bore. mm. */
  readonly found?: { readonly offset?: number; readonly lead?: number }
}

/** A metal by its strength, N/mm². */
export interface Metal {
  /** Where it was named. */
  readonly name?: string
  readonly yield?: number
  readonly tensile?: number
}

/** The key, as far as it is told. mm. */
export interface KeySpec {
  readonly metal?: Metal
  readonly length?: number
  readonly ends: 'square' | 'round'
  readonly chamfer?: LeastMost
  /** In place of the standard's. */
  readonly height?: LeastMost
}

/** The shaft, as far as it is told. mm. */
export interface ShaftSpec {
  readonly metal?: Metal
  /** How far the keyseat's edges are broken. */
  readonly edgeBreak?: number
  readonly diameter?: LeastMost
  /** Keyseat floor to the opposite side. */
  readonly across?: LeastMost
}

/** Straight-sided splines: `count` slots with one floor. A standard's sizes are worked out where the sections are. */
export interface Spline {
  readonly kind: 'spline'
  readonly standard?: 'iso-14' | 'sae-j499'
  /** iso-14: `6x23x26`. */
  readonly size?: string
  /** iso-14: the hub is hardened after its slots are cut, and they are cut with more room. */
  readonly treated?: boolean
  /** sae-j499: `A` permanent, `B` sliding when idle, `C` sliding under load. */
  readonly fit?: 'A' | 'B' | 'C'
  readonly count: number
  /** By hand: limits of the slot's width. */
  readonly width?: LeastMost
  /** By hand: limits of the diameter over the floors; sae-j499: the major diameter, exact, which picks the row. */
  readonly major?: LeastMost
  readonly corner?: LeastMost
  /** Angles of the slots, degrees, evenly spaced from the first. */
  readonly at: readonly number[]
}

/** A square or hexagon socket, cut corner by corner with a V-nose in a bore no smaller than its flats. */
export interface Socket {
  readonly kind: 'socket'
  readonly sides: number
  readonly across: LeastMost
  /** Tip radius of the V-nose. */
  readonly tip: number
  /** Angles of the corners, degrees. */
  readonly at: readonly number[]
}

/** Slits right through the wall of a collet or clamp. */
export interface Slit {
  readonly kind: 'slit'
  readonly width: LeastMost
  /** Diameter that they run out through. */
  readonly outside: number
  readonly at: readonly number[]
}

/** An oil groove, cut with a round nose. */
export interface Groove {
  readonly kind: 'groove'
  readonly radius: number
  /** From the crown. */
  readonly depth: LeastMost
  readonly at: readonly number[]
}

export type Feature = Keyway | Spline | Socket | Slit | Groove

export interface BarSpec {
  readonly machine: 'lathe' | 'mill'
  /** The shop's own machine, where the spec names it. */
  readonly onHand?: Machine
  /** How the bar holds its edge; left out, the first that works in this order, inclined in blind bores alone. */
  readonly form?: 'end screw' | 'side screw' | 'inclined' | 'one piece'
  /** How far an inclined bit leans, degrees. */
  readonly incline?: number
  /** Most settings of the projection; left out, six, and one wherever one reaches. */
  readonly stages?: number
  readonly dial: {
    readonly mark: number
    readonly reads: 'travel' | 'diameter'
    /** A slide set over from the bed's axis by this, degrees: its dial gives the sine of it in infeed. */
    readonly slide?: number
  }
  /** Sideways stiffness of the machine, N/mm. */
  readonly give?: number
  /** What a spring balance reads at the nose, bar and machine together, N/mm: in place of give. */
  readonly pull?: number
  /** The most that the machine may push along the bore, N. */
  readonly thrust?: number
  /** How far it strokes. */
  readonly travel?: number
  /** Of the hand that drives it, and its stroke for one turn. */
  readonly handle?: { readonly radius: number; readonly travel: number }
  /** Of the rack that drives it. */
  readonly rack?: { readonly module: number; readonly width: number }
  /** What keeps the spindle from turning. */
  readonly hold?: SpindleHold
  /**
   * What holds the work: force of one jaw, of the stop or strap that takes the pull, of the clamp; how far its support reaches from the bore's axis
   * under the cut; how far the work stands up above the jaws.
   */
  readonly work?: {
    readonly held?: 'vise' | 'chuck' | 'strap'
    readonly jaws?: number
    readonly stop?: number
    readonly support?: number
    readonly clamp?: number
    readonly above?: number
  }
  /** Room open behind the hub, mm. */
  readonly behind?: number
  /** Hole behind the hub that the bar runs out into, across. */
  readonly opening?: number
  readonly points: 'back' | 'front'
  readonly stroke: 'push' | 'pull'
  readonly clearance: { readonly back: number; readonly front: number; readonly withdrawn: number }
  /** +/- with which the projection can be set, mm. */
  readonly setting: number
  readonly nose: { readonly width?: number; readonly cornerRadius?: number }
  readonly rake?: number
  readonly diameter?: number
  readonly projection?: number
  readonly bit?: { readonly shape: 'square' | 'round'; readonly size: number }
  /** Name of a thread on hand: `M5`, `#10-32`. */
  readonly screw?: string
  readonly shank?: number
  readonly infeed?: number
}

/** A push broach as measured; heights from its back, mm. */
export interface Broach {
  readonly toothWidth: number
  readonly bodyWidth: number
  readonly firstTooth: number
  readonly lastTooth: number
  readonly pilot: number
  readonly toothedLength: number
  readonly teeth: number
  readonly overall: number
  readonly pilotLength: number
  readonly shoulder?: number
  readonly finishingTeeth?: number
  /** Of every tooth, first to last, where each was measured. */
  readonly heights?: readonly number[]
  /** Of the teeth's faces, degrees. */
  readonly faceAngle?: number
  /** mm2 */
  readonly gulletArea?: number
  readonly rootHeight?: number
  /** N/mm2 */
  readonly yield?: number
}

export interface PressSpec {
  readonly broach?: Broach
  /** Left out: guided. */
  readonly ram?: 'guided' | 'loose'
  /** What the press has: stroke of the ram, room under its table, table to ram drawn back, the hole in the table across. mm. */
  readonly stroke?: number
  readonly below?: number
  readonly daylight?: number
  readonly opening?: number
  /** N: what the press gives. */
  readonly force?: number
  readonly lever?: {
    readonly pull: number
    readonly length: number
    readonly pinion: number
    readonly efficiency: number
  }
}

/** How the work is turned from slot to slot. */
export interface IndexSpec {
  readonly by?: 'dividing head' | 'gear' | 'plate'
  /** Turns of the crank for one of the work. */
  readonly ratio?: number
  /** Holes of the circles in its plates. Ascending. */
  readonly circles?: readonly number[]
  /** Teeth of a gear on the spindle. */
  readonly gear?: number
  /** An index plate of one's own: radius of its holes, and how far a hole may be off its place, mm. */
  readonly plate?: { readonly radius: number; readonly hole: number }
  /** Bore off the axis that it is turned about, mm. */
  readonly eccentric?: number
  /** Of the mating teeth or keys in their slots, mm. */
  readonly play?: number
}

export interface Drafting {
  readonly convention: 'iso' | 'asme'
  readonly paper: 'A4' | 'Letter'
  readonly projection: 'first' | 'third'
  /** Every length on the job card in the other unit too, small. */
  readonly dual?: true
}

/** One job, read and complete: every length in mm, every default filled in. */
export interface Spec {
  readonly name: string
  readonly units: Units
  readonly bore: Bore
  readonly hub: Hub
  readonly feature: Feature
  readonly shaft?: ShaftSpec
  readonly load?: { /** N mm */ readonly torque: number; readonly service: number }
  /** What a life may hang on, as the maker of the spec says: `steering arm`. */
  readonly use?: string
  readonly tooling: { readonly bar?: BarSpec; readonly press?: PressSpec; readonly index?: IndexSpec }
  readonly shop: Shop
  readonly drafting: Drafting
  /** Paths that the document states (`tooling.bar.diameter`); every other value is a default or chosen. */
  readonly stated: readonly string[]
  /** The document as it was written: what a remedy patches and reads again. */
  readonly written: { readonly document: unknown; readonly shop?: unknown }
}
