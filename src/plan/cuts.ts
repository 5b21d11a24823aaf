/** Every lane at every setting: its runs, its strokes, and the gates at which it is measured. All mm, N. */
import type { BarInBore, Section } from '../dimensions/types.ts'
import { figure } from '../spec/figures.ts'
import type { Units } from '../spec/spec.ts'
import { type Dial, downTo, readingAt, upTo, xAt } from './dial.ts'
import { type Edge, edgeOf } from './engaged.ts'
import { type EvenForce, evenPasses, evenUpTo } from './schedule.ts'
import type { Stops } from './stops.ts'
import type { Yielding } from './target.ts'
import type { Expected, Gate, LaneCut, Pass, ProjectionSetting, Run, Target } from './types.ts'

export interface Cutting {
  readonly units: Units
  readonly section: Section
  readonly bar: BarInBore
  readonly noseWidth: number
  /** Length of edge at which the planned infeed is meant. */
  readonly wholeEdge: number
  readonly dial: Dial
  readonly planned: number
  readonly exponent: number
  readonly yielding: Yielding | undefined
  readonly target: Target
  readonly stops: Stops
  /** Largest size between floors, where slots stand right opposite each other. */
  readonly floorToFloor?: number
  /** Diameter of a plug that fills the bore, where the wall opposite is cut away in part. */
  readonly plug?: number
}

/** How far across may lie from what is expected before something is wrong. Source: judgement. */
const drift = 0.08

/** The edges of the lanes, each where those before it stand at the floor. */
const edgesOf = ({ section, bar, noseWidth }: Cutting): readonly Edge[] => {
  const strips = bar.lanes.map(({ offset }) => [offset - noseWidth / 2, offset + noseWidth / 2] as const)
  return bar.lanes.map(({ offset }, at) => edgeOf(section, { width: noseWidth, offset, cut: strips.slice(0, at) }))
}

/** Settings of the projection, their ends on marks, toward shallow. */
export const settingsOf = (bar: BarInBore, dial: Dial, last: number): readonly ProjectionSetting[] => {
  const ends = bar.stages.map((stage, at) =>
    at === bar.stages.length - 1 ? last : Math.min(last, downTo(readingAt(dial, stage.to), dial.mark)),
  )
  return bar.stages.map(({ projection }, at) => ({
    projection,
    overBarAndNose: bar.overBarAndNose - bar.projection + projection,
    from: ends[at - 1] ?? 0,
    to: ends[at] ?? last,
  }))
}

/** Steps as read: coarse while only the corners cut, full, and light at the end. */
interface Steps {
  readonly coarseUpTo: number
  readonly coarse: number
  readonly full: number
  readonly lightFrom: number
  readonly light: number
}

const stepsOf = (cutting: Cutting, force: EvenForce, from: number, to: number): Steps => {
  const { dial, planned, target, stops } = cutting
  const full = Math.max(dial.finest, downTo(planned * dial.perInfeed, dial.finest))
  const coarse = 2 * full
  const x = xAt(dial, from)
  const bears = evenUpTo(force, x, Math.max(x, xAt(dial, to)), coarse / dial.perInfeed)
  const lightFrom = target.springPasses > 0 || stops.web ? (stops.edge ?? to) : to
  const borne = readingAt(dial, bears)
  return {
    coarseUpTo: borne >= lightFrom - 1e-9 ? lightFrom : from + downTo(borne - from, coarse),
    coarse,
    full,
    lightFrom,
    light: Math.max(dial.finest, downTo(full / 2, dial.finest)),
  }
}

/** From one stop to the next; a run's last pass may be shorter. */
const runsBetween = (steps: Steps, from: number, to: number): readonly Run[] => {
  const ends = [
    { to: Math.min(to, steps.coarseUpTo), by: steps.coarse },
    { to: Math.min(to, steps.lightFrom), by: steps.full },
    { to, by: steps.light },
  ]
  let at = from
  return ends.flatMap(({ to: end, by }) => {
    const passes = Math.ceil((end - at) / by - 1e-3)
    if (passes <= 0) return []
    at = end
    return [{ to: end, by, passes }]
  })
}

/** The runs of all gates, those that go on alike as one. */
const together = (gates: readonly Gate[]): readonly Run[] =>
  gates
    .flatMap((gate) => gate.runs)
    .reduce<readonly Run[]>((runs, run) => {
      const last = runs.at(-1)
      return last && Math.abs(last.by - run.by) < 1e-9
        ? [...runs.slice(0, -1), { ...run, passes: last.passes + run.passes }]
        : [...runs, run]
    }, [])

const passesOf = (cutting: Cutting, edge: Edge, from: number, runs: readonly Run[]): readonly Pass[] => {
  const { dial, yielding } = cutting
  let before = from
  return runs.flatMap((run) => {
    const start = before
    before = run.to
    return Array.from({ length: run.passes }, (_, n): Pass => {
      const reading = n === run.passes - 1 ? run.to : start + (n + 1) * run.by
      const chip = (reading - (n === 0 ? start : start + n * run.by)) / dial.perInfeed
      const x = xAt(dial, reading)
      const engaged = edge.engaged(x)
      if (!yielding) return { reading, x, chip, engaged }
      return { reading, x, chip, engaged, force: yielding.force(engaged, chip) }
    })
  })
}

/** Infeed of the last whole pass of these runs, the one before a shorter last one: what the bar gives follows slowly. */
const lastChip = (dial: Dial, from: number, runs: readonly Run[]): number => {
  const last = runs.at(-1)
  if (!last) return 0
  const start = runs.at(-2)?.to ?? from
  return Math.min(last.by, last.to - start) / dial.perInfeed
}

/** What the slot stands behind the dial after such passes; nothing is known of it without forces. */
const behind = ({ yielding }: Cutting, edge: Edge, x: number, chip: number, springPasses: number) => {
  if (!yielding) return undefined
  const force = yielding.force(edge.engaged(x), chip)
  const [least, most] = [yielding.least * force, yielding.most * force]
  if (springPasses === 0) return { least, most }
  return { least: Math.min(least, yielding.residual.least), most: Math.min(most, yielding.residual.most) }
}

const doesAt = (cutting: Cutting, kind: Gate['kind'], next: ProjectionSetting | undefined, offset: number): string => {
  const size = (mm: number) => figure(mm, cutting.units, { unit: false })
  if (kind === 'setting' && next)
    return `Bar out. Bit out to ${size(next.projection)}, ${size(next.overBarAndNose)} over bar and nose. Bar back in with the nose in the slot, touch the floor, set the dial anew.`
  if (kind === 'web')
    return 'Half the infeed from here: the web that is left snaps sideways. Leave one bridge until it is hardened.'
  if (kind === 'edge')
    return cutting.target.springPasses > 0
      ? 'Stone the edge. Light passes from here.'
      : 'Stone the edge. Full cuts to the end, no spring passes.'
  if (cutting.stops.web)
    return kind === 'last' ? 'Through. Look along it for what is left of the web.' : 'Look at the edge.'
  const where = offset === 0 ? 'Measure' : 'Measure on this side of the slot'
  return kind === 'last' ? `${where}, and add what is missing.` : `${where}, and go on if it lies between.`
}

/** x from which this lane cuts with all of its width. */
const wholeFrom = (cutting: Cutting, offset: number): number => {
  const { section, noseWidth, target } = cutting
  const nearest = Math.max(0, Math.abs(offset) - noseWidth / 2)
  return Math.min(target.x, Math.sqrt(Math.max(0, section.boreRadius ** 2 - nearest ** 2)))
}

/** `floors`: how many floors stand behind the dial by the lag; `upper`: nothing beyond it is let pass, unless the dial is beyond it. */
const expectedAt = (
  byDial: number,
  lags: { readonly least: number; readonly most: number } | undefined,
  floors: 1 | 2,
  upper: number,
): Expected => {
  const expected = lags && byDial - floors * lags.most
  return {
    byDial,
    ...(expected !== undefined && { expected }),
    least: (expected ?? byDial) - floors * drift,
    most: Math.min(byDial - floors * (lags?.least ?? 0) + floors * drift, Math.max(upper, byDial)),
  }
}

const gatesOf = (
  cutting: Cutting,
  edge: Edge,
  lane: { readonly offset: number },
  from: number,
  setting: ProjectionSetting,
  next: ProjectionSetting | undefined,
  steps: Steps,
): readonly Gate[] => {
  const { section, dial, stops, target } = cutting
  const kinds: { readonly reading: number; readonly kind: Gate['kind'] }[] = [
    ...stops.parts.map((reading) => ({ reading, kind: 'part' as const })),
    ...(stops.edge === undefined
      ? []
      : [{ reading: stops.edge, kind: stops.web ? ('web' as const) : ('edge' as const) }]),
    ...(next ? [{ reading: setting.to, kind: 'setting' as const }] : [{ reading: stops.last, kind: 'last' as const }]),
  ]
  const measurable = readingAt(dial, wholeFrom(cutting, lane.offset))
  const end = kinds.at(-1)
  const kept = kinds
    .filter(({ reading, kind }) => {
      if (kind === 'setting' || kind === 'last') return reading > from + 1e-9
      const near = kind === 'part' && end?.kind === 'setting' ? 4 * dial.mark : 1e-9
      return reading > from + 1e-9 && reading < setting.to - near && reading >= measurable - 1e-9
    })
    .toSorted((a, b) => a.reading - b.reading)
  return kept.map(({ reading, kind }, at) => {
    const before = kept[at - 1]?.reading ?? from
    const runs = runsBetween(steps, before, reading)
    const springPasses = kind === 'last' ? target.springPasses : 0
    const x = xAt(dial, reading)
    const byDial = section.boreRadius + x
    const lags = behind(cutting, edge, x, lastChip(dial, before, runs), springPasses)
    const across = expectedAt(byDial, lags, 1, section.acrossLimits.upper)
    const opposite = cutting.floorToFloor
    const plug = cutting.plug
    return {
      reading,
      x,
      runs,
      passes: runs.reduce((sum, run) => sum + run.passes, 0),
      springPasses,
      ...across,
      ...(opposite !== undefined && { floorToFloor: expectedAt(2 * x, lags, 2, opposite) }),
      ...(plug !== undefined && { overPlug: expectedAt(x - plug / 2, lags, 1, section.crownDepthLimits.upper) }),
      kind,
      does: doesAt(cutting, kind, next, lane.offset),
    }
  })
}

/** Setting by setting and in each lane by lane, in the order they are cut. */
export const cutsOf = (cutting: Cutting, settings: readonly ProjectionSetting[]): readonly LaneCut[] => {
  const { bar, dial, wholeEdge, planned, exponent, target } = cutting
  const edges = edgesOf(cutting)
  return settings.flatMap((setting, settingAt) =>
    bar.lanes.flatMap((lane, laneAt): readonly LaneCut[] => {
      const edge = edges[laneAt]
      if (!edge) return []
      const force: EvenForce = { edge, whole: wholeEdge, planned, exponent }
      const touch = readingAt(dial, lane.touchOff)
      // From the mark before its touch: the first stroke may take less.
      const from = Math.max(setting.from, downTo(touch, dial.finest))
      if (from >= setting.to - 1e-9) return []
      const next = settings[settingAt + 1]
      const steps = stepsOf(cutting, force, from, setting.to)
      const gates = gatesOf(cutting, edge, lane, from, setting, next, steps)
      return [
        {
          setting: settingAt,
          lane: laneAt,
          offset: lane.offset,
          from,
          to: setting.to,
          runs: together(gates),
          passes: gates.flatMap((gate, at) => passesOf(cutting, edge, gates[at - 1]?.reading ?? from, gate.runs)),
          gates,
          readout: evenPasses(
            force,
            Math.max(xAt(dial, setting.from), lane.touchOff),
            next ? xAt(dial, setting.to) : target.x,
          ),
        },
      ]
    }),
  )
}

/** Reading from which the whole nose cuts on the first lane, the lag counted: before it there is no floor to measure to. */
export const crownReading = (section: Section, dial: Dial, lag: number): number =>
  section.kind === 'groove' || section.kind === 'socket'
    ? 0
    : Math.max(0, upTo(readingAt(dial, section.boreRadius + Math.max(0, lag)), dial.mark))
