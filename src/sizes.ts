import type { Rule, Worked } from './checks/rule.ts'
import { cutRules, forceRules } from './checks/forces.ts'
import { fitRules } from './checks/bar-fit.ts'
import { groundForceRules, groundRules } from './checks/ground.ts'
import { weigh } from './checks/judge.ts'
import { type Aids, aidsOf } from './dimensions/aids.ts'
import type { Reasoned } from './dimensions/basis.ts'
import { bestCandidates, type Candidate } from './dimensions/candidates.ts'
import { cutterBarOf } from './dimensions/cutter-bar.ts'
import { groundBarOf } from './dimensions/ground-bar.ts'
import { guideBushingOf } from './dimensions/guide-bushing.ts'
import { hubWeightOf } from './dimensions/hub-weight.ts'
import { plugGaugeOf } from './dimensions/plug-gauge.ts'
import { sectionOf } from './dimensions/section.ts'
import { infeedPerPass, lighterInfeeds } from './dimensions/settings.ts'
import { toolBitOf } from './dimensions/tool-bit.ts'
import type { GroundBar, PlugGauge } from './dimensions/types.ts'
import { groundLoadsOf, jointLoadsOf, keyLoadsOf, loadsOf, pressLoadsOf } from './mechanics/loads.ts'
import { roomBehind } from './plan/behind.ts'
import { type Errors, errorsOf } from './plan/errors.ts'
import { indexingOf } from './plan/indexing.ts'
import { measuringOf } from './plan/measuring.ts'
import { planBasis, planOf } from './plan/passes.ts'
import type { Measuring, Plan } from './plan/types.ts'
import type { BarSpec, Broach, Spec } from './spec/spec.ts'

/** What bears on whether a job goes, and the reasons of each part of it, not yet put into words by path. */
export interface Job extends Worked {
  readonly asked?: BarSpec
  readonly broach?: Broach
  readonly standing?: Standing
  readonly reasons: readonly (readonly [part: string, reasoned: Reasoned<object>])[]
}

/** The sizes, before they are judged. */
export interface Sized extends Worked, Aids {
  readonly asked?: BarSpec
  readonly broach?: Broach
  readonly plug: PlugGauge
  readonly plan?: Plan
  /** How to tell that the feature is right, however it was cut. */
  readonly measuring: Measuring
  /** Of a round hub as long as its bore, kg; absent where its outside is not told. */
  readonly hubWeight?: number
  readonly errors: Errors
  /** Why each dimension is what it is, by path: `bar.projection`. */
  readonly basis: Readonly<Record<string, string>>
}

const steelNamed = (steel: string): string =>
  steel === 'drill rod' ? 'drill rod (silver steel), soft' : `${steel} class steel`

/** Whether something of a job's bar is broken. */
const breaks = (job: Job): boolean => {
  const fails = <Own extends Worked>(rules: readonly Rule<Own>[], own: Own): boolean =>
    rules.some((rule) => (rule.applies?.(own) ?? true) && weigh(rule, own).verdict === 'fail')
  if (hasBar(job) && hasLoads(job)) return fails(forceRules, job)
  if (!hasGround(job) || !hasLoads(job)) return false
  return fails(fitRules, job) || fails(groundRules, job) || fails(cutRules, job) || fails(groundForceRules, job)
}

type With<Name extends keyof Job> = { readonly [Each in Name]-?: NonNullable<Job[Each]> }

export const hasBar = <Own extends Job>(job: Own): job is Own & With<'asked' | 'bar' | 'bit'> =>
  job.asked !== undefined && job.bar !== undefined && job.bit !== undefined
export const hasGround = <Own extends Job>(job: Own): job is Own & With<'asked' | 'groundBar'> =>
  job.asked !== undefined && job.groundBar !== undefined
export const hasLoads = <Own extends Job>(job: Own): job is Own & With<'loads'> => job.loads !== undefined
export const hasBushing = <Own extends Job>(job: Own): job is Own & With<'broach' | 'bushing'> =>
  job.broach !== undefined && job.bushing !== undefined

/**
 * Works out what bears on whether a job goes. Where nobody has said how much to take in a pass, it is the usual for the material,
 * or the most that bar and bit bear.
 */
export const jobOf = (spec: Spec): Job => jobWith(spec, standingOf(spec))

/** The same of a spec that says otherwise than that of `job` of these paths, and of no other. */
export const jobBeside = (spec: Spec, job: Job, paths: readonly string[]): Job =>
  job.standing && paths.every(leavesStanding) ? jobWith(spec, job.standing) : jobOf(spec)

/** What is said of the bar bears on the bar alone, but for the nose, whose corners are the slot's. */
const leavesStanding = (path: string): boolean =>
  path.startsWith('tooling.bar.') && !path.startsWith('tooling.bar.nose')

const jobWith = (spec: Spec, standing: Standing): Job => {
  const asked = spec.tooling.bar
  const usual = worked(spec, standing, asked)
  return asked ? withdrawnFarther(spec, standing, asked, bearable(spec, standing, asked, usual)) : usual
}

/** What of a job stands whatever its bar is like: worked out once for all bars that are looked at. */
export interface Standing {
  readonly section: Reasoned<Worked['section']>
  readonly bestFor: (bar: BarSpec) => Candidate | undefined
  readonly bushing?: ReturnType<typeof guideBushingOf>
  readonly indexing: ReturnType<typeof indexingOf>
  readonly press?: ReturnType<typeof pressLoadsOf>
  readonly key: ReturnType<typeof keyLoadsOf>
  readonly joint: ReturnType<typeof jointLoadsOf>
}

const standingOf = (spec: Spec): Standing => {
  const section = sectionOf(spec)
  const { sizes } = section
  const broach = spec.tooling.press?.broach
  const bushing = broach && guideBushingOf(spec, broach, sizes)
  return {
    section,
    bestFor: bestCandidates(spec, sizes),
    indexing: indexingOf(spec, sizes, bushing?.sizes.locating),
    key: keyLoadsOf(spec, sizes),
    joint: jointLoadsOf(spec, sizes),
    ...(broach && bushing && { bushing, press: pressLoadsOf(spec, broach, bushing.sizes, sizes) }),
  }
}

/** Every size of a spec that has been read. */
export const sizesOf = (spec: Spec): Sized => allOf(jobOf(spec))

/** Whether nothing is fixed that tells one form of bar from another. */
const leftOpen = ({ form, diameter, projection, bit, screw }: BarSpec): boolean =>
  form === undefined && diameter === undefined && projection === undefined && bit === undefined && screw === undefined

/** In larger bores a blank and a bar to hold it are sooner bought than a bar of one piece is ground, mm. Source: judgement. */
const onePieceUpTo = 12

/** A bar of one piece has a flat edge: no V, no round. */
const takesOnePiece = ({ socket, groove, bore }: Worked['section']): boolean =>
  !socket && !groove && bore.lower <= onePieceUpTo

/** With less in a pass, then with less rake, whichever first breaks nothing; as asked where nothing helps. */
const bearable = (spec: Spec, standing: Standing, asked: BarSpec, usual: Job): Job => {
  if (!breaks(usual)) return usual
  const infeeds = asked.infeed === undefined ? lighterInfeeds(spec, asked) : []
  const rakes = asked.rake === undefined ? [8, 5, 3, 0].filter((rake) => rake < (usual.bit?.rake ?? 0)) : []
  const onePiece: BarSpec = { ...asked, form: 'one piece' }
  const ways: readonly BarSpec[] = [
    ...infeeds.map((infeed) => ({ ...asked, infeed })),
    ...rakes.map((rake) => ({ ...asked, rake })),
    ...rakes.flatMap((rake) => infeeds.map((infeed) => ({ ...asked, rake, infeed }))),
    ...(leftOpen(asked) && takesOnePiece(usual.section)
      ? [onePiece, ...infeeds.map((infeed) => ({ ...onePiece, infeed }))]
      : []),
  ]
  for (const way of ways) {
    const lighter = worked(spec, standing, way)
    if (!breaks(lighter)) return lighter
  }
  return usual
}

/** Drawn back as far as the lag and two chips ask, with room behind for chips, where nobody has said how far and the bore has room for it. */
const withdrawnFarther = (spec: Spec, standing: Standing, stated: BarSpec, near: Job): Job => {
  const { asked, loads, infeed } = near
  if (!asked || !loads) return near
  const step = spec.units === 'mm' ? 0.05 : 0.002 * 25.4
  const open = (which: 'withdrawn' | 'back', needed: number) =>
    needed <= stated.clearance[which] || spec.stated.includes(`tooling.bar.clearance.${which}`)
      ? stated.clearance[which]
      : Math.ceil(needed / step + 0.2) * step
  const withdrawn = open('withdrawn', loads.lag.most + 2 * (infeed ?? 0))
  const back = open('back', roomBehind(standing.section.sizes, spec.units, infeed ?? 0))
  if (withdrawn === stated.clearance.withdrawn && back === stated.clearance.back) return near
  const farther = worked(spec, standing, { ...asked, clearance: { ...asked.clearance, withdrawn, back } })
  const made = farther.bar ?? farther.groundBar
  const before = near.bar ?? near.groundBar
  const sound =
    made?.stages.every(({ projection, projectionMax }) => projection + made.setting <= projectionMax + 1e-9) === true &&
    made.stages.length === before?.stages.length &&
    (farther.bar === undefined) === (near.bar === undefined)
  const asStiff = (made?.diameter.nominal ?? 0) >= (before?.diameter.nominal ?? 0) - 1e-9
  return sound && asStiff && !breaks(farther) ? farther : near
}

/**
 * A bar of one piece, where it is asked for, or where in a small bore no bit can be held in any bar and nothing is fixed that speaks against it; undefined
 * where it has no room either.
 */
const groundInstead = (
  spec: Spec,
  asked: BarSpec,
  section: Worked['section'],
  candidate: Candidate | undefined,
): Reasoned<GroundBar> | undefined => {
  if (section.socket || section.groove) return undefined
  if (asked.form === 'one piece') return groundBarOf(spec, asked, section).reasoned
  if (!leftOpen(asked) || !takesOnePiece(section) || candidate?.broken.length === 0) return undefined
  const { works, reasoned } = groundBarOf(spec, asked, section)
  return works ? reasoned : undefined
}

const worked = (spec: Spec, standing: Standing, asked: BarSpec | undefined): Job => {
  const reasons: (readonly [string, Reasoned<object>])[] = []
  const keep = <D extends object>(part: string, reasoned: Reasoned<D> | undefined): D | undefined => {
    if (reasoned) reasons.push([part, reasoned])
    return reasoned?.sizes
  }
  const { section } = standing
  reasons.push(['section', section])
  const { sizes } = section
  const candidate = asked && asked.form !== 'one piece' ? standing.bestFor(asked) : undefined
  const ground = asked && groundInstead(spec, asked, sizes, candidate)
  const groundBar = keep('bar', ground)
  const bar = groundBar || !asked || !candidate ? undefined : keep('bar', cutterBarOf(spec, asked, sizes, candidate))
  const bit = asked && bar && keep('bit', toolBitOf(spec, asked, sizes, bar))
  const broach = spec.tooling.press?.broach
  const bushing = keep('bushing', standing.bushing)
  const loads =
    asked && bar && bit
      ? keep('loads', loadsOf(spec, asked, bar, bit))
      : asked && groundBar && keep('loads', groundLoadsOf(spec, asked, groundBar))
  const indexing = keep('indexing', standing.indexing)
  const pressLoads = keep('press', standing.press)
  const keyLoads = keep('key', standing.key)
  const jointLoads = keep('joint', standing.joint)
  // Key by key: copying with `...` for each that may be absent takes longer than working most of them out.
  const job: Mutable<Omit<Job, 'reasons'>> = { spec, section: sizes }
  if (asked) job.asked = asked
  if (asked && (bar ?? groundBar)) job.infeed = infeedPerPass(spec, asked)
  if (bar) job.bar = loads ? { ...bar, stock: { ...bar.stock, material: steelNamed(loads.barSteel) } } : bar
  if (bit) job.bit = bit
  if (groundBar) job.groundBar = groundBar
  if (broach) job.broach = broach
  if (bushing) job.bushing = bushing
  if (indexing) job.indexing = indexing
  if (loads) job.loads = loads
  if (pressLoads) job.pressLoads = pressLoads
  if (keyLoads) job.keyLoads = keyLoads
  if (jointLoads) job.jointLoads = jointLoads
  return Object.assign(job, { reasons, standing })
}

type Mutable<D> = { -readonly [Key in keyof D]: D[Key] }

/** Adds to a job what no rule looks at: the plan, gauges and aids, what may come out wrong, and every reason by its path. */
export const allOf = (known: Job): Sized => {
  const { reasons, standing: _, ...job } = known
  const { spec, section, asked, bar, groundBar, bit, bushing, broach, loads, indexing } = job
  const all = [...reasons]
  const keep = <D extends object>(part: string, reasoned: Reasoned<D>): D => {
    all.push([part, reasoned])
    return reasoned.sizes
  }
  const plug = keep('plug', plugGaugeOf(spec, section))
  const cutting = bar ?? groundBar
  const plan =
    asked && cutting && keep('plan', { sizes: planOf(spec, asked, cutting, section, loads), basis: planBasis })
  const measuring = keep('measuring', measuringOf(spec, section))
  const hubWeight = hubWeightOf(spec)
  const aids = Object.fromEntries(
    Object.entries(aidsOf(spec, section, bar ?? groundBar, bushing, bit)).flatMap(([name, aid]) =>
      aid ? [[name, keep<object>(name, aid)]] : [],
    ),
  ) as Aids
  return {
    ...job,
    plug,
    ...(plan && { plan }),
    measuring,
    ...(hubWeight !== undefined && { hubWeight }),
    ...aids,
    errors: errorsOf(spec, section, { bar: cutting, bit, plan, loads, bushing, broach, indexing }),
    basis: byPath(all),
  }
}

/** Paths by part and name: there are a few hundred, and putting them together anew for each job takes longer than all else that is done with them. */
const paths = new Map<string, Map<string, string>>()

const pathsIn = (part: string): Map<string, string> => {
  const known = paths.get(part) ?? new Map<string, string>()
  paths.set(part, known)
  return known
}

/** Reasons by path, of the sizes that there are. */
const byPath = (reasons: Job['reasons']): Readonly<Record<string, string>> => {
  const basis: Record<string, string> = {}
  for (const [part, { sizes, basis: why }] of reasons) {
    const known = pathsIn(part)
    for (const [name, reason] of Object.entries(why)) {
      const dot = name.indexOf('.')
      if (!((dot < 0 ? name : name.slice(0, dot)) in sizes)) continue
      let path = known.get(name)
      if (path === undefined) known.set(name, (path = `${part}.${name}`))
      basis[path] = String(reason)
    }
  }
  return basis
}
