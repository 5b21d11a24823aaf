import type { Outline, Point } from './outline.ts'

export type Point3 = readonly [x: number, y: number, z: number]

/**
 * A solid as a recipe: plain, exact, mm. mesh.ts carves it. The same recipe can feed an exact kernel.
 */
export type Solid =
  /** `outline` in (radius, z), radius >= 0, turned round the z axis. */
  | { readonly make: 'revolve'; readonly outline: Outline }
  /** `outline` in (x, y) drawn out from z = `from` to z = `to`; `holes` go right through. */
  | {
      readonly make: 'extrude'
      readonly outline: Outline
      readonly holes?: readonly Outline[]
      readonly from: number
      readonly to: number
    }
  /**
   * A drilled hole, as a body to be cut away: starts at `at`, runs `length` along `axis`; `point` adds a drill point of that
   * included angle (degrees) beyond `length`. `clears`: chords of the hole go outside the true circle.
   */
  | {
      readonly make: 'bore'
      readonly axis: 'x' | '-x' | 'y' | '-y' | 'z' | '-z'
      readonly at: Point3
      readonly diameter: number
      readonly length: number
      readonly point?: number
      readonly clears?: boolean
    }
  /** The smallest convex body round the points. */
  | { readonly make: 'hull'; readonly points: readonly Point3[] }
  | { readonly make: 'cut'; readonly body: Solid; readonly less: readonly Solid[] }
  | { readonly make: 'join'; readonly bodies: readonly Solid[] }
  | { readonly make: 'common'; readonly bodies: readonly Solid[] }
  /** Turned by degrees about x, then y, then z; then moved. */
  | { readonly make: 'place'; readonly body: Solid; readonly turn?: Point3; readonly move?: Point3 }
  /** Raised lettering (capitals `height` mm high), middle of the text at `at` in (x, y), drawn out from z = `from` to z = `to`. */
  | {
      readonly make: 'letters'
      readonly text: string
      readonly height: number
      readonly stroke: number
      readonly at: Point
      readonly from: number
      readonly to: number
    }

/** A body turned round the z axis from its half section in (radius, z). */
export const revolve = (outline: Outline): Solid => ({ make: 'revolve', outline })

/** A body of one section from z = `from` to z = `to`, with holes right through. */
export const extrude = (outline: Outline, from: number, to: number, holes: readonly Outline[] = []): Solid =>
  holes.length === 0 ? { make: 'extrude', outline, from, to } : { make: 'extrude', outline, holes, from, to }

/** A drilled hole, to be cut away. `point`: included angle of the drill's point in degrees; `clears`: no chord within the circle. */
export const bore = (
  axis: Extract<Solid, { make: 'bore' }>['axis'],
  at: Point3,
  diameter: number,
  length: number,
  ends: { readonly point?: number; readonly clears?: boolean } = {},
): Solid => ({ make: 'bore', axis, at, diameter, length, ...ends })

/** The smallest convex body round the points. */
export const hull = (points: readonly Point3[]): Solid => ({ make: 'hull', points })

/** `body` with every one of `less` taken away. */
export const cut = (body: Solid, ...less: readonly Solid[]): Solid => ({ make: 'cut', body, less })

/** All the metal of all the bodies. */
export const join = (...bodies: readonly Solid[]): Solid => ({ make: 'join', bodies })

/** The metal that all the bodies share. */
export const common = (...bodies: readonly Solid[]): Solid => ({ make: 'common', bodies })

/** Turned by degrees about x, then y, then z; then moved. */
export const place = (body: Solid, how: { readonly turn?: Point3; readonly move?: Point3 }): Solid => ({
  make: 'place',
  body,
  ...how,
})

/** Raised lettering, its middle at `at`, capitals `height` mm high over all, drawn with a round point `stroke` mm wide. */
export const letters = (
  text: string,
  how: {
    readonly height: number
    readonly stroke: number
    readonly at: Point
    readonly from: number
    readonly to: number
  },
): Solid => ({ make: 'letters', text, ...how })
