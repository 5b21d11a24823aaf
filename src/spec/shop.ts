import type { Units } from './spec.ts'

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
  /** Reamers and pins, diameters, where the shop file tells of them. Ascending. */
  readonly reamers?: readonly number[]
  readonly pins?: readonly number[]
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
