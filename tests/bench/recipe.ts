import { chords, chordsRound } from '../../src/solid/chords.ts'
import { lettering } from '../../src/solid/lettering.ts'
import { boundsOf, type Outline } from '../../src/solid/outline.ts'
import type { Point3, Solid } from '../../src/solid/solid.ts'

/** What a solid engine can do, so that one recipe runs on several with the same chords. */
export interface Engine<Body> {
  readonly extrude: (outline: Flat, holes: readonly Flat[], from: number, to: number) => Body
  readonly revolve: (outline: Flat, segments: number) => Body
  readonly place: (body: Body, turn: Point3, move: Point3) => Body
  readonly hull: (points: readonly Point3[]) => Body
  readonly subtract: (body: Body, less: readonly Body[]) => Body
  readonly union: (bodies: readonly Body[]) => Body
  readonly intersect: (bodies: readonly Body[]) => Body
}

export type Flat = readonly (readonly [number, number])[]

const turns: Readonly<Record<Extract<Solid, { make: 'bore' }>['axis'], Point3>> = {
  x: [0, 90, 0],
  '-x': [0, -90, 0],
  y: [-90, 0, 0],
  '-y': [90, 0, 0],
  z: [0, 0, 0],
  '-z': [180, 0, 0],
}

/** Builds a recipe on an engine, chords within `sagitta` mm. */
export const build = <Body>(solid: Solid, engine: Engine<Body>, sagitta: number): Body => {
  const flat = (outline: Outline): Flat => chords(outline, sagitta, 'on').map(([x, y]) => [x, y] as const)
  const made = (solid: Solid): Body => {
    switch (solid.make) {
      case 'revolve':
        return engine.revolve(flat(solid.outline), chordsRound(boundsOf(solid.outline).max[0], sagitta))
      case 'extrude':
        return engine.extrude(flat(solid.outline), (solid.holes ?? []).map(flat), solid.from, solid.to)
      case 'bore': {
        const tip = solid.length + (solid.point ? solid.diameter / 2 / Math.tan((solid.point * Math.PI) / 360) : 0)
        const half: Flat = [
          [0, 0],
          [solid.diameter / 2, 0],
          [solid.diameter / 2, solid.length],
          [0, tip],
        ]
        const body = engine.revolve(half, chordsRound(solid.diameter / 2, sagitta))
        return engine.place(body, turns[solid.axis], solid.at)
      }
      case 'hull':
        return engine.hull(solid.points)
      case 'cut':
        return engine.subtract(made(solid.body), solid.less.map(made))
      case 'join':
        return engine.union(solid.bodies.map(made))
      case 'common':
        return engine.intersect(solid.bodies.map(made))
      case 'place':
        return engine.place(made(solid.body), solid.turn ?? [0, 0, 0], solid.move ?? [0, 0, 0])
      case 'letters':
        return engine.union(lettering(solid).map((outline) => engine.extrude(flat(outline), [], solid.from, solid.to)))
    }
  }
  return made(solid)
}
