/** Rules of the bore section and the hub, whichever way the slot is cut. */
import { chamferNeeded, mouthHalfAngle } from '../dimensions/bore.ts'
import { featureRules } from './features.ts'
import { jointRules } from './joint.ts'
import type { Proposal, Rule, Worked } from './rule.ts'
import { length, opened, upTo, written } from './ways.ts'

const lifeCritical =
  /steer|brak|suspension|lift|hoist|crane|davit|pressur|boiler|aircraft|airplane|aeroplane|helicopter|glider|propell|elevator|climb|winch for people|flying winch|fairground|amusement|swing|wheelchair|medical|surg|parachute|harness|roll cage|tie[- ]rod|ball joint|wheel hub|trailer|kart|motorcycle|bicycle fork|diving|breathing|oxygen|scaffold|ladder|stretcher|life/i

/** Metal left between neighbouring slots, at the bore, mm. Source: judgement. */
const leastLand = 0.5

/** So many slots of a spline go round the bore with that land between them. */
const roomFor = ({ boreRadius, at, land }: Worked['section']): number => {
  const around = 2 * Math.PI * boreRadius
  const mouth = around / at.length - (land ?? 0)
  return Math.floor(around / (mouth + leastLand) + 1e-9)
}

/** How far the measured bore lies outside its limits, mm; 0 within them. */
const outsideLimits = ({ spec }: Worked): number =>
  Math.max(
    0,
    (spec.bore.measured ?? 0) - spec.bore.diameter.upper,
    spec.bore.diameter.lower - (spec.bore.measured ?? 0),
  )

/** Chamfer that the key needs at the floor's corners, pushed to one side and down. */
const chamferFor = (section: Worked['section']): number =>
  chamferNeeded(section.cornerRadius, Math.max(0, section.key?.topClearance?.lower ?? 0) + 1e-9, 0)

/** Limits of a depth that is given instead of across. */
const depthOf = ({ feature }: Worked['spec']) => (feature.kind === 'keyway' ? feature.depth?.by : undefined)

const wallNeeded = ({ section }: Worked): number => Math.max((section.key?.height?.nominal ?? 0) / 2, 2.5)

/** A deeper keyway, or the standard one; the tooling as it is, then with what was fixed for the old keyway left open. */
const deeper = (job: Worked): readonly Proposal[] => {
  const { bore, key, width } = job.section
  const across = upTo(job, bore.upper + 0.45 * (key?.height?.nominal ?? width), 0.1, 0.005)
  const standard = job.spec.units === 'mm' ? 'iso-773' : 'asme-b17.1'
  const ways: readonly (readonly [string, Record<string, string | null>, string?])[] = [
    [
      `Make across ${length(job, across)}: standard keyways go a little under half the key’s height past the crown`,
      { 'feature.keyway.depth': null, 'feature.keyway.across': written(job, across) },
    ],
    [
      `Take the standard keyway for this bore (${standard === 'iso-773' ? 'ISO 773' : 'ASME B17.1'})`,
      {
        'feature.keyway.width': null,
        'feature.keyway.height': null,
        'feature.keyway.across': null,
        'feature.keyway.depth': null,
        'feature.keyway.standard': standard,
      },
      'standard',
    ],
  ]
  const free = { ...opened(job), ...opened(job, 'infeed', 'rake') }
  const sized = (healed: Worked) =>
    `${length(healed, healed.section.width)} wide, ${length(healed, healed.section.across)} across at mid-tolerance`
  return ways.flatMap(([way, set, named]) => [
    { say: `${way}.`, set, ...(named && { told: (healed: Worked) => `${way}: ${sized(healed)}.` }) },
    ...(Object.keys(free).length > 0
      ? [{ say: `${way}, and let the bar be chosen for it.`, set: { ...set, ...free } }]
      : []),
  ])
}

/** What each kind is called. */
const kinds: Readonly<Record<Worked['section']['kind'], { readonly one: string; readonly many: string }>> = {
  keyway: { one: 'keyway', many: 'keyways' },
  spline: { one: 'spline', many: 'slots' },
  socket: { one: 'socket', many: 'corners' },
  slit: { one: 'slit', many: 'slits' },
  groove: { one: 'groove', many: 'grooves' },
}
const floorOf: Readonly<Record<Worked['section']['kind'], string>> = {
  keyway: 'floor',
  spline: 'floor',
  socket: 'socket’s corner',
  slit: 'outside',
  groove: 'groove’s bottom',
}

/** Fewer of them, down to one: by count where the spec gives one, else by their angles. */
const fewer = (job: Worked): readonly Proposal[] => {
  const { kind, spline } = job.section
  if (kind === 'spline') {
    const count = roomFor(job.section)
    return spline && count >= 2 && job.spec.stated.includes('feature.spline.count')
      ? [{ say: `Cut ${count} slots; the shaft must have as many.`, set: { 'feature.spline.count': count } }]
      : []
  }
  if (kind === 'slit') return [{ say: 'Cut one slit only.', set: { 'feature.slit.count': 1 } }]
  return [{ say: `Cut one ${kinds[kind].one} only.`, set: { [`feature.${kind}.at`]: 0 } }]
}

const commonRules: readonly Rule[] = [
  {
    id: 'floor-beyond-bore',
    states: 'the slot’s floor lies outside the bore',
    source: 'geometry of the section: a floor inside the bore leaves no floor at the centre',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    measured: ({ section }) =>
      section.floorLimits
        ? section.floorLimits.lower - section.bore.upper / 2
        : section.acrossLimits.lower - section.bore.upper,
    limit: () => 0,
    reason: ({ measured }, { section }, broken) =>
      section.floorLimits
        ? broken
          ? `The ${floorOf[section.kind]} lies ${measured.replace('-', '')} inside the crown at the worst of the limits: the bore is too large for it.`
          : `The ${floorOf[section.kind]} lies ${measured} beyond the crown at the least.`
        : broken
          ? `Across is ${measured.replace('-', '')} less than the bore at the worst of their limits: no floor is left, only two corners are cut.`
          : `The floor lies ${measured} beyond the crown at the least.`,
    remedies: (job) => [
      ...(job.section.key ? deeper(job) : []),
      {
        say: `Measure bore and ${job.section.key ? 'across' : kinds[job.section.kind].one} again, or ask whoever drew it: as written there is no ${kinds[job.section.kind].one}.`,
      },
    ],
  },
  {
    id: 'bore-within-limits',
    states: 'the measured bore is no farther out of its limits than can be lived with',
    source: 'judgement: 0.013 mm (.0005 in)',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.measured !== undefined,
    measured: outsideLimits,
    limit: () => 0.013,
    reason: ({ measured, limit }) =>
      `The measured bore is ${measured} outside its limits; ${limit} can be lived with. Depths follow the measured bore.`,
    remedies: () => [{ say: 'Measure the bore again, two ways at both ends, and enter it again.' }],
  },
  {
    id: 'bore-not-another',
    states: 'the measured bore is the bore that the keyway is for',
    source: 'judgement: 0.1 mm (.004 in) outside its limits',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: ({ spec }) => spec.bore.measured !== undefined,
    measured: outsideLimits,
    limit: () => 0.1,
    reason: ({ measured, limit }) =>
      `The measured bore is ${measured} outside its limits; beyond ${limit} neither shaft nor key will fit it.`,
    remedies: () => [
      { say: 'Measure the bore again; if it is right, bush it, or state the diameter and tolerance that it has.' },
    ],
  },
  {
    id: 'depth-limits-leave-room',
    states: 'the bore’s limits leave the depth its own',
    source: 'geometry: across must keep the depth in the largest and in the smallest bore',
    binding: 'must',
    sense: 'at most',
    unit: 'mm',
    applies: ({ spec }) => {
      const by = depthOf(spec)
      return by !== undefined && by[1] > by[0]
    },
    measured: ({ section }) => section.bore.upper - section.bore.lower,
    limit: ({ spec }) => (depthOf(spec)?.[1] ?? 0) - (depthOf(spec)?.[0] ?? 0),
    reason: ({ measured, limit }) =>
      `The bore may vary by ${measured} and the depth by ${limit}: across is what is left between them.`,
    remedies: (job) => [
      {
        say: 'Measure the bore and give bore.measured: then the depth follows it.',
      },
      {
        say: `Bore it to ${length(job, job.spec.bore.diameter.nominal)} H7.`,
        set: { 'bore.tolerance': 'H7' },
      },
    ],
  },
  {
    id: 'hub-wall',
    states: 'enough metal stands over the slot’s corner',
    source: 'judgement: half the key’s height, and 2.5 mm; measured at the corner of the floor, not at its middle',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    // A slit runs out through the wall: that is what it is for.
    applies: ({ section }) => section.kind !== 'slit',
    measured: ({ spec, section }) =>
      spec.hub.outside === undefined ? undefined : spec.hub.outside / 2 - section.cornerReachMost,
    limit: wallNeeded,
    reason: ({ measured, limit }) =>
      measured.startsWith('-')
        ? `The corner of the floor comes out through the hub by ${measured.slice(1)}.`
        : `${measured} of hub is left over the corner of the floor; ${limit} is the least.`,
    untold: 'The hub’s outside is not told, so the wall over the slot’s corner cannot be: give hub.outside.',
    remedies: (job) => {
      const outside = upTo(job, 2 * (job.section.cornerReachMost + wallNeeded(job)), 0.5, 1 / 16)
      return [
        {
          say: `Take a hub of Ø${length(job, outside)} or more.`,
          set: { 'hub.outside': written(job, outside) },
        },
        ...(job.spec.hub.outside === undefined
          ? []
          : !job.section.key
            ? [{ say: 'Or make it shallower, with whoever designed the joint.' }]
            : [{ say: 'Or go over to a flat key, or to two smaller ones, with whoever designed the joint.' }]),
      ]
    },
  },
  {
    id: 'key-does-not-split-hub',
    states: 'the key does not stand on the floor of both keyways',
    source: 'ISO/R 773 and ASME B17.1 give parallel keys top clearance; worst corner of across, shaft and key',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section }) => section.key?.topClearance !== undefined,
    measured: ({ section }) => section.key?.topClearance?.lower,
    limit: () => 0,
    reason: ({ measured }, _job, broken) =>
      broken
        ? `At the worst corner the key is ${measured.replace('-', '')} too high for both floors: it splits the hub.`
        : `${measured} is left over the key at the worst corner.`,
    remedies: (job) => [
      {
        say: 'Let across follow the standard.',
        set: { 'feature.keyway.across': null, 'feature.keyway.depth': null },
      },
      { say: `Or lower the key by ${length(job, Math.abs(job.section.key?.topClearance?.lower ?? 0))}.` },
    ],
  },
  {
    id: 'key-clears-corner',
    states: 'the key’s chamfer clears the corner radius of the floor',
    source: 'closed form: both ends of a 45° chamfer clear the fillet',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section }) => section.key !== undefined && section.cornerRadius > 0,
    // A key that stands clear of the floor by the whole radius needs no chamfer, told or not.
    measured: ({ section }) => section.key?.chamfer?.lower ?? (chamferFor(section) === 0 ? 0 : undefined),
    limit: ({ section }) => chamferFor(section),
    reason: ({ measured, limit }, { section }) =>
      chamferFor(section) === 0
        ? 'The key stands clear of the floor by more than its corners’ radius: it needs no chamfer.'
        : `The key’s chamfer is ${measured}; the corner radius asks for ${limit}.`,
    untold: 'How much the key’s edges are broken is not told: they must clear the corner radius of the floor.',
    remedies: (job) => [
      { say: 'Break the key’s edges to suit, or stone the nose’s corners smaller.' },
      ...(job.section.key?.chamfer
        ? [
            {
              say: `Stone the nose’s corners to ${length(job, job.section.key?.chamfer.lower)}.`,
              set: { 'tooling.bar.nose.cornerRadius': written(job, job.section.key?.chamfer.lower) },
            },
          ]
        : []),
    ],
  },
  {
    id: 'land-between-keyways',
    states: 'metal is left between neighbouring keyways',
    source: 'geometry: the land is narrowest at the bore',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    // A socket's corners meet in flats that the bore may have taken away.
    applies: ({ section }) => section.at.length > 1 && section.kind !== 'socket',
    measured: ({ section }) => section.land,
    limit: () => leastLand,
    reason: ({ measured, limit }, { section }, broken) => {
      const { many } = kinds[section.kind]
      const most = section.spline && broken ? ` The bore has room for ${roomFor(section)} such slots.` : ''
      return measured.startsWith('-')
        ? `The nearest two ${many} run into one another by ${measured.slice(1)} of bore.${most}`
        : `${measured} of bore is left between the nearest two ${many}; ${limit} is the least.${most}`
    },
    remedies: (job) => [
      ...fewer(job),
      {
        say:
          job.section.kind === 'spline' || job.section.kind === 'slit'
            ? 'Or make them narrower, or the bore larger.'
            : 'Or set them farther apart, or take fewer.',
      },
    ],
  },
  {
    id: 'across-can-be-measured',
    states: 'the wall opposite each keyway is whole, so that across can be measured to it',
    source: 'geometry: a slot opposite takes the wall away',
    binding: 'should',
    sense: 'at least',
    unit: 'degrees',
    // Splines and sockets are measured floor to floor or across flats, slits not at all.
    applies: ({ section }) => section.at.length > 1 && (section.kind === 'keyway' || section.kind === 'groove'),
    measured: ({ section }) => {
      const half = mouthHalfAngle(section.boreRadius, section.width / 2)
      const wrap = (angle: number) => Math.abs(((((angle + 180) % 360) + 360) % 360) - 180)
      return Math.min(
        ...section.at.flatMap((a, i) => section.at.filter((_, j) => j !== i).map((b) => wrap(a - b - 180) - half)),
      )
    },
    limit: () => 0,
    reason: ({ measured }, { section }, broken) =>
      broken
        ? `A ${kinds[section.kind].one} stands opposite another: across cannot be measured to the bore. Measure floor to floor.`
        : `The wall opposite each ${kinds[section.kind].one} is whole, ${measured} clear of the next mouth.`,
    remedies: (job) => [
      { say: `Measure floor to floor: ${length(job, 2 * job.section.floor)} at mid-tolerance.` },
      ...fewer(job),
    ],
  },
  {
    id: 'hub-hardness',
    states: 'the hub can be cut with high-speed steel by hand',
    source: 'judgement: 35 HRC',
    binding: 'must',
    sense: 'at most',
    unit: 'HRC',
    applies: ({ spec }) => spec.hub.hardness !== undefined,
    measured: ({ spec }) => spec.hub.hardness,
    limit: () => 35,
    reason: ({ measured, limit }) => `The hub is ${measured}; a hand-driven edge cuts up to ${limit}.`,
    // A hardened part that a life may hang on is never annealed on a program's word.
    remedies: ({ spec }) => [
      ...(lifeCritical.test(spec.use ?? '')
        ? []
        : [
            {
              say: 'Anneal the hub to some 25 HRC if whoever designed it agrees, harden it again after, and measure it.',
              set: { 'hub.hardness': 25 },
            },
          ]),
      { say: 'Or have it ground or spark-eroded.' },
    ],
  },
  {
    id: 'not-for-what-a-life-hangs-on',
    states: 'no life hangs on the part',
    source: 'judgement: such parts are for licensed practice, the local code and the maker’s own part',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    applies: ({ spec }) => spec.use !== undefined,
    measured: ({ spec }) => (lifeCritical.test(spec.use ?? '') ? 1 : 0),
    limit: () => 0,
    reason: (_said, job, broken) =>
      broken
        ? `“${job.spec.use}” reads like something a life hangs on. These are sizes, not an approval: a qualified person, the local code and the maker’s own part come first.`
        : `If a life hangs on it (“${job.spec.use}”), a qualified person and the local code come first.`,
    remedies: () => [{ say: 'Take it to a qualified person, under the local code; use the maker’s own part.' }],
  },
]

/** Every rule of the section and the hub: those of all kinds, and those of splines, sockets and slits. */
export const sectionRules: readonly Rule[] = [...commonRules, ...featureRules, ...jointRules]
