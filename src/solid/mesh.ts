// The only file that knows the kernel, manifold-3d. Its arguments are outlines cut into chords (chords.ts), snapped to 1e-6 mm, so that
// every engine hands it the same numbers; what it does with them is WebAssembly and the same everywhere.
//
// Turned and extruded bodies are the kernel's own too: a turned bushing of 3700 facets takes it 5 ms, JSCAD's extrudeRotate with the way
// back into the kernel 19 ms. What comes from JSCAD is what the kernel has not: the strokes of letters (lettering.ts).
import openManifold, { type CrossSection, type Manifold, type ManifoldToplevel } from 'manifold-3d'
import { chords, chordsRound, type Side, snapped } from './chords.ts'
import { lettering } from './lettering.ts'
import { leastHeight, type Mesh, measure } from './measure.ts'
import { areaOf, boundsOf, type Outline, type Point } from './outline.ts'
import type { Point3, Solid } from './solid.ts'

export { type Mesh, measure }

/** The kernel, opened. What it can do is this file’s business: everybody else only hands it on. */
export interface Kernel {
  readonly setup: () => void
}

/**
 * The kernel, ready for carving. Without `wasm` it reads `manifold.wasm` beside the file that the program runs from (or in the package);
 * otherwise `wasm` is the URL to load it from, or the bytes themselves.
 */
export const openKernel = async (wasm?: string | Uint8Array): Promise<Kernel> => {
  // The package's own types know of neither an absent URL nor of bytes; the module takes both.
  const open = openManifold as (from: { locateFile?: () => string; wasmBinary?: Uint8Array }) => Promise<Kernel>
  const from = typeof wasm === 'string' ? { locateFile: () => wasm } : wasm ? { wasmBinary: wasm } : {}
  const kernel = await open(from)
  kernel.setup()
  return kernel
}

/**
 * The solid as a closed mesh, nowhere further than `sagitta` (mm) from its true surface. Metal never stands proud of an extruded outline or
 * of a bore that clears; a turned surface has its corners on the true circle. Throws where the recipe leaves no body: a bug of its maker.
 */
export const carve = (kernel: Kernel, solid: Solid, sagitta = 0.01): Mesh => {
  const [mesh] = carveAll(kernel, [solid], sagitta)
  if (!mesh) throw new Error('the recipe leaves no body')
  return mesh
}

/** Several solids, each as by itself; one that is part of a later one is carved once. */
export const carveAll = (kernel: Kernel, solids: readonly Solid[], sagitta = 0.01): Mesh[] =>
  holding((hold) => {
    const carvers = new Map<number, (solid: Solid) => Manifold>()
    const carverFor = (share: number): ((solid: Solid) => Manifold) => {
      const known = carvers.get(share) ?? carver(kernel, hold, share * sagitta, solids)
      carvers.set(share, known)
      return known
    }
    return solids.map((solid) => {
      // Where chords of two surfaces happen to end within a hair of one another they leave slivers: chords a little shorter do not.
      const attempt = (share: number): Mesh => {
        const mesh = tidied(carverFor(share)(solid), hold, sagitta / 50)
        if (share < 0.8 || leastHeight(mesh) > sagitta / 200) return mesh
        const other = attempt(share - 0.06)
        return leastHeight(other) > leastHeight(mesh) ? other : mesh
      }
      return attempt(0.96)
    })
  })

const tidied = (body: Manifold, hold: Hold, sliver: number): Mesh => {
  if (body.status() !== 'NoError') throw new Error(`the kernel could not carve the solid: ${body.status()}`)
  if (body.isEmpty()) throw new Error('the recipe leaves no body')
  const mesh = meshOf(body, hold)
  // Tidying takes as long as carving, and few bodies have slivers. The body is made an original first: what is left of its parents' faces
  // would hold some open (least height of 3600 parts 6e-5 mm so, else 6e-7).
  return leastHeight(mesh) > sliver ? mesh : meshOf(hold(hold(body.asOriginal()).simplify(sliver)), hold)
}

/** The kernel gives out its mesh in single precision; a warp that moves nothing is shown the same corners, in the same order, in double. */
const meshOf = (body: Manifold, hold: Hold): Mesh => {
  let positions = new Float64Array()
  hold(
    body.warpBatch((corners) => {
      positions = corners.map(snapped)
    }),
  )
  return { positions, triangles: body.getMesh().triVerts }
}

/** Volume (mm³) of the metal that `a` and `b` would both fill, `b` moved by `moved` (mm). */
export const interference = (kernel: Kernel, a: Solid, b: Solid, moved: Point3 = [0, 0, 0], sagitta = 0.01): number =>
  holding((hold) => {
    const both: Solid = { make: 'common', bodies: [a, { make: 'place', body: b, move: moved }] }
    return carver(kernel, hold, sagitta)(both).volume()
  })

type Hold = <Held extends { delete(): void }>(held: Held) => Held

/** Runs `work`, then gives back every kernel object that it held. */
const holding = <Made>(work: (hold: Hold) => Made): Made => {
  const held: { delete(): void }[] = []
  try {
    return work((one) => {
      held.push(one)
      return one
    })
  } finally {
    for (const one of held.toReversed()) one.delete()
  }
}

const turns = {
  x: [0, 90, 0],
  '-x': [0, -90, 0],
  y: [-90, 0, 0],
  '-y': [90, 0, 0],
  z: [0, 0, 0],
  '-z': [180, 0, 0],
} as const

/** From recipe to kernel body. Every body it makes is held; those that are `wanted` again are made once. */
const carver = (
  opened: Kernel,
  hold: Hold,
  sagitta: number,
  wanted: readonly Solid[] = [],
): ((solid: Solid) => Manifold) => {
  const made = new Map<Solid, Manifold>()
  const kernel = opened as ManifoldToplevel
  const { Manifold } = kernel

  const section = (
    outlines: readonly Outline[],
    near: number,
    side: Side,
    holes: readonly Outline[] = [],
  ): CrossSection => {
    const outer = outlines.map((outline) => wound(outline, chords(outline, near, side), 1))
    const inner = holes.map((outline) => wound(outline, chords(outline, near, opposite[side]), -1))
    return hold(kernel.CrossSection.ofPolygons([...outer, ...inner], 'Positive'))
  }
  const extruded = (flat: CrossSection, from: number, to: number): Manifold =>
    hold(hold(flat.extrude(snapped(to - from))).translate(0, 0, snapped(from)))

  const turned = (outline: Outline): Manifold => {
    const curved = outline.some(({ bulge = 0 }) => bulge !== 0)
    const near = curved ? sagitta / 2 : sagitta // an arc turned round strays both ways
    return hold(section([outline], near, 'on').revolve(chordsRound(boundsOf(outline).max[0], near)))
  }

  const bored = ({ axis, at, diameter, length, point, clears }: Extract<Solid, { make: 'bore' }>): Manifold => {
    const count = chordsRound(diameter / 2, sagitta, clears ? 'outside' : 'inside')
    const radius = snapped((diameter / 2) * (clears ? 1 / Math.cos(Math.PI / count) : 1))
    const tip = length + (point ? diameter / 2 / Math.tan((point * Math.PI) / 360) : 0)
    const half: [number, number][] = [
      [0, 0],
      [radius, 0],
      [radius, snapped(length)],
      [0, snapped(tip)],
    ] // prettier-ignore
    return placed(hold(Manifold.revolve([half], count)), turns[axis], at)
  }

  const placed = (body: Manifold, turn: Point3 = [0, 0, 0], move: Point3 = [0, 0, 0]): Manifold =>
    hold(hold(body.rotate(turn)).translate(move.map(snapped) as [number, number, number]))

  const carved = (solid: Solid): Manifold => {
    const known = made.get(solid)
    if (known) return known
    const body = carvedAnew(solid)
    if (wanted.includes(solid)) made.set(solid, body)
    return body
  }

  const carvedAnew = (solid: Solid): Manifold => {
    switch (solid.make) {
      case 'revolve':
        return turned(solid.outline)
      case 'extrude':
        return extruded(section([solid.outline], sagitta, 'inside', solid.holes), solid.from, solid.to)
      case 'bore':
        return bored(solid)
      case 'hull':
        return hold(Manifold.hull(solid.points.map((at) => at.map(snapped) as [number, number, number])))
      case 'cut':
        return hold(Manifold.difference([solid.body, ...solid.less].map(carved)))
      case 'join':
        return hold(Manifold.union(solid.bodies.map(carved)))
      case 'common':
        return hold(Manifold.intersection(solid.bodies.map(carved)))
      case 'place':
        return placed(carved(solid.body), solid.turn, solid.move)
      case 'letters':
        return extruded(section(lettering(solid), sagitta, 'on'), solid.from, solid.to)
    }
  }
  return carved
}

const opposite = { inside: 'outside', outside: 'inside', on: 'on' } as const

const wound = (outline: Outline, points: readonly Point[], way: 1 | -1): [number, number][] => {
  const run = points.map(([x, y]): [number, number] => [x, y])
  return Math.sign(areaOf(outline)) === way ? run : run.toReversed()
}
