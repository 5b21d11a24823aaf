import type { Design } from '../design.ts'
import type { Size } from '../fits/size.ts'
import { expectedOf, measuredAs } from '../plan/at-gate.ts'
import { figure, fraction, inFull } from '../spec/figures.ts'
import type { Units } from '../spec/spec.ts'
import { poundForce } from '../standards/inch.ts'
import type { Row } from './lines.ts'

/** The sizes of one part, for reading. */
export interface SizeTable {
  readonly heading: string
  /** The rows name their own units. */
  readonly unitless?: boolean
  readonly rows: readonly Row[]
}

/** Every part's sizes in the job's units, inch ones with their fraction where they have one, drills by name. */
export const sizesOf = (design: Design): readonly SizeTable[] => {
  const says = sayingIn(design.spec.units)
  return [
    sectionSizes(design, says),
    ...(design.bar ? [barSizes(design.bar, says)] : []),
    ...(design.groundBar ? [groundSizes(design.groundBar, says)] : []),
    ...(design.bit ? [bitSizes(design.bit, says)] : []),
    ...(design.bushing ? [bushingSizes(design.bushing, design.pusher, says)] : []),
    // A job that will not go is not to be cut: no reading is given for it.
    ...(design.plan && design.verdict !== 'fail' ? [planSizes(design.plan, says)] : []),
    ...forceTables(design, says),
  ]
}

/** Forces, in the units that a shop of those lengths reads: N and N m, or lbf and lbf in. */
const forceTables = ({ loads, pressLoads, keyLoads, plan }: Design, says: Saying): readonly SizeTable[] => {
  const inches = says.units === 'in'
  const force = (name: string, newtons: number, remark?: string): Row =>
    says.word(
      name,
      threeFigures(inches ? newtons / poundForce : newtons),
      [inches ? 'lbf' : 'N', remark].filter((part) => part !== undefined).join(', '),
    )
  const torque = (name: string, newtonMm: number, remark: string): Row =>
    says.word(
      name,
      threeFigures(inches ? newtonMm / 25.4 / poundForce : newtonMm / 1000),
      `${inches ? 'lbf in' : 'N m'}, ${remark}`,
    )
  const rows = [
    ...(loads
      ? [
          force(
            'cutting force',
            loads.cuttingForce,
            `with a dull edge ${threeFigures(inches ? loads.cuttingForceMost / poundForce : loads.cuttingForceMost)}`,
          ),
          force('thrust', loads.thrust.most),
          {
            ...says.size('lag', { nominal: loads.lag.most, lower: loads.lag.least, upper: loads.lag.most }),
            remark: `${says.units}: how much shallower than the dial a pass cuts`,
          },
          ...(plan ? [] : [says.word('spring passes', `${loads.springPasses}`)]),
        ]
      : []),
    ...(pressLoads
      ? [
          force('press force', pressLoads.force),
          ...(pressLoads.capacity === undefined ? [] : [force('press gives', pressLoads.capacity)]),
          ...(pressLoads.pull === undefined ? [] : [force('pull on the lever', pressLoads.pull)]),
        ]
      : []),
    ...(keyLoads
      ? [
          torque('key in shear', keyLoads.torqueShear, 'allowed torque'),
          torque('key on the hub', keyLoads.torqueBearingHub, 'allowed torque'),
          torque('key on the shaft', keyLoads.torqueBearingShaft, 'allowed torque'),
        ]
      : []),
  ]
  return rows.length === 0 ? [] : [{ heading: 'forces', rows, unitless: true }]
}

/** Forces are known to two figures at best. */
const threeFigures = (value: number): string => {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(value, 1))) - 2)
  return `${Math.round(value / step) * step}`
}

/** How rows are written in one system of units. */
interface Saying {
  readonly units: Units
  readonly number: (mm: number) => string
  /** With every decimal that it has: what is taken in a pass. */
  readonly inFull: (mm: number) => string
  /** Bought by its fraction, in inch jobs, where it has one. */
  readonly stock: (mm: number) => string
  /** A plain length. */
  readonly length: (name: string, mm: number, remark?: string) => Row
  /** A size with its limits, a decimal finer. */
  readonly size: (name: string, size: Size, remark?: string) => Row
  readonly word: (name: string, word: string, remark?: string) => Row
}

export const sayingIn = (units: Units): Saying => {
  // What cannot be worked out is not written as a number.
  const number = (mm: number): string => (Number.isFinite(mm) ? figure(mm, units, { unit: false }) : 'none')
  const fine = (mm: number, lean?: 'up' | 'down'): string =>
    !Number.isFinite(mm) ? 'none' : figure(mm, units, { unit: false, fit: true, ...(lean && { lean }) })
  const beside = (mm: number, remark?: string): { remark?: string } => {
    const parts = units === 'in' && Number.isFinite(mm) ? fraction(mm) : undefined
    const all = [parts?.includes('/') && !remark?.startsWith(parts) ? parts : undefined, remark].filter(
      (part) => part !== undefined,
    )
    return all.length > 0 ? { remark: all.join(', ') } : {}
  }
  // A size that lies within its limits is printed within them.
  const within = ({ nominal, lower, upper }: Size): string => {
    const [least, most] = [fine(lower, 'up'), fine(upper, 'down')]
    const said = fine(nominal)
    if (nominal < lower - 1e-9 || nominal > upper + 1e-9 || lower === upper || Number(least) > Number(most)) return said
    return Number(said) < Number(least) ? least : Number(said) > Number(most) ? most : said
  }
  return {
    units,
    number,
    inFull: (mm) => inFull(mm, units),
    stock: (mm) => (units === 'in' && fraction(mm)) || number(mm),
    length: (name, mm, remark) => ({ name, value: number(mm), ...beside(mm, remark) }),
    size: (name, size, remark) => ({
      name,
      value: within(size),
      // Limits are rounded inwards, so that what is printed never allows more than what holds.
      ...(size.lower === size.upper || !Number.isFinite(size.upper - size.lower)
        ? {}
        : { limits: [fine(size.lower, 'up'), fine(size.upper, 'down')] as const }),
      ...beside(size.nominal, remark),
    }),
    word: (name, word, remark) => ({ name, value: word, ...(remark === undefined ? {} : { remark }) }),
  }
}

const cutNames: Readonly<Record<Design['section']['kind'], string>> = {
  keyway: 'keyway',
  spline: 'splines',
  socket: 'socket',
  slit: 'slits',
  groove: 'oil groove',
}

/** Each feature has the sizes that it is measured by, and no other. */
const sectionSizes = ({ section, spec, measuring, plan }: Design, says: Saying): SizeTable => {
  const floors = measuring.floorToFloor
  const across: readonly Row[] = section.socket
    ? [says.size('across flats', section.socket.acrossFlats)]
    : section.slit
      ? [says.length('wall', section.slit.wall, 'cut right through')]
      : floors && !measuring.toBore
        ? [
            says.size(
              'floor to floor',
              { nominal: floors.middle, lower: floors.least, upper: floors.most },
              'slots that stand opposite',
            ),
          ]
        : [says.size('across', section.acrossLimits, 'floor to opposite bore wall')]
  const infeed = section.slit ? (plan?.lanes[0]?.infeed ?? section.infeed) : section.infeed
  return {
    heading: `bore and ${cutNames[section.kind]}`,
    rows: [
      spec.bore.measured === undefined
        ? says.size('bore', section.bore, spec.bore.tolerance)
        : says.size(
            'bore',
            { nominal: spec.bore.measured, lower: spec.bore.measured, upper: spec.bore.measured },
            `as measured; ${says.number(spec.bore.diameter.nominal)} ${spec.bore.tolerance} is asked for`,
          ),
      says.length('length', spec.bore.length),
      ...(section.socket ? [] : [says.size('width', section.widthLimits, section.key?.designation)]),
      ...across,
      ...(section.slit
        ? []
        : [says.size('depth at the crown', section.crownDepthLimits, 'the crown is cut away: not for the dial')]),
      ...(section.kind === 'keyway' || section.kind === 'spline'
        ? [says.size('depth at the side', section.sideDepthLimits)]
        : []),
      says.length(
        'infeed from first touch',
        infeed,
        plan && Math.abs(plan.dial.perInfeed - 1) > 1e-9
          ? `the dial goes ${says.number(infeed * plan.dial.perInfeed)}`
          : 'what the dial does',
      ),
      ...(section.land === undefined ? [] : [says.length('least land', section.land)]),
    ],
  }
}

const barSizes = (bar: NonNullable<Design['bar']>, says: Saying): SizeTable => ({
  heading: 'cutter bar',
  rows: [
    says.size('diameter', bar.diameter, `may be up to ${says.number(bar.diameterMax)}`),
    says.length(
      'projection',
      bar.projection,
      bar.projectionMin <= bar.projectionMax
        ? `may be ${says.number(bar.projectionMin)} to ${says.number(bar.projectionMax)}`
        : 'there is none that both enters and reaches',
    ),
    says.length('over bar and nose', bar.overBarAndNose, 'what a caliper reads'),
    says.size(
      'cross hole',
      bar.crossHole,
      `drill ${bar.crossHoleDrill}, for ${bar.bit.shape} ${says.stock(bar.bit.size)}`,
    ),
    says.length(bar.form === 'end screw' ? 'hole to tapped end' : 'hole to end', bar.holeToEnd),
    ...stageSizes(bar, says),
    ...(bar.form === 'end screw' ? [] : [says.word('screw', 'in the wall beside the hole')]),
    ...(bar.form === 'inclined' ? [says.word('bit leans', degrees(bar.incline), 'its nose leading')] : []),
    says.word(
      'set screw',
      bar.screw.thread,
      `${says.stock(bar.screw.length)} long, tap drill ${bar.screw.tapDrill.name}`,
    ),
    says.length('tap depth', bar.tapDepth),
    says.length('body length', bar.bodyLength),
    ...(bar.shouldered ? [says.size('shank', bar.shank)] : []),
    says.length('over all', bar.overall),
    says.length('gap at the back', bar.gaps.back),
    says.length('gap at the front', bar.gaps.front, `at the ${bar.gaps.frontAt}`),
  ],
})

const stageSizes = ({ stages }: NonNullable<Design['bar']>, says: Saying): SizeTable['rows'] =>
  stages.length === 1
    ? []
    : stages.map(({ projection, from, to }, stage) =>
        says.length(
          `projection, stage ${stage + 1}`,
          projection,
          `for the infeed from ${says.number(from - (stages[0]?.from ?? 0))} to ${says.number(to - (stages[0]?.from ?? 0))}`,
        ),
      )

const groundSizes = (bar: NonNullable<Design['groundBar']>, says: Saying): SizeTable => ({
  heading: 'one-piece bar',
  rows: [
    says.size('blank', bar.blank, 'turned on one axis with the shank'),
    says.size('neck', bar.diameter, `may be up to ${says.number(bar.diameterMax)}`),
    says.length('set over', bar.eccentricity, 'from the blank’s axis, away from the nose'),
    says.size('over back and nose', bar.backToNose, `the blank gives ${says.number(bar.backToNoseMost)}`),
    says.length('projection', bar.projection, 'ground, not set'),
    says.size('nose width', bar.noseTolerance, bar.lanes.length > 1 ? `${bar.lanes.length} lanes` : undefined),
    says.length('head length', bar.headLength),
    says.length('neck length', bar.neckLength),
    says.size('shank', bar.shank),
    says.length('over all', bar.overall),
    says.word('rake', degrees(bar.rake)),
    says.word('end relief', degrees(bar.endRelief)),
  ],
})

const bitSizes = (bit: NonNullable<Design['bit']>, says: Saying): SizeTable => ({
  heading: 'tool bit',
  rows: [
    says.length('blank', bit.size, bit.shape),
    says.size('nose width', bit.noseWidth, bit.lanes > 1 ? `${bit.lanes} lanes` : undefined),
    says.length('nose length', bit.noseLength, `at least ${says.number(bit.noseLengthMin)}`),
    says.length('corner radius', bit.cornerRadius),
    says.length('bit length', bit.length, `may be ${says.number(bit.lengthMin)} to ${says.number(bit.lengthMax)}`),
    says.word('rake', degrees(bit.rake)),
    says.word('end relief', degrees(bit.endRelief)),
    says.word('side relief', degrees(bit.sideRelief)),
    says.word('back taper', degrees(bit.backTaper), 'each side, as set at the grinder'),
  ],
})

const bushingSizes = (bushing: NonNullable<Design['bushing']>, pusher: Design['pusher'], says: Saying): SizeTable => ({
  heading: 'guide bushing and shims',
  rows: [
    says.size('outside', bushing.outside),
    says.length('length under the collar', bushing.length),
    says.length('collar', bushing.collarDiameter, `${says.number(bushing.collarThickness)} thick`),
    says.size('slot width', bushing.slotWidth),
    says.size('back wall', bushing.backWall, 'back of the outside to the slot floor: mike it'),
    ...(bushing.locating
      ? [
          says.length(
            'second slot',
            bushing.locating.overBack,
            `over the back; ${says.number(bushing.locating.width.nominal)} wide, ${bushing.locating.round.map((angle) => degrees(angle)).join(', ')} round`,
          ),
          says.length(
            'locating key',
            bushing.locating.key.height,
            `high, ${says.number(bushing.locating.key.length)} long: from keyway to keyway`,
          ),
        ]
      : []),
    ...bushing.shims.map((thickness, at) => ({
      ...says.size(`shim ${at + 1}`, { nominal: thickness, lower: thickness, upper: thickness }),
    })),
    ...bushing.passes.map(({ shims, over }, at) => ({
      ...says.size(`pass ${at + 1}, over all`, { nominal: over, lower: over, upper: over }),
      remark: shims === 0 ? 'no shim' : `${shims} shim${shims === 1 ? '' : 's'} in`,
    })),
    says.length('stroke', bushing.stroke),
    says.length('room below', bushing.below, `${says.number(bushing.fallsFree)} and the broach falls free`),
    says.length(
      'daylight',
      bushing.tableToRam,
      bushing.raised > 0 ? `on a spacer ${says.number(bushing.raised)} high` : undefined,
    ),
    ...(pusher
      ? [
          says.length(
            'pusher',
            pusher.length,
            `at least; ${says.number(pusher.width)} wide, ${says.number(pusher.height)} high at most`,
          ),
        ]
      : []),
  ],
})

/** Strokes, lanes and gates as the job card has them. */
const planSizes = (plan: NonNullable<Design['plan']>, says: Saying): SizeTable => {
  const slots = plan.keyways
  const strokes = plan.cuts.reduce((sum, cut) => sum + cut.passes.length, 0)
  const first = plan.cuts.filter(({ lane }) => lane === 0).flatMap(({ gates }) => gates)
  const what = measuredAs[plan.gateBy]
  const expected = (gate: (typeof first)[number]): string | undefined => {
    const at = expectedOf(gate, plan.gateBy)
    return what === undefined || at.expected === undefined ? undefined : `expect ${what} ${says.number(at.expected)}`
  }
  return {
    heading: 'passes with the bar',
    rows: [
      {
        ...says.word('infeed a pass', says.inFull(plan.infeedPerPass)),
        remark: `by the dial ${(plan.cuts[0]?.runs ?? []).map(({ by, to }) => `${says.inFull(by)} to ${says.inFull(to)}`).join(', then ')}`,
      },
      says.word(
        'strokes',
        String(strokes * slots),
        [
          slots > 1 ? `${strokes} a slot, ${slots} slots` : undefined,
          plan.target.springPasses > 0 ? `then ${plan.target.springPasses} spring passes` : undefined,
          `about ${Math.max(5, Math.round(plan.time.whole / 5) * 5)} minutes, measuring and all`,
        ]
          .filter((part) => part !== undefined)
          .join('; '),
      ),
      ...plan.lanes.map((lane, at) => ({
        ...says.size(plan.lanes.length === 1 ? 'infeed' : `lane ${at + 1}, infeed`, sharp(lane.infeed)),
        remark: lane.offset === 0 ? 'on centre' : `${says.number(lane.offset)} sideways`,
      })),
      ...first.map((gate, at) => {
        const remark = expected(gate)
        return {
          ...says.size(`gate ${at + 1}, dial to`, sharp(gate.reading)),
          ...(remark !== undefined && { remark }),
        }
      }),
      {
        ...says.size('left of it', sharp(leftAtTheEnd(plan))),
        remark: `added by what is measured; the dial reads ${plan.dial.reads}`,
      },
    ],
  }
}

/** What the dial still lacks after the last pass, in its own reading. */
const leftAtTheEnd = ({ lanes, dial, bores }: NonNullable<Design['plan']>): number =>
  bores.rows.length === 0 ? dial.left : Math.max(0, (lanes[0]?.infeed ?? 0) * dial.perInfeed - bores.reading)

const sharp = (mm: number): Size => ({ nominal: mm, lower: mm, upper: mm })
const degrees = (angle: number): string => `${Math.round(angle * 10) / 10}°`
