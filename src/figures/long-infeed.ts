/**
 * The infeed drawn long: a cone leads from the short infeed of the section to a rule with two edges, the dial above and the across below. Over the
 * rule stands the force of each pass; on it the gates, and two cursors, dial and slot.
 */
import type { Design } from '../design.ts'
import { figure } from '../spec/figures.ts'
import { inch } from '../standards/inch.ts'
import type { Corner, Point } from '../solid/outline.ts'
import { gatesOf, lagAt, lastInfeed, type Pass, passesOf, zeroOf } from './cut.ts'
import { type Figure, isNarrow, type Run, type Target } from './figure.ts'
import { newtons, rounder } from './scales.ts'
import { bare, listed, whole } from './saying.ts'
import { type Box, chain, lengthOfRuns, meet, type Sketch, sketch } from './sketch.ts'
import { stageOf } from './stage.ts'

/** Where the cursors stand: the dial's infeed, mm, and which lane. */
export interface Cursor {
  readonly infeed: number
  readonly lane?: number
  /** No section stands above: no cone leads to it. */
  readonly alone?: true
}

interface Rule {
  readonly design: Design
  readonly on: Sketch
  readonly target: Target
  readonly lane: number
  readonly touch: number
  readonly whole: number
  readonly passes: readonly Pass[]
  readonly left: number
  readonly right: number
  /** x in the figure of an infeed, mm. */
  readonly x: (infeed: number) => number
  readonly top: number
  readonly middle: number
  readonly bottom: number
  readonly roof: number
}

/** What the lower edge reads: what is measured of this job, by infeed. */
interface Lower {
  readonly of: string
  readonly name: string
  readonly times: 1 | 2
  /** At no infeed, mm. */
  readonly zero: number
  readonly least: number
  readonly most: number
}

/** Nothing where nothing can be measured on the way: the corners of a socket, a slit. */
const lowerOf = (design: Design): Lower | undefined => {
  const { plan, section, measuring } = design
  const { lower, upper } = section.acrossLimits
  const touch = zeroOf(design)
  const radius = section.boreRadius
  switch (plan?.gateBy ?? (section.kind === 'slit' || section.kind === 'socket' ? 'nothing' : 'across')) {
    case 'across':
      return { of: 'section.acrossLimits', name: 'across', times: 1, zero: radius + touch, least: lower, most: upper }
    case 'floor to floor': {
      const { least, most } = measuring.floorToFloor ?? { least: 2 * (lower - radius), most: 2 * (upper - radius) }
      return { of: 'measuring.floorToFloor', name: 'floor to floor', times: 2, zero: 2 * touch, least, most }
    }
    case 'plug and blocks': {
      const { lower: least, upper: most } = section.crownDepthLimits
      return { of: 'section.crownDepth', name: 'crown depth', times: 1, zero: touch - radius, least, most }
    }
    case 'nothing':
      return undefined
  }
}

/** What it reads at an infeed, and the infeed at which it reads so. */
const readAt = ({ zero, times }: Lower, infeed: number): number => zero + times * infeed
const infeedAt = ({ zero, times }: Lower, reading: number): number => (reading - zero) / times

/** Numbers along an edge of the rule: a round step with room for its figures, a tick for each fifth or half of it. */
const ticksOf = (from: number, to: number, perUnit: number, label: number, em: number) => {
  const step = rounder((label + 0.9 * em) / perUnit)
  const fine = [10, 5, 2].map((parts) => step / parts).find((one) => one * perUnit >= 0.42 * em) ?? step
  const at = (one: number): number[] => {
    const first = Math.ceil(from / one - 1e-6)
    return Array.from({ length: Math.max(0, Math.floor(to / one + 1e-6) - first + 1) }, (_, i) => (first + i) * one)
  }
  return { step, labels: at(step), ticks: at(fine), half: step / 2 }
}

const decimalsFor = (step: number): number => {
  for (let decimals = 0; decimals < 5; decimals++)
    if (Math.abs(Math.round(step * 10 ** decimals) - step * 10 ** decimals) < 1e-6) return decimals
  return 5
}

const edge = (rule: Rule, which: 'dial' | Lower): void => {
  const { design, on, left, right, x, top, middle, bottom } = rule
  const { em } = on
  const { spec, asked } = design
  const unit = spec.units === 'mm' ? 1 : inch
  const times = which === 'dial' ? (asked?.dial.reads === 'diameter' ? 2 : 1) : which.times
  const offset = which === 'dial' ? 0 : which.zero / which.times
  const perUnit = ((x(1) - x(0)) * unit) / times
  const value = (at: number): number => (((at - x(0)) / (x(1) - x(0)) + offset) * times) / unit
  const x_ = (reading: number): number => x((reading * unit) / times - offset)
  const sample = value(right)
  const size = 0.93 * em
  const longest = lengthOfRuns([{ role: 'word', text: `${sample.toFixed(spec.units === 'mm' ? 2 : 3)}` }], size)
  const { step, labels, ticks } = ticksOf(
    Math.max(value(left), which === 'dial' ? 0 : -Infinity),
    value(right),
    perUnit,
    longest,
    em,
  )
  const decimals = decimalsFor(step)
  const [from, down] = which === 'dial' ? [top, 1] : [bottom, -1]
  for (const tick of ticks) {
    const at = x_(tick)
    if (at < left + 0.1 * em || at > right - 0.1 * em) continue
    const isLabel = Math.abs(tick / step - Math.round(tick / step)) < 1e-6
    const isHalf = Math.abs((2 * tick) / step - Math.round((2 * tick) / step)) < 1e-6
    on.line('tick', chain([at, from], [at, from + down * (isLabel ? 0.5 : isHalf ? 0.38 : 0.26) * em]))
  }
  const go = which === 'dial' ? undefined : goBox(rule, which)
  const baseline = which === 'dial' ? (top + middle) / 2 + 0.62 * em : (middle + bottom) / 2 + 0.1 * em
  for (const label of labels) {
    const at = x_(label)
    const text = Math.abs(label) < 1e-9 ? '0' : label.toFixed(decimals)
    const run: Run[] = [{ role: 'word', text }]
    const half = lengthOfRuns(run, size) / 2
    if (at - half < left + 0.15 * em || at + half > right - 0.15 * em) continue
    const box: Box = { left: at - half, right: at + half, top: baseline - size, bottom: baseline }
    if (go && meet(box, go, 0.15 * em)) continue
    on.words([at, baseline], run, { anchor: 'middle', size })
  }
}

const goBox = ({ x, middle, bottom, right }: Rule, lower: Lower): Box | undefined => {
  const [from, to] = [x(infeedAt(lower, lower.least)), Math.min(right, x(infeedAt(lower, lower.most)))]
  return to - from > 0.3 ? { left: from, right: to, top: middle, bottom } : undefined
}

const forces = (rule: Rule, until: number): void => {
  const { on, passes, x, top, roof, right, design } = rule
  const { em } = on
  const most = Math.max(0, ...passes.map(({ force }) => force))
  if (most <= 0) return
  const { step, said } = newtons(most, design.spec.units)
  const y = (force: number): number => top - ((top - roof) * force) / most
  for (let force = step; force <= most + 1e-6; force += step)
    on.line('dots', chain([x(0), y(force)], [right, y(force)]))
  const steps = (part: readonly Pass[], start: number): Corner[] => {
    let from = start
    return part.flatMap(({ to, force }) => {
      const pair = chain([x(from), y(force)], [x(to), y(force)])
      from = to
      return [...pair]
    })
  }
  const done = passes.filter(({ to }) => to <= until + 1e-6)
  const left = passes.slice(done.length)
  const reached = done.at(-1)?.to ?? 0
  const closed = (path: readonly Corner[], from: number): readonly Corner[] => {
    const end = path.at(-1)
    return end ? [{ at: [x(from), top] }, ...path, { at: [end.at[0], top] }] : []
  }
  if (done.length > 0) on.area('force-done', [closed(steps(done, 0), 0)], 'loads.cuttingForce')
  if (left.length > 0) on.area('force', [closed(steps(left, reached), reached)], 'loads.cuttingForce')
  const outline = closed(steps(passes, 0), 0)
  on.line('thin', outline.slice(0, -1), 'loads.cuttingForce')
  const end = outline.at(-1)
  const before = outline.at(-2)
  if (end && before) on.line('thin', [before, end], 'loads.cuttingForce')
  // The scale stands at the right, as many of its steps as there is room for.
  let lowest = Infinity
  for (let n = Math.floor(most / step + 1e-6); n >= 1; n--) {
    const at = y(n * step)
    if (lowest - at < 0 || (lowest !== Infinity && at - lowest < 1.05 * em)) continue
    on.words([rule.target.width - 0.1 * em, at + 0.3 * em], [{ role: 'note', text: said(n * step) }], {
      anchor: 'end',
      size: 0.86 * em,
    })
    lowest = at
  }
}

const gates = (rule: Rule, until: number): void => {
  const { on, design, x, top, lane } = rule
  const { em } = on
  for (const { infeed } of gatesOf(design, lane)) {
    const at = x(infeed)
    const wedge: readonly Corner[] = chain(
      [at - 0.38 * em, top - 0.66 * em],
      [at + 0.38 * em, top - 0.66 * em],
      [at, top],
    )
    if (infeed <= until + 1e-6) on.area('ink', [wedge], 'plan.cuts')
    else on.area('void', [wedge], 'plan.cuts')
    on.line('thin', wedge, 'plan.cuts', true)
  }
}

/** A flag on a cursor, kept within the frame. */
const flag = (rule: Rule, at: number, y: number, text: string, of: string): void => {
  const { on, target } = rule
  const { em } = on
  const runs: Run[] = [{ role: 'flag', text }]
  const half = lengthOfRuns(runs, 0.95 * em) / 2 + 0.4 * em
  const middle = Math.min(Math.max(at, half + 0.05 * em), target.width - half - 0.05 * em)
  on.area(
    'flag',
    [chain([middle - half, y], [middle + half, y], [middle + half, y + 1.5 * em], [middle - half, y + 1.5 * em])],
    of,
  )
  on.words([middle, y + 1.08 * em], runs, { anchor: 'middle', size: 0.95 * em, of })
}

/** `at` left out: the rule of the whole cut without cursors, as it is printed. */
export const longInfeed = (design: Design, target: Target, at?: Cursor): Figure => {
  const { em, width } = target
  const { section } = design
  const on = sketch(target)
  const narrow = isNarrow(target)
  const stage = stageOf(design, target)
  const lane = at?.lane ?? 0
  const touch = zeroOf(design)
  const infeed = section.floor - touch
  const passes = passesOf(design, lane)
  const most = Math.max(0, ...passes.map(({ force }) => force))
  const scaleWidth =
    most > 0 ? lengthOfRuns([{ role: 'note', text: newtons(most, design.spec.units).widest }], 0.86 * em) + 0.4 * em : 0
  const left = 0.1 * em
  const right = width - 0.1 * em - Math.max(scaleWidth, 0)
  const lower = lowerOf(design)
  const span = Math.max(infeed, lower ? infeedAt(lower, lower.most) : 0, lastInfeed(design)) * 1.03
  const start = left + (narrow ? 1.1 : 1.6) * em
  const perMm = (right - 0.4 * em - start) / span
  const x = (one: number): number => start + one * perMm
  const cone = at?.alone ? 0.7 * em : at ? (narrow ? 2.2 : 3.4) * em : 0
  const flagRoom = at ? 0.9 * em : 0
  const roof = cone + flagRoom + 1.5 * em
  const top = roof + (most > 0 ? (narrow ? 3.6 : 4.4) * em : 1 * em)
  const middle = top + 1.75 * em
  const bottom = lower ? middle + 1.75 * em : middle
  const rule: Rule = {
    design,
    on,
    target,
    lane,
    touch,
    whole: infeed,
    passes,
    left,
    right,
    x,
    top,
    middle,
    bottom,
    roof,
  }
  const until = at ? at.infeed : -1
  if (at && !at.alone) drawCone(rule, stage.origin[0], stage.scale, cone)
  forces(rule, until)
  notes(rule, most, roof, narrow)
  on.area('rule', [chain([left, top], [right, top], [right, bottom], [left, bottom])])
  const go = lower && goBox(rule, lower)
  if (go) {
    const path = chain([go.left, go.top], [go.right, go.top], [go.right, go.bottom], [go.left, go.bottom])
    on.area('go', [path], lower?.of)
  }
  edge(rule, 'dial')
  if (lower) edge(rule, lower)
  if (go) {
    const path = chain([go.left, go.top], [go.right, go.top], [go.right, go.bottom], [go.left, go.bottom])
    on.line('edge', path, lower?.of, true)
    const wide = go.right - go.left
    const size = wide > 1.5 * em ? em : 0.76 * em
    if (wide > 1.2 * em)
      on.words([(go.left + go.right) / 2, (middle + bottom) / 2 + 0.3 * em], [{ role: 'name', text: 'go' }], {
        anchor: 'middle',
        size,
        of: lower?.of,
      })
  }
  on.line('edge', chain([left, top], [right, top], [right, bottom], [left, bottom]), undefined, true)
  if (lower) on.line('edge', chain([left, middle], [right, middle]))
  gates(rule, until)
  const shown = at ? cursors(rule, at, cone, lower) : undefined
  const height = captions(rule, bottom + (at ? 1.9 : 0.2) * em, go, lower)
  on.say({
    of: 'section.infeed',
    name: 'infeed',
    said: whole(design, infeed),
    mm: infeed,
    span: [
      [x(0), top],
      [x(infeed), top],
    ],
  })
  if (lower)
    on.say({
      of: lower.of,
      name: `${lower.name} within limits`,
      said:
        lower.least < lower.most
          ? `${bare(design, lower.least)} to ${whole(design, lower.most)}`
          : whole(design, lower.least),
      mm: (lower.most - lower.least) / lower.times,
      ...(go &&
        go.right < right && {
          span: [
            [go.left, bottom],
            [go.right, bottom],
          ] as const,
        }),
    })
  for (const gate of gatesOf(design, lane))
    on.say({
      of: 'plan.cuts',
      name: 'gate',
      said: `dial ${dialReads(design, gate.infeed)}${lower?.of === 'section.acrossLimits' ? `, across ${whole(design, gate.expected ?? gate.byDial)}` : ''}`,
      mm: gate.infeed,
      span: [
        [x(0), top],
        [x(gate.infeed), top],
      ],
    })
  return {
    name: 'long-infeed',
    width,
    height,
    em,
    scale: perMm,
    marks: on.marks,
    title: `The infeed drawn long: the dial${lower ? ` above, ${lower.name} below` : ''}`,
    says: `${shown ?? `From first touch to the floor, ${whole(design, infeed)} in ${passes.length} passes`}${most > 0 ? `; at most ${newtons(most, design.spec.units).exact}` : ''}; ${listed(on.sizes.slice(0, 2).map(({ name, said }) => `${name} ${said}`))}.`,
    sizes: on.sizes,
  }
}

/** What the dial reads at an infeed, in the job's unit. */
const dialReads = ({ asked, spec }: Design, infeed: number): string => {
  const reading = asked?.dial.reads === 'diameter' ? 2 * infeed : infeed
  return spec.units === 'mm' ? reading.toFixed(2) : (reading / inch).toFixed(3)
}

const drawCone = ({ on, x, touch, design, whole: infeed }: Rule, origin: number, scale: number, foot: number): void => {
  const [a, b]: [Point, Point] = [
    [origin + touch * scale, 0],
    [origin + design.section.floor * scale, 0],
  ]
  const [c, d]: [Point, Point] = [
    [x(infeed), foot],
    [x(0), foot],
  ]
  on.area('cone', [chain(a, b, c, d)])
  on.line('leader', chain(a, d))
  on.line('leader', chain(b, c))
  const times = Math.round((c[0] - d[0]) / (b[0] - a[0]))
  const runs: Run[] = [{ role: 'mark', text: times > 1 ? `the infeed, ${inWords(times)} times as long` : 'the infeed' }]
  const room = Math.min(a[0], d[0] + (a[0] - d[0]) * 0.62)
  if (lengthOfRuns(runs, on.em) < room - 0.5 * on.em) on.words([0.1 * on.em, 0.95 * on.em], runs, {})
}

const inWords = (count: number): string =>
  ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'][count] ??
  String(count)

/** What the shape of the force says: where the crown is gone. */
const notes = ({ on, passes, x, design, target }: Rule, most: number, roof: number, narrow: boolean): void => {
  if (most <= 0 || narrow) return
  const full = passes.find(({ force }) => force >= 0.97 * most)
  const { plan } = design
  // Where the table says it too: the slot stands behind the dial. On a V there is no such place.
  if (!full || !plan || plan.dial.crown <= 0) return
  const at = Math.max(full.to, plan.dial.crown / plan.dial.perInfeed)
  const runs: Run[] = [{ role: 'note', text: 'crown gone, full load' }]
  const long = lengthOfRuns(runs, 0.9 * on.em)
  const from = Math.min(Math.max(x(at) - long / 3, 0.2 * on.em), target.width - long - 4 * on.em)
  if (from > 0) on.words([from, roof - 0.4 * on.em], runs, { size: 0.9 * on.em })
}

const cursors = (rule: Rule, at: Cursor, cone: number, lower: Lower | undefined): string => {
  const { design, on, x, middle, bottom, lane, passes } = rule
  const infeed = Math.max(at.infeed, 0)
  const lag = lagAt(design, lane, infeed, passes)
  const slot = infeed - lag
  on.line('dial', chain([x(infeed), cone + 0.9 * on.em], [x(infeed), middle]), 'cut.dial')
  flag(rule, x(infeed), cone - 0.6 * on.em, `dial ${dialReads(design, infeed)}`, 'cut.dial')
  on.say({
    of: 'cut.dial',
    name: 'dial',
    said: dialReads(design, infeed),
    mm: infeed,
    span: [
      [x(0), middle],
      [x(infeed), middle],
    ],
  })
  on.say({
    of: 'cut.lag',
    name: 'slot behind the dial',
    said: whole(design, lag),
    mm: lag,
    span: [
      [x(slot), middle],
      [x(infeed), middle],
    ],
  })
  const behind = lag < -0.0005 ? `${whole(design, -lag)} ahead of` : `${whole(design, lag)} behind`
  const says = `Dial ${dialReads(design, infeed)}: the slot stands ${behind} it`
  if (!lower) return says
  const now = readAt(lower, slot)
  const nowSaid = design.spec.units === 'mm' ? now.toFixed(2) : (now / inch).toFixed(3)
  on.line('dial', chain([x(slot), middle], [x(slot), bottom + 0.4 * on.em]), 'cut.across')
  flag(rule, x(slot), bottom + 0.4 * on.em, `${lower.name} ${nowSaid}`, 'cut.across')
  on.say({ of: 'cut.across', name: `${lower.name} now`, said: figure(now, design.spec.units), mm: now })
  return `${says}, ${lower.name} ${whole(design, now)}`
}

/** What the edges are, under the rule; kept off the slot's flag. */
const captions = (
  { on, left, right, design }: Rule,
  y: number,
  go: Box | undefined,
  edge: Lower | undefined,
): number => {
  const { em } = on
  const size = 0.9 * em
  const first: Run[] = [{ role: 'note', text: edge ? 'upper edge: the dial' : 'the dial' }]
  const room = right - left
  const apart = lengthOfRuns(first, size) + 1.5 * em
  const baseline = y + 1.05 * em
  on.words([left, baseline], first, { size })
  if (!edge) return baseline + 0.35 * em
  const { least, most } = edge
  const limits = go && least < most ? `; go, ${bare(design, least)} to ${bare(design, most)}` : ''
  const second: Run[] = [{ role: 'note', text: `lower edge: ${edge.name}${limits}` }]
  const short: Run[] = [{ role: 'note', text: `lower edge: ${edge.name}` }]
  if (apart + lengthOfRuns(second, size) <= room) {
    on.words([right, baseline], second, { anchor: 'end', size })
    return baseline + 0.35 * em
  }
  if (apart + lengthOfRuns(short, size) <= room) on.words([right, baseline], short, { anchor: 'end', size })
  else {
    on.words([left, baseline + 1.3 * em], short, { size })
    return baseline + 1.65 * em
  }
  return baseline + 0.35 * em
}
