/**
 * The cutting and measuring plan. A reading is what the dial says, counted from its zero at first touch of the first lane, all mm: on a
 * dial that reads diameter it is twice the infeed. Lengths named x are those of the bore section.
 */

/** One stroke. */
export interface Pass {
  readonly reading: number
  /** x of the nose flat. */
  readonly x: number
  /** Infeed of this pass. */
  readonly chip: number
  /** Width of the nose that cuts at the end of it. */
  readonly engaged: number
  /** Cutting force of a worn edge, N; absent where the material's is not known. */
  readonly force?: number
}

/** Passes alike: to this reading by so much each; `passes` may close with a shorter one. */
export interface Run {
  readonly to: number
  readonly by: number
  readonly passes: number
}

/** What is measured at a gate, by the dial, less the lag at its upper end (absent where that is not known), and within what to go on. */
export interface Expected {
  readonly byDial: number
  readonly expected?: number
  readonly least: number
  readonly most: number
}

/** Where to stop and measure. Across is floor to opposite bore wall. */
export interface Gate extends Expected {
  readonly reading: number
  /** x of the nose flat. */
  readonly x: number
  /** Since the gate before. */
  readonly runs: readonly Run[]
  readonly passes: number
  /** Without infeed, before measuring. */
  readonly springPasses: number
  /** Where a slot stands right opposite and is as deep: floor to floor. */
  readonly floorToFloor?: Expected
  /** Where part of the wall opposite is cut away: blocks between the floor and a plug that fills the bore. */
  readonly overPlug?: Expected
  /**
   * `part`: on the way; `edge`: the last 0.08 mm begin, stone the edge; `web`: a slit's corners are coming through; `setting`: a new
   * projection; `last`: then add what is missing.
   */
  readonly kind: 'part' | 'edge' | 'web' | 'setting' | 'last'
  /** One short line: what to do there. */
  readonly does: string
}

/** One lane at one setting of the projection, from touch or the last floor to a gate. In the order they are cut. */
export interface LaneCut {
  /** Place in `settings` and in `lanes`. */
  readonly setting: number
  readonly lane: number
  readonly offset: number
  /** Readings: where this lane first cuts, and where it ends. */
  readonly from: number
  readonly to: number
  readonly runs: readonly Run[]
  /** Every stroke of those runs: for a strip of forces, and for a phone at the machine. */
  readonly passes: readonly Pass[]
  readonly gates: readonly Gate[]
  /** x of every pass of equal force, for a readout that can set what no dial can. */
  readonly readout: readonly number[]
}

/** A setting of the projection. At its beginning the nose lies on the last floor and the dial is set by what was measured there. */
export interface ProjectionSetting {
  readonly projection: number
  readonly overBarAndNose: number
  readonly from: number
  readonly to: number
}

/** Where the dial is to end: one rule, never both. */
export interface Target {
  readonly rule: 'spring passes to no chip' | 'full cuts to size'
  readonly x: number
  /** From first touch of the first lane. */
  readonly infeed: number
  /** What of it is beyond the floor: the least that stays uncut, or what the cut draws itself in by (negative). */
  readonly allowance: number
  /** To the dial's mark, toward shallow. */
  readonly reading: number
  readonly springPasses: number
}

/** The infeed that a bore of this size wants, and what is left of it at the last gate. */
export interface BoreRow {
  readonly bore: number
  readonly infeed: number
  readonly left: number
  /** The same two as the dial reads them. */
  readonly onDial: number
  readonly leftOnDial: number
}

/** Middle of the nose on the bore, by its two corners. */
export interface Centring {
  /** x at touch over nose width, both less the corners' radius: sideways correction = factor × difference of infeed between the two marks. */
  readonly factor: number
  /** The same for a difference of readings. */
  readonly factorOfReading: number
  /** How far off the middle may be: a quarter of what the fit can lose, no more than 0.25 mm. */
  readonly offsetMost: number
  /** Of splines half the standard's tolerance of symmetry; judgement where nothing is known of the key. */
  readonly offsetFrom: 'fit' | 'standard' | 'judgement'
  /** The difference of readings that may be left, to half a mark. */
  readonly differenceMost: number
  /** False where half a mark already says more than may be left: use an indicator. */
  readonly dialIsFineEnough: boolean
  /** From half a mark, sideways. */
  readonly uncertainty: number
  /** Sideways, for each degree that the nose's end is out of square: touching cannot tell it apart. */
  readonly perDegree: number
  /** The nose's end must be square to this, degrees, or the test says nothing. */
  readonly squareWithin: number
  readonly table: readonly { readonly difference: number; readonly move: number }[]
}

/** Minutes, by what they go to; judgement all. */
export interface Time {
  readonly strokes: number
  readonly springPasses: number
  readonly measuring: number
  readonly stoning: number
  readonly indexing: number
  readonly whole: number
}

export interface Plan {
  readonly infeedPerPass: number
  /** Of one slot, all lanes, at that infeed throughout. */
  readonly passes: number
  readonly keyways: number
  /** Strokes of all slots at that infeed; measuring and stoning not counted. */
  readonly minutes: number
  /** After so many passes of the first lane, this across by the dial. */
  readonly checks: readonly { readonly after: number; readonly across: number }[]
  readonly lanes: readonly {
    readonly offset: number
    readonly touchOff: number
    readonly infeed: number
    readonly passes: number
    /** Reading at its first touch; the zero is the first lane's. */
    readonly touchReading: number
    /** Passes of equal force. */
    readonly evenPasses: number
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
    /** With the nose to the front the dial runs backwards, and its slack is taken up the other way. */
    readonly runs: 'in' | 'out'
    /** Reading for one of infeed: 1; 2 where it reads diameter; over the sine of the angle where the slide is set over. */
    readonly perInfeed: number
    /** The angle that the slide is set over by, as given, degrees. */
    readonly slide?: number
    /** The least that is set by hand: half a mark, or a smaller part where even that is too much. */
    readonly finest: number
    /** Reading at which the crown is cut away: across can be measured from here on, and the whole nose cuts. */
    readonly crown: number
    /** Across at the zero: reading = (across − this) × perInfeed. */
    readonly acrossAtZero: number
  }
  /** Slide set over from the bed's axis, degrees, and the infeed that one mark of it gives. */
  readonly slide: readonly { readonly angle: number; readonly infeed: number }[]
  readonly settings: readonly ProjectionSetting[]
  readonly cuts: readonly LaneCut[]
  readonly target: Target
  readonly bores: { readonly reading: number; readonly rows: readonly BoreRow[] }
  /** By so much more infeed a nose without its corners goes from touch to floor; absent where the nose has no two corners. */
  readonly sharpNose?: number
  /** The dial goes on by so much for each that is missing at the last gate, as it is measured there. */
  readonly missingOnDial: number
  /** How a gate is measured: across to the bore, floor to floor, blocks over a plug that fills the bore, or not at all. */
  readonly gateBy: 'across' | 'floor to floor' | 'plug and blocks' | 'nothing'
  /** Absent where the nose has no two corners. */
  readonly centring?: Centring
  /** Drawn back by this before each return stroke. */
  readonly withdraw: number
  /** Along the bore: clear before it at the start, past it at the end. */
  readonly stroke: { readonly before: number; readonly past: number; readonly length: number }
  /** The bar along the bore by the indicator, over the bore's length. */
  readonly tram: number
  readonly time: Time
}

/** Least and most that passes. */
export interface GoNoGo {
  readonly go: number
  readonly noGo: number
}

/** A way to measure across. */
export type AcrossBy =
  | {
      readonly by: 'pin and plug'
      readonly pin: number
      readonly plug: GoNoGo
      /** How much more a plug finds at most, since a narrow pin rolls aside. */
      readonly error: number
      /** Else to be turned. */
      readonly pinOnHand: boolean
      readonly plugsOnHand: boolean
    }
  | { readonly by: 'block and inside reading'; readonly block: number; readonly inside: GoNoGo }
  /** A plug that fills the bore, and blocks between it and the floor: the crown depth. */
  | { readonly by: 'plug and blocks'; readonly plug: number; readonly blocks: GoNoGo }

export interface Measuring {
  /** Floor to opposite bore wall, limits and middle. */
  readonly across: { readonly least: number; readonly middle: number; readonly most: number }
  /** False where a slot stands opposite, or there is no floor: `instead` says what then. */
  readonly toBore: boolean
  readonly ways: readonly AcrossBy[]
  readonly instead?: string
  /** Pairs of slots that stand opposite each other, counted from 1. */
  readonly floorToFloor?: {
    readonly pairs: readonly (readonly [number, number])[]
    readonly least: number
    readonly middle: number
    readonly most: number
  }
  /** Of the slot; across flats of a socket; of a groove's mouth. */
  readonly width: GoNoGo
  /** Key in, turned over: half of what the indicator changes by; the most that it may be. */
  readonly sideToSide?: number
  /** Of a keyway: one side by the indicator, the near end less the far; the most that it may be. */
  readonly lead?: number
  /** Measured at both ends of the bore; the difference of across that is left may be this. */
  readonly endToEnd: number
  /** The key slides in by hand. */
  readonly key: boolean
}

/** One slot: turn the work on to here from slot 1. */
export interface IndexSlot {
  /** From 1; one more than there are slots is back at slot 1. */
  readonly slot: number
  readonly angle: number
  readonly turns: number
  readonly holes: number
  /** Of the setting from the true angle, minutes of arc. */
  readonly error: number
  /** Tooth of the spindle gear, counted from slot 1's; absent where there is no gear that serves. */
  readonly tooth?: number
}

export interface Indexing {
  /**
   * What the work is turned by; the head's usual circles where nobody has told of one. Under a press alone a loose key between bushing and the
   * keyway cut last, or where there can be none a line scribed on the hub.
   */
  readonly by: 'dividing head' | 'gear' | 'plate' | 'locating key' | 'scribed line'
  readonly ratio: number
  readonly circle: number
  /** Other circles that do it exactly. */
  readonly otherCircles: readonly number[]
  readonly slots: readonly IndexSlot[]
  readonly gear?: { readonly teeth: number; readonly step: number }
  readonly plate?: {
    readonly radius: number
    readonly holes: readonly { readonly x: number; readonly y: number }[]
    /** Of one hole, degrees. */
    readonly error: number
  }
  /** Greatest error of a slot, minutes of arc; and between the two that are farthest apart. */
  readonly error: number
  readonly spread: number
  /** Play that the errors of index and eccentricity take from a shaft free to turn, and the least play there is. */
  readonly playNeeded: number
  readonly play?: number
  /** ± by which across differs from slot to slot in a bore that is off the axis it is turned about. */
  readonly acrossVaries?: number
}
