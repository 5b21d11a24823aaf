import { isUpright } from '../../plan/upright.ts'
import { within } from '../../plan/found.ts'
import { Heading } from '../parts/heading.tsx'
import { cutAt, floorMeasured, type Job } from './job.ts'
import type { BeforeCut, OfSlot } from './order.ts'
import { Back, Go, Tick } from './parts.tsx'
import { ticked, valueOf } from './record.ts'
import { OverBarAndNose, overAt } from './screen-bit.tsx'

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']
export const ordinal = (place: number): string => ordinals[place] ?? `${place + 1}th`

/** The bit set out farther, with the nose on the last floor. */
export const Anew = ({ now, screen }: { now: Job; screen: BeforeCut }) => {
  const { plan, says } = now
  const cut = cutAt(now, screen.cut)
  const setting = plan?.settings[cut?.setting ?? 0]
  const found = floorMeasured(now, screen.cut)
  const over = overAt(now, cut?.setting ?? 0)
  const name = `over-${cut?.setting ?? 0}`
  const measured = valueOf(name)
  const good = measured !== undefined && over !== undefined && within(measured.mm, over).good
  const dial = found?.reading ?? cut?.from
  return (
    <>
      <Heading id="screen">New projection</Heading>
      <p class="do">
        Bar out. Bit out to <b>{says.read(setting?.projection ?? 0)}</b>. Bar back in with the nose in the slot.
      </p>
      <OverBarAndNose now={now} setting={cut?.setting ?? 0} name={name} />
      <div class="ticks">
        <Tick name={`anew-${screen.cut}`}>
          The nose touches the floor, and the dial is set to <b>{says.dial(dial ?? 0)}</b>
          {found ? `, by the ${says.read(found.measured)} you measured` : ''}
        </Tick>
      </div>
      <Go when={good && ticked(`anew-${screen.cut}`)}>Go on to the cut</Go>
      <Back />
    </>
  )
}

/** The bar moved sideways. */
export const Lane = ({ now, screen }: { now: Job; screen: BeforeCut }) => {
  const { plan, says, design } = now
  const cut = cutAt(now, screen.cut)
  if (!plan || !cut) return null
  const middle = Math.abs(cut.offset) < 1e-9
  const touch = plan.lanes[cut.lane]?.touchReading ?? 0
  const zero = screen.cut === 0
  const before = now.order[now.order.findIndex(({ key }) => key === screen.key) - 1]
  const dial = before?.is === 'anew' ? 'the dial as it was set' : `dial back to ${says.dial(cut.from)}`
  return (
    <>
      <Heading id="screen">
        Lane {cut.lane + 1} of {plan.lanes.length}
      </Heading>
      <p class="do">
        {isUpright(design.asked) ? 'Raise or lower the bar, an indicator on it,' : 'Move the bar sideways,'}{' '}
        <b>{middle ? 'onto the middle of the slot' : says.read(Math.abs(cut.offset))}</b>
        {middle ? '' : ` from the middle, to its ${cut.offset < 0 ? 'low' : 'high'} side`}.
      </p>
      {zero ? (
        <div class="ticks">
          <Tick name="zero-set">Up to first touch, the dial set to 0</Tick>
        </div>
      ) : (
        <>
          <p class="caution">
            <b class="signal">Do not set the dial to 0 again.</b>{' '}
            {cut.setting === 0
              ? `This lane first cuts at ${says.dial(touch)}. It ends where the others do.`
              : 'It goes on from where it stands.'}
          </p>
          <div class="ticks">
            <Tick name={`lane-${screen.cut}`}>Moved over; {dial}</Tick>
          </div>
        </>
      )}
      <Go when={ticked(zero ? 'zero-set' : `lane-${screen.cut}`)}>Go on to the cut</Go>
      <Back />
    </>
  )
}

/** The work turned on to another slot. */
export const Turn = ({ now, screen }: { now: Job; screen: OfSlot }) => {
  const { design, says } = now
  const slots = now.plan?.keyways ?? 1
  const { indexing } = design
  // Back to the first is once round: the turns go on, none is taken back.
  const to = indexing?.slots[screen.slot === 0 ? slots : screen.slot]
  const cut = cutAt(now, screen.cut)
  const from = screen.gate === 0 ? cut?.from : cut?.gates[screen.gate - 1]?.reading
  const angle = design.section.at[screen.slot] ?? 0
  return (
    <>
      <Heading id="screen">
        Slot {screen.slot + 1} of {slots}
      </Heading>
      <p class="do">Bar out. Dial back to {says.dial(from ?? 0)}. File the mouth, then turn the work on.</p>
      <dl class="turns">
        <div>
          <dt>Angle</dt>
          <dd>{Number(angle.toFixed(2))}°</dd>
        </div>
        {indexing?.by === 'dividing head' && to && (
          <div>
            <dt>From slot 1, holes on {indexing.circle}</dt>
            <dd>
              {to.turns} turns, {to.holes} holes
            </dd>
          </div>
        )}
        {indexing?.gear && to?.tooth !== undefined && (
          <div>
            <dt>Bull gear of {indexing.gear.teeth}</dt>
            <dd>tooth {to.tooth}</dd>
          </div>
        )}
      </dl>
      <div class="ticks">
        <Tick name={screen.key}>Turned on, one way only; locked</Tick>
      </div>
      {screen.slot === 0 && (
        <p class="small">Once round: the mark of slot 1 must come back to where it was. A missed hole shows here.</p>
      )}
      <p class="small">Do not move the bit between slots.</p>
      <Go when={ticked(screen.key)}>Cut slot {screen.slot + 1}</Go>
      <Back />
    </>
  )
}
