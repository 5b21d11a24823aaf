import type { Section } from '../../src/dimensions/types.ts'
import type { Sized } from '../../src/design.ts'
import { featureCases } from './feature-cases.ts'
import type { Document, Trial } from './jobs.ts'

/** A value on which a rule holds, one on which it breaks, and the job for any value between: the line is found by halving. */
export interface Between {
  readonly holds: number
  readonly breaks: number
  readonly at: (value: number) => Document
}

/** Three jobs; `broken` where what breaks it cannot be told rather than fails. */
export interface Three {
  readonly holds: Trial
  readonly breaks: Trial
  readonly line: Trial
  readonly broken?: 'unknown'
}

type Json = Readonly<Record<string, unknown>>

/** 25 mm bore without tolerance, sharp 8 × 7 keyway by hand, everything of the bar fixed. */
const job = (change: {
  readonly bore?: Json
  readonly hub?: Json
  readonly keyway?: Json
  readonly bar?: Json
  readonly press?: Json
  readonly rest?: Json
}): Document => ({
  units: 'mm',
  bore: { diameter: 25, tolerance: [0, 0], length: 40, ...change.bore },
  hub: { outside: 60, ...change.hub },
  feature: { keyway: change.keyway ?? { width: 8, height: 7, across: 28.3 } },
  tooling: {
    ...(change.bar && { bar: { infeed: 0.02, ...change.bar } }),
    ...(change.press && { press: change.press }),
  },
  ...change.rest,
})

const bar = (change: Json): Document => job({ bar: change })

/** A broach for that job; invented. */
const broach = {
  toothWidth: 8,
  bodyWidth: 8,
  firstTooth: 12,
  lastTooth: 14,
  pilot: 11.8,
  teeth: 21,
  toothedLength: 200,
  overall: 260,
  pilotLength: 30,
}
const press = (change: Json, rest: Json = {}): Document => job({ press: { broach: { ...broach, ...change }, ...rest } })

const iso = { standard: 'iso-773' }
const withSection = (change: (section: Section) => Partial<Section>) => (sized: Sized) => ({
  ...sized,
  section: { ...sized.section, ...change(sized.section) },
})
const withBar =
  (change: (bar: NonNullable<Sized['bar']>) => Partial<NonNullable<Sized['bar']>>) =>
  (sized: Sized): Sized =>
    sized.bar ? { ...sized, bar: { ...sized.bar, ...change(sized.bar) } } : sized
const withBushing =
  (change: (bushing: NonNullable<Sized['bushing']>) => Partial<NonNullable<Sized['bushing']>>) =>
  (sized: Sized): Sized =>
    sized.bushing ? { ...sized, bushing: { ...sized.bushing, ...change(sized.bushing) } } : sized

const topClearance = (lower: number): Trial => ({
  document: job({ keyway: iso }),
  amend: withSection(({ key }) => (key ? { key: { ...key, topClearance: { nominal: 0.2, lower, upper: 0.5 } } } : {})),
})
const screwLength = (length: (screw: { readonly lengthMin: number; readonly lengthMax: number }) => number): Trial => ({
  document: bar({ diameter: 16, bit: { size: 6 } }),
  amend: withBar(({ screw }) => ({ screw: { ...screw, length: length(screw) } })),
})
/** Everything of a bar with its screw in the wall fixed. */
const wallScrew = (change: Parameters<typeof withBar>[0]): Trial => ({
  document: bar({ diameter: 16, form: 'side screw', bit: { size: 6 }, screw: 'M4', projection: 4.6 }),
  amend: withBar(change),
})
const staged = (gain: number): Trial => ({
  document: bar({ diameter: 22, infeed: 0.005 }),
  amend: withBar(({ stages }) => ({
    stages: stages.map((stage, n) => (n === 1 ? { ...stage, to: stage.from + gain } : stage)),
  })),
})
const leaning = (stroke: string): Trial => ({
  document: job({
    bore: { blind: { beyond: 20, relief: { diameter: 36, length: 20 } } },
    bar: { form: 'inclined', incline: 15, stroke },
  }),
})
const onePiece = (change: Json) => job({ bar: { form: 'one piece', ...change } })
const nosed = (over: number): Trial => ({
  document: onePiece({}),
  amend: (sized) =>
    sized.groundBar
      ? {
          ...sized,
          groundBar: {
            ...sized.groundBar,
            backToNose: { ...sized.groundBar.backToNose, upper: sized.groundBar.backToNoseMost + over },
          },
        }
      : sized,
})
const lanes = (offset: number): Trial => ({
  document: bar({ nose: { width: 5, cornerRadius: 0 }, bit: { size: 6 } }),
  amend: withBar(({ lanes }) => ({ lanes: lanes.map((lane, n) => ({ ...lane, offset: n === 0 ? -offset : offset })) })),
})
const slotCorner = (wall: number): Trial => ({
  document: press({}),
  // The slot's floor on the bushing's own axis: its corners are half its width from there.
  amend: withBushing(({ slotWidth }) => {
    const half = slotWidth.upper / 2 + wall
    return {
      outside: { nominal: 25, lower: 2 * half, upper: 2 * half },
      backWall: { nominal: half, lower: half, upper: half },
    }
  }),
})
const firstTooth = (over: number): Trial => ({
  document: press({}),
  amend: withBushing(({ backWall }) => ({
    backWall: { ...backWall, upper: 12.5 + Math.sqrt(12.5 ** 2 - 4 ** 2) - 12 + over },
  })),
})
const lever = (length: number) =>
  press({}, { lever: { pull: '300 N', length: `${length} mm`, pinion: '19 mm', efficiency: 1 } })
const blind = (change: Json): Document =>
  job({ bore: { blind: { beyond: 20, relief: { diameter: 36, length: 5 }, ...change } }, bar: {} })
/** All of the bar fixed, so that a deeper pass changes nothing but its forces. */
const infeed = (change: Json) => (value: number) =>
  bar({ diameter: 16, projection: 4.6, bit: { size: 6 }, ...change, infeed: value })

/** All of the bar fixed, so that what drives it changes nothing of it. */
const driven = (change: Json): Document =>
  bar({ diameter: 16, projection: 4.6, bit: { size: 6 }, nose: { width: 6, cornerRadius: 0 }, rake: 10, ...change })

const heldDocuments = (holds: Document, breaks: Document, line: Document): Three => ({
  holds: { document: holds },
  breaks: { document: breaks },
  line: { document: line },
})
const amended = (holds: Trial, breaks: Trial, line: Trial): Three => ({ holds, breaks, line })

export const cases: Readonly<Record<string, Three | Between>> = {
  ...featureCases,
  'floor-beyond-bore': heldDocuments(
    job({}),
    job({ keyway: { width: 8, across: 24.9 } }),
    job({ keyway: { width: 8, across: 25 } }),
  ),
  'bore-within-limits': {
    holds: 25.01,
    breaks: 25.02,
    at: (measured) => job({ bore: { measured } }),
  },
  'bore-not-another': { holds: 25.05, breaks: 25.2, at: (measured) => job({ bore: { measured } }) },
  'depth-limits-leave-room': heldDocuments(
    job({ bore: { tolerance: [0, 0.1] }, keyway: { width: 8, depth: { crown: [3.2, 3.4] } } }),
    job({ bore: { tolerance: [0, 0.3] }, keyway: { width: 8, depth: { crown: [3.2, 3.4] } } }),
    job({ bore: { tolerance: [0, 0.2] }, keyway: { width: 8, depth: { crown: [3.2, 3.4] } } }),
  ),
  'hub-wall': heldDocuments(
    job({ hub: { outside: 60 } }),
    job({ hub: { outside: 39 } }),
    job({ hub: { outside: 2 * (Math.hypot(28.3 - 12.5, 4) + 3.5) } }),
  ),
  'key-does-not-split-hub': amended(topClearance(0.1), topClearance(-0.01), topClearance(0)),
  'key-clears-corner': {
    holds: 0.1,
    breaks: 2,
    at: (cornerRadius) => job({ keyway: iso, bar: { nose: { cornerRadius } } }),
  },
  'land-between-keyways': {
    holds: 90,
    breaks: 38,
    at: (angle) => job({ keyway: { width: 8, across: 28.3, at: [0, angle] } }),
  },
  'across-can-be-measured': {
    holds: 120,
    breaks: 180,
    at: (angle) => job({ keyway: { width: 8, across: 28.3, at: [0, angle] } }),
  },
  'hub-hardness': heldDocuments(
    job({ hub: { hardness: 20 } }),
    job({ hub: { hardness: 58 } }),
    job({ hub: { hardness: 35 } }),
  ),
  'not-for-what-a-life-hangs-on': heldDocuments(
    job({ rest: { use: 'drive pulley of a cider mill' } }),
    job({ rest: { use: 'steering arm' } }),
    job({ rest: { use: 'gate latch' } }),
  ),

  'bore-takes-a-bar': {
    holds: 6,
    breaks: 4,
    at: (diameter) => job({ bore: { diameter, length: 6 }, keyway: { width: 1.5, across: diameter + 0.8 }, bar: {} }),
  },
  'stages-gain': amended(staged(1), staged(0.05), staged(0.1)),
  'wall-takes-thread': amended(
    wallScrew(() => ({ diameter: { nominal: 16, lower: 16, upper: 16 } })),
    wallScrew(({ crossHole }) => ({ diameter: { nominal: 11, lower: crossHole.upper + 5, upper: 11 } })),
    // M4 by 0.7: four threads are 2.8 a side.
    wallScrew(({ crossHole }) => ({
      crossHole: { ...crossHole, upper: 8 },
      diameter: { nominal: 16, lower: 13.6, upper: 16 },
    })),
  ),
  'relief-left-when-rocked': amended(
    wallScrew(() => ({ rock: 0.5 })),
    wallScrew(() => ({ rock: 4 })),
    // Mild steel is relieved by 5°.
    wallScrew(() => ({ rock: 3 })),
  ),
  'inclined-bit-is-pushed': amended(leaning('push'), leaning('pull'), leaning('push')),
  'nose-on-round': amended(nosed(-0.1), nosed(0.1), nosed(0)),
  'neck-bears': { holds: 0.01, breaks: 3, at: (infeed) => onePiece({ diameter: 16, projection: 4.6, infeed }) },
  'bar-passes-bore': { holds: 16, breaks: 22, at: (diameter) => bar({ diameter, stages: 1 }) },
  'projection-reaches': { holds: 4.6, breaks: 3, at: (projection) => bar({ diameter: 16, projection }) },
  'projection-enters': { holds: 4.6, breaks: 9, at: (projection) => bar({ diameter: 16, projection }) },
  'hole-in-bar': { holds: 16, breaks: 11, at: (diameter) => bar({ diameter, bit: { size: 6 } }) },
  'hole-in-bar-easy': { holds: 16, breaks: 11, at: (diameter) => bar({ diameter, bit: { size: 6 } }) },
  'wall-beside-hole': { holds: 16, breaks: 9, at: (diameter) => bar({ diameter, bit: { size: 6 } }) },
  'wall-round-tap': { holds: 18, breaks: 14, at: (diameter) => bar({ diameter, bit: { size: 10 }, screw: 'M8' }) },
  'screw-under-bit': { holds: 8, breaks: 4, at: (size) => bar({ diameter: 16, bit: { size }, screw: 'M5' }) },
  'screw-long-enough': amended(
    screwLength(({ lengthMin }) => lengthMin + 0.5),
    screwLength(({ lengthMin }) => lengthMin - 0.5),
    screwLength(({ lengthMin }) => lengthMin),
  ),
  'screw-below-end': amended(
    screwLength(({ lengthMax }) => lengthMax - 0.5),
    screwLength(({ lengthMax }) => lengthMax + 0.5),
    screwLength(({ lengthMax }) => lengthMax),
  ),
  'bit-long-enough': {
    holds: 16,
    breaks: 7,
    at: (diameter) => bar({ diameter, projection: 4, bit: { size: 6 }, screw: 'M5' }),
  },
  'bit-tail-inside': {
    holds: 16,
    breaks: 7,
    at: (diameter) => bar({ diameter, projection: 4, bit: { size: 6 }, screw: 'M5' }),
  },
  'nose-long-enough': amended(
    { document: bar({ diameter: 16, bit: { size: 6 } }) },
    { document: bar({ diameter: 16, bit: { size: 24.8 } }) },
    {
      document: bar({ diameter: 16, bit: { size: 6 } }),
      amend: (sized) => ({
        ...sized,
        ...(sized.bit && sized.bar && { bit: { ...sized.bit, noseLength: sized.bar.noseLengthMin } }),
      }),
    },
  ),
  'nose-not-over-width': { holds: 7.9, breaks: 8.2, at: (width) => bar({ bit: { size: 10 }, nose: { width } }) },
  'nose-from-blank': heldDocuments(
    bar({ bit: { size: 6 }, nose: { width: 5 } }),
    bar({ bit: { size: 6 }, nose: { width: 6.5 } }),
    bar({ bit: { size: 6 }, nose: { width: 6 } }),
  ),
  'nose-room-to-grind': heldDocuments(
    bar({ bit: { size: 6 }, nose: { width: 5 } }),
    bar({ bit: { size: 6 }, nose: { width: 6 } }),
    bar({ bit: { size: 6 }, nose: { width: 5.99 } }),
  ),
  'lanes-overlap': amended(lanes(1), lanes(2.4), lanes(2.25)),
  'rake-on-slim-bar': heldDocuments(
    bar({ diameter: 7, rake: 5 }),
    bar({ diameter: 7, rake: 15 }),
    bar({ diameter: 7, rake: 10 }),
  ),
  'bar-not-too-long': { holds: 16, breaks: 7, at: (diameter) => bar({ diameter, bit: { size: 3 }, screw: 'M2.5' }) },
  'opening-clears-nose': { holds: 40, breaks: 26, at: (opening) => bar({ diameter: 16, opening }) },
  'room-behind-hub': { holds: 30, breaks: 1, at: (behind) => bar({ diameter: 16, behind }) },
  // All of the bar fixed: with less room another form is chosen, whose end is shorter.
  'blind-bore-deep-enough': {
    holds: 30,
    breaks: 1,
    at: (beyond) =>
      job({
        bore: { blind: { beyond, relief: { diameter: 36, length: 5 } } },
        bar: { diameter: 16, projection: 4.6, bit: { size: 6 }, form: 'end screw', screw: 'M5' },
      }),
  },
  'blind-relief-wide-enough': { holds: 36, breaks: 26, at: (diameter) => blind({ relief: { diameter, length: 5 } }) },
  'blind-relief-long-enough': heldDocuments(
    blind({}),
    blind({ relief: { diameter: 36, length: 1.9 } }),
    blind({ relief: { diameter: 36, length: 2 } }),
  ),
  'hub-wall-over-relief': heldDocuments(
    blind({}),
    blind({ relief: { diameter: 56, length: 5 } }),
    blind({ relief: { diameter: 55, length: 5 } }),
  ),
  'pulled-bit-is-square': heldDocuments(
    bar({ stroke: 'pull', bit: { shape: 'square', size: 6 } }),
    bar({ stroke: 'pull', bit: { shape: 'round', size: 6 } }),
    bar({ stroke: 'pull' }),
  ),

  'bushing-fills-bore': {
    holds: 0.05,
    breaks: 0.3,
    at: (upper) => job({ bore: { tolerance: [0, upper] }, press: { broach } }),
  },
  // Key in at JS9 on h9: 0.018 mm of play.
  'broach-keeps-middle': {
    holds: 0.001,
    breaks: 0.3,
    at: (upper) => job({ bore: { tolerance: [0, upper] }, keyway: iso, press: { broach } }),
  },
  'bushing-wall': amended(slotCorner(2), slotCorner(1), slotCorner(1.5)),
  'bushing-slots-apart': {
    holds: 90,
    breaks: 50,
    at: (angle) => job({ keyway: { width: 8, height: 7, across: 28.3, at: [0, angle] }, press: { broach } }),
  },
  'first-tooth-enters': amended(firstTooth(-0.1), firstTooth(0.1), firstTooth(0)),
  'pilot-enters': { holds: 11.8, breaks: 12.4, at: (pilot) => press({ pilot }) },
  'body-clears-bore': { holds: 8, breaks: 12.4, at: (shoulder) => press({ bodyWidth: 10, shoulder, pilot: 9 }) },
  'broach-cuts-width': heldDocuments(press({ toothWidth: 7.9 }), press({ toothWidth: 8.1 }), press({ toothWidth: 8 })),
  'broach-not-narrow': heldDocuments(press({ toothWidth: 8.1 }), press({ toothWidth: 7.9 }), press({ toothWidth: 8 })),
  'broach-is-not-for-a-wider-key': heldDocuments(press({}), press({ toothWidth: 8.1 }), press({ toothWidth: 8.03 })),
  'broach-is-not-for-a-narrower-key': heldDocuments(press({}), press({ toothWidth: 7.9 }), press({ toothWidth: 7.97 })),
  // 20 pitches: 10, 25 and 20 mm each in a bore of 40.
  'teeth-in-cut': heldDocuments(
    press({}),
    press({ toothedLength: 500, overall: 560 }),
    press({ toothedLength: 400, overall: 460 }),
  ),
  // Five times 0.1 mm of bite over 40 mm.
  'chip-fits-gullet': heldDocuments(
    press({ gulletArea: '25 mm2' }),
    press({ gulletArea: '15 mm2' }),
    press({ gulletArea: '20 mm2' }),
  ),
  'broach-runs-through': heldDocuments(
    press({}),
    job({ bore: { blind: { beyond: 20 } }, press: { broach } }),
    press({ teeth: 22 }),
  ),
  'broach-measured': { ...heldDocuments(press({}), job({ press: {} }), press({ teeth: 22 })), broken: 'unknown' },
  'bar-on-hand': heldDocuments(bar({}), bar({ diameter: 2, bit: { size: 1 } }), bar({ diameter: 16 })),

  'bar-does-not-hook': {
    holds: 20000,
    breaks: 100,
    at: (give) => bar({ diameter: 10, projection: 6, rake: 25, give: `${give} N/mm` }),
  },
  'bar-does-not-draw-in': {
    holds: 20000,
    breaks: 100,
    at: (give) => bar({ diameter: 16, projection: 5, rake: 25, give: `${give} N/mm` }),
  },
  'lag-is-not-the-depth': {
    holds: 20000,
    breaks: 20,
    at: (give) => bar({ diameter: 16, projection: 4.6, bit: { size: 6 }, give: `${give} N/mm` }),
  },
  'bar-bears-at-hole': { holds: 0.005, breaks: 0.4, at: infeed({}) },
  'bar-bears-at-holder': { holds: 0.005, breaks: 1, at: infeed({}) },
  'nose-bears': { holds: 0.005, breaks: 0.8, at: infeed({ nose: { width: 3 } }) },
  'bit-not-pushed-in': { holds: 0.005, breaks: 0.8, at: infeed({}) },
  'bit-well-held': { holds: 0.002, breaks: 0.8, at: infeed({}) },
  'bit-does-not-rock': { holds: 0.005, breaks: 2, at: infeed({}) },
  'index-fits': {
    holds: 0.001,
    breaks: 1,
    at: (eccentric) => job({ keyway: { ...iso, at: [0, 90] }, rest: { tooling: { index: { eccentric } } } }),
  },
  'lag-in-limits': {
    holds: 30,
    breaks: 28.3,
    at: (most) => job({ keyway: { width: 8, across: [28.3, most] }, bar: { diameter: 16, projection: 4.6 } }),
  },
  'withdrawn-over-lag': {
    holds: 2,
    breaks: 0.01,
    at: (withdrawn) => bar({ diameter: 16, projection: 4.6, clearance: { withdrawn } }),
  },
  'room-behind-bar': {
    holds: 0.25,
    breaks: 0.01,
    at: (back) => driven({ clearance: { back } }),
  },
  'machine-bears-push': { holds: 5000, breaks: 100, at: (thrust) => driven({ thrust: `${thrust} N` }) },
  'handle-pull-easy': { holds: 400, breaks: 1, at: (radius) => driven({ handle: { radius, travel: 100 } }) },
  'machine-strokes-far-enough': { holds: 100, breaks: 10, at: (travel) => driven({ travel }) },
  'pull-at-nose-makes-sense': {
    ...heldDocuments(
      driven({ pull: { force: '100 N', moves: 0.05 } }),
      driven({ pull: { force: '1000 N', moves: 0.001 } }),
      driven({ pull: { force: '100 N', moves: 0.04 } }),
    ),
    broken: 'unknown',
  },
  'spindle-held': heldDocuments(
    bar({ nose: { width: 5, cornerRadius: 0 }, bit: { size: 6 }, hold: 'gear' }),
    bar({ nose: { width: 5, cornerRadius: 0 }, bit: { size: 6 }, hold: 'belt' }),
    driven({ hold: 'hand', nose: { width: 8 }, bit: { size: 8 } }),
  ),
  'jaws-hold-work': {
    holds: 100_000,
    breaks: 100,
    at: (jaws) => driven({ work: { held: 'vise', jaws: `${jaws} N` } }),
  },
  'pulled-work-stopped': {
    holds: 100_000,
    breaks: 100,
    at: (stop) => driven({ stroke: 'pull', work: { stop: `${stop} N` } }),
  },
  'work-does-not-tip': {
    holds: 100_000,
    breaks: 1,
    at: (clamp) => driven({ work: { support: 10, clamp: `${clamp} N` } }),
  },
  'thrust-does-not-tip-work': {
    holds: 1,
    breaks: 200,
    at: (above) => driven({ work: { held: 'vise', jaws: '3 kN', above } }),
  },
  'bar-stiff-enough': {
    holds: 30,
    breaks: 28.3,
    at: (most) => job({ keyway: { width: 8, across: [28.3, most] }, bar: { diameter: 16, projection: 4.6 } }),
  },
  'press-strong-enough': { holds: 1000, breaks: 1, at: (force) => press({}, { force: `${force} kN` }) },
  'pull-possible': { holds: 9000, breaks: 100, at: lever },
  'pull-easy': { holds: 9000, breaks: 100, at: lever },
  'broach-does-not-buckle': { holds: 11, breaks: 1, at: (rootHeight) => press({ rootHeight, yield: '2000 MPa' }) },
  'broach-stands-well': { holds: 11, breaks: 1, at: (rootHeight) => press({ rootHeight, yield: '2000 MPa' }) },
  'press-strokes-far-enough': { holds: 1000, breaks: 10, at: (stroke) => press({}, { stroke }) },
  'room-under-table': { holds: 1000, breaks: 10, at: (below) => press({}, { below }) },
  'press-opens-far-enough': { holds: 1000, breaks: 10, at: (daylight) => press({}, { daylight }) },
  'table-clears-keyway': { holds: 80, breaks: 26, at: (opening) => press({}, { opening }) },
  'hub-bears-broaching': { holds: 90, breaks: 36, at: (outside) => job({ hub: { outside }, press: { broach } }) },
  'broach-cuts-no-taper': heldDocuments(
    press({}),
    job({ keyway: { width: 8, height: 7, across: 28.3, taper: '1:100' }, press: { broach } }),
    press({ teeth: 22 }),
  ),

  'bore-not-chromed': heldDocuments(
    job({ bore: { chromed: false } }),
    job({ bore: { chromed: true } }),
    job({ bore: { chromed: false, length: 30 } }),
  ),
  'flanks-carry-load': {
    holds: 1,
    breaks: 5000,
    at: (torque) => ({
      ...job({ bore: { diameter: 23 }, rest: { load: { torque: `${torque} N m` } } }),
      feature: { spline: { standard: 'iso-14', size: '6x23x26' } },
    }),
  },
  'hub-long-for-key': {
    holds: 40,
    breaks: 20,
    at: (length) => job({ bore: { length }, keyway: iso, rest: { load: { torque: '1 N m' } } }),
  },
  'key-bears-length': {
    holds: 40,
    breaks: 9,
    at: (length) => job({ keyway: { ...iso, key: { ends: 'round', length } } }),
  },
  'key-clear-hub-down': { holds: 7, breaks: 8, at: (height) => job({ keyway: { ...iso, key: { height } } }) },
  'keyway-in-middle': { holds: 0.05, breaks: 1, at: (offset) => job({ keyway: { ...iso, found: { offset } } }) },
  'keyway-runs-true': { holds: 0.01, breaks: 1, at: (lead) => job({ keyway: { ...iso, found: { lead } } }) },
  'key-goes-in-as-found': {
    holds: 0.01,
    breaks: 0.5,
    at: (offset) => job({ keyway: { ...iso, found: { offset, lead: 0.002 } } }),
  },
  'key-carries-load': {
    holds: 1,
    breaks: 5000,
    at: (torque) => job({ keyway: iso, rest: { load: { torque: `${torque} N m` } } }),
  },
}
