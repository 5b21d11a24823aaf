import { isUpright } from '../plan/upright.ts'
import type { Design } from '../design.ts'
import { expectedOf, measuredAs } from '../plan/at-gate.ts'
import type { Gate, LaneCut, Plan, Run } from '../plan/types.ts'
import { decimalsOf, figure, inFull, rounded } from '../spec/figures.ts'
import type { Units } from '../spec/spec.ts'
import { inch } from '../standards/inch.ts'

/** One thing to do at the machine. */
export interface Step {
  readonly does: string
  /** What stands small beside it: limits, or how many. */
  readonly aside?: string
  /** Something is measured here before going on. */
  readonly gate?: true
}

interface Saying {
  readonly size: (mm: number, fit?: boolean) => string
  /** What is taken in a pass, in every figure that it has. */
  readonly step: (mm: number) => string
  /** A reading with all the figures that the dial has. */
  readonly dial: (mm: number) => string
}

const saying = (units: Units): Saying => ({
  size: (mm, fit = false) => figure(mm, units, { unit: false, fit }),
  step: (mm) => inFull(mm, units),
  dial: (mm) => {
    const [own, least] = units === 'mm' ? [mm, 2] : [mm / inch, 3]
    return rounded(own, decimalsOf(own, least) ?? least + 1)
  },
})

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 'es'}`

const runsIn = (runs: readonly Run[], { step }: Saying): string =>
  runs
    .filter(({ passes }) => passes > 0)
    .map(({ passes, by }, at) => (at === 0 ? `${counted(passes, 'pass')} of ${step(by)}` : `${passes} of ${step(by)}`))
    .join(', then ')

const gateStep = (gate: Gate, by: Plan['gateBy'], say: Saying): Step => {
  const what = measuredAs[by]
  const { expected, least, most } = expectedOf(gate, by)
  const springs = gate.springPasses > 0 ? ` ${counted(gate.springPasses, 'spring pass')} without infeed.` : ''
  const expect =
    what === undefined || expected === undefined
      ? ''
      : ` ${what.charAt(0).toUpperCase()}${what.slice(1)}: expect ${say.size(expected)}.`
  return {
    does: `Cut to ${say.dial(gate.reading)} on the dial: ${runsIn(gate.runs, say)}.${springs}${expect} ${gate.does}`,
    ...(what !== undefined && { aside: `${say.size(least)} to ${say.size(most)}` }),
    gate: true,
  }
}

const laneSteps = (cut: LaneCut, at: number, design: Design, say: Saying): readonly Step[] => {
  const { plan } = design
  const bar = design.bar ?? design.groundBar
  const setting = plan?.settings[cut.setting]
  const before = plan?.cuts[at - 1]
  const moved = (bar?.lanes.length ?? 1) > 1 && before?.lane !== cut.lane
  return [
    ...(at > 0 && setting && before && before.setting !== cut.setting
      ? [
          {
            does: `Set the bit anew: over bar and nose ${say.size(setting.overBarAndNose)}. Touch the last floor; the dial goes on from what was measured.`,
          },
        ]
      : []),
    ...(moved
      ? [
          {
            does: `Lane ${cut.lane + 1} of ${bar?.lanes.length}: ${say.size(Math.abs(cut.offset))} ${isUpright(design.asked) ? `${cut.offset < 0 ? 'below' : 'above'} the middle, by shims or the post’s height screw` : `to ${cut.offset < 0 ? 'one side' : 'the other side'} of the middle`}.`,
          },
        ]
      : []),
    ...cut.gates.map((gate) => gateStep(gate, plan?.gateBy ?? 'across', say)),
  ]
}

const barSteps = (design: Design, say: Saying): readonly Step[] => {
  const { spec, asked, plan } = design
  const bar = design.bar ?? design.groundBar
  if (!bar || !plan || !asked) return []
  const { centring } = plan
  return [
    {
      does: 'Finish the bore, chamfer it, and measure it two ways at both ends.',
      ...(spec.bore.measured === undefined && { aside: 'tell it above' }),
    },
    {
      does:
        asked.machine === 'mill'
          ? 'Clamp the hub with its bore upright. Bar straight to the bore, and free below it.'
          : 'Pull the plug. Hold the spindle. Bar on centre height, straight to the bore.',
    },
    design.groundBar
      ? { does: `Measure over back and nose: ${say.size(design.groundBar.backToNose.nominal)}.` }
      : {
          does: `Set the bit: over bar and nose ${say.size(bar.overBarAndNose)}.`,
          aside: `± ${say.size(bar.setting)}`,
        },
    {
      does: centring
        ? `Find first touch at one corner of the nose, then at the other: the dial may differ by ${say.step(centring.differenceMost)}; else ${design.groundBar ? 'turn the bar' : isUpright(asked) ? 'raise or lower the bar' : 'move the bar sideways'}. Set the dial to 0.`
        : 'Find first touch on the middle of the slot to be. Set the dial to 0.',
      aside: 'dial to 0',
    },
    ...plan.cuts.flatMap((cut, at) => laneSteps(cut, at, design, say)),
  ]
}

const pressSteps = ({ bushing, bar, groundBar }: Design, say: Saying): readonly Step[] =>
  bushing && !bar && !groundBar
    ? [
        { does: 'Finish the bore, chamfer it, and measure it two ways at both ends.' },
        { does: 'Bushing in the bore, its slot where the keyway is to be, square under the ram. Oil on the broach.' },
        ...bushing.passes.map(
          ({ shims, over }): Step => ({
            does: `${shims === 0 ? 'No shim' : shims === 1 ? 'One shim' : `${shims} shims`}: measure over bushing, shims and last tooth, ${say.size(over)}. Then press it through.`,
            gate: true,
          }),
        ),
      ]
    : []

/** Limits of what is measured at the end: floor to floor where slots stand opposite, across flats of a socket, else across. */
const finished = ({ section, measuring }: Design): readonly [least: number, most: number] => {
  const { floorToFloor, toBore } = measuring
  if (section.socket) return [section.socket.acrossFlats.lower, section.socket.acrossFlats.upper]
  return floorToFloor && !toBore
    ? [floorToFloor.least, floorToFloor.most]
    : [section.acrossLimits.lower, section.acrossLimits.upper]
}

/** With the bar every slot to a gate before any goes deeper; under a press one after another. */
const turnedOn = ({ bar, groundBar, bushing }: Design, slots: number): string =>
  bar || groundBar
    ? `All ${slots} to a gate before any goes deeper: turn the work on, one way only, lock it, cut; then back to the first.`
    : bushing?.locating
      ? `The locating key into the keyway just cut, the bushing over it, and the next likewise: ${slots} in all.`
      : `Turn the bushing to the next scribed line, and cut the others the same: ${slots} in all.`

/** What is done at the machine, in order. Every number is the design's. */
export const stepsOf = (design: Design, units: Units): readonly Step[] => {
  const say = saying(units)
  const { section, plan, measuring } = design
  const [lower, upper] = finished(design)
  const slots = plan?.keyways ?? section.at.length
  const work = [...barSteps(design, say), ...pressSteps(design, say)]
  if (work.length === 0) return []
  return [
    ...work,
    ...(slots > 1 ? [{ does: turnedOn(design, slots) }] : []),
    {
      does: `Take the edges off with a file before a finger goes near. ${measuring?.key === true ? `Measure ${measuring.floorToFloor && !measuring.toBore ? 'floor to floor' : 'across'} at both ends, then try the key.` : 'Measure at both ends.'}`,
      ...(lower < upper && { aside: `${say.size(lower)} to ${say.size(upper)}` }),
    },
  ]
}
