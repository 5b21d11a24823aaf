/** Ways out that several rules share. Each is tried on the spec before it is offered. */
import { either, roundUp } from '../dimensions/makeable.ts'
import { figure, withFraction } from '../spec/figures.ts'
import type { Proposal, Worked } from './rule.ts'

const bar = 'tooling.bar'
const press = 'tooling.press'

/** A length for a reader, in the job's units. */
export const length = (job: Worked, mm: number): string => figure(mm, job.spec.units, { unit: true })

/** A size of stock for a reader: in inch jobs with its fraction. */
export const stock = (job: Worked, mm: number): string => withFraction(mm, job.spec.units)

/** A length as a spec takes it, in the job's units. */
export const written = (job: Worked, mm: number): string => {
  const size = job.spec.units === 'mm' ? mm : mm / 25.4
  return `${Math.round(size * 1e6) / 1e6} ${job.spec.units}`
}

/** Up to a round figure of the job's units. */
export const upTo = (job: Worked, size: number, mm: number, inches: number): number =>
  roundUp(size, either(job.spec.units, mm, inches))

const called: Readonly<Record<string, string>> = {
  diameter: 'the diameter',
  projection: 'the projection',
  bit: 'the bit',
  screw: 'the screw',
  'nose.width': 'the nose’s width',
  'nose.cornerRadius': 'the nose’s corners',
  setting: 'the setting’s tolerance',
  infeed: 'the infeed',
  rake: 'the rake',
}

const listed = (words: readonly string[]): string =>
  words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)}` : (words[0] ?? '')

/** What the bar came out as: `a bar of Ø7 mm, 2.1 mm of projection, a 3 mm round bit, two lanes`. */
export const barOf = (job: Worked): string => {
  const made = job.bar ?? job.groundBar
  if (!made) return 'the bar'
  const lanes = made.lanes.length
  return [
    ...(job.bar
      ? [
          `a bar of Ø${stock(job, made.diameter.nominal)}`,
          `${length(job, made.projection)} of projection${made.stages.length > 1 ? ` at last, in ${made.stages.length} stages` : ''}`,
          `a ${job.bar.bit.shape} bit of ${stock(job, job.bar.bit.size)}`,
        ]
      : [
          `a one-piece bar with a neck of ${length(job, made.diameter.nominal)}`,
          `${length(job, made.overBarAndNose)} over neck and nose`,
        ]),
    ...(lanes > 1 ? [`a nose of ${length(job, made.noseWidth)} in ${lanes} lanes`] : []),
  ].join(', ')
}

const statedOf = (job: Worked, keys: readonly string[]): readonly string[] =>
  keys.filter((key) => job.spec.stated.includes(`${bar}.${key}`))

/** Everything of the bar that a spec may fix and that can be chosen again. */
const choosable = ['diameter', 'projection', 'bit', 'screw', 'nose.width'] as const

/** Patch that leaves open whatever of these the spec fixes. */
export const opened = (job: Worked, ...keys: readonly string[]): Record<string, null> =>
  Object.fromEntries(statedOf(job, keys.length > 0 ? keys : choosable).map((key) => [`${bar}.${key}`, null]))

/** Let be chosen again what the spec fixes of these; nothing where it fixes none. */
export const leaveOpen = (job: Worked, ...keys: readonly string[]): readonly Proposal[] => {
  const fixed = statedOf(job, keys)
  if (fixed.length === 0) return []
  const open = `Leave ${listed(fixed.map((key) => called[key] ?? key))} open`
  return [
    {
      say: `${open}, to be chosen from what is on hand.`,
      told: (healed) => `${open}: that gives ${barOf(healed)}.`,
      set: opened(job, ...fixed),
      kind: 'left open',
    },
  ]
}

/** Let the whole bar be chosen again; in a second breath also how it is set and driven. */
export const leaveBarOpen = (job: Worked): readonly Proposal[] => {
  const all = leaveOpen(job, ...choosable)
  const more = leaveOpen(job, ...choosable, 'setting', 'nose.cornerRadius', 'infeed', 'rake')
  return more[0] && JSON.stringify(more[0].set) === JSON.stringify(all[0]?.set) ? all : [...all, ...more]
}

const closer = (job: Worked, c: number, setting: number): Record<string, string | null> => ({
  [`${bar}.clearance`]: null,
  [`${bar}.clearance.back`]: written(job, c),
  [`${bar}.clearance.front`]: written(job, c),
  [`${bar}.clearance.withdrawn`]: written(job, c),
  [`${bar}.setting`]: written(job, setting),
})

const carefully = (job: Worked, c: number, setting: number): string =>
  `${length(job, c)} of clearance all round and the projection set within ±${length(job, setting)}`

/** Less clearance all round and a projection set with more care; the bar is chosen again. */
export const closerClearances = (job: Worked): readonly Proposal[] => {
  const asked = job.spec.tooling.bar
  if (!asked) return []
  const setting = Math.min(either(job.spec.units, 0.03, 0.001), asked.setting)
  return [either(job.spec.units, 0.15, 0.006), either(job.spec.units, 0.1, 0.004), either(job.spec.units, 0.05, 0.002)]
    .filter((c) => c < Math.max(...Object.values(asked.clearance)))
    .map((c) => {
      const work = `Work with ${carefully(job, c, setting)}, and feel for a rub before each stroke`
      return {
        say: `${work}.`,
        told: (healed: Worked) => `${work}: that allows ${barOf(healed)}.`,
        kind: 'closer',
        set: { ...closer(job, c, setting), ...opened(job) },
      }
    })
}

/** Room for chip and bar's end at the bottom of a blind bore; undefined where the bore is through. */
const reliefFor = (job: Worked) => {
  const { blind } = job.spec.bore
  return (
    blind && {
      beyond: Math.max(blind.beyond, upTo(job, 1.6 * job.section.width + 6, 1, 1 / 16)),
      diameter: Math.max(blind.relief?.diameter ?? 0, upTo(job, 2 * job.section.cornerReachMost + 0.4, 0.1, 0.005)),
      length: Math.max(blind.relief?.length ?? 0, upTo(job, 2, 0.5, 0.01)),
    }
  )
}

/** Leave the press and cut it with the bar: as it comes, with closer clearances, or with less rake; in a blind bore with a relief groove too. */
export const barInstead = (job: Worked): readonly Proposal[] => {
  // A bar that is asked for and that nothing on hand makes is no way out.
  if (job.spec.tooling.bar && !job.bar) return []
  const relief = reliefFor(job)
  const out = {
    [press]: null,
    ...(!job.spec.tooling.bar && { [`${bar}.machine`]: 'mill' }),
    ...(relief && {
      'bore.blind.beyond': written(job, relief.beyond),
      'bore.blind.relief.diameter': written(job, relief.diameter),
      'bore.blind.relief.length': written(job, relief.length),
    }),
  }
  const first = relief
    ? ` First turn a relief groove of Ø${length(job, relief.diameter)}, ${length(job, relief.length)} long, and bore ${length(job, relief.beyond)} beyond the keyway.`
    : ''
  const [c, setting] = [either(job.spec.units, 0.1, 0.004), either(job.spec.units, 0.03, 0.001)]
  const ways: readonly (readonly [string, Record<string, string | number | null>])[] = [
    ['', {}],
    [`, with ${carefully(job, c, setting)}`, closer(job, c, setting)],
    [', with no more than 5° of rake', { [`${bar}.rake`]: 5 }],
  ]
  return ways.map(([how, more]) => ({
    say: `Cut it with the bar instead${how}.${first}`,
    told: (healed: Worked) => `Cut it with the bar instead${how}: that takes ${barOf(healed)}.${first}`,
    kind: 'bar',
    set: { ...out, ...more },
  }))
}
