import jscad from '@jscad/modeling'
import type { Manifold, ManifoldToplevel } from 'manifold-3d'
import type { Engine } from './recipe.ts'

type Pair = [number, number]
const pairs = (flat: readonly (readonly [number, number])[]): Pair[] => flat.map(([x, y]): Pair => [x, y])

/** The bare kernel. */
export const bare = (kernel: ManifoldToplevel): Engine<Manifold> => ({
  extrude: (outline, holes, from, to) =>
    kernel.CrossSection.ofPolygons([pairs(outline), ...holes.map((hole) => pairs(hole))], 'EvenOdd')
      .extrude(to - from)
      .translate(0, 0, from),
  revolve: (outline, segments) => kernel.CrossSection.ofPolygons([pairs(outline)], 'EvenOdd').revolve(segments),
  place: (body, turn, move) => body.rotate([...turn]).translate([...move]),
  hull: (points) => kernel.Manifold.hull(points.map(([x, y, z]): [number, number, number] => [x, y, z])),
  subtract: (body, less) => kernel.Manifold.difference([body, ...less]),
  union: (bodies) => kernel.Manifold.union([...bodies]),
  intersect: (bodies) => kernel.Manifold.intersection([...bodies]),
})

const { booleans, extrusions, geometries, hulls, transforms } = jscad
export type Geometry = ReturnType<typeof jscad.primitives.cuboid>
const radians = (degrees: number): number => (degrees * Math.PI) / 180
/** JSCAD’s own booleans. */
export const own: Engine<Geometry> = {
  extrude: (outline, holes, from, to) => {
    const whole = geometries.geom2.fromPoints(pairs(outline))
    const flat = holes.reduce(
      (left, hole) => booleans.subtract(left, geometries.geom2.fromPoints(pairs(hole).toReversed())),
      whole,
    )
    return transforms.translate([0, 0, from], extrusions.extrudeLinear({ height: to - from }, flat))
  },
  revolve: (outline, segments) => extrusions.extrudeRotate({ segments }, geometries.geom2.fromPoints(pairs(outline))),
  place: (body, turn, move) =>
    transforms.translate([...move], transforms.rotate([radians(turn[0]), radians(turn[1]), radians(turn[2])], body)),
  hull: (points) =>
    hulls.hull(
      points.map(([x, y, z]) => transforms.translate([x, y, z], jscad.primitives.cuboid({ size: [1e-3, 1e-3, 1e-3] }))),
    ),
  subtract: (body, less) => booleans.subtract(body, ...less),
  union: (bodies) => booleans.union(...bodies),
  intersect: (bodies) => booleans.intersect(...bodies),
}
