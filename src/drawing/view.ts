/**
 * What a generator says of a part: views in part coordinates, full size, mm, before anything is laid out on paper.
 */
import type { Outline, Point } from '../solid/outline.ts'

export type LineKind = 'visible' | 'hidden' | 'centre' | 'phantom' | 'thin' | 'break' | 'cut'

export type Mark =
  | { readonly mark: 'line'; readonly kind: LineKind; readonly from: Point; readonly to: Point }
  /** Counter-clockwise from `from` to `to`, degrees; 0 to 360 is the whole circle. */
  | {
      readonly mark: 'arc'
      readonly kind: LineKind
      readonly centre: Point
      readonly radius: number
      readonly from: number
      readonly to: number
    }
  /** A closed contour; `closed: false` leaves out the edge that leads back. */
  | { readonly mark: 'outline'; readonly kind: LineKind; readonly outline: Outline; readonly closed?: boolean }
  /** Cut metal: the outlines are filled by even-odd. `angle` 45 unless a second piece meets the first. */
  | { readonly mark: 'hatch'; readonly outlines: readonly Outline[]; readonly angle?: 45 | 135 }
  /** An arrow in the view with words beside it: the direction of the cut. */
  | { readonly mark: 'arrow'; readonly from: Point; readonly to: Point; readonly text: string }
  /** Centre mark: two crossing centre lines, each running `over` past the radius (mm on paper are added by the sheet). */
  | { readonly mark: 'centreMark'; readonly centre: Point; readonly radius: number }
  /**
   * Cutting plane through the view, upright or level, arrows in the direction of sight, a letter at each end. Only the line that `from` and
   * `to` lie on counts: the sheet sets the ends off the outline.
   */
  | {
      readonly mark: 'plane'
      readonly letter: string
      readonly from: Point
      readonly to: Point
      readonly looks: 'left' | 'right' | 'up' | 'down'
    }
  /** A thin circle round what a detail view enlarges, and its letter. */
  | { readonly mark: 'detail'; readonly letter: string; readonly centre: Point; readonly radius: number }
  /** Surface texture tick standing on an edge; `ra` in µm. The sheet may slide it along the straight edge that `at` lies on. */
  | { readonly mark: 'texture'; readonly at: Point; readonly out: Point; readonly ra: number }

/** How a size is said. The sheet rounds, adds decimals, signs and the other unit; nothing here is a string that holds a number. */
export type Saying =
  /** General tolerance holds. `decimals` in the sheet's unit where the default will not do. */
  | { readonly say: 'plain'; readonly decimals?: { readonly mm: number; readonly in: number } }
  | { readonly say: 'plusMinus'; readonly tolerance: number }
  /** Limits; `fit` is a class to be named before its deviations (`h7`). */
  | { readonly say: 'limits'; readonly lower: number; readonly upper: number; readonly fit?: string }
  /** Stock and tool names only: `1-3/8` on an inch sheet where it is an exact 64th; plain else. */
  | { readonly say: 'fraction' }
  | { readonly say: 'reference' }
  | { readonly say: 'max' }
  | { readonly say: 'min' }

export interface Worth {
  /** mm, or degrees for an angle. */
  readonly value: number
  readonly saying: Saying
  readonly prefix?: 'Ø' | 'R' | '□' | 't '
  /** Words after the number: `both`, `both corners`. */
  readonly suffix?: string
  readonly angle?: boolean
}

/** A line of a leader: sizes and words in turn, `[{ value: 0.3, … }, ' × 45° both mouths']`. */
export type Wording = readonly (string | Worth)[]

/**
 * Geometry frame or datum hung on a dimension. `value` in mm. A frame stands under the size; with `at` it points at the extension line of that
 * end instead (a surface, not the size's middle).
 */
export type Hung =
  | { readonly hang: 'datum'; readonly letter: string }
  | {
      readonly hang: 'frame'
      readonly of: string
      readonly feature: 'symmetry' | 'parallelism' | 'position'
      readonly value: number
      readonly datum: string
      readonly at?: 'a' | 'b'
    }

export interface Linear {
  readonly callout: 'linear'
  /** The dimension's name in the core: `slotWidth`. */
  readonly of: string
  readonly worth: Worth
  readonly axis: 'x' | 'y'
  /** The two ends along the axis. The sheet's test holds |b − a| against the worth's value. */
  readonly a: number
  readonly b: number
  /** Where, across the axis, each extension line starts. */
  readonly fromA: number
  readonly fromB: number
  readonly side: 'top' | 'bottom' | 'left' | 'right'
  readonly hangs?: readonly Hung[]
  /** A neighbour at a shared datum: wants the same line as the callout of that name. */
  readonly chain?: string
}

export interface Angle {
  readonly callout: 'angle'
  readonly of: string
  readonly worth: Worth
  readonly vertex: Point
  /** Degrees, a1 < a2. */
  readonly a1: number
  readonly a2: number
  /** Where each arm may begin to be drawn. */
  readonly starts: readonly [Point, Point]
}

export interface Leader {
  readonly callout: 'leader'
  readonly of: string
  /** Further dimensions that the same leader says. */
  readonly also?: readonly string[]
  /** Any tip serves; `out` is the free direction there. */
  readonly tips: readonly { readonly at: Point; readonly out: Point }[]
  readonly lines: readonly Wording[]
  readonly small?: boolean
  readonly hangs?: readonly Hung[]
}

export type Callout = Linear | Angle | Leader

export interface Box {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

export interface View {
  readonly name: string
  /** Shown over the view: `A – A`, `B`. A scale other than the sheet's is added by the sheet. */
  readonly title?: string
  /**
   * Where it stands: `front` is the principal view; `above`/`below`/`fromLeft`/`fromRight` are views *seen from* there, put on the side
   * that the projection method asks for; `section` (of `front`, seen `from` there) likewise; `detail` and `free` stand anywhere.
   * Views in projection share a coordinate with the front: y beside it, x above and below it.
   *
   * `least`, mm on the part: the smallest thing that the view must show. A detail takes the scale that makes it 3 mm on paper or more; a section
   * (not `aligned`) the one that makes it 25 mm (the body's diameter), two steps up at most. `clip`: the sheet draws this circle and leaves
   * out what lies beyond it, so that a detail may hand over the front's own marks.
   */
  readonly place:
    | { readonly is: 'front' }
    | { readonly is: 'seen'; readonly from: 'above' | 'below' | 'left' | 'right' }
    | {
        readonly is: 'detail'
        readonly least: number
        readonly clip?: { readonly centre: Point; readonly radius: number }
      }
    | {
        readonly is: 'section'
        readonly from: 'above' | 'below' | 'left' | 'right'
        readonly least?: number
        readonly aligned: boolean
      }
    | { readonly is: 'free' }
  readonly marks: readonly Mark[]
  /** Boxes that cover the metal; coarse is enough. Leader text keeps off them. */
  readonly metal: readonly Box[]
  readonly callouts: readonly Callout[]
  /** Plain stretches of a long part along x that may be cut short. Views that share x with this one carry the same. */
  readonly breaks?: readonly { readonly from: number; readonly to: number }[]
}

/** A block of words: a heading and numbered or plain lines. Words may hold sizes. */
export interface Notes {
  readonly heading: string
  readonly numbered?: boolean
  /** Drawn in a heavy box. */
  readonly caution?: boolean
  readonly lines: readonly Wording[]
}

export interface AsMadeRow {
  readonly what: string
  /** A toleranced worth is written as its two limits, `23.975 / 23.987`; or a word: `by hand`. */
  readonly limits: Wording
}

/** All that the sheets of one part say. */
export interface Drawing {
  readonly part: string
  readonly title: string
  /** `10`, `20`, `30`: the drawing number's tail. */
  readonly number: string
  readonly views: readonly View[]
  readonly notes: readonly Notes[]
  readonly asMade: { readonly heading: string; readonly rows: readonly AsMadeRow[] }
  readonly block: {
    readonly material: string
    readonly stock: Wording
    readonly heat: string
    readonly finish: string
    /** Defaults: the convention's own. */
    readonly limits?: string
    readonly surface?: string
    readonly edges?: string
    /** `for cider-mill-pulley, bore 24 H7 x 38` */
    readonly job: string
  }
}
