import type { Size } from '../fits/size.ts'

/**
 * The bore section with its feature. Origin on the bore axis, the first slot on +x. All mm.
 *
 *            y
 *            |   ___________
 *        .---+--'           |      mouth   x of the slot's mouth, on its walls
 *      /     |  :           | h    bore    crown at x = boreRadius
 *     |------+--:-----------|--x   floor   x of the slot's floor
 *      \     |  :___________|
 *        `---+--'                  across  floor to opposite bore wall
 *
 * Every field means the same for every kind: `width` and `mouth` are those of the opening in the bore's wall, `floor` is the x of the
 * nose's foremost point when the feature is done, `across` is boreRadius + floor, `touchOff` the x of that point at first touch.
 *
 *     keyway, spline   a slot with a flat floor; spline: the floor stands clear of the mating tooth at its middle
 *     socket           one corner: a V whose flanks are the flats; width is its mouth between two flats, floor its tip as the nose cuts it
 *     slit             a slot right through the wall: floor is the outside, and the nose goes on to `slit.target`
 *     groove           a round-bottomed groove: width is its mouth at full depth, floor its deepest point
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
  /** Limits of the floor by itself; absent for keyways, whose across is what is given. */
  readonly floorLimits?: Size
  readonly crownDepth: number
  readonly crownDepthLimits: Size
  /** Floor less mouth: along the wall, or of a socket's or a groove's opening. */
  readonly sideDepth: number
  readonly sideDepthLimits: Size
  readonly across: number
  readonly acrossLimits: Size
  /** x of the nose's foremost point at first touch: full-width nose with this corner radius. */
  readonly touchOff: number
  /** From first touch to the floor: what the dial does. */
  readonly infeed: number
  /** Of the nose: corners of a flat one, tip of a V, the whole of a round one. */
  readonly cornerRadius: number
  /** Corner radius that the slot may have. */
  readonly cornerLimits?: Size
  /** Farthest point of the slot from the axis. */
  readonly cornerReach: number
  /** The same at the worst corner of the limits. */
  readonly cornerReachMost: number
  /** Metal that one of them takes out of the hub's section, mm². */
  readonly area: number
  readonly at: readonly number[]
  /** Least bore arc between neighbours; absent for one. */
  readonly land?: number
  /** How each floor can be measured, in the order of `at`; absent for one. */
  readonly measurable?: readonly Measurable[]
  /** Keyways only. */
  readonly key?: KeySizes
  readonly spline?: SplineSizes
  readonly socket?: SocketSizes
  readonly slit?: SlitSizes
  readonly groove?: GrooveSizes
}

/** What a floor is measured to: the whole wall opposite, the floor of the slot opposite, or nothing, where a slot covers that wall in part. */
export interface Measurable {
  readonly at: number
  readonly to: 'bore' | 'floor' | 'nothing'
  /** What is measured, at mid-tolerance; absent where nothing can be. */
  readonly size?: number
}

/** Straight-sided splines beyond one slot's sizes. mm, degrees. */
export interface SplineSizes {
  /** `6x23x26`, `6 splines of 1 in, fit B`, `by hand`. */
  readonly designation: string
  readonly source: string
  readonly count: number
  /** The mating tooth's tip, from the axis. */
  readonly toothReach: number
  /** Floor over the tooth's tip, at its middle. */
  readonly floorClearance: number
  /** Floor over the tooth at its flanks, on top of that. */
  readonly flankGap: number
  /** Largest corner of the nose that the tooth's corners clear. */
  readonly cornerMost: number
  /** Flanks are true out to here, from the axis. */
  readonly flankTrueTo: number
  /** Between opposite floors; only where the count is even. */
  readonly floorToFloor?: Size
  readonly landAngle: number
  readonly landArc: number
  readonly landChord: number
  /** Most slots of this width that the bore has room for. */
  readonly countMost: number
  /** What the shaft centres on. */
  readonly centring: 'minor' | 'major'
  /** Major-diameter fit: the nose's end ground convex to this radius, or the tooth bears in the middle of the floor alone. */
  readonly noseEndRadius?: number
  /** Slot to axis, as the standard asks. */
  readonly symmetryTolerance?: number
}

/** A socket beyond one corner's sizes. mm, degrees. */
export interface SocketSizes {
  readonly sides: number
  readonly acrossFlats: Size
  /** Where two flats meet, from the axis; a tip of no radius would reach it. */
  readonly vertex: number
  /** Between the V's two flanks. */
  readonly includedAngle: number
  /** What the bore leaves of half a flat, and its share of the half. */
  readonly halfFlat: number
  readonly flatShare: number
  /** Half the V's mouth: as an angle at the axis, and across. */
  readonly mouthHalfAngle: number
  readonly mouthHalf: number
  /** Vertex less the tip: a rounded tip is set back, or each flat lies too far out. */
  readonly setBack: number
  /** What the mating corner needs against the tip's radius: a round of this, or a flat with this much relief from the vertex inwards. */
  readonly matingRound: number
  readonly matingRelief: number
  /** Cutting edge at full depth, both flanks. */
  readonly edge: number
  /** How far the flats' ends are out at the mouth for half a degree in one flank of the V. */
  readonly angleError: number
  /** Bore that leaves 0.7 of each flat. */
  readonly pilotBore: number
}

/** A slit beyond its slot. mm. */
export interface SlitSizes {
  readonly outside: number
  readonly wall: number
  /** x of the nose's flat at which its corners come out. */
  readonly breakOut: number
  /** Metal that then still stands at the middle: it snaps sideways. */
  readonly web: number
  /** How far the nose goes: outside and overtravel. */
  readonly target: number
  /** From here on half the infeed. */
  readonly halfInfeedFrom: number
}

/** An oil groove beyond its opening. mm. */
export interface GrooveSizes {
  readonly radius: number
  readonly depth: Size
  /** Depth at which the nose is in to its full width. */
  readonly changeDepth: number
  /** Whether the finished mouth is met by the nose's round or by its straight sides. */
  readonly mouthOn: 'round' | 'sides'
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
  readonly shaft?: {
    readonly across: Size
    readonly depth: number
    readonly width: Size
    /** Depth along the side wall of the keyseat. */
    readonly sideDepth?: number
  }
  /** Top clearance across − shaft across − height, worst corner; for parallel keys. */
  readonly topClearance?: Size
  readonly taper?: TaperSizes
}

/** A floor that falls along the bore; across is that of the deep end. mm, degrees. */
export interface TaperSizes {
  readonly rate: '1:96' | '1:100'
  /** The hub is tilted by so much, and its floor runs with the stroke. */
  readonly tilt: number
  /** Across at the other end. */
  readonly acrossShallow: Size
  /** What the window of projections loses at its upper end. */
  readonly windowLoss: number
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
  /** Edge in the metal at full depth, and the chip's thickness as a share of the infeed; left out: the whole flat nose, and 1. */
  readonly engaged?: { readonly edge: number; readonly chip: number }
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
    readonly frontAt: 'mouth corner' | 'flank' | 'bore' | 'crown or floor'
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
  /** How the bit is held: by a screw from the bar's end, by one through the wall beside it, or leaning forward for a blind bore with the screw in the wall. */
  readonly form: 'end screw' | 'side screw' | 'inclined'
  /** How far the bit leans, its nose leading, degrees; 0 unless inclined. */
  readonly incline: number
  /** Metal between cross hole and the bar's end, on the axis; absent with an end screw. */
  readonly wallAtEnd?: number
  /** With a screw in the wall: how far the bit may rock in its hole once it is seated, degrees; it adds to the rake and takes from the relief. */
  readonly rock?: number
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
 * A bar and its nose of one piece, its neck ground eccentric from a round that just passes the bore. Datum: the neck's axis; lengths
 * from the head's end, which is the rake face on the push stroke. The head's section is the neck's circle and a strip `noseWidth` wide
 * from it out to the nose.
 *
 *     shank            neck                       head
 *    ┌─────────┐                                 ┌───┐ nose
 *    │         ├─────────────────────────────────┘   │
 *    ┼─────────┼───────────────────────────────────── ┼-
 *    │         ├──────────────────────────────────────┤ back: one line with the blank's
 *    └─────────┘
 */
export interface GroundBar extends BarInBore {
  readonly form: 'one piece'
  /** Round that neck and head are ground from. */
  readonly blank: Size
  /** Back of the blank to the nose's flat, which a micrometer reads over bar and nose. */
  readonly backToNose: Size
  /** The most that the blank gives, at the nose's corners. */
  readonly backToNoseMost: number
  /** The neck's axis behind the blank's. */
  readonly eccentricity: number
  /** Length of the head along the bar. */
  readonly headLength: number
  readonly rake: number
  readonly endRelief: number
  readonly sideRelief: number
  readonly noseTolerance: Size
  readonly widthAtHeel: number
  readonly endSetBack: number
  readonly neckLength: number
  readonly fillet: number
}

/**
 * The tool bit. Datum: the cutting edge; x back along the blank from the edge, y sideways, z from the blank's bottom up; the rake face is on top.
 */
export interface ToolBit {
  readonly shape: 'square' | 'round'
  readonly size: number
  readonly cornerBreak: number
  /** Left out: flat. A V has its two flanks before the nose's sides, a round nose one arc. */
  readonly form?: 'flat' | 'vee' | 'round'
  /** Of a V: between its flanks, seen along the stroke. */
  readonly includedAngle?: number
  /** Of a V: between its flanks, as its raked face shows them. */
  readonly faceAngle?: number
  /** Of a V or a round nose: radius of its end. */
  readonly tipRadius?: number
  /** Of a V: from its tip back to where the flanks meet the nose's sides. */
  readonly flankLength?: number
  /** Of a V: what each flank makes with the middle line, level on the blank, before the face is ground. */
  readonly flankSwing?: number
  /** Of a V: table tilt that gives its flanks the end's relief. */
  readonly flankTilt?: number
  /** Of a flat nose whose end is convex, seen from above: radius of that end. */
  readonly noseEndRadius?: number
  /** Between the nose's sides; of a V no narrower than its mouth. */
  readonly noseWidth: Size
  /** The same as it is ground and miked: never without limits, never wider than the blank. */
  readonly groundWidth: Size
  readonly noseLength: number
  readonly noseLengthMin: number
  readonly cornerRadius: number
  /** As ground on the blank. */
  readonly rake: number
  readonly endRelief: number
  /** As they cut, where the bit leans: rake and end relief. */
  readonly leaning?: { readonly rake: number; readonly endRelief: number }
  readonly sideRelief: number
  /** Swing of the sides as set at the grinder. */
  readonly backTaper: number
  /** What the swing becomes on the raked face. */
  readonly backTaperEffective: number
  readonly neckRadius: number
  readonly widthAtHeel: Size
  /** The least and the most that it can be, the nose's own limits with it. */
  readonly widthAtNeck: Size
  /** What the neck is narrower than the widest place of the same nose. */
  readonly neckUnder: Size
  readonly endSetBack: Size
  readonly faceDrop: Size
  readonly length: number
  readonly lengthMin: number
  readonly lengthMax: number
  readonly angleTolerance: number
  /** Number of end regrinds of `regrindStep` before the nose is under its least width or length; 0 with lanes, whose step follows the width. */
  readonly regrinds: number
  readonly regrindStep: number
  readonly widthPerRegrind: number
  readonly lanes: number
  /** Cutting edge over the blank's bottom. */
  readonly edgeHeight: number
  /** Round blanks: depth of the flat that the screw seats on. */
  readonly flat?: number
  /** Round blanks: cutting edge over the back, as it is miked. */
  readonly edgeLimits?: Size
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
  /** Room below the hub for the teeth to pass. */
  readonly below: number
  /** Room below the hub for the broach to fall free of hub and bushing. */
  readonly fallsFree: number
  /** From what carries the hub to the ram. */
  readonly daylight: number
  /** Height of the spacer under the hub; 0 where the press has the room below its table. */
  readonly raised: number
  /** Daylight, the spacer counted. */
  readonly tableToRam: number
  readonly plateHoleRadius: number
  readonly stock: { readonly diameter: number; readonly length: number; readonly material: string }
  /** For several keyways; absent for one, and where nothing of the kind can be made. */
  readonly locating?: Locating
}

/** Second slots of a bushing, and the loose key that lies in one of them and in the keyway cut last, and sets the next. */
export interface Locating {
  /** From the broach's slot, counter-clockwise seen from the collar, degrees. */
  readonly at: readonly number[]
  /** The same the shorter way round, as they are drawn. */
  readonly round: readonly number[]
  /** Of slot and key: those of the keyway; the key is fitted by hand, without shake. */
  readonly width: Size
  /** Floor of the slot from the bushing's axis. */
  readonly floor: number
  /** Back of the outside to that floor, as it is miked. */
  readonly overBack: number
  readonly key: { readonly height: number; readonly length: number }
  /** Metal between a second slot and the broach's. */
  readonly web: number
  /** Sideways at the bore, from one keyway to the next. */
  readonly stepError: number
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
