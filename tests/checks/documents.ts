import fc from 'fast-check'

/** Specs as a shop might write them, well or badly: standard and hand-given keyways, sizes of the tooling left open or fixed anyhow. */

const materials = ['mild steel', 'grey iron', 'brass', 'stainless', 'ductile iron', '4140', '6061', 'bronze'] as const

/** Once in so many. */
const sometimes = <T>(value: fc.Arbitrary<T>, of = 3): fc.Arbitrary<T | undefined> =>
  fc.oneof({ arbitrary: value, weight: 1 }, { arbitrary: fc.constant(undefined), weight: of - 1 })

/** Leaves out what is undefined: a document has no such thing. */
const stated = (mapping: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(mapping).filter(([, value]) => value !== undefined))

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true })
const tidy = (value: number, inches: boolean): number =>
  inches ? Math.round(value * 1e4) / 1e4 : Math.round(value * 100) / 100

/** In the units of the document, as a share of the bore. */
const shares = fc.record({
  bar: between(0.3, 1.02),
  projection: between(0.01, 0.5),
  bit: between(0.08, 0.7),
  nose: between(0.3, 1.2),
  width: between(0.12, 0.5),
  across: between(0.99, 1.22),
  first: between(0.3, 0.75),
  rise: between(0.02, 0.15),
})

const numbers = fc.record({
  bore: fc.integer({ min: 6, max: 100 }),
  sixteenths: fc.integer({ min: 4, max: 64 }),
  long: between(0.6, 2.5),
  tolerance: fc.constantFrom(undefined, undefined, 'H7', 'H8', 'exact'),
  off: sometimes(between(-0.02, 0.04), 5),
  // Most tell it: what is not told cannot be judged.
  wall: fc.oneof({ arbitrary: between(1.15, 2.6), weight: 5 }, { arbitrary: fc.constant(undefined), weight: 1 }),
  hardness: sometimes(fc.integer({ min: 10, max: 60 }), 10),
  at: fc.constantFrom(undefined, undefined, undefined, [0, 90], [0, 180], [0, 60, 120], [0, 25]),
  blind: sometimes(
    fc.record({
      beyond: between(0, 0.6),
      relief: sometimes(fc.record({ by: between(1.05, 1.5), length: between(0.5, 5) }), 2),
    }),
    7,
  ),
  torque: sometimes(between(1, 500), 4),
  use: sometimes(fc.constantFrom('belt pulley of a cider mill', 'steering arm'), 12),
  material: fc.constantFrom(undefined, ...materials),
  tooling: fc.constantFrom('none', 'bar', 'bar', 'bar', 'press', 'both'),
  byHand: fc.boolean(),
})

const barWishes = fc.record({
  machine: fc.constantFrom(undefined, 'lathe', 'mill'),
  behind: sometimes(between(1, 40), 2),
  stroke: fc.constantFrom(undefined, undefined, 'pull'),
  clearance: sometimes(fc.record({ back: between(0, 0.5), front: between(0, 0.5), withdrawn: between(0, 0.5) }), 5),
  setting: sometimes(between(0, 0.2), 6),
  fixed: fc.record({
    diameter: sometimes(fc.constant(true), 2),
    projection: sometimes(fc.constant(true), 3),
    bit: sometimes(fc.constantFrom('square', 'round'), 4),
    nose: sometimes(fc.constant(true), 5),
    screw: sometimes(fc.nat(), 6),
    shank: sometimes(fc.constant(true), 8),
  }),
  corner: sometimes(between(0, 0.6), 6),
  rake: sometimes(fc.integer({ min: -5, max: 25 }), 6),
  infeed: sometimes(between(0.005, 0.08), 5),
})

/** What drives the bar, and what holds spindle and work. */
const driveWishes = fc.record({
  hold: fc.constantFrom(undefined, 'gear', 'lock', 'belt'),
  thrust: sometimes(between(200, 4000), 2),
  travel: sometimes(between(10, 250), 3),
  handle: sometimes(between(40, 250), 3),
  pull: sometimes(between(200, 20_000), 4),
  work: sometimes(
    fc.record({
      held: fc.constantFrom('vise', 'chuck'),
      jaws: between(500, 20_000),
      stop: sometimes(between(500, 10_000), 2),
      support: sometimes(between(0.2, 1.2), 3),
    }),
    2,
  ),
})

/** Key and shaft, and how a keyway by hand falls. */
const keyWishes = fc.record({
  yield: between(150, 600),
  ends: fc.constantFrom('square', 'round'),
  length: sometimes(between(0.2, 1.4), 2),
  shaft: sometimes(between(150, 600), 2),
  taper: sometimes(fc.constantFrom('1:96', '1:100'), 3),
  offset: sometimes(between(0, 0.3), 3),
})

const pressWishes = fc.record({
  teeth: fc.integer({ min: 5, max: 40 }),
  pitch: between(0.15, 0.8),
  widthOff: between(-0.03, 0.05),
  pilotUnder: between(-0.02, 0.06),
  wide: sometimes(between(0.1, 1.5), 4),
  shoulder: sometimes(between(0.4, 0.9), 2),
  gullet: sometimes(between(1, 40), 2),
  root: sometimes(between(0.5, 0.9), 2),
  measured: fc.constantFrom(true, true, true, false),
  power: fc.constantFrom('none', 'force', 'lever'),
  force: between(2, 60),
  ram: fc.constantFrom(undefined, undefined, 'loose'),
  room: sometimes(fc.record({ stroke: between(1, 12), below: between(0.5, 12), opening: between(0.8, 2) }), 4),
  face: sometimes(fc.integer({ min: 0, max: 18 }), 3),
})

type Of<Wishes> = Wishes extends fc.Arbitrary<infer Wish> ? Wish : never

/** As a spec says it, whatever its units. */
const driven = ({ hold, thrust, travel, handle, pull, work }: Of<typeof driveWishes>): Record<string, unknown> =>
  stated({
    hold,
    thrust: thrust && `${Math.round(thrust)} N`,
    travel: travel && `${Math.round(travel)} mm`,
    handle: handle && { radius: `${Math.round(handle)} mm`, travel: '80 mm' },
    pull: pull && { force: '100 N', moves: `${Math.round(1e5 / pull) / 1e3} mm` },
    work:
      work &&
      stated({
        held: work.held,
        jaws: `${Math.round(work.jaws)} N`,
        stop: work.stop && `${Math.round(work.stop)} N`,
        support: work.support && `${Math.round(20 * work.support)} mm`,
      }),
  })

/** One job, as plain data: `documents` gives what the reader may still refuse. */
export const documents: fc.Arbitrary<Readonly<Record<string, unknown>>> = fc
  .record({
    inches: fc.boolean(),
    shares,
    numbers,
    bar: barWishes,
    press: pressWishes,
    drive: sometimes(driveWishes, 4),
    key: sometimes(keyWishes, 4),
  })
  .map(({ inches, shares: by, numbers: n, bar, press, drive, key }) => {
    const scale = inches ? 25.4 : 1
    const size = (mm: number) => tidy(mm / scale, inches)
    const bore = inches ? (n.sixteenths / 16) * 25.4 : n.bore
    const standard = !n.byHand && bore >= 7.95
    const width = size(by.width * bore)
    const slot = standard ? size(0.25 * bore) : width
    const threads = inches ? ['#4-40', '#8-32', '#10-32', '1/4-28', '3/8-16'] : ['M2', 'M3', 'M4', 'M6', 'M8', 'M10']
    const toothWidth = size(slot * scale + press.widthOff)
    const first = by.first * bore
    const broach = {
      toothWidth,
      bodyWidth: press.wide === undefined ? toothWidth : size(toothWidth * scale + press.wide),
      firstTooth: size(first),
      lastTooth: size(first + by.rise * bore),
      pilot: size(first - press.pilotUnder * bore),
      teeth: press.teeth,
      toothedLength: size(press.teeth * press.pitch * bore),
      overall: size(press.teeth * press.pitch * bore + 2 * bore),
      pilotLength: size(bore),
      shoulder: press.shoulder && size(press.shoulder * first),
      gulletArea: press.gullet && `${Math.round(press.gullet * 10) / 10} mm2`,
      rootHeight: press.root && size(press.root * first),
      yield: press.root && '2000 MPa',
      faceAngle: press.face,
    }
    const barDocument = stated({
      machine: bar.machine,
      behind: bar.behind && size(bar.behind),
      stroke: bar.stroke,
      clearance: bar.clearance && {
        back: size(bar.clearance.back),
        front: size(bar.clearance.front),
        withdrawn: size(bar.clearance.withdrawn),
      },
      setting: bar.setting && size(bar.setting),
      diameter: bar.fixed.diameter && size(by.bar * bore),
      projection: bar.fixed.projection && size(by.projection * bore),
      bit: bar.fixed.bit && { shape: bar.fixed.bit, size: size(by.bit * bore) },
      screw: bar.fixed.screw === undefined ? undefined : threads[bar.fixed.screw % threads.length],
      shank: bar.fixed.shank && size(Math.min(bore, 30)),
      nose:
        bar.fixed.nose || bar.corner !== undefined
          ? stated({
              width: bar.fixed.nose && tidy(by.nose * slot, inches),
              cornerRadius: bar.corner && size(bar.corner),
            })
          : undefined,
      rake: bar.rake,
      infeed: bar.infeed && `${Math.round(bar.infeed * 1e4) / 1e4} mm`,
      ...(drive && driven(drive)),
    })
    const pressDocument = stated({
      broach: press.measured ? stated(broach) : undefined,
      ram: press.ram,
      stroke: press.room && size(press.room.stroke * bore),
      below: press.room && size(press.room.below * bore),
      opening: press.room && size(press.room.opening * bore),
      force: press.power === 'force' ? `${Math.round(press.force * 10) / 10} kN` : undefined,
      lever: press.power === 'lever' ? { pull: '300 N', length: '400 mm', pinion: '19 mm' } : undefined,
    })
    return stated({
      name: 'trial',
      units: inches ? 'in' : 'mm',
      bore: stated({
        diameter: inches ? n.sixteenths / 16 : n.bore,
        length: size(n.long * bore),
        tolerance: n.tolerance === 'exact' ? [0, 0] : n.tolerance,
        measured: n.off === undefined ? undefined : `${Math.round((bore + n.off) * 1e4) / 1e4} mm`,
        mouth: 0,
        blind:
          n.blind &&
          stated({
            beyond: size(n.blind.beyond * bore),
            relief: n.blind.relief && { diameter: size(bore * n.blind.relief.by), length: size(n.blind.relief.length) },
          }),
      }),
      hub: stated({ outside: n.wall && size(bore * n.wall), material: n.material, hardness: n.hardness }),
      feature: {
        keyway: stated({
          ...(standard ? {} : { width, height: width, across: size(by.across * bore), taper: key?.taper }),
          at: n.at,
          key:
            key &&
            stated({
              yield: `${Math.round(key.yield)} MPa`,
              ends: key.ends,
              length: key.length && size(key.length * n.long * bore),
            }),
          found: key?.offset === undefined ? undefined : { offset: `${Math.round(key.offset * 1e3) / 1e3} mm` },
        }),
      },
      shaft: key?.shaft && { yield: `${Math.round(key.shaft)} MPa` },
      load: n.torque && { torque: `${Math.round(n.torque)} N m` },
      use: n.use,
      tooling:
        n.tooling === 'none'
          ? undefined
          : stated({
              bar: n.tooling === 'press' ? undefined : barDocument,
              press: n.tooling === 'bar' ? undefined : pressDocument,
            }),
    })
  })
