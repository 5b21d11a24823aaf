import { atGate, type AtGate, giveFound, toGo } from '../../plan/answers.ts'
import { expectedOf } from '../../plan/standing.ts'
import { workedShown } from '../rows/shown.ts'
import { cutAt, gateAt, gateKey, type Job, measuredAs } from './job.ts'
import { type Value, valueOf } from './record.ts'

/** What is said of a measurement. */
export interface Answer {
  readonly is: 'hold' | 'care' | 'broken'
  readonly word: string
  readonly says: string
  /** Whether the next thing may be done: at once, against the answer, or not at all. */
  readonly goOn: 'yes' | 'against' | 'no'
  /** A stiffness that may be taken as the machine's give, N/mm. */
  readonly give?: number
  /** What may be done instead. */
  readonly offers?: readonly ('zero' | 'bit' | 'desk')[]
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** Gates of one cut are judged by the one before: what it was off by. */
const offBefore = (now: Job, cut: number, gate: number): number | undefined => {
  for (let at = gate - 1; at >= 0; at--) {
    const value = valueOf(gateKey(cut, at))
    const before = gateAt(now, cut, at)
    if (value && before && now.wanted && now.plan) {
      const found = atGate(expectedOf(before, now.plan.gateBy), value.mm, now.wanted)
      // What was stopped for is nothing to go by.
      return found.says === 'go on' || found.says === 'watch' ? found.off : undefined
    }
  }
  return undefined
}

const foundAt = (now: Job, cut: number, gate: number, measured: number): AtGate | undefined => {
  const at = gateAt(now, cut, gate)
  if (!at || !now.wanted || !now.plan) return undefined
  const before = offBefore(now, cut, gate)
  return atGate(expectedOf(at, now.plan.gateBy), measured, {
    most: now.wanted.most,
    none: now.wanted.none,
    ...(before !== undefined && { before }),
  })
}

const stiffness = (now: Job, give: number): string =>
  `${workedShown(give, { is: 'stiffness' }, now.unit)} ${now.unit === 'mm' ? 'N/mm' : 'lbf/in'}`

/** A stiffness as the spec takes it. */
export const giveWritten = stiffness

const crownSaid = (now: Job): string => {
  const crown = now.plan?.dial.crown ?? 0
  return crown > 0 ? ` The crown is cut away only at ${now.says.dial(crown)} on the dial.` : ''
}

const tooDeep = (now: Job, measured: number): Answer => ({
  is: 'broken',
  word: 'Too deep.',
  says: `${now.says.read(measured)}; ${now.says.read(now.wanted?.most ?? measured)} is the most. Bar out. Back to the desk: what can still be done.`,
  goOn: 'no',
  offers: ['desk'],
})

const theBore = (now: Job): Answer => ({
  is: 'care',
  word: 'That is the bore, not the slot.',
  says: `Measure ${measuredAs(now)} again.${crownSaid(now)}`,
  goOn: 'no',
})

/** What is said at a gate on the way. */
export const gateAnswer = (now: Job, cut: number, gate: number, measured: number): Answer | undefined => {
  const at = gateAt(now, cut, gate)
  const found = foundAt(now, cut, gate, measured)
  const { says } = now
  if (!found || !at || !now.plan) return undefined
  const expected = expectedOf(at, now.plan.gateBy)
  const much = says.read(Math.abs(found.off))
  const none = Number(much) === 0
  const before = offBefore(now, cut, gate)
  // Off as it was at the gate before: a steady lag is no fault.
  const steady = before !== undefined && !none && Number(says.read(Math.abs(before))) > 0
  const off = none
    ? 'nothing off'
    : `${much} ${found.off < 0 ? 'short' : 'more'}${steady ? ', as at the gate before' : ''}`
  const stands =
    found.behind > 0.004
      ? ` The slot stands ${says.read(found.behind)} behind the dial.`
      : found.behind < -0.004
        ? ` The slot stands ${says.read(-found.behind)} ahead of the dial.`
        : ''
  switch (found.says) {
    case 'go on':
      return {
        is: 'hold',
        word: 'Go on.',
        says: `${says.read(expected.expected ?? expected.byDial)} was expected; ${off}.${stands}`,
        goOn: 'yes',
      }
    case 'watch':
      return {
        is: 'care',
        word: 'Go on, and watch.',
        says: `${much} ${found.off < 0 ? 'short of' : 'more than'} what was expected.${stands} If the next gate is ${found.off < 0 ? 'shorter still, the bit creeps' : 'deeper still, the nose digs in'}.`,
        goOn: 'yes',
      }
    case 'short': {
      const { loads } = now.design
      // A give that is other than was taken shows at the first gate; what comes later is none.
      const give = loads && before === undefined ? giveFound(loads, at, found.behind) : undefined
      return {
        is: 'broken',
        word: 'Stop.',
        says: `${much} short. Is the screw tight? ${now.design.groundBar ? 'Back' : 'Bar'} and nose still as set? ${give === undefined ? 'If both are good, measure again.' : 'If both are good, the machine gives more than was taken.'}`,
        goOn: 'against',
        ...(give !== undefined && { give }),
        offers: ['bit'],
      }
    }
    case 'deep':
      return {
        is: 'broken',
        word: 'Stop.',
        says: `${much} deeper than the dial can account for. Has the dial slipped, or the nose dug in? Find the zero again.`,
        goOn: 'against',
        offers: ['zero'],
      }
    case 'too deep':
      return tooDeep(now, measured)
    case 'the bore itself':
      return theBore(now)
  }
}

export interface LastAnswer extends Answer {
  /** Where the dial is to be set for what is missing. */
  readonly add?: number
}

/** What is said when the last gate, or what was added after it, has been measured with the dial at `reading`. */
export const lastAnswer = (now: Job, reading: number, measured: number): LastAnswer | undefined => {
  const { plan, wanted, says } = now
  if (!plan || !wanted) return undefined
  const found = toGo(plan, wanted, wanted.none, reading, measured)
  const much = says.read(Math.abs(found.missing))
  const springs = plan.target.springPasses
  const lanes = plan.lanes.length > 1 ? ', in every lane' : ''
  const slots = plan.keyways > 1 ? ', in every slot' : ''
  switch (found.says) {
    case 'good':
      return {
        is: 'hold',
        word: 'Good.',
        says: `${says.read(measured)} lies within ${says.between(wanted.least, wanted.most)}. File the edges, then measure the slot.`,
        goOn: 'yes',
      }
    case 'add':
      return found.reading > reading + 1e-9
        ? {
            is: 'care',
            word: `Add ${much}.`,
            says: `New dial ${says.dial(found.reading)}${lanes}${slots} (a mark is ${says.step(plan.dial.mark)}, taken shallow). ${springs > 0 ? `${capital(countOf(springs))} spring passes, then measure.` : 'Then measure.'}`,
            goOn: 'no',
            add: found.reading,
          }
        : {
            is: 'care',
            word: `${much} is missing.`,
            says: `That is less than a mark of the dial, ${says.step(plan.dial.mark)}. ${springs > 0 ? 'Spring passes as the dial stands, then measure.' : 'One more stroke as the dial stands, then measure.'}`,
            goOn: 'against',
          }
    case 'too deep':
      return tooDeep(now, measured)
    case 'the bore itself':
      return theBore(now)
  }
}

const few = ['no', 'one', 'two', 'three', 'four', 'five', 'six']
export const countOf = (count: number): string => few[count] ?? String(count)

/** Whether a gate is the last of the whole cut. */
export const isLast = (now: Job, cut: number, gate: number): boolean =>
  cut === (now.plan?.cuts.length ?? 0) - 1 && gate === (cutAt(now, cut)?.gates.length ?? 0) - 1

/** The answer to a value at a gate, the last or another. */
export const answerAt = (now: Job, cut: number, gate: number, value: Value): Answer | undefined => {
  if (!isLast(now, cut, gate)) return gateAnswer(now, cut, gate, value.mm)
  const at = gateAt(now, cut, gate)
  const last = lastAnswer(now, at?.reading ?? 0, value.mm)
  const found = foundAt(now, cut, gate, value.mm)
  // Far from what was expected, it is not the dial that is short.
  if (last?.add !== undefined && found?.says === 'short') return gateAnswer(now, cut, gate, value.mm)
  return last && (last.goOn === 'no' && last.add === undefined ? last : { ...last, goOn: 'yes' })
}
