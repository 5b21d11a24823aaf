import type { Units } from './spec.ts'
import type { SpindleHold } from './spindle.ts'

/** A lathe, mill or press on hand, as far as the shop file tells of it. All mm, N, N/mm. */
export interface Machine {
  readonly name: string
  readonly kind: 'lathe' | 'mill' | 'press'
  readonly dial?: { readonly mark: number; readonly reads: 'travel' | 'diameter' }
  /** How far it strokes along the bore's axis. */
  readonly travel?: number
  /** Sideways stiffness as measured at the holder. */
  readonly give?: number
  /** The most that it may push along the bore's axis: for a drilling spindle the thrust of the largest drill it is sold to push. */
  readonly thrust?: number
  /** What drives the stroke by hand: radius of the handle, and the stroke for one turn of it. */
  readonly handle?: { readonly radius: number; readonly travel: number }
  /** What keeps the spindle from turning. */
  readonly hold?: SpindleHold
  /** Force of one jaw of its vise or chuck. */
  readonly jaws?: number
}

/** A dividing head: turns of its crank for one of the work, and the circles of holes in its plates, ascending. */
export interface Dividing {
  readonly ratio: number
  readonly circles: readonly number[]
}

/** What an instrument can be trusted to, ± mm. */
export interface Measuring {
  readonly caliper?: number
  readonly micrometer?: number
  readonly depthMicrometer?: number
  readonly boreGauge?: number
  readonly indicator?: number
  readonly blocks?: number
  /** How far a square may be out over 100 mm. */
  readonly square?: number
}

/** What a shop has on hand, all lengths in mm. Whatever the shop file leaves out is our own default list for its units. */
export interface Shop {
  readonly units: Units
  /** Drill diameters with the names they are asked for by: `8.4`, `letter T`, `#21`, `23/64`. Ascending. */
  readonly drills: readonly { readonly name: string; readonly diameter: number }[]
  /** Names of threads for which there are taps and set screws: `M5`, `#10-32`. Ascending by size. */
  readonly threads: readonly string[]
  /** Tool-bit blanks. Ascending by size. */
  readonly bits: readonly { readonly shape: 'square' | 'round'; readonly size: number }[]
  /** Round bar for cutter bars, diameters. Ascending. */
  readonly bars: readonly number[]
  /** Round bar for bushings, diameters. Ascending. */
  readonly rounds: readonly number[]
  /** Diameters that collet or holder takes. Ascending. */
  readonly collets: readonly number[]
  /** Shim and feeler stock, thicknesses. Ascending. */
  readonly shims: readonly number[]
  /** Set screws of which the shop file gives the lengths on hand: those, ascending; a thread that is not here comes in every usual length. */
  readonly screws?: readonly { readonly thread: string; readonly lengths: readonly number[] }[]
  /** Diameters, where the shop file tells of them. Ascending. */
  readonly reamers?: readonly number[]
  readonly endMills?: readonly number[]
  readonly pins?: readonly number[]
  readonly plugs?: readonly number[]
  /** Numbers of teeth of gears that can serve for an index plate. Ascending. */
  readonly gears?: readonly number[]
  readonly machines?: readonly Machine[]
  readonly dividing?: Dividing
  readonly measuring?: Measuring
  /** Measured on this printer (core: print compensation): offset of an outside and of an inside, per side, and the foot's growth. */
  readonly printer: {
    /** per side, negative where the plug comes out small */
    readonly outside: number
    /** per side, negative where the hole comes out small */
    readonly inside: number
    /** chamfer at the bed edge */
    readonly foot: number
    /** measured by the owner, or a default */
    readonly measured: boolean
  }
}
