import { lagAt } from '../../figures/cut.ts'
import { expectedOf, standing } from '../../plan/standing.ts'
import { stated } from '../job.ts'
import { Heading } from '../parts/heading.tsx'
import { answerAt, type Answer, giveWritten, isLast } from './answers.ts'
import { backTo, goOn, goTo } from './going.ts'
import { cutAt, gateAt, gateKey, type Job, measuredAs, stretchAt } from './job.ts'
import type { AtGate } from './order.ts'
import { Back, Blank, Go, Told } from './parts.tsx'
import { note, record, setValue, tellJob, valueOf } from './record.ts'
import { Rule } from './rule.tsx'
import { Behind } from './screen-cut.tsx'
import { openWrong } from './wrong.tsx'

const how: Readonly<Record<string, string>> = {
  across: 'Measure across, floor to far wall.',
  'floor to floor': 'Measure floor to floor, with the slot right opposite.',
  'plug and blocks': 'Put the plug in the bore, and blocks between it and the floor.',
}

/** Where the next gate stands; absent after the last. */
const nextSaid = (now: Job, { cut, gate }: AtGate): string | undefined => {
  const after = now.order.slice(now.order.findIndex(({ key }) => key === gateKey(cut, gate)) + 1)
  const next = after.find((each) => each.is === 'gate')
  const other = after[0]
  if (other?.is === 'anew') return 'Go on: new projection'
  if (other?.is === 'lane') return `Go on to lane ${(cutAt(now, other.cut)?.lane ?? 0) + 1}`
  const reading = next?.is === 'gate' ? gateAt(now, next.cut, next.gate)?.reading : undefined
  return reading === undefined ? undefined : `Go on to ${now.says.dial(reading)}`
}

/** Nothing is run past it without a measurement, or without saying so. */
export const Gate = ({ now, screen }: { now: Job; screen: AtGate }) => {
  const { plan, says, wanted } = now
  const gate = gateAt(now, screen.cut, screen.gate)
  const stretch = stretchAt(now, screen.cut, screen.gate, 0)
  if (!plan || !gate || !stretch) return null
  const key = gateKey(screen.cut, screen.gate)
  const value = valueOf(key)
  const answer = wanted && value && answerAt(now, screen.cut, screen.gate, value)
  const last = isLast(now, screen.cut, screen.gate)
  const expected = expectedOf(gate, plan.gateBy)
  const at = standing(
    plan,
    stretchAt(now, screen.cut, screen.gate, plan.keyways - 1) ?? stretch,
    gate.reading,
    gate.springPasses,
  )
  const edge = gate.kind === 'edge' || gate.kind === 'web'
  const good = last && answer?.is === 'hold'
  const onward = (why?: string): void => {
    const { noted } = record.peek()
    const { [key]: _, ...others } = noted
    note({ noted: why === undefined ? others : { ...noted, [key]: why } })
    if (last && (good || !wanted)) goTo('measure')
    else goOn()
  }
  const says_ = !wanted
    ? 'Go on'
    : last
      ? good
        ? 'Go on: file the edges'
        : 'Go on: add what is missing'
      : (nextSaid(now, screen) ?? 'Go on')
  return (
    <>
      <Heading id="screen">
        {plan.lanes.length > 1 ? `Lane ${stretch.lane + 1}. ` : ''}Gate at {says.dial(gate.reading)}
      </Heading>
      {wanted ? (
        <>
          <p class="do">Bar out. Brush the chips away. {how[wanted.by]}</p>
          {edge && <p class="do">{gate.does}</p>}
          {plan.keyways > 1 && <SlotsCut now={now} />}
          <div class="side-by-side">
            <Blank
              key={key}
              name={key}
              label={`Measured ${measuredAs(now)}, ${now.unit}`}
              unit={now.unit}
              large
              dial={gate.reading}
              note={`expect ${says.read(expected.expected ?? expected.byDial)}`}
            />
            <div class="at-hand">
              <Told answer={answer} />
              {answer?.goOn === 'yes' && <Go press={() => onward()}>{says_}</Go>}
              <Offers now={now} answer={answer} />
              {value && (
                <div class="pair-of">
                  <button type="button" onClick={() => setValue(key, undefined)}>
                    Measure again
                  </button>
                  <button type="button" onClick={openWrong}>
                    Something is wrong
                  </button>
                </div>
              )}
              {answer?.goOn === 'against' && (
                <button
                  type="button"
                  class="offer"
                  onClick={() => onward(`${answer.word} ${answer.says} Gone on all the same.`)}
                >
                  Go on all the same
                </button>
              )}
              {!value && (
                <button type="button" class="offer" onClick={() => onward('not measured')}>
                  Go on without
                </button>
              )}
              {!value && <p class="small">Gone on without, it is noted on the job.</p>}
            </div>
          </div>
        </>
      ) : (
        <>
          <p class="do">Bar out. Brush the chips away. {gate.does}</p>
          {plan.keyways > 1 && <SlotsCut now={now} />}
          <Go press={() => onward()}>{nextSaid(now, screen) ?? 'Go on'}</Go>
        </>
      )}
      <dl class="three">
        <div>
          <dt>Still to go</dt>
          <dd>{says.dial(at.left)}</dd>
        </div>
        <div>
          <dt>Passes</dt>
          <dd>{at.strokesLeft}</dd>
        </div>
        <div>
          <dt>Dial</dt>
          <dd>{says.dial(gate.reading)}</dd>
        </div>
      </dl>
      <Rule now={now} infeed={at.infeed} lane={stretch.lane} />
      {!value && <Behind now={now} lag={lagAt(now.design, stretch.lane, at.infeed)} />}
      <Back />
    </>
  )
}

const SlotsCut = ({ now }: { now: Job }) => (
  <p class="slots-cut">
    Cut to here:{' '}
    {Array.from({ length: now.plan?.keyways ?? 1 }, (_, slot) => (
      <span key={slot} class="slot-cut">
        <span class="box is-on" aria-hidden="true" /> slot {slot + 1}
      </span>
    ))}
  </p>
)

/** What may be done where it is not as it should be. */
const Offers = ({ now, answer }: { now: Job; answer: Answer | undefined }) => {
  if (!answer) return null
  const { give, offers } = answer
  return (
    <div class="offers">
      {give !== undefined && (
        <button
          type="button"
          class="offer"
          onClick={() =>
            tellJob({
              'tooling.bar.give': giveWritten(now, give),
              ...(stated('tooling.bar.pull') !== undefined && { 'tooling.bar.pull': null }),
            })
          }
        >
          Take this as its give ({giveWritten(now, give)})
        </button>
      )}
      {offers?.includes('bit') && (
        <button type="button" class="offer" onClick={() => backTo('bit')}>
          Look at the bit again
        </button>
      )}
      {offers?.includes('zero') && (
        <button type="button" class="offer" onClick={() => backTo('zero')}>
          Find the zero again
        </button>
      )}
      {offers?.includes('desk') && (
        <a class="offer" href="#desk">
          Back to the desk: what can still be done
        </a>
      )}
    </div>
  )
}
