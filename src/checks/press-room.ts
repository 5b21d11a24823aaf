/** Rules of the room that a press has, and of the hub while the broach goes through. */
import type { LoadedPress } from './loaded.ts'
import type { Rule } from './rule.ts'
import { barInstead, length, stock, upTo } from './ways.ts'

const room = (
  id: string,
  states: string,
  source: string,
  has: (job: LoadedPress) => number | undefined,
  needs: (job: LoadedPress) => number,
  says: (job: LoadedPress) => string,
  otherwise: (job: LoadedPress) => string,
  takes: (job: LoadedPress) => string = () => 'the broach takes',
): Rule<LoadedPress> => ({
  id,
  states,
  source,
  binding: 'must',
  sense: 'at least',
  unit: 'mm',
  applies: (job) => has(job) !== undefined,
  measured: has,
  limit: needs,
  reason: ({ measured, limit }, job) => `${says(job)} ${measured}; ${takes(job)} ${limit}.`,
  remedies: (job) => [...barInstead(job), { say: otherwise(job) }],
})

/** Whether it is the spacer alone that does not go in. */
const withoutSpacer = ({ spec, bushing }: LoadedPress): boolean =>
  bushing.raised > 0 && bushing.daylight <= (spec.tooling.press?.daylight ?? 0) + 1e-9

export const pressRoomRules: readonly Rule<LoadedPress>[] = [
  room(
    'press-strokes-far-enough',
    'the ram goes as far as the broach must',
    'geometry: bore and toothed length',
    ({ spec }) => spec.tooling.press?.stroke,
    ({ bushing }) => bushing.stroke,
    () => 'The ram goes',
    () => 'Or press it in two goes with a packing piece between ram and broach, or take a press with more stroke.',
  ),
  room(
    'room-under-table',
    'the broach’s teeth pass the hub before it stands on what is below',
    'geometry: pilot and toothed length, and the spacer where the hub stands on one',
    ({ spec, bushing }) => {
      const table = spec.tooling.press?.below
      return table === undefined ? undefined : table + bushing.raised
    },
    ({ bushing }) => bushing.below,
    ({ bushing }) => (bushing.raised > 0 ? 'Spacer and table leave' : 'Under the table there is'),
    () => 'Or stand the spacer on a hollow block, or set the press over the bench’s edge.',
  ),
  room(
    'press-opens-far-enough',
    'hub and broach go in under the ram',
    'geometry: bore, the broach less its pilot, and the spacer where the hub stands on one',
    ({ spec }) => spec.tooling.press?.daylight,
    ({ bushing }) => bushing.tableToRam,
    () => 'Between table and ram there is',
    (job) =>
      withoutSpacer(job)
        ? `Or stand the hub on the table itself, without the spacer, over a hole with ${length(job, job.bushing.below)} clear under it.`
        : 'Or take a taller press, or lower its table.',
    ({ bushing }) => (bushing.raised > 0 ? 'spacer, hub and broach take' : 'hub and broach take'),
  ),
  room(
    'table-clears-keyway',
    'the hole in the table clears the keyway',
    'geometry: the slot’s farthest corner and 0.2 mm',
    ({ spec }) => {
      const across = spec.tooling.press?.opening
      return across === undefined ? undefined : across / 2
    },
    ({ bushing }) => bushing.plateHoleRadius,
    () => 'Half the hole in the table is',
    () => 'Or bore the plate out, or set the work on parallels.',
  ),
  {
    id: 'hub-bears-broaching',
    states: 'the wall over the slot bears the broach’s spreading',
    source:
      'a plate built in at its sides over the slot’s corner; yield over 1.5, a third of the tensile strength of grey iron: judgement',
    binding: 'must',
    sense: 'at most',
    unit: 'N/mm2',
    measured: ({ pressLoads }) => pressLoads.hubStress,
    limit: ({ pressLoads }) => pressLoads.hubStressMost,
    reason: ({ measured, limit }, _job, broken) =>
      measured === 'without end'
        ? 'The corner of the floor comes out through the hub: the broach tears it open.'
        : `The broach spreads the wall over the slot with ${measured}; ${limit} is the most.${broken ? ' The hub may burst or swell.' : ''}`,
    untold: 'The hub’s outside is not told, so whether its wall bears the broach cannot be: give hub.outside.',
    remedies: (job) => [
      ...barInstead(job),
      {
        say: `Or broach it before the outside is turned, from stock of Ø${stock(job, upTo(job, 1.2 * (job.spec.hub.outside ?? 0), 1, 1 / 8))} or more, or in a ring that it is pressed into.`,
      },
    ],
  },
  {
    id: 'broach-cuts-no-taper',
    states: 'the keyway’s floor runs along the bore',
    source: 'a guided broach cuts a floor that lies along its bushing',
    binding: 'must',
    sense: 'at most',
    unit: 'count',
    applies: ({ section }) => section.key !== undefined,
    measured: ({ section }) => (section.key?.taper ? 1 : 0),
    limit: () => 0,
    reason: (_said, job, broken) =>
      broken
        ? `The floor falls by ${length(job, job.section.key?.taper?.windowLoss ?? 0)} over the bore: a broach in a straight bushing cuts no taper.`
        : 'The floor runs along the bore, as the broach does.',
    remedies: (job) => [...barInstead(job), { say: 'Or take a parallel key, with whoever designed the joint.' }],
  },
]
