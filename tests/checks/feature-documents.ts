import fc from 'fast-check'

/** Specs of splines, sockets, slits and oil grooves as a shop might write them, well or badly: by a standard or by hand, tooling left open or fixed anyhow. */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Once in so many. */
const sometimes = <T>(value: fc.Arbitrary<T>, of = 3): fc.Arbitrary<T | undefined> =>
  fc.oneof({ arbitrary: value, weight: 1 }, { arbitrary: fc.constant(undefined), weight: of - 1 })
const stated = (mapping: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(mapping).filter(([, value]) => value !== undefined))
const mm = (size: number): string => `${Math.round(size * 1e3) / 1e3} mm`

/** Bore and size of ISO 14; invented jobs may take any. */
const isoSizes = [
  [11, '6x11x14'],
  [23, '6x23x26'],
  [28, '6x28x34'],
  [36, '8x36x40'],
  [62, '8x62x68'],
  [92, '10x92x98'],
] as const

const wishes = fc.record({
  inches: fc.boolean(),
  kind: fc.constantFrom('spline', 'spline', 'iso', 'sae', 'socket', 'slit', 'groove'),
  bore: between(6, 100),
  iso: fc.constantFrom(...isoSizes),
  count: fc.integer({ min: 1, max: 16 }),
  sides: fc.constantFrom(3, 4, 4, 5, 6, 6, 8),
  share: between(0.03, 0.3),
  part: between(-0.1, 1.1),
  band: between(0, 0.2),
  tolerance: fc.constantFrom(undefined, 'exact', 'H7', 'H9'),
  off: sometimes(between(-0.03, 0.05), 5),
  wall: sometimes(between(1.15, 2.5), 2),
  material: fc.constantFrom(undefined, 'grey iron', 'brass', 'bronze', 'stainless'),
  at: sometimes(fc.integer({ min: 0, max: 359 }), 3),
  diameter: sometimes(between(0.4, 0.95), 3),
  projection: sometimes(between(0.02, 0.3), 5),
  nose: sometimes(between(0.3, 1.3), 6),
  corner: sometimes(between(0, 0.05), 5),
  infeed: sometimes(between(0.005, 0.08), 5),
  behind: fc.constantFrom(undefined, '80 mm'),
  stroke: fc.constantFrom(undefined, undefined, 'pull'),
})

/** One job, as plain data; the reader may still refuse it. */
export const featureDocuments: fc.Arbitrary<Readonly<Record<string, unknown>>> = wishes.map((of) => {
  const bore = of.kind === 'iso' ? of.iso[0] : of.kind === 'sae' ? 0.85 * 25.4 * 1.5 : of.bore
  const limits = (size: number) => (of.band < 0.05 ? mm(size) : [mm(size), mm(size + of.band)])
  // From flats as wide as the bore to corners no farther than it, and a little beyond either.
  const across = bore / (1 + of.part * (1 / Math.cos(Math.PI / of.sides) - 1))
  const first = of.at
  const feature = {
    spline: {
      spline: stated({
        count: Math.max(2, of.count),
        width: limits(of.share * bore),
        major: limits(bore * (1.02 + of.share / 2)),
        at: first,
      }),
    },
    iso: { spline: stated({ size: of.iso[1], at: first, treated: of.band > 0.1 ? true : undefined }) },
    sae: { spline: stated({ standard: 'sae-j499', count: 6, fit: 'B', size: '1-1/2 in' }) },
    socket: { socket: stated({ sides: of.sides, across: limits(across), tip: mm(of.share * 0.1 * bore), at: first }) },
    slit: { slit: stated({ width: limits(of.share * 0.6 * bore), count: of.count, outside: mm(bore * 1.2) }) },
    groove: { groove: stated({ radius: mm(of.share * 0.6 * bore), depth: limits(of.share * 0.5 * bore), at: first }) },
  }[of.kind]
  const shaped = of.kind === 'groove'
  const nose = stated({
    width: of.nose && !shaped ? mm(of.nose * of.share * bore) : undefined,
    cornerRadius: of.corner && !shaped && of.kind !== 'socket' ? mm(of.corner * of.share * bore) : undefined,
  })
  return stated({
    name: 'trial',
    units: of.inches ? 'in' : 'mm',
    bore: stated({
      diameter: mm(bore),
      length: mm(bore * 1.2),
      mouth: 0,
      tolerance: of.tolerance === 'exact' ? [0, 0] : of.tolerance,
      measured: of.off === undefined ? undefined : mm(bore + of.off),
    }),
    hub: stated({
      outside: of.wall && mm(bore * Math.max(of.wall, of.kind === 'slit' ? 1.2 : 0)),
      material: of.material,
    }),
    feature,
    tooling: {
      bar: stated({
        behind: of.behind,
        stroke: of.stroke,
        diameter: of.diameter && mm(of.diameter * bore),
        projection: of.projection && mm(of.projection * bore),
        infeed: of.infeed && mm(of.infeed),
        nose: Object.keys(nose).length > 0 ? nose : undefined,
      }),
    },
  })
})
