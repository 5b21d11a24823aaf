/** Rules of splines, sockets and slits, beyond those that every slot keeps. */
import { band } from '../fits/size.ts'
import { sliver } from '../dimensions/candidates.ts'
import { laneOfSocket, pilotBoreOf } from '../dimensions/v-nose.ts'
import type { Proposal, Rule, Worked } from './rule.ts'
import { length, opened, upTo, written } from './ways.ts'

/** Bores, in round figures, that leave seven to five tenths of each flat of a socket, and a narrower V; the bar is chosen again. Nothing but for sockets. */
export const widerBores = (job: Worked): readonly Proposal[] => {
  const { socket, bore } = job.section
  if (!socket) return []
  const { sides, acrossFlats } = socket
  return [0.7, 0.6, 0.5]
    .map((share) => ({ share, to: upTo(job, pilotBoreOf(sides, acrossFlats.upper / 2, share), 0.1, 0.005) }))
    .filter(({ to }) => Math.abs(to - bore.nominal) > 1e-6)
    .map(({ share, to }) => ({
      say: `Bore it to ${length(job, to)}: that leaves ${10 * share} tenths of each flat, and asks for a narrower V.`,
      set: { 'bore.diameter': written(job, to), 'bore.measured': null, ...opened(job) },
    }))
}

/** Why no lanes: how far sideways the bar would stand, and what bar that leaves. */
const noLanes = (job: Worked): string => {
  const { socket, bore } = job.section
  const nose = job.bar?.noseWidth ?? 0
  if (!socket) return ''
  const { offset, barMost } = laneOfSocket(
    socket.sides,
    socket.acrossFlats.upper / 2,
    bore.lower / 2,
    nose,
    job.spec.tooling.bar?.clearance.back ?? 0,
  )
  const room =
    barMost > 0 ? `there a bar of Ø${length(job, barMost)} at the most finds room` : 'no bar finds room there'
  return `In side-shifted lanes it would stand ${length(job, offset)} off the middle, and ${room}.`
}

export const featureRules: readonly Rule[] = [
  {
    id: 'slots-have-limits',
    states: 'the slots have limits that can be held',
    source: 'judgement: 0.005 mm is the least that a ground nose holds',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section }) => section.spline !== undefined,
    measured: ({ section, spec }) => {
      const zone = band(section.widthLimits)
      // A row of the standard whose limits nobody has here.
      const { feature } = spec
      return zone === 0 && feature.kind === 'spline' && feature.standard !== undefined ? undefined : zone
    },
    limit: () => 0.005,
    reason: ({ measured, limit }) =>
      `The slots’ width has ${measured} between its limits; ${limit} is the least that a ground nose holds.`,
    untold:
      'The limits of this row of the standard are not on hand: take width and major from your print, and give them by hand.',
    remedies: (job) => {
      const { lower } = job.section.widthLimits
      const upper = lower + (job.spec.units === 'mm' ? 0.02 : 0.001 * 25.4)
      return [
        {
          say: `Give the width its limits, ${length(job, lower)} to ${length(job, upper)} if nothing closer is asked of it.`,
        },
      ]
    },
  },
  {
    id: 'nose-clears-tooth',
    states: 'the nose’s corners leave the mating tooth its own',
    source: 'geometry: a flat floor over a tooth whose tip is round; SAE J499: .015 in',
    binding: 'should',
    sense: 'at most',
    unit: 'mm',
    applies: ({ section }) => section.spline !== undefined,
    measured: ({ section }) => section.cornerRadius,
    limit: ({ section }) => section.cornerLimits?.upper,
    reason: ({ measured, limit }) =>
      `The nose’s corners are ${measured}; the mating tooth’s corners clear ${limit} in the slot.`,
    remedies: (job) => [
      {
        say: 'Let the corners be chosen.',
        set: { 'tooling.bar.nose.cornerRadius': null, 'feature.spline.corner': null },
      },
      {
        say: `Stone them to ${length(job, 0)}, or break the tooth’s edges.`,
        set: { 'tooling.bar.nose.cornerRadius': 0 },
      },
    ],
  },
  {
    id: 'bore-holds-flats',
    states: 'the bore is no smaller than the size across flats',
    source:
      'geometry: in a smaller bore metal is left in the middle of each flat, which no V along the corners reaches',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section }) => section.socket !== undefined,
    measured: ({ section }) => section.bore.lower,
    limit: ({ section }) => section.socket?.acrossFlats.upper,
    reason: ({ measured, limit }, _job, broken) =>
      broken
        ? `The bore is ${measured} at the least, less than the ${limit} across flats: the middle of each flat stays uncut.`
        : `The bore is ${measured} at the least; the flats are ${limit} apart at the most.`,
    remedies: (job) => {
      return [...widerBores(job), { say: 'Or file the flats’ middles, or have the socket broached or eroded.' }]
    },
  },
  {
    id: 'flats-are-left',
    states: 'the bore leaves half of each flat',
    source: 'judgement: half; 0.7 is usual for a pilot hole',
    binding: 'should',
    sense: 'at least',
    unit: 'ratio',
    applies: ({ section }) => section.socket !== undefined,
    measured: ({ section }) => section.socket?.flatShare,
    limit: () => 0.5,
    reason: ({ measured, limit }) =>
      `${measured} of each flat is left beside the bore; ${limit} is the least that drives well.`,
    remedies: (job) => {
      return [...widerBores(job), { say: 'Or take a larger socket.' }]
    },
  },
  {
    id: 'nose-fills-corner',
    states: 'the V is as wide as its mouth: a socket is never cut in side-shifted lanes',
    source: 'geometry: both flats to their ends; judgement: 0.02 mm less on either side comes away with the burr',
    binding: 'must',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section, bar }) => section.socket !== undefined && bar !== undefined,
    measured: ({ bar }) => bar?.noseWidth,
    limit: ({ section }) => section.widthLimits.upper - sliver,
    reason: ({ measured, limit }, job, broken) =>
      broken
        ? `The nose is ${measured} wide; a V that cuts both flats of a corner to their ends is ${limit}. ${noLanes(job)}`
        : `The V is ${measured} wide at its base; ${limit} cuts both flats of a corner to their ends.`,
    remedies: (job) => [
      ...(job.spec.stated.includes('tooling.bar.nose.width')
        ? [
            {
              say: 'Cut it with a V as wide as its mouth, along the corners.',
              set: { 'tooling.bar.nose.width': null, ...opened(job, 'bit', 'screw', 'diameter', 'projection') },
            },
          ]
        : []),
      ...widerBores(job),
      { say: 'Or take a wider blank, or have the socket broached or eroded.' },
    ],
  },
  {
    id: 'web-is-cut',
    states: 'the web that stands when a slit’s corners come out is cut, not torn',
    source: 'geometry of nose and outside; judgement: half an infeed',
    binding: 'should',
    sense: 'at least',
    unit: 'mm',
    applies: ({ section, infeed }) => section.slit !== undefined && infeed !== undefined,
    measured: ({ section }) => section.slit?.web,
    limit: ({ infeed }) => (infeed ?? 0) / 2,
    reason: ({ measured, limit }, job, broken) =>
      `When the slit’s corners come out, ${measured} of web stands in the middle; half an infeed is ${limit}.${broken ? ' It tears out sideways.' : ''} From ${length(job, Math.max(0, (job.section.slit?.outside ?? 0) / 2 - (job.section.slit?.halfInfeedFrom ?? 0)))} under the outside take half the infeed.`,
    remedies: (job) => {
      const { slit } = job.section
      const gentle = slit ? 2 * slit.web : 0
      return [
        ...(gentle >= 0.005
          ? [{ say: `Take ${length(job, gentle)} a pass.`, set: { 'tooling.bar.infeed': written(job, gentle) } }]
          : []),
        {
          say: 'Take the last passes by feel, at half the infeed or less, and leave one bridge until the piece is hardened.',
        },
      ]
    },
  },
]
