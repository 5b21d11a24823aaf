import { describe, expect, it } from 'vitest'
import { judge } from '../../src/checks/judge.ts'
import { inBore, type Worked } from '../../src/checks/rule.ts'
import type { Sized } from '../../src/design.ts'
import { cases } from './cases.ts'
import { everyRule, sizedOf, type Trial } from './jobs.ts'

// What every rule holds its job to, worked from the rule's own sentence (the rules table in DEVELOPERS.md) and the job's dimensions as they are
// written in cases.ts: a bore of exactly 25 by 40, a keyway of exactly 8, key 7 high, across 28.3. A line that is found by halving moves with a
// wrong limit; these do not.

const [radius, half, across] = [12.5, 4, 28.3]
/** The floor from the axis, and where the bore meets the slot's walls: plain Pythagoras. */
const floor = across - radius
const mouth = Math.sqrt(radius ** 2 - half ** 2)
const corner = Math.hypot(floor, half)

const loads = ({ loads }: Worked) => {
  if (!loads) throw new Error('no loads')
  return loads
}
type Limit = number | ((job: Sized) => number | undefined)

const limits: Readonly<Record<string, Limit>> = {
  'floor-beyond-bore': 0,
  'bore-within-limits': 0.013,
  'bore-not-another': 0.1,
  'depth-limits-leave-room': 3.4 - 3.2,
  'hub-wall': 7 / 2,
  'key-does-not-split-hub': 0,
  'land-between-keyways': 0.5,
  'across-can-be-measured': 0,
  'hub-hardness': 35,
  'not-for-what-a-life-hangs-on': 0,
  'bore-takes-a-bar': 5,
  'stages-gain': 0.1,
  'hole-in-bar': 0.7,
  'hole-in-bar-easy': 0.6,
  'wall-beside-hole': 1.2,
  // M8, half its diameter; M4 by 0.7, four threads; nine tenths of a blank of 8.
  'wall-round-tap': 4,
  'wall-takes-thread': 2.8,
  'screw-under-bit': 7.2,
  'relief-left-when-rocked': 2,
  'inclined-bit-is-pushed': 0,
  'rake-on-slim-bar': 10,
  'pulled-bit-is-square': 0,
  'nose-not-over-width': 8,
  'nose-from-blank': 6,
  'nose-room-to-grind': 5.99,
  // A tenth of a nose of 5 with sharp corners.
  'lanes-overlap': 0.5,
  'bar-not-too-long': 5,
  'room-behind-hub': (job) => inBore(job).tipBeyond + 0.5,
  'blind-bore-deep-enough': (job) => inBore(job).tipBeyond + 0.5,
  'opening-clears-nose': corner + 0.2,
  'blind-relief-wide-enough': corner + 0.2,
  // Overtravel of 1, and 1 of chip.
  'blind-relief-long-enough': 2,
  'hub-wall-over-relief': 2.5,
  'bushing-wall': 1.5,
  'bushing-slots-apart': 1.5,
  'bushing-fills-bore': 0.1,
  'first-tooth-enters': mouth,
  'pilot-enters': mouth,
  // The wide body of 10.
  'body-clears-bore': Math.sqrt(radius ** 2 - 5 ** 2),
  'broach-cuts-width': 8,
  'broach-not-narrow': 8,
  'broach-is-not-for-a-wider-key': 8.03,
  'broach-is-not-for-a-narrower-key': 7.97,
  'teeth-in-cut': 2,
  'chip-fits-gullet': 25,
  'broach-runs-through': 0,
  'broach-measured': 1,
  'bar-on-hand': 1,
  'bar-does-not-hook': 0.7,
  'bar-does-not-draw-in': 0.3,
  'bar-bears-at-holder': (job) => (2 * loads(job).barYield) / 3,
  'bar-bears-at-hole': (job) => loads(job).barYield,
  'neck-bears': (job) => loads(job).barYield,
  'nose-bears': 800,
  'lag-in-limits': (30 - 28.3) / 3,
  'lag-is-not-the-depth': (floor - mouth) / 2,
  // Two chips of 0.02.
  'withdrawn-over-lag': (job) => loads(job).lag.most + 0.04,
  'bit-not-pushed-in': (job) => loads(job).thrustMost,
  'bit-well-held': (job) => 2 * loads(job).thrustMost,
  'machine-bears-push': 5000,
  'handle-pull-easy': 250,
  'machine-strokes-far-enough': 40 + 1 + 1,
  'pull-at-nose-makes-sense': 1,
  'spindle-held': (job) => 2 * loads(job).twist,
  'jaws-hold-work': (job) => 2 * loads(job).cuttingForceMost,
  'pulled-work-stopped': (job) => 2 * loads(job).cuttingForceMost,
  // The support ends 10 from the axis, the cut runs at the floor.
  'work-does-not-tip': (job) => 2 * loads(job).cuttingForceMost * (floor - 10),
  'thrust-does-not-tip-work': (job) => 2 * loads(job).thrustMost * 1,
  'press-strong-enough': 0.7 * 1_000_000,
  'pull-possible': 500,
  'pull-easy': 250,
  'broach-does-not-buckle': 1,
  'broach-stands-well': 2,
  'broach-cuts-no-taper': 0,
  'bore-not-chromed': 0,
  'flats-are-left': 0.5,
  'key-clear-hub-down': 0,
  'hub-long-for-key': 1.2 * 25,
  'key-bears-length': 8 / 2,
  // ASME B17.1: .010 in; .002 in up to 4 in long.
  'keyway-in-middle': 0.254,
  'keyway-runs-true': 0.0508,
  // 8 JS9 on a key 8 h9 has 0.018 of play at mid-tolerance (ISO 286: h9 is 0 to −0.036); turned, a slot 0.067286 off takes it up (derived).
  'key-goes-in-as-found': 0.018,
  'broach-keeps-middle': (job) =>
    Math.abs((job.keyLoads?.offsetWithin ?? NaN) - 0.067286) < 1e-5 ? job.keyLoads?.offsetWithin : NaN,
  'key-carries-load': 1000,
  'flanks-carry-load': 1000,
  // Half of an infeed of 0.02; the flats 16 apart.
  'web-is-cut': 0.01,
  'bore-holds-flats': 16,
}

/** The sides of every inequality that a document settles alone: what is measured in the job that holds. */
const measures: Readonly<Record<string, number>> = {
  'floor-beyond-bore': across - 25,
  'bore-within-limits': 0.01,
  'bore-not-another': 0.05,
  'depth-limits-leave-room': 0.1,
  'hub-wall': 30 - corner,
  'hub-hardness': 20,
  'bore-takes-a-bar': 6,
  'wall-round-tap': (18 - 0.05 - 8) / 2,
  'screw-under-bit': 5,
  'nose-from-blank': 5,
  // A nose of 5, its lanes 1 either side of the middle.
  'lanes-overlap': 5 - 2,
  'room-behind-hub': 30,
  'opening-clears-nose': 20,
  'blind-relief-wide-enough': 18,
  'blind-relief-long-enough': 5,
  'hub-wall-over-relief': (60 - 36) / 2,
  'bushing-wall': 2,
  'broach-cuts-width': 7.9,
  // 20 pitches of 10 mm in a bore of 40.
  'teeth-in-cut': 4,
  // Five times 0.1 mm of bite over 40 mm.
  'chip-fits-gullet': 20,
  'machine-strokes-far-enough': 100,
  'withdrawn-over-lag': 2,
  'room-behind-bar': 0.25,
  'pulled-work-stopped': 100_000,
  // The clamp at the far edge of a hub of 60, about the support's edge at 10.
  'work-does-not-tip': 100_000 * (10 + 30),
  'key-bears-length': 40 - 8,
  'bore-holds-flats': 17,
  // Ø12 in Ø16, 1 mm wide.
  'web-is-cut': 8 - Math.sqrt(64 - 0.25),
}

const sizes = new Map<string, Sized>()
const sizedFor = ({ document, amend }: Trial): Sized => {
  const key = JSON.stringify(document)
  const sized = sizes.get(key) ?? sizedOf(document)
  sizes.set(key, sized)
  return amend ? amend(sized) : sized
}
const findingOf = (id: string) => {
  const [rule, each] = [everyRule.find((rule) => rule.id === id), cases[id]]
  if (!rule || !each) throw new Error(`no such rule: ${id}`)
  const job = sizedFor('at' in each ? { document: each.at(each.holds) } : each.holds)
  return { job, finding: judge(rule, job) }
}

describe('a rule holds its job to', () => {
  it.each(Object.entries(limits))('%s', (id, limit) => {
    const { job, finding } = findingOf(id)
    expect(finding.limit).toBeCloseTo((typeof limit === 'number' ? limit : limit(job)) ?? NaN, 9)
  })
})

describe('a rule measures', () => {
  it.each(Object.entries(measures))('%s', (id, measured) => {
    expect(findingOf(id).finding.measured).toBeCloseTo(measured, 9)
  })
})

it('exact sizes leave a hundredth for the lag; a bar in several stages says in which it is tightest', () => {
  const ruleOf = (id: string) => everyRule.find((rule) => rule.id === id)
  const [lag, enters] = [ruleOf('lag-in-limits'), ruleOf('projection-enters')]
  if (!lag || !enters) throw new Error('no such rules')
  const job = sizedOf({
    units: 'mm',
    bore: { diameter: 25, tolerance: [0, 0], length: 40 },
    hub: { outside: 60 },
    feature: { keyway: { width: 8, height: 7, across: 28.3 } },
    tooling: { bar: { diameter: 22, infeed: 0.005 } },
  })
  expect(judge(lag, job).limit).toBeCloseTo(0.01, 12)
  expect(job.bar?.stages.length).toBeGreaterThan(1)
  expect(judge(enters, job).reason).toMatch(/^In stage \d of \d the nose stands out /)
  expect(findingOf('projection-enters').finding.reason).toMatch(/^The nose stands out /)
})
