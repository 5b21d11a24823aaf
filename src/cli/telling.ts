import type { Remedy, Verdict } from '../checks/rule.ts'
import type { Design } from '../design.ts'
import type { Paint } from './desk.ts'
import { placeOf, standsAt } from '../spec/place.ts'
import { count, table, wrap } from './lines.ts'
import { sizesOf } from './sizes.ts'

/** How many of the rules that hold are shown: the tightest. */
const shown = 5

/** A design as a colleague would tell it: the verdict in words, what is tight, then the sizes. */
export const telling = (design: Design, width: number, paint: Paint): string =>
  [
    headline(design, width, paint),
    ...section(findingsOf(design, width, paint)),
    ...sizesOf(design).flatMap(({ heading, rows, unitless }) => [
      '',
      paint.strong(unitless ? heading : `${heading}, ${design.spec.units}`),
      ...table(rows),
    ]),
    '',
    ...dangers(design, width),
    closing(width),
  ].join('\n')

const section = (lines: readonly string[]): string[] => (lines.length === 0 ? [] : ['', ...lines])

/** What is said wherever numbers are. */
export const closing = (width: number): string => [wrap(trust, width), wrap(deferral, width)].join('\n')

/** How far to trust the numbers. */
const trust =
  'Forces are good to about a third either way; sizes are as good as what was measured. Measure the finished bore before the last infeed, and the keyway across before the key goes in.'

/** Where the danger is: at the machine that this job is cut on. */
export const dangers = ({ bar, bushing }: Design, width: number): readonly string[] => [
  ...(bar
    ? [
        wrap(
          'Bar: never start the spindle with the bar in the hub. Power off at the isolator, chuck key out, spindle locked; knuckles off the hub’s edge.',
          width,
        ),
      ]
    : []),
  ...(bushing
    ? [
        wrap(
          'Press: a broach is hard and shatters sideways. Guard, face shield, nobody in line with it; ram square, oil, never strike it, never draw it back. Force jumps: stop.',
          width,
        ),
      ]
    : []),
]

/** What no number here decides. */
const deferral =
  'Steering, brakes, lifting, pressure, aircraft and whatever else a life hangs on: these are sizes only, no approval. Local codes and a licensed, qualified person decide.'

/** The verdict in words. */
export const headline = (design: Design, width: number, paint: Paint): string => {
  const of = (verdict: Verdict): number => design.findings.filter((finding) => finding.verdict === verdict).length
  const { name } = design.spec
  const also = [
    ...(of('caution') > 0 ? [`${count(of('caution'), 'thing')} to mind`] : []),
    ...(of('unknown') > 0 ? [`${count(of('unknown'), 'rule')} cannot be told`] : []),
  ].join(', ')
  const tail = also === '' ? '' : ` (${also})`
  const said: Record<Verdict, () => string> = {
    pass: () => paint.good(`${name} is sound: all ${count(of('pass'), 'rule')} hold.`),
    caution: () => paint.careful(`${name} can be made, with ${count(of('caution'), 'thing')} to mind.`),
    unknown: () => paint.careful(`${name}: nothing is broken, but not everything can be told${tail}.`),
    fail: () =>
      paint.bad(
        `${name} cannot be made as written: ${count(of('fail'), 'rule')} that must hold ${of('fail') === 1 ? 'is' : 'are'} broken${tail}.`,
      ),
  }
  return wrap(said[design.verdict](), width)
}

/** Findings, and the spec that they are of. */
type Told = Pick<Design, 'findings' | 'spec'>

/** What is not well, each with its ways out, then the tightest of what holds. */
export const findingsOf = ({ findings, spec }: Told, width: number, paint: Paint): string[] => {
  const open = findings.filter((finding) => finding.verdict !== 'pass')
  const held = findings.filter((finding) => finding.verdict === 'pass')
  const tight = held.slice(0, shown)
  return [
    ...openLines({ findings: open, spec }, width, paint),
    ...(tight.length === 0
      ? []
      : [
          ...(open.length > 0 ? [''] : []),
          paint.strong(open.length > 0 ? 'tightest of what holds' : 'tightest first'),
          ...tight.map((finding) => wrap(finding.reason, width, '  ')),
          ...(held.length > tight.length
            ? [paint.quiet(`  and ${held.length - tight.length} more that hold (--json lists them all)`)]
            : []),
        ]),
  ]
}

const labels: Record<Verdict, string> = { fail: 'broken', unknown: 'cannot be told', caution: 'mind', pass: 'holds' }

/** What is broken first, then what to mind, then what could not be told. */
const order: readonly Verdict[] = ['fail', 'caution', 'unknown', 'pass']

/** What a finding begins with, to know it again by. */
const opening = (reason: string): string => (reason.split(/; |: |\. /)[0] ?? reason).replace(/\.$/, '')

/** What is not well, the worst first; ways out that several share are told once, and then by where they stand. */
export const openLines = ({ findings, spec }: Told, width: number, paint: Paint): string[] => {
  const { document } = spec.written
  const told = new Map<string, string>()
  const ordered = findings.toSorted((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict))
  return ordered.flatMap(({ verdict, reason, remedies }) => {
    const ways = remedies.map((remedy) => remedyText(remedy, document))
    const fresh = ways.filter((remedy) => !told.has(remedy))
    const under = new Set(ways.map((remedy) => told.get(remedy)).filter((earlier) => earlier !== undefined))
    for (const remedy of fresh) told.set(remedy, opening(reason))
    const rest = [...under].map((earlier) => `${fresh.length > 0 ? 'also as' : 'as'} above under “${earlier}”`)
    const colour = verdict === 'fail' ? paint.bad : paint.careful
    const label = `${labels[verdict]}: `
    const [first = '', ...more] = wrap(reason, width, label).split('\n')
    return [
      colour(label) + first.slice(label.length),
      ...more.map((line) => `  ${line.trimStart()}`),
      ...[...fresh, ...rest].map((remedy) => wrap(remedy, width, '  - ')),
    ]
  })
}

/** A remedy with the lines that it puts into the spec, and those of the spec that it takes out. */
const remedyText = ({ say, set }: Remedy, document: unknown): string => {
  const lines = Object.entries(set ?? {})
  const put = lines.flatMap(([path, value]) => (value === null ? [] : [`${path}: ${value}`]))
  const out = lines.flatMap(([path, value]) =>
    value === null && standsAt(document, placeOf(path)) !== undefined ? [path] : [],
  )
  const parts = [...put, ...(out.length > 0 ? [`without ${out.join(', ')}`] : [])]
  return parts.length === 0 ? say : `${say} [${parts.join('; ')}]`
}
