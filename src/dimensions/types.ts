import type { Size } from '../fits/size.ts'

/**
 * The bore section with its keyway. Origin on the bore axis, the keyway on +x. All mm.
 *
 *            y
 *            |   ___________
 *        .---+--'           |      mouth   x of the slot's mouth, on its walls
 *      /     |  :           | h    bore    crown at x = boreRadius
 *     |------+--:-----------|--x   floor   x of the slot's floor
 *      \     |  :___________|
 *        `---+--'                  across  floor to opposite bore wall
 */
export interface Section {
  readonly kind: 'keyway' | 'spline' | 'socket' | 'slit' | 'groove'
  readonly boreRadius: number
  readonly bore: Size
  readonly width: number
  readonly widthLimits: Size
  readonly mouth: number
  readonly sagitta: number
  readonly floor: number
  readonly crownDepth: number
  readonly crownDepthLimits: Size
  readonly sideDepth: number
  readonly sideDepthLimits: Size
  readonly across: number
  readonly acrossLimits: Size
  /** x of the nose flat at first touch: full-width nose with this corner radius. */
  readonly touchOff: number
  /** From first touch to the floor: what the dial does. */
  readonly infeed: number
  readonly cornerRadius: number
  /** Corner radius that the slot may have. */
  readonly cornerLimits?: Size
  /** Farthest point of the slot from the axis. */
  readonly cornerReach: number
  /** The same at the worst corner of the limits. */
  readonly cornerReachMost: number
  readonly area: number
  readonly at: readonly number[]
  /** Least land between neighbouring keyways, along the bore; absent for one keyway. */
  readonly land?: number
  /** Keyways only. */
  readonly key?: KeySizes
}

/** The key that goes in, as far as it is known. */
export interface KeySizes {
  /** `8 × 7`, `1/4 square`. */
  readonly designation: string
  /** Where its sizes come from. */
  readonly source: string
  readonly nominalWidth: number
  readonly height?: Size
  readonly width?: Size
  readonly chamfer?: Size
  /** Shaft keyseat: floor to the opposite side of the shaft, its depth at the crown of the shaft. */
  readonly shaft?: { readonly across: Size; readonly depth: number; readonly width: Size }
  /** Top clearance across − shaft across − height, worst corner; for parallel keys. */
  readonly topClearance?: Size
}

export interface Lane {
  /** Sideways position of the nose's middle. */
  readonly offset: number
  readonly touchOff: number
  readonly infeed: number
  readonly projectionMin: number
  readonly projectionMax: number
}

/** One setting of the projection, and how deep it goes: x of the nose flat. */
export interface Stage {
  readonly projection: number
  readonly projectionMin: number
  readonly projectionMax: number
  readonly from: number
  readonly to: number
}

export interface Screw {
  /** Thread: `M5`, `#10-32`. */
  readonly thread: string
  readonly major: number
  readonly pitch: number
  /** Callout of the thread: `M5-6H`, `#10-32 UNF-2B`. */
  readonly callout: string
  readonly cupPoint: number
  readonly length: number
  readonly lengthMin: number
  readonly lengthMax: number
  readonly engaged: number
  readonly tapDrill: { readonly name: string; readonly diameter: number }
}

/** What a bar is in its bore, however it holds its edge. */
export interface BarInBore {
  readonly diameter: Size
  readonly diameterMax: number
  readonly projection: number
  readonly projectionMin: number
  readonly projectionMax: number
  readonly projectionFloor: number
  readonly setting: number
  readonly lanes: readonly Lane[]
  /** In the order they are cut; one where a single setting reaches the floor. */
  readonly stages: readonly Stage[]
  readonly noseWidth: number
  readonly cornerRadius: number
  /** Cutting edge to holder. */
  readonly overhang: number
  readonly overtravel: number
  readonly holderGap: number
  readonly tipBeyond: number
  readonly overall: number
  readonly shank: Size
  /** Bar back to nose: what a caliper reads when the projection is right. */
  readonly overBarAndNose: number
  readonly gaps: {
    readonly back: number
    readonly front: number
    readonly frontAt: 'mouth corner' | 'bore' | 'crown or floor'
  }
  readonly stock: { readonly diameter: number; readonly length: number; readonly material: string }
}

/**
 * The cutter bar. Datum: its axis; lengths from the finished tapped end.
 *
 *     shank              body                cross hole
 *    ┌─────────┐fillet                        ( )  ┌ tapped end
 *    │         ├──────────────────────────────────┤
 *    ┼─────────┼───────────────────────────────┼──┤-
 *    │         ├──────────────────────────────────┤
 *    └─────────┘      <------ bodyLength ------>
 *                                      holeToEnd<>
 */
export interface CutterBar extends BarInBore {
  readonly bit: {
    readonly shape: 'square' | 'round'
    readonly size: number
    readonly cornerBreak: number
    /** Depth of a round blank's flat under the screw; 0 for a square one. */
    readonly flat: number
  }
  readonly noseLengthMin: number
  readonly crossHole: Size
  readonly crossHoleDrill: string
  readonly holeRatio: number
  readonly wallBesideHole: number
  readonly wallRoundTap: number
  readonly holeToEnd: number
  readonly bitToEnd: number
  /** The bit's top flat above the hole's centre when the screw has seated it. */
  readonly seatRise: number
  readonly screw: Screw
  readonly tapDepth: number
  readonly countersink: number
  readonly mouthChamfer: number
  readonly endChamfer: number
  readonly bodyLength: number
  /** False where shank and body are one diameter: no shoulder, no fillet. */
  readonly shouldered: boolean
  readonly fillet: number
  readonly bitLength: number
  readonly bitLengthMin: number
  readonly bitLengthMax: number
}

/**
 * The tool bit. Datum: the cutting edge; x back along the blank from the edge, y sideways, z from the blank's bottom up; the rake face is on top.
 */
export interface ToolBit {
  readonly shape: 'square' | 'round'
  readonly size: number
  readonly cornerBreak: number
  readonly noseWidth: Size
  readonly noseLength: number
  readonly noseLengthMin: number
  readonly cornerRadius: number
  readonly rake: number
  readonly endRelief: number
  readonly sideRelief: number
  /** Swing of the sides as set at the grinder. */
  readonly backTaper: number
  /** What the swing becomes on the raked face. */
  readonly backTaperEffective: number
  readonly neckRadius: number
  readonly widthAtHeel: Size
  readonly widthAtNeck: Size
  readonly endSetBack: Size
  readonly faceDrop: Size
  readonly length: number
  readonly lengthMin: number
  readonly lengthMax: number
  readonly angleTolerance: number
  /** Number of end regrinds of `regrindStep` before the nose is under its least width; 0 with lanes, whose step follows the width. */
  readonly regrinds: number
  readonly regrindStep: number
  readonly widthPerRegrind: number
  readonly lanes: number
  /** Cutting edge over the blank's bottom. */
  readonly edgeHeight: number
  /** Round blanks: depth of the flat that the screw seats on. */
  readonly flat?: number
}

/**
 * The guide bushing. Datum A: axis of the outside; lengths from the underside of the collar (the seat).
 *
 *    ┌──┐
 *    │  └┐undercut                 ┐ lead
 *    │   └─────────────────────────┤
 *    │   . . . slot, open end to end . . .
 *    │   ┌─────────────────────────┤
 *    │  ┌┘
 *    └──┘ seat
 */
export interface GuideBushing {
  readonly outside: Size
  readonly length: number
  readonly collarDiameter: number
  readonly collarThickness: number
  readonly lead: { readonly length: number; readonly angle: number }
  readonly undercut: { readonly width: number; readonly depth: number; readonly radius: number }
  readonly slotWidth: Size
  /** Back of the outside to the slot's floor. */
  readonly backWall: Size
  /** x of the slot's floor from the bore axis, signed. */
  readonly floorFromBore: number
  /** x of the slot's floor from the bushing's axis, signed. */
  readonly floorFromAxis: number
  readonly cornerWall: number
  /** Depth of the slot from the top of the outside, where its mouth is milled. */
  readonly plungeDepth: number
  readonly shims: readonly number[]
  /** For each shim, the leaves of stock that make it up, and what their sum misses it by. */
  readonly packs: readonly { readonly leaves: readonly number[]; readonly short: number }[]
  readonly passes: readonly { readonly shims: number; readonly over: number }[]
  readonly shim: {
    readonly width: number
    readonly length: number
    readonly headWidth: number
    readonly headLength: number
    readonly hole: number
    readonly corner: number
  }
  readonly toothPitch: number
  readonly teethInCut: { readonly least: number; readonly most: number }
  readonly bite: number
  readonly stroke: number
  readonly below: number
  readonly daylight: number
  readonly plateHoleRadius: number
  readonly stock: { readonly diameter: number; readonly length: number; readonly material: string }
}

/** Printed go plug for the finished bore and keyway. Sizes are those of the finished print; `model…` are those that are printed. */
export interface PlugGauge {
  readonly diameter: number
  readonly keyWidth: number
  readonly across: number
  readonly length: number
  readonly handleDiameter: number
  readonly handleLength: number
  readonly lead: number
  readonly foot: number
  /** Per side, taken off the print's model. */
  readonly offset: number
  readonly marking: readonly string[]
  readonly tolerance: number
}

export interface Plan {
  readonly infeedPerPass: number
  /** Of one keyway, all lanes. */
  readonly passes: number
  readonly keyways: number
  /** Strokes of all keyways alone; measuring and stoning not counted. */
  readonly minutes: number
  /** After so many passes of the first lane, this across by the dial. */
  readonly checks: readonly { readonly after: number; readonly across: number }[]
  readonly lanes: readonly {
    readonly offset: number
    readonly touchOff: number
    readonly infeed: number
    readonly passes: number
  }[]
  /** What one mark of the dial is in infeed, and the whole infeed in the dial's own reading. */
  readonly dial: {
    readonly mark: number
    readonly reads: 'travel' | 'diameter'
    /** To the last whole mark before the floor. */
    readonly target: number
    readonly marks: number
    /** What is left beyond it, in the dial's own reading: found by measuring. */
    readonly left: number
  }
}
