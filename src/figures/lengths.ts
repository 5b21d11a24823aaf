/**
 * Four lengths under the section, on its axis and to its scale: across, crown depth, side depth, infeed. They start in four places and end at
 * one floor.
 */
import type { Design } from '../design.ts'
import { zeroOf } from './cut.ts'
import type { Point } from '../solid/outline.ts'
import { type Figure, isNarrow, type Run, type Target } from './figure.ts'
import { bare, listed, whole } from './saying.ts'
import { chain, lengthOfRuns, sketch } from './sketch.ts'
import { stageOf } from './stage.ts'

interface Length {
  readonly of: string
  readonly name: string
  /** Longest first: the first that fits is said. */
  readonly notes: readonly string[]
  readonly from: number
  readonly dial?: true
}

/** What is measured: to the far wall, or to the floor of the slot that stands opposite; nothing where neither can be. */
const measuredFrom = ({ section }: Design): { readonly from: number; readonly floors: boolean } | undefined => {
  const measurable = section.measurable?.[0]
  if (section.kind === 'slit' || section.kind === 'groove' || measurable?.to === 'nothing') return undefined
  const floors = measurable?.to === 'floor'
  return { from: floors ? -section.floor : -section.boreRadius, floors }
}

const acrossOf = (design: Design): readonly Length[] => {
  const { section } = design
  const measured = measuredFrom(design)
  if (!measured) return []
  if (measured.floors)
    return [
      {
        of: 'section.spline.floorToFloor',
        name: section.socket ? 'corner to corner' : 'floor to floor',
        notes: section.socket
          ? ['as it comes out: measure across flats', 'measure across flats']
          : ['the slot opposite: the one to measure', 'the one to measure', 'measure this'],
        from: measured.from,
      },
    ]
  const { lower, upper } = section.acrossLimits
  const limits = lower < upper ? `, ${bare(design, lower)} to ${bare(design, upper)}` : ''
  return [
    {
      of: 'section.across',
      name: section.socket ? 'corner to far wall' : 'across',
      notes: section.socket
        ? ['as it comes out: measure across flats', 'measure across flats']
        : [`floor to far wall: the one to measure${limits}`, 'floor to far wall: measure this', 'measure this'],
      from: measured.from,
    },
  ]
}

/** What the dial makes of an infeed: so much, or another number where it reads diameter or its slide is set over. */
const dialGoes = (design: Design, infeed: number, from: string): readonly [string, string] => {
  const { perInfeed } = design.plan?.dial ?? { perInfeed: 1 }
  return Math.abs(perInfeed - 1) < 1e-9
    ? [`the dial’s travel from ${from}`, 'on the dial']
    : [`from ${from}: the dial goes ${bare(design, infeed * perInfeed)}`, `dial ${bare(design, infeed * perInfeed)}`]
}

/** The lengths that a feature has; a groove has its depth alone, a V no side to go down. */
const lengthsOf = (design: Design): readonly Length[] => {
  const { section } = design
  const infeed: Length = {
    of: 'section.infeed',
    name: 'infeed',
    notes: section.slit
      ? [
          `to the outside; the dial goes on to ${bare(design, section.slit.target - zeroOf(design))}`,
          `to the outside, on to ${bare(design, section.slit.target - zeroOf(design))}`,
          'to the outside',
        ]
      : dialGoes(design, section.floor - zeroOf(design), 'first touch'),
    from: zeroOf(design),
    dial: true,
  }
  if (section.kind === 'groove')
    return [
      {
        ...infeed,
        name: 'depth',
        notes: dialGoes(design, section.crownDepth, 'the crown'),
        from: section.boreRadius,
      },
    ]
  return [
    ...acrossOf(design),
    {
      of: 'section.crownDepth',
      name: section.kind === 'slit' ? 'wall' : 'crown depth',
      notes:
        section.kind === 'slit'
          ? ['from the bore’s crown, right through', 'right through']
          : ['from the bore’s crown, which is cut away: nothing to touch', 'from the crown, cut away', 'cut away'],
      from: section.boreRadius,
    },
    ...(section.kind === 'socket'
      ? []
      : [
          {
            of: 'section.sideDepth',
            name: 'side depth',
            notes: ['down the side of the slot', 'down the side'],
            from: section.mouth,
          },
        ]),
    infeed,
  ]
}

const count = (lengths: number): string =>
  ['', 'A length', 'Two lengths', 'Three lengths', 'Four lengths'][lengths] ?? `${lengths} lengths`

/** Draw it under `sectionFigure` of the same design and target: they share their axis. */
export const fourLengths = (design: Design, target: Target): Figure => {
  const stage = stageOf(design, target)
  const on = sketch(target)
  const { em } = target
  const narrow = isNarrow(target)
  const row = (narrow ? 1.75 : 1.9) * em
  const x = (part: number): number => stage.origin[0] + part * stage.scale
  const { floor } = design.section
  const lengths = lengthsOf(design)
  const first = 1.7 * em
  const y = (index: number): number => first + index * row
  const height = y(lengths.length - 1) + 0.7 * em
  lengths.forEach(({ from }, index) => {
    // The across line runs on under its own label alone; the others come down from the section.
    on.line('leader', chain([x(from), 0], [x(from), y(index) + 0.35 * em]))
  })
  on.line('thin', chain([x(floor), 0], [x(floor), height]), 'section.floor')
  lengths.forEach(({ of, name, notes, from, dial }, index) => {
    const [a, b]: [Point, Point] = [
      [x(from), y(index)],
      [x(floor), y(index)],
    ]
    on.span(a, b, of, dial ? 'dial' : 'edge', dial ? 'flag' : 'ink')
    const value = bare(design, floor - from)
    on.words(
      [x(floor) + (b[0] - a[0] < 1.5 * em ? 1.5 : 0.5) * em, y(index) + 0.34 * em],
      [{ role: dial ? 'mark' : 'figure', text: value }],
      { of },
    )
    const said = (note: string | undefined): readonly Run[] => [
      { role: dial ? 'mark' : 'name', text: name },
      ...(note === undefined ? [] : [{ role: 'note' as const, text: ` ${note}` }]),
    ]
    // Across has its name over its own line, ending short of the other starts; the rest have it before their start.
    const over = index === 0 && from < 0
    const right = over ? Math.min(...lengths.slice(1).map((one) => x(one.from))) - 0.6 * em : a[0] - 1.5 * em
    const left = over ? a[0] + 0.3 * em : 0.2 * em
    const note = narrow ? undefined : notes.find((one) => lengthOfRuns(said(one), em) <= right - left)
    const up = over ? -0.42 : 0.34
    on.words([right, y(index) + up * em], said(note), { anchor: 'end', of })
    on.say({ of, name, said: whole(design, floor - from), mm: floor - from, span: [a, b] })
  })
  return {
    name: 'four-lengths',
    width: stage.width,
    height,
    em,
    scale: stage.scale,
    marks: on.marks,
    title: `${count(lengths.length)} that end at one floor`,
    says: `${listed(on.sizes.map(({ name, said }) => `${name} ${said}`))}: one floor.`.replace(/^./, (c) =>
      c.toUpperCase(),
    ),
    sizes: on.sizes,
  }
}
