import { useState } from 'preact/hooks'
import { lagAt } from '../../figures/cut.ts'
import { readLength } from '../../spec/length.ts'
import { standing } from '../../plan/standing.ts'
import { Heading } from '../parts/heading.tsx'
import { dialReads, oneBack, passDone } from './going.ts'
import { cutAt, gateAt, type Job, stretchAt } from './job.ts'
import type { OfSlot } from './order.ts'
import { record } from './record.ts'
import { Rule } from './rule.tsx'
import { ordinal } from './screen-between.tsx'
import { openWrong } from './wrong.tsx'

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** `one mark`, `half a mark`, `two marks`; otherwise by how much. */
const marksSaid = (marks: number, by: number, { says }: Job): string => {
  const near = (value: number): boolean => Math.abs(marks - value) < 1e-3
  if (near(1)) return 'one mark'
  if (near(0.5)) return 'half a mark'
  if (near(0.25)) return 'a quarter of a mark'
  if (near(1.5)) return 'a mark and a half'
  const whole = ['two', 'three', 'four', 'five'].find((_, place) => near(place + 2))
  if (whole) return `${whole} marks`
  const count = Math.round(marks)
  return count <= 20 && near(count) ? `${count} marks` : says.dial(by)
}

/** The run that this stroke is of, counted in its lane: `Second run, 0.02 a pass`. */
const runSaid = (now: Job, cut: number, reading: number): string => {
  const runs = cutAt(now, cut)?.runs ?? []
  const at = runs.findIndex(({ to }) => reading <= to + 1e-6)
  const run = runs[at]
  if (!run) return 'Cut'
  return `${runs.length > 1 ? `${capital(ordinal(at))} run, ` : ''}${now.says.step(run.by)} a pass`
}

/** One stroke after another: what the dial is turned to, and nothing else that large. */
export const Cut = ({ now, screen }: { now: Job; screen: OfSlot }) => {
  const { plan, says, design } = now
  const stretch = stretchAt(now, screen.cut, screen.gate, screen.slot)
  if (!plan || !stretch) return null
  const { reading, springs } = record.value
  const at = standing(plan, stretch, reading, springs)
  const gate = gateAt(now, screen.cut, screen.gate)
  const turned = at.next?.reading ?? reading
  const lag = lagAt(design, stretch.lane, at.infeed)
  const apart = Math.abs(plan.dial.perInfeed - 1) > 1e-9
  const slot = plan.keyways > 1 ? `Slot ${screen.slot + 1} of ${plan.keyways}. ` : ''
  const lane = plan.lanes.length > 1 ? `Lane ${stretch.lane + 1} of ${plan.lanes.length}. ` : ''
  const way = design.spec.stated.includes('tooling.bar.points') ? plan.dial.runs : 'on'
  const springing = !at.next && at.springsLeft > 0
  /** The whole infeed by the dial: past it the slot is too deep, if the dial is right. */
  const deepest =
    (plan.lanes[stretch.lane]?.infeed ?? 0) * plan.dial.perInfeed + (plan.lanes[stretch.lane]?.touchReading ?? 0)
  return (
    <>
      <Heading id="screen">
        {lane}
        {slot}
        {springing
          ? `Spring pass ${springs + 1} of ${stretch.springPasses}`
          : at.next
            ? capital(runSaid(now, screen.cut, turned))
            : 'To the gate'}
      </Heading>
      <div class="side-by-side">
        <div class="the-number" onClick={passDone}>
          <p class="turn">{at.next ? 'Turn the dial to' : springing ? 'Leave the dial at' : 'The dial reads'}</p>
          <p class={`huge long-${says.dial(turned).length}`}>{says.dial(turned)}</p>
          {apart && (
            <p class="do travel">
              {says.dial(at.travel)} of {plan.dial.slide === undefined ? 'travel' : 'infeed'}
            </p>
          )}
          <p class="do">
            {at.next
              ? `${marksSaid(at.marks, at.by, now)} ${way} from ${says.dial(reading)}; then the stroke`
              : springing
                ? 'no infeed; the stroke alone'
                : at.beyond > 1e-6 && reading > deepest + 1e-6
                  ? `${says.dial(reading - deepest)} deeper than the floor: stop, and measure`
                  : at.beyond > 1e-6
                    ? `${says.dial(at.beyond)} beyond the gate: measure before anything else`
                    : 'nothing more to cut before it is measured'}
          </p>
        </div>
        <div class="at-hand">
          <button type="button" class="go" onClick={passDone}>
            {at.toGate > 0 ? 'Pass done' : 'To the gate'}
          </button>
          <div class="pair-of">
            <button type="button" onClick={oneBack}>
              One back
            </button>
            <OtherReading now={now} key={screen.key} />
          </div>
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
              <dt>To the gate</dt>
              <dd>{at.toGate}</dd>
            </div>
          </dl>
        </div>
      </div>
      <p class="unseen" role="status">
        {at.next ? `Turn the dial to ${says.dial(turned)}` : springing ? `Spring pass ${springs + 1}` : 'To the gate'}
      </p>
      <Rule now={now} infeed={at.infeed} lane={stretch.lane} />
      <Behind now={now} lag={lag} />
      <p class="small">
        Draw back {says.size(plan.withdraw)} for each return stroke. The gate is at {says.dial(gate?.reading ?? 0)}.
        {plan.dial.runs === 'out'
          ? ' The dial runs out: its figures are counted from the zero, the way that it turns.'
          : ''}
      </p>
      <p class="heavy">
        <b>Handle suddenly heavy?</b> Stop; do not lean on it.
      </p>
      <button type="button" class="offer at-the-foot" onClick={openWrong}>
        Something is wrong
      </button>
    </>
  )
}

/** How far the slot stands behind the dial, and what that means. */
export const Behind = ({ now, lag }: { now: Job; lag: number }) =>
  Math.abs(lag) < 0.005 ? null : (
    <p class="behind">
      <b>
        The slot stands {now.says.read(Math.abs(lag))} {lag > 0 ? 'behind' : 'ahead of'} the dial.
      </b>{' '}
      {lag > 0
        ? 'That is the machine’s give, not a fault. If it grows, the bit is creeping: stop and look.'
        : 'The cut draws the nose in. If it grows, stop and look.'}
    </p>
  )

/** The dial is the truth, the count is not. */
const OtherReading = ({ now }: { now: Job }) => {
  const [open, setOpen] = useState(false)
  const [wrong, setWrong] = useState(false)
  if (!open)
    return (
      <button type="button" onClick={() => setOpen(true)}>
        The dial reads other
      </button>
    )
  return (
    <form
      class="other-reading"
      onSubmit={(event) => {
        event.preventDefault()
        const typed = new FormData(event.currentTarget).get('reading')
        const reading = typeof typed === 'string' ? readLength(typed.trim(), now.unit) : undefined
        setWrong(reading === undefined)
        if (reading === undefined) return
        dialReads(reading)
        setOpen(false)
      }}
    >
      <label for="dial-other">The dial reads, {now.unit}</label>
      <input
        id="dial-other"
        name="reading"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        enterkeyhint="done"
        aria-invalid={wrong ? 'true' : undefined}
        aria-describedby={wrong ? 'dial-other-said' : undefined}
        ref={(input) => {
          if (input && document.activeElement !== input && input.value === '') input.focus()
        }}
      />
      {wrong && (
        <p class="complaint" id="dial-other-said" role="alert">
          That is not one length.
        </p>
      )}
      <button type="submit">Take it</button>
      <button type="button" class="link" onClick={() => setOpen(false)}>
        Leave it
      </button>
    </form>
  )
}
