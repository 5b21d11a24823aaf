/** The reasons leaf: what was found, what was held, what chosen and why. It stays at the desk. */
import { about } from '../checks/families.ts'
import type { Finding } from '../checks/rule.ts'
import type { Design } from '../design.ts'
import type { Block, Leaf, Row } from './document.ts'
import { bold, capital, say, type Saying } from './saying.ts'

const whole: Readonly<Record<Design['verdict'], string>> = {
  pass: 'Sound.',
  caution: 'Sound, with care.',
  unknown: 'Cannot be told yet.',
  fail: 'Not sound.',
}

const listed = (heading: string, findings: readonly Finding[]): readonly Block[] =>
  findings.length === 0
    ? []
    : [
        { block: 'heading', text: heading },
        { block: 'list', entries: findings.map(({ reason }) => reason) },
      ]

const limitsOf = ({ section }: Design, says: Saying): readonly Block[] => {
  const { crownDepthLimits: crown, sideDepthLimits: side, kind } = section
  const words =
    kind === 'groove'
      ? say`Depth at the crown ${bold(says.between(crown.lower, crown.upper))}. A groove has no side depth.`
      : say`Crown depth ${bold(says.between(crown.lower, crown.upper))}, side depth ${bold(says.between(side.lower, side.upper))}.`
  return [
    { block: 'heading', text: 'Limits of the slot' },
    { block: 'paragraph', words },
  ]
}

const budgets = ({ errors }: Design, says: Saying, by: 'bar' | 'press' | undefined): readonly Block[] => {
  const all = by && errors?.[by]
  if (!all) return []
  return [
    { block: 'heading', text: 'How far off it may come out' },
    {
      block: 'table',
      title: 'Errors',
      named: true,
      columns: [
        { head: '' },
        { head: 'as chances go, ±', align: 'decimal', width: 16 },
        { head: 'all at once, ±', align: 'decimal', width: 16 },
        { head: 'allowed, ±', align: 'decimal', width: 16 },
        { head: 'most of it from', grows: true },
      ],
      rows: all.map(
        ({ of, likely, worst, allowed, contributions }): Row => ({
          cells: [
            of,
            { number: says.fine(likely) },
            { number: says.fine(worst) },
            { number: says.fine(allowed) },
            contributions
              .slice(0, 2)
              .map((each) => each.of)
              .join('; '),
          ],
        }),
      ),
    },
  ]
}

/** Choices that a machinist asks about first, as he calls them. */
const asked: readonly (readonly [path: string, name: string])[] = [
  ['section.widthLimits', 'slot, width'],
  ['section.acrossLimits', 'slot, across'],
  ['section.cornerRadius', 'slot, corners'],
  ['bar.diameter', 'bar, diameter'],
  ['bar.projection', 'nose out of the bar'],
  ['bar.form', 'how the bit is held'],
  ['bar.lanes', 'lanes'],
  ['bar.stages', 'settings of the bit'],
  ['bit.rake', 'rake'],
  ['plan.infeedPerPass', 'infeed a pass'],
  ['plan.target', 'where the dial ends'],
  ['plan.centring', 'finding the middle'],
  ['plan.tram', 'bar along the bore'],
  ['plan.time', 'time'],
  ['loads.cuttingForce', 'force of the cut'],
  ['loads.machineGive', 'give of the machine'],
  ['loads.lag', 'slot behind the dial'],
  ['bushing.outside', 'bushing, outside'],
  ['bushing.backWall', 'bushing, back wall'],
  ['bushing.shims', 'shims'],
  ['press.force', 'force of the press'],
  ['press.columnMargin', 'against buckling'],
  ['press.overError', 'error of the over'],
]

/** `plan.infeedPerPass` as it is said: `plan infeed per pass`. */
const pathSaid = (path: string): string =>
  path.replaceAll('.', ' ').replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

const why = ({ basis }: Design, by: 'bar' | 'press' | undefined): readonly Block[] => {
  const other = by === 'press' ? /^(bar|bit|plan|loads)\./ : /^(bushing|press)\./
  const rows = asked.flatMap(([path, name]): readonly Row[] => {
    const reason = basis[path]
    return reason === undefined || other.test(path) ? [] : [{ cells: [name, reason] }]
  })
  return [
    { block: 'heading', text: 'What was chosen, and why' },
    {
      block: 'table',
      title: 'What was chosen, and why',
      named: true,
      columns: [
        { head: 'size', width: 34 },
        { head: 'why, and where it comes from', grows: true },
      ],
      rows,
    },
  ]
}

/** What stands in the document, however deep, by path. */
const leavesIn = (value: unknown, path: string): readonly (readonly [string, string])[] => {
  if (Array.isArray(value)) return [[path, value.map(String).join(' to ')]]
  if (typeof value !== 'object') return [[path, String(value)]]
  if (value === null) return []
  return Object.entries(value).flatMap(([name, inner]) => leavesIn(inner, path === '' ? name : `${path}.${name}`))
}

/** What the spec states, as it was written; the shop’s lists are not told over again. */
const held = ({ spec }: Design): readonly Block[] => {
  const stated = leavesIn(spec.written.document, '').filter(([path]) => !/^(name|units|shop|drafting)\b/.test(path))
  return [
    { block: 'heading', text: 'What was held' },
    {
      block: 'paragraph',
      words: `Given, and not chosen: ${stated.map(([path, value]) => `${pathSaid(path.replace(/^(tooling|feature)\./, ''))} ${value}`).join('; ')}.`,
    },
  ]
}

/** `more`: what found no room where it is wanted first. */
export const reasonsLeaf = (
  design: Design,
  says: Saying,
  by: 'bar' | 'press' | undefined,
  more: readonly Block[] = [],
): Leaf => {
  const mine = design.findings.filter(({ rule }) => ['job', by ?? 'job'].includes(about(rule)))
  const of = (verdict: Design['verdict']): readonly Finding[] => mine.filter((finding) => finding.verdict === verdict)
  const { ways } = design
  const other = ways?.ways.find((way) => way.by !== by)
  return {
    leaf: 'reasons',
    title: 'Reasons leaf',
    sides: [
      {
        title: 'why',
        blocks: [
          { block: 'paragraph', size: 'large', words: whole[design.verdict] },
          ...(ways
            ? [
                {
                  block: 'paragraph' as const,
                  words: `${ways.says}${other?.why && !ways.says.includes(other.why) ? ` ${capital(other.by === 'bar' ? 'with the bar' : 'with the broach')}: ${other.why}` : ''}`,
                },
              ]
            : []),
          ...listed('Broken', of('fail')),
          ...listed('Take care', of('caution')),
          ...listed('Cannot tell', of('unknown')),
          ...listed('Holds, tightest first', of('pass')),
          ...limitsOf(design, says),
          ...more,
          ...budgets(design, says, by),
          ...held(design),
          ...why(design, by),
        ],
      },
    ],
  }
}
