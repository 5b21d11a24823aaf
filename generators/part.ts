import type { Design } from '../src/design.ts'
import type { Profile } from '../src/drawing/profile.ts'
import type { Drawing } from '../src/drawing/view.ts'
import { join, place, type Point3, type Solid } from '../src/solid/solid.ts'

/** One body as it stands on a printer's bed, in the model's sizes; its lowest point may lie anywhere. */
export interface Print {
  readonly name: string
  readonly solid: Solid
  /** Where it stands beside the part's other bodies, mm; left out: where it is. */
  readonly move?: Point3
}

/** All the bodies of a part side by side: the part's own solid. */
export const sideBySide = (prints: readonly Print[]): Solid =>
  join(...prints.map(({ solid, move }) => place(solid, move ? { move } : {})))

/** The contract that every part keeps. All three are pure and instant. */
export interface Part {
  /** `guide-bushing`: names the files and the `--parts` choice. */
  readonly name: string
  readonly title: string
  /** Which tooling it is of, or the job's own whichever way it is cut: what is broken there bars its making. */
  readonly of: 'bar' | 'press' | 'job'
  /** Whether this design has the part at all. */
  readonly belongs: (design: Design) => boolean
  readonly solid: (design: Design) => Solid
  /** Parts that are printed: each body by itself, by names of their own. */
  readonly prints?: (design: Design) => readonly Print[]
  readonly drawing: (design: Design) => Drawing
  /** Flat 1:1 contours for cutting or scribing, where the part has one. */
  readonly profile?: (design: Design) => Profile
}
