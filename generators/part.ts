import type { Design } from '../src/design.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Drawing } from '../src/drawing/view.ts'
import type { Solid } from '../src/solid/solid.ts'

/** One body as it stands on a printer's bed, in the model's sizes; its lowest point may lie anywhere. */
export interface Print {
  readonly name: string
  readonly solid: Solid
}

/** The contract that every part keeps. All three are pure and instant. */
export interface Part {
  /** `guide-bushing`: names the files and the `--parts` choice. */
  readonly name: string
  readonly title: string
  /** Whether this design has the part at all. */
  readonly belongs: (design: Design) => boolean
  readonly solid: (design: Design) => Solid
  /** Parts that are printed: each body by itself, by names of their own. */
  readonly prints?: (design: Design) => readonly Print[]
  readonly drawing: (design: Design) => Drawing
  /** Flat 1:1 contours for cutting or scribing, where the part has one. */
  readonly profile?: (design: Design) => Profile
}
