import jscad from '@jscad/modeling'
import type { ManifoldToplevel } from 'manifold-3d'
import { bench, describe } from 'vitest'
import { parts } from '../../generators/set.ts'
import { design } from '../../src/design.ts'
import { carve, openKernel } from '../../src/solid/mesh.ts'
import { build, type Engine } from './recipe.ts'
import { specimen } from './specimens.ts'

// The same recipes with the same chords: as the program carves them, on the bare kernel, and on JSCAD's own booleans.
const sagitta = 0.01
const kernel = (await openKernel()) as ManifoldToplevel
type Body = InstanceType<typeof kernel.Manifold>
type Pair = [number, number]
const pairs = (flat: readonly (readonly [number, number])[]): Pair[] => flat.map(([x, y]): Pair => [x, y])

const bare: Engine<Body> = {
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
}

const { booleans, extrusions, geometries, hulls, transforms } = jscad
type Geometry = ReturnType<typeof jscad.primitives.cuboid>
const radians = (degrees: number): number => (degrees * Math.PI) / 180
const own: Engine<Geometry> = {
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

const few = { iterations: 10, time: 0, warmupIterations: 2, warmupTime: 0 }
for (const [name, wanted] of [
  ['cider-mill-pulley', ['cutter-bar', 'tool-bit']],
  ['winch-drum-gear', ['guide-bushing']],
] as const) {
  const worked = design(specimen(name))
  for (const part of parts.filter((part) => (wanted as readonly string[]).includes(part.name))) {
    const solid = part.solid(worked)
    describe(`${part.name} of ${name}`, () => {
      bench('carve: kernel, held to the surface, snapped, tidied', () => void carve(kernel, solid, sagitta), few)
      bench('bare manifold-3d', () => void build(solid, bare, sagitta).getMesh(), few)
      bench('JSCAD’s own booleans', () => void geometries.geom3.toPolygons(build(solid, own, sagitta)), few)
    })
  }
}
