import { type Ways, waysOf } from './checks/compare.ts'
import { fitRules } from './checks/bar-fit.ts'
import { barRules } from './checks/bar.ts'
import { broachRule, bushingRules, noBarRule } from './checks/bushing.ts'
import { applying, judge, tightestFirst, verdictOf, weigh } from './checks/judge.ts'
import { cutRules, forceRules, keyRules, pressForceRules } from './checks/forces.ts'
import type { Finding, Judged, Remedy, Rule, Verdict, Weighed, Worked } from './checks/rule.ts'
import { indexRules } from './checks/indexing.ts'
import { groundForceRules, groundRules } from './checks/ground.ts'
import { sectionRules } from './checks/section.ts'
import { type Aids, aidsOf } from './dimensions/aids.ts'
import type { Reasoned } from './dimensions/basis.ts'
import { bestCandidate, type Candidate } from './dimensions/candidates.ts'
import { cutterBarOf } from './dimensions/cutter-bar.ts'
import { groundBarOf } from './dimensions/ground-bar.ts'
import { guideBushingOf } from './dimensions/guide-bushing.ts'
import { hubWeightOf } from './dimensions/hub-weight.ts'
import { plugGaugeOf } from './dimensions/plug-gauge.ts'
import { sectionOf } from './dimensions/section.ts'
import { lighterInfeeds } from './dimensions/settings.ts'
import { toolBitOf } from './dimensions/tool-bit.ts'
import type { GroundBar } from './dimensions/types.ts'
import { groundLoadsOf, jointLoadsOf, keyLoadsOf, loadsOf, pressLoadsOf } from './mechanics/loads.ts'
import { errorsOf } from './plan/errors.ts'
import { indexingOf } from './plan/indexing.ts'
import { measuringOf } from './plan/measuring.ts'
import { planBasis, planOf } from './plan/passes.ts'
import { patchDocument, readSpec } from './spec/read.ts'
import type { BarSpec, Broach, Spec } from './spec/spec.ts'

/** Everything that follows from one spec: plain, readonly, pure. */
export interface Design extends Sized {
  /** Broken first, tightest first. */
  readonly findings: readonly Finding[]
  readonly verdict: Verdict
  /** The two ways side by side; absent where only one is open. */
  readonly ways?: Ways
}

/** The sizes, before they are judged. */
export interface Sized extends Worked, Aids {
  readonly asked?: BarSpec
  readonly broach?: Broach
}

const named = (part: string, basis: object): Record<string, string> =>
  Object.fromEntries(Object.entries(basis).map(([name, why]) => [`${part}.${name}`, String(why)]))

const steelNamed = (steel: string): string =>
  steel === 'drill rod' ? 'drill rod (silver steel), soft' : `${steel} class steel`

const breaks = (sized: Sized): boolean => {
  const { asked, bar, bit, groundBar, loads } = sized
  const fails = <Job extends Worked>(rules: readonly Rule<Job>[], job: Job): boolean =>
    applying(rules, job).some((rule) => weigh(rule, job).verdict === 'fail')
  if (asked && bar && bit && loads) return fails(forceRules, { ...sized, asked, bar, bit, loads })
  if (!asked || !groundBar || !loads) return false
  const job = { ...sized, asked, groundBar, loads }
  return [fitRules, groundRules, cutRules, groundForceRules].some((rules) => fails<typeof job>(rules, job))
}

/**
 * Works out every size of a spec that has been read. Where nobody has said how much to take in a pass, it is the usual for the material,
 * or the most that bar and bit bear.
 */
export const sizesOf = (spec: Spec): Sized => {
  const asked = spec.tooling.bar
  const usual = sized(spec, asked)
  return asked ? withdrawnFarther(spec, asked, bearable(spec, asked, usual)) : usual
}

/** Whether nothing is fixed that tells one form of bar from another. */
const leftOpen = ({ form, diameter, projection, bit, screw }: BarSpec): boolean =>
  form === undefined && diameter === undefined && projection === undefined && bit === undefined && screw === undefined

/** In larger bores a blank and a bar to hold it are sooner bought than a bar of one piece is ground, mm. Source: judgement. */
const onePieceUpTo = 12

/** A bar of one piece has a flat edge: no V, no round. */
const takesOnePiece = ({ socket, groove, bore }: Worked['section']): boolean =>
  !socket && !groove && bore.lower <= onePieceUpTo

/** With less in a pass, then with less rake, whichever first breaks nothing; as asked where nothing helps. */
const bearable = (spec: Spec, asked: BarSpec, usual: Sized): Sized => {
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
    const lighter = sized(spec, way)
    if (!breaks(lighter)) return lighter
  }
  return usual
}

/** Drawn back as far as the lag and two chips ask, where nobody has said how far and the bore has room for it. */
const withdrawnFarther = (spec: Spec, stated: BarSpec, worked: Sized): Sized => {
  const { asked, loads, plan } = worked
  if (!asked || !loads || spec.stated.includes('tooling.bar.clearance.withdrawn')) return worked
  const needed = loads.lag.most + 2 * (plan?.infeedPerPass ?? 0)
  if (needed <= stated.clearance.withdrawn) return worked
  const step = spec.units === 'mm' ? 0.05 : 0.002 * 25.4
  const withdrawn = Math.ceil(needed / step + 0.2) * step
  const farther = sized(spec, { ...asked, clearance: { ...asked.clearance, withdrawn } })
  const made = farther.bar ?? farther.groundBar
  const before = worked.bar ?? worked.groundBar
  const sound =
    made?.stages.every(({ projection, projectionMax }) => projection + made.setting <= projectionMax + 1e-9) === true &&
    made.stages.length === before?.stages.length &&
    (farther.bar === undefined) === (worked.bar === undefined)
  const asStiff = (made?.diameter.nominal ?? 0) >= (before?.diameter.nominal ?? 0) - 1e-9
  return sound && asStiff && !breaks(farther) ? farther : worked
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

const sized = (spec: Spec, asked: BarSpec | undefined): Sized => {
  const basis: Record<string, string> = {}
  const keep = <D extends object>(part: string, reasoned: Reasoned<D>): D => {
    for (const [path, why] of Object.entries(named(part, reasoned.basis)))
      if ((path.slice(part.length + 1).split('.')[0] ?? '') in reasoned.sizes) basis[path] = why
    return reasoned.sizes
  }
  const section = keep('section', sectionOf(spec))
  const candidate = asked && asked.form !== 'one piece' ? bestCandidate(spec, asked, section) : undefined
  const ground = asked && groundInstead(spec, asked, section, candidate)
  const groundBar = ground && keep('bar', ground)
  const bar = groundBar ? undefined : asked && candidate && keep('bar', cutterBarOf(spec, asked, section, candidate))
  const bit = asked && bar && keep('bit', toolBitOf(spec, asked, section, bar))
  const broach = spec.tooling.press?.broach
  const bushing = broach && keep('bushing', guideBushingOf(spec, broach, section))
  const plug = keep('plug', plugGaugeOf(spec, section))
  const kept = <D extends object>(part: string, reasoned: Reasoned<D> | undefined): D | undefined =>
    reasoned && keep(part, reasoned)
  const loads =
    asked && bar && bit
      ? kept('loads', loadsOf(spec, asked, bar, bit))
      : asked && groundBar && kept('loads', groundLoadsOf(spec, asked, groundBar))
  const cutting = bar ?? groundBar
  const plan =
    asked && cutting && keep('plan', { sizes: planOf(spec, asked, cutting, section, loads), basis: planBasis })
  const measuring = keep('measuring', measuringOf(spec, section))
  const indexing = kept('indexing', indexingOf(spec, section))
  const pressLoads = broach && bushing && kept('press', pressLoadsOf(spec, broach, bushing, section))
  const keyLoads = kept('key', keyLoadsOf(spec, section))
  const jointLoads = kept('joint', jointLoadsOf(spec, section))
  const hubWeight = hubWeightOf(spec)
  const aids = Object.fromEntries(
    Object.entries(aidsOf(spec, section, bar, bushing)).flatMap(([name, aid]) =>
      aid ? [[name, keep<object>(name, aid)]] : [],
    ),
  ) as Aids
  return {
    spec,
    section,
    ...(asked && { asked }),
    ...(bar && { bar: loads ? { ...bar, stock: { ...bar.stock, material: steelNamed(loads.barSteel) } } : bar }),
    ...(bit && { bit }),
    ...(groundBar && { groundBar }),
    ...(broach && { broach }),
    ...(bushing && { bushing }),
    plug,
    ...(plan && { plan }),
    measuring,
    ...(hubWeight !== undefined && { hubWeight }),
    ...(indexing && { indexing }),
    ...(loads && { loads }),
    ...(pressLoads && { pressLoads }),
    ...(keyLoads && { keyLoads }),
    ...(jointLoads && { jointLoads }),
    ...aids,
    errors: errorsOf(spec, section, { bar, bit, plan, loads, bushing, broach, indexing }),
    basis,
  }
}

/** Asks something of every rule that applies, each on a job of its kind. */
const ofEachRule = <Answer>(
  sized: Sized,
  ask: <Job extends Worked>(rule: Rule<Job>, job: Job) => Answer,
): readonly Answer[] => {
  const { asked, bar, bit, groundBar, broach, bushing, loads, pressLoads, keyLoads, spec } = sized
  const over = <Job extends Worked>(rules: readonly Rule<Job>[], job: Job): readonly Answer[] =>
    applying(rules, job).map((rule) => ask(rule, job))
  // Asked for by name, a press without a broach cannot be told; where both ways are merely open it is left out.
  const pressAsked = spec.stated.includes('tooling.press') && !broach
  return [
    ...over(sectionRules, sized),
    ...over(indexRules, sized),
    ...(asked && !bar && !groundBar ? over([noBarRule], sized) : []),
    ...(asked && groundBar ? over(fitRules, { ...sized, asked }) : []),
    ...(asked && groundBar ? over(groundRules, { ...sized, asked, groundBar }) : []),
    ...(asked && groundBar && loads ? over(cutRules, { ...sized, asked, loads }) : []),
    ...(asked && groundBar && loads ? over(groundForceRules, { ...sized, asked, groundBar, loads }) : []),
    ...(asked && bar && bit ? over(barRules, { ...sized, asked, bar, bit }) : []),
    ...(pressAsked ? over([broachRule], sized) : []),
    ...(broach && bushing ? over(bushingRules, { ...sized, broach, bushing }) : []),
    ...(asked && bar && bit && loads ? over(forceRules, { ...sized, asked, bar, bit, loads }) : []),
    ...(broach && bushing && pressLoads ? over(pressForceRules, { ...sized, broach, bushing, pressLoads }) : []),
    ...(keyLoads ? over(keyRules, { ...sized, keyLoads }) : []),
  ]
}

/** Judges what was worked out; ways out are proposed, and none is offered before it has been tried. */
export const findingsOf = (sized: Sized): readonly Judged[] => tightestFirst(ofEachRule(sized, judge))

interface Outcome {
  readonly worked: Worked
  readonly findings: readonly Weighed[]
}

const ofShop = (set: NonNullable<Remedy['set']>): boolean => Object.keys(set).some((path) => path.startsWith('shop.'))

/** The spec as written with a patch in it; what is said of a shop file is patched in that. */
const patchedSpec = (spec: Spec, set: NonNullable<Remedy['set']>): ReturnType<typeof readSpec> => {
  const { document, shop } = spec.written
  if (shop === undefined || !ofShop(set))
    return readSpec(patchDocument(document, set), set['shop'] === null ? undefined : shop)
  const inShop = Object.fromEntries(Object.entries(set).map(([path, value]) => [path.replace(/^shop\./, ''), value]))
  return readSpec(document, patchDocument(shop, inShop))
}

/** What comes of a patch of the spec as written; undefined where the reader refuses it. Each patch is worked out once. */
const trials = ({ spec }: Sized): ((set: NonNullable<Remedy['set']>) => Outcome | undefined) => {
  const known = new Map<string, Outcome | undefined>()
  return (set) => {
    const key = JSON.stringify(set)
    if (!known.has(key)) {
      const read = patchedSpec(spec, set)
      const worked = 'spec' in read ? sizesOf(read.spec) : undefined
      known.set(key, worked && { worked, findings: ofEachRule(worked, weigh) })
    }
    return known.get(key)
  }
}

const heals = (rule: string, failing: ReadonlySet<string>, { findings }: Outcome): boolean =>
  (findings.find((finding) => finding.rule === rule)?.verdict ?? 'pass') === 'pass' &&
  findings.every((finding) => finding.verdict !== 'fail' || failing.has(finding.rule))

/** Ways out that can be taken over into the spec: three of what refuses it are plenty, one of a caution. */
const enough: Readonly<Record<Verdict, number>> = { pass: 0, caution: 1, unknown: 0, fail: 3 }

/** A sentence that goes on from another, where there is no other: `Or bore it through.` */
const alone = (say: string): string => say.replace(/^(?:Or|Otherwise) (.)/, (_, first: string) => first.toUpperCase())

/** A remedy is offered only when, tried on the spec as written, it heals its rule and breaks none that held. */
const withTriedRemedies = (sized: Sized, findings: readonly Judged[]): readonly Finding[] => {
  const trial = trials(sized)
  const failing = new Set(findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule))
  const offered = ({ rule, verdict, proposals }: Judged): readonly Remedy[] => {
    const kept: Remedy[] = []
    const taken = new Set<string>()
    const kinds = new Set<string>()
    for (const { say, set, told, kind } of proposals()) {
      if (!set) {
        kept.push({ say })
        continue
      }
      if (taken.size >= enough[verdict] || taken.has(JSON.stringify(set)) || kinds.has(kind ?? '')) continue
      const outcome = trial(set)
      if (!outcome || !heals(rule, failing, outcome)) continue
      taken.add(JSON.stringify(set))
      if (kind) kinds.add(kind)
      const said = told?.(outcome.worked) ?? say
      // A shop file of its own is not the spec's to change.
      kept.push(sized.spec.written.shop !== undefined && ofShop(set) ? { say: said } : { say: said, set })
    }
    return kept.map((remedy, place) => (place === 0 ? { ...remedy, say: alone(remedy.say) } : remedy))
  }
  return findings.map((finding) => {
    const { proposals: _, ...judged } = finding
    return { ...judged, remedies: offered(finding) }
  })
}

/** The core's front door: everything that follows from one spec. Pure; never throws for a spec that the reader let pass. */
export const design = (spec: Spec): Design => {
  const worked = sizesOf(spec)
  const findings = withTriedRemedies(worked, findingsOf(worked))
  const ways = waysOf(worked, findings)
  return { ...worked, findings, verdict: verdictOf(findings), ...(ways && { ways }) }
}
